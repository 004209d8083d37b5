/** Everything that is known of a machine, as plain data: `check --json`, and `findings.json` of a pack. docs/json.md describes it. */
import { tally, type Tally } from '../app/tally.ts';
import type { House, Machine } from '../app/index.ts';
import type { Finding, Question } from '../kernel/index.ts';
import type { ListedFact } from '../engine/listing.ts';

export interface ReportOptions {
  readonly version: string;
  /** Leaves out what takes longer: questions and remedies. */
  readonly quick?: boolean;
  /** Told what is worked on, before each longer piece of work. */
  readonly step?: (what: string) => void;
}

export interface Report {
  /** Version of this form; a change that takes something away makes it 2. */
  readonly gantrybook: '1';
  readonly version: string;
  readonly book: {
    readonly title: string;
    readonly revision: string;
    readonly main: string;
    readonly files: readonly string[];
  };
  readonly stamp: { readonly revision: string; readonly content: string };
  readonly tally: Tally;
  readonly sheets: readonly {
    readonly name: string;
    readonly number: number;
    readonly title: string;
    readonly asks: string;
  }[];
  readonly findings: readonly Finding[];
  readonly questions: readonly Question[];
  readonly facts: readonly ListedFact[];
}

/** What is open wants a measurement, not a cure. */
export const wantsCure = ({ verdict, levers }: Finding): boolean => verdict === 'fails' && levers.length > 0;

export interface Completing {
  /** Told what is worked on, before each longer piece of work. */
  readonly step?: (what: string) => void;
  /** For which of the failing findings cures are looked for; for all of them when it is not said. */
  readonly curing?: (finding: Finding) => boolean;
}

/** Findings with the remedies that were found for them and the questions that would settle them. */
export const completed = (machine: Machine, { step, curing }: Completing = {}): readonly Finding[] => {
  step?.('which measurement settles most');
  const questions = machine.questions();
  return machine.findings.map((finding) => {
    const settling = questions.filter(({ settles }) => settles.some(({ key }) => key === finding.key));
    const cured = wantsCure(finding) && (curing?.(finding) ?? true);
    if (cured) step?.(`what would cure ${finding.key}`);
    return {
      ...finding,
      ...(cured ? { remedies: machine.remedies(finding.key) } : {}),
      ...(settling.length > 0 ? { questions: settling } : {}),
    };
  });
};

const textIn = (tree: Machine['book']['tree'], key: string): string => {
  const value = tree[key];
  return typeof value === 'string' ? value : '';
};

/** Title, revision and description, as the book says them. */
export const bookWords = ({ book }: Pick<Machine, 'book'>): { title: string; revision: string; about: string } => ({
  title: textIn(book.tree, 'title'),
  revision: textIn(book.tree, 'revision'),
  about: textIn(book.tree, 'about'),
});

export const reportOf = (machine: Machine, house: House, options: ReportOptions): Report => {
  const { version, quick = false, step } = options;
  const { title, revision } = bookWords(machine);
  const findings = quick ? machine.findings : completed(machine, step ? { step } : {});
  step?.('every fact');
  return {
    gantrybook: '1',
    version,
    book: { title, revision, main: machine.book.main, files: [...machine.book.files.keys()] },
    stamp: machine.stamp,
    tally: tally(findings),
    sheets: house.disciplines.map(({ name, number, title, asks }) => ({ name, number, title, asks })),
    findings,
    questions: quick ? [] : machine.questions(),
    facts: machine.facts(),
  };
};

/** The text of a report. A number that is not finite has no form in JSON and becomes null; the text beside it says what it is. */
export const reportText = (report: Report): string => `${JSON.stringify(report, undefined, 2)}\n`;
