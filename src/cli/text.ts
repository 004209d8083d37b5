/** Lines of text for a terminal: what may stand in them, how wide they are, where they break. */
import { greekName } from '../app/greek.ts';
import { displayWidth } from '../engine/read/frame.ts';

/** Would move the cursor, recolour the terminal, or turn a line round. */
const unsafe = /(?![\t\n])\p{Cc}|[\u200e\u200f\u202a-\u202e\u2066-\u2069\ufeff]/gu;

/** A text without what could take hold of a terminal: a book may come from a stranger. */
export const harmless = (text: string): string => text.replaceAll(unsafe, '');

const spelt: Readonly<Record<string, string>> = {
  ' · ': ' - ',
  '·': '*',
  '×': 'x',
  '−': '-',
  '–': '..',
  '—': '-',
  '→': '->',
  '±': '+-',
  '≤': '<=',
  '≥': '>=',
  '≠': '!=',
  '≈': '~',
  '∝': '~',
  '√': 'sqrt',
  '∛': 'cbrt',
  Σ: 'sum',
  '∞': 'infinity',
  '°': 'deg',
  Ω: 'ohm',
  '\u2126': 'ohm',
  µ: 'u',
  '…': '...',
  '“': '"',
  '”': '"',
  '‘': "'",
  '’': "'",
  ß: 'ss',
  æ: 'ae',
  ø: 'o',
  ł: 'l',
  Ł: 'L',
  Ø: 'O',
  Æ: 'AE',
  đ: 'd',
  '€': 'EUR',
  '£': 'GBP',
  '⌊': 'floor(',
  '⌋': ')',
  '⌈': 'ceil(',
  '⌉': ')',
  '\u2009': '',
  '\u202f': '',
  '\u00a0': ' ',
};
const spelling = new RegExp(Object.keys(spelt).join('|'), 'g');
const raisedDigits = '⁰¹²³⁴⁵⁶⁷⁸⁹';
const loweredDigits = '₀₁₂₃₄₅₆₇₈₉';

/** The same in plain ASCII, for a terminal that knows nothing else. */
export const inAscii = (text: string): string =>
  text
    .replaceAll(/ °/g, ' deg')
    .replaceAll(/°(?=[CF]\b)/g, 'deg')
    .replaceAll(/(?<=\d)°/g, ' deg')
    .replaceAll(spelling, (found) => spelt[found] ?? '')
    .replaceAll(
      /[⁻⁺]?[⁰¹²³⁴⁵⁶⁷⁸⁹]+/g,
      (power) => `^${[...power].map((c) => (c === '⁻' ? '-' : c === '⁺' ? '' : raisedDigits.indexOf(c))).join('')}`,
    )
    .replaceAll(/[₀₁₂₃₄₅₆₇₈₉]/g, (digit) => String(loweredDigits.indexOf(digit)))
    .replaceAll(/\p{Script=Greek}/gu, (letter) => greekName(letter) ?? letter)
    .normalize('NFKD')
    .replaceAll(/\p{M}/gu, '')
    .replaceAll(/\P{ASCII}/gu, '?');

/** Lines of a file in a message keep their width, so that what is underlined stays underlined. */
export const frameInAscii = (frame: string): string =>
  frame
    .split('\n')
    .map((line) => (/^ [ >] +\d* \| /.test(line) ? line.replaceAll(/\P{ASCII}/gu, '?') : inAscii(line)))
    .join('\n');

/** Cut to a width, with a mark where something is missing. */
export const cut = (text: string, width: number, more = '…'): string => {
  if (displayWidth(text) <= width) return text;
  let kept = '';
  for (const letter of text) {
    if (displayWidth(kept + letter) > width - more.length) break;
    kept += letter;
  }
  return kept.trimEnd() + more;
};

/** Filled with spaces up to a width. */
export const padded = (text: string, width: number): string =>
  text + ' '.repeat(Math.max(0, width - displayWidth(text)));

export interface Wrapping {
  readonly width: number;
  /** Stands before the first line. */
  readonly first?: string;
  /** Stands before every other line. */
  readonly next?: string;
  /** The most lines; the last of them then says that something is missing. */
  readonly most?: number;
  readonly more?: string;
}

/** A text in lines of at most a width, broken between words; a word that is longer than a line is cut in pieces. */
export const wrap = (
  text: string,
  { width, first = '', next = first, most = Infinity, more = '…' }: Wrapping,
): string[] => {
  const lines: string[] = [];
  let line = first;
  let isEmpty = true;
  const words = text.split(/[ \n]+/).filter((word) => word !== '');
  for (const word of words) {
    let rest = word;
    if (!isEmpty && displayWidth(line) + 1 + displayWidth(rest) > width) {
      lines.push(line);
      [line, isEmpty] = [next, true];
    }
    while (displayWidth(line) + displayWidth(rest) > width && displayWidth(line) < width) {
      let piece = '';
      for (const letter of rest) {
        if (displayWidth(line) + displayWidth(piece + letter) > width && piece !== '') break;
        piece += letter;
      }
      if (piece === rest) break;
      lines.push(line + piece);
      rest = rest.slice(piece.length);
      [line, isEmpty] = [next, true];
    }
    line += isEmpty ? rest : ` ${rest}`;
    isEmpty = false;
  }
  if (!isEmpty || lines.length === 0) lines.push(line);
  if (lines.length <= most) return lines;
  const last = lines[most - 1] ?? '';
  return [
    ...lines.slice(0, most - 1),
    displayWidth(last) + more.length <= width ? last + more : cut(`${last}${more}`, width, more),
  ];
};

/** `a` and what follows from many: `a, b and 3 more`. */
export const few = (items: readonly string[], most: number): string =>
  items.length <= most
    ? items.length < 2
      ? items.join('')
      : `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`
    : `${items.slice(0, most).join(', ')} and ${items.length - most} more`;

/** `1 finding`, `3 findings`. */
export const counting = (n: number, one: string, many = `${one}s`): string => `${n} ${n === 1 ? one : many}`;
