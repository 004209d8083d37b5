/** What a formula refuses, at the very edge of what it allows, and the words in which it does. */
import { describe, expect, it } from 'vitest';
import { OutsideRange } from '../../../../kernel/index.ts';
import { halvingFromFading, hookDepthFromPeriod } from '../../calc/bench.ts';
import { hoistedSideways, hoistTime, hookOffset, leanAt } from '../../calc/hoisting.ts';
import { loweredSideways } from '../../calc/lowering.ts';
import { travelResidual } from '../../calc/travel.ts';

const up = { offset: 0.02, long: 0.9, short: 0.2, speed: 0.16, acceleration: 0.5, time: 5, fading: 30 };
const down = { offset: 0.02, high: 0.2, low: 0.9, speed: 0.16, acceleration: 0.5, fading: 30 };
const travel = { length: 0.5, speed: 0.2, acceleration: 0.5, distance: 0.5, fading: 20 };
const period = { time: 20, swings: 20, angle: 0, size: 0, down: 0, below: 0 };

const refused = (run: () => number): string => {
  try {
    run();
  } catch (error) {
    expect(error).toBeInstanceOf(OutsideRange);
    return (error as OutsideRange).message;
  }
  throw new Error('it was not refused');
};

describe('a refusal', () => {
  it.each([
    [
      () => hoistTime({ long: 0.3, short: 0.3, speed: 0.1, acceleration: 1 }),
      'hoist-time: L_1 = 0.3 is outside L_1 < 0.3 (hoisting makes the line shorter)',
    ],
    [
      () => hoistedSideways({ ...up, short: 0.9 }),
      'hoisted-sideways: L_1 = 0.9 is outside L_1 < 0.9 (hoisting makes the line shorter)',
    ],
    [
      () => hoistedSideways({ ...up, acceleration: 9.80665 }),
      'hoisted-sideways: a = 9.80665 is outside a < 9.80665 (the line would go slack)',
    ],
    [
      () => hoistedSideways({ ...up, speed: 0.43 }),
      'hoisted-sideways: v = 0.43 is outside v ≤ 0.3·√(g·L_1) (a faster hoist does not let the swing grow slowly)',
    ],
    [
      () => hoistedSideways({ ...up, offset: 0.32 }),
      'hoisted-sideways: x_0 = 0.32 is outside x_0 ≤ 0.35·L_0 (larger swings are not small)',
    ],
    [
      () => loweredSideways({ ...down, low: 0.19 }),
      'lowered-sideways: L_1 = 0.19 is outside L_1 ≥ 0.2 (lowering makes the line longer)',
    ],
    [
      () => loweredSideways({ ...down, acceleration: 9.80665 }),
      'lowered-sideways: a = 9.80665 is outside a < 9.80665 (the line would go slack)',
    ],
    [
      () => loweredSideways({ ...down, speed: 0.43 }),
      'lowered-sideways: v = 0.43 is outside v ≤ 0.3·√(g·L_0) (a faster way down does not let the swing change slowly)',
    ],
    [
      () => loweredSideways({ ...down, offset: 0.13 }),
      'lowered-sideways: x_0 = 0.13 is outside x_0 ≤ 0.6·L_0 (larger swings are not small)',
    ],
    [
      () => leanAt({ sideways: 0.3, length: 0.2 }),
      'lean-at: x = 0.3 is outside x ≤ 0.2 (a load is never farther out than its line is long)',
    ],
    [
      () => hookOffset({ sideways: 0.1, length: 0.2, below: 0.2 }),
      'hook-offset: h = 0.2 is outside h < 0.2 (the hook hangs below the pivot)',
    ],
    [
      () => travelResidual({ ...travel, distance: 0.07 }),
      'travel-residual: v = 0.2 is outside what D leaves room for (the travel ends before this speed is reached)',
    ],
    [
      () => travelResidual({ ...travel, fading: 0.2 }),
      'travel-residual: τ = 0.2 is outside τ > 1/ω (the load would not swing at all)',
    ],
    [
      () => hookDepthFromPeriod({ ...period, size: 0.2 }),
      /^hook-depth-from-period: L_e = 0\.248\d* is outside L_e ≥ 2·k \(a claw on so short a line is no pendulum\)$/,
    ],
    [
      () => halvingFromFading({ swings: 8, first: 0.2, last: 0.2 }),
      'halving-from-fading: A_n = 0.2 is outside A_n < A_0 (it has not faded by what a tape can tell)',
    ],
  ])('%# says what, how much, what is allowed and why', (run, words) => {
    const said = refused(run);
    if (typeof words === 'string') expect(said).toBe(words);
    else expect(said).toMatch(words);
  });

  it('is not given at the edge itself', () => {
    expect(leanAt({ sideways: 0.2, length: 0.2 })).toBeCloseTo(Math.PI / 2, 14);
    expect(hoistedSideways({ ...up, offset: 0.35 * 0.9 })).toBeGreaterThan(0);
    expect(loweredSideways({ ...down, low: 0.2 })).toBeGreaterThan(0);
    // Ramps that just meet: v/a = D/v.
    expect(travelResidual({ ...travel, distance: 0.08 })).toBeGreaterThan(0);
    // And rounded ones: v/a + t_j = D/v.
    expect(travelResidual({ ...travel, distance: 0.1, easing: 0.1 })).toBeGreaterThan(0);
    expect(() => travelResidual({ ...travel, distance: 0.1, easing: 0.11 })).toThrow(OutsideRange);
    // A claw as large as its line allows: L_e = 2·k.
    const even = (9.80665 / (4 * Math.PI ** 2)) * 1;
    expect(hookDepthFromPeriod({ ...period, size: (even / 2) * (1 - 1e-12) })).toBeCloseTo(even / 2, 5);
  });
});
