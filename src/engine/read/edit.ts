/** Changes a book's text and keeps every other byte of it. */
import {
  isAlias,
  isMap,
  isScalar,
  isSeq,
  visit,
  Document,
  type Node,
  type Scalar,
  type YAMLMap,
  type YAMLSeq,
} from 'yaml';
import type { Edit } from '../../kernel/index.ts';
import type { Book } from './book.ts';
import {
  colonEnd,
  contentEnd,
  entryEnd,
  isEmpty,
  isFact,
  isFlow,
  lineEnd,
  lineStart,
  locate,
  marksBetween,
  nextLine,
  type Entry,
  type Found,
  type Step,
} from './locate.ts';
import { isSnippet, writtenKey, writtenValue } from './snippet.ts';
import { parseFile } from './yaml.ts';

/** An edit that this text cannot take as it is written. */
export class CannotEdit extends Error {
  override readonly name = 'CannotEdit';
  constructor(
    readonly path: string,
    readonly because: string,
  ) {
    super(`${path} cannot be changed: ${because}`);
  }
}

/** Replaces a stretch within a line or between brackets; comments in it move above the line. */
const cut = (text: string, start: number, end: number, put: string): string => {
  const line = lineStart(text, start);
  return splice(text, line, end, savedComments(text, start, end, indentOf(text, line)) + text.slice(line, start) + put);
};

const splice = (text: string, start: number, end: number, put: string): string =>
  text.slice(0, start) + put + text.slice(end);

const lineBreak = (text: string): string => (text.includes('\r\n') ? '\r\n' : '\n');

const columnOf = (text: string, at: number): number => at - lineStart(text, at);

/** Spaces before the first character of a line that begins there. */
const indentOf = (text: string, line: number): number => /^ */.exec(text.slice(line, line + 400))![0].length;

/** Spaces by which this file indents one level more. */
const stepOf = (text: string, root: Node | null): number => {
  let step = 2;
  visit(root, {
    Pair: (_, pair) => {
      const { key, value } = pair as unknown as Entry;
      if (!isMap(value) || isFlow(value) || !value.range || !key.range) return undefined;
      step = columnOf(text, value.range[0]) - columnOf(text, key.range[0]);
      return visit.BREAK;
    },
  });
  return step > 0 ? step : 2;
};

const collectionOf = (step: Step): YAMLMap | YAMLSeq => (step.in === 'map' ? step.map : step.list);
const inFlow = (steps: readonly Step[]): boolean => steps.some((step) => isFlow(collectionOf(step)));

/** Comments of a stretch that goes away, as lines of their own. */
const savedComments = (text: string, start: number, end: number, indent: number): string =>
  marksBetween(text, start, end, '#')
    .map((comment) => ' '.repeat(indent) + comment.text + lineBreak(text))
    .join('');

/** Puts a value where a block of lines stands; comments in it move above the line. */
const replaceBlock = (text: string, node: Node, steps: readonly Step[], put: string): string => {
  const step = steps.at(-1);
  const end = contentEnd(text, node);
  const from = step?.in === 'map' ? colonEnd(step.pair) : node.range![0];
  const stop = marksBetween(text, end, lineEnd(text, end), '#').length > 0 ? lineEnd(text, end) : end;
  const above = lineStart(text, step?.in === 'map' ? step.pair.key.range![0] : from);
  const comments = savedComments(text, from, stop, indentOf(text, above));
  return splice(text, above, stop, comments + text.slice(above, from) + (step?.in === 'map' ? ` ${put}` : put));
};

const replace = (text: string, { node, steps }: Found, value: string): string => {
  const step = steps.at(-1);
  const flow = inFlow(steps);
  if (isFact(node) && !isSnippet(value)) return replace(text, locate(node, ['is'], steps), value);
  if (isEmpty(node)) {
    if (step?.in !== 'map') throw new RangeError('an empty value without a key');
    const at = colonEnd(step.pair);
    return splice(text, at, at, ` ${writtenValue(value, flow)}`);
  }
  const put = writtenValue(value, flow, isScalar(node) ? (node as Scalar) : undefined);
  if ((isMap(node) || isSeq(node)) && !isFlow(node)) return replaceBlock(text, node, steps, put);
  const [start] = node!.range!;
  const end = contentEnd(text, node!);
  return cut(text, start, end, put);
};

