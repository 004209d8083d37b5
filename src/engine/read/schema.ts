/** One schema from the topology and the keys that each trade adds. */
import * as z from 'zod';
import {
  benchKey,
  entryKinds,
  told,
  topKeys,
  type BenchTest,
  type KeyInfo,
  type SchemaPart,
  type Shape,
} from '../../contract/index.ts';
import { jsonSchemaOf } from './json-schema.ts';
import { infoAt } from './walk.ts';

export interface BookSchema {
  readonly zod: z.ZodType;
  /** What the key at a dotted path says about itself. The book's tree tells which variant an entry is. */
  readonly keyInfo: (path: string, tree?: unknown) => KeyInfo | undefined;
  /** Draft 2020-12, for editors. */
  readonly jsonSchema: () => object;
  readonly formatNumber: number;
}

export interface NamedPart {
  readonly name: string;
  readonly schema: SchemaPart;
  readonly bench?: readonly BenchTest[];
}

const required: readonly string[] = ['book', 'title', 'revision'];
const TOPOLOGY = 'the topology';

interface Owned {
  readonly schema: z.ZodType;
  readonly owner: string;
}
type Keys = Map<string, Owned>;

const add = (keys: Keys, shape: Shape, owner: string, where: string): void => {
  for (const [key, schema] of Object.entries(shape)) {
    const before = keys.get(key);
    if (before) throw new TypeError(`${where}: "${key}" belongs to ${before.owner} and to ${owner}`);
    keys.set(key, { schema, owner });
  }
};

const objectOf = (keys: Keys, needed: readonly string[] = []): z.ZodObject =>
  z.strictObject(
    Object.fromEntries(
      [...keys].map(([key, { schema }]) => [
        key,
        needed.includes(key) || schema instanceof z.ZodOptional ? schema : schema.optional(),
      ]),
    ),
  );

/** Shapes that the trades give for `kind` or `kind/variant`. */
const partsFor = (parts: readonly NamedPart[], name: string): readonly (readonly [string, Shape])[] =>
  parts.flatMap(({ name: owner, schema }) => {
    const shape = schema.entries?.[name];
    return shape ? [[owner, shape] as const] : [];
  });

const entrySchema = (kind: string, parts: readonly NamedPart[]): z.ZodType => {
  const { shape, variant, means } = entryKinds[kind]!;
  const common: Keys = new Map();
  add(common, shape, TOPOLOGY, kind);
  for (const [owner, more] of partsFor(parts, kind)) add(common, more, owner, kind);
  if (variant === undefined) return objectOf(common);

  const words = [
    ...new Set(
      parts.flatMap(({ schema }) =>
        Object.keys(schema.entries ?? {}).flatMap((name) =>
          name.startsWith(`${kind}/`) ? [name.slice(kind.length + 1)] : [],
        ),
      ),
    ),
  ].sort();
  if (words.length === 0) return objectOf(common);
  const info: KeyInfo = { means: `${variant} of the ${means}`, example: words[0]!, words, form: 'word' };
  const options = words.map((word) => {
    const keys: Keys = new Map();
    add(keys, { [variant]: told(z.literal(word), info) }, TOPOLOGY, kind);
    for (const [key, { schema, owner }] of common) add(keys, { [key]: schema }, owner, `${kind}/${word}`);
    for (const [owner, more] of partsFor(parts, `${kind}/${word}`)) add(keys, more, owner, `${kind}/${word}`);
    return objectOf(keys, [variant]);
  });
  return z.discriminatedUnion(variant, options as unknown as [z.ZodObject<Record<string, z.ZodLiteral<string>>>]);
};

const refuseUnknownKinds = ({ name: owner, schema }: NamedPart): void => {
  for (const name of Object.keys(schema.entries ?? {})) {
    const [kind = '', variant] = name.split('/');
    if (!Object.hasOwn(entryKinds, kind))
      throw new TypeError(`${owner} adds keys to ${kind}, which is no kind of entry`);
    if (variant !== undefined && entryKinds[kind]!.variant === undefined)
      throw new TypeError(`${owner} adds the variant ${variant} to ${kind}, which has no variants`);
  }
};

/**
 * The schema of a whole book. Every map is strict; an entry kind with variants is told apart by its `drive` or `kind`.
 * @throws TypeError naming both owners when two of them want the same key, or when a trade adds to a kind that is not there
 */
export const assembleSchema = (disciplines: readonly NamedPart[]): BookSchema => {
  disciplines.forEach(refuseUnknownKinds);
  const top: Keys = new Map();
  add(top, topKeys, TOPOLOGY, 'the book');
  for (const kind of Object.keys(entryKinds))
    add(top, { [kind]: z.record(z.string(), entrySchema(kind, disciplines)) }, TOPOLOGY, 'the book');
  for (const { name, schema } of disciplines) add(top, schema.top ?? {}, name, 'the book');
  const bench = benchKey(disciplines.flatMap((one) => one.bench ?? []));
  if (bench) add(top, { bench }, TOPOLOGY, 'the book');
  const whole = objectOf(top, required);
  return {
    zod: whole,
    keyInfo: (path, tree) => infoAt(whole, path.split('.'), tree),
    jsonSchema: () => jsonSchemaOf(whole),
    formatNumber: 1,
  };
};
