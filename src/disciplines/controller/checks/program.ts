/** What the program does over weeks: steps, clock, cells, watchdog, log. */
import { atMost, constant, mustBe, NotStated } from '../../../kernel/index.ts';
import { boardOf, driverNames, ofTable, steppedAxes, tableOf } from '../calc/book.ts';
import { cellWrites, clockWrap } from '../calc/timing.ts';
import { boards } from '../data/boards.ts';
import { BOARD, stepRate, steppingShare, stepTicks } from '../facts.ts';
import { experience, nameIn, theBoard, toldValue, type ControllerCheck } from './common.ts';

const theBoardWith =
  (key: 'stepping' | 'keeps'): ControllerCheck['subjects'] =>
  (book) =>
    book.controller?.[key] === undefined ? [] : [{ designations: [], at: `controller.${key}` }];

const MILLISECOND = constant(1e-3, 'time', 'the clock counts milliseconds');
const ALL = constant(1, 'ratio', 'the whole processor');

export const ticksSuffice: ControllerCheck = {
  code: 'CONTROLLER-110',
  asks: 'Does the stepping interrupt come often enough for every step of the axis?',
  subjects: (book) => steppedAxes(book).map((axis) => ({ designations: [axis], at: `axes.${axis}` })),
  run: ({ get }, subject) => {
    const axis = nameIn(subject);
    return atMost(get(stepRate, axis), get(stepTicks, BOARD), {
      says: ({ demand, limit }) =>
        `At full speed ${axis} wants steps at ${demand}; the interrupt comes at ${limit} and can give one each time.`,
      advice: experience(
        0.5,
        'a step that comes one interrupt late is half a step of time late, and motors stumble over that',
      ),
      levers: [
        { turn: 'controller.stepping.ticks', toward: 'higher', means: 'let the stepping interrupt come more often' },
        { turn: `axes.${axis}.speed`, toward: 'lower', means: `drive ${axis} more slowly` },
      ],
    });
  },
};

export const processorSuffices: ControllerCheck = {
  code: 'CONTROLLER-115',
  asks: 'Does stepping all axes together leave the processor time for the rest?',
  subjects: theBoardWith('stepping'),
  run: ({ book, get }) => {
    const drives = driverNames(book).length;
    if (drives === 0) return null;
    const board = boardOf(book);
    return atMost(get(steppingShare, BOARD), ALL, {
      says: ({ demand }) =>
        `The stepping interrupt of ${drives === 1 ? 'one drive' : `${drives} drives`} takes ${demand} of the ${board.name}.`,
      advice: experience(0.5, 'the rest of the program, serial ports and other interrupts want their time too'),
      levers: [
        { turn: 'controller.stepping.ticks', toward: 'lower', means: 'let the stepping interrupt come less often' },
        ...boards
          .filter(({ clock }) => clock.is > board.clock.is)
          .map(({ name }) => ({ set: [{ path: 'controller.board', text: name }], means: `take the ${name}` })),
      ],
    });
  },
};

export const clockMayWrap: ControllerCheck = {
  code: 'CONTROLLER-130',
  asks: 'Does the program outlive the moment in which the clock of the board begins anew?',
  subjects: theBoard,
  run: ({ book }) => {
    const board = boardOf(book);
    const compared = tableOf(book)['times-compared'];
    if (compared === undefined) throw new NotStated(['controller.times-compared']);
    const wrap = clockWrap.work({
      tick: MILLISECOND,
      bits: toldValue(board.clockBits, 'count', `bits of the clock of the ${board.name}`),
    });
    const isSafe = compared === 'by difference';
    return atMost(ofTable(book, isSafe ? 'longest-wait' : 'runs-for'), wrap, {
      says: ({ demand, limit }) =>
        isSafe
          ? `Times are compared by their difference, which is right across the wrap of the clock after ${limit} for waits such as ${demand}.`
          : `The machine stays on for ${demand}; after ${limit} its clock begins anew, and a time that is compared with its end never comes or has long passed.`,
      levers: [
        {
          set: [{ path: 'controller.times-compared', text: 'by difference' }],
          means: 'compare now less begin with the wait',
        },
      ],
    });
  },
};

