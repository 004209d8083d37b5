/** Values as a reader sees them on the sheet. */
import type { Block, SheetContext } from '../../../contract/index.ts';
import { constant, type Dimension, type Value } from '../../../kernel/index.ts';
import type { SwingBook } from '../schema.ts';

export type Sheet = SheetContext<SwingBook>;

/** A bare number of a simulation, in the author's unit; times of swings and plays in seconds, as they are counted. */
export const text = (sheet: Sheet, number: number, of: Dimension): string =>
  of === 'time' && number >= 0.1
    ? `${Number(number.toPrecision(3))} s`
    : sheet.show(constant(number, of, 'of a simulation'));

/** A value with its range; a dash where it cannot be worked out. */
export const ranged = (sheet: Sheet, run: () => Value): string => {
  const worked = sheet.attempt(() => {
    const { of } = run();
    const { low, high } = sheet.ends(run);
    const [least, most] = [text(sheet, low, of), text(sheet, high, of)];
    return least === most ? most : `${least} to ${most}`;
  });
  return worked.ok ? worked.value : '—';
};

/** Blocks, or a sentence that says why there are none. */
export const attempted = (sheet: Sheet, what: string, run: () => readonly Block[]): readonly Block[] => {
  const worked = sheet.attempt(run);
  return worked.ok ? worked.value : [{ kind: 'paragraph', text: `${what}: ${worked.why}.` }];
};
