import { describe, expect, it } from 'vitest';
import { OutsideRange } from '../../../../kernel/index.ts';
import { backEmf } from '../../calc/back-emf.ts';
import {
  addedResistance,
  bridgeVoltage,
  electricalTime,
  peakCurrent,
  phaseLoopResistance,
  referenceVoltage,
  squareWaveAmplitude,
} from '../../calc/drive.ts';
import { copperHeat, standstillCurrent, standstillTorque } from '../../calc/standstill.ts';
import { kneeSpeed, pullOut, ruleOfThumbSpeed, shaftTorque, torqueUse, voltagePullOut } from '../../calc/pull-out.ts';
import { inductanceFromTime, ratedFromHeat, resistanceFromHeat } from '../../calc/rating.ts';
import {
  fluxLinkageOf,
  rotorTeethOf,
  torqueConstantOf,
  warmResistance,
  windingCurrent,
  windingInductance,
  windingResistance,
  windingTorqueConstant,
} from '../../calc/winding.ts';
import * as published from '../references/stepper.ts';

const { plate } = published;
const RPM = (2 * Math.PI) / 60;
const K = torqueConstantOf({ holding: plate.holding, rated: plate.rated });
const motor = { constant: K, loop: plate.resistance, inductance: plate.inductance, teeth: plate.teeth };
// Both phases at rated current: the phasor is √2 of it.
const PEAK = Math.SQRT2 * plate.rated;

describe('the constants of a motor', () => {
  it('follow from its plate', () => {
    expect(K).toBeCloseTo(published.peakConstant.gives, 5);
    expect(K / Math.SQRT2).toBeCloseTo(published.rmsConstant.gives, 3);
    expect(electricalTime({ inductance: plate.inductance, loop: plate.resistance })).toBeCloseTo(
      published.electricalTime.gives,
      6,
    );
  });

  it('give the holding torque back with both phases at rated current', () => {
    expect(K * Math.hypot(plate.rated, plate.rated)).toBeCloseTo(plate.holding, 12);
  });

  it('make an EMF whose power is the mechanical power', () => {
    const speed = 40;
    const current = 1.7;
    const electrical = 2 * 0.5 * backEmf({ constant: K, speed }) * current;
    expect(electrical).toBeCloseTo(K * current * speed, 12);
    expect(fluxLinkageOf({ constant: K, teeth: 50 }) * 50 * speed).toBeCloseTo(backEmf({ constant: K, speed }), 12);
  });

  it('have fifty teeth at 1.8° and a hundred at 0.9°', () => {
    expect(rotorTeethOf({ full: Math.PI / 100 })).toBeCloseTo(50, 12);
    expect(rotorTeethOf({ full: Math.PI / 200 })).toBeCloseTo(100, 12);
  });

  it('follow from heat and electrical time where no plate is left', () => {
    const {
      copper,
      electricalTime: { gives: time },
    } = published;
    expect(ratedFromHeat({ heat: copper.full, resistance: plate.resistance })).toBeCloseTo(plate.rated, 3);
    expect(resistanceFromHeat({ heat: copper.full, rated: plate.rated })).toBeCloseTo(plate.resistance, 3);
    expect(inductanceFromTime({ time, resistance: plate.resistance })).toBeCloseTo(plate.inductance, 6);
  });

  it('are refused without a current or a torque', () => {
    expect(() => torqueConstantOf({ holding: 1.26, rated: 0 })).toThrow(OutsideRange);
    expect(() => torqueConstantOf({ holding: NaN, rated: 1 })).toThrow(OutsideRange);
  });
});

describe('a winding connected another way', () => {
  const half = { resistance: 5, inductance: 8e-3, constant: 0.4, rated: 1 };
  const connected = (turns: number, copper: number) => ({
    resistance: windingResistance({ measured: half.resistance, copper }),
    inductance: windingInductance({ measured: half.inductance, turns }),
    constant: windingTorqueConstant({ measured: half.constant, turns }),
    rated: windingCurrent({ measured: half.rated, copper }),
  });

  it('has four times the inductance as a full coil', () => {
    const series = connected(2, 2);
    expect(series).toEqual({ resistance: 10, inductance: 32e-3, constant: 0.8, rated: 1 / Math.sqrt(2) });
  });

  it('has the inductance of a half and half its resistance in parallel', () => {
    const parallel = connected(1, 0.5);
    expect(parallel).toEqual({ resistance: 2.5, inductance: 8e-3, constant: 0.4, rated: 1 / Math.sqrt(0.5) });
  });

  it('gives √2 of the torque of a half at the same copper heat, series or parallel', () => {
    for (const { resistance, constant, rated } of [connected(2, 2), connected(1, 0.5)]) {
      expect(rated ** 2 * resistance).toBeCloseTo(half.rated ** 2 * half.resistance, 12);
      expect(constant * rated).toBeCloseTo(Math.SQRT2 * half.constant * half.rated, 12);
    }
  });

  it('is 39.3 % higher in resistance when it is 100 K warmer, and refuses a furnace', () => {
    expect(warmResistance({ cold: 2, temperature: 293.15 })).toBe(2);
    expect(warmResistance({ cold: 2, temperature: 393.15 })).toBeCloseTo(2.786, 12);
    expect(() => warmResistance({ cold: 2, temperature: 500 })).toThrow(OutsideRange);
    expect(() => warmResistance({ cold: 2, temperature: 200 })).toThrow(OutsideRange);
  });
});

