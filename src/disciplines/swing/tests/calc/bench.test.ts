/** From readings at a hanging load: published periods read backwards, and what must hold whatever the readings. */
import { describe, expect, it } from 'vitest';
import { OutsideRange } from '../../../../kernel/index.ts';
import { halvingFromFading, hookDepthFromPeriod, missedShare } from '../../calc/bench.ts';
import { swingPeriod } from '../../calc/period.ts';

const DEGREE = Math.PI / 180;

describe('depth of the hook from a period', () => {
  const point = { swings: 20, size: 0, down: 0, below: 0 };

  /**
   * Published, secondary: `pendulum-period`, table of ratios. A length of 1 m has a small-swing period of 2.006409 s, so that the
   * ratio times it is the period whose length is 1 m. Half of the last digit of the ratio is 1e-6 of the length and that of the
   * period 0.5e-6.
   */
  it.each([
    [5, 1.000476],
    [10, 1.001907],
    [20, 1.007669],
  ])('a swing of %f° takes %f of a small one', (angle, ratio) => {
    const depth = hookDepthFromPeriod({ ...point, time: 20 * 2.006409 * ratio, angle: angle * DEGREE });
    expect(Math.abs(depth - 1)).toBeLessThan(1.5e-6);
  });

  it('undoes the period of a point', () => {
    const time = 20 * swingPeriod({ length: 0.85, amplitude: 0.1 });
    expect(hookDepthFromPeriod({ ...point, time, angle: 0.1, down: 0.64, below: 0.07 })).toBeCloseTo(0.14, 9);
  });

  it('a claw of some size swings like a point farther down', () => {
    // A stiff pendulum: its even length is L + k²/L.
    const [length, size] = [0.3, 0.06];
    const time = 20 * swingPeriod({ length: length + size ** 2 / length, amplitude: 0 });
    expect(hookDepthFromPeriod({ ...point, time, angle: 0, size })).toBeCloseTo(length, 9);
  });

  it('refuses a claw that is too large for its line', () => {
    const time = 20 * swingPeriod({ length: 0.1, amplitude: 0 });
    expect(() => hookDepthFromPeriod({ ...point, time, angle: 0, size: 0.06 })).toThrow(OutsideRange);
  });
});

describe('halving from two widths', () => {
  it.each([
    [8, 2, 8],
    [16, 4, 8],
    [4, Math.SQRT2, 8],
  ])('%f swings down to the %f-th part', (swings, part, halves) => {
    expect(halvingFromFading({ swings, first: 0.24, last: 0.24 / part })).toBeCloseTo(halves, 12);
  });

  it('refuses a swing that has not faded', () => {
    expect(() => halvingFromFading({ swings: 8, first: 0.2, last: 0.2 })).toThrow(OutsideRange);
  });
});

it('what docks and what misses are all', () => {
  for (const docked of [0, 0.95, 1]) expect(missedShare({ docked }) + docked).toBe(1);
});
