/** What Motion tells the other trades, and its own checks. Every value is SI; speeds and torques are at the motor's shaft. */
import { factToken, type FactToken } from '../../contract/index.ts';
import type { Value } from '../../kernel/index.ts';

/** How an axis travels from one end to the other. */
export interface TravelProfile {
  readonly shape: 'trapezoid' | 's-curve';
  /** Speed that is reached, less than asked for on a short travel. */
  readonly speed: Value;
  /** Acceleration that is reached. */
  readonly acceleration: Value;
  readonly jerk?: Value;
  readonly distance: Value;
  readonly totalTime: Value;
}
export const travelProfile = factToken<TravelProfile>('motion.travel-profile');

/** What one motor of an axis must do at one point of the travel. */
export interface DemandPoint {
  readonly motor: string;
  /** `starting`, `accelerating`, `easing`, `running`. */
  readonly phase: string;
  readonly torque: Value;
  readonly motorSpeed: Value;
}
/** By axis: the worst points of the travel, for each motor. */
export const demand = factToken<{ readonly points: readonly DemandPoint[] }>('motion.demand');

/** By axis: inertia that one motor turns besides its own rotor. */
export const reflectedInertia = factToken<Value>('motion.reflected-inertia');

/** By axis: torque that gravity asks of one motor at rest; friction is not counted on. Nothing on a level axis. */
export const staticTorque = factToken<Value>('motion.static-torque');

/** By axis: travel for each radian that the motor turns, a length: the radius of a pulley or drum, a lead over 2π. */
export const effectiveRadius = factToken<Value>('motion.effective-radius');

/** By motor, as it is wound and connected. Each is a fact of its own, so that a question uses only what it asks. */
export interface MotorFacts {
  readonly holdingTorque: Value;
  /** Per phase, both phases on. */
  readonly ratedCurrent: Value;
  /** Warm. */
  readonly phaseResistance: Value;
  readonly phaseInductance: Value;
  readonly rotorInertia: Value;
  readonly detentTorque: Value;
  /** Drag of the iron that rises with speed. */
  readonly ironDrag: Value;
  /** Share of critical damping after a step. */
  readonly ringing: Value;
  /** Electrical turns in one turn of the shaft: 50 at 1.8° a full step. */
  readonly teeth: Value;
  /** Torque for each ampere of phase peak. */
  readonly torqueConstant: Value;
  readonly fluxLinkage: Value;
}

/** By motor: what its driver and rail give it. */
export interface DriveFacts {
  readonly peakCurrent: Value;
  /** At the motor's bridge. */
  readonly railVoltage: Value;
  /** Cable and bridge, beside the winding. */
  readonly loopResistance: Value;
  readonly microsteps: Value;
}

export const motorFacts = {
  holdingTorque: factToken<Value>('motion.holding-torque'),
  ratedCurrent: factToken<Value>('motion.rated-current'),
  phaseResistance: factToken<Value>('motion.phase-resistance'),
  phaseInductance: factToken<Value>('motion.phase-inductance'),
  rotorInertia: factToken<Value>('motion.rotor-inertia'),
  detentTorque: factToken<Value>('motion.detent-torque'),
  ironDrag: factToken<Value>('motion.iron-drag'),
  ringing: factToken<Value>('motion.ringing'),
  teeth: factToken<Value>('motion.rotor-teeth'),
  torqueConstant: factToken<Value>('motion.torque-constant'),
  fluxLinkage: factToken<Value>('motion.flux-linkage'),
} as const satisfies { readonly [K in keyof MotorFacts]: FactToken<Value> };

export const driveFacts = {
  peakCurrent: factToken<Value>('motion.peak-current'),
  railVoltage: factToken<Value>('motion.bridge-voltage'),
  loopResistance: factToken<Value>('motion.added-resistance'),
  microsteps: factToken<Value>('motion.microsteps'),
} as const satisfies { readonly [K in keyof DriveFacts]: FactToken<Value> };

/** By motor: the torque that it can give at a speed, between the careful and the hopeful edge. */
export interface Capacity {
  readonly at: (speed: Value) => { readonly lower: Value; readonly upper: Value };
}
export const capacity = factToken<Capacity>('motion.capacity');
