/** Remedies: levers of a finding tried on a copy of the book, every check run again, and what else they break. */
import type { Asker } from '../contract/index.ts';
import type { Edit, Finding, Lever, Remedy, Verdict } from '../kernel/index.ts';

const rankOf: Record<Verdict, number> = { holds: 0, tight: 1, 'not-stated': 1, open: 2, fails: 3 };
/** How far from the stated number a lever may be turned when it names no bound. */
const REACH = 5;

const good = (finding: Finding | undefined, wanted: 'holds' | 'tight'): boolean =>
  finding === undefined || finding.verdict === 'holds' || (wanted === 'tight' && finding.verdict === 'tight');

const one = (asker: Asker, key: string, edits: readonly Edit[]): Finding | undefined =>
  asker.ask(edits, [key]).find((finding) => finding.key === key);

/**
 * The setting nearest to the stated one at which the finding is as good as wanted, written in few figures on the safe side;
 * null when no setting within reach is.
 */
const turn = (
  asker: Asker,
  key: string,
  lever: Extract<Lever, { turn: string }>,
  wanted: 'holds' | 'tight',
): Edit | null => {
  const now = asker.rangeAt(lever.turn);
  if (!now || !(now.low > 0)) return null;
  const lower = lever.toward === 'lower';
  const start = lower ? now.low : now.high;
  const far = lower ? (lever.least ?? start / REACH) : (lever.most ?? start * REACH);
  const edit = (x: number, figures: number): Edit => ({ path: lever.turn, text: asker.write(lever.turn, x, figures) });
  const works = (x: number): boolean => good(one(asker, key, [edit(x, 6)]), wanted);
  if (lower ? !(far < start) : !(far > start)) return null;
  if (!works(far)) return null;
  let [bad, fine] = [start, far];
  for (let i = 0; i < 12; i++) {
    const middle = Math.sqrt(bad * fine);
    if (works(middle)) fine = middle;
    else bad = middle;
  }
  // Two figures are what a builder would write; more only where two would overshoot the bound.
  for (const figures of [2, 3]) {
    for (const nudge of [1, lower ? 0.98 : 1.02, lower ? 0.95 : 1.05]) {
      const candidate = edit(fine * nudge, figures);
      if (good(one(asker, key, [candidate]), wanted)) return candidate;
    }
  }
  return null;
};

const consequences = (asker: Asker, after: readonly Finding[], key: string): Pick<Remedy, 'alsoCures' | 'breaks'> => {
  const before = new Map(asker.findings.map((finding) => [finding.key, finding]));
  const alsoCures: string[] = [];
  const breaks: { key: string; before: Verdict; after: Verdict }[] = [];
  for (const finding of after) {
    const was = before.get(finding.key);
    if (finding.key === key) continue;
    const from = was?.verdict ?? 'not-stated';
    if (rankOf[finding.verdict] > rankOf[from] && finding.verdict !== 'not-stated')
      breaks.push({ key: finding.key, before: from, after: finding.verdict });
    else if (was && rankOf[finding.verdict] < rankOf[from] && (from === 'fails' || from === 'open'))
      alsoCures.push(finding.key);
  }
  return { alsoCures, breaks };
};

const settle = (asker: Asker, finding: Finding, edits: readonly Edit[], says: string): Remedy | null => {
  const after = asker.ask(edits);
  const result = after.find(({ key }) => key === finding.key);
  if (
    result &&
    rankOf[result.verdict] >= rankOf[finding.verdict] &&
    !(result.use && finding.use && result.use.worst < finding.use.worst * 0.9)
  )
    return null;
  if (result && (result.verdict === 'fails' || result.verdict === 'not-stated')) return null;
  return {
    edits: edits.map(({ path, text }) => ({ path, before: asker.textAt(path), after: text })),
    says,
    verdict: result?.verdict ?? 'holds',
    ...(result?.use ? { percent: result.use.worst } : {}),
    ...consequences(asker, after, finding.key),
  };
};

/** Edits of one lever, most wanted first; substitutes are tried one by one. */
function* attempts(asker: Asker, finding: Finding, lever: Lever): Generator<{ edits: readonly Edit[]; says: string }> {
  if ('set' in lever) yield { edits: lever.set, says: lever.means };
  else if ('turn' in lever) {
    const edit = turn(asker, finding.key, lever, 'holds') ?? turn(asker, finding.key, lever, 'tight');
    if (edit)
      yield { edits: [edit], says: `${lever.means}: ${asker.textAt(lever.turn) ?? 'not stated'} → ${edit.text}` };
  } else
    for (const part of asker.partsOf(lever.kind)) {
      if (part !== asker.textAt(lever.substitute))
        yield { edits: [{ path: lever.substitute, text: part }], says: `${lever.means}: ${part}` };
    }
}

export interface RemedyArguments {
  readonly key: string;
  /** The most remedies of one lever; substitutes can be many. */
  readonly perLever?: number;
}

/** The study behind "what would make this hold": tries every lever of a finding, the least harmful remedies first. */
export function* remediesFor(
  asker: Asker,
  { key, perLever = 2 }: RemedyArguments,
): Generator<readonly Remedy[], readonly Remedy[], void> {
  const finding = asker.findings.find((one_) => one_.key === key);
  const found: Remedy[] = [];
  for (const lever of finding?.levers ?? []) {
    let tried = 0;
    for (const { edits, says } of attempts(asker, finding!, lever)) {
      const remedy = settle(asker, finding!, edits, says);
      yield found;
      if (!remedy) continue;
      found.push(remedy);
      if (++tried >= perLever) break;
    }
  }
  const harm = (remedy: Remedy) =>
    remedy.breaks.length * 2 + (remedy.verdict === 'holds' ? 0 : 1) - remedy.alsoCures.length * 0.1;
  return [...found].sort((a, b) => harm(a) - harm(b));
}
