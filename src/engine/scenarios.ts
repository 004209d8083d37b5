/**
 * Forms a verdict over all spread at each point of the box of doubts. Slopes say which end of a range is worst;
 * where they say nothing, the inside of the range is searched.
 */
import { halton, peak, type Slope } from '../kernel/index.ts';
import type { Scenario } from './evaluate.ts';

/** One range behind a question. */
export interface Axis {
  readonly path: string;
  readonly low: number;
  readonly high: number;
  readonly range: 'spread' | 'doubt';
}

/** What is asked of one scenario: how much of the limit is used, or why it could not be told. */
export interface Answer {
  readonly usage: number;
  /** Paths read that are ranges, and how the usage moves with each where that is known. */
  readonly slopes: ReadonlyMap<string, Slope>;
  readonly axes: readonly Axis[];
  readonly trouble?: Error;
}

export interface Extreme {
  readonly scenario: Scenario;
  readonly usage: number;
}

export interface Solved {
  /** Worst over spread and doubt. */
  readonly worst: Extreme;
  /** Worst over spread at the doubts that suit best; the same as worst when nothing is doubtful. */
  readonly best: Extreme;
  readonly axes: readonly Axis[];
  /** True where an end was found by searching inside a range. */
  readonly searched: boolean;
  /** Set when some scenario could not be worked out. */
  readonly trouble?: Error;
  /** True when a probe beat the ends that the slopes named: a declared slope is wrong. */
  readonly slopeBroken: boolean;
}

export type Ask = (scenario: Scenario) => Answer;

type Sense = 1 | -1;
type Point = Map<string, number>;

const GRID = 17;
const REFINE = 10;

/** Search that goes over a range evenly and then into the most promising hollow; remembers what it saw. */
const searchOne = (f: (x: number) => number, low: number, high: number): { x: number; y: number } => {
  const xs = Array.from({ length: GRID }, (_, i) => low + ((high - low) * i) / (GRID - 1));
  const ys = xs.map(f);
  let best = { x: xs[0]!, y: ys[0]! };
  const hills: number[] = [];
  for (let i = 0; i < GRID; i++) {
    if (ys[i]! > best.y) best = { x: xs[i]!, y: ys[i]! };
    if (ys[i]! >= (ys[i - 1] ?? -Infinity) && ys[i]! >= (ys[i + 1] ?? -Infinity)) hills.push(i);
  }
  hills.sort((a, b) => ys[b]! - ys[a]!);
  // A flat top needs no refining: every neighbour says the same.
  for (const i of hills.slice(0, 2)) {
    const [a, b] = [xs[Math.max(0, i - 1)]!, xs[Math.min(GRID - 1, i + 1)]!];
    if (ys[i] === (ys[i - 1] ?? ys[i]) && ys[i] === (ys[i + 1] ?? ys[i])) continue;
    const found = peak(f, a, b, REFINE);
    if (found.y > best.y) best = found;
  }
  return best;
};

/** Highest value of `f` over a box of free axes, on top of fixed coordinates. */
const search = (f: (point: Point) => number, fixed: Point, free: readonly Axis[]): { point: Point; y: number } => {
  const put = (base: Point, axis: Axis, x: number): Point => new Map(base).set(axis.path, x);
  if (free.length === 0) return { point: fixed, y: f(fixed) };
  if (free.length === 1) {
    const [axis] = free as [Axis];
    const { x, y } = searchOne((at) => f(put(fixed, axis, at)), axis.low, axis.high);
    return { point: put(fixed, axis, x), y };
  }
  const starts: Point[] = [];
  const corner = (bits: number) =>
    new Map([...fixed, ...free.map((a, i) => [a.path, (bits >> i) & 1 ? a.high : a.low] as const)]);
  for (let bits = 0; bits < 2 ** Math.min(free.length, 5); bits++) starts.push(corner(bits));
  const scatter = 12 * Math.min(free.length, 6);
  for (let i = 1; i <= scatter; i++) {
    const u = halton(i, free.length);
    starts.push(new Map([...fixed, ...free.map((a, d) => [a.path, a.low + (a.high - a.low) * u[d]!] as const)]));
  }
  const ranked = starts.map((point) => ({ point, y: f(point) })).sort((a, b) => b.y - a.y);
  let best = ranked[0]!;
  for (const start of ranked.slice(0, 2)) {
    let here = start;
    // Coordinate by coordinate until a round brings nothing; two rounds settle all but crossed ridges.
    for (let round = 0; round < 3; round++) {
      const before = here.y;
      for (const axis of free) {
        const { x, y } = searchOne((at) => f(put(here.point, axis, at)), axis.low, axis.high);
        if (y > here.y) here = { point: put(here.point, axis, x), y };
      }
      if (!(here.y > before + 1e-9 * Math.abs(before))) break;
    }
    if (here.y > best.y) best = here;
  }
  return best;
};

const worth = (answer: Answer): number => (answer.trouble || Number.isNaN(answer.usage) ? -1 : answer.usage);

/**
 * Solves one question over its ranges. `narrowed` replaces the ends of some ranges, for asking what a measurement would do.
 */
