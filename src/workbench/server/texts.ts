/** Reads the texts of a book from its folder, and nothing from outside of it. */
import {
  closeSync,
  constants,
  fstatSync,
  openSync,
  readdirSync,
  readSync,
  realpathSync,
  statSync,
  type Dirent,
} from 'node:fs';
import { basename, dirname, join, resolve, sep } from 'node:path';
import { gather } from '../../engine/read/gather.ts';
import { MOST_BYTES } from '../../engine/read/yaml.ts';
import { sha256 } from '../../pack/disk.ts';
import { diskTrouble, Refused } from '../../pack/refused.ts';
import { isTextName } from './names.ts';

export { MOST_BYTES };
export const MOST_FILES = 64;
/** Folders that are looked into; a book that lies among a thousand others is found by what it includes. */
const MOST_FOLDERS = 100;
const MOST_DEPTH = 3;

/** A book's folder, the folder itself and no link to it, and the file to begin with. */
export interface BookAt {
  readonly home: string;
  readonly main: string;
}

export interface Text {
  /** Where it lies, also where a link leads to it. */
  readonly path: string;
  readonly text: string;
  readonly hash: string;
  /** False where it is not UTF-8, so that to write it back would lose something. */
  readonly isExact: boolean;
}

/** Of a file's bytes, as short as makes two alike by chance out of the question. */
export const hashOf = (bytes: Buffer | string): string => sha256(bytes).slice(0, 32);

export const isGone = (error: unknown): boolean =>
  error instanceof Error && 'code' in error && ['ENOENT', 'ENOTDIR', 'ELOOP'].includes(String(error.code));

export const isInside = (home: string, path: string): boolean =>
  path.startsWith(home.endsWith(sep) ? home : home + sep);

/** @throws Refused for an error of the disk, with its reason */
export const refusal = (what: string, error: unknown): unknown => {
  const trouble = diskTrouble(error);
  return trouble === undefined ? error : new Refused(`${what}: ${trouble}.`);
};

/** Neither waits for a pipe that lies there nor holds what is far too long. */
const bytesAt = (path: string, name: string): Buffer | undefined => {
  if (!statSync(path).isFile()) return undefined;
  const file = openSync(path, constants.O_RDONLY | (constants.O_NONBLOCK ?? 0));
  try {
    const stat = fstatSync(file);
    if (!stat.isFile()) return undefined;
    if (stat.size > MOST_BYTES)
      throw new Refused(
        `${name} is longer than 2 MiB, which is no text of a book. Split it, or take it out of the folder.`,
      );
    const bytes = Buffer.alloc(stat.size);
    let length = 0;
    for (let got = -1; got !== 0 && length < bytes.length; length += got)
      got = readSync(file, bytes, length, bytes.length - length, null);
    return bytes.subarray(0, length);
  } finally {
    closeSync(file);
  }
};

/**
 * One text, or nothing where there is none.
 *
 * @throws Refused when it lies outside, is too long or may not be read
 */
export const textAt = ({ home }: BookAt, name: string): Text | undefined => {
  if (!isTextName(name)) return undefined;
  try {
    const path = realpathSync(join(home, name));
    if (!isInside(home, path))
      throw new Refused(`${name} is a link that leads out of the book's folder. Put the file itself there.`);
    const bytes = bytesAt(path, name);
    if (bytes === undefined) return undefined;
    const text = bytes.toString('utf8');
    return { path, text, hash: hashOf(bytes), isExact: bytes.equals(Buffer.from(text, 'utf8')) };
  } catch (error) {
    if (isGone(error)) return undefined;
    throw refusal(`${name} cannot be read`, error);
  }
};

const isBusyElsewhere = (name: string): boolean => name.startsWith('.') || name === 'node_modules';

const entriesOf = (folder: string): readonly Dirent[] => {
  try {
    return readdirSync(folder, { withFileTypes: true }).toSorted((a, b) => (a.name < b.name ? -1 : 1));
  } catch (error) {
    // What may not be looked into holds nothing for the desk.
    if (diskTrouble(error) === undefined) throw error;
    return [];
  }
};

/** Names of texts below a folder, nearest first, and the folders that were looked into. */
const namesBelow = (home: string): { readonly names: readonly string[]; readonly folders: readonly string[] } => {
  const names: string[] = [];
  const folders: string[] = [];
  let level = [''];
  for (let depth = 0; depth <= MOST_DEPTH && level.length > 0; depth++) {
    const below: string[] = [];
    for (const folder of level) {
      if (folders.length >= MOST_FOLDERS || names.length >= MOST_FILES) return { names, folders };
      folders.push(join(home, folder));
      for (const entry of entriesOf(join(home, folder))) {
        const name = folder + entry.name;
        if (entry.isDirectory() && !isBusyElsewhere(entry.name)) below.push(`${name}/`);
        else if ((entry.isFile() || entry.isSymbolicLink()) && isTextName(name)) names.push(name);
      }
    }
    level = below;
  }
  return { names, folders };
};

const orNothing = (read: () => Text | undefined): Text | undefined => {
  try {
    return read();
  } catch (error) {
    if (error instanceof Refused) return undefined;
    throw error;
  }
};

/**
 * Every text that the book takes in, and those beside it that it may yet take in.
 *
 * @throws Refused when one that it takes in cannot be had whole
 */
export const textsOf = (at: BookAt): ReadonlyMap<string, Text> => {
  const texts = new Map<string, Text>();
  const read = (name: string): string | undefined => {
    const text = textAt(at, name);
    if (text) texts.set(name, text);
    if (texts.size > MOST_FILES)
      throw new Refused(`This book takes in more than ${MOST_FILES} files. Join some of them.`);
    return text?.text;
  };
  gather(read, at.main);
  for (const name of namesBelow(at.home).names) {
    if (texts.size >= MOST_FILES) break;
    const text = texts.has(name) ? undefined : orNothing(() => textAt(at, name));
    if (text) texts.set(name, text);
  }
  return texts;
};

/** Folders in which texts of the book lie or may lie, its own first. */
export const foldersOf = ({ home }: BookAt, texts: ReadonlyMap<string, Text>): readonly string[] => [
  ...new Set([...namesBelow(home).folders, ...[...texts.values()].map(({ path }) => dirname(path))]),
];

/**
 * Where a text lies, or would lie.
 *
 * @throws Refused when that is outside, or its folder is not there
 */
export const pathOf = (at: BookAt, name: string): string => {
  const there = textAt(at, name);
  if (there) return there.path;
  try {
    const folder = realpathSync(join(at.home, dirname(name)));
    if (folder === at.home || isInside(at.home, folder)) return join(folder, basename(name));
    throw new Refused(`${name} would lie outside of the book's folder, since a link leads there.`);
  } catch (error) {
    if (isGone(error) && statSync(at.home, { throwIfNoEntry: false }))
      throw new Refused(`There is no folder ${dirname(name)} in the book's folder. Make it, or choose another name.`);
    throw error;
  }
};

/**
 * The place of a book that is there and can be opened.
 *
 * @throws Refused when it is not
 */
export const bookAt = (folder: string, main = 'book.yaml'): BookAt => {
  if (!isTextName(main) || main.includes('/'))
    throw new Refused(`The desk opens texts that end in .yaml or .yml; ${main} is none. Rename it.`);
  try {
    const at = { home: realpathSync(resolve(folder)), main };
    if (!textAt(at, main)) throw new Refused(`There is no ${main} in ${folder}.`);
    return at;
  } catch (error) {
    throw refusal(`${folder} cannot be read`, error);
  }
};
