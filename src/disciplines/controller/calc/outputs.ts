/** Currents of the outputs of a machine, and how those of one conductor of the chip come together. */
import { NotStated, type Value } from '../../../kernel/index.ts';
import type { Board, Group } from '../data/board.ts';
import type { PinFacts, SignalFacts } from '../facts.ts';
import { driverSays, ofDriver, signalEntry, type Book } from './book.ts';
import { pinsTogether } from './currents.ts';

/** Whether a pin gives its current at high or takes it at low; inputs of drivers may do either. */
type Drain = Group['way'];

export const drainOf = (book: Book, { from }: SignalFacts): Drain => {
  if (from.kind !== 'signals') return 'either';
  return (signalEntry(book, from.name)['on-when'] ?? 'high') === 'high' ? 'source' : 'sink';
};

/** Current of an output, or NotStated; bus lines carry none to speak of. */
export const outputCurrent = (book: Book, { from, way }: SignalFacts): Value | undefined => {
  if (way === 'in' || from.kind === 'buses') return undefined;
  if (from.kind === 'drivers') return ofDriver(book, from.name, 'input-current');
  const { current } = signalEntry(book, from.name);
  if (current === undefined) throw new NotStated([`signals.${from.name}.current`]);
  return current;
};

/** Whether its current is stated, so that there is something to ask. */
export const hasCurrent = (book: Book, { from, way }: SignalFacts): boolean =>
  way === 'out' &&
  (from.kind === 'drivers'
    ? driverSays(book, from.name, 'input-current') !== undefined
    : from.kind === 'signals' && signalEntry(book, from.name).current !== undefined);

const counts = (way: Drain, drain: Drain): boolean => way === 'either' || drain === 'either' || way === drain;

export interface Summed {
  readonly sum: Value;
  readonly signals: readonly string[];
}

/** Current of these pins together; nothing where there are no outputs among them. */
export const currentOn = (
  book: Book,
  placed: readonly PinFacts[],
  { pins, way }: Pick<Group, 'pins' | 'way'>,
): Summed | undefined => {
  const inside = placed.filter((one) => pins.includes(one.pin) && counts(way, drainOf(book, one)));
  const drawn = inside.flatMap((one) => {
    const current = outputCurrent(book, one);
    return current === undefined ? [] : [{ name: one.name, current }];
  });
  return drawn.length === 0
    ? undefined
    : {
        sum: pinsTogether.work({ currents: drawn.map(({ current }) => current) }),
        signals: drawn.map(({ name }) => name),
      };
};

/** All outputs of the board. */
export const currentOfBoard = (book: Book, board: Board, placed: readonly PinFacts[]): Summed | undefined =>
  currentOn(book, placed, { pins: board.pins.map(({ name }) => name), way: 'either' });
