import { describe, expect, it } from 'vitest';
import { squareWaveAmplitude } from '../../calc/drive.ts';
import { midBandGrowth, saturationSpeed } from '../../calc/mid-band.ts';
import { pullOut } from '../../calc/pull-out.ts';
import { torqueConstantOf } from '../../calc/winding.ts';
import { lockedPullOut, rampedPullOut, type Drive } from '../references/chopper.ts';
import { plate } from '../references/stepper.ts';

// Machine, speeds, clock and tolerance were fixed before the first run.
const motor = {
  constant: torqueConstantOf({ holding: plate.holding, rated: plate.rated }),
  loop: plate.resistance,
  inductance: plate.inductance,
  teeth: plate.teeth,
};
const drive = { ...motor, volts: 12, peak: Math.SQRT2 * plate.rated, clock: 40e-6 };
const speeds = [60, 150, 300, 450, 600];
const decays = ['slow', 'mixed', 'fast'] as const;
const RPM = (2 * Math.PI) / 60;

describe('a switching chopper at a speed that does not give way', () => {
  for (const rpm of speeds)
    it.each(decays)(`lies inside the band at ${rpm} rpm with %s decay`, (decay) => {
      const of: Drive = { ...drive, decay };
      const speed = rpm * RPM;
      const found = lockedPullOut(of, speed);
      // The current is known to the ripple of one clock: V·t/L, 4.8 % of the setting here.
      const ripple = (of.volts * of.clock) / of.inductance;
      const lower = pullOut({ ...motor, speed, volts: of.volts, peak: of.peak - ripple });
      const upper = pullOut({
        ...motor,
        speed,
        volts: squareWaveAmplitude({ bridge: of.volts }),
        peak: of.peak + ripple,
      });
      expect(found).toBeGreaterThan(lower);
      expect(found).toBeLessThan(upper);
    });
});

describe('a free rotor under a load that rises evenly', () => {
  const inertia = 1.3e-4;
  const saturation = saturationSpeed({ ...motor, volts: drive.volts, peak: drive.peak });
  /** Growth in one second of standing at a speed. */
  const growth = (speed: number, damping: number): number =>
    midBandGrowth({ ...motor, inertia, damping, saturation, speed, ramp: 1e-9, total: 1 });
  const NO_DRAG = 1e-9;
  const careful = (speed: number): number => pullOut({ ...motor, speed, volts: drive.volts, peak: drive.peak });

  const upper = (speed: number): number =>
    pullOut({ ...motor, speed, volts: squareWaveAmplitude({ bridge: drive.volts }), peak: drive.peak });

  // A ramp of 0.6 s is not endlessly slow, and the wanted current is known to its ripple: a tenth covers both.
  const slack = 0.1;

  for (const rpm of speeds)
    it.each(decays)(`falls out early at ${rpm} rpm with %s decay only if the mid-band warns`, (decay) => {
      const speed = rpm * RPM;
      const warned = growth(speed, NO_DRAG) > 0;
      const found = rampedPullOut({ ...drive, decay }, speed, { inertia, damping: 0 }, 1.5 * careful(speed), 0.6);
      expect(found).toBeLessThan((1 + slack) * upper(speed));
      expect(found).toBeGreaterThan(warned ? 0 : (1 - slack) * careful(speed));
    });

  it('does fall out early where the mid-band warns and nothing damps it', () => {
    const speed = 450 * RPM;
    // Five powers of e a second: a twentieth becomes the whole within the ramp.
    expect(growth(speed, NO_DRAG)).toBeGreaterThan(5);
    const found = rampedPullOut({ ...drive, decay: 'mixed' }, speed, { inertia, damping: 0 }, careful(speed), 0.6);
    expect(found).toBeLessThan(0.9 * careful(speed));
  });

  it.each([60, 150, 300])('does not fall out early at %i rpm where drag keeps it steady', (rpm) => {
    const speed = rpm * RPM;
    // A tenth more drag than the steepest fall of the EMF drag: nothing grows at any speed.
    const damping = (1.1 * motor.constant ** 2) / (4 * motor.teeth * saturation * motor.inductance);
    expect(growth(speed, damping)).toBeLessThan(1e-6);
    const found = rampedPullOut({ ...drive, decay: 'mixed' }, speed, { inertia, damping }, careful(speed) * 1.5, 0.6);
    expect(found).toBeGreaterThan(0.9 * (careful(speed) - damping * speed));
  });
});
