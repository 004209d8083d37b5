/** The tables of the Swing sheet. */
import { type Block, type Cell, left, number } from '../../../contract/index.ts';
import { constant, type Edit, type Value } from '../../../kernel/index.ts';
import { axisOf, carriersOf, easingOf, fadingOf, hoistsOf, jogSwing, profileOf, shortest } from '../calc/book.ts';
import { dockCures, HOPELESS, swingAfter, travelCures, type Cure } from '../calc/cures.ts';
import { swingPeriod } from '../calc/period.ts';
import { sidewaysAt, travelResidual } from '../calc/travel.ts';
import { cures, type Proposed, type Tried } from '../studies/cures.ts';
import { dockCase, dockCodes, lengthsOf, travelCase } from './gather.ts';
import { held, NONE, ranged, said, text, type Sheet } from './words.ts';

const SMALL = constant(0.087, 'angle', 'five degrees');

const ofHanging = {
  'halves-after': 'swings after which half of it is left',
  'centre-of-mass-below-hook': 'hook to centre of mass',
  'lift-off-offset': 'out of plumb at lift-off',
  'lift-off-scatter': 'scatter of the lift-offs',
  'half-width': 'half of the widest part',
  head: 'width of what enters the dock',
  calm: 'swing with which it may be lowered',
  dwell: 'wait after a travel',
} as const;

const ofDock = {
  catch: 'width in which it is caught',
  lean: 'lean with which it goes in',
  'below-pivot': 'pivot to hook, when it is up',
  caught: 'trial releases that docked',
  misses: 'lift-offs that may miss',
} as const;

type Facts<K extends string> = Readonly<Partial<Record<K, Value>>>;

/** One row for each of the facts that the book states. */
const factRows = <K extends string>(
  sheet: Sheet,
  about: string,
  facts: Facts<NoInfer<K>> | undefined,
  words: Readonly<Record<K, string>>,
): Cell[][] =>
  (Object.keys(words) as K[]).flatMap((key): Cell[][] => {
    const fact = facts?.[key];
    return fact === undefined ? [] : [[about, words[key], held(sheet, () => facts?.[key] ?? fact)]];
  });

/** What the book says of what hangs, of its docks and of the walls beside it. */
export const statedTable = (sheet: Sheet): readonly Block[] => {
  const { axes, hanging } = sheet.book;
  const rows = [
    ...factRows(sheet, 'load', hanging, ofHanging),
    ...hoistsOf(sheet.book).flatMap((hoist): Cell[][] => {
      const dock = axes?.[hoist]?.dock;
      const kind: Cell[][] = dock?.kind === undefined ? [] : [[`dock of ${hoist}`, 'kind', said(dock, 'kind')]];
      return [...kind, ...factRows(sheet, `dock of ${hoist}`, dock, ofDock)];
    }),
    ...carriersOf(sheet.book).flatMap((axis) => factRows(sheet, axis, axes?.[axis], { wall: 'plumb line to wall' })),
  ];
  if (rows.length === 0) return [];
  return [
    {
      kind: 'table',
      name: 'stated',
      caption: 'What hangs and where it docks, as the book says it.',
      columns: [left('of'), left('fact'), number('stands at')],
      rows,
    },
  ];
};

/** Lengths and periods, which a stop watch checks. */
export const periodTable = (sheet: Sheet, hoist: string): readonly Block[] => [
  {
    kind: 'table',
    name: `periods-${hoist}`.toLowerCase(),
    caption: `The load of ${hoist} as a pendulum. A stop watch over ten swings checks the length.`,
    columns: [left('line'), number('pivot to centre of mass'), number('one swing'), number('fades to 37 % in')],
    rows: lengthsOf(sheet, hoist).map(([where, length]) => [
      where,
      ranged(sheet, length),
      ranged(sheet, () => swingPeriod.work({ length: length(), amplitude: SMALL })),
      ranged(sheet, () => fadingOf(sheet, hoist)),
    ]),
  },
];

