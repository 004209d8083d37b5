/** Looks for the highest value of something over a box, where nothing says at which end of a range it lies. */
import { halton, peak } from '../kernel/index.ts';

/** One range behind a question. */
export interface Axis {
  readonly path: string;
  readonly low: number;
  readonly high: number;
  readonly range: 'spread' | 'doubt';
}

/** A range over which something is looked for; of one with `ends` only they are tried. */
export type FreeAxis = Axis & { readonly ends?: true };

/** One number for each fact that is a range; a fact that is absent stands at its middle. */
export type Scenario = ReadonlyMap<string, number>;
export type Point = Map<string, number>;

export interface Spot {
  readonly point: Point;
  readonly y: number;
}

export interface Effort {
  /** Points laid evenly over one range. */
  readonly grid: number;
  /** Evaluations spent on each of the best hills of a range. */
  readonly refine: number;
  /** Points scattered over the box, for each of its first ranges. */
  readonly scatter: number;
  /** Points from which it climbs range by range. */
  readonly starts: number;
  readonly rounds: number;
}

export const thorough: Effort = { grid: 17, refine: 10, scatter: 12, starts: 2, rounds: 3 };
/** For a box of several ranges: the scatter finds the hill, and few points a range climb it. */
export const several: Effort = { grid: 5, refine: 6, scatter: 8, starts: 4, rounds: 4 };
/** For a search within a search. */
export const light: Effort = { grid: 5, refine: 5, scatter: 4, starts: 1, rounds: 2 };

/** Search that goes over a range evenly and then into the most promising hills; remembers what it saw. */
const searchOne = (
  f: (x: number) => number,
  low: number,
  high: number,
  { grid, refine }: Effort,
): { readonly x: number; readonly y: number } => {
  const xs = Array.from({ length: grid }, (_, i) => (i === grid - 1 ? high : low + ((high - low) * i) / (grid - 1)));
  const ys = xs.map(f);
  let best = { x: xs[0]!, y: ys[0]! };
  const hills: number[] = [];
  for (let i = 0; i < grid; i++) {
    const [left, here, right] = [ys[i - 1] ?? -Infinity, ys[i]!, ys[i + 1] ?? -Infinity];
    if (here > best.y) best = { x: xs[i]!, y: here };
    // On flat ground every neighbour says the same, and nothing is to be climbed.
    const flat = here === (ys[i - 1] ?? here) && here === (ys[i + 1] ?? here);
    if (here >= left && here >= right && !flat) hills.push(i);
  }
  if (best.y === Infinity) return best;
  hills.sort((a, b) => ys[b]! - ys[a]!);
  for (const i of hills.slice(0, 2)) {
    const [a, b] = [xs[Math.max(0, i - 1)]!, xs[Math.min(grid - 1, i + 1)]!];
    const here = ys[i]!;
    const lowest = Math.min(ys[i - 1] ?? here, ys[i + 1] ?? here);
    // Between two points of the grid a hill hardly rises further than it already stands above the lower of its neighbours.
    if (here + (here - lowest) < best.y) continue;
    // A hill at the end of the range is the end itself, unless it rises inward.
    if (i === 0 || i === grid - 1) {
      const inward = xs[i]! + (i === 0 ? 1 : -1) * ((high - low) / (grid - 1) / 8);
      if (!(f(inward) > here)) continue;
    }
    const found = peak(f, a, b, refine);
    if (found.y > best.y) best = found;
  }
  return best;
};

/** The better end of a range that goes one way. */
const betterEnd = (f: (x: number) => number, { low, high }: Axis): { readonly x: number; readonly y: number } => {
  const [below, above] = [f(low), f(high)];
  return below > above ? { x: low, y: below } : { x: high, y: above };
};

const along = (f: (x: number) => number, axis: FreeAxis, effort: Effort): { readonly x: number; readonly y: number } =>
  axis.ends ? betterEnd(f, axis) : searchOne(f, axis.low, axis.high, effort);

const put = (base: ReadonlyMap<string, number>, axis: Axis, x: number): Point => new Map(base).set(axis.path, x);

/** Highest value over the corners of a box: all of them where they are few, else by going from corner to corner uphill. */
const bestCorner = (
  f: (point: Point) => number,
  fixed: ReadonlyMap<string, number>,
  free: readonly FreeAxis[],
): Spot => {
  const seen = new Map<number, Spot>();
  const at = (corner: number): Spot => {
    let spot = seen.get(corner);
    if (!spot) {
      const point = new Map(fixed);
      free.forEach(({ path, low, high }, d) => point.set(path, (corner >> d) & 1 ? high : low));
      seen.set(corner, (spot = { point, y: f(point) }));
    }
    return spot;
  };
  const all = 2 ** free.length - 1;
  if (free.length <= 3) for (let corner = 0; corner <= all; corner++) at(corner);
  else
    for (const start of [all, 0]) {
      let here = start;
      for (let next = -1; next !== here;) {
        next = here;
        for (let d = 0; d < free.length; d++) if (at(here ^ (1 << d)).y > at(here).y) here ^= 1 << d;
      }
    }
  return [...seen.values()].reduce((a, b) => (b.y > a.y ? b : a));
};

/** Range by range uphill until a round brings nothing; a few rounds settle all but crossed ridges. */
export const climbed = (f: (point: Point) => number, start: Spot, free: readonly FreeAxis[], effort: Effort): Spot => {
  let here = start;
  for (let round = 0; round < effort.rounds && here.y < Infinity; round++) {
    const before = here.y;
    for (const axis of free) {
      const { x, y } = along((at) => f(put(here.point, axis, at)), axis, effort);
      if (y > here.y) here = { point: put(here.point, axis, x), y };
    }
    if (!(here.y > before + 1e-9 * Math.abs(before))) break;
  }
  return here;
};

/** Ranges beyond which corners no longer have a number of their own. */
const MOST_CORNERED = 30;

/** Highest value of `f` over a box of free axes, on top of fixed coordinates. */
export const search = (
  f: (point: Point) => number,
  fixed: ReadonlyMap<string, number>,
  free: readonly FreeAxis[],
  effort: Effort = thorough,
): Spot => {
  if (free.length === 0) {
    const point = new Map(fixed);
    return { point, y: f(point) };
  }
  if (free.length === 1) {
    const [axis] = free as [Axis];
    const { x, y } = along((at) => f(put(fixed, axis, at)), axis, effort);
    return { point: put(fixed, axis, x), y };
  }
  const inner = free.filter(({ ends }) => !ends).length;
  if (inner === 0 && free.length <= MOST_CORNERED) return bestCorner(f, fixed, free);
  const spend = effort === thorough ? several : effort;
  const spots: Spot[] = [];
  const see = (share: (d: number) => number): void => {
    const point = new Map(fixed);
    free.forEach(({ path, low, high, ends }, d) => {
      const u = ends ? Math.round(share(d)) : share(d);
      point.set(path, u === 1 ? high : low + (high - low) * u);
    });
    spots.push({ point, y: f(point) });
  };
  for (let bits = 0; bits < 2 ** Math.min(free.length, 5); bits++) see((d) => (bits >> Math.min(d, 4)) & 1);
  const scatter = spend.scatter * Math.min(inner, 6);
  for (let i = 1; i <= scatter; i++) {
    const u = halton(i, free.length);
    see((d) => u[d]!);
  }
  spots.sort((a, b) => b.y - a.y);
  let best = spots[0]!;
  for (const start of spots.slice(0, spend.starts)) {
    const here = climbed(f, start, free, spend);
    if (here.y > best.y) best = here;
  }
  return best;
};
