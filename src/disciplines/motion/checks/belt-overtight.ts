import { need } from '../../../contract/index.ts';
import { atMost } from '../../../kernel/index.ts';
import { axisOf, beltOf, beltShare, frameMovementOf, frameTaken, pretensionOf } from '../calc/axis-book.ts';
import { greatestForce } from '../calc/axis-facts.ts';
import { shareOfForce, tautestTension } from '../calc/belt-tension.ts';
import { axesThat, axisName, isBelt, type AxisCheck } from './axes.ts';

export const beltOvertight: AxisCheck = {
  code: 'MOTION-135',
  asks: 'Does the belt bear its own tension and the force together, in every weather?',
  subjects: axesThat(isBelt),
  run: (context, subject) => {
    const name = axisName(subject);
    const axis = axisOf(context, name);
    const belt = need(beltOf(context, axis), 'allowable-tension', 'axial-stiffness');
    const force = shareOfForce.work({ force: greatestForce(context, name), share: beltShare(axis) });
    const pretension = pretensionOf(context, axis);
    const most = tautestTension.work({
      pretension,
      axial: belt['axial-stiffness'],
      movement: frameMovementOf(axis),
      force,
    });
    return atMost(most, belt['allowable-tension'], {
      says: ({ demand, limit }) =>
        `The belt of ${name} is pulled with up to ${demand}; it bears ${limit}.${frameTaken(axis)}`,
      beside: { 'tension at rest': pretension },
      levers: () => [
        { turn: `axes.${name}.pretension`, toward: 'lower', means: 'tension the belt less' },
        { substitute: `axes.${name}.belt`, kind: 'belt', means: 'another belt' },
      ],
    });
  },
};
