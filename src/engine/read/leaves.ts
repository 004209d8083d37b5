/** Facts that come from elsewhere than the text of the book: catalogue rows, fills, edits on trial. */
import { isMap as isYamlMap, isScalar, isSeq, parseDocument } from 'yaml';
import type * as z from 'zod';
import { Plain, Quantity } from '../../contract/index.ts';
import type { Citation, Provenance } from '../../kernel/index.ts';
import { unfoldScalar } from './unfold.ts';
import { childrenOf } from './walk.ts';

export interface Origin {
  readonly provenance: Provenance;
  readonly source?: Citation;
}

const raw = (node: unknown): unknown => {
  if (isScalar(node)) return unfoldScalar(node);
  if (isSeq(node)) return node.items.map(raw);
  if (isYamlMap(node)) return Object.fromEntries(node.items.map(({ key, value }) => [String(key), raw(value)]));
  return node;
};

/** A YAML snippet, as an author would write it behind a colon. */
const fromText = (text: string): unknown => {
  const document = parseDocument(text, { version: '1.2' });
  const [error] = document.errors;
  if (error) throw new RangeError(`"${text}" cannot stand behind a key: ${error.message}`);
  return raw(document.contents);
};

/** JSON data as the reader would hand it on: numbers and booleans with their source. */
const fromJson = (data: unknown): unknown => {
  if (typeof data === 'number' || typeof data === 'boolean') return new Plain(String(data), data);
  if (Array.isArray(data)) return data.map(fromJson);
  if (data !== null && typeof data === 'object')
    return Object.fromEntries(Object.entries(data).map(([key, value]) => [key, fromJson(value)]));
  return data;
};

/** Says of every quantity where it comes from, unless it says so itself. */
const marked = (value: unknown, { provenance, source }: Origin): unknown => {
  if (value instanceof Quantity)
    return new Quantity(value.low, value.high, value.of, value.unit, value.range, provenance, value.text, source);
  if (Array.isArray(value)) return value.map((one) => marked(one, { provenance, ...(source ? { source } : {}) }));
  if (value !== null && typeof value === 'object')
    return Object.fromEntries(
      Object.entries(value).map(([key, one]) => [key, marked(one, { provenance, ...(source ? { source } : {}) })]),
    );
  return value;
};

/** Schemas that may stand behind the keys: one, or one for each variant where the tree does not tell which it is. */
const schemasAt = (whole: z.ZodType, keys: readonly string[], tree: unknown): readonly z.ZodType[] => {
  let schemas: readonly z.ZodType[] = [whole];
  let value = tree;
  for (const key of keys) {
    const here = value;
    schemas = schemas.flatMap((schema) => childrenOf(schema, key, here));
    value = value !== null && typeof value === 'object' ? (value as Readonly<Record<string, unknown>>)[key] : undefined;
  }
  return schemas;
};

const parse = (schemas: readonly z.ZodType[], path: string, value: unknown): unknown => {
  const results = schemas.map((schema) => schema.safeParse(value));
  const [first] = results;
  if (!first) throw new RangeError(`no key stands at ${path}`);
  for (const result of results) if (result.success) return result.data;
  const issues = first.error?.issues ?? [];
  throw new RangeError(`${path}: ${issues.map((issue) => `${issue.path.join('.')} ${issue.message}`).join('; ')}`);
};

/**
 * A fact as it would be read behind these keys. `tree` tells which variant an entry is.
 * @throws RangeError when the text cannot stand there
 */
export const readAt = (
  whole: z.ZodType,
  keys: readonly string[],
  text: string,
  tree: unknown,
  origin?: Origin,
): unknown => {
  const value = parse(schemasAt(whole, keys, tree), keys.join('.'), fromText(text));
  return origin ? marked(value, origin) : value;
};

/**
 * A whole entry given as JSON, such as a row of the catalogue.
 * @throws RangeError when it does not fit the schema of its kind
 */
export const readEntry = (whole: z.ZodType, kind: string, data: unknown, origin: Origin): Record<string, unknown> => {
  return marked(parse(schemasAt(whole, [kind, 'entry'], undefined), kind, fromJson(data)), origin) as Record<
    string,
    unknown
  >;
};
