/** Reads what stands in the book about a hanging load; what does not follow from anything else is NotStated. */
import { entry, need, type Context } from '../../../contract/index.ts';
import { constant, greatest, NotStated, type Value } from '../../../kernel/index.ts';
import { travelProfile, type TravelProfile } from '../../motion/facts.ts';
import type { SeenAxis, SwingBook } from '../schema.ts';
import { hoistedSideways, hoistTime, hookOffset } from './hoisting.ts';
import { leavingOffset, loweredSideways } from './lowering.ts';
import { dampingFromHalving, fadingTime, swingRate } from './period.ts';
import { catchReach, easingTime, hangingLength } from './size.ts';
import { sidewaysAt, swingLeft, worstJog } from './travel.ts';

export type SwingContext = Context<SwingBook>;
type Book = SwingContext['book'];

const NOTHING = constant(0, 'length', 'none said');
const UP = constant(0, 'length', 'nothing is let down');
const AT_ONCE = constant(0, 'time', 'no wait said');
const PLUMB = constant(0, 'length', 'it travels in its cup and comes down hanging still');

/** Names of the hoists. */
export const hoistsOf = ({ axes }: Book): readonly string[] =>
  Object.entries(axes ?? {})
    .filter(([, axis]) => axis.drive === 'hoist')
    .map(([name]) => name);

/** Names of the level axes, which carry the pivot of every hoist. */
export const carriersOf = ({ axes }: Book): readonly string[] =>
  Object.entries(axes ?? {})
    .filter(([, axis]) => axis.drive !== 'hoist' && axis.incline === undefined)
    .map(([name]) => name);

export const axisOf = ({ book }: SwingContext, name: string): SeenAxis => entry(book.axes, 'axes', name, 'axes');

/** What hangs there, or NotStated. */
export const hangingOf = ({ book }: SwingContext): NonNullable<Book['hanging']> => {
  if (book.hanging === undefined) throw new NotStated(['hanging']);
  return book.hanging;
};

/** Where the load of a hoist goes when it is up, or NotStated. */
export const dockOf = (context: SwingContext, hoist: string): NonNullable<SeenAxis['dock']> => {
  const { dock } = axisOf(context, hoist);
  if (dock === undefined) throw new NotStated([`axes.${hoist}.dock`]);
  return dock;
};

/** Whether the load rides in a cup while it travels, so that travelling starts no swing. */
export const rides = (context: SwingContext, hoist: string): boolean =>
  need(dockOf(context, hoist), 'kind').kind === 'cup';

export const belowHook = (context: SwingContext): Value =>
  need(hangingOf(context), 'centre-of-mass-below-hook')['centre-of-mass-below-hook'];
export const belowPivot = (context: SwingContext, hoist: string): Value =>
  need(dockOf(context, hoist), 'below-pivot')['below-pivot'];

const lengthAt = (context: SwingContext, hoist: string, down: Value): Value =>
  hangingLength.work({ pivot: belowPivot(context, hoist), down, below: belowHook(context) });

/** Length of the pendulum while the load is up. */
export const shortest = (context: SwingContext, hoist: string): Value => lengthAt(context, hoist, UP);
/** Length with all of the line out. */
export const longest = (context: SwingContext, hoist: string): Value =>
  lengthAt(context, hoist, need(axisOf(context, hoist), 'travel').travel);
/** Way down after which it stands on the heap: as stated, or all of the travel. */
export const landing = (context: SwingContext, hoist: string): Value =>
  axisOf(context, hoist)['lands-after'] ?? need(axisOf(context, hoist), 'travel').travel;
/** Length at which it leaves the heap. */
export const atLiftOff = (context: SwingContext, hoist: string): Value =>
  lengthAt(context, hoist, landing(context, hoist));

/** Time in which the swing fades to 37 %. */
export const fadingOf = (context: SwingContext, hoist: string): Value =>
  fadingTime.work({
    damping: dampingOf(context),
    longest: swingRate.work({ length: longest(context, hoist) }),
  });

