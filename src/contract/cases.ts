import type { Edit, Verdict } from '../kernel/index.ts';

/** A book changed so that one finding gets one verdict. A trade keeps a list of them; the registry's test runs every one. */
export interface CheckCase {
  /** Key of the finding. */
  readonly finding: string;
  readonly verdict: Verdict;
  /** Changes to the trade's base book. */
  readonly edits: readonly Edit[];
  /** Why the verdict is what it is, reckoned without the program where it can be. */
  readonly because: string;
}

/** What `tests/cases.ts` of a trade exports. */
export interface CheckCases {
  /** Text of a book on which the changes are made. */
  readonly base: string;
  readonly cases: readonly CheckCase[];
}
