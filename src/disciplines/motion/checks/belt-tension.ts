import { need } from '../../../contract/index.ts';
import { atMost } from '../../../kernel/index.ts';
import { axisOf, beltOf, beltShare } from '../calc/axis-book.ts';
import { greatestForce } from '../calc/axis-facts.ts';
import { shareOfForce } from '../calc/belt-tension.ts';
import { axesThat, axisName, isBelt, type AxisCheck } from './axes.ts';

export const beltTension: AxisCheck = {
  code: 'MOTION-110',
  asks: 'Does the belt bear the force that moves the axis?',
  subjects: axesThat(isBelt),
  run: (context, subject) => {
    const name = axisName(subject);
    const axis = axisOf(context, name);
    const limit = need(beltOf(context, axis), 'allowable-tension')['allowable-tension'];
    const force = greatestForce(context, name);
    return atMost(shareOfForce.work({ force, share: beltShare(axis) }), limit, {
      says: ({ demand, limit: most, percent }) =>
        `The belt of ${name} pulls with ${demand}, ${percent} of the ${most} that it bears.`,
      advice: {
        share: 2 / 3,
        because: 'belts of small pitch want a service factor of 1.5 or more',
        source: { id: 'small-pitch-service-factor', at: 'section 24' },
      },
      beside: { 'force on the whole axis': force },
      levers: () => [
        { turn: `axes.${name}.acceleration`, toward: 'lower', means: 'accelerate more gently' },
        { substitute: `axes.${name}.belt`, kind: 'belt', means: 'another belt' },
      ],
    });
  },
};
