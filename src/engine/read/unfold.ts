/** A parsed file as plain maps, lists and scalars, with the place of everything. */
import { isAlias, isMap, isPair, isScalar, isSeq, type Alias, type CST, type Node, type Pair, type Scalar } from 'yaml';
import { isBooleanElsewhere, Plain } from '../../contract/index.ts';
import { problemAt, quote, under, type BookProblem, type Source } from './problem.ts';
import type { ParsedFile } from './yaml.ts';

/** Where something of the book stands. */
export interface Spot {
  readonly source: Source;
  readonly start: number;
  readonly end: number;
  readonly scalar?: Scalar;
  /** The key before it, when it has one. */
  readonly key?: { readonly start: number; readonly end: number };
}

export interface Unfolded {
  readonly raw: Readonly<Record<string, unknown>>;
  readonly spots: ReadonlyMap<string, Spot>;
  readonly problems: readonly BookProblem[];
  /** Paths about which everything has been said. */
  readonly settled: ReadonlySet<string>;
  /** False when aliases unfold into so much that the rest was left out. */
  readonly whole: boolean;
}

/** A few names shared between entries unfold into a few dozen values; a bomb into millions. */
const MOST_UNFOLDED = 1000;

/** Names that every object of the language carries: under them a lookup would find something that is not in the book. */
const reserved: ReadonlySet<string> = new Set([...Object.getOwnPropertyNames(Object.prototype), 'prototype']);

/** What a scalar is to the schema: text, or a plain word that YAML takes for something else. */
export const unfoldScalar = (scalar: Scalar): string | Plain => {
  if (typeof scalar.value === 'string') return scalar.value;
  const value = scalar.value === null || typeof scalar.value === 'boolean' ? scalar.value : Number(scalar.value);
  return new Plain(scalar.source ?? '', value);
};

