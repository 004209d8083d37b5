/** A way through the states of a search, told tick by tick. */
import type { Told } from './control.ts';
import type { Explorer } from './explore.ts';
import { faultWords, popcount } from './spec.ts';
import type { Surprise } from './surprise.ts';

/** One tick of a trace. */
export interface TraceStep {
  /** What surprised, in words; null where nothing did. */
  readonly surprise: string | null;
  /** Events that the controller had, states that it entered, in order. */
  readonly events: readonly string[];
  readonly entered: readonly string[];
  /** After the tick. */
  readonly state: string | null;
  readonly drives: boolean;
  readonly servo: string;
  readonly on: readonly string[];
  readonly lamps: readonly string[];
  /** By axis: place and motion. */
  readonly places: readonly number[];
  readonly motions: readonly (string | null)[];
}

export interface Trace {
  readonly steps: readonly TraceStep[];
  /** The step from which it goes on without an end; null when the trace ends. */
  readonly loop: number | null;
  /** Kinds of faults that came on the way. */
  readonly faults: number;
}

const surpriseWords = ({ spec, controls }: Explorer, { kind, about, toggles }: Surprise, on: number): string | null => {
  switch (kind) {
    case 'none':
      return null;
    case 'person':
      return `${spec.inputs[about]!.name} goes ${on & toggles ? 'on' : 'off'}`;
    case 'pulse':
      return `${controls.pulses[about]!.name}`;
    case 'sets-in':
      return faultWords(spec, spec.faults[about]!);
    case 'comes-back':
      return `${faultWords(spec, spec.faults[about]!)} again`;
    case 'goes-away':
      return `no longer: ${faultWords(spec, spec.faults[about]!)}`;
    case 'misread':
      return `${faultWords(spec, spec.faults[about]!)} again`;
    case 'power-back':
      return 'power comes back';
  }
};

/** What a motion is called. */
const motionWords = (motion: { readonly do: string; readonly to?: string } | null): string | null =>
  motion && (motion.to === undefined ? motion.do : `${motion.do} to ${motion.to}`);

const stepAt = (explorer: Explorer, state: number, surprise: string | null, told: readonly Told[]): TraceStep => {
  const { spec, controls, codec } = explorer;
  const { control, places } = codec.unpack(state);
  const known = controls.known[control]!;
  return {
    surprise,
    events: told.flatMap((one) => (one.kind === 'event' ? [one.name] : [])),
    entered: told.flatMap((one) => (one.kind === 'entered' ? [one.state] : [])),
    state: known.node?.id ?? null,
    drives: known.drives,
    servo: known.servo,
    on: spec.inputs.flatMap(({ name }, i) => (known.on & (1 << i) ? [name] : [])),
    lamps: spec.tells.filter((_, i) => known.lamps & (1 << i)),
    places: [...places],
    motions: known.told.map((motion, axis) => motionWords(controls.motions[axis]![motion]!)),
  };
};

/** Tells a way from state to state; the first is where power came. */
export const tell = (explorer: Explorer, states: readonly number[], loop: number | null): Trace => {
  const steps: TraceStep[] = [];
  states.forEach((state, i) => {
    const before = states[i - 1];
    if (before === undefined) {
      steps.push(stepAt(explorer, state, null, [{ kind: 'event', name: 'reset' }]));
      return;
    }
    const from = explorer.controls.known[explorer.codec.read(before, explorer.codec.control)]!;
    const to = explorer.controls.known[explorer.codec.read(state, explorer.codec.control)]!;
    let step: TraceStep | undefined;
    explorer.follows = true;
    explorer.expand(before, (next, _, _left, surprise) => {
      if (step || next !== state) return;
      const told: Told[] = [];
      explorer.controls.step(from, explorer.arrival, (one) => told.push(one));
      step = stepAt(explorer, state, surpriseWords(explorer, surprise, to.on), told);
    });
    explorer.follows = false;
    steps.push(step!);
  });
  const last = states.at(-1)!;
  return { steps, loop, faults: popcount(explorer.codec.read(last, explorer.codec.occurred)) };
};
