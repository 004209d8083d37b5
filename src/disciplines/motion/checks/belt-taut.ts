import { need } from '../../../contract/index.ts';
import { atLeast } from '../../../kernel/index.ts';
import { axisOf, beltOf, beltShare, frameMovementOf, frameTaken, pretensionOf } from '../calc/axis-book.ts';
import { greatestForce } from '../calc/axis-facts.ts';
import { leastTension, shareOfForce } from '../calc/belt-tension.ts';
import { axesThat, axisName, isBelt, type AxisCheck } from './axes.ts';

export const beltTaut: AxisCheck = {
  code: 'MOTION-130',
  asks: 'Does the belt stay taut on its slack side, in every weather?',
  subjects: axesThat(isBelt),
  run: (context, subject) => {
    const name = axisName(subject);
    const axis = axisOf(context, name);
    const pretension = pretensionOf(context, axis);
    const axial = need(beltOf(context, axis), 'axial-stiffness')['axial-stiffness'];
    const left = leastTension.work({ pretension, axial, movement: frameMovementOf(axis) });
    const slackens = shareOfForce.work({ force: greatestForce(context, name), share: beltShare(axis) });
    return atLeast(left, slackens, {
      says: ({ demand, limit }) =>
        `The belt of ${name} keeps ${demand} at its slackest; the motor takes up to ${limit} off its slack side.${frameTaken(axis)}`,
      beside: { 'tension at rest': pretension },
      levers: () => [
        { turn: `axes.${name}.pretension`, toward: 'higher', means: 'tension the belt more' },
        { turn: `axes.${name}.acceleration`, toward: 'lower', means: 'accelerate more gently' },
      ],
    });
  },
};
