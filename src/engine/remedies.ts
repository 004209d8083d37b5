/** Remedies: levers of a finding tried on a copy of the book, every check run again, and what else they break. */
import type { Asker } from '../contract/index.ts';
import type { Edit, Finding, Lever, Remedy, Verdict } from '../kernel/index.ts';
import type { Wanted } from './verdict.ts';

/** What is tried without forming every finding. */
export interface Trials {
  /** The number that an edit puts at its path, as it would be read; null when it is no quantity or cannot stand there. */
  readonly numberOf: (edit: Edit) => number | null;
  /** Whether the book can still be read once the edits stand in its text. */
  readonly readsWell: (edits: readonly Edit[]) => boolean;
  /** Whether the finding would be as good as wanted. A question that no longer arises is no answer to it. */
  readonly works: (edits: readonly Edit[], key: string, wanted: Wanted) => boolean;
}

const rankOf: Record<Verdict, number> = { holds: 0, tight: 1, 'not-stated': 1, open: 2, fails: 3 };
/** How far from the stated number a lever may be turned when it names no bound. */
const REACH = 5;
/** The bound between what works and what does not is narrowed to this ratio: less than a builder would set. */
const NEAR = 1.005;
/** Settings tried on the way when the farthest one does not work. */
const ON_THE_WAY = [0.12, 0.25, 0.5, 0.75];
/** A remedy that leaves the verdict as it is must at least bring this share of the use. */
const WORTH = 0.9;

/**
 * The setting nearest to the stated one at which the finding is as good as wanted, written in few figures and within
 * the bounds of the lever; null when no setting within reach is.
 */
const turn = (
  asker: Asker,
  key: string,
  { turn: path, toward, least, most }: Extract<Lever, { turn: string }>,
  wanted: Wanted,
  { numberOf, works }: Trials,
): Edit | null => {
  const now = asker.rangeAt(path);
  if (!now || !(now.low > 0)) return null;
  const lower = toward === 'lower';
  const start = lower ? now.low : now.high;
  const far = lower ? (least ?? start / REACH) : (most ?? start * REACH);
  if (lower ? !(0 < far && far < start) : !(far > start)) return null;
  const edit = (x: number, figures: number): Edit => ({ path, text: asker.write(path, x, figures) });
  const good = (x: number): boolean => works([edit(x, 6)], key, wanted);
  const positions = asker.positionsAt(path);
  if (positions) {
    const onTheWay = positions.filter((x) => (lower ? x < start && x >= far : x > start && x <= far));
    const nearest = onTheWay.sort((a, b) => Math.abs(a - start) - Math.abs(b - start)).find(good);
    return nearest === undefined ? null : edit(nearest, 3);
  }
  const between = (share: number): number => start * (far / start) ** share;

  const reached = good(far) ? 1 : ON_THE_WAY.find((share) => good(between(share)));
  if (reached === undefined) return null;
  // The nearest that works lies between the last that does not and the first that does.
  let bad = reached === 1 ? start : between(ON_THE_WAY[ON_THE_WAY.indexOf(reached) - 1] ?? 0);
  let fine = reached === 1 ? far : between(reached);
  while (Math.max(bad / fine, fine / bad) > NEAR) {
    const middle = Math.sqrt(bad * fine);
    if (good(middle)) fine = middle;
    else bad = middle;
  }
  // Two figures are what a builder would write; more only where two would overshoot.
  const past = (x: number): boolean => (lower ? x < far * (1 - 1e-9) : x > far * (1 + 1e-9));
  for (const figures of [2, 3]) {
    for (const nudge of [1, lower ? 0.98 : 1.02, lower ? 0.95 : 1.05]) {
      const candidate = edit(fine * nudge, figures);
      const written = numberOf(candidate);
      if (written === null || past(written)) continue;
      if (works([candidate], key, wanted)) return candidate;
    }
  }
  return null;
};

