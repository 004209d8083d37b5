/** Whether timers, boot roles and the start of the board leave each signal in peace. */
import { mustBe, NotStated } from '../../../kernel/index.ts';
import { assignment, BOARD } from '../facts.ts';
import { boardOf, signalEntry, tableOf, type Book } from '../calc/book.ts';
import { namesOfSignals, signalsOf } from '../calc/signals.ts';
import type { Board, Pin } from '../data/board.ts';
import { boards, pinNamed } from '../data/boards.ts';
import { everyDriver, freePin, listed, nameIn, signalsThat, type ControllerCheck } from './common.ts';

const timersOf = (board: Board): readonly string[] =>
  board.millis === undefined ? [] : [...new Set(board.pins.flatMap(({ pwm }) => (pwm ? [pwm.timer] : [])))].sort();

interface Use {
  readonly by: string;
  /** Leaves room for nothing else. */
  readonly alone: boolean;
}

/** Uses of a timer that nothing can change: what the libraries take, and pins given by hand. */
const usesOf = (book: Book, board: Board, timer: string): readonly Use[] => {
  const signals = signalsOf(book);
  const servos = signals.filter(({ wants }) => wants.includes('servo')).length;
  const { timers, each } = board.servo.is;
  const pulses = timers.indexOf(timer);
  const tones = signals.filter(({ wants }) => wants.includes('tone')).map(({ name }) => name);
  const lamps = signals
    .filter(({ wants }) => wants.includes('pwm'))
    .filter(({ name }) => pinNamed(board, tableOf(book).pins?.[name] ?? '')?.pwm?.timer === timer);
  return [
    ...(board.millis?.is === timer ? [{ by: 'the clock', alone: false }] : []),
    ...(pulses >= 0 && servos > pulses * each
      ? [{ by: `pulses of ${servos === 1 ? 'the servo' : `${servos} servos`}`, alone: true }]
      : []),
    ...(tones.length > 0 && board.tone?.is === timer ? [{ by: `tones of ${listed(tones)}`, alone: true }] : []),
    ...lamps.map(({ name }) => ({ by: `dimming of ${name}`, alone: false })),
  ];
};

export const timerIsFree: ControllerCheck = {
  code: 'CONTROLLER-030',
  asks: 'Is each timer asked for by uses that go together?',
  subjects: (book) => {
    const board = boards.find(({ name }) => name === book.controller?.board);
    return board === undefined
      ? []
      : timersOf(board).map((timer) => ({ designations: [timer.replace(' ', '-')], at: 'controller.pins' }));
  },
  run: ({ book }, subject) => {
    const timer = nameIn(subject).replace('-', ' ');
    const board = boardOf(book);
    const uses = usesOf(book, board, timer);
    if (uses.length === 0) return null;
    const clash = uses.length > 1 && uses.some(({ alone }) => alone);
    const lost = board.pins.filter(({ pwm }) => pwm?.timer === timer).map(({ name }) => name);
    const words = listed(uses.map(({ by }) => by));
    return mustBe(!clash, {
      says: () =>
        clash
          ? `${words} ask for ${timer} of the ${board.name}, and only one can have it; pins ${listed(lost)} hang on it.`
          : uses.some(({ alone }) => alone)
            ? `${words} take ${timer}: pins ${listed(lost)} cannot dim.`
            : uses.length > 1
              ? `${words} share ${timer}.`
              : `${timer} serves ${words} alone.`,
      levers: uses.flatMap(({ by }) => (by.startsWith('dimming of ') ? [freePin(by.slice('dimming of '.length))] : [])),
    });
  },
};

/** Level that the outside of a pin has while the board starts, as far as it is stated. */
const levelAtStart = (book: Book, signal: string): 'low' | 'high' | undefined => {
  const entry = book.signals?.[signal];
  if (entry === undefined) return undefined;
  const { kind, contact, direction } = entry;
  const onWhen = entry['on-when'] ?? 'high';
  if (direction === 'in' || ['switch', 'button', 'stop', 'door'].includes(kind ?? ''))
    // At rest a closed contact holds its line at ground.
    return contact === 'normally-closed' ? 'low' : contact === 'normally-open' ? 'high' : undefined;
  const at = entry['at-reset'];
  if (at === undefined || at === 'floating') return undefined;
  return (at === 'active') === (onWhen === 'high') ? 'high' : 'low';
};

