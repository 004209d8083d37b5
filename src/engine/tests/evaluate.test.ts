import { describe, expect, it } from 'vitest';
import { factToken, need, provide, Quantity, type Check, type Provider, type Seen } from '../../contract/index.ts';
import {
  atMost,
  constant,
  formula,
  NoSolution,
  NotStated,
  unitNamed,
  type Dimension,
  type Unit,
  type Value,
} from '../../kernel/index.ts';
import { Evaluator } from '../evaluate.ts';
import { Memory } from '../memory.ts';
import type { BookSchema } from '../read/schema.ts';
import { expand, type Tree } from '../snapshot.ts';

const quantity = (
  low: number,
  high: number,
  of: Dimension,
  unit: string,
  range: 'spread' | 'doubt' | 'exact' = 'doubt',
) => new Quantity(low, high, of, unitNamed(unit, of) as Unit, range, 'stated', `${low}..${high} ${unit}`);

interface Box {
  readonly width?: Quantity;
  readonly height?: Quantity;
}
interface Shop {
  readonly boxes?: Readonly<Record<string, Box>>;
}

const product = formula({
  name: 'test-face',
  gives: { symbol: 'A', of: 'area', means: 'face' },
  takes: {
    width: { symbol: 'w', of: 'length', above: 0, means: 'width', slope: 'up', typical: [1, 2] },
    height: { symbol: 'h', of: 'length', above: 0, means: 'height', slope: 'up', typical: [1, 2] },
  },
  steps: ({ width, height }, step) => step('A', 'w*h', width * height, 'area'),
  assumes: [],
  source: [],
  checked: [],
  accuracy: 'exact',
});

const face = factToken<Value>('shop.face');
const twice = factToken<{ area: Value; runs: number }>('shop.twice');

const bench = (boxes: Tree, providers: readonly Provider[], memory = new Memory()) => {
  const schema = { keyInfo: () => undefined } as unknown as BookSchema;
  const snapshot = expand({ boxes }, schema, new Map(), []);
  return new Evaluator(snapshot, new Map(providers.map((p) => [p.token.name, p])), memory);
};
const box = (seen: Seen<Shop>, name: string) => need(need(seen, 'boxes').boxes[name]!, 'width', 'height');

const counted = () => {
  const runs: string[] = [];
  const provider = provide<Shop, Value>(face, ({ book }, name) => {
    runs.push(name);
    const { width, height } = box(book, name);
    return product.work({ width, height });
  });
  return { runs, provider };
};

