/** Values as a reader sees them on the sheet, and blocks that say why they are not there. */
import type { Block, Cell, Column, SheetContext } from '../../../contract/index.ts';
import { constant, type Value } from '../../../kernel/index.ts';
import type { ControllerBook } from '../schema.ts';

export type Sheet = SheetContext<ControllerBook>;

const unitIn = (shown: string): string => shown.replace(/^[−\d.,\s\u2009\u202f]+/u, '');

/** A value with its range; a dash where it cannot be worked out. */
export const ranged = (sheet: Sheet, run: () => Value): string => {
  const worked = sheet.attempt(() => {
    const { of } = run();
    const { low, high } = sheet.ends(run);
    const show = (x: number): string => sheet.show(constant(x, of, 'end of a range'));
    const [least, most] = [show(low), show(high)];
    if (least === most) return most;
    const unit = unitIn(most);
    return unitIn(least) === unit
      ? `${least.slice(0, least.length - unit.length).trimEnd()}–${most}`
      : `${least} to ${most}`;
  });
  return worked.ok ? worked.value : '—';
};

/** The use of a finding as a cell; a dash where the question was not asked. */
export const useCell = ({ findings }: Sheet, key: string): Cell => {
  const finding = findings.find((one) => one.key === key);
  if (!finding || finding.verdict === 'not-stated') return '—';
  const { use, verdict } = finding;
  return {
    text: use ? (use.worst > 10 ? 'over 1000 %' : `${Math.round(use.worst * 100)} %`) : verdict,
    verdict,
    finding: key,
    ...(use ? { use: { ...use, verdict } } : {}),
  };
};

/** Blocks, or a sentence that says why there are none. */
export const attempted = (sheet: Sheet, what: string, run: () => readonly Block[]): readonly Block[] => {
  const worked = sheet.attempt(run);
  return worked.ok ? worked.value : [{ kind: 'paragraph', text: `${what}: ${worked.why}.` }];
};

export const left = (head: string): Column => ({ head, align: 'left' });
export const number = (head: string): Column => ({ head, align: 'number' });

export const table = (
  name: string,
  caption: string,
  columns: readonly Column[],
  rows: readonly (readonly Cell[])[],
  note?: string,
): readonly Block[] =>
  rows.length === 0 ? [] : [{ kind: 'table', name, caption, columns, rows, ...(note ? { note } : {}) }];
