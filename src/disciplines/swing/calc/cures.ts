/** What calms a swing, tried on the simulated load and ranked by the time that it costs. */
import { hangingLoad } from './hanging.ts';
import { shapingOverrun, shapingTime } from './shaper.ts';
import { Track, travelTime, type Impulse, type Profile } from './track.ts';

/** A wait longer than this in every play is no cure [s]. */
export const HOPELESS = 10;

/** A travel after which the load should be calm. */
export interface TravelCase {
  readonly gravity: number;
  readonly fadingTime: number;
  /** Shortest and longest pendulum that occurs [m]. */
  readonly lengths: readonly [number, number];
  readonly distance: number;
  readonly profile: Profile;
  /** Wait that there is already [s], and the swing that is calm enough [rad]. */
  readonly dwell: number;
  readonly calm: number;
}

export interface Cure {
  /** What it is called in the book or in the trade. */
  readonly kind:
    | 'acceleration'
    | 'speed'
    | 'jerk'
    | 'dwell'
    | 'two-impulses'
    | 'three-impulses'
    | 'cup'
    | 'catch'
    | 'hoist-speed'
    | 'wait-below'
    | 'stage';
  /** The setting that was found, in SI; none where there is nothing to set or nothing helps. */
  readonly setting?: number;
  /** What is left with it: an angle after a travel, an offset at a dock. */
  readonly left: number;
  readonly cures: boolean;
  /** Time that it adds to every play [s]. */
  readonly time: number;
  /** Way that a hand-driven axis goes on farther [m], where it is shaped. */
  readonly overrun?: number;
}

const TOLERANCE = 1e-7;
const LENGTHS = 5;

/** Values between two ends, both included; one where they are the same. */
const spread = ([low, high]: readonly [number, number], count: number): readonly number[] =>
  high > low ? Array.from({ length: count }, (_, i) => low + ((high - low) * i) / (count - 1)) : [low];

/** Largest swing, over the lengths that occur, that a motion leaves after the wait. */
export const swingAfter = (of: TravelCase, move: (track: Track) => Track, wait: number): number => {
  const load = hangingLoad({ gravity: of.gravity, fadingTime: of.fadingTime, tolerance: TOLERANCE });
  const most = Math.max(
    ...spread(of.lengths, LENGTHS).map((length) => {
      const track = move(new Track(length));
      load.hang(track);
      return load.run(track) === 'end' ? load.amplitude() : Math.PI / 2;
    }),
  );
  return most * Math.exp(-wait / of.fadingTime);
};

/** Settings from the present one downwards, each some per cent lower. */
const downwards = (from: number, to: number, steps: number): readonly number[] =>
  Array.from({ length: steps }, (_, i) => from * (to / from) ** ((i + 1) / steps));

const shapes = (damping: number): Readonly<Record<'two-impulses' | 'three-impulses', readonly number[]>> => {
  const K = Math.exp((-damping * Math.PI) / Math.sqrt(1 - damping ** 2));
  return {
    'two-impulses': [1 / (1 + K), K / (1 + K)],
    'three-impulses': [1, 2 * K, K * K].map((a) => a / (1 + K) ** 2),
  };
};

/** Cures of the swing that a travel leaves: those that cure first, by the time that they cost. */
export const travelCures = (of: TravelCase): readonly Cure[] => {
  const { profile, distance, dwell, calm, gravity, fadingTime } = of;
  const now = travelTime(distance, profile);
  const tried = (how: Profile, impulses?: readonly Impulse[]): number =>
    swingAfter(of, (track) => track.travel('x', distance, how, impulses), dwell);
  const first = (kind: Cure['kind'], settings: readonly number[], how: (setting: number) => Profile): Cure => {
    let best: Cure = { kind, left: Infinity, cures: false, time: 0 };
    for (const setting of settings) {
      const left = tried(how(setting));
      const cure = { kind, setting, left, cures: left <= calm, time: travelTime(distance, how(setting)) - now };
      if (cure.cures) return cure;
      if (left < best.left) best = cure;
    }
    return best;
  };
  const swing = tried(profile);
  const wait = fadingTime * Math.log(Math.max(1, swing / calm));
  const middle = (of.lengths[0] + of.lengths[1]) / 2;
  const rate = Math.sqrt(gravity / middle);
  const damping = Math.min(0.5, 1 / (fadingTime * rate));
  const impulsed = (kind: 'two-impulses' | 'three-impulses'): Cure => {
    const later = kind === 'two-impulses' ? 1 : 2;
    const delay = shapingTime({ later: 1, rate, damping });
    const impulses = shapes(damping)[kind].map((share, i) => ({ share, delay: i * delay }));
    const left = tried(profile, impulses);
    return {
      kind,
      left,
      cures: left <= calm,
      time: later * delay,
      overrun: shapingOverrun({ speed: profile.speed, later, rate, damping }),
    };
  };
  return ranked([
    first('acceleration', downwards(profile.acceleration, profile.acceleration / 12, 24), (acceleration) => ({
      ...profile,
      acceleration,
    })),
    first('speed', downwards(profile.speed, profile.speed / 5, 16), (speed) => ({ ...profile, speed })),
    first('jerk', downwards(profile.acceleration / 0.05, profile.acceleration / 2, 24), (jerk) => ({
      ...profile,
      jerk,
    })),
    impulsed('two-impulses'),
    impulsed('three-impulses'),
    { kind: 'dwell', setting: dwell + wait, left: Math.min(swing, calm), cures: wait <= HOPELESS, time: wait },
    { kind: 'cup', left: 0, cures: true, time: 0 },
  ]);
};

