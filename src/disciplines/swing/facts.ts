/** What Swing tells the other trades. Every value is SI; angles are from the plumb line under the pivot. */
import { factToken, type ModelToken } from '../../contract/index.ts';

/** What belongs to a hanging load and not to one motion; plain numbers. */
export interface HangingParameters {
  readonly gravity: number;
  /** Time in which the swing fades to 37 % [s]. */
  readonly fadingTime: number;
  /** From the hook down to the centre of mass of claw and load [m]. */
  readonly belowHook: number;
  /** Line out at the start, from the pivot to the hook [m]. */
  readonly line: number;
}

/** Where a hanging load is. */
export interface HangingState {
  /** Of the hook, from the plumb line [m]. */
  readonly x: number;
  readonly y: number;
  /** Lean of line and load [rad]. */
  readonly lean: number;
  /** Line out, from the pivot to the hook [m]. */
  readonly line: number;
  /** False from the moment in which the line went slack, until the load is hung up anew. */
  readonly taut: boolean;
}

/** A hanging load that is driven tick by tick, in real time. */
export interface HangingModel {
  /** Hangs it up anew at rest, with that much line out to the hook and its centre of mass so far out of plumb. */
  readonly hang: (line: number, x: number, y: number) => HangingState;
  /**
   * Goes on by a tick.
   *
   * @param time length of the tick [s]
   * @param pivot acceleration of the pivot, the same all through the tick [m/s²]
   * @param lineSpeed rate of the line at the end of the tick, more line being positive [m/s]
   */
  readonly step: (time: number, pivot: { readonly x: number; readonly y: number }, lineSpeed: number) => HangingState;
}

/** The load on its line, for whoever moves the pivot. */
export const hangingModel: ModelToken<HangingParameters, HangingModel> = { name: 'swing.hanging-load' };

/** By hoist axis: parameters for the model above, or not stated. */
export const hangingParameters = factToken<HangingParameters>('swing.hanging-parameters');
