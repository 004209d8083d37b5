/** Values as a reader sees them on the sheet: with their range where facts behind them are ranges. */
import type { Block, Cell, SheetContext } from '../../../contract/index.ts';
import { constant, percentText, type Finding, type Value } from '../../../kernel/index.ts';
import type { MotionBook } from '../schema.ts';

export type Sheet = SheetContext<MotionBook>;

const unitOf = (shown: string): string => shown.replace(/^[−\d.,\u2009\u202f]+/u, '');

/** A value with its range, `0.9–1.3 N·m`; a dash where it cannot be worked out. */
export const ranged = (sheet: Sheet, run: () => Value): string => {
  const worked = sheet.attempt(() => {
    const value = run();
    const { low, high } = sheet.ends(run);
    const [least, most] = [low, high].map((x) => sheet.show(constant(x, value.of, 'end of a range'))) as [
      string,
      string,
    ];
    if (least === most) return most;
    const unit = unitOf(most);
    return unitOf(least) === unit
      ? `${least.slice(0, least.length - unit.length).trimEnd()}–${most}`
      : `${least} to ${most}`;
  });
  return worked.ok ? worked.value : '—';
};

/** The use of a finding as a cell; a dash where the question was not asked. */
export const useOf = (findings: readonly Finding[], key: string): Cell => {
  const found = findings.find((finding) => finding.key === key);
  if (!found) return '—';
  const { use, verdict } = found;
  return {
    text: use ? percentText(use.worst) : verdict,
    verdict,
    finding: key,
    ...(use ? { use: { ...use, verdict } } : {}),
  };
};

/** A block, or a sentence that says why there is none. */
export const attempted = (sheet: Sheet, what: string, run: () => readonly Block[]): readonly Block[] => {
  const worked = sheet.attempt(run);
  return worked.ok ? worked.value : [{ kind: 'paragraph', text: `${what}: ${worked.why}.` }];
};
