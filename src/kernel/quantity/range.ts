/** Reads a quantity: one value, a range `a..b`, or a value with a tolerance `a ±b`. */
import { dimensionInfo, dimensionOf } from './dimensions.ts';
import type { Dimension } from './dimensions.ts';
import { exact, isLess, minus, plus, power, size, times, toNumber } from './exact.ts';
import type { Exact } from './exact.ts';
import { bad, good, readAmount, toSi, unitOf } from './parse.ts';
import type { Amount, Result, Source } from './parse.ts';
import { quoted, wanted, wouldDo } from './problems.ts';
import type { Problem } from './problems.ts';
import { showNumber } from './print.ts';
import { normalised, readUnit } from './unit-text.ts';
import type { ExactUnit } from './unit-text.ts';
import type { Unit } from './units.ts';

export type Reading =
  | {
      readonly ok: true;
      /** [SI]; equal to `hi` where the text holds one value. */
      readonly lo: number;
      readonly hi: number;
      /** The author's unit, for printing back. */
      readonly unit: Unit;
      /** Significant figures that the author wrote. */
      readonly figures: number;
      /** The value before the ± [SI]. */
      readonly nominal?: number;
    }
  | { readonly ok: false; readonly problem: Problem };

interface Values {
  readonly lo: number;
  readonly hi: number;
  readonly unit: Unit;
  readonly figures: number;
  readonly nominal?: number;
}

const LONGEST_TEXT = 120;

const TOLERANCE = /±|\+\/-|\+-/g;
/** `..`, `…`, the word "to", or an en dash that stands between two numbers. */
const BETWEEN = /\.{2,}|…|\bto\b|(?<=[^\s–—])\s*[–—](?=\s*[-–]?[\d.])/gi;

const places = (text: string, pattern: RegExp): readonly (readonly [from: number, to: number])[] =>
  [...text.matchAll(pattern)].map((m) => [m.index, m.index + m[0].length] as const);

const single = (source: Source): Result<Values> => {
  const read = readAmount(source, 0, source.clean.length);
  if (!read.ok) return read;
  const unit = unitOf(source, read.value, [read.value.value]);
  if (!unit.ok) return unit;
  const si = toSi(source, read.value.value, unit.value);
  if (!si.ok) return si;
  return good({ lo: si.value, hi: si.value, unit: unit.value.unit, figures: read.value.figures });
};

const mixedMoney = (source: Source, a: Unit, b: Unit): Problem => ({
  what: `${quoted(source.text)} mixes ${a.currency} and ${b.currency}.`,
  allowed: 'One currency would do.',
});

const written = ({ value, figures }: Amount): string => showNumber(toNumber(value), { figures: Math.max(figures, 3) });

/** Says that two ends are different things, where the unit that does not fit is a known one. */
const mixed = (source: Source, right: Amount, wrong: Amount, unit: Unit, otherwise: Problem): Problem => {
  const read = readUnit(wrong.unitText, source.dimension);
  const other = !read.ok && read.fault.kind === 'wrong' ? dimensionOf(read.fault.unit.vector) : undefined;
  if (other === undefined) return otherwise;
  const words = [dimensionInfo(source.dimension).words, other.words];
  const ends = [right, wrong].toSorted((a, b) => a.unitAt - b.unitAt);
  return {
    what: `${quoted(source.text)} mixes ${words.join(' and ')}.`,
    allowed: wouldDo([`${ends.map((end) => written(end)).join('..')} ${unit.print}`.trim()]),
    at: otherwise.at,
  };
};

/** Two amounts whose units are looked up; a unit that stands at one of them serves both. */
const sharedUnits = (source: Source, a: Amount, b: Amount): Result<readonly [ExactUnit, ExactUnit]> => {
  const owner = (own: Amount, other: Amount): Amount => (own.unitText === '' ? other : own);
  const numbers = [a.value, b.value];
  const both = a.unitText === '' || b.unitText === '' || a.unitText === b.unitText;
  const first = unitOf(source, owner(a, b), both ? numbers : [a.value]);
  if (!first.ok) {
    const other = both ? undefined : unitOf(source, b, [b.value]);
    return bad(other?.ok === true ? mixed(source, b, a, other.value.unit, first.problem) : first.problem);
  }
  const second = unitOf(source, owner(b, a), both ? numbers : [b.value]);
  if (!second.ok) return bad(both ? second.problem : mixed(source, a, b, first.value.unit, second.problem));
  const [x, y] = [first.value.unit, second.value.unit];
  if (x.currency !== y.currency) return bad(mixedMoney(source, x, y));
  return good([first.value, second.value]);
};

