/**
 * The keys of a text that somebody is still writing: what stands where, as well as it can be told. The reader of books
 * refuses a text with a fault; this one steps over it, and what it tells is only used to help.
 */

import { FLOW_KEY, KEY, keyAt, lineEnd, pastProperties, plainEnd, scalarAt, skipBlanks } from './outline-pieces.ts';

export interface Entry {
  readonly path: readonly string[];
  /** Where the key stands; an item of a list has none. */
  readonly key?: Span;
  /** Where its value stands, when it is one scalar. */
  readonly value?: Span;
}

export interface Span {
  readonly from: number;
  readonly to: number;
}

/** What is being written at a place. */
export interface Caret {
  /** Keys that lead to the map or list around it. */
  readonly within: readonly string[];
  /** The key whose value is being written; absent where a key is. */
  readonly key?: string;
  /** Where it begins, and what of it stands before the caret. */
  readonly from: number;
  readonly typed: string;
  readonly inBraces: boolean;
}

export interface Outline {
  readonly tree: Tree;
  readonly entries: readonly Entry[];
  readonly caret?: Caret;
}

/** Maps, lists and the texts of scalars. */
export type Tree = { [key: string]: unknown };

const DEEPEST = 40;
/** Keys that every object of the language has are no names in a book. */
const reserved: ReadonlySet<string> = new Set([...Object.getOwnPropertyNames(Object.prototype), 'prototype']);

interface Frame {
  readonly column: number;
  readonly path: readonly string[];
  readonly container: Tree | unknown[];
}

