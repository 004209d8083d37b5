/** The summary of a check: one screen of 80 columns and 40 rows. The verdict strip, what fails, what to measure, what is open and tight. */
import { counted, tally } from '../app/tally.ts';
import type { House, Machine } from '../app/index.ts';
import { markText, useScaleText, useText, verdictSign, type Used } from '../figures/index.ts';
import { percentText, type Finding, type Place, type Question, type Remedy, type Verdict } from '../kernel/index.ts';
import { bookWords } from '../pack/report.ts';
import type { Terminal } from './terminal.ts';
import { counting, cut, few, padded, wrap } from './text.ts';

/** Rows of the summary: a screen less the line on which the next command is typed. */
export const ROWS = 39;
const QUESTIONS = 3;
const SCALE = 20;
const KEY = 26;
const PERCENT = 16;
/** Failing findings that are to be seen without asking for more. */
const FEW = 3;

export interface SummaryInput {
  readonly machine: Machine;
  readonly house: Pick<House, 'disciplines'>;
  /** With their remedies where these were looked for. */
  readonly findings: readonly Finding[];
  /** None where nobody looked. */
  readonly questions: readonly Question[];
  /** The book as it was typed, for commands that are proposed. */
  readonly typed: string;
}

type Paint = (text: string) => string;

export const paintOf = ({ colours }: Terminal, verdict: Verdict): Paint =>
  ({
    fails: (text: string) => colours.bold(colours.red(text)),
    open: colours.magenta,
    tight: colours.yellow,
    holds: colours.green,
    'not-stated': colours.dim,
  })[verdict];

export const usedBy = ({ use, verdict, sense }: Finding): Used | undefined =>
  use && sense !== 'yes-no' ? { ...use, verdict } : undefined;

export const placeText = (place: Place | undefined): string => (place ? `${place.file}:${place.line}` : '');

/** The command that shows more of the same book. */
export const command = (terminal: Terminal, typed: string, rest: string): string => {
  const book = typed === '' ? '' : ` ${/[^\w./\\:-]/.test(typed) ? `"${typed}"` : typed}`;
  return terminal.text(`gantrybook check${book} ${rest}`);
};

/** Worst first; among equals the one that uses most. */
export const worstFirstOf = (findings: readonly Finding[]): readonly Finding[] => {
  const weight = ({ use }: Finding): number =>
    use === undefined || Number.isNaN(use.worst) ? 0 : Math.min(use.worst, 1e9);
  return findings.toSorted(
    (a, b) => Number(a.accepted?.counts ?? false) - Number(b.accepted?.counts ?? false) || weight(b) - weight(a),
  );
};

/** Findings whose cure the summary has room for. */
const CURED = 8;

/** Keys of the failing findings that the summary shows first. */
export const foremost = (findings: readonly Finding[]): ReadonlySet<string> =>
  new Set(
    worstFirstOf(findings.filter(({ verdict }) => verdict === 'fails'))
      .slice(0, CURED)
      .map(({ key }) => key),
  );

const toldOf = ({ says, edits }: Remedy): string => {
  const change = edits.map(({ path, before, after }) => `${path} ${before ?? 'not stated'} → ${after ?? 'taken out'}`);
  return `cure: ${says.includes('→') ? says : `${says} (${change.join(', ')})`}`;
};

/** What follows from a remedy, naming at most so many other findings. */
const afterwards = ({ verdict, alsoCures, breaks }: Remedy, most: number): string =>
  [
    '',
    ...(verdict === 'holds' ? [] : [`then ${verdict}`]),
    ...(alsoCures.length > 0 ? [`also cures ${most > 0 ? few(alsoCures, most) : alsoCures.length}`] : []),
    breaks.length === 0
      ? 'no other verdict gets worse'
      : `breaks ${
          most > 0
            ? few(
                breaks.map(({ key }) => key),
                most,
              )
            : breaks.length
        }`,
  ].join('; ');

/** What a remedy does, and what else it does. */
export const cureText = (remedy: Remedy): string => toldOf(remedy) + afterwards(remedy, 2);

