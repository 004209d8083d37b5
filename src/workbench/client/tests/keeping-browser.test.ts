/** What is kept, in a real browser: its database, its locks, its pages. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { chromiumPath } from '../../../../tests/browser/chromium.ts';
import { laid, stage, type, type Stage } from '../../../../tests/browser/stage.ts';
import type { Kept } from '../folders/drafts.ts';

/** The texts of all drafts in the browser of a page. */
const texts = (page: Page): Promise<readonly string[]> =>
  page.evaluate(
    () =>
      new Promise<readonly string[]>((resolve, reject) => {
        const opening = indexedDB.open('gantrybook', 1);
        opening.addEventListener('error', () => reject(opening.error ?? new Error('nothing is kept')));
        opening.addEventListener('success', () => {
          const asked: IDBRequest<Kept[]> = opening.result.transaction('drafts').objectStore('drafts').getAll();
          asked.addEventListener('success', () => {
            opening.result.close();
            resolve(asked.result.flatMap(({ draft }) => Object.values(draft.files)));
          });
        });
      }),
  );
const titles = async (page: Page): Promise<readonly string[]> =>
  (await texts(page)).map((text) => /^title: (.*)$/m.exec(text)?.[1] ?? '').toSorted();
const titled = (page: Page, title: string): Promise<unknown> =>
  page.waitForFunction((start) => document.title.startsWith(start), title);

describe.skipIf(!chromiumPath)('what a browser keeps', () => {
  let on: Stage;
  beforeAll(async () => {
    on = await stage();
  });
  afterAll(() => on.end());

  const retitled = async (page: Page, from: string, to: string): Promise<void> => {
    await laid(page);
    await type(page, `title: ${from}`, `title: ${to}`);
    await titled(page, to);
  };

  it('of one book in two pages stands side by side, and goes to whoever comes when one has crashed', async () => {
    const folder = on.copyOf('five-facts');
    const served = await on.serve({ folder });
    const { page: one } = await on.page();
    await one.goto(served.address);
    await retitled(one, 'Five facts', 'Of one');
    const other = await one.context().newPage();
    await other.goto(served.address);
    await retitled(other, 'Five facts', 'Of the other');
    await expect.poll(() => titles(other)).toEqual(['Of one', 'Of the other']);
    await other.keyboard.press('Control+z');
    await titled(other, 'Five facts');
    await expect.poll(() => titles(other)).toEqual(['Of one']);
    await one.close();
    await other.reload();
    await titled(other, 'Of one');
    await other.keyboard.press('Control+s');
    await other.getByText('saved', { exact: true }).waitFor();
    await expect.poll(() => titles(other)).toEqual([]);
    expect(readFileSync(join(folder, 'book.yaml'), 'utf8')).toContain('title: Of one');
  });

  it('is not given up for another book without a word, and is put back when its book is opened again', async () => {
    const served = await on.serveFiles();
    const { page } = await on.page();
    await page.goto(`${served.address}?demo=five-facts`);
    await retitled(page, 'Five facts', 'Mine');
    await page.getByText('kept by this browser, not saved').waitFor();
    await page.getByRole('link', { name: 'Books' }).click();
    const another = page.getByRole('button', { name: 'Open Seed library 3' });
    await another.click();
    await page.getByRole('button', { name: 'Stay here' }).click();
    expect(await page.title()).toMatch(/^Mine|^Gantrybook/);
    await another.click();
    await page.getByRole('button', { name: 'Keep it as a draft' }).click();
    await titled(page, 'Seed library');
    expect(await titles(page)).toEqual(['Mine']);
    await page.goto(`${served.address}?demo=five-facts`);
    await titled(page, 'Mine');
    await page.getByText('was put back', { exact: false }).waitFor();
  });

  it('of two begun books of the same title is two texts', async () => {
    const served = await on.serveFiles();
    const { page } = await on.page();
    const begin = async (): Promise<string> => {
      await page.getByRole('button', { name: 'Write the book' }).and(page.locator(':enabled')).waitFor();
      await page.getByLabel('What is it called?').fill('Twice');
      await page.getByRole('button', { name: 'Write the book' }).click();
      await titled(page, 'Twice');
      return page.url();
    };
    await page.goto(served.address);
    const first = await begin();
    await page.getByText('kept by this browser, not saved').waitFor();
    await retitled(page, 'Twice', 'Once');
    await page.goto(served.address);
    const second = await begin();
    expect(second).not.toBe(first);
    await expect.poll(() => titles(page)).toEqual(['Once', 'Twice']);
    await page.goto(first);
    await titled(page, 'Once');
    // The other is listed, and is laid again from there.
    await page.getByRole('link', { name: 'Books' }).click();
    await page.getByRole('button', { name: 'Go on with Twice' }).click();
    await page.getByRole('button', { name: 'Keep it as a draft' }).click();
    await titled(page, 'Twice');
    await expect.poll(() => titles(page)).toEqual(['Once', 'Twice']);
  });

  it('of a folder is put back when that folder is chosen again, and not in another of its name', async () => {
    const served = await on.serveFiles();
    const { page } = await on.page();
    const book = readFileSync(join(on.copyOf('five-facts'), 'book.yaml'), 'utf8');
    // The browser's own folders stand for those of the disk, which nobody is there to choose.
    await page.addInitScript((text) => {
      const choose = async (): Promise<FileSystemDirectoryHandle> => {
        const root = await navigator.storage.getDirectory();
        const shelf = await root.getDirectoryHandle(sessionStorage.getItem('shelf') ?? 'first', { create: true });
        const folder = await shelf.getDirectoryHandle('machine', { create: true });
        const file = await folder.getFileHandle('book.yaml', { create: true });
        if ((await file.getFile()).size > 0) return folder;
        const out = await file.createWritable();
        await out.write(text);
        await out.close();
        return folder;
      };
      Object.assign(globalThis, { showDirectoryPicker: choose });
    }, book);
    const chosen = async (shelf: string): Promise<void> => {
      await page.goto(served.address);
      await page.evaluate((name) => sessionStorage.setItem('shelf', name), shelf);
      await page.getByRole('button', { name: 'Choose its folder' }).click();
      await laid(page);
    };
    await chosen('first');
    await retitled(page, 'Five facts', 'Mine');
    await expect.poll(() => titles(page)).toEqual(['Mine']);
    await chosen('second');
    expect(await page.title()).toMatch(/^Five facts/);
    await page.getByRole('link', { name: 'Books' }).click();
    await page.getByText('a folder of this machine', { exact: false }).waitFor();
    await chosen('first');
    await titled(page, 'Mine');
    await page.keyboard.press('Control+s');
    await page.getByText('saved', { exact: true }).waitFor();
    await expect.poll(() => titles(page)).toEqual([]);
  });
});
