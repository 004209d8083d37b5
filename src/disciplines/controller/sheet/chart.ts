/** The pin chart: a line for each pin of the board, as it stands on the sheet, in the table for the bench and in the figure. */
import { tableOf, boardOf, driverSays, signalEntry, type Book } from '../calc/book.ts';
import { pinNamed } from '../data/boards.ts';
import type { Board, Pin } from '../data/board.ts';
import { assignment, BOARD, type PinFacts } from '../facts.ts';
import type { Sheet } from './words.ts';

export interface ChartLine {
  readonly pin: Pin;
  readonly signal?: PinFacts;
  /** What holds the line, or what the output does at reset. */
  readonly rests: string;
  /** Level at which it acts or is on. */
  readonly acts?: 'high' | 'low';
  readonly note: string;
}

/** Level at which an input tells what it is for: a contact closed at rest opens its line, which is held high then. */
const inputActs = (book: Book, name: string): ChartLine['acts'] => {
  const { contact, pull, 'on-when': onWhen } = signalEntry(book, name);
  if (onWhen !== undefined) return onWhen;
  if (pull === undefined || pull === 'none') return undefined;
  return contact === 'normally-closed' ? 'high' : contact === 'normally-open' ? 'low' : undefined;
};

export const actsAt = (book: Book, { from, way, name }: PinFacts): ChartLine['acts'] => {
  if (from.kind === 'buses') return undefined;
  if (from.kind === 'drivers') return name.endsWith('-enable') ? driverSays(book, from.name, 'enable-when') : undefined;
  return way === 'in' ? inputActs(book, name) : (signalEntry(book, name)['on-when'] ?? 'high');
};

const pulls: Readonly<Record<string, string>> = {
  internal: 'pull-up inside',
  external: 'resistor to supply',
  none: 'nothing holds it',
};

const restOf = (book: Book, { from, way, name }: PinFacts): string => {
  if (from.kind === 'buses') return '';
  if (from.kind === 'drivers') {
    const at = book.drivers?.[from.name]?.['at-reset'];
    return name.endsWith('-enable') ? (at === undefined ? '—' : `${at} at reset`) : '';
  }
  const entry = signalEntry(book, name);
  if (way === 'in') return entry.pull === undefined ? '—' : (pulls[entry.pull] ?? '');
  return entry['at-reset'] === undefined ? '—' : `${entry['at-reset']} at reset`;
};

const noteOf = ({ spare, boot }: Pin, signal: PinFacts | undefined): string =>
  [
    ...(signal?.movedFrom === undefined ? [] : [`moved from ${signal.movedFrom}`]),
    ...(boot === undefined ? [] : [`at start ${boot.wants}: ${boot.because}`]),
    ...(boot === undefined && spare && signal ? [spare.because] : []),
  ].join('; ');

const reserved = (board: Board, pin: Pin, book: Book): boolean =>
  (tableOf(book)['log-port'] ?? 'usb') === 'usb' && board.logPins.includes(pin.name);

/** Every pin of the board with the signal that it has. Throws when there is no choice of pins. */
export const chartOf = ({ book, get }: Sheet): readonly ChartLine[] => {
  const board = boardOf(book);
  const found = get(assignment, BOARD);
  const placed = new Map(found.ok ? found.pins.map((one) => [one.pin, one]) : []);
  const unusable = new Set((tableOf(book).unusable ?? []).flatMap((name) => pinNamed(board, name)?.name ?? []));
  return board.pins.map((pin): ChartLine => {
    const signal = placed.get(pin.name);
    const acts = signal && actsAt(book, signal);
    return {
      pin,
      ...(signal ? { signal } : {}),
      rests: signal ? restOf(book, signal) : '',
      ...(acts ? { acts } : {}),
      note: [
        ...(signal === undefined && reserved(board, pin, book) ? ['the log over USB'] : []),
        ...(unusable.has(pin.name) ? ['said to be unusable'] : []),
        noteOf(pin, signal),
      ]
        .filter((text) => text !== '')
        .join('; '),
    };
  });
};