/** What a free load does after each kind of travel. */
export const travelTable = (sheet: Sheet, hoist: string): readonly Block[] => {
  const rows = carriersOf(sheet.book).map((axis) => {
    const profile = () => profileOf(sheet, axis);
    const residual = () =>
      travelResidual.work({
        length: shortest(sheet, hoist),
        speed: profile().speed,
        acceleration: profile().acceleration,
        distance: profile().distance,
        fading: fadingOf(sheet, hoist),
        easing: easingOf(profile()),
      });
    const integrated = sheet.attempt(() => {
      const of = travelCase(sheet, hoist, axis);
      return text(
        sheet,
        swingAfter(of, (track) => track.travel('x', of.distance, of.profile), 0),
        'angle',
      );
    });
    return [
      axis,
      ranged(sheet, residual),
      integrated.ok ? integrated.value : NONE,
      ranged(sheet, () => jogSwing(sheet, hoist, axis)),
      ranged(sheet, () => sidewaysAt.work({ length: shortest(sheet, hoist), angle: jogSwing(sheet, hoist, axis) })),
    ];
  });
  if (rows.length === 0) return [];
  return [
    {
      kind: 'table',
      name: `travels-${hoist}`.toLowerCase(),
      caption: `Swing of the free load of ${hoist} after travels from rest, before any wait.`,
      columns: [
        left('axis'),
        number('after the whole travel'),
        number('the same, integrated'),
        number('after the worst drive'),
        number('to the side'),
      ],
      rows,
      note: 'The closed form takes small swings; the integration takes them as they are, at the largest over the lengths that occur.',
    },
  ];
};

const words: Readonly<Record<Cure['kind'], string>> = {
  acceleration: 'a lower acceleration',
  speed: 'a lower speed',
  jerk: 'rounded ramps',
  dwell: 'a longer wait',
  'two-impulses': 'the move sent twice, half a swing apart',
  'three-impulses': 'the move sent three times, half a swing apart',
  cup: 'a cup that holds it while it travels',
  catch: 'a wider dock',
  'hoist-speed': 'a slower hoist',
  'wait-below': 'a wait below the dock',
  stage: 'a wait half way up',
};

const dimensionOf = {
  acceleration: 'acceleration',
  speed: 'speed',
  jerk: 'jerk',
  dwell: 'time',
  catch: 'length',
  'hoist-speed': 'speed',
  'wait-below': 'time',
  stage: 'time',
} as const;

/** A setting rounded to the safe side and written as the author writes that kind of quantity. */
const written = (sheet: Sheet, { kind, setting }: Cure): string | undefined => {
  if (setting === undefined || !(setting > 0) || !(kind in dimensionOf)) return undefined;
  const of = dimensionOf[kind as keyof typeof dimensionOf];
  const up = of === 'time' || of === 'length';
  const size = 10 ** (Math.floor(Math.log10(setting)) - 1);
  const rounded = Math[up ? 'ceil' : 'floor'](setting / size + (up ? -1e-9 : 1e-9)) * size;
  return text(sheet, rounded, of);
};

const besides = (sheet: Sheet, { kind, overrun, cures, time }: Cure): string => {
  if (kind === 'two-impulses' || kind === 'three-impulses')
    return `for moves by themselves only: driven by hand the axis lags and goes on ${text(sheet, overrun ?? 0, 'length')} farther`;
  if (kind === 'cup')
    return cures
      ? 'a part to make; lift-off still swings'
      : 'a part to make; not enough by itself: lift-off still swings';
  if (kind === 'catch') return 'a part to make';
  if (time > HOPELESS) return 'hopeless: it hardly fades';
  return cures ? '' : 'not enough by itself';
};

/** What every check says of a cure on a copy of the book. */
const checked = ({ cure, edits, verdict, breaks }: Tried): string => {
  if (edits.length === 0) return cure.cures ? 'no fact of the book' : '';
  const found = verdict === undefined ? 'no longer asked' : verdict;
  return breaks.length > 0 ? `${found}; worse: ${breaks.join(', ')}` : found;
};

