/** What can be measured at the bench. */
import type { Dimension, Formula } from '../kernel/index.ts';

/** One number that is read off an instrument. All numbers are SI. */
export interface BenchReading {
  readonly of: Dimension;
  readonly means: string;
  readonly example: string;
  readonly instrument: string;
  /** What the instrument shows at least and at most. */
  readonly least: number;
  readonly most: number;
  /** Limit of its error: a share of the true value, and a rest that does not go with it. */
  readonly share: number;
  readonly rest: number;
  /** A number of things that are counted. */
  readonly whole?: true;
}

/** A number that method or instrument leave open, and between which ends it surely lies. */
export interface BenchOpen {
  readonly low: number;
  readonly high: number;
  readonly means: string;
}

/** How a fact follows from one set of readings. */
export type BenchResult =
  | {
      readonly by: 'formula';
      /** Takes the readings by their names. It must reach its ends at ends of what it takes. */
      readonly formula: Formula;
      /** Inputs that stand in the book: a path from the top, or `.key` beside the fact. */
      readonly book?: Readonly<Record<string, string>>;
      readonly open?: Readonly<Record<string, BenchOpen>>;
    }
  /** A share of trials; its ends are those of the exact interval. */
  | { readonly by: 'trials'; readonly hits: string; readonly trials: string; readonly confidence: number };

/** A measurement that narrows one doubtful fact. */
export interface BenchTest {
  /** Kebab-case, unique over all trades. */
  readonly name: string;
  /** Path of the fact, with `*` for names of entries; the last of them is what is put on the bench, else the first key. */
  readonly fact: string;
  /** Kinds or drives that the entry may have; any when left out. */
  readonly variants?: readonly string[];
  readonly of: Dimension;
  readonly title: string;
  readonly readings: Readonly<Record<string, BenchReading>>;
  readonly gives: BenchResult;
  /** How often to measure, and how often at most. */
  readonly times: readonly [advised: number, most: number];
  readonly procedure: readonly string[];
  readonly cautions: readonly string[];
  /** What of the book is needed at the bench: paths as in `book`. */
  readonly shows?: readonly string[];
}

type Entries = Readonly<Record<string, unknown>>;

export const isEntries = (x: unknown): x is Entries => typeof x === 'object' && x !== null && !Array.isArray(x);

/** Paths in a tree that a pattern with `*` fits, as keys, each with the name that the last `*` stands for. */
export const benchPaths = (
  tree: unknown,
  pattern: string,
  has: (entry: unknown) => boolean = () => true,
): readonly { readonly keys: readonly string[]; readonly name: string }[] => {
  const parts = pattern.split('.');
  const last = parts.lastIndexOf('*');
  let found: readonly { readonly here: unknown; readonly keys: readonly string[] }[] = [{ here: tree, keys: [] }];
  parts.forEach((part, i) => {
    found = found.flatMap(({ here, keys }) => {
      const entries = isEntries(here) ? here : {};
      const names = part === '*' ? Object.keys(entries).filter((name) => i !== last || has(entries[name])) : [part];
      return names.map((name) => ({ here: entries[name], keys: [...keys, name] }));
    });
  });
  return found.map(({ keys }) => ({ keys, name: keys[Math.max(last, 0)]! }));
};
