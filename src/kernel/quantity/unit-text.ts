/** Reads the text of a unit: products, powers and quotients of the units in the table, as people type them. */
import { exact, ONE, power, times, toNumber } from './exact.ts';
import type { Exact } from './exact.ts';
import { BASES, dimensionInfo, fits } from './dimensions.ts';
import type { Dimension, Vector } from './dimensions.ts';
import { asWeight, AWG, factorOf, KNOWN, meansHere, REFUSED, REMARKS, runTogether } from './units.ts';
import type { Spelling, Unit } from './units.ts';

/** What is wrong with a unit's text; `from` and `to` are places in that text. */
export type UnitFault =
  | { readonly kind: 'unknown'; readonly word: string; readonly from: number; readonly to: number }
  | {
      readonly kind: 'refused';
      readonly why: string;
      readonly instead: string;
      readonly from: number;
      readonly to: number;
    }
  | { readonly kind: 'remark'; readonly word: string; readonly from: number; readonly to: number }
  | { readonly kind: 'two-below'; readonly better: string; readonly from: number; readonly to: number }
  | { readonly kind: 'junk'; readonly from: number; readonly to: number }
  | { readonly kind: 'wrong'; readonly unit: Unit };

/** A unit with its exact factor, which a Unit as plain data cannot carry. */
export interface ExactUnit {
  readonly unit: Unit;
  readonly factor: Exact;
  readonly pi: number;
  readonly offset: Exact;
}

export type UnitResult =
  { readonly ok: true; readonly value: ExactUnit } | { readonly ok: false; readonly fault: UnitFault };

interface Factor {
  readonly spelling: Spelling;
  readonly exponent: number;
  /** The 100 of `/100 m`. */
  readonly scale: bigint;
}

const SUPERSCRIPTS = '⁰¹²³⁴⁵⁶⁷⁸⁹';
const LARGEST_EXPONENT = 4;

/** Carries a fault out of the descent through the text; it never leaves this file. */
class Fault extends Error {
  readonly fault: UnitFault;
  constructor(fault: UnitFault) {
    super(fault.kind);
    this.fault = fault;
  }
}

const spellingOf = (word: string, dimension: Dimension, alone: boolean): Spelling | undefined =>
  KNOWN.get((alone ? meansHere(word, dimension) : undefined) ?? word);

