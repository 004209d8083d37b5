/** Every fact, stated or worked out, in SI under a stable name. */
import { Quantity, type Provider } from '../contract/index.ts';
import { isNoNumber, siUnit, slopes, type Dimension, type Provenance, type Value } from '../kernel/index.ts';
import type { Evaluator } from './evaluate.ts';
import { extremes } from './scenarios.ts';
import { rangesAmong } from './snapshot.ts';

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

/** Values inside a fact, by the way that leads to them. */
const parts = (fact: unknown, way = ''): [string, Value | string | number | boolean][] => {
  if (isValue(fact)) return [[way, fact]];
  if (typeof fact === 'string' || typeof fact === 'number' || typeof fact === 'boolean') return [[way, fact]];
  if (fact === null || typeof fact !== 'object') return [];
  return Object.entries(fact).flatMap(([key, one]) => parts(one, `${way}.${key}`));
};

const partAt = (fact: unknown, way: string): unknown => {
  let here = fact;
  for (const key of way.split('.').slice(1)) here = (here as Record<string, unknown> | undefined)?.[key];
  return here;
};

export const listFacts = (evaluator: Evaluator, providers: readonly Provider[]): ListedFact[] => {
  const facts: ListedFact[] = [];
  for (const [path, node] of evaluator.snapshot.nodes) {
    if (node.kind !== 'leaf') continue;
    const { leaf } = node;
    if (!(leaf instanceof Quantity)) facts.push({ name: path, word: leaf, origin: 'book' });
    else {
      const { low, high, of, provenance, range } = leaf;
      const doubtful = low < high && range !== 'exact' ? { range } : {};
      facts.push({ name: path, low, high, of, unit: siUnit(of), origin: 'book', provenance, ...doubtful });
    }
  }
  for (const { token, keys } of providers) {
    if (!keys) continue;
    for (const key of keys(evaluator.context.book)) {
      const name = `${token.name}(${key})`;
      const get = () => evaluator.context.get(token, key);
      try {
        const { value: fact } = evaluator.trace(new Map(), get);
        for (const [way, part] of parts(fact)) {
          if (!isValue(part)) facts.push({ name: name + way, word: part, origin: 'worked' });
          else {
            const ends = extremes((scenario) => {
              const { value, paths } = evaluator.trace(scenario, () => partAt(get(), way));
              return isValue(value)
                ? { number: value.number, slopes: slopes(value), axes: rangesAmong(paths, evaluator.snapshot) }
                : { number: NaN, slopes: new Map(), axes: [] };
            });
            facts.push({ name: name + way, ...ends, of: part.of, unit: siUnit(part.of), origin: 'worked' });
          }
        }
      } catch (error) {
        if (!isNoNumber(error)) throw error;
        facts.push({ name, absent: error.message, origin: 'worked' });
      }
    }
  }
  return facts;
};
