import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { chromiumPath } from './chromium.ts';
import { laid, stage, type, type Stage } from './stage.ts';

describe.skipIf(!chromiumPath)('visits to the desk', () => {
  let on: Stage;
  beforeAll(async () => {
    on = await stage();
  });
  afterAll(() => on.end());

  it('the first leads from five answers to a first sheet, with nothing red', async () => {
    const served = await on.serveFiles();
    const { page, troubles } = await on.page();
    await page.goto(served.address);
    await page.getByRole('heading', { name: 'What lies on the desk?' }).waitFor();
    await page.getByRole('button', { name: 'Write the book' }).and(page.locator(':enabled')).waitFor();
    await page.getByLabel('What is it called?').fill('Harbour <b>light</b>');
    await page.locator('#first-motor').selectOption('frame-23-56-2A');
    await page.locator('#first-supply').selectOption('enclosed-24V-100W');
    await page.getByRole('button', { name: 'Write the book' }).click();
    await laid(page);
    expect(await page.title()).toMatch(/^Harbour <b>light<\/b>: /);
    expect(await page.locator('.register .mark.v-fails').count()).toBe(0);
    expect(await page.locator('.text-problems[role="alert"]').count()).toBe(0);
    expect(await page.locator('.sheet .v-not-stated').count()).toBeGreaterThan(0);
    // It lies nowhere yet, and a reload does not lose it.
    await page.reload();
    await laid(page);
    expect(await page.title()).toMatch(/^Harbour <b>light<\/b>: /);
    expect(troubles).toEqual([]);
  });

  it('a wrong answer is said where it was given', async () => {
    const served = await on.serveFiles();
    const { page } = await on.page();
    await page.goto(served.address);
    const width = page.locator('#first-width');
    await width.fill('wide');
    await page.getByRole('button', { name: 'Write the book' }).click();
    await page.locator('#first-width-problem').waitFor();
    expect(await width.getAttribute('aria-invalid')).toBe('true');
    expect(await width.inputValue()).toBe('wide');
  });

  it('to a server of files, below some path, goes on without a network after the first', async () => {
    const served = await on.serveFiles();
    const { page, troubles } = await on.page();
    await page.goto(served.address);
    await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
    await served.close();
    await page.reload();
    await page.getByRole('button', { name: 'Open Seed library 3' }).click();
    await laid(page);
    await page.locator('.cm-content').waitFor();
    expect(await page.title()).toMatch(/^Seed library: /);
    await page.getByRole('link', { name: 'Formulas' }).click();
    await page.locator('.index a').first().waitFor();
    expect(troubles).toEqual([]);
  });

  it('lead back, and a sheet can be linked', async () => {
    const served = await on.serveFiles();
    const { page } = await on.page();
    await page.goto(`${served.address}?demo=tidepool#/sheet/supply`);
    await laid(page);
    expect(await page.locator('.sheet h1').textContent()).toBe('Supply');
    await page.locator('.register a').first().click();
    await page.waitForFunction(() => document.querySelector('.sheet h1')?.textContent !== 'Supply');
    await page.goBack();
    await page.waitForFunction(() => document.querySelector('.sheet h1')?.textContent === 'Supply');
  });

  it('find what was not saved when the page went away', async () => {
    const folder = on.copyOf('five-facts');
    const before = readFileSync(join(folder, 'book.yaml'), 'utf8');
    const served = await on.serve({ folder });
    const { page } = await on.page();
    await page.goto(served.address);
    await laid(page);
    await type(page, 'Five facts', 'Six facts');
    await page.waitForFunction(() => document.title.startsWith('Six facts'));
    await page.reload();
    await page.getByText('was put back', { exact: false }).waitFor();
    await page.waitForFunction(() => document.title.startsWith('Six facts'));
    expect(readFileSync(join(folder, 'book.yaml'), 'utf8')).toBe(before);
    await page.getByRole('button', { name: "Go back to the disk's text" }).click();
    await page.waitForFunction(() => document.title.startsWith('Five facts'));
    await page.getByText('saved', { exact: true }).waitFor();
  });

  it('keep the text when the server ends, say so, and save when it is back', async () => {
    const folder = on.copyOf('five-facts');
    const served = await on.serve({ folder });
    const { page } = await on.page();
    await page.goto(served.address);
    await laid(page);
    await type(page, 'Five facts', 'Six facts');
    await page.waitForFunction(() => document.title.startsWith('Six facts'));
    await served.close();
    await page.keyboard.press('Control+s');
    await page.getByText('nothing answers; kept here', { exact: false }).waitFor();
    expect(await page.locator('.cm-content').textContent()).toContain('Six facts');
    const again = await on.serve({ folder, port: served.port });
    expect(again.port).toBe(served.port);
    await page.getByText('not saved; kept by the browser').waitFor();
    await page.keyboard.press('Control+s');
    await page.getByText('saved', { exact: true }).waitFor();
    expect(readFileSync(join(folder, 'book.yaml'), 'utf8')).toContain('title: Six facts');
  });

  it('a demo stays as it is and is saved as a new book', async () => {
    const folder = on.copyOf('five-facts');
    const before = readFileSync(join(folder, 'book.yaml'), 'utf8');
    const shelf = on.scratch;
    const served = await on.serve({ folder, canSave: false, newBooksIn: shelf });
    const { page } = await on.page();
    await page.goto(served.address);
    await laid(page);
    await type(page, 'Five facts', 'My own');
    await page.waitForFunction(() => document.title.startsWith('My own'));
    await page.keyboard.press('Control+s');
    const form = page.getByRole('form', { name: 'A new book' });
    expect(await form.getByRole('textbox').inputValue()).toBe('my-own');
    await form.getByRole('textbox').fill('../out');
    await form.getByRole('button', { name: 'Save' }).click();
    await form.getByRole('alert').waitFor();
    await form.getByRole('textbox').fill('my-own');
    await form.getByRole('button', { name: 'Save' }).click();
    await page.waitForURL(/\?book=my-own/);
    await page.getByText('saved', { exact: true }).waitFor();
    expect(readFileSync(join(shelf, 'my-own', 'book.yaml'), 'utf8')).toContain('title: My own');
    expect(readFileSync(join(folder, 'book.yaml'), 'utf8')).toBe(before);
  });

  it('where the browser cannot write into a folder, a book is saved as a download', async () => {
    const served = await on.serveFiles();
    const { page } = await on.page();
    await page.addInitScript(() => Reflect.deleteProperty(globalThis, 'showDirectoryPicker'));
    await page.goto(`${served.address}?demo=five-facts`);
    await laid(page);
    await type(page, 'Five facts', 'Six facts');
    const [download] = await Promise.all([page.waitForEvent('download'), page.keyboard.press('Control+s')]);
    expect(download.suggestedFilename()).toBe('book.yaml');
    expect(readFileSync(await download.path(), 'utf8')).toContain('title: Six facts');
    await page.getByText('downloaded', { exact: true }).waitFor();
  });

  it('of a hostile book run nothing and show its text as text', async () => {
    const markup = '<img src=x onerror="window.ran=1"><script>window.ran=2</script>';
    const folder = on.bookWith(
      readFileSync(join(on.copyOf('five-facts'), 'book.yaml'), 'utf8').replace(
        'title: Five facts',
        `title: '${markup}'`,
      ),
    );
    const served = await on.serve({ folder });
    const { page, troubles } = await on.page();
    await page.goto(served.address);
    await laid(page);
    expect(await page.locator('.title-block').textContent()).toContain(markup);
    expect(await page.locator('.sheet img, .sheet script, .edge img').count()).toBe(0);
    expect(await page.evaluate(() => 'ran' in window)).toBe(false);
    expect(troubles).toEqual([]);
  });

  it('of a book of 2 MiB with marks that turn the direction of writing lose nothing', async () => {
    const base = readFileSync(join(on.copyOf('five-facts'), 'book.yaml'), 'utf8');
    const line = `# \u202e right to left \u202c ${'and more words that fill the line up to its end '.repeat(40)}\n`;
    const room = 2 * 1024 * 1024 - Buffer.byteLength(base);
    const text = base + line.repeat(Math.floor(room / Buffer.byteLength(line)));
    const folder = on.bookWith(text);
    const served = await on.serve({ folder });
    const { page, troubles } = await on.page();
    await page.goto(served.address);
    await laid(page);
    await type(page, 'Five facts', 'Six facts');
    await page.waitForFunction(() => document.title.startsWith('Six facts'));
    await page.keyboard.press('Control+s');
    await page.getByText('saved', { exact: true }).waitFor();
    expect(readFileSync(join(folder, 'book.yaml'), 'utf8')).toBe(text.replace('Five facts', 'Six facts'));
    expect(troubles).toEqual([]);
  });

  it('of a book that cannot be read show what is in the way, and mend it', async () => {
    const folder = on.bookWith('# YAML 1.2\nbook: 1\ntitel: Slip\nrevision: A\n');
    const served = await on.serve({ folder });
    const { page } = await on.page();
    await page.goto(served.address);
    await page.locator('.text-problems').getByText('titel').waitFor();
    await type(page, 'titel', 'title');
    await laid(page);
    expect(await page.title()).toMatch(/^Slip/);
  });
});
