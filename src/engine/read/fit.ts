/** Maps where maps belong and lists where lists belong, before the schema looks at what stands in them. */
import type * as z from 'zod';
import { infoOf, Plain } from '../../contract/index.ts';
import { listed, quote, under } from './problem.ts';
import { childOf, core, isMap, keysOf } from './walk.ts';

type Wanted = 'map' | 'list' | undefined;

const wantedBy = (schema: z.ZodType): Wanted => {
  if (infoOf(schema)) return undefined;
  const { type } = core(schema);
  if (type === 'object' || type === 'record' || type === 'union') return 'map';
  return type === 'array' ? 'list' : undefined;
};

const isNothing = (value: unknown): boolean => value instanceof Plain && value.value === null;

/** A value as a message names it. */
export const described = (value: unknown): string => {
  if (value instanceof Plain) return value.value === null ? 'nothing' : quote(value.source);
  if (typeof value === 'string') return quote(value);
  return Array.isArray(value) ? 'a list' : 'a map';
};

/**
 * The value without what has the wrong build; `tell` hears of each. A table or entry that is begun but still empty
 * is not stated, not wrong.
 */
export const fitted = (
  schema: z.ZodType,
  value: unknown,
  path: string,
  tell: (path: string, what: string, allowed: string) => void,
): unknown => {
  const wanted = wantedBy(schema);
  if (wanted === undefined) return value;
  if (wanted === 'list') {
    if (Array.isArray(value))
      return value.map((one, i) => {
        const child = childOf(schema, String(i), value);
        return child ? fitted(child, one, under(path, i), tell) : one;
      });
    tell(
      path,
      `A list belongs here, not ${described(value)}.`,
      'In square brackets, or as lines that begin with a dash.',
    );
    return undefined;
  }
  if (!isMap(value)) {
    const keys = keysOf(schema);
    tell(
      path,
      `A map of keys belongs here, not ${described(value)}.`,
      keys.length > 0 ? `Keys here: ${listed(keys, 24)}.` : 'A name, a colon, and below it its keys.',
    );
    return undefined;
  }
  const isTable = core(schema).type === 'record';
  const kept: Record<string, unknown> = {};
  for (const [key, below] of Object.entries(value)) {
    const child = childOf(schema, key, value);
    const isEmpty = child !== undefined && isNothing(below) && wantedBy(child) !== undefined;
    if (isEmpty && isTable && wantedBy(child) === 'map') kept[key] = {};
    else if (!isEmpty) {
      const fit = child ? fitted(child, below, under(path, key), tell) : below;
      if (fit !== undefined) kept[key] = fit;
    }
  }
  return kept;
};
