/** Reads the cycle, the plant and the faults from the book. */
import { entry, need, type Context, type Seen } from '../../../contract/index.ts';
import { constant, greatest, NotStated, type Value } from '../../../kernel/index.ts';
import { travelProfile } from '../../motion/facts.ts';
import { cycleChart, type Action, type Chart, type ChartState, type Condition, type Transition } from '../facts.ts';
import type { AxisEntry, SequenceBook } from '../schema.ts';
import {
  verbs,
  type ActionEntry,
  type ConditionEntry,
  type CycleEntry,
  type FaultWord,
  type StateEntry,
  type TransitionEntry,
} from '../schema/keys.ts';
import { homingTime, ticksOfTime } from './formulas.ts';
import { signalsIn } from './guard-text.ts';
import { MAX, MIN, type AxisSpec, type CycleSpec, type FaultSpec, type InputSpec, type StateMarks } from './spec.ts';
import { isMotion } from './transition.ts';

export type SequenceContext = Context<SequenceBook>;

const FEWEST = 1;
const MOST_STATES = 3_000_000;
const AT_MOST_FAULTS = 2;
const ALL_FAULTS: readonly FaultWord[] = ['dead', 'stuck', 'chatters', 'stalls', 'power-lost', 'reset'];

/** The cycle, or NotStated. */
export const cycleOf = ({ book }: Pick<SequenceContext, 'book'>): Seen<CycleEntry> => {
  if (book.sequence === undefined) throw new NotStated(['sequence']);
  return book.sequence;
};

export const tickOf = (context: Pick<SequenceContext, 'book'>): Value => need(cycleOf(context), 'tick').tick;

/** Ticks of a time in the book; at least one, as nothing is seen sooner. */
const ticks = (context: SequenceContext, time: Value): number =>
  Math.max(FEWEST, ticksOfTime.work({ time, tick: tickOf(context) }).number);

const actionsOf = (entries: readonly Seen<ActionEntry>[] | undefined): readonly Action[] =>
  (entries ?? []).flatMap((given): readonly Action[] => {
    const verb = verbs.find((one) => given[one] !== undefined)!;
    switch (verb) {
      case 'drives':
        return [{ do: 'drives', on: given.drives === 'on' }];
      case 'home':
      case 'jog':
      case 'stop':
        return given[verb]!.map((axis) => ({ do: verb, axis }));
      case 'hoist':
        return [{ do: 'hoist', axis: given.hoist! }];
      case 'move':
        return [{ do: 'move', axis: given.move!, to: given.to as 'min' | 'between' | 'max' }];
      case 'drive':
        return [{ do: 'drive', axis: given.drive!, to: given.to as 'min' | 'max' }];
      case 'lower':
        return [{ do: 'lower', axis: given.lower!, until: given.until ?? null }];
      case 'servo':
        return [{ do: 'servo', to: given.servo! }];
      case 'lamp':
        return [{ do: 'lamp', signal: given.lamp!, on: given.to === 'on' }];
      case 'sound':
        return [{ do: 'sound', signal: given.sound! }];
      case 'count':
      case 'clear':
        return [{ do: verb, counter: given[verb]! }];
      case 'raise':
        return [{ do: 'raise', event: given.raise! }];
      default:
        // A wait is a time-out of its state.
        return [];
    }
  });

const conditionOf = (given: Seen<ConditionEntry> | undefined): Condition | null => {
  if (given === undefined) return null;
  const of: Condition[] = [
    ...(given.on ?? []).map((signal): Condition => ({ kind: 'on', signal })),
    ...(given.off ?? []).map((signal): Condition => ({ kind: 'not', of: { kind: 'on', signal } })),
    ...(given.in === undefined ? [] : [{ kind: 'in', state: given.in } as const]),
    ...Object.entries(given.below ?? {}).map(([counter, than]): Condition => ({
      kind: 'counter',
      counter,
      is: '<',
      than,
    })),
    ...Object.entries(given.reached ?? {}).map(([counter, than]): Condition => ({
      kind: 'counter',
      counter,
      is: '>=',
      than,
    })),
  ];
  return of.length === 1 ? of[0]! : { kind: 'all', of };
};

