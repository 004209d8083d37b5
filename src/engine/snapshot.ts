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
  readonly nodes: Pick<ReadonlyMap<string, Node>, 'get'> & Iterable<readonly [string, Node]>;
  /** Paths that stand in the book itself, not in the catalogue or a table. */
  readonly stated: (path: string) => boolean;
  readonly fills: readonly Fill[];
}

export const isMap = (x: unknown): x is Tree =>
  x !== null && typeof x === 'object' && !Array.isArray(x) && !(x instanceof Quantity);

/** Whether a name in a map holds a dot; of most maps none does. */
const dotted = new WeakMap<Tree, boolean>();
const hasDotted = (map: Tree): boolean => {
  let known = dotted.get(map);
  if (known === undefined) dotted.set(map, (known = Object.keys(map).some((key) => key.includes('.'))));
  return known;
};

/**
 * The keys that a dotted path leads through. Names may hold dots (`chain-4x0.5`): where a longer key is there, it is meant.
 */
export const keysAlong = (tree: unknown, path: string): string[] => {
  const keys: string[] = [];
  let here = tree;
  for (let from = 0; from <= path.length && path !== '';) {
    let end = path.indexOf('.', from);
    if (end < 0) end = path.length;
    if (isMap(here) && end < path.length && hasDotted(here))
      for (let longer = path.length; longer > end; longer = path.lastIndexOf('.', longer - 1))
        if (Object.hasOwn(here, path.slice(from, longer))) end = longer;
    const key = path.slice(from, end);
    keys.push(key);
    here = below(here, key);
    from = end + 1;
  }
  return keys;
};

const below = (here: unknown, key: string): unknown => {
  if (Array.isArray(here)) return here[Number(key)];
  return isMap(here) && Object.hasOwn(here, key) ? here[key] : undefined;
};

export const at = (tree: unknown, path: string): unknown => keysAlong(tree, path).reduce(below, tree);

/** A copy that is changed in place: each map on the way to what is put into it, or taken out of it, is copied once. */
const growing = (from: unknown) => {
  const own = new Set<unknown>();
  const ours = (value: unknown): Record<string, unknown> => {
    if (own.has(value)) return value as Record<string, unknown>;
    const copy = Array.isArray(value) ? [...(value as readonly unknown[])] : { ...(isMap(value) ? value : {}) };
    own.add(copy);
    return copy as Record<string, unknown>;
  };
  const place = (map: Record<string, unknown>, key: string, value: unknown): void => {
    if (Array.isArray(map) && !(Number(key) <= map.length))
      throw new RangeError(`the list has ${map.length} entries and none at ${key}`);
    if (value === undefined) {
      if (Array.isArray(map)) map.splice(Number(key), 1);
      else delete map[key];
      return;
    }
    if (key.includes('.')) dotted.set(map, true);
    map[key] = value;
  };
  let tree = from;
  return {
    tree: () => tree,
    put: (keys: readonly string[], value: unknown): void => {
      let here = ours(tree);
      tree = here;
      keys.forEach((key, i) => {
        if (i === keys.length - 1) return place(here, key, value);
        const next = below(here, key);
        const inner = ours(next === undefined && keys[i + 1] === '0' ? [] : next);
        place(here, key, inner);
        here = inner;
      });
    },
  };
};

/** A copy with the value behind these keys replaced, or taken out when it is undefined; maps on the way are made as needed. */
export const patched = (tree: unknown, keys: readonly string[], value: unknown): unknown => {
  if (keys.length === 0) return value;
  const copy = growing(tree);
  copy.put(keys, value);
  return copy.tree();
};

const nodeOf = (value: unknown): Node | undefined => {
  if (value === undefined) return undefined;
  if (Array.isArray(value)) return { kind: 'list', length: value.length };
  if (!isMap(value)) return { kind: 'leaf', leaf: value as Leaf };
  const keys = Object.keys(value);
  return { kind: 'map', keys, token: JSON.stringify(keys) };
};

const flatten = (value: unknown, path: string, into: Map<string, Node>): void => {
  const node = nodeOf(value);
  if (!node) return;
  into.set(path, node);
  if (node.kind === 'map')
    for (const key of node.keys) flatten((value as Tree)[key], path ? `${path}.${key}` : key, into);
  else if (node.kind === 'list') (value as readonly unknown[]).forEach((one, i) => flatten(one, `${path}.${i}`, into));
};

/** What stands in a tree, by path. Of a book that is only tried few paths are looked at. */
class Nodes implements Iterable<readonly [string, Node]> {
  readonly #seen = new Map<string, Node | undefined>();
  #all: ReadonlyMap<string, Node> | undefined;

  constructor(readonly tree: unknown) {}

  get(path: string): Node | undefined {
    if (this.#all) return this.#all.get(path);
    if (this.#seen.has(path)) return this.#seen.get(path);
    const node = nodeOf(at(this.tree, path));
    this.#seen.set(path, node);
    return node;
  }

  [Symbol.iterator](): IterableIterator<[string, Node]> {
    if (!this.#all) {
      const all = new Map<string, Node>();
      flatten(this.tree, '', all);
      this.#all = all;
    }
    return this.#all[Symbol.iterator]();
  }
}

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
  const { tree, put } = growing(book);
  for (const name of usedParts(book, schema, catalogue)) {
    const own = below(book['parts'], name);
    put(['parts', name], beneath(own, catalogue.get(name)!, schema));
  }
  const fills: Fill[] = [];
  for (const filler of fillers) {
    const view: FillView = {
      names: (kind) => {
        const table = at(tree(), kind);
        return isMap(table) ? Object.keys(table) : [];
      },
      text: (path) => {
        const leaf = at(tree(), path);
        return leaf instanceof Quantity ? leaf.text : leaf === undefined || isMap(leaf) ? undefined : String(leaf);
      },
      ends: (path) => {
        const leaf = at(tree(), path);
        return leaf instanceof Quantity ? [leaf.low, leaf.high] : typeof leaf === 'number' ? [leaf, leaf] : undefined;
      },
      has: (path) => at(tree(), path) !== undefined,
    };
    for (const fill of filler(view)) {
      if (at(tree(), fill.path) !== undefined) continue;
      const keys = keysAlong(tree(), fill.path);
      put(keys, filled(keys, fill, tree(), schema));
      fills.push(fill);
    }
  }
  const own = new Nodes(book);
  return { tree: tree() as Tree, nodes: new Nodes(tree()), stated: (path) => own.get(path) !== undefined, fills };
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
