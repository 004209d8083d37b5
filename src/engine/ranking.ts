/** Which doubtful fact, measured, would settle most; and the measurement that would do it. */
import type { Finding, Question as OpenQuestion } from '../kernel/index.ts';
import type { Evaluator } from './evaluate.ts';
import { solveQuestion, verdictOf, type Question } from './verdict.ts';
import type { BookSchema } from './read/schema.ts';
import type { Book } from './read/book.ts';
import { quantityAt } from './snapshot.ts';

/** Equal parts of a doubtful range that a measurement might leave. */
const PARTS = 5;
/** Minutes counted for a measurement that nobody described: an evening, so that described ones come first. */
const UNKNOWN_MINUTES = 120;

/** Shares of a doubt's range in which knowing it would settle an open finding, or free a tight one. */
const settledShare = (
  question: Question,
  finding: Finding,
  path: string,
  low: number,
  high: number,
  evaluator: Evaluator,
): number => {
  let settled = 0;
  const advised = finding.use?.advised ?? 1;
  for (let i = 0; i < PARTS; i++) {
    const part: [number, number] = [low + ((high - low) * i) / PARTS, low + ((high - low) * (i + 1)) / PARTS];
    const solution = solveQuestion(question, evaluator, new Map([[path, part]]));
    if (solution === 'no-question' || 'missing' in solution) continue;
    const { verdict } = verdictOf(solution.solved, advised);
    if (finding.verdict === 'open' ? verdict !== 'open' : verdict === 'holds') settled++;
  }
  return settled / PARTS;
};

export interface RankingInput {
  readonly findings: readonly { readonly question: Question; readonly finding: Finding }[];
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
  for (const { question, finding } of findings) {
    if (finding.verdict !== 'open' && finding.verdict !== 'tight') continue;
    for (const { path, range } of finding.scenario) {
      if (range !== 'doubt') continue;
      const leaf = quantityAt(path, evaluator.snapshot);
      if (!leaf) continue;
      const share = settledShare(question, finding, path, leaf.low, leaf.high, evaluator);
      const list = byPath.get(path) ?? [];
      byPath.set(path, list);
      // What is open counts fully; what is tight already holds and counts a fifth.
      list.push({ key: finding.key, share, weight: finding.verdict === 'open' ? 1 : 0.2 });
      yield [];
    }
  }
  const questions = [...byPath].map(([path, list]) => {
    const info = schema.keyInfo(path);
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
