/** What the sheet shows, from what the search found. */
import type { Timing } from '../figures/timing.ts';
import type { Box, States } from '../figures/states.ts';
import { compile, type Node } from '../calc/transition.ts';
import type { CycleSpec } from '../calc/spec.ts';
import type { Trace } from '../calc/trace.ts';

const MOST_TICKS = 40;

/** The end of a trace as a timing diagram; what never changes is left out. */
export const timingOf = (spec: CycleSpec, { steps, loop }: Trace, tick: number, title: string): Timing => {
  const from = Math.max(0, steps.length - MOST_TICKS);
  const shown = steps.slice(from);
  const names = [...new Set(shown.flatMap(({ on, lamps }) => [...on, ...lamps]))];
  const rows = [
    { name: 'drives', values: shown.map(({ drives }) => (drives ? 1 : 0)), levels: 2 as const },
    ...spec.axes.map(({ name }, axis) => ({
      name,
      values: shown.map(({ places }) => places[axis]!),
      levels: 3 as const,
    })),
    ...names.map((name) => ({
      name,
      values: shown.map(({ on, lamps }) => (on.includes(name) || lamps.includes(name) ? 1 : 0)),
      levels: 2 as const,
    })),
  ];
  return {
    title,
    from,
    tick,
    states: shown.map(({ state }) => state ?? 'dark'),
    rows,
    surprises: shown.flatMap(({ surprise }, at) => (surprise === null ? [] : [{ at, what: surprise }])),
    loop: loop === null ? null : Math.max(0, loop - from),
  };
};

/** The chart as boxes and ways between them. */
export const statesOf = (spec: CycleSpec): States => {
  const { nodes, byId, chart } = compile(spec.chart);
  const leafOf = (node: Node): string => (node.initial === null ? node.id : leafOf(byId.get(node.initial)!));
  const boxes = nodes
    .filter(({ initial }) => initial === null)
    .map(({ id, line, index }): Box => ({
      id,
      is: spec.marks[index]!.is,
      to: line
        .toReversed()
        .flatMap(({ transitions }) =>
          transitions.flatMap(({ target }) => (target === null ? [] : [leafOf(byId.get(target)!)])),
        ),
    }));
  return { initial: leafOf(byId.get(chart.initial)!), boxes };
};
