/**
 * Puts a pack into its folder. Everything is written and on the disk before the first file is replaced; the manifest goes last.
 * What is broken off before that leaves the earlier pack as it was; what is broken off later is told from the manifest.
 */
import { basename, dirname, join, resolve } from 'node:path';
import { disk as realDisk, sha256, type Disk } from './disk.ts';
import {
  isPlainName,
  MANIFEST,
  manifestText,
  PACK_FORMAT,
  readManifest,
  type Manifest,
  type ManifestFile,
} from './manifest.ts';
import { diskTrouble, Refused } from './refused.ts';

/** A file of a pack before it is written. */
export interface PackFile {
  readonly name: string;
  readonly text: string;
  readonly sheet?: string;
  readonly factsHash?: string;
}

export interface Pack {
  readonly version: string;
  readonly book: Manifest['book'];
  readonly stamp: Manifest['stamp'];
  readonly files: readonly PackFile[];
}

export type PackState =
  | { readonly state: 'none' }
  | { readonly state: 'complete'; readonly manifest: Manifest }
  /** `which` are the files that are missing or are not those that the manifest names. */
  | { readonly state: 'incomplete'; readonly which: readonly string[]; readonly manifest?: Manifest };

/** Folders in which a pack is being written begin so; the number of the writing process follows. */
const STAGING = '.gantrybook-pack-';

const stagingIn = (names: readonly string[]): readonly string[] => names.filter((name) => name.startsWith(STAGING));

/** What a replaced file is called while it may still have to be put back. */
const keptAs = (name: string): string => `before.${name}`;

const manifestIn = (folder: string, disk: Disk, name = MANIFEST): Manifest | undefined => {
  const bytes = disk.read(join(folder, name));
  return bytes && readManifest(bytes.toString('utf8'));
};

const amiss = (folder: string, files: readonly ManifestFile[], disk: Disk): string[] =>
  files
    .filter(({ name, sha256: wanted }) => {
      const bytes = disk.read(join(folder, name));
      return !bytes || sha256(bytes) !== wanted;
    })
    .map(({ name }) => name);

/**
 * What stands in a folder: no pack, a whole one, or one that was broken off or changed since.
 *
 * @param folder where a pack may be
 */
export const readPack = (folder: string, disk: Disk = realDisk): PackState => {
  const names = disk.list(folder) ?? [];
  const manifest = manifestIn(folder, disk);
  if (!manifest) {
    const begun = stagingIn(names).length > 0 || names.includes(MANIFEST);
    return begun ? { state: 'incomplete', which: [MANIFEST] } : { state: 'none' };
  }
  const which = amiss(folder, manifest.files, disk);
  return which.length > 0 ? { state: 'incomplete', which, manifest } : { state: 'complete', manifest };
};

/** The process that is, or was, writing there. */
const writerOf = (staging: string): number => Number.parseInt(staging.slice(STAGING.length), 10);

const isRunning = (pid: number): boolean => {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return error instanceof Error && 'code' in error && error.code === 'EPERM';
  }
};

/** What earlier packs put there, whole or broken off: by name, the hashes that the file may have. */
const ownFiles = (folder: string, names: readonly string[], disk: Disk): ReadonlyMap<string, ReadonlySet<string>> => {
  const broken = stagingIn(names).map((name) => join(folder, name));
  const manifests = [
    manifestIn(folder, disk),
    ...broken.flatMap((at) => [manifestIn(at, disk), manifestIn(at, disk, keptAs(MANIFEST))]),
  ];
  const own = new Map<string, Set<string>>();
  for (const manifest of manifests.filter((one) => one !== undefined)) {
    own.set(MANIFEST, new Set());
    for (const file of manifest.files) own.set(file.name, (own.get(file.name) ?? new Set()).add(file.sha256));
  }
  return own;
};

/** Takes away a file that an earlier pack made, unless somebody has changed it since. */
const removeOwn = (path: string, hashes: ReadonlySet<string>, disk: Disk): void => {
  const bytes = disk.read(path);
  if (bytes && hashes.has(sha256(bytes))) disk.remove(path);
};

