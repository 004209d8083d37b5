/** Every declared formula of the trade. */
import type { Formula } from '../../../kernel/index.ts';
import { hoistedSideways, hoistTime, hookOffset, leanAt, pullTaken, pullThere } from './hoisting.ts';
import { missShare } from './misses.ts';
import { dampingFromHalving, fadingTime, swingPeriod, swingRate } from './period.ts';
import { shapingOverrun, shapingTime, threeImpulseResidual, twoImpulseResidual } from './shaper.ts';
import { catchReach, easingTime, hangingLength, sideReach } from './size.ts';
import { settleTime, sidewaysAt, steadyLean, swingLeft, travelResidual, worstJog } from './travel.ts';

const list = [
  hangingLength,
  easingTime,
  catchReach,
  sideReach,
  swingRate,
  swingPeriod,
  dampingFromHalving,
  fadingTime,
  steadyLean,
  travelResidual,
  worstJog,
  sidewaysAt,
  swingLeft,
  settleTime,
  hoistTime,
  hoistedSideways,
  hookOffset,
  leanAt,
  pullTaken,
  pullThere,
  twoImpulseResidual,
  threeImpulseResidual,
  shapingTime,
  shapingOverrun,
  missShare,
];

export const formulas = list as unknown as readonly Formula[];
