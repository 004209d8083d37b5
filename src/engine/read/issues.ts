/** What the schema objects to, as problems with a place. */
import type * as z from 'zod';
import { entryKinds, infoOf, Plain } from '../../contract/index.ts';
import { described } from './fit.ts';
import { nearest } from '../../kernel/nearest.ts';
import { listed, problemAt, quote, under, type BookProblem, type Span } from './problem.ts';
import type { Spot } from './unfold.ts';
import { childOf, core, infoAt, isMap, keysOf } from './walk.ts';

type Issue = z.core.$ZodIssue;

/** The book as written, with the schema that it is held against. */
export interface Held {
  readonly schema: z.ZodType;
  readonly raw: Readonly<Record<string, unknown>>;
  readonly spots: ReadonlyMap<string, Spot>;
}

interface Reached {
  readonly schema: z.ZodType | undefined;
  readonly value: unknown;
  readonly path: string;
}

/** Follows a path into schema and text alike. */
const follow = ({ schema, raw }: Held, path: readonly string[]): Reached => {
  let reached: Reached = { schema, value: raw, path: '' };
  for (const key of path) {
    const { value } = reached;
    reached = {
      schema: reached.schema && childOf(reached.schema, key, value),
      value: Array.isArray(value)
        ? value[Number(key)]
        : isMap(value) && Object.hasOwn(value, key)
          ? value[key]
          : undefined,
      path: under(reached.path, key),
    };
  }
  return reached;
};

/** Where to point for a path: a scalar itself, of a map or list its key, of what is missing the key above. */
export const spanOf = (spots: ReadonlyMap<string, Spot>, path: string): Span | undefined => {
  const spot = spots.get(path);
  if (!spot)
    return path === '' ? undefined : spanOf(spots, path.includes('.') ? path.slice(0, path.lastIndexOf('.')) : '');
  if (spot.scalar && spot.end > spot.start) return spot;
  return spot.key ? { source: spot.source, ...spot.key } : spot;
};

/** Every key that stands somewhere in the schema, with the paths of where it belongs. */
const homes = new WeakMap<z.ZodType, ReadonlyMap<string, readonly string[]>>();
const homesOf = (schema: z.ZodType): ReadonlyMap<string, readonly string[]> => {
  const known = homes.get(schema);
  if (known) return known;
  const found = new Map<string, string[]>();
  const walk = (at: z.ZodType, path: string): void => {
    if (infoOf(at)) return;
    for (const key of keysOf(at)) {
      const place = under(path, key);
      const before = found.get(key) ?? [];
      if (!before.includes(place)) found.set(key, [...before, place]);
      const child = childOf(at, key);
      if (child) walk(child, place);
    }
    const inner = core(at);
    const many = inner.type === 'array' ? childOf(at, '0') : inner.type === 'record' ? childOf(at, 'NAME') : undefined;
    if (many) walk(many, inner.type === 'record' ? under(path, 'NAME') : path);
  };
  walk(schema, '');
  homes.set(schema, found);
  return found;
};

export const withArticle = (noun: string): string => `${/^[aeiou]/.test(noun) ? 'an' : 'a'} ${noun}`;

/** What a map is called in a message: "a book", "an axis with drive: belt", "drum". */
const calls = (path: readonly string[], value: unknown): string => {
  const [kind = '', name] = path;
  if (path.length === 0) return 'a book';
  const entry = Object.hasOwn(entryKinds, kind) ? entryKinds[kind] : undefined;
  if (!entry || path.length !== 2) return path.filter((_, i) => !(entry && i < 2)).join('.') || (name ?? kind);
  const said = entry.variant !== undefined && isMap(value) ? value[entry.variant] : undefined;
  return `${withArticle(entry.means)}${typeof said === 'string' ? ` with ${entry.variant}: ${said}` : ''}`;
};

