/** The tables of the Controller sheet. */
import type { Block, Cell } from '../../../contract/index.ts';
import { constant, type Dimension } from '../../../kernel/index.ts';
import { boardOf, debounceOf, isContact, signalNames, steppedAxes } from '../calc/book.ts';
import { currentOfBoard, currentOn } from '../calc/outputs.ts';
import type { Board, Told } from '../data/board.ts';
import { vagueSignals } from '../calc/signals.ts';
import { signalNeeds } from '../schema.ts';
import { assignment, believedAfter, BOARD, stepRate, steppingShare, stepTicks } from '../facts.ts';
import { chartOf, type ChartLine } from './chart.ts';
import { left, number, ranged, table, useCell, type Sheet } from './words.ts';

const how: Readonly<Record<string, string>> = { given: 'by hand', landed: 'landed', chosen: 'chosen' };

/** Needs that not every pin serves, and that stand in no other column. */
const special: readonly string[] = signalNeeds;

const wantsOf = ({ signal }: ChartLine): string =>
  signal === undefined ? '' : signal.wants.filter((want) => special.includes(want)).join(', ');

export const chartHeads = [
  'pin',
  'number',
  'port',
  'signal',
  'way',
  'acts at',
  'needs',
  'at rest',
  'placed',
  'about',
  'note',
];

/** A line of the chart as texts; `free` for a pin without a signal. */
export const chartRow = (line: ChartLine): readonly string[] => {
  const { pin, signal } = line;
  return [
    pin.name,
    String(pin.number),
    pin.port ?? '',
    signal?.name ?? 'free',
    signal?.way ?? '',
    line.acts ?? '',
    wantsOf(line),
    line.rests,
    signal === undefined ? '' : how[signal.why]!,
    signal?.about ?? '',
    line.note,
  ];
};

/** The pin chart: used pins in the order of the board. */
export const chartTable = (sheet: Sheet): readonly Block[] => {
  const found = sheet.get(assignment, BOARD);
  if (!found.ok)
    return [
      {
        kind: 'paragraph',
        text: `There is no pin chart while these cannot be had together: ${found.clash.join(', ')}.`,
      },
    ];
  const lines = chartOf(sheet);
  const free = lines.filter(({ signal, note }) => signal === undefined && note === '').map(({ pin }) => pin.name);
  const kept = lines.filter(({ signal, note }) => signal === undefined && note !== '');
  const vague = vagueSignals(sheet.book);
  return [
    ...table(
      'pin-chart',
      `Pins of the ${boardOf(sheet.book).name}`,
      chartHeads.map((head) => (head === 'number' ? number(head) : left(head))),
      lines.filter(({ signal }) => signal !== undefined).map(chartRow),
      'Acts at: the level at which an input tells what it is for, or an output is on. Placed: by hand, where its wire has landed, or chosen.',
    ),
    ...(vague.length === 0
      ? []
      : [
          {
            kind: 'paragraph' as const,
            text: `Without a pin, because it is not stated whether they go in or out: ${vague.join(', ')}.`,
          },
        ]),
    {
      kind: 'paragraph',
      text: `Free: ${free.length === 0 ? 'none' : free.join(', ')}.${kept.length === 0 ? '' : ` Kept free: ${kept.map(({ pin, note }) => `${pin.name} (${note})`).join(', ')}.`}`,
    },
  ];
};

const told = (sheet: Sheet, what: string, { is, source, status }: Told<number>, of: Dimension): readonly Cell[] => [
  what,
  sheet.show(constant(is, of, what, source)),
  status,
  source.at === undefined ? source.id : `${source.id}, ${source.at}`,
];

const words = (what: string, { is, source, status }: Told<string>): readonly Cell[] => [
  what,
  is,
  status,
  source.at === undefined ? source.id : `${source.id}, ${source.at}`,
];

const KIBI = 1024;
const memory = (fact: Told<number>): Told<string> => ({ ...fact, is: `${fact.is / KIBI} KiB` });

