/** Values as a reader sees them on the sheet: with their range where facts behind them are ranges. */
import { NONE, type Cell, type SheetContext } from '../../../contract/index.ts';
export { attempted, held, NONE, ranged, said, textOf } from '../../../contract/index.ts';
import { percentText, type Finding } from '../../../kernel/index.ts';
import type { MotionBook } from '../schema.ts';

export type Sheet = SheetContext<MotionBook>;

/** The use of a finding as a cell; a dash where the question was not asked. */
export const useOf = (findings: readonly Finding[], key: string): Cell => {
  const found = findings.find((finding) => finding.key === key);
  if (!found) return NONE;
  const { use, verdict } = found;
  return {
    text: use ? percentText(use.worst) : verdict,
    verdict,
    finding: key,
    ...(use ? { use: { ...use, verdict } } : {}),
  };
};