const unknownKey = (held: Held, path: readonly string[], key: string): BookProblem | undefined => {
  const { schema, value, path: at } = follow(held, path);
  const spot = held.spots.get(under(at, key));
  if (!spot || !schema) return undefined;
  const here = keysOf(schema, value);
  const free = here.filter((one) => !(isMap(value) && Object.hasOwn(value, one)));
  const close = nearest(key, free) ?? nearest(key, here);
  const places = homesOf(held.schema);
  const spelt = places.has(key) ? key : key.toLowerCase().replaceAll(/[\s_]+/g, '-');
  const elsewhere = (places.get(spelt) ?? []).filter((home) => home !== under(at, key) && !home.startsWith('units.'));
  const keys = `Keys here: ${listed(here, 24)}.`;
  return problemAt(
    { source: spot.source, ...(spot.key ?? spot) },
    `${quote(key)} is no key of ${calls(path, value)}.`,
    close !== undefined
      ? `Did you mean ${close}?`
      : elsewhere.length > 0
        ? `It belongs at ${listed(elsewhere, 3)}.`
        : keys,
    { path: under(at, key) },
  );
};

const aboutVariant = (held: Held, path: readonly string[], span: Span): BookProblem => {
  const parent = path.slice(0, -1);
  const variant = path.at(-1)!;
  const { value: entry } = follow(held, parent);
  const given = isMap(entry) && Object.hasOwn(entry, variant) ? entry[variant] : undefined;
  const words = infoAt(held.schema, path)?.words ?? [];
  const text = given instanceof Plain ? given.source : given;
  const close = typeof text === 'string' ? nearest(text, words) : undefined;
  const would = words.map((word) => `${variant}: ${word}`);
  const allowed = close === undefined ? `${listed(would, 16)} would do.` : `Did you mean ${variant}: ${close}?`;
  const called = calls(parent, {}).replace(/^an? /, '');
  return given === undefined
    ? problemAt(span, `This ${called} does not say its ${variant}.`, `${listed(would, 16)} would do.`, {
        path: path.join('.'),
      })
    : problemAt(span, `${described(given)} is no ${variant} that is known here.`, allowed, { path: path.join('.') });
};

const isTold = (params: unknown): params is { what: string; allowed: string; at?: readonly [number, number] } =>
  isMap(params) && typeof params['what'] === 'string' && typeof params['allowed'] === 'string';

/** The stretch of a scalar that is to blame, where its text stands in the file as it is. */
const within = (spot: Spot | undefined, span: Span, at: readonly [number, number] | undefined): Span => {
  const text = spot?.scalar?.source;
  if (!at || !spot || text === undefined) return span;
  const offset = spot.source.text.slice(spot.start, spot.end).indexOf(text);
  const [from, to] = at;
  if (offset < 0 || from < 0 || to > text.length || from > to) return span;
  const start = spot.start + offset + from;
  return { source: span.source, start, end: Math.max(start + 1, spot.start + offset + to) };
};

/** One issue of the schema as problems at their places. */
export const problemsOf = (held: Held, issue: Issue): readonly BookProblem[] => {
  const path = issue.path.map(String);
  const at = path.join('.');
  const span = spanOf(held.spots, at);
  if (!span) return [];
  if (issue.code === 'unrecognized_keys') return issue.keys.flatMap((key) => unknownKey(held, path, key) ?? []);
  if (issue.code === 'invalid_union') return [aboutVariant(held, path, span)];
  const { schema, value } = follow(held, path);
  const params = issue.code === 'custom' ? issue.params : undefined;
  // A fact written { is: …, from: … } is blamed at one of the two, and is itself what the problem is about.
  const inFact = value === undefined || !schema ? infoAt(held.schema, path.slice(0, -1), held.raw) : undefined;
  if (value === undefined && !inFact) {
    const info = infoAt(held.schema, path, held.raw);
    return [
      problemAt(
        span,
        `${quote(path.at(-1) ?? '')} is missing${info ? `: ${info.means}` : ''}.`,
        info ? `Such as ${path.at(-1)}: ${info.example}` : 'This key is needed here.',
        { path: at },
      ),
    ];
  }
  if (isTold(params)) {
    const spot = held.spots.get(at);
    if (inFact && spot?.key && !['is', 'from'].includes(path.at(-1)!))
      return [
        problemAt({ source: spot.source, ...spot.key }, params.what, params.allowed, {
          path: path.slice(0, -1).join('.'),
        }),
      ];
    return [
      problemAt(within(spot, span, params.at), params.what, params.allowed, {
        path: inFact ? path.slice(0, -1).join('.') : at,
      }),
    ];
  }
  return [problemAt(span, issue.message, '', { path: at })];
};
