/**
 * Forms a verdict over all spread at each point of the box of doubts. Slopes say which end of a range is worst;
 * where they say nothing, the inside of the range is searched.
 */
import { halton, NotConverged, NotStated, type Slope } from '../kernel/index.ts';
import {
  climbed,
  light,
  search,
  thorough,
  type Axis,
  type Effort,
  type FreeAxis,
  type Point,
  type Scenario,
  type Spot,
} from './search.ts';

/** Ends that replace those of some ranges, for asking what a measurement would do. */
export type Narrowed = ReadonlyMap<string, readonly [number, number]>;

/** What is asked of one scenario: how much of the limit is used, or why it could not be told. */
export interface Answer {
  readonly usage: number;
  /** Ranges that were read. */
  readonly axes: readonly Axis[];
  /** How the usage moves with each of them where that is known; nothing when this scenario cannot tell. */
  readonly slopes?: ReadonlyMap<string, Slope>;
  readonly trouble?: Error;
  /** The question does not arise in this scenario. */
  readonly moot?: true;
}

export interface Extreme {
  readonly scenario: Scenario;
  readonly usage: number;
}

export interface Solved {
  /** Worst over spread and doubt. */
  readonly worst: Extreme;
  /** Worst over spread at the doubts that suit best; the same as worst when nothing is doubtful. Worked out when read. */
  readonly best: Extreme;
  readonly axes: readonly Axis[];
  /** How the usage moves with each range; `either` where it was searched. */
  readonly slopes: ReadonlyMap<string, Slope>;
  /** True where an end was found by searching inside a range. */
  readonly searched: boolean;
  /** Set when some scenario could not be worked out. */
  readonly trouble?: Error;
  /** True when at some point of the box of doubts nothing could be worked out, so that it is not known to fail there. */
  readonly blank: boolean;
  /** True when the question arises in no scenario. */
  readonly moot: boolean;
  /** True when a probe beat the ends that the slopes named: a declared slope is wrong. */
  readonly slopeBroken: boolean;
}

/** @param quietly true for a probe, which leaves no trace in what was read */
export type Ask = (scenario: Scenario, quietly?: true) => Answer;

type Sense = 1 | -1;
type Found = Spot & { readonly free: number };
type Best = Found & { readonly blank: boolean };

/** Rounds after which a question that keeps reading new facts is taken as it is. */
const ROUNDS = 6;
/** Scenarios without a number that are looked at again, to see whether their doubts are known to fail. */
const TROUBLED = 8;
/** Share of the limit above which several ranges are looked through finely. */
const CLOSE = 0.97;
/** Below every usage, so that a scenario without a number never hides one that has a number. */
const NOTHING = -1;
const MOOT = -0.5;

const worth = ({ usage, trouble, moot }: Answer): number => (trouble ? NOTHING : moot ? MOOT : usage);
const isWide = ({ low, high }: Axis): boolean => high > low;
const within = (free: readonly FreeAxis[]): number => free.filter(({ ends }) => !ends).length;
/** By more than the noise of a numerical method. */
const exceeds = (a: number, b: number): boolean => a > b * (1 + 1e-6) + 1e-9;

/** A number is wanted of every scenario: what is no number is trouble, whoever made it. */
const numbered = (answer: Answer): Answer =>
  Number.isNaN(answer.usage) && !answer.trouble && !answer.moot
    ? { usage: NaN, axes: answer.axes, trouble: new NotConverged('the check', 'its result is no number') }
    : answer;

/** Slopes for which the worst of a range is at one of its ends, though at which is not known. */
const endsOnly = (slope: Slope): boolean => slope === 'one-way' || slope === 'flat';

/** How the number moves with a range by all that its scenarios say. */
const together = (heard: ReadonlySet<Slope>): Slope => {
  const [first, second, ...others] = [...heard];
  if (first !== undefined && second === undefined) return first;
  // Across a threshold it moves one way, where it does so on the one side and not at all on the other.
  return others.length === 0 && heard.has('flat') && !heard.has('either') ? 'one-way' : 'either';
};

/** What has been heard of a question so far: its ranges, its slopes, and which end of a range is worst. */
class Hearing {
  readonly axes = new Map<string, Axis>();
  readonly slopes = new Map<string, Slope>();
  /** Moves on whenever a range or a slope is new. */
  version = 0;
  readonly #heard = new Map<readonly Axis[], Set<ReadonlyMap<string, Slope>>>();
  readonly #said = new Map<string, Set<Slope>>();
  readonly told = new Set<ReadonlyMap<string, Slope>>();

  constructor(readonly narrowed: Narrowed) {}

