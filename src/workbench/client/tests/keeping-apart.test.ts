import { describe, expect, it } from 'vitest';
import type { Way } from '../folders/drafts.ts';
import { kept, loose, pageOn, server } from './page.ts';
import { calm, folderOf, memory, pages } from './shelf.ts';

describe('two pages', () => {
  it("on one book do not take away each other's text", async () => {
    const [shelf, browser, place] = [memory(), pages(), folderOf('A', 'old')];
    const [one, other] = [pageOn(shelf, browser), pageOn(shelf, browser)];
    await one.open(place.folder, server);
    one.type('of one');
    await calm();
    await other.open(place.folder, server);
    await calm();
    expect(other.shown()).toBe('old');
    other.type('of the other');
    await calm();
    other.undo();
    await calm();
    expect(shelf.texts()).toEqual(['of one']);
    expect(other.drafts.value).toEqual([]);
  });

  it('find what the other left when it is gone', async () => {
    const [shelf, browser, place] = [memory(), pages(), folderOf('A', 'old')];
    const one = pageOn(shelf, browser);
    await one.open(place.folder, server);
    one.type('of one');
    await calm();
    one.close();
    const other = pageOn(shelf, browser);
    await other.open(place.folder, server);
    expect(other.shown()).toBe('of one');
    expect(shelf.store.size).toBe(1);
  });

  it('that come back to a text which another took over write beside it', async () => {
    const [shelf, browser, place] = [memory(), pages(), folderOf('A', 'old')];
    const [one, other] = [pageOn(shelf, browser), pageOn(shelf, browser)];
    await one.open(place.folder, server);
    one.type('of one');
    await calm();
    one.close();
    await other.open(place.folder, server);
    other.type('of the other');
    one.type('of one, later');
    await calm();
    expect(shelf.texts().toSorted()).toEqual(['of one, later', 'of the other']);
  });
});

describe('books that lie nowhere', () => {
  const begun = (id = 'begun 1') => folderOf(id, 'mine', { canSave: false });

  it('are kept from the first, and say so', async () => {
    const shelf = memory();
    const page = pageOn(shelf);
    await page.open(begun().folder, loose);
    await calm();
    expect(page.saving.value).toBe('kept by this browser, not saved');
    expect(page.isLoose()).toBe(true);
    expect(shelf.texts()).toEqual(['mine']);
  });

  it('are no longer loose when they were downloaded, until they change', async () => {
    const page = pageOn(memory());
    await page.open(begun().folder, loose);
    page.wasDownloaded({ 'book.yaml': 'mine' });
    expect([page.saving.value, page.isLoose()]).toEqual(['downloaded', false]);
    page.type('more');
    expect(page.isLoose()).toBe(true);
  });

  it('are kept no more when they lie in another book', async () => {
    const shelf = memory();
    const page = pageOn(shelf);
    await page.open(begun().folder, loose);
    page.wasMoved({ 'book.yaml': 'mine' });
    await calm();
    expect([page.isLoose(), shelf.texts()]).toEqual([false, []]);
  });

  it('stay when what was moved was an earlier text', async () => {
    const shelf = memory();
    const page = pageOn(shelf);
    await page.open(begun().folder, loose);
    page.type('mine, and more');
    page.wasMoved({ 'book.yaml': 'mine' });
    await calm();
    expect([page.isLoose(), shelf.texts()]).toEqual([true, ['mine, and more']]);
  });

  it('of the same name are kept apart, listed when left, and laid again', async () => {
    const shelf = memory();
    const page = pageOn(shelf);
    await page.open(begun('begun 1').folder, loose);
    await page.open(folderOf('begun 2', 'another', { canSave: false }).folder, loose);
    await calm();
    await page.look();
    expect(page.drafts.value).toMatchObject([{ name: 'bench', where: 'nowhere but here' }]);
    const again = await page.keptOf(({ id }) => id === page.drafts.value[0]?.id);
    expect(again?.draft.files).toEqual({ 'book.yaml': 'mine' });
    await page.open(begun('begun 1').folder, loose, again);
    await calm();
    await page.look();
    expect(page.drafts.value.map(({ id }) => shelf.store.get(id)?.book)).toEqual(['begun 2']);
    expect(shelf.store.size).toBe(2);
  });

  it('are thrown away only when somebody says so, and not while they lie open', async () => {
    const shelf = memory([kept('one', 'left', { book: 'begun 9', way: loose })]);
    const page = pageOn(shelf);
    await page.open(begun().folder, loose);
    await calm();
    for (const { id } of shelf.store.values()) await page.dropDraft(id);
    expect(shelf.texts()).toEqual(['mine']);
  });
});

describe('folders of the disk', () => {
  const directory = (own: string) => ({
    own,
    name: 'machine',
    values: async function* () {},
    getFileHandle: () => Promise.reject(new Error('made up')),
    isSameEntry: (other: object) => Promise.resolve('own' in other && other.own === own),
  });
  const at = (own: string): Way => ({ kind: 'folder', directory: directory(own) });

  it('of the same name are told apart, and known again', async () => {
    const left = kept('one', 'mine', { book: 'folder 1', way: at('/home/one') });
    const page = pageOn(memory([left]));
    await page.open(folderOf('folder 2', 'old', {}).folder, at('/home/other'));
    expect(page.shown()).toBe('old');
    await page.open(folderOf('folder 3', 'old', {}).folder, at('/home/one'));
    expect(page.shown()).toBe('mine');
  });
});
