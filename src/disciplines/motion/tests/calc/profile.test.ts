import { describe, expect, it } from 'vitest';
import { OutsideRange } from '../../../../kernel/index.ts';
import {
  easingSpeed,
  sCurveRampTime,
  sCurveReachedAcceleration,
  sCurveReachedSpeed,
  sCurveTravelTime,
} from '../../calc/s-curve.ts';
import { reachedSpeed, rmsTorque, stoppingDistance, travelTime } from '../../calc/trapezoid.ts';
import { rms, sCurveRamps, sCurves, trapezoids } from '../references/mechanics.ts';

const off = (got: number, wanted: number): number => Math.abs(got - wanted);

describe('trapezoids', () => {
  it.each(trapezoids)('$kind: $given takes $gives s', ({ given, gives, within }) => {
    const speed = reachedSpeed(given);
    expect(off(travelTime({ ...given, speed }), gives)).toBeLessThanOrEqual(within);
  });

  it('reach √(a·D) on a travel that is too short', () => {
    expect(off(reachedSpeed({ asked: 0.25, acceleration: 1, distance: 0.05 }), 0.22361)).toBeLessThan(5e-6);
  });

  it('refuse a speed that the travel has no room for', () => {
    expect(() => travelTime({ speed: 0.3, acceleration: 1, distance: 0.05 })).toThrow(OutsideRange);
  });
});

describe('jerk-limited travels', () => {
  const timeOf = (given: { distance: number; asked: number; acceleration: number; jerk: number }): number => {
    const speed = sCurveReachedSpeed(given);
    return sCurveTravelTime({ ...given, speed, ramp: sCurveRampTime({ ...given, speed }) });
  };

  it.each(sCurves)('$kind: $given takes $gives s', ({ given, gives, within }) => {
    expect(off(timeOf(given), gives)).toBeLessThanOrEqual(within);
  });

  it.each(sCurveRamps)('$kind: a ramp of $given is $gives m long', ({ given, gives, within }) => {
    expect(off((given.speed * sCurveRampTime(given)) / 2, gives)).toBeLessThanOrEqual(within);
  });

  it.each([
    ['with a stretch of full acceleration', { distance: 0.1, asked: 9, acceleration: 1, jerk: 10 }],
    ['where the acceleration only just peaks', { distance: 2 / 100, asked: 9, acceleration: 1, jerk: 10 }],
    ['where it never gets there', { distance: 0.005, asked: 9, acceleration: 1, jerk: 10 }],
  ])('fill a short travel with two ramps, %s', (_, given) => {
    const speed = sCurveReachedSpeed(given);
    expect(speed * sCurveRampTime({ ...given, speed })).toBeCloseTo(given.distance, 12);
  });

  it('become a trapezoid as the jerk grows', () => {
    const given = { distance: 0.05, asked: 0.25, acceleration: 1 };
    expect(sCurveReachedSpeed({ ...given, jerk: 1e7 })).toBeCloseTo(reachedSpeed(given), 6);
  });

  it('peak below the allowed acceleration where the speed is low', () => {
    expect(sCurveReachedAcceleration({ speed: 0.05, acceleration: 1, jerk: 10 })).toBeCloseTo(Math.sqrt(0.5), 12);
    expect(sCurveReachedAcceleration({ speed: 0.25, acceleration: 1, jerk: 10 })).toBe(1);
  });

  it('ease off from the middle of a ramp that just peaks', () => {
    expect(easingSpeed({ speed: 0.1, acceleration: 1, jerk: 10, share: 1 })).toBeCloseTo(0.05, 12);
    expect(easingSpeed({ speed: 0.1, acceleration: 1, jerk: 10, share: 0 })).toBe(0.1);
    expect(() => easingSpeed({ speed: 0.05, acceleration: 1, jerk: 10, share: 1 })).toThrow(OutsideRange);
  });
});

describe('stopping', () => {
  it('goes four times as far from twice the speed, and v·t further with a reaction', () => {
    const stop = (speed: number, reaction: number): number => stoppingDistance({ speed, reaction, acceleration: 0.7 });
    expect(stop(0.4, 0)).toBeCloseTo(4 * stop(0.2, 0), 12);
    expect(stop(0.2, 0.05) - stop(0.2, 0)).toBeCloseTo(0.01, 12);
  });
});

describe('root mean square torque', () => {
  it('independent: four stretches', () => {
    expect(off(rmsTorque(rms), rms.gives)).toBeLessThanOrEqual(rms.within);
  });
  it('wants a time for every torque', () => {
    expect(() => rmsTorque({ torques: [1, 2], times: [1] })).toThrow(OutsideRange);
  });
});
