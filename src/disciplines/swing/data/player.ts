/** Habits of a player who drives a claw by hand. */
export interface Player {
  /** Drives in a play, fewest and most. */
  readonly drives: readonly [number, number];
  /** How long the stick is held [s], any time between as likely. */
  readonly hold: readonly [number, number];
  /** How long it is left alone between two drives [s]. */
  readonly pause: readonly [number, number];
}

/**
 * The player that simulated plays assume: drives along one axis and then the other, to either side, and turns back at the
 * ends. An assumption of this project, printed wherever a result rests on it; nobody was watched.
 */
export const player: Player = { drives: [6, 9], hold: [0.25, 1.2], pause: [0.15, 0.9] };
