/** What an author wrote otherwise in another book: leaf by leaf, whole entries where only one book has them, alike changes as one. */
import { entryKinds, Quantity } from '../contract/index.ts';
import type { Edit } from '../kernel/index.ts';
import type { Tree } from './read/book.ts';
import type { BookSchema } from './read/schema.ts';
import { at, isMap } from './snapshot.ts';

/** The same change at one or several places. */
export interface Change {
  /** The first of the places with the names of all of them in it: `drivers.D1–D4.rail`. */
  readonly name: string;
  readonly means: string;
  readonly paths: readonly string[];
  /** Everything that differs there. */
  readonly differs: readonly string[];
  /** What stands in each book; null where nothing does. Of a whole entry which part or kind it is. */
  readonly before: string | null;
  readonly after: string | null;
}

/** What stands at a path of a book, as an author would write it behind a colon. */
const written = (value: unknown): string => {
  if (value instanceof Quantity) return /^[-+.\d]+$/.test(value.text) ? value.text : JSON.stringify(value.text);
  if (Array.isArray(value)) return `[${value.map(written).join(', ')}]`;
  if (isMap(value))
    return `{ ${Object.entries(value)
      .map(([key, one]) => `${JSON.stringify(key)}: ${written(one)}`)
      .join(', ')} }`;
  return JSON.stringify(value);
};

/** The same for a reader: without quotation marks; of an entry which part or kind it is, of a table its names. */
const told = (value: unknown, isTable: boolean): string | null => {
  if (value === undefined) return null;
  if (value instanceof Quantity) return value.text;
  if (Array.isArray(value)) return `[${value.map((one) => told(one, false) ?? '').join(', ')}]`;
  if (!isMap(value)) return String(value);
  if (isTable) return Object.keys(value).join(', ');
  const named = ['part', 'kind', 'drive', 'rating'].find((key) => value[key] !== undefined);
  return named === undefined ? '' : told(value[named], false);
};

/** A change in one line: `axes.z.unpowered: free → windings shorted`. */
export const changeText = ({ name, before, after }: Pick<Change, 'name' | 'before' | 'after'>): string => {
  if (before !== null && after !== null) return `${name}: ${before} → ${after}`;
  const [what, how] = before === null ? [after, 'new'] : [before, 'taken out'];
  return `${name}: ${what ? `${what}, ` : ''}${how}`;
};

const sameValue = (a: unknown, b: unknown): boolean => {
  if (a instanceof Quantity && b instanceof Quantity)
    return a.low === b.low && a.high === b.high && a.range === b.range && a.of === b.of;
  if (Array.isArray(a) && Array.isArray(b)) return a.length === b.length && a.every((one, i) => sameValue(one, b[i]));
  if (isMap(a) && isMap(b)) {
    const keys = new Set([...Object.keys(a), ...Object.keys(b)]);
    return [...keys].every((key) => sameValue(a[key], b[key]));
  }
  return a === b;
};

/** Texts about the book, which no check reads. */
const ABOUT: ReadonlySet<string> = new Set([
  'book',
  'title',
  'revision',
  'about',
  'revisions',
  'include',
  'units',
  'accepted',
]);

const differences = (a: unknown, b: unknown, keys: readonly string[]): readonly (readonly string[])[] => {
  if (sameValue(a, b)) return [];
  if (!isMap(a) || !isMap(b)) return [keys];
  return [...new Set([...Object.keys(a), ...Object.keys(b)])].flatMap((key) =>
    keys.length === 0 && ABOUT.has(key) ? [] : differences(a[key], b[key], [...keys, key]),
  );
};

/** `D1–D4` of names that count on, else `x+y`. */
const namesTogether = (names: readonly string[]): string => {
  const numbered = names.map((name) => /^(\D*)(\d+)$/.exec(name));
  const first = numbered[0];
  const runs =
    names.length > 2 &&
    numbered.every((one, i) => one?.[1] === first?.[1] && Number(one?.[2]) === Number(first?.[2]) + i);
  return runs ? `${names[0]}–${names.at(-1)}` : names.join('+');
};

/**
 * What the author of `after` wrote otherwise than that of `before`. Numbers are compared by value, so that 0.5 m and 500 mm are
 * the same; where a number comes from, and texts about the book, are no change.
 * @param before tree of one book
 * @param after tree of the other
 * @param schema says what a key means
 * @returns each change once, in the order of the books
 */
