/** The few things that writing a pack asks of a disk, so that a test can let any one of them go wrong. */
import { createHash } from 'node:crypto';
import {
  closeSync,
  copyFileSync,
  existsSync,
  fsyncSync,
  linkSync,
  lstatSync,
  mkdirSync,
  openSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeSync,
} from 'node:fs';
import { dirname, resolve } from 'node:path';

export interface Disk {
  /** Names in a folder, or nothing when there is none. */
  readonly list: (folder: string) => readonly string[] | undefined;
  /** Bytes of a plain file, or nothing when there is none. A link is not followed. */
  readonly read: (path: string) => Buffer | undefined;
  readonly makeFolder: (path: string) => void;
  /** Writes a file and waits until it is on the disk. */
  readonly write: (path: string, text: string) => void;
  /** A second name for a file, or a copy where the disk knows no such thing. */
  readonly keep: (path: string, as: string) => void;
  readonly rename: (from: string, to: string) => void;
  readonly remove: (path: string) => void;
  /** Waits until the names in a folder are on the disk. */
  readonly settle: (folder: string) => void;
}

const isCode = (error: unknown, ...codes: readonly string[]): boolean =>
  error instanceof Error && 'code' in error && codes.includes(String(error.code));

const write = (path: string, text: string): void => {
  const file = openSync(path, 'wx');
  try {
    const bytes = Buffer.from(text, 'utf8');
    for (let done = 0; done < bytes.length;) done += writeSync(file, bytes, done);
    fsyncSync(file);
  } finally {
    closeSync(file);
  }
};

const settle = (folder: string): void => {
  // A folder cannot be opened on every system; there the rename alone has to do.
  try {
    const handle = openSync(folder, 'r');
    try {
      fsyncSync(handle);
    } finally {
      closeSync(handle);
    }
  } catch (error) {
    if (!isCode(error, 'EISDIR', 'EPERM', 'EACCES', 'EINVAL')) throw error;
  }
};

/** Node's own way to make all folders of a path tries for ever where a folder is there and cannot hold another. */
const makeFolder = (path: string): void => {
  try {
    mkdirSync(path);
  } catch (error) {
    if (isCode(error, 'EEXIST') && statSync(path).isDirectory()) return;
    if (!isCode(error, 'ENOENT') || dirname(path) === path || existsSync(dirname(path))) throw error;
    makeFolder(dirname(path));
    mkdirSync(path);
  }
};

export const disk: Disk = {
  list: (folder) => {
    try {
      return readdirSync(folder);
    } catch (error) {
      if (isCode(error, 'ENOENT')) return undefined;
      throw error;
    }
  },
  read: (path) => {
    try {
      return lstatSync(path).isFile() ? readFileSync(path) : undefined;
    } catch (error) {
      if (isCode(error, 'ENOENT', 'ENOTDIR')) return undefined;
      throw error;
    }
  },
  makeFolder: (path) => makeFolder(resolve(path)),
  write,
  keep: (path, as) => {
    try {
      linkSync(path, as);
    } catch (error) {
      if (!isCode(error, 'EPERM', 'ENOTSUP', 'EOPNOTSUPP', 'EMLINK', 'ENOSYS')) throw error;
      copyFileSync(path, as);
    }
  },
  rename: renameSync,
  remove: (path) => rmSync(path, { recursive: true, force: true }),
  settle,
};

export const sha256 = (bytes: Buffer | string): string => createHash('sha256').update(bytes).digest('hex');
