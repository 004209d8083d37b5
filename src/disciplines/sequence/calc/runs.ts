/** How long a machine left alone can stay in one kind of state: longest ways in the graph of a search. */
import type { Numbers } from './space.ts';

/** By state, where the numbers of its next states begin in the list; one more at the end. */
export interface Graph {
  readonly count: number;
  readonly starts: Numbers;
  readonly next: Numbers;
}

/** Not of any kind. */
export const NO_KIND = -1;
/** Without an end. */
export const FOREVER = -1;

export interface Runs {
  readonly kinds: Int32Array;
  /** By state: ticks for which its kind can last from there, or FOREVER; 0 where it has none. */
  readonly longest: Int32Array;
  /** States that come back to themselves: at least one of each ring. */
  readonly rings: readonly number[];
}

/** Longest stay in its kind from every state. */
export const longestRuns = ({ count, starts, next }: Graph, kinds: Int32Array): Runs => {
  const longest = new Int32Array(count);
  // 0 not seen, 1 on the way, 2 done.
  const seen = new Uint8Array(count);
  const rings: number[] = [];
  const way = new Int32Array(count + 1);
  const at = new Int32Array(count + 1);
  const [from, to] = [starts.items, next.items];
  for (let root = 0; root < count; root++) {
    if (kinds[root] === NO_KIND || seen[root]) continue;
    let depth = 0;
    way[0] = root;
    at[0] = from[root]!;
    seen[root] = 1;
    longest[root] = 1;
    while (depth >= 0) {
      const state = way[depth]!;
      if (at[depth]! < from[state + 1]!) {
        const child = to[at[depth]!++]!;
        if (kinds[child] !== kinds[state]) continue;
        if (seen[child] === 0) {
          seen[child] = 1;
          longest[child] = 1;
          way[++depth] = child;
          at[depth] = from[child]!;
        } else if (seen[child] === 1) {
          longest[state] = FOREVER;
          rings.push(child);
        } else if (longest[child] === FOREVER) longest[state] = FOREVER;
        else if (longest[state] !== FOREVER && longest[child]! + 1 > longest[state]!)
          longest[state] = longest[child]! + 1;
        continue;
      }
      seen[state] = 2;
      if (--depth < 0) break;
      const above = way[depth]!;
      if (longest[state] === FOREVER) longest[above] = FOREVER;
      else if (longest[above] !== FOREVER && longest[state]! + 1 > longest[above]!)
        longest[above] = longest[state]! + 1;
    }
  }
  return { kinds, longest, rings };
};

/** The first state, in the order in which they were found, whose run is longer than so many ticks. */
export const firstLonger = ({ kinds, longest }: Runs, ticks: number): number => {
  for (let state = 0; state < longest.length; state++)
    if (kinds[state] !== NO_KIND && (longest[state] === FOREVER || longest[state]! > ticks)) return state;
  return -1;
};

/** The longest run of all: FOREVER, or so many ticks. */
export const longestOf = ({ longest }: Runs): number => {
  let most = 0;
  for (const ticks of longest) {
    if (ticks === FOREVER) return FOREVER;
    if (ticks > most) most = ticks;
  }
  return most;
};

/** The state that was found first among those that come back to themselves; of one kind, where one is given. */
export const firstRing = ({ kinds, rings }: Runs, kind?: number): number =>
  rings.reduce(
    (first, state) => ((kind === undefined || kinds[state] === kind) && (first < 0 || state < first) ? state : first),
    -1,
  );

/** The longest run from a state; round once where it comes back. */
export const runFrom = (graph: Graph, runs: Runs, start: number): readonly number[] => {
  const { starts, next } = graph;
  const { kinds, longest } = runs;
  if (longest[start] === FOREVER) return shortestRing(graph, runs, start);
  const states = [start];
  for (let state = start; longest[state]! > 1;) {
    for (let i = starts.items[state]!; i < starts.items[state + 1]!; i++) {
      const child = next.items[i]!;
      if (kinds[child] !== kinds[state] || longest[child] !== longest[state]! - 1) continue;
      state = child;
      break;
    }
    states.push(state);
  }
  return states;
};

/** From a state round to the last one before it again. */
const shortestRing = ({ starts, next }: Graph, { kinds, longest }: Runs, start: number): readonly number[] => {
  const parents = new Map<number, number>([[start, -1]]);
  const queue = [start];
  for (let head = 0; head < queue.length; head++) {
    const state = queue[head]!;
    for (let i = starts.items[state]!; i < starts.items[state + 1]!; i++) {
      const child = next.items[i]!;
      if (child === start) {
        const ring: number[] = [];
        for (let at = state; at >= 0; at = parents.get(at)!) ring.unshift(at);
        return ring;
      }
      if (kinds[child] !== kinds[state] || longest[child] !== FOREVER || parents.has(child)) continue;
      parents.set(child, state);
      queue.push(child);
    }
  }
  throw new RangeError(`state ${start} does not come back to itself`);
};
