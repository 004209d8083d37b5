import { existsSync, readFileSync, utimesSync, writeFileSync } from 'node:fs';
import { hostname } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it, vi } from 'vitest';
import { LOCK, lockOf } from '../lock.ts';
import { save } from '../save.ts';
import { bookAt, hashOf } from '../texts.ts';
import { book, filesIn, scratch } from './scratch.ts';

const shelf = scratch();
afterAll(shelf.remove);

const files = { 'book.yaml': book() };
const edit = { 'book.yaml': book('# more\n') };
const seen = { 'book.yaml': hashOf(book()) };
/** No process has this number: it is beyond what a system gives. */
const NOBODY = 2 ** 31 - 7;
/** In seconds. */
const HOUR = 3600;

/** A folder in which a lock lies, and how old that is. */
const locked = (says: string, age = 0): string => {
  const folder = shelf.folder({ ...files, [LOCK]: says });
  const at = Date.now() / 1000 - age;
  utimesSync(join(folder, LOCK), at, at);
  return folder;
};

describe('the lock', () => {
  it('is given to one at a time, and back', () => {
    const folder = shelf.folder(files);
    const release = lockOf(folder);
    expect(readFileSync(join(folder, LOCK), 'utf8')).toMatch(new RegExp(`^${process.pid} \\w+ `));
    release?.();
    expect(existsSync(join(folder, LOCK))).toBe(false);
    expect(lockOf(folder)).toBeDefined();
  });

  it.each([
    ['of a process that is no more', `${NOBODY} 1f ${hostname()}`, 0],
    ['of an earlier process that had our number', `${process.pid} 1f ${hostname()}`, 0],
    ['of a process that has held it for far too long', `${process.ppid} 1f ${hostname()}`, HOUR],
    ['of another machine, for far too long', `${NOBODY} 1f elsewhere.example`, HOUR],
    ['that says nothing since a while', '', HOUR],
    ['that says nonsense since a while', 'x'.repeat(10_000), HOUR],
  ])('is broken open: one %s', async (_, says, age) => {
    const folder = locked(says, age);
    expect(await save(bookAt(folder), edit, seen)).toMatchObject({ kind: 'saved' });
    expect(filesIn(folder)).toEqual(edit);
  });

  it.each([
    ['of a process that runs', `${process.ppid} 1f ${hostname()}`],
    ['of a process at another machine', `${NOBODY} 1f elsewhere.example`],
    ['that is just being made', ''],
  ])('is respected: one %s', (_, says) => {
    const folder = locked(says);
    expect(lockOf(folder)).toBeUndefined();
    expect(readFileSync(join(folder, LOCK), 'utf8')).toBe(says);
  });

  it('is waited for, and a save then says why it was not', async () => {
    const folder = locked(`${process.ppid} 1f ${hostname()}`);
    vi.useFakeTimers();
    const saved = save(bookAt(folder), edit, seen);
    await vi.advanceTimersByTimeAsync(10_000);
    vi.useRealTimers();
    expect(await saved).toEqual({
      kind: 'refused',
      says: 'Another desk is just saving this book. Save again in a moment.',
    });
    expect(filesIn(folder)).toMatchObject(files);
  });

  it('is left alone by one from whom it was taken', () => {
    const folder = shelf.folder(files);
    const release = lockOf(folder);
    writeFileSync(join(folder, LOCK), `${process.ppid} 2e ${hostname()}`);
    release?.();
    expect(existsSync(join(folder, LOCK))).toBe(true);
  });
});
