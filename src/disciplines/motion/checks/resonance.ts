import { atMost, greatest, type Advice, type Value } from '../../../kernel/index.ts';
import { inertiaTogether } from '../calc/axis-load.ts';
import { shaftSpeed, torqueAtCurrent } from '../calc/axis-torque.ts';
import { driveOf, driverNameOf, driverPart, motorOf } from '../calc/motor-facts.ts';
import { axisOf } from '../calc/axis-book.ts';
import {
  magneticStiffness,
  naturalFrequency,
  rampTime,
  rampToOther,
  resonanceSwing,
  swingRoom,
} from '../calc/resonance.ts';
import { effectiveRadius, reflectedInertia, travelProfile } from '../facts.ts';
import { axisName, motorName, motorsOfAxesThat } from './axes.ts';
import type { MotorCheck } from './motors.ts';

const advice: Advice = {
  share: 0.5,
  because: 'a load that uses 70 % of the torque takes half of the room',
  source: { id: 'pull-out-derivation', at: 'spring' },
};

export const resonance: MotorCheck = {
  code: 'MOTION-030',
  asks: 'Do the steps stir up the rotor at its own frequency so far that it loses one?',
  subjects: motorsOfAxesThat(() => true),
  run: (context, subject) => {
    const axis = axisName(subject);
    const name = motorName(subject);
    const profile = context.get(travelProfile, axis);
    const { teeth, torqueConstant, rotorInertia, ringing } = motorOf(context, name);
    const { peakCurrent, microsteps } = driveOf(context, name);
    const peakTorque = torqueAtCurrent.work({ constant: torqueConstant, current: peakCurrent });
    const natural = naturalFrequency.work({
      stiffness: magneticStiffness.work({ peakTorque, teeth }),
      inertia: inertiaTogether.work({ rotor: rotorInertia, turning: context.get(reflectedInertia, axis) }),
    });
    const radius = context.get(effectiveRadius, axis);
    const ramp = rampTime.work({ total: profile.totalTime, distance: profile.distance, speed: profile.speed });
    const swingAt = (speed: Value, time: Value): Value =>
      resonanceSwing.work({
        natural,
        speed: shaftSpeed.work({ speed, radius }),
        ramp: time,
        microsteps,
        damping: ringing,
        teeth,
      });
    const slow = axisOf(context, axis)['approach-speed'];
    const atSpeed = swingAt(profile.speed, ramp);
    const swing =
      slow === undefined
        ? atSpeed
        : greatest(atSpeed, swingAt(slow, rampToOther.work({ ramp, speed: profile.speed, other: slow })));
    const driver = driverNameOf(context, name);
    const finer = (driverPart(context, driver)?.microstepping ?? [2, 4, 8, 16, 32]).filter(
      (m) => m > microsteps.number,
    );
    return atMost(swing, swingRoom.work({ teeth }), {
      says: ({ demand: swings, limit }) =>
        `Stepping stirs ${name} up to ${swings} at its own frequency on ${axis}; without load it loses a step at ${limit}.`,
      advice,
      beside: { 'its own frequency': natural },
      levers: () => [
        ...[...finer]
          .sort((a, b) => a - b)
          .map((m) => ({
            set: [{ path: `drivers.${driver}.microsteps`, text: String(m) }],
            means: `set ${driver} to ${m} microsteps`,
          })),
        { turn: `axes.${axis}.acceleration`, toward: 'higher', means: 'pass through more quickly' },
        ...(slow === undefined
          ? []
          : [
              {
                turn: `axes.${axis}.approach-speed`,
                toward: 'higher',
                means: 'meet the switches faster',
              } as const,
            ]),
      ],
    });
  },
};