const refuseOthers = (
  folder: string,
  pack: Pack,
  names: readonly string[],
  own: ReadonlyMap<string, unknown>,
): void => {
  const here = basename(resolve(folder));
  const plain = names.filter((name) => !name.startsWith('.'));
  const isPack = own.size > 0 || stagingIn(names).length > 0;
  if (!isPack && plain.length > 0)
    throw new Refused(`${here} is not empty and holds no pack. Name a new folder, or an empty one, after --into.`);
  const wanted = new Set([MANIFEST, ...pack.files.map(({ name }) => name)]);
  const taken = plain.filter((name) => wanted.has(name) && !own.has(name));
  if (taken.length > 0)
    throw new Refused(
      `${taken.join(', ')} in ${here} was not made by this program and would be lost. Move it, or name another folder after --into.`,
    );
  for (const pid of stagingIn(names).map(writerOf)) {
    if (pid !== process.pid && Number.isInteger(pid) && isRunning(pid))
      throw new Refused(`Another pack is being written into ${here}, by process ${pid}. Wait until it is done.`);
  }
};

const freshName = (present: readonly string[]): string => {
  const name = `${STAGING}${process.pid}`;
  for (let more = 0; ; more++) {
    const fresh = more === 0 ? name : `${name}.${more}`;
    if (!present.includes(fresh)) return fresh;
  }
};

const manifestOf = (pack: Pack): Manifest => ({
  gantrybook: { pack: PACK_FORMAT, version: pack.version },
  book: pack.book,
  stamp: pack.stamp,
  files: pack.files.map(({ name, text, sheet, factsHash }) => ({
    name,
    ...(sheet === undefined ? {} : { sheet }),
    bytes: Buffer.byteLength(text, 'utf8'),
    sha256: sha256(text),
    ...(factsHash === undefined ? {} : { factsHash }),
  })),
});

/** Replaces files one by one, and puts all of them back when one cannot be replaced. */
const replace = (folder: string, staging: string, names: readonly string[], disk: Disk): void => {
  const done: { readonly name: string; readonly kept: string | undefined }[] = [];
  try {
    for (const name of names) {
      const to = join(folder, name);
      const kept = disk.read(to) ? join(staging, keptAs(name)) : undefined;
      if (kept !== undefined) disk.keep(to, kept);
      disk.rename(join(staging, name), to);
      done.push({ name, kept });
    }
  } catch (error) {
    for (const { name, kept } of done.toReversed()) {
      const to = join(folder, name);
      if (kept === undefined) disk.remove(to);
      else disk.rename(kept, to);
    }
    throw error;
  }
};

/**
 * Writes a pack into a folder, in place of an earlier one.
 *
 * @param folder new, empty, or with a pack in it; files in it that no pack made are left alone
 * @returns what the folder held before
 * @throws Refused when the folder holds something else, or the disk does not let it
 */
export const writePack = (folder: string, pack: Pack, disk: Disk = realDisk): PackState => {
  const names = pack.files.map(({ name }) => name);
  if (new Set(names).size < names.length || !names.every((name) => isPlainName(name) && name !== MANIFEST))
    throw new TypeError(`a pack cannot hold these files: ${names.join(', ')}`);
  try {
    const present = disk.list(folder) ?? [];
    const before = readPack(folder, disk);
    const own = ownFiles(folder, present, disk);
    refuseOthers(folder, pack, present, own);

    const staging = join(folder, freshName(present));
    disk.makeFolder(folder);
    disk.makeFolder(staging);
    try {
      // First here and last there: a pack that is broken off says by it which files are its own.
      disk.write(join(staging, MANIFEST), manifestText(manifestOf(pack)));
      for (const { name, text } of pack.files) disk.write(join(staging, name), text);
      disk.settle(staging);
      replace(folder, staging, [...names, MANIFEST], disk);
    } catch (error) {
      disk.remove(staging);
      throw error;
    }
    disk.settle(folder);
    for (const [name, hashes] of own) if (!names.includes(name)) removeOwn(join(folder, name), hashes, disk);
    for (const left of stagingIn(disk.list(folder) ?? [])) disk.remove(join(folder, left));
    return before;
  } catch (error) {
    const trouble = diskTrouble(error);
    if (trouble === undefined) throw error;
    throw new Refused(`The pack cannot be written into ${folder}: ${trouble}.`);
  }
};

/** Writes one file so that it is there whole or not at all. */
export const writeWhole = (path: string, text: string, disk: Disk = realDisk): void => {
  const beside = join(dirname(resolve(path)), `.${basename(path)}.${process.pid}`);
  try {
    disk.remove(beside);
    disk.write(beside, text);
    disk.rename(beside, resolve(path));
  } catch (error) {
    disk.remove(beside);
    const trouble = diskTrouble(error);
    if (trouble === undefined) throw error;
    throw new Refused(`${path} cannot be written: ${trouble}.`);
  }
};
