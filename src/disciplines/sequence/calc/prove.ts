/** The search, and what it shows of each property. */
import { Explorer } from './explore.ts';
import { Rules, safeties, Tables, type Lasting, type Safety } from './rules.ts';
import {
  firstLonger,
  firstRing,
  FOREVER,
  longestOf,
  longestRuns,
  NO_KIND,
  runFrom,
  type Graph,
  type Runs,
} from './runs.ts';
import { Numbers } from './space.ts';
import { popcount, type CycleSpec } from './spec.ts';
import { tell, type Trace } from './trace.ts';

/** A run: so many ticks at most, or without an end. */
export interface Lasted {
  readonly ticks: number | null;
  /** Of an axis, where it is asked for each. */
  readonly axis: string | null;
  /** The way into the longest run and through it. */
  readonly trace: Trace | null;
}

export interface Dwell {
  readonly state: string;
  /** Ticks in it at most, whatever is broken; null without an end. */
  readonly ticks: number | null;
  /** With nothing broken and nobody in the way. */
  readonly healthy: number | null;
  readonly trace: Trace | null;
}

export interface Proof {
  /** Why not everything was seen; null when all was. */
  readonly cut: string | null;
  readonly states: number;
  readonly controls: number;
  readonly steps: number;
  /** Bytes for each state, all in all. */
  readonly bytesEach: number;
  /** By property: how it is broken with the fewest faults, on the shortest way; null when it never is. */
  readonly safety: Readonly<Record<Safety, Trace | null>>;
  readonly lasting: Readonly<Record<Lasting, Lasted>>;
  readonly dwells: readonly Dwell[];
  /** States that are never entered, and transitions that are never taken, in words. */
  readonly deadStates: readonly string[];
  readonly deadTransitions: readonly string[];
}

const transitionWords = (explorer: Explorer, index: number): string => {
  const { from, transition } = explorer.controls.machine.transitions[index]!;
  const when =
    transition.events?.join(' ') ?? (transition.after === null ? 'its condition' : `${transition.after} ticks`);
  return `${from.id} on ${when}${transition.target === null ? '' : ` to ${transition.target}`}`;
};

/** Everything that a search saw. */
export interface Seen {
  readonly explorer: Explorer;
  readonly graph: Graph;
  readonly parents: Numbers;
  readonly broken: ReadonlyMap<Safety, number>;
  readonly cut: string | null;
}

/**
 * Searches breadth first, so that the first state that breaks a rule ends a shortest trace.
 * Only steps in which no fault begins are kept as a graph: that is a machine left alone.
 */
export const explore = (spec: CycleSpec): Seen => {
  const explorer = new Explorer(spec);
  const rules = new Rules(spec, explorer.controls);
  const { codec } = explorer;
  const parents = new Numbers();
  const starts = new Numbers();
  const next = new Numbers();
  const worst = new Map<Safety, number>();
  /** By property: kinds of faults on the way to where it is broken; fewer are looked for. */
  const open = new Map<Safety, number>(safeties.map((rule) => [rule, Infinity]));
  let state = -1;
  const tables = new Tables(rules);
  const judge = (number: number): void => {
    const broken = tables.broken(codec, number);
    if (broken === 0) return;
    const faults = popcount(codec.read(number, codec.occurred));
    for (const [rule, fewest] of open)
      if (faults < fewest && broken & (1 << safeties.indexOf(rule))) {
        worst.set(rule, number);
        if (faults === 0) open.delete(rule);
        else open.set(rule, faults);
      }
  };
  const meet = (number: number): void => {
    parents.push(state);
    judge(number);
  };
  explorer.begin((number, isNew) => {
    if (isNew) meet(number);
  });
  let cut: string | null = null;
  const { space } = codec;
  for (state = 0; state < space.count; state++) {
    starts.push(next.length);
    if (space.count > spec.mostStates) cut = `the search was cut after ${spec.mostStates} states`;
    if (cut !== null) continue;
    const before = space.count;
    const found = explorer.step(state);
    for (let number = before; number < space.count; number++) meet(number);
    for (let i = 0; i < found; i++) if (explorer.alone[i]) next.push(explorer.found[i]!);
  }
  starts.push(next.length);
  return { explorer, graph: { count: codec.space.count, starts, next }, parents, broken: worst, cut };
};

const wayTo = (parents: Numbers, state: number): number[] => {
  const way: number[] = [];
  for (let at = state; at >= 0; at = parents.items[at]!) way.unshift(at);
  return way;
};

