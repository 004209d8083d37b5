/** What another book changes, on one screen: the strip of both, what is cured and what is worse under its change, and how much else. */
import { changeText, type Change } from '../engine/compare-changes.ts';
import type { Comparison } from '../engine/compare.ts';
import type { Group, Line, Pair, Tour } from '../engine/compare-tour.ts';
import { displayWidth } from '../engine/read/frame.ts';
import { markText, worstFirst } from '../figures/index.ts';
import { percentText, type Finding } from '../kernel/index.ts';
import { bookWords } from '../pack/report.ts';
import type { OpenBook } from './books.ts';
import { paintOf, ROWS } from './summary.ts';
import type { Terminal } from './terminal.ts';
import { counting, cut, few, padded, wrap } from './text.ts';

export interface TourInput {
  readonly from: OpenBook;
  readonly to: OpenBook;
  readonly comparison: Comparison;
  readonly tour: Tour;
}

/** Trades in the strip; with more of them, those where nothing changes are left out. */
const TRADES = 8;
/** Findings that keep their verdict and are shown. */
const MOVED = 2;

/** Both books, each with the name that was typed and its stamp. */
export const headings = ({ from, to }: Pick<TourInput, 'from' | 'to'>, terminal: Terminal): string[] =>
  [from, to].map(({ machine, place }, i) => {
    const { title, revision } = bookWords(machine);
    const stamp = `stamp ${machine.stamp.content.slice(0, 12)}`;
    const words = terminal.text(`${i === 0 ? 'From' : 'To  '} ${title}, revision ${revision} (${place.typed || '.'})`);
    const room = terminal.columns - stamp.length;
    return `${terminal.colours.bold(padded(cut(words, room - 2, terminal.more), room))}${terminal.colours.dim(stamp)}`;
  });

/** Verdicts of each trade in both books, side by side. */
export const strips = ({ from, to }: Pick<TourInput, 'from' | 'to'>, terminal: Terminal): string[] => {
  const { colours, text, unicode } = terminal;
  const countIn = ({ machine }: OpenBook, sheet: string, verdict: Finding['verdict']): number =>
    machine.findings.filter((finding) => finding.sheet === sheet && finding.verdict === verdict).length;
  const trades = to.house.disciplines
    .map(({ name, title }) => ({
      title: text(title),
      counts: worstFirst.map((verdict) => [countIn(from, name, verdict), countIn(to, name, verdict)] as const),
    }))
    .filter(({ counts }) => counts.some(([was, is]) => was + is > 0));
  const changed = trades.filter(({ counts }) => counts.some(([was, is]) => was !== is));
  const shown = trades.length > TRADES ? changed.slice(0, TRADES) : trades;
  const cell = ([was, is]: readonly [number, number]): string => (was === is ? `${is}` : text(`${was} → ${is}`));
  const heads = worstFirst.map((verdict) => text(markText(verdict, !unicode)));
  const width = Math.max(...heads.map((head) => displayWidth(head))) + 1;
  const names = Math.max(...shown.map(({ title }) => displayWidth(title)), 0) + 2;
  const row = (title: string, cells: readonly string[]): string =>
    cut(
      `${padded(title, names)}${cells.map((one) => padded(one, width)).join('')}`.trimEnd(),
      terminal.columns,
      terminal.more,
    );
  const left = trades.length - shown.length;
  return [
    colours.dim(row('', heads)),
    ...shown.map(({ title, counts }) => row(title, counts.map(cell))),
    ...(left > 0 ? [colours.dim(`and ${counting(left, 'more trade')}`)] : []),
  ];
};

export const sideText = (finding: Finding | undefined, terminal: Terminal, withPercent: boolean): string => {
  if (!finding) return 'not asked';
  const { verdict, use, sense } = finding;
  const percent = withPercent && use && sense !== 'yes-no' ? ` ${percentText(use.worst)}` : '';
  return terminal.text(`${markText(verdict, !terminal.unicode)}${percent}`);
};

/** Width of the words on the left of an arrow: all of them in a section stand in one column. */
const leftWidth = (groups: readonly Group[], terminal: Terminal): number =>
  Math.max(
    ...groups.flatMap(({ lines }) =>
      lines.map(({ pairs: [{ before }] }) => displayWidth(sideText(before, terminal, false))),
    ),
  );

/** `╳ fails → ━ holds`, padded so that what follows stands in one column. */
const turnText = ({ before, after }: Pair, left: number, terminal: Terminal): string => {
  const paint = (finding: Finding | undefined, width: number): string => {
    const words = padded(sideText(finding, terminal, false), width);
    return finding ? paintOf(terminal, finding.verdict)(words) : terminal.colours.dim(words);
  };
  return `${paint(before, left)} ${terminal.text('→')} ${paint(after, 9)}`;
};

/** What is to be told: what was wrong where it is cured, else how it stands now. That it is at worst, the word open says. */
const sentenceOf = ({ kind, before, after }: Pair): string =>
  ((kind === 'cured' || kind === 'better' ? before : after) ?? before ?? after)?.sentence.replace(/^At worst: /, '') ??
  '';

/** Letters that a sentence needs to say anything. */
const SAYS = 24;

