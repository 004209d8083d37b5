/** The order and the words of the Swing sheet. */
import type { Block, SheetContext, SheetDocument } from '../../contract/index.ts';
import { hoistsOf, rides } from './calc/book.ts';
import { player } from './data/player.ts';
import { arrivalFigure, arrivalWords } from './figures/arrival.ts';
import { growthFigure, growthWords } from './figures/growth.ts';
import { missFigure, missWords } from './figures/misses.ts';
import { planFigure, planWords } from './figures/plan.ts';
import type { SwingBook } from './schema.ts';
import { arrivalOf, countedOf, growthOf, missFigureOf, planFigureOf } from './sheet/gather.ts';
import {
  dockCureTables,
  periodTable,
  playerWords,
  statedTable,
  travelCureTables,
  travelTable,
} from './sheet/tables.ts';
import { attempted, text, type Sheet } from './sheet/words.ts';

export const cautions: readonly string[] = [
  'A raised load can come down at any moment: never put a hand or a head under it, and lower it before you work on it.',
  'A swinging claw is heavier than it looks: keep faces and hands out of its way while it is pulled aside for a trial.',
  'Keep hands, hair and cords away from line, drum and carriage while the drives are on.',
  'A line that goes slack and jerks can leave its drum or break: stop and look at it before the next play.',
  'Counted misses say how this model behaves; a machine that strands its claw needs a time-out and somebody who is told.',
  'These figures do not replace local codes, nor the people licensed for machine safety and amusement devices.',
];

const growth = (sheet: Sheet, hoist: string): readonly Block[] =>
  attempted(sheet, `No figure of how the swing of ${hoist} grows`, () => {
    const drawn = growthOf(sheet, hoist);
    return [
      {
        kind: 'figure',
        name: `growth-${hoist}`.toLowerCase(),
        svg: growthFigure(drawn),
        caption: `Hoisting makes the swing of ${hoist} steeper and narrower: what is caught by width gets easier, what is caught by lean harder.`,
        alt: growthWords(drawn),
      },
    ];
  });

const arrival = (sheet: Sheet, hoist: string): readonly Block[] =>
  attempted(sheet, `No figure of the lift-off of ${hoist}`, () => {
    const drawn = arrivalOf(sheet, hoist);
    return [
      {
        kind: 'figure',
        name: `arrival-${hoist}`.toLowerCase(),
        svg: arrivalFigure(drawn),
        caption: `One lift-off of ${hoist} at the farthest of the ordinary offsets${rides(sheet, hoist) ? '' : ' and with what the worst drive left'}, integrated; dashed how far it may be out whatever its phase, shaded what the dock catches.`,
        alt: arrivalWords(drawn),
      },
    ];
  });

const plan = (sheet: Sheet, hoist: string): readonly Block[] =>
  attempted(sheet, `No plan of a play of ${hoist}`, () => {
    if (rides(sheet, hoist)) return [];
    const drawn = planFigureOf(sheet, hoist);
    return [
      {
        kind: 'figure',
        name: `plan-${hoist}`.toLowerCase(),
        svg: planFigure(drawn),
        caption: `One simulated play from above while the line of ${hoist} is short: dashed the carriage, full the load; the travel is the chain line, the walls are heavy.`,
        alt: planWords(drawn),
      },
    ];
  });

const missed = (sheet: Sheet, hoist: string): readonly Block[] =>
  attempted(sheet, `No simulated plays of ${hoist}`, () => {
    const { plan: played, found } = countedOf(sheet, hoist);
    const { tally, share, interval } = found;
    const per = (x: number): string => `${Number((100 * x).toPrecision(2))} %`;
    const drawn = missFigureOf(sheet, hoist, found);
    const free = played.docked
      ? `${hoist} rides in its cup while it is driven, so that only lift-off counts.`
      : `${hoist} hangs free while it is driven: it swings up to ${text(sheet, tally.driven, 'angle')}, comes down beside where it was aimed, and leaves the heap out of plumb by that too. ${tally.touches} of ${tally.plays} plays touch a wall.`;
    const slack =
      tally.slacks > 0 ? ` In ${tally.slacks} the line goes slack or the load is flung up: they count as missed.` : '';
    return [
      {
        kind: 'paragraph',
        text: `Of ${tally.plays} simulated plays, all at the middle of every range, ${tally.misses} miss the dock: ${per(share)}, and at 95 % between ${per(interval.low)} and ${per(interval.high)} if only chance is asked. ${free}${slack}`,
      },
      { kind: 'paragraph', text: playerWords(sheet, player) },
      {
        kind: 'figure',
        name: `misses-${hoist}`.toLowerCase(),
        svg: missFigure(drawn),
        caption: `Lift-offs that miss, over the width of the dock of ${hoist}: lines reckoned over all heights of the heap for a claw that rides in a cup, one for each spread of the lift-offs; points counted in simulated plays at the middle of the ranges, with their exact intervals at 95 %.`,
        alt: missWords(drawn),
      },
    ];
  });

const free = (sheet: Sheet, hoist: string): readonly Block[] =>
  attempted(sheet, `Nothing can be said of the travels of ${hoist}`, () =>
    rides(sheet, hoist)
      ? [{ kind: 'paragraph', text: `${hoist} rides in its cup while it travels, so that travelling starts no swing.` }]
      : [
          ...travelTable(sheet, hoist),
          ...attempted(sheet, `No cures for ${hoist}`, () => travelCureTables(sheet, hoist)),
          ...plan(sheet, hoist),
        ],
  );

export const sheet = (context: SheetContext<SwingBook>): SheetDocument => {
  const hoists = hoistsOf(context.book);
  return {
    blocks: [
      {
        kind: 'paragraph',
        text: 'How far does the hanging load swing and for how long, how much worse does hoisting make it, and does it still find its dock?',
      },
      ...(hoists.length === 0
        ? ([{ kind: 'paragraph', text: 'Nothing hangs on a line in this machine.' }] as const)
        : []),
      { kind: 'findings' },
      ...(hoists.length === 0 ? [] : statedTable(context)),
      ...hoists.flatMap((hoist): readonly Block[] => [
        { kind: 'heading', text: `${hoist}: the load as a pendulum` },
        ...attempted(context, `No periods of ${hoist}`, () => periodTable(context, hoist)),
        { kind: 'heading', text: `${hoist}: while it travels` },
        ...free(context, hoist),
        { kind: 'heading', text: `${hoist}: from lift-off to the dock` },
        ...arrival(context, hoist),
        ...growth(context, hoist),
        ...missed(context, hoist),
        ...attempted(context, `No cures for the docking of ${hoist}`, () => dockCureTables(context, hoist)),
      ]),
      {
        kind: 'paragraph',
        text: 'The load is a single pendulum: all mass in one point at the end of a line without mass, and a rigid claw that leans with its line. Drag is in proportion to speed and the same at every length.',
      },
      { kind: 'working' },
      { kind: 'cautions', texts: cautions },
    ],
  };
};
