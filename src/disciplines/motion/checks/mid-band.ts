import { need } from '../../../contract/index.ts';
import { atMost, constant, type Advice } from '../../../kernel/index.ts';
import { midBandGrowth, saturationSpeed } from '../calc/mid-band.ts';
import { driveOf, driverEntry, driverNameOf, loopOf, motorOf } from '../calc/motor-facts.ts';
import { inertiaTogether } from '../calc/axis-load.ts';
import { rampTime } from '../calc/resonance.ts';
import { effectiveRadius, reflectedInertia, travelProfile } from '../facts.ts';
import { shaftSpeed } from '../calc/axis-torque.ts';
import { axisName, motorName, motorsOfAxesThat } from './axes.ts';
import { speedLevers, type MotorCheck } from './motors.ts';

/** A hunting of a twentieth of the pull-out angle that grows to all of it: e³ = 20. */
const LOST = constant(3, 'ratio', 'growth from a twentieth of the pull-out angle to the whole of it', {
  id: 'mid-band-derivation',
});
const advice: Advice = {
  share: 1 / 3,
  because: 'the hunting that it begins with is not known',
  source: { id: 'motor-experience' },
};

export const midBand: MotorCheck = {
  code: 'MOTION-020',
  asks: 'Does the motor keep its step in the middle of its speeds, where it may hunt although it has torque?',
  subjects: motorsOfAxesThat(() => true),
  run: (context, subject) => {
    const axis = axisName(subject);
    const name = motorName(subject);
    const profile = context.get(travelProfile, axis);
    const motor = motorOf(context, name);
    const drive = driveOf(context, name);
    const electric = {
      constant: motor.torqueConstant,
      loop: loopOf(context, name),
      inductance: motor.phaseInductance,
      teeth: motor.teeth,
    };
    const saturation = saturationSpeed.work({ ...electric, volts: drive.railVoltage, peak: drive.peakCurrent });
    const driver = driverNameOf(context, name);
    const speed = shaftSpeed.work({ speed: profile.speed, radius: context.get(effectiveRadius, axis) });
    const growth = midBandGrowth.work({
      ...electric,
      inertia: inertiaTogether.work({ rotor: motor.rotorInertia, turning: context.get(reflectedInertia, axis) }),
      damping: motor.ironDrag,
      hunting: need(driverEntry(context, driver), 'hunting').hunting,
      saturation,
      speed,
      ramp: rampTime.work({ total: profile.totalTime, distance: profile.distance, speed: profile.speed }),
      total: profile.totalTime,
    });
    return atMost(growth, LOST, {
      says: ({ verdict }) =>
        verdict === 'holds'
          ? `${name} does not hunt on ${axis}, or not for long enough to matter.`
          : `${name} may hunt on ${axis} above a certain speed and lose its step there, although it has torque enough.`,
      advice,
      beside: { 'the chopper regulates up to': saturation, 'speed of the travel': speed },
      levers: () => [
        { turn: `drivers.${driver}.current`, toward: 'lower', means: `set ${driver} to less current` },
        { turn: `axes.${axis}.acceleration`, toward: 'higher', means: `pass through more quickly` },
        ...speedLevers(context, axis, name),
      ],
    });
  },
};
