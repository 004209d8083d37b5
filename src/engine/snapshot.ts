/** The book made complete (catalogue rows and fills beneath what the author states) and flattened for quick lookup. */
import { entryKinds, Quantity, type Fill, type FillView } from '../contract/index.ts';
import type { Edit } from '../kernel/index.ts';
import { readAt, readEntry } from './read/leaves.ts';
import type { BookSchema } from './read/schema.ts';
import type { Axis } from './search.ts';

export type Tree = { readonly [key: string]: unknown };
export type Leaf = Quantity | string | number | boolean;

/** One row of the catalogue: a part that a book may name without describing it. */
export interface CatalogueRow {
  readonly name: string;
  readonly kind: string;
  readonly says: string;
  readonly source: { readonly id: string; readonly at?: string };
  readonly keys: Readonly<Record<string, unknown>>;
}

export type Node =
  | { readonly kind: 'leaf'; readonly leaf: Leaf }
  | { readonly kind: 'map'; readonly keys: readonly string[]; readonly token: string }
  | { readonly kind: 'list'; readonly length: number };

export interface Snapshot {
  readonly tree: Tree;
  readonly nodes: ReadonlyMap<string, Node>;
  /** Paths that stand in the book itself, not in the catalogue or a table. */
  readonly stated: (path: string) => boolean;
  readonly fills: readonly Fill[];
}

export const isMap = (x: unknown): x is Tree =>
  x !== null && typeof x === 'object' && !Array.isArray(x) && !(x instanceof Quantity);

/**
 * The keys that a dotted path leads through. Names may hold dots (`chain-4x0.5`): where a longer key is there, it is meant.
 */
export const keysAlong = (tree: unknown, path: string): string[] => {
  const keys: string[] = [];
  let here = tree;
  let rest = path;
  while (rest !== '') {
    let key = rest.split('.', 1)[0]!;
    if (isMap(here))
      for (let end = rest.length; end > key.length; end = rest.lastIndexOf('.', end - 1))
        if (Object.hasOwn(here, rest.slice(0, end))) key = rest.slice(0, end);
    keys.push(key);
    rest = rest.slice(key.length + 1);
    here = below(here, key);
  }
  return keys;
};

const below = (here: unknown, key: string): unknown => {
  if (Array.isArray(here)) return here[Number(key)];
  return isMap(here) && Object.hasOwn(here, key) ? here[key] : undefined;
};

export const at = (tree: unknown, path: string): unknown => keysAlong(tree, path).reduce(below, tree);

/** A copy with the value behind these keys replaced, or taken out when it is undefined; maps on the way are made as needed. */
export const patched = (tree: unknown, [key, ...rest]: readonly string[], value: unknown): unknown => {
  if (key === undefined) return value;
  const inner = rest.length > 0 ? patched(below(tree, key), rest, value) : value;
  if (Array.isArray(tree)) {
    const index = Number(key);
    if (!(index <= tree.length)) throw new RangeError(`the list has ${tree.length} entries and none at ${key}`);
    return inner === undefined ? tree.toSpliced(index, 1) : tree.toSpliced(index, 1, inner);
  }
  if (tree === undefined && key === '0') return [inner];
  const copy: Record<string, unknown> = { ...(isMap(tree) ? tree : {}) };
  if (inner === undefined) delete copy[key];
  else copy[key] = inner;
  return copy;
};

const flatten = (value: unknown, path: string, into: Map<string, Node>): void => {
  if (Array.isArray(value)) {
    into.set(path, { kind: 'list', length: value.length });
    value.forEach((one, i) => flatten(one, `${path}.${i}`, into));
  } else if (isMap(value)) {
    const keys = Object.keys(value);
    into.set(path, { kind: 'map', keys, token: JSON.stringify(keys) });
    for (const key of keys) flatten(value[key], path ? `${path}.${key}` : key, into);
  } else if (value !== undefined) into.set(path, { kind: 'leaf', leaf: value as Leaf });
};

/** What was read of rows and fills, which come again with every edit of a book. */
interface Reread {
  readonly rows: Map<CatalogueRow, Tree>;
  readonly fills: Map<string, unknown>;
}
const reread = new WeakMap<BookSchema, Reread>();
const MOST_REREAD = 5_000;

const rereadFor = (schema: BookSchema): Reread => {
  let known = reread.get(schema);
  if (!known) reread.set(schema, (known = { rows: new Map(), fills: new Map() }));
  return known;
};

/** Lays a catalogue row beneath a part: what the author states stays. A part of another kind only shares the name. */
const beneath = (part: unknown, row: CatalogueRow, schema: BookSchema): Tree => {
  const own = isMap(part) ? part : {};
  if (own['kind'] !== undefined && own['kind'] !== row.kind) return own;
  const { rows } = rereadFor(schema);
  let base = rows.get(row);
  if (!base) {
    base = readEntry(schema.zod, 'parts', { kind: row.kind, ...row.keys }, { provenance: 'table', source: row.source });
    rows.set(row, base);
  }
  return { ...base, ...own };
};

