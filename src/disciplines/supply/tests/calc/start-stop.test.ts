import { describe, expect, it } from 'vitest';
import { NoSolution, OutsideRange } from '../../../../kernel/index.ts';
import { capacitanceTogether, chargingTime, inrushLetThrough, inrushPeak } from '../../calc/start.ts';
import {
  brakingEnergy,
  clampedVoltage,
  clampPower,
  energyTogether,
  loweringPower,
  rampTime,
  voltageAfterBraking,
} from '../../calc/stop.ts';
import { integrate } from '../references/solver.ts';

describe('a rail that comes up', () => {
  it('takes the charge of its capacitors over the current that is left', () => {
    // By hand: 2 mF · 24 V / (5 A − 1 A).
    expect(chargingTime({ capacitance: 2e-3, rail: 24, limit: 5, load: 1 })).toBeCloseTo(0.012, 12);
  });

  it('never comes up when its loads take everything', () => {
    expect(() => chargingTime({ capacitance: 2e-3, rail: 24, limit: 5, load: 5 })).toThrow(NoSolution);
  });

  it('lets through what a general solver finds for the charging of its capacitor', () => {
    const [C, V, R] = [1e-3, 24, 0.2];
    const [, square] = integrate((_t, [v = NaN]) => [(V - v) / (R * C), ((V - v) / R) ** 2], [0, 0], 40 * R * C);
    expect(inrushLetThrough({ capacitance: C, rail: V, loop: R })).toBeCloseTo(square!, 6);
    expect(inrushPeak({ rail: V, loop: R })).toBeCloseTo(120, 12);
    expect(() => inrushPeak({ rail: V, loop: 0 })).toThrow(OutsideRange);
  });
});

describe('a load that is braked', () => {
  it('gives back its energy less the losses, and never takes', () => {
    // By hand: ½ · 2e-3 · 50² = 2.5 J, less 4 W for 0.25 s.
    const axis = { load: 1.5e-3, rotor: 5e-4, speed: 50 };
    expect(brakingEnergy({ ...axis, losses: 4, time: rampTime({ speed: 0.25, acceleration: 1 }) })).toBeCloseTo(
      1.5,
      12,
    );
    expect(brakingEnergy({ ...axis, losses: 40, time: 0.25 })).toBe(0);
    expect(brakingEnergy({ ...axis, time: 0.25 })).toBeCloseTo(2.5, 12);
  });

  it('gives back what gravity adds downhill', () => {
    // By hand: 2.5 J, and 0.2 N·m over the 50 · 0.25 / 2 rad that it turns in the ramp.
    const axis = { load: 1.5e-3, rotor: 5e-4, speed: 50, time: 0.25 };
    expect(brakingEnergy({ ...axis, gravity: 0.2 })).toBeCloseTo(3.75, 12);
    expect(brakingEnergy({ ...axis, gravity: 0.2, losses: 4 })).toBeCloseTo(2.75, 12);
  });

  it('lifts its rail no further than the clamp, which conducts above the rail', () => {
    expect(clampedVoltage({ lifted: 60, clamp: 36, rail: 24 })).toBe(36);
    expect(clampedVoltage({ lifted: 30, clamp: 36, rail: 24 })).toBe(30);
    expect(() => clampedVoltage({ lifted: 30, clamp: 24, rail: 24 })).toThrow(NoSolution);
  });

  it('gives back m·g·v while it is lowered without losses', () => {
    const [mass, radius, speed] = [0.76, 0.0166, 0.16];
    expect(loweringPower({ torque: mass * 9.80665 * radius, speed: speed / radius })).toBeCloseTo(
      mass * 9.80665 * speed,
      12,
    );
    expect(loweringPower({ torque: 0.1, speed: 10, losses: 2 })).toBe(0);
  });

  it('raises the rail until the energy stands in its capacitor', () => {
    const after = voltageAfterBraking({ rail: 24, energy: 1, capacitance: 2e-3 });
    expect((2e-3 * (after ** 2 - 24 ** 2)) / 2).toBeCloseTo(1, 12);
    // By hand: √(576 + 1000).
    expect(after).toBeCloseTo(39.699, 3);
  });

  it('leaves its clamp what the capacitor does not take', () => {
    // By hand: 2 J − ½ · 2 mF · (36² − 24²) = 1.28 J, every 10 s.
    expect(clampPower({ energy: 2, capacitance: 2e-3, clamp: 36, rail: 24, every: 10 })).toBeCloseTo(0.128, 12);
    expect(clampPower({ energy: 0.5, capacitance: 2e-3, clamp: 36, rail: 24, every: 10 })).toBe(0);
  });
});

it('energies and capacitors add', () => {
  expect(energyTogether({ energies: [0.5, 1.25] })).toBe(1.75);
  expect(capacitanceTogether({ parts: [1e-3, 0, 2e-3] })).toBeCloseTo(3e-3, 12);
  expect(() => capacitanceTogether({ parts: [-1e-3] })).toThrow(OutsideRange);
});
