import { atMost, constant, greatest, type Advice, type Value } from '../../../kernel/index.ts';
import { stoppingPoints } from '../calc/axis-facts.ts';
import { driverNameOf } from '../calc/motor-facts.ts';
import { torqueUse } from '../calc/pull-out.ts';
import { capacity, demand } from '../facts.ts';
import { axisName, motorName, motorsOfAxesThat } from './axes.ts';
import { speedLevers, type MotorCheck } from './motors.ts';

const ALL = constant(1, 'ratio', 'all of the torque that the motor has at least');
const advice: Advice = {
  share: 0.7,
  because: 'friction, wear and a cold morning take torque, and a motor that lost its step does not know',
  source: { id: 'motor-experience' },
};
/** Below this share of its torque a motor is far larger than its task. */
const OVERKILL = 0.15;

const phrases: Readonly<Record<string, (axis: string) => string>> = {
  starting: (axis) => `To start ${axis}`,
  accelerating: (axis) => `To accelerate ${axis}`,
  easing: (axis) => `While the ramp of ${axis} eases`,
  running: (axis) => `To keep ${axis} moving`,
  stopping: (axis) => `To stop ${axis} as hard as it is asked to`,
};

export const torqueAtSpeed: MotorCheck = {
  code: 'MOTION-010',
  asks: 'Has the motor the torque that its axis asks of it, at every speed of the travel?',
  subjects: motorsOfAxesThat(() => true),
  run: (context, subject) => {
    const axis = axisName(subject);
    const name = motorName(subject);
    const { at } = context.get(capacity, name);
    const points = [...context.get(demand, axis).points, ...stoppingPoints(context, axis, name)]
      .filter((point) => point.motor === name)
      .map((point) => {
        const has = at(point.motorSpeed).lower;
        return { ...point, has, use: torqueUse.work({ asked: point.torque, given: has }) };
      });
    const worst = points.reduce((most, point) => (point.use.number > most.use.number ? point : most));
    const use: Value = greatest(...points.map((point) => point.use));
    const spare = use.number < OVERKILL ? ' A much smaller motor would do.' : '';
    const driver = driverNameOf(context, name);
    return atMost(use, ALL, {
      says: ({ percent }) =>
        `${phrases[worst.phase]?.(axis) ?? axis}, ${name} ${use.number > 1 ? 'would need' : 'uses'} ${percent} of the torque that it has at least.${spare}`,
      advice,
      beside: { 'torque asked': worst.torque, 'torque it has': worst.has, 'at the motor speed': worst.motorSpeed },
      levers: () => [
        worst.phase === 'stopping'
          ? { turn: `axes.${axis}.stopping.acceleration`, toward: 'lower', means: `stop ${axis} more gently` }
          : { turn: `axes.${axis}.acceleration`, toward: 'lower', means: `accelerate ${axis} more gently` },
        { turn: `drivers.${driver}.current`, toward: 'higher', means: `set ${driver} to more current`, most: 10 },
        ...speedLevers(context, axis, name),
      ],
    });
  },
};