/** Text to factors. A state is needed only for the place in the text. */
const factorsOf = (text: string, dimension: Dimension): readonly Factor[] => {
  let at = 0;
  const match = (pattern: RegExp): RegExpExecArray | undefined => {
    pattern.lastIndex = at;
    const found = pattern.exec(text) ?? undefined;
    if (found !== undefined) at += found[0].length;
    return found;
  };
  const readExponent = (): number => {
    const raised = match(/(⁻?)([⁰¹²³⁴⁵⁶⁷⁸⁹])/y);
    const found = raised ?? match(/\^\s?(-?)(\d)(?!\d)/y) ?? match(/(?<=[A-Za-zµΩ])(-?)(\d)(?!\d)/y);
    if (found === undefined) return 1;
    const digit = raised === undefined ? Number(found[2]) : SUPERSCRIPTS.indexOf(found[2] ?? '');
    const exponent = found[1] === '' ? digit : -digit;
    if (exponent === 0 || digit > LARGEST_EXPONENT) {
      throw new Fault({ kind: 'junk', from: at - found[0].length, to: at });
    }
    return exponent;
  };

  const readFactor = (sign: 1 | -1, below: boolean): Factor[] => {
    const from = at;
    if (match(/\(/y)) {
      const inner = readProduct(sign);
      if (!match(/\s*\)/y)) throw new Fault({ kind: 'junk', from, to: text.length });
      const exponent = readExponent();
      return inner.map((f) => ({
        ...f,
        exponent: f.exponent * exponent,
        scale: f.scale ** BigInt(Math.abs(exponent)),
      }));
    }
    const scale = BigInt((below ? match(/(\d{1,6})\s*/y)?.[1] : undefined) ?? 1);
    if (scale === 0n) throw new Fault({ kind: 'junk', from, to: at });
    const many = match(/(?:sq|square)(?:\s+|(?=[a-z]))/y) ? 2 : match(/(?:cu|cubic)\s+/y) ? 3 : 1;
    const start = at;
    const word = match(/°\s?[CF](?![A-Za-z])|[A-Za-zµΩ]+|["'°%‰€£$¤℃℉]/y)?.[0].replace(/\s/, '') ?? '';
    if (word === '') throw new Fault({ kind: 'junk', from: start, to: text.length });
    const alone = start === 0 && at === text.length;
    const spelling = spellingOf(word, dimension, alone);
    if (spelling !== undefined) return [{ spelling, exponent: sign * many * readExponent(), scale }];
    const two = runTogether(word)?.map((part) => KNOWN.get(part));
    const [first, second] = two ?? [];
    if (first !== undefined && second !== undefined) {
      return [
        { spelling: first, exponent: sign, scale },
        { spelling: second, exponent: sign * readExponent(), scale: 1n },
      ];
    }
    const span = { from: start, to: at };
    const refused = Object.hasOwn(REFUSED, word) ? REFUSED[word] : undefined;
    if (refused !== undefined) throw new Fault({ kind: 'refused', why: refused[0], instead: refused[1], ...span });
    throw new Fault({ kind: REMARKS.has(word) ? 'remark' : 'unknown', word, ...span });
  };

  const readProduct = (sign: 1 | -1): Factor[] => {
    const factors: Factor[] = [];
    let below = match(/\s*1?\s*\/\s*/y) !== undefined;
    for (;;) {
      const side = below ? (-sign as 1 | -1) : sign;
      factors.push(...readFactor(side, below));
      const from = at;
      if (match(/\s*(?:\/|\bper\b)\s*/y)) {
        below = true;
      } else if (match(/\s*[·*]\s*|[-.](?=[A-Za-zµΩ])|\s+(?=[A-Za-zµΩ°(])/y)) {
        // a/b·c is read one way by some and the other way by others.
        if (below) throw new Fault({ kind: 'two-below', better: twoBelow(text, from, at), from, to: text.length });
      } else {
        return factors;
      }
    }
  };

  const factors = readProduct(1);
  if (at < text.length) throw new Fault({ kind: 'junk', from: at, to: text.length });
  return factors;
};

/** `J/kg·K` rewritten as `J/(kg·K)`. */
const twoBelow = (text: string, from: number, to: number): string => {
  const bar = text.lastIndexOf('/', from);
  return `${text.slice(0, bar + 1)}(${text.slice(bar + 1, from).trim()}·${text.slice(to).trim()})`;
};

const raised = (exponent: number): string =>
  exponent === 1 ? '' : String(exponent).replace(/\d/g, (digit) => SUPERSCRIPTS[Number(digit)] ?? digit);

const spell = (factors: readonly Factor[], ascii: boolean): string => {
  const one = ({ spelling, exponent, scale }: Factor): string => {
    const e = Math.abs(exponent);
    const id = spelling.prefix.id === 'µ' && ascii ? 'u' : spelling.prefix.id;
    const name = id + (ascii ? spelling.atom.ascii : spelling.atom.print);
    return (scale === 1n ? '' : `${scale} `) + name + (ascii ? (e === 1 ? '' : `^${e}`) : raised(e));
  };
  const side = (sign: number): string[] => factors.filter((f) => Math.sign(f.exponent) === sign).map(one);
  const dot = ascii ? '*' : '·';
  const [above, below] = [side(1), side(-1)];
  if (below.length === 0) return above.join(dot);
  return `${above.join(dot)}/${below.length === 1 ? below[0] : `(${below.join(dot)})`}`;
};

/** m/s/s becomes m/s². Scaled factors stay apart: 1/100 m is not 1/(100 m)². */
const merged = (factors: readonly Factor[]): readonly Factor[] => {
  const out: Factor[] = [];
  for (const factor of factors) {
    const twin = out.findIndex(
      (f) =>
        f.spelling.atom === factor.spelling.atom &&
        f.spelling.prefix.id === factor.spelling.prefix.id &&
        f.scale === 1n &&
        factor.scale === 1n,
    );
    const known = out[twin];
    if (known === undefined) out.push(factor);
    else out[twin] = { ...known, exponent: known.exponent + factor.exponent };
  }
  return out.filter((f) => f.exponent !== 0);
};

const compose = (text: string, given: readonly Factor[], dimension: Dimension): ExactUnit => {
  const factors = merged(given);
  const everywhere = { from: 0, to: text.length };
  const first = factors[0];
  const above = factors.filter((f) => f.exponent > 0);
  const crowded = above.some((f) => f.spelling.atom.lonely) && (above.length > 1 || above[0]?.exponent !== 1);
  if (crowded || factors.some((f) => Math.abs(f.exponent) > LARGEST_EXPONENT)) {
    throw new Fault({ kind: 'junk', ...everywhere });
  }
  const currencies = new Set(given.map((f) => f.spelling.atom.currency).filter((c) => c !== undefined));
  if (currencies.size > 1) throw new Fault({ kind: 'junk', ...everywhere });

  const vector: Vector = BASES.map((_, i) =>
    factors.reduce((sum, f) => sum + f.exponent * (f.spelling.atom.vector[i] ?? 0), 0),
  );
  const factor = factors.reduce(
    (product, f) =>
      times(times(product, power(factorOf(f.spelling), f.exponent)), power(exact(f.scale), Math.sign(f.exponent))),
    ONE,
  );
  const pi = factors.reduce((sum, f) => sum + f.exponent * f.spelling.atom.pi, 0);
  const single = factors.length === 1 && first?.exponent === 1 && first.scale === 1n;
  const offset = single && dimension === 'temperature' ? first.spelling.atom.offset : exact(0);
  return {
    unit: {
      text,
      print: spell(factors, false),
      ascii: spell(factors, true),
      vector,
      num: toNumber(exact(factor.n)) * (pi > 0 ? Math.PI ** pi : 1),
      den: toNumber(exact(factor.d)) * (pi < 0 ? Math.PI ** -pi : 1),
      offset: toNumber(offset),
      currency: [...currencies][0],
      scale: 'linear',
    },
    factor,
    pi,
    offset,
  };
};

/** kg·cm read as kgf·cm, where that is what fits. */
const weighed = (factors: readonly Factor[]): readonly Factor[] =>
  factors.map((f) => {
    const spelling = f.exponent === 1 ? asWeight(f.spelling) : undefined;
    return spelling === undefined ? f : { ...f, spelling };
  });

/** Characters that mean the same are made the same, one for one, so that places in the text stay true. */
export const normalised = (text: string): string =>
  text
    .replace(/[\u2212\uFE63\uFF0D\u2010\u2011]/g, '-')
    .replace(/[\u03BC]/g, 'µ')
    .replace(/\u2126/g, 'Ω')
    .replace(/[×⋅∙•∗]/g, '·')
    .replace(/[″”“]/g, '"')
    .replace(/[′’‘]/g, "'")
    .replace(/º/g, '°');

const readAfresh = (text: string, dimension: Dimension): UnitResult => {
  const info = dimensionInfo(dimension);
  const clean = normalised(text).trim();
  if (dimension === 'conductor-area' && /^awg$/i.test(clean)) {
    return { ok: true, value: { unit: AWG, factor: ONE, pi: 0, offset: exact(0) } };
  }
  if (clean === '' && info.bare) {
    const one = {
      text: '',
      print: '',
      ascii: '',
      vector: info.vector,
      num: 1,
      den: 1,
      offset: 0,
      scale: 'linear',
    } as const;
    return { ok: true, value: { unit: one, factor: ONE, pi: 0, offset: exact(0) } };
  }
  try {
    const factors = factorsOf(clean, dimension);
    const plain = compose(clean, factors, dimension);
    if (fits(plain.unit.vector, info)) return { ok: true, value: plain };
    if (factors.length > 1) {
      const heavy = compose(clean, weighed(factors), dimension);
      if (fits(heavy.unit.vector, info)) return { ok: true, value: heavy };
    }
    return { ok: false, fault: { kind: 'wrong', unit: plain.unit } };
  } catch (error) {
    if (error instanceof Fault) return { ok: false, fault: error.fault };
    throw error;
  }
};

/** A book says the same few units hundreds of times. */
const known = new Map<string, UnitResult>();
const MOST_KNOWN = 1000;

/**
 * Reads the text of a unit for a dimension.
 * @param text the unit alone, without its number
 * @param dimension what it has to measure; decides between kg and kgf, °C as a place or as a difference, g and g₀
 * @returns the unit with its exact factor, or what is wrong with the text
 */
export const readUnit = (text: string, dimension: Dimension): UnitResult => {
  const key = `${dimension}|${text}`;
  const before = known.get(key);
  if (before !== undefined) return before;
  const result = readAfresh(text, dimension);
  if (known.size >= MOST_KNOWN) known.clear();
  if (result.ok) known.set(key, result);
  return result;
};
