import { need } from '../../../contract/index.ts';
import { atMost, constant, type Advice } from '../../../kernel/index.ts';
import { axisOf, isRaising, massOf } from '../calc/axis-book.ts';
import { backTorque, inclineOf, pullingRadius, shaftInertia } from '../calc/axis-facts.ts';
import { fallHeight, fallSpeed, landingEnergy as energyAt, sinkingSpeed } from '../calc/unpowered.ts';
import { phaseLoopResistance } from '../calc/drive.ts';
import { driveOf, motorOf } from '../calc/motor-facts.ts';
import { axisName, isScrew, motorName, motorsOfAxesThat, type AxisCheck } from './axes.ts';
import { landingLevers } from './stays-up.ts';

const FOUR_JOULE = constant(4, 'energy', 'energy that hurts nobody', { id: 'landing-energy-practice' });
const letGo: Advice = {
  share: 1 / 6,
  because: 'let go from rest, a load is for some hundredths of a second up to 2.5 times as fast as it sinks later',
  source: { id: 'independent-computation', at: 'shorted windings' },
};

export const landingEnergy: AxisCheck = {
  code: 'MOTION-225',
  asks: 'If the power goes while a load is up, does it land without harm?',
  subjects: motorsOfAxesThat(isRaising),
  run: (context, subject) => {
    const name = axisName(subject);
    const axis = axisOf(context, name);
    const { unpowered } = need(axis, 'unpowered');
    if (unpowered === 'brake') return null;
    const falls = unpowered === 'free';
    const motor = motorName(subject);
    const torque = backTorque(context, name);
    // A flat thread does not turn back at all.
    if (isScrew(axis) && torque.number === 0) return null;
    const mass = massOf(axis);
    const radius = pullingRadius(context, name);
    const turned = motorOf(context, motor);
    const speed = falls
      ? fallSpeed.work({
          mass,
          height: fallHeight.work({ travel: need(axis, 'travel').travel, incline: inclineOf(axis) }),
          inertia: shaftInertia(axis, turned.rotorInertia),
          radius,
        })
      : sinkingSpeed.work({
          torque,
          constant: turned.torqueConstant,
          teeth: turned.teeth,
          inductance: turned.phaseInductance,
          resistance: phaseLoopResistance.work({
            winding: turned.phaseResistance,
            added: driveOf(context, motor).loopResistance,
          }),
          radius,
        });
    return atMost(energyAt.work({ mass, speed }), axis['harmless-energy'] ?? FOUR_JOULE, {
      says: ({ demand, limit }) =>
        falls
          ? `Without power ${name} falls and lands with up to ${demand}; ${limit} is taken to be harmless.`
          : `Without power ${name} does not stay up: it sinks on its shorted windings and lands with ${demand}; ${limit} is taken to be harmless.`,
      ...(falls ? {} : { advice: letGo }),
      beside: { 'speed at landing': speed },
      levers: () => landingLevers(name),
    });
  },
};