export const cellsLast: ControllerCheck = {
  code: 'CONTROLLER-140',
  asks: 'Do the cells in which the program keeps its counts last as long as the machine?',
  subjects: theBoardWith('keeps'),
  run: ({ book }) => {
    const { keeps } = tableOf(book);
    const plays = book.site?.plays;
    const missing = [
      ...(plays === undefined ? ['site.plays'] : []),
      ...(['per-play', 'cells', 'for', 'bears'] as const).flatMap((key) =>
        keeps?.[key] === undefined ? [`controller.keeps.${key}`] : [],
      ),
    ];
    if (missing.length > 0) throw new NotStated(missing);
    const writes = cellWrites.work({
      plays: plays!,
      life: keeps!.for!,
      writes: keeps!['per-play']!,
      cells: keeps!.cells!,
    });
    return atMost(writes, keeps!.bears!, {
      says: ({ demand, limit }) => `Each cell is written ${demand} times in that time; it bears ${limit}.`,
      advice: experience(0.5, 'cells differ, and a program that goes wrong writes more often'),
      levers: [{ turn: 'controller.keeps.cells', toward: 'higher', means: 'spread the writes over more cells' }],
    });
  },
};

export const hangEnds: ControllerCheck = {
  code: 'CONTROLLER-150',
  asks: 'Is a program that hangs reset, and does the board come back from that?',
  subjects: theBoard,
  run: ({ book }) => {
    const board = boardOf(book);
    const { watchdog, loader } = tableOf(book);
    if (watchdog === undefined) throw new NotStated(['controller.watchdog']);
    const asksLoader = watchdog && board.watchdogStays.is;
    if (asksLoader && loader === undefined) throw new NotStated(['controller.loader']);
    const stuck = asksLoader && loader === 'leaves the watchdog on';
    return mustBe(watchdog && !stuck, {
      says: () =>
        !watchdog
          ? 'Nothing ends a program that hangs: whatever it had switched on stays on until somebody comes.'
          : stuck
            ? `After the watchdog of the ${board.name} has acted it goes on running at its shortest time, and the loader leaves it on: the board is reset for ever, its drives off and its lamp blinking.`
            : `The watchdog resets a program that hangs; ${board.atReset.is}.`,
      levers: [
        {
          set: [
            { path: 'controller.watchdog', text: 'true' },
            ...(board.watchdogStays.is ? [{ path: 'controller.loader', text: 'stops the watchdog' }] : []),
          ],
          means: board.watchdogStays.is
            ? 'switch the watchdog on, with a loader that stops it first'
            : 'switch the watchdog on',
        },
      ],
    });
  },
};

export const logLeavesAlone: ControllerCheck = {
  code: 'CONTROLLER-160',
  asks: 'Can somebody open the log without resetting the board in a play?',
  subjects: theBoard,
  run: ({ book }) => {
    const board = boardOf(book);
    const { 'log-port': port, 'auto-reset': reset } = tableOf(book);
    if (port === undefined) throw new NotStated(['controller.log-port']);
    const asksReset = port === 'usb' && board.portResets.is;
    if (asksReset && reset === undefined) throw new NotStated(['controller.auto-reset']);
    const resets = asksReset && reset === 'as built';
    return mustBe(!resets, {
      says: () =>
        resets
          ? `Whoever opens the USB port of the ${board.name} to read the log resets it, with a load in the air if there is one.`
          : port === 'none'
            ? 'There is no log to open.'
            : port === 'usb'
              ? `Opening the USB port does not reset the ${board.name}.`
              : 'The log comes out of a port of its own, and opening that resets nothing.',
      levers: [
        {
          set: [{ path: 'controller.auto-reset', text: 'cut' }],
          means: 'cut the auto-reset, and close it for a new program',
        },
        {
          set: [{ path: 'controller.log-port', text: 'second serial' }],
          means: 'give the log a serial port of its own',
        },
      ],
    });
  },
};
