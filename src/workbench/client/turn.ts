/** Turning a number that stands in a text with its unit: what a step up or down makes of it. */

const NUMBER = /^(\s*[-−]?)(\d+(?:\.\d+)?)/;

interface Found {
  readonly at: number;
  readonly text: string;
  readonly value: number;
}

/** The numbers that are turned: the first, and the other end of a range written with dots. Not a tolerance, not a unit. */
const numbersIn = (text: string): readonly Found[] => {
  const found: Found[] = [];
  let at = 0;
  for (const part of text.split('..')) {
    const match = NUMBER.exec(part);
    if (match) {
      const [whole, sign = '', digits = ''] = match;
      const start = at + whole.length - digits.length - sign.trimStart().length;
      const written = text.slice(start, at + whole.length);
      found.push({ at: start, text: written, value: Number(written.replace('−', '-')) });
    }
    at += part.length + 2;
    if (found.length === 2) break;
  }
  return found;
};

const decimalsOf = (text: string): number => text.split('.')[1]?.length ?? 0;

/** A step that moves a number by a few hundredths to a tenth of itself, and is a round one: 220 by 10, 1.2 by 0.1. */
const stepOf = (values: readonly number[]): number => {
  const largest = Math.max(...values.map(Math.abs));
  return largest > 0 ? 10 ** (Math.floor(Math.log10(largest)) - 1) : 0.1;
};

/**
 * The text with its number turned, in the author's unit; both ends of a range by the same.
 * @param text such as `220 mm/s` or `5..8 N`
 * @param steps how many, downwards when negative
 * @returns nothing where there is no number to turn, or where it would change its sign
 */
export const turned = (text: string, steps: number): string | undefined => {
  const numbers = numbersIn(text);
  if (numbers.length === 0) return undefined;
  const isCount = numbers.every(({ text: own }) => decimalsOf(own) === 0) && /^\s*\d+(\.\.\d+)?\s*$/.test(text);
  const step = isCount
    ? Math.max(1, stepOf(numbers.map(({ value }) => value)))
    : stepOf(numbers.map(({ value }) => value));
  const decimals = Math.max(
    ...numbers.map(({ text: own }) => decimalsOf(own)),
    step < 1 ? Math.round(-Math.log10(step)) : 0,
  );
  let result = '';
  let end = 0;
  for (const { at, text: own, value } of numbers) {
    const next = value + steps * step;
    if (value !== 0 && Math.sign(next) !== Math.sign(value)) return undefined;
    const written = next.toFixed(Math.min(decimals, 9));
    result += text.slice(end, at) + (decimals > decimalsOf(own) ? trimmed(written, decimalsOf(own)) : written);
    end = at + own.length;
  }
  return result + text.slice(end);
};

/** Without the zeros that say nothing, but never fewer places than the author wrote. */
const trimmed = (written: string, least: number): string => {
  let text = written;
  while (decimalsOf(text) > least && text.endsWith('0')) text = text.slice(0, -1);
  return text.endsWith('.') ? text.slice(0, -1) : text;
};