/** What it takes besides the change over it, in few letters: ` with D1–D4.rail`. */
const besideText = ({ cause }: Pair, { text, more }: Terminal): string => {
  const [, ...others] = cause?.by ?? [];
  const names = others.map(({ name }) => name.split('.').slice(-2).join('.'));
  const rest = names.length > 1 || (cause && cause.by.length > 0 && !cause.enough) ? more : '';
  return names.length > 0 ? text(` with ${names[0]}`) + rest : rest && ` in part`;
};

const findingLine = ({ pairs: [first, ...others] }: Line, left: number, terminal: Terminal): string => {
  const { columns, text, more, colours } = terminal;
  const count = others.length > 0 ? text(` ×${others.length + 1}`) : '';
  const beside = besideText(first, terminal);
  const whole = columns - 2 - left - text(' → ').length - 9 - 2 - displayWidth(count);
  // On a narrow terminal what it says comes before what else it took.
  const many = whole - displayWidth(beside) < SAYS ? count : beside + count;
  const room = Math.max(0, whole + displayWidth(count) - displayWidth(many));
  const says = cut(text(sentenceOf(first)), room, more);
  return `  ${turnText(first, left, terminal)}  ${many === '' ? says : padded(says, room) + colours.dim(many)}`;
};

const SEVERAL = 'several changes together, of which no three are enough';

/** The change over a group in words, whole. */
export const groupText = ({ change }: Group): string => (change ? changeText(change) : SEVERAL);

const wrapped = (words: string, { columns, text, colours }: Terminal): string[] =>
  wrap(text(words), { width: columns, next: '  ' }).map(colours.bold);

const changeLine = (group: Group, terminal: Terminal): string => {
  const { size } = group;
  const { columns, text, colours, more } = terminal;
  const count = size > 1 ? `  ${counting(size, 'finding')}` : '';
  return `${colours.bold(cut(text(groupText(group)), columns - count.length, more))}${colours.dim(count)}`;
};

/** Lines for what is left out of a section. */
const LEFT_OUT = 3;

const leftOut = (groups: readonly Group[], most: number, { columns, text, more, colours }: Terminal): string[] => {
  if (groups.length === 0) return [];
  const size = groups.reduce((sum, group) => sum + group.size, 0);
  const changes = groups.map((group) => (group.change ? changeText(group.change) : 'several changes together'));
  return wrap(text(`and ${size} more by ${few(changes, changes.length)}`), {
    width: columns,
    next: '  ',
    most,
    more,
  }).map(colours.dim);
};

/** Groups as far as they go: a line for the change and for the first finding each, then more findings; then what is left out. */
const briefly = (groups: readonly Group[], room: number, terminal: Terminal): string[] => {
  const fits = groups.length * 2 <= room;
  const shown = fits ? groups : groups.slice(0, Math.max(1, Math.floor((room - 2) / 2)));
  const rest = leftOut(groups.slice(shown.length), Math.max(1, Math.min(LEFT_OUT, room - shown.length * 2)), terminal);
  const counts = shown.map(() => 1);
  let spare = room - shown.length * 2 - rest.length;
  for (let gave = true; gave && spare > 0;) {
    gave = false;
    for (const [i, { lines }] of shown.entries()) {
      if (spare <= 0 || counts[i]! >= lines.length) continue;
      counts[i]! += 1;
      spare -= 1;
      gave = true;
    }
  }
  const left = leftWidth(shown, terminal);
  return [
    ...shown.flatMap((group, i) => [
      changeLine(group, terminal),
      ...group.lines.slice(0, counts[i]).map((line) => findingLine(line, left, terminal)),
    ]),
    ...rest,
  ];
};

const withText = (others: readonly Change[], enough: boolean): readonly string[] => {
  const beside = others.map((change) => `with ${changeText(change)}`);
  return enough ? beside : [...beside, 'and with still more'];
};

/** One finding by name with both percentages, how it stands now, and what it took besides the change over it. */
export const pairLines = (pair: Pair, terminal: Terminal): string[] => {
  const { columns, text, colours } = terminal;
  const { key, before, after, cause } = pair;
  const painted = (finding: Finding | undefined): string => {
    const words = sideText(finding, terminal, true);
    return finding ? paintOf(terminal, finding.verdict)(words) : words;
  };
  const beside = cause && cause.by.length > 0 ? withText(cause.by.slice(1), cause.enough) : [];
  return [
    `  ${colours.bold(text(key))}  ${painted(before)} ${text('→')} ${painted(after)}`,
    ...wrap(text((after ?? before)?.sentence ?? ''), { width: columns, first: '    ' }),
    ...beside.flatMap((words) => wrap(text(words), { width: columns, first: '    ', next: '      ' }).map(colours.dim)),
  ];
};

const fully = (group: Group, terminal: Terminal): string[] => [
  ...wrapped(groupText(group), terminal),
  ...group.lines.flatMap(({ pairs }) => pairs.flatMap((pair) => pairLines(pair, terminal))),
];

