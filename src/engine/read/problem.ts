/** Places in the files of a book, and what can be wrong there. */
import type { Place } from '../../kernel/index.ts';

/** Something in a book that cannot stand. */
export interface BookProblem {
  readonly place: Place;
  /** How many characters of the line are to blame. */
  readonly width: number;
  readonly path?: string;
  /** What is wrong, with the value. */
  readonly what: string;
  /** What would do. */
  readonly allowed: string;
  readonly severity: 'error' | 'warning';
}

/** A file of the book and where its lines begin. */
export interface Source {
  readonly file: string;
  readonly text: string;
  readonly lines: readonly number[];
}

export const sourceOf = (file: string, text: string): Source => {
  const lines = [0];
  for (let at = text.indexOf('\n'); at >= 0; at = text.indexOf('\n', at + 1)) lines.push(at + 1);
  return { file, text, lines };
};

const BYTE_ORDER_MARK = '\uFEFF';

const lineAt = ({ lines }: Source, offset: number): number => {
  let low = 0;
  let high = lines.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (lines[middle]! <= offset) low = middle;
    else high = middle - 1;
  }
  return low;
};

/** Where the first character of that line is; a byte order mark is no part of it. */
const startOf = (source: Source, line: number): number =>
  source.lines[line]! + (line === 0 && source.text.startsWith(BYTE_ORDER_MARK) ? 1 : 0);

/** Line and column from 1; a column is a UTF-16 unit, as editors count. */
export const placeAt = (source: Source, offset: number): Place => {
  const line = lineAt(source, offset);
  return { file: source.file, line: line + 1, column: Math.max(0, offset - startOf(source, line)) + 1 };
};

/** A stretch of a file. */
export interface Span {
  readonly source: Source;
  readonly start: number;
  readonly end: number;
}

export const problemAt = (
  { source, start, end }: Span,
  what: string,
  allowed: string,
  more: { readonly path?: string; readonly severity?: 'error' | 'warning' } = {},
): BookProblem => {
  const lineEnd = source.text.indexOf('\n', start);
  const stop = Math.min(end, lineEnd < 0 ? source.text.length : lineEnd);
  return {
    place: placeAt(source, start),
    width: Math.max(1, source.text.slice(start, stop).trimEnd().length),
    ...(more.path ? { path: more.path } : {}),
    what,
    allowed,
    severity: more.severity ?? 'error',
  };
};

/** The path of something one level down. */
export const under = (path: string, key: string | number): string => (path === '' ? String(key) : `${path}.${key}`);

/** A text of the book as a message quotes it: cut when it is long. */
export const quote = (text: string): string => {
  const flat = text.replaceAll(/\s+/g, ' ');
  return `"${flat.length > 40 ? `${flat.slice(0, 39)}…` : flat}"`;
};

/** `a, b and c` */
export const listed = (items: readonly string[], most = 12): string => {
  if (items.length > most) return `${items.slice(0, most).join(', ')} and ${items.length - most} more`;
  return items.length > 1 ? `${items.slice(0, -1).join(', ')} and ${items.at(-1)}` : (items[0] ?? 'none');
};
