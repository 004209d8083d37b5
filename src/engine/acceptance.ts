/** What the author has accepted. The verdict stays; an acceptance only says whether it counts against the book. */
import type { Check, Quantity } from '../contract/index.ts';
import type { Acceptance, Finding } from '../kernel/index.ts';
import type { Book } from './read/book.ts';
import { nearest } from '../kernel/nearest.ts';
import type { BookProblem } from './read/problem.ts';
import type { Tree } from './snapshot.ts';

interface Accepted {
  readonly finding: string;
  readonly because: string;
  readonly until?: string;
  readonly at?: Quantity;
}

/** Percentages that differ by less than this are the same. */
const SLACK = 1.005;

const DAY = /^\d{4}-\d{2}-\d{2}$/;

/** Acceptances by the key of the finding. */
export const acceptedIn = (tree: Tree): ReadonlyMap<string, Accepted> =>
  new Map(((tree['accepted'] as readonly Accepted[] | undefined) ?? []).map((one) => [one.finding, one]));

/** Acceptances of findings that this book does not have: mistyped, or of a machine that has changed. */
export const strayAcceptances = (book: Book, findings: readonly Finding[]): BookProblem[] => {
  const keys = findings.map(({ key }) => key);
  const list = (book.tree['accepted'] as readonly Accepted[] | undefined) ?? [];
  return list.flatMap(({ finding }, i) => {
    const path = `accepted.${i}.finding`;
    const place = book.placeOf(path);
    if (keys.includes(finding) || !place) return [];
    const near = nearest(finding, keys);
    return [
      {
        place,
        width: finding.length,
        path,
        what: `This book has no finding ${finding}, so nothing is accepted by it.`,
        allowed: near ? `${near} is the nearest.` : 'The key of a finding, as check prints it.',
        severity: 'warning' as const,
      },
    ];
  });
};

/**
 * Whether an acceptance still counts.
 *
 * @param today ISO date; without one, an end date is printed and not judged
 */
export const acceptanceOf = (
  finding: Finding,
  accepted: Accepted,
  check: Check,
  today: string | undefined,
): Acceptance => {
  const base = { because: accepted.because, ...(accepted.until ? { until: accepted.until } : {}) };
  const refused = (note: string): Acceptance => ({ ...base, counts: false, note });
  if (check.neverAccepted) return refused('what guards people cannot be accepted away');
  if (accepted.until && !DAY.test(accepted.until))
    return refused(`"${accepted.until}" is no day on which it could run out: write it as 2027-05-01`);
  if (accepted.until && today && today > accepted.until)
    return refused(`accepted until ${accepted.until}, which has passed`);
  const worst = finding.use?.worst;
  if (accepted.at && worst !== undefined && !(worst <= accepted.at.high * SLACK))
    return refused(`accepted at ${accepted.at.text} of limit, and it has got worse`);
  if (accepted.at && worst === undefined && finding.verdict === 'fails' && finding.sense !== 'yes-no')
    return refused(`accepted at ${accepted.at.text} of limit, and now there is no percentage at all`);
  if (finding.verdict === 'fails' && worst !== undefined && !accepted.at)
    return refused('a failing finding is accepted at a percentage: add `at: … %`, so that getting worse is noticed');
  return { ...base, counts: true };
};
