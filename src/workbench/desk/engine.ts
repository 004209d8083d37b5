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
  /** Both uses on one ruler, as safe markup; absent where neither has a percentage. */
  readonly ruler?: string;
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

/**
 * Elements that can be taken hold of carry `data-key` (a finding) or `data-path` (a fact of the book); links lead to ids of
 * the same sheet, `#finding-…`, `#working-…`, `#step-…`.
 */
export interface SheetView {
  readonly name: string;
  /**
   * Ids: `title`, `strip`, `worst`, `cautions`, `zone-B` …, `title-block`; those that would be empty are left out. The questions
   * in front come by themselves, see `questionsInFront`; they stand behind the cautions.
   */
  readonly parts: readonly SheetPart[];
  /** Studies that were left out; where they belong the sheet says that they are still being worked out. */
  readonly awaits: number;
}

/** Where a fact stands in the text. */
export interface FactPlace {
  readonly file: string;
  readonly from: number;
  readonly to: number;
  /** False when the fact itself does not stand in the text: then this is the nearest thing around it. */
  readonly exact: boolean;
}

/** What a key is about, shown where the pointer or the caret rests. */
export interface KeyHelp {
  /** Of the key, or of the entry that has this name. */
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
  /** Why the edits cannot stand in the text; then nothing moved and no file changed. */
  readonly problem?: string;
  readonly moved: readonly Moved[];
  /** The changed files, whole. */
  readonly files: Readonly<Record<string, string>>;
}

export interface FormulaCard {
  readonly name: string;
  /** What it gives, in words. */
  readonly title: string;
  /** Name of the sheet that it belongs to. */
  readonly sheet: string;
  /** Symbol of what it gives, as plain text. */
  readonly symbol: string;
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
    /** The values that it may have, in words. */
    readonly range: string;
    /** Used when nothing is given. */
    readonly otherwise?: string;
    readonly problem?: string;
  }[];
  readonly title: string;
  /** Why these inputs, each good by itself, give no result. */
  readonly problem?: string;
  /** Working, source and evidence as safe markup; absent while an input is wanting. */
  readonly markup?: string;
}

export interface BenchCard {
  /** What is put on the bench. */
  readonly name: string;
  readonly test: string;
  /** What the test measures. */
  readonly what: string;
  /** What the book has for it, and where that comes from. */
  readonly stands: string;
  /** Path of the fact. */
  readonly path: string;
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
    /** Which instrument, what it shows, and its error. */
    readonly instrument: string;
  }[];
  readonly what: string;
  readonly stands: string;
  readonly path: string;
  /** How often to measure, and how often at most. */
  readonly times: readonly [advised: number, most: number];
}

/** What readings do to the book; nothing is written until somebody takes it. */
export interface BenchResult {
  /** `time` counts from 0 the set of readings; a problem of the whole test has no name of a reading: it is ''. */
  readonly problems: readonly { readonly name: string; readonly time?: number; readonly says: string }[];
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
  /**
   * Versions only grow, also from one book to the next. `afresh` says that this is another book, against which nothing has moved.
   */
  readonly lay: (book: BookText, version: number, afresh?: boolean) => Promise<LaidBook | UnreadBook | undefined>;
  /** Quick: what of a sheet follows from its findings alone (`title`, `strip`, `worst`), to be shown before the rest is there. */
  readonly front: (version: number, name: string) => Promise<readonly SheetPart[] | undefined>;
  /**
   * `folded` leaves the workings empty, which are most of a sheet: each `details.working` then has the numbers of its steps in
   * `data-steps` and is filled by `unfold` when somebody opens it. Without it everything is drawn, as for paper.
   * `early` leaves the studies of the sheet out, which take longest, so that it is there soon.
   */
  readonly sheet: (version: number, name: string, folded?: boolean, early?: boolean) => Promise<SheetView | undefined>;
  /** What goes behind the summary of one folded working, as numbered on that sheet. */
  readonly unfold: (version: number, name: string, key: string) => Promise<string | undefined>;
  /** Most telling first. */
  readonly questions: (version: number) => Promise<readonly Question[] | undefined>;
  /** The three in front as safe markup, for the whole set or for one sheet; '' when nothing is worth measuring. */
  readonly questionsInFront: (version: number, name?: string) => Promise<string | undefined>;
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