describe('a driver', () => {
  const { chopperExample } = published;

  it('is set as its data sheet says', () => {
    const { peak, gain, sense, volts, rmsMilliampere } = chopperExample;
    expect(referenceVoltage({ peak, gain, sense })).toBe(volts);
    expect(peakCurrent({ setting: rmsMilliampere / 1000, marking: Math.SQRT2 })).toBeCloseTo(peak, 3);
    expect(peakCurrent({ setting: 1.2, marking: 1 })).toBe(1.2);
  });

  it('is marked neither below peak nor beyond RMS', () => {
    expect(() => peakCurrent({ setting: 1, marking: 0.9 })).toThrow(OutsideRange);
    expect(() => peakCurrent({ setting: 1, marking: 1.5 })).toThrow(OutsideRange);
  });

  it('reaches the motor through its cable and its bridge', () => {
    // By hand: 2 · 3.4 m · 39 mΩ/m = 0.2652 Ω, and half of that doubled.
    expect(addedResistance({ length: 3.4, perLength: 0.039, bridge: 0.4 })).toBeCloseTo(0.6652, 12);
    expect(addedResistance({ length: 3.4, perLength: 0.039, parallel: 2, bridge: 0.4 })).toBeCloseTo(0.5326, 12);
    expect(phaseLoopResistance({ winding: 0.9, added: 0.6652 })).toBeCloseTo(1.5652, 12);
    expect(bridgeVoltage({ rail: 12, drop: 2 })).toBe(10);
    expect(bridgeVoltage({ rail: 1, drop: 2 })).toBe(0);
  });

  it('makes 4/π of its rail at most', () => {
    // The fundamental of a square wave, by summing it against a sine.
    const n = 100_000;
    let sum = 0;
    for (let i = 0; i < n; i++) sum += Math.abs(Math.sin((2 * Math.PI * (i + 0.5)) / n));
    expect(squareWaveAmplitude({ bridge: 12 })).toBeCloseTo((12 * 2 * sum) / n, 6);
  });

  it('heats the copper', () => {
    const { copper } = published;
    expect(copperHeat({ peak: plate.rated, winding: plate.resistance, phases: 2 })).toBeCloseTo(copper.full, 2);
    // Half of 14.112 is 7.056; printed as 7.06.
    expect(copperHeat({ peak: plate.rated, winding: plate.resistance })).toBeCloseTo(copper.micro, 2);
  });

  it('holds with what is left of the current at rest', () => {
    expect(standstillCurrent({ peak: 2, share: 0.5, volts: 12, loop: 1 })).toBe(1);
    expect(standstillCurrent({ peak: 2, volts: 12, loop: 10 })).toBe(1.2);
    expect(standstillTorque({ constant: 0.5, atRest: 1, detent: 0.05 })).toBeCloseTo(0.45, 12);
    expect(standstillTorque({ constant: 0.5, atRest: 0, detent: 0.05 })).toBe(0);
    expect(() => standstillCurrent({ peak: 2, share: 1.2, volts: 12, loop: 10 })).toThrow(OutsideRange);
  });
});