  hear(axes: readonly Axis[], slopes: ReadonlyMap<string, Slope> | undefined): void {
    let before = this.#heard.get(axes);
    if (!before) {
      this.#heard.set(axes, (before = new Set()));
      for (const axis of axes) if (!this.axes.has(axis.path)) this.#add(axis);
    }
    if (!slopes || before.has(slopes)) return;
    before.add(slopes);
    this.told.add(slopes);
    for (const { path } of axes) {
      let heard = this.#said.get(path);
      if (!heard) this.#said.set(path, (heard = new Set()));
      heard.add(slopes.get(path) ?? 'either');
      const now = together(heard);
      if (now === this.slopes.get(path)) continue;
      this.slopes.set(path, now);
      this.version++;
    }
  }

  #add(axis: Axis): void {
    const ends = this.narrowed.get(axis.path);
    this.axes.set(axis.path, ends ? { ...axis, low: ends[0], high: ends[1] } : axis);
    this.version++;
  }

  /** Searches inside every range from now on, or only inside those of which the ends were thought to be enough. */
  distrust(which: 'all' | 'ends'): void {
    for (const [path, slope] of this.slopes) {
      if (which === 'ends' && !endsOnly(slope)) continue;
      this.#said.get(path)?.add('either');
      this.slopes.set(path, 'either');
      this.version++;
    }
  }

  wide(range?: Axis['range']): Axis[] {
    return [...this.axes.values()].filter((axis) => isWide(axis) && (range === undefined || axis.range === range));
  }

  /** Puts every range whose slope is known at its worst end, or its best; the others are free, or free to be at an end. */
  split(list: readonly Axis[], sense: Sense, onto: ReadonlyMap<string, number>): { fixed: Point; free: FreeAxis[] } {
    const fixed = new Map(onto);
    const free: FreeAxis[] = [];
    for (const axis of list) {
      const slope = this.slopes.get(axis.path) ?? 'either';
      if (slope === 'either') free.push(axis);
      else if (slope === 'flat' || (slope === 'one-way' && sense === 1)) free.push({ ...axis, ends: true });
      // The worst over all spread may turn round inside a doubt, though each part of it goes one way.
      else if (slope === 'one-way') free.push(axis);
      else fixed.set(axis.path, (slope === 'up') === (sense === 1) ? axis.high : axis.low);
    }
    return { fixed, free };
  }
}

/** Slopes that a probe has not contradicted. What was made alike has the same ones, whatever its numbers. */
const probed = new WeakSet<ReadonlyMap<string, Slope>>();

/**
 * Solves one question over its ranges.
 *
 * @param trusting takes declared slopes as they are; else they are probed wherever something is made in a new way
 */