/** Start and end of one entry in brackets. */
const bounds = (text: string, step: Step, index: number): readonly [number, number] => {
  if (step.in === 'map') {
    const pair = step.map.items[index] as Entry;
    return [pair.key.range![0], entryEnd(text, pair)];
  }
  const item = step.list.items[index] as Node;
  return [item.range![0], contentEnd(text, item)];
};

const removeFromBrackets = (text: string, step: Step): string => {
  const { index } = step;
  const count = collectionOf(step).items.length;
  const [start, end] = bounds(text, step, index);
  if (count === 1) return cut(text, start, end, '');
  const isLast = index === count - 1;
  const [from, to] = isLast ? [bounds(text, step, index - 1)[1], end] : [start, bounds(text, step, index + 1)[0]];
  const [commaFrom, commaTo] = isLast ? [from, start] : [end, to];
  if (marksBetween(text, commaFrom, commaTo, '#').length === 0) return cut(text, from, to, '');
  const comma = marksBetween(text, commaFrom, commaTo, ',')[0]?.at ?? commaFrom;
  const shift = isLast ? 1 : 0;
  return cut(splice(text, comma, comma + 1, ''), start - shift, end - shift, '');
};

/** Where an entry of a block begins: the key, or the dash. */
const blockStart = (step: Step): number => {
  if (step.in === 'map') return step.pair.key.range![0];
  return dashOf(step.list, step.index);
};

const dashOf = (list: YAMLSeq, index: number): number => {
  const tokens = (
    list.srcToken as
      { readonly items?: readonly { readonly start: readonly { type: string; offset: number }[] }[] } | undefined
  )?.items;
  const dash = tokens?.[index]?.start.find(({ type }) => type === 'seq-item-ind');
  return dash?.offset ?? (list.items[index] as Node).range![0];
};

const removeFromBlock = (text: string, steps: readonly Step[]): string => {
  const step = steps.at(-1)!;
  const collection = collectionOf(step);
  const above = steps.slice(0, -1);
  if (collection.items.length === 1 && above.length > 0)
    return replaceBlock(text, collection as Node, above, step.in === 'map' ? '{}' : '[]');
  const start = blockStart(step);
  const end = step.in === 'map' ? entryEnd(text, step.pair) : contentEnd(text, step.list.items[step.index] as Node);
  const line = lineStart(text, start);
  const indent = columnOf(text, start);
  if (text.slice(line, start).trim() !== '') {
    // Behind the dash of a list: the next key takes this one's place.
    const next = step.in === 'map' ? (step.map.items[step.index + 1] as Entry | undefined)?.key.range?.[0] : undefined;
    if (next === undefined) return splice(text, start, end, '');
    return splice(text, line, next, savedComments(text, start, next, indentOf(text, line)) + text.slice(line, start));
  }
  const stop = nextLine(text, end);
  const comments = savedComments(text, line, stop, indent);
  // The last line of a file without a final line end takes the one before it along.
  if (stop === text.length && !text.endsWith('\n') && comments === '') return text.slice(0, line).replace(/\r?\n$/, '');
  const isOpenEnd = stop === text.length && !text.endsWith('\n');
  return splice(text, line, stop, isOpenEnd ? comments.replace(/\r?\n$/, '') : comments);
};

const remove = (text: string, { steps }: Found): string => {
  const step = steps.at(-1);
  if (!step) throw new RangeError('a whole file');
  return isFlow(collectionOf(step)) ? removeFromBrackets(text, step) : removeFromBlock(text, steps);
};

