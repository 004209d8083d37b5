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
/** A finding that no single fact settles is worth asking about where one fact takes it this part of the way to its limit. */
const WORTH_NARROWING = 0.2;
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
  const slope = one.whole.slopes.get(path);
  if (slope !== 'up' && slope !== 'down') return parts.filter(settled).length / PARTS;
  // Along a slope what settles lies at the ends: low down it holds, high up it fails, or the other way round.
  let [from, to] = [0, PARTS];
  while (from < to && settled(from)) from++;
  while (from < to && settled(to - 1)) to--;
  return (PARTS - (to - from)) / PARTS;
};

/** How much of the way from a worst use to the limit is gone, by factors: from 800 % to 400 % is a third of it. */
const wayToLimit = (from: number, to: number): number =>
  Number.isFinite(from)
    ? Math.log(from / Math.max(to, 1)) / Math.log(from)
    : to <= 1
      ? 1
      : Number.isFinite(to)
        ? 0.5
        : 0;

/** Worst use when one doubt turns out as suits best; nothing when that takes little off it or cannot be told. */
const narrowedTo = ({ ask, whole }: Case, { path }: Axis): number | undefined => {
  const best = whole.best.scenario.get(path);
  // What is open for want of an answer, and not for too much use, is not brought nearer to its limit.
  if (best === undefined || !(whole.worst.usage > 1)) return undefined;
  const isEnough = (to: number): boolean => wayToLimit(whole.worst.usage, to) > WORTH_NARROWING;
  try {
    // One scenario that is still too much saves the search; what all the others may then do takes one.
    const { usage, trouble } = ask(new Map(whole.worst.scenario).set(path, best));
    if (trouble || !isEnough(usage)) return undefined;
    const known = solve(ask, new Map([[path, [best, best]]]));
    return !known.trouble && isEnough(known.worst.usage) ? known.worst.usage : undefined;
  } catch (error) {
    if (error instanceof NotStated) return undefined;
    throw error;
  }
};

interface Told {
  readonly key: string;
  readonly share: number;
  readonly weight: number;
  readonly narrowed?: { readonly from: number; readonly to: number };
}

/** For each doubt behind one finding: the share of its range that settles the finding, else how far it narrows it. */
const toldBy = (one: Case, weight: number, axes: readonly Axis[]): ReadonlyMap<string, Told> => {
  const { key } = one.finding;
  const shares = new Map(axes.map((axis) => [axis.path, settledShare(one, axis)]));
  const alone = [...shares.values()].some((share) => share > 0);
  const told = new Map<string, Told>();
  for (const axis of axes) {
    const share = shares.get(axis.path)!;
    const from = one.whole.worst.usage;
    const to = alone || one.finding.verdict !== 'open' ? undefined : narrowedTo(one, axis);
    const narrowed = to === undefined ? {} : { narrowed: { from, to } };
    told.set(axis.path, { key, share, weight, ...narrowed });
  }
  return told;
};

/** What asking is worth: the share that it settles, or the part of the way to the limit that it comes, at most half as much. */
const worthOf = ({ share, weight, narrowed }: Told): number => {
  if (!narrowed) return weight * (share + 0.05);
  return (weight * wayToLimit(narrowed.from, narrowed.to)) / 2;
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
  const byPath = new Map<string, Told[]>();
  for (const { question, finding, solved: whole } of findings) {
    if (!whole || (finding.verdict !== 'open' && finding.verdict !== 'tight')) continue;
    const ask = askerOf(question, evaluator, new Set());
    const one: Case = { finding, ask, whole, advised: finding.use?.advised ?? 1 };
    const doubts = whole.axes.filter(({ range }) => range === 'doubt');
    // What is open counts fully; what is tight already holds and counts a fifth.
    for (const [path, told] of toldBy(one, finding.verdict === 'open' ? 1 : 0.2, doubts))
      byPath.set(path, [...(byPath.get(path) ?? []), told]);
    yield [];
  }
  const questions = [...byPath].map(([path, list]) => {
    const info = schema.keyInfo(path, evaluator.snapshot.tree);
    const stands = quantityAt(path, evaluator.snapshot)?.text ?? '';
    const worth = list.reduce((sum, told) => sum + worthOf(told), 0);
    const place = book.placeOf(path);
    return {
      worth: worth / Math.sqrt(info?.measure?.minutes ?? UNKNOWN_MINUTES),
      question: {
        path,
        stands,
        settles: list.filter(({ share }) => share > 0).map(({ key, share }) => ({ key, share })),
        narrows: list.flatMap(({ key, narrowed }) => (narrowed ? [{ key, ...narrowed }] : [])),
        ...(info?.measure ? { measure: info.measure } : {}),
        ...(place ? { place } : {}),
      } satisfies OpenQuestion,
    };
  });
  questions.sort((a, b) => b.worth - a.worth || (a.question.path < b.question.path ? -1 : 1));
  return questions
    .map(({ question }) => question)
    .filter(({ settles: settled, narrows }) => settled.length + narrows.length > 0);
}
