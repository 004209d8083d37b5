/** `gantrybook compare`: what another book changes, in consequences and not in lines. */
import { version } from '../app/version.ts';
import { compareMachines, type Comparison, type Consequence, type FactChange, type Side } from '../engine/compare.ts';
import { markText } from '../figures/index.ts';
import { percentText } from '../kernel/index.ts';
import { bookWords } from '../pack/report.ts';
import { complainOf, openBook, Unreadable, type OpenBook } from './books.ts';
import { GOOD, UNREADABLE, type ExitCode } from './exit.ts';
import { paintOf } from './summary.ts';
import type { Terminal } from './terminal.ts';
import { counting, wrap } from './text.ts';

/** Facts behind one consequence that are named; the rest are counted. */
const MOST_FACTS = 4;
const MOST_QUIET = 12;

const sideText = (side: Side | null, terminal: Terminal): string => {
  if (side === null) return 'not asked';
  const word = markText(side.verdict, !terminal.unicode);
  return paintOf(
    terminal,
    side.verdict,
  )(side.percent === undefined ? word : `${word} ${terminal.text(percentText(side.percent))}`);
};

const changeText = ({ path, before, after }: FactChange): string =>
  `${path}: ${before ?? 'not stated'} → ${after ?? 'not stated'}`;

const block = ({ key, before, after, behind }: Consequence, terminal: Terminal): string[] => {
  const { columns, text, colours } = terminal;
  const arrow = text('→');
  const says = after ?? before;
  const more = behind.length - MOST_FACTS;
  return [
    `${colours.bold(text(key))}  ${sideText(before, terminal)} ${arrow} ${sideText(after, terminal)}`,
    ...(says ? wrap(text(says.sentence), { width: columns, first: '  ' }) : []),
    ...behind
      .slice(0, MOST_FACTS)
      .flatMap((change) => wrap(text(changeText(change)), { width: columns, first: '    ', next: '      ' }))
      .map(colours.dim),
    ...(more > 0 ? [colours.dim(`    and ${counting(more, 'more fact')}`)] : []),
  ];
};

const weigh = ({ before, after }: Consequence): 'worse' | 'better' | 'other' => {
  const order = ['holds', 'tight', 'open', 'fails'] as const;
  const rank = (side: Side | null): number => order.findIndex((verdict) => verdict === side?.verdict);
  const [a, b] = [rank(before), rank(after)];
  if (a < 0 || b < 0) return 'other';
  if (a !== b) return b > a ? 'worse' : 'better';
  return (after?.percent ?? 0) > (before?.percent ?? 0) ? 'worse' : 'better';
};

const groups = [
  ['worse', 'WORSE'],
  ['better', 'BETTER'],
  ['other', 'ASKED OF ONE OF THEM ONLY, OR NOT STATED IN ONE'],
] as const;

const lines = (comparison: Comparison, from: OpenBook, to: OpenBook, terminal: Terminal): string[] => {
  const { colours, text, columns } = terminal;
  const nameOf = ({ machine }: OpenBook): string => {
    const { title, revision } = bookWords(machine);
    return `${title}, revision ${revision}`;
  };
  const { moved, same, quiet } = comparison;
  const parts = groups.flatMap(([kind, words]) => {
    const some = moved.filter((one) => weigh(one) === kind);
    return some.length === 0
      ? []
      : ['', colours.bold(`${words} (${some.length})`), ...some.flatMap((one) => block(one, terminal))];
  });
  const quietLines =
    quiet.length === 0
      ? []
      : [
          '',
          colours.bold('DIFFERENT, AND NO FINDING MOVES BY IT'),
          ...quiet
            .slice(0, MOST_QUIET)
            .flatMap((change) => wrap(text(changeText(change)), { width: columns, first: '  ', next: '    ' })),
          ...(quiet.length > MOST_QUIET ? [`  and ${quiet.length - MOST_QUIET} more: --json lists them`] : []),
        ];
  return [
    ...wrap(text(`From ${nameOf(from)} to ${nameOf(to)}`), { width: columns }).map(colours.bold),
    text(
      `${counting(moved.length, 'finding')} ${moved.length === 1 ? 'moves' : 'move'}, ${same} ${same === 1 ? 'stays' : 'stay'} as ${same === 1 ? 'it is' : 'they are'}.`,
    ),
    ...parts,
    ...quietLines,
  ];
};

export const compare = (
  a: string,
  b: string,
  { json = false }: { readonly json?: boolean },
  terminal: Terminal,
): ExitCode => {
  const books: OpenBook[] = [];
  let unreadable = false;
  for (const typed of [a, b]) {
    try {
      // The same house for both, so that equal numbers are worked out once.
      books.push(openBook(typed, terminal, books[0]?.house));
    } catch (error) {
      if (!(error instanceof Unreadable)) throw error;
      complainOf(error, terminal);
      unreadable = true;
    }
  }
  const [from, to] = books;
  if (unreadable || !from || !to) return UNREADABLE;
  const { schema } = from.house;
  const comparison = compareMachines(from.machine, to.machine, (path) => schema.keyInfo(path)?.means ?? path);
  if (json) {
    const side = ({ machine }: OpenBook) => ({ ...bookWords(machine), stamp: machine.stamp });
    terminal.print(
      JSON.stringify({ gantrybook: '1', version, before: side(from), after: side(to), ...comparison }, undefined, 2),
    );
  } else terminal.print(...lines(comparison, from, to, terminal));
  return GOOD;
};
