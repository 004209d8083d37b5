/**
 * One event, one macrostep: the algorithm of W3C SCXML 1.0, appendix D, without parallel, history and script.
 * Everything that plays a chart goes through here.
 */
import type { Action, Chart, ChartEvent, ChartMachine, ChartPoint, Condition, Transition } from '../facts.ts';
import { NoSolution } from '../../../kernel/index.ts';

/** More steps in one event than any chart needs; beyond, it goes round in a ring. */
export const MOST_STEPS = 64;

export interface Node {
  readonly index: number;
  readonly id: string;
  readonly parent: Node | null;
  /** Itself and what is around it, outermost first. */
  readonly line: readonly Node[];
  readonly level: number;
  readonly initial: string | null;
  readonly final: boolean;
  readonly onentry: readonly Action[];
  readonly onexit: readonly Action[];
  readonly transitions: readonly (Transition & { readonly index: number })[];
  /** Axes that its own entry sets in motion. */
  readonly moves: readonly string[];
}

export interface Compiled {
  readonly chart: Chart;
  readonly nodes: readonly Node[];
  readonly byId: ReadonlyMap<string, Node>;
  /** All transitions, in document order, with the state they belong to. */
  readonly transitions: readonly { readonly from: Node; readonly transition: Transition }[];
}

const motion: ReadonlySet<string> = new Set(['home', 'move', 'jog', 'drive', 'hoist', 'lower']);
export const isMotion = (action: Action): action is Extract<Action, { readonly axis: string }> => motion.has(action.do);

const compiled = new WeakMap<Chart, Compiled>();

/** A chart with its states linked. */
export const compile = (chart: Chart): Compiled => {
  const known = compiled.get(chart);
  if (known) return known;
  const byId = new Map<string, Node>();
  const given = new Map(chart.states.map((state) => [state.id, state]));
  const transitions: { from: Node; transition: Transition }[] = [];
  const number = new Map(chart.states.map(({ id }, i) => [id, i]));
  const make = (id: string): Node => {
    const before = byId.get(id);
    if (before) return before;
    const state = given.get(id)!;
    const parent = state.parent === null ? null : make(state.parent);
    const line: Node[] = [...(parent?.line ?? [])];
    const node: Node = {
      index: number.get(id)!,
      id,
      parent,
      line,
      level: line.length,
      initial: state.initial,
      final: state.final,
      onentry: state.onentry,
      onexit: state.onexit,
      transitions: state.transitions.map((transition) => ({ ...transition, index: 0 })),
      moves: [...new Set(state.onentry.filter(isMotion).map(({ axis }) => axis))],
    };
    line.push(node);
    byId.set(id, node);
    return node;
  };
  const nodes = chart.states.map(({ id }) => make(id));
  for (const node of nodes)
    for (const transition of node.transitions) {
      (transition as { index: number }).index = transitions.length;
      transitions.push({ from: node, transition });
    }
  const done = { chart, nodes, byId, transitions };
  compiled.set(chart, done);
  return done;
};

/** `z` and `z.*` match `z.done`, `*` matches everything (SCXML 3.12.1). */
export const matches = (descriptor: string, name: string): boolean => {
  if (descriptor === '*') return true;
  const wanted = descriptor.replace(/\.\*?$/, '');
  return name === wanted || name.startsWith(`${wanted}.`);
};

/** What a running macrostep may look at and change. */
export interface World {
  leaf: Node | null;
  readonly counters: Record<string, number>;
  readonly isOn: (signal: string) => boolean;
  /** Whether so many ticks have passed since the state of this level was entered. */
  readonly isDue: (level: number, after: number) => boolean;
  readonly actions: Action[];
  /** Called for each state that is entered and each transition that is taken. */
  readonly entered: (node: Node) => void;
  readonly took: (transition: number) => void;
}

export const isTrue = (cond: Condition, world: Pick<World, 'leaf' | 'counters' | 'isOn'>): boolean => {
  switch (cond.kind) {
    case 'on':
      return world.isOn(cond.signal);
    case 'in':
      return world.leaf?.line.some(({ id }) => id === cond.state) ?? false;
    case 'counter': {
      const value = world.counters[cond.counter] ?? 0;
      return cond.is === '<' ? value < cond.than : value >= cond.than;
    }
    case 'not':
      return !isTrue(cond.of, world);
    case 'all':
      return cond.of.every((one) => isTrue(one, world));
    case 'any':
      return cond.of.some((one) => isTrue(one, world));
  }
};

/** What is being looked for: a named event, what is due by its clock, or what needs no event. */
type Trigger = { readonly name: string } | 'due' | 'none';

const select = (
  world: World,
  trigger: Trigger,
): { readonly from: Node; readonly transition: Node['transitions'][number] } | null => {
  for (let node = world.leaf; node; node = node.parent)
    for (const transition of node.transitions) {
      const { events, after, cond } = transition;
      const isMeant =
        trigger === 'none'
          ? events === null && after === null
          : trigger === 'due'
            ? after !== null && world.isDue(node.level, after)
            : events !== null && events.some((one) => matches(one, trigger.name));
      if (isMeant && (cond === null || isTrue(cond, world))) return { from: node, transition };
    }
  return null;
};

