import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { chromiumPath } from './chromium.ts';
import { laid, stage, type Stage } from './stage.ts';

describe.skipIf(!chromiumPath)('the other pages of the desk', () => {
  let on: Stage;
  beforeAll(async () => {
    on = await stage();
  });
  afterAll(() => on.end());

  it('the index finds a formula, and works it with values of the reader', async () => {
    const served = await on.serveFiles();
    const { page, troubles } = await on.page();
    await page.goto(`${served.address}#/formulas`);
    await page.locator('.index a').first().waitFor();
    const all = await page.locator('.index a').count();
    await page.getByRole('searchbox').fill('pulley');
    await expect.poll(() => page.locator('.index a').count()).toBeLessThan(all);
    await page.locator('.index a').first().click();
    await page.getByRole('button', { name: 'Fill in an example' }).click();
    await page.locator('.outcome math').first().waitFor();
    expect(await page.locator('.outcome').textContent()).toMatch(/Source .*Checked /);
    const first = page.locator('.form input').first();
    await first.fill('wide');
    await page.locator('.form .problem').first().waitFor();
    expect(await page.locator('.outcome').count()).toBe(0);
    expect(troubles).toEqual([]);
  });

  it('nothing is found for what nobody wrote, and it says so', async () => {
    const served = await on.serveFiles();
    const { page } = await on.page();
    await page.goto(`${served.address}#/formulas/no-such-formula`);
    await page.getByText('There is no formula named').waitFor();
    await page.getByRole('searchbox').fill('zzzz');
    await page.getByText('No formula is named or described so.').waitFor();
  });

  it('the bench takes readings into the book, which can be undone', async () => {
    const folder = on.copyOf('tidepool-first-draft');
    const before = readFileSync(join(folder, 'book.yaml'), 'utf8');
    const served = await on.serve({ folder });
    const { page, troubles } = await on.page();
    await page.goto(served.address);
    await laid(page);
    await page.getByRole('link', { name: 'Bench' }).click();
    await page.locator('.index a').filter({ hasText: 'running force' }).first().click();
    await page.locator('.form input').first().waitFor();
    await page.getByRole('button', { name: 'Work it out' }).click();
    await page.locator('.outcome').waitFor();
    expect(await page.getByRole('button', { name: 'Take it into the book' }).count()).toBe(0);
    const examples = await page
      .locator('.form input')
      .evaluateAll((all) => all.map((one) => one.getAttribute('placeholder')));
    for (const [i, example] of examples.entries())
      await page
        .locator('.form input')
        .nth(i)
        .fill(example ?? '');
    await page.getByRole('button', { name: 'Work it out' }).click();
    await page.getByRole('button', { name: 'Take it into the book' }).click();
    await page.getByText('not saved; kept by the browser').waitFor();
    await page.keyboard.press('Control+s');
    await page.getByText('saved', { exact: true }).waitFor();
    expect(readFileSync(join(folder, 'book.yaml'), 'utf8')).not.toBe(before);
    const undo = page.getByRole('button', { name: 'Undo' });
    expect(await undo.getAttribute('title')).toContain('the measurement of');
    await undo.click();
    await page.getByText('not saved; kept by the browser').waitFor();
    await page.keyboard.press('Control+s');
    await page.getByText('saved', { exact: true }).waitFor();
    expect(readFileSync(join(folder, 'book.yaml'), 'utf8')).toBe(before);
    expect(troubles).toEqual([]);
  });

  it('the look that was chosen stays, also after a reload', async () => {
    const served = await on.serveFiles();
    const { page } = await on.page({ colorScheme: 'light' });
    await page.goto(`${served.address}#/about`);
    const paper = () =>
      page.evaluate(() => getComputedStyle(document.documentElement).getPropertyValue('--paper').trim());
    const light = await paper();
    await page.getByRole('radio', { name: 'blueprint' }).check();
    const blue = await paper();
    expect(blue).not.toBe(light);
    await page.reload();
    await page.getByRole('heading', { name: 'About this desk' }).waitFor();
    expect(await paper()).toBe(blue);
  });

  it('a desk without a book begins with the first visit', async () => {
    const served = await on.serve({ newBooksIn: on.scratch });
    const { page } = await on.page();
    await page.goto(served.address);
    await page.getByRole('heading', { name: 'What lies on the desk?' }).waitFor();
    await page.getByRole('button', { name: 'Open Five facts A' }).click();
    await laid(page);
    await page.keyboard.press('Control+s');
    await page.getByRole('form', { name: 'A new book' }).getByRole('button', { name: 'Save' }).click();
    await page.waitForURL(/\?book=five-facts/);
    await page.getByText('saved', { exact: true }).waitFor();
    expect(readFileSync(join(on.scratch, 'five-facts', 'book.yaml'), 'utf8')).toContain('title: Five facts');
  });
});
