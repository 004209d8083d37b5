/** Values as a reader sees them on the sheet: with their range where facts behind them are ranges, in the author's unit. */
import { NONE, unitOfShown, type Cell, type SheetContext } from '../../../contract/index.ts';
export { attempted, held, NONE, ranged, said } from '../../../contract/index.ts';
import {
  isProblem,
  siUnit,
  toUnit,
  unitNamed,
  type Dimension,
  type Finding,
  type Value,
} from '../../../kernel/index.ts';
import type { SupplyBook } from '../schema.ts';

export type Sheet = SheetContext<SupplyBook>;

export const found = ({ findings }: Sheet, key: string): Finding | undefined =>
  findings.find((finding) => finding.key === key);

/** The use of a finding as a cell; a dash where the question was not asked. */
export const useCell = (sheet: Sheet, key: string): Cell => {
  const finding = found(sheet, key);
  if (!finding || finding.verdict === 'not-stated') return NONE;
  const { use, verdict } = finding;
  return {
    text: use ? (use.worst > 10 ? 'over 1000 %' : `${Math.round(use.worst * 100)} %`) : verdict,
    verdict,
    finding: key,
    ...(use ? { use: { ...use, verdict } } : {}),
  };
};

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
