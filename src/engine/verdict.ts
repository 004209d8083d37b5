/** From a solved question to a finding: verdict, reason, sentence, working. */
import type { Check, Discipline, Subject } from '../contract/index.ts';
import {
  NoSolution,
  NotConverged,
  NotStated,
  percentText,
  usage,
  usageSlopes,
  type Finding,
  type OpenReason,
  type Outcome,
  type Shown,
  type Value,
  type Verdict,
} from '../kernel/index.ts';
import type { Evaluator } from './evaluate.ts';
import { solve, type Answer, type Ask, type Narrowed, type Solved } from './scenarios.ts';
import type { Scenario } from './search.ts';
import { PRESENCE, quantityAt } from './snapshot.ts';
import { endsOf, workingOf, type Shower } from './working.ts';

export interface Question {
  readonly discipline: Pick<Discipline, 'name'>;
  readonly check: Check;
  readonly subject: Subject;
}

/** A name that holds a sign of the key itself stands in quotes, so that no two subjects share a key. */
const inKey = (name: string): string => (/[+@"]/.test(name) ? JSON.stringify(name) : name);

/** Code, designations and mode. The key of a finding never changes meaning. */
export const keyOf = ({ check, subject: { designations, mode } }: Question): string =>
  `${check.code}${designations.length ? `/${designations.map(inKey).join('+')}` : ''}${mode ? `@${inKey(mode)}` : ''}`;

export interface Solution {
  readonly solved: Solved;
  readonly uses: ReadonlySet<string>;
}

/**
 * Asks a question in one scenario after another; notes in `uses` every path that was read.
 * What it gives throws NotStated when the book does not say enough to ask.
 */
export const askerOf = ({ check, subject }: Question, evaluator: Evaluator, uses: Set<string>): Ask => {
  const seen = new Set<readonly string[]>();
  return (scenario, quietly): Answer => {
    const { result, paths } = evaluator.check(check, subject, scenario);
    if (!quietly && !seen.has(paths)) {
      seen.add(paths);
      for (const path of paths) uses.add(path);
    }
    const axes = evaluator.rangesOf(paths);
    if (result.ok) {
      if (result.value === null) return { usage: 0, axes, moot: true };
      return { usage: usage(result.value), slopes: usageSlopes(result.value), axes };
    }
    const { error } = result;
    if (error instanceof NotStated) throw error;
    if (error instanceof NoSolution) return { usage: Infinity, axes };
    return { usage: NaN, axes, trouble: error };
  };
};

/** Solves one question over all its ranges; `narrowed` replaces the ends of some of them. */
export const solveQuestion = (
  question: Question,
  evaluator: Evaluator,
  narrowed?: Narrowed,
  trusting?: boolean,
): Solution | { readonly missing: readonly string[]; readonly uses: ReadonlySet<string> } => {
  const uses = new Set<string>();
  try {
    return { solved: solve(askerOf(question, evaluator, uses), narrowed, trusting), uses };
  } catch (error) {
    if (!(error instanceof NotStated)) throw error;
    return { missing: error.paths, uses };
  }
};

/** The verdict over all spread at each point of the box of doubts. */
export const verdictOf = (
  solved: Pick<Solved, 'worst' | 'best' | 'blank' | 'trouble'>,
  advised: number,
): { verdict: Verdict; reason?: OpenReason } => {
  const { worst, blank, trouble } = solved;
  // The best is read only where the worst does not tell.
  if ((trouble || !(worst.usage <= 1)) && solved.best.usage > 1 && !blank) return { verdict: 'fails' };
  if (trouble) return { verdict: 'open', reason: trouble instanceof NotConverged ? 'did-not-converge' : 'outside' };
  if (!(worst.usage <= 1)) return { verdict: 'open', reason: 'doubt' };
  return { verdict: worst.usage <= advised ? 'holds' : 'tight' };
};

export const advisedShare = (outcome: Outcome | undefined): number =>
  outcome?.kind === 'limit' ? (outcome.advice?.share ?? 1) : 1;

/** How good a finding shall become: holding with what is advised left free, or just holding. */
export type Wanted = 'holds' | 'tight';

/**
 * Whether a question's finding would be as good as wanted, without forming it.
 *
 * @param near a scenario that was worst in a book much like this one: where it is already too much, nothing is searched
 */
export const isAsGood = (question: Question, evaluator: Evaluator, wanted: Wanted, near: Scenario): boolean => {
  const advised = (scenario: Scenario): number => {
    const { result } = evaluator.check(question.check, question.subject, scenario);
    return result.ok ? advisedShare(result.value ?? undefined) : 1;
  };
  const ask = askerOf(question, evaluator, new Set());
  const point = new Map(
    [...near].flatMap(([path, x]) => {
      const leaf = quantityAt(path, evaluator.snapshot);
      return leaf ? [[path, Math.min(leaf.high, Math.max(leaf.low, x))] as const] : [];
    }),
  );
  try {
    const { usage: used, trouble } = ask(point);
    if (trouble || !(used <= (wanted === 'holds' ? advised(point) : 1))) return false;
    const solved = solve(ask);
    const { verdict } = verdictOf(solved, advised(solved.worst.scenario));
    return !solved.moot && (verdict === 'holds' || verdict === wanted);
  } catch (error) {
    if (error instanceof NotStated) return false;
    throw error;
  }
};

export interface Tools {
  readonly evaluator: Evaluator;
  readonly text: Shower;
  readonly meansOf: (path: string) => string;
  /** Whether declared slopes are taken as they are, without a probe. */
  readonly trusting?: boolean;
}

const capital = (s: string): string => (s ? s[0]!.toUpperCase() + s.slice(1) : s);

const baseOf = (
  question: Question,
): Pick<Finding, 'key' | 'code' | 'sheet' | 'designations' | 'asks'> & { mode?: string } => ({
  key: keyOf(question),
  code: question.check.code,
  sheet: question.discipline.name,
  designations: question.subject.designations,
  asks: question.check.asks,
  ...(question.subject.mode ? { mode: question.subject.mode } : {}),
});

const notStated = (
  question: Question,
  missing: readonly string[],
  uses: ReadonlySet<string>,
  tools: Tools,
): Finding => ({
  ...baseOf(question),
  verdict: 'not-stated',
  missing,
  sentence: `Not stated yet: ${missing.map((path) => `${tools.meansOf(path)} (${path})`).join('; ')}.`,
  scenario: [],
  searched: false,
  beside: {},
  uses: factPaths([...uses, ...missing]),
  working: [],
  levers: [],
});

/** Paths of single facts, without the maps passed on the way. */
const factPaths = (paths: Iterable<string>): string[] =>
  [...new Set(paths)].filter((path) => !path.startsWith(PRESENCE));

/** A finding, or null when the question does not arise, and everything that was read for it. */
export interface Worked {
  readonly finding: Finding | null;
  /** Includes what is read to say what is said of it. */
  readonly reads: readonly string[];
  /** The question over all its ranges; nothing when it could not be asked. */
  readonly solved?: Solved;
}

/** Works out one finding. */
export const findingFor = (question: Question, tools: Tools): Worked => {
  const solution = solveQuestion(question, tools.evaluator, undefined, tools.trusting);
  if ('missing' in solution)
    return {
      finding: notStated(question, solution.missing, solution.uses, tools),
      reads: [...new Set([...solution.uses, ...solution.missing])],
    };
  if (solution.solved.moot) return { finding: null, reads: [...solution.uses] };
  return formFinding(question, solution, tools);
};

const now = <T>(made: T | (() => T)): T => (typeof made === 'function' ? (made as () => T)() : made);

/** The outcome that decided, and what is said of it; that is made in its scenario, from what stands there. */
const governing = ({ check, subject }: Question, scenario: Scenario, { evaluator }: Tools) => {
  const { result } = evaluator.check(check, subject, scenario);
  if (!result.ok || result.value === null) return { error: result.ok ? undefined : result.error };
  const outcome = result.value;
  const told = (shown: Shown) =>
    evaluator.trace(scenario, () => {
      const ours = evaluator.found(outcome) ? outcome : (check.run(evaluator.context, subject) ?? outcome);
      const { says, levers, beside } = ours;
      return { sentence: says(shown), levers: now(levers ?? []), beside: now(beside ?? {}) };
    });
  return { outcome, told };
};

const formFinding = (question: Question, { solved, uses }: Solution, tools: Tools): Worked => {
  const { evaluator, text } = tools;
  const { scenario } = solved.worst;
  const { outcome, told, error } = governing(question, scenario, tools);
  const advised = advisedShare(outcome);
  const { verdict, reason } = verdictOf(solved, advised);
  const number = (value: Value) => ({ number: value.number, of: value.of, text: text(value.number, value.of) });
  const { usage: worst } = solved.worst;
  const because = reason && reasonText(reason, solved, tools, outcome?.kind === 'yes-no');
  const common = {
    ...baseOf(question),
    verdict,
    ...(reason && because ? { reason: { kind: reason, text: because } } : {}),
    scenario: endsOf(solved.axes, scenario, evaluator.snapshot, text),
    searched: solved.searched,
  };
  if (!outcome) {
    const why = error ?? solved.trouble;
    const finding: Finding = {
      ...common,
      sentence: `${capital(why instanceof NoSolution ? why.because : `this could not be worked out: ${why?.message ?? ''}`)}.`,
      beside: {},
      uses: factPaths(uses),
      working: [],
      levers: [],
    };
    return { finding, reads: [...uses], solved };
  }
  const limit = outcome.kind === 'limit';
  const said = once(() =>
    told({
      demand: limit ? text(outcome.demand.number, outcome.demand.of) : '',
      limit: limit ? text(outcome.limit.number, outcome.limit.of) : '',
      percent: limit ? percentText(worst) : '',
      verdict,
    }),
  );
  const roots = limit ? [outcome.demand, outcome.limit, ...(outcome.base ? [outcome.base] : [])] : [...outcome.because];
  const reads = once(() => [...new Set([...uses, ...said().paths])]);
  const used = once(() => factPaths(reads()));
  const beside = once(() =>
    Object.fromEntries(Object.entries(said().value.beside).map(([name, one]) => [name, number(one)])),
  );
  const working = once(() => workingOf(roots, evaluator.snapshot, text));
  // Most findings are counted and never read: what is said of them is made when somebody does.
  const finding: Finding = {
    ...common,
    // What the worst of the doubts would bring is no fact yet.
    get sentence() {
      const { sentence } = said().value;
      return reason === 'doubt' && limit ? `At worst: ${sentence}` : sentence;
    },
    sense: limit ? outcome.sense : 'yes-no',
    ...(limit ? { demand: number(outcome.demand), limit: number(outcome.limit), use: useOf(solved, advised) } : {}),
    get beside() {
      return beside();
    },
    get uses() {
      return used();
    },
    get levers() {
      return said().value.levers;
    },
    get working() {
      return working();
    },
  };
  return {
    finding,
    get reads() {
      return reads();
    },
    solved,
  };
};

/** Works something out the first time that it is asked for. */
const once = <T extends object>(work: () => T): (() => T) => {
  let made: T | undefined;
  return () => (made ??= work());
};

/** Shares of the limit; the best is worked out when somebody reads it. */
const useOf = (solved: Solved, advised: number): NonNullable<Finding['use']> => ({
  worst: solved.worst.usage,
  get best() {
    return solved.best.usage;
  },
  advised,
});

const reasonText = (reason: OpenReason, solved: Solved, tools: Tools, yesNo: boolean): string => {
  if (reason !== 'doubt') return solved.trouble?.message ?? reason;
  const doubts = solved.axes.filter((axis) => axis.range === 'doubt').map((axis) => tools.meansOf(axis.path));
  const names = [...new Set(doubts)].join(', ');
  if (yesNo) return `one way or the other, depending on ${names}`;
  return `${percentText(solved.best.usage)} to ${percentText(solved.worst.usage)} of limit, depending on ${names}`;
};
