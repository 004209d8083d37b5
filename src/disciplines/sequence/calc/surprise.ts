/** What may surprise in a tick: a fault, or an act of a person. */
import { POWER_LOST, RESET, type Controls } from './control.ts';
import type { CycleSpec } from './spec.ts';

export type SurpriseKind =
  'none' | 'person' | 'pulse' | 'sets-in' | 'comes-back' | 'goes-away' | 'misread' | 'power-back';

export interface Surprise {
  readonly kind: SurpriseKind;
  /** Number of the input, pulse or fault that it is about. */
  readonly about: number;
  /** For the controller: number of a pulse, of a restart or of power lost. */
  readonly pulse: number;
  /** Inputs of persons that change, and inputs that are misread in this tick, a bit each. */
  readonly toggles: number;
  readonly misreads: number;
  /** A fault that sets in only where it makes a difference, or −1. */
  readonly wants: number;
}

const plain = (kind: SurpriseKind, about = 0, more: Partial<Surprise> = {}): Surprise => ({
  kind,
  about,
  pulse: 0,
  toggles: 0,
  misreads: 0,
  wants: -1,
  ...more,
});

/** Every surprise that there is, made once. */
export interface Surprises {
  readonly none: Surprise;
  readonly powerBack: Surprise;
  readonly persons: readonly Surprise[];
  readonly pulses: readonly Surprise[];
  readonly setsIn: readonly Surprise[];
  readonly comesBack: readonly Surprise[];
  readonly goesAway: readonly Surprise[];
  /** By fault; only of one that chatters. */
  readonly misreads: readonly (Surprise | null)[];
}

export const surprisesOf = (spec: CycleSpec, controls: Controls): Surprises => ({
  none: plain('none'),
  powerBack: plain('power-back', 0, { pulse: RESET }),
  persons: spec.inputs.flatMap(({ feels, pulse }, i) =>
    feels || pulse ? [] : [plain('person', i, { toggles: 1 << i })],
  ),
  pulses: controls.pulses.map((_, i) => plain('pulse', i, { pulse: i + 1 })),
  setsIn: spec.faults.map((fault, f) => {
    switch (fault.kind) {
      case 'reset':
        return plain('sets-in', f, { pulse: RESET });
      case 'power-lost':
        return plain('sets-in', f, { pulse: POWER_LOST });
      case 'stalls':
        return plain('sets-in', f);
      case 'chatters':
        return plain('sets-in', f, { misreads: 1 << fault.input });
      default:
        return plain('sets-in', f, { wants: f });
    }
  }),
  comesBack: spec.faults.map((_, f) => plain('comes-back', f)),
  goesAway: spec.faults.map((_, f) => plain('goes-away', f)),
  misreads: spec.faults.map((fault, f) =>
    fault.kind === 'chatters' ? plain('misread', f, { misreads: 1 << fault.input }) : null,
  ),
});
