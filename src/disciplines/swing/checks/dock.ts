import { need } from '../../../contract/index.ts';
import { atMost, type Value } from '../../../kernel/index.ts';
import {
  arrivingOffset,
  arrivingSideways,
  dockOf,
  hangingOf,
  missesAllowed,
  reachOf,
  shortest,
  type SwingContext,
} from '../calc/book.ts';
import { leanAt } from '../calc/hoisting.ts';
import { missShare } from '../calc/misses.ts';
import { calmer, eachHoist, hoistOf, type SwingCheck } from './common.ts';

const offsetOf = (context: SwingContext): Value => need(hangingOf(context), 'lift-off-offset')['lift-off-offset'];
const hasNone = (context: SwingContext, hoist: string): boolean => need(dockOf(context, hoist), 'kind').kind === 'none';

const wider = (hoist: string) =>
  ({ turn: `axes.${hoist}.dock.catch`, toward: 'higher', means: 'a wider mouth' }) as const;

export const docks: SwingCheck = {
  code: 'SWING-030',
  asks: 'Does a load that left the heap out of plumb, as in ordinary plays, still find its dock?',
  subjects: eachHoist,
  run: (context, subject) => {
    const hoist = hoistOf(subject);
    if (hasNone(context, hoist)) return null;
    return atMost(arrivingOffset(context, hoist, offsetOf(context)), reachOf(context, hoist), {
      says: ({ demand, limit }) =>
        `The hook of ${hoist} arrives up to ${demand} out of plumb; the dock catches it within ${limit}.`,
      levers: [wider(hoist), ...calmer(hoist)],
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
      levers: [wider(hoist), { turn: 'hanging.head', toward: 'lower', means: 'a narrower head' }],
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
    const sideways = arrivingSideways(context, hoist, offsetOf(context));
    return atMost(
      leanAt.work({ sideways, length: shortest(context, hoist) }),
      need(dockOf(context, hoist), 'lean').lean,
      {
        says: ({ demand, limit }) =>
          `Hoisting makes the swing of ${hoist} steeper: it leans up to ${demand} as it arrives; ${limit} still goes in.`,
        beside: { 'out of plumb on arrival': sideways },
        levers: [
          { turn: `axes.${hoist}.dock.below-pivot`, toward: 'higher', means: 'a dock farther below the carriage' },
          { turn: `axes.${hoist}.dock.lean`, toward: 'higher', means: 'a dock with steeper sides' },
          ...calmer(hoist),
        ],
      },
    );
  },
};

export const seldomMisses: SwingCheck = {
  code: 'SWING-060',
  asks: 'How often does a lift-off miss its dock, as they scatter?',
  subjects: eachHoist,
  run: (context, subject) => {
    const hoist = hoistOf(subject);
    if (hasNone(context, hoist)) return null;
    const scatter = need(hangingOf(context), 'lift-off-scatter')['lift-off-scatter'];
    const arriving = arrivingOffset(context, hoist, scatter);
    const share = missShare.work({ reach: reachOf(context, hoist), scatter: arriving });
    return atMost(share, missesAllowed(context, hoist), {
      says: ({ demand, limit }) => `Of the lift-offs of ${hoist} a share of ${demand} misses the dock; ${limit} may.`,
      beside: { 'standard deviation on arrival': arriving },
      levers: [
        wider(hoist),
        {
          turn: `axes.${hoist}.speed`,
          toward: 'lower',
          means: 'hoist more slowly, so that the swing has time to fade',
        },
      ],
    });
  },
};
