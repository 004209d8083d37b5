/** Every declared formula of the trade. */
import type { Formula } from '../../../kernel/index.ts';
import { halvingFromFading, hookDepthFromPeriod, missedShare } from './bench.ts';
import { hoistedSideways, hoistTime, hookOffset, leanAt, pullTaken, pullThere } from './hoisting.ts';
import { leavingOffset, loweredSideways } from './lowering.ts';
import { missShare, worstMissShare } from './misses.ts';
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
  loweredSideways,
  leavingOffset,
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
  hookDepthFromPeriod,
  halvingFromFading,
  missedShare,
  worstMissShare,
];

export const formulas = list as unknown as readonly Formula[];
