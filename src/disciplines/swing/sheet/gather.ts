/** Gathers the numbers of the figures and cures, at the stated middle of every range. */
import { need } from '../../../contract/index.ts';
import { constant, root, seeded, type Value } from '../../../kernel/index.ts';
import { exactInterval } from '../../../kernel/binomial.ts';
import {
  arrivingOffset,
  arrivingSideways,
  atLiftOff,
  axisOf,
  belowHook,
  belowPivot,
  carriersOf,
  comingDown,
  dockOf,
  dwellOf,
  fadingOf,
  hangingOf,
  landing,
  leavingAt,
  longest,
  missesAllowed,
  profileOf,
  reachOf,
  rides,
  shortest,
} from '../calc/book.ts';
import type { DockCase, TravelCase } from '../calc/cures.ts';
import { hangingLoad } from '../calc/hanging.ts';
import { leanAt } from '../calc/hoisting.ts';
import { missShare, worstMissShare } from '../calc/misses.ts';
import { drives, type DrivenAxis, type PlayPlan } from '../calc/plays.ts';
import { GRAVITY } from '../calc/takes.ts';
import { Track, type Profile } from '../calc/track.ts';
import { catchReach } from '../calc/size.ts';
import { player } from '../data/player.ts';
import type { Arrival } from '../figures/arrival.ts';
import type { Growth } from '../figures/growth.ts';
import type { MissFigure } from '../figures/misses.ts';
import type { Plan } from '../figures/plan.ts';
import { scaleOf } from '../figures/scale.ts';
import { misses, type Misses } from '../studies/misses.ts';
import { text, type Sheet } from './words.ts';

const TOLERANCE = 1e-6;
const CURVE = 40;

const endsOf = (sheet: Sheet, run: () => Value): readonly [number, number] => {
  const { low, high } = sheet.ends(run);
  return [low, high];
};

/** How an axis moves, as plain numbers. */
export const plainProfile = (sheet: Sheet, axis: string): Profile => {
  const { speed, acceleration, shape, jerk } = profileOf(sheet, axis);
  const plain = { speed: speed.number, acceleration: acceleration.number };
  return shape === 's-curve' && jerk ? { ...plain, jerk: jerk.number } : plain;
};

/** What a travel must be cured of, where it fades slowest; or NotStated. */
export const travelCase = (sheet: Sheet, hoist: string, axis: string): TravelCase => ({
  gravity: GRAVITY,
  fadingTime: endsOf(sheet, () => fadingOf(sheet, hoist))[1],
  lengths: endsOf(sheet, () => shortest(sheet, hoist)),
  distance: profileOf(sheet, axis).distance.number,
  profile: plainProfile(sheet, axis),
  dwell: dwellOf(sheet).number,
  calm: need(hangingOf(sheet), 'calm').calm.number,
});

/** Lift-off offset that must still dock, with what a drive left: the farthest ordinary one, or the one that no more than may miss pass. */
const farthestOffset = (sheet: Sheet, hoist: string, code: DockCode, driven: number): number => {
  if (code === 'SWING-030') return endsOf(sheet, () => leavingAt(sheet, hoist))[1];
  const share = missesAllowed(sheet, hoist).number;
  const deviations = root((z) => worstMissShare({ reach: z, left: 0, scatter: 1 }) - share, 0, 8, 1e-6);
  const scatter = () => need(hangingOf(sheet), 'lift-off-scatter')['lift-off-scatter'];
  return driven + deviations * endsOf(sheet, scatter)[1];
};

/** Questions that the same cures may answer: of the ordinary lift-offs, and of their scatter. */
export const dockCodes = ['SWING-030', 'SWING-060'] as const;
export type DockCode = (typeof dockCodes)[number];

/** What docking must be cured of, where it fades slowest; or NotStated. */
export const dockCase = (sheet: Sheet, hoist: string, code: DockCode): DockCase => {
  const driven = endsOf(sheet, () => comingDown(sheet, hoist))[1];
  return {
    gravity: GRAVITY,
    fadingTime: endsOf(sheet, () => fadingOf(sheet, hoist))[1],
    lengths: endsOf(sheet, () => atLiftOff(sheet, hoist)),
    up: shortest(sheet, hoist).number,
    belowHook: belowHook(sheet).number,
    offset: farthestOffset(sheet, hoist, code, driven),
    driven,
    hoist: plainProfile(sheet, hoist),
    head: hangingOf(sheet).head?.number ?? 0,
    reach: reachOf(sheet, hoist).number,
  };
};