export const solve = (ask: Ask, narrowed: Narrowed = new Map(), trusting = false): Solved => {
  const hearing = new Hearing(narrowed);
  // Where a point does not say, a narrowed range stands at its own middle and not at that of the whole.
  const base: Point = new Map([...narrowed].map(([path, [low, high]]) => [path, low + (high - low) / 2]));
  let top: Spot = { point: base, y: -Infinity };
  let trouble: Error | undefined;
  let asked = false;
  const troubled: Point[] = [];
  const told = (point: Point): number => {
    const answer = numbered(ask(point));
    hearing.hear(answer.axes, answer.trouble || answer.moot ? undefined : answer.slopes);
    if (answer.trouble) {
      trouble ??= answer.trouble;
      if (troubled.length < TROUBLED) troubled.push(point);
    }
    asked ||= !answer.moot;
    const y = worth(answer);
    if (y > top.y) top = { point, y };
    return y;
  };

  const worstOf = (list: readonly Axis[], onto: ReadonlyMap<string, number>, effort: Effort = thorough): Found => {
    const { fixed, free } = hearing.split(list, 1, onto);
    return { ...search(told, fixed, free, effort), free: within(free) };
  };
  const bestOver = (): Best => {
    const doubts = hearing.wide('doubt');
    if (doubts.length === 0) return { ...worst, blank: worst.y === NOTHING };
    const { fixed, free } = hearing.split(doubts, -1, base);
    let blank = false;
    // Doubts at which nothing is known are no best case; they only keep the rest from being called a failure.
    const over = (point: Point, effort: Effort): Found => {
      const found = worstOf(hearing.wide('spread'), point, effort);
      blank ||= found.y === NOTHING;
      return found;
    };
    const from = (): Spot =>
      search(
        (point) => {
          const { y } = over(point, light);
          return y === NOTHING ? -Infinity : -y;
        },
        fixed,
        free,
      );
    let best = over(free.length > 0 ? from().point : fixed, thorough);
    for (const point of troubled.slice()) {
      const there = over(
        new Map([...base, ...doubts.map((a) => [a.path, point.get(a.path) ?? (a.low + a.high) / 2] as const)]),
        thorough,
      );
      if (there.y !== NOTHING && (there.y < best.y || best.y === NOTHING)) best = there;
    }
    return { ...best, free: within(free) + best.free, blank };
  };

  told(base);
  let worst: Found = { point: base, y: NOTHING, free: 0 };
  // Another end may read other facts; go on until nothing new is read.
  const settle = (): void => {
    for (let round = 0, before = -1; round < ROUNDS && hearing.version !== before; round++) {
      before = hearing.version;
      worst = worstOf(hearing.wide(), base);
    }
  };
  settle();

  let slopeBroken = false;
  const all = hearing.wide();
  const { free } = hearing.split(all, 1, base);
  const beyond = (a: number, b: number): boolean => a >= 0 && b >= 0 && exceeds(a, b);
  // The far corner is asked of every question: what cannot be worked out there is no secret of whoever probes.
  if (all.length > 0) told(hearing.split(all, -1, base).fixed);
  const probe = (): Point => {
    const u = halton(1, all.length);
    return new Map([...base, ...all.map((a, d) => [a.path, a.low + (a.high - a.low) * u[d]!] as const)]);
  };
  // Between ends that were thought to be enough one point is always looked at.
  if (free.some(({ ends }) => ends)) told(probe());
  if (!trusting && free.length < all.length && [...hearing.told].some((slopes) => !probed.has(slopes))) {
    // A probe only tells whether slopes are right, so that no answer depends on whether there was one.
    const quietly = (point: Point): number => {
      try {
        return worth(numbered(ask(point, true)));
      } catch (error) {
        if (!(error instanceof NotStated)) throw error;
        return NOTHING;
      }
    };
    const [at, onward, back] = [probe(), hearing.split(all, 1, probe()).fixed, hearing.split(all, -1, probe()).fixed];
    const y = quietly(at);
    slopeBroken = beyond(y, quietly(onward)) || beyond(quietly(back), y);
    if (!slopeBroken) for (const slopes of hearing.told) probed.add(slopes);
  }
  if (slopeBroken) {
    hearing.distrust('all');
    settle();
  } else if (beyond(top.y, worst.y) && [...hearing.slopes.values()].some(endsOnly)) {
    // Something between the ends was worse than they are.
    hearing.distrust('ends');
    settle();
  }
  // So near the limit that a finer look may change the verdict, each range is looked through finely once more.
  if (worst.free > 1 && worst.y > CLOSE && worst.y <= 1) {
    const near = hearing.split(hearing.wide(), 1, base).free;
    worst = { ...worst, ...climbed(told, { point: new Map(worst.point), y: worst.y }, near, thorough) };
  }
  // Whatever was seen on the way counts: a search may pass over a height that something else came upon.
  const raise = (): void => {
    if (top.y > worst.y) worst = { ...worst, point: top.point, y: top.y };
  };
  const bestSettled = (): Best => {
    let best = bestOver();
    for (let round = 1; round < ROUNDS; round++) {
      const before = hearing.version;
      settle();
      best = bestOver();
      if (hearing.version === before) break;
    }
    return best;
  };
  const extreme = ({ point, y }: Spot): Extreme => ({
    scenario: point,
    usage: y === NOTHING ? NaN : Math.max(0, y),
  });
  raise();
  // Where even the worst holds, how well the best does changes no verdict: it is looked for when somebody reads it.
  const settledByWorst = !trouble && worst.y >= 0 && worst.y <= 1;
  let best: Best | undefined = settledByWorst ? undefined : bestSettled();
  raise();
  /** The best, or the worst where something that it needs is not stated. */
  const bestIfStated = (): Best => {
    try {
      return bestOver();
    } catch (error) {
      if (!(error instanceof NotStated)) throw error;
      return { ...worst, blank: true };
    }
  };
  const noDoubt = (): boolean => hearing.wide('doubt').length === 0;
  if (best && noDoubt()) best = { ...worst, blank: worst.y === NOTHING };
  let bestExtreme: Extreme | undefined;
  return {
    worst: extreme(worst),
    get best() {
      best ??= noDoubt() ? { ...worst, blank: false } : bestIfStated();
      return (bestExtreme ??= extreme(best));
    },
    axes: [...hearing.axes.values()],
    slopes: new Map(hearing.slopes),
    searched: worst.free > 0 || (best?.free ?? 0) > 0,
    ...(trouble ? { trouble } : {}),
    blank: best?.blank ?? false,
    moot: !asked,
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
    const hearing = new Hearing(new Map());
    let top = -Infinity;
    const told = (point: Scenario): number => {
      const { number, slopes, axes } = ask(point);
      if (Number.isNaN(number)) throw new NotConverged('a fact', 'it is no number in some scenario');
      hearing.hear(axes, slopes);
      top = Math.max(top, number * sense);
      return number * sense;
    };
    told(new Map());
    for (let round = 0, before = -1; round < ROUNDS && hearing.version !== before; round++) {
      before = hearing.version;
      const { fixed, free } = hearing.split(hearing.wide(), sense, new Map());
      search(told, fixed, free);
    }
    return top * sense;
  };
  return { low: over(-1), high: over(1) };
};
