/**
 * Which of an author's changes stands behind a verdict that moved, found by trial: in the second book one change is set back, and
 * the finding is asked again. Where no single change turns it, two together are tried.
 */
import type { Asker } from '../contract/index.ts';
import type { Edit, Finding, Verdict } from '../kernel/index.ts';
import { changesBetween, settingBack, type Change } from './compare-changes.ts';
import type { Consequence } from './compare.ts';
import type { Machine } from './machine.ts';
import type { BookSchema } from './read/schema.ts';

/** How a finding moved from one book to the other. */
export type Kind =
  /** It failed or was open, and now holds, is tight or no longer arises. */
  | 'cured'
  /** It held, was tight or did not arise, and now fails or is open. */
  | 'broken'
  | 'better'
  | 'worse'
  /** The same verdict with another percentage, or open for another reason. */
  | 'moved'
  | 'now-stated'
  | 'no-longer-stated'
  /** Without consequence: it holds or is tight where it is asked. */
  | 'only-before'
  | 'only-after';

export interface Cause {
  /** The change that tells most, then one more where it takes two. Empty where the author changed nothing that the finding uses. */
  readonly by: readonly Change[];
  /** Whether setting back these alone turned the verdict back. */
  readonly turns: boolean;
}

export interface Causes {
  readonly changes: readonly Change[];
  /** By the key of the finding. */
  readonly of: ReadonlyMap<string, Cause>;
}

const isBad = (verdict: Verdict | undefined): boolean => verdict === 'fails' || verdict === 'open';

export const kindOf = ({ before, after }: Pick<Consequence, 'before' | 'after'>): Kind => {
  const [was, is] = [before?.verdict, after?.verdict];
  if (is === 'not-stated' && was !== 'not-stated') return was === undefined ? 'only-after' : 'no-longer-stated';
  if (isBad(was) && !isBad(is)) return 'cured';
  if (!isBad(was) && isBad(is)) return 'broken';
  if (was === 'not-stated' && is !== 'not-stated') return is === undefined ? 'only-before' : 'now-stated';
  if (was === undefined) return 'only-after';
  if (is === undefined) return 'only-before';
  if (was === is) return 'moved';
  return is === 'holds' || was === 'fails' ? 'better' : 'worse';
};

/** Kinds whose causes are looked for. */
const TOLD: ReadonlySet<Kind> = new Set(['cured', 'broken', 'better', 'worse']);
const forBetter = (kind: Kind): boolean => kind === 'cured' || kind === 'better';

const hasTurned = (kind: Kind, was: Verdict | undefined, back: Finding | undefined): boolean => {
  if (back?.verdict === 'not-stated') return false;
  if (kind === 'cured') return isBad(back?.verdict);
  if (kind === 'broken') return back ? !isBad(back.verdict) : was === undefined;
  return back?.verdict === was;
};

/** How much is used, for telling which change does more; what cannot be told is between holding and failing. */
const used = (finding: Finding | undefined): number => {
  if (finding === undefined) return -1;
  const { use, verdict, sense } = finding;
  if (use && sense !== 'yes-no' && !Number.isNaN(use.worst)) return use.worst;
  return verdict === 'fails' ? 2 : verdict === 'holds' ? 0 : 1;
};

const within = (path: string, outer: string): boolean => path === outer || path.startsWith(`${outer}.`);

/** Whether a finding read what a change touches: it, something in it, or the list of what is beside it. */
const reads = (uses: readonly string[], { differs }: Change): boolean =>
  differs.some((path) => {
    const table = path.slice(0, Math.max(0, path.lastIndexOf('.')));
    return uses.some((one) => within(one, path) || one === table);
  });

/** Changes that are tried as the second of two. */
const SECONDS = 8;

interface Trial {
  readonly change: Change;
  readonly turns: boolean;
  readonly use: number;
}

/** Something to find the cause of. */
interface Case {
  readonly key: string;
  readonly kind: Kind;
  readonly was: Verdict | undefined;
  readonly candidates: readonly Change[];
  readonly ask: (changes: readonly Change[]) => Omit<Trial, 'change'>;
}

const worseFirst = (kind: Kind) => (a: Trial, b: Trial) =>
  Number(b.turns) - Number(a.turns) || (forBetter(kind) ? b.use - a.use : a.use - b.use);

const weightOf = ({ was }: Case): number => (was === 'fails' ? 3 : was === 'open' ? 2 : 1);

