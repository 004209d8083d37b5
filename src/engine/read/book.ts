/** Book text to a checked book, or everything that is wrong with it. */
import { Plain } from '../../contract/index.ts';
import type { Place } from '../../kernel/index.ts';
import { fitted } from './fit.ts';
import { gather, type Gathered } from './gather.ts';
import { problemsOf, spanOf, type Held } from './issues.ts';
import { placeAt, problemAt, under, type BookProblem } from './problem.ts';
import { danglingNames, sharedDesignations } from './references.ts';
import type { BookSchema } from './schema.ts';
import type { Spot } from './unfold.ts';
import { isMap } from './walk.ts';

/** Leaves: Quantity, text, number, true or false; maps and lists of them. */
export type Tree = { readonly [key: string]: unknown };

/** A book as its author wrote it: nothing filled in, nothing from a catalogue. */
export interface Book {
  readonly tree: Tree;
  readonly main: string;
  /** Texts of the files, as read; the main one first. */
  readonly files: ReadonlyMap<string, string>;
  /** Where the value at a dotted path stands, or else the nearest thing around it. */
  readonly placeOf: (path: string) => Place | undefined;
  /** What the author wrote at a path: of a fact `{ is, from }` its value, of a list in brackets the whole. */
  readonly textAt: (path: string) => string | null;
}

export type ReadResult =
  | { readonly ok: true; readonly book: Book; readonly warnings: readonly BookProblem[] }
  | { readonly ok: false; readonly problems: readonly BookProblem[] };

export interface ReadOptions {
  /** Names that may be used besides the book's own, for instance of catalogue parts, by kind of entry. */
  readonly known?: (kind: string) => readonly string[];
}

/** A book of a later format would only be misread. */
const tooNew = ({ raw, spots }: Gathered, schema: BookSchema): BookProblem | undefined => {
  const given = raw['book'];
  const spot = spots.get('book');
  const reads = schema.formatNumber;
  if (!(given instanceof Plain) || typeof given.value !== 'number' || !Number.isInteger(given.value) || !spot)
    return undefined;
  if (given.value <= reads) return undefined;
  return problemAt(
    spot,
    `This book is written for a newer Gantrybook (format ${given.source}; this one reads ${reads}).`,
    'Read it with a newer Gantrybook.',
    { path: 'book' },
  );
};

const isSettled = (settled: ReadonlySet<string>, path: string): boolean => {
  if (settled.size === 0) return false;
  if (settled.has('')) return true;
  return path.split('.').some((_, i, all) => settled.has(all.slice(0, i + 1).join('.')));
};

/** In the order of the files and lines, each thing said once, no warning where an error stands. */
const inOrder = (problems: readonly BookProblem[], files: readonly string[]): readonly BookProblem[] => {
  const at = ({ place }: BookProblem): string => `${place.file}:${place.line}:${place.column}`;
  const errors = new Set(problems.filter(({ severity }) => severity === 'error').map(at));
  const said = new Set<string>();
  return problems
    .filter((problem) => {
      const key = `${at(problem)} ${problem.what}`;
      if (said.has(key) || (problem.severity === 'warning' && errors.has(at(problem)))) return false;
      said.add(key);
      return true;
    })
    .toSorted(
      (a, b) =>
        files.indexOf(a.place.file) - files.indexOf(b.place.file) ||
        a.place.line - b.place.line ||
        a.place.column - b.place.column,
    );
};

const flowText = ({ source, start, end }: Spot): string | null => {
  const text = source.text.slice(start, end);
  return /^[[{]/.test(text) ? text : null;
};

const textOf = (spots: ReadonlyMap<string, Spot>, path: string): string | null => {
  const spot = spots.get(path);
  const is = spots.get(under(path, 'is'));
  if (is?.scalar) return textOf(spots, under(path, 'is'));
  if (!spot) {
    // One name may stand without the brackets of a list.
    const above = path.endsWith('.0') ? spots.get(path.slice(0, -2)) : undefined;
    return above?.scalar ? textOf(spots, path.slice(0, -2)) : null;
  }
  if (!spot.scalar) return flowText(spot);
  const { value, source } = spot.scalar;
  return typeof value === 'string' ? value : (source ?? null) || null;
};

const bookOf = (tree: Tree, main: string, { files, spots }: Gathered): Book => ({
  tree,
  main,
  files,
  placeOf: (path) => {
    const span = spots.get(under(path, 'is'))?.scalar ? spanOf(spots, under(path, 'is')) : spanOf(spots, path);
    return span && placeAt(span.source, span.start);
  },
  textAt: (path) => textOf(spots, path),
});

/**
 * Reads a book and all files that it includes. Says everything that is wrong at once.
 * @param read gives the text of a file in the folder of the book, decoded from UTF-8, or undefined when it is not there
 * @param main name of the first file, as `read` knows it
 */
export const readBook = (
  read: (name: string) => string | undefined,
  main: string,
  schema: BookSchema,
  { known = () => [] }: ReadOptions = {},
): ReadResult => {
  const gathered = gather(read, main);
  const { spots, files } = gathered;
  const refuse = (problems: readonly BookProblem[]): ReadResult => ({
    ok: false,
    problems: inOrder(problems, [...files.keys()]).filter(({ severity }) => severity === 'error'),
  });
  if (!gathered.whole) return refuse(gathered.problems);
  const newer = tooNew(gathered, schema);
  if (newer) return refuse([newer]);

  const misfits: BookProblem[] = [];
  const settled = new Set(gathered.settled);
  const fit = fitted(schema.zod, gathered.raw, '', (path, what, allowed) => {
    const span = spanOf(spots, path);
    if (span && !isSettled(settled, path)) misfits.push(problemAt(span, what, allowed, { path }));
    settled.add(path);
  });
  const raw = isMap(fit) ? fit : {};
  const held: Held = { schema: schema.zod, raw, spots };
  const parsed = schema.zod.safeParse(raw);
  const found = [
    ...(parsed.success ? [] : parsed.error.issues.flatMap((issue) => problemsOf(held, issue))),
    ...danglingNames(held, known),
    ...sharedDesignations(held),
  ];
  const problems = [...gathered.problems, ...misfits, ...found.filter(({ path }) => !isSettled(settled, path ?? ''))];
  if (!parsed.success || problems.some(({ severity }) => severity === 'error')) {
    const refused = refuse(problems);
    if (!refused.ok && refused.problems.length > 0) return refused;
    throw new Error('a book was refused without a reason');
  }
  return {
    ok: true,
    book: bookOf(parsed.data as Tree, main, gathered),
    warnings: inOrder(problems, [...files.keys()]),
  };
};
