/** Which doubtful fact, measured, would settle most; and the measurement that would do it. */
import { NotStated, type Finding, type Question as OpenQuestion } from '../kernel/index.ts';
import type { Evaluator } from './evaluate.ts';
import { solve, type Ask, type Narrowed, type Solved } from './scenarios.ts';
import type { Axis } from './search.ts';
import { askerOf, verdictOf, type Question } from './verdict.ts';
import type { BookSchema } from './read/schema.ts';
import type { Book } from './read/book.ts';
import { quantityAt } from './snapshot.ts';

/** Equal parts of a doubtful range that a measurement might leave. */
const PARTS = 5;
/** Minutes counted for a measurement that nobody described: an evening, so that described ones come first. */
const UNKNOWN_MINUTES = 120;

type Ends = readonly [number, number];

interface Case {
  readonly finding: Finding;
  readonly ask: Ask;
  /** The question over all its ranges. */
  readonly whole: Solved;
  readonly advised: number;
}

const within = (x: number, [low, high]: Ends): number => Math.min(high, Math.max(low, x));

/** Whether knowing that a doubt lies in this part of its range would settle an open finding, or free a tight one. */
const settles = ({ finding, ask, whole, advised }: Case, { path }: Axis, part: Ends): boolean => {
  const isOpen = finding.verdict === 'open';
  const moved = ({ scenario }: Solved['worst']) => {
    const point = new Map(scenario);
    return point.set(path, within(point.get(path) ?? part[0], part));
  };
  try {
    // One scenario that is too much, and one choice of the doubts that is not, show without a search that it stays as it is.
    const bad = ask(moved(whole.worst));
    const isBad = bad.trouble !== undefined || !(bad.usage <= (isOpen ? 1 : advised));
    if (isBad && !isOpen) return false;
    if (isBad) {
      const best = moved(whole.best);
      const known: Narrowed = new Map(
        whole.axes.flatMap((axis) => {
          const x = axis.range === 'doubt' ? best.get(axis.path) : undefined;
          return x === undefined ? [] : [[axis.path, [x, x] as const] as const];
        }),
      );
      if (solve(ask, known).worst.usage <= 1) return false;
    }
    const { verdict } = verdictOf(solve(ask, new Map([[path, part]])), advised);
    return isOpen ? verdict !== 'open' : verdict === 'holds';
  } catch (error) {
    // With that value the question would want facts that are not stated.
    if (error instanceof NotStated) return false;
    throw error;
  }
};

/** Share of a doubt's range in which knowing it would settle a finding. */
const settledShare = (one: Case, axis: Axis): number => {
  const { low, high, path } = axis;
  const at = (i: number): number => (i === PARTS ? high : low + ((high - low) * i) / PARTS);
  const settled = (i: number): boolean => settles(one, axis, [at(i), at(i + 1)]);
  const parts = Array.from({ length: PARTS }, (_, i) => i);
  if ((one.whole.slopes.get(path) ?? 'either') === 'either') return parts.filter(settled).length / PARTS;
  // Along a slope what settles lies at the ends: low down it holds, high up it fails, or the other way round.
  let [from, to] = [0, PARTS];
  while (from < to && settled(from)) from++;
  while (from < to && settled(to - 1)) to--;
  return (PARTS - (to - from)) / PARTS;
};

export interface RankingInput {
  readonly findings: readonly { readonly question: Question; readonly finding: Finding; readonly solved?: Solved }[];
  readonly evaluator: Evaluator;
  readonly schema: BookSchema;
  readonly book: Book;
}

/** Ranks the doubtful facts behind open and tight findings: what each would settle against the minutes it costs. */
export function* rank({
  findings,
  evaluator,
  schema,
  book,
}: RankingInput): Generator<readonly OpenQuestion[], readonly OpenQuestion[], void> {
  const byPath = new Map<string, { key: string; share: number; weight: number }[]>();
  for (const { question, finding, solved: whole } of findings) {
    if (!whole || (finding.verdict !== 'open' && finding.verdict !== 'tight')) continue;
    const ask = askerOf(question, evaluator, new Set());
    const one: Case = { finding, ask, whole, advised: finding.use?.advised ?? 1 };
    for (const axis of whole.axes) {
      if (axis.range !== 'doubt') continue;
      const list = byPath.get(axis.path) ?? [];
      byPath.set(axis.path, list);
      // What is open counts fully; what is tight already holds and counts a fifth.
      const weight = finding.verdict === 'open' ? 1 : 0.2;
      list.push({ key: finding.key, share: settledShare(one, axis), weight });
      yield [];
    }
  }
  const questions = [...byPath].map(([path, list]) => {
    const info = schema.keyInfo(path, evaluator.snapshot.tree);
    const stands = quantityAt(path, evaluator.snapshot)?.text ?? '';
    const worth = list.reduce((sum, { share, weight }) => sum + weight * (share + 0.05), 0);
    const place = book.placeOf(path);
    return {
      worth: worth / Math.sqrt(info?.measure?.minutes ?? UNKNOWN_MINUTES),
      question: {
        path,
        stands,
        settles: list.filter(({ share }) => share > 0).map(({ key, share }) => ({ key, share })),
        ...(info?.measure ? { measure: info.measure } : {}),
        ...(place ? { place } : {}),
      } satisfies OpenQuestion,
    };
  });
  questions.sort((a, b) => b.worth - a.worth || (a.question.path < b.question.path ? -1 : 1));
  return questions.filter(({ question }) => question.settles.length > 0).map(({ question }) => question);
}
