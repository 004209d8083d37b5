/** Cures of a swing, each that can be written into the book tried on a copy of it with every check run again. */
import type { Study } from '../../../contract/index.ts';
import type { Edit, Verdict } from '../../../kernel/index.ts';
import type { Cure } from '../calc/cures.ts';

export interface Proposed {
  readonly cure: Cure;
  /** How it is written into the book; nothing when it is no fact of the book. */
  readonly edits: readonly Edit[];
}

export interface Tried extends Proposed {
  /** The finding with the cure, by every check of the machine; the same as before when it is no fact of the book. */
  readonly verdict?: Verdict;
  /** Keys of findings that get worse. */
  readonly breaks: readonly string[];
}

export interface CuresArguments {
  readonly key: string;
  readonly proposed: readonly Proposed[];
}

const rank: Readonly<Record<Verdict, number>> = { holds: 0, tight: 1, 'not-stated': 1, open: 2, fails: 3 };

export const cures: Study<CuresArguments, readonly Tried[]> = {
  name: 'swing.cures',
  *run(asker, { key, proposed }) {
    const tried: Tried[] = [];
    const before = new Map(asker.findings.map((finding) => [finding.key, finding.verdict]));
    for (const one of proposed) {
      if (one.edits.length === 0) tried.push({ ...one, breaks: [] });
      else {
        const after = asker.ask(one.edits);
        const verdict = after.find((finding) => finding.key === key)?.verdict;
        const breaks = after
          .filter((found) => found.key !== key && rank[found.verdict] > rank[before.get(found.key) ?? 'not-stated'])
          .map((found) => found.key);
        tried.push({ ...one, ...(verdict ? { verdict } : {}), breaks });
      }
      yield [...tried];
    }
    return tried;
  },
};
