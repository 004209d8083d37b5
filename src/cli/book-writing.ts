/** Writes changed files of a book over those that were read, and over no others. */
import { chmodSync, lstatSync, readFileSync, realpathSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { disk as realDisk, type Disk } from '../pack/disk.ts';
import { diskTrouble, Refused } from '../pack/refused.ts';

interface Change {
  readonly name: string;
  /** The file itself, also where a link leads to it. */
  readonly path: string;
  readonly fresh: string;
  readonly kept: string;
}

/** @throws Refused when a file is not what was read any more */
const refuseChanged = (folder: string, files: ReadonlyMap<string, string>): void => {
  for (const [name, text] of files) {
    const now = readFileSync(join(folder, name));
    if (!now.equals(Buffer.from(text, 'utf8')))
      throw new Refused(
        `${name} was changed by something else in the meantime, and was left as it is. Nothing was written: run this again.`,
      );
  }
};

/**
 * Replaces files of a book, each whole and all or none, when the whole book still is as it was read.
 *
 * @param files texts of all files as they were read, by name in the folder
 * @param texts of those that change
 * @throws Refused when the book was changed in the meantime, or the disk does not let it
 */
export const writeBook = (
  folder: string,
  files: ReadonlyMap<string, string>,
  texts: ReadonlyMap<string, string>,
  disk: Disk = realDisk,
): void => {
  const changes: Change[] = [];
  const done: Change[] = [];
  try {
    refuseChanged(folder, files);
    for (const [name, text] of texts) {
      const path = realpathSync(join(folder, name));
      const beside = join(dirname(path), `.${basename(path)}.${process.pid}`);
      const change = { name, path, fresh: `${beside}.new`, kept: `${beside}.old` };
      for (const left of [change.fresh, change.kept]) disk.remove(left);
      changes.push(change);
      disk.write(change.fresh, text);
      chmodSync(change.fresh, lstatSync(path).mode);
      disk.keep(path, change.kept);
    }
    refuseChanged(folder, files);
    for (const change of changes) {
      disk.rename(change.fresh, change.path);
      done.push(change);
    }
    for (const at of new Set(changes.map(({ path }) => dirname(path)))) disk.settle(at);
  } catch (error) {
    for (const { path, kept } of done) disk.rename(kept, path);
    const trouble = diskTrouble(error);
    if (trouble === undefined) throw error;
    throw new Refused(`The book in ${folder} cannot be written, and is as it was: ${trouble}.`);
  } finally {
    for (const { fresh, kept } of changes) for (const left of [fresh, kept]) disk.remove(left);
  }
};

/** A name in a folder that nothing has yet: `readings-M1.yaml`, `readings-M1-2.yaml`. */
export const freeName = (folder: string, stem: string, ending: string, disk: Disk = realDisk): string => {
  const names = new Set(disk.list(folder) ?? []);
  const plain = stem.replaceAll(/[^\p{L}\p{N}._-]+/gu, '-');
  for (let more = 1; ; more++) {
    const name = `${plain}${more === 1 ? '' : `-${more}`}${ending}`;
    if (!names.has(name)) return join(folder, name);
  }
};
