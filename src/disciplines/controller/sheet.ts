/** The order and the words of the Controller sheet. */
import type { Block, MadeFile, SheetContext, SheetDocument } from '../../contract/index.ts';
import { edgeFigure, edgeWords, type Edge } from './figures/edge.ts';
import { assignment, BOARD, boardName } from './facts.ts';
import type { ControllerBook } from './schema.ts';
import { chartOf } from './sheet/chart.ts';
import {
  boardTable,
  chartHeads,
  chartRow,
  chartTable,
  contactTable,
  currentTable,
  resourceTable,
  stepTable,
} from './sheet/tables.ts';
import { attempted, type Sheet } from './sheet/words.ts';

export const cautions: readonly string[] = [
  'Software is no emergency stop: a stop button opens the power of the drives itself, whatever the board does.',
  'Wire with the plug out, and let somebody else read the chart aloud while you follow the wires.',
  'Try a program first with motors unplugged, then with belts off; power off before you unplug anything.',
  'Keep hands, hair and cords out of the machine while a board is being loaded or reset: its pins float and drives may twitch.',
  'Five volts on a pin of a board for 3.3 V destroys it; measure before you connect.',
  'A lamp, relay or servo never hangs on a pin by itself: a transistor, and for a coil a diode.',
  'Pins and limits marked memory were read nowhere: compare them with the data sheet of your own board.',
  'These figures do not replace local codes, nor the people licensed for mains wiring and machine safety.',
];

const edge = (sheet: Sheet): readonly Block[] =>
  attempted(sheet, 'No figure of the board', () => {
    if (!sheet.get(assignment, BOARD).ok) return [];
    const drawn: Edge = {
      board: sheet.get(boardName, BOARD),
      pins: chartOf(sheet).map(({ pin, signal }) => ({
        pin: pin.name,
        ...(signal ? { signal: signal.name, way: signal.way } : {}),
      })),
    };
    return [
      {
        kind: 'figure',
        name: 'pins',
        svg: edgeFigure(drawn),
        caption:
          'The pins in the order of their numbers; arrows point at the board for inputs and away from it for outputs. Where they sit on the board itself is printed beside them there.',
        alt: edgeWords(drawn),
      },
    ];
  });

const under = (text: string, blocks: readonly Block[]): readonly Block[] =>
  blocks.length === 0 ? [] : [{ kind: 'heading', text }, ...blocks];

const parts = (sheet: Sheet): readonly Block[] =>
  sheet.book.controller === undefined
    ? [{ kind: 'paragraph', text: 'The book says nothing of a board yet: controller: { board: ATmega2560 } would do.' }]
    : [
        ...under('Pin chart', [...attempted(sheet, 'No pin chart', () => chartTable(sheet)), ...edge(sheet)]),
        ...under(
          'Timers and buses',
          attempted(sheet, 'No list of timers', () => resourceTable(sheet)),
        ),
        ...under('Contacts', contactTable(sheet)),
        ...under('Steps', stepTable(sheet)),
        ...under(
          'Currents',
          attempted(sheet, 'No currents', () => currentTable(sheet)),
        ),
        ...under(
          'The board',
          attempted(sheet, 'Nothing is known of the board', () => boardTable(sheet)),
        ),
      ];

export const sheet = (context: SheetContext<ControllerBook>): SheetDocument => ({
  blocks: [
    {
      kind: 'paragraph',
      text: 'Which signal sits on which pin and can it do it; do the steps come in time; does a broken wire read as stop, and does the board start, hang and come back without harm?',
    },
    { kind: 'findings' },
    ...parts(context),
    { kind: 'working' },
    { kind: 'cautions', texts: cautions },
  ],
});

/** What is carried to the bench: the chart of all pins, the free ones too. */
export const makes = (context: SheetContext<ControllerBook>): readonly MadeFile[] => {
  if (context.book.controller === undefined) return [];
  const rows = context.attempt(() => (context.get(assignment, BOARD).ok ? chartOf(context).map(chartRow) : []));
  return rows.ok && rows.value.length > 0 ? [{ name: 'pin-chart', rows: [chartHeads, ...rows.value] }] : [];
};