describe('pull-out', () => {
  it.each(published.pullOutAt12V)('at $rpm rpm', ({ rpm, voltageOnly, limited }) => {
    const at = { ...motor, speed: rpm * RPM, volts: 12 };
    expect(voltagePullOut(at)).toBeCloseTo(voltageOnly, 4);
    // 1.26 is the current limit itself; the rest is printed to four digits.
    expect(pullOut({ ...at, peak: PEAK })).toBeCloseTo(limited, 4);
  });

  it('has its knee where the whole current just stands across the rotor', () => {
    const knee = kneeSpeed({ ...motor, volts: 12, peak: PEAK });
    expect(knee / RPM).toBeCloseTo(published.kneeAt12V.rpm, 1);
    // 524 full steps a second: 157.3 rpm at 200 steps a turn, printed as a whole number.
    expect((knee / (2 * Math.PI)) * 200).toBeCloseTo(published.kneeAt12V.fullSteps, 0);
    const full = K * PEAK;
    expect(pullOut({ ...motor, speed: knee * 0.999, volts: 12, peak: PEAK })).toBeCloseTo(full, 9);
    expect(pullOut({ ...motor, speed: knee * 1.01, volts: 12, peak: PEAK })).toBeLessThan(full);
    expect(kneeSpeed({ ...motor, volts: 3, peak: PEAK })).toBe(0);
  });

  it('agrees with a search over every current phasor, in each of its branches', () => {
    // Independent of the circles: no closed form, only the machine equations on a grid of phasors.
    const searched = (m: typeof motor, speed: number, volts: number, peak: number): number => {
      const X = m.teeth * speed * m.inductance;
      const E = m.constant * speed;
      let best = 0;
      for (let r = 0; r <= 400; r++)
        for (let a = 0; a < 720; a++) {
          const size = (peak * r) / 400;
          const d = size * Math.cos((a * Math.PI) / 360);
          const q = size * Math.sin((a * Math.PI) / 360);
          const across = Math.hypot(m.loop * d - X * q, m.loop * q + X * d + E);
          if (across <= volts && q > best) best = q;
        }
      return m.constant * best;
    };
    const long = { ...motor, constant: 0.55, loop: 2.4, inductance: 10e-3 };
    for (const [m, speed, volts, peak] of [
      [motor, 5, 12, 2],
      [motor, 20, 12, PEAK],
      [motor, 31.4, 12, PEAK],
      [long, 34.6, 24, 1.2],
      [long, 60, 24, 0.9],
      [long, 4, 24, 12],
    ] as const) {
      // The grid is a 400th of the current and half a degree wide.
      expect(Math.abs(pullOut({ ...m, speed, volts, peak }) - searched(m, speed, volts, peak))).toBeLessThan(
        m.constant * peak * 0.01,
      );
    }
  });

  it('at rest is the lesser of the setting and what the rail pushes through the copper', () => {
    expect(pullOut({ ...motor, speed: 0, volts: 12, peak: 2 })).toBeCloseTo(2 * K, 12);
    expect(pullOut({ ...motor, speed: 0, volts: 0.9, peak: 2 })).toBeCloseTo(K, 12);
  });

  it('promises nothing where the EMF alone drives more than the setting', () => {
    const weak = { ...motor, speed: 400, volts: 12, peak: 0.5 };
    expect(pullOut(weak)).toBe(0);
  });

  it('falls with more holding torque where the voltage governs, and rises where the current does', () => {
    const stronger = { ...motor, constant: 2 * K };
    const fast = { speed: 600 * RPM, volts: 12, peak: PEAK };
    const slow = { speed: 10 * RPM, volts: 12, peak: PEAK };
    expect(pullOut({ ...stronger, ...fast })).toBeLessThan(pullOut({ ...motor, ...fast }));
    expect(pullOut({ ...stronger, ...slow })).toBeGreaterThan(pullOut({ ...motor, ...slow }));
  });

  it('is the same for half the turns at half the volts and twice the amperes', () => {
    const at = { speed: 30, volts: 12, peak: 2 };
    // Half the turns: a quarter of R and L, half of K.
    const fewer = { ...motor, constant: K / 2, loop: motor.loop / 4, inductance: motor.inductance / 4 };
    expect(pullOut({ ...fewer, speed: 30, volts: 6, peak: 4 })).toBeCloseTo(pullOut({ ...motor, ...at }), 12);
  });

  it.each(published.ruleOfThumb)('rule of thumb at $volts V', ({ volts, turns, rpm }) => {
    const w = ruleOfThumbSpeed({ volts, inductance: plate.inductance, rated: plate.rated, steps: 200 });
    expect(w / (2 * Math.PI)).toBeCloseTo(turns, 4);
    expect(w / RPM).toBeCloseTo(rpm, 1);
  });

  it('is lessened by detent and iron, never below nothing', () => {
    expect(shaftTorque({ magnet: 0.5, detent: 0.06, iron: 1e-3, speed: 40 })).toBeCloseTo(0.4, 12);
    expect(shaftTorque({ magnet: 0.05, detent: 0.06, iron: 0, speed: 0 })).toBe(0);
    expect(torqueUse({ asked: 0.2, given: 0.4 })).toBe(0.5);
    expect(torqueUse({ asked: 0.2, given: 0 })).toBeGreaterThan(1000);
  });
});
