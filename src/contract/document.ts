/**
 * The one document model: a trade says what its sheet holds and in which order; renderers say how it looks.
 * Texts are plain; a renderer escapes them.
 */
import type { Verdict } from '../kernel/index.ts';

/** Use of a limit as drawn on the use scale: shares of the limit, 1 at the limit. */
export interface Use {
  readonly worst: number;
  readonly best: number;
  readonly advised: number;
  readonly verdict: Verdict;
}

export type Cell =
  | string
  | {
      readonly text: string;
      readonly use?: Use;
      readonly verdict?: Verdict;
      readonly finding?: string;
      readonly path?: string;
    };

export interface Column {
  readonly head: string;
  readonly align: 'left' | 'number';
}

export type Block =
  | { readonly kind: 'heading'; readonly text: string }
  | { readonly kind: 'paragraph'; readonly text: string }
  | {
      readonly kind: 'figure';
      /** Kebab-case, unique on the sheet. */
      readonly name: string;
      /** Complete, self-contained SVG element. */
      readonly svg: string;
      readonly caption: string;
      /** The same in words, for those who cannot see it. */
      readonly alt: string;
    }
  | {
      readonly kind: 'table';
      readonly name: string;
      readonly caption: string;
      readonly columns: readonly Column[];
      readonly rows: readonly (readonly Cell[])[];
      readonly note?: string;
    }
  /** Every finding of the sheet with mark, sentence and use scale, worst first, grouped by verdict. */
  | { readonly kind: 'findings' }
  /** The working of the named findings, step by step; all of the sheet's when no keys are given. */
  | { readonly kind: 'working'; readonly keys?: readonly string[] }
  | { readonly kind: 'cautions'; readonly texts: readonly string[] };

export interface SheetDocument {
  readonly blocks: readonly Block[];
}
