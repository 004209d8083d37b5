import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { chromiumPath } from './chromium.ts';
import { laid, stage, type, type Stage } from './stage.ts';

/** Slow cores under load must not turn a right answer into a failure. */
const PATIENT = { timeout: 30_000 };

/** What has the focus, as a selector is asked of it. */
const focusIs = (page: Page, selector: string): Promise<boolean> =>
  page.evaluate((one) => document.activeElement?.matches(one) === true, selector);

const focusComesTo = (page: Page, selector: string): Promise<unknown> =>
  page.waitForFunction((one) => document.activeElement?.matches(one) === true, selector);

/** How far below the upper edge of the leaf something begins. */
const below = (page: Page, selector: string): Promise<number> =>
  page.evaluate((one) => {
    const frame = document.querySelector('.lying')?.getBoundingClientRect();
    return (document.querySelector(one)?.getBoundingClientRect().top ?? Number.NaN) - (frame?.top ?? 0);
  }, selector);

describe.skipIf(!chromiumPath)('who sees the desk for the first time', () => {
  let on: Stage;
  beforeAll(async () => {
    on = await stage();
  });
  afterAll(() => on.end());

  const opened = async (example: string, width = 1280) => {
    const folder = on.copyOf(example);
    const served = await on.serve({ folder });
    const { page, troubles } = await on.page({ viewport: { width, height: 844 } });
    await page.goto(served.address);
    await laid(page);
    await page.waitForSelector('.questions');
    return { folder, page, troubles };
  };

  it('gets from a sentence in front to the cure and back by keyboard, and the focus is never lost', async () => {
    const { page, troubles } = await opened('tidepool-first-draft');
    await page.locator('.worst a').first().focus();
    await page.keyboard.press('Enter');
    await page.locator('.slip .remedies').waitFor();
    await focusComesTo(page, '.slip h3');
    await page.keyboard.press('Tab');
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('Try');
    await page.keyboard.press('Enter');
    await focusComesTo(page, '.tried');
    await page.locator('.tried').getByRole('button', { name: 'Take it' }).focus();
    await page.keyboard.press('Enter');
    await focusComesTo(page, '.finding[data-open]');
    await page.locator('.moved li').first().waitFor();
    // The sheet is drawn anew in several steps meanwhile.
    await page.locator('.sheet[data-paper="true"]').waitFor();
    expect(await focusIs(page, '.finding[data-open]')).toBe(true);
    const top = await below(page, '.finding[data-open]');
    expect(top).toBeGreaterThanOrEqual(0);
    expect(top).toBeLessThan(400);
    await page.keyboard.press('Enter');
    await page.locator('.slip').waitFor({ state: 'detached' });
    expect(await focusIs(page, '.finding')).toBe(true);
    expect(troubles).toEqual([]);
  });

  it('reads the cure before the working, and of the working the last step before what it rests on', async () => {
    const { page } = await opened('tidepool-first-draft');
    await page.locator('.worst a').first().click();
    await page.locator('.slip .remedies').waitFor();
    const tops = await page.evaluate(() =>
      ['.slip .remedies', '.slip .entries > .entry', '.slip .rests-on'].map(
        (one) => document.querySelector(one)?.getBoundingClientRect().top ?? Number.NaN,
      ),
    );
    expect(tops).toEqual(tops.toSorted((a, b) => a - b));
    expect(await page.locator('.slip .entry:visible').count()).toBe(1);
    await page.locator('.rests-on summary').click();
    expect(await page.locator('.slip .entry:visible').count()).toBeGreaterThan(1);
  });

  it('finds what else a cure does in sentences that lead to their findings', async () => {
    const { page } = await opened('tidepool-first-draft');
    await page.locator('.worst a').first().click();
    const other = page.locator('.remedies .else a').first();
    await other.waitFor();
    const sentence = await other.textContent();
    expect(sentence).toMatch(/^[A-Z].* .*\.$/);
    expect(await page.locator('.remedies .else li').first().textContent()).toMatch(/(fails|open|holds|tight).*→/);
    await other.click();
    await expect.poll(() => page.locator('.finding[data-open] .sentence').textContent(), PATIENT).toContain(sentence);
  });

  it('unfolds all that moved', async () => {
    const { page } = await opened('tidepool-first-draft');
    await type(page, 'speed: 300 mm/s', 'speed: 60 mm/s');
    await page.locator('.moved li').first().waitFor();
    const heading = await page.locator('#moved').textContent();
    await page
      .locator('.moved')
      .getByRole('button', { name: /^and \d+ more$/ })
      .click();
    expect(heading).toContain(`${await page.locator('.moved li').count()} findings`);
    expect(await focusIs(page, 'a')).toBe(true);
  });

  it('keeps its number and the field for it in sight while the sheet changes around them', async () => {
    const { page } = await opened('tidepool-first-draft');
    const handle = page.locator('.sheet td span[data-path*="microsteps"][tabindex]').first();
    await handle.scrollIntoViewIfNeeded();
    expect(await handle.getAttribute('title')).toBe(await handle.getAttribute('data-path'));
    await handle.focus();
    await page.keyboard.press('Enter');
    await page.locator('.hold input:focus').waitFor();
    const before = await below(page, '[data-held]');
    await page.keyboard.press('ArrowUp');
    await page.locator('.moved li').first().waitFor();
    await page.locator('.sheet[data-paper="true"]').waitFor();
    expect(Math.abs((await below(page, '[data-held]')) - before)).toBeLessThan(3);
    const keep = await page.getByRole('button', { name: 'Keep', exact: true }).boundingBox();
    expect((keep?.y ?? 0) + (keep?.height ?? 0)).toBeLessThan(844);
    await page.keyboard.press('Escape');
    await focusComesTo(page, 'span[data-path*="microsteps"]');
  });

  it('sees in the text the line that a cure changed, and again when it is undone', async () => {
    const { page } = await opened('tidepool-first-draft');
    await page.locator('.cm-content').waitFor();
    await page.locator('.worst a').first().click();
    await page.locator('.remedies').getByRole('button', { name: 'Take', exact: true }).first().click();
    await page.locator('.cm-pointed').first().waitFor();
    const taken = await page.locator('.cm-pointed').first().textContent();
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => page.locator('.cm-pointed').first().textContent(), PATIENT).not.toBe(taken);
    expect(await page.locator('.cm-pointed').first().isVisible()).toBe(true);
  });

  it('is led from a question to its form, and told what was taken from there', async () => {
    const { page } = await opened('tidepool-first-draft');
    await page.locator('.questions .to-form a').first().click();
    await page.locator('article h1').waitFor();
    await page.locator('.telling li').first().waitFor();
    expect(await page.locator('.telling li').count()).toBeLessThanOrEqual(3);
    const scrolled = (): Promise<number | undefined> =>
      page.evaluate(() => document.querySelector('.whole')?.scrollTop);
    await page.locator('.index a').last().click();
    await page.locator('article h1').waitFor();
    expect(await scrolled()).toBe(0);
    expect(await page.locator('article h1').isVisible()).toBe(true);
    await page.locator('.telling a').first().click();
    const field = page.locator('.form input');
    await field.first().waitFor();
    for (const one of await field.all()) await one.fill((await one.getAttribute('placeholder')) ?? '');
    await page.getByRole('button', { name: 'Work it out' }).click();
    await page.getByRole('button', { name: 'Take it into the book' }).click();
    const told = page.getByLabel('What was taken');
    await told.waitFor();
    expect(await told.textContent()).toMatch(/^Taken into the book: .+ of .+/);
    await expect.poll(() => told.textContent(), PATIENT).toMatch(/now stands at .*measured/);
  });

  it('is told apart what two demos of one title are', async () => {
    const served = await on.serveFiles();
    const { page } = await on.page();
    await page.goto(served.address);
    const names = page.locator('.demos li > b');
    await names.first().waitFor();
    const all = await names.allTextContents();
    expect(new Set(all).size).toBe(all.length);
  });

  it('finds what was written and not saved on top of the books, goes on with it, or throws it away', async () => {
    const served = await on.serveFiles();
    const { page } = await on.page();
    await page.goto(`${served.address}?demo=five-facts`);
    await laid(page);
    await type(page, 'title: Five facts', 'title: Mine');
    await page.getByText('kept by', { exact: false }).first().waitFor();
    await page.goto(served.address);
    await page.getByRole('button', { name: /^Go on with/ }).click();
    await laid(page);
    await page.waitForFunction(() => document.title.startsWith('Mine'));
    await page.goto(served.address);
    await page.getByRole('button', { name: 'Throw away …' }).click();
    await page.getByRole('button', { name: 'Throw it away for good' }).click();
    await page.locator('.kept').waitFor({ state: 'detached' });
    await page.goto(`${served.address}?demo=five-facts`);
    await laid(page);
    expect(await page.title()).toMatch(/^Five facts: /);
  });

  it('has no word left of a conflict that is settled', async () => {
    const { page, folder } = await opened('five-facts');
    await type(page, 'title: Five facts', 'title: Mine');
    await page.getByText('kept by', { exact: false }).first().waitFor();
    const address = page.url();
    await page.goto('about:blank');
    writeFileSync(join(folder, 'book.yaml'), 'book: 1\ntitle: Theirs\nrevision: A\n');
    await page.goto(address);
    await page.getByRole('heading', { name: 'Changed in two places' }).waitFor();
    expect(await page.locator('.notice').count()).toBe(1);
    await page.getByLabel("keep the desk's text").check();
    await page.getByRole('button', { name: 'Go on with these' }).click();
    await laid(page);
    expect(await page.locator('.notice').count()).toBe(0);
    await focusComesTo(page, '#sheet');
  });

  it('sees the old use beside the new one, never beside itself', async () => {
    const { page } = await opened('five-facts');
    await page.evaluate(() => {
      const pairs: string[][] = [];
      new MutationObserver(() => {
        for (const was of document.querySelectorAll('.was-here'))
          pairs.push([
            was.textContent.replace(' was ', ''),
            was.parentElement?.querySelector('.percent b')?.textContent ?? '',
          ]);
      }).observe(document.querySelector('.lying') ?? document.body, { childList: true, subtree: true });
      Object.assign(globalThis, { pairs });
    });
    await type(page, '220 mm/s', '300 mm/s');
    await page.locator('.was-here').first().waitFor();
    const pairs = await page.evaluate(() => (globalThis as unknown as { pairs: string[][] }).pairs);
    expect(pairs.length).toBeGreaterThan(0);
    expect(pairs.filter(([was, now]) => was === now)).toEqual([]);
  });

  it('finds on a narrow screen the look, saving on one line, and no number over another', async () => {
    const { page } = await opened('tidepool-first-draft', 390);
    await page.locator('.short-look select').selectOption({ label: 'blueprint' });
    const save = await page.getByRole('button', { name: /^Save/ }).boundingBox();
    expect(save?.height).toBeLessThan(45);
    await page.locator('.worst a').first().click();
    await page.locator('.rests-on summary').click();
    const overlaps = await page.evaluate(() =>
      [...document.querySelectorAll('.slip .entry-head')].filter((head) => {
        const [ref, value] = ['.ref', '.value'].map((one) => head.querySelector(one)?.getBoundingClientRect());
        return ref && value && ref.right > value.left && ref.bottom > value.top && ref.top < value.bottom;
      }),
    );
    expect(overlaps).toHaveLength(0);
  });
});
