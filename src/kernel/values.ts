import type { Dimension } from './quantity/index.ts';
import type { Formula } from './formula.ts';

/**
 * How an output moves when one input grows and the others stay: never falls; never rises; one way all along, though which
 * way depends on the others; not at all on this side of a threshold; or not known.
 */
export type Slope = 'up' | 'down' | 'one-way' | 'flat' | 'either';

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
    }
  | {
      readonly kind: 'decided';
      /** What it is; the rest only decided that it is this and not something else. */
      readonly value: Value;
      readonly slope: Slope;
      readonly by: readonly Value[];
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

/**
 * A value that was taken because of how others stand to it, as on which side of a threshold they lie. It shows its own
 * working; what moves only them moves nothing on this side.
 */
export const decided = (value: Value, ...by: readonly Value[]): Value => ({
  number: value.number,
  of: value.of,
  origin: { kind: 'decided', value, slope: 'flat', by },
});

/**
 * A value reckoned at the number at which another has settled. The caller vouches that the other moves with every fact as this
 * does, so that a fact that is behind both comes in once.
 */
export const settledWith = (value: Value, other: Value): Value => ({
  number: value.number,
  of: value.of,
  origin: { kind: 'decided', value, slope: 'up', by: [other] },
});

const opposite: Record<Slope, Slope> = {
  up: 'down',
  down: 'up',
  'one-way': 'one-way',
  flat: 'flat',
  either: 'either',
};

const join = (into: Map<string, Slope>, path: string, slope: Slope): void => {
  const before = into.get(path);
  if (slope === 'flat' && before !== undefined) return;
  // Two influences that each go one way may go against each other.
  into.set(
    path,
    before === undefined || before === 'flat' || (before === slope && slope !== 'one-way') ? slope : 'either',
  );
};

const through = (outer: Slope, inner: Slope): Slope => {
  // What moves either way may cross a threshold inside of its range.
  if (outer === 'either' || inner === 'either') return 'either';
  if (outer === 'flat' || inner === 'flat') return 'flat';
  if (outer === 'one-way') return 'one-way';
  return outer === 'up' ? inner : opposite[inner];
};

type Slopes = ReadonlyMap<string, Slope>;

/** Slopes that were joined once, with a number by which what is made from them is found again. */
interface Joined {
  readonly id: number;
  readonly slopes: Slopes;
}
/** A way through the parts that something was made of; `joined` once it ends here. */
interface Branch {
  readonly next: Map<number, Branch>;
  joined?: Joined;
}

let made = 0;
const joined = (found: Slopes): Joined => ({ id: ++made, slopes: found });
const branch = (): Branch => ({ next: new Map() });

const NONE = joined(new Map());
/** Dropped as a whole when there are too many, as books come and go. */
const MOST_KNOWN = 50_000;
let count = 0;
let ofPaths = new Map<string, Joined>();
let ofFormulas = new WeakMap<Formula, Branch>();
let ofChoices = branch();
let ofQuotients = branch();
let ofDecisions = branch();
const forget = (): void => {
  count = 0;
  ofPaths = new Map();
  ofFormulas = new WeakMap();
  ofChoices = branch();
  ofQuotients = branch();
  ofDecisions = branch();
};

const onward = (from: Branch, step: number): Branch => {
  let next = from.next.get(step);
  if (!next) from.next.set(step, (next = branch()));
  return next;
};
/** Between two lists: no slopes have this number. */
const BETWEEN = 0;

const along = (from: Branch, values: readonly Value[]): Branch => {
  let here = onward(from, BETWEEN);
  for (const one of values) here = onward(here, joinedOf(one).id);
  return here;
};

const slopeNumber: Record<Slope, number> = { up: 1, down: 2, 'one-way': 3, flat: 4, either: 5 };

/** Slopes follow from how a value was made and not from its number: what was made alike shares them. */
const atEnd = (end: Branch, join: (into: Map<string, Slope>) => void): Joined => {
  if (end.joined) return end.joined;
  const found = new Map<string, Slope>();
  join(found);
  count++;
  return (end.joined = joined(found));
};

const joinOf = (origin: Origin): Joined => {
  if (origin.kind === 'constant') return NONE;
  if (origin.kind === 'given') {
    let known = ofPaths.get(origin.path);
    if (!known) {
      ofPaths.set(origin.path, (known = joined(new Map([[origin.path, 'up']]))));
      count++;
    }
    return known;
  }
  if (origin.kind === 'chosen')
    return atEnd(along(ofChoices, origin.among), (into) => {
      for (const one of origin.among) for (const [p, s] of slopes(one)) join(into, p, s);
    });
  if (origin.kind === 'decided')
    return atEnd(along(along(onward(ofDecisions, slopeNumber[origin.slope]), [origin.value]), origin.by), (into) => {
      const own = slopes(origin.value);
      for (const one of origin.by)
        for (const [p, s] of slopes(one)) if (!own.has(p)) join(into, p, through(origin.slope, s));
      for (const [p, s] of own) into.set(p, s);
    });
  const { by, takes } = origin;
  let here = ofFormulas.get(by);
  if (!here) ofFormulas.set(by, (here = branch()));
  for (const name in takes) {
    const taken = takes[name]!;
    here = Array.isArray(taken) ? along(here, taken as readonly Value[]) : onward(here, joinedOf(taken as Value).id);
  }
  return atEnd(here, (into) => {
    for (const [name, taken] of Object.entries(takes)) {
      const slope = by.declared.takes[name]!.slope ?? 'either';
      for (const one of Array.isArray(taken) ? (taken as readonly Value[]) : [taken as Value])
        for (const [p, s] of slopes(one)) join(into, p, through(slope, s));
    }
  });
};

/** Kept at the value itself, for it is asked for again with everything that is made from it. */
interface Known extends Value {
  joined?: Joined;
}

const joinedOf = (value: Value): Joined => ((value as Known).joined ??= joinOf(value.origin));

/**
 * How a value moves with each book fact behind it, from the slopes that the formulas declare.
 * Two ways of influence that disagree give `either`; the engine then searches inside the range.
 */
export const slopes = (value: Value): ReadonlyMap<string, Slope> => {
  if (count > MOST_KNOWN) forget();
  return joinedOf(value).slopes;
};

/** Slopes of a difference or quotient `a − b`, `a / b` with positive parts: up with a, down with b. */
export const slopesAgainst = (a: readonly Value[], b: readonly Value[]): ReadonlyMap<string, Slope> => {
  if (count > MOST_KNOWN) forget();
  return atEnd(along(along(ofQuotients, a), b), (into) => {
    for (const one of a) for (const [p, s] of slopes(one)) join(into, p, s);
    for (const one of b) for (const [p, s] of slopes(one)) join(into, p, opposite[s]);
  }).slopes;
};
