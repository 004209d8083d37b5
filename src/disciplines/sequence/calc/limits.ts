/** What the search has room for. */
import { OutsideRange } from '../../../kernel/index.ts';

export const MOST_AXES = 4;
export const MOST_INPUTS = 16;
export const MOST_FAULTS = 31;
export const MOST_PULSES = 29;
export const MOST_LEVELS = 4;
export const MOST_TIMES = 7;

/**
 * Refuses a cycle that is too large to be packed.
 *
 * @throws OutsideRange naming what there is too much of
 */
export const atMost = (what: string, count: number, most: number): void => {
  if (count > most)
    throw new OutsideRange('the search', what, count, `at most ${most}`, 'a state has to fit into its words');
};