/** The author's two ends the other way round. */
const turned = (a: Amount, b: Amount): string =>
  a.unitText === '' || b.unitText === ''
    ? `${written(b)}..${written(a)} ${a.unitText || b.unitText}`.trim()
    : `${written(b)} ${b.unitText}..${written(a)} ${a.unitText}`;

const range = (source: Source, [from, to]: readonly [number, number]): Result<Values> => {
  const { text, clean, dimension } = source;
  const mark = clean.slice(from, to);
  if (clean.slice(0, from).trim() === '' || clean.slice(to).trim() === '') {
    return bad({
      what: `${quoted(text)} has only one end.`,
      allowed: `Both ends are needed. ${wanted(dimension)}`,
      at: [from, to],
    });
  }
  if (mark.startsWith('...')) {
    const allowed = wouldDo([`${clean.slice(0, from)}..${clean.slice(to)}`.trim()]);
    return bad({ what: `${quoted(text)} has more than two dots between its ends.`, allowed, at: [from, to] });
  }
  const a = readAmount(source, 0, from);
  if (!a.ok) return a;
  const b = readAmount(source, to, clean.length);
  if (!b.ok) return b;
  const units = sharedUnits(source, a.value, b.value);
  if (!units.ok) return units;
  const first = toSi(source, a.value.value, units.value[0]);
  if (!first.ok) return first;
  const second = toSi(source, b.value.value, units.value[1]);
  if (!second.ok) return second;
  const unit = units.value[0].unit;
  const figures = Math.max(a.value.figures, b.value.figures);
  // Gauge numbers run against the area, so neither order of two gauges is a slip.
  if (unit.scale === 'awg' || units.value[1].unit.scale === 'awg') {
    return good({ lo: Math.min(first.value, second.value), hi: Math.max(first.value, second.value), unit, figures });
  }
  if (!(first.value <= second.value)) {
    const what = `${quoted(text)} is empty: its first end is the larger one.`;
    return bad({ what, allowed: wouldDo([turned(a.value, b.value)]) });
  }
  return good({ lo: first.value, hi: second.value, unit, figures });
};

const isPercent = (unitText: string): boolean => /^(?:%|percent)$/.test(unitText);

/** What is unclear about a tolerance before any unit is looked up. */
const doubtfulTolerance = (source: Source, c: Amount, t: Amount, written: string): Omit<Problem, 'at'> | undefined => {
  const { text, dimension } = source;
  const percent = isPercent(t.unitText);
  if (t.value.n < 0n) {
    return { what: `${quoted(text)} has a tolerance below zero.`, allowed: 'A tolerance from zero up would do.' };
  }
  if ((dimension === 'ratio' || dimension === 'duty') && (percent || isPercent(c.unitText))) {
    return {
      what: `${quoted(text)} is not clear: percent of the value, or so many percent more and less.`,
      allowed: 'Both ends as a range would do, such as 65..75 %.',
    };
  }
  if (c.unitText === '' && /^%\s*\S/.test(t.unitText)) {
    const [percentage = '', unit = ''] = written.split(/(?<=%)/);
    const centre = source.clean.slice(0, source.clean.search(TOLERANCE)).trim();
    return {
      what: `${quoted(text)} has its unit behind the percentage.`,
      allowed: wouldDo([`${centre} ${unit.trim()} ±${percentage.trim()}`]),
    };
  }
  if (percent && dimension === 'temperature') {
    return {
      what: `${quoted(text)} takes a percentage of a temperature.`,
      allowed: wouldDo(['20 ±5 °C', '15..25 °C']),
    };
  }
  if (percent && isLess(exact(100), t.value)) {
    return { what: `${quoted(text)} has a tolerance of more than the value.`, allowed: 'Up to ±100 % would do.' };
  }
  if (t.unitText === '' && c.unitText !== '') {
    const ways = [`±${written} ${c.unitText}`, ...(dimension === 'temperature' ? [] : [`±${written} %`])];
    return { what: `${quoted(text)} has a tolerance without a unit.`, allowed: wouldDo(ways) };
  }
  return undefined;
};

/** The unit of a tolerance that has one of its own. ±5 K about a temperature is a difference. */
const toleranceUnit = (source: Source, t: Amount): Result<ExactUnit> => {
  const dimension = source.dimension === 'temperature' ? 'temperature-difference' : source.dimension;
  return unitOf({ ...source, dimension }, t, [t.value]);
};

