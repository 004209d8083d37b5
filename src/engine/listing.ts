/** Every fact, stated or worked out, in SI under a stable name. */
import { Quantity, type Provider } from '../contract/index.ts';
import { isNoNumber, NotStated, siUnit, slopes, type Dimension, type Provenance, type Value } from '../kernel/index.ts';
import type { Evaluator } from './evaluate.ts';
import { extremes } from './scenarios.ts';

export type ListedFact =
  | {
      /** A path of the book, or `trade.fact(entry).part`. */
      readonly name: string;
      readonly low: number;
      readonly high: number;
      readonly of: Dimension;
      readonly unit: string;
      readonly origin: 'book' | 'worked';
      readonly range?: 'spread' | 'doubt';
      readonly provenance?: Provenance;
    }
  | { readonly name: string; readonly word: string | boolean | number; readonly origin: 'book' | 'worked' }
  | { readonly name: string; readonly absent: string; readonly origin: 'worked' };

const isValue = (x: unknown): x is Value =>
  x !== null && typeof x === 'object' && 'number' in x && 'of' in x && 'origin' in x && typeof x.number === 'number';

type Way = readonly string[];

/** Values inside a fact, by the keys that lead to them. */
const parts = (fact: unknown, way: Way = []): [Way, Value | string | number | boolean][] => {
  if (isValue(fact)) return [[way, fact]];
  if (typeof fact === 'string' || typeof fact === 'number' || typeof fact === 'boolean') return [[way, fact]];
  if (fact === null || typeof fact !== 'object') return [];
  return Object.entries(fact).flatMap(([key, one]) => parts(one, [...way, key]));
};

const partAt = (fact: unknown, way: Way): unknown =>
  way.reduce<unknown>((here, key) => (here as Readonly<Record<string, unknown>> | undefined)?.[key], fact);

/** What `list` gives, or why there is nothing, under the name of the fact. */
const orAbsent = (name: string, list: () => ListedFact[]): ListedFact[] => {
  try {
    return list();
  } catch (error) {
    if (!isNoNumber(error)) throw error;
    return [{ name, absent: error.message, origin: 'worked' }];
  }
};

const bookFacts = ({ snapshot }: Evaluator): ListedFact[] =>
  [...snapshot.nodes].flatMap(([path, node]): ListedFact[] => {
    if (node.kind !== 'leaf') return [];
    const { leaf } = node;
    if (!(leaf instanceof Quantity)) return [{ name: path, word: leaf, origin: 'book' }];
    const { low, high, of, provenance, range } = leaf;
    const doubtful = low < high && range !== 'exact' ? { range } : {};
    return [{ name: path, low, high, of, unit: siUnit(of), origin: 'book', provenance, ...doubtful }];
  });

const workedFacts = (evaluator: Evaluator, { token }: Provider, key: string): ListedFact[] => {
  const name = `${token.name}(${key})`;
  const get = () => evaluator.context.get(token, key);
  return orAbsent(name, () =>
    // Taken apart inside the calculation, because some parts are asked for only when they are read.
    evaluator
      .trace(new Map(), () => parts(get()))
      .value.flatMap(([way, part]): ListedFact[] => {
        const full = [name, ...way].join('.');
        if (!isValue(part)) return [{ name: full, word: part, origin: 'worked' }];
        return orAbsent(full, () => {
          const ends = extremes((scenario) => {
            const { value, paths } = evaluator.trace(scenario, () => partAt(get(), way));
            const axes = evaluator.rangesOf(paths);
            return isValue(value)
              ? { number: value.number, slopes: slopes(value), axes }
              : { number: NaN, slopes: new Map(), axes };
          });
          return [{ name: full, ...ends, of: part.of, unit: siUnit(part.of), origin: 'worked' }];
        });
      }),
  );
};

export const listFacts = (evaluator: Evaluator, providers: readonly Provider[]): ListedFact[] => [
  ...bookFacts(evaluator),
  ...providers.flatMap((provider) => {
    const { keys } = provider;
    if (!keys) return [];
    try {
      const { value } = evaluator.trace(new Map(), () => keys(evaluator.context.book));
      return value.flatMap((key) => workedFacts(evaluator, provider, key));
    } catch (error) {
      // Without the facts that name its entries there is nothing to list.
      if (!(error instanceof NotStated)) throw error;
      return [];
    }
  }),
];
