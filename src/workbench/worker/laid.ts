/** What a laid book says of itself, as plain data for lists and strips; and what moved against an earlier one. */
import { bookWords } from '../../pack/report.ts';
// Not by the door of the figures: this comes with the first verdicts, and the rest of them later.
import { movedScaleSvg, useScaleSvg, type Used } from '../../figures/use-scale.ts';
import type { House, Machine } from '../../app/index.ts';
import type { Use } from '../../contract/document.ts';
import type { Finding } from '../../kernel/index.ts';
import type { FindingCard, LaidBook, Moved } from '../desk/engine.ts';
import { problemsIn } from './places.ts';

/** Digits of a hash that are printed. */
export const SHORT = 12;

const useOf = ({ use, verdict, sense }: Finding): Use | undefined =>
  use && sense !== 'yes-no' ? { ...use, verdict } : undefined;

export const cardOf = (finding: Finding): FindingCard => {
  const { key, code, sheet, verdict, sentence, place, accepted, levers } = finding;
  return {
    key,
    code,
    sheet,
    verdict,
    sentence,
    ...(place ? { place } : {}),
    accepted: accepted?.counts === true,
    hasLevers: levers.length > 0,
  };
};

type Side = NonNullable<Moved['before']>;
const sideOf = (finding: Finding): Side => {
  const use = useOf(finding);
  return { verdict: finding.verdict, ...(use ? { use } : {}) };
};

/** A share of the limit that differs by less than this is the same to any reader. */
const SLACK = 1e-9;
const isSame = (a: number, b: number): boolean =>
  Object.is(a, b) || Math.abs(a - b) <= SLACK * Math.max(1, Math.abs(a));

const hasMoved = (before: Finding, after: Finding): boolean => {
  if (before === after) return false;
  if (before.verdict !== after.verdict) return true;
  const [a, b] = [before.use, after.use];
  if (!a || !b) return a !== b;
  if (!(isSame(a.worst, b.worst) && isSame(a.advised, b.advised))) return true;
  // Where the worst holds, how well the best does is only worked out for somebody who looks.
  return a.worst > 1 && !isSame(a.best, b.best);
};

const rulerOf = (before: Used | undefined, after: Used | undefined): string | undefined => {
  if (before && after) return movedScaleSvg(before, after, 'small', true);
  const one = after ?? before;
  return one && useScaleSvg(one, 'small', true);
};

/** Findings that came, went, or stand otherwise than before; in the order in which they stand now. */
export const movedFrom = (before: readonly Finding[], after: readonly Finding[]): readonly Moved[] => {
  const old = new Map(before.map((finding) => [finding.key, finding]));
  const now = new Map(after.map((finding) => [finding.key, finding]));
  return [...new Set([...now.keys(), ...old.keys()])].flatMap((key): Moved[] => {
    const [from, to] = [old.get(key), now.get(key)];
    if (from && to && !hasMoved(from, to)) return [];
    const [was, is] = [from && sideOf(from), to && sideOf(to)];
    const { sheet, sentence } = (to ?? from)!;
    const ruler = rulerOf(was?.use, is?.use);
    return [
      {
        key,
        sheet,
        sentence,
        ...(was ? { before: was } : {}),
        ...(is ? { after: is } : {}),
        ...(ruler === undefined ? {} : { ruler }),
      },
    ];
  });
};

export const laidOf = (
  machine: Machine,
  house: Pick<House, 'disciplines'>,
  rest: Pick<LaidBook, 'moved' | 'took'> & { readonly warnings: Parameters<typeof problemsIn>[0] },
): LaidBook => {
  const { title, revision } = bookWords(machine);
  return {
    ok: true,
    title,
    revision,
    stamp: machine.stamp.content.slice(0, SHORT),
    sheets: house.disciplines.map(({ name, number, title, asks }) => ({ name, number, title, asks })),
    findings: machine.findings.map(cardOf),
    moved: rest.moved,
    warnings: problemsIn(rest.warnings, Object.fromEntries(machine.book.files)),
    took: rest.took,
  };
};
