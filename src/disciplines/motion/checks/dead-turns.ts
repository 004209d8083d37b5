import { need, pathOf } from '../../../contract/index.ts';
import { atLeast, constant, given } from '../../../kernel/index.ts';
import { axisOf, groupOf } from '../calc/axis-book.ts';
import { axesThat, axisName, isHoist, type AxisCheck } from './axes.ts';

const TWO = constant(2, 'count', 'turns that stay on the drum', { id: 'materials-handling-drum', at: 'p. 137' });

export const deadTurns: AxisCheck = {
  code: 'MOTION-235',
  asks: 'Do enough turns stay on the drum with the load at the bottom?',
  subjects: axesThat(isHoist),
  run: (context, subject) => {
    const name = axisName(subject);
    const drum = groupOf(axisOf(context, name), 'drum');
    const turns = given(need(drum, 'dead-turns')['dead-turns'], 'count', `${pathOf(drum)}.dead-turns`);
    return atLeast(turns, TWO, {
      says: ({ demand, limit }) => `${demand} turns of ${name} never leave the drum; ${limit} are the least.`,
      advice: { share: 0.5, because: 'makers of line ask for four', source: { id: 'winch-line-wraps' } },
      levers: () => [{ set: [{ path: `axes.${name}.drum.dead-turns`, text: '4' }], means: 'four dead turns' }],
    });
  },
};
