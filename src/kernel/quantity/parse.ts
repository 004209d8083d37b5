/** Reads one amount, a number with its unit, and turns it into SI. */
import { dimensionInfo } from './dimensions.ts';
import type { Dimension } from './dimensions.ts';
import { exact, isLess, minus, plus, ten, times, toNumber } from './exact.ts';
import type { Exact } from './exact.ts';
import { readNumber } from './number.ts';
import { noUnit, quoted, unitProblem, wanted, wouldDo } from './problems.ts';
import type { Numbers, Problem } from './problems.ts';
import { readUnit } from './unit-text.ts';
import type { ExactUnit } from './unit-text.ts';
import { AWG_LARGEST, AWG_SMALLEST, awgArea } from './units.ts';
import type { Unit } from './units.ts';

/** A number as written, with the text of its unit, not yet looked up: in a range one unit serves both ends. */
export interface Amount {
  readonly value: Exact;
  /** Significant figures that the author wrote. */
  readonly figures: number;
  readonly unitText: string;
  /** Where the unit begins in the whole text. */
  readonly unitAt: number;
}

export type Result<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly problem: Problem };

export const good = <T>(value: T): Result<T> => ({ ok: true, value });
export const bad = (problem: Problem): { readonly ok: false; readonly problem: Problem } => ({ ok: false, problem });

/** The whole text as authored, the same with like characters made alike, and what it should be. */
export interface Source {
  readonly text: string;
  readonly clean: string;
  readonly dimension: Dimension;
}

const amount = (value: Exact, figures: number, unitText: string, unitAt: number): Result<Amount> =>
  good({ value, figures, unitText, unitAt });

const gauge = (part: string, from: number): Result<Amount> | undefined => {
  const found = /^(?:awg[\s-]*([1-4]\/0|\d{1,2})|([1-4]\/0|\d{1,2})[\s-]*awg|([1-4]\/0))$/i.exec(part);
  const name = found?.[1] ?? found?.[2] ?? found?.[3];
  if (name === undefined) return undefined;
  const n = name.includes('/') ? 1 - Number(name.split('/')[0]) : Number(name);
  const unit = /awg/i.exec(part);
  return amount(exact(n), 2, unit === null ? '' : 'AWG', from + (unit?.index ?? 0));
};

const COMPONENT: Partial<Record<Dimension, RegExp>> = {
  resistance: /^(\d*)([RkKM])(\d+)$/,
  capacitance: /^(\d*)([pnuµ])(\d+)$/,
  inductance: /^(\d*)([nuµ])(\d+)$/,
};

/** 4k7, R47, 4n7: the letter stands where the decimal point would. */
const component = (part: string, from: number, dimension: Dimension): Result<Amount> | undefined => {
  const [, whole = '', letter = '', decimals = ''] = COMPONENT[dimension]?.exec(part) ?? [];
  if (letter === '' || decimals.length > 6 || whole.length > 6) return undefined;
  const value = times(exact(BigInt(whole + decimals)), ten(-decimals.length));
  return amount(value, `${whole}${decimals}`.replace(/^0+/, '').length, letter, from + whole.length);
};