/** Searches a cycle and says what holds. */
export const prove = (spec: CycleSpec): Proof => {
  const seen = explore(spec);
  const { explorer, graph, parents, broken, cut } = seen;
  const { codec, controls } = explorer;
  const rules = new Rules(spec, controls);
  const { count } = graph;

  const tables = new Tables(rules);
  const kindsBy = (kindOf: (state: number, control: number) => number): Int32Array => {
    const kinds = new Int32Array(count);
    for (let state = 0; state < count; state++) kinds[state] = kindOf(state, codec.read(state, codec.control));
    return kinds;
  };
  const runTrace = (runs: Runs, start: number): Trace => {
    const way = wayTo(parents, start);
    const states = [...way, ...runFrom(graph, runs, start).slice(1)];
    return tell(explorer, states, runs.longest[start] === FOREVER ? way.length - 1 : null);
  };
  const lastingOf = (rule: Lasting, axis: number): Lasted => {
    const table = tables.lasting(rule, axis);
    const runs = longestRuns(
      graph,
      kindsBy((state, control) => {
        const place = axis < 0 ? 0 : codec.read(state, codec.places[axis]!);
        // Of an axis only one and the same motion goes on.
        return table[3 * control + place] ? (axis < 0 ? 0 : controls.known[control]!.told[axis]!) : NO_KIND;
      }),
    );
    const most = longestOf(runs);
    const name = axis < 0 ? null : spec.axes[axis]!.name;
    if (most === 0) return { ticks: 0, axis: name, trace: null };
    const start = most === FOREVER ? firstRing(runs) : firstLonger(runs, most - 1);
    return { ticks: most === FOREVER ? null : most, axis: name, trace: runTrace(runs, start) };
  };
  const worstAxis = (rule: Lasting): Lasted =>
    spec.axes
      .map((_, axis) => lastingOf(rule, axis))
      .reduce((worst, one) => ((one.ticks ?? Infinity) > (worst.ticks ?? Infinity) ? one : worst), {
        ticks: 0,
        axis: null,
        trace: null,
      });

  const persons = spec.inputs.reduce((mask, { feels }, i) => (feels ? mask : mask | (1 << i)), 0);
  const unsettled = tables.lasting('unsettled', -1);
  const waits = (control: number): boolean => unsettled[3 * control] === 1;
  const dwellRuns = longestRuns(
    graph,
    kindsBy((_, control) => (waits(control) ? controls.known[control]!.leaf : NO_KIND)),
  );
  const healthyRuns = longestRuns(
    graph,
    kindsBy((state, control) =>
      waits(control) && codec.read(state, codec.occurred) === 0 && (controls.known[control]!.on & persons) === 0
        ? controls.known[control]!.leaf
        : NO_KIND,
    ),
  );
  const mostBy = ({ kinds, longest }: Runs): ReadonlyMap<number, number> => {
    const most = new Map<number, number>();
    for (let state = 0; state < count; state++) {
      const kind = kinds[state]!;
      if (kind === NO_KIND || most.get(kind) === FOREVER) continue;
      if (longest[state] === FOREVER || longest[state]! > (most.get(kind) ?? 0)) most.set(kind, longest[state]!);
    }
    return most;
  };
  const ticksOf = (most: number | undefined): number | null => (most === FOREVER ? null : (most ?? 0));
  const healthy = mostBy(healthyRuns);
  const dwells = [...mostBy(dwellRuns)]
    .sort(([a], [b]) => a - b)
    .map(([leaf, most]): Dwell => ({
      state: controls.machine.nodes[leaf]!.id,
      ticks: ticksOf(most),
      healthy: ticksOf(healthy.get(leaf)),
      trace: most === FOREVER ? runTrace(dwellRuns, firstRing(dwellRuns, leaf)) : null,
    }));
  const lasting: Record<Lasting, Lasted> = {
    unsettled: lastingOf('unsettled', -1),
    play: lastingOf('play', -1),
    idle: lastingOf('idle', -1),
    pushing: worstAxis('pushing'),
    pressing: worstAxis('pressing'),
  };
  const { nodes, transitions } = controls.machine;
  return {
    cut,
    states: count,
    controls: controls.known.length,
    steps: graph.next.length,
    bytesEach: Math.round((codec.space.bytes + parents.items.byteLength + graph.next.items.byteLength) / count),
    safety: Object.fromEntries(
      safeties.map((rule) => {
        const state = broken.get(rule);
        return [rule, state === undefined ? null : tell(explorer, wayTo(parents, state), null)];
      }),
    ) as Record<Safety, Trace | null>,
    lasting,
    dwells,
    deadStates: nodes.flatMap(({ index, id }) => (controls.entered.has(index) ? [] : [id])),
    deadTransitions: transitions.flatMap((_, i) => (controls.taken.has(i) ? [] : [transitionWords(explorer, i)])),
  };
};
