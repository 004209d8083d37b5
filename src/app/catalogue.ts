/** The built-in catalogue. Every file of the folder stands here by name, so that a bundle holds it. */
import type { CatalogueRow } from '../engine/snapshot.ts';
import belts from '../../catalogue/belts.json' with { type: 'json' };
import cables from '../../catalogue/cables.json' with { type: 'json' };
import drivers from '../../catalogue/drivers.json' with { type: 'json' };
import steppers from '../../catalogue/steppers.json' with { type: 'json' };
import supplies from '../../catalogue/supplies.json' with { type: 'json' };

export const catalogue: readonly CatalogueRow[] = [...belts, ...cables, ...drivers, ...steppers, ...supplies];
