/** Leaves of the book's schema. A trade builds its keys from these; JSON Schema, help and questions come from the same data. */
import * as z from 'zod';
import {
  dimensions,
  isProblem,
  readQuantity,
  show,
  siUnit,
  type Citation,
  type Dimension,
  type Measurement,
  type Provenance,
  type Unit,
  unitNamed,
} from '../kernel/index.ts';
import { Plain } from './scalars.ts';

/** What a range of this key means: all values occur, one unknown value, or no range is possible. */
export type RangeKind = 'spread' | 'doubt' | 'exact';

/** A quantity as it stands in a book: SI ends, the author's unit and text. `low === high` when it is exact. */
export class Quantity {
  constructor(
    readonly low: number,
    readonly high: number,
    readonly of: Dimension,
    readonly unit: Unit,
    readonly range: RangeKind,
    readonly provenance: Provenance,
    readonly text: string,
    readonly source?: Citation,
  ) {}
}

/** Everything a key says about itself. */
export interface KeyInfo {
  readonly means: string;
  readonly example: string;
  readonly of?: Dimension;
  readonly range?: RangeKind;
  readonly measure?: Measurement;
  readonly above?: number;
  readonly from?: number;
  readonly below?: number;
  readonly to?: number;
  readonly because?: string;
  readonly words?: readonly string[];
  /** Key of the entry's part that lists the settings it can take, such as the positions of a switch. */
  readonly positions?: string;
  /** Names an entry of this kind, for instance `motors`. */
  readonly refers?: string;
  /** How the key is written. */
  readonly form?: 'quantity' | 'count' | 'text' | 'word' | 'yes-no';
  /** One value, or a list of them. */
  readonly many?: true;
}

const infos = new WeakMap<z.ZodType, KeyInfo>();

/** Lets a schema say something about itself. Gives the schema back. */
export const told = <S extends z.ZodType>(schema: S, info: KeyInfo): S => {
  infos.set(schema, info);
  return schema;
};

/** What a schema leaf says about itself; undefined for objects and lists. Looks through `optional`. */
export const infoOf = (schema: z.ZodType): KeyInfo | undefined =>
  infos.get(schema) ?? (schema instanceof z.ZodOptional ? infoOf(schema.unwrap() as z.ZodType) : undefined);

/** A problem found in a leaf; the reader adds file, line and column. `at` is a character span in the scalar. */
export interface LeafProblem {
  readonly what: string;
  readonly allowed: string;
  readonly at?: readonly [number, number];
}

/** `key` is the part of `{ is: …, from: … }` that is to blame. */
const refuse = (context: z.core.$RefinementCtx, problem: LeafProblem, key?: string): never => {
  context.addIssue({
    code: 'custom',
    message: problem.what,
    params: { ...problem },
    ...(key === undefined ? {} : { path: [key] }),
  });
  return z.NEVER;
};

const leaf = <T>(info: KeyInfo, read: (given: unknown, context: z.core.$RefinementCtx) => T) => {
  const schema = z.unknown().transform(read);
  infos.set(schema, info);
  return schema;
};

const provenances: readonly Provenance[] = ['measured', 'plate', 'datasheet', 'table', 'guess', 'stated'];
const wordsOf = (of: Dimension): string => dimensions.find((d) => d.name === of)!.words;

type QuantityInfo = Omit<KeyInfo, 'of' | 'refers'> & { readonly range: RangeKind };

const outside = (info: QuantityInfo, low: number, high: number): boolean =>
  (info.above !== undefined && !(low > info.above)) ||
  (info.from !== undefined && !(low >= info.from)) ||
  (info.below !== undefined && !(high < info.below)) ||
  (info.to !== undefined && !(high <= info.to));

/**
 * Reads one quantity text into SI, with the limits of its key. Used for book scalars and catalogue rows alike.
 * Lengths and masses and the like are above zero unless the key says otherwise.
 */
