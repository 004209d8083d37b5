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
import { eachHoist, hoistOf, type SwingCheck } from './common.ts';

const STILL = constant(0, 'acceleration', 'the pivot stands still while it hoists');

/** The largest angles of a play: on arrival, as if hoisting made the way to the side no smaller, and of the worst free drive. */
const anglesOf = (context: SwingContext, hoist: string): readonly Value[] => [
  leanAt.work({
    sideways: need(hangingOf(context), 'lift-off-offset')['lift-off-offset'],
    length: shortest(context, hoist),
  }),
  ...(rides(context, hoist) ? [] : carriersOf(context.book).map((axis) => jogSwing(context, hoist, axis))),
];

export const staysTaut: SwingCheck = {
  code: 'SWING-050',
  asks: 'Does the line stay taut through every ramp of hoist and travel?',
  subjects: eachHoist,
  run: (context, subject) => {
    const hoist = hoistOf(subject);
    const angle = greatest(...anglesOf(context, hoist));
    const stop = axisOf(context, hoist).stopping?.acceleration;
    const { acceleration } = profileOf(context, hoist);
    const travel = rides(context, hoist)
      ? [STILL]
      : [STILL, ...carriersOf(context.book).map((axis) => profileOf(context, axis).acceleration)];
    const taken = pullTaken.work({
      hoist: stop === undefined ? acceleration : greatest(acceleration, stop),
      travel: greatest(...travel),
      angle,
    });
    return atMost(taken, pullThere.work({ angle }), {
      says: ({ demand, limit, verdict }) =>
        verdict === 'fails'
          ? `The ramps of ${hoist} take ${demand} from the pull of its line, and weight gives only ${limit}: it goes slack and jerks.`
          : `The ramps of ${hoist} take ${demand} from the pull of its line; weight gives ${limit}.`,
      beside: { 'largest angle': angle },
      levers: [
        { turn: `axes.${hoist}.acceleration`, toward: 'lower', means: 'hoist and lower more gently' },
        { turn: `axes.${hoist}.stopping.acceleration`, toward: 'lower', means: 'stop more gently' },
      ],
    });
  },
};
