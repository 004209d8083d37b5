/** Values as a reader sees them on the sheet. */
import { held as heldIn, ranged as rangedIn, type Cell, type SheetContext } from '../../../contract/index.ts';
export { attempted, NONE, said } from '../../../contract/index.ts';
import { constant, type Dimension, type Value } from '../../../kernel/index.ts';
import type { SwingBook } from '../schema.ts';

export type Sheet = SheetContext<SwingBook>;

/** A bare number of a simulation, in the author's unit; times of swings and plays in seconds, as they are counted. */
export const text = (sheet: Sheet, number: number, of: Dimension): string =>
  of === 'time' && number >= 0.1
    ? `${Number(number.toPrecision(3))} s`
    : sheet.show(constant(number, of, 'of a simulation'));

const written =
  (sheet: Sheet) =>
  ({ number, of }: Value): string =>
    text(sheet, number, of);

/** A value with its range; a dash where it cannot be worked out. */
export const ranged = (sheet: Sheet, run: () => Value): string => rangedIn(sheet, run, written(sheet));

/** The same as a cell, which can be taken hold of where it is one fact of the book in every scenario. */
export const held = (sheet: Sheet, run: () => Value): Cell => heldIn(sheet, run, written(sheet));
