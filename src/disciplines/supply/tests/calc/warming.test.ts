import { assert, double, pre, property, record } from 'fast-check';
import { describe, expect, it } from 'vitest';
import { closeLoop } from '../../../../engine/loop.ts';
import { constant, NoSolution, OutsideRange } from '../../../../kernel/index.ts';
import { windingHeat } from '../../calc/chopper.ts';
import { caseRiseAt, windingRiseAt } from '../../calc/warming-in-time.ts';
import {
  caseRise,
  coefficientAt,
  insulationLife,
  runaway,
  settledRise,
  temperatureFrom,
  windingRise,
} from '../../calc/warming.ts';
import { warmed } from '../references/solver.ts';

const motors = record({
  cold: double({ min: 0.5, max: 12, noNaN: true }),
  iron: double({ min: 0, max: 4, noNaN: true }),
  inside: double({ min: 0.4, max: 2.5, noNaN: true }),
  outside: double({ min: 1.5, max: 6, noNaN: true }),
  windingCapacity: double({ min: 20, max: 120, noNaN: true }),
  caseCapacity: double({ min: 150, max: 900, noNaN: true }),
  coefficient: double({ min: 0.0035, max: 0.0042, noNaN: true }),
});

describe('copper', () => {
  it('has one straight line, whichever temperature it starts from', () => {
    const at = coefficientAt({ ambient: 313.15 });
    const cold = 1 + 0.00393 * 20;
    expect(cold * (1 + at * 50)).toBeCloseTo(1 + 0.00393 * 70, 12);
    expect(coefficientAt({ ambient: 293.15 })).toBe(0.00393);
  });
});

describe('a held winding', () => {
  it('by hand: 8 W through 1 + 3 K/W settles at 36.6 K, cold copper would at 32 K', () => {
    // 32/(1 − 0.00393·32) = 36.603.
    const motor = { cold: 8, inside: 1, outside: 3, coefficient: 0.00393 };
    expect(settledRise(motor)).toBeCloseTo(36.603, 3);
    expect(caseRise({ ...motor, winding: settledRise(motor) })).toBeCloseTo((36.603 * 3) / 4, 3);
  });

  // Published-secondary (two-lump-motor): P·(R_1 + R_2) and P·R_2 where the resistance stays cold.
  it('is the plain sum of both resistances for copper that does not change', () => {
    expect(settledRise({ cold: 5, inside: 1.2, outside: 3.1, coefficient: 0 })).toBeCloseTo(5 * 4.3, 12);
    expect(caseRise({ cold: 5, outside: 3.1, coefficient: 0, winding: 20 })).toBeCloseTo(5 * 3.1, 12);
  });

  it('settles where a general solver comes to rest', () => {
    assert(
      property(motors, (motor) => {
        pre(runaway(motor) < 0.6);
        // 0.001 K: after so many of the slowest times nothing is left to settle.
        const [winding, shell] = warmed(motor, 60 * motor.caseCapacity * motor.outside);
        const settled = settledRise(motor);
        expect(Math.abs(settled - winding!)).toBeLessThan(1e-3);
        expect(Math.abs(caseRise({ ...motor, winding: settled }) - shell!)).toBeLessThan(1e-3);
      }),
      { numRuns: 25 },
    );
  });

  /** The winding temperature at which the engine closes its loop. */
  const closed = (current: number, cold: number, air: number): number =>
    closeLoop({
      name: 'temperature of the winding',
      from: constant(air, 'temperature', 'air'),
      most: constant(523.15, 'temperature', 'end of the straight line'),
      tolerance: 1e-8,
      next: (temperature) =>
        temperatureFrom.work({
          ambient: air,
          rise: windingRise.work({
            copper: windingHeat.work({ current, cold, rail: 48, temperature }),
            iron: 1,
            inside: 1,
            outside: 3,
          }),
        }),
      otherwise: 'it runs away',
    }).number;

  it('closes as a loop where the closed form settles', () => {
    for (const [current, cold, air] of [
      [1.2, 1.1, 281.15],
      [2.5, 1.1, 305.15],
      [1, 8, 313.15],
    ] as const) {
      const P0 = windingHeat({ current, cold, rail: 48, temperature: air });
      const settled = settledRise({
        cold: P0,
        iron: 1,
        inside: 1,
        outside: 3,
        coefficient: coefficientAt({ ambient: air }),
      });
      expect(closed(current, cold, air)).toBeCloseTo(air + settled, 5);
    }
    expect(() => closed(8, 1.1, 305.15)).toThrow(NoSolution);
  });

  it('warms in time as a general solver says', () => {
    assert(
      property(motors, double({ min: 5, max: 9000, noNaN: true }), (motor, time) => {
        pre(runaway(motor) < 0.8);
        const [winding, shell] = warmed(motor, time);
        expect(Math.abs(windingRiseAt({ ...motor, time }) / winding! - 1)).toBeLessThan(1e-6);
        expect(Math.abs(caseRiseAt({ ...motor, time }) - shell!)).toBeLessThan(1e-6 * winding!);
      }),
      { numRuns: 60 },
    );
  });

  it('is as cold as the air at first', () => {
    const motor = {
      cold: 8,
      iron: 1,
      inside: 1,
      outside: 3,
      windingCapacity: 60,
      caseCapacity: 400,
      coefficient: 0.0039,
      time: 0,
    };
    expect(windingRiseAt(motor)).toBeCloseTo(0, 12);
    expect(caseRiseAt(motor)).toBeCloseTo(0, 12);
  });

  it('runs away where each kelvin brings the heat for another, and the solver agrees', () => {
    const motor = {
      cold: 50,
      iron: 0,
      inside: 1.5,
      outside: 4,
      windingCapacity: 50,
      caseCapacity: 300,
      coefficient: 0.00393,
    };
    expect(runaway(motor)).toBeGreaterThan(1);
    expect(() => settledRise(motor)).toThrow(NoSolution);
    expect(() => windingRiseAt({ ...motor, time: 60 })).toThrow(NoSolution);
    expect(() => caseRiseAt({ ...motor, time: 60 })).toThrow(NoSolution);
    const [first, later, last] = [5000, 50_000, 100_000].map((time) => warmed(motor, time)[0]!);
    expect(last! - later!).toBeGreaterThan(later! - first!);
  });

  it('is above the air by its rise; 10 K more halve its life', () => {
    expect(temperatureFrom({ ambient: 305.15, rise: 40 })).toBeCloseTo(345.15, 12);
    expect(insulationLife({ limit: 403.15, temperature: 413.15 })).toBe(0.5);
    expect(insulationLife({ limit: 403.15, temperature: 383.15 })).toBe(4);
    expect(() => insulationLife({ limit: 403.15, temperature: 340 })).toThrow(OutsideRange);
    expect(() => temperatureFrom({ ambient: 305.15, rise: -1 })).toThrow(OutsideRange);
  });
});