/** `k: { l: value }`, and a list where a path says the first of one. */
const nested = (path: readonly string[], value: string): string => {
  const [key, ...below] = path;
  if (key === undefined) return writtenValue(value, true);
  const inner = nested(below, value);
  return key === '0' ? `[${inner}]` : `{ ${writtenKey(key, true)}: ${inner} }`;
};

/** Lines for a path that is not there yet, each level indented by one step more. */
const blockLines = (path: readonly string[], value: string, indent: number, step: number): readonly string[] => {
  const [key = '', ...below] = path;
  const start = `${' '.repeat(indent)}${writtenKey(key, false)}:`;
  if (below.length === 0) return [`${start} ${writtenValue(value, false)}`];
  if (below.includes('0')) return [`${start} ${nested(below, value)}`];
  return [start, ...blockLines(below, value, indent + step, step)];
};

const insertLines = (text: string, at: number, lines: readonly string[]): string =>
  splice(text, at, at, lines.map((line) => lineBreak(text) + line).join(''));

const insertInBrackets = (text: string, node: YAMLMap | YAMLSeq, put: string): string => {
  const [start, end] = node.range!;
  const last = node.items.at(-1);
  if (last !== undefined) {
    const at = isSeq(node) ? contentEnd(text, last as Node) : entryEnd(text, last as Entry);
    return splice(text, at, at, `, ${put}`);
  }
  const isBlank = text.slice(start + 1, end - 1).trim() === '';
  const pad = isSeq(node) ? '' : ' ';
  return isBlank ? splice(text, start + 1, end - 1, pad + put + pad) : splice(text, start + 1, start + 1, ` ${put}`);
};

const insert = (text: string, root: Node | null, found: Found, path: string, value: string): string => {
  const { node, steps, rest } = found;
  const step = steps.at(-1);
  const flow = inFlow(steps) || isFlow(node);
  const [key = '', ...below] = rest;
  if (isScalar(node) && !isEmpty(node)) {
    if (rest.length === 1 && key === 'is') return replace(text, found, value);
    if (rest.length !== 1 || key !== 'from')
      throw new CannotEdit(path, 'a value stands where keys would have to stand');
    const is = writtenValue(text.slice(node.range![0], node.range![1]), true);
    return splice(text, node.range![0], node.range![1], `{ is: ${is}, from: ${writtenValue(value, true)} }`);
  }
  if (isSeq(node)) {
    if (key !== String(node.items.length)) throw new CannotEdit(path, `the list has ${node.items.length} entries`);
    if (flow) return insertInBrackets(text, node, nested(below, value));
    const dash = ' '.repeat(columnOf(text, dashOf(node, 0)));
    const put = below.length > 0 ? nested(below, value) : writtenValue(value, false);
    return insertLines(text, lineEnd(text, contentEnd(text, node)), [`${dash}- ${put}`]);
  }
  if (isMap(node) && flow) return insertInBrackets(text, node, nested(rest, value).slice(2, -2));
  const indentStep = stepOf(text, root);
  if (isMap(node)) {
    const first = node.items[0] as unknown as Entry;
    const indent = columnOf(text, first.key.range![0]);
    return insertLines(text, lineEnd(text, contentEnd(text, node)), blockLines(rest, value, indent, indentStep));
  }
  if (step === undefined) {
    const lines = blockLines(rest, value, 0, indentStep);
    const gap = text === '' || text.endsWith('\n') || text === '\uFEFF' ? '' : lineBreak(text);
    return text + gap + lines.join(lineBreak(text)) + lineBreak(text);
  }
  if (step.in !== 'map') throw new CannotEdit(path, 'an entry of the list is empty');
  const at = colonEnd(step.pair);
  if (flow || rest.includes('0')) return splice(text, at, at, ` ${nested(rest, value)}`);
  const indent = columnOf(text, step.pair.key.range![0]) + indentStep;
  return insertLines(text, lineEnd(text, at), blockLines(rest, value, indent, indentStep));
};

