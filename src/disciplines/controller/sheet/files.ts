/** Texts that programs take: a header in C, and the same for any board and language. */
import { boardOf, debounceOf, isContact, ofTable, tableOf, type Book } from '../calc/book.ts';
import type { Assignment, PinFacts } from '../facts.ts';
import { actsAt } from './chart.ts';

/** Revision and hash as they are printed on every made file. */
export interface FileStamp {
  readonly title: string;
  readonly revision: string;
  readonly stamp: string;
}

type Placed = Extract<Assignment, { ok: true }>;

/** A name as C takes it. */
const macroOf = (name: string): string => {
  const plain = name.toUpperCase().replaceAll(/[^A-Z0-9]+/g, '_');
  return /^[A-Z_]/.test(plain) ? plain : `_${plain}`;
};

/** Names as C takes them, each once: where two become one, the later gets a number. */
export const macrosOf = (names: readonly string[]): ReadonlyMap<string, string> => {
  const taken = new Set<string>();
  return new Map(
    names.map((name) => {
      const plain = macroOf(name);
      let own = plain;
      for (let k = 2; taken.has(own); k++) own = `${plain}_${k}`;
      taken.add(own);
      return [name, own];
    }),
  );
};

/** A text that cannot end a comment or a line. */
const remark = (text: string): string =>
  text.replaceAll(/\s+/g, ' ').replaceAll('*/', '* /').replaceAll('\\', '/').trim();

const milliseconds = (seconds: number): number => Math.round(seconds * 1e6) / 1e3;

const stated = (book: Book, key: 'scan' | 'debounce'): number | undefined =>
  tableOf(book)[key] === undefined ? undefined : ofTable(book, key).number;

const debounces = (book: Book, { name }: PinFacts): number | undefined =>
  isContact(book, name) && (book.signals?.[name]?.debounce !== undefined || stated(book, 'debounce') !== undefined)
    ? debounceOf(book, name).number
    : undefined;

/** Number of the timer that calls the stepping interrupt, where there is one. */
const stepTimer = ({ resources }: Placed): readonly string[] =>
  Object.entries(resources).flatMap(([name, users]) => {
    const number = /\d+$/.exec(name)?.[0];
    return number !== undefined && users.includes('the stepping interrupt') ? [`#define STEP_TIMER ${number}`] : [];
  });

/** Whole units, rounded up so that nothing is believed too soon. */
const whole = (x: number): number => Math.ceil(x - 1e-9);

/**
 * The header for C and C++: a pin for each signal, the level at which it acts, its pull-up and its time.
 *
 * @param placed pins of the machine
 * @param stamp what is printed on every made file
 */
export const headerText = (book: Book, placed: Placed, stamp: FileStamp): string => {
  const board = boardOf(book);
  const names = macrosOf(placed.pins.map(({ name }) => name));
  const lines = placed.pins.flatMap((signal): string[] => {
    const own = names.get(signal.name)!;
    const acts = actsAt(book, signal);
    const time = debounces(book, signal);
    return [
      `#define PIN_${own} ${signal.number} /* ${remark(`${signal.pin}, ${signal.way}, ${signal.about}`)} */`,
      ...(acts === undefined
        ? []
        : [`#define ${signal.way === 'in' ? 'ACTS' : 'ON'}_${own} ${acts === 'high' ? 1 : 0}`]),
      ...(signal.way === 'in' && signal.from.kind === 'signals'
        ? [`#define PULLUP_${own} ${book.signals?.[signal.name]?.pull === 'internal' ? 1 : 0}`]
        : []),
      ...(time === undefined ? [] : [`#define DEBOUNCE_MS_${own} ${whole(milliseconds(time))}`]),
    ];
  });
  const ticks = tableOf(book).stepping?.ticks;
  const scan = stated(book, 'scan');
  const guard = `${macroOf(stamp.title)}_PINS_H`;
  return [
    `/* ${remark(stamp.title)}, revision ${remark(stamp.revision)}: pins of the ${board.name}. */`,
    `/* stamp ${remark(stamp.stamp)} */`,
    '/* Made from the book of the machine. Change that, and make this again. */',
    `#ifndef ${guard}`,
    `#define ${guard}`,
    `#if !defined(${board.macro.is})`,
    `#error "these are the pins of the ${board.name}"`,
    '#endif',
    ...lines,
    ...(ticks === undefined ? [] : [`#define STEP_TICKS_HZ ${Math.round(ticks.number)}`]),
    ...stepTimer(placed),
    ...(scan === undefined ? [] : [`#define SCAN_US ${whole(scan * 1e6)}`]),
    '#endif',
    '',
  ].join('\n');
};

/**
 * The same as data that belongs to no language. Times are in seconds.
 *
 * @param placed pins of the machine
 * @param stamp what is printed on every made file
 */
export const neutralText = (book: Book, placed: Placed, stamp: FileStamp): string => {
  const board = boardOf(book);
  const ticks = tableOf(book).stepping?.ticks;
  const scan = stated(book, 'scan');
  const document = {
    pins: 1,
    ...stamp,
    board: board.name,
    ...(ticks === undefined ? {} : { 'step-ticks': ticks.number }),
    ...(scan === undefined ? {} : { scan }),
    signals: placed.pins.map((signal) => {
      const time = debounces(book, signal);
      const acts = actsAt(book, signal);
      return {
        name: signal.name,
        pin: signal.pin,
        number: signal.number,
        way: signal.way,
        wants: signal.wants,
        about: signal.about,
        ...(acts === undefined ? {} : { acts }),
        ...(book.signals?.[signal.name]?.pull === undefined ? {} : { pull: book.signals[signal.name]!.pull }),
        ...(time === undefined ? {} : { debounce: time }),
      };
    }),
    uses: placed.resources,
  };
  return `${JSON.stringify(document, null, 2)}\n`;
};
