/** The checks of the supply, by code. */
import {
  fuseBears,
  fuseBearsInrush,
  loadHasVolts,
  needsFuse,
  oneRail,
  overloadEnds,
  supplyClears,
  voltageArrives,
  wireBearsFault,
  wireBearsFuse,
} from './branches.ts';
import type { SupplyCheck } from './common.ts';
import { standingBy, weekCost } from './energy.ts';
import { railKeepsVolts } from './sag.ts';
import { caseOnMount, caseTouched, driverRipple, driverWarmth, servoWarmth, windingWarmth } from './heat.ts';
import {
  airOfSupply,
  cabinetWarms,
  hasRails,
  leastLoad,
  railBears,
  railBearsPeak,
  startUp,
  supplyPower,
} from './rails.ts';
import { clampHeat, railAfterBraking, railWhileLowering } from './regeneration.ts';

export const checks: readonly SupplyCheck[] = [
  hasRails,
  railBears,
  railBearsPeak,
  railKeepsVolts,
  supplyPower,
  leastLoad,
  startUp,
  railAfterBraking,
  railWhileLowering,
  clampHeat,
  windingWarmth,
  caseTouched,
  caseOnMount,
  driverWarmth,
  servoWarmth,
  airOfSupply,
  cabinetWarms,
  voltageArrives,
  loadHasVolts,
  needsFuse,
  fuseBears,
  oneRail,
  wireBearsFuse,
  overloadEnds,
  wireBearsFault,
  fuseBearsInrush,
  supplyClears,
  standingBy,
  weekCost,
  driverRipple,
];