export const readGiven = (
  text: string,
  of: Dimension,
  info: Pick<KeyInfo, 'above' | 'from' | 'below' | 'to' | 'because' | 'means' | 'example'> & {
    readonly range: RangeKind;
  },
  provenance: Provenance,
  source?: Citation,
): Quantity | LeafProblem => {
  const reading = readQuantity(text, of);
  if (!reading.ok) return reading.problem;
  if (info.range === 'exact' && reading.lo !== reading.hi)
    return {
      what: `"${text}" is a range, and this is one exact value.`,
      allowed: `One value, such as ${info.example}.`,
    };
  if (outside(info, reading.lo, reading.hi))
    return {
      what: `"${text}" is not possible here${info.because ? `: ${info.because}` : ''}.`,
      allowed: `${capital(info.means)}: ${limitsInWords(info, of)}, such as ${info.example}.`,
    };
  return new Quantity(reading.lo, reading.hi, of, reading.unit, info.range, provenance, text, source);
};

const capital = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1);

const limitsInWords = (
  { above, from, below, to }: Pick<KeyInfo, 'above' | 'from' | 'below' | 'to'>,
  of: Dimension,
): string => {
  const low =
    above === 0
      ? 'more than nothing'
      : above !== undefined
        ? `more than ${show(above, of)}`
        : from !== undefined
          ? `${show(from, of)} or more`
          : '';
  const high = below !== undefined ? `less than ${show(below, of)}` : to !== undefined ? `at most ${show(to, of)}` : '';
  return [low, high].filter(Boolean).join(' and ') || 'any value';
};

/** A quantity with a unit, or `{ is: …, from: measured }`. A range means spread or doubt, as the key says. */
export const quantity = (of: Dimension, given: QuantityInfo) => {
  const info = { ...given, ...(given.above === undefined && given.from === undefined ? { above: 0 } : {}) };
  return leaf({ ...info, of, form: 'quantity' }, (raw, context): Quantity => {
    let part: string | undefined;
    let provenance: Provenance = 'stated';
    let scalar = raw;
    if (raw !== null && typeof raw === 'object' && !(raw instanceof Plain)) {
      const { is, from, ...rest } = raw as Record<string, unknown>;
      const unknown = Object.keys(rest)[0];
      if (is === undefined || unknown !== undefined || Array.isArray(raw))
        return refuse(
          context,
          {
            what: Array.isArray(raw)
              ? `A list stands where ${wordsOf(of)} belongs.`
              : unknown !== undefined
                ? `"${unknown}" is no part of a fact.`
                : 'This fact has no value.',
            allowed: `${info.example}, or { is: ${info.example}, from: measured }.`,
          },
          Array.isArray(raw) ? undefined : unknown,
        );
      const isOrigin = from === undefined || provenances.includes(from as Provenance);
      if (!isOrigin)
        refuse(
          context,
          {
            what: `"${from instanceof Plain ? from.source : typeof from === 'string' ? from : 'a list or map'}" is no origin of a fact.`,
            allowed: `from: ${provenances.join(', ')}.`,
          },
          'from',
        );
      provenance = isOrigin ? ((from as Provenance | undefined) ?? 'stated') : 'stated';
      scalar = is;
      part = 'is';
    }
    if (scalar instanceof Plain && scalar.value === null)
      return refuse(
        context,
        {
          what: `${capital(info.means)} is left empty.`,
          allowed: `${capital(wordsOf(of))}, such as ${info.example}; or leave the key out.`,
        },
        part,
      );
    const text = scalar instanceof Plain ? scalar.source : scalar;
    if (typeof text !== 'string')
      return refuse(
        context,
        { what: `A list or map stands where ${wordsOf(of)} belongs.`, allowed: `Such as ${info.example}.` },
        part,
      );
    const read = readGiven(text, of, info, provenance);
    return read instanceof Quantity ? read : refuse(context, read, part);
  });
};

/** Free text. A plain scalar that other YAML readers take for a number or a boolean wants quotes. */
export const text = (info: Pick<KeyInfo, 'means' | 'example'>) =>
  leaf({ ...info, form: 'text' }, (raw, context): string => {
    if (raw instanceof Plain)
      return raw.value === null
        ? refuse(context, {
            what: 'Nothing stands here.',
            allowed: `A text, such as ${info.example}. A # begins a comment: put a text that holds one in quotes.`,
          })
        : refuse(context, {
            what: `${raw.source} is a ${typeof raw.value} to readers of this file, and a text is wanted.`,
            allowed: `Put it in quotes: "${raw.source}".`,
          });
    return typeof raw === 'string'
      ? raw
      : refuse(context, { what: 'A list or map stands where a text belongs.', allowed: `Such as ${info.example}.` });
  });

