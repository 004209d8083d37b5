/** Which other motors would do: every part of the catalogue and the book, tried by running the checks with it. */
import type { Asker, Study } from '../../../contract/index.ts';
import type { Edit, Finding, Verdict } from '../../../kernel/index.ts';
import { windingsOf } from '../data/windings.ts';
import {
  bearKeys,
  currentSteps,
  firstGood,
  pullKeys,
  setTo,
  suitKeys,
  told,
  torqueUseOf,
  worstVerdict,
  type OfMotor,
} from './motors.ts';

export interface Substitute {
  readonly part: string;
  readonly edits: readonly Edit[];
  /** Current to which the driver is set for it. */
  readonly current: string;
  /** The worst of what was asked. A motor that fails on the way is not asked the rest. */
  readonly verdict: Verdict;
  readonly use?: number;
  /** Uses less than this machine will ever ask: a smaller one would do. */
  readonly isOverkill: boolean;
  readonly because?: string;
}

export interface Substitutes {
  readonly of: OfMotor;
  /** Those that do, least overkill first; then those that do not. */
  readonly parts: readonly Substitute[];
  readonly left: number;
}

const OVERKILL = 0.15;
const rank: Record<Verdict, number> = { holds: 0, tight: 1, open: 2, 'not-stated': 3, fails: 4 };

/** Currents to try, least first: the present one with the positions of the switch, or some of a trimmer. */
const currentsOf = (asker: Asker, driver: string | null): readonly (number | undefined)[] => {
  const now = driver === null ? null : asker.rangeAt(`drivers.${driver}.current`);
  if (driver === null || !now) return [undefined];
  const steps = currentSteps(asker, driver);
  const others = steps.length > 0 ? steps : [0.5, 0.7, 1.4, 2].map((factor) => now.high * factor);
  const list = [now.high, ...others.filter((ampere) => Math.abs(ampere - now.high) > 1e-6)].sort((a, b) => a - b);
  // What stands in the book is not written again.
  return list.map((ampere) => (ampere === now.high ? undefined : ampere));
};

/** A part in the place of a motor, connected as its leads allow; parts of the catalogue have one coil a phase. */
const swapFor = (asker: Asker, motor: string, part: string): readonly Edit[] => {
  const winding = asker.textAt(`motors.${motor}.winding`);
  const ways = windingsOf(Number(asker.textAt(`parts.${part}.leads`) ?? 4)) ?? [];
  const wanted = ways.find((way) => way === winding) ?? ways[0] ?? null;
  const text = wanted === 'coil' ? null : wanted;
  return [
    { path: `motors.${motor}.part`, text: part },
    ...(text === winding ? [] : [{ path: `motors.${motor}.winding`, text }]),
  ];
};

/** Of those that do, the one that is used most is the smallest; of the others the one that is nearest to it. */
const better = (a: Substitute, b: Substitute): number =>
  rank[a.verdict] - rank[b.verdict] ||
  Number(a.isOverkill) - Number(b.isOverkill) ||
  ((b.use ?? 0) - (a.use ?? 0)) * (rank[a.verdict] <= rank.tight ? 1 : -1);

/** Asks of one part, the quick questions first, at as few currents as tell. */
const tryPart = (asker: Asker, of: OfMotor, driver: string | null, part: string): Substitute => {
  const swap = swapFor(asker, of.motor, part);
  const currents = currentsOf(asker, driver);
  const present = currents.indexOf(undefined);
  const editsAt = (index: number): readonly Edit[] => {
    const ampere = currents[index];
    return ampere === undefined || driver === null ? swap : [...swap, setTo(asker, driver, ampere)];
  };
  const ask = (index: number, keys: readonly string[]): readonly Finding[] =>
    told(asker, asker.ask(editsAt(index), keys));
  const holds = (index: number, keys: readonly string[]): boolean => worstVerdict(ask(index, keys)) === 'holds';
  const answer = (index: number, findings: readonly Finding[]): Substitute => {
    const verdict = worstVerdict(findings);
    const use = torqueUseOf(findings, of);
    const bad = findings.find((finding) => finding.verdict === verdict && verdict !== 'holds');
    const edits = editsAt(index);
    const set = edits.find(({ path }) => path.endsWith('.current'))?.text;
    return {
      part,
      edits,
      current: set ?? (driver === null ? '' : (asker.textAt(`drivers.${driver}.current`) ?? '')),
      verdict,
      ...(use === undefined ? {} : { use }),
      isOverkill: use !== undefined && use < OVERKILL,
      ...(bad ? { because: bad.sentence } : {}),
    };
  };
  const [bear, pull] = [bearKeys(asker, of), pullKeys(asker, [of])];
  // Less current is never a harm to copper and driver, more never to the torque.
  const most = currents.length - 1 - firstGood(currents.length, (i) => holds(currents.length - 1 - i, bear));
  if (most < 0) return answer(0, ask(0, [...bear, ...pull]));
  const there = Math.min(present, most);
  const enough = holds(there, pull) ? there : most > there && holds(most, pull) ? most : -1;
  if (enough < 0) return answer(most, ask(most, [...bear, ...pull]));
  const all = suitKeys(asker, of);
  const found = answer(enough, ask(enough, all));
  if (found.verdict === 'holds' && enough === present) return found;
  // Less current is calmer, and nearer to what is set.
  const least = firstGood(enough, (index) => holds(index, pull));
  if (least === enough) return found;
  const calmer = answer(least, ask(least, all));
  return rank[calmer.verdict] <= rank[found.verdict] ? calmer : found;
};

function* run(asker: Asker, of: OfMotor): Generator<Substitutes, Substitutes, void> {
  const now = asker.textAt(`motors.${of.motor}.part`);
  const driver = asker.textAt(`motors.${of.motor}.driver`);
  const names = asker.partsOf('stepper').filter((name) => name !== now);
  const parts: Substitute[] = [];
  const result = (left: number): Substitutes => ({ of, parts: [...parts].sort(better), left });
  for (const [i, part] of names.entries()) {
    parts.push(tryPart(asker, of, driver, part));
    yield result(names.length - 1 - i);
  }
  return result(0);
}

export const substitutes: Study<OfMotor, Substitutes> = { name: 'motion.substitutes', run };
