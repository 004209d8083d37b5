import { need } from '../../../contract/index.ts';
import { atMost, constant, greatest } from '../../../kernel/index.ts';
import { axisOf, beltOf, motorsOf, shareOf, softestDrive } from '../calc/axis-book.ts';
import { driveTorque } from '../calc/axis-torque.ts';
import { lostMotion as lost } from '../calc/belt-stretch.ts';
import { torqueAtCurrent } from '../calc/axis-torque.ts';
import { staticLag } from '../calc/resonance.ts';
import { driveOf, motorOf } from '../calc/motor-facts.ts';
import { effectiveRadius } from '../facts.ts';
import { axesThat, axisName, isBelt, type AxisCheck } from './axes.ts';

const NO_PLAY = constant(0, 'length', 'none said');
const LOSSLESS = constant(1, 'ratio', 'the running force already holds the losses of the belt');
const STEADY = constant(0, 'acceleration', 'a slow turn back');
const NOTHING_SWINGS = constant(0, 'inertia', 'a slow turn back');

export const lostMotion: AxisCheck = {
  code: 'MOTION-140',
  asks: 'Is the way that is lost at a turn back within the accuracy that is asked for?',
  subjects: axesThat((axis) => isBelt(axis) && axis.accuracy !== undefined),
  run: (context, subject) => {
    const name = axisName(subject);
    const axis = need(axisOf(context, name), 'accuracy', 'running-force');
    const seen = axisOf(context, name);
    const radius = context.get(effectiveRadius, name);
    const friction = axis['running-force'];
    const load = driveTorque.work({
      force: friction,
      radius,
      efficiency: LOSSLESS,
      share: shareOf(seen),
      inertia: NOTHING_SWINGS,
      acceleration: STEADY,
    });
    const lag = greatest(
      ...motorsOf(seen).map((motor) => {
        const { torqueConstant, teeth } = motorOf(context, motor);
        const { peakCurrent } = driveOf(context, motor);
        const peakTorque = torqueAtCurrent.work({ constant: torqueConstant, current: peakCurrent });
        return staticLag.work({ load, peakTorque, teeth });
      }),
    );
    const stiffness = softestDrive(context, seen);
    const play = beltOf(context, seen).play ?? NO_PLAY;
    return atMost(lost.work({ friction, stiffness, play, lag, radius }), axis.accuracy, {
      says: ({ demand, limit }) => `At a turn back ${name} loses ${demand}; ${limit} is allowed.`,
      beside: { 'stiffness at the far end': stiffness, 'lag of the motor': lag },
      levers: () => [
        { substitute: `axes.${name}.belt`, kind: 'belt', means: 'a stiffer belt' },
        { turn: `axes.${name}.running-force`, toward: 'lower', means: 'make it run more easily' },
        { turn: `axes.${name}.accuracy`, toward: 'higher', means: 'ask for less' },
      ],
    });
  },
};