const transitionOf = (context: SequenceContext, given: Seen<TransitionEntry>, waits: number): Transition => {
  const isWaited = given.event === 'waited' && waits > 0;
  const events = isWaited
    ? null
    : given.on !== undefined
      ? [`${given.on}.on`]
      : given.off !== undefined
        ? [`${given.off}.off`]
        : given.done !== undefined
          ? [`${given.done}.done`]
          : (given.event?.split(/\s+/).filter(Boolean) ?? null);
  return {
    events,
    after: isWaited ? waits : given.after === undefined ? null : ticks(context, given.after),
    cond: conditionOf(given.cond),
    target: given.target ?? null,
    internal: given.internal ?? false,
    actions: actionsOf(given.actions),
  };
};

const stateOf = (context: SequenceContext, id: string, given: Seen<StateEntry>): ChartState => {
  const waits = (given.onentry ?? []).reduce(
    (sum, { wait }) => (wait === undefined ? sum : sum + ticks(context, wait)),
    0,
  );
  return {
    id,
    parent: given.in ?? null,
    initial: given.initial ?? null,
    final: given.final ?? false,
    onentry: actionsOf(given.onentry),
    onexit: actionsOf(given.onexit),
    transitions: (given.transitions ?? []).map((one) => transitionOf(context, one, waits)),
  };
};

/** The chart of the book, its times in ticks. */
export const chartOf = (context: SequenceContext): Chart => {
  const { initial, states } = need(cycleOf(context), 'initial', 'states');
  return {
    initial,
    states: Object.entries(states).map(([id, given]) => stateOf(context, id, given)),
    counters: { ...cycleOf(context).counters },
  };
};

const marksOf = (given: Seen<StateEntry>): StateMarks => ({
  is: given.is ?? null,
  play: given.play ?? null,
  travelsLow: given['travels-low'] ?? false,
  service: given.service ?? false,
});

const axisSpec = (context: SequenceContext, name: string): AxisSpec => {
  const axis: Seen<AxisEntry> = entry(context.book.axes, 'axes', name, 'axes');
  const { totalTime } = context.get(travelProfile, name);
  const approach = axis['approach-speed'];
  const homing =
    approach === undefined
      ? totalTime
      : greatest(totalTime, homingTime.work({ travel: need(axis, 'travel').travel, speed: approach }));
  const raising = axis.drive === 'hoist';
  const unpowered = raising ? need(axis, 'unpowered').unpowered : undefined;
  const isDeclared = (cycleOf(context)['harmless-falls'] ?? []).includes(name);
  return {
    name,
    raising,
    moveTicks: ticks(context, totalTime),
    homeTicks: ticks(context, homing),
    homeEnd: raising || (axis.switches?.min ?? []).length === 0 ? MAX : MIN,
    catches: axis['rests-on'] === 'a catch',
    sinks: raising && unpowered !== undefined && unpowered !== 'brake',
    // Slowed by its shorted windings it lands with what its own sheet reckons; a free fall is harmless only if somebody says so.
    harmless: isDeclared || (unpowered === 'windings shorted' && axis['harmless-energy'] !== undefined),
  };
};

const ORDER: readonly InputSpec['kind'][] = ['stop', 'door', 'switch', 'sensor', 'button'];

