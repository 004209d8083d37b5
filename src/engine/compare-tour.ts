/** A comparison as a reader takes it in: what is cured and what is worse, under the change that stands behind it. */
import type { Finding } from '../kernel/index.ts';
import type { Change } from './compare-changes.ts';
import { kindOf, type Cause, type Causes, type Kind } from './compare-causes.ts';
import type { Comparison, Consequence } from './compare.ts';
import type { Machine } from './machine.ts';

/** One finding on both sides. */
export interface Pair {
  readonly key: string;
  readonly code: string;
  readonly sheet: string;
  readonly kind: Kind;
  readonly before?: Finding;
  readonly after?: Finding;
  readonly cause?: Cause;
  readonly behind: Consequence['behind'];
}

/** Findings of the same code that moved alike; `pairs[0]` is the one that is farthest over its limit. */
export interface Line {
  readonly code: string;
  readonly kind: Kind;
  readonly pairs: readonly [Pair, ...Pair[]];
}

export interface Group {
  /** The change that all of them have in common; none where no three changes together explain them. */
  readonly change: Change | null;
  readonly lines: readonly Line[];
  /** Findings in all lines. */
  readonly size: number;
}

export interface Tour {
  readonly pairs: readonly Pair[];
  readonly changes: readonly Change[];
  /** Failed or open before; holds, is tight or no longer arises. */
  readonly cured: readonly Group[];
  /** Fails or is open, or has become tight. */
  readonly worse: readonly Group[];
  /** Better and not cured, or no longer tight. */
  readonly better: readonly Group[];
  /** The verdict is the same; what moved most comes first. */
  readonly moved: readonly Line[];
}

const BEYOND = 10;
const capped = (x: number | undefined): number => (x === undefined || Number.isNaN(x) ? 0 : Math.min(x, BEYOND));

const most = ({ before, after }: Pair): number => Math.max(capped(before?.use?.worst), capped(after?.use?.worst));

/** By how much of its limit a finding moved; more than ten times the limit is all the same. */
export const moveOf = ({ before, after }: Pick<Pair, 'before' | 'after'>): number =>
  Math.abs(capped(after?.use?.worst) - capped(before?.use?.worst));

/** Alike findings together, the largest first. */
export const linesOf = (pairs: readonly Pair[], size: (pair: Pair) => number = most): readonly Line[] => {
  const alike = new Map<string, [Pair, ...Pair[]]>();
  for (const pair of pairs.toSorted((a, b) => size(b) - size(a))) {
    const id = [pair.code, pair.before?.verdict ?? '', pair.after?.verdict ?? ''].join(' ');
    const known = alike.get(id);
    if (known) known.push(pair);
    else alike.set(id, [pair]);
  }
  return [...alike.values()].map((all): Line => ({ code: all[0].code, kind: all[0].kind, pairs: all }));
};

const weights: Readonly<Record<Finding['verdict'], number>> = {
  fails: 3,
  open: 2,
  tight: 1,
  holds: 0,
  'not-stated': 0,
};
const weightOf = ({ before, after }: Pair): number =>
  Math.max(before ? weights[before.verdict] : 0, after ? weights[after.verdict] : 0);
const heaviest = (line: Line): number => line.pairs.reduce((sum, pair) => sum + weightOf(pair), 0);

const groupsOf = (pairs: readonly Pair[]): readonly Group[] => {
  const groups = new Map<Change | null, Pair[]>();
  for (const pair of pairs) {
    const change = pair.cause?.by[0] ?? null;
    groups.set(change, [...(groups.get(change) ?? []), pair]);
  }
  const weight = ({ lines }: Group): number => lines.reduce((sum, line) => sum + heaviest(line), 0);
  return [...groups]
    .map(([change, all]): Group => {
      const lines = linesOf(all, most).toSorted(
        (a, b) => weightOf(b.pairs[0]) - weightOf(a.pairs[0]) || heaviest(b) - heaviest(a),
      );
      return { change, lines, size: all.length };
    })
    .toSorted((a, b) => Number(a.change === null) - Number(b.change === null) || weight(b) - weight(a));
};

/**
 * Puts a comparison in the order of a tour.
 * @param before one machine
 * @param after the other
 * @param comparison what moved between them
 * @param causes which changes stand behind it
 */
export const tourOf = (
  before: Machine,
  after: Machine,
  comparison: Pick<Comparison, 'moved'>,
  causes: Causes,
): Tour => {
  const [old, now] = [before, after].map(({ findings }) => new Map(findings.map((one) => [one.key, one]))) as [
    Map<string, Finding>,
    Map<string, Finding>,
  ];
  const pairs = comparison.moved.map((one): Pair => {
    const { key, sheet, behind } = one;
    const [was, is, cause] = [old.get(key), now.get(key), causes.of.get(key)];
    return {
      key,
      code: (is ?? was)?.code ?? key,
      sheet,
      kind: kindOf(one),
      behind,
      ...(was ? { before: was } : {}),
      ...(is ? { after: is } : {}),
      ...(cause ? { cause } : {}),
    };
  });
  const of = (...kinds: readonly Kind[]): readonly Pair[] => pairs.filter(({ kind }) => kinds.includes(kind));
  return {
    pairs,
    changes: causes.changes,
    cured: groupsOf(of('cured')),
    worse: groupsOf(of('broken', 'worse')),
    better: groupsOf(of('better')),
    moved: linesOf(of('moved'), moveOf),
  };
};