export const outline = (text: string, caretAt = -1): Outline => {
  const tree: Tree = {};
  const entries: Entry[] = [];
  let caret: Caret | undefined;
  let frames: Frame[] = [{ column: 0, path: [], container: tree }];
  /** The last key without a value on its line: what is indented below it belongs to it. */
  let pending: { readonly column: number; readonly path: readonly string[]; readonly frame: Frame } | undefined;

  const put = (container: Tree | unknown[], name: string, value: unknown): void => {
    if (Array.isArray(container)) container.push(value);
    else if (!reserved.has(name)) container[name] = value;
  };
  const isAt = (from: number, to: number): boolean => caretAt >= from && caretAt <= to;
  const note = (within: readonly string[], key: string | undefined, from: number, inBraces: boolean): void => {
    caret = {
      within,
      ...(key === undefined ? {} : { key }),
      from,
      typed: text.slice(from, caretAt),
      inBraces,
    };
  };

  /** A value in brackets. An unclosed one ends where a line begins with a key no farther in than the one that it belongs to. */
  const flowAt = (
    start: number,
    path: readonly string[],
    column: number,
    container: Tree | unknown[],
    depth: number,
  ): number => {
    const close = Array.isArray(container) ? ']' : '}';
    let at = start + 1;
    let isOpen = true;
    const within = (): readonly string[] => (Array.isArray(container) ? [...path, String(container.length)] : path);
    const valueAt = (from: number, name: string): number => {
      const valuePath = [...path, name];
      if ((text[from] === '{' || text[from] === '[') && depth < DEEPEST) {
        const inner: Tree | unknown[] = text[from] === '{' ? {} : [];
        put(container, name, inner);
        return flowAt(from, valuePath, column, inner, depth + 1);
      }
      if (text[from] === '{' || text[from] === '[') return from + 1;
      const { value, ...span } = scalarAt(text, from, true);
      put(container, name, value);
      entries.push({ path: valuePath, value: span });
      if (isAt(span.from, skipBlanks(text, span.to)) && !caret) {
        if (Array.isArray(container)) note(valuePath, undefined, span.from, true);
        else note(path, name, span.from, true);
      }
      return Math.max(span.to, from);
    };
    while (at < text.length && isOpen) {
      const c = text[at]!;
      if (c === close) isOpen = false;
      else if (c === ' ' || c === '\t' || c === ',' || c === '\r') at++;
      else if (c === '\n') {
        const first = skipBlanks(text, at + 1);
        if (first - at - 1 <= column && keyAt(text, KEY, first)) break;
        at++;
      } else if (c === '#') at = lineEnd(text, at);
      else if (c === '}' || c === ']') at++;
      else if (Array.isArray(container)) at = valueAt(at, String(container.length));
      else {
        const key = keyAt(text, FLOW_KEY, at);
        if (key) {
          entries.push({ path: [...path, key.name], key: { from: at, to: key.keyEnd } });
          if (isAt(at, key.keyEnd)) note(path, undefined, at, true);
          const from = pastProperties(text, key.end);
          const isEmpty = from >= text.length || /[\n\r,}#]/.test(text[from]!);
          if (isEmpty) {
            put(container, key.name, '');
            if (isAt(key.end, from) && !caret) note(path, key.name, caretAt, true);
            at = from;
          } else {
            if (caretAt >= key.end && caretAt < from && !caret) note(path, key.name, caretAt, true);
            at = valueAt(from, key.name);
          }
        } else {
          const { to } = scalarAt(text, at, true);
          if (isAt(at, to) && !caret) note(path, undefined, at, true);
          at = Math.max(to, at + 1);
        }
      }
    }
    // Between entries, where nothing has been written yet.
    if (!caret && caretAt > start && caretAt <= at) note(within(), undefined, caretAt, true);
    return isOpen ? at : at + 1;
  };

  /** The frame for something that begins in this column. */
  const frameFor = (column: number, isItem: boolean): Frame => {
    while (frames.length > 1 && frames.at(-1)!.column > column) frames.pop();
    const top = frames.at(-1)!;
    const isBelow =
      pending !== undefined &&
      pending.frame === top &&
      (column > pending.column || (isItem && column === pending.column));
    // Deeper than any book goes, it is all one level.
    if (isBelow && frames.length < DEEPEST) {
      const container: Tree | unknown[] = isItem ? [] : {};
      const { path } = pending!;
      put(top.container, path.at(-1)!, container);
      const frame: Frame = { column, path, container };
      frames.push(frame);
      pending = undefined;
      return frame;
    }
    // A list may stand in the column of its key; a key there ends it.
    if (!isItem && Array.isArray(top.container) && frames.length > 1 && top.column === column) {
      frames.pop();
      return frameFor(column, isItem);
    }
    return top;
  };

  /** What stands behind a colon or a dash; gives where to go on. */
  const blockValue = (from: number, path: readonly string[], column: number, frame: Frame): number => {
    const name = path.at(-1)!;
    const isItem = Array.isArray(frame.container);
    const noteValue = (at: number): void => {
      if (isItem) note(path, undefined, at, false);
      else note(frame.path, name, at, false);
    };
    const c = text[from];
    if (c === '{' || c === '[') {
      const inner: Tree | unknown[] = c === '{' ? {} : [];
      put(frame.container, name, inner);
      return flowAt(from, path, column, inner, 0);
    }
    if (c === '|' || c === '>') {
      put(frame.container, name, '');
      let at = lineEnd(text, from) + 1;
      while (at < text.length) {
        const first = skipBlanks(text, at);
        if (first < lineEnd(text, at) && text[first] !== '\r' && first - at <= column) break;
        at = lineEnd(text, at) + 1;
      }
      return at;
    }
    const { value, ...span } = scalarAt(text, from, false);
    put(frame.container, name, value);
    entries.push({ path, value: span });
    if (isAt(span.from, Math.max(span.to, plainEnd(text, from))) && !caret) noteValue(span.from);
    return span.to;
  };

  /** A key, or what may become one, from this column on; gives where to go on. */
  const blockEntry = (at: number, column: number): number => {
    const end = lineEnd(text, at);
    const key = keyAt(text, KEY, at);
    const frame = frameFor(column, false);
    if (!key) {
      if (isAt(at, end)) note(frame.path, undefined, at, false);
      const first = text[at];
      return first === '{' || first === '[' ? flowAt(at, frame.path, column, first === '{' ? {} : [], 0) : end;
    }
    const path = [...frame.path, key.name];
    entries.push({ path, key: { from: at, to: key.keyEnd } });
    if (isAt(at, key.keyEnd)) note(frame.path, undefined, at, false);
    const from = pastProperties(text, key.end);
    const isEmpty = from >= end || text[from] === '#' || text[from] === '\r';
    if (caretAt >= key.end && caretAt <= (isEmpty ? Math.min(from, end) : from - 1))
      note(frame.path, key.name, caretAt, false);
    if (!isEmpty) {
      pending = undefined;
      return blockValue(from, path, column, frame);
    }
    put(frame.container, key.name, '');
    pending = { column, path, frame };
    return end;
  };

  let at = text.startsWith('\uFEFF') ? 1 : 0;
  while (at < text.length) {
    const end = lineEnd(text, at);
    const first = skipBlanks(text, at);
    const isBlank = first >= end || text[first] === '\r';
    if (isBlank || text[first] === '#' || (first === at && /^(---|\.\.\.|%)/.test(text.slice(at, at + 3)))) {
      if (isBlank && isAt(at, end)) {
        const kept = [...frames];
        const was = pending;
        const frame = frameForBlank(caretAt - at);
        note(frame, undefined, caretAt, false);
        frames = kept;
        pending = was;
      }
      at = end + 1;
      continue;
    }
    let here = first;
    let column = first - at;
    // Dashes may follow each other: a list in a list.
    while (text[here] === '-' && (here + 1 >= end || /[ \t\r]/.test(text[here + 1]!)) && here < end) {
      const frame = frameFor(column, true);
      const list = Array.isArray(frame.container) ? frame.container : [];
      const path = [...frame.path, String(list.length)];
      const next = skipBlanks(text, here + 1);
      const isEmpty = next >= end || text[next] === '#' || text[next] === '\r';
      if (isEmpty) {
        if (isAt(here + 1, Math.max(next, here + 1))) note(path, undefined, caretAt, false);
        pending = undefined;
        here = end;
        break;
      }
      const nested = text[next] === '-' && /[ \t]/.test(text[next + 1] ?? '');
      if ((nested || keyAt(text, KEY, next)) && frames.length < DEEPEST) {
        const container: Tree | unknown[] = nested ? [] : {};
        list.push(container);
        pending = undefined;
        frames.push({ column: column + (next - here), path, container });
        column += next - here;
        here = next;
        if (nested) continue;
        break;
      }
      here = blockValue(pastProperties(text, next), path, column, { ...frame, container: list });
      column = -1;
      break;
    }
    if (column >= 0 && here < end) here = blockEntry(here, column);
    // What follows a value on its line is of no interest.
    at = text[here - 1] === '\n' ? here : lineEnd(text, here) + 1;
  }
  if (!caret && caretAt >= text.length && (text === '' || text.endsWith('\n')))
    note(frameForBlank(0), undefined, caretAt, false);

  function frameForBlank(column: number): readonly string[] {
    while (frames.length > 1 && frames.at(-1)!.column > column) frames.pop();
    const top = frames.at(-1)!;
    return pending !== undefined && pending.frame === top && column > pending.column ? pending.path : top.path;
  }

  return { tree, entries, ...(caret ? { caret } : {}) };
};
