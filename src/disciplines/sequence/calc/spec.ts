/** Everything that a search needs, as plain data: chart, plant, inputs and faults, all times in ticks. */
import type { Chart } from '../facts.ts';

/** Ends of an axis and what lies between; a hoist is up at `MAX` and its line is slack at `MIN`. */
export const [MIN, BETWEEN, MAX] = [0, 1, 2] as const;

export interface AxisSpec {
  readonly name: string;
  /** A load hangs or stands on it. */
  readonly raising: boolean;
  /** Most ticks of a travel from end to end, and of one at homing speed. */
  readonly moveTicks: number;
  readonly homeTicks: number;
  /** Where its home switch is. */
  readonly homeEnd: 0 | 2;
  /** Held up without power where it is up. */
  readonly catches: boolean;
  /** Comes down without power. */
  readonly sinks: boolean;
  /** Its fall is declared harmless. */
  readonly harmless: boolean;
}

export interface InputSpec {
  readonly name: string;
  readonly kind: 'switch' | 'stop' | 'door' | 'button' | 'sensor';
  /** Of a switch: what it feels. */
  readonly feels: { readonly axis: number; readonly end: 0 | 2 } | null;
  /** Comes and goes within a tick; nothing asks whether it is on. */
  readonly pulse: boolean;
}

export type FaultSpec =
  | { readonly kind: 'dead' | 'stuck' | 'chatters'; readonly input: number; readonly intermittent: boolean }
  | { readonly kind: 'stalls'; readonly axis: number; readonly intermittent: boolean }
  | { readonly kind: 'power-lost' | 'reset'; readonly intermittent: boolean };

/** What the author says of a state. */
export interface StateMarks {
  readonly is: 'ready' | 'latched' | null;
  readonly play: 'begun' | 'ended' | 'lost' | null;
  readonly travelsLow: boolean;
  readonly service: boolean;
}

export interface CycleSpec {
  readonly chart: Chart;
  /** By state of the chart. */
  readonly marks: readonly StateMarks[];
  readonly axes: readonly AxisSpec[];
  /** In the order in which changes are told: stops, doors, switches, sensors, buttons. */
  readonly inputs: readonly InputSpec[];
  readonly faults: readonly FaultSpec[];
  /** Kinds of faults along one trace. */
  readonly atMost: number;
  readonly tells: readonly string[];
  /** Inputs that cut the drives by themselves, and the one that is held in service. */
  readonly cutBy: readonly number[];
  readonly hold: number | null;
  readonly mostStates: number;
}

/** A fault in words. */
export const faultWords = (spec: Pick<CycleSpec, 'axes' | 'inputs'>, fault: FaultSpec): string => {
  switch (fault.kind) {
    case 'dead':
      return `${spec.inputs[fault.input]!.name} never closes`;
    case 'stuck':
      return `${spec.inputs[fault.input]!.name} is stuck on`;
    case 'chatters':
      return `${spec.inputs[fault.input]!.name} chatters`;
    case 'stalls':
      return `${spec.axes[fault.axis]!.name} stalls`;
    case 'power-lost':
      return 'power is lost';
    case 'reset':
      return 'the controller restarts';
  }
};

/** Bits that are set. */
export const popcount = (x: number): number => {
  let n = 0;
  for (let rest = x; rest; rest &= rest - 1) n++;
  return n;
};
