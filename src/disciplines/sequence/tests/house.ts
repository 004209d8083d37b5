/** A house with this trade in it, and books put together from parts. */
import { catalogue } from '../../../app/catalogue.ts';
import { createHouse, type House } from '../../../engine/machine.ts';
import { registry } from '../../registry.ts';
import { sequence } from '../index.ts';

/** The house that the trade is tried in. */
export const house: House = createHouse({
  disciplines: [...registry.filter(({ name }) => name !== sequence.name), sequence],
  catalogue,
});
