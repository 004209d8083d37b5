/** Whether every signal has a pin that can do what it needs, and the wires stay where they are. */
import { mustBe, nearest, NotStated, type Lever, type Outcome } from '../../../kernel/index.ts';
import type { Assignment } from '../facts.ts';
import { assignment, BOARD } from '../facts.ts';
import { boardOf, tableOf, type Book } from '../calc/book.ts';
import { busesOf, namesOfSignals, signalsOf, vagueSignals } from '../calc/signals.ts';
import { canServe } from '../calc/wishes.ts';
import { boards, pinNamed } from '../data/boards.ts';
import { busLines, type Board, type Pin } from '../data/board.ts';
import { freePin, linesOf, listed, nameIn, theBoard, type ControllerCheck } from './common.ts';

const lineIsKnown = (book: Book, board: Board, signal: string, written: string): string | undefined => {
  const names = namesOfSignals(book);
  if (!names.includes(signal)) {
    const meant = nearest(signal, names);
    return `There is no signal ${signal}${meant === undefined ? '' : `; ${meant} is meant, perhaps`}. A drive has ${'D1-step, D1-dir and D1-enable'}, a bus such as ${listed(busLines.uart.map((line) => `reader-${line}`))}.`;
  }
  return pinNamed(board, written) === undefined
    ? `The ${board.name} has no pin ${written} for ${signal}: its pins are ${board.pins[0]!.name} to ${board.pins.at(-1)!.name}.`
    : undefined;
};

const known = (table: 'pins' | 'landed', code: string): ControllerCheck => ({
  code,
  asks:
    table === 'pins'
      ? 'Does each pin that is given by hand belong to a signal and to the board?'
      : 'Does each wire that has landed belong to a signal and to the board?',
  subjects: linesOf(table),
  run: ({ book }, subject) => {
    const signal = nameIn(subject);
    const written = tableOf(book)[table]![signal]!;
    const wrong = lineIsKnown(book, boardOf(book), signal, written);
    return mustBe(wrong === undefined, {
      says: () => wrong ?? `${signal} ${table === 'pins' ? 'is given' : 'has landed on'} pin ${written}.`,
      levers: [
        { set: [{ path: `controller.${table}.${signal}`, text: null }], means: `take the line of ${signal} out` },
      ],
    });
  },
});

export const pinsAreKnown = known('pins', 'CONTROLLER-005');
export const landedAreKnown = known('landed', 'CONTROLLER-006');

/** What of a clash is said: its signals with their needs and given pins. */
const clashInWords = (book: Book, clash: readonly string[]): string => {
  const table = tableOf(book);
  const signals = signalsOf(book);
  return listed(
    clash.map((name) => {
      const wants = signals.find((one) => one.name === name)?.wants ?? [];
      const needs = wants.filter((want) => want !== 'input' && want !== 'output');
      const given = table.pins?.[name];
      const notes = [
        ...(given === undefined ? [] : [`given pin ${given}`]),
        ...(needs.length > 0 ? [`needs ${listed(needs)}`] : []),
      ];
      return notes.length === 0 ? name : `${name} (${notes.join(', ')})`;
    }),
  );
};

const clashLevers = (book: Book, clash: readonly string[]): readonly Lever[] => {
  const table = tableOf(book);
  return [
    ...clash.filter((name) => table.pins?.[name] !== undefined).map(freePin),
    ...boards
      .filter(({ name }) => name !== table.board)
      .map(({ name }): Lever => ({
        set: [{ path: 'controller.board', text: name }],
        means: `take the ${name}`,
      })),
  ];
};

export const everySignalHasPin: ControllerCheck = {
  code: 'CONTROLLER-010',
  asks: 'Is there a pin for every signal that can do what it needs?',
  subjects: theBoard,
  run: ({ book, get }) => {
    const vague = vagueSignals(book);
    if (vague.length > 0) throw new NotStated(vague.map((name) => `signals.${name}.kind`));
    const found: Assignment = get(assignment, BOARD);
    return mustBe(found.ok, {
      says: () =>
        found.ok
          ? `Each of the ${found.pins.length} signals has a pin of the ${boardOf(book).name} that can do what it needs.`
          : found.clash.length === 1
            ? `The ${boardOf(book).name} cannot serve ${clashInWords(book, found.clash)}.`
            : `The ${boardOf(book).name} cannot serve ${clashInWords(book, found.clash)} together; without any one of them the others find room.`,
      levers: found.ok ? [] : clashLevers(book, found.clash),
    });
  },
};

/** The pin given by hand to a signal, when both are there. */
const givenPin = (book: Book, signal: string): Pin | undefined => {
  const written = tableOf(book).pins?.[signal];
  return written === undefined ? undefined : pinNamed(boardOf(book), written);
};

