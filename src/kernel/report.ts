/** Findings and workings as plain data: what sheets, JSON, SARIF and the terminal are made from. */
import type { Dimension } from './quantity/index.ts';
import type { Evidence } from './formula.ts';
import type { Lever, OpenReason, Verdict } from './findings.ts';
import type { Citation } from './values.ts';

/** A number in SI with the text that a reader sees, in the author's unit. */
export interface ShownNumber {
  readonly number: number;
  readonly of: Dimension;
  readonly text: string;
}

/** Line and column count from 1. */
export interface Place {
  readonly file: string;
  readonly line: number;
  readonly column: number;
}

export type Provenance = 'stated' | 'measured' | 'plate' | 'datasheet' | 'table' | 'guess';

/** One input of a worked formula. */
export interface WorkingInput extends ShownNumber {
  readonly symbol: string;
  readonly means: string;
  /** A book path, the index of an earlier entry of the same working, or what fixed the number. */
  readonly from:
    | {
        readonly kind: 'book';
        readonly path: string;
        readonly provenance: Provenance;
        readonly end?: 'low' | 'high' | 'inside';
      }
    | { readonly kind: 'working'; readonly entry: number }
    | { readonly kind: 'constant'; readonly means: string; readonly source?: Citation };
}

/** One formula applied, with every step; in an array, after everything that it uses. */
export interface WorkingEntry extends ShownNumber {
  readonly formula: string;
  readonly symbol: string;
  readonly means: string;
  readonly inputs: readonly WorkingInput[];
  readonly steps: readonly (ShownNumber & {
    readonly symbol: string;
    readonly expression: string;
    readonly within?: number;
  })[];
  readonly assumes: readonly string[];
  readonly source: readonly Citation[];
  readonly checked: readonly Evidence[];
  readonly accuracy: string;
}

/** Which end of which range decided. */
export interface ScenarioEnd extends ShownNumber {
  readonly path: string;
  readonly range: 'spread' | 'doubt';
  readonly end: 'low' | 'high' | 'inside';
}

/** What a remedy does, tried on a copy of the book with every check run again. */
export interface Remedy {
  readonly edits: readonly { readonly path: string; readonly before: string | null; readonly after: string | null }[];
  /** One sentence: what to do. */
  readonly says: string;
  readonly verdict: Verdict;
  readonly percent?: number;
  readonly alsoCures: readonly string[];
  readonly breaks: readonly { readonly key: string; readonly before: Verdict; readonly after: Verdict }[];
}

/** A doubtful fact and what measuring it would do. */
export interface Question {
  readonly path: string;
  /** The range as it stands in the book. */
  readonly stands: string;
  /** Findings that narrowing this fact could settle, and the share of its range for which it does. */
  readonly settles: readonly { readonly key: string; readonly share: number }[];
  /** Findings that it settles with others only: their worst use when it turns out best, all else as it stands. */
  readonly narrows: readonly { readonly key: string; readonly from: number; readonly to: number }[];
  readonly measure?: Measurement;
  readonly place?: Place;
}

/** How a doubtful fact is measured. */
export interface Measurement {
  readonly what: string;
  readonly instrument: string;
  readonly procedure: string;
  /** The error that a careful person reaches with it, for instance '±2 %'. */
  readonly error: string;
  /** Minutes that it takes, for ranking. */
  readonly minutes: number;
}

export interface Acceptance {
  readonly because: string;
  readonly until?: string;
  /** False when it has run out, when the finding got worse, or when its kind cannot be accepted. */
  readonly counts: boolean;
  readonly note?: string;
}

export interface Finding {
  /** Code, designations and mode; never changes meaning. */
  readonly key: string;
  readonly code: string;
  readonly sheet: string;
  readonly designations: readonly string[];
  readonly mode?: string;
  readonly asks: string;
  readonly verdict: Verdict;
  readonly reason?: { readonly kind: OpenReason; readonly text: string };
  /** Facts that are not stated, as paths. */
  readonly missing?: readonly string[];
  readonly sentence: string;
  readonly sense?: 'at-most' | 'at-least' | 'yes-no';
  readonly demand?: ShownNumber;
  readonly limit?: ShownNumber;
  /** Shares of the limit at the worst spread: over the doubtful facts the worst and the best, and the advised share. */
  readonly use?: { readonly worst: number; readonly best: number; readonly advised: number };
  readonly scenario: readonly ScenarioEnd[];
  /** True when an end was found by search inside a range, not by slope. */
  readonly searched: boolean;
  readonly beside: Readonly<Record<string, ShownNumber>>;
  readonly place?: Place;
  /** Paths of the book that the finding used; also those of catalogue and table facts. */
  readonly uses: readonly string[];
  readonly working: readonly WorkingEntry[];
  readonly levers: readonly Lever[];
  readonly remedies?: readonly Remedy[];
  readonly questions?: readonly Question[];
  readonly accepted?: Acceptance;
}
