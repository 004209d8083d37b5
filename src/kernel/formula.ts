import { siUnit, type Dimension } from './quantity/index.ts';
import { OutsideRange } from './errors.ts';
import { constant, type Citation, type Slope, type Value } from './values.ts';

/** What stands behind a formula. Only the first three kinds are evidence. */
export interface Evidence {
  readonly kind: 'published' | 'published-secondary' | 'independent' | 'law' | 'memory';
  /** What it was compared with, or what the law says. */
  readonly against: string;
  readonly source?: Citation;
}

/** One input of a formula. The range is where the formula may be used; `typical` is where its properties are tried. */
export interface Take {
  readonly symbol: string;
  readonly of: Dimension;
  readonly means: string;
  readonly above?: number;
  readonly from?: number;
  readonly to?: number;
  readonly below?: number;
  readonly because?: string;
  readonly otherwise?: number;
  /** How the result moves when this input grows, all through the range; tried by a property test. */
  readonly slope?: Slope;
  /** Two ordinary values, in SI, lowest first. */
  readonly typical: readonly [number, number];
  /** A list of numbers instead of one. */
  readonly many?: true;
}

/** Records the shown steps; in the plain number form it does nothing but hand the number on. */
export interface Recorder {
  /** A step in closed form: `text` is recomputed by the tests from the recorded inputs. */
  (symbol: string, text: string, number: number, of: Dimension): number;
  /** A number found by a numerical method: `residual` is an expression that is zero at it, within `within`. */
  solved(symbol: string, residual: string, number: number, of: Dimension, within: number): number;
}

type Takes = Readonly<Record<string, Take>>;
type Numbers<T extends Takes> = { [K in keyof T]: T[K] extends { many: true } ? readonly number[] : number };
type Optional<T extends Takes> = { [K in keyof T]: T[K] extends { otherwise: number } ? K : never }[keyof T];
type Given<T extends Takes, One> = {
  [K in Exclude<keyof T, Optional<T>>]: T[K] extends { many: true } ? readonly One[] : One;
} & { [K in Optional<T>]?: One | undefined };

export interface Declaration<T extends Takes = Takes> {
  /** Kebab-case, unique over all trades. */
  readonly name: string;
  readonly gives: { readonly symbol: string; readonly of: Dimension; readonly means: string };
  readonly takes: T;
  readonly steps: (numbers: Numbers<T>, step: Recorder) => number;
  readonly assumes: readonly string[];
  readonly source: readonly Citation[];
  readonly checked: readonly Evidence[];
  readonly accuracy: string;
}

/** One line of shown working. */
export interface Step {
  readonly symbol: string;
  readonly text: string;
  readonly number: number;
  readonly of: Dimension;
  /** Present when `text` is a residual that must be zero within this. */
  readonly within?: number;
}

export interface Formula<T extends Takes = Takes> {
  /** The plain number form, for hot loops. Throws OutsideRange. */
  (numbers: Given<T, number>): number;
  /** The same calculation on values that know their origin. A bare number stands for a constant of the method. */
  work(values: Given<T, Value | number>): Value;
  /** The same calculation with every step recorded. */
  show(numbers: Given<T, number>): { readonly number: number; readonly steps: readonly Step[] };
  readonly declared: Declaration<T>;
}

const silent: Recorder = Object.assign((_s: string, _t: string, number: number) => number, {
  solved: (_s: string, _r: string, number: number) => number,
});

const recorder = (steps: Step[]): Recorder =>
  Object.assign(
    (symbol: string, text: string, number: number, of: Dimension) => {
      steps.push({ symbol, text, number, of });
      return number;
    },
    {
      solved: (symbol: string, text: string, number: number, of: Dimension, within: number) => {
        steps.push({ symbol, text, number, of, within });
        return number;
      },
    },
  );

/** The range of an input in words of mathematics, `0 < L ≤ 2`. */
export const rangeOf = ({ symbol, above, from, below, to }: Take): string => {
  const low = above !== undefined ? `${above} < ` : from !== undefined ? `${from} ≤ ` : '';
  const high = below !== undefined ? ` < ${below}` : to !== undefined ? ` ≤ ${to}` : '';
  return low || high ? `${low}${symbol}${high}` : `any ${symbol}`;
};

