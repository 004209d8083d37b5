/** What the tests of the desk stand on: a built desk, a book in a folder of its own, a server, a page. */
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { buildDesk } from '../../scripts/build-desk.mjs';
import { serveDesk, type DeskOptions, type Served } from '../../src/workbench/server/index.ts';
import { launchChromium } from './chromium.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));

export interface Stage {
  readonly scratch: string;
  /** Folder of the built desk. */
  readonly assets: string;
  readonly browser: Browser;
  /** Copies an example into a folder of its own. */
  readonly copyOf: (example: string) => string;
  readonly bookWith: (text: string) => string;
  readonly serve: (options?: Partial<DeskOptions>) => Promise<Served>;
  /** Serves the built files as any server of files does, under a path of their own. */
  readonly serveFiles: () => Promise<{ readonly address: string; readonly close: () => Promise<void> }>;
  /** A page in a browser profile of its own; what goes wrong in it is collected. */
  readonly page: (options?: BrowserContextOptions) => Promise<Watched>;
  readonly end: () => Promise<void>;
}

export interface Watched {
  readonly page: Page;
  /** Errors of scripts, and what the page's policy forbade. */
  readonly troubles: readonly string[];
}

const types: Readonly<Record<string, string>> = {
  html: 'text/html; charset=utf-8',
  js: 'text/javascript; charset=utf-8',
  css: 'text/css; charset=utf-8',
  json: 'application/json',
  svg: 'image/svg+xml',
  woff2: 'font/woff2',
};

/** Below which the files are served: a desk knows nothing of it. */
const BELOW = '/some/where/';

export const stage = async (): Promise<Stage> => {
  const scratch = mkdtempSync(join(tmpdir(), 'gantrybook-desk-'));
  const assets = join(scratch, 'assets');
  await buildDesk({ into: assets });
  const browser = await launchChromium();
  const closing: (() => Promise<void>)[] = [];
  let count = 0;

  const folder = (): string => {
    count += 1;
    const made = join(scratch, `book-${count}`);
    mkdirSync(made);
    return made;
  };
  return {
    scratch,
    assets,
    browser,
    copyOf: (example) => {
      const made = folder();
      cpSync(join(root, 'examples', example), made, { recursive: true });
      return made;
    },
    bookWith: (text) => {
      const made = folder();
      writeFileSync(join(made, 'book.yaml'), text);
      return made;
    },
    serve: async (options = {}) => {
      const served = await serveDesk({ assets, port: 0, ...options });
      closing.push(served.close);
      return served;
    },
    serveFiles: async () => {
      const server = createServer((request, response) => {
        const path = new URL(request.url ?? '/', 'http://127.0.0.1').pathname;
        const name = path.startsWith(BELOW) ? path.slice(BELOW.length) || 'index.html' : 'no';
        const file = join(assets, name);
        const isThere = !name.includes('..') && statSync(file, { throwIfNoEntry: false })?.isFile() === true;
        response.writeHead(isThere ? 200 : 404, {
          'content-type': types[name.split('.').at(-1) ?? ''] ?? 'text/plain',
        });
        response.end(isThere ? readFileSync(file) : 'There is no such file.');
      });
      await new Promise<void>((resolve) => server.listen({ host: '127.0.0.1', port: 0 }, resolve));
      const bound = server.address();
      const port = typeof bound === 'object' && bound !== null ? bound.port : 0;
      const close = (): Promise<void> =>
        new Promise((resolve) => {
          server.close(() => resolve());
          server.closeAllConnections();
        });
      closing.push(close);
      return { address: `http://127.0.0.1:${port}${BELOW}`, close };
    },
    page: async (options = {}) => {
      const context = await browser.newContext({ viewport: { width: 1280, height: 800 }, ...options });
      // Slow cores under load must not turn a right answer into a failure.
      context.setDefaultTimeout(90_000);
      const page = await context.newPage();
      const troubles: string[] = [];
      page.on('pageerror', (error) => troubles.push(String(error)));
      page.on('console', (message) => {
        // A page from a server of files asks once whether that server has a book.
        if (message.type() === 'error' && !/404|ERR_/.test(message.text())) troubles.push(message.text());
      });
      closing.push(() => context.close());
      return { page, troubles };
    },
    end: async () => {
      for (const close of closing.toReversed()) await close().catch(() => undefined);
      await browser.close();
      rmSync(scratch, { recursive: true, force: true });
    },
  };
};

/** The sheet in front is there as a whole. */
export const laid = (page: Page): Promise<unknown> => page.waitForSelector('.sheet[data-complete="true"]');

/** Finds a stretch of the text by the editor's search and types over it. */
export const type = async (page: Page, from: string, to: string): Promise<void> => {
  await page.locator('.editor .cm-content').click();
  await page.keyboard.press('Control+Home');
  await page.keyboard.press('Control+f');
  await page.locator('.editor .cm-search').waitFor();
  await page.keyboard.type(from);
  await page.keyboard.press('Enter');
  await page.keyboard.press('Escape');
  await page.keyboard.insertText(to);
};

/** How many findings of the sheet in front stand so, by the strip. */
export const countOf = async (page: Page, verdict: string): Promise<number> =>
  Number(await page.locator(`.sheet .strip li.v-${verdict} .count`).textContent());
