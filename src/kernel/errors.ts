/**
 * Why a calculation gave no number. Only the engine turns these into a verdict; nothing else catches them.
 */

/** A value lies outside the range in which a formula may be used. The finding becomes open, with this reason. */
export class OutsideRange extends Error {
  override readonly name = 'OutsideRange';
  constructor(
    readonly formula: string,
    readonly symbol: string,
    readonly value: number,
    readonly allowed: string,
    readonly because: string,
  ) {
    super(`${formula}: ${symbol} = ${value} is outside ${allowed}${because ? ` (${because})` : ''}`);
  }
}

/** A numerical method stopped without an answer it can vouch for. The finding becomes open, with this reason. */
export class NotConverged extends Error {
  override readonly name = 'NotConverged';
  constructor(
    readonly method: string,
    readonly reached: string,
  ) {
    super(`${method} did not converge: ${reached}`);
  }
}

/** The machine itself has no working point, for instance a supply that can never deliver the power asked of it. The finding fails. */
export class NoSolution extends Error {
  override readonly name = 'NoSolution';
  constructor(
    readonly of: string,
    readonly because: string,
  ) {
    super(`${of} has no solution: ${because}`);
  }
}

/** Facts that a calculation needs and the book does not state. The finding becomes not stated. */
export class NotStated extends Error {
  override readonly name = 'NotStated';
  constructor(readonly paths: readonly string[]) {
    super(`not stated: ${paths.join(', ')}`);
  }
}

/** A study has not come to its end yet: what it will say is not known so far. */
export class StillRunning extends Error {
  override readonly name = 'StillRunning';
  constructor(readonly study: string) {
    super('still being worked out');
  }
}

/** Why there is no number, when that is the machine's or the book's doing; anything else thrown is a fault of the program. */
export type NoNumber = OutsideRange | NotConverged | NoSolution | NotStated | StillRunning;

export const isNoNumber = (error: unknown): error is NoNumber =>
  error instanceof OutsideRange ||
  error instanceof NotConverged ||
  error instanceof NoSolution ||
  error instanceof NotStated ||
  error instanceof StillRunning;