const movedLine = ({ pairs: [{ before, after }, ...others] }: Line, terminal: Terminal): string => {
  const { columns, text, more } = terminal;
  if (!before || !after) return '';
  const [was, is] = [before, after].map(({ use }) => percentText(use?.worst ?? NaN)) as [string, string];
  const sign = paintOf(terminal, after.verdict)(padded(sideText(after, terminal, false), 12));
  const turn = padded(text(`${was} → ${is}`), 22);
  const many = others.length > 0 ? text(` ×${others.length + 1}`) : '';
  const room = columns - 2 - 12 - 22 - many.length;
  return `  ${sign}${turn}${padded(cut(text(after.sentence.replace(/^At worst: /, '')), room, more), room)}${many}`.trimEnd();
};

const percentsOf = ({ before, after }: Pair): string =>
  [before, after].map((finding) => percentText(finding?.use?.worst ?? NaN)).join(' → ');

/** In one paragraph what the screen has no room for. */
const restText = ({ comparison, tour }: TourInput, withMoved: boolean): string => {
  const of = (kind: Pair['kind']): number => tour.pairs.filter((pair) => pair.kind === kind).length;
  const { same, quiet } = comparison;
  const [most] = tour.moved;
  const moved = most
    ? `${of('moved') === 1 ? 'keeps its verdict and moves' : 'keep their verdict and move, most'} ${most.pairs[0].key} (${percentsOf(most.pairs[0])})`
    : '';
  const parts: readonly (readonly [number, string])[] = [
    [withMoved ? of('moved') : 0, moved],
    [of('better'), 'otherwise better'],
    [of('only-after'), 'asked of the second book only'],
    [of('only-before'), 'of the first only'],
    [of('now-stated'), 'now stated'],
    [of('no-longer-stated'), 'no longer stated'],
    [same, `as before`],
  ];
  const said = parts.filter(([count]) => count > 0).map(([count, words]) => `${count} ${words}`);
  const [is, does] = quiet.length === 1 ? ['differs', 'moves'] : ['differ', 'move'];
  const facts = quiet.length > 0 ? ` ${counting(quiet.length, 'fact')} ${is} and ${does} nothing.` : '';
  return said.length > 0 ? `Besides: ${said.join('; ')}.${facts}` : facts.trim();
};

/** The lines of the screen, at most `ROWS` of them. */
export const tourScreen = (input: TourInput, terminal: Terminal): string[] => {
  const { tour, comparison } = input;
  const { colours, text, columns, more } = terminal;
  const top = [...headings(input, terminal), '', ...strips(input, terminal)];
  if (comparison.moved.length === 0) {
    const { same, quiet } = comparison;
    const facts = `${counting(quiet.length, 'fact')} ${quiet.length === 1 ? 'differs' : 'differ'}: --all lists them.`;
    const words = `Nothing moves: ${counting(same, 'finding')} as before.${quiet.length > 0 ? ` ${facts}` : ''}`;
    return [...top, '', ...wrap(text(words), { width: columns })];
  }
  const sections = [
    { words: 'CURED', groups: tour.cured },
    { words: 'BROKEN OR WORSE', groups: tour.worse },
  ].filter(({ groups }) => groups.length > 0);
  const footFor = (withMoved: boolean): string[] => [
    '',
    ...wrap(text(restText(input, withMoved)), { width: columns, most: 4, more }),
    colours.dim(cut('Each with its facts: --all  One trade: --sheet NAME  A sheet: --into FOLDER', columns, more)),
  ];
  const count = tour.moved.reduce((sum, { pairs }) => sum + pairs.length, 0);
  const stays =
    count === 0
      ? []
      : [
          '',
          colours.bold(`THE VERDICT STAYS, THE PERCENTAGE MOVES (${count})`),
          ...tour.moved.slice(0, MOVED).map((line) => movedLine(line, terminal)),
        ];
  const fullLines = sections.map(({ groups }) => groups.flatMap((group) => fully(group, terminal)));
  const briefNeeds = sections.map(({ groups }) => groups.reduce((sum, { lines }) => sum + 1 + lines.length, 0));
  const sum = (numbers: readonly number[]): number => numbers.reduce((all, one) => all + one, 0);
  const roomWith = (more: readonly string[], foot: readonly string[]): number =>
    ROWS - top.length - more.length - foot.length - sections.length * 2;
  // Where everything else has room, what keeps its verdict has a section; else a sentence.
  const isStaying = sum(briefNeeds) <= roomWith(stays, footFor(false));
  const [middle, foot] = isStaying ? [stays, footFor(false)] : [[], footFor(true)];
  let room = roomWith(middle, foot);
  const isFull = sum(fullLines.map((lines) => lines.length)) <= room;
  const told = sections.flatMap(({ words, groups }, i) => {
    // What the other section needs is kept for it, up to half of the room.
    const other = i === 0 ? Math.min(briefNeeds[1] ?? 0, Math.floor(room / 2)) : 0;
    const lines = isFull ? fullLines[i]! : briefly(groups, Math.min(briefNeeds[i]!, room - other), terminal);
    room -= lines.length;
    return ['', colours.bold(`${words} (${sum(groups.map(({ size }) => size))})`), ...lines];
  });
  return [...top, ...told, ...middle, ...foot];
};
