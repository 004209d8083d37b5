/** Two books in consequences: which verdicts and percentages move, and which facts stand behind each. */
import { Quantity } from '../contract/index.ts';
import type { Finding, Verdict } from '../kernel/index.ts';
import type { Machine } from './machine.ts';
import type { Snapshot } from './snapshot.ts';

export interface FactChange {
  readonly path: string;
  readonly means: string;
  readonly before: string | null;
  readonly after: string | null;
}

export interface Consequence {
  readonly key: string;
  readonly sheet: string;
  readonly asks: string;
  readonly before: Side | null;
  readonly after: Side | null;
  /** Facts that the finding used on either side and that differ. */
  readonly behind: readonly FactChange[];
}

export interface Side {
  readonly verdict: Verdict;
  readonly percent?: number;
  readonly sentence: string;
}

export interface Comparison {
  readonly moved: readonly Consequence[];
  /** Findings that change neither their verdict nor what stands behind it, and move by less than half a percent of their limit. */
  readonly same: number;
  /** Facts that differ and stand behind no finding that moves. */
  readonly quiet: readonly FactChange[];
}

const textOf = (path: string, snapshot: Snapshot): string | null => {
  const node = snapshot.nodes.get(path);
  if (node?.kind !== 'leaf') return null;
  return node.leaf instanceof Quantity ? node.leaf.text : String(node.leaf);
};

/** What a reader compares: numbers by value, so that 0.5 m and 500 mm are the same. */
const sameLeaf = (path: string, a: Snapshot, b: Snapshot): boolean => {
  const [x, y] = [a.nodes.get(path), b.nodes.get(path)];
  if (x?.kind !== y?.kind) return false;
  if (x?.kind !== 'leaf' || y?.kind !== 'leaf') return true;
  if (x.leaf instanceof Quantity && y.leaf instanceof Quantity)
    return x.leaf.low === y.leaf.low && x.leaf.high === y.leaf.high && x.leaf.range === y.leaf.range;
  return x.leaf === y.leaf;
};

const side = (finding: Finding | undefined): Side | null =>
  finding
    ? { verdict: finding.verdict, sentence: finding.sentence, ...(finding.use ? { percent: finding.use.worst } : {}) }
    : null;

const apart = (x: number | undefined, y: number | undefined): boolean =>
  x === undefined || y === undefined ? x !== y : x !== y && !(Math.abs(x - y) < 0.005);

/** The best case counts only where it is open which one applies. */
const moves = (a: Finding | undefined, b: Finding | undefined): boolean =>
  a?.verdict !== b?.verdict ||
  a?.reason?.kind !== b?.reason?.kind ||
  apart(a?.use?.worst, b?.use?.worst) ||
  (a?.verdict === 'open' && apart(a.use?.best, b?.use?.best));

const weight: Record<Verdict, number> = { fails: 4, open: 3, tight: 2, 'not-stated': 1, holds: 0 };
const worse = (one: Consequence): number => {
  const [before, after] = [one.before ? weight[one.before.verdict] : 0, one.after ? weight[one.after.verdict] : 0];
  return Math.max(before, after) * 10 + Math.abs(after - before);
};

export const compareMachines = (before: Machine, after: Machine, meansOf: (path: string) => string): Comparison => {
  const change = (path: string): FactChange => ({
    path,
    means: meansOf(path),
    before: textOf(path, before.snapshot),
    after: textOf(path, after.snapshot),
  });
  const leaves = new Set(
    [...before.snapshot.nodes, ...after.snapshot.nodes]
      .filter(([, node]) => node.kind === 'leaf')
      .map(([path]) => path),
  );
  const differing = new Set([...leaves].filter((path) => !sameLeaf(path, before.snapshot, after.snapshot)));
  const [old, now] = [before, after].map((m) => new Map(m.findings.map((f) => [f.key, f]))) as [
    Map<string, Finding>,
    Map<string, Finding>,
  ];
  const moved: Consequence[] = [];
  const explained = new Set<string>();
  let same = 0;
  for (const key of new Set([...old.keys(), ...now.keys()])) {
    const [a, b] = [old.get(key), now.get(key)];
    if (!moves(a, b)) {
      same++;
      continue;
    }
    const behind = [...new Set([...(a?.uses ?? []), ...(b?.uses ?? [])])].filter((path) => differing.has(path));
    for (const path of behind) explained.add(path);
    moved.push({
      key,
      sheet: (b ?? a)!.sheet,
      asks: (b ?? a)!.asks,
      before: side(a),
      after: side(b),
      behind: behind.map(change),
    });
  }
  moved.sort((x, y) => worse(y) - worse(x) || (x.key < y.key ? -1 : 1));
  return { moved, same, quiet: [...differing].filter((path) => !explained.has(path)).map(change) };
};
