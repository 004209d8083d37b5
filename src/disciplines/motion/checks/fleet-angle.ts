import { need } from '../../../contract/index.ts';
import { atMost, constant, least } from '../../../kernel/index.ts';
import { axisOf, groupOf } from '../calc/axis-book.ts';
import { fleetAngle as angleOf } from '../calc/drum-room.ts';
import { axesThat, axisName, isHoist, type AxisCheck } from './axes.ts';
import { widthFor } from './drum-width.ts';

const DEGREE = Math.PI / 180;
const CENTRED = constant(0, 'length', 'fairlead in the middle where nothing else is said');
const limits = {
  smooth: constant(3 * DEGREE, 'angle', 'fleet angle on a smooth drum', { id: 'fleet-angle-limits' }),
  grooved: constant(5 * DEGREE, 'angle', 'fleet angle on a grooved drum', { id: 'fleet-angle-limits' }),
} as const;
const advised = { smooth: 1.5 / 3, grooved: 2 / 5 } as const;

export const fleetAngle: AxisCheck = {
  code: 'MOTION-250',
  asks: 'Does the line run straight enough onto the drum?',
  subjects: axesThat(isHoist),
  run: (context, subject) => {
    const name = axisName(subject);
    const axis = axisOf(context, name);
    const drum = need(groupOf(axis, 'drum'), 'width', 'surface');
    const fairlead = groupOf(axis, 'fairlead');
    const { distance } = need(fairlead, 'distance');
    const used = least(widthFor(context, name), drum.width);
    return atMost(angleOf.work({ width: used, offset: fairlead.offset ?? CENTRED, distance }), limits[drum.surface], {
      says: ({ demand, limit }) =>
        `At its outermost turn the line of ${name} runs ${demand} askew; on a ${drum.surface} drum ${limit} is the most.`,
      advice: {
        share: advised[drum.surface],
        because: `turns lie in order up to ${drum.surface === 'smooth' ? '1.5°' : '2°'}`,
        source: { id: 'fleet-angle-guide' },
      },
      levers: () => [
        { turn: `axes.${name}.fairlead.distance`, toward: 'higher', means: 'a fairlead farther away' },
        { set: [{ path: `axes.${name}.drum.surface`, text: 'grooved' }], means: 'a grooved drum' },
        { turn: `axes.${name}.drum.diameter`, toward: 'higher', means: 'a thicker drum with fewer turns' },
      ],
    });
  },
};
