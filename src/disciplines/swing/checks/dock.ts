import { need } from '../../../contract/index.ts';
import { atMost, type Lever } from '../../../kernel/index.ts';
import {
  arrivingOffset,
  arrivingSideways,
  carriersOf,
  comingDown,
  dockOf,
  hangingOf,
  leavingAt,
  missesAllowed,
  reachOf,
  rides,
  shortest,
  type SwingContext,
} from '../calc/book.ts';
import { leanAt } from '../calc/hoisting.ts';
import { missShare, worstMissShare } from '../calc/misses.ts';
import { calmer, cup, eachHoist, gentler, hoistOf, type SwingCheck } from './common.ts';

const hasNone = (context: SwingContext, hoist: string): boolean => need(dockOf(context, hoist), 'kind').kind === 'none';

/** Where the load swings from its travels as well: what was left of the worst drive is in the offset. */
const drivenWords = (context: SwingContext, hoist: string): string =>
  rides(context, hoist) ? '' : ', with what one drive left,';
const beforeLowering = (context: SwingContext, hoist: string): readonly Lever[] =>
  rides(context, hoist)
    ? []
    : [
        cup(hoist),
        ...carriersOf(context.book).flatMap(gentler),
        { turn: 'hanging.dwell', toward: 'higher', means: 'wait longer before it is lowered' },
      ];

const wider = (hoist: string) =>
  ({ turn: `axes.${hoist}.dock.catch`, toward: 'higher', means: 'a wider mouth' }) as const;

export const docks: SwingCheck = {
  code: 'SWING-030',
  asks: 'Does a load that left the heap out of plumb, as in ordinary plays, still find its dock?',
  subjects: eachHoist,
  run: (context, subject) => {
    const hoist = hoistOf(subject);
    if (hasNone(context, hoist)) return null;
    const leaving = leavingAt(context, hoist);
    return atMost(arrivingOffset(context, hoist, leaving), reachOf(context, hoist), {
      says: ({ demand, limit }) =>
        `From the farthest of the ordinary lift-offs${drivenWords(context, hoist)} the hook of ${hoist} arrives up to ${demand} out of plumb; the dock catches it within ${limit}.`,
      beside: { 'out of plumb as it leaves the heap': leaving },
      levers: () => [wider(hoist), ...beforeLowering(context, hoist), ...calmer(hoist)],
    });
  },
};

export const headFits: SwingCheck = {
  code: 'SWING-035',
  asks: 'Is the dock wider than what it takes in?',
  subjects: eachHoist,
  run: (context, subject) => {
    const hoist = hoistOf(subject);
    const { head } = hangingOf(context);
    if (hasNone(context, hoist) || head === undefined) return null;
    return atMost(head, need(dockOf(context, hoist), 'catch').catch, {
      says: ({ demand, limit, verdict }) =>
        verdict === 'fails'
          ? `The head of ${hoist}, ${demand} wide, does not go into a dock of ${limit}.`
          : `The head of ${hoist} is ${demand} wide; its dock takes ${limit}.`,
      levers: () => [wider(hoist), { turn: 'hanging.head', toward: 'lower', means: 'a narrower head' }],
    });
  },
};

export const leansIn: SwingCheck = {
  code: 'SWING-040',
  asks: 'Does a load that swings as it arrives lean little enough to go into its dock?',
  subjects: eachHoist,
  run: (context, subject) => {
    const hoist = hoistOf(subject);
    if (hasNone(context, hoist)) return null;
    const sideways = arrivingSideways(context, hoist, leavingAt(context, hoist));
    return atMost(
      leanAt.work({ sideways, length: shortest(context, hoist) }),
      need(dockOf(context, hoist), 'lean').lean,
      {
        says: ({ demand, limit }) =>
          `Hoisting makes the swing of ${hoist} steeper: it leans up to ${demand} as it arrives; ${limit} still goes in.`,
        beside: { 'out of plumb on arrival': sideways },
        levers: () => [
          { turn: `axes.${hoist}.dock.below-pivot`, toward: 'higher', means: 'a dock farther below the carriage' },
          { turn: `axes.${hoist}.dock.lean`, toward: 'higher', means: 'a dock with steeper sides' },
          ...beforeLowering(context, hoist),
          ...calmer(hoist),
        ],
      },
    );
  },
};

export const seldomMisses: SwingCheck = {
  code: 'SWING-060',
  asks: 'How often, at most, does a lift-off miss its dock, as they scatter?',
  subjects: eachHoist,
  run: (context, subject) => {
    const hoist = hoistOf(subject);
    if (hasNone(context, hoist)) return null;
    const scatter = need(hangingOf(context), 'lift-off-scatter')['lift-off-scatter'];
    const arriving = arrivingOffset(context, hoist, scatter);
    const reach = reachOf(context, hoist);
    const share = worstMissShare.work({
      reach,
      left: arrivingOffset(context, hoist, comingDown(context, hoist)),
      scatter: arriving,
    });
    return atMost(share, missesAllowed(context, hoist), {
      says: ({ demand, limit }) =>
        `From the worst height of the heap${drivenWords(context, hoist)} up to ${demand} of the lift-offs of ${hoist} miss the dock; ${limit} may.`,
      beside: {
        'standard deviation on arrival': arriving,
        'over all heights, from a load that hung still': missShare.work({ reach, scatter: arriving }),
      },
      levers: () => [wider(hoist), ...beforeLowering(context, hoist), ...calmer(hoist)],
    });
  },
};
