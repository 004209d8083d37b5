import { describe, expect, it } from 'vitest';
import { hangingLoad } from '../../calc/hanging.ts';
import { liveLoad } from '../../calc/live.ts';
import { Track } from '../../calc/track.ts';

const g = 9.80665;
const parameters = { gravity: g, fadingTime: 25, belowHook: 0.07, line: 0.14 };

describe('a load driven tick by tick', () => {
  it.each([0.001, 0.01, 0.05])('goes where the same load goes along a track, in ticks of %f s', (tick) => {
    const track = new Track(0.21).add(0.3, 0.7).wait(0.5).add(0.3, -0.7).wait(0.4);
    const whole = hangingLoad({ gravity: g, fadingTime: 25, tolerance: 1e-9 });
    whole.hang(track);
    whole.run(track);
    const live = liveLoad(parameters);
    const accelerationAt = (t: number): number => (t < 0.3 ? 0.7 : t >= 0.8 && t < 1.1 ? -0.7 : 0);
    const ticks = Math.round(1.5 / tick);
    let state = live.step(tick, { x: 0.7, y: 0 }, 0);
    for (let i = 1; i < ticks; i++) state = live.step(tick, { x: accelerationAt((i + 0.5) * tick), y: 0 }, 0);
    expect(Math.abs(state.x - 0.14 * whole.state[0]!)).toBeLessThan(5e-6);
    expect(state.y).toBe(0);
    expect(state.lean).toBeCloseTo(whole.angle(), 4);
    expect(state).toMatchObject({ taut: true });
    expect(state.line).toBeCloseTo(0.14, 9);
  });

  it('lets out line at the speed that it is given, reached within the tick', () => {
    const live = liveLoad(parameters);
    live.step(0.1, { x: 0, y: 0 }, 0.1);
    const state = live.step(1, { x: 0, y: 0 }, 0.1);
    expect(state.line).toBeCloseTo(0.14 + 0.005 + 0.1, 12);
  });

  it('law: falls slack under a line that gives way faster than it falls, and hangs again when it is hung up', () => {
    const live = liveLoad(parameters);
    expect(live.step(0.1, { x: 0, y: 0 }, 1.1).taut).toBe(false);
    expect(live.step(0.1, { x: 0, y: 0 }, 0).taut).toBe(false);
    const state = live.hang(0.8, 0.02, 0);
    expect(state.taut).toBe(true);
    expect(state.line).toBeCloseTo(0.8, 12);
    // The centre of mass is 20 mm out, the hook a little less.
    expect(state.x).toBeCloseTo((0.02 * 0.8) / 0.87, 12);
    expect(live.step(0.01, { x: 0, y: 0 }, 0).taut).toBe(true);
  });

  it.each([0, -0.01, NaN, Infinity])('refuses a tick of %f s', (time) => {
    expect(() => liveLoad(parameters).step(time, { x: 0, y: 0 }, 0)).toThrow(
      new RangeError(`a tick of ${time} s is none`),
    );
  });

  it('refuses to hang on no line, and farther out than the line is long', () => {
    const live = liveLoad(parameters);
    for (const [line, x, y] of [
      [-0.07, 0, 0],
      [0.2, 0.2, 0.2],
      [NaN, 0, 0],
      [0.2, NaN, 0],
    ] as const)
      expect(() => live.hang(line, x, y)).toThrow(new RangeError(`no load hangs ${x}, ${y} m out on ${line} m`));
    expect(live.hang(0.2, 0.1, 0.2).taut).toBe(true);
  });
});