const bootTrouble = (book: Book, signal: string, way: 'in' | 'out', { boot, name }: Pin): string | undefined => {
  if (boot === undefined) return undefined;
  if (boot.wants === 'driven')
    return way === 'out'
      ? `${signal} sits on pin ${name}, and ${boot.because}: what it feeds would twitch.`
      : `${signal} would work against pin ${name}: ${boot.because}.`;
  const level = levelAtStart(book, signal);
  return level !== undefined && level !== boot.wants
    ? `${signal} holds pin ${name} ${level} as the board starts, which must be ${boot.wants} then: ${boot.because}.`
    : undefined;
};

export const bootIsFree: ControllerCheck = {
  code: 'CONTROLLER-050',
  asks: 'Does no signal disturb a pin that the board needs while it starts?',
  subjects: (book) =>
    book.controller === undefined
      ? []
      : namesOfSignals(book).map((name) => ({ designations: [name], at: `controller.pins.${name}` })),
  run: ({ book, get }, subject) => {
    const signal = nameIn(subject);
    const found = get(assignment, BOARD);
    const placed = found.ok ? found.pins.find((one) => one.name === signal) : undefined;
    if (placed === undefined) return null;
    const { pin: name, way } = placed;
    const pin = pinNamed(boardOf(book), name)!;
    if (pin.boot === undefined) return null;
    const trouble = bootTrouble(book, signal, way, pin);
    return mustBe(trouble === undefined, {
      says: () =>
        trouble ??
        `${signal} sits on pin ${name}, which must not be held otherwise than ${pin.boot!.wants} as the board starts, and is not.`,
      levers: [freePin(signal)],
    });
  },
};

const restWords: Readonly<Record<string, string>> = {
  inactive: 'is off',
  active: 'is on',
  floating: 'is whatever its line picks up',
};

const missing = (path: string): never => {
  throw new NotStated([path]);
};

/** Whether what a pin switches is off while nothing drives the pin. */
const offAtReset = (
  book: Book,
  what: string,
  at: string | undefined,
  path: string,
): ReturnType<ControllerCheck['run']> => {
  const board = boardOf(book);
  return mustBe(at === 'inactive', {
    says: () =>
      `While the board starts or is reset, ${board.atReset.is}; ${what} ${restWords[at ?? 'floating']} then${at === 'inactive' ? '.' : ': a resistor at its input must hold it off.'}`,
    levers: [{ set: [{ path, text: 'inactive' }], means: `hold ${what} off with a resistor at its input` }],
  });
};

export const drivesOffAtReset: ControllerCheck = {
  code: 'CONTROLLER-120',
  asks: 'Is each drive off while the board starts or is reset?',
  subjects: everyDriver,
  run: ({ book }, subject) => {
    const driver = nameIn(subject);
    const { 'enabled-by': by, 'at-reset': at } = book.drivers![driver]!;
    if (by !== undefined) {
      const entry = signalEntry(book, by);
      // That question is asked of every relay by itself.
      if (entry.kind === 'relay') return null;
      const path = `signals.${by}.at-reset`;
      return entry['at-reset'] === undefined
        ? missing(path)
        : offAtReset(book, `${by}, which gives ${driver} its power,`, entry['at-reset'], path);
    }
    return at === undefined
      ? missing(`drivers.${driver}.at-reset`)
      : offAtReset(book, driver, at, `drivers.${driver}.at-reset`);
  },
};

export const relaysOffAtReset: ControllerCheck = {
  code: 'CONTROLLER-125',
  asks: 'Is each relay off while the board starts or is reset?',
  subjects: signalsThat((book, name) => book.signals?.[name]?.kind === 'relay'),
  run: ({ book }, subject) => {
    const name = nameIn(subject);
    const at = signalEntry(book, name)['at-reset'];
    return at === undefined
      ? missing(`signals.${name}.at-reset`)
      : offAtReset(book, name, at, `signals.${name}.at-reset`);
  },
};
