/** `gantrybook compare`: what another book changes, in consequences and not in lines. */
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { version } from '../app/version.ts';
import { causesOf } from '../engine/compare-causes.ts';
import { compareMachines } from '../engine/compare.ts';
import { tourOf, type Pair } from '../engine/compare-tour.ts';
import { bookWords } from '../pack/report.ts';
import { Refused } from '../pack/refused.ts';
import { complainOf, openBook, Unreadable, type OpenBook } from './books.ts';
import { sheetNamed } from './check.ts';
import type { TourInput } from './compare-tour.ts';
import { GOOD, UNREADABLE, type ExitCode } from './exit.ts';
import { programFolder } from './program-folder.ts';
import { progressOn } from './progress.ts';
import type { Terminal } from './terminal.ts';

export interface CompareOptions {
  readonly json?: boolean;
  /** Every finding and fact, in place of one screen. */
  readonly all?: boolean;
  /** Every finding of one trade. */
  readonly sheet?: string;
  /** The folder for the sheet of the comparison. */
  readonly into?: string;
}

/** Both books, or nothing after the problems of each have been told. */
const bothBooks = (typed: readonly [string, string], terminal: Terminal): readonly [OpenBook, OpenBook] | undefined => {
  const books: OpenBook[] = [];
  let unreadable = false;
  for (const one of typed) {
    try {
      // The same house for both, so that equal numbers are worked out once.
      books.push(openBook(one, terminal, books[0]?.house));
    } catch (error) {
      if (!(error instanceof Unreadable)) throw error;
      complainOf(error, terminal);
      unreadable = true;
    }
  }
  const [from, to] = books;
  return unreadable || !from || !to ? undefined : [from, to];
};

/** What moves from one book to the other, and by which changes. */
export const comparisonOf = ([from, to]: readonly [OpenBook, OpenBook], terminal: Terminal): TourInput => {
  const { schema } = from.house;
  const comparison = compareMachines(from.machine, to.machine, (path) => schema.keyInfo(path)?.means ?? path);
  const progress = progressOn(terminal.around.err);
  try {
    const causes = causesOf(from.machine, to.machine, comparison.moved, schema, (key) =>
      progress.step(`which change stands behind ${key}`),
    );
    return { from, to, comparison, tour: tourOf(from.machine, to.machine, comparison, causes) };
  } finally {
    progress.done();
  }
};

/** The comparison as data: what moved, and the changes that stand behind each verdict. */
const dataOf = ({ from, to, comparison, tour }: TourInput): object => {
  const side = ({ machine }: OpenBook) => ({ ...bookWords(machine), stamp: machine.stamp });
  const pairs = new Map(tour.pairs.map((pair) => [pair.key, pair]));
  const causeOf = ({ cause }: Pick<Pair, 'cause'>) =>
    cause ? { because: { changes: cause.by.map(({ name }) => name), enough: cause.enough } } : {};
  return {
    gantrybook: '1',
    version,
    before: side(from),
    after: side(to),
    changes: tour.changes.map(({ name, means, paths, before, after }) => ({ name, means, paths, before, after })),
    ...comparison,
    moved: comparison.moved.map((one) => {
      const pair = pairs.get(one.key);
      return { ...one, ...(pair ? { kind: pair.kind, ...causeOf(pair) } : {}) };
    }),
  };
};

const writeSheet = async (input: TourInput, into: string, terminal: Terminal): Promise<void> => {
  const [{ comparisonSheet, isComparison, COMPARISON }, { disk, typefaceFrom, writeWhole, diskTrouble }] =
    await Promise.all([import('../pack/html/compare.ts'), import('../pack/index.ts')]);
  const path = join(into, COMPARISON);
  try {
    const there = disk.read(path);
    if (there && !isComparison(there.toString('utf8')))
      throw new Refused(
        `${path} was not made by this program and would be lost. Move it, or name another folder after --into.`,
      );
    disk.makeFolder(into);
  } catch (error) {
    const trouble = diskTrouble(error);
    if (trouble === undefined) throw error;
    throw new Refused(`The comparison cannot be written into ${into}: ${trouble}.`);
  }
  const { from, to, comparison, tour } = input;
  const typeface = typefaceFrom(fileURLToPath(programFolder('fonts')));
  writeWhole(
    path,
    comparisonSheet(
      { before: from.machine, after: to.machine, disciplines: to.house.disciplines, comparison, tour },
      typeface,
    ),
  );
  terminal.complain(terminal.text(`Made ${path}.`));
};

export const compare = async (
  a: string,
  b: string,
  { json = false, all = false, sheet, into }: CompareOptions,
  terminal: Terminal,
): Promise<ExitCode> => {
  if (json && (all || sheet !== undefined))
    throw new Refused('--json holds everything; --all and --sheet are for reading: use one of them.');
  const books = bothBooks([a, b], terminal);
  if (!books) return UNREADABLE;
  const only = sheet === undefined ? undefined : sheetNamed(sheet, books[1].house);
  const input = comparisonOf(books, terminal);
  if (json) terminal.print(JSON.stringify(dataOf(input), undefined, 2));
  else if (all || only) {
    const { inFull } = await import('./compare-full.ts');
    terminal.print(...inFull(input, terminal, only));
  } else {
    const { tourScreen } = await import('./compare-tour.ts');
    terminal.print(...tourScreen(input, terminal));
  }
  if (into !== undefined) await writeSheet(input, into, terminal);
  return GOOD;
};
