import { need } from '../../../contract/index.ts';
import { atLeast, constant } from '../../../kernel/index.ts';
import { axisOf, groupOf } from '../calc/axis-book.ts';
import { bendingRatio as ratioOf } from '../calc/drum-room.ts';
import { axesThat, axisName, isHoist, type AxisCheck } from './axes.ts';

const source = { id: 'rigging-handbook', at: 'p. 56' } as const;
const FIBRE = constant(6, 'count', 'drum over line, fibre', source);
const WIRE = constant(20, 'count', 'drum over line, wire', source);

export const bendingRatio: AxisCheck = {
  code: 'MOTION-260',
  asks: 'Is the drum thick enough for the line?',
  subjects: axesThat(isHoist),
  run: (context, subject) => {
    const name = axisName(subject);
    const axis = axisOf(context, name);
    const line = need(groupOf(axis, 'line'), 'diameter', 'kind');
    const wire = line.kind === 'wire';
    const ratio = ratioOf.work({ drum: need(groupOf(axis, 'drum'), 'diameter').diameter, line: line.diameter });
    return atLeast(ratio, wire ? WIRE : FIBRE, {
      says: ({ demand, limit }) =>
        `The drum of ${name} is ${demand} times as thick as its line; ${limit} times are the least for ${line.kind}.`,
      advice: wire
        ? { share: 0.8, because: 'wire lasts three times as long at 25 as at 15 times', source }
        : { share: 0.75, because: 'six to eight times is recommended', source },
      levers: () => [
        { turn: `axes.${name}.drum.diameter`, toward: 'higher', means: 'a thicker drum' },
        { turn: `axes.${name}.line.diameter`, toward: 'lower', means: 'a thinner line' },
      ],
    });
  },
};
