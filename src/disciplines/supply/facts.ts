/** What Supply tells the other trades, and its own checks. Every value is SI, and a fact of its own, so that a question uses only what it asks. */
import { factToken } from '../../contract/index.ts';
import type { Value } from '../../kernel/index.ts';

/** Key of a fact that belongs to something in a mode; a book without modes has one that is not named. */
export const inMode = (name: string, mode: string): string => `${name}@${mode}`;

/** By motor in a mode: power that its driver takes for it, at the hardest point of the travel. */
export const drivePower = factToken<Value>('supply.drive-power');

/** By motor in a mode: the least that its driver takes for it, standing where it may move. */
export const leastDrivePower = factToken<Value>('supply.least-drive-power');

/** By rail in a mode: everything that it gives. */
export const railPower = factToken<Value>('supply.rail-power');
/** By rail in a mode. */
export const railCurrent = factToken<Value>('supply.rail-current');
/** By rail in a mode: everything that can start or stall at once. */
export const railPeak = factToken<Value>('supply.rail-peak');

/** By rail in a mode: the least that it is loaded with. */
export const railLeast = factToken<Value>('supply.rail-least');

/** By fuse: the greatest current over the modes, with the drop of the wire behind it. */
export const branchCurrent = factToken<Value>('supply.branch-current');
/** By fuse: the greatest drop on its wire over the modes. */
export const branchDrop = factToken<Value>('supply.branch-drop');
/** By fuse: what its wire bears for good, as laid. */
export const wireBears = factToken<Value>('supply.wire-capacity');

/** By motor: settled temperature of the winding, players queueing or standing by, whichever is hotter. */
export const windingTemperature = factToken<Value>('supply.winding-temperature');
/** By motor: settled temperature of the case. */
export const caseTemperature = factToken<Value>('supply.case-temperature');
/** For `site`: the air in the cabinet, as warm as it is reckoned to be. */
export const insideAir = factToken<Value>('supply.inside-air');
/** For `site`: how much warmer than the room that air gets by what is in the cabinet and by the sun. */
export const cabinetWarmth = factToken<Value>('supply.cabinet-rise');

/** By mode: power from the socket. */
export const mainsPower = factToken<Value>('supply.mains-power');
/** For `site`: power from the socket while nobody plays. */
export const standingByPower = factToken<Value>('supply.standing-by-power');
/** For `site`: energy of a week, day and night. */
export const weekEnergy = factToken<Value>('supply.week-energy');
