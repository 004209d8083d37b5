import { mkdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, afterEach, describe, expect, it } from 'vitest';
import type { FolderChange } from '../../desk/folder.ts';
import { following, type Follower, type Following } from '../follow.ts';
import { bookAt, hashOf } from '../texts.ts';
import { book, scratch } from './scratch.ts';

const shelf = scratch();
afterAll(shelf.remove);

const open: Following[] = [];
afterEach(async () => {
  await Promise.all(open.splice(0).map((one) => one.close()));
});
const followed = (folder: string): Following => {
  const one = following(bookAt(folder));
  open.push(one);
  return one;
};

/** Hears until what was heard, taken together, is as wanted. */
const heard = async (
  follower: Follower,
  wanted: (files: FolderChange['files']) => boolean,
): Promise<{ readonly files: FolderChange['files']; readonly times: number }> => {
  let files: FolderChange['files'] = {};
  for (let times = 1; ; times++) {
    const change = await follower.next();
    if (!change) throw new Error('nothing more was told');
    for (const [name, text] of Object.entries(change.files))
      expect(change.seen[name]).toBe(text === null ? undefined : hashOf(text));
    files = { ...files, ...change.files };
    if (wanted(files)) return { files, times };
  }
};

describe('a desk hears', () => {
  it('of a file that is written, as it stands then', async () => {
    const folder = shelf.folder({ 'book.yaml': book() });
    const follower = followed(folder).follow();
    writeFileSync(join(folder, 'book.yaml'), book('# more\n'));
    expect((await heard(follower, () => true)).files).toEqual({ 'book.yaml': book('# more\n') });
  });

  it('of a file that an editor writes beside and moves into place, once', async () => {
    const folder = shelf.folder({ 'book.yaml': book() });
    const follower = followed(folder).follow();
    renameSync(join(folder, 'book.yaml'), join(folder, 'book.yaml~'));
    writeFileSync(join(folder, '.book.yaml.swp'), book('# more\n'));
    renameSync(join(folder, '.book.yaml.swp'), join(folder, 'book.yaml'));
    expect(await heard(follower, () => true)).toEqual({ files: { 'book.yaml': book('# more\n') }, times: 1 });
  });

  it('of many quick writes by few words, and of the last for sure', async () => {
    const folder = shelf.folder({ 'book.yaml': book() });
    const follower = followed(folder).follow();
    for (let i = 1; i <= 200; i++) writeFileSync(join(folder, 'book.yaml'), book(`# ${i}\n`));
    const { times } = await heard(follower, (files) => files['book.yaml'] === book('# 200\n'));
    expect(times).toBeLessThan(5);
  });

  it('of files that come, go and change their names, also below', async () => {
    const folder = shelf.folder({ 'book.yaml': book(), 'old.yaml': 'a: 1\n', 'gone.yaml': 'b: 1\n' });
    const follower = followed(folder).follow();
    renameSync(join(folder, 'old.yaml'), join(folder, 'new.yaml'));
    rmSync(join(folder, 'gone.yaml'));
    mkdirSync(join(folder, 'parts'));
    writeFileSync(join(folder, 'parts', 'motors.yaml'), 'motors: {}\n');
    writeFileSync(join(folder, 'notes.txt'), 'mine');
    const all = { 'old.yaml': null, 'new.yaml': 'a: 1\n', 'gone.yaml': null, 'parts/motors.yaml': 'motors: {}\n' };
    const { files } = await heard(follower, (files) => Object.keys(files).length === 4);
    expect(files).toEqual(all);
    writeFileSync(join(folder, 'parts', 'motors.yaml'), 'motors: { M1: {} }\n');
    expect((await heard(follower, () => true)).files).toEqual({ 'parts/motors.yaml': 'motors: { M1: {} }\n' });
  });

  it('of a folder that is taken away, and of one that is put in its place', async () => {
    const folder = shelf.folder({ 'book.yaml': book() });
    const follower = followed(folder).follow();
    renameSync(folder, `${folder}-away`);
    expect((await heard(follower, () => true)).files).toEqual({ 'book.yaml': null });
    mkdirSync(folder);
    writeFileSync(join(folder, 'book.yaml'), book('# another\n'));
    expect((await heard(follower, () => true)).files).toEqual({ 'book.yaml': book('# another\n') });
    writeFileSync(join(folder, 'book.yaml'), book('# and on\n'));
    expect((await heard(follower, () => true)).files).toEqual({ 'book.yaml': book('# and on\n') });
  });

  it('at once of what changed between its reading and its asking', async () => {
    const folder = shelf.folder({ 'book.yaml': book(), 'gone.yaml': 'b: 1\n' });
    const seen = { 'book.yaml': hashOf(book()), 'gone.yaml': hashOf('b: 1\n') };
    const one = followed(folder);
    one.follow();
    writeFileSync(join(folder, 'book.yaml'), book('# more\n'));
    rmSync(join(folder, 'gone.yaml'));
    expect(await one.follow(seen).next()).toEqual({
      files: { 'book.yaml': book('# more\n'), 'gone.yaml': null },
      seen: { 'book.yaml': hashOf(book('# more\n')) },
    });
  });

  it('nothing of what it saved itself, while the others do', async () => {
    const folder = shelf.folder({ 'book.yaml': book() });
    const one = followed(folder);
    const [mine, other] = [one.follow(), one.follow()];
    writeFileSync(join(folder, 'book.yaml'), book('# mine\n'));
    mine.saved({ 'book.yaml': hashOf(book('# mine\n')) });
    one.look();
    expect((await heard(other, () => true)).files).toEqual({ 'book.yaml': book('# mine\n') });
    writeFileSync(join(folder, 'more.yaml'), 'a: 1\n');
    expect((await heard(mine, () => true)).files).toEqual({ 'more.yaml': 'a: 1\n' });
  });

  it('nothing of a file while it is too long, and of it again when it is not', async () => {
    const folder = shelf.folder({ 'book.yaml': book() });
    const one = followed(folder);
    const follower = one.follow();
    writeFileSync(join(folder, 'book.yaml'), '#'.repeat(2 ** 21 + 1));
    one.look();
    writeFileSync(join(folder, 'book.yaml'), book('# short again\n'));
    expect((await heard(follower, () => true)).files).toEqual({ 'book.yaml': book('# short again\n') });
  });
});

describe('it ends', () => {
  it('for one that stops, and for all when the book is closed', async () => {
    const one = followed(shelf.folder({ 'book.yaml': book() }));
    const [stopping, staying] = [one.follow(), one.follow()];
    const [stopped, closed] = [stopping.next(), staying.next()];
    stopping.stop();
    expect(await stopped).toBeUndefined();
    await one.close();
    expect(await closed).toBeUndefined();
    expect(await staying.next()).toBeUndefined();
  });
});
