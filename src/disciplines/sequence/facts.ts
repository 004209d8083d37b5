/** What Sequence tells the other trades: the chart of the cycle, and the one step function that plays it. */
import { factToken, type ModelToken } from '../../contract/index.ts';

/** What a guard asks. */
export type Condition =
  | { readonly kind: 'on'; readonly signal: string }
  | { readonly kind: 'in'; readonly state: string }
  | { readonly kind: 'counter'; readonly counter: string; readonly is: '<' | '>='; readonly than: number }
  | { readonly kind: 'not'; readonly of: Condition }
  | { readonly kind: 'all' | 'any'; readonly of: readonly Condition[] };

/** Where an axis is sent. */
export type Place = 'min' | 'between' | 'max';

/** What the controller is told to do. */
export type Action =
  | { readonly do: 'drives'; readonly on: boolean }
  | { readonly do: 'home' | 'jog' | 'hoist' | 'stop'; readonly axis: string }
  | { readonly do: 'move'; readonly axis: string; readonly to: Place }
  | { readonly do: 'drive'; readonly axis: string; readonly to: 'min' | 'max' }
  | { readonly do: 'lower'; readonly axis: string; readonly until: string | null }
  | { readonly do: 'servo'; readonly to: 'grip' | 'release' | 'off' }
  | { readonly do: 'lamp'; readonly signal: string; readonly on: boolean }
  | { readonly do: 'sound'; readonly signal: string }
  | { readonly do: 'count' | 'clear'; readonly counter: string }
  | { readonly do: 'raise'; readonly event: string };

export interface Transition {
  /** Event descriptors of SCXML: `z.done`, `z`, `*`; null without an event. */
  readonly events: readonly string[] | null;
  /** Ticks in its state after which it is due; null when it does not wait. */
  readonly after: number | null;
  readonly cond: Condition | null;
  /** Null: nothing is left or entered. */
  readonly target: string | null;
  /** Its own state is not left when the target lies inside it. */
  readonly internal: boolean;
  readonly actions: readonly Action[];
}

export interface ChartState {
  readonly id: string;
  readonly parent: string | null;
  /** Of a compound state; null for a state without children. */
  readonly initial: string | null;
  readonly final: boolean;
  readonly onentry: readonly Action[];
  readonly onexit: readonly Action[];
  readonly transitions: readonly Transition[];
}

export interface Chart {
  readonly initial: string;
  /** In document order. */
  readonly states: readonly ChartState[];
  /** Greatest value of each counter; it stays there. */
  readonly counters: Readonly<Record<string, number>>;
}

/** Where a chart stands. */
export interface ChartPoint {
  /** The state without children; null before the start and after the end. */
  readonly state: string | null;
  /** Ticks since it and each state around it was entered, outermost first. */
  readonly clocks: readonly number[];
  readonly counters: Readonly<Record<string, number>>;
  /** Inputs that are on. */
  readonly on: readonly string[];
}

export type ChartEvent =
  /** Power comes, or the controller restarts: from the initial state, whatever went before. */
  | { readonly kind: 'reset' }
  /** An input is believed to have changed: `NAME.on` or `NAME.off`. */
  | { readonly kind: 'input'; readonly signal: string; readonly on: boolean }
  /** Anything else from outside, such as `z.done`. */
  | { readonly kind: 'event'; readonly name: string }
  /** A tick has passed: clocks go on, and what is due happens. */
  | { readonly kind: 'time' };

/** The step function of a chart: pure, the same in search, play and tests of exported code. */
export interface ChartMachine {
  readonly start: ChartPoint;
  readonly transition: (point: ChartPoint, event: ChartEvent) => readonly [ChartPoint, readonly Action[]];
}

/** By `sequence`: the chart as the book has it, and how long a tick is [s]. */
export const cycleChart = factToken<{ readonly chart: Chart; readonly tick: number }>('sequence.chart');

/** Plays a chart. */
export const chartModel: ModelToken<Chart, ChartMachine> = { name: 'sequence.chart-machine' };
