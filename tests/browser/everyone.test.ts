import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { chromiumPath } from './chromium.ts';
import { laid, stage, type Stage } from './stage.ts';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

interface Violations {
  readonly violations: readonly { readonly id: string; readonly nodes: readonly { readonly target: unknown }[] }[];
}

/** What axe-core objects to in some part of the page, as lines. */
const objections = async (page: Page, part = 'body'): Promise<readonly string[]> => {
  const where = JSON.stringify({ include: part.split(', ') });
  const found = (await page.evaluate(`axe.run(${where}, { resultTypes: ["violations"] })`)) as Violations;
  return found.violations.flatMap(({ id, nodes }) => nodes.map(({ target }) => `${id}: ${JSON.stringify(target)}`));
};

/** Width of what is drawn against the width of the window. */
const overflow = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

describe.skipIf(!chromiumPath)('the desk for everyone', () => {
  let on: Stage;
  let address: string;
  beforeAll(async () => {
    on = await stage();
    address = (await on.serveFiles()).address;
  });
  afterAll(() => on.end());

  it.each(['light', 'dark'] as const)('has nothing that axe-core objects to, %s, on each page', async (colorScheme) => {
    // The policy of the page would keep the judge out.
    const { page } = await on.page({ colorScheme, bypassCSP: true });
    await page.addInitScript(axe);
    await page.goto(`${address}?demo=tidepool`);
    await laid(page);
    await page.waitForSelector('.questions');
    await page.locator('.cm-content').waitFor();
    expect(await objections(page)).toEqual([]);
    await page.locator('.finding a[href^="#working-"]').first().click();
    await page.locator('.slip .entry').first().waitFor();
    await page.locator('.sheet [data-path][tabindex]').first().click();
    await page.locator('.hold input:focus').waitFor();
    expect(await objections(page, '.slip, .hold')).toEqual([]);
    await page.keyboard.press('Escape');
    for (const name of ['Bench', 'Formulas']) {
      await page.getByRole('navigation', { name: 'Pages' }).getByRole('link', { name }).click();
      await page.locator('.index a').first().click();
      await page.locator('article h1').waitFor();
      expect(await objections(page)).toEqual([]);
    }
    for (const name of ['Books', 'About']) {
      await page.getByRole('navigation', { name: 'Pages' }).getByRole('link', { name }).click();
      await page.locator('main h1').waitFor();
      expect(await objections(page)).toEqual([]);
    }
  });

  it('can be worked by keyboard alone: a finding, its working, a number, the text and out of it', async () => {
    const { page } = await on.page();
    await page.goto(`${address}?demo=tidepool`);
    await laid(page);
    await page.locator('.cm-content').waitFor();
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await expect.poll(() => page.evaluate(() => document.activeElement?.id)).toBe('sheet');
    const tabTo = async (selector: string): Promise<void> => {
      for (let presses = 0; presses < 80; presses++) {
        await page.keyboard.press('Tab');
        if (await page.evaluate((one) => document.activeElement?.matches(one) === true, selector)) return;
      }
      throw new Error(`the keyboard does not reach ${selector}`);
    };
    await tabTo('.sheet [data-path]');
    await page.keyboard.press('Enter');
    await page.locator('.hold input:focus').waitFor();
    await page.keyboard.press('Escape');
    await expect.poll(() => page.evaluate(() => document.activeElement?.hasAttribute('data-path'))).toBe(true);
    await tabTo('.finding a[href^="#working-"]');
    await page.keyboard.press('Enter');
    await page.locator('.slip .entry').first().waitFor();
    await page.locator('.cm-content').focus();
    await page.keyboard.press('Escape');
    await page.keyboard.press('Tab');
    expect(await page.evaluate(() => document.activeElement?.closest('.editor') === null)).toBe(true);
  });

  it.each([390, 1280, 1920])('fits into %i px, sheet and text beside each other or one on top', async (width) => {
    const { page } = await on.page({
      viewport: { width, height: 844 },
      hasTouch: width === 390,
      isMobile: width === 390,
    });
    await page.goto(`${address}?demo=tidepool-first-draft`);
    await laid(page);
    expect(await overflow(page)).toBe(0);
    const lying = await page.locator('.lying').boundingBox();
    expect((lying?.x ?? 0) + (lying?.width ?? 0)).toBeLessThanOrEqual(width);
    if (width > 860) {
      const text = await page.locator('.leaf-text').boundingBox();
      expect(text?.x).toBeGreaterThan((lying?.x ?? 0) + (lying?.width ?? 0));
      return;
    }
    expect(await page.locator('.leaf-text').isVisible()).toBe(false);
    await page.getByRole('button', { name: 'Text', exact: true }).tap();
    expect(await page.locator('.leaf-text').isVisible()).toBe(true);
    expect(await page.locator('.lying').isVisible()).toBe(false);
    const small = await page.evaluate(() =>
      [...document.querySelectorAll('button, .ways a, .register a')]
        .map((one) => one.getBoundingClientRect())
        .filter(({ width: wide, height }) => wide > 0 && height < 40),
    );
    expect(small).toEqual([]);
    for (const page_ of ['bench', 'formulas', 'begin', 'about']) {
      await page.goto(`${address}?demo=tidepool-first-draft#/${page_}`);
      await page.locator('.whole').waitFor();
      expect(await overflow(page)).toBe(0);
    }
  });

  it('moves nothing by itself for whoever asks for that', async () => {
    const { page } = await on.page({ reducedMotion: 'reduce' });
    await page.goto(`${address}?demo=five-facts`);
    await laid(page);
    const handle = page.locator('.sheet [data-path][tabindex]').first();
    await handle.click();
    await page.locator('.hold input:focus').waitFor();
    await page.keyboard.press('ArrowUp');
    await page.locator('.moved li').first().waitFor();
    const animations = await page.evaluate(() => document.getAnimations().length);
    expect(animations).toBe(0);
  });

  it('prints the sheet in black and white, without the desk around it', async () => {
    const { page } = await on.page({ colorScheme: 'dark' });
    await page.goto(`${address}?demo=five-facts`);
    await laid(page);
    // The screen folds the workings; paper has them all, and the screen then folds them again.
    expect(await page.locator('.sheet .entry').count()).toBe(0);
    await page.locator('.sheet[data-paper="true"]').waitFor();
    await page.evaluate(() => dispatchEvent(new Event('beforeprint')));
    const workings = await page.locator('.sheet details.working').count();
    expect(await page.locator('.sheet details.working .entries').count()).toBe(workings);
    expect(workings).toBeGreaterThan(0);
    await page.evaluate(() => dispatchEvent(new Event('afterprint')));
    expect(await page.locator('.sheet .entry').count()).toBe(0);
    await page.emulateMedia({ media: 'print' });
    expect(await page.locator('.edge').isVisible()).toBe(false);
    expect(await page.locator('.leaf-text').isVisible()).toBe(false);
    expect(await page.locator('.sheet').isVisible()).toBe(true);
    const ink = await page.evaluate(() => {
      const style = getComputedStyle(document.documentElement);
      return [style.getPropertyValue('--paper').trim(), style.getPropertyValue('--ink').trim()];
    });
    expect(ink).toEqual(['#fff', '#000'].map((short) => expect.stringMatching(`^${short}(${short.slice(1)})?$`)));
  });
});
