import { powerTogether } from '../../calc/loads.ts';
import { assert, double, pre, property, record } from 'fast-check';
import { describe, expect, it } from 'vitest';
import { closeLoop } from '../../../../engine/loop.ts';
import { constant, NoSolution, OutsideRange } from '../../../../kernel/index.ts';
import { phaseHeat, windingAt } from '../../calc/chopper.ts';
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
import { coldFromWarm, coldResistance } from '../../calc/winding-cold.ts';
import { warmed, warmestOf } from '../references/solver.ts';

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

describe('the winding of a motor', () => {
  it('is as its halves are connected, and cold again what it was before it warmed', () => {
    // Two halves in series are twice one half, side by side half of it.
    expect(coldResistance({ measured: 5, ratio: 2 })).toBe(10);
    expect(coldResistance({ measured: 5, ratio: 0.5 })).toBe(2.5);
    expect(coldFromWarm({ warm: 1.393, temperature: 393.15 })).toBeCloseTo(1, 12);
    expect(windingAt({ cold: coldFromWarm({ warm: 3, temperature: 340 }), temperature: 340 })).toBeCloseTo(3, 12);
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
        pre(runaway({ ...motor, hot: motor.cold }) < 0.6);
        // 0.001 K: after so many of the slowest times nothing is left to settle.
        const [winding, shell] = warmed(motor, 60 * motor.caseCapacity * motor.outside);
        const settled = settledRise(motor);
        expect(Math.abs(settled - winding!)).toBeLessThan(1e-3);
        expect(Math.abs(caseRise({ ...motor, winding: settled }) - shell!)).toBeLessThan(1e-3);
      }),
      { numRuns: 25 },
    );
  });

  const heatOf = (current: number, cold: number, temperature: number): number =>
    phaseHeat({ current, resistance: windingAt({ cold, temperature }) });

  /** The winding temperature at which the engine closes its loop. */
  const closed = (current: number, cold: number, air: number): number =>
    closeLoop({
      name: 'temperature of the winding',
      from: constant(air, 'temperature', 'air'),
      most: constant(523.15, 'temperature', 'end of the straight line'),
      tolerance: 1e-8,
      next: (temperature) => {
        const copper = heatOf(current, cold, temperature.number);
        return temperatureFrom.work({
          ambient: air,
          rise: windingRise.work({
            hot: copper,
            mean: powerTogether.work({ powers: [copper, 1] }),
            inside: 1,
            outside: 3,
          }),
        });
      },
      otherwise: 'it runs away',
    }).number;

  it('closes as a loop where the closed form settles', () => {
    for (const [current, cold, air] of [
      [1.2, 1.1, 281.15],
      [2.5, 1.1, 305.15],
      [1, 8, 313.15],
    ] as const) {
      const settled = settledRise({
        cold: heatOf(current, cold, air),
        iron: 1,
        inside: 1,
        outside: 3,
        coefficient: coefficientAt({ ambient: air }),
      });
      expect(closed(current, cold, air)).toBeCloseTo(air + settled, 5);
    }
    expect(() => closed(8, 1.1, 305.15)).toThrow(NoSolution);
  });

  it('by hand: 4 W in one phase at rest and 3 W in the mean, through 1 and 3 K/W, are 8 + 9 + 3 K with 1 W of iron', () => {
    expect(windingRise({ hot: 8, mean: 4, inside: 1, outside: 3 })).toBe(20);
    expect(runaway({ hot: 8, cold: 3, inside: 1, outside: 3, coefficient: 0.004 })).toBeCloseTo(0.068, 12);
  });

  // Moving heats both phases evenly, standing may heat one alone; off in between.
  const plays = record({
    moving: double({ min: 1, max: 8, noNaN: true }),
    kept: double({ min: 0.2, max: 1, noNaN: true }),
    seconds: double({ min: 4, max: 30, noNaN: true }),
    motor: motors,
  });

  it('never gets warmer, where modes follow each other, than the mean in the case and the hottest mode in the winding say', () => {
    assert(
      property(plays, ({ moving, kept, seconds, motor }) => {
        const times = [seconds, seconds * 0.6, seconds * 0.4] as const;
        const total = times[0] + times[1] + times[2];
        const episodes = [
          { phases: [moving / 2, moving / 2], seconds: times[0] },
          { phases: [moving * kept, 0], seconds: times[1] },
          { phases: [0, 0], seconds: times[2] },
        ] as const;
        const mean = (moving * times[0] + moving * kept * times[1]) / total;
        const hot = Math.max(moving, 2 * moving * kept);
        const { inside, outside, iron, coefficient } = motor;
        const share = runaway({ hot, cold: mean, inside, outside, coefficient });
        pre(share < 0.5);
        // The loop of the copper in closed form: everything is linear in the rise.
        const settled = windingRise({ hot, mean: mean + iron, inside, outside }) / (1 - share);
        const rounds = Math.ceil((6 * motor.caseCapacity * outside) / total);
        const warmest = warmestOf(motor, episodes, rounds);
        expect(warmest).toBeLessThan(settled);
        // How far below depends on how short the modes are beside the winding; the case alone is always reached.
        expect(warmest).toBeGreaterThan(0.98 * (mean + iron) * outside);
      }),
      { numRuns: 12 },
    );
  });

  it('warms in time as a general solver says', () => {
    assert(
      property(motors, double({ min: 5, max: 9000, noNaN: true }), (motor, time) => {
        pre(runaway({ ...motor, hot: motor.cold }) < 0.8);
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
    expect(runaway({ ...motor, hot: motor.cold })).toBeGreaterThan(1);
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
