/** Which other motors would do: every part of the catalogue and the book, tried by running the checks with it. */
import type { Asker, Study } from '../../../contract/index.ts';
import type { Edit, Verdict } from '../../../kernel/index.ts';
import { currentSteps, setTo, suitKeys, torqueUseOf, worstVerdict, type OfMotor } from './motors.ts';

export interface Substitute {
  readonly part: string;
  readonly edits: readonly Edit[];
  /** Current to which the driver is set for it. */
  readonly current: string;
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

/** Currents to try: the present one first, then others of the switch or of the trimmer. */
const currents = (asker: Asker, driver: string): readonly (number | null)[] => {
  const now = asker.rangeAt(`drivers.${driver}.current`);
  if (!now) return [null];
  const steps = currentSteps(asker, driver);
  const near = steps.length > 0 ? steps : [0.5, 0.7, 1.4, 2].map((factor) => now.high * factor);
  return [null, ...near.filter((ampere) => Math.abs(ampere - now.high) > 1e-6)];
};

const better = (a: Substitute, b: Substitute): number =>
  rank[a.verdict] - rank[b.verdict] || Number(a.isOverkill) - Number(b.isOverkill) || (b.use ?? 0) - (a.use ?? 0);

function* run(asker: Asker, of: OfMotor): Generator<Substitutes, Substitutes, void> {
  const keys = suitKeys(asker, [of]);
  const now = asker.textAt(`motors.${of.motor}.part`);
  const driver = asker.textAt(`motors.${of.motor}.driver`);
  const names = asker.partsOf('stepper').filter((name) => name !== now);
  const parts: Substitute[] = [];
  const result = (left: number): Substitutes => ({ of, parts: [...parts].sort(better), left });
  for (const [i, part] of names.entries()) {
    const swap: Edit[] = [{ path: `motors.${of.motor}.part`, text: part }];
    // A motor with one coil a phase has no other connection.
    if (asker.textAt(`motors.${of.motor}.winding`) !== null && asker.textAt(`parts.${part}`) === null)
      swap.push({ path: `motors.${of.motor}.winding`, text: null });
    let best: Substitute | undefined;
    for (const ampere of driver === null ? [null] : currents(asker, driver)) {
      const edits = ampere === null || driver === null ? swap : [...swap, setTo(asker, driver, ampere)];
      const findings = asker.ask(edits, keys);
      const verdict = worstVerdict(findings);
      const use = torqueUseOf(findings, of);
      const bad = findings.find((finding) => finding.verdict === verdict && verdict !== 'holds');
      const found: Substitute = {
        part,
        edits,
        current: edits.at(-1)!.path.endsWith('.current')
          ? edits.at(-1)!.text!
          : (asker.textAt(`drivers.${driver}.current`) ?? ''),
        verdict,
        ...(use === undefined ? {} : { use }),
        isOverkill: use !== undefined && use < OVERKILL,
        ...(bad ? { because: bad.sentence } : {}),
      };
      if (!best || better(found, best) < 0) best = found;
      yield result(names.length - i);
      if (best.verdict === 'holds') break;
    }
    if (best) parts.push(best);
  }
  return result(0);
}

export const substitutes: Study<OfMotor, Substitutes> = { name: 'motion.substitutes', run };