const cureTable = (
  sheet: Sheet,
  name: string,
  caption: string,
  left_: string,
  of: 'angle' | 'length',
  tried: readonly Tried[],
): Block => ({
  kind: 'table',
  name: name.toLowerCase(),
  caption,
  columns: [
    left('cure'),
    number('setting'),
    number(left_),
    number('time in each play'),
    left('with every check'),
    left('besides'),
  ],
  rows: tried.map((one) => [
    words[one.cure.kind],
    written(sheet, one.cure) ?? '',
    Number.isFinite(one.cure.left) ? text(sheet, one.cure.left, of) : NONE,
    one.cure.time > 0.005 ? `+${text(sheet, one.cure.time, 'time')}` : 'none',
    checked(one),
    besides(sheet, one.cure),
  ]),
  note: 'Tried on the simulated load where it fades slowest, over the lengths that occur; what cures there, and is a fact of the book, on a copy of it with every check as well. First what cures, then by time.',
});

const editsOf = (sheet: Sheet, hoist: string, axis: string, cure: Cure): readonly Edit[] => {
  const paths: Partial<Record<Cure['kind'], string>> = {
    acceleration: `axes.${axis}.acceleration`,
    speed: `axes.${axis}.speed`,
    jerk: `axes.${axis}.jerk`,
    dwell: 'hanging.dwell',
    catch: `axes.${hoist}.dock.catch`,
    'hoist-speed': `axes.${hoist}.speed`,
  };
  if (!cure.cures) return [];
  if (cure.kind === 'cup') return [{ path: `axes.${hoist}.dock.kind`, text: 'cup' }];
  const path = paths[cure.kind];
  const setting = written(sheet, cure);
  return path === undefined || setting === undefined ? [] : [{ path, text: setting }];
};

/** Findings that are not as they should be. */
const ails = (sheet: Sheet, key: string): boolean =>
  sheet.findings.some((finding) => finding.key === key && ['fails', 'tight', 'open'].includes(finding.verdict));

/** Cures of what swings too far after a travel by itself. */
export const travelCureTables = (sheet: Sheet, hoist: string): readonly Block[] =>
  carriersOf(sheet.book).flatMap((axis) => {
    const key = `SWING-010/${hoist}+${axis}`;
    if (!ails(sheet, key)) return [];
    const proposed = travelCures(travelCase(sheet, hoist, axis)).map((cure): Proposed => ({
      cure,
      edits: editsOf(sheet, hoist, axis, cure),
    }));
    const tried = sheet.study(cures, { key, proposed });
    const caption = `Cures of the swing that a whole travel of ${axis} leaves.`;
    return [cureTable(sheet, `cures-${hoist}-${axis}`, caption, 'swing left', 'angle', tried)];
  });

/** Cures of a hook that arrives too far out of plumb, for each question about it that is not as it should be. */
export const dockCureTables = (sheet: Sheet, hoist: string): readonly Block[] =>
  dockCodes.flatMap((code): readonly Block[] => {
    const key = `${code}/${hoist}`;
    if (!ails(sheet, key) || axisOf(sheet, hoist).dock?.kind === 'none') return [];
    const proposed = dockCures(dockCase(sheet, hoist, code)).map((cure): Proposed => ({
      cure,
      edits: editsOf(sheet, hoist, hoist, cure),
    }));
    const tried = sheet.study(cures, { key, proposed });
    return code === 'SWING-030'
      ? [
          cureTable(
            sheet,
            `cures-${hoist}`,
            `Cures of the hook of ${hoist} that arrives too far out of plumb from the farthest of the ordinary lift-offs (${code}).`,
            'out of plumb',
            'length',
            tried,
          ),
        ]
      : [
          cureTable(
            sheet,
            `cures-${hoist}-misses`,
            `Cures of the lift-offs of ${hoist} that miss too often; tried at the offset that no more of them pass than may miss (${code}).`,
            'out of plumb',
            'length',
            tried,
          ),
        ];
  });

/** The player that simulated plays assume, in words. */
export const playerWords = (
  sheet: Sheet,
  {
    drives,
    hold,
    pause,
  }: { drives: readonly [number, number]; hold: readonly [number, number]; pause: readonly [number, number] },
): string => {
  const time = (s: number): string => text(sheet, s, 'time');
  return `Simulated plays assume a player who drives ${drives[0]} to ${drives[1]} times, one axis after the other and to either side, holds the stick ${time(hold[0])} to ${time(hold[1])} and leaves it for ${time(pause[0])} to ${time(pause[1])}; the wait of the book, if there is one, before it is lowered; a claw that comes down on the heap at any of its heights; and lift-offs that scatter normally and alike along both axes. Nobody was watched for this.`;
};
