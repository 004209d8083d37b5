/** Cells of a sheet: values with their ranges, and facts that can be taken hold of. */
import { constant, type Finding, type Value } from '../kernel/index.ts';
import type { SheetContext } from './discipline.ts';
import type { Block, Cell, Column } from './document.ts';
import { pathOf } from './view.ts';

type Sheet = Pick<SheetContext<never>, 'attempt' | 'ends' | 'show'>;

/** Stands where there is nothing to show. */
export const NONE = '—';

/** The unit of a shown number. */
export const unitOfShown = (shown: string): string => shown.replace(/^[−\d.,\s\u2009\u202f]+/u, '');

/**
 * A value with its range, `0.9–1.3 N·m`; a dash where it cannot be worked out.
 *
 * @param write how a number is shown; as the author would, unless something else is given
 */
export const ranged = (sheet: Sheet, run: () => Value, write = sheet.show): string => {
  const worked = sheet.attempt(() => {
    const { of } = run();
    const { low, high } = sheet.ends(run);
    const [least, most] = [low, high].map((x) => write(constant(x, of, 'end of a range'))) as [string, string];
    if (least === most) return most;
    const unit = unitOfShown(most);
    return unitOfShown(least) === unit
      ? `${least.slice(0, least.length - unit.length).trimEnd()}–${most}`
      : `${least} to ${most}`;
  });
  return worked.ok ? worked.value : NONE;
};

/** The fact of the book that a value is; none where it was worked out of others. */
const factOf = ({ origin }: Value): string | undefined => (origin.kind === 'given' ? origin.path : undefined);

/** A value with its range as a cell, which can be taken hold of where it is one fact of the book in every scenario. */
export const held = (sheet: Sheet, run: () => Value, write = sheet.show): Cell => {
  const facts = new Set<string | undefined>();
  const text = ranged(
    sheet,
    () => {
      const value = run();
      facts.add(factOf(value));
      return value;
    },
    write,
  );
  const [path] = facts;
  return path === undefined || facts.size > 1 || text === NONE ? text : { text, path };
};

/** What the book says under a key, as a cell that can be taken hold of. */
export const said = <T extends object, K extends keyof T & string>(
  of: T,
  key: K,
  {
    write = String,
    none = NONE,
  }: { readonly write?: (said: NonNullable<T[K]>) => string; readonly none?: string } = {},
): Cell => {
  const stands = of[key];
  return stands === undefined || stands === null ? none : { text: write(stands), path: `${pathOf(of)}.${key}` };
};

export const textOf = (cell: Cell): string => (typeof cell === 'string' ? cell : cell.text);

/** Blocks, or a sentence that says why there are none. */
export const attempted = (sheet: Sheet, what: string, run: () => readonly Block[]): readonly Block[] => {
  const worked = sheet.attempt(run);
  return worked.ok ? worked.value : [{ kind: 'paragraph', text: `${what}: ${worked.why}.` }];
};

export const found = ({ findings }: { readonly findings: readonly Finding[] }, key: string): Finding | undefined =>
  findings.find((finding) => finding.key === key);

/** The use of a finding as a cell; a dash where the question was not asked. */
export const useCell = (sheet: { readonly findings: readonly Finding[] }, key: string): Cell => {
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

export const left = (head: string): Column => ({ head, align: 'left' });
export const number = (head: string): Column => ({ head, align: 'number' });

/** A table; nothing where there are no rows. */
export const table = (
  name: string,
  caption: string,
  columns: readonly Column[],
  rows: readonly (readonly Cell[])[],
  note?: string,
): readonly Block[] =>
  rows.length === 0 ? [] : [{ kind: 'table', name, caption, columns, rows, ...(note ? { note } : {}) }];
