/** Writes texts of a book over those that were seen: each whole, all or none, through a crash at any instant. */
import { randomBytes } from 'node:crypto';
import { accessSync, chmodSync, chownSync, constants, statSync } from 'node:fs';
import { basename, dirname, join, parse } from 'node:path';
import { disk as realDisk, type Disk } from '../../pack/disk.ts';
import { diskTrouble, Refused } from '../../pack/refused.ts';
import { withEndsOf, type Saved, type Seen } from '../desk/folder.ts';
import { besideNames, journalText, recover, wasBrokenOff } from './journal.ts';
import { lockOf } from './lock.ts';
import { isTextName } from './names.ts';
import { hashOf, MOST_BYTES, MOST_FILES, pathOf, textAt, type BookAt } from './texts.ts';

export type Files = Readonly<Record<string, string>>;

/** How long a save waits for another desk's, and how often it looks, in ms. */
const PATIENCE = 3000;
const GLANCE = 15;

interface Change {
  readonly name: string;
  readonly path: string;
  readonly bytes: Buffer;
  /** Hash of what it replaces, or null where nothing stands. */
  readonly before: string | null;
  readonly after: string;
  readonly fresh: string;
  readonly kept: string;
}

/** What somebody does about it, by the code of the error. */
const advice: Readonly<Record<string, string>> = {
  ENOSPC: 'Make room on the disk and save again',
  EDQUOT: 'Make room on the disk and save again',
  EROFS: 'Save it as a new book in a folder where you may write',
  EACCES: 'Save it as a new book in a folder where you may write, or give yourself the right to write here',
  EPERM: 'Save it as a new book in a folder where you may write, or give yourself the right to write here',
  ENOENT: 'Put the folder back, or save it as a new book',
};

/** Says of an error of the disk what it is and what to do; any other is thrown on. */
export const refusedBy = (error: unknown, what: string): { readonly kind: 'refused'; readonly says: string } => {
  if (error instanceof Refused) return { kind: 'refused', says: error.message };
  const trouble = diskTrouble(error);
  if (trouble === undefined) throw error;
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  return { kind: 'refused', says: `${what}: ${trouble}. ${advice[code] ?? 'Save again in a moment'}.` };
};

/**
 * Why texts cannot be a book's, whatever stands in its folder.
 *
 * @throws Refused
 */
export const refuseTexts = (files: Files): void => {
  const names = Object.keys(files);
  if (names.length > MOST_FILES) throw new Refused(`A book has ${MOST_FILES} files at most. Join some of them.`);
  for (const name of names) {
    const text = files[name] ?? '';
    if (!isTextName(name))
      throw new Refused(
        `${JSON.stringify(name)} is no name for a text of a book. A name below its folder that ends in .yaml would do: motors.yaml, parts/motors.yaml.`,
      );
    const bytes = Buffer.from(text, 'utf8');
    if (bytes.length > MOST_BYTES)
      throw new Refused(`${name} is longer than 2 MiB, which is no text of a book. Split it.`);
    if (bytes.toString('utf8') !== text)
      throw new Refused(`${name} holds half of a character, which cannot be saved. Type that character anew.`);
  }
};

type Weighed =
  | { readonly kind: 'changes'; readonly changes: readonly Change[]; readonly seen: Seen }
  | Extract<Saved, { kind: 'conflict' }>;

/** Compares what is to be saved with what stands there. What stands there already, word for word, is saved. */
const weigh = (at: BookAt, files: Files, seen: Seen, id: string): Weighed => {
  const beside = besideNames(id);
  const changes: Change[] = [];
  const theirs: Record<string, string | null> = {};
  const now: Record<string, string> = {};
  const hashes: Record<string, string> = {};
  for (const [name, given] of Object.entries(files)) {
    const there = textAt(at, name);
    const bytes = Buffer.from(there ? withEndsOf(there.text, given) : given, 'utf8');
    const after = hashOf(bytes);
    hashes[name] = after;
    if (there?.hash === after) continue;
    const before = there?.hash ?? null;
    if (before !== (Object.hasOwn(seen, name) ? seen[name] : null)) {
      theirs[name] = there?.text ?? null;
      if (there) now[name] = there.hash;
      continue;
    }
    if (there && !there.isExact)
      throw new Refused(
        `${name} is not UTF-8, so that saving would lose what stands there. Save it as UTF-8 in an editor first.`,
      );
    const path = there?.path ?? pathOf(at, name);
    if (there) accessSync(path, constants.W_OK);
    const count = changes.length;
    const names = { fresh: beside.fresh(count), kept: beside.kept(count) };
    const folder = dirname(path);
    changes.push({
      name,
      path,
      bytes,
      before,
      after,
      fresh: join(folder, names.fresh),
      kept: join(folder, names.kept),
    });
  }
  if (Object.keys(theirs).length > 0) return { kind: 'conflict', theirs, seen: now };
  const twice = changes.find(({ path }, i) => changes.findIndex((one) => one.path === path) !== i);
  if (twice) throw new Refused(`${twice.name} is a second name of a file that is saved too. Save one of them.`);
  return { kind: 'changes', changes, seen: hashes };
};

/** Does something that the disk may refuse without changing the outcome of a save. */
const orTrouble = <T>(work: () => T): T | undefined => {
  try {
    return work();
  } catch (error) {
    if (diskTrouble(error) === undefined) throw error;
    return undefined;
  }
};

/** The new file is its owner's and may be read by whom the old one was, as far as the system lets us. */
const likeBefore = ({ path, fresh, before }: Change): void => {
  if (before === null) return;
  const { mode, uid, gid } = statSync(path);
  for (const take of [() => chownSync(fresh, uid, gid), () => chmodSync(fresh, mode)]) orTrouble(take);
};