/** Share of critical damping at the longest line. */
export const dampingOf = (context: SwingContext): Value =>
  dampingFromHalving.work({ swings: need(hangingOf(context), 'halves-after')['halves-after'] });

export const profileOf = (context: SwingContext, axis: string): TravelProfile => context.get(travelProfile, axis);

/** Time in which the acceleration of an axis comes up; nothing where it jumps. */
export const easingOf = ({ shape, acceleration, jerk }: TravelProfile): Value | undefined =>
  shape === 's-curve' && jerk !== undefined ? easingTime.work({ acceleration, jerk }) : undefined;

/** Largest swing that one drive of an axis can leave while the load is up. */
export const jogSwing = (context: SwingContext, hoist: string, axis: string): Value => {
  const profile = profileOf(context, axis);
  return worstJog.work({
    length: shortest(context, hoist),
    speed: profile.speed,
    acceleration: profile.acceleration,
    easing: easingOf(profile),
  });
};

/** Wait between a travel and what comes after it. */
export const dwellOf = (context: SwingContext): Value => hangingOf(context).dwell ?? AT_ONCE;

/** Farthest to the side while it is lowered after the worst single drive of an axis and the wait. */
export const jogLowered = (context: SwingContext, hoist: string, axis: string): Value => {
  const fading = fadingOf(context, hoist);
  const high = shortest(context, hoist);
  const angle = swingLeft.work({ angle: jogSwing(context, hoist, axis), wait: dwellOf(context), fading });
  const { speed, acceleration } = profileOf(context, hoist);
  return loweredSideways.work({
    offset: sidewaysAt.work({ length: high, angle }),
    high,
    low: atLiftOff(context, hoist),
    speed,
    acceleration,
    fading,
  });
};

/** How far beside the plumb line it comes down on the heap after the worst single drive. */
export const comingDown = (context: SwingContext, hoist: string): Value => {
  const carriers = rides(context, hoist) ? [] : carriersOf(context.book);
  return carriers.length === 0 ? PLUMB : greatest(...carriers.map((axis) => jogLowered(context, hoist, axis)));
};

/** Farthest out of plumb that it leaves the heap in ordinary plays. */
export const leavingAt = (context: SwingContext, hoist: string): Value => {
  const still = need(hangingOf(context), 'lift-off-offset')['lift-off-offset'];
  return leavingOffset.work({ still, swung: comingDown(context, hoist) });
};

/** How far the dock catches. */
export const reachOf = (context: SwingContext, hoist: string): Value =>
  catchReach.work({ mouth: need(dockOf(context, hoist), 'catch').catch, head: hangingOf(context).head ?? NOTHING });

const ONE_IN_A_HUNDRED = constant(0.01, 'ratio', 'a share of lift-offs that a player forgives', {
  id: 'swing-experience',
});

/** Share of lift-offs that may miss. */
export const missesAllowed = (context: SwingContext, hoist: string): Value =>
  dockOf(context, hoist).misses ?? ONE_IN_A_HUNDRED;

/** Farthest that the centre of mass is out of plumb on arrival, when it left the heap out of plumb by `offset`. */
export const arrivingSideways = (context: SwingContext, hoist: string, offset: Value): Value => {
  const { speed, acceleration } = profileOf(context, hoist);
  const line = { long: atLiftOff(context, hoist), short: shortest(context, hoist) };
  return hoistedSideways.work({
    offset,
    ...line,
    speed,
    acceleration,
    time: hoistTime.work({ ...line, speed, acceleration }),
    fading: fadingOf(context, hoist),
  });
};

/** The same of the hook, which is what docks. */
export const arrivingOffset = (context: SwingContext, hoist: string, offset: Value): Value =>
  hookOffset.work({
    sideways: arrivingSideways(context, hoist, offset),
    length: shortest(context, hoist),
    below: belowHook(context),
  });
