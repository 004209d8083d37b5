import { describe, expect, it } from 'vitest';
import { hangingLoad, type HangingLoad } from '../../calc/hanging.ts';
import { Track } from '../../calc/track.ts';

const g = 9.80665;
const free = { gravity: g, fadingTime: Infinity };
const rateOf = (L: number): number => Math.sqrt(g / L);

describe('what is told of a load', () => {
  it('is forgotten when it is hung up anew', () => {
    const walls = { xLow: -0.05, xHigh: 0.05, yLow: -1, yHigh: 1 };
    const load = hangingLoad({ ...free, tolerance: 1e-8, walls, dockDepth: 0.3 });
    const swung = new Track(0.6).wait(1);
    load.hang(swung, 0.2, 0.1);
    load.run(swung);
    expect(load.seen.touchedAt).toBe(0);
    expect(load.seen.sideways).toBeCloseTo(Math.hypot(0.2, 0.1), 6);
    expect(load.seen.angle).toBeCloseTo(Math.asin(Math.hypot(0.2, 0.1) / 0.6), 6);
    const still = new Track(0.6).wait(1);
    load.hang(still);
    expect(load.time()).toBe(0);
    expect(load.run(still)).toBe('end');
    expect(load.time()).toBe(1);
    expect(load.seen).toEqual({
      angle: 0,
      sideways: 0,
      xLow: 0,
      xHigh: 0,
      yLow: 0,
      yHigh: 0,
      pull: expect.closeTo(g, 12),
      slackAt: NaN,
      overAt: NaN,
      touchedAt: NaN,
      dockedAt: NaN,
    });
  });

  it('is where it hangs now, and how the line runs', () => {
    const load = hangingLoad({ ...free, tolerance: 1e-10 });
    const track = new Track(0.6).add(0.4, 0, 0, -0.5).add(1, 0, 0, 0.1, 0, 0, 0.2);
    load.hang(track, 0.06, 0.08);
    expect(load.sideways()).toBeCloseTo(0.1, 12);
    expect(load.angle()).toBeCloseTo(Math.asin(0.1 / 0.6), 12);
    expect(load.amplitude()).toBeCloseTo(Math.asin(0.1 / 0.6), 12);
    load.run(track);
    expect(load.line()).toBeCloseTo(track.line, 12);
    expect(load.lineSpeed()).toBeCloseTo(track.lineSpeed, 12);
    expect(load.sideways()).toBeCloseTo(track.line * Math.hypot(load.state[0]!, load.state[1]!), 12);
    const { steps, rejected } = load.effort();
    expect(steps).toBeGreaterThan(10);
    load.hang(track, 0.06, 0.08);
    load.run(track);
    expect(load.effort().steps).toBe(2 * steps);
    expect(load.effort().rejected).toBe(2 * rejected);
  });

  it('law: swings as far as its energy takes it, from any point of the swing', () => {
    const load = hangingLoad({ ...free, tolerance: 1e-11 });
    const start = 0.7;
    for (const time of [0, 0.2, 0.55, 0.9]) {
      const track = new Track(0.6).wait(time);
      load.hang(track, 0.6 * Math.sin(start));
      load.run(track);
      expect(load.amplitude()).toBeCloseTo(start, 9);
    }
    // Twice the length up: it stands on its head, and more is no farther.
    load.hang(new Track(0.5), 0, 0, Math.sqrt((4 * g) / 0.5));
    expect(load.amplitude()).toBeCloseTo(Math.PI, 6);
    load.hang(new Track(0.5), 0, 0, Math.sqrt((5 * g) / 0.5));
    expect(load.amplitude()).toBe(Math.PI);
  });

  it('is given inside a stretch as it will be there', () => {
    const [k, into] = [rateOf(0.6), new Float64Array(4)];
    let off = 0;
    const load = hangingLoad({ ...free, tolerance: 1e-10, swing: 1e-4 }, (from, to) => {
      for (const share of [0, 0.3, 0.7, 1]) {
        const t = from + share * (to - from);
        load.at(t, into);
        off = Math.max(off, Math.abs(into[0]! - 1e-4 * Math.cos(k * t)), Math.abs(into[1]!));
      }
    });
    load.hang(new Track(0.6), 0.6e-4);
    load.run(new Track(0.6).wait(2));
    expect(off).toBeLessThan(1e-11);
    expect(off).toBeGreaterThan(0);
  });

  it('is the same tick by tick as along a track, in all three motions', () => {
    const parts = [
      [0.3, 0.6, -0.4, 0.1],
      [0.45, 0, 0.2, -0.3],
      [0.2, -0.9, 0, 0.2],
    ] as const;
    const track = new Track(0.6);
    for (const [time, ax, ay, line] of parts) track.add(time, ax, ay, line);
    const [whole, pushed] = [0, 1].map(() =>
      hangingLoad({ gravity: g, fadingTime: 9, tolerance: 1e-11, reach: true }),
    ) as [HangingLoad, HangingLoad];
    for (const load of [whole, pushed]) load.hang(new Track(0.6), 0.05, -0.03, 0.2, 0.1);
    whole.run(track);
    for (const [time, ax, ay, line] of parts)
      for (let i = 0; i < 5; i++) expect(pushed.push(time / 5, ax, ay, line)).toBe('end');
    for (const i of [0, 1, 2, 3]) expect(pushed.state[i]).toBeCloseTo(whole.state[i]!, 8);
    expect(pushed.line()).toBeCloseTo(track.line, 12);
    expect(pushed.lineSpeed()).toBeCloseTo(track.lineSpeed, 12);
    for (const end of ['xHigh', 'yLow', 'yHigh'] as const) expect(pushed.seen[end]).toBeCloseTo(whole.seen[end], 7);
    expect(pushed.push(0.1, 0, 0, 20)).toBe('slack');
    expect(pushed.seen.slackAt).toBe(pushed.time());
  });

  it.each([
    ['xHigh', 0.1, 0],
    ['xLow', -0.1, 0],
    ['yHigh', 0, 0.1],
    ['yLow', 0, -0.1],
  ] as const)('is touched at %s when it swings there from the other side', (wall, x, y) => {
    const at = (far: number): HangingLoad => {
      const walls = { xLow: -1, xHigh: 1, yLow: -1, yHigh: 1, [wall]: Math.sign(x + y) * far };
      const load = hangingLoad({ ...free, tolerance: 1e-9, walls });
      const track = new Track(0.6).wait(1.2);
      load.hang(track, -x, -y);
      load.run(track);
      return load;
    };
    // At half of the way out after a third of the swing back.
    expect(at(0.05).seen.touchedAt).toBeCloseTo((2 * Math.PI) / 3 / rateOf(0.6), 2);
    expect(at(0.0999).seen.touchedAt).toBeCloseTo(Math.PI / rateOf(0.6), 1);
    expect(at(0.1001).seen.touchedAt).toBeNaN();
  });

  it('law: is touched at the moment in which it is at the wall, between two steps as well', () => {
    // Half of a small swing out, after a third of the swing back; a swing of 1e-3 rad is slower by 6e-8.
    const walls = { xLow: -1, xHigh: 0.3e-3, yLow: -1, yHigh: 1 };
    const load = hangingLoad({ ...free, tolerance: 1e-9, swing: 1e-3, walls });
    const track = new Track(0.6).wait(1.2);
    load.hang(track, -0.6e-3);
    load.run(track);
    expect(load.seen.touchedAt).toBeCloseTo((2 * Math.PI) / 3 / rateOf(0.6), 6);
  });

  it('law: falls with its line where it hangs in plumb and the line gives way faster than it falls', () => {
    const load = hangingLoad({ ...free, tolerance: 1e-9 });
    const track = new Track(0.4).wait(0.2).add(0.1, 0, 0, 1.01 * g);
    load.hang(track);
    expect(load.run(track)).toBe('slack');
    expect(load.time()).toBeCloseTo(0.2, 12);
  });

  it('is touched where the pivot takes it, not where it hangs', () => {
    const walls = { xLow: -1, xHigh: 0.3, yLow: -1, yHigh: 1 };
    const load = hangingLoad({ ...free, tolerance: 1e-9, walls });
    const track = new Track(0.05).travel('x', 0.6, { speed: 0.2, acceleration: 0.02 });
    load.hang(track);
    load.run(track);
    // The pivot is at 0.3 m half way, and a load on so short a line is beneath it.
    expect(load.seen.touchedAt).toBeCloseTo(track.end / 2, 1);
    expect(load.seen.xHigh).toBeCloseTo(0.6, 3);
  });

  it.each(['x', 'y'] as const)(
    'law: reaches in %s as far as it ever is, while pivot and line come up to speed and slow down',
    (channel) => {
      const how = { speed: 0.22, acceleration: 0.7, jerk: 2 };
      const track = new Track(0.3).travel(channel, 0.4, how).travel('line', 0.5, how).travel(channel, -0.4, how);
      const [into, i] = [new Float64Array(4), channel === 'x' ? 0 : 1];
      let [low, high] = [Infinity, -Infinity];
      const load = hangingLoad({ ...free, tolerance: 1e-9, reach: true }, (from, to) => {
        for (let k = 0; k <= 200; k++) {
          const t = from + ((to - from) * k) / 200;
          load.at(t, into);
          const there = track.at(t);
          const place = there[channel] + there.line * into[i]!;
          [low, high] = [Math.min(low, place), Math.max(high, place)];
        }
      });
      load.hang(track, channel === 'x' ? 0.04 : 0, channel === 'x' ? 0 : 0.04);
      expect(load.run(track)).toBe('end');
      const { seen } = load;
      // Between two of the looks it goes on by less than a thousandth of a millimetre.
      expect((channel === 'x' ? seen.xHigh : seen.yHigh) - high).toBeGreaterThan(-1e-9);
      expect((channel === 'x' ? seen.xHigh : seen.yHigh) - high).toBeLessThan(1e-6);
      expect((channel === 'x' ? seen.xLow : seen.yLow) - low).toBeLessThan(1e-9);
      expect((channel === 'x' ? seen.xLow : seen.yLow) - low).toBeGreaterThan(-1e-6);
    },
  );

  it('docks by the depth of its hook, wherever it swings to', () => {
    for (const [offset, below] of [
      [0, 0.1],
      [0.15, 0.1],
      [0.15, 0],
    ] as const) {
      const load = hangingLoad({ ...free, tolerance: 1e-9, dockDepth: 0.2, belowHook: below });
      const track = new Track(0.8).travel('line', -0.65, { speed: 0.2, acceleration: 0.5 });
      load.hang(track, offset);
      expect(load.run(track)).toBe('docked');
      expect((load.line() - below) * Math.cos(load.angle())).toBeCloseTo(0.2, 9);
      expect(load.seen.dockedAt).toBe(load.time());
      expect([load.seen.slackAt, load.seen.overAt]).toEqual([NaN, NaN]);
    }
  });
});
