/** What the checks of the controller share: subjects and constants of the board. */
import type { Check, Subject } from '../../../contract/index.ts';
import { constant, type Advice, type Dimension, type Lever, type Value } from '../../../kernel/index.ts';
import type { Told } from '../data/board.ts';
import type { Book } from '../calc/book.ts';
import type { ControllerBook } from '../schema.ts';

export type ControllerCheck = Check<ControllerBook>;
type Subjects = ControllerCheck['subjects'];

export const nameIn = ({ designations: [name] }: Subject): string => name!;

/** One subject for the board. */
export const theBoard: Subjects = (book) =>
  book.controller === undefined ? [] : [{ designations: [], at: 'controller' }];

/** One subject for each signal entry that fits, in books that have a board. */
export const signalsThat =
  (fits: (book: Book, name: string) => boolean): Subjects =>
  (book) =>
    book.controller === undefined
      ? []
      : Object.keys(book.signals ?? {})
          .filter((name) => fits(book, name))
          .map((name): Subject => ({ designations: [name], at: `signals.${name}` }));

/** One subject for each line of a table of pins. */
export const linesOf =
  (table: 'pins' | 'landed'): Subjects =>
  (book) =>
    Object.keys(book.controller?.[table] ?? {}).map((name): Subject => ({
      designations: [name],
      at: `controller.${table}.${name}`,
    }));

/** One subject for each driver, in books that have a board. */
export const everyDriver: Subjects = (book) =>
  book.controller === undefined
    ? []
    : Object.keys(book.drivers ?? {}).map((name): Subject => ({ designations: [name], at: `drivers.${name}` }));

/** A number of a board as a value that says where it was read. */
export const toldValue = ({ is, source }: Told<number>, of: Dimension, means: string): Value =>
  constant(is, of, means, source);

export const experience = (share: number, because: string): Advice => ({
  share,
  because,
  source: { id: 'controller-experience' },
});

export const listed = (names: readonly string[]): string =>
  names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)!}`;

/** Takes a pin that was given by hand out, so that one is chosen. */
export const freePin = (signal: string): Lever => ({
  set: [{ path: `controller.pins.${signal}`, text: null }],
  means: `let a pin be chosen for ${signal}`,
});