/** The same in one line; what it does besides is never what is left out. */
const cureLine = (remedy: Remedy, { text, columns, more }: Terminal): string => {
  const rest = text(afterwards(remedy, 0));
  return `  ${cut(text(toldOf(remedy)), columns - 2 - rest.length, more)}${rest}`;
};

/** The percentage in few letters. */
const percentOf = (finding: Finding, terminal: Terminal): string => {
  const used = usedBy(finding);
  const whole = used ? terminal.text(useText(used)) : '';
  return used && whole.length > PERCENT ? terminal.text(percentText(used.worst)) : whole;
};

/** Key and place to the left, use scale and percentage to the right. */
export const headLine = (finding: Finding, terminal: Terminal): string => {
  const { colours, columns, text, unicode } = terminal;
  const used = usedBy(finding);
  const right = used ? `${useScaleText(used, SCALE, !unicode)} ${percentOf(finding, terminal).padStart(PERCENT)}` : '';
  const room = columns - 2 - (used ? SCALE + PERCENT + 3 : 0);
  const key = cut(text(finding.key), room, terminal.more);
  const place = text(placeText(finding.place));
  const beside = place !== '' && key.length + place.length + 2 <= room ? `  ${place}` : '';
  const paint = paintOf(terminal, finding.verdict);
  const gap = ' '.repeat(Math.max(0, room - padded(key + beside, 0).length));
  return `${paint(verdictSign(finding.verdict, !unicode))} ${colours.bold(key)}${colours.dim(beside)}${used ? `${gap}  ${paint(right)}` : ''}`;
};

const acceptedText = ({ accepted }: Finding): string | undefined =>
  accepted === undefined
    ? undefined
    : accepted.counts
      ? `accepted: ${accepted.because}`
      : `accepted, and it does not count: ${accepted.note ?? accepted.because}`;

/** The most lines of a sentence and of a cure: in full, short, and when very many fail. */
const details = [
  { sentence: 3, cure: 2 },
  { sentence: 1, cure: 1 },
  { sentence: 1, cure: 0 },
] as const;

const block = (finding: Finding, { sentence, cure }: (typeof details)[number], terminal: Terminal): string[] => {
  const { text, columns, more } = terminal;
  const [remedy] = finding.remedies ?? [];
  const accepted = acceptedText(finding);
  const indent = { width: columns, first: '  ', next: '  ', more };
  const wantsRemedy = cure > 0 && remedy && !finding.accepted?.counts;
  return [
    headLine(finding, terminal),
    ...wrap(text(finding.sentence), { ...indent, most: sentence }),
    ...(accepted ? wrap(text(accepted), { ...indent, most: sentence === 1 ? 1 : 2 }) : []),
    ...(wantsRemedy
      ? cure === 1
        ? [cureLine(remedy, terminal)]
        : wrap(text(cureText(remedy)), { ...indent, next: '    ', most: cure })
      : []),
  ];
};

/** Findings that take one line each: mark, key, percentage, and as much of the sentence as there is room for. */
const oneLiners = (findings: readonly Finding[], terminal: Terminal): ((finding: Finding) => string[]) => {
  const { text, columns, unicode, colours, more } = terminal;
  const widest = (texts: readonly string[]): number => Math.max(...texts.map((one) => padded(one, 0).length), 0);
  const keys = Math.min(widest(findings.map(({ key }) => text(key))), KEY);
  const percents = widest(findings.map((finding) => percentOf(finding, terminal)));
  return (finding) => {
    const { reason, verdict, sentence } = finding;
    const says = verdict === 'open' && reason && reason.kind !== 'doubt' ? reason.text : sentence;
    const sign = paintOf(terminal, verdict)(verdictSign(verdict, !unicode));
    const key = padded(cut(text(finding.key), keys, more), keys);
    const percent = colours.dim(percentOf(finding, terminal).padStart(percents));
    return [`${sign} ${key}  ${percent}  ${cut(text(says), columns - keys - percents - 6, more)}`];
  };
};

