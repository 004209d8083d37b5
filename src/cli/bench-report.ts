/** What readings came to: facts, contradictions, verdicts that settled, and what is still worth measuring. */
import { outcomeText, standsText } from '../app/bench.ts';
import type { House, Machine } from '../app/index.ts';
import { benchTargets, type BenchTarget } from '../engine/bench.ts';
import type { Benched } from '../engine/bench-outcome.ts';
import { markText } from '../figures/index.ts';
import { percentText, type Finding, type Question } from '../kernel/index.ts';
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
    ...all.flatMap((one) => said(outcomeText(one, '--replace'))),
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
