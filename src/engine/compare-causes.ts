/**
 * Which of an author's changes stands behind a verdict that moved, found by trial: in the book where the finding is better, one
 * change is made as the other book has it, and the finding is asked again. Where no single change does it, two or three are tried.
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
  /** The change that tells most, then those that it takes besides. Empty where nothing that an author changed has any effect. */
  readonly by: readonly Change[];
  /** Whether these alone, as the worse book has them, make the finding as bad as it is there; false where it takes more. */
  readonly enough: boolean;
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

const badness: Readonly<Record<Verdict, number>> = { holds: 0, tight: 1, open: 2, fails: 3, 'not-stated': -1 };

/**
 * How much is used, for telling which change does more; of what is not asked or not known, less than nothing. What is to fail has
 * to fail at its best, so that its best counts.
 */
const useOf = (finding: Finding | undefined, toFail: boolean): number => {
  if (finding === undefined || finding.verdict === 'not-stated') return -1;
  const { use, verdict, sense } = finding;
  const share = toFail ? use?.best : use?.worst;
  if (share !== undefined && sense !== 'yes-no' && !Number.isNaN(share)) return share;
  return verdict === 'fails' ? 2 : verdict === 'holds' ? 0 : 1;
};

const within = (path: string, outer: string): boolean => path === outer || path.startsWith(`${outer}.`);

const entryOf = (path: string): string => path.split('.').slice(0, 2).join('.');

/** What is known of a finding on both sides together. */
interface Read {
  readonly uses: readonly string[];
  readonly entries: ReadonlySet<string>;
  readonly designations: ReadonlySet<string>;
}

const readBy = (...findings: readonly (Finding | undefined)[]): Read => {
  const uses = [...new Set(findings.flatMap((finding) => finding?.uses ?? []))];
  return {
    uses,
    entries: new Set(uses.map(entryOf)),
    designations: new Set(findings.flatMap((finding) => finding?.designations ?? [])),
  };
};

/** Whether a finding used what is changed, something in it, or the list of what is beside it. */
const used = ({ differs }: Change, { uses }: Read): boolean =>
  differs.some((path) => {
    const table = path.slice(0, Math.max(0, path.lastIndexOf('.')));
    return uses.some((one) => within(one, path) || one === table);
  });

/**
 * That something is there at all is not among what a finding tells that it used. Of what is new or taken out, all that belongs to
 * the same entries may be meant.
 */
const mayBeMeant = ({ differs, before, after }: Change, { entries, designations }: Read): boolean =>
  (before === null || after === null) &&
  differs.some((path) => entries.has(entryOf(path)) || designations.has(path.split('.')[1] ?? ''));

/** The most changes that are named behind one finding, how many are tried as the first of them, and as each that follows. */
const TOGETHER = 3;
const FIRST = 3;
const NEXT = 6;
/** A change that moves the use by less has no effect worth naming. */
const EFFECT = 0.01;

interface Trial {
  readonly by: readonly Change[];
  /** 2 where it is as bad as in the worse book, 1 where it is open and fails there, 0 where it is better. */
  readonly reach: 0 | 1 | 2;
  readonly use: number;
  /** Places of the book that are edited for it. */
  readonly edits: number;
}

/** Something to find the cause of. */
interface Case {
  readonly key: string;
  readonly code: string;
  readonly weight: number;
  /** Changes that are tried, and those that are tried where none of these does it. */
  readonly candidates: readonly (readonly Change[])[];
  readonly ask: (changes: readonly Change[]) => Trial;
  /** As it stands in the better book. */
  readonly stands: number;
}

/** What reaches as far as in the worse book with the least of edits; else what does most. */
const farthestFirst = (a: Trial, b: Trial): number =>
  Number(b.reach === 2) - Number(a.reach === 2) || (a.reach === 2 ? a.edits - b.edits : 0) || b.use - a.use;

/** As few changes as tell everything: each time the one that explains most of what is left. Then of these, to each what does most. */
const covered = (trials: ReadonlyMap<Case, readonly Trial[]>, changes: readonly Change[]): Map<Case, Change> => {
  const explained = new Map(changes.map((change): [Change, Case[]] => [change, []]));
  for (const [one, all] of trials) for (const { by, reach } of all) if (reach === 2) explained.get(by[0]!)?.push(one);
  const done = new Set<Case>();
  const chosen = new Set<Change>();
  for (;;) {
    let best: { readonly change: Change; readonly left: readonly Case[]; readonly weight: number } | undefined;
    for (const [change, cases] of explained) {
      const left = cases.filter((one) => !done.has(one));
      const weight = left.reduce((sum, one) => sum + one.weight, 0);
      if (weight > (best?.weight ?? 0)) best = { change, left, weight };
    }
    if (!best) break;
    chosen.add(best.change);
    for (const one of best.left) done.add(one);
  }
  const found = new Map<Case, Change>();
  for (const one of done) {
    const [most] = (trials.get(one) ?? [])
      .filter(({ by, reach }) => reach === 2 && chosen.has(by[0]!))
      .toSorted((a, b) => b.use - a.use);
    if (most) found.set(one, most.by[0]!);
  }
  return found;
};

/**
 * Several changes that together do what none does alone; else those that do most. `known` is what explains other findings, alike
 * ones first: two changes of which each does nothing alone are found by that.
 */
