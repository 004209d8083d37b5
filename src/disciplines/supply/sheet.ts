/** The order and the words of the Supply sheet. */
import type { Block, SheetContext, SheetDocument } from '../../contract/index.ts';
import { railsFigure, railsWords } from './figures/rails.ts';
import { warmingFigure, warmingWords } from './figures/warming.ts';
import { weekFigure, weekWords } from './figures/week.ts';
import type { SupplyBook } from './schema.ts';
import { railsDrawn, warmingDrawn, weekDrawn } from './sheet/gather.ts';
import { branchTable, driveTable, energyTable, railTable, supplyTable, warmthTable } from './sheet/tables.ts';
import { attempted, type Sheet } from './sheet/words.ts';

export const cautions: readonly string[] = [
  'Mains wiring is for people licensed for it, in approved enclosures; nobody else opens that side, and nobody works on it live.',
  'Pull the plug and wait: capacitors hold their voltage for a while. Measure that they are discharged before you touch.',
  'Motors, drivers and resistors that have run are hot enough to burn skin; let them cool.',
  'A fuse is replaced by one of the same kind and rating, never by a larger one, and only after the fault was found.',
  'A fuse protects a wire from burning. It never protects a driver, and it does not stop anything that moves.',
  'Low voltage at many amperes sets wires alight: a short circuit behind a strong supply is a fire.',
  'These figures do not replace local codes, nor the people licensed for mains wiring and machine safety.',
];

const rails = (sheet: Sheet): readonly Block[] =>
  attempted(sheet, 'No figure of the rails', () => {
    const drawn = railsDrawn(sheet);
    if (drawn.rails.length === 0) return [];
    return [
      {
        kind: 'figure',
        name: 'rails-by-mode',
        svg: railsFigure(drawn),
        caption:
          'How much of what it bears each rail gives, mode after mode; a mode is as wide as its share of the opening time. At the stated middle of all ranges.',
        alt: railsWords(drawn),
      },
    ];
  });

const warming = (sheet: Sheet): readonly Block[] =>
  Object.keys(sheet.book.motors ?? {}).flatMap((motor) =>
    attempted(sheet, `No figure of the warmth of ${motor}`, () => {
      const drawn = warmingDrawn(sheet, motor);
      return [
        {
          kind: 'figure',
          name: `warming-${motor}`.toLowerCase(),
          svg: warmingFigure(drawn),
          caption: `How ${motor} warms from cold with the mean of the modes while players queue, or standing by if that is hotter, in air as warm as the cabinet is reckoned to be; at the stated middle of all ranges. The brackets at the right are where winding and case settle at their ends, the winding in its hottest mode.`,
          alt: warmingWords(drawn),
        },
      ];
    }),
  );

const week = (sheet: Sheet): readonly Block[] =>
  attempted(sheet, 'No figure of a week', () => {
    const drawn = weekDrawn(sheet);
    return [
      {
        kind: 'figure',
        name: 'energy-of-a-week',
        svg: weekFigure(drawn),
        caption: 'Energy from the socket over a week, with the hours of opening; the bracket is the range of the week.',
        alt: weekWords(drawn),
      },
    ];
  });

/** A heading before its blocks, or nothing where there are none. */
const under = (text: string, blocks: readonly Block[]): readonly Block[] =>
  blocks.length === 0 ? [] : [{ kind: 'heading', text }, ...blocks];

export const sheet = (context: SheetContext<SupplyBook>): SheetDocument => ({
  blocks: [
    {
      kind: 'paragraph',
      text: 'Do the rails bear every mode, how warm does everything get, does each fuse suit its wire and its supply, and what does standing by cost?',
    },
    { kind: 'findings' },
    ...under('Rails', [...supplyTable(context), ...railTable(context), ...rails(context), ...driveTable(context)]),
    ...under('Warmth', [...warmthTable(context), ...warming(context)]),
    ...under('Fuses and wires', branchTable(context)),
    ...under('Energy', [...energyTable(context), ...week(context)]),
    { kind: 'working' },
    { kind: 'cautions', texts: cautions },
  ],
});
