import { need } from '../../../contract/index.ts';
import { atMost, type Outcome, type Value } from '../../../kernel/index.ts';
import {
  dwellOf,
  easingOf,
  fadingOf,
  hangingOf,
  jogSwing,
  profileOf,
  rides,
  shortest,
  type SwingContext,
} from '../calc/book.ts';
import { settleTime, swingLeft, travelResidual } from '../calc/travel.ts';
import { carrierOf, cup, eachCarrier, gentler, hoistOf, type SwingCheck } from './common.ts';

/** A swing after the wait, against the swing that is calm enough. */
const calmAfter = (context: SwingContext, hoist: string, axis: string, swing: Value, after: string): Outcome => {
  const hanging = hangingOf(context);
  const fading = fadingOf(context, hoist);
  const { calm } = need(hanging, 'calm');
  const { dwell } = hanging;
  return atMost(swingLeft.work({ angle: swing, wait: dwellOf(context), fading }), calm, {
    says: ({ demand, limit }) =>
      dwell === undefined
        ? `After ${after} ${axis} leaves ${hoist} swinging by ${demand}, and nothing waits for it to fade to the ${limit} that are calm enough.`
        : `After ${after} ${axis} leaves ${hoist} swinging by ${demand} when the wait is over; ${limit} are calm enough.`,
    beside: {
      'swing at the end of the travel': swing,
      'time to settle': settleTime.work({ angle: swing, allowed: calm, fading }),
    },
    levers: () => [...gentler(axis), { turn: 'hanging.dwell', toward: 'higher', means: 'wait longer' }, cup(hoist)],
  });
};

/** The swing that a travel over the whole axis leaves. */
export const wholeTravel = (context: SwingContext, hoist: string, axis: string): Value => {
  const profile = profileOf(context, axis);
  return travelResidual.work({
    length: shortest(context, hoist),
    speed: profile.speed,
    acceleration: profile.acceleration,
    distance: profile.distance,
    fading: fadingOf(context, hoist),
    easing: easingOf(profile),
  });
};

export const calmAfterTravel: SwingCheck = {
  code: 'SWING-010',
  asks: 'Has the swing of a travel by itself, over the whole axis, died down when the load is lowered or let go?',
  subjects: eachCarrier,
  run: (context, subject) => {
    const [hoist, axis] = [hoistOf(subject), carrierOf(subject)];
    if (rides(context, hoist)) return null;
    return calmAfter(context, hoist, axis, wholeTravel(context, hoist, axis), 'its whole travel');
  },
};

export const calmAfterDrive: SwingCheck = {
  code: 'SWING-015',
  asks: 'Has the swing of a drive by hand, of whatever length is worst, died down when the load is lowered?',
  subjects: eachCarrier,
  run: (context, subject) => {
    const [hoist, axis] = [hoistOf(subject), carrierOf(subject)];
    if (rides(context, hoist)) return null;
    return calmAfter(context, hoist, axis, jogSwing(context, hoist, axis), 'the worst single drive');
  },
};