const consequences = (asker: Asker, after: readonly Finding[], key: string): Pick<Remedy, 'alsoCures' | 'breaks'> => {
  const before = new Map(asker.findings.map((finding) => [finding.key, finding.verdict]));
  const others = after.filter((finding) => finding.key !== key);
  return {
    alsoCures: others
      .filter((finding) => {
        const from = before.get(finding.key);
        return (from === 'fails' || from === 'open') && (finding.verdict === 'holds' || finding.verdict === 'tight');
      })
      .map((finding) => finding.key),
    breaks: others.flatMap(({ key: other, verdict }) => {
      const from = before.get(other) ?? 'not-stated';
      // What can no longer be told is lost as well.
      const lost = verdict === 'not-stated' && (from === 'holds' || from === 'tight');
      const worse = verdict !== 'not-stated' && rankOf[verdict] > rankOf[from];
      return lost || worse ? [{ key: other, before: from, after: verdict }] : [];
    }),
  };
};

/** Whether a finding is better than before: a better verdict, or the same one with clearly less use of the limit. */
const isBetter = (before: Finding, after: Finding): boolean => {
  if (after.verdict === 'fails' || after.verdict === 'not-stated') return false;
  if (after.verdict === 'open' && after.reason?.kind !== 'doubt') return false;
  const [from, to] = [rankOf[before.verdict], rankOf[after.verdict]];
  if (to !== from || after.verdict === 'open') return to < from;
  return before.use !== undefined && after.use !== undefined && after.use.worst < before.use.worst * WORTH;
};

const settle = (
  asker: Asker,
  finding: Finding,
  edits: readonly Edit[],
  says: string,
  { readsWell }: Trials,
): Remedy | null => {
  const { key } = finding;
  const alone = asker.ask(edits, [key]).find((one) => one.key === key);
  if (alone && !isBetter(finding, alone)) return null;
  if (!readsWell(edits)) return null;
  const after = asker.ask(edits);
  const result = after.find((one) => one.key === key);
  return {
    edits: edits.map(({ path, text }) => ({ path, before: asker.textAt(path), after: text })),
    says,
    // Where the question no longer arises there is nothing left that could fail.
    verdict: result?.verdict ?? 'holds',
    ...(result?.use ? { percent: result.use.worst } : {}),
    ...consequences(asker, after, key),
  };
};

/** Edits of one lever, most wanted first; substitutes are tried one by one. */
function* attempts(
  asker: Asker,
  { key }: Finding,
  lever: Lever,
  trials: Trials,
): Generator<{ readonly edits: readonly Edit[]; readonly says: string }> {
  if ('set' in lever) yield { edits: lever.set, says: lever.means };
  else if ('turn' in lever) {
    const edit = turn(asker, key, lever, 'holds', trials) ?? turn(asker, key, lever, 'tight', trials);
    if (!edit) return;
    const now = asker.textAt(lever.turn) ?? asker.rangeAt(lever.turn)?.text;
    yield { edits: [edit], says: `${lever.means}: ${now ?? 'not stated'} → ${edit.text}` };
  } else
    for (const part of asker.partsOf(lever.kind)) {
      if (part === asker.textAt(lever.substitute)) continue;
      const edits = [{ path: lever.substitute, text: part }];
      if (trials.works(edits, key, 'tight')) yield { edits, says: `${lever.means}: ${part}` };
    }
}

export interface RemedyArguments extends Trials {
  readonly key: string;
  /** The most remedies of one lever; substitutes can be many. */
  readonly perLever?: number;
}

/** The study behind "what would make this hold": tries every lever of a finding, the least harmful remedies first. */
export function* remediesFor(
  asker: Asker,
  { key, perLever = 2, ...trials }: RemedyArguments,
): Generator<readonly Remedy[], readonly Remedy[], void> {
  const finding = asker.findings.find((one) => one.key === key);
  const found: Remedy[] = [];
  for (const lever of finding?.levers ?? []) {
    let tried = 0;
    for (const { edits, says } of attempts(asker, finding!, lever, trials)) {
      const remedy = settle(asker, finding!, edits, says, trials);
      if (remedy) found.push(remedy);
      yield [...found];
      if (remedy && ++tried >= perLever) break;
    }
  }
  const harm = (remedy: Remedy) =>
    remedy.breaks.length * 2 + (remedy.verdict === 'holds' ? 0 : 1) - remedy.alsoCures.length * 0.1;
  return [...found].sort((a, b) => harm(a) - harm(b));
}
