/** The order and the words of the Motion sheet. */
import type { Block, MadeFile, SheetContext, SheetDocument } from '../../contract/index.ts';
import { axisOf, isRaising } from './calc/axis-book.ts';
import { currentFigure, currentWords } from './figures/current.ts';
import { drumFigure, drumWords } from './figures/drum.ts';
import { sinkingFigure, sinkingWords } from './figures/sinking.ts';
import { substituteFigure, substituteWords } from './figures/substitute.ts';
import { trajectoryFigure, trajectoryWords } from './figures/trajectory.ts';
import type { MotionBook } from './schema.ts';
import { drumOf, sinkingOf, trajectoryOf } from './sheet/gather.ts';
import { currentUseOf, substituteOf, unlikePairs } from './sheet/studied.ts';
import {
  axesOf,
  beltTable,
  demandTable,
  motorTable,
  pairsOf,
  settingHeads,
  settingsOf,
  settingTable,
  travelTable,
} from './sheet/tables.ts';
import { attempted, type Sheet } from './sheet/words.ts';

export const cautions: readonly string[] = [
  'A raised load can come down at any moment: never put a hand or a head under it, and lower it before you work on it.',
  'Keep hands, hair, sleeves and cords out of belts, pulleys, drums and screws while the drives are on; a stepping motor does not feel a finger.',
  'A motor that holds or has run for long is hot enough to burn skin and to soften printed plastic.',
  'Never plug or unplug a motor while its driver is live: it destroys the driver.',
  'Pushing a carriage by hand makes its motor a generator: push slowly, or unplug the motor first, from a driver that has been dead for a minute.',
  'These figures do not replace local codes, nor the people licensed for machine safety, mains wiring and amusement devices.',
];

const trajectories = (sheet: Sheet): readonly Block[] =>
  pairsOf(sheet).flatMap(([axis, motor]) =>
    attempted(sheet, `No figure of ${motor} on ${axis}`, () => {
      const drawn = trajectoryOf(sheet, axis, motor);
      return [
        {
          kind: 'figure',
          name: `torque-${axis}-${motor}`.toLowerCase(),
          svg: trajectoryFigure(drawn),
          caption: `Torque over speed: what ${axis} asks of ${motor} within what ${motor} gives. Hatched from the careful to the hopeful edge at the stated middle of all ranges; dashed what is sure at their ends.`,
          alt: trajectoryWords(drawn),
        },
      ];
    }),
  );

const drums = (sheet: Sheet): readonly Block[] =>
  axesOf(sheet)
    .filter((name) => axisOf(sheet, name).drive === 'hoist')
    .flatMap((name) =>
      attempted(sheet, `No drawing of the drum of ${name}`, () => {
        const drum = drumOf(sheet, name);
        return [
          {
            kind: 'figure',
            name: `drum-${name}`.toLowerCase(),
            svg: drumFigure(drum),
            caption: `The drum of ${name}, cut lengthwise, with the load at the top. Filled: dead turns.`,
            alt: drumWords(drum),
          },
        ];
      }),
    );

const sinkings = (sheet: Sheet): readonly Block[] =>
  pairsOf(sheet)
    .filter(([axis]) => isRaising(axisOf(sheet, axis)) && axisOf(sheet, axis).unpowered === 'windings shorted')
    .flatMap(([axis, motor]) =>
      attempted(sheet, `No figure of ${axis} without power`, () => {
        const drawn = sinkingOf(sheet, axis, motor);
        return [
          {
            kind: 'figure',
            name: `sinking-${axis}-${motor}`.toLowerCase(),
            svg: sinkingFigure(drawn),
            caption: `Without power: how the shorted windings of ${motor} brake, and where ${axis} sinks, at the stated middle of all ranges.`,
            alt: sinkingWords(drawn),
          },
        ];
      }),
    );

/** The settings of the drivers, with what the study of each found. */
const settings = (sheet: Sheet): readonly Block[] => {
  const studied = Object.keys(sheet.book.drivers ?? {}).map((driver) => ({
    driver,
    found: sheet.attempt(() => currentUseOf(sheet, driver)),
  }));
  const least = new Map(
    studied.flatMap(({ driver, found }) =>
      found.ok && found.value?.lowest !== undefined ? [[driver, found.value.lowestText] as const] : [],
    ),
  );
  const figures = studied.flatMap(({ driver, found }): readonly Block[] => {
    if (!found.ok) return [{ kind: 'paragraph', text: `No figure of the current of ${driver}: ${found.why}.` }];
    const drawn = found.value;
    if (drawn === undefined) return [];
    return [
      {
        kind: 'figure',
        name: `current-${driver}`.toLowerCase(),
        svg: currentFigure(drawn),
        caption: `Current of ${driver} against what still holds. The line stands at the middle of all ranges; the points were tried with every check at the worst of them.`,
        alt: currentWords(drawn),
      },
    ];
  });
  return [...settingTable(sheet, least), ...figures];
};

const substitutes = (sheet: Sheet): readonly Block[] =>
  unlikePairs(sheet).flatMap(([axis, motor]) =>
    attempted(sheet, `No slice of substitutes for ${motor} on ${axis}`, () => {
      const found = substituteOf(sheet, axis, motor);
      if (found === undefined) return [];
      const rest = found.rest.map(([key, text]) => `${key.replaceAll('-', ' ')} ${text}`).join(', ');
      return [
        {
          kind: 'figure',
          name: `substitutes-${axis}-${motor}`.toLowerCase(),
          svg: substituteFigure(found.drawn),
          caption: `Motors that would do in place of ${motor} on ${axis}, each tried with the checks of motor, winding and driver: filled it holds, a ring is tight or open, a cross fails. The rest stays: ${rest}; the driver as it is set.`,
          alt: substituteWords(found.drawn),
        },
      ];
    }),
  );

/** A heading before its blocks, or nothing where there are none. */
const under = (text: string, blocks: readonly Block[]): readonly Block[] =>
  blocks.length === 0 ? [] : [{ kind: 'heading', text }, ...blocks];

export const sheet = (context: SheetContext<MotionBook>): SheetDocument => ({
  blocks: [
    {
      kind: 'paragraph',
      text: 'Can these motors, on this supply and these cables, move these masses this fast without losing steps, and what becomes of what they have raised when the power goes?',
    },
    { kind: 'findings' },
    ...under('Driver settings', settings(context)),
    ...under('What is asked and what is given', [...demandTable(context), ...trajectories(context)]),
    ...under('Axes and belts', [...travelTable(context), ...beltTable(context)]),
    ...under('Hoist', [...drums(context), ...sinkings(context)]),
    ...under('Motors', [...motorTable(context), ...substitutes(context)]),
    { kind: 'working' },
    { kind: 'cautions', texts: cautions },
  ],
});

/** What is carried to the bench: the switch settings of the drivers. */
export const makes = (context: SheetContext<MotionBook>): readonly MadeFile[] => {
  const rows = settingsOf(context);
  return rows.length === 0 ? [] : [{ name: 'driver-settings', rows: [settingHeads, ...rows] }];
};
