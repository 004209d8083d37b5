import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { chromiumPath } from './chromium.ts';
import { countOf, laid, stage, type, type Stage } from './stage.ts';

/** Slow cores under load must not turn a right answer into a failure. */
const PATIENT = { timeout: 30_000 };

describe.skipIf(!chromiumPath)('the desk in a browser', () => {
  let on: Stage;
  beforeAll(async () => {
    on = await stage();
  });
  afterAll(() => on.end());

  const opened = async (example: string) => {
    const folder = on.copyOf(example);
    const served = await on.serve({ folder });
    const { page, troubles } = await on.page();
    await page.goto(served.address);
    await laid(page);
    return { folder, served, page, troubles, text: () => readFileSync(join(folder, 'book.yaml'), 'utf8') };
  };

  it('shows the set of the book that it was opened with, and nothing forbidden happens', async () => {
    const { page, troubles } = await opened('tidepool');
    expect(await page.title()).toMatch(/^Tidepool: /);
    expect(await page.locator('.register a').count()).toBeGreaterThan(1);
    expect(await page.locator('.title-block').textContent()).toContain('Tidepool');
    await page.waitForSelector('.questions');
    expect(await page.locator('.questions li').count()).toBeLessThanOrEqual(3);
    expect(troubles).toEqual([]);
  });

  it('moves a verdict as a number is edited, shows old and new, and saves', async () => {
    const { page, text, troubles } = await opened('tidepool-first-draft');
    const failing = await countOf(page, 'fails');
    const before = text();
    await type(page, 'speed: 300 mm/s', 'speed: 60 mm/s');
    await page.waitForSelector('.moved li');
    expect(await page.locator('.moved li svg').first().getAttribute('aria-label')).toMatch(/Before: .* Now: /);
    expect(text()).toBe(before);
    expect(await page.locator('.saving').textContent()).toContain('not saved');
    await page.keyboard.press('Control+s');
    await page.getByText('saved', { exact: true }).waitFor();
    expect(text()).toBe(before.replace('speed: 300 mm/s', 'speed: 60 mm/s'));
    expect(failing).toBeGreaterThan(0);
    expect(troubles).toEqual([]);
  });

  it('keeps the last good sheet while the text cannot be read, and says what is in the way', async () => {
    const { page } = await opened('five-facts');
    await type(page, '220 mm/s', '220');
    await page.getByText('Of an earlier text.').waitFor();
    expect(await page.locator('.text-problems').textContent()).toContain('speed');
    expect(await page.locator('.sheet h1').count()).toBe(1);
    await page.keyboard.press('Control+z');
    await page.getByText('Of an earlier text.').waitFor({ state: 'detached' });
    expect(await page.locator('.text-problems').count()).toBe(0);
  });

  it('tries a remedy, takes it and undoes it', async () => {
    const { page, text, troubles } = await opened('tidepool-first-draft');
    const before = text();
    const failing = await countOf(page, 'fails');
    const finding = page
      .locator('.finding.v-fails')
      .filter({ hasText: /working/ })
      .first();
    await finding.locator('a[href^="#working-"]').click();
    await page.locator('.slip .entry').first().waitFor();
    await page.locator('.slip .remedies').getByRole('button', { name: 'Try' }).first().click();
    await page.locator('.tried li').first().waitFor();
    expect(await countOf(page, 'fails')).toBe(failing);
    await page.getByRole('button', { name: 'Take it' }).click();
    await page.waitForFunction(
      (was) => Number(document.querySelector('.sheet .strip li.v-fails .count')?.textContent) < was,
      failing,
    );
    expect(await page.getByRole('button', { name: 'Undo' }).getAttribute('title')).toContain('remedy');
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.waitForFunction(
      (was) => Number(document.querySelector('.sheet .strip li.v-fails .count')?.textContent) === was,
      failing,
    );
    expect(await page.locator('.saving').textContent()).toBe('saved');
    expect(text()).toBe(before);
    expect(troubles).toEqual([]);
  });

  it('turns a number that was taken hold of, and puts it back', async () => {
    const { page } = await opened('tidepool');
    await page.waitForSelector('.questions');
    const handle = page.locator('.questions [data-path]').first();
    await handle.focus();
    await page.keyboard.press('Enter');
    const field = page.locator('.hold input:focus');
    const was = await field.inputValue();
    await page.keyboard.press('ArrowUp');
    await expect.poll(() => field.inputValue(), PATIENT).not.toBe(was);
    await page.getByRole('button', { name: 'Undo' }).and(page.locator(':enabled')).waitFor();
    await page.keyboard.press('Escape');
    await page.locator('.hold').waitFor({ state: 'detached' });
    await expect.poll(() => page.locator('.saving').textContent(), PATIENT).toBe('saved');
  });

  it('refuses what cannot stand there, and puts each number at its own place', async () => {
    const { page, text } = await opened('tidepool-first-draft');
    await page.waitForSelector('.questions');
    const handles = page.locator('.questions [data-path]');
    await handles.first().click();
    const field = page.locator('.hold input:focus');
    await field.fill('wide');
    await page.keyboard.press('Enter');
    await page.locator('.hold .problem').waitFor();
    expect(await page.locator('.saving').textContent()).toBe('saved');
    const path = (await handles.first().getAttribute('data-path')) ?? '';
    await field.fill('0.77..0.78 ohm');
    // At once to another number, before anything was put.
    await handles.nth(1).dispatchEvent('click');
    await expect.poll(() => page.locator('.hold .path').textContent(), PATIENT).not.toBe(path);
    await expect.poll(() => page.locator('.hold input').inputValue(), PATIENT).toMatch(/\d/);
    expect(await page.locator('.hold input').inputValue()).not.toContain('0.77');
    await page.keyboard.press('Escape');
    await page.keyboard.press('Control+s');
    await page.getByText('saved', { exact: true }).waitFor();
    const changed = text()
      .split('\n')
      .filter((line) => line.includes('0.77..0.78 ohm'));
    expect(changed).toEqual([expect.stringContaining(path.split('.').at(-1) ?? '')]);
  });

  it('turns a number that is drawn sideways', async () => {
    const { page } = await opened('tidepool');
    await page.waitForSelector('.questions');
    const handle = page.locator('.questions [data-path]').first();
    await handle.scrollIntoViewIfNeeded();
    const box = await handle.boundingBox();
    const [x, y] = [(box?.x ?? 0) + 12, (box?.y ?? 0) + 8];
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x + 70, y, { steps: 5 });
    await page.mouse.up();
    await page.locator('.moved li').first().waitFor();
    expect(await page.getByRole('button', { name: 'Undo' }).getAttribute('title')).toMatch(/ → /);
    await page.getByRole('button', { name: 'Put back' }).click();
    await expect.poll(() => page.locator('.saving').textContent(), PATIENT).toBe('saved');
  });

  it('starts the engine anew when it dies, says so, and loses nothing', async () => {
    const folder = on.copyOf('five-facts');
    const served = await on.serve({ folder });
    const { page } = await on.page();
    await page.addInitScript(() => {
      const engines: Worker[] = [];
      globalThis.Worker = class extends Worker {
        constructor(address: string | URL, options?: WorkerOptions) {
          super(address, options);
          engines.push(this);
        }
      };
      Object.assign(globalThis, { engines });
    });
    await page.goto(served.address);
    await laid(page);
    await page.evaluate(() => {
      const [engine] = (globalThis as unknown as { engines: Worker[] }).engines;
      engine?.terminate();
      engine?.dispatchEvent(new ErrorEvent('error', { message: 'out of memory' }));
    });
    await page.getByText('was started anew', { exact: false }).waitFor();
    await type(page, 'Five facts', 'Six facts');
    await page.waitForFunction(() => document.title.startsWith('Six facts'));
  });

  it('lies on two screens at once, and each knows what the other saved', async () => {
    const { page, served } = await opened('five-facts');
    const { page: other } = await on.page();
    await other.goto(served.address);
    await laid(other);
    await type(page, 'Five facts', 'Six facts');
    await page.keyboard.press('Control+s');
    await other.waitForFunction(() => document.title.startsWith('Six facts'));
    expect(await other.locator('.saving').textContent()).toBe('saved');
    await page.getByText('saved', { exact: true }).waitFor();
    expect(await page.getByText('was changed on the disk', { exact: false }).count()).toBe(0);
  });

  it('marks on the sheet what the caret stands at, and in the text what is pointed at on the sheet', async () => {
    const { page } = await opened('tidepool');
    await page.waitForSelector('.questions');
    const handle = page.locator('.questions [data-path]').first();
    const path = await handle.getAttribute('data-path');
    await handle.click();
    await page.locator('.cm-pointed').first().waitFor();
    await page.getByRole('button', { name: 'Show in the text' }).click();
    await page.locator(`.questions [data-path="${path}"][data-at-caret]`).waitFor();
    await expect.poll(() => page.locator('.key-foot').textContent(), PATIENT).toContain(path);
  });

  it('proposes what could stand in the text, and takes nothing by itself', async () => {
    const { page } = await opened('tidepool-first-draft');
    await type(page, 'travel: 560 mm', 'travel: 560 mm');
    await page.keyboard.press('Enter');
    await page.keyboard.type('incl');
    await page.locator('.cm-tooltip-autocomplete').waitFor();
    expect(await page.locator('.cm-tooltip-autocomplete [aria-selected="true"]').count()).toBe(0);
    await page.keyboard.press('ArrowDown');
    await page.locator('.cm-tooltip-autocomplete [aria-selected="true"]').waitFor();
    await page.keyboard.press('Escape');
    await page.locator('.cm-tooltip-autocomplete').waitFor({ state: 'detached' });
  });

  it('leads from an input of the working to its line in the text', async () => {
    const { page } = await opened('tidepool');
    await page.locator('.finding a[href^="#working-"]').first().click();
    await page.locator('.rests-on summary').click();
    const input = page.locator('.slip [data-path^="axes."]').first();
    const key = (await input.getAttribute('data-path'))?.split('.').at(-1);
    await input.click();
    await expect.poll(() => page.locator('.cm-activeLine').textContent(), PATIENT).toContain(`${key}:`);
  });

  it('unfolds a working on the sheet, and keeps it so when the sheet is drawn anew', async () => {
    const { page } = await opened('five-facts');
    const working = page.locator('.sheet details.working').first();
    expect(await working.locator('.entry').count()).toBe(0);
    await working.locator('summary').click();
    await working.locator('.entry').first().waitFor();
    await type(page, '220 mm/s', '210 mm/s');
    await page.locator('.moved li').first().waitFor();
    await expect.poll(() => page.locator('.sheet details.working[open] .entry').count(), PATIENT).toBeGreaterThan(0);
  });

  it('lets choose where the book was changed here and on the disk', async () => {
    const { page, folder, text } = await opened('five-facts');
    await type(page, 'title: Five facts', 'title: Mine');
    await page.getByText('not saved', { exact: false }).first().waitFor();
    const theirs = text().replace('title: Five facts', 'title: Theirs');
    writeFileSync(join(folder, 'book.yaml'), theirs);
    await page.getByRole('heading', { name: 'Changed in two places' }).waitFor();
    expect(await page.locator('.conflict .differs').allTextContents()).toEqual(['title: Mine', 'title: Theirs']);
    expect(text()).toBe(theirs);
    await page.getByLabel("keep the desk's text").check();
    await page.getByRole('button', { name: 'Go on with these' }).click();
    await laid(page);
    await page.keyboard.press('Control+s');
    await page.getByText('saved', { exact: true }).waitFor();
    expect(text()).toBe(theirs.replace('title: Theirs', 'title: Mine'));
  });

  it('follows a change on the disk where nothing was changed here, and undoes even that', async () => {
    const { page, folder, text } = await opened('five-facts');
    writeFileSync(join(folder, 'book.yaml'), text().replace('title: Five facts', 'title: Another hand'));
    await page.waitForFunction(() => document.title.startsWith('Another hand'));
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.waitForFunction(() => document.title.startsWith('Five facts'));
    expect(await page.locator('.saving').textContent()).toContain('not saved');
  });
});