/** As few changes as tell everything: each time the one that turns most of what is left. */
const covered = (trials: ReadonlyMap<Case, readonly Trial[]>, changes: readonly Change[]): Map<Case, Change> => {
  const found = new Map<Case, Change>();
  const turned = new Map(
    changes.map((change) => [
      change,
      [...trials].flatMap(([one, all]) => (all.some((trial) => trial.change === change && trial.turns) ? [one] : [])),
    ]),
  );
  for (;;) {
    let best: { readonly change: Change; readonly left: readonly Case[]; readonly weight: number } | undefined;
    for (const [change, cases] of turned) {
      const left = cases.filter((one) => !found.has(one));
      const weight = left.reduce((sum, one) => sum + weightOf(one), 0);
      if (weight > (best?.weight ?? 0)) best = { change, left, weight };
    }
    if (!best) return found;
    for (const one of best.left) found.set(one, best.change);
  }
};

/** Two changes that together turn what neither turns alone; else the two that do most. */
const pairFor = (one: Case, trials: readonly Trial[]): Cause => {
  const [first, ...others] = trials.toSorted(worseFirst(one.kind));
  if (!first) return { by: [], turns: false };
  const pairs = others
    .slice(0, SECONDS)
    .map(({ change }): Trial => ({ change, ...one.ask([first.change, change]) }))
    .toSorted(worseFirst(one.kind));
  const second = pairs[0];
  const does = second !== undefined && (second.turns || Math.abs(second.use - first.use) > 0.01);
  return { by: does ? [first.change, second.change] : [first.change], turns: second?.turns ?? false };
};

/**
 * The changes behind every verdict that moved.
 * @param before the machine that is compared with
 * @param after the machine in which changes are set back; only its book is edited, in a copy
 * @param moved consequences; those that keep their verdict are passed over
 * @param schema tells names from other words
 * @param step told what is asked, before each finding
 * @returns the author's changes, and by key those that stand behind each verdict
 */
export const causesOf = (
  before: Machine,
  after: Machine,
  moved: readonly Consequence[],
  schema: BookSchema,
  step: (key: string) => void = () => undefined,
): Causes => {
  const [then, now] = [before.book.tree, after.book.tree];
  const changes = changesBetween(then, now, schema);
  const [old, young] = [before, after].map(({ findings }) => new Map(findings.map((one) => [one.key, one]))) as [
    Map<string, Finding>,
    Map<string, Finding>,
  ];
  const back = new Map(changes.map((change) => [change, settingBack(change.paths, then, now, schema)]));

  const caseOf = (one: Consequence, asker: Asker): Case => {
    const { key } = one;
    const kind = kindOf(one);
    const uses = [...new Set([...(old.get(key)?.uses ?? []), ...(young.get(key)?.uses ?? [])])];
    // That it fails in one scenario is enough to know that it fails; that it holds has to be seen in all of them.
    const scenario = forBetter(kind) ? ((young.get(key) ?? old.get(key))?.scenario ?? []) : [];
    const fixed = scenario
      .filter(({ path }) => after.snapshot.stated(path) && asker.rangeAt(path) !== null)
      .map(({ path, number }): Edit => ({ path, text: asker.write(path, number, 12) }));
    return {
      key,
      kind,
      was: one.before?.verdict,
      candidates: changes.filter((change) => reads(uses, change)),
      ask: (some) => {
        const edits = some.flatMap((change) => back.get(change) ?? []);
        const free = fixed.filter(({ path }) => !edits.some((edit) => within(path, edit.path)));
        const [finding] = asker.ask([...free, ...edits], [key]);
        return { turns: hasTurned(kind, one.before?.verdict, finding), use: used(finding) };
      },
    };
  };

  const found = new Map<string, Cause>();
  after.study<null, null>(
    {
      name: 'causes',
      *run(asker) {
        const trials = new Map<Case, readonly Trial[]>();
        for (const consequence of moved.filter((one) => TOLD.has(kindOf(one)))) {
          step(consequence.key);
          const one = caseOf(consequence, asker);
          trials.set(
            one,
            one.candidates.map((change) => ({ change, ...one.ask([change]) })),
          );
          yield null;
        }
        const single = covered(trials, changes);
        for (const [one, change] of single) found.set(one.key, { by: [change], turns: true });
        for (const [one, all] of trials) {
          if (single.has(one)) continue;
          step(one.key);
          found.set(one.key, pairFor(one, all));
          yield null;
        }
        return null;
      },
    },
    null,
  );
  return { changes, of: found };
};
