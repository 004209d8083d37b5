/** What readings came to: facts, contradictions, verdicts that settled, and what is still worth measuring. */
import type { House, Machine } from '../app/index.ts';
import { benchTargets, type BenchTarget, type Ends } from '../engine/bench.ts';
import { writtenRange, type Benched } from '../engine/bench-outcome.ts';
import { markText } from '../figures/index.ts';
import { percentText, type Finding, type Question } from '../kernel/index.ts';
import { standsText } from './bench-form.ts';
import type { BookPlace } from './books.ts';
import { paintOf, questionLines } from './summary.ts';
import type { Terminal } from './terminal.ts';
import { counting, wrap } from './text.ts';

const QUESTIONS = 3;

/** Where a question can be answered. */
const benchFor = ({ path }: Question, targets: readonly BenchTarget[], terminal: Terminal): string[] => {
  const target = targets.find((one) => one.path === path);
  return target
    ? [terminal.colours.dim(terminal.text(`   gantrybook bench ${target.name} --test ${target.test.name}`))]
    : [];
};

const asked = (machine: Machine, targets: readonly BenchTarget[], terminal: Terminal): string[] => {
  const questions = machine.questions().slice(0, QUESTIONS);
  return questions.length === 0
    ? ['Nothing more is worth measuring: no verdict waits for a doubtful fact.']
    : questions.flatMap((question, i) => [
        ...questionLines(question, i + 1, 2, terminal),
        ...benchFor(question, targets, terminal),
      ]);
};

/** Everything that can be measured, and what first. */
export const benchList = (targets: readonly BenchTarget[], machine: Machine, terminal: Terminal): string[] => {
  const { colours, text, columns } = terminal;
  if (targets.length === 0)
    return ['Nothing can be measured yet: the book has no motors, axes, supplies or hanging loads.'];
  const names = [...new Set(targets.map(({ name }) => name))];
  return [
    colours.bold('WHAT CAN BE MEASURED'),
    ...names.flatMap((name) => {
      const own = targets.filter((target) => target.name === name);
      return [
        text(name),
        ...own.flatMap((target) =>
          wrap(text(`${target.test.name}: ${standsText(target)}`), { width: columns, first: '  ', next: '    ' }),
        ),
      ];
    }),
    '',
    colours.bold('WORTH MEASURING FIRST'),
    ...asked(machine, targets, terminal),
    '',
    colours.dim(text(`A form, and room for readings: gantrybook bench ${names[0]}`)),
  ];
};

const outcomeLines = ({ target, outcome }: Benched, unit: (ends: Ends) => string): readonly string[] => {
  const { path, test, name, stands, stated } = target;
  if (outcome.kind === 'narrowed') {
    const before = stated && stands ? stands.text : 'not stated';
    const table = !stated && stands ? ` (a table had ${stands.text})` : '';
    const taken = outcome.takenIn.length > 0 ? ' Earlier readings that the book kept are taken in.' : '';
    return [`${path}: ${before} → ${outcome.text}, measured${table}.${taken}`];
  }
  if (outcome.kind === 'same')
    return [
      `${path}: the readings leave ${unit(outcome.ends)}, and the book says ${stands!.text} already. Nothing changes; a finer instrument might narrow it.`,
    ];
  if (outcome.kind === 'impossible')
    return [
      `${path}: the readings leave ${unit(outcome.ends)}, which cannot be for the ${test.title}. Look at leads, signs and units, and measure again; nothing was written.`,
    ];
  const kept =
    outcome.kept.length > 0
      ? ' The fact stays as it is; the book keeps the readings under bench.'
      : ' The book has these readings already.';
  if (outcome.with === 'each other')
    return [
      `CONTRADICTION about ${test.name} of ${name}: the readings leave ${outcome.ends.map(unit).join('; ')}, which no one value fits within the error of the instrument. Something moved, warmed or slipped: measure again.${kept}`,
    ];
  const [first] = outcome.ends;
  const against =
    outcome.with === 'the book' ? `the book says ${stands!.text}` : 'earlier readings in the book say otherwise';
  return [
    `CONTRADICTION about ${test.name} of ${name}: the readings leave ${unit(first!)}, and ${against}. One of the two is wrong: measure again, or correct ${path}; --replace takes these readings and drops the rest.${kept}`,
  ];
};

const sideText = (finding: Finding | undefined, terminal: Terminal): string => {
  if (!finding) return 'not asked';
  const percent = finding.use ? ` ${percentText(finding.use.worst)}` : '';
  return paintOf(terminal, finding.verdict)(terminal.text(`${markText(finding.verdict, !terminal.unicode)}${percent}`));
};

/** Findings whose verdict is another. */
const moved = (before: Machine, after: Machine) => {
  const old = new Map(before.findings.map((finding) => [finding.key, finding]));
  const now = new Map(after.findings.map((finding) => [finding.key, finding]));
  return [...new Set([...old.keys(), ...now.keys()])]
    .map((key) => ({ key, from: old.get(key), to: now.get(key) }))
    .filter(({ from, to }) => from?.verdict !== to?.verdict);
};

const isUnsettled = ({ verdict }: Finding): boolean => verdict === 'open' || verdict === 'not-stated';

export interface ReportInput {
  readonly all: readonly Benched[];
  readonly before: Machine;
  readonly after: Machine;
  /** Names of the files that were written. */
  readonly written: readonly string[];
  readonly house: Pick<House, 'disciplines'>;
  readonly place: BookPlace;
}

export const benchReport = (
  { all, before, after, written, house, place }: ReportInput,
  terminal: Terminal,
): string[] => {
  const { colours, text, columns } = terminal;
  const said = (words: string): string[] => wrap(text(words), { width: columns, first: '  ', next: '    ' });
  if (all.length === 0) return ['No readings: nothing was changed.'];
  const changes = moved(before, after);
  const settled = changes.filter(({ from, to }) => from && to && isUnsettled(from) && !isUnsettled(to));
  const others = changes.filter((change) => !settled.includes(change));
  const moves = (list: typeof changes): string[] =>
    list.map(
      ({ key, from, to }) => `  ${text(key)}  ${sideText(from, terminal)} ${text('→')} ${sideText(to, terminal)}`,
    );
  const open = after.findings.filter(({ verdict }) => verdict === 'open').length;
  return [
    colours.bold(written.length > 0 ? text(`WRITTEN INTO ${written.join(', ')}`) : 'NOTHING WRITTEN'),
    ...all.flatMap(({ target, outcome }) => {
      const unit = target.stated && target.stands ? target.stands.unit : undefined;
      return outcomeLines({ target, outcome }, (ends) =>
        writtenRange(ends, target.test.of, unit, target.stands?.text),
      ).flatMap(said);
    }),
    '',
    colours.bold(`SETTLED (${settled.length})`),
    ...(settled.length > 0 ? moves(settled) : ['  No verdict settled by it.']),
    ...(others.length > 0 ? ['', colours.bold(`ALSO DIFFERENT (${others.length})`), ...moves(others)] : []),
    '',
    colours.bold(`STILL WORTH MEASURING (${counting(open, 'finding')} open)`),
    ...asked(after, benchTargets(house.disciplines, after.snapshot), terminal),
    ...(place.typed === '' ? [] : ['', colours.dim(text(`The rest: gantrybook check ${place.typed}`))]),
  ];
};
