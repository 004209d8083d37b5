import { describe, expect, it } from 'vitest';
import { OutsideRange } from '../../../../kernel/index.ts';
import { cabinetRise, driverHeat, plainRise, servoCurrent, servoHeat, sunGain } from '../../calc/cooling.ts';
import { cabinetExample, playOfServo } from '../references/supply.ts';

it('a driver heats by its bridge and itself', () => {
  // By hand: 1.2² · 0.5 + 0.3.
  expect(driverHeat({ current: 1.2, bridge: 0.5, quiescent: 0.3 })).toBeCloseTo(1.02, 12);
  expect(driverHeat({ current: 1.2, bridge: 0.5, quiescent: 0.3, phases: 2 })).toBeCloseTo(1.74, 12);
});

it('a servo that stalls for good turns all of its power into heat', () => {
  expect(servoHeat({ rail: 5.5, current: 1.8, stall: 1.8 })).toBeCloseTo(5.5 * 1.8, 12);
  expect(servoHeat({ rail: 6, current: 0.5, stall: 2 })).toBeCloseTo(0.75, 12);
  expect(plainRise({ power: 0.75, resistance: 20 })).toBe(15);
});

it('a servo heats by its play as the reference says', () => {
  const [stalled] = playOfServo.duties as [number];
  const [stall, current] = playOfServo.currents as [number, number];
  expect(servoCurrent({ stalled, stall, current })).toBeCloseTo(playOfServo.rms, 5);
  expect(() => servoCurrent({ stalled, stall: 0.1, current })).toThrow(OutsideRange);
});

describe('a closed cabinet', () => {
  it('warms as the published example says', () => {
    const { power, transfer, surface, rise } = cabinetExample;
    // The surface is printed to 0.01 m², 0.2 % of it.
    expect(Math.abs(cabinetRise({ power, transfer, surface }) / rise - 1)).toBeLessThan(0.002);
  });

  it('warms half as much with twice the surface, and has a surface', () => {
    const { power, transfer, surface, rise } = cabinetExample;
    expect(cabinetRise({ power, transfer, surface: 2 * surface }) / (rise / 2)).toBeCloseTo(1, 2);
    expect(() => cabinetRise({ power: 50, transfer: 5.5, surface: 0 })).toThrow(OutsideRange);
  });

  it('takes in the sun', () => {
    expect(sunGain({ transmittance: 0.82, irradiance: 500, area: 0.4 })).toBeCloseTo(164, 12);
    expect(() => sunGain({ transmittance: 1.1, irradiance: 500, area: 0.4 })).toThrow(OutsideRange);
  });
});
