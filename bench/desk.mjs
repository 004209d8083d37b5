// How fast the desk is in a browser: ready after loading, and the verdict after a key press. Sizes come from the build.
import { mkdtempSync, readFileSync, rmSync, statSync } from 'node:fs';
import { createServer } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { buildDesk, LIMITS } from '../scripts/build-desk.mjs';
import { onPath } from '../scripts/tools.mjs';

const LOADS = 7;
const PRESSES = 60;
/** Between key presses, as a person who looks at what they do, in ms. */
const BETWEEN = 350;

const types = {
  html: 'text/html',
  js: 'text/javascript',
  css: 'text/css',
  json: 'application/json',
  svg: 'image/svg+xml',
};

function serve(folder) {
  const server = createServer((request, response) => {
    const name = new URL(request.url, 'http://127.0.0.1').pathname.slice(1) || 'index.html';
    const file = join(folder, name);
    const isThere = !name.includes('..') && statSync(file, { throwIfNoEntry: false })?.isFile();
    response.writeHead(isThere ? 200 : 404, { 'content-type': types[name.split('.').at(-1)] ?? 'font/woff2' });
    response.end(isThere ? readFileSync(file) : '');
  });
  return new Promise((resolve) => server.listen(0, '127.0.0.1', () => resolve(server)));
}

/** Runs in the page before it: notes when verdicts are drawn that belong to the text of a key press. */
function watch() {
  const times = { pressed: 0, ready: 0, moved: [] };
  globalThis.times = times;
  let version;
  const look = () => {
    const now = document.querySelector('.leaf-sheet')?.getAttribute('data-version') ?? undefined;
    if (now === version || now === undefined || now === '0') return;
    const isFirst = version === undefined;
    version = now;
    // When the frame with it is drawn.
    requestAnimationFrame(() => {
      const at = performance.now();
      if (isFirst) times.ready = at;
      else if (times.pressed > 0) times.moved.push(at - times.pressed);
      times.pressed = 0;
    });
  };
  new MutationObserver(look).observe(document, { subtree: true, childList: true, attributes: true });
  addEventListener('keydown', (event) => /^\d$/.test(event.key) && (times.pressed = performance.now()), true);
}

const sorted = (times) => times.toSorted((a, b) => a - b);
const percentile = (times, share) => sorted(times)[Math.min(times.length - 1, Math.ceil(times.length * share) - 1)];

/**
 * Measures the desk.
 * @returns milliseconds until it is ready, from a key press to its verdicts, and the sizes in bytes, each with its limit;
 *   nothing where there is no browser
 */
export async function deskSpeed() {
  const executablePath = process.env['CHROMIUM'] ?? onPath('chromium', 'chromium-browser', 'google-chrome');
  if (executablePath === undefined) return undefined;
  const scratch = mkdtempSync(join(tmpdir(), 'gantrybook-desk-bench-'));
  const { sizes } = await buildDesk({ into: scratch });
  const server = await serve(scratch);
  const browser = await chromium.launch({ executablePath, args: process.getuid?.() === 0 ? ['--no-sandbox'] : [] });
  try {
    const address = `http://127.0.0.1:${server.address().port}/?demo=tidepool`;
    const open = async () => {
      const page = await (await browser.newContext({ viewport: { width: 1280, height: 800 } })).newPage();
      await page.addInitScript(watch);
      await page.goto(address);
      await page.waitForFunction(() => globalThis.times.ready > 0);
      return page;
    };
    const ready = [];
    for (let i = 0; i < LOADS; i++) {
      const page = await open();
      ready.push(await page.evaluate(() => globalThis.times.ready));
      await page.context().close();
    }

    const page = await open();
    await page.locator('.cm-content').click();
    await page.waitForSelector('.questions');
    await page.keyboard.press('Control+Home');
    await page.keyboard.press('Control+f');
    await page.keyboard.type('speed: 220 mm/s');
    await page.keyboard.press('Enter');
    await page.keyboard.press('Escape');
    // Before the second figure of the number.
    await page.keyboard.press('ArrowLeft');
    for (let i = 0; i < 'speed: 2'.length; i++) await page.keyboard.press('ArrowRight');
    const replaced = async (digit) => {
      await page.keyboard.press('Shift+ArrowRight');
      await page.waitForTimeout(BETWEEN);
      const before = await page.evaluate(() => globalThis.times.moved.length);
      await page.keyboard.press(digit);
      await page.waitForFunction((count) => globalThis.times.moved.length > count, before);
      await page.keyboard.press('ArrowLeft');
    };
    // From 201 up, never the same number twice: what was worked out before would only be looked up.
    for (let i = 1; i <= PRESSES; i++) {
      if (i % 10 === 0) await replaced(String(i / 10));
      await page.keyboard.press('ArrowRight');
      await replaced(String(i % 10));
      await page.keyboard.press('ArrowLeft');
    }
    const moved = await page.evaluate(() => globalThis.times.moved);
    return { ready, moved, median: percentile(moved, 0.5), p95: percentile(moved, 0.95), sizes, limits: LIMITS };
  } finally {
    await browser.close();
    server.close();
    rmSync(scratch, { recursive: true, force: true });
  }
}

if (process.argv[1]?.endsWith('desk.mjs')) {
  const speed = await deskSpeed();
  if (speed === undefined) console.log('There is no chromium here: the speed of the desk was not measured.');
  else {
    const { ready, median, p95, sizes, limits } = speed;
    const held = (holds) => (holds ? 'held  ' : 'MISSED');
    console.log(
      `${held(percentile(ready, 0.5) <= 1000)}  desk, ready after loading: ${Math.round(percentile(ready, 0.5))} ms of at most 1000 ms`,
    );
    console.log(
      `${held(p95 <= 50)}  desk, key press to verdicts: ${p95.toFixed(0)} ms at the 95th percentile of at most 50 ms, median ${median.toFixed(0)} ms`,
    );
    for (const name of ['page', 'worker'])
      console.log(
        `${held(sizes[name] <= limits[name])}  desk, ${name}, gzipped: ${(sizes[name] / 1000).toFixed(1)} kB of at most ${limits[name] / 1000} kB`,
      );
  }
}
