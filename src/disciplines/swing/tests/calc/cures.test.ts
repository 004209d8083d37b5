import { describe, expect, it } from 'vitest';
import {
  dockCures,
  HOPELESS,
  offsetAfter,
  swingAfter,
  travelCures,
  type Cure,
  type DockCase,
  type TravelCase,
} from '../../calc/cures.ts';
import { travelTime, type Track } from '../../calc/track.ts';

const of: TravelCase = {
  gravity: 9.80665,
  fadingTime: 27,
  lengths: [0.2, 0.22],
  distance: 0.56,
  profile: { speed: 0.3, acceleration: 1.5 },
  dwell: 0,
  calm: 0.035,
};
const named = (cures: readonly Cure[], kind: Cure['kind']): Cure => cures.find((cure) => cure.kind === kind)!;

describe('cures of a travel', () => {
  const cures = travelCures(of);

  it('stand in the order of what they cost, those that cure first', () => {
    const curing = cures.filter(({ cures }) => cures);
    expect(cures.slice(0, curing.length)).toEqual(curing);
    expect(curing.map(({ time }) => time)).toEqual(curing.map(({ time }) => time).sort((a, b) => a - b));
    expect(new Set(cures.map(({ kind }) => kind)).size).toBe(7);
  });

  it('do what they say when they are tried again', () => {
    const gentler = named(cures, 'acceleration');
    expect(gentler.cures).toBe(true);
    const profile = { ...of.profile, acceleration: gentler.setting! };
    expect(swingAfter(of, (track) => track.travel('x', of.distance, profile), 0)).toBe(gentler.left);
    expect(gentler.left).toBeLessThanOrEqual(of.calm);
    expect(gentler.time).toBeCloseTo(travelTime(of.distance, profile) - travelTime(of.distance, of.profile), 12);
    expect(swingAfter(of, (track) => track.travel('x', of.distance, of.profile), 0)).toBeGreaterThan(of.calm);
  });

  it('say that waiting is hopeless where the swing hardly fades', () => {
    const wait = named(cures, 'dwell');
    expect(wait.time).toBeGreaterThan(HOPELESS);
    expect(wait.cures).toBe(false);
    expect(named(travelCures({ ...of, fadingTime: 2 }), 'dwell').cures).toBe(true);
  });

  it('send a move twice in half a swing, and let a hand-driven axis run on', () => {
    const [two, three] = [named(cures, 'two-impulses'), named(cures, 'three-impulses')];
    expect(two.time).toBeCloseTo(Math.PI / Math.sqrt(9.80665 / 0.21), 3);
    expect(three.time).toBeCloseTo(2 * two.time, 12);
    expect(three.left).toBeLessThan(two.left);
    expect(three.overrun!).toBeGreaterThan(two.overrun!);
    // Two copies at an even share lag by a quarter of a swing.
    expect(two.overrun!).toBeCloseTo((0.3 * two.time) / 2, 2);
  });

  /** Settings in the order in which they are tried: each a like share below the one before. */
  const ladder = (from: number, to: number, steps: number): readonly number[] =>
    Array.from({ length: steps }, (_, i) => from * (to / from) ** ((i + 1) / steps));

  it.each([
    ['acceleration', ladder(1.5, 1.5 / 12, 24)],
    ['speed', ladder(0.3, 0.3 / 5, 16)],
    ['jerk', ladder(1.5 / 0.05, 1.5 / 2, 24)],
  ] as const)('take the first setting of %s that is calm enough, or the calmest', (kind, settings) => {
    for (const calm of [0.035, 0.1, 1e-6]) {
      const cure = named(travelCures({ ...of, calm }), kind);
      const tried = settings.map((setting) => {
        const profile = { ...of.profile, [kind]: setting };
        return {
          setting,
          left: swingAfter(of, (track) => track.travel('x', of.distance, profile), 0),
          time: travelTime(of.distance, profile) - travelTime(of.distance, of.profile),
        };
      });
      const wanted = tried.find(({ left }) => left <= calm) ?? tried.reduce((a, b) => (b.left < a.left ? b : a));
      expect(cure.setting).toBeCloseTo(wanted.setting, 12);
      expect(cure.left).toBe(wanted.left);
      expect(cure.time).toBeCloseTo(wanted.time, 12);
      expect(cure.cures).toBe(wanted.left <= calm);
    }
  });

  it('look at the shortest and the longest pendulum and between, and at what a wait leaves', () => {
    const travel = (track: Track): Track => track.travel('x', of.distance, of.profile);
    const one = (length: number): number => swingAfter({ ...of, lengths: [length, length] }, travel, 0);
    const lengths: readonly [number, number] = [0.3, 0.5];
    expect(swingAfter({ ...of, lengths }, travel, 0)).toBe(Math.max(...[0.3, 0.35, 0.4, 0.45, 0.5].map(one)));
    expect(swingAfter(of, travel, 27) / swingAfter(of, travel, 0)).toBeCloseTo(Math.exp(-1), 12);
    // A wait that there is already is used by every cure.
    const waiting = travelCures({ ...of, dwell: 5 });
    const gentler = named(waiting, 'acceleration');
    const profile = { ...of.profile, acceleration: gentler.setting! };
    expect(gentler.left).toBe(swingAfter(of, (track) => track.travel('x', of.distance, profile), 5));
  });

  it('wait as long as what is left needs to fade, beside the wait that there is', () => {
    const swing = swingAfter(of, (track) => track.travel('x', of.distance, of.profile), 5);
    const wait = named(travelCures({ ...of, dwell: 5 }), 'dwell');
    expect(wait.time).toBeCloseTo(27 * Math.log(swing / of.calm), 10);
    expect(wait.setting).toBeCloseTo(5 + wait.time, 10);
    expect(wait.left).toBe(of.calm);
    const calm = named(travelCures({ ...of, calm: 1 }), 'dwell');
    expect(calm).toMatchObject({ time: 0, setting: 0, cures: true });
    expect(calm.left).toBeLessThan(1);
  });

  it('send copies whose shares are 1 : K and 1 : 2K : K², at half a swing of the middle length', () => {
    const rate = Math.sqrt(9.80665 / 0.21);
    const damping = 1 / (27 * rate);
    const K = Math.exp((-damping * Math.PI) / Math.sqrt(1 - damping ** 2));
    const delay = Math.PI / (rate * Math.sqrt(1 - damping ** 2));
    const left = (shares: readonly number[]): number => {
      const sum = shares.reduce((a, b) => a + b);
      const impulses = shares.map((share, i) => ({ share: share / sum, delay: i * delay }));
      return swingAfter(of, (track) => track.travel('x', of.distance, of.profile, impulses), 0);
    };
    expect(named(cures, 'two-impulses').left).toBeCloseTo(left([1, K]), 10);
    expect(named(cures, 'three-impulses').left).toBeCloseTo(left([1, 2 * K, K * K]), 10);
    expect(named(cures, 'two-impulses')).toMatchObject({ cures: true });
    expect(named(travelCures({ ...of, calm: 1e-9 }), 'two-impulses').cures).toBe(false);
    // A load that hardly swings at all is taken at half of critical.
    expect(Number.isFinite(named(travelCures({ ...of, fadingTime: 0.15 }), 'two-impulses').left)).toBe(true);
  });

  it('count a load that is flung up as swinging to the horizontal', () => {
    const flung = { ...of, profile: { speed: 3, acceleration: 60 }, distance: 2 };
    expect(swingAfter({ ...flung, fadingTime: 1e9 }, (track) => track.travel('x', 2, flung.profile), 0)).toBe(
      Math.PI / 2,
    );
  });

  it('have nothing left to do in a cup', () => {
    expect(named(cures, 'cup')).toMatchObject({ left: 0, time: 0, cures: true });
  });
});

