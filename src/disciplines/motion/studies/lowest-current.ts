/** The lowest current at which the motors of a driver still do their work: cooler, quieter, less pinch. */
import type { Asker, Study } from '../../../contract/index.ts';
import type { Verdict } from '../../../kernel/index.ts';
import {
  currentSteps,
  firstGood,
  movedBy,
  pullKeys,
  setTo,
  told,
  torqueUseOf,
  workKeys,
  worstVerdict,
} from './motors.ts';

export interface CurrentTried {
  /** As marked on the driver [A]. */
  readonly ampere: number;
  readonly text: string;
  /** Worst use of torque among the motors. */
  readonly use: number;
  readonly verdict: Verdict;
  /** Everything that can be told holds, with the margin that is advised. */
  readonly isEnough: boolean;
}

export interface LowestCurrent {
  readonly driver: string;
  readonly now: string;
  /** What was tried, least current first. */
  readonly tried: readonly CurrentTried[];
  /** The lowest that is enough; nothing when none at or below the present one is sure to be. */
  readonly lowest?: CurrentTried;
  /** Heat of the copper at the lowest, as a share of that at the present setting. */
  readonly heat?: number;
  /** How the switches of the driver stand at the lowest. */
  readonly settings: {
    readonly microsteps: string | null;
    readonly current: string | null;
    readonly standstill: string | null;
  };
}

/** A trimmer is tried at this many currents, evenly in ratio, down to a quarter of the present one. */
const TRIMMER = 9;

const candidatesOf = (asker: Asker, driver: string, now: number): readonly number[] => {
  const steps = currentSteps(asker, driver).filter((ampere) => ampere <= now * 1.001);
  if (steps.length > 0) return steps;
  return Array.from({ length: TRIMMER }, (_, i) => now * 0.25 ** (1 - i / (TRIMMER - 1)));
};

export interface LowestCurrentArguments {
  readonly driver: string;
  /** Try every position, for a figure, and not only those on the way to the lowest. */
  readonly all?: boolean;
}

function* run(
  asker: Asker,
  { driver, all = false }: LowestCurrentArguments,
): Generator<LowestCurrent, LowestCurrent, void> {
  const path = `drivers.${driver}.current`;
  const now = asker.rangeAt(path);
  const motors = movedBy(asker, driver);
  const keys = workKeys(asker, motors);
  const pulls = new Set(pullKeys(asker, motors));
  const tried = new Map<number, CurrentTried>();
  const microsteps = asker.textAt(`drivers.${driver}.microsteps`);
  const standstill = asker.textAt(`drivers.${driver}.standstill-current`);
  const result = (): LowestCurrent => {
    const list = [...tried.values()].sort((a, b) => a.ampere - b.ampere);
    const lowest = list.find(({ isEnough }) => isEnough);
    return {
      driver,
      now: now?.text ?? '',
      tried: list,
      ...(lowest && now ? { lowest, heat: (lowest.ampere / now.high) ** 2 } : {}),
      settings: { microsteps, current: lowest?.text ?? null, standstill },
    };
  };
  if (!now || keys.length === 0) return result();
  const candidates = candidatesOf(asker, driver, now.high);
  const holds = new Map<number, boolean>();
  /** Tries a current with everything; true when it pulls and holds what it must. */
  const attempt = (ampere: number): boolean => {
    const known = holds.get(ampere);
    if (known !== undefined) return known;
    const edit = setTo(asker, driver, ampere);
    const findings = asker.ask([edit], keys);
    const uses = motors.map((of) => torqueUseOf(findings, of) ?? NaN);
    const pulling = findings.filter(({ key }) => pulls.has(key)).every(({ verdict }) => verdict === 'holds');
    const verdict = worstVerdict(told(asker, findings));
    const isEnough = pulling && verdict === 'holds';
    tried.set(ampere, { ampere, text: edit.text!, use: Math.max(...uses), verdict, isEnough });
    holds.set(ampere, pulling);
    return pulling;
  };
  // More current never takes torque away, so that what pulls enough lies in one piece at the top.
  const first = firstGood(candidates.length, (index) => attempt(candidates[index]!));
  yield result();
  // Where the least that pulls hunts or rings, more may not.
  for (const ampere of candidates.slice(first)) {
    attempt(ampere);
    if (tried.get(ampere)!.isEnough) break;
    yield result();
  }
  if (all)
    for (const ampere of candidates) {
      attempt(ampere);
      yield result();
    }
  return result();
}

export const lowestCurrent: Study<LowestCurrentArguments, LowestCurrent> = { name: 'motion.lowest-current', run };