/** 6'3-1/2" and 5 ft 3 in. */
const feetAndInches = (feet: Exact, rest: string, at: number): Result<Amount> | undefined => {
  const mark = /^\s*(?:'|ft)\s*-?\s*(?=[\d½¼¾⅛⅜⅝⅞])/.exec(rest);
  if (mark === null) return undefined;
  const inches = readNumber(rest, mark[0].length);
  if (inches.kind !== 'number' || !isLess(inches.value, exact(12))) return undefined;
  if (!/^\s*(?:"|in)$/.test(rest.slice(inches.end))) return undefined;
  const more = feet.n < 0n ? minus(inches.value) : inches.value;
  return amount(plus(times(feet, exact(12)), more), 6, 'in', at);
};

/**
 * Reads the amount that stands in a part of the text.
 * @param from where the part begins
 * @param to where it ends
 */
export const readAmount = (source: Source, from: number, to: number): Result<Amount> => {
  const { text, clean, dimension } = source;
  const lead = clean.slice(from, to).search(/\S/);
  const start = from + Math.max(lead, 0);
  const part = clean.slice(start, to).trimEnd();
  const end = start + part.length;
  if (dimension === 'conductor-area') {
    const found = gauge(part, start);
    if (found !== undefined) return found;
  }
  const found = component(part, start, dimension);
  if (found !== undefined) return found;

  const symbol = /^([€£$])\s*(?=[\d.])/.exec(part);
  const number = readNumber(part, symbol?.[0].length ?? 0);
  if (number.kind === 'none') {
    return bad({ what: `${quoted(text)} does not begin with a number.`, allowed: wanted(dimension), at: [start, end] });
  }
  const rest = part.slice(number.end);
  if (number.kind === 'fault') {
    const ways = number.instead.map((way) => clean.slice(0, start) + way + rest + clean.slice(end));
    return bad({
      what: `${quoted(text)} ${number.why}.`,
      allowed:
        ways.length > 0
          ? wouldDo(
              ways.map((way) => way.trim()),
              'or',
            )
          : wanted(dimension),
      at: [start, start + number.end],
    });
  }
  const written = part.slice(0, number.end);
  const blame: readonly [number, number] = [start + number.end, end];
  if (/^\s*-\s*[\d.]/.test(rest)) {
    const range = written + rest.replace(/^\s*-\s*/, '..');
    return bad({ what: `${quoted(text)} could be a range or a subtraction.`, allowed: wouldDo([range]), at: blame });
  }
  const thousands = /^(?:\s\d{3})+(?!\d)/.exec(rest);
  if (thousands !== null && /^[-+]?\d{1,3}$/.test(written)) {
    const joined = written + thousands[0].replace(/\s/g, '') + rest.slice(thousands[0].length);
    return bad({ what: `${quoted(text)} has a space between its digits.`, allowed: wouldDo([joined]), at: blame });
  }
  if (/^\s*[\d.½¼¾⅛⅜⅝⅞]/.test(rest)) {
    const allowed = `One number or a range would do. ${wanted(dimension)}`;
    return bad({ what: `${quoted(text)} holds two numbers.`, allowed, at: blame });
  }
  const unitAt = start + number.end + Math.max(rest.search(/\S/), 0);
  const inches = dimension === 'length' ? feetAndInches(number.value, rest, unitAt) : undefined;
  if (inches !== undefined) return inches;
  if (symbol !== null) return amount(number.value, number.figures, (symbol[1] ?? '') + rest.trim(), start);
  return amount(number.value, number.figures, rest.trim(), unitAt);
};

/** Looks up the unit of an amount; `numbers` are all numbers of the text, for the suggestions. */
export const unitOf = (source: Source, { unitText, unitAt }: Amount, numbers: Numbers): Result<ExactUnit> => {
  const { text, dimension } = source;
  if (unitText === '' && !dimensionInfo(dimension).bare) return bad(noUnit(text, numbers, dimension));
  const read = readUnit(unitText, dimension);
  if (read.ok) return good(read.value);
  return bad(unitProblem(read.fault, text, unitText, unitAt, numbers, dimension));
};

/** An authored number in SI, rounded once. */
export const toSi = (source: Source, value: Exact, { unit, factor, pi, offset }: ExactUnit): Result<number> => {
  const { text, dimension } = source;
  if (unit.scale === 'awg') {
    const n = toNumber(value);
    if (Number.isInteger(n) && n >= AWG_LARGEST && n <= AWG_SMALLEST) return good(awgArea(n));
    return bad({ what: `${quoted(text)} is no gauge.`, allowed: `AWG 4/0 to AWG ${AWG_SMALLEST} would do.` });
  }
  const si = toNumber(plus(times(value, factor), offset)) * Math.PI ** pi;
  if (!Number.isFinite(si))
    return bad({ what: `${quoted(text)} is too large to be meant.`, allowed: wanted(dimension) });
  if (dimension === 'temperature' && si < 0) {
    return bad({
      what: `${quoted(text)} lies below absolute zero.`,
      allowed: 'Temperatures from −273.15 °C up would do.',
    });
  }
  return good(si);
};

/**
 * The unit that a text names.
 * @param text the unit alone, such as `kgf·cm`
 * @param dimension what it has to measure
 * @returns the unit, or the problem with it
 */
export const unitNamed = (text: string, dimension: Dimension): Unit | Problem => {
  const read = readUnit(text, dimension);
  if (read.ok) return read.value.unit;
  if (text.trim() === '') return { what: 'No unit is written.', allowed: wanted(dimension) };
  return unitProblem(read.fault, text, text.trim(), 0, [exact(1)], dimension);
};

/** Tells the two answers of `unitNamed` apart. */
export const isProblem = (answer: Unit | Problem): answer is Problem => 'what' in answer;
