import { describe, expect, it } from 'vitest';
import { OutsideRange } from '../../../../kernel/index.ts';
import { magneticStiffness, naturalFrequency, resonanceSwing, staticLag, swingRoom } from '../../calc/resonance.ts';
import * as published from '../references/stepper.ts';

const { plate } = published;
const FULL_STEP = Math.PI / 100;

describe('natural frequency', () => {
  it('of the published example', () => {
    const { torque, angle, inertia, radians, hertz } = published.resonanceExample;
    const stiffness = torque / ((angle * Math.PI) / 180);
    const f = naturalFrequency({ stiffness, inertia });
    // Printed as whole radians a second and to a tenth of a hertz.
    expect(2 * Math.PI * f).toBeCloseTo(radians, 0);
    expect(f).toBeCloseTo(hertz, 1);
  });

  it.each(published.resonances)('at $inertia kg·m²', ({ stiffness, inertia, hertz }) => {
    expect(magneticStiffness({ peakTorque: plate.holding, teeth: 50 })).toBeCloseTo(stiffness, 10);
    expect(naturalFrequency({ stiffness, inertia })).toBeCloseTo(hertz, 2);
  });

  it('is halved by four times the inertia', () => {
    const f = naturalFrequency({ stiffness: 40, inertia: 1e-4 });
    expect(naturalFrequency({ stiffness: 40, inertia: 4e-4 })).toBeCloseTo(f / 2, 12);
  });
});

describe('lag and room', () => {
  it('lag as by another calculation', () => {
    const { load, degrees, fullSteps } = published.lag;
    const lag = staticLag({ load, peakTorque: plate.holding, teeth: 50 });
    expect((lag * 180) / Math.PI).toBeCloseTo(degrees, 4);
    expect(lag / FULL_STEP).toBeCloseTo(fullSteps, 3);
  });

  it('leave two full steps', () => {
    expect(swingRoom({ teeth: 50 })).toBeCloseTo(2 * FULL_STEP, 12);
    expect(() => staticLag({ load: -1, peakTorque: 1, teeth: 50 })).toThrow(OutsideRange);
    // A rotor that was pulled over lags by the quarter turn of its field.
    expect(staticLag({ load: 2, peakTorque: 1, teeth: 50 })).toBeCloseTo(FULL_STEP, 12);
  });
});

describe('swing stirred up by steps', () => {
  const at = { natural: 100, speed: 60, ramp: 0.3, microsteps: 1, damping: 0.02, teeth: 50 };

  /**
   * An oscillator stepped one by one on a ramp, each step adding its own damped swing; what a smooth ramp would leave is
   * taken off. Independent: plain sums in time, no integral in closed form.
   */
  const stepped = ({ natural, speed, ramp, microsteps, damping }: typeof at): number => {
    const s = FULL_STEP / microsteps;
    const rise = speed / s / ramp;
    const [decay, w] = [damping * 2 * Math.PI * natural, 2 * Math.PI * natural];
    const times = (count: number, from: number) =>
      Array.from({ length: count }, (_, k) => Math.sqrt((2 * (k + from)) / rise));
    const steps = times(Math.floor((rise * ramp ** 2) / 2), 1);
    const fine = 64;
    let [re, im, at, largest, next] = [0, 0, 0, 0, 0];
    const smooth = times(steps.length * fine, 0.5).map((_, k) => Math.sqrt((2 * (k + 0.5)) / fine / rise));
    for (const t of smooth) {
      const turn = (to: number) => {
        const [fade, angle] = [Math.exp(-decay * (to - at)), w * (to - at)];
        [re, im] = [
          fade * (re * Math.cos(angle) - im * Math.sin(angle)),
          fade * (re * Math.sin(angle) + im * Math.cos(angle)),
        ];
        at = to;
      };
      while (next < steps.length && steps[next]! <= t) {
        turn(steps[next++]!);
        re += s;
      }
      turn(t);
      re -= s / fine;
      // Below a third of the resonance the step itself is all there is to see.
      if (rise * t > natural / 3) largest = Math.max(largest, Math.hypot(re, im));
    }
    return largest;
  };

  it.each([
    { natural: 60, ramp: 1, damping: 0.01 },
    { natural: 100, ramp: 1, damping: 0.01 },
    { natural: 150, ramp: 2, damping: 0.01 },
    { natural: 100, ramp: 0.5, damping: 0.02 },
  ])('while passing with $natural Hz in $ramp s at damping $damping', (some) => {
    const given = { ...at, ...some };
    const sum = stepped(given);
    // One step of ripple rides on the sum, whatever the ramp.
    expect(resonanceSwing(given)).toBeGreaterThan(sum - FULL_STEP);
    expect(resonanceSwing(given)).toBeLessThan(sum * 1.35);
  });

  it('while staying, as a geometric sum of rings', () => {
    let sum = 0;
    for (let k = 0; k < 4000; k++) sum += FULL_STEP * Math.exp(-2 * Math.PI * 0.02 * k);
    expect(resonanceSwing({ ...at, speed: 100 * FULL_STEP })).toBeCloseTo(sum, 9);
  });

  it('is no larger passing than staying, and smaller in smaller steps', () => {
    const slow = { ...at, ramp: 1e4 };
    expect(resonanceSwing(slow)).toBe(resonanceSwing({ ...at, speed: 1 }));
    expect(resonanceSwing({ ...slow, microsteps: 8 })).toBeCloseTo(resonanceSwing(slow) / 8, 12);
    expect(resonanceSwing({ ...at, microsteps: 8 })).toBeLessThan(resonanceSwing(at) / 8);
  });

  it('counts a speed short of one and a half times the resonance as standing on it', () => {
    const staying = resonanceSwing({ ...at, speed: 149 * FULL_STEP });
    const passing = resonanceSwing({ ...at, speed: 151 * FULL_STEP });
    expect(staying).toBeGreaterThan(passing);
  });
});
