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
import { travelTime } from '../../calc/track.ts';

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

  it('call a wait hopeless that is longer than anybody waits', () => {
    const hopeless = named(dockCures({ ...dock, reach: 0.002 }), 'wait-below');
    expect(hopeless.time).toBeGreaterThan(HOPELESS);
    expect(hopeless.cures).toBe(false);
  });
});