/** A file that says which YAML it is leaves no doubt about words such as `y` and `on`, which YAML 1.1 took for booleans. */
const saysVersion = (text: string): boolean => /^\uFEFF?[#%] ?YAML 1\.2\b/.test(text);

const separators = (pair: Pair<unknown, unknown>): readonly CST.SourceToken[] =>
  (pair.srcToken as { readonly sep?: readonly CST.SourceToken[] } | undefined)?.sep ?? [];

/** The comment that begins right behind the colon of a key without a value. */
const commentBehind = (pair: Pair<unknown, unknown>): CST.SourceToken | undefined => {
  const tokens = separators(pair);
  const newline = tokens.findIndex(({ type }) => type === 'newline');
  return tokens.slice(0, newline < 0 ? undefined : newline).find(({ type }) => type === 'comment');
};

/** Turns the document of one file into plain data. Finds what YAML allows and a book does not. */
export const unfold = ({ source, document }: Extract<ParsedFile, { ok: true }>): Unfolded => {
  const spots = new Map<string, Spot>();
  const problems: BookProblem[] = [];
  const settled = new Set<string>();
  const anchors = new Map<string, Node>();
  const targets = new Map<Alias, Node | undefined>();
  const open = new Set<Node>();
  let unfolding = 0;
  let unfolded = 0;

  const tell = (start: number, end: number, path: string, what: string, allowed: string): void => {
    problems.push(problemAt({ source, start, end }, what, allowed, { path }));
  };
  const settle = (path: string): undefined => {
    settled.add(path);
    return undefined;
  };

  const keyText = (
    pair: Pair<unknown, unknown>,
    path: string,
  ): { text: string; start: number; end: number } | undefined => {
    const key = pair.key;
    if (isScalar(key) && key.range) {
      const [start, end] = key.range;
      const text = typeof key.value === 'string' ? key.value : (key.source ?? '');
      if (text === '<<' && key.type === 'PLAIN')
        tell(
          start,
          end,
          path,
          'YAML 1.2 has no merge key "<<".',
          'Write the keys out, or let both entries name the same part.',
        );
      else if (text === '') tell(start, end, path, 'A key is missing before the colon.', 'key: value');
      else if (reserved.has(text))
        tell(
          start,
          end,
          path,
          `${quote(text)} cannot be a name: programs that read the book have it for themselves.`,
          'Any other name.',
        );
      else return { text, start, end };
      return undefined;
    }
    const [start, end] = (key as Node | null)?.range ?? [0, 1];
    tell(start, end, path, 'A list, a map or an alias stands where a key belongs.', 'A key is one word or name.');
    return undefined;
  };

  const mapOf = (
    items: readonly Pair<unknown, unknown>[],
    path: string,
    inBraces: boolean,
  ): Record<string, unknown> => {
    const map: Record<string, unknown> = {};
    let previous: string | undefined;
    for (const pair of items) {
      const key = keyText(pair, path);
      if (!key) continue;
      const at = under(path, key.text);
      if (Object.hasOwn(map, key.text)) {
        const first = spots.get(at)?.key;
        const line = first ? source.text.slice(0, first.start).split('\n').length : 0;
        tell(
          key.start,
          key.end,
          at,
          `${quote(key.text)} stands twice in this map; it is already in line ${line}.`,
          'Keep one of them.',
        );
        continue;
      }
      if (inBraces && !separators(pair).some(({ type }) => type === 'map-value-ind')) {
        tell(
          key.start,
          key.end,
          path,
          `A comma begins the next key between { and }, and ${quote(key.text)} has no value.`,
          /^\d/.test(key.text)
            ? 'Write a decimal point for a decimal comma, or put the value in quotes.'
            : 'Put a value that holds a comma in quotes.',
        );
        settle(at);
        if (previous && source.text[key.start - 1] === ',') settle(previous);
        continue;
      }
      previous = at;
      const comment = commentBehind(pair);
      const empty = pair.value === null || (isScalar(pair.value) && pair.value.value === null && !pair.value.source);
      if (empty && comment && /^#\S/.test(comment.source)) {
        tell(
          comment.offset,
          comment.offset + comment.source.length,
          at,
          `The # begins a comment here, so that ${key.text} has no value.`,
          `Put the value in quotes: ${key.text}: "${comment.source.trim().replaceAll(/["\\]/g, '\\$&')}"`,
        );
        settle(at);
      }
      const value = pair.value === null ? new Plain('', null) : valueOf(pair.value as Node, at);
      const spot = spots.get(at) ?? { source, start: key.end, end: key.end };
      spots.set(at, { ...spot, key: { start: key.start, end: key.end } });
      if (value !== undefined) map[key.text] = value;
    }
    return map;
  };

  const unfoldAlias = (alias: Alias, path: string): unknown => {
    const [start, end] = alias.range ?? [0, 0];
    // Met again inside of another alias, it still means what it meant where it stands.
    if (!targets.has(alias)) targets.set(alias, anchors.get(alias.source));
    const target = targets.get(alias);
    if (!target) {
      tell(
        start,
        end,
        path,
        `No anchor &${alias.source} stands before this alias.`,
        'A text that begins with * stands in quotes.',
      );
      return settle(path);
    }
    if (open.has(target)) {
      tell(start, end, path, `The alias *${alias.source} stands inside of what it stands for.`, 'Write the value out.');
      return settle(path);
    }
    if (unfolded > MOST_UNFOLDED) return settle(path);
    unfolding++;
    const value = valueOf(target, path);
    unfolding--;
    if (unfolding === 0 && unfolded > MOST_UNFOLDED) {
      tell(
        start,
        end,
        path,
        `The aliases of this file unfold into more than ${MOST_UNFOLDED} values.`,
        'Write the values out, or let entries name the same part.',
      );
      settle(path);
    }
    return value;
  };

  const valueOf = (node: Node, path: string): unknown => {
    if (unfolding > 0 && ++unfolded > MOST_UNFOLDED) return settle(path);
    const [start, end] = node.range ?? [0, 0];
    if (isAlias(node)) return unfoldAlias(node, path);
    spots.set(path, { source, start, end, ...(isScalar(node) ? { scalar: node } : {}) });
    if (unfolding === 0 && 'anchor' in node && node.anchor) anchors.set(node.anchor, node);
    if (node.tag && unfolding === 0)
      tell(
        start,
        end,
        path,
        'A tag means nothing in a book.',
        'Leave it out; a text that should stay a text stands in quotes.',
      );
    if (isScalar(node)) {
      const plainText = node.type === 'PLAIN' && typeof node.value === 'string' ? node.value : undefined;
      if (plainText !== undefined && isBooleanElsewhere(plainText) && unfolding === 0 && !saysVersion(source.text))
        problems.push(
          problemAt(
            { source, start, end },
            `"${plainText}" is a boolean to other readers of this file.`,
            `Put it in quotes: "${plainText}"; or begin the file with "# YAML 1.2", in which it is a text.`,
            { path, severity: 'warning' },
          ),
        );
      return unfoldScalar(node);
    }
    open.add(node);
    let value: unknown;
    if (isMap(node)) value = mapOf(node.items, path, node.flow === true);
    else if (isSeq(node))
      value = node.items.map((item, i) => {
        const at = under(path, i);
        if (isPair(item)) return mapOf([item], at, false);
        return valueOf(item as Node, at);
      });
    open.delete(node);
    return value;
  };

  const contents = document.contents as Node | null;
  if (contents === null) spots.set('', { source, start: 0, end: 0 });
  const raw = contents === null ? {} : valueOf(contents, '');
  if (typeof raw === 'object' && raw !== null && !Array.isArray(raw) && !(raw instanceof Plain))
    return { raw: raw as Record<string, unknown>, spots, problems, settled, whole: unfolded <= MOST_UNFOLDED };
  const nothing = raw instanceof Plain && raw.value === null;
  if (!nothing) {
    const [start, end] = contents?.range ?? [0, 0];
    tell(
      start,
      end,
      '',
      'This is no map of keys and values.',
      'book: 1 and title: My machine on lines of their own, and so on.',
    );
    settle('');
  }
  return { raw: {}, spots, problems, settled, whole: unfolded <= MOST_UNFOLDED };
};
