/** Walks a schema beside the text that it is for. */
import * as z from 'zod';
import { infoOf, type KeyInfo } from '../../contract/index.ts';

type Entries = Readonly<Record<string, unknown>>;

export const isMap = (value: unknown): value is Entries =>
  typeof value === 'object' && value !== null && Object.getPrototypeOf(value) === Object.prototype;

/** The schema behind `optional` and behind a step that only prepares. */
export const core = (schema: z.ZodType): z.ZodType => {
  if (schema instanceof z.ZodOptional) return core(schema.unwrap() as z.ZodType);
  if (schema instanceof z.ZodPipe && schema.in instanceof z.ZodTransform) return core(schema.out as z.ZodType);
  return schema;
};

/** The options of a schema; more than one where a key such as `drive` names a variant. */
const optionsFor = (schema: z.ZodType, value: unknown): readonly z.ZodObject[] => {
  const inner = core(schema);
  if (inner instanceof z.ZodObject) return [inner];
  if (!(inner instanceof z.ZodDiscriminatedUnion)) return [];
  const options = inner.options as unknown as readonly z.ZodObject[];
  const named = isMap(value) ? value[inner.def.discriminator] : undefined;
  const chosen = options.filter((one) => {
    const literal = one.shape[inner.def.discriminator];
    return literal instanceof z.ZodLiteral && literal.value === named;
  });
  return chosen.length > 0 ? chosen : options;
};

/** Keys of a map with a fixed set of keys; of every variant when the value does not say which it is. */
export const keysOf = (schema: z.ZodType, value?: unknown): readonly string[] => [
  ...new Set(optionsFor(schema, value).flatMap((one) => Object.keys(one.shape))),
];

/** What may stand under a key of a map, or at an index of a list; several where the value does not say which variant it is. */
export const childrenOf = (schema: z.ZodType, key: string, value?: unknown): readonly z.ZodType[] => {
  const inner = core(schema);
  if (inner instanceof z.ZodArray) return /^\d+$/.test(key) ? [inner.element as z.ZodType] : [];
  if (inner instanceof z.ZodRecord) return [inner.valueType as z.ZodType];
  return optionsFor(inner, value).flatMap((one) =>
    Object.hasOwn(one.shape, key) ? [one.shape[key] as z.ZodType] : [],
  );
};

/** What stands under a key of a map, or at an index of a list. */
export const childOf = (schema: z.ZodType, key: string, value?: unknown): z.ZodType | undefined =>
  childrenOf(schema, key, value)[0];

/** What the key at a path says about itself. Names of entries may hold a dot. */
export const infoAt = (schema: z.ZodType, path: readonly string[], value?: unknown): KeyInfo | undefined => {
  const info = infoOf(schema);
  if (info && (path.length === 0 || (info.many && path.length === 1))) return info;
  for (let taken = 1; taken <= path.length; taken++) {
    const key = path.slice(0, taken).join('.');
    const child = childOf(schema, key, value);
    const below = isMap(value) && Object.hasOwn(value, key) ? value[key] : undefined;
    const found = child && infoAt(child, path.slice(taken), below);
    if (found) return found;
  }
  return undefined;
};

/** Calls `visit` for everything in `value` that a leaf of the schema is for. */
export const visitLeaves = (
  schema: z.ZodType,
  value: unknown,
  path: string,
  visit: (info: KeyInfo, value: unknown, path: string) => void,
): void => {
  const info = infoOf(schema);
  if (info?.many && Array.isArray(value)) {
    value.forEach((one, i) => visit(info, one, `${path}.${i}`));
    return;
  }
  if (info) {
    visit(info, value, path);
    return;
  }
  const entries = Array.isArray(value) ? value.entries() : isMap(value) ? Object.entries(value) : [];
  for (const [key, below] of entries) {
    const child = childOf(schema, String(key), value);
    if (child) visitLeaves(child, below, path === '' ? String(key) : `${path}.${key}`, visit);
  }
};
