import { need } from '../../../contract/index.ts';
import { atMost } from '../../../kernel/index.ts';
import { axisOf, groupOf } from '../calc/axis-book.ts';
import { axesThat, axisName, isHoist, type AxisCheck } from './axes.ts';

export const keeperGap: AxisCheck = {
  code: 'MOTION-245',
  asks: 'Is the gap under the keeper too narrow for the line?',
  subjects: axesThat((axis) => isHoist(axis) && axis.drum?.['keeper-gap'] !== undefined),
  run: (context, subject) => {
    const name = axisName(subject);
    const axis = axisOf(context, name);
    const { diameter } = need(groupOf(axis, 'line'), 'diameter');
    return atMost(need(groupOf(axis, 'drum'), 'keeper-gap')['keeper-gap'], diameter, {
      says: ({ demand, limit }) => `The keeper of ${name} leaves a gap of ${demand}; the line is ${limit} thick.`,
      advice: {
        share: 0.5,
        because: 'a braid squeezes flat to about half its thickness',
        source: { id: 'hoist-experience' },
      },
      levers: () => [{ turn: `axes.${name}.drum.keeper-gap`, toward: 'lower', means: 'a closer keeper' }],
    });
  },
};
