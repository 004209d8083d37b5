import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { Saved } from '../../desk/folder.ts';
import { kept, pageOn, PATIENCE, server } from './page.ts';
import { calm, folderOf, later, memory } from './shelf.ts';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

describe('what was kept', () => {
  it('is put back, and is never taken away on the way', async () => {
    const shelf = memory([kept('one', 'mine')]);
    const page = pageOn(shelf);
    await page.open(folderOf('A', 'old').folder, server);
    await calm();
    expect(page.shown()).toBe('mine');
    expect(page.dirty.value).toBe(true);
    expect(page.saving.value).toBe('not saved; kept by the browser');
    expect(shelf.texts()).toEqual(['mine']);
    expect(shelf.done.filter((what) => what.startsWith('drop'))).toEqual([]);
  });

  it('goes when it was saved', async () => {
    const shelf = memory([kept('one', 'mine')]);
    const [page, place] = [pageOn(shelf), folderOf('A', 'old')];
    await page.open(place.folder, server);
    await page.save();
    await calm();
    expect(place.disk.text).toBe('mine');
    expect(page.saving.value).toBe('saved');
    expect(shelf.texts()).toEqual([]);
  });

  it('can be given up for the disk, and taken again by undo', async () => {
    const shelf = memory([kept('one', 'mine')]);
    const page = pageOn(shelf);
    await page.open(folderOf('A', 'old').folder, server);
    page.said[0]?.choices[1]?.run();
    await calm();
    expect(page.shown()).toBe('old');
    page.undo();
    await calm();
    expect(shelf.texts()).toEqual(['mine']);
  });

  it('is no longer offered to be given up when another book lies open', async () => {
    const shelf = memory([kept('one', 'mine')]);
    const page = pageOn(shelf);
    await page.open(folderOf('A', 'old').folder, server);
    expect(page.said).toHaveLength(1);
    await page.open(folderOf('B', 'b').folder, server);
    await calm();
    expect(page.said).toEqual([]);
    expect(shelf.texts()).toEqual(['mine']);
  });

  it('stands against a disk that has changed since', async () => {
    const place = folderOf('A', 'old');
    place.write('theirs');
    const page = pageOn(memory([kept('one', 'mine')]));
    await page.open(place.folder, server);
    expect(page.conflict.value?.theirs).toEqual({ 'book.yaml': 'theirs' });
    expect(page.conflictShown.value).toBe(true);
  });

  it.each([
    ['of another book', { book: 'B' }],
    ['of another main file', { draft: { format: 1 as const, main: 'b.yaml', files: { 'b.yaml': 'mine' }, seen: {} } }],
  ])('%s is left alone', async (_, more) => {
    const shelf = memory([kept('one', 'mine', more)]);
    const page = pageOn(shelf);
    await page.open(folderOf('A', 'old').folder, server);
    await calm();
    expect(page.shown()).toBe('old');
    expect(shelf.texts()).toEqual(['mine']);
    expect(page.drafts.value.map(({ id }) => id)).toEqual(['one']);
  });
});

