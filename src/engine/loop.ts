import type { Loop } from '../contract/index.ts';
import {
  constant,
  formula,
  NoSolution,
  NotConverged,
  peak,
  root,
  type Dimension,
  type Formula,
  type Value,
} from '../kernel/index.ts';

const SCAN = 64;
/** Trials spent on a dip between two of the scanned points. */
const DIP = 24;
/** Turns of a rising loop from below before its crossing is bracketed. */
const TURNS = 12;
const closings = new Map<Dimension, Formula>();

/** The last line of a loop in the shown working: what went in must come out again. */
const closing = (of: Dimension): Formula => {
  const known = closings.get(of);
  if (known) return known;
  const made = formula({
    name: `closed-loop-${of}`,
    gives: { symbol: 'x', of, means: 'value at which the loop closes' },
    takes: {
      out: {
        symbol: 'x_out',
        of,
        means: 'what the loop gives back when x is put in',
        slope: 'either',
        typical: [1, 2],
      },
      put: { symbol: 'x_in', of, means: 'what was put in', slope: 'either', typical: [1, 2] },
      within: { symbol: 'δ', of, means: 'allowed difference', slope: 'either', from: 0, typical: [0, 1] },
    },
    steps: ({ out, put, within }, step) => {
      step('δ_loop', 'abs(x_out - x_in)', Math.abs(out - put), of);
      return step.solved('x', 'x_out - x', put, of, within);
    },
    assumes: ['the lowest of several closing values is the one that the machine reaches from cold'],
    source: [{ id: 'own-derivation', at: 'fixed point' }],
    checked: [{ kind: 'law', against: 'the residual is recomputed and shown' }],
    accuracy: 'to the shown difference',
  }) as unknown as Formula;
  closings.set(of, made);
  return made;
};

/**
 * Where a gap that is above nought at both ends of a stretch falls to nought or below between them; nothing when it does not.
 * Two crossings close together, as at the edge of running away, would else be passed over.
 */
const dipIn = (gap: (x: number) => number, low: number, high: number): number | undefined => {
  let below: number | undefined;
  const depth = (x: number): number => {
    // The lowest crossing is wanted: what lies behind a point already below is of no interest.
    if (below !== undefined) return -Infinity;
    const y = gap(x);
    if (!(y > 0)) below = x;
    return -y;
  };
  peak(depth, low, high, DIP);
  return below;
};

/** How far a loop was followed from below, and a place beyond its crossing once one is known. */
interface Climb {
  readonly at: number;
  readonly gap: number;
  readonly beyond?: number;
}

/**
 * Where f never falls, each turn of x → f(x) from below stays below the lowest crossing and comes nearer to it.
 * Near it, the crossing is bracketed by what the last two turns let expect.
 */
const climb = (gap: (x: number) => number, from: number, first: number, most: number, near: number): Climb => {
  let [at, here] = [from, first];
  for (let turn = 0; turn < TURNS; turn++) {
    const to = at + here;
    if (to > most) break;
    const there = gap(to);
    if (!(there > 0)) return there === 0 ? { at: to, gap: 0 } : { at, gap: here, beyond: to };
    const left = there / (1 - there / here);
    [at, here] = [to, there];
    if (!(left > 0 && left <= near)) continue;
    const beyond = Math.min(most, at + 1.25 * left);
    if (!(gap(beyond) > 0)) return { at, gap: here, beyond };
  }
  return { at, gap: here };
};

/**
 * Solves x = f(x) from `from` upward: the first crossing is the one that the machine reaches from cold.
 *
 * @throws NoSolution when f(x) stays above x up to `most`
 * @throws NotConverged when the crossing cannot be narrowed to the tolerance, or the loop gives no number
 */
export const closeLoop = ({ name, from, most, tolerance, next, rising, otherwise }: Loop): Value => {
  const width = most.number - from.number;
  if (!Number.isFinite(width)) throw new NotConverged(name, 'one of its ends is no number');
  if (!(width > 0)) throw new NoSolution(name, `${otherwise} (it already starts at its bound)`);
  const within = tolerance * width;
  const put = (x: number): Value => constant(x, from.of, `trial value of ${name}`);
  const gap = (x: number): number => {
    const difference = next(put(x)).number - x;
    if (Number.isNaN(difference)) throw new NotConverged(name, `no number at ${x}`);
    return difference;
  };
  const closedAt = (at: number): Value => {
    const x = put(at);
    const out = next(x);
    if (!(Math.abs(out.number - at) <= within))
      throw new NotConverged(name, `it jumps by ${Math.abs(out.number - at)} about ${at}`);
    return closing(x.of).work({ out, put: x, within: constant(within, x.of, 'tolerance of the loop') });
  };
  // Far finer than the tolerance, because a steep loop turns a small step into a large difference.
  const closed = (low: number, high: number): Value => closedAt(root(gap, low, high, within * 1e-6));
  const first = gap(from.number);
  if (!(first > 0)) {
    if (first < -within) throw new NoSolution(name, `${otherwise} (it already falls below its start)`);
    return closedAt(from.number);
  }
  const start: Climb = rising
    ? climb(gap, from.number, first, most.number, width / SCAN)
    : { at: from.number, gap: first };
  if (start.gap === 0) return closedAt(start.at);
  if (start.beyond !== undefined) return closed(start.at, start.beyond);
  const rest = most.number - start.at;
  const xs = Array.from({ length: SCAN + 1 }, (_, i) => (i === SCAN ? most.number : start.at + (rest * i) / SCAN));
  const gaps = [start.gap];
  /** Lower than one neighbour and no higher than the other; an end may go on falling. */
  const isLow = (i: number): boolean => {
    const [left, here, right] = [gaps[i - 1] ?? Infinity, gaps[i]!, gaps[i + 1] ?? Infinity];
    return here <= left && here <= right && !(here === left && here === right);
  };
  for (let i = 1; i <= SCAN + 1; i++) {
    if (i <= SCAN) gaps.push(gap(xs[i]!));
    // The stretch round the point before is looked into before a crossing behind it is taken.
    if (isLow(i - 1) && (gaps[i] ?? 1) > 0) {
      const low = xs[Math.max(0, i - 2)]!;
      const below = dipIn(gap, low, xs[Math.min(SCAN, i)]!);
      if (below !== undefined) return closed(low, below);
    }
    if (i <= SCAN && !(gaps[i]! > 0)) return closed(xs[i - 1]!, xs[i]!);
  }
  throw new NoSolution(name, otherwise);
};
