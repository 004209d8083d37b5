/** Whether pins, groups of pins and the whole board bear their currents, and levels fit. */
import { atLeast, atMost, NotStated, type Value } from '../../../kernel/index.ts';
import { boardOf, isContact, ofDriver, signalEntry, type Book } from '../calc/book.ts';
import { currentOfBoard, currentOn, hasCurrent, outputCurrent } from '../calc/outputs.ts';
import { signalsOf } from '../calc/signals.ts';
import { boards } from '../data/boards.ts';
import { assignment, BOARD, type SignalFacts } from '../facts.ts';
import {
  everyDriver,
  experience,
  listed,
  nameIn,
  signalsThat,
  theBoard,
  toldValue,
  type ControllerCheck,
} from './common.ts';

const isOutput = (book: Book, name: string): boolean => {
  const entry = book.signals?.[name];
  return entry?.current !== undefined;
};

const pinBears = (
  code: string,
  asks: string,
  subjects: ControllerCheck['subjects'],
  signalsIn: (book: Book, name: string) => readonly SignalFacts[],
): ControllerCheck => ({
  code,
  asks,
  subjects,
  run: ({ book }, subject) => {
    const name = nameIn(subject);
    const board = boardOf(book);
    const signal = signalsIn(book, name).find((one) => hasCurrent(book, one));
    const current = signal && outputCurrent(book, signal);
    if (current === undefined) return null;
    const { is: tested } = board.testedCurrent;
    return atMost(current, toldValue(board.pinCurrent, 'current', `most that a pin of the ${board.name} bears`), {
      says: ({ demand, limit }) =>
        `${name} takes ${demand} from a pin of the ${board.name}, which bears ${limit} at most.`,
      advice: {
        share: tested / board.pinCurrent.is,
        because: 'above that the levels of the pin are not promised',
        source: board.testedCurrent.source,
      },
      levers: [
        {
          turn: code === 'CONTROLLER-071' ? `drivers.${name}.input-current` : `signals.${name}.current`,
          toward: 'lower',
          means: `switch ${name} by a transistor`,
        },
      ],
    });
  },
});

export const pinBearsSignal = pinBears(
  'CONTROLLER-070',
  'Does the pin bear what the signal takes?',
  signalsThat(isOutput),
  (book, name) => signalsOf(book).filter(({ from }) => from.kind === 'signals' && from.name === name),
);

export const pinBearsDriver = pinBears(
  'CONTROLLER-071',
  'Does the pin bear what an input of the driver takes?',
  everyDriver,
  (book, name) => signalsOf(book).filter(({ from }) => from.kind === 'drivers' && from.name === name),
);

export const groupBears: ControllerCheck = {
  code: 'CONTROLLER-072',
  asks: 'Does each group of pins bear its outputs together?',
  subjects: (book) => {
    const board = boards.find(({ name }) => name === book.controller?.board);
    return (board?.groups ?? []).map(({ name }) => ({
      designations: [name],
      at: 'controller.pins',
    }));
  },
  run: ({ book, get }, subject) => {
    const board = boardOf(book);
    const group = board.groups.find(({ name }) => name === nameIn(subject))!;
    const found = get(assignment, BOARD);
    if (!found.ok) return null;
    const summed = currentOn(book, found.pins, group);
    if (summed === undefined) return null;
    return atMost(summed.sum, toldValue(group.most, 'current', `most of the ports ${group.name} together`), {
      says: ({ demand, limit }) =>
        `${listed(summed.signals)} ${summed.signals.length === 1 ? 'takes' : 'together take'} ${demand} from the ports ${group.name}; they may give ${limit}.`,
      advice: experience(0.8, 'the sums are those of the levels that are promised'),
    });
  },
};

export const boardBears: ControllerCheck = {
  code: 'CONTROLLER-074',
  asks: 'Does the board bear all of its outputs together?',
  subjects: theBoard,
  run: ({ book, get }) => {
    const board = boardOf(book);
    const found = get(assignment, BOARD);
    if (!found.ok || board.totalCurrent === undefined) return null;
    const summed = currentOfBoard(book, board, found.pins);
    if (summed === undefined) return null;
    return atMost(summed.sum, toldValue(board.totalCurrent, 'current', `most of the ${board.name}`), {
      says: ({ demand, limit }) =>
        `All outputs together take ${demand} from the ${board.name}; it may give ${limit}, all at once.`,
      advice: experience(0.8, 'the chip supplies itself and warms'),
    });
  },
};

export const inputBears: ControllerCheck = {
  code: 'CONTROLLER-060',
  asks: 'Does the pin bear the voltage that the signal puts on it?',
  subjects: signalsThat((book, name) => {
    const { kind, direction, volts, needs } = book.signals![name]!;
    return (
      volts !== undefined ||
      kind === 'sensor' ||
      (direction === 'in' && !isContact(book, name)) ||
      (needs ?? []).includes('analog')
    );
  }),
  run: ({ book }, subject) => {
    const name = nameIn(subject);
    const board = boardOf(book);
    const { volts } = signalEntry(book, name);
    if (volts === undefined) throw new NotStated([`signals.${name}.volts`]);
    return atMost(volts, toldValue(board.mostInput, 'voltage', `most on a pin of the ${board.name}`), {
      says: ({ demand, limit }) => `${name} puts ${demand} on its pin; an input of the ${board.name} bears ${limit}.`,
      levers: [
        { turn: `signals.${name}.volts`, toward: 'lower', means: `a divider or level shifter for ${name}` },
        ...boards
          .filter((one) => one.mostInput.is > board.mostInput.is)
          .map((one) => ({ set: [{ path: 'controller.board', text: one.name }], means: `take the ${one.name}` })),
      ],
    });
  },
};

const outputReaches = (name: string, least: Value, book: Book, path: string): ReturnType<ControllerCheck['run']> => {
  const board = boardOf(book);
  return atLeast(toldValue(board.leastHigh, 'voltage', `least high of an output of the ${board.name}`), least, {
    says: ({ demand, limit }) =>
      `A pin of the ${board.name} gives at least ${demand}; ${name} takes ${limit} and more for high.`,
    levers: [
      { turn: path, toward: 'lower', means: `a level shifter before ${name}` },
      ...boards
        .filter((one) => one.leastHigh.is > board.leastHigh.is)
        .map((one) => ({ set: [{ path: 'controller.board', text: one.name }], means: `take the ${one.name}` })),
    ],
  });
};

export const outputIsHigh: ControllerCheck = {
  code: 'CONTROLLER-065',
  asks: 'Does what a pin feeds take its high for high?',
  subjects: signalsThat((book, name) => book.signals?.[name]?.['least-high'] !== undefined),
  run: ({ book }, subject) => {
    const name = nameIn(subject);
    return outputReaches(name, signalEntry(book, name)['least-high']!, book, `signals.${name}.least-high`);
  },
};

export const driverSeesHigh: ControllerCheck = {
  code: 'CONTROLLER-066',
  asks: 'Do the inputs of the driver take the high of a pin for high?',
  subjects: everyDriver,
  run: ({ book }, subject) => {
    const name = nameIn(subject);
    const { part } = book.drivers![name]!;
    const own = book.drivers![name]!['least-high'] !== undefined || part === undefined;
    return outputReaches(
      name,
      ofDriver(book, name, 'least-high'),
      book,
      own ? `drivers.${name}.least-high` : `parts.${part}.least-high`,
    );
  },
};
