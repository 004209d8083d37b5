import type { Dimension } from './quantity/index.ts';
import type { Formula } from './formula.ts';

/** How an output moves when one input grows and the others stay: never falls, never rises, or not known. */
export type Slope = 'up' | 'down' | 'either';

/** Where a number comes from. Following origins gives the shown working, the facts used and the slopes. */
export type Origin =
  | { readonly kind: 'given'; readonly path: string }
  | { readonly kind: 'constant'; readonly means: string; readonly source?: Citation }
  | {
      readonly kind: 'worked';
      readonly by: Formula;
      readonly takes: Readonly<Record<string, Value | readonly Value[]>>;
    }
  | {
      readonly kind: 'chosen';
      readonly by: 'greatest' | 'least';
      readonly among: readonly Value[];
      readonly index: number;
    };

/** One number of known dimension, in SI, that knows where it comes from. */
export interface Value {
  readonly number: number;
  readonly of: Dimension;
  readonly origin: Origin;
}

/** A place in a source: the id of a file in `sources/`, and where in it. */
export interface Citation {
  readonly id: string;
  readonly at?: string;
}

/** A number that stands in the book, at a path such as `axes.x.speed`. */
export const given = (number: number, of: Dimension, path: string): Value => ({
  number,
  of,
  origin: { kind: 'given', path },
});

/** A number fixed by nature, a standard or practice; says what it is and where it was read. */
export const constant = (number: number, of: Dimension, means: string, source?: Citation): Value => ({
  number,
  of,
  origin: source ? { kind: 'constant', means, source } : { kind: 'constant', means },
});

const choose = (by: 'greatest' | 'least', among: readonly Value[]): Value => {
  const first = among[0];
  if (!first) throw new RangeError(`${by} of nothing`);
  let index = 0;
  for (let i = 0; i < among.length; i++) {
    const candidate = among[i]!;
    if (candidate.of !== first.of) throw new TypeError(`${by}: ${candidate.of} beside ${first.of}`);
    if (Number.isNaN(candidate.number)) index = i;
    const best = among[index]!.number;
    if (by === 'greatest' ? candidate.number > best : candidate.number < best) index = i;
  }
  const best = among[index]!;
  return { number: best.number, of: first.of, origin: { kind: 'chosen', by, among, index } };
};

/** The greatest of several values of one dimension; keeps all of them as its origin, so that slopes stay right. */
export const greatest = (...among: readonly Value[]): Value => choose('greatest', among);

/** The least of several values of one dimension. */
export const least = (...among: readonly Value[]): Value => choose('least', among);

const opposite: Record<Slope, Slope> = { up: 'down', down: 'up', either: 'either' };

const join = (into: Map<string, Slope>, path: string, slope: Slope): void => {
  const before = into.get(path);
  into.set(path, before === undefined || before === slope ? slope : 'either');
};

const through = (outer: Slope, inner: Slope): Slope =>
  outer === 'either' ? 'either' : outer === 'up' ? inner : opposite[inner];

const cache = new WeakMap<Value, ReadonlyMap<string, Slope>>();

/**
 * How a value moves with each book fact behind it, from the slopes that the formulas declare.
 * Two ways of influence that disagree give `either`; the engine then searches inside the range.
 */
export const slopes = (value: Value): ReadonlyMap<string, Slope> => {
  const known = cache.get(value);
  if (known) return known;
  const found = new Map<string, Slope>();
  const { origin } = value;
  if (origin.kind === 'given') found.set(origin.path, 'up');
  if (origin.kind === 'chosen') for (const one of origin.among) for (const [p, s] of slopes(one)) join(found, p, s);
  if (origin.kind === 'worked') {
    for (const [name, taken] of Object.entries(origin.takes)) {
      const slope = origin.by.declared.takes[name]!.slope ?? 'either';
      for (const one of Array.isArray(taken) ? (taken as readonly Value[]) : [taken as Value])
        for (const [p, s] of slopes(one)) join(found, p, through(slope, s));
    }
  }
  cache.set(value, found);
  return found;
};

/** Slopes of a difference or quotient `a − b`, `a / b` with positive parts: up with a, down with b. */
export const slopesAgainst = (a: readonly Value[], b: readonly Value[]): Map<string, Slope> => {
  const found = new Map<string, Slope>();
  for (const one of a) for (const [p, s] of slopes(one)) join(found, p, s);
  for (const one of b) for (const [p, s] of slopes(one)) join(found, p, opposite[s]);
  return found;
};
