import { need } from '../../../contract/index.ts';
import { atMost, constant } from '../../../kernel/index.ts';
import { axisOf, isRaising, massOf } from '../calc/axis-book.ts';
import { backTorque, shaftInertia } from '../calc/axis-facts.ts';
import { fallSpeed, landingEnergy as energyAt, sinkingSpeed } from '../calc/unpowered.ts';
import { phaseLoopResistance } from '../calc/drive.ts';
import { driveOf, motorOf } from '../calc/motor-facts.ts';
import { effectiveRadius } from '../facts.ts';
import { axisName, isScrew, motorName, motorsOfAxesThat, type AxisCheck } from './axes.ts';
import { holdingLevers } from './stays-up.ts';

const FOUR_JOULE = constant(4, 'energy', 'energy that hurts nobody', { id: 'landing-energy-practice' });

export const landingEnergy: AxisCheck = {
  code: 'MOTION-225',
  asks: 'If the power goes while a load is up, does it land without harm?',
  subjects: motorsOfAxesThat((axis) => isRaising(axis) && !isScrew(axis)),
  run: (context, subject) => {
    const name = axisName(subject);
    const axis = axisOf(context, name);
    const { unpowered } = need(axis, 'unpowered');
    if (unpowered === 'brake') return null;
    const mass = massOf(axis);
    const radius = context.get(effectiveRadius, name);
    const turned = motorOf(context, motorName(subject));
    const speed =
      unpowered === 'free'
        ? fallSpeed.work({
            mass,
            height: need(axis, 'travel').travel,
            inertia: shaftInertia(axis, turned.rotorInertia),
            radius,
          })
        : sinkingSpeed.work({
            torque: backTorque(context, name),
            constant: turned.torqueConstant,
            teeth: turned.teeth,
            inductance: turned.phaseInductance,
            resistance: phaseLoopResistance.work({
              winding: turned.phaseResistance,
              added: driveOf(context, motorName(subject)).loopResistance,
            }),
            radius,
          });
    return atMost(energyAt.work({ mass, speed }), axis['harmless-energy'] ?? FOUR_JOULE, {
      says: ({ demand, limit }) =>
        unpowered === 'free'
          ? `Without power ${name} falls and lands with up to ${demand}; ${limit} is taken to be harmless.`
          : `Without power ${name} sinks on its shorted windings and lands with ${demand}; ${limit} is taken to be harmless.`,
      beside: { 'speed at landing': speed },
      levers: holdingLevers(name),
    });
  },
};
