/** Values as a reader sees them on the sheet: with their range where facts behind them are ranges, in the author's unit. */
import { pathOf, type Block, type Cell, type SheetContext } from '../../../contract/index.ts';
import {
  constant,
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

const unitIn = (shown: string): string => shown.replace(/^[−\d.,\s\u2009\u202f]+/u, '');

/** Stands where there is nothing to show. */
export const NONE = '—';

/** A value with its range, `0.9–1.3 A`; a dash where it cannot be worked out. */
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
  return worked.ok ? worked.value : NONE;
};

/** The fact of the book that a value is; none where it was worked out of others. */
const factOf = ({ origin }: Value): string | undefined => (origin.kind === 'given' ? origin.path : undefined);

/** A value with its range as a cell, which can be taken hold of where it is one fact of the book in every scenario. */
export const held = (sheet: Sheet, run: () => Value): Cell => {
  const facts = new Set<string | undefined>();
  const text = ranged(sheet, () => {
    const value = run();
    facts.add(factOf(value));
    return value;
  });
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
  const text = unitIn(sheet.show(value));
  const unit = unitNamed(text, value.of as Dimension);
  return isProblem(unit) ? { unit: siUnit(value.of), of: (si) => si } : { unit: text, of: (si) => toUnit(si, unit) };
};

/** A block, or a sentence that says why there is none. */
export const attempted = (sheet: Sheet, what: string, run: () => readonly Block[]): readonly Block[] => {
  const worked = sheet.attempt(run);
  return worked.ok ? worked.value : [{ kind: 'paragraph', text: `${what}: ${worked.why}.` }];
};