export const solve = (ask: Ask, narrowed: ReadonlyMap<string, readonly [number, number]> = new Map()): Solved => {
  const axes = new Map<string, Axis>();
  const slopes = new Map<string, Slope>();
  let trouble: Error | undefined;
  const put = (axis: Axis): Axis => {
    const ends = narrowed.get(axis.path);
    return ends ? { ...axis, low: ends[0], high: ends[1] } : axis;
  };
  const hear = (answer: Answer): void => {
    trouble ??= answer.trouble;
    for (const axis of answer.axes) if (!axes.has(axis.path)) axes.set(axis.path, put(axis));
    // A scenario that could not be worked out has no slopes to tell; the others speak for the fact.
    if (answer.trouble) return;
    for (const { path } of answer.axes) {
      const heard = answer.slopes.get(path) ?? 'either';
      const before = slopes.get(path);
      slopes.set(path, before === undefined || before === heard ? heard : 'either');
    }
  };
  const told = (point: Point): Answer => {
    const answer = ask(point);
    hear(answer);
    return answer;
  };
  const end = (axis: Axis, sense: Sense): number | undefined => {
    const slope = slopes.get(axis.path) ?? 'either';
    if (slope === 'either') return undefined;
    return (slope === 'up') === (sense === 1) ? axis.high : axis.low;
  };
  const known = () => `${axes.size}:${[...slopes].map(([p, s]) => p + s).join()}`;
  const spread = () => [...axes.values()].filter((a) => a.range === 'spread');
  const doubts = () => [...axes.values()].filter((a) => a.range === 'doubt' && a.high > a.low);

  const split = (list: readonly Axis[], sense: Sense, onto: Point): { fixed: Point; free: Axis[] } => {
    const fixed = new Map(onto);
    const free: Axis[] = [];
    for (const axis of list) {
      const x = end(axis, sense);
      if (x === undefined) free.push(axis);
      else fixed.set(axis.path, x);
    }
    return { fixed, free };
  };

  const worstOf = (list: readonly Axis[], onto: Point): { point: Point; y: number; free: number } => {
    const { fixed, free } = split(list, 1, onto);
    return { ...search((point) => worth(told(point)), fixed, free), free: free.length };
  };

  told(new Map([...narrowed].map(([path, [low, high]]) => [path, (low + high) / 2])));
  let before = '';
  let worst = { point: new Map() as Point, y: -1, free: 0 };
  // Another end may read other facts; go on until nothing new is read.
  for (let i = 0; i < 6 && known() !== before; i++) {
    before = known();
    worst = worstOf([...axes.values()], new Map());
  }
  const bestOver = (): { point: Point; y: number; free: number } => {
    const list = doubts();
    if (list.length === 0) return worst;
    const { fixed, free } = split(list, -1, new Map());
    let found = { point: new Map() as Point, y: Infinity, free: 0 };
    const outer = search(
      (point) => {
        const inner = worstOf(spread(), point);
        if (inner.y < found.y) found = inner;
        return -inner.y;
      },
      fixed,
      free,
    );
    return { point: found.point.size ? found.point : outer.point, y: -outer.y, free: free.length + found.free };
  };
  // What lies below the limit everywhere holds; the best case then only tells how wide the bracket is.
  let best = bestOver();

  let slopeBroken = false;
  const all = [...axes.values()].filter((a) => a.high > a.low);
  for (let i = 1; i <= 3 && all.length > 0; i++) {
    const u = halton(i, all.length);
    const probe = new Map(all.map((a, d) => [a.path, a.low + (a.high - a.low) * u[d]!] as const));
    const y = worth(told(probe));
    if (y > worst.y * (1 + 1e-9) + 1e-12) {
      slopeBroken = worst.free < all.length;
      for (const axis of all) slopes.set(axis.path, 'either');
      worst = worstOf(all, new Map());
      best = bestOver();
      break;
    }
  }
  return {
    worst: { scenario: worst.point, usage: worst.y < 0 ? NaN : worst.y },
    best: { scenario: best.point, usage: best.y < 0 ? NaN : best.y },
    axes: [...axes.values()],
    searched: worst.free > 0 || best.free > 0,
    ...(trouble ? { trouble } : {}),
    slopeBroken,
  };
};

/** Least and greatest value of something over all its ranges. */
export const extremes = (
  ask: (scenario: Scenario) => {
    readonly number: number;
    readonly slopes: ReadonlyMap<string, Slope>;
    readonly axes: readonly Axis[];
  },
): { readonly low: number; readonly high: number } => {
  const over = (sense: Sense): number => {
    const axes = new Map<string, Axis>();
    const slopes = new Map<string, Slope>();
    const told = (point: Scenario): number => {
      const answer = ask(point);
      for (const axis of answer.axes) {
        axes.set(axis.path, axis);
        const heard = answer.slopes.get(axis.path) ?? 'either';
        const before = slopes.get(axis.path);
        slopes.set(axis.path, before === undefined || before === heard ? heard : 'either');
      }
      return answer.number * sense;
    };
    told(new Map());
    let known = -1;
    let y = NaN;
    for (let i = 0; i < 6 && known !== axes.size; i++) {
      known = axes.size;
      const fixed: Point = new Map();
      const free: Axis[] = [];
      for (const axis of axes.values()) {
        const slope = slopes.get(axis.path) ?? 'either';
        if (slope === 'either') free.push(axis);
        else fixed.set(axis.path, (slope === 'up') === (sense === 1) ? axis.high : axis.low);
      }
      y = search(told, fixed, free).y;
    }
    return y * sense;
  };
  return { low: over(-1), high: over(1) };
};