/** Inputs that chart and axes have to do with, in the order in which their changes are told. */
const inputsOf = (context: SequenceContext, chart: Chart, axes: readonly AxisSpec[]): readonly InputSpec[] => {
  const cycle = cycleOf(context);
  const { signals } = context.book;
  const feels = new Map<string, { axis: number; end: 0 | 2 }>();
  axes.forEach(({ name }, axis) => {
    const { switches, 'slack-switch': slack } = entry(context.book.axes, 'axes', name, 'axes');
    for (const one of switches?.min ?? []) feels.set(one, { axis, end: MIN });
    for (const one of switches?.max ?? []) feels.set(one, { axis, end: MAX });
    if (slack !== undefined) feels.set(slack, { axis, end: MIN });
  });
  const guards = chart.states.flatMap(({ transitions }) =>
    transitions.flatMap(({ cond }) => (cond ? signalsIn(cond) : [])),
  );
  const held = [
    ...guards,
    ...(cycle['cut-by'] ?? []),
    ...(cycle['hold-to-run'] === undefined ? [] : [cycle['hold-to-run']]),
  ];
  const told = chart.states.flatMap(({ transitions, onentry }) => [
    ...transitions.flatMap(({ events }) => (events ?? []).flatMap((one) => /^(.+)\.(?:on|off)$/.exec(one)?.[1] ?? [])),
    ...onentry.flatMap((action) => (action.do === 'lower' && action.until !== null ? [action.until] : [])),
  ]);
  const names = [...new Set([...feels.keys(), ...held, ...told])];
  return names
    .map((name): InputSpec => {
      const at = feels.get(name) ?? null;
      const kind = at ? 'switch' : need(entry(signals, 'signals', name, 'signals'), 'kind').kind;
      if (!ORDER.includes(kind as InputSpec['kind'])) throw new NotStated([`signals.${name}.kind`]);
      const isMomentary = kind === 'button' || kind === 'sensor';
      return { name, kind: kind as InputSpec['kind'], feels: at, pulse: isMomentary && !held.includes(name) };
    })
    .sort((a, b) => ORDER.indexOf(a.kind) - ORDER.indexOf(b.kind));
};

const faultsOf = (
  context: SequenceContext,
  axes: readonly AxisSpec[],
  inputs: readonly InputSpec[],
): readonly FaultSpec[] => {
  const { kinds = ALL_FAULTS, intermittent = [] } = cycleOf(context).faults ?? {};
  return [...kinds].flatMap((kind): readonly FaultSpec[] => {
    const comesAndGoes = [...intermittent].includes(kind);
    switch (kind) {
      case 'dead':
      case 'stuck':
      case 'chatters':
        return inputs.flatMap(({ feels }, input) => (feels ? [{ kind, input, intermittent: comesAndGoes }] : []));
      case 'stalls':
        return axes.map((_, axis) => ({ kind, axis, intermittent: comesAndGoes }));
      default:
        return [{ kind, intermittent: comesAndGoes }];
    }
  });
};

/** Everything that the search needs, plain. */
export const specOf = (context: SequenceContext): CycleSpec => {
  const cycle = cycleOf(context);
  const { chart } = context.get(cycleChart, 'sequence');
  const moved = [...new Set(chart.states.flatMap(({ onentry }) => onentry.filter(isMotion).map(({ axis }) => axis)))];
  const axes = moved.map((name) => axisSpec(context, name));
  const inputs = inputsOf(context, chart, axes);
  const inputNumber = (name: string): number => inputs.findIndex((one) => one.name === name);
  const hold = cycle['hold-to-run'];
  return {
    chart,
    marks: Object.values(need(cycle, 'states').states).map(marksOf),
    axes,
    inputs,
    faults: faultsOf(context, axes, inputs),
    atMost: cycle.faults?.['at-most'] ?? AT_MOST_FAULTS,
    tells: [...(cycle.tells ?? [])],
    cutBy: (cycle['cut-by'] ?? []).map(inputNumber),
    hold: hold === undefined ? null : inputNumber(hold),
    mostStates: cycle['most-states'] ?? MOST_STATES,
  };
};

/** A number of ticks as a time that knows how it was found. */
export const counted = (number: number, means: string): Value => constant(number, 'count', means);
