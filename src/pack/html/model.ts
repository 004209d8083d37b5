import type { SheetDocument } from '../../contract/document.ts';
import type { Finding, Question } from '../../kernel/report.ts';

export interface BookFacts {
  readonly title: string;
  readonly revision: string;
  readonly about?: string;
  /** Name of the book's file. */
  readonly file: string;
}

/** What ties a made file to the book that it came from. No time: the same book makes the same bytes. */
export interface Stamp {
  readonly revision: string;
  /** Twelve hexadecimal digits of the book's content hash. */
  readonly hash: string;
  /** Hash of the facts that this file used. */
  readonly factsHash: string;
}

export interface SourceFacts {
  readonly title: string;
  readonly edition?: string;
  readonly status: 'published' | 'secondary' | 'derived' | 'memory';
  /** Where in it, or where it is to be had. */
  readonly where: string;
}

export interface Revision {
  readonly revision: string;
  readonly text: string;
}

export interface Sibling {
  readonly name: string;
  readonly title: string;
  readonly href: string;
}

interface Common {
  readonly book: BookFacts;
  readonly stamp: Stamp;
  readonly revisions?: readonly Revision[];
  /** The other files of the set, in order. */
  readonly siblings: readonly Sibling[];
  readonly paper?: 'portrait' | 'landscape';
}

export interface SheetInput extends Common {
  readonly sheet: {
    readonly name: string;
    readonly number: number;
    /** Sheets in the set. */
    readonly of: number;
    readonly title: string;
    /** The question that the sheet answers. */
    readonly asks: string;
  };
  readonly document: SheetDocument;
  readonly findings: readonly Finding[];
  /** Most telling first; three are shown in front. */
  readonly questions: readonly Question[];
  /** Every source cited on the sheet, by id. */
  readonly sources: Readonly<Record<string, SourceFacts>>;
}

export interface IndexInput extends Common {
  readonly sheets: readonly {
    readonly number: number;
    readonly title: string;
    readonly asks: string;
    readonly href: string;
    readonly findings: readonly Finding[];
  }[];
  readonly questions: readonly Question[];
  /** Other files of the pack. */
  readonly files?: readonly { readonly name: string; readonly href: string; readonly means: string }[];
}