describe('facts in a scenario', () => {
  const boxes = { a: { width: quantity(1, 3, 'length', 'm'), height: quantity(2, 2, 'length', 'm') } };

  it('are plain numbers, at the middle where the scenario says nothing', () => {
    const { provider } = counted();
    const evaluator = bench(boxes, [provider]);
    const area = (scenario: Map<string, number>) =>
      evaluator.trace(scenario, () => evaluator.context.get(face, 'a').number).value;
    expect(area(new Map())).toBe(4);
    expect(area(new Map([['boxes.a.width', 3]]))).toBe(6);
  });

  it('are worked out once for the same facts, and again only when one that was read differs', () => {
    const { runs, provider } = counted();
    const memory = new Memory();
    const get = (evaluator: Evaluator) => evaluator.trace(new Map(), () => evaluator.context.get(face, 'a')).value;
    get(bench(boxes, [provider], memory));
    get(bench({ ...boxes, b: { width: quantity(9, 9, 'length', 'm') } }, [provider], memory));
    expect(runs).toEqual(['a']);
    get(bench({ a: { ...boxes.a, height: quantity(5, 5, 'length', 'm') } }, [provider], memory));
    expect(runs).toEqual(['a', 'a']);
  });

  it('tell which paths they read, through other facts too', () => {
    const { provider } = counted();
    const outer = provide<Shop, { area: Value; runs: number }>(twice, ({ get }, name) => ({
      area: get(face, name),
      runs: 2,
    }));
    const evaluator = bench(boxes, [provider, outer]);
    const first = evaluator.trace(new Map(), () => evaluator.context.get(twice, 'a')).paths;
    expect([...first]).toEqual(expect.arrayContaining(['boxes.a.width', 'boxes.a.height']));
    const again = evaluator.trace(new Map(), () => evaluator.context.get(twice, 'a')).paths;
    expect(again).toEqual(first);
  });

  it('say every missing key at once', () => {
    const { provider } = counted();
    const evaluator = bench({ a: {} }, [provider]);
    expect(() => evaluator.trace(new Map(), () => evaluator.context.get(face, 'a'))).toThrow(
      new NotStated(['boxes.a.width', 'boxes.a.height']),
    );
  });

  it('refuse a ring and print it', () => {
    const one = factToken<number>('shop.one');
    const two = factToken<number>('shop.two');
    const evaluator = bench({}, [
      provide<Shop, number>(one, ({ get }) => get(two, 'x')),
      provide<Shop, number>(two, ({ get }) => get(one, 'x')),
    ]);
    expect(() => evaluator.trace(new Map(), () => evaluator.context.get(one, 'x'))).toThrow(
      'shop.one(x) → shop.two(x) → shop.one(x)',
    );
  });

  it('list the keys of a map, and a new key changes what was worked out', () => {
    const names: Check<Shop> = {
      code: 'SHOP-1',
      asks: '',
      subjects: () => [],
      run: ({ book }) => {
        const n = Object.keys(need(book, 'boxes').boxes).length;
        return atMost(constant(n, 'count', 'boxes'), constant(1, 'count', 'room'), { says: () => '' });
      },
    };
    const memory = new Memory();
    const demand = (tree: Tree) => {
      const { result } = bench(tree, [], memory).check(names as Check, { designations: [], at: '' }, new Map());
      return result.ok && result.value?.kind === 'limit' ? result.value.demand.number : NaN;
    };
    expect(demand({ a: {} })).toBe(1);
    expect(demand({ a: {}, b: {} })).toBe(2);
  });
});

describe('a loop', () => {
  const heated = formula({
    name: 'test-heated',
    gives: { symbol: 'x', of: 'temperature-difference', means: 'rise' },
    takes: {
      cold: { symbol: 'c', of: 'temperature-difference', means: 'cold rise', slope: 'up', typical: [1, 2] },
      rise: { symbol: 'r', of: 'temperature-difference', means: 'rise put in', slope: 'up', typical: [1, 2] },
      gain: { symbol: 'k', of: 'ratio', means: 'gain', slope: 'up', typical: [0, 0.5] },
    },
    steps: ({ cold, rise, gain }, step) => step('x', 'c*(1 + k*r)', cold * (1 + gain * rise), 'temperature-difference'),
    assumes: [],
    source: [],
    checked: [],
    accuracy: 'exact',
  });
  const run = (gain: number) =>
    bench({}, []).context.loop({
      name: 'rise',
      from: constant(0, 'temperature-difference', 'cold'),
      most: constant(1000, 'temperature-difference', 'bound'),
      tolerance: 1e-9,
      next: (rise) => heated.work({ cold: 40, rise, gain }),
      otherwise: 'the winding heats itself without end',
    });

  it('closes at the value that a pencil gives: rise = c/(1 − c·k)', () => {
    expect(run(0.0039).number).toBeCloseTo(40 / (1 - 40 * 0.0039), 5);
  });

  it('keeps the last turn in its working', () => {
    const value = run(0.0039);
    expect(value.origin.kind === 'worked' && value.origin.by.declared.name).toBe('closed-loop-temperature-difference');
  });

  it('has no solution when the gain runs away, and says whose fault that is', () => {
    expect(() => run(0.03)).toThrow(NoSolution);
    expect(() => run(0.03)).toThrow('heats itself without end');
  });
});
