/** Finds a book where the command line says, reads it and checks it. */
import { closeSync, existsSync, fstatSync, openSync, readSync, realpathSync, statSync } from 'node:fs';
import { basename, dirname, join, resolve, sep } from 'node:path';
import { checkFiles, houseOn, type House, type Machine, type ReadFile } from '../app/index.ts';
import { diskTrouble, Refused } from '../pack/refused.ts';
import type { Terminal } from './terminal.ts';
import { counting } from './text.ts';

const MAIN = 'book.yaml';
/** Far more than a book may have; what is longer is refused without being held in memory. */
const ENOUGH = 2 * 1024 * 1024 + 1024;

export interface BookPlace {
  readonly folder: string;
  readonly main: string;
  /** As it was typed, for commands that are proposed. */
  readonly typed: string;
}

const cannotRead = (path: string, error: unknown): unknown => {
  const trouble = diskTrouble(error);
  return trouble === undefined ? error : new Refused(`${path} cannot be read: ${trouble}.`);
};

const kindOf = (path: string): 'file' | 'folder' | 'other' | undefined => {
  try {
    const stat = statSync(path);
    return stat.isFile() ? 'file' : stat.isDirectory() ? 'folder' : 'other';
  } catch (error) {
    if (error instanceof Error && 'code' in error && (error.code === 'ENOENT' || error.code === 'ENOTDIR'))
      return undefined;
    throw cannotRead(path, error);
  }
};

/** @throws Refused when there is no book */
export const findBook = (typed: string | undefined): BookPlace => {
  const path = typed ?? '.';
  const kind = kindOf(path);
  if (kind === 'file') return { folder: dirname(resolve(path)), main: basename(path), typed: path };
  if (kind === 'folder') {
    if (kindOf(join(path, MAIN)) === 'file') return { folder: resolve(path), main: MAIN, typed: typed ?? '' };
    const other = ['book.yml', 'Book.yaml', 'book.YAML'].find((name) => existsSync(join(path, name)));
    throw new Refused(
      other
        ? `${typed ?? 'This folder'} holds ${other} and no ${MAIN}. Rename it, or name the file itself.`
        : `${typed ?? 'This folder'} holds no ${MAIN}. Name a book's folder or file, or begin one: gantrybook new my-machine --from five-facts`,
    );
  }
  throw new Refused(
    kind === 'other'
      ? `${path} is neither a file nor a folder.`
      : `There is no ${path}. Name a book's folder or file, or begin one: gantrybook new my-machine --from five-facts`,
  );
};

const textOf = (path: string): string => {
  const file = openSync(path, 'r');
  try {
    const bytes = Buffer.alloc(Math.min(fstatSync(file).size, ENOUGH));
    let length = 0;
    for (let got = -1; got !== 0 && length < bytes.length; length += got)
      got = readSync(file, bytes, length, bytes.length - length, null);
    return bytes.toString('utf8', 0, length);
  } finally {
    closeSync(file);
  }
};

/** Reads files of a folder, and none that a link in it leads to outside. */
export const readerOf = ({ folder, main }: BookPlace): ReadFile => {
  const home = realpathSync(folder);
  return (name) => {
    const path = join(folder, name);
    if (kindOf(path) !== 'file') return undefined;
    if (name !== main && !realpathSync(path).startsWith(home.endsWith(sep) ? home : home + sep)) return undefined;
    try {
      return textOf(path);
    } catch (error) {
      throw cannotRead(path, error);
    }
  };
};

/** Today as acceptances mean it, or the day that SOURCE_DATE_EPOCH sets so that a run can be repeated. */
export const todayIn = (env: Readonly<Record<string, string | undefined>>): string => {
  const set = Number(env['SOURCE_DATE_EPOCH'] || NaN);
  const day = Number.isFinite(set) ? new Date(set * 1000) : new Date();
  return day.toISOString().slice(0, 10);
};

export interface OpenBook {
  readonly place: BookPlace;
  readonly house: House;
  readonly machine: Machine;
}

/** Every problem of a book that cannot be read, for a terminal and for programs. */
export class Unreadable extends Error {
  override readonly name = 'Unreadable';
  constructor(readonly problems: readonly { readonly frame: string }[]) {
    super('the book cannot be read');
  }
}

/**
 * Reads and checks the book that the command line names.
 *
 * @throws Refused when there is none, Unreadable when it cannot be read
 */
export const openBook = (
  typed: string | undefined,
  terminal: Terminal,
  house = houseOn({ today: todayIn(terminal.around.env) }),
): OpenBook => {
  const place = findBook(typed);
  const checked = checkFiles(readerOf(place), place.main, house);
  if (!checked.ok) throw new Unreadable(checked.problems);
  for (const { frame } of checked.warnings) terminal.complain(...terminal.frame(frame), '');
  return { place, house, machine: checked.machine };
};

/** What is said of a book that cannot be read. */
export const complainOf = ({ problems }: Unreadable, terminal: Terminal): void => {
  for (const { frame } of problems) terminal.complain(...terminal.frame(frame), '');
  terminal.complain(`${counting(problems.length, 'problem')}; nothing was checked and nothing was written.`);
};
