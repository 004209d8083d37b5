/** What Controller tells the other trades, and its own checks. */
import { factToken } from '../../contract/index.ts';
import type { Value } from '../../kernel/index.ts';

/** The one key of facts that belong to the board. */
export const BOARD = 'board';

export type Way = 'in' | 'out';

/** A signal of the book: one conductor that ends at a pin. */
export interface SignalFacts {
  /** Designation, or for what follows from an entry `D1-step`, `reader-tx`. */
  readonly name: string;
  readonly way: Way;
  /** What its pin must be able to do. */
  readonly wants: readonly string[];
  /** Entry of the book from which it follows. */
  readonly from: { readonly kind: 'signals' | 'drivers' | 'buses'; readonly name: string };
  readonly about: string;
}

/** A signal with the pin that it has. */
export interface PinFacts extends SignalFacts {
  /** As it is printed on the board. */
  readonly pin: string;
  /** Number by which a program calls it. */
  readonly number: number;
  readonly port?: string;
  /** By the author, where the wire has landed, or chosen. */
  readonly why: 'given' | 'landed' | 'chosen';
  /** Where its wire has landed, when that is another pin. */
  readonly movedFrom?: string;
}

/** By signal. */
export const pinOf = factToken<PinFacts>('controller.pin');

/** For the board: every signal with its pin, or the smallest set of them that cannot be had together. */
export type Assignment =
  | {
      readonly ok: true;
      readonly pins: readonly PinFacts[];
      /** When wires must move: what cannot be had together while all stay. */
      readonly because: readonly string[];
      /** What each timer, channel or bus is used for. */
      readonly resources: Readonly<Record<string, readonly string[]>>;
    }
  | { readonly ok: false; readonly clash: readonly string[] };
export const assignment = factToken<Assignment>('controller.assignment');

/** For the board: name of its type, such as ATmega2560. */
export const boardName = factToken<string>('controller.board');

/** By axis: steps that its drivers are given in a second, at most. */
export const stepRate = factToken<Value>('controller.step-rate');
/** For the board: how often the stepping interrupt comes. */
export const stepTicks = factToken<Value>('controller.step-ticks');
/** For the board: share of the processor that the stepping interrupt takes. */
export const steppingShare = factToken<Value>('controller.stepping-share');
/** By signal of a contact: time from its first edge until it is believed, at most. */
export const believedAfter = factToken<Value>('controller.believed-after');