const together = (one: Case, trials: readonly Trial[], known: readonly (readonly Change[])[]): Cause => {
  const alone = new Map(trials.map((trial) => [trial.by[0]!, trial]));
  const isOwn = (change: Change): boolean => alone.has(change);
  const alike = known.find((by) => by.length > 1 && by.every(isOwn) && one.ask(by).reach === 2);
  if (alike) return { by: alike, enough: true };
  const sorted = trials.toSorted(farthestFirst);
  const order = [...new Set([...known.flat().filter(isOwn), ...sorted.flatMap(({ by }) => by)])];
  let best = sorted[0];
  if (!best) return { by: [], enough: false };
  let fronts = [...new Set([best, ...order.flatMap((change) => alone.get(change) ?? [])])].slice(0, FIRST);
  for (let size = 2; size <= TOGETHER; size++) {
    const nexts: Trial[] = [];
    for (const { by } of fronts) {
      const [most] = order
        .filter((change) => !by.includes(change))
        .slice(0, NEXT)
        .map((change) => one.ask([...by, change]))
        .toSorted(farthestFirst);
      if (most?.reach === 2) return { by: most.by, enough: true };
      if (most) nexts.push(most);
    }
    fronts = nexts.filter(({ use }) => use > best!.use + EFFECT).toSorted(farthestFirst);
    best = fronts[0] ?? best;
  }
  return { by: best.use > one.stands + EFFECT ? best.by : [], enough: false };
};

const byKey = ({ findings }: Machine): ReadonlyMap<string, Finding> => new Map(findings.map((one) => [one.key, one]));

/** The findings that are better in one machine than in another, and why; `changes` lead from `worse` to `better`, or back. */
function* causesIn(
  asker: Asker,
  { better, worse, keys, changes, schema, step }: Parts,
): Generator<null, ReadonlyMap<string, Cause>, void> {
  const [good, bad] = [byKey(better), byKey(worse)];
  const edits = new Map(
    changes.map((change) => [change, settingBack(change.paths, worse.book.tree, better.book.tree, schema)]),
  );
  const caseOf = (key: string): Case => {
    const [was, is] = [bad.get(key), good.get(key)];
    const wanted = badness[was?.verdict ?? 'holds'];
    const toFail = was?.verdict === 'fails';
    const read = readBy(was, is);
    // One scenario in which it fails is enough to know that it fails, and takes a fraction of the time.
    const fixed = ((is ?? was)?.scenario ?? [])
      .filter(({ path }) => better.snapshot.stated(path) && asker.rangeAt(path) !== null)
      .map(({ path, number }): Edit => ({ path, text: asker.write(path, number, 12) }));
    return {
      key,
      code: (is ?? was)?.code ?? key,
      weight: wanted,
      stands: useOf(is, toFail),
      candidates: [
        changes.filter((change) => used(change, read)),
        changes.filter((change) => !used(change, read) && mayBeMeant(change, read)),
      ],
      ask: (by) => {
        const made = by.flatMap((change) => edits.get(change) ?? []);
        const free = fixed.filter(({ path }) => !made.some((edit) => within(path, edit.path)));
        const [finding] = asker.ask([...free, ...made], [key]);
        const got = badness[finding?.verdict ?? 'not-stated'];
        const reach = got >= wanted ? 2 : got === badness.open ? 1 : 0;
        return { by, reach, use: useOf(finding, toFail), edits: made.length };
      },
    };
  };

  const trials = new Map<Case, readonly Trial[]>();
  for (const key of keys) {
    step(key);
    const one = caseOf(key);
    const all: Trial[] = [];
    for (const some of one.candidates)
      if (!all.some(({ reach }) => reach === 2)) all.push(...some.map((change) => one.ask([change])));
    trials.set(one, all);
    yield null;
  }
  const found = new Map<string, Cause>();
  const single = covered(trials, changes);
  for (const [one, change] of single) found.set(one.key, { by: [change], enough: true });
  const codes = new Map([...trials.keys()].map(({ key, code }) => [key, code]));
  /** What explains other findings: those of the same code first, then what explains most. */
  const knownFor = ({ code }: Case): readonly (readonly Change[])[] => {
    const all = [...found].filter(([, { enough }]) => enough);
    const counts = new Map<Change, number>();
    for (const [, { by }] of all) counts.set(by[0]!, (counts.get(by[0]!) ?? 0) + 1);
    return [
      ...all.flatMap(([key, { by }]) => (codes.get(key) === code ? [by] : [])),
      ...[...counts].toSorted(([, a], [, b]) => b - a).map(([change]) => [change]),
    ];
  };
  for (const [one, all] of trials) {
    if (single.has(one)) continue;
    step(one.key);
    found.set(one.key, together(one, all, knownFor(one)));
    yield null;
  }
  return found;
}

interface Parts {
  readonly better: Machine;
  readonly worse: Machine;
  readonly keys: readonly string[];
  readonly changes: readonly Change[];
  readonly schema: BookSchema;
  readonly step: (key: string) => void;
}

/**
 * The changes behind every verdict that moved.
 * @param before one machine
 * @param after the other
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
  const changes = changesBetween(before.book.tree, after.book.tree, schema);
  const keysOf = (...kinds: readonly Kind[]): readonly string[] =>
    moved.filter((one) => kinds.includes(kindOf(one))).map(({ key }) => key);
  const found = new Map<string, Cause>();
  const look = (better: Machine, worse: Machine, keys: readonly string[]): void => {
    const parts: Parts = { better, worse, keys, changes, schema, step };
    const study = {
      name: 'causes',
      *run(asker: Asker): Generator<null, null, void> {
        for (const [key, cause] of yield* causesIn(asker, parts)) found.set(key, cause);
        return null;
      },
    };
    if (keys.length > 0) better.study(study, null);
  };
  look(after, before, keysOf('cured', 'better'));
  look(before, after, keysOf('broken', 'worse'));
  return { changes, of: found };
};