/** Puts back what was replaced, the last first. */
const undo = (done: readonly Change[], why: unknown, disk: Disk): void => {
  const stuck: string[] = [];
  for (const { name, path, kept, before } of done.toReversed())
    try {
      if (before === null) disk.remove(path);
      else disk.rename(kept, path);
    } catch (error) {
      if (diskTrouble(error) === undefined) throw error;
      stuck.push(name);
    }
  if (stuck.length > 0)
    throw new Refused(
      `Only ${stuck.join(', ')} could be written, and not the rest: ${diskTrouble(why) ?? 'the disk failed'}. Save again, so that the files agree.`,
    );
};

const replace = (changes: readonly Change[], folders: Iterable<string>, disk: Disk): void => {
  const done: Change[] = [];
  try {
    for (const change of changes) {
      if (change.before !== null) disk.keep(change.path, change.kept);
      disk.rename(change.fresh, change.path);
      done.push(change);
    }
    for (const folder of folders) disk.settle(folder);
  } catch (error) {
    undo(done, error, disk);
    throw error;
  }
};

/** Takes away what a save needed beside the files. What cannot be taken away is for the next desk, and changes no outcome. */
const clear = (paths: readonly string[], disk: Disk): void => {
  for (const path of paths) orTrouble(() => disk.remove(path));
};

/** Whether somebody wrote into a file between the last look at it and now: its other name shows even what came after. */
const wasTouched = ({ before, kept }: Change, disk: Disk): boolean => {
  const bytes = before === null ? undefined : orTrouble(() => disk.read(kept));
  return bytes !== undefined && hashOf(bytes) !== before;
};

/** Leaves what somebody wrote at the last instant beside the file, under a name that is seen. */
const leaveBeside = ({ path, kept }: Change, id: string, disk: Disk): void => {
  const { dir, name, ext } = parse(path);
  orTrouble(() => disk.rename(kept, join(dir, `${name}-written-meanwhile-${id.slice(0, 8)}${ext}`)));
};

/** Puts everything back as it was before a save, with what others wrote into it meanwhile. What is no longer ours stays. */
const giveBack = (changes: readonly Change[], disk: Disk): void => {
  for (const { path, kept, before, after } of changes.toReversed())
    orTrouble(() => {
      const bytes = disk.read(path);
      if (bytes === undefined || hashOf(bytes) !== after) return;
      if (before === null) disk.remove(path);
      else disk.rename(kept, path);
    });
};

const writeChanges = (at: BookAt, files: Files, seen: Seen, disk: Disk): Saved => {
  const id = randomBytes(8).toString('hex');
  const first = weigh(at, files, seen, id);
  if (first.kind === 'conflict') return first;
  const { changes } = first;
  if (changes.length === 0) return { kind: 'saved', seen: first.seen };
  const beside = besideNames(id);
  const journal = join(at.home, beside.journal);
  const draft = join(at.home, beside.draft);
  try {
    for (const change of changes) {
      disk.write(change.fresh, change.bytes.toString('utf8'));
      likeBefore(change);
    }
    // Writing took its time; what came in between is somebody's work.
    const again = weigh(at, files, seen, id);
    if (again.kind === 'conflict') return again;
    const folders = new Set(changes.map(({ path }) => dirname(path)));
    if (changes.length > 1) {
      const entries = changes.map(({ name, fresh, before, after }) => ({
        name,
        fresh: basename(fresh),
        before,
        after,
      }));
      disk.write(draft, journalText(entries));
      for (const folder of folders) disk.settle(folder);
      disk.rename(draft, journal);
      disk.settle(at.home);
    }
    replace(changes, folders, disk);
    if (!changes.some((change) => wasTouched(change, disk))) return { kind: 'saved', seen: first.seen };
    giveBack(changes, disk);
    const after = weigh(at, files, seen, id);
    if (after.kind === 'conflict') return after;
    throw new Refused('Another program is just writing this book. Save again in a moment.');
  } finally {
    for (const change of changes) if (wasTouched(change, disk)) leaveBeside(change, id, disk);
    clear([journal, draft, ...changes.flatMap(({ fresh, kept }) => [fresh, kept])], disk);
  }
};

/** Tries until another desk has given the lock back. */
const whenFree = async (folder: string): Promise<() => void> => {
  const until = Date.now() + PATIENCE;
  for (;;) {
    const release = lockOf(folder);
    if (release) return release;
    if (Date.now() > until) throw new Refused('Another desk is just saving this book. Save again in a moment.');
    await new Promise((resolve) => setTimeout(resolve, GLANCE));
  }
};

/**
 * Saves texts of a book.
 *
 * @param seen hashes of these files when they were read; without one a file must not be there
 */
export const save = async (at: BookAt, files: Files, seen: Seen, disk: Disk = realDisk): Promise<Saved> => {
  try {
    refuseTexts(files);
    const release = await whenFree(at.home);
    try {
      if (wasBrokenOff(at)) recover(at, disk);
      return writeChanges(at, files, seen, disk);
    } finally {
      release();
    }
  } catch (error) {
    return refusedBy(error, 'The book cannot be written, and is as it was');
  }
};

/** Ends what an earlier desk was broken off at. Where nothing can be written there is nothing to end. */
export const tidy = async (at: BookAt, disk: Disk = realDisk): Promise<void> => {
  try {
    const release = await whenFree(at.home);
    try {
      recover(at, disk);
    } finally {
      release();
    }
  } catch (error) {
    if (!(error instanceof Refused) && diskTrouble(error) === undefined) throw error;
  }
};