export const questionLines = (question: Question, number: number, most: number, terminal: Terminal): string[] => {
  const { text, columns, colours, more } = terminal;
  const { path, stands, measure, settles, narrows, place } = question;
  const where = text(placeText(place));
  const head = cut(text(`${number} ${path}: ${stands}`), columns - where.length - 2, more);
  const how = measure
    ? `with ${measure.instrument}, ${Math.round(measure.minutes)} min, error ${measure.error}: ${measure.procedure}`
    : 'no measurement is described; any that narrows it will do';
  const [first, ...others] = settles.toSorted((a, b) => b.share - a.share);
  const rest = others.length > 0 ? ` and ${others.length} more` : '';
  return [
    `${colours.bold(padded(head, columns - where.length))}${colours.dim(where)}`,
    ...wrap(text(how), { width: columns, first: '  ', most, more }),
    ...(first
      ? [cut(text(`  settles ${first.key} in ${Math.round(first.share * 100)} % of that range${rest}`), columns, more)]
      : narrows
          .slice(0, 1)
          .map(({ key, from, to }) =>
            cut(
              text(`  narrows ${key} from ${percentText(from)} of limit to ${percentText(to)} at best`),
              columns,
              more,
            ),
          )),
  ];
};

/** The verdicts of each trade, with the word beside each mark. */
export const strip = ({ findings, house }: Pick<SummaryInput, 'findings' | 'house'>, terminal: Terminal): string[] => {
  const width = Math.max(...house.disciplines.map(({ title }) => title.length)) + 2;
  return house.disciplines.map(({ name, title }) => {
    const own = tally(findings.filter(({ sheet }) => sheet === name));
    const parts = counted(own).map(([verdict, count]) => {
      const [sign = '', word = ''] = markText(verdict, !terminal.unicode).split(/ (.*)/);
      return paintOf(terminal, verdict)(`${sign} ${count} ${word}`);
    });
    return (
      padded(terminal.text(title), width) +
      (parts.length > 0 ? parts.join('  ') : terminal.colours.dim('nothing asked yet'))
    );
  });
};

/** Whole blocks as long as they fit; then how many are left out, and where they are to be seen. */
const fitting = (
  blocks: readonly { readonly lines: readonly string[]; readonly sheet: string }[],
  room: number,
  moreIn: (left: number, sheet: string) => string,
): string[] => {
  const total = blocks.reduce((sum, { lines }) => sum + lines.length, 0);
  if (total <= room) return blocks.flatMap(({ lines }) => lines);
  const shown: string[] = [];
  for (const [i, { lines, sheet }] of blocks.entries()) {
    // One line is kept for saying what is left out.
    if (shown.length + lines.length > room - 1) return [...shown, moreIn(blocks.length - i, sheet)];
    shown.push(...lines);
  }
  return shown;
};

export const header = ({ machine }: Pick<SummaryInput, 'machine'>, terminal: Terminal): string => {
  const { title, revision } = bookWords(machine);
  const stamp = `stamp ${machine.stamp.content.slice(0, 12)}`;
  const left = cut(terminal.text(`${title}, revision ${revision}`), terminal.columns - stamp.length - 2, terminal.more);
  return `${terminal.colours.bold(padded(left, terminal.columns - stamp.length))}${terminal.colours.dim(stamp)}`;
};

const verdictSentence = (findings: readonly Finding[]): string => {
  const { counts, against, unsettled, accepted } = tally(findings);
  const all = counting(findings.length, 'finding');
  const couldFail = findings.filter(({ verdict, use }) => verdict === 'open' && !(use && use.worst <= 1)).length;
  const stands =
    against.length > 0
      ? `${against.length} of ${all} ${against.length === 1 ? 'counts' : 'count'} against this book`
      : findings.length === 0
        ? 'Nothing was asked: the book does not state enough yet'
        : couldFail > 0
          ? `Of ${all} none fails for sure, and ${couldFail} could, at worst`
          : `None of ${all} fails`;
  const beside = [
    ...(unsettled.length > 0 ? [`${unsettled.length} not settled`] : []),
    ...(accepted.length > 0 ? [`${accepted.length} accepted`] : []),
  ];
  return `${stands}${beside.length > 0 ? ` (${beside.join(', ')})` : ''}${counts.fails === 0 && against.length === 0 ? '. A holds here is arithmetic, not permission.' : '.'}`;
};

