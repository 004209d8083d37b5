/** What a trade is: keys of the book, facts it tells, checks, studies and a sheet. The engine knows nothing else of it. */
import type { Citation, Edit, Finding, Formula, Measurement, Outcome, Provenance, Value } from '../kernel/index.ts';
import type { BenchTest } from './bench.ts';
import type { SheetDocument } from './document.ts';
import type { Shape } from './schema.ts';
import type { Task } from './services.ts';
import type { Seen } from './view.ts';

/** A typed name of a fact. `key` is the entry that it is about, for instance an axis. */
export interface FactToken<T> {
  readonly name: string;
  /** Never present; carries the type. */
  readonly type?: T;
}
export const factToken = <T>(name: string): FactToken<T> => ({ name });

/** What a calculation may ask for, in one scenario. */
export interface Context<B> {
  readonly book: Seen<B>;
  readonly get: <T>(token: FactToken<T>, key: string) => T;
  /**
   * Solves x = f(x) between two values: a true loop of the machine, such as a warm winding whose resistance heats it further.
   * Throws NoSolution when there is no crossing, NotConverged when the tolerance is not reached.
   */
  readonly loop: (loop: Loop) => Value;
}

export interface Loop {
  readonly name: string;
  readonly from: Value;
  readonly most: Value;
  /** Relative to `most − from`. */
  readonly tolerance: number;
  readonly next: (x: Value) => Value;
  /** True where more put in never gives less back: the lowest closing value is then reached from below without a scan. */
  readonly rising?: true;
  /** Why the machine has no working point when the loop does not close. */
  readonly otherwise: string;
}

export interface Provider<B = never> {
  readonly token: FactToken<unknown>;
  readonly run: (context: Context<B>, key: string) => unknown;
  /** For which entries the fact exists, so that it can be listed with the book's own facts. */
  readonly keys?: (book: Seen<B>) => readonly string[];
}
export const provide = <B, T>(
  token: FactToken<T>,
  run: (context: Context<B>, key: string) => T,
  keys?: (book: Seen<B>) => readonly string[],
): Provider<B> => (keys ? { token, run, keys } : { token, run });

/** What a check is about: designations for its key, the place in the book, and the mode when it is about one. */
export interface Subject {
  readonly designations: readonly string[];
  readonly at: string;
  readonly mode?: string;
}

export interface Check<B = never> {
  /** `TRADE-123`; never reused for another question. */
  readonly code: string;
  readonly asks: string;
  /** A finding that guards people cannot be accepted away. */
  readonly neverAccepted?: true;
  readonly subjects: (book: Seen<B>) => readonly Subject[];
  /** Null when the question does not arise for the subject. */
  readonly run: (context: Context<B>, subject: Subject) => Outcome | null;
}

/** A fact that follows from others by a table, added where the book is silent; stays a doubt until it is measured. */
export interface Fill {
  readonly path: string;
  readonly text: string;
  readonly provenance: Provenance;
  readonly source?: Citation;
  readonly means: string;
}

/** Keys that a trade adds. `entries` is keyed `kind` for all entries of a kind, or `kind/variant` for one variant. */
export interface SchemaPart {
  readonly top?: Shape;
  readonly entries?: Readonly<Record<string, Shape>>;
}

/** The machine under question, for studies: change a copy, ask again. */
export interface Asker {
  readonly findings: readonly Finding[];
  /** The author's text at a path, or null. */
  readonly textAt: (path: string) => string | null;
  /** SI ends of a quantity at a path, or null. */
  readonly rangeAt: (path: string) => { readonly low: number; readonly high: number; readonly text: string } | null;
  /** Settings that the fact at a path can take, in SI, when the entry's part lists them; else null. */
  readonly positionsAt: (path: string) => readonly number[] | null;
  /** A number as the author would write it at that path. */
  readonly write: (path: string, number: number, figures?: number) => string;
  /** Findings of a copy with these edits. `only` limits the checks to the named keys. Throws nothing of the book's making. */
  readonly ask: (edits: readonly Edit[], only?: readonly string[]) => readonly Finding[];
  /** Names of catalogue and book parts of a kind. */
  readonly partsOf: (kind: string) => readonly string[];
  readonly random: () => number;
}

/** A longer calculation: yields partial results, is seeded, can be dropped at any yield. */
export interface Study<Arguments = never, Result = unknown> {
  readonly name: string;
  readonly run: (asker: Asker, args: Arguments) => Generator<Result, Result, void>;
}

/** What a sheet is made from. `work` evaluates a fact at the stated middle of every range, for figures and tables. */
export interface SheetContext<B> extends Context<B> {
  readonly findings: readonly Finding[];
  readonly show: (value: Value) => string;
  readonly study: <A, R>(study: Study<A, R>, args: A) => R;
  /** The value, or why there is none, in words for the sheet: facts not stated, outside a range, no solution. */
  readonly attempt: <T>(
    run: () => T,
  ) => { readonly ok: true; readonly value: T } | { readonly ok: false; readonly why: string };
  /** Runs something at the ends of all ranges behind it and gives the least and greatest number seen. */
  readonly ends: (run: () => Value) => { readonly low: number; readonly high: number };
}

/** A file of the pack besides the sheet: rows for a CSV, or text. */
export interface MadeFile {
  readonly name: string;
  readonly rows: readonly (readonly string[])[];
}

/** A model handed to other trades, re-created anywhere from its name and plain parameters. */
export interface ModelToken<P, M> {
  readonly name: string;
  readonly type?: (parameters: P) => M;
}
export interface Model<P = never, M = unknown> {
  readonly token: ModelToken<P, M>;
  readonly create: (parameters: P) => M;
}

export interface Discipline<B = never> {
  readonly name: string;
  /** Place in the drawing set. */
  readonly number: number;
  readonly title: string;
  readonly asks: string;
  readonly schema: SchemaPart;
  readonly fills?: (book: FillView) => readonly Fill[];
  readonly facts: readonly Provider<B>[];
  readonly models?: readonly Model[];
  readonly tasks?: readonly Task[];
  readonly checks: readonly Check<B>[];
  /** What can be measured of its facts. */
  readonly bench?: readonly BenchTest[];
  readonly studies: readonly Study[];
  readonly formulas: readonly Formula[];
  readonly sheet: (context: SheetContext<B>) => SheetDocument;
  readonly makes?: (context: SheetContext<B>) => readonly MadeFile[];
  readonly cautions: readonly string[];
}

/** The read book before any scenario, for fills: tells texts and SI ends by path. */
export interface FillView {
  readonly names: (kind: string) => readonly string[];
  readonly text: (path: string) => string | undefined;
  readonly ends: (path: string) => readonly [number, number] | undefined;
  readonly has: (path: string) => boolean;
}

export type { Measurement };