const run = ({ chart }: Compiled, world: World, raised: string[], actions: readonly Action[]): void => {
  for (const action of actions) {
    if (action.do === 'raise') raised.push(action.event);
    else if (action.do === 'count')
      world.counters[action.counter] = Math.min(
        (world.counters[action.counter] ?? 0) + 1,
        chart.counters[action.counter] ?? Infinity,
      );
    else if (action.do === 'clear') world.counters[action.counter] = 0;
    world.actions.push(action);
  }
};

const enter = (machine: Compiled, world: World, raised: string[], target: Node, below: Node | null): void => {
  const path = target.line.slice(below === null ? 0 : below.level + 1);
  for (let node = target; node.initial !== null;) {
    const first = machine.byId.get(node.initial)!;
    path.push(...first.line.slice(node.level + 1));
    node = first;
  }
  for (const node of path) {
    world.leaf = node;
    world.entered(node);
    run(machine, world, raised, node.onentry);
    if (node.final && node.parent) raised.push(`done.state.${node.parent.id}`);
  }
  if (world.leaf?.final && world.leaf.parent === null) world.leaf = null;
};

const take = (
  machine: Compiled,
  world: World,
  raised: string[],
  { from, transition }: NonNullable<ReturnType<typeof select>>,
): void => {
  world.took(transition.index);
  if (transition.target === null) {
    run(machine, world, raised, transition.actions);
    return;
  }
  const target = machine.byId.get(transition.target)!;
  const isInside = transition.internal && from.initial !== null && target !== from && target.line.includes(from);
  // Only proper ancestors of both count, so that a state that goes to itself is left and entered again.
  let domain = isInside ? from : from.parent;
  while (domain && (domain === target || !target.line.includes(domain))) domain = domain.parent;
  for (let node = world.leaf; node && node !== domain; node = node.parent) {
    for (const axis of node.moves) world.actions.push({ do: 'stop', axis });
    run(machine, world, raised, node.onexit);
    world.leaf = node.parent;
  }
  run(machine, world, raised, transition.actions);
  enter(machine, world, raised, target, domain);
};

/** Runs until nothing is enabled without an outside event. */
const settle = (machine: Compiled, world: World, raised: string[]): void => {
  for (let steps = 0; world.leaf; steps++) {
    if (steps > MOST_STEPS)
      throw new NoSolution(
        'the chart',
        `one event starts more than ${MOST_STEPS} steps, the last of them in ${world.leaf.id}: it goes round in a ring`,
      );
    let next = select(world, 'none');
    if (!next) {
      const name = raised.shift();
      if (name === undefined) return;
      next = select(world, { name });
    }
    if (next) take(machine, world, raised, next);
  }
};

/** From nothing into the initial state. */
export const begin = (machine: Compiled, world: World): void => {
  const raised: string[] = [];
  enter(machine, world, raised, machine.byId.get(machine.chart.initial)!, null);
  settle(machine, world, raised);
};

/** One macrostep: the transition for an event, or what is due, and all that follows from it. */
export const react = (machine: Compiled, world: World, trigger: { readonly name: string } | 'due'): void => {
  if (!world.leaf) return;
  const next = select(world, trigger);
  const raised: string[] = [];
  if (next) take(machine, world, raised, next);
  // A condition may have become true without any transition for the event itself.
  settle(machine, world, raised);
};

/** Before the start. */
export const beforeStart: ChartPoint = { state: null, clocks: [], counters: {}, on: [] };

/**
 * One event on a chart.
 *
 * @returns where it stands then, and what the controller is told, in order
 * @throws NoSolution when one event starts a ring of steps
 */
export const transition = (
  chart: Chart,
  point: ChartPoint,
  event: ChartEvent,
): readonly [ChartPoint, readonly Action[]] => {
  const machine = compile(chart);
  const on = new Set(point.on);
  const clocks = [...point.clocks];
  const isStart = event.kind === 'reset';
  const world: World = {
    leaf: isStart || point.state === null ? null : (machine.byId.get(point.state) ?? null),
    counters: isStart
      ? Object.fromEntries(Object.keys(chart.counters).map((name) => [name, 0]))
      : { ...point.counters },
    isOn: (signal) => on.has(signal),
    isDue: (level, after) => (clocks[level] ?? 0) >= after,
    actions: [],
    entered: ({ level }) => {
      clocks[level] = 0;
    },
    took: () => {},
  };
  if (isStart) begin(machine, world);
  else if (event.kind === 'time') {
    for (let i = 0; i < clocks.length; i++) clocks[i]!++;
    react(machine, world, 'due');
  } else if (event.kind === 'event') react(machine, world, { name: event.name });
  else {
    if (event.on) on.add(event.signal);
    else on.delete(event.signal);
    react(machine, world, { name: `${event.signal}.${event.on ? 'on' : 'off'}` });
  }
  const { leaf, counters, actions } = world;
  return [
    {
      state: leaf?.id ?? null,
      clocks: leaf ? clocks.slice(0, leaf.level + 1) : [],
      counters,
      on: [...on].sort(),
    },
    actions,
  ];
};

/** The step function of one chart. */
export const chartMachine = (chart: Chart): ChartMachine => ({
  start: beforeStart,
  transition: (point, event) => transition(chart, point, event),
});
