/** What a book's findings come to, for an exit code and for every summary. */
// Not by the door of the figures: this comes with the first verdicts, and the rest of them later.
import { worstFirst } from '../figures/mark.ts';
import type { Finding, Verdict } from '../kernel/index.ts';

export interface Tally {
  readonly counts: Readonly<Record<Verdict, number>>;
  /** Keys that count against the book: it fails, or could not be worked out, and nobody has accepted it. */
  readonly against: readonly string[];
  /** Keys that count against it only where a book must be settled: open by doubt, not stated. */
  readonly unsettled: readonly string[];
  /** Keys that would count and are accepted. */
  readonly accepted: readonly string[];
}

const countsAgainst = ({ verdict, reason }: Finding): boolean =>
  verdict === 'fails' || (verdict === 'open' && (reason?.kind === 'outside' || reason?.kind === 'did-not-converge'));

const isUnsettled = (finding: Finding): boolean =>
  finding.verdict === 'not-stated' || (finding.verdict === 'open' && !countsAgainst(finding));

export const tally = (findings: readonly Finding[]): Tally => {
  const counts: Record<Verdict, number> = { holds: 0, tight: 0, fails: 0, open: 0, 'not-stated': 0 };
  for (const finding of findings) counts[finding.verdict] += 1;
  const keys = (some: (finding: Finding) => boolean): string[] => findings.filter(some).map(({ key }) => key);
  const isAccepted = (finding: Finding): boolean => finding.accepted?.counts === true;
  return {
    counts,
    against: keys((finding) => countsAgainst(finding) && !isAccepted(finding)),
    unsettled: keys((finding) => isUnsettled(finding) && !isAccepted(finding)),
    accepted: keys((finding) => isAccepted(finding) && (countsAgainst(finding) || isUnsettled(finding))),
  };
};

/** Verdicts that occur, worst first, with how often. */
export const counted = ({ counts }: Pick<Tally, 'counts'>): readonly (readonly [Verdict, number])[] =>
  worstFirst.map((verdict) => [verdict, counts[verdict]] as const).filter(([, count]) => count > 0);
