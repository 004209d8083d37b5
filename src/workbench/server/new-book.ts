/** Makes a folder with a new book in it. */
import { randomBytes } from 'node:crypto';
import { lstatSync, readdirSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { disk as realDisk, type Disk } from '../../pack/disk.ts';
import { Refused } from '../../pack/refused.ts';
import type { Made } from '../desk/folder.ts';
import { isRunning } from './lock.ts';
import { objectionTo } from './names.ts';
import { refusedBy, refuseTexts, type Files } from './save.ts';

const PREFIX = '.gantrybook-new-';
const OWN = new RegExp(`^\\${PREFIX}(\\d{1,10})-[0-9a-f]{16}$`);

/** Takes away what an earlier process was broken off at. */
const sweep = (folder: string, disk: Disk): void => {
  for (const name of readdirSync(folder)) {
    const [, pid] = OWN.exec(name) ?? [];
    if (pid !== undefined && !isRunning(Number(pid)) && lstatSync(join(folder, name)).isDirectory())
      disk.remove(join(folder, name));
  }
};

/**
 * Makes a new book, all of it or nothing.
 *
 * @param shelf folder in which the book's own folder is made
 */
export const makeBook = (shelf: string, name: string, files: Files, disk: Disk = realDisk): Made => {
  const staging = join(shelf, `${PREFIX}${process.pid}-${randomBytes(8).toString('hex')}`);
  const home = join(shelf, name);
  try {
    const objection = objectionTo(name);
    if (objection !== undefined) throw new Refused(objection);
    refuseTexts(files);
    if (!Object.hasOwn(files, 'book.yaml')) throw new Refused('A new book begins with a text named book.yaml.');
    sweep(shelf, disk);
    if (lstatSync(home, { throwIfNoEntry: false }))
      throw new Refused(`${name} is there already. Choose another name; nothing was written.`);
    try {
      for (const [file, text] of Object.entries(files)) {
        disk.makeFolder(dirname(join(staging, file)));
        disk.write(join(staging, file), text);
        disk.settle(dirname(join(staging, file)));
      }
      disk.rename(staging, home);
      disk.settle(shelf);
    } finally {
      disk.remove(staging);
    }
    return { kind: 'made', name };
  } catch (error) {
    return refusedBy(error, `The new book ${name} cannot be made`);
  }
};
