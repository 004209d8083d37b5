/** Numbers of a figure in the unit that the author uses. */
import type { SheetContext } from '../../../contract/index.ts';
import { constant, isProblem, siUnit, toUnit, unitNamed, type Dimension } from '../../../kernel/index.ts';

export interface Scale {
  readonly unit: string;
  readonly of: (si: number) => number;
}

/** The unit in which a number of this size is shown. */
export const scaleOf = (context: Pick<SheetContext<unknown>, 'show'>, of: Dimension, size: number): Scale => {
  const text = context.show(constant(size, of, 'size of a figure')).replace(/^[−\d.,\s\u2009\u202f]+/u, '');
  const unit = unitNamed(text, of);
  return isProblem(unit) ? { unit: siUnit(of), of: (si) => si } : { unit: text, of: (si) => toUnit(si, unit) };
};

/** A number as it is spoken in the words beside a figure. */
export const spoken = (x: number): string => String(Number(x.toPrecision(2)));