/** One lift-off over time, at the farthest of the ordinary offsets. */
export const arrivalOf = (sheet: Sheet, hoist: string): Arrival => {
  const offset = sheet.ends(() => leavingAt(sheet, hoist)).high;
  const [long, short, below] = [atLiftOff(sheet, hoist), shortest(sheet, hoist), belowHook(sheet)].map(
    (v) => v.number,
  ) as [number, number, number];
  const profile = plainProfile(sheet, hoist);
  const track = new Track(long).travel('line', short - long, profile);
  const unit = scaleOf(sheet, 'length', offset);
  const fading = fadingOf(sheet, hoist).number;
  const path: (readonly [number, number])[] = [];
  const envelope: (readonly [number, number])[] = [];
  const state = new Float64Array(4);
  const load = hangingLoad({ gravity: GRAVITY, fadingTime: fading, tolerance: TOLERANCE }, (from, to) => {
    for (const share of [0, 0.25, 0.5, 0.75]) {
      const t = from + share * (to - from);
      load.at(t, state);
      path.push([t, unit.of((track.at(t).line - below) * state[0]!)]);
    }
  });
  load.hang(track, offset);
  load.run(track);
  const ramps = Math.sqrt((GRAVITY + profile.acceleration) / (GRAVITY - profile.acceleration));
  for (let i = 0; i <= CURVE; i++) {
    const t = (track.end * i) / CURVE;
    const { line } = track.at(t);
    envelope.push([
      t,
      unit.of(((line - below) / line) * offset * ramps * (line / long) ** 0.25 * Math.exp(-t / fading)),
    ]);
  }
  const reach = sheet.attempt(() => unit.of(reachOf(sheet, hoist).number));
  return { hoist, unit: unit.unit, path, envelope, ...(reach.ok ? { reach: reach.value } : {}) };
};

/** Angle and way to the side over the length, by the closed form without what ramps add. */
export const growthOf = (sheet: Sheet, hoist: string): Growth => {
  const [long, short] = [atLiftOff(sheet, hoist).number, shortest(sheet, hoist).number];
  const offset = leavingAt(sheet, hoist);
  const { speed } = profileOf(sheet, hoist);
  const unit = scaleOf(sheet, 'length', long);
  const fading = fadingOf(sheet, hoist).number;
  const lengths = Array.from({ length: CURVE + 1 }, (_, i) => long + ((short - long) * i) / CURVE);
  const share = (line: number): number => (line / long) ** 0.25 * Math.exp(-(long - line) / speed.number / fading);
  const first = Math.asin(offset.number / long);
  const sideways = arrivingSideways(sheet, hoist, offset);
  return {
    hoist,
    unit: unit.unit,
    angle: lengths.map((line) => [unit.of(line), Math.asin((offset.number * share(line)) / line) / first]),
    sideways: lengths.map((line) => [unit.of(line), share(line)]),
    from: { angle: text(sheet, first, 'angle'), sideways: sheet.show(offset) },
    to: {
      angle: sheet.show(leanAt.work({ sideways, length: shortest(sheet, hoist) })),
      sideways: sheet.show(sideways),
    },
  };
};

/** The play of a machine, as plain numbers at the stated middle of every range; or NotStated. */
export const playPlan = (sheet: Sheet, hoist: string): PlayPlan => {
  const hanging = hangingOf(sheet);
  const half = hanging['half-width']?.number ?? 0;
  const driven = (axis: string | undefined): DrivenAxis => {
    // A machine with one level axis is driven along that one alone.
    if (axis === undefined) return { travel: 0, profile: { speed: 0.1, acceleration: 1 }, room: Infinity };
    const { wall } = axisOf(sheet, axis);
    return {
      travel: profileOf(sheet, axis).distance.number,
      profile: plainProfile(sheet, axis),
      room: wall === undefined ? Infinity : wall.number - half,
    };
  };
  const [first, second] = carriersOf(sheet.book);
  const { number: down } = need(axisOf(sheet, hoist), 'travel').travel;
  const [least, most] = endsOf(sheet, () => landing(sheet, hoist));
  const up = belowPivot(sheet, hoist).number;
  return {
    gravity: GRAVITY,
    fadingTime: fadingOf(sheet, hoist).number,
    tolerance: TOLERANCE,
    docked: rides(sheet, hoist),
    dwell: dwellOf(sheet).number,
    x: driven(first),
    y: driven(second),
    hoist: plainProfile(sheet, hoist),
    up,
    down: up + down,
    belowHook: belowHook(sheet).number,
    heap: [down - most, down - least],
    scatter: need(hanging, 'lift-off-scatter')['lift-off-scatter'].number,
    reach: reachOf(sheet, hoist).number,
    lean: dockOf(sheet, hoist).lean?.number ?? Infinity,
    player,
  };
};