describe('cures of a docking', () => {
  const dock: DockCase = {
    gravity: 9.80665,
    fadingTime: 27,
    lengths: [0.6, 0.91],
    up: 0.21,
    belowHook: 0.07,
    offset: 0.02,
    hoist: { speed: 0.16, acceleration: 0.5 },
    head: 0.01,
    reach: 0.006,
    driven: 0,
  };
  const cures = dockCures(dock);
  const straight = (track: Track, down: number): Track => track.travel('line', -down, dock.hoist);

  it('widen the dock by what arrives, at no cost in time', () => {
    const wider = named(cures, 'catch');
    expect(cures[0]).toBe(wider);
    // And by what the ramps of the hoist may add: √(10.31/9.31).
    expect((wider.setting! - dock.head) / 2 / wider.left).toBeCloseTo(1.05235, 5);
    expect(wider.left).toBeCloseTo(
      offsetAfter(dock, (track, down) => track.travel('line', -down, dock.hoist)),
      12,
    );
    expect(wider.left).toBeGreaterThan(dock.reach);
  });

  it('find that a wait half way up is worth no more than one below the dock', () => {
    const [stage, below] = [named(cures, 'stage'), named(cures, 'wait-below')];
    expect(stage.left / below.left).toBeGreaterThan(0.85);
    expect(stage.left / below.left).toBeLessThan(1.15);
    expect(stage.time).toBeGreaterThan(Math.min(below.time, HOPELESS));
  });

  it('give a driven claw a cup, which leaves the lift-off alone', () => {
    const driven = dockCures({ ...dock, offset: 0.06, driven: 0.045 });
    const cup = named(driven, 'cup');
    expect(cup.left).toBe(offsetAfter({ ...dock, offset: 0.06 - 0.045 }, straight));
    expect(cup).toMatchObject({ cures: cup.left <= dock.reach, time: 0 });
    expect(named(dockCures({ ...dock, offset: 0.06, driven: 0.055 }), 'cup').cures).toBe(true);
    expect(named(dockCures({ ...dock, offset: 0.06, driven: 0.02 }), 'cup').cures).toBe(false);
    expect(cures.some(({ kind }) => kind === 'cup')).toBe(false);
  });

  it('hoist as slowly as it needs, or as slowly as anybody waits for', () => {
    const speeds = Array.from({ length: 12 }, (_, i) => 0.16 * 0.25 ** ((i + 1) / 12));
    const tried = speeds.map((speed) => {
      const how = { ...dock.hoist, speed };
      return {
        speed,
        left: offsetAfter(dock, (track, down) => track.travel('line', -down, how)),
        time: travelTime(0.7, how) - travelTime(0.7, dock.hoist),
      };
    });
    for (const reach of [0.0078, 0.0075, 0.002]) {
      const slower = named(dockCures({ ...dock, reach }), 'hoist-speed');
      const bearable = tried.filter(({ time }, i) => i === 0 || time <= HOPELESS);
      const wanted = bearable.find(({ left }) => left <= reach) ?? bearable.at(-1)!;
      expect(slower.setting).toBeCloseTo(wanted.speed, 12);
      expect(slower.left).toBe(wanted.left);
      expect(slower.time).toBeCloseTo(wanted.time, 12);
      expect(slower.cures).toBe(wanted.left <= reach);
    }
  });

  it('wait below the dock, or half way up, for what has to fade, and no longer than anybody waits', () => {
    const plain = offsetAfter(dock, straight);
    const wait = 27 * Math.log(plain / 0.006);
    const [stage, below] = [named(cures, 'stage'), named(cures, 'wait-below')];
    expect(below.setting).toBeCloseTo(wait, 10);
    expect(below.time).toBeCloseTo(wait, 10);
    expect(below.left).toBeCloseTo(plain * Math.exp(-Math.min(wait, HOPELESS) / 27), 12);
    const waited = Math.min(wait, HOPELESS);
    expect(stage.setting).toBeCloseTo(waited, 10);
    expect(stage.left).toBe(
      offsetAfter(dock, (track, down) =>
        track
          .travel('line', -down / 2, dock.hoist)
          .wait(waited)
          .travel('line', -down / 2, dock.hoist),
      ),
    );
    expect(stage.cures).toBe(stage.left <= dock.reach);
    expect(stage.time).toBeCloseTo(waited + 2 * travelTime(0.35, dock.hoist) - travelTime(0.7, dock.hoist), 12);
    const easy = dockCures({ ...dock, reach: 0.05 });
    expect(named(easy, 'wait-below')).toMatchObject({ cures: true, time: 0 });
    expect(named(easy, 'stage').cures).toBe(true);
    // A dock narrower than the head has no reach at all; the wait is long and not endless.
    expect(Number.isFinite(named(dockCures({ ...dock, reach: -0.01 }), 'wait-below').time)).toBe(true);
  });

  it('stand in the order of what they cost, those that cure first', () => {
    for (const reach of [0.002, 0.006, 0.0078, 0.05]) {
      const list = dockCures({ ...dock, reach });
      const curing = list.filter(({ cures }) => cures);
      expect(list.slice(0, curing.length)).toEqual(curing);
      for (const group of [curing, list.slice(curing.length)])
        expect(group.map(({ time }) => time)).toEqual(group.map(({ time }) => time).sort((a, b) => a - b));
    }
  });

  it('look at the lengths from the shortest to the longest lift-off', () => {
    const one = (length: number): number => offsetAfter({ ...dock, lengths: [length, length] }, straight);
    expect(offsetAfter({ ...dock, lengths: [0.5, 0.9] }, straight)).toBe(
      Math.max(...[0.5, 0.6, 0.7, 0.8, 0.9].map(one)),
    );
    // Of the hook, and not of the centre of mass below it.
    expect(offsetAfter({ ...dock, belowHook: 0 }, straight) / offsetAfter(dock, straight)).toBeCloseTo(0.21 / 0.14, 12);
  });

  it('call a wait hopeless that is longer than anybody waits', () => {
    const hopeless = named(dockCures({ ...dock, reach: 0.002 }), 'wait-below');
    expect(hopeless.time).toBeGreaterThan(HOPELESS);
    expect(hopeless.cures).toBe(false);
  });
});
