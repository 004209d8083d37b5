/** From readings to numbers of motors and axes: what must hold whatever the readings. */
import { describe, expect, it } from 'vitest';
import { OutsideRange } from '../../../../kernel/index.ts';
import { lostStepSpeed, massFromWeighing, runningForceFromPulls } from '../../calc/bench-axis.ts';
import {
  holdingTorqueFromPull,
  inductanceOverTurn,
  ratedCurrentFromRun,
  resistanceFromVolts,
} from '../../calc/bench-motor.ts';
import { warmResistance } from '../../calc/winding.ts';

const CELSIUS = 273.15;

describe('resistance from volts', () => {
  it('undoes the warming of copper', () => {
    for (const temperature of [CELSIUS, CELSIUS + 20, CELSIUS + 45]) {
      const volts = 0.7 * warmResistance({ cold: 1.3, temperature });
      expect(resistanceFromVolts({ volts, current: 0.7, temperature })).toBeCloseTo(1.3, 12);
    }
  });

  it('asks for a current', () =>
    expect(() => resistanceFromVolts({ volts: 1, current: 0, temperature: CELSIUS + 20 })).toThrow(OutsideRange));
});

it('an inductance lies between its least and its most', () => {
  const [least, most] = [2.2e-3, 2.8e-3];
  expect([0, 0.5, 1].map((share) => inductanceOverTurn({ least, most, share }))).toEqual([2.2e-3, 2.5e-3, 2.8e-3]);
});

describe('holding torque from a pull', () => {
  const pull = { pull: 44, diameter: 0.049, line: 0.001 };

  it('is force times lever at the rated current, whatever saturates', () => {
    for (const saturation of [0, 0.2, 1])
      expect(holdingTorqueFromPull({ ...pull, current: 2.8, rated: 2.8, saturation })).toBeCloseTo(44 * 0.025, 12);
  });

  it('goes with the current as far as nothing saturates, and not at all where everything does', () => {
    const at = (saturation: number) => holdingTorqueFromPull({ ...pull, current: 2.24, rated: 2.8, saturation });
    expect(at(0)).toBeCloseTo((44 * 0.025) / 0.8, 12);
    expect(at(1)).toBeCloseTo(44 * 0.025, 12);
  });

  it.each([
    [0.5, 'far below'],
    [1.3, 'far above'],
  ])('refuses %f of the rated current, %s it', (share) => {
    expect(() => holdingTorqueFromPull({ ...pull, current: share * 2.8, rated: 2.8, saturation: 0 })).toThrow(
      OutsideRange,
    );
  });
});

describe('rated current from a run', () => {
  const run = { current: 2.5, air: CELSIUS + 20, coming: 0, ratio: 1.4, draught: 0.2 };

  it('is the current of a run that ends at 50 K, whatever is left open', () => {
    for (const [ratio, draught] of [
      [1, 0],
      [1.8, 0.25],
    ] as const)
      expect(ratedCurrentFromRun({ ...run, ratio, draught, warm: CELSIUS + 70 })).toBeCloseTo(2.5, 12);
  });

  it('without warming copper and with air that takes in proportion, heat goes with the rise', () => {
    // The room is at 20 °C, so that cold copper is 1.
    const warm = CELSIUS + 20 + 32;
    const hot = (rise: number) => 1 + 0.00393 * rise;
    const expected = 2.5 * Math.sqrt((50 / 32) * (hot(32) / hot(50)));
    expect(ratedCurrentFromRun({ ...run, warm, ratio: 1, draught: 0 })).toBeCloseTo(expected, 12);
  });

  it.each([24, 81])('refuses a rise of %f K', (rise) => {
    expect(() => ratedCurrentFromRun({ ...run, warm: run.air + rise })).toThrow(OutsideRange);
  });
});

it('a slope cancels between a pull there and a pull back', () => {
  for (const slope of [0, 1.5]) expect(runningForceFromPulls({ there: 6 + slope, back: 6 - slope })).toBe(6);
});

it('a speed at which it loses its place lies between the last kept and the first lost', () => {
  const [kept, lost] = [0.42, 0.44];
  expect([0, 1].map((share) => lostStepSpeed({ kept, lost, share }))).toEqual([0.42, 0.44]);
});

it('what holds a mass, weighed alone, is nothing', () => {
  expect(massFromWeighing({ gross: 0.3, tare: 0.3 })).toBe(0);
  expect(massFromWeighing({ gross: 2.5, tare: 0.3 })).toBeCloseTo(2.2, 12);
});
