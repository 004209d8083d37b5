/** The checks of the controller, by code. */
import type { ControllerCheck } from './common.ts';
import { brokenWireStops, contactStaysClean, debounceOutlasts, lineIsHeld, stopsInItsRoom } from './contacts.ts';
import {
  boardBears,
  driverSeesHigh,
  groupBears,
  inputBears,
  outputIsHigh,
  pinBearsDriver,
  pinBearsSignal,
} from './currents.ts';
import {
  busOnItsPins,
  everySignalHasPin,
  landedAreKnown,
  landedStay,
  pinInterrupts,
  pinIsAble,
  pinsAreKnown,
} from './pins.ts';
import { cellsLast, clockMayWrap, hangEnds, logLeavesAlone, processorSuffices, ticksSuffice } from './program.ts';
import { bootIsFree, drivesOffAtReset, relaysOffAtReset, timerIsFree } from './timers.ts';

export const checks: readonly ControllerCheck[] = [
  pinsAreKnown,
  landedAreKnown,
  everySignalHasPin,
  landedStay,
  pinIsAble,
  busOnItsPins,
  timerIsFree,
  pinInterrupts,
  bootIsFree,
  inputBears,
  outputIsHigh,
  driverSeesHigh,
  pinBearsSignal,
  pinBearsDriver,
  groupBears,
  boardBears,
  lineIsHeld,
  contactStaysClean,
  brokenWireStops,
  debounceOutlasts,
  stopsInItsRoom,
  ticksSuffice,
  processorSuffices,
  drivesOffAtReset,
  relaysOffAtReset,
  clockMayWrap,
  cellsLast,
  hangEnds,
  logLeavesAlone,
];
