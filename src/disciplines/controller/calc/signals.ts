/** Every conductor that must end at a pin, as it follows from drivers, signals and buses of the book. */
import { NoSolution } from '../../../kernel/index.ts';
import { busLines, type Bus } from '../data/board.ts';
import type { SignalFacts, Way } from '../facts.ts';
import { axesOfDriver, driverNames, signalNames, type Book } from './book.ts';

const ways: Readonly<Record<string, Way>> = {
  switch: 'in',
  button: 'in',
  stop: 'in',
  door: 'in',
  sensor: 'in',
  lamp: 'out',
  relay: 'out',
  sound: 'out',
};
const wayOfNeed: Readonly<Record<string, Way>> = {
  analog: 'in',
  interrupt: 'in',
  'pin-change': 'in',
  pwm: 'out',
  servo: 'out',
  tone: 'out',
};

/** Need of an input that is held by a resistor inside the chip. */
export const PULL_UP = 'pull-up';

const wayOf = (book: Book, name: string): Way | undefined => {
  const { kind, direction, needs = [] } = book.signals![name]!;
  return direction ?? ways[kind ?? ''] ?? wayOfNeed[needs[0] ?? ''];
};

/** Signals of which nothing tells yet whether they go in or out: they get no pin. */
export const vagueSignals = (book: Book): readonly string[] =>
  signalNames(book).filter((name) => wayOf(book, name) === undefined);

const ofSignal = (book: Book, name: string): SignalFacts | undefined => {
  const { kind, needs = [], about, pull } = book.signals![name]!;
  const way = wayOf(book, name);
  if (way === undefined) return undefined;
  const plain = needs.includes('analog') ? [] : [way === 'in' ? 'input' : 'output'];
  return {
    name,
    way,
    wants: [...plain, ...needs, ...(pull === 'internal' && way === 'in' ? [PULL_UP] : [])],
    from: { kind: 'signals', name },
    about: about ?? kind ?? needs.join(', '),
  };
};

const ofDriver = (book: Book, driver: string): readonly SignalFacts[] => {
  const axes = axesOfDriver(book, driver).join(' and ');
  const one = (what: string, means: string): SignalFacts => ({
    name: `${driver}-${what}`,
    way: 'out',
    wants: ['output'],
    from: { kind: 'drivers', name: driver },
    about: axes === '' ? means : `${axes}: ${means}`,
  });
  const isShared = book.drivers?.[driver]?.['enabled-by'] !== undefined;
  return [one('step', 'a step'), one('dir', 'which way'), ...(isShared ? [] : [one('enable', 'drive on')])];
};

/** Buses by name; a log that has a serial port of its own is one of them. */
export const busesOf = ({ controller }: Book): Readonly<Record<string, Bus['kind']>> => ({
  ...(controller?.['log-port'] === 'second serial' ? { log: 'uart' as const } : {}),
  ...controller?.buses,
});

const ofBus = (book: Book, bus: string): readonly SignalFacts[] =>
  busLines[busesOf(book)[bus]!].map((line) => ({
    name: `${bus}-${line}`,
    way: line === 'rx' || line === 'miso' ? 'in' : 'out',
    wants: [line],
    from: { kind: 'buses', name: bus },
    about: `${line.toUpperCase()} of ${bus}`,
  }));

const once = (signals: readonly SignalFacts[]): readonly SignalFacts[] => {
  const names = new Set<string>();
  for (const { name } of signals) {
    if (names.has(name)) throw new NoSolution('the choice of pins', `two signals are called ${name}`);
    names.add(name);
  }
  return signals;
};

/** All of them, in the order of the book: drives, then signals, then buses. */
export const signalsOf = (book: Book): readonly SignalFacts[] =>
  once([
    ...driverNames(book).flatMap((name) => ofDriver(book, name)),
    ...signalNames(book).flatMap((name) => ofSignal(book, name) ?? []),
    ...Object.keys(busesOf(book)).flatMap((name) => ofBus(book, name)),
  ]);

/** Their names, each once, also where what they are is not stated yet. */
export const namesOfSignals = (book: Book): readonly string[] => [
  ...new Set([
    ...driverNames(book).flatMap((name) => ofDriver(book, name).map((one) => one.name)),
    ...signalNames(book),
    ...Object.keys(busesOf(book)).flatMap((name) => ofBus(book, name).map((one) => one.name)),
  ]),
];
