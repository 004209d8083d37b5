/** Values as a reader sees them on the sheet: with their range where facts behind them are ranges, in the author's unit. */
import { unitOfShown, type SheetContext } from '../../../contract/index.ts';
export { attempted, found, held, NONE, ranged, said, useCell } from '../../../contract/index.ts';
import { isProblem, siUnit, toUnit, unitNamed, type Dimension, type Value } from '../../../kernel/index.ts';
import type { SupplyBook } from '../schema.ts';

export type Sheet = SheetContext<SupplyBook>;

/** Numbers of a figure in the unit that the author uses. */
export interface Scale {
  readonly unit: string;
  readonly of: (si: number) => number;
}

export const scaleOf = (sheet: Sheet, value: Value): Scale => {
  const text = unitOfShown(sheet.show(value));
  const unit = unitNamed(text, value.of as Dimension);
  return isProblem(unit) ? { unit: siUnit(value.of), of: (si) => si } : { unit: text, of: (si) => toUnit(si, unit) };
};