/** Writes out what an alias stands for, so that a change below it stays here. */
const unalias = (text: string, document: Document.Parsed, { alias, rest }: Found, path: string): string => {
  const target = alias!.resolve(document);
  if (!target || isScalar(target))
    throw new CannotEdit(path, `*${alias!.source} stands where ${rest.join('.')} would have to stand`);
  const copy = new Document(target.clone() as Node);
  visit(copy, {
    Node: (_, node) => {
      if ('anchor' in node) delete node.anchor;
      delete node.comment;
      delete node.commentBefore;
      delete node.spaceBefore;
      if (isMap(node) || isSeq(node)) node.flow = true;
    },
  });
  const put = copy.toString({ lineWidth: 0, flowCollectionPadding: true, verifyAliasOrder: false }).trim();
  return splice(text, alias!.range![0], alias!.range![1], put);
};

/** Anchors that would go away while aliases elsewhere still name them. */
const missedAnchor = (document: Document.Parsed, node: Node | null): string | undefined => {
  const anchors = new Set<string>();
  const inside = new Set<unknown>();
  if (node === null || isAlias(node)) return undefined;
  visit(node, {
    Node: (_, one) => {
      inside.add(one);
      if ('anchor' in one && one.anchor) anchors.add(one.anchor);
    },
  });
  let missed: string | undefined;
  visit(document, {
    Alias: (_, alias) => void (anchors.has(alias.source) && !inside.has(alias) && (missed = alias.source)),
  });
  return missed;
};

interface Opened {
  readonly file: string;
  readonly text: string;
  readonly document: Document.Parsed;
  readonly found: Found;
}

const open = (file: string, text: string, path: string): Opened => {
  const parsed = parseFile(file, text);
  if (!parsed.ok) throw new CannotEdit(path, 'the text around it could not be read');
  const document = parsed.document as unknown as Document.Parsed;
  return { file, text, document, found: locate(document.contents as Node | null, path.split('.')) };
};

const refuseToLose = (document: Document.Parsed, node: Node | null, path: string): void => {
  const missed = missedAnchor(document, node);
  if (missed !== undefined) throw new CannotEdit(path, `*${missed} elsewhere stands for it or a part of it`);
};

const change = ({ file, text, document, found }: Opened, edit: Edit): string => {
  const { path, text: value } = edit;
  const isThere = found.rest.length === 0;
  if (found.alias && !isThere) {
    const written = unalias(text, document, found, path);
    const after = change(open(file, written, path), edit);
    return after === written ? text : after;
  }
  if (value === null) {
    if (!isThere) return text;
    refuseToLose(document, found.node, path);
    return remove(text, found);
  }
  if (!isThere) return insert(text, document.contents as Node | null, found, path, value);
  const keepsNode = isScalar(found.node) || (isFact(found.node) && !isSnippet(value));
  if (!keepsNode) refuseToLose(document, found.node, path);
  return replace(text, found, value);
};

/** The file in which the path goes furthest; the main one when that does not decide. */
const openBest = (texts: ReadonlyMap<string, string>, path: string): Opened | undefined => {
  let best: Opened | undefined;
  for (const [file, text] of texts) {
    const opened = open(file, text, path);
    if (!best || opened.found.rest.length < best.found.rest.length) best = opened;
  }
  return best;
};

/**
 * The texts of the files that the edits change. Comments, order, line ends and everything else stay as they are.
 * A value that an alias elsewhere repeats changes there as well, because the author said that the two are one.
 * @returns only changed files, to be read again by the caller
 * @throws CannotEdit when the text has no room for the edit, for instance a key below a value
 */
export const editBook = (book: Pick<Book, 'files'>, edits: readonly Edit[]): ReadonlyMap<string, string> => {
  const texts = new Map(book.files);
  for (const edit of edits) {
    const opened = openBest(texts, edit.path);
    if (!opened) continue;
    const after = change(opened, edit);
    if (after !== opened.text && !parseFile(opened.file, after).ok)
      throw new CannotEdit(edit.path, 'the text would no longer be YAML');
    texts.set(opened.file, after);
  }
  return new Map([...texts].filter(([file, text]) => text !== book.files.get(file)));
};
