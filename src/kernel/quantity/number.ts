/** Reads one number as people write it: 1.9 · 1,9 · 3/4 · 1 1/2 · 1-1/2 · 1½ · 12e3 · 1.2×10⁻⁷ · 12 345 with thin spaces. */
import { exact, isLess, minus, ONE, plus, size, ten, times, toNumber, ZERO } from './exact.ts';
import type { Exact } from './exact.ts';

export type NumberResult =
  | { readonly kind: 'number'; readonly value: Exact; readonly figures: number; readonly end: number }
  /** What stands there is not a number, or could be two; `instead` holds the ways to write it that cannot be misread. */
  | { readonly kind: 'fault'; readonly why: string; readonly instead: readonly string[]; readonly end: number }
  | { readonly kind: 'none' };

const VULGAR: Readonly<Record<string, readonly [number, number]>> = {
  '½': [1, 2],
  '¼': [1, 4],
  '¾': [3, 4],
  '⅛': [1, 8],
  '⅜': [3, 8],
  '⅝': [5, 8],
  '⅞': [7, 8],
};
const RAISED = '⁰¹²³⁴⁵⁶⁷⁸⁹';

/** Beyond these an authored number is a slip, and powers of ten would only cost time. */
const LARGEST = ten(30);
const SMALLEST = ten(-30);
const LARGEST_POWER = 60;

const decimal = (text: string): Exact => {
  const [whole = '', part = ''] = text.split('.');
  return times(exact(BigInt(`${whole}${part}` || '0')), ten(-part.length));
};

const significant = (digits: string): number => Math.max(1, digits.replace('.', '').replace(/^0+/, '').length);

type Run =
  | { readonly ok: true; readonly text: string }
  | { readonly ok: false; readonly why: string; readonly instead: readonly string[] };

/** A run of digits with points, commas or underscores to a plain decimal, or what makes it doubtful. */
const plainRun = (run: string): Run => {
  if (/^\d+$|^\d*\.\d+$/.test(run)) return { ok: true, text: run };
  if (/^\d+,\d+$/.test(run)) {
    const [whole = '', part = ''] = run.split(',');
    if (part.length !== 3 || whole.startsWith('0') || whole.length > 3) return { ok: true, text: `${whole}.${part}` };
    return { ok: false, why: 'could be read in two ways', instead: [`${whole}.${part}`, whole + part] };
  }
  if (/^\d{1,3}(,\d{3})+(\.\d+)?$/.test(run)) {
    return { ok: false, why: 'has commas between its digits', instead: [run.replaceAll(',', '')] };
  }
  if (/^\d{1,3}(\.\d{3})+(,\d+)?$/.test(run)) {
    return { ok: false, why: 'has points between its digits', instead: [run.replaceAll('.', '').replace(',', '.')] };
  }
  if (/^\d+(_\d+)+(\.\d+)?$/.test(run)) {
    return { ok: false, why: 'has underscores between its digits', instead: [run.replaceAll('_', '')] };
  }
  const start = /^\d+(\.\d+)?/.exec(run)?.[0];
  return { ok: false, why: 'is not a number', instead: start === undefined ? [] : [start] };
};

/**
 * Reads the number that stands at a place in a text.
 * @param text normalised text
 * @param at where the number should begin
 * @returns the exact number and where it ends
 */
export const readNumber = (text: string, at: number): NumberResult => {
  let end = at;
  const match = (pattern: RegExp): RegExpExecArray | undefined => {
    pattern.lastIndex = end;
    const found = pattern.exec(text) ?? undefined;
    if (found !== undefined) end += found[0].length;
    return found;
  };
  const fault = (why: string, instead: readonly string[]): NumberResult => ({ kind: 'fault', why, instead, end });

  const sign = match(/[-–+]/y)?.[0];
  const negative = sign === '-' || sign === '–';
  const signed = (value: Exact): Exact => (negative ? minus(value) : value);
  const lone = match(/[½¼¾⅛⅜⅝⅞]/y)?.[0];
  if (lone !== undefined) {
    const [n, d] = VULGAR[lone] ?? [0, 1];
    return { kind: 'number', value: signed(exact(n, d)), figures: 3, end };
  }
  const spaced = match(/\d{1,3}(?:[\u00A0\u2009\u202F]\d{3})+(?:[.,]\d+)?(?![\d\u00A0\u2009\u202F]*\d)/y)?.[0];
  const run = spaced?.replace(/[\u00A0\u2009\u202F]/g, '').replace(',', '.') ?? match(/\d[\d.,_]*|\.\d[\d.,_]*/y)?.[0];
  if (run === undefined) return { kind: 'none' };
  const plain = plainRun(run);
  if (!plain.ok) {
    return fault(
      plain.why,
      plain.instead.map((way) => (negative ? `-${way}` : way)),
    );
  }
  const whole = /^\d+$/.test(plain.text);
  let value = decimal(plain.text);
  let figures = significant(plain.text);

  const fraction = whole ? match(/\/(\d{1,6})(?![\d.,])/y) : undefined;
  const mixed = whole && fraction === undefined ? match(/(?:\s+|-)(\d{1,6})\/(\d{1,6})(?![\d.,])/y) : undefined;
  const vulgar = whole && fraction === undefined && mixed === undefined ? match(/\s?([½¼¾⅛⅜⅝⅞])/y)?.[1] : undefined;
  const [n, d] =
    fraction !== undefined
      ? [plain.text, fraction[1]]
      : mixed !== undefined
        ? [mixed[1], mixed[2]]
        : (VULGAR[vulgar ?? ''] ?? [undefined, undefined]);
  if (n !== undefined && d !== undefined) {
    if (BigInt(d) === 0n) return fault('divides by zero', []);
    const share = exact(BigInt(n), BigInt(d));
    if (fraction === undefined && !isLess(share, ONE)) {
      return fault('could be read in two ways', [`${plain.text}..${n}/${d}`, String(toNumber(plus(value, share)))]);
    }
    value = fraction === undefined ? plus(value, share) : share;
    figures = Math.max(
      3,
      toNumber(value)
        .toPrecision(6)
        .replace(/\.?0+$/, '')
        .replace('.', '')
        .replace(/^0+/, '').length,
    );
    return { kind: 'number', value: signed(value), figures, end };
  }

  const power =
    match(/[eE]([+-]?\d+)/y)?.[1] ??
    match(/\s?[·x*]\s?10\^([+-]?\d+)/y)?.[1] ??
    match(/\s?[·x*]\s?10([⁻⁺]?[⁰¹²³⁴⁵⁶⁷⁸⁹]+)/y)?.[1]
      ?.replace(/[⁰¹²³⁴⁵⁶⁷⁸⁹]/g, (c) => String(RAISED.indexOf(c)))
      .replace('⁻', '-')
      .replace('⁺', '');
  const exponent = Number(power ?? 0);
  if (value.n !== 0n) {
    const big =
      exponent > LARGEST_POWER || (exponent > -LARGEST_POWER && isLess(LARGEST, size(times(value, ten(exponent)))));
    const small = exponent < -LARGEST_POWER || (!big && isLess(size(times(value, ten(exponent))), SMALLEST));
    if (big || small) return fault(`is too ${big ? 'large' : 'small'} to be meant`, []);
    value = times(value, ten(exponent));
  }
  return { kind: 'number', value: value.n === 0n ? ZERO : signed(value), figures, end };
};
