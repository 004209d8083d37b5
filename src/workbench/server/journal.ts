/**
 * What a save of several files leaves for whoever comes after it was broken off. From the moment the journal stands the save is
 * decided and is brought to its end; before that it never was.
 */
import { lstatSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import * as z from 'zod';
import type { Disk } from '../../pack/disk.ts';
import { Refused } from '../../pack/refused.ts';
import { isTextName } from './names.ts';
import { foldersOf, hashOf, isGone, pathOf, textAt, textsOf, type BookAt, type Text } from './texts.ts';

const PREFIX = '.gantrybook-save-';
const OWN = new RegExp(`^\\${PREFIX}[0-9a-f]{16}(\\.\\d+\\.(new|old)|\\.journal|\\.draft)$`);

/** Names of what one save leaves beside the files while it is at work. */
export const besideNames = (id: string) => ({
  fresh: (count: number): string => `${PREFIX}${id}.${count}.new`,
  kept: (count: number): string => `${PREFIX}${id}.${count}.old`,
  journal: `${PREFIX}${id}.journal`,
  draft: `${PREFIX}${id}.draft`,
});

const entry = z.strictObject({
  name: z.string().refine(isTextName),
  fresh: z.string().regex(OWN),
  before: z.string().nullable(),
  after: z.string(),
});
const journal = z.strictObject({ entries: z.array(entry).max(1000) });

export type JournalEntry = z.infer<typeof entry>;

export const journalText = (entries: readonly JournalEntry[]): string => JSON.stringify({ entries });

const plainFile = (path: string): Buffer | undefined => {
  try {
    return lstatSync(path).isFile() ? readFileSync(path) : undefined;
  } catch (error) {
    if (isGone(error)) return undefined;
    throw error;
  }
};

const readJournal = (path: string): readonly JournalEntry[] => {
  try {
    return journal.parse(JSON.parse(plainFile(path)?.toString('utf8') ?? '')).entries;
  } catch {
    // Ours are whole, since they are renamed into place: this is none.
    return [];
  }
};

/** Puts one file into its place unless somebody has changed what stands there. */
const finish = (at: BookAt, { name, fresh, before, after }: JournalEntry, path: string, disk: Disk): void => {
  const from = join(dirname(path), fresh);
  const bytes = plainFile(from);
  if ((textAt(at, name)?.hash ?? null) === before && bytes && hashOf(bytes) === after) disk.rename(from, path);
};

const ownIn = (folder: string): readonly string[] => readdirSync(folder).filter((name) => OWN.test(name));

/** Whether a save was broken off here, as far as the book's own folder shows. */
export const wasBrokenOff = ({ home }: BookAt): boolean => ownIn(home).length > 0;

/** Where a file of a journal lies; nothing for one that no save of ours could have written. */
const placeOf = (at: BookAt, { name }: JournalEntry): string | undefined => {
  try {
    return pathOf(at, name);
  } catch (error) {
    if (error instanceof Refused) return undefined;
    throw error;
  }
};

const textsThere = (at: BookAt): ReadonlyMap<string, Text> => {
  try {
    return textsOf(at);
  } catch (error) {
    if (error instanceof Refused) return new Map();
    throw error;
  }
};

/** Brings what was decided to its end and takes away what was left. Only for whoever has the lock. */
export const recover = (at: BookAt, disk: Disk): void => {
  const folders = new Set(foldersOf(at, textsThere(at)));
  for (const name of ownIn(at.home).filter((one) => one.endsWith('.journal'))) {
    const entries = readJournal(join(at.home, name));
    for (const one of entries) {
      const path = placeOf(at, one);
      if (path === undefined) continue;
      finish(at, one, path, disk);
      folders.add(dirname(path));
    }
    for (const folder of folders) disk.settle(folder);
    disk.remove(join(at.home, name));
  }
  for (const folder of folders) for (const name of ownIn(folder)) disk.remove(join(folder, name));
};