/** A hoist after which the hook should be within reach of its dock. */
export interface DockCase {
  readonly gravity: number;
  readonly fadingTime: number;
  /** From the pivot to the centre of mass at lift-off, shortest and longest, and at the dock [m]. */
  readonly lengths: readonly [number, number];
  readonly up: number;
  readonly belowHook: number;
  readonly offset: number;
  readonly hoist: Profile;
  /** Width of what docks, and how far out of plumb it is caught [m]. */
  readonly head: number;
  readonly reach: number;
  /** Part of the offset that a drive before it was lowered left; nothing where it travels in a cup [m]. */
  readonly driven: number;
}

/** Largest offset of the hook on arrival, over the lengths at lift-off and whatever the phase. */
export const offsetAfter = (of: DockCase, hoist: (track: Track, down: number) => Track): number => {
  const { up, belowHook } = of;
  const load = hangingLoad({ gravity: of.gravity, fadingTime: of.fadingTime, tolerance: TOLERANCE });
  return Math.max(
    ...spread(of.lengths, LENGTHS).map((length) => {
      const track = hoist(new Track(length), length - up);
      load.hang(track, of.offset);
      load.run(track);
      return (up - belowHook) * Math.sin(load.amplitude());
    }),
  );
};

/** Cures of a hook that arrives too far out of plumb: those that cure first, by the time that they cost. */
export const dockCures = (of: DockCase): readonly Cure[] => {
  const { hoist, reach, head, fadingTime, lengths } = of;
  const down = lengths[1] - of.up;
  const now = travelTime(down, hoist);
  const straight = (how: Profile) => (track: Track, way: number) => track.travel('line', -way, how);
  const plain = offsetAfter(of, straight(hoist));
  const cupped = offsetAfter({ ...of, offset: of.offset - of.driven }, straight(hoist));
  // What the ramps of the hoist may add at the worst phase.
  const ramps = Math.sqrt((of.gravity + hoist.acceleration) / (of.gravity - hoist.acceleration));
  const wait = fadingTime * Math.log(Math.max(1, plain / Math.max(reach, 1e-6)));
  const waited = Math.min(wait, HOPELESS);
  const slower = downwards(hoist.speed, hoist.speed / 4, 12)
    .map((speed): Cure => {
      const how = { ...hoist, speed };
      const left = offsetAfter(of, straight(how));
      return { kind: 'hoist-speed', setting: speed, left, cures: left <= reach, time: travelTime(down, how) - now };
    })
    .filter(({ time }, i) => i === 0 || time <= HOPELESS);
  const staged = offsetAfter(of, (track, way) =>
    track
      .travel('line', -way / 2, hoist)
      .wait(waited)
      .travel('line', -way / 2, hoist),
  );
  const stageTime = waited + travelTime(down / 2, hoist) * 2 - now;
  return ranked([
    ...(of.driven > 0
      ? ([{ kind: 'cup', left: cupped, cures: cupped <= reach, time: 0 }] satisfies readonly Cure[])
      : []),
    { kind: 'catch', setting: 2 * plain * ramps + head, left: plain, cures: true, time: 0 },
    slower.find(({ cures }) => cures) ?? slower.at(-1)!,
    {
      kind: 'wait-below',
      setting: wait,
      left: plain * Math.exp(-waited / fadingTime),
      cures: wait <= HOPELESS,
      time: wait,
    },
    { kind: 'stage', setting: waited, left: staged, cures: staged <= reach, time: stageTime },
  ]);
};

const ranked = (cures: readonly Cure[]): readonly Cure[] =>
  [...cures].sort((a, b) => Number(b.cures) - Number(a.cures) || a.time - b.time);
