/** Finds what a path means in a parsed file, and where things begin and end in its text. */
import {
  isAlias,
  isMap,
  isScalar,
  isSeq,
  Lexer,
  type Alias,
  type CST,
  type Node,
  type Pair,
  type YAMLMap,
  type YAMLSeq,
} from 'yaml';

export type Entry = Pair<Node, Node | null>;

/** One level of the way down: a key of a map, or an index of a list. */
export type Step =
  | { readonly in: 'map'; readonly map: YAMLMap; readonly pair: Entry; readonly index: number }
  | { readonly in: 'list'; readonly list: YAMLSeq; readonly index: number };

export interface Found {
  readonly node: Node | null;
  readonly steps: readonly Step[];
  /** What of the path is not there. */
  readonly rest: readonly string[];
  /** An alias on the way: what is below it stands elsewhere, and for others too. */
  readonly alias?: Alias;
}

const keyText = (key: unknown): string | undefined =>
  isScalar(key) ? (typeof key.value === 'string' ? key.value : key.source) : undefined;

/** Follows a path as far as it goes. Names may hold a dot, so that every way of cutting the path is tried. */
export const locate = (node: Node | null, path: readonly string[], steps: readonly Step[] = []): Found => {
  const here: Found = { node, steps, rest: path };
  if (path.length === 0 || node === null) return here;
  if (isAlias(node)) return { ...here, alias: node };
  // One name of a list may stand without brackets.
  if (isScalar(node)) return path.length === 1 && path[0] === '0' && node.source ? { ...here, rest: [] } : here;
  if (isSeq(node)) {
    const index = Number(path[0]);
    const item = /^\d+$/.test(path[0]!) ? node.items[index] : undefined;
    return item === undefined
      ? here
      : locate(item as Node, path.slice(1), [...steps, { in: 'list', list: node, index }]);
  }
  if (!isMap(node)) return here;
  let best = here;
  for (let taken = path.length; taken >= 1; taken--) {
    const name = path.slice(0, taken).join('.');
    const index = node.items.findIndex(({ key }) => keyText(key) === name);
    if (index < 0) continue;
    const pair = node.items[index] as Entry;
    const found = locate(pair.value, path.slice(taken), [...steps, { in: 'map', map: node, pair, index }]);
    if (best === here || found.rest.length < best.rest.length) best = found;
  }
  return best;
};

export const isFlow = (node: unknown): boolean => (isMap(node) || isSeq(node)) && node.flow === true;

/** A fact that says where it comes from. */
export const isFact = (node: unknown): node is YAMLMap =>
  isMap(node) && node.has('is') && node.items.every(({ key }) => ['is', 'from'].includes(keyText(key) ?? ''));

const separators = (pair: Entry): readonly CST.SourceToken[] =>
  (pair.srcToken as { readonly sep?: readonly CST.SourceToken[] } | undefined)?.sep ?? [];

/** Behind the colon of a key. */
export const colonEnd = (pair: Entry): number => {
  const colon = separators(pair).find(({ type }) => type === 'map-value-ind');
  return colon ? colon.offset + 1 : (pair.key.range?.[1] ?? 0);
};

/** Whether a value is left empty, so that it has no place of its own in the text. */
export const isEmpty = (node: Node | null): boolean =>
  node === null || (isScalar(node) && (node.range?.[0] ?? 0) === (node.range?.[1] ?? 0));

const isBlockScalar = (node: Node | null): boolean => isScalar(node) && node.type?.startsWith('BLOCK') === true;

/** Where the text of a node ends: before the line end of its last line, and before a comment in it. */
export const contentEnd = (text: string, node: Node): number => {
  const end = node.range?.[1] ?? 0;
  if (isBlockScalar(node)) return end - (text[end - 1] === '\n' ? (text[end - 2] === '\r' ? 2 : 1) : 0);
  if (isFlow(node) || !(isMap(node) || isSeq(node))) return end;
  const last = node.items.at(-1);
  if (last === undefined) return end;
  return isSeq(node) ? contentEnd(text, last as Node) : entryEnd(text, last as Entry);
};

export const entryEnd = (text: string, pair: Entry): number =>
  isEmpty(pair.value) ? colonEnd(pair) : contentEnd(text, pair.value!);

export const lineStart = (text: string, at: number): number => {
  const start = text.lastIndexOf('\n', at - 1) + 1;
  return start === 0 && text.startsWith('\uFEFF') ? 1 : start;
};

/** The end of the line, before its line break. */
export const lineEnd = (text: string, at: number): number => {
  const feed = text.indexOf('\n', at);
  const end = feed < 0 ? text.length : feed;
  return feed > at && text[feed - 1] === '\r' ? end - 1 : end;
};

/** Just behind the line break. */
export const nextLine = (text: string, at: number): number => {
  const feed = text.indexOf('\n', at);
  return feed < 0 ? text.length : feed + 1;
};

export interface Lexeme {
  readonly text: string;
  readonly at: number;
}

/** Comments and commas between two offsets. */
export const marksBetween = (text: string, start: number, end: number, mark: '#' | ','): readonly Lexeme[] => {
  const found: Lexeme[] = [];
  let at = 0;
  let before = '';
  for (const lexeme of new Lexer().lex(text)) {
    // Control characters of the lexer stand for no text; behind this one follows a scalar, whatever it looks like.
    const isScalar = before === '\u001f';
    before = lexeme;
    if (lexeme === '\u0002' || lexeme === '\u0018' || lexeme === '\u001f') continue;
    if (at >= end) break;
    if (at >= start && !isScalar && lexeme[0] === mark) found.push({ text: lexeme.trimEnd(), at });
    at += lexeme.length;
  }
  return found;
};
