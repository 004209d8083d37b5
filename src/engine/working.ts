/** The shown working: the values behind a finding, in the order of a hand calculation. */
import type { Dimension, ScenarioEnd, ShownNumber, Value, WorkingEntry, WorkingInput } from '../kernel/index.ts';
import { quantityAt, type Snapshot } from './snapshot.ts';
import type { Axis, Scenario } from './search.ts';

export type Shower = (number: number, of: Dimension) => string;

/** Where in its range a number lies. */
export const endOf = (low: number, high: number, x: number): 'low' | 'high' | 'inside' =>
  x === low ? 'low' : x === high ? 'high' : 'inside';

/** Which end of each range a scenario takes. */
export const endsOf = (axes: readonly Axis[], scenario: Scenario, snapshot: Snapshot, text: Shower): ScenarioEnd[] =>
  axes
    .filter((axis) => axis.high > axis.low)
    .map((axis) => {
      const number = scenario.get(axis.path) ?? axis.low + (axis.high - axis.low) / 2;
      const { of } = quantityAt(axis.path, snapshot)!;
      return {
        path: axis.path,
        range: axis.range,
        number,
        of,
        text: text(number, of),
        end: endOf(axis.low, axis.high, number),
      };
    });

/** The value that a chosen or decided one came from; followed until something was worked out or given. */
const taken = (value: Value): Value => {
  const { origin } = value;
  if (origin.kind === 'chosen') return taken(origin.among[origin.index]!);
  return origin.kind === 'decided' ? taken(origin.value) : value;
};

export const workingOf = (roots: readonly Value[], snapshot: Snapshot, text: Shower): WorkingEntry[] => {
  const entries: WorkingEntry[] = [];
  const index = new Map<Value, number>();
  const number = (n: number, of: Dimension): ShownNumber => ({ number: n, of, text: text(n, of) });

  const input = (value: Value, symbol: string, means: string): WorkingInput => {
    const from = taken(value);
    const base = { symbol, means, ...number(value.number, value.of) };
    if (from.origin.kind === 'worked') return { ...base, from: { kind: 'working', entry: visit(from) } };
    if (from.origin.kind === 'constant') return { ...base, from: { ...from.origin } };
    const { path } = from.origin as { path: string };
    const leaf = quantityAt(path, snapshot);
    return {
      ...base,
      from: {
        kind: 'book',
        path,
        provenance: leaf?.provenance ?? 'stated',
        ...(leaf && leaf.low < leaf.high ? { end: endOf(leaf.low, leaf.high, value.number) } : {}),
      },
    };
  };

  const visit = (value: Value): number => {
    const known = index.get(value);
    if (known !== undefined) return known;
    const { origin } = value;
    if (origin.kind !== 'worked') throw new TypeError('only a worked value has a working');
    const { declared } = origin.by;
    const inputs: WorkingInput[] = [];
    const numbers: Record<string, number | number[]> = {};
    for (const [name, take] of Object.entries(declared.takes)) {
      const one = origin.takes[name]!;
      if (Array.isArray(one)) {
        const list = one as readonly Value[];
        numbers[name] = list.map((v) => v.number);
        list.forEach((v, i) => inputs.push(input(v, `${take.symbol}_${i + 1}`, take.means)));
      } else {
        numbers[name] = (one as Value).number;
        inputs.push(input(one as Value, take.symbol, take.means));
      }
    }
    const steps = origin.by.show(numbers as never).steps;
    const entry: WorkingEntry = {
      formula: declared.name,
      symbol: declared.gives.symbol,
      means: declared.gives.means,
      ...number(value.number, value.of),
      inputs,
      steps: steps.map((step) => ({
        symbol: step.symbol,
        expression: step.text,
        ...number(step.number, step.of),
        ...(step.within === undefined ? {} : { within: step.within }),
      })),
      assumes: declared.assumes,
      source: declared.source,
      checked: declared.checked,
      accuracy: declared.accuracy,
    };
    entries.push(entry);
    index.set(value, entries.length - 1);
    return entries.length - 1;
  };
  for (const root of roots) {
    const value = taken(root);
    if (value.origin.kind === 'worked') visit(value);
  }
  return entries;
};