/** Facts that most findings wait for. */
const awaited = (findings: readonly Finding[], most: number, terminal: Terminal): string[] => {
  const waiting = new Map<string, number>();
  for (const path of findings.flatMap(({ missing }) => missing ?? [])) waiting.set(path, (waiting.get(path) ?? 0) + 1);
  return [...waiting]
    .toSorted(([, a], [, b]) => b - a)
    .slice(0, most)
    .map(([path, times]) => `${path}: ${counting(times, 'finding')} ${times === 1 ? 'waits' : 'wait'} for it`)
    .map((line) =>
      cut(terminal.text(`${verdictSign('not-stated', !terminal.unicode)} ${line}`), terminal.columns, terminal.more),
    );
};

/** The lines of the summary, at most `ROWS` of them. */
export const summary = (input: SummaryInput, terminal: Terminal): string[] => {
  const { findings, questions, typed } = input;
  const { colours, text } = terminal;
  const heading = (words: string): string => colours.bold(words);
  const moreIn = (left: number, sheet: string): string => {
    const says = `  and ${left} more: `;
    const whole = command(terminal, typed, `--sheet ${sheet}`);
    return colours.dim(says + (says.length + whole.length <= terminal.columns ? whole : `--sheet ${sheet}`));
  };
  const having = (verdict: Verdict): readonly Finding[] =>
    worstFirstOf(findings.filter((finding) => finding.verdict === verdict));

  const top = [header(input, terminal), '', ...strip(input, terminal)];
  const sheet = findings[0]?.sheet ?? input.house.disciplines[0]?.name ?? '';
  const foot = [
    '',
    ...wrap(text(verdictSentence(findings)), { width: terminal.columns, more: terminal.more }),
    ...wrap(`In full: ${command(terminal, typed, `--sheet ${sheet}`)}`, {
      width: terminal.columns,
      next: '  ',
    }).map(colours.dim),
  ];
  const failed = having('fails');
  const how = failed.length > 0 ? 1 : 2;
  const asked = questions.slice(0, QUESTIONS).flatMap((question, i) => questionLines(question, i + 1, how, terminal));
  const measure = asked.length > 0 ? ['', heading('TO MEASURE FIRST'), ...asked] : [];
  const [open, tight] = [having('open'), having('tight')];
  // Of what is open and tight, a heading, one finding and what is left out are kept, whatever fails.
  const least = ({ length }: readonly Finding[]): number => (length === 0 ? 0 : length === 1 ? 3 : 4);
  let room = ROWS - top.length - foot.length - measure.length;

  const section = (
    words: string,
    of: readonly Finding[],
    most: number,
    lines: (finding: Finding) => string[],
  ): string[] => {
    if (of.length === 0 || most < 3) return [];
    const blocks = of.map((finding) => ({ lines: lines(finding), sheet: finding.sheet }));
    return ['', heading(`${words} (${of.length})`), ...fitting(blocks, most - 2, moreIn)];
  };
  const oneLiner = oneLiners([...open, ...tight], terminal);
  const most = room - least(open) - least(tight);
  // In as much detail as leaves room for the first few.
  const detail = details.find((one) => {
    const rows = failed.slice(0, FEW).flatMap((finding) => block(finding, one, terminal));
    return rows.length + 3 <= most;
  });
  const failing = section('FAILS', failed, most, (finding) => block(finding, detail ?? details[2], terminal));
  room -= failing.length;
  const opened = section('OPEN', open, room - least(tight), oneLiner);
  room -= opened.length;
  const tightened = section('TIGHT', tight, room, oneLiner);
  room -= tightened.length;
  const silent = having('not-stated');
  const next = awaited(silent, Math.max(0, Math.min(QUESTIONS, room - 2)), terminal);
  const unsaid = next.length > 0 ? ['', heading(`NOT STATED (${silent.length})`), ...next] : [];
  return [...top, ...failing, ...measure, ...opened, ...tightened, ...unsaid, ...foot];
};
