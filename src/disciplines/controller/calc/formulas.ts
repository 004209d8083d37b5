/** Every formula of the controller. */
import type { Formula } from '../../../kernel/index.ts';
import * as currents from './currents.ts';
import * as timing from './timing.ts';

export const formulas: readonly Formula[] = ([currents, timing] as readonly object[])
  .flatMap((room) => Object.values(room) as unknown[])
  .filter((one): one is Formula => typeof one === 'function' && 'declared' in one);