const filled = (keys: readonly string[], fill: Fill, tree: unknown, schema: BookSchema): unknown => {
  const [kind = '', ...below] = keys;
  const variant = entryKinds[kind]?.variant;
  const entry = variant === undefined ? undefined : at(tree, `${kind}.${below[0]}`);
  const name = JSON.stringify([keys, isMap(entry) ? entry[variant!] : '', fill.text, fill.provenance, fill.source]);
  const { fills } = rereadFor(schema);
  let value = fills.get(name);
  if (value === undefined) {
    if (fills.size > MOST_REREAD) fills.clear();
    fills.set(name, (value = readAt(schema.zod, keys, fill.text, tree, fill)));
  }
  return value;
};

/** Names of catalogue parts that the book uses, wherever a key refers to parts. */
const usedParts = (
  tree: unknown,
  schema: BookSchema,
  catalogue: ReadonlyMap<string, CatalogueRow>,
  root = tree,
  path = '',
  into = new Set<string>(),
): Set<string> => {
  if (Array.isArray(tree)) tree.forEach((one, i) => usedParts(one, schema, catalogue, root, `${path}.${i}`, into));
  else if (isMap(tree))
    for (const [key, value] of Object.entries(tree))
      usedParts(value, schema, catalogue, root, path ? `${path}.${key}` : key, into);
  else if (typeof tree === 'string' && catalogue.has(tree) && schema.keyInfo(path, root)?.refers === 'parts')
    into.add(tree);
  return into;
};

/** Makes the book complete: catalogue rows under the parts used, then the fills of every trade, in order. */
export const expand = (
  book: Tree,
  schema: BookSchema,
  catalogue: ReadonlyMap<string, CatalogueRow>,
  fillers: readonly ((view: FillView) => readonly Fill[])[],
): Snapshot => {
  let tree: unknown = book;
  for (const name of usedParts(book, schema, catalogue)) {
    const own = below(book['parts'], name);
    tree = patched(tree, ['parts', name], beneath(own, catalogue.get(name)!, schema));
  }
  const fills: Fill[] = [];
  for (const filler of fillers) {
    const view: FillView = {
      names: (kind) => {
        const table = at(tree, kind);
        return isMap(table) ? Object.keys(table) : [];
      },
      text: (path) => {
        const leaf = at(tree, path);
        return leaf instanceof Quantity ? leaf.text : leaf === undefined || isMap(leaf) ? undefined : String(leaf);
      },
      ends: (path) => {
        const leaf = at(tree, path);
        return leaf instanceof Quantity ? [leaf.low, leaf.high] : typeof leaf === 'number' ? [leaf, leaf] : undefined;
      },
      has: (path) => at(tree, path) !== undefined,
    };
    for (const fill of filler(view)) {
      if (at(tree, fill.path) !== undefined) continue;
      const keys = keysAlong(tree, fill.path);
      tree = patched(tree, keys, filled(keys, fill, tree, schema));
      fills.push(fill);
    }
  }
  const nodes = new Map<string, Node>();
  flatten(tree, '', nodes);
  const own = new Map<string, Node>();
  flatten(book, '', own);
  return { tree: tree as Tree, nodes, stated: (path) => own.has(path), fills };
};

/**
 * The book with edits read into it, without touching its text; used to ask what a change would do.
 * @throws RangeError when a text cannot stand at its path
 */
export const edited = (book: Tree, edits: readonly Edit[], schema: BookSchema): Tree =>
  edits.reduce<unknown>((tree, { path, text }) => {
    if (text === null && at(tree, path) === undefined) return tree;
    const keys = keysAlong(tree, path);
    return patched(tree, keys, text === null ? undefined : readAt(schema.zod, keys, text, tree));
  }, book) as Tree;

/** Before a path: only whether something of which kind stands there was read, not what. */
export const PRESENCE = '?';

/** The number that stands for a range where a scenario does not choose one. */
export const middle = ({ low, high }: Pick<Quantity, 'low' | 'high'>): number => low + (high - low) / 2;

/** What stands at a path, as a text; of a quantity only that it is one. Different things never give the same text. */
export const wordAt = (path: string, { nodes }: Snapshot): string => {
  if (path.startsWith(PRESENCE)) return nodes.get(path.slice(PRESENCE.length))?.kind ?? '∅';
  const node = nodes.get(path);
  if (!node) return '∅';
  if (node.kind === 'map') return node.token;
  if (node.kind === 'list') return `[${node.length}]`;
  return node.leaf instanceof Quantity ? node.leaf.of : JSON.stringify(node.leaf);
};

/** What stands at a path, as a text that changes whenever a result that used the path might. */
export const markAt = (path: string, snapshot: Snapshot): string => {
  const leaf = quantityAt(path, snapshot);
  return leaf ? `${leaf.range} ${leaf.low}..${leaf.high} ${leaf.of} ${leaf.provenance}` : wordAt(path, snapshot);
};

/** The quantity at a path, or undefined when something else or nothing stands there. */
export const quantityAt = (path: string, { nodes }: Snapshot): Quantity | undefined => {
  const node = nodes.get(path);
  return node?.kind === 'leaf' && node.leaf instanceof Quantity ? node.leaf : undefined;
};

/** The facts among these paths that are ranges. */
export const rangesAmong = (paths: Iterable<string>, snapshot: Snapshot): Axis[] => {
  const axes: Axis[] = [];
  for (const path of paths) {
    const leaf = quantityAt(path, snapshot);
    if (leaf && leaf.low < leaf.high && leaf.range !== 'exact')
      axes.push({ path, low: leaf.low, high: leaf.high, range: leaf.range });
  }
  return axes;
};
