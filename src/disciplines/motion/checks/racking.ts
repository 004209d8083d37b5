import { need } from '../../../contract/index.ts';
import { atMost } from '../../../kernel/index.ts';
import { axisOf } from '../calc/axis-book.ts';
import { forceFromTorque, torqueAtCurrent } from '../calc/axis-torque.ts';
import { driveOf, driverNameOf, motorOf } from '../calc/motor-facts.ts';
import { effectiveRadius } from '../facts.ts';
import { axisName, isPair, motorName, motorsOfAxesThat, type AxisCheck } from './axes.ts';

export const racking: AxisCheck = {
  code: 'MOTION-430',
  asks: 'If one side stalls, does the frame bear the other side pushing on?',
  subjects: motorsOfAxesThat(isPair),
  run: (context, subject) => {
    const name = axisName(subject);
    const pushing = motorName(subject);
    const torque = torqueAtCurrent.work({
      constant: motorOf(context, pushing).torqueConstant,
      current: driveOf(context, pushing).peakCurrent,
    });
    const force = forceFromTorque.work({ torque, radius: context.get(effectiveRadius, name) });
    return atMost(force, need(axisOf(context, name), 'racking-force')['racking-force'], {
      says: ({ demand, limit }) =>
        `If the other side of ${name} stalls, ${pushing} pushes on with up to ${demand}; the frame bears ${limit}.`,
      levers: () => [
        {
          turn: `drivers.${driverNameOf(context, pushing)}.current`,
          toward: 'lower',
          means: `set ${driverNameOf(context, pushing)} to less current`,
        },
        { turn: `axes.${name}.racking-force`, toward: 'higher', means: 'a stiffer beam or better guides' },
      ],
    });
  },
};
