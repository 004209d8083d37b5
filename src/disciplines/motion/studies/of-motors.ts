/** The studies of motors. */
import type { Study } from '../../../contract/index.ts';
import { lowestCurrent } from './lowest-current.ts';
import { slice } from './slice.ts';
import { substitutes } from './substitutes.ts';

export const motorStudies: readonly Study[] = [lowestCurrent, substitutes, slice] as unknown as readonly Study[];
