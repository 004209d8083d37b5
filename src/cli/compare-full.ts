/** A comparison as long as it is: every finding that moved, with its sentence and the facts behind it. */
import type { Discipline } from '../contract/index.ts';
import { changeText } from '../engine/compare-changes.ts';
import type { FactChange } from '../engine/compare.ts';
import type { Group, Line, Pair } from '../engine/compare-tour.ts';
import { groupText, headings, pairLines, strips, type TourInput } from './compare-tour.ts';
import type { Terminal } from './terminal.ts';
import { counting, wrap } from './text.ts';

/** Facts behind one finding that are named; the rest are counted. */
const MOST_FACTS = 4;

const factText = ({ path, before, after }: FactChange): string =>
  `${path}: ${before ?? 'not stated'} → ${after ?? 'not stated'}`;

/** Every finding of the comparison, or of one trade, under the change that stands behind it. */
export const inFull = (input: TourInput, terminal: Terminal, only?: Discipline): string[] => {
  const { tour, comparison } = input;
  const { colours, columns, text } = terminal;
  const own = new Set(tour.changes.flatMap(({ differs }) => differs));
  const isShown = ({ sheet }: Pair): boolean => only === undefined || sheet === only.name;

  const block = (pair: Pair): string[] => {
    const { behind } = pair;
    // What the author changed comes before what a catalogue or a table changed.
    const facts = behind.toSorted((a, b) => Number(own.has(b.path)) - Number(own.has(a.path)));
    const left = facts.length - MOST_FACTS;
    return [
      ...pairLines(pair, terminal),
      ...facts
        .slice(0, MOST_FACTS)
        .flatMap((fact) => wrap(text(factText(fact)), { width: columns, first: '    ', next: '      ' }))
        .map(colours.dim),
      ...(left > 0 ? [colours.dim(`    and ${counting(left, 'more fact')}`)] : []),
    ];
  };
  const pairsOf = (lines: readonly Line[]): readonly Pair[] => lines.flatMap(({ pairs }) => pairs).filter(isShown);
  const section = (words: string, pairs: readonly Pair[], lines: readonly string[]): string[] =>
    pairs.length === 0 ? [] : ['', colours.bold(`${words} (${pairs.length})`), ...lines];
  const grouped = (words: string, groups: readonly Group[]): string[] => {
    const shown = groups
      .map((group) => ({ group, pairs: pairsOf(group.lines) }))
      .filter(({ pairs }) => pairs.length > 0);
    const lines = shown.flatMap(({ group, pairs }) => [
      ...wrap(text(groupText(group)), { width: columns, next: '  ' }).map(colours.bold),
      ...pairs.flatMap(block),
    ]);
    return section(
      words,
      shown.flatMap(({ pairs }) => pairs),
      lines,
    );
  };
  const listed = (words: string, kind: Pair['kind']): string[] => {
    const pairs = tour.pairs.filter((pair) => pair.kind === kind && isShown(pair));
    return section(words, pairs, pairs.flatMap(block));
  };
  const moved = pairsOf(tour.moved);
  const { same, quiet } = comparison;
  const quietLines =
    only !== undefined || quiet.length === 0
      ? []
      : [
          '',
          colours.bold(`DIFFERENT, AND NO FINDING MOVES BY IT (${quiet.length})`),
          ...quiet.flatMap((fact) => wrap(text(factText(fact)), { width: columns, first: '  ', next: '    ' })),
        ];
  const whole = only === undefined ? tour.pairs : tour.pairs.filter(isShown);
  return [
    ...headings(input, terminal),
    '',
    ...strips(input, terminal),
    '',
    text(
      `${counting(whole.length, 'finding')}${only ? ` of ${only.title}` : ''} ${whole.length === 1 ? 'moves' : 'move'}${only ? '' : `, ${same} ${same === 1 ? 'stays as it is' : 'stay as they are'}`}.`,
    ),
    ...grouped('CURED', tour.cured),
    ...grouped('BROKEN OR WORSE', tour.worse),
    ...grouped('BETTER', tour.better),
    ...section('THE VERDICT STAYS, THE PERCENTAGE MOVES', moved, moved.flatMap(block)),
    ...listed('NOW STATED', 'now-stated'),
    ...listed('NO LONGER STATED', 'no-longer-stated'),
    ...listed('ASKED OF THE SECOND BOOK ONLY', 'only-after'),
    ...listed('ASKED OF THE FIRST BOOK ONLY', 'only-before'),
    ...(only === undefined && tour.changes.length > 0
      ? [
          '',
          colours.bold(`WHAT THE AUTHOR CHANGED (${tour.changes.length})`),
          ...tour.changes.flatMap((change) =>
            wrap(text(changeText(change)), { width: columns, first: '  ', next: '    ' }),
          ),
        ]
      : []),
    ...quietLines,
  ];
};