/** Chart and wire disagree, whatever else is chosen. */
const twoPins = (signal: string, given: string, landed: string): Outcome =>
  mustBe(false, {
    says: () => `${signal} is given pin ${given}, and its wire has landed on ${landed}.`,
    levers: [
      { set: [{ path: `controller.pins.${signal}`, text: landed }], means: `give ${signal} the pin where its wire is` },
      { set: [{ path: `controller.landed.${signal}`, text: given }], means: `move the wire of ${signal}` },
    ],
  });

export const landedStay: ControllerCheck = {
  code: 'CONTROLLER-015',
  asks: 'Does each wire that has landed stay where it is?',
  subjects: linesOf('landed'),
  run: ({ book, get }, subject) => {
    const signal = nameIn(subject);
    const written = tableOf(book).landed![signal]!;
    if (lineIsKnown(book, boardOf(book), signal, written) !== undefined) return null;
    const given = givenPin(book, signal);
    if (given !== undefined && given !== pinNamed(boardOf(book), written)) return twoPins(signal, given.name, written);
    const found = get(assignment, BOARD);
    const placed = found.ok ? found.pins.find(({ name }) => name === signal) : undefined;
    if (!found.ok || placed === undefined) return null;
    const { movedFrom, pin } = placed;
    return mustBe(movedFrom === undefined, {
      says: () =>
        movedFrom === undefined
          ? `${signal} stays on pin ${pin}.`
          : `${signal} must move from pin ${movedFrom} to ${pin}: while every wire stays there is no room for ${clashInWords(book, found.because)} together.`,
    });
  },
};

const reach: readonly string[] = ['interrupt', 'pin-change'];

const ableLine = (board: Board, want: string): string => {
  const able = board.pins.filter(({ can, pulls }) =>
    want === 'pull-up' ? pulls.includes('up') : can.some((one) => one === want),
  );
  return able.length === 0
    ? `none of the ${board.name} can`
    : able.length > 24
      ? `${able.length} others can`
      : `${listed(able.map(({ name }) => name))} can`;
};

const ability = (code: string, asks: string, of: (want: string) => boolean): ControllerCheck => ({
  code,
  asks,
  subjects: linesOf('pins'),
  run: ({ book }, subject) => {
    const signal = signalsOf(book).find(({ name }) => name === nameIn(subject));
    if (signal === undefined || signal.from.kind === 'buses') return null;
    const pin = givenPin(book, signal.name);
    const wants = signal.wants.filter((want) => of(want));
    if (pin === undefined || wants.length === 0) return null;
    const board = boardOf(book);
    const missing = wants.filter((want) => !canServe(pin, { ...signal, wants: [want] }));
    return mustBe(missing.length === 0, {
      says: () =>
        missing.length === 0
          ? `Pin ${pin.name} can do what ${signal.name} needs: ${listed(wants)}.`
          : `Pin ${pin.name} has no ${listed(missing)} for ${signal.name}: ${missing.map((want) => ableLine(board, want)).join('; ')}.`,
      levers: [freePin(signal.name)],
    });
  },
});

export const pinIsAble = ability(
  'CONTROLLER-020',
  'Can the pin that is given by hand do what its signal needs?',
  (want) => !reach.includes(want) && want !== 'tone',
);

export const pinInterrupts = ability(
  'CONTROLLER-040',
  'Can the pin that is given by hand call the interrupt that its signal needs?',
  (want) => reach.includes(want),
);

export const busOnItsPins: ControllerCheck = {
  code: 'CONTROLLER-025',
  asks: 'Is there such a bus on the pins that are given by hand to its lines?',
  subjects: (book) =>
    book.controller === undefined
      ? []
      : Object.keys(busesOf(book)).map((name) => ({ designations: [name], at: `controller.buses.${name}` })),
  run: ({ book }, subject) => {
    const bus = nameIn(subject);
    const board = boardOf(book);
    const kind = busesOf(book)[bus]!;
    const given = busLines[kind].map((line) => givenPin(book, `${bus}-${line}`)?.name);
    const sets = board.buses.filter((one) => one.kind === kind).flatMap((one) => one.sets);
    const fits = sets.filter((set) => set.every((pin, k) => given[k] === undefined || given[k] === pin));
    const places = sets.map((set) => set.join('/')).join(', ');
    return mustBe(fits.length > 0, {
      says: () =>
        fits.length > 0
          ? `${bus} finds ${kind.toUpperCase()} of the ${board.name} on ${fits.map((set) => set.join('/')).join(' or ')}.`
          : sets.length === 0
            ? `The ${board.name} has no ${kind.toUpperCase()} for ${bus} besides that of its USB port.`
            : `${bus} finds no ${kind.toUpperCase()} on the pins given to it; the ${board.name} has it on ${places}.`,
      levers: busLines[kind].map((line) => freePin(`${bus}-${line}`)),
    });
  },
};