const factsOf = (sheet: Sheet, board: Board): readonly (readonly Cell[])[] => [
  ...board.tables.map((one, k) => words(k === 0 ? 'pins' : '', one)),
  told(sheet, 'supply', board.volts, 'voltage'),
  told(sheet, 'most on an input', board.mostInput, 'voltage'),
  told(sheet, 'least high of an output', board.leastHigh, 'voltage'),
  told(sheet, 'most of a pin', board.pinCurrent, 'current'),
  told(sheet, 'levels promised up to', board.testedCurrent, 'current'),
  ...(board.totalCurrent ? [told(sheet, 'most of all pins', board.totalCurrent, 'current')] : []),
  ...board.groups.map((group) => told(sheet, `most of ${group.name}`, group.most, 'current')),
  told(sheet, 'clock', board.clock, 'frequency'),
  words('program memory', memory(board.flash)),
  words('working memory', memory(board.ram)),
  ...(board.eeprom ? [words('memory for counts', memory(board.eeprom))] : []),
  words('at reset', board.atReset),
  words('opening the USB port', {
    ...board.portResets,
    is: board.portResets.is ? 'resets it, as it is built' : 'does not reset it',
  }),
  words('the watchdog', {
    ...board.watchdogStays,
    is: board.watchdogStays.is ? 'goes on running after it has reset the board' : 'is off after it has reset the board',
  }),
];

export const boardTable = (sheet: Sheet): readonly Block[] => {
  const board = boardOf(sheet.book);
  return table(
    'board',
    `What is known of the ${board.name}`,
    [left('what'), left('value'), left('read'), left('where')],
    factsOf(sheet, board),
    'What is marked memory was read nowhere: compare it with the data sheet before much depends on it.',
  );
};

/** What each timer, channel and bus is used for. */
export const resourceTable = (sheet: Sheet): readonly Block[] => {
  const found = sheet.get(assignment, BOARD);
  if (!found.ok) return [];
  return table(
    'timers-and-buses',
    'Timers and buses in use',
    [left('what'), left('for')],
    Object.entries(found.resources)
      .toSorted(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0))
      .map(([name, users]) => [name, users.join(', ')]),
  );
};

export const currentTable = (sheet: Sheet): readonly Block[] => {
  const { book } = sheet;
  const board = boardOf(book);
  const found = sheet.get(assignment, BOARD);
  if (!found.ok) return [];
  const rows = [
    ...board.groups.map((group) => ({
      name: group.name,
      summed: () => currentOn(book, found.pins, group),
      most: sheet.show(constant(group.most.is, 'current', 'most of the group', group.most.source)),
      key: `CONTROLLER-072/${group.name}`,
    })),
    ...(board.totalCurrent
      ? [
          {
            name: 'all',
            summed: () => currentOfBoard(book, board, found.pins),
            most: sheet.show(constant(board.totalCurrent.is, 'current', 'most of all', board.totalCurrent.source)),
            key: 'CONTROLLER-074',
          },
        ]
      : []),
  ].flatMap(({ name, summed, most, key }): Cell[][] => {
    const one = sheet.attempt(summed);
    return one.ok && one.value !== undefined
      ? [[name, one.value.signals.join(', '), ranged(sheet, () => summed()!.sum), most, useCell(sheet, key)]]
      : [];
  });
  return table(
    'currents',
    'Currents of the outputs together',
    [left('ports'), left('outputs'), number('together'), number('bears'), left('of limit')],
    rows,
  );
};

export const contactTable = (sheet: Sheet): readonly Block[] => {
  const { book } = sheet;
  const rows = signalNames(book)
    .filter((name) => isContact(book, name))
    .map((name): Cell[] => {
      const { contact, about } = book.signals![name]!;
      return [
        name,
        about ?? '',
        contact ?? '—',
        ranged(sheet, () => debounceOf(book, name)),
        ranged(sheet, () => sheet.get(believedAfter, name)),
        useCell(sheet, `CONTROLLER-100/${name}`),
        useCell(sheet, `CONTROLLER-090/${name}`),
      ];
    });
  return table(
    'contacts',
    'Contacts, and when they are believed',
    [
      left('signal'),
      left('about'),
      left('at rest'),
      number('must stay'),
      number('believed after'),
      left('against bounce'),
      left('broken wire'),
    ],
    rows,
  );
};

export const stepTable = (sheet: Sheet): readonly Block[] => {
  const axes = steppedAxes(sheet.book);
  const rows = axes.map((axis): Cell[] => [
    axis,
    ranged(sheet, () => sheet.get(stepRate, axis)),
    ranged(sheet, () => sheet.get(stepTicks, BOARD)),
    useCell(sheet, `CONTROLLER-110/${axis}`),
  ]);
  return rows.length === 0
    ? []
    : [
        ...table(
          'steps',
          'Steps at full speed',
          [left('axis'), number('steps'), number('interrupt'), left('of limit')],
          [
            ...rows,
            [
              'all',
              ranged(sheet, () => sheet.get(steppingShare, BOARD)),
              'of the processor',
              useCell(sheet, 'CONTROLLER-115'),
            ],
          ],
          'The cycles of the interrupt are common practice until they are measured.',
        ),
      ];
};
