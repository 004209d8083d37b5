/** What is wrong with a text, said so that the author knows what to write instead. */
import { dimensionInfo, dimensionOf } from './dimensions.ts';
import type { Dimension } from './dimensions.ts';
import { toNumber } from './exact.ts';
import type { Exact } from './exact.ts';
import { show } from './print.ts';
import { readUnit } from './unit-text.ts';
import type { UnitFault } from './unit-text.ts';
import { AWG_LARGEST, AWG_SMALLEST, KNOWN } from './units.ts';
import type { Unit } from './units.ts';

export interface Problem {
  /** What is wrong, as a sentence with the value in it. */
  readonly what: string;
  /** What would do, as a sentence. */
  readonly allowed: string;
  /** The part of the text that is to blame, as [start, end). */
  readonly at?: readonly [start: number, end: number];
}

/** One number, or the two ends of a range, as the author wrote them. */
export type Numbers = readonly Exact[];

const LONGEST_QUOTE = 48;

export const quoted = (text: string): string => {
  const clean = [...text.trim()];
  return `"${clean.length > LONGEST_QUOTE ? `${clean.slice(0, LONGEST_QUOTE - 1).join('')}…` : clean.join('')}"`;
};

const listed = (items: readonly string[], word: string): string =>
  items.length < 2 ? (items[0] ?? '') : `${items.slice(0, -1).join(', ')} ${word} ${items.at(-1)}`;

const sentence = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** `a`, `a and b`, `a, b and c`, each once, with "would do". */
export const wouldDo = (items: readonly string[], word = 'and'): string =>
  `${listed([...new Set(items)], word)} would do.`;

/** A speed is wanted, such as 220 mm/s or 12 m/min. */
export const wanted = (dimension: Dimension): string => {
  const info = dimensionInfo(dimension);
  return `${sentence(info.words)} is wanted, such as ${listed(info.examples, 'or')}.`;
};

const FIRST_FIGURES = 6;

const inUnit = (si: readonly number[], dimension: Dimension, unit: string, figures?: number): string => {
  const options = { figures };
  const ends = si.map((value, i) => show(value, dimension, unit, { ...options, plusUnit: i === si.length - 1 }));
  return ends.join('..');
};

/** The author's numbers in the unit that was probably meant, and the same size in its likeliest neighbours. */
export const likely = (numbers: Numbers, dimension: Dimension): readonly string[] => {
  const info = dimensionInfo(dimension);
  const values = numbers.map(toNumber);
  const [first = '', ...others] = info.likely;
  if (dimension === 'conductor-area') {
    const gauges = values.every((v) => Number.isInteger(v) && v >= AWG_LARGEST && v <= AWG_SMALLEST);
    return [
      `${values.map((v) => show(v, 'ratio', '', { figures: FIRST_FIGURES })).join('..')} mm²`,
      ...(gauges ? [`AWG ${values.join('..')}`] : []),
    ];
  }
  const read = readUnit(first, dimension);
  if (!read.ok) return info.examples;
  const { num, den, offset } = read.value.unit;
  const si = values.map((value) => (value * num) / den + offset);
  return [inUnit(si, dimension, first, FIRST_FIGURES), ...others.map((unit) => inUnit(si, dimension, unit))];
};

export const noUnit = (text: string, numbers: Numbers, dimension: Dimension): Problem => ({
  what: `${quoted(text)} has no unit.`,
  allowed: `${sentence(dimensionInfo(dimension).words)} needs one: ${wouldDo(likely(numbers, dimension))}`,
});

/** Damerau's distance, as far as it is one at most. */
const isOneSlip = (a: string, b: string): boolean => {
  let head = 0;
  while (head < Math.min(a.length, b.length) && a[head] === b[head]) head += 1;
  const [x, y] = [a.slice(head), b.slice(head)];
  return (
    x.slice(1) === y.slice(1) ||
    x.slice(1) === y ||
    x === y.slice(1) ||
    (x[0] === y[1] && x[1] === y[0] && x.slice(2) === y.slice(2))
  );
};

const RUN_TOGETHER = [
  'Nm',
  'Ncm',
  'Nmm',
  'mNm',
  'kNm',
  'kgcm',
  'kgfcm',
  'gcm',
  'ozin',
  'ozfin',
  'lbin',
  'lbfin',
  'lbft',
  'lbfft',
];

