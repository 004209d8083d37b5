/** What a board can do, as data: every value with the source that it was read in, and what that source is worth. */
import type { Citation } from '../../../kernel/index.ts';

export type Status = 'published' | 'published-secondary' | 'memory';

/** A value that somebody stated about a board. What was only remembered says so and stands behind nothing. */
export interface Told<T> {
  readonly is: T;
  readonly source: Citation;
  readonly status: Status;
}

export const told =
  (status: Status, id: string) =>
  <T>(is: T, at?: string): Told<T> => ({ is, status, source: at === undefined ? { id } : { id, at } });

/** What a pin can be used for. */
export const abilities = ['input', 'output', 'pwm', 'analog', 'interrupt', 'pin-change', 'servo'] as const;
export type Ability = (typeof abilities)[number];

/** What the board does with a pin while it starts. */
export interface BootRole {
  /** Level that the pin must have as the board starts; `driven` when the board itself puts pulses on it. */
  readonly wants: 'low' | 'high' | 'driven';
  readonly because: string;
  readonly source: Citation;
  readonly status: Status;
}

export interface Pin {
  /** As it is printed beside the pin, or as the trade calls it. */
  readonly name: string;
  /** Other names under which a book may call it. */
  readonly also: readonly string[];
  /** Number by which a program calls it. */
  readonly number: number;
  readonly port?: string;
  readonly can: readonly Ability[];
  readonly pwm?: { readonly timer: string; readonly channel: string };
  readonly interrupt?: string;
  /** Pins of one bank share one pin-change interrupt. */
  readonly bank?: string;
  readonly pulls: readonly ('up' | 'down')[];
  readonly boot?: BootRole;
  /** Why it is better left free, and how much so. */
  readonly spare?: { readonly cost: number; readonly because: string };
}

/** Serial port or bus: its lines in a fixed order, and each set of pins on which it may sit. */
export interface Bus {
  readonly kind: 'uart' | 'i2c' | 'spi';
  readonly name: string;
  readonly sets: readonly (readonly string[])[];
}

export const busLines = {
  uart: ['tx', 'rx'],
  i2c: ['sda', 'scl'],
  spi: ['miso', 'mosi', 'sck'],
} as const satisfies Readonly<Record<Bus['kind'], readonly string[]>>;

/** Pins whose currents add up in one conductor of the chip; the way is that of the pin: source at high, sink at low. */
export interface Group {
  /** Kebab-case: part of the keys of findings. */
  readonly name: string;
  readonly pins: readonly string[];
  readonly way: 'source' | 'sink' | 'either';
  readonly most: Told<number>;
}

export interface Board {
  readonly name: string;
  /** What its compiler defines, by which a program can tell that it is made for it. */
  readonly macro: Told<string>;
  /** Where its pins, their timers, interrupts and buses were read; what each of several sources gave. */
  readonly tables: readonly Told<string>[];
  readonly volts: Told<number>;
  /** Most that may be put on an input. */
  readonly mostInput: Told<number>;
  /** Least that an output gives at high, under the current at which it is tested. */
  readonly leastHigh: Told<number>;
  readonly clock: Told<number>;
  readonly flash: Told<number>;
  readonly ram: Told<number>;
  readonly eeprom?: Told<number>;
  /** Writes that one cell bears. */
  readonly wear: Told<readonly [low: number, high: number]>;
  readonly pull: Told<readonly [low: number, high: number]>;
  readonly pinCurrent: Told<number>;
  /** Current up to which levels are promised. */
  readonly testedCurrent: Told<number>;
  readonly totalCurrent?: Told<number>;
  readonly groups: readonly Group[];
  /** What its pins do from reset until the program sets them. */
  readonly atReset: Told<string>;
  /** Opening the port of the log resets the board as it is built. */
  readonly portResets: Told<boolean>;
  /** The watchdog is still running after it has reset the board, shorter than a loader takes. */
  readonly watchdogStays: Told<boolean>;
  /** Bits of the millisecond clock that programs compare. */
  readonly clockBits: Told<number>;
  /** Timers that a servo library takes, in order, and how many servos each serves; none where it needs no timer. */
  readonly servo: Told<{ readonly timers: readonly string[]; readonly each: number }>;
  readonly tone?: Told<string>;
  /** Timer of the millisecond clock: analogue-like output goes on beside it, nothing else does. */
  readonly millis?: Told<string>;
  /** Timers that can call the stepping interrupt. */
  readonly stepping: Told<readonly string[]>;
  /** Processor cycles of such an interrupt, and for each drive that it serves. */
  readonly cycles: Told<{ readonly own: string; readonly each: string }>;
  /** Pins of the log port, by the way over USB; none where USB has pins of its own. */
  readonly logPins: readonly string[];
  readonly pins: readonly Pin[];
  readonly buses: readonly Bus[];
}

/** Whole numbers from one to another, both included. */
export const span = (from: number, to: number): readonly number[] =>
  Array.from({ length: to - from + 1 }, (_, k) => from + k);
