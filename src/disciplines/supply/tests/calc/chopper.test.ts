import { describe, expect, it } from 'vitest';
import { OutsideRange } from '../../../../kernel/index.ts';
import {
  chopperInput,
  chopperRipple,
  ironHeat,
  keptCurrent,
  meanCurrent,
  motorSpeed,
  phaseHeat,
  railHeat,
  shaftPower,
  windingAt,
} from '../../calc/chopper.ts';
import { fromRail } from '../references/bridge.ts';
import { copperHeat } from '../references/supply.ts';

const ROOM = 293.15;

describe('the copper of a stepper', () => {
  it('heats as the reference says in full steps and in microsteps', () => {
    const { current, cold: resistance } = copperHeat;
    expect(phaseHeat({ current, resistance, phases: 2 })).toBeCloseTo(copperHeat.full, 2);
    expect(phaseHeat({ current, resistance })).toBeCloseTo(copperHeat.micro, 2);
    expect(phaseHeat({ current: 0, resistance })).toBe(0);
  });

  it('resists 39.3 % more when it is 100 K warmer', () => {
    expect(windingAt({ cold: 2, temperature: ROOM })).toBe(2);
    expect(windingAt({ cold: 2, temperature: ROOM + 100 })).toBeCloseTo(2.786, 12);
    expect(() => windingAt({ cold: 2, temperature: 600 })).toThrow(OutsideRange);
  });

  // Ohm’s law at every angle: no phase carries more than its share of the set current, nor more than V/R.
  it.each([
    { phases: 1, shares: (angle: number) => [Math.abs(Math.cos(angle)), Math.abs(Math.sin(angle))] },
    { phases: 2, shares: () => [1, 1] },
  ])('heats at most by the lesser of its current and its rail, with $phases', ({ phases, shares }) => {
    const angles = Array.from({ length: 401 }, (_, n) => (n * Math.PI) / 800);
    for (const resistance of [1, 4, 7, 8, 9, 11, 13, 20]) {
      const [current, rail] = [1.5, 12];
      const heats = angles.map((angle) =>
        shares(angle).reduce((sum, share) => sum + Math.min(share * current, rail / resistance) ** 2 * resistance, 0),
      );
      const most = Math.min(phaseHeat({ current, resistance, phases }), railHeat({ rail, resistance }));
      expect(Math.max(...heats), `${resistance} Ω`).toBeLessThanOrEqual(most * (1 + 1e-12));
      // The grid of angles misses the worst one by no more than this.
      expect(Math.max(...heats), `${resistance} Ω`).toBeGreaterThan(most * 0.995);
    }
  });

  it('is held at a share of the setting', () => {
    expect(keptCurrent({ peak: 1.2, share: 0.5 })).toBe(0.6);
    expect(() => keptCurrent({ peak: 1.2, share: 1.1 })).toThrow(OutsideRange);
  });

  it('turns as fast as its axis asks', () => {
    expect(motorSpeed({ speed: 0.22, radius: 0.04 / (2 * Math.PI) })).toBeCloseTo(2 * Math.PI * 5.5, 12);
  });
});

describe('what a chopper takes from its rail', () => {
  it('is power over voltage, not the phase current', () => {
    // By hand: 1.44 + 0.72 W, 0.02 N·m and 0.1 N·m at 30 rad/s, 0.3 W of its own.
    const power = chopperInput({
      copper: phaseHeat({ current: 1.2, resistance: 1 }),
      series: phaseHeat({ current: 1.2, resistance: 0.5 }),
      iron: ironHeat({ drag: 0.02 / 30, speed: 30 }),
      mechanical: shaftPower({ torque: 0.1, speed: 30 }),
      quiescent: 0.3,
    });
    expect(power).toBeCloseTo(6.06, 12);
    expect(meanCurrent({ power, rail: 24 })).toBeCloseTo(0.2525, 12);
  });

  // Energy is kept whatever the switches do; a per cent is for the steps of the simulation and the ripple it has.
  it.each([
    { rail: 24, peak: 1.2, resistance: 1.6, inductance: 2.5e-3, frequency: 50, emf: 0 },
    { rail: 24, peak: 1.2, resistance: 1.6, inductance: 2.5e-3, frequency: 250, emf: 6 },
    { rail: 36, peak: 2.8, resistance: 0.9, inductance: 3e-3, frequency: 100, emf: 10 },
  ])('is what a simulated bridge takes at $frequency turns a second and $emf V', (bridge) => {
    const { peak, resistance, emf } = bridge;
    const copper = phaseHeat({ current: peak, resistance });
    const input = chopperInput({ copper, series: 0, mechanical: emf * peak });
    expect(Math.abs(fromRail(bridge, 4).power / input - 1)).toBeLessThan(0.01);
  });

  // The judge’s own steps of time and its hysteresis move each pulse a little: 5 %.
  it.each([
    { rail: 24, peak: 1.2, resistance: 1.6, inductance: 2.5e-3, frequency: 50, emf: 0 },
    { rail: 24, peak: 1.2, resistance: 4, inductance: 4e-3, frequency: 25, emf: 4 },
    { rail: 36, peak: 2.8, resistance: 0.9, inductance: 3e-3, frequency: 50, emf: 8 },
  ])('ripples as the pulses of a simulated bridge do at $rail V and $emf V', (bridge) => {
    const { power, ripple } = fromRail(bridge, 4);
    const mean = meanCurrent({ power, rail: bridge.rail });
    expect(Math.abs(chopperRipple({ peak: bridge.peak, mean }) / ripple - 1)).toBeLessThan(0.05);
  });
});

describe('the ripple of a chopper', () => {
  /** Mean square of the pulses over the electrical turn, at a mean of `m` of the phase current of 1.5 A. */
  const summed = (m: number): number => {
    const angles = 20_000;
    const squares = Array.from({ length: angles }, (_, n) => {
      const angle = (2 * Math.PI * (n + 0.5)) / angles;
      return [Math.abs(Math.cos(angle)), Math.abs(Math.sin(angle))].reduce(
        (sum, c) => sum + c ** 2 * m * c * (1 - m * c),
        0,
      );
    });
    return 1.5 * Math.sqrt(squares.reduce((a, b) => a + b, 0) / angles);
  };

  it.each([0.05, 0.3, 0.56])('is the sum of its pulses at a mean of %s of the phase current', (m) => {
    expect(Math.abs(chopperRipple({ peak: 1.5, mean: 1.5 * m }) / summed(m) - 1)).toBeLessThan(0.001);
  });

  it.each([0.57, 0.8, 1])('is not below them past its greatest, at %s', (m) => {
    expect(chopperRipple({ peak: 1.5, mean: 1.5 * m })).toBeGreaterThan(summed(m) * 0.999);
    expect(chopperRipple({ peak: 1.5, mean: 1.5 * m })).toBeCloseTo(chopperRipple({ peak: 1.5, mean: 1.5 }), 12);
  });

  it('is nothing when nothing is taken', () => {
    expect(chopperRipple({ peak: 1.5, mean: 0 })).toBe(0);
  });
});

it('iron takes the power of the torque that it takes', () => {
  expect(ironHeat({ drag: 1e-3, speed: 40 })).toBeCloseTo(shaftPower({ torque: 0.04, speed: 40 }), 12);
});