const tolerance = (source: Source, [from, to]: readonly [number, number]): Result<Values> => {
  const { text, clean, dimension } = source;
  if (clean.slice(0, from).trim() === '' || clean.slice(to).trim() === '') {
    const allowed = `A value stands before the ± and a tolerance behind it. ${wanted(dimension)}`;
    return bad({ what: `${quoted(text)} lacks one side of its ±.`, allowed, at: [from, to] });
  }
  const before = readAmount(source, 0, from);
  if (!before.ok) return before;
  const behind = readAmount(source, to, clean.length);
  if (!behind.ok) return behind;
  const [c, t] = [before.value, behind.value];
  const doubt = doubtfulTolerance(source, c, t, clean.slice(to).trim());
  if (doubt !== undefined) return bad({ ...doubt, at: [to, clean.length] });

  const percent = isPercent(t.unitText);
  const owner = c.unitText === '' && !percent ? { ...c, unitText: t.unitText, unitAt: t.unitAt } : c;
  const unit = unitOf(source, owner, [c.value]);
  if (!unit.ok) return unit;
  if (unit.value.unit.scale === 'awg') {
    const allowed = wouldDo(['22..24 AWG', '0.5 ±0.02 mm²']);
    return bad({ what: `${quoted(text)} puts a tolerance on a gauge.`, allowed, at: [from, clean.length] });
  }
  const nominal = toSi(source, c.value, unit.value);
  if (!nominal.ok) return nominal;
  const rest = { unit: unit.value.unit, figures: Math.max(c.figures, percent ? 1 : t.figures), nominal: nominal.value };

  let half: Exact = percent ? times(size(c.value), times(t.value, exact(1, 100))) : t.value;
  if (!percent && t.unitText !== owner.unitText) {
    const own = toleranceUnit(source, t);
    if (!own.ok) return own;
    if (own.value.unit.currency !== unit.value.unit.currency)
      return bad(mixedMoney(source, unit.value.unit, own.value.unit));
    if (own.value.pi !== unit.value.pi) {
      const width = toNumber(t.value) * toNumber(own.value.factor) * Math.PI ** own.value.pi;
      return good({ lo: nominal.value - width, hi: nominal.value + width, ...rest });
    }
    half = times(t.value, times(own.value.factor, power(unit.value.factor, -1)));
  }
  const lo = toSi(source, plus(c.value, minus(half)), unit.value);
  if (!lo.ok) return lo;
  const hi = toSi(source, plus(c.value, half), unit.value);
  if (!hi.ok) return hi;
  return good({ lo: lo.value, hi: hi.value, ...rest });
};

const values = (source: Source): Result<Values> => {
  const { text, clean, dimension } = source;
  if (clean.length > LONGEST_TEXT) {
    const what = `${quoted(text)} is too long for a quantity.`;
    return bad({ what, allowed: `Up to ${LONGEST_TEXT} characters would do. ${wanted(dimension)}` });
  }
  const trimmed = clean.trim();
  if (trimmed === '') return bad({ what: 'Nothing is written here.', allowed: wanted(dimension) });
  if (/^[-+.]*(?:nan|inf|infinity|∞)\b/i.test(trimmed) || trimmed.endsWith('∞')) {
    return bad({ what: `${quoted(text)} is not a number that a quantity can have.`, allowed: wanted(dimension) });
  }
  if (/^[~≈<>≤≥]/.test(trimmed)) {
    const what = `${quoted(text)} does not say how far it may be off.`;
    return bad({ what, allowed: `A range would do. ${wanted(dimension)}`, at: [0, clean.indexOf(trimmed) + 1] });
  }
  const tolerances = places(clean, TOLERANCE);
  const ranges = places(clean, BETWEEN);
  const [firstTolerance] = tolerances;
  const [firstRange] = ranges;
  if (tolerances.length + ranges.length > 1) {
    const what = `${quoted(text)} has more than one range in it.`;
    return bad({ what, allowed: `One range or one ± would do. ${wanted(dimension)}` });
  }
  if (firstTolerance !== undefined) return tolerance(source, firstTolerance);
  if (firstRange !== undefined) return range(source, firstRange);
  return single(source);
};

/**
 * Reads a quantity as people write it: one value, `a..b`, or `a ±b`.
 * @param text such as `1.9 N·m`, `0.9..1.3 N·m`, `24 V ±2%`, `3/4 in`, `AWG24`
 * @param dimension what it has to be
 * @returns both ends [SI], the author's unit and figures; or what is wrong and what would do. Never throws.
 */
export const readQuantity = (text: string, dimension: Dimension): Reading => {
  const read = values({ text, clean: normalised(text), dimension });
  return read.ok ? { ok: true, ...read.value } : { ok: false, problem: read.problem };
};
