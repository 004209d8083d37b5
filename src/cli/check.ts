/** `gantrybook check`: the verdicts of a book. */
import { houseOn } from '../app/index.ts';
import { nearest } from '../kernel/nearest.ts';
import type { House, Machine } from '../app/index.ts';
import { tally } from '../app/tally.ts';
import { version } from '../app/version.ts';
import type { Discipline } from '../contract/index.ts';
import type { Finding } from '../kernel/index.ts';
import { completed, reportOf, reportText } from '../pack/report.ts';
import { Refused } from '../pack/refused.ts';
import { complainOf, openBook, Unreadable, todayIn } from './books.ts';
import { FAILS, GOOD, UNREADABLE, type ExitCode } from './exit.ts';
import { progressOn } from './progress.ts';
import { foremost, summary } from './summary.ts';
import type { Terminal } from './terminal.ts';

export interface CheckOptions {
  readonly json?: boolean;
  readonly sarif?: string;
  readonly sheet?: string;
  readonly strict?: boolean;
  readonly quick?: boolean;
}

/** @throws Refused naming the nearest sheet when there is none of that name */
export const sheetNamed = (name: string, house: Pick<House, 'disciplines'>): Discipline => {
  const found = house.disciplines.find((one) => one.name === name.toLowerCase() || String(one.number) === name);
  if (found) return found;
  const names = house.disciplines.map((one) => one.name);
  const near = nearest(name, names);
  throw new Refused(`There is no sheet ${name}.${near ? ` Did you mean ${near}?` : ''} Sheets: ${names.join(', ')}.`);
};

export const exitCodeOf = (findings: readonly Finding[], strict = false): ExitCode => {
  const { against, unsettled } = tally(findings);
  return against.length > 0 || (strict && unsettled.length > 0) ? FAILS : GOOD;
};

/** Findings with questions and with cures where these will be read. */
export const worked = (
  machine: Machine,
  curing: (finding: Finding) => boolean,
  terminal: Terminal,
): readonly Finding[] => {
  const progress = progressOn(terminal.around.err);
  try {
    return completed(machine, { step: progress.step, curing });
  } finally {
    progress.done();
  }
};

/** The findings that the summary shows with their cures. */
export const inSummary = (machine: Machine): ((finding: Finding) => boolean) => {
  const keys = foremost(machine.findings);
  return ({ key }) => keys.has(key);
};

export const check = async (
  typed: string | undefined,
  options: CheckOptions,
  terminal: Terminal,
): Promise<ExitCode> => {
  const { json = false, sarif, sheet, strict = false, quick = false } = options;
  if (json && sheet !== undefined)
    throw new Refused('--json holds every sheet, and --sheet is for reading one: use one of them.');
  let open;
  try {
    open = openBook(typed, terminal, houseOn({ today: todayIn(terminal.around.env), trusting: quick }));
  } catch (error) {
    if (!(error instanceof Unreadable)) throw error;
    if (json) terminal.print(JSON.stringify({ gantrybook: '1', version, problems: error.problems }, undefined, 2));
    complainOf(error, terminal);
    return UNREADABLE;
  }
  const { place, house, machine } = open;
  const discipline = sheet === undefined ? undefined : sheetNamed(sheet, house);
  const curing = discipline
    ? (finding: Finding) => finding.sheet === discipline.name
    : json || sarif !== undefined
      ? () => true
      : inSummary(machine);
  const findings = quick ? machine.findings : worked(machine, curing, terminal);
  if (sarif !== undefined) {
    const [{ sarifOf }, { writeWhole }] = await Promise.all([import('./sarif.ts'), import('../pack/write.ts')]);
    writeWhole(
      sarif,
      `${JSON.stringify(sarifOf({ place, house, findings, version, from: process.cwd() }), undefined, 2)}\n`,
    );
  }
  const input = { machine, house, findings, questions: quick ? [] : machine.questions(), typed: place.typed };
  if (json) terminal.print(reportText(reportOf(machine, house, { version, quick })).trimEnd());
  else if (discipline) {
    const { sheetView } = await import('./sheet-view.ts');
    terminal.print(...sheetView(input, discipline, terminal));
  } else terminal.print(...summary(input, terminal));
  return exitCodeOf(findings, strict);
};
