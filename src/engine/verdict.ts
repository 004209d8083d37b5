/** From a solved question to a finding: verdict, reason, sentence, working. */
import type { Check, Discipline, Subject } from '../contract/index.ts';
import {
  isNoNumber,
  NoSolution,
  NotConverged,
  NotStated,
  usage,
  usageSlopes,
  type Finding,
  type OpenReason,
  type Outcome,
  type Value,
  type Verdict,
} from '../kernel/index.ts';
import type { Evaluator, Scenario } from './evaluate.ts';
import { solve, type Answer, type Ask, type Solved } from './scenarios.ts';
import { PRESENCE, rangesAmong } from './snapshot.ts';
import { endsOf, workingOf, type Shower } from './working.ts';

export interface Question {
  readonly discipline: Pick<Discipline, 'name'>;
  readonly check: Check;
  readonly subject: Subject;
}

/** Code, designations and mode. The key of a finding never changes meaning. */
export const keyOf = ({ check, subject }: Question): string =>
  `${check.code}${subject.designations.length ? `/${subject.designations.join('+')}` : ''}${subject.mode ? `@${subject.mode}` : ''}`;

/** Thrown out of a solve when the question does not arise, or cannot be asked for want of facts. */
class Stop extends Error {
  constructor(readonly because: 'no-question' | NotStated) {
    super('stop');
  }
}

export interface Solution {
  readonly solved: Solved;
  readonly uses: ReadonlySet<string>;
}

/** Solves one question over all its ranges; `narrowed` replaces the ends of some of them. */
export const solveQuestion = (
  { check, subject }: Question,
  evaluator: Evaluator,
  narrowed?: ReadonlyMap<string, readonly [number, number]>,
): Solution | 'no-question' | { readonly missing: readonly string[]; readonly uses: ReadonlySet<string> } => {
  const uses = new Set<string>();
  const ask: Ask = (scenario): Answer => {
    const { result, paths } = evaluator.check(check, subject, scenario);
    for (const path of paths) uses.add(path);
    const axes = rangesAmong(paths, evaluator.snapshot);
    if (result.ok) {
      if (result.value === null) throw new Stop('no-question');
      return { usage: usage(result.value), slopes: usageSlopes(result.value), axes };
    }
    const { error } = result;
    if (error instanceof NotStated) throw new Stop(error);
    if (!isNoNumber(error)) throw error;
    if (error instanceof NoSolution) return { usage: Infinity, slopes: new Map(), axes };
    return { usage: NaN, slopes: new Map(), axes, trouble: error };
  };
  try {
    return { solved: solve(ask, narrowed), uses };
  } catch (stop) {
    if (!(stop instanceof Stop)) throw stop;
    return stop.because === 'no-question' ? 'no-question' : { missing: stop.because.paths, uses };
  }
};

/** The verdict over all spread at each point of the box of doubts. */
export const verdictOf = (
  { worst, best, trouble }: Solved,
  advised: number,
): { verdict: Verdict; reason?: OpenReason } => {
  if (best.usage > 1) return { verdict: 'fails' };
  if (trouble) return { verdict: 'open', reason: trouble instanceof NotConverged ? 'did-not-converge' : 'outside' };
  if (!(worst.usage <= 1)) return { verdict: 'open', reason: 'doubt' };
  return { verdict: worst.usage <= advised ? 'holds' : 'tight' };
};

export const advisedShare = (outcome: Outcome | undefined): number =>
  outcome?.kind === 'limit' ? (outcome.advice?.share ?? 1) : 1;

/** A share of a limit in words: `94 %`, `over 1000 %`. */
export const percentText = (share: number): string =>
  Number.isNaN(share)
    ? 'no number'
    : share > 10
      ? 'over 1000 %'
      : share > 1 && share < 1.005
        ? 'just over 100 %'
        : `${Math.round(share * 100)} %`;

export interface Tools {
  readonly evaluator: Evaluator;
  readonly text: Shower;
  readonly meansOf: (path: string) => string;
  /** Told when a probe beat the end that a declared slope named; the verdict then stands on a search instead. */
  readonly slopeFault?: (key: string) => void;
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
const factPaths = (paths: Iterable<string>): string[] => [...paths].filter((path) => !path.startsWith(PRESENCE));

/** A finding, and everything that was read for it. */
export interface Worked {
  readonly finding: Finding;
  readonly reads: readonly string[];
}

/** Works out one finding, or null when the question does not arise. */
export const findingFor = (question: Question, tools: Tools): Worked | null => {
  const solution = solveQuestion(question, tools.evaluator);
  if (solution === 'no-question') return null;
  const reads = [...solution.uses];
  if ('missing' in solution)
    return {
      finding: notStated(question, solution.missing, solution.uses, tools),
      reads: [...reads, ...solution.missing],
    };
  return { finding: formFinding(question, solution, tools), reads };
};

const formFinding = (question: Question, { solved, uses }: Solution, tools: Tools): Finding => {
  const { evaluator, text } = tools;
  if (solved.slopeBroken) tools.slopeFault?.(keyOf(question));
  // A failure is shown at its best case too: even there it is too much; everything else at its worst.
  const scenario: Scenario = solved.worst.scenario;
  const { result } = evaluator.check(question.check, question.subject, scenario);
  const outcome = result.ok ? (result.value ?? undefined) : undefined;
  const advised = advisedShare(outcome);
  const { verdict, reason } = verdictOf(solved, advised);
  const number = (value: Value) => ({ number: value.number, of: value.of, text: text(value.number, value.of) });
  const { usage: worst } = solved.worst;
  const { usage: best } = solved.best;
  const common = {
    ...baseOf(question),
    verdict,
    scenario: endsOf(solved.axes, scenario, evaluator.snapshot, text),
    searched: solved.searched,
    uses: factPaths(uses),
  };
  if (!outcome) {
    const error = (result as { error: Error }).error;
    return {
      ...common,
      ...(reason ? { reason: { kind: reason, text: error.message } } : {}),
      sentence: `${capital(error instanceof NoSolution ? error.because : `this could not be worked out: ${error.message}`)}.`,
      beside: {},
      working: [],
      levers: [],
    };
  }
  const because = reason && reasonText(reason, solved, tools);
  const limit = outcome.kind === 'limit';
  const sentence = outcome.says({
    demand: limit ? text(outcome.demand.number, outcome.demand.of) : '',
    limit: limit ? text(outcome.limit.number, outcome.limit.of) : '',
    percent: limit ? percentText(worst) : '',
    verdict,
  });
  const roots = limit ? [outcome.demand, outcome.limit, ...(outcome.base ? [outcome.base] : [])] : [...outcome.because];
  return {
    ...common,
    ...(because ? { reason: { kind: reason, text: because } } : {}),
    sentence,
    sense: limit ? outcome.sense : 'yes-no',
    ...(limit ? { demand: number(outcome.demand), limit: number(outcome.limit), use: { worst, best, advised } } : {}),
    beside: Object.fromEntries(Object.entries(outcome.beside ?? {}).map(([name, value]) => [name, number(value)])),
    working: workingOf(roots, evaluator.snapshot, text),
    levers: outcome.levers ?? [],
  };
};

const reasonText = (reason: OpenReason, solved: Solved, tools: Tools): string => {
  if (reason !== 'doubt') return solved.trouble?.message ?? reason;
  const doubts = solved.axes.filter((axis) => axis.range === 'doubt').map((axis) => tools.meansOf(axis.path));
  return `${percentText(solved.best.usage)} to ${percentText(solved.worst.usage)} of limit, depending on ${[...new Set(doubts)].join(', ')}`;
};
