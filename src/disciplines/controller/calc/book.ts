/** Reads what stands in the book about the board and its signals; what does not follow from anything else is NotStated. */
import type { Context, Seen } from '../../../contract/index.ts';
import { NotStated, type Value } from '../../../kernel/index.ts';
import type { Board } from '../data/board.ts';
import { boardNamed } from '../data/boards.ts';
import type { ControllerBook, ControllerTable, DriverEntry, SeenSignal } from '../schema.ts';

export type ControllerContext = Context<ControllerBook>;
export type Book = ControllerContext['book'];

/** The table, or NotStated. */
export const tableOf = (book: Book): Seen<ControllerTable> => {
  if (book.controller === undefined) throw new NotStated(['controller']);
  return book.controller;
};

/** Data of the board, or NotStated. */
export const boardOf = (book: Book): Board => {
  const { board } = tableOf(book);
  const found = board === undefined ? undefined : boardNamed(board);
  if (found === undefined) throw new NotStated(['controller.board']);
  return found;
};

type Keys<T> = { [K in keyof T]-?: NonNullable<T[K]> extends Value ? K : never }[keyof T] & string;

/** A quantity of the table, or NotStated. */
export const ofTable = (book: Book, key: Keys<Seen<ControllerTable>>): Value => {
  const found = tableOf(book)[key];
  if (found === undefined) throw new NotStated([`controller.${key}`]);
  return found;
};

export const driverNames = (book: Book): readonly string[] => Object.keys(book.drivers ?? {});

export const signalNames = (book: Book): readonly string[] => Object.keys(book.signals ?? {});

export const signalEntry = (book: Book, name: string): SeenSignal => {
  const found = book.signals?.[name];
  if (found === undefined) throw new NotStated([`signals.${name}`]);
  return found;
};

const driverEntry = (book: Book, name: string): Seen<DriverEntry> => {
  const found = book.drivers?.[name];
  if (found === undefined) throw new NotStated([`drivers.${name}`]);
  return found;
};

type DriverKey = 'input-current' | 'least-high' | 'enable-when';

/** A fact of the inputs of a driver, from it or from the part that it is. */
export const driverSays = <K extends DriverKey>(book: Book, name: string, key: K): Seen<DriverEntry>[K] => {
  const own = driverEntry(book, name);
  return own[key] ?? (own.part === undefined ? undefined : (book.parts?.[own.part]?.[key] as Seen<DriverEntry>[K]));
};

/** The same, or NotStated. */
export const ofDriver = <K extends DriverKey>(book: Book, name: string, key: K): NonNullable<Seen<DriverEntry>[K]> => {
  const found = driverSays(book, name, key);
  const { part } = driverEntry(book, name);
  if (found === undefined)
    throw new NotStated([part === undefined ? `drivers.${name}.${key}` : `parts.${part}.${key}`]);
  return found as NonNullable<Seen<DriverEntry>[K]>;
};

export const axesOfDriver = (book: Book, driver: string): readonly string[] => {
  const motors = Object.entries(book.motors ?? {}).flatMap(([name, motor]) => (motor.driver === driver ? [name] : []));
  return Object.entries(book.axes ?? {}).flatMap(([name, axis]) =>
    motors.some((motor) => axis.motors?.includes(motor)) ? [name] : [],
  );
};

/** Switches at the ends of an axis. */
export const switchesOf = (book: Book, axis: string): readonly string[] => {
  const { min, max } = book.axes?.[axis]?.switches ?? {};
  return [...new Set([...(min ?? []), ...(max ?? [])])];
};

const stopping: readonly string[] = ['switch', 'stop', 'door'];

/** Contacts that stop something when they open or close: ends of axes, slack line, stop buttons, doors. */
export const isStopping = (book: Book, name: string): boolean => stopping.includes(book.signals?.[name]?.kind ?? '');

const contacts: readonly string[] = [...stopping, 'button'];

/** A dry contact, which needs something that holds its line while it is open. */
export const isContact = (book: Book, name: string): boolean => contacts.includes(book.signals?.[name]?.kind ?? '');

/** Axes that are driven by steps. */
export const steppedAxes = (book: Book): readonly string[] =>
  book.controller?.stepping === undefined
    ? []
    : Object.entries(book.axes ?? {}).flatMap(([name, axis]) => ((axis.motors?.length ?? 0) > 0 ? [name] : []));

/** Time for which a contact must stay: its own, or that of all. */
export const debounceOf = (book: Book, signal: string): Value =>
  signalEntry(book, signal).debounce ?? ofTable(book, 'debounce');
