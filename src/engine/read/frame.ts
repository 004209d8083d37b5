/** A problem as a person reads it: place, sentence, the line with what is to blame underlined, what would do. */
import type { BookProblem } from './problem.ts';

const COLUMNS = 100;
const INDENT = '  ';
const TAB = '  ';

/** Characters that would move the cursor, recolour the terminal or turn the line round. */
const unsafe = /[\p{Cc}\u200e\u200f\u202a-\u202e\u2066-\u2069\ufeff]/gu;
const safe = (text: string): string => text.replaceAll(unsafe, '\u00b7');

const graphemes = new Intl.Segmenter('en', { granularity: 'grapheme' });

const wideRanges: readonly (readonly [number, number])[] = [
  [0x1100, 0x115f],
  [0x2e80, 0x303e],
  [0x3041, 0xa4cf],
  [0xa960, 0xa97c],
  [0xac00, 0xd7a3],
  [0xf900, 0xfaff],
  [0xfe30, 0xfe6f],
  [0xff00, 0xff60],
  [0xffe0, 0xffe6],
  [0x1b000, 0x1b2fb],
  [0x20000, 0x3fffd],
];

/** Columns that one character as seen takes in a terminal: East Asian letters and emoji take two. */
const widthOf = (seen: string): number => {
  const code = seen.codePointAt(0) ?? 0;
  if (/^[\p{Mn}\p{Me}\p{Cf}]+$/u.test(seen)) return 0;
  if (/^\p{Emoji_Presentation}|\ufe0f/u.test(seen)) return 2;
  return wideRanges.some(([from, to]) => code >= from && code <= to) ? 2 : 1;
};

interface Cell {
  readonly text: string;
  readonly width: number;
  /** Offset in the line as it stands in the file. */
  readonly at: number;
}

const isPlain = (text: string): boolean => /^[ -~]*$/.test(text);

const cellsOf = (line: string): readonly Cell[] => {
  if (isPlain(line)) return [...line].map((text, at) => ({ text, width: 1, at }));
  return [...graphemes.segment(line)].map(({ segment, index }) => {
    const text = segment === '\t' ? TAB : safe(segment);
    return { text, width: segment === '\t' ? TAB.length : widthOf(text), at: index };
  });
};

const total = (cells: readonly Cell[]): number => cells.reduce((sum, { width }) => sum + width, 0);

/** Columns that a text takes in a terminal. */
export const displayWidth = (text: string): number => (isPlain(text) ? text.length : total(cellsOf(text)));

/** As much of the line as could be shown on either side of the spot: splitting a very long one is slow. */
const around = (line: string, column: number): readonly [text: string, from: number] => {
  const from = Math.max(0, column - COLUMNS * 4);
  return [line.slice(from, column + COLUMNS * 4), from];
};

/** The line cut to fit round the spot, with what stands before the spot and how wide it is there, in columns. */
const window = (
  line: string,
  column: number,
  width: number,
  room: number,
): { readonly shown: string; readonly before: number; readonly marked: number } => {
  const [part, from] = around(line, column);
  const cells = cellsOf(part);
  const isMarked = ({ at }: Cell): boolean => at + from >= column && at + from < column + width;
  const found = cells.findIndex(isMarked);
  const start = found < 0 ? cells.length : found;
  const whole = from === 0 && part.length === line.length && total(cells) <= room;
  // A line that does not fit begins so far left of the spot that a third of the room shows what is before it.
  let low = start;
  const lead = whole ? room : room / 3;
  while (low > 0 && total(cells.slice(low - 1, start)) <= lead) low--;
  const left = low > 0 || from > 0 ? '…' : '';
  let high = low;
  let used = left.length;
  const most = whole ? room : room - 1;
  while (high < cells.length && used + cells[high]!.width <= most) used += cells[high++]!.width;
  const right = high < cells.length || from + part.length < line.length ? '…' : '';
  const kept = cells.slice(low, high);
  return {
    shown: left + kept.map(({ text }) => text).join('') + right,
    before: left.length + total(cells.slice(low, Math.min(start, high))),
    marked: Math.max(1, total(kept.filter(isMarked))),
  };
};

/** The part of a word that fits, at least one character as seen. */
const fitting = (word: string, room: number): string => {
  let used = 0;
  for (const { at, width } of cellsOf(word)) {
    used += width;
    if (used > room && at > 0) return word.slice(0, at);
  }
  return word;
};

/** Words on lines of at most a hundred columns; a word that is longer is cut. */
const wrapped = (text: string, first: string, next: string): readonly string[] => {
  const lines: string[] = [];
  let line = first;
  let used = first.length;
  let isBlank = true;
  for (const word of text.split(/(?<=\S) (?=\S)/)) {
    if (!isBlank && used + 1 + displayWidth(word) > COLUMNS) {
      lines.push(line);
      [line, used, isBlank] = [next, next.length, true];
    }
    let rest = word;
    while (used + displayWidth(rest) + (isBlank ? 0 : 1) > COLUMNS) {
      const part = fitting(rest, COLUMNS - used);
      lines.push(line + part);
      rest = rest.slice(part.length);
      [line, used] = [next, next.length];
    }
    line += isBlank ? rest : ` ${rest}`;
    used += displayWidth(rest) + (isBlank ? 0 : 1);
    isBlank = false;
  }
  return [...lines, line];
};

/** The text split last: a book with many problems is mostly one file. */
let latest: { readonly text: string; readonly lines: readonly string[] } = { text: '', lines: [''] };

/** The line of a text, without its end and without a byte order mark. */
const lineOf = (text: string, line: number): string | undefined => {
  if (latest.text !== text) latest = { text, lines: text.split('\n') };
  return latest.lines[line - 1]?.replace(/\r$/, '').replace(/^\ufeff/, '');
};

/**
 * The message of one problem, in lines of at most 100 columns.
 * @param files texts of the book's files; without the text there is no frame
 */
export const frameOf = (problem: BookProblem, files: ReadonlyMap<string, string>): string => {
  const { place, path, what, allowed, width } = problem;
  const head = `${place.file}:${place.line}:${place.column}  ${path ? `${path}: ` : ''}${what}`;
  const lines = [...wrapped(safe(head), '', INDENT)];
  const text = files.get(place.file);
  const line = text === undefined ? undefined : lineOf(text, place.line);
  if (text !== undefined && line !== undefined) {
    const digits = Math.max(2, String(place.line).length);
    const gutter = (mark: string, number: number | ''): string => ` ${mark} ${String(number).padStart(digits)} | `;
    const room = COLUMNS - gutter(' ', '').length;
    const above = lineOf(text, place.line - 1);
    if (above !== undefined && above.trim() !== '')
      lines.push(gutter(' ', place.line - 1) + window(above, 0, 1, room).shown);
    const { shown, before, marked } = window(line, place.column - 1, width, room);
    lines.push(gutter('>', place.line) + shown, gutter(' ', '') + ' '.repeat(before) + '^'.repeat(marked));
  }
  if (allowed !== '') lines.push(...wrapped(safe(allowed), INDENT, INDENT));
  return lines.map((one) => one.trimEnd()).join('\n');
};