/** Units that were probably meant by a word that is none, those that fit the dimension first; printed forms. */
const nearest = (word: string, rewrite: (candidate: string) => string, dimension: Dimension): readonly string[] => {
  const near = (same: (candidate: string) => boolean): readonly string[] => {
    const fitting = [...KNOWN.keys(), ...RUN_TOGETHER].filter(same).flatMap((candidate) => {
      const read = readUnit(rewrite(candidate), dimension);
      return read.ok ? [read.value.unit.print] : [];
    });
    return [...new Set(fitting)];
  };
  const cased = near((candidate) => candidate.toLowerCase() === word.toLowerCase());
  if (cased.length > 0) return cased;
  const small = readUnit(rewrite(word).toLowerCase(), dimension);
  if (small.ok) return [small.value.unit.print];
  if (word.length < 2) return [];
  return near((candidate) => candidate.length > 1 && isOneSlip(candidate.toLowerCase(), word.toLowerCase())).slice(
    0,
    2,
  );
};

const numbersText = (numbers: Numbers): string =>
  numbers.map((n) => show(toNumber(n), 'ratio', '', { figures: FIRST_FIGURES })).join('..');

/** Weight in place of a mass: "5 kgf or 49 N would do." */
const weightInstead = (unit: Unit, numbers: Numbers): readonly string[] => {
  const read = readUnit(unit.text.replace(/(kg|kilogram|g|gram|lb|oz)s?$/, '$1f'), 'force');
  if (!read.ok) return [];
  const { num, den } = read.value.unit;
  const si = numbers.map((n) => (toNumber(n) * num) / den);
  return [inUnit(si, 'force', read.value.unit.text, FIRST_FIGURES), inUnit(si, 'force', 'N')];
};

const wrongDimension = (text: string, unit: Unit, numbers: Numbers, dimension: Dimension): Problem => {
  const info = dimensionInfo(dimension);
  const name = unit.print === '%' ? 'a ratio' : dimensionOf(unit.vector)?.words;
  const is = name === undefined ? `is in ${unit.print || 'no unit'}` : `is ${name}`;
  const what = `${quoted(text)} ${is}; ${info.words} is wanted.`;
  const mass = dimension === 'force' && name === 'a mass' ? weightInstead(unit, numbers) : [];
  if (mass.length > 0) return { what, allowed: wouldDo(mass, 'or') };
  // What was meant in millimetres is no gauge number.
  const ways = likely(numbers, dimension);
  return { what, allowed: wouldDo(dimension === 'conductor-area' ? ways.slice(0, 1) : ways) };
};

/**
 * A fault in a unit's text as a problem.
 * @param text the whole text of the value
 * @param unitText the unit alone
 * @param offset where the unit begins in the whole text
 */
export const unitProblem = (
  fault: UnitFault,
  text: string,
  unitText: string,
  offset: number,
  numbers: Numbers,
  dimension: Dimension,
): Problem => {
  if (fault.kind === 'wrong') {
    return { ...wrongDimension(text, fault.unit, numbers, dimension), at: [offset, offset + unitText.length] };
  }
  const at = [offset + fault.from, offset + fault.to] as const;
  const asked = quoted(text);
  const with_ = (units: readonly string[]): readonly string[] =>
    units.map((u) => `${numbersText(numbers)} ${u}`.trim());
  switch (fault.kind) {
    case 'unknown': {
      if (/^awg$/i.test(fault.word)) {
        return { what: `${asked} is a wire size.`, allowed: wanted(dimension), at };
      }
      const rewrite = (candidate: string): string =>
        unitText.slice(0, fault.from) + candidate + unitText.slice(fault.to);
      const near = nearest(fault.word, rewrite, dimension);
      const what = `${asked} has a unit that is not known: ${quoted(fault.word)}.`;
      if (near.length === 0) return { what, allowed: wouldDo(likely(numbers, dimension)), at };
      const cased = near.some((u) => unitText.toLowerCase() === u.toLowerCase().replaceAll('·', ''));
      const hint = cased ? 'Capitals count in units: ' : '';
      return { what, allowed: `${hint}${wouldDo(with_(near), 'or')}`, at };
    }
    case 'refused':
      return {
        what: `${asked} is not clear: ${fault.why}.`,
        allowed: wouldDo(with_(fault.instead.split('|')), 'or'),
        at,
      };
    case 'remark': {
      const rest = unitText.slice(0, fault.from).trim();
      const fine = readUnit(rest, dimension).ok;
      const allowed = fine ? wouldDo(with_([rest])) : wouldDo(likely(numbers, dimension));
      return {
        what: `${asked} has a word behind its unit that does not belong to it: ${quoted(fault.word)}.`,
        allowed,
        at,
      };
    }
    case 'two-below':
      return {
        what: `${asked} has two units behind its fraction bar, which people read in two ways.`,
        allowed: wouldDo(with_([fault.better])),
        at,
      };
    case 'junk':
      return {
        what: `${asked} cannot be read from ${quoted(text.slice(at[0], at[1]) || unitText)} on.`,
        allowed: wanted(dimension),
        at,
      };
  }
};