describe('a browser that is slow or fails', () => {
  const opened = async (shelf: ReturnType<typeof memory>) => {
    const [page, place] = [pageOn(shelf), folderOf('A', 'old')];
    const opening = page.open(place.folder, server);
    await vi.advanceTimersByTimeAsync(PATIENCE + 1);
    await opening;
    return page;
  };

  it('does not hold up the book, and puts back later what it had', async () => {
    const shelf = memory([kept('one', 'mine')]);
    const late = later<undefined>();
    shelf.first((what) => (what === 'all' ? late.promise.then(() => undefined) : Promise.resolve()));
    const page = await opened(shelf);
    expect(page.shown()).toBe('old');
    expect(shelf.texts()).toEqual(['mine']);
    late.resolve(undefined);
    await calm();
    expect(page.shown()).toBe('mine');
    expect(shelf.texts()).toEqual(['mine']);
  });

  it('does not put it over what was typed meanwhile: both are kept', async () => {
    const shelf = memory([kept('one', 'mine')]);
    const late = later<undefined>();
    shelf.first((what) => (what === 'all' ? late.promise.then(() => undefined) : Promise.resolve()));
    const page = await opened(shelf);
    page.type('newer');
    late.resolve(undefined);
    await calm();
    expect(page.shown()).toBe('newer');
    expect(shelf.texts().toSorted()).toEqual(['mine', 'newer']);
    expect(page.drafts.value.map(({ id }) => id)).toEqual(['one']);
    expect(page.said.at(-1)?.says).toContain('listed under Books');
  });

  it('loses nothing when the read is refused', async () => {
    const shelf = memory([kept('one', 'mine')]);
    shelf.first((what) => (what === 'all' ? Promise.reject(new Error('made up')) : Promise.resolve()));
    const page = pageOn(shelf);
    await page.open(folderOf('A', 'old').folder, server);
    page.type('newer');
    await page.save();
    await calm();
    expect(shelf.texts()).toEqual(['mine']);
  });

  it('is not said to keep what it refuses to keep', async () => {
    const shelf = memory();
    shelf.first((what) => (what === 'keep' ? Promise.reject(new Error('full')) : Promise.resolve()));
    const page = pageOn(shelf);
    await page.open(folderOf('A', 'old').folder, server);
    page.type('mine');
    await calm();
    expect(page.saving.value).toBe('not saved, and this browser keeps nothing');
    expect(page.isKept()).toBe(false);
    shelf.first(() => Promise.resolve());
    page.type('mine and more');
    await calm();
    expect(page.saving.value).toBe('not saved; kept by the browser');
  });

  it('is not said to keep what it does not answer about', async () => {
    const shelf = memory();
    shelf.first((what) => (what === 'keep' ? later<undefined>().promise : Promise.resolve()));
    const page = pageOn(shelf);
    await page.open(folderOf('A', 'old').folder, server);
    page.type('mine');
    await vi.advanceTimersByTimeAsync(PATIENCE + 1);
    expect(page.isKept()).toBe(false);
  });

  it('keeps the newest of what was typed while it wrote', async () => {
    const shelf = memory();
    const slow = later<undefined>();
    const page = pageOn(shelf);
    await page.open(folderOf('A', 'old').folder, server);
    shelf.first((what) => (what === 'keep' ? slow.promise : Promise.resolve()));
    for (const text of ['1', '12', '123']) page.type(text);
    slow.resolve(undefined);
    await calm();
    expect(shelf.texts()).toEqual(['123']);
  });
});

describe('a save that is answered after another book was opened', () => {
  const sentAway = async () => {
    const shelf = memory();
    const [page, a, b] = [pageOn(shelf), folderOf('A', 'a'), folderOf('B', 'b')];
    const answer = later<Saved>();
    await page.open(a.folder, server);
    page.type('a, edited');
    a.answers(() => answer.promise);
    const saving = page.save();
    await page.open(b.folder, server);
    page.type('b, edited');
    await calm();
    return { shelf, page, a, b, answer, saving };
  };

  it('settles the book that was sent, and leaves the one that lies open alone', async () => {
    const { shelf, page, b, answer, saving } = await sentAway();
    expect(shelf.texts().toSorted()).toEqual(['a, edited', 'b, edited']);
    answer.resolve({ kind: 'saved', seen: { 'book.yaml': 'A 2' } });
    await saving;
    await calm();
    expect(page.dirty.value).toBe(true);
    expect(shelf.texts()).toEqual(['b, edited']);
    await page.save();
    expect(b.sent).toEqual([{ files: { 'book.yaml': 'b, edited' }, seen: { 'book.yaml': 'B 1' } }]);
  });

  it.each<[string, Saved | Error]>([
    ['a conflict', { kind: 'conflict', theirs: { 'book.yaml': 'theirs' }, seen: { 'book.yaml': 'A 2' } }],
    ['a refusal', { kind: 'refused', says: 'The disk is full.' }],
    ['no answer', new Error('made up')],
  ])('keeps its text after %s, and says where', async (_, outcome) => {
    const { shelf, page, answer, saving } = await sentAway();
    if (outcome instanceof Error) answer.reject(outcome);
    else answer.resolve(outcome);
    await saving;
    await calm();
    expect(shelf.texts().toSorted()).toEqual(['a, edited', 'b, edited']);
    expect(page.shown()).toBe('b, edited');
    expect(page.conflict.value).toBeUndefined();
    expect(page.saving.value).toBe('not saved; kept by the browser');
    expect(page.said.at(-1)?.says).toContain('listed under Books');
    await page.look();
    expect(page.drafts.value).toHaveLength(1);
  });

  it('tells the same book that was opened anew', async () => {
    const shelf = memory();
    const [page, a] = [pageOn(shelf), folderOf('A', 'a')];
    const answer = later<Saved>();
    await page.open(a.folder, server);
    page.type('a, edited');
    a.answers(() => answer.promise);
    const saving = page.save();
    await page.open(a.folder, server);
    answer.resolve({ kind: 'saved', seen: { 'book.yaml': 'A 2' } });
    await saving;
    await calm();
    expect(page.shown()).toBe('a, edited');
    expect(page.saving.value).toBe('saved');
    expect(shelf.texts()).toEqual([]);
  });
});
