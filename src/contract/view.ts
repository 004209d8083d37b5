/** How a trade sees the book in one scenario: every quantity is one number that knows where it stands. */
import { NotStated, type Value } from '../kernel/index.ts';
import type { Quantity } from './schema.ts';

export type Seen<T> = T extends Quantity
  ? Value
  : T extends string | number | boolean | undefined | null
    ? T
    : T extends readonly (infer One)[]
      ? readonly Seen<One>[]
      : { readonly [K in keyof T]: Seen<T[K]> };

/** The path of a seen object, `axes.x`; kept under a symbol so that it is no key of the book. */
export const pathKey: unique symbol = Symbol('path');

/** Path of an object of the view. */
export const pathOf = (seen: object): string => (seen as { [pathKey]?: string })[pathKey] ?? '';

/** The named keys of an entry, or NotStated with every one of them that is missing. */
export const need = <T extends object, const K extends readonly (keyof T & string)[]>(
  seen: T,
  ...keys: K
): { readonly [P in K[number]]: NonNullable<T[P]> } => {
  const missing = keys.filter((key) => seen[key] === undefined);
  if (missing.length > 0) throw new NotStated(missing.map((key) => `${pathOf(seen)}${pathOf(seen) ? '.' : ''}${key}`));
  return seen as { readonly [P in K[number]]: NonNullable<T[P]> };
};

/** The entry of that name, or NotStated. References are checked when the book is read; an absent table is not stated. */
export const entry = <T>(
  table: Readonly<Record<string, T>> | undefined,
  kind: string,
  name: string | undefined,
  wanted: string,
): T => {
  if (name === undefined) throw new NotStated([wanted]);
  const found = table?.[name];
  if (found === undefined) throw new NotStated([`${kind}.${name}`]);
  return found;
};