/** An input made ready for the many calls of a search. */
interface Slot {
  readonly name: string;
  readonly take: Take;
  readonly low: number;
  readonly lowOpen: boolean;
  readonly high: number;
  readonly highOpen: boolean;
  readonly fallback: Value | undefined;
}

const slotOf = (name: string, take: Take): Slot => {
  const { above = -Infinity, from = -Infinity, below = Infinity, to = Infinity, otherwise } = take;
  return {
    name,
    take,
    low: Math.max(above, from),
    lowOpen: above >= from,
    high: Math.min(below, to),
    highOpen: below <= to,
    fallback: otherwise === undefined ? undefined : constant(otherwise, take.of, take.means),
  };
};

const inside = ({ low, lowOpen, high, highOpen }: Slot, x: number): boolean =>
  (lowOpen ? x > low : x >= low) && (highOpen ? x < high : x <= high) && Number.isFinite(x);

/**
 * Declares a calculation once: its range check, shown working, command-line form, place in the index and tests
 * all come from this one declaration. Everything inside is SI and radians.
 */
export const formula = <const T extends Takes>(declared: Declaration<T>): Formula<T> => {
  const slots = Object.entries(declared.takes as Takes).map(([name, take]) => slotOf(name, take));
  const check = (slot: Slot, x: number): void => {
    if (inside(slot, x)) return;
    const { take } = slot;
    const unit = siUnit(take.of);
    const allowed = unit === '1' ? rangeOf(take) : `${rangeOf(take)} ${unit}`;
    throw new OutsideRange(declared.name, take.symbol, x, allowed, take.because ?? '');
  };
  const checked = (given: Given<T, number>): Numbers<T> => {
    const numbers: Record<string, number | readonly number[]> = {};
    for (const slot of slots) {
      const x = (given as Record<string, number | readonly number[] | undefined>)[slot.name] ?? slot.take.otherwise;
      if (Array.isArray(x)) for (const one of x as readonly number[]) check(slot, one);
      else check(slot, x as number);
      numbers[slot.name] = x as number | readonly number[];
    }
    return numbers as Numbers<T>;
  };
  const known = ({ name, take }: Slot, x: Value | number): Value => {
    const value = typeof x === 'number' ? constant(x, take.of, take.means) : x;
    if (value.of !== take.of) throw new TypeError(`${declared.name}: ${name} wants ${take.of}, was given ${value.of}`);
    return value;
  };
  const finish = (number: number): number => {
    if (Number.isFinite(number)) return number;
    throw new OutsideRange(
      declared.name,
      declared.gives.symbol,
      number,
      'the finite numbers',
      'the result is no number',
    );
  };
  const plain = (given: Given<T, number>): number => finish(declared.steps(checked(given), silent));
  const self: Formula<T> = Object.assign(plain, {
    declared,
    show: (given: Given<T, number>) => {
      const steps: Step[] = [];
      const number = finish(declared.steps(checked(given), recorder(steps)));
      return { number, steps };
    },
    work: (values: Given<T, Value | number>): Value => {
      const takes: Record<string, Value | readonly Value[]> = {};
      const numbers: Record<string, number | readonly number[]> = {};
      for (const slot of slots) {
        const { name } = slot;
        const x =
          (values as Record<string, Value | number | readonly (Value | number)[] | undefined>)[name] ?? slot.fallback;
        if (x === undefined) throw new TypeError(`${declared.name}: ${name} is missing`);
        if (Array.isArray(x)) {
          const list = (x as readonly (Value | number)[]).map((one) => known(slot, one));
          takes[name] = list;
          numbers[name] = list.map((one) => one.number);
          for (const one of list) check(slot, one.number);
        } else {
          const value = known(slot, x as Value | number);
          takes[name] = value;
          numbers[name] = value.number;
          check(slot, value.number);
        }
      }
      return {
        number: finish(declared.steps(numbers as Numbers<T>, silent)),
        of: declared.gives.of,
        origin: { kind: 'worked', by: self as unknown as Formula, takes },
      };
    },
  });
  return self;
};
