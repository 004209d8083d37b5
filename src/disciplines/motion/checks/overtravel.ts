import { need } from '../../../contract/index.ts';
import { atMost } from '../../../kernel/index.ts';
import { axisOf, stopOf } from '../calc/axis-book.ts';
import { axesThat, axisName, type AxisCheck } from './axes.ts';

export const overtravel: AxisCheck = {
  code: 'MOTION-610',
  asks: 'Does the axis stand before it reaches the hard end behind its switch?',
  subjects: axesThat((axis) => axis.switches !== undefined),
  run: (context, subject) => {
    const name = axisName(subject);
    const axis = axisOf(context, name);
    const speed = axis['approach-speed'] ?? need(axis, 'speed').speed;
    return atMost(stopOf(axis, speed), need(axis, 'overtravel').overtravel, {
      says: ({ demand, limit }) =>
        `After its switch, met at ${axis['approach-speed'] === undefined ? 'full' : 'approach'} speed, ${name} goes on for ${demand}; the hard end is ${limit} away.`,
      beside: { speed },
      levers: () => [
        { turn: `axes.${name}.stopping.acceleration`, toward: 'higher', means: 'stop harder at the switches' },
        { turn: `axes.${name}.approach-speed`, toward: 'lower', means: 'meet the switches more slowly' },
        { turn: `axes.${name}.overtravel`, toward: 'higher', means: 'set the switch farther from the end' },
      ],
    });
  },
};
