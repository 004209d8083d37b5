/** What readings make of a fact in a book: narrower, the same, or a contradiction that the book keeps. */
import { entryKinds, isBooleanElsewhere, Quantity, type KeyInfo } from '../contract/index.ts';
import {
  dimensionInfo,
  isProblem,
  readQuantity,
  toUnit,
  unitNamed,
  type Dimension,
  type Edit,
  type Unit,
} from '../kernel/index.ts';
import { common, isNothing, type BenchTarget, type Ends } from './bench.ts';
import { at, isMap, type Tree } from './snapshot.ts';

/** What readings left, as the book keeps it when they disagree with a fact. */
interface Kept extends Ends {
  readonly index: number;
}

/** Records of a book about the fact that a target is. */
export const recordsAbout = ({ test, name }: BenchTarget, tree: Tree): readonly Kept[] => {
  const list = tree['bench'];
  return (Array.isArray(list) ? (list as readonly unknown[]) : []).flatMap((record, index): Kept[] => {
    if (!isMap(record) || record['by'] !== test.name || record['of'] !== name) return [];
    const { least, most } = record;
    return least instanceof Quantity && most instanceof Quantity ? [{ index, low: least.low, high: most.high }] : [];
  });
};

export type Outcome =
  /** The fact becomes this, in the author's unit; records that are taken in leave the book. */
  | { readonly kind: 'narrowed'; readonly ends: Ends; readonly text: string; readonly takenIn: readonly number[] }
  /** The readings leave everything that the book says. */
  | { readonly kind: 'same'; readonly ends: Ends }
  /** The pieces that have nothing in common; the book keeps those that are new to it. */
  | {
      readonly kind: 'contradiction';
      readonly with: 'the book' | 'each other' | 'earlier readings';
      readonly ends: readonly Ends[];
      readonly kept: readonly Ends[];
    }
  /** Nothing of what they leave can be. */
  | { readonly kind: 'impossible'; readonly ends: Ends };

export interface OutcomeInput {
  readonly target: BenchTarget;
  /** What each set of readings leaves. */
  readonly ranges: readonly Ends[];
  readonly tree: Tree;
  readonly info: KeyInfo | undefined;
  /** The unit that the author uses for a dimension. */
  readonly unit: Unit | undefined;
  /** Take the readings and drop what was stated and recorded. */
  readonly replace?: boolean;
}

const possible = ({ low, high }: Ends, info: KeyInfo | undefined): Ends | undefined => {
  const ends = { low: Math.max(low, info?.from ?? -Infinity), high: Math.min(high, info?.to ?? Infinity) };
  const isOutside =
    isNothing(ends) ||
    (info?.above !== undefined && !(ends.low > info.above)) ||
    (info?.below !== undefined && !(ends.high < info.below));
  return isOutside ? undefined : ends;
};

/** Forms the outcome of readings: the fact is what everything that is known of it has in common. */
export const outcomeOf = ({ target, ranges, tree, info, unit, replace = false }: OutcomeInput): Outcome => {
  const { stands, stated, test } = target;
  const used = unit ?? stands?.unit;
  const joint = common(ranges);
  if (isNothing(joint)) {
    // Two of them show it: the one that ends lowest and the one that begins highest.
    const lowest = ranges.find(({ high }) => high === joint.high)!;
    const highest = ranges.find(({ low }) => low === joint.low)!;
    const first = roundedApart(lowest, [highest], test.of, used);
    const second = roundedApart(highest, [first], test.of, used);
    return { kind: 'contradiction', with: 'each other', ends: ranges, kept: [first, second] };
  }
  const left = possible(joint, info);
  if (!left) return { kind: 'impossible', ends: joint };
  const records = recordsAbout(target, tree);
  const others: readonly Ends[] = replace ? [] : [...(stated && stands ? [stands] : []), ...records];
  const whole = common([left, ...others]);
  if (isNothing(whole)) {
    const isWithBook = stated && stands !== undefined && isNothing(common([left, stands]));
    const rounded = roundedApart(left, others, test.of, used);
    const isKnown = records.some(({ low, high }) => low === rounded.low && high === rounded.high);
    return {
      kind: 'contradiction',
      with: isWithBook ? 'the book' : 'earlier readings',
      ends: [left, ...others],
      kept: isKnown ? [] : [rounded],
    };
  }
  const isSame = stated && stands !== undefined && whole.low === stands.low && whole.high === stands.high;
  if (isSame && records.length === 0) return { kind: 'same', ends: left };
  const text = writtenRange(whole, test.of, used, stands?.text);
  return { kind: 'narrowed', ends: whole, text, takenIn: records.map(({ index }) => index) };
};

const unitFor = (of: Dimension, magnitude: number): Unit => {
  const { ladder, si } = dimensionInfo(of);
  const unit = unitNamed(ladder.findLast(([, from]) => magnitude >= from)?.[0] ?? si, of);
  if (isProblem(unit)) throw new RangeError(`${of} has no unit to print`);
  return unit;
};

/** Whether a number of that size is no row of noughts in that unit. */
const suits = (unit: Unit, size: number): boolean => {
  const number = Math.abs(toUnit(size, unit));
  return number === 0 || (number >= 0.1 && number < 1e5);
};

const MOST_PLACES = 12;
/** Share of a range that rounding may add at each end. */
const ROUNDING = 0.05;

interface Written {
  readonly low: string;
  readonly high: string;
  readonly unit: Unit;
}