const nearTraps: Readonly<Record<string, string>> = {
  no: 'normally-open',
  nc: 'normally-closed',
  'normally open': 'normally-open',
  'normally closed': 'normally-closed',
};

/** Words that one reader of YAML takes for text and another for true or false. */
export const isBooleanElsewhere = (source: string): boolean => /^(y|n|yes|no|on|off|true|false)$/i.test(source);

/** The unit in which results of a dimension are printed. */
export const unitFor = (of: Dimension) =>
  leaf(
    { means: `the unit in which to print ${wordsOf(of)}`, example: siUnit(of), form: 'text' },
    (raw, context): string => {
      const unit = typeof raw === 'string' ? unitNamed(raw, of) : undefined;
      if (unit && !isProblem(unit)) return raw as string;
      return refuse(context, unit ?? { what: 'No unit stands here.', allowed: `Such as ${siUnit(of)}.` });
    },
  );

/** One word of a list. */
export const oneOf = <const W extends readonly string[]>(words: W, info: Pick<KeyInfo, 'means'>) =>
  leaf({ ...info, example: words[0]!, words, form: 'word' }, (raw, context): W[number] => {
    if (typeof raw === 'string' && words.includes(raw)) return raw;
    const source = raw instanceof Plain ? raw.source : typeof raw === 'string' ? raw : 'a list or map';
    if (raw instanceof Plain && raw.value === null)
      return refuse(context, {
        what: `${capital(info.means)} is left empty.`,
        allowed: `${words.join(', ')} would do.`,
      });
    const meant = nearTraps[source.toLowerCase()];
    return refuse(context, {
      what: isBooleanElsewhere(source)
        ? `"${source}" is a boolean to other readers of this file.`
        : `"${source}" is not one of the words for ${info.means}.`,
      allowed: meant && words.includes(meant) ? `Write ${meant}.` : `${words.join(', ')} would do.`,
    });
  });

/** Yes or no, written `true` or `false`. */
export const yesNo = (info: Pick<KeyInfo, 'means'>) =>
  leaf({ ...info, example: 'true', form: 'yes-no' }, (raw, context): boolean => {
    if (raw instanceof Plain && typeof raw.value === 'boolean') return raw.value;
    const source = raw instanceof Plain ? raw.source : typeof raw === 'string' ? raw : 'a list or map';
    return refuse(context, {
      what: `"${source}" is neither true nor false.`,
      allowed: 'true or false; yes, no, on and off mean different things to different readers.',
    });
  });

/** A whole number without a unit: teeth, turns, leads. */
export const count = (info: Pick<KeyInfo, 'means' | 'example'> & { readonly from?: number; readonly to?: number }) =>
  leaf({ ...info, of: 'count', range: 'exact', form: 'count' }, (raw, context): number => {
    const n = raw instanceof Plain && typeof raw.value === 'number' ? raw.value : NaN;
    const low = info.from ?? 1;
    if (Number.isInteger(n) && n >= low && !(info.to !== undefined && n > info.to)) return n;
    const source = raw instanceof Plain ? raw.source : typeof raw === 'string' ? raw : 'a list or map';
    return refuse(context, {
      what: `"${source}" is no count of ${info.means}.`,
      allowed: `A whole number ${info.to === undefined ? `of ${low} or more` : `from ${low} to ${info.to}`}, such as ${info.example}.`,
    });
  });

/** The name of another entry of the book. The engine checks that it is there. */
export const nameOf = (refers: string, info: Pick<KeyInfo, 'means' | 'example'>) =>
  told(text(info), { ...info, refers, form: 'text' });

/** One or several names, written `M1` or `[M1, M2]`. */
export const namesOf = (refers: string, info: Pick<KeyInfo, 'means' | 'example'>) =>
  told(
    z.preprocess((raw) => (Array.isArray(raw) || raw === undefined ? raw : [raw]), z.array(nameOf(refers, info))),
    { ...info, refers, form: 'text', many: true },
  );

/** A shape: keys of one kind of entry. All keys are optional unless said; what is missing is not stated. */
export type Shape = Readonly<Record<string, z.ZodType>>;
export type EntryOf<S extends Shape> = { readonly [K in keyof S]?: z.output<S[K]> };
