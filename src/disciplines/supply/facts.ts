/** What Supply tells the other trades, and its own checks. Every value is SI, and a fact of its own, so that a question uses only what it asks. */
import { factToken } from '../../contract/index.ts';
import type { Value } from '../../kernel/index.ts';

/** Drivers, loads and converters by name. */
export interface Members {
  readonly drivers: readonly string[];
  readonly loads: readonly string[];
  readonly converters: readonly string[];
}

/** What a motor does in a mode. */
export type DriveState = 'off' | 'held' | 'moving';

/** Key of a fact that belongs to something in a mode; a book without modes has one that is not named. */
export const inMode = (name: string, mode: string): string =>
  `${name}@${mode.includes('@') ? mode.replaceAll('@', AT) : mode}`;

/** Stands for the sign between both where a mode has it in its name. */
const AT = '\u0000';

/** The two parts of such a key. */
export const nameAndMode = (key: string): readonly [name: string, mode: string] => {
  const at = key.lastIndexOf('@');
  return [key.slice(0, at), key.slice(at + 1).replaceAll(AT, '@')];
};

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

/** By motor: how much warmer than the air in the cabinet its winding gets, players queueing or standing by, whichever is hotter. */
export const windingOverAir = factToken<Value>('supply.winding-over-air');
/** By motor: how much warmer than that air its case gets. */
export const caseOverAir = factToken<Value>('supply.case-over-air');
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

// Who joins whom, kept like any other fact because every number of this trade goes through it.
/** By rail: what hangs on it. */
export const railMembers = factToken<Members>('supply.rail-members');
/** By fuse: what names it as its own. */
export const fuseMembers = factToken<Members>('supply.fuse-members');
/** By driver: its motors. */
export const driverMotors = factToken<readonly string[]>('supply.driver-motors');
/** By motor: the axis that it moves, if it moves one. */
export const motorAxis = factToken<string | undefined>('supply.motor-axis');
/** By motor in a mode. */
export const driveState = factToken<DriveState>('supply.drive-state');
/** By fuse: the rail that it is on. */
export const fuseRail = factToken<string>('supply.fuse-rail');
/** By fuse: resistance of itself and of the wire behind it. */
export const fuseLoop = factToken<Value>('supply.fuse-loop');
/** By fuse in a mode: drop on its wire, on the way. */
export const modeDrop = factToken<Value>('supply.mode-drop');
/** By fuse in a mode: drop on its wire when everything starts and stalls at once. */
export const peakDrop = factToken<Value>('supply.peak-drop');
/** By rail: axes whose drives it feeds that move at the same time, by mode; nothing where none of them moves. */
export const movingGroups = factToken<readonly (readonly string[])[]>('supply.moving-groups');
/** By axis: energy that its motors give back when it stops from full speed. */
export const energyGivenBack = factToken<Value>('supply.energy-given-back');
/** By rail: its voltage. */
export const railVolts = factToken<Value>('supply.rail-volts');
