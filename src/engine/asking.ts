/** The machine under question: studies change a copy of the book and ask again. */
import { Quantity, type Asker } from '../contract/index.ts';
import { readQuantity, seeded, show, type Edit, type Finding } from '../kernel/index.ts';
import type { Book, Tree } from './read/book.ts';
import type { BookSchema } from './read/schema.ts';
import { at, edited, quantityAt, type CatalogueRow, type Snapshot } from './snapshot.ts';

/** A book with edits, or why they cannot stand in it. */
export const tried = (book: Tree, edits: readonly Edit[], schema: BookSchema): Tree | string => {
  try {
    return edited(book, edits, schema);
  } catch (error) {
    if (error instanceof RangeError) return error.message;
    throw error;
  }
};

export interface AskingParts {
  readonly book: Book;
  readonly snapshot: Snapshot;
  readonly findings: readonly Finding[];
  readonly schema: BookSchema;
  readonly rows: readonly CatalogueRow[];
  /** Findings of a changed book; `only` limits them to the named keys. */
  readonly findingsOf: (tree: Tree, only: ReadonlySet<string> | undefined) => readonly Finding[];
}

/** What is known of a finding where the change could not even be written: nothing, and why. */
const unwritten = ({ use: _use, demand: _demand, limit: _limit, ...finding }: Finding, why: string): Finding => ({
  ...finding,
  verdict: 'open',
  reason: { kind: 'outside', text: why },
  sentence: `This could not be tried: ${why}.`,
  working: [],
});

export const askerFor = ({ book, snapshot, findings, schema, rows, findingsOf }: AskingParts): Asker => ({
  findings,
  textAt: (path) => book.textAt(path),
  rangeAt: (path) => {
    const leaf = quantityAt(path, snapshot);
    return leaf ? { low: leaf.low, high: leaf.high, text: leaf.text } : null;
  },
  positionsAt: (path) => {
    const list = schema.keyInfo(path, snapshot.tree)?.positions;
    const part = list === undefined ? undefined : at(snapshot.tree, `${path.slice(0, path.lastIndexOf('.'))}.part`);
    const found = typeof part === 'string' ? at(snapshot.tree, `parts.${part}.${list}`) : undefined;
    return Array.isArray(found) ? found.flatMap((one) => (one instanceof Quantity ? [one.low] : [])) : null;
  },
  write: (path, number, figures = 2) => {
    const leaf = quantityAt(path, snapshot);
    if (!leaf) throw new RangeError(`no quantity stands at ${path}`);
    // Digits that any reader takes, in the unit as its author spells it.
    const digits = show(number, leaf.of, leaf.unit, { figures, ascii: true, plusUnit: false });
    const spelt = `${digits} ${leaf.unit.text}`;
    const reading = readQuantity(spelt, leaf.of);
    return reading.ok && reading.lo === reading.hi ? spelt : show(number, leaf.of, leaf.unit, { figures, ascii: true });
  },
  ask: (edits, only) => {
    const keys = only && new Set(only);
    const tree = tried(book.tree, edits, schema);
    if (typeof tree !== 'string') return findingsOf(tree, keys);
    return findings.filter(({ key }) => !keys || keys.has(key)).map((finding) => unwritten(finding, tree));
  },
  partsOf: (kind) => {
    const own = Object.entries((book.tree['parts'] ?? {}) as Readonly<Record<string, { readonly kind?: string }>>);
    return [
      ...new Set([
        ...own.filter(([, part]) => part.kind === kind).map(([name]) => name),
        ...rows.filter((row) => row.kind === kind).map((row) => row.name),
      ]),
    ];
  },
  random: seeded(1),
});

/** The same for one study: its random numbers do not depend on who asked before. */
export const forStudy = (asker: Asker): Asker => ({ ...asker, random: seeded(1) });

/** Runs a study to its end, or until it is cancelled. */
export function finish<T>(study: Generator<T, T, void>): T;
export function finish<T>(study: Generator<T, T, void>, cancelled: (() => boolean) | undefined): T | undefined;
export function finish<T>(study: Generator<T, T, void>, cancelled?: () => boolean): T | undefined {
  for (;;) {
    if (cancelled?.()) {
      // Lets the study put away what it holds.
      study.return(undefined as T);
      return undefined;
    }
    const step = study.next();
    if (step.done) return step.value;
  }
}
