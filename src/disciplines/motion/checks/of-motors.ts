/** The checks of motors and drivers, by code. */
import { driverCurrent, driverLeastVolts, driverMicrosteps, driverMostVolts, driverSwitch } from './driver.ts';
import { midBand } from './mid-band.ts';
import type { MotorCheck } from './motors.ts';
import { pushed } from './pushed.ts';
import { resonance } from './resonance.ts';
import { holding, standingBy } from './standing.ts';
import { torqueAtSpeed } from './torque-at-speed.ts';
import { windingConnection, windingCurrent } from './winding.ts';

export const motorChecks: readonly MotorCheck[] = [
  torqueAtSpeed,
  midBand,
  resonance,
  windingCurrent,
  windingConnection,
  driverCurrent,
  driverMostVolts,
  driverLeastVolts,
  driverMicrosteps,
  driverSwitch,
  holding,
  standingBy,
  pushed,
];
