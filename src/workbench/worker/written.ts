/** A book as far as it has been written: all of its files, with the caret in one of them. */
import type * as z from 'zod';
import { childrenOf } from '../../engine/read/walk.ts';
import type { BookText } from '../desk/engine.ts';
import { outline, type Outline, type Tree } from './outline.ts';

export interface Written {
  /** Of the file with the caret. */
  readonly here: Outline;
  /** Of the whole book. */
  readonly tree: Tree;
}

const isMap = (x: unknown): x is Tree => typeof x === 'object' && x !== null && !Array.isArray(x);

/** Nothing when the book has no such file. */
export const writtenBook = ({ files }: BookText, file: string, offset: number): Written | undefined => {
  if (!Object.hasOwn(files, file)) return undefined;
  const here = outline(files[file]!, offset);
  const tree: Tree = { ...here.tree };
  for (const [name, text] of Object.entries(files)) {
    if (name === file || !/\.ya?ml$/i.test(name)) continue;
    for (const [key, more] of Object.entries(outline(text).tree)) {
      const own = tree[key];
      if (own === undefined) tree[key] = more;
      else if (isMap(own) && isMap(more)) tree[key] = { ...more, ...own };
    }
  }
  return { here, tree };
};

export interface Reached {
  /** What may stand there; several where a key such as `drive` does not yet say which. */
  readonly schemas: readonly z.ZodType[];
  /** What stands there. */
  readonly value: unknown;
}

/** Follows keys into schema and text. */
export const reach = (schema: z.ZodType, tree: Tree, path: readonly string[]): Reached => {
  let reached: Reached = { schemas: [schema], value: tree };
  for (const key of path) {
    const { schemas, value } = reached;
    const below = Array.isArray(value)
      ? value[Number(key)]
      : isMap(value) && Object.hasOwn(value, key)
        ? value[key]
        : undefined;
    reached = { schemas: schemas.flatMap((one) => childrenOf(one, key, value)), value: below };
  }
  return reached;
};

export const namesIn = (value: unknown): readonly string[] => (isMap(value) ? Object.keys(value) : []);

/** Names of entries of a kind; rails stand within the supplies. */
export const namesOfKind = (kind: string, tree: Tree): readonly string[] =>
  kind === 'rails'
    ? Object.values(isMap(tree['supplies']) ? tree['supplies'] : {}).flatMap((one) =>
        namesIn(isMap(one) ? one['rails'] : undefined),
      )
    : namesIn(tree[kind]);
