/** Numbers of a figure in the unit that the author uses. */
import type { SheetContext } from '../../../contract/index.ts';
import { constant, isProblem, siUnit, toUnit, unitNamed, type Dimension } from '../../../kernel/index.ts';
import type { MotionBook } from '../schema.ts';

export interface Scale {
  readonly unit: string;
  readonly of: (si: number) => number;
}

/** The unit in which a number of this size is shown on the sheet. */
export const scaleOf = (context: Pick<SheetContext<MotionBook>, 'show'>, of: Dimension, size: number): Scale => {
  const shown = context.show(constant(size, of, 'size of a figure'));
  const text = shown.replace(/^[−\d.,\s\u2009\u202f]+/u, '');
  const unit = unitNamed(text, of);
  return isProblem(unit) ? { unit: siUnit(of), of: (si) => si } : { unit: text, of: (si) => toUnit(si, unit) };
};