/** Both ends in an author's unit, rounded outward by at most a share of the range. */
const writtenEnds = (ends: Ends, of: Dimension, given: Unit | undefined, rounding: number): Written => {
  const size = Math.max(Math.abs(ends.low), Math.abs(ends.high));
  const unit = given && suits(given, size) ? given : unitFor(of, size);
  const [low, high] = [toUnit(ends.low, unit), toUnit(ends.high, unit)];
  const slack = rounding * (high - low) + 1e-12 * Math.max(Math.abs(low), Math.abs(high));
  const roundedTo = (x: number, toward: -1 | 1, places: number): string => {
    const size = 10 ** places;
    const nearest = Math.round(x * size);
    // What is a number of that many places already stays as it is.
    const stays = Math.abs(nearest / size - x) <= 1e-12 * Math.abs(x);
    return ((stays ? nearest : toward < 0 ? Math.floor(x * size) : Math.ceil(x * size)) / size).toFixed(places);
  };
  const end = (x: number, toward: -1 | 1): string => {
    let text = '';
    for (let places = 0; places <= MOST_PLACES; places++) {
      text = roundedTo(x, toward, places);
      if (Math.abs(Number(text) - x) <= slack) break;
    }
    return text.includes('.') ? text.replace(/\.?0+$/, '') : text;
  };
  return { low: end(low, -1), high: end(high, 1), unit };
};

const withUnit = (number: string, unit: string): string => `${number} ${unit}`.trim();

/** The unit as it is spelt behind a number in a text of the author, or as the trade does. */
const spelling = (unit: Unit, of: Dimension, like: string | undefined): string => {
  const own = like?.replace(/\s*(±|\+-).*$/, '').replace(/^.*[\d½¼¾⅛⅜⅝⅞]\s*/u, '') ?? '';
  const meant = own === '' ? undefined : unitNamed(own, of);
  return meant && !isProblem(meant) && meant.print === unit.print ? own : unit.print;
};

/**
 * A range as an author would write it, rounded so that nothing of it is lost.
 *
 * @param like a text of the author in that unit, whose spelling is kept
 */
export const writtenRange = (ends: Ends, of: Dimension, given?: Unit, like?: string): string => {
  const { low, high, unit } = writtenEnds(ends, of, given, ROUNDING);
  return withUnit(low === high ? low : `${low}..${high}`, spelling(unit, of, like));
};

/** A range as it will be read back, and still apart from the others. */
const roundedApart = (ends: Ends, others: readonly Ends[], of: Dimension, unit: Unit | undefined): Ends => {
  for (const rounding of [ROUNDING, 1e-3, 1e-6]) {
    const written = writtenEnds(ends, of, unit, rounding);
    const low = readQuantity(withUnit(written.low, written.unit.ascii), of);
    const high = readQuantity(withUnit(written.high, written.unit.ascii), of);
    if (!low.ok || !high.ok) break;
    const rounded = { low: low.lo, high: high.hi };
    if (isNothing(common([rounded, ...others]))) return rounded;
  }
  return ends;
};

/** One target with what became of it. */
export interface Benched {
  readonly target: BenchTarget;
  readonly outcome: Outcome;
}

const plainName = (name: string): string =>
  /^[A-Za-z][\w.-]*$/.test(name) && !isBooleanElsewhere(name) ? name : JSON.stringify(name);

const recordText = ({ test, name, stands }: BenchTarget, ends: Ends, given: Unit | undefined): string => {
  const { low, high, unit } = writtenEnds(ends, test.of, given, 0);
  const spelt = spelling(unit, test.of, stands?.text);
  return `{ by: ${test.name}, of: ${plainName(name)}, least: ${withUnit(low, spelt)}, most: ${withUnit(high, spelt)} }`;
};

/** Edits that bring all of it into a book: facts first, then what the book keeps and no longer keeps of readings. */
export const benchEdits = (
  all: readonly Benched[],
  tree: Tree,
  unitOf: (target: BenchTarget) => Unit | undefined,
): readonly Edit[] => {
  const facts = all.flatMap(({ target, outcome }): Edit[] => {
    if (outcome.kind !== 'narrowed') return [];
    const [kind = '', name = ''] = target.keys;
    const [variant] = target.test.variants ?? [];
    const variantKey = entryKinds[kind]?.variant;
    const isNew =
      variant !== undefined && variantKey !== undefined && at(tree, `${kind}.${name}.${variantKey}`) === undefined;
    return [
      ...(isNew ? [{ path: `${kind}.${name}.${variantKey}`, text: variant }] : []),
      { path: target.path, text: outcome.text },
      { path: `${target.path}.from`, text: 'measured' },
    ];
  });
  const list = tree['bench'];
  const before = Array.isArray(list) ? list.length : 0;
  const gone = all.flatMap(({ outcome }) => (outcome.kind === 'narrowed' ? outcome.takenIn : []));
  const added = all.flatMap(({ target, outcome }) =>
    outcome.kind === 'contradiction' ? outcome.kept.map((ends) => recordText(target, ends, unitOf(target))) : [],
  );
  const isEmptied = gone.length > 0 && gone.length === before && added.length === 0;
  const removals: readonly Edit[] = isEmptied
    ? [{ path: 'bench', text: null }]
    : gone.toSorted((a, b) => b - a).map((index) => ({ path: `bench.${index}`, text: null }));
  return [
    ...facts,
    ...removals,
    ...added.map((text, i): Edit => ({ path: `bench.${before - gone.length + i}`, text })),
  ];
};
