import { show, showNumber, siUnit, type Dimension } from './quantity/index.ts';

/**
 * A number as it is put into a formula with a pencil: in SI, a temperature in kelvin, a share as a plain number, so that
 * the line with numbers gives its result without converting anything on the way.
 */
export const pencilText = (number: number, of: Dimension): string => {
  if (!Number.isFinite(number)) return number > 0 ? 'beyond all bounds' : 'no number';
  const unit = siUnit(of);
  return unit === '1' ? showNumber(number, { figures: 4 }) : show(number, of, unit, { figures: 4 });
};