/** The plays of a machine, counted. */
export const countedOf = (sheet: Sheet, hoist: string): { readonly plan: PlayPlan; readonly found: Misses } => {
  const plan = playPlan(sheet, hoist);
  return { plan, found: sheet.study(misses, { plan }) };
};

/** Widths of a dock that the figure of misses counts, as shares of the present one. */
const WIDTHS = [0.4, 0.6, 0.8, 1, 1.25];

export const missFigureOf = (sheet: Sheet, hoist: string, { tally }: Misses): MissFigure => {
  const mouth = need(dockOf(sheet, hoist), 'catch').catch;
  const head = hangingOf(sheet).head ?? constant(0, 'length', 'none said');
  const unit = scaleOf(sheet, 'length', mouth.number);
  const lean = dockOf(sheet, hoist).lean?.number ?? Infinity;
  const scatter = () => need(hangingOf(sheet), 'lift-off-scatter')['lift-off-scatter'];
  const { low, high } = sheet.ends(scatter);
  const shareAt = (width: number, spread: number): number => {
    const reach = catchReach.work({ mouth: constant(width, 'length', 'width along the figure'), head });
    const arriving = arrivingOffset(sheet, hoist, constant(spread, 'length', 'spread along the figure'));
    return 100 * missShare.work({ reach, scatter: arriving }).number;
  };
  const widest = 1.5 * mouth.number;
  const widths = Array.from({ length: CURVE }, (_, i) => (widest * (i + 1)) / CURVE);
  const spreads = high > low ? [low, (low + high) / 2, high] : [low];
  return {
    hoist,
    unit: unit.unit,
    curves: spreads.map((spread) => ({
      scatter: text(sheet, spread, 'length'),
      points: widths.map((width) => [unit.of(width), Math.min(100, shareAt(width, spread))] as const),
    })),
    counted: WIDTHS.map((times) => {
      const width = times * mouth.number;
      const caught = (offset: number, i: number): boolean =>
        offset <= (width - head.number) / 2 && tally.leans[i]! <= lean;
      const count = tally.plays - tally.offsets.filter(caught).length;
      const { low, high } = exactInterval(count, tally.plays);
      return { width: unit.of(width), share: (100 * count) / tally.plays, low: 100 * low, high: 100 * high };
    }),
    now: unit.of(mouth.number),
    plays: tally.plays,
  };
};

/** One simulated play from above, before the load is lowered. */
export const planFigureOf = (sheet: Sheet, hoist: string): Plan => {
  const plan = playPlan(sheet, hoist);
  const track = drives(plan, new Track(plan.up + plan.belowHook), seeded(1));
  const unit = scaleOf(sheet, 'length', plan.x.travel);
  const [pivot, path]: [(readonly [number, number])[], (readonly [number, number])[]] = [[], []];
  const state = new Float64Array(4);
  let farthest: { at: readonly [number, number]; out: number } = { at: [0, 0], out: 0 };
  const load = hangingLoad({ gravity: GRAVITY, fadingTime: plan.fadingTime, tolerance: TOLERANCE }, (from, to) => {
    for (const share of [0, 0.25, 0.5, 0.75]) {
      const t = from + share * (to - from);
      load.at(t, state);
      const { x, y, line } = track.at(t);
      const at = [unit.of(x + line * state[0]!), unit.of(y + line * state[1]!)] as const;
      pivot.push([unit.of(x), unit.of(y)]);
      path.push(at);
      const out = line * Math.hypot(state[0]!, state[1]!);
      if (out > farthest.out) farthest = { at, out };
    }
  });
  load.hang(track);
  load.run(track);
  const { 'half-width': half } = hangingOf(sheet);
  const wall = (axis: DrivenAxis): number | undefined =>
    Number.isFinite(axis.room) ? unit.of(axis.room + (half?.number ?? 0)) : undefined;
  return {
    hoist,
    unit: unit.unit,
    field: [unit.of(plan.x.travel / 2), unit.of(plan.y.travel / 2)],
    walls: [wall(plan.x), wall(plan.y)],
    pivot,
    load: path,
    half: unit.of(half?.number ?? 0),
    farthest: farthest.at,
    out: unit.of(farthest.out),
  };
};

/** Period of small swings at both ends of the line, to be checked with a stop watch. */
export const lengthsOf = (sheet: Sheet, hoist: string) =>
  [
    ['up', () => shortest(sheet, hoist)],
    ['at lift-off', () => atLiftOff(sheet, hoist)],
    ['let down', () => longest(sheet, hoist)],
  ] as const;
