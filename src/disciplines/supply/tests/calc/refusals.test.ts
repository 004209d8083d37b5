/** What a formula refuses, at the very edge of what it allows, and the words in which it does. */
import { describe, expect, it } from 'vitest';
import { NoSolution, OutsideRange } from '../../../../kernel/index.ts';
import { sagFromVolts } from '../../calc/bench.ts';
import { servoCurrent } from '../../calc/cooling.ts';
import { deepestDrop } from '../../calc/drop.ts';
import { chargingTime } from '../../calc/start.ts';
import { clampedVoltage } from '../../calc/stop.ts';
import { caseRiseAt, windingRiseAt } from '../../calc/warming-in-time.ts';
import { insulationLife, settledRise } from '../../calc/warming.ts';

const refused = (run: () => number): string => {
  try {
    run();
  } catch (error) {
    if (error instanceof OutsideRange || error instanceof NoSolution) return error.message;
    throw error;
  }
  throw new Error('it was not refused');
};

const volts = { lightVolts: 24, heavyVolts: 23.9, scale: 1 };
const motor = { iron: 0, inside: 1, outside: 3, coefficient: 0.004 };
const slow = { windingCapacity: 50, caseCapacity: 300, time: 60 };
const runsAway =
  'the temperature of the winding has no solution: held at this current the winding heats itself faster than it can cool: it runs away';

describe('a refusal', () => {
  it.each([
    [
      () => sagFromVolts({ ...volts, light: 3, heavy: 2 }),
      'sag-from-volts: I_2 = 2 is outside I_2 > I_1 (a sag is seen between two currents)',
    ],
    [
      () => servoCurrent({ stalled: 0.1, stall: 0.2, current: 0.3 }),
      'servo-current: I_st = 0.2 is outside I_st ≥ I (a servo takes most when it stalls)',
    ],
    [
      () => deepestDrop({ rail: 12, feed: 2, constant: 6 }),
      'the drop on the wire has no solution: the wire cannot bring that power: the more current flows, the less voltage is left, down to nothing',
    ],
    [
      () => chargingTime({ capacitance: 1e-3, rail: 24, limit: 5, load: 5 }),
      'the start of the rail has no solution: what hangs on the rail takes all the current that its supply gives, so that it never comes up',
    ],
    [
      () => clampedVoltage({ lifted: 30, clamp: 24, rail: 24 }),
      'the clamp has no solution: the clamp conducts at what the supply gives anyway, and burns its power for good',
    ],
    [() => settledRise({ ...motor, cold: 63 }), runsAway],
    [() => windingRiseAt({ ...motor, ...slow, cold: 63 }), runsAway],
    [() => caseRiseAt({ ...motor, ...slow, cold: 63 }), runsAway],
    [
      () => insulationLife({ limit: 403.15, temperature: 343.1 }),
      'insulation-life: θ = 343.1 is outside within 60 K of the limit (the rule says nothing further off)',
    ],
    [
      () => insulationLife({ limit: 403.15, temperature: 463.2 }),
      'insulation-life: θ = 463.2 is outside within 60 K of the limit (the rule says nothing further off)',
    ],
  ])('%# says what, how much, what is allowed and why', (run, words) => {
    expect(refused(run)).toBe(words);
  });

  it('is not given at the edge itself', () => {
    expect(servoCurrent({ stalled: 0.1, stall: 0.3, current: 0.3 })).toBeCloseTo(0.3, 14);
    expect(insulationLife({ limit: 403.15, temperature: 343.15 })).toBe(64);
    expect(deepestDrop({ rail: 12, feed: 2, constant: 5.999 })).toBeCloseTo(11.999, 12);
    expect(chargingTime({ capacitance: 1e-3, rail: 24, limit: 5, load: 4.999 })).toBeCloseTo(24, 9);
    expect(clampedVoltage({ lifted: 30, clamp: 24.001, rail: 24 })).toBe(24.001);
    expect(settledRise({ ...motor, cold: 62.4 })).toBeGreaterThan(1e5);
  });
});