export const changesBetween = (before: Tree, after: Tree, schema: BookSchema): readonly Change[] => {
  interface One {
    readonly keys: readonly string[];
    readonly whole: string;
    readonly differs: string[];
  }
  const ones = new Map<string, One>();
  for (const keys of differences(before, after, [])) {
    const [kind = '', name = ''] = keys;
    const entry = Object.hasOwn(entryKinds, kind) && keys.length > 2 ? `${kind}.${name}` : undefined;
    const [was, is] = entry === undefined ? [] : [at(before, entry), at(after, entry)];
    // Another part is another thing: all that is said of it otherwise belongs to that.
    const swapped = isMap(was) && isMap(is) && was['part'] !== undefined && !sameValue(was['part'], is['part']);
    const path = keys.join('.');
    const head = swapped ? [kind, name, 'part'] : keys;
    const id = head.join('.');
    const known = ones.get(id) ?? { keys: head, whole: swapped ? entry! : path, differs: [] };
    known.differs.push(path);
    ones.set(id, known);
  }
  const groups = new Map<string, One[]>();
  for (const one of ones.values()) {
    const { keys } = one;
    const path = keys.join('.');
    const place =
      keys.length > 2 && isMap(before[keys[0]!]) && isMap(after[keys[0]!]) ? [keys[0], '*', ...keys.slice(2)] : keys;
    const id = JSON.stringify([place, written(at(before, path) ?? null), written(at(after, path) ?? null)]);
    groups.set(id, [...(groups.get(id) ?? []), one]);
  }
  return [...groups.values()].map((all) => {
    const [{ keys } = { keys: [] as readonly string[] }] = all;
    const path = keys.join('.');
    return {
      name:
        all.length === 1 ? path : [keys[0], namesTogether(all.map((one) => one.keys[1]!)), ...keys.slice(2)].join('.'),
      means: schema.keyInfo(path, after)?.means ?? schema.keyInfo(path, before)?.means ?? path,
      paths: all.map(({ whole }) => whole),
      differs: all.flatMap(({ differs }) => differs),
      before: told(at(before, path), keys.length < 2),
      after: told(at(after, path), keys.length < 2),
    };
  });
};

/** Names that a value refers to, with the kind of what they name. */
const refersTo = (
  path: string,
  value: unknown,
  tree: Tree,
  schema: BookSchema,
): readonly (readonly [string, string])[] => {
  if (isMap(value)) return Object.entries(value).flatMap(([key, one]) => refersTo(`${path}.${key}`, one, tree, schema));
  if (Array.isArray(value)) return value.flatMap((one, i) => refersTo(`${path}.${i}`, one, tree, schema));
  const kind = typeof value === 'string' ? schema.keyInfo(path, tree)?.refers : undefined;
  return kind === undefined ? [] : [[kind, String(value)]];
};

/** Where what is named stands, or nothing when it is not in the book itself. */
const placeOf = (kind: string, name: string, tree: Tree): string | undefined => {
  if (kind !== 'rails') return at(tree, `${kind}.${name}`) === undefined ? undefined : `${kind}.${name}`;
  const supplies = tree['supplies'];
  const owner = isMap(supplies)
    ? Object.keys(supplies).find((supply) => at(tree, `supplies.${supply}.rails.${name}`) !== undefined)
    : undefined;
  return owner && `supplies.${owner}.rails.${name}`;
};

const within = (path: string, outer: string): boolean => path === outer || path.startsWith(`${outer}.`);

/** Names of the rails that come with a value, wherever in a supply it stands. */
const railsAt = (path: string, value: unknown): readonly string[] => {
  const [kind, supply, rails, name] = path.split('.');
  if (kind !== 'supplies' || supply === undefined || value === undefined) return [];
  if (name !== undefined) return rails === 'rails' ? [name] : [];
  const table = rails === undefined && isMap(value) ? value['rails'] : rails === 'rails' ? value : undefined;
  return isMap(table) ? Object.keys(table) : [];
};

/**
 * The edits that set something in `now` back to what it was in `then`. What it names is set back with it where `now` has nothing
 * of that name.
 * @param paths what is set back
 * @param then the book that says what it was
 * @param now the book that is edited
 * @param schema tells names from other words
 */
export const settingBack = (paths: readonly string[], then: Tree, now: Tree, schema: BookSchema): readonly Edit[] => {
  const edits = new Map<string, Edit>();
  const waiting = [...paths];
  for (let path = waiting.shift(); path !== undefined; path = waiting.shift()) {
    if (edits.has(path)) continue;
    const value = at(then, path);
    edits.set(path, { path, text: value === undefined ? null : written(value) });
    for (const [kind, name] of refersTo(path, value, then, schema)) {
      const place = placeOf(kind, name, then);
      if (place !== undefined && placeOf(kind, name, now) === undefined) waiting.push(place);
    }
    for (const rail of railsAt(path, value)) {
      const other = placeOf('rails', rail, now)?.replace(/\.rails\..*/, '');
      // Two supplies with a rail of one name would leave open which is meant.
      if (other !== undefined && !within(path, other)) waiting.push(other);
    }
  }
  return [...edits.values()].toReversed();
};
