import { need } from '../../../contract/index.ts';
import { atMost, constant, greatest, type Value } from '../../../kernel/index.ts';
import {
  axisOf,
  carriersOf,
  hangingOf,
  jogSwing,
  profileOf,
  rides,
  shortest,
  type SwingContext,
} from '../calc/book.ts';
import { leanAt, pullTaken, pullThere } from '../calc/hoisting.ts';
import { leavingOffset } from '../calc/lowering.ts';
import { sidewaysAt } from '../calc/travel.ts';
import { eachHoist, hoistOf, type SwingCheck } from './common.ts';

const NOTHING = constant(0, 'length', 'it comes down hanging still');
const STILL = constant(0, 'acceleration', 'the pivot stands still while it hoists');

/**
 * The largest angle of a play: on arrival, with all that the worst free drive left, as if the way to the side stayed what it
 * was. Lowering makes it wider by as much as hoisting makes it narrower.
 */
const angleOf = (context: SwingContext, hoist: string): Value => {
  const still = need(hangingOf(context), 'lift-off-offset')['lift-off-offset'];
  const length = shortest(context, hoist);
  const driven = rides(context, hoist)
    ? []
    : carriersOf(context.book).map((axis) => sidewaysAt.work({ length, angle: jogSwing(context, hoist, axis) }));
  const swung = greatest(NOTHING, ...driven);
  return leanAt.work({ sideways: leavingOffset.work({ still, swung }), length });
};

/** Hardest acceleration of an axis, of its ramps or of a stop at a switch. */
const hardest = (context: SwingContext, axis: string): Value => {
  const { acceleration } = profileOf(context, axis);
  const stop = axisOf(context, axis).stopping?.acceleration;
  return stop === undefined ? acceleration : greatest(acceleration, stop);
};

export const staysTaut: SwingCheck = {
  code: 'SWING-050',
  asks: 'Does the line stay taut through every ramp and stop of hoist and travel?',
  subjects: eachHoist,
  run: (context, subject) => {
    const hoist = hoistOf(subject);
    const angle = angleOf(context, hoist);
    const travel = rides(context, hoist)
      ? [STILL]
      : [STILL, ...carriersOf(context.book).map((axis) => hardest(context, axis))];
    const taken = pullTaken.work({
      hoist: hardest(context, hoist),
      travel: greatest(...travel),
      angle,
    });
    return atMost(taken, pullThere.work({ angle }), {
      says: ({ demand, limit, verdict }) =>
        verdict === 'fails'
          ? `The ramps of ${hoist} take ${demand} from the pull of its line, and weight gives only ${limit}: it goes slack and jerks.`
          : `The ramps of ${hoist} take ${demand} from the pull of its line; weight gives ${limit}.`,
      beside: { 'largest angle': angle },
      levers: () => [
        { turn: `axes.${hoist}.acceleration`, toward: 'lower', means: 'hoist and lower more gently' },
        { turn: `axes.${hoist}.stopping.acceleration`, toward: 'lower', means: 'stop more gently' },
      ],
    });
  },
};
