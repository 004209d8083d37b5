/** What the desk asks of the engine, wherever that runs: in a worker of the page, or in a test. Plain data only. */
import type { Use } from '../../contract/document.ts';
import type { Edit, Place, Question, Remedy, Verdict } from '../../kernel/index.ts';

/** A book's folder as text: every file that the book may take in, by name. */
export interface BookText {
  /** Name of the file to begin with. */
  readonly main: string;
  readonly files: Readonly<Record<string, string>>;
}

/** Something that is wrong with the text, at its place. Offsets count UTF-16 units from 0. */
export interface TextProblem {
  readonly place: Place;
  readonly from: number;
  readonly to: number;
  /** What is wrong, what is allowed, what to do. */
  readonly says: string;
  readonly keepsFromReading: boolean;
}

/** A finding as it stands in lists and strips. */
export interface FindingCard {
  readonly key: string;
  readonly code: string;
  readonly sheet: string;
  readonly verdict: Verdict;
  readonly sentence: string;
  readonly use?: Use;
  readonly percent?: string;
  readonly place?: Place;
  /** Accepted by the author, so that it does not count against the book. */
  readonly accepted: boolean;
  readonly hasLevers: boolean;
}

/** How a finding stood before an edit and how it stands now. */
export interface Moved {
  readonly key: string;
  readonly sheet: string;
  readonly sentence: string;
  readonly before?: { readonly verdict: Verdict; readonly use?: Use };
  readonly after?: { readonly verdict: Verdict; readonly use?: Use };
}

export interface SheetCard {
  readonly name: string;
  readonly number: number;
  readonly title: string;
  readonly asks: string;
}

export interface LaidBook {
  readonly ok: true;
  readonly title: string;
  readonly revision: string;
  readonly stamp: string;
  readonly sheets: readonly SheetCard[];
  readonly findings: readonly FindingCard[];
  /** What moved against the book that was laid before, if that was the same book's earlier text. */
  readonly moved: readonly Moved[];
  readonly warnings: readonly TextProblem[];
  /** Milliseconds of work. */
  readonly took: number;
}

export interface UnreadBook {
  readonly ok: false;
  readonly problems: readonly TextProblem[];
}

/** One stretch of a sheet as safe markup. What did not change has the same markup, so that it need not be drawn again. */
export interface SheetPart {
  readonly id: string;
  readonly markup: string;
}

export interface SheetView {
  readonly name: string;
  /** The strip, cautions, findings, figures, tables, sources; in order. Title block last. */
  readonly parts: readonly SheetPart[];
}

/** Where a fact stands in the text. */
export interface FactPlace {
  readonly file: string;
  readonly from: number;
  readonly to: number;
}

/** What a key is about, shown where the pointer or the caret rests. */
export interface KeyHelp {
  readonly path: string;
  readonly means: string;
  readonly unit?: string;
  readonly example?: string;
  readonly range?: 'spread' | 'doubt';
  readonly from: number;
  readonly to: number;
}

export interface Suggestion {
  readonly text: string;
  readonly means: string;
  /** Replaces what stands from here on. */
  readonly from: number;
}

/** A number of the book that can be taken hold of on a sheet. */
export interface Handle {
  readonly path: string;
  readonly means: string;
  readonly text: string;
  readonly place?: FactPlace;
}

/** What edits would do, tried on a copy. */
export interface Trial {
  readonly moved: readonly Moved[];
  /** The changed files, whole. */
  readonly files: Readonly<Record<string, string>>;
}

export interface FormulaCard {
  readonly name: string;
  readonly title: string;
  readonly sheet: string;
}

/** Text with a number and a unit, by symbol or name. */
export type FormulaInputs = Readonly<Record<string, string>>;

export interface FormulaPage {
  readonly name: string;
  readonly takes: readonly {
    readonly name: string;
    readonly symbol: string;
    readonly means: string;
    readonly example: string;
    readonly problem?: string;
  }[];
  /** Working, source and evidence as safe markup; absent while an input is wanting. */
  readonly markup?: string;
}

export interface BenchCard {
  /** What is put on the bench. */
  readonly name: string;
  readonly test: string;
  readonly what: string;
  readonly stands: string;
}

export interface BenchPage {
  readonly name: string;
  readonly test: string;
  readonly instrument: string;
  readonly procedure: readonly string[];
  readonly cautions: readonly string[];
  readonly asks: readonly {
    readonly name: string;
    readonly means: string;
    readonly unit: string;
    readonly example: string;
  }[];
}

/** What readings do to the book; nothing is written until somebody takes it. */
export interface BenchResult {
  readonly problems: readonly { readonly name: string; readonly says: string }[];
  readonly says: readonly string[];
  readonly trial?: Trial;
}

/** The five facts that a first book is made of. */
export interface FirstFacts {
  readonly title: string;
  /** Text with a unit, as the person wrote it. */
  readonly width: string;
  readonly depth: string;
  readonly height: string;
  readonly players: string;
  readonly motor: string;
  readonly supply: string;
  readonly board: string;
}

export interface FirstChoice {
  readonly name: keyof FirstFacts;
  readonly asks: string;
  readonly because: string;
  /** Words to choose from, each with its meaning; free text when there are none. */
  readonly words: readonly { readonly word: string; readonly means: string }[];
  readonly example: string;
}

/** The engine as the desk sees it. A call about an earlier text than the one laid last is dropped: it gives undefined. */
export interface Engine {
  readonly lay: (book: BookText, version: number) => Promise<LaidBook | UnreadBook | undefined>;
  readonly sheet: (version: number, name: string) => Promise<SheetView | undefined>;
  /** Most telling first. */
  readonly questions: (version: number) => Promise<readonly Question[] | undefined>;
  /** Working of one finding as safe markup; each input carries the path of its fact in `data-path`. */
  readonly working: (version: number, key: string) => Promise<string | undefined>;
  readonly remedies: (version: number, key: string) => Promise<readonly Remedy[] | undefined>;
  readonly trial: (version: number, edits: readonly Edit[]) => Promise<Trial | undefined>;
  readonly placeOf: (version: number, path: string) => Promise<FactPlace | undefined>;
  readonly handle: (version: number, path: string) => Promise<Handle | undefined>;
  /** Works on a text that may not be readable yet. */
  readonly suggest: (book: BookText, file: string, offset: number) => Promise<readonly Suggestion[]>;
  readonly help: (book: BookText, file: string, offset: number) => Promise<KeyHelp | undefined>;
  readonly formulas: (search: string) => Promise<readonly FormulaCard[]>;
  readonly formula: (name: string, inputs: FormulaInputs) => Promise<FormulaPage | undefined>;
  readonly bench: (version: number) => Promise<readonly BenchCard[] | undefined>;
  readonly benchPage: (version: number, name: string, test: string) => Promise<BenchPage | undefined>;
  readonly benchResult: (
    version: number,
    name: string,
    test: string,
    readings: Readonly<Record<string, readonly string[]>>,
  ) => Promise<BenchResult | undefined>;
  readonly firstChoices: () => Promise<readonly FirstChoice[]>;
  /** A book that reads well, or what is wrong with an answer. */
  readonly firstBook: (
    facts: Partial<FirstFacts>,
  ) => Promise<BookText | { readonly problems: Readonly<Partial<Record<keyof FirstFacts, string>>> }>;
}
