/** What the desk's server answers, without a network. */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Hono } from 'hono';
import { afterAll, afterEach, describe, expect, it, vi } from 'vitest';
import { assetsIn } from '../assets.ts';
import { booksOn, type Books } from '../books.ts';
import { deskAnswers } from '../desk.ts';
import { bookAt, hashOf } from '../texts.ts';
import { book, filesIn, page, scratch } from './scratch.ts';

const shelf = scratch();
afterAll(shelf.remove);
const assets = assetsIn(shelf.folder(page));

const open: Books[] = [];
afterEach(async () => {
  await Promise.all(open.splice(0).map((books) => books.close()));
});

const pair = ([name, value]: readonly string[]): Readonly<Record<string, string>> =>
  name === undefined || value === undefined ? {} : { [name]: value };

const PORT = 4860;
const OWN = `127.0.0.1:${PORT}`;

interface Desk {
  readonly folder: string;
  readonly app: Hono;
  readonly ask: (path: string, init?: RequestInit) => Promise<Response>;
  readonly send: (
    method: string,
    path: string,
    body: unknown,
    headers?: Readonly<Record<string, string>>,
  ) => Promise<Response>;
}

const desk = async ({
  files = { 'book.yaml': book() } as Record<string, string>,
  canSave = true,
  empty = false,
} = {}): Promise<Desk> => {
  const folder = shelf.folder(files);
  const books = await booksOn(empty ? undefined : { at: bookAt(folder), canSave }, empty ? folder : shelf.home);
  open.push(books);
  const app = deskAnswers(books, assets, () => PORT);
  const ask: Desk['ask'] = async (path, init = {}) =>
    app.request(path, { ...init, headers: { host: OWN, ...(init.headers as Record<string, string>) } });
  return {
    folder,
    app,
    ask,
    send: (method, path, body, headers = {}) =>
      ask(path, {
        method,
        body: typeof body === 'string' ? body : JSON.stringify(body),
        headers: { origin: `http://${OWN}`, 'content-type': 'application/json', ...headers },
      }),
  };
};

describe('files of the desk', () => {
  it('are given as what they are, under a policy that lets nothing else in', async () => {
    const { ask } = await desk();
    const answer = await ask('/');
    expect([answer.status, await answer.text()]).toEqual([200, page['index.html']]);
    expect(answer.headers.get('content-type')).toBe('text/html; charset=utf-8');
    const policy = answer.headers.get('content-security-policy') ?? '';
    for (const part of [
      "default-src 'none'",
      "script-src 'self'",
      "require-trusted-types-for 'script'",
      "frame-ancestors 'none'",
    ])
      expect(policy.split('; ')).toContain(part);
    expect(policy).not.toMatch(/unsafe-eval|script-src[^;]*unsafe|\*|http/);
    expect((await ask('/page-1a.js')).headers.get('content-type')).toBe('text/javascript; charset=utf-8');
    expect((await ask('/fonts/text.woff2')).headers.get('content-type')).toBe('font/woff2');
  });

  it('are not sent again while they are the same', async () => {
    const { ask } = await desk();
    const etag = (await ask('/page-1a.js')).headers.get('etag') ?? '';
    const again = await ask('/page-1a.js', { headers: { 'if-none-match': etag } });
    expect([again.status, await again.text()]).toEqual([304, '']);
    expect((await ask('/page-1a.js', { headers: { 'if-none-match': '"other"' } })).status).toBe(200);
  });

  it('carry the same headers as every other answer', async () => {
    const { ask, send } = await desk();
    const answers = [
      await ask('/'),
      await ask('/nothing'),
      await ask('/book'),
      await ask('/', { headers: { host: 'shop.example' } }),
      await send('PUT', '/book', '{'),
      await send('DELETE', '/book', {}),
    ];
    expect(answers.map(({ status }) => status)).toEqual([200, 404, 200, 403, 400, 405]);
    for (const { headers } of answers) {
      expect(headers.get('content-security-policy')).toContain("default-src 'none'");
      expect(headers.get('x-content-type-options')).toBe('nosniff');
      expect(headers.get('cross-origin-resource-policy')).toBe('same-origin');
      expect(headers.get('access-control-allow-origin')).toBeNull();
    }
  });

  it('cannot be there without a page', () => {
    expect(() => assetsIn(join(shelf.home, 'nowhere'))).toThrow('npm run build');
    expect(() => assetsIn(shelf.folder({ 'page.js': '' }))).toThrow('npm run build');
  });
});

describe('a page from elsewhere', () => {
  it.each<Readonly<Record<string, string>>>([
    { host: 'shop.example' },
    { host: `shop.example:${PORT}` },
    { host: '127.0.0.1' },
    { host: `127.0.0.1.shop.example:${PORT}` },
    { host: `0.0.0.0:${PORT}` },
    { origin: 'http://shop.example' },
    { origin: 'null' },
    { origin: `https://${OWN}` },
    { origin: 'http://127.0.0.1:1' },
    { origin: `http://localhost:${PORT}` },
    { 'sec-fetch-site': 'cross-site' },
    { 'sec-fetch-site': 'same-site' },
  ])('gets and changes nothing: %o', async (headers) => {
    const { ask, send, folder } = await desk();
    for (const path of ['/', '/book', '/changes', '/page-1a.js'])
      expect((await ask(path, { headers: { ...headers } })).status).toBe(403);
    const saved = { files: { 'book.yaml': 'theirs' }, seen: { 'book.yaml': hashOf(book()) } };
    expect((await send('PUT', '/book', saved, headers)).status).toBe(403);
    expect((await send('POST', '/books', { name: 'theirs', files: { 'book.yaml': 'x' } }, headers)).status).toBe(403);
    expect(filesIn(folder)).toEqual({ 'book.yaml': book() });
  });

  it('cannot save without saying whence it comes, nor by a form', async () => {
    const { ask, send, folder } = await desk();
    const saved = { files: { 'book.yaml': 'theirs' }, seen: { 'book.yaml': hashOf(book()) } };
    const body = JSON.stringify(saved);
    expect((await ask('/book', { method: 'PUT', body, headers: { 'content-type': 'application/json' } })).status).toBe(
      403,
    );
    for (const type of [
      'text/plain',
      'application/x-www-form-urlencoded',
      'multipart/form-data',
      'application/json; x=y',
    ])
      expect((await send('PUT', '/book', saved, { 'content-type': type })).status).toBe(415);
    expect((await send('PUT', '/book', saved, { 'sec-fetch-site': 'none' })).status).toBe(403);
    expect(filesIn(folder)).toEqual({ 'book.yaml': book() });
  });

  it('is told from our own, which is let in by each of its names', async () => {
    const { ask } = await desk();
    for (const host of [OWN, `localhost:${PORT}`, `[::1]:${PORT}`])
      for (const more of [
        [],
        ['origin', `http://${host}`],
        ['sec-fetch-site', 'same-origin'],
        ['sec-fetch-site', 'none'],
      ])
        expect((await ask('/book', { headers: { host, ...pair(more) } })).status).toBe(200);
  });

  it('may hold a link that somebody follows to the first page, and to nothing else', async () => {
    const { ask } = await desk();
    const headers = { 'sec-fetch-site': 'cross-site', 'sec-fetch-mode': 'navigate', 'sec-fetch-dest': 'document' };
    expect((await ask('/', { headers })).status).toBe(200);
    for (const path of ['/book', '/changes', '/page-1a.js', '/index.html'])
      expect((await ask(path, { headers })).status).toBe(403);
    for (const dest of ['iframe', 'script', 'empty'])
      expect((await ask('/', { headers: { ...headers, 'sec-fetch-dest': dest } })).status).toBe(403);
    expect((await ask('/', { headers: { ...headers, 'sec-fetch-mode': 'no-cors' } })).status).toBe(403);
  });
});

describe('a book', () => {
  it('is opened and saved', async () => {
    const { ask, send, folder } = await desk();
    const opened = await ask('/book');
    expect(opened.headers.get('cache-control')).toBe('no-store');
    expect(await opened.json()).toEqual({
      name: expect.stringMatching(/^folder-\d+$/),
      id: expect.stringMatching(/^[0-9a-f]{32}$/),
      book: { main: 'book.yaml', files: { 'book.yaml': book() } },
      seen: { 'book.yaml': hashOf(book()) },
      canSave: true,
    });
    const text = book('# mine \u202e <script>alert(1)</script>\n');
    const saved = await send('PUT', '/book', { files: { 'book.yaml': text }, seen: { 'book.yaml': hashOf(book()) } });
    expect([saved.status, await saved.json()]).toEqual([200, { kind: 'saved', seen: { 'book.yaml': hashOf(text) } }]);
    expect(readFileSync(join(folder, 'book.yaml'), 'utf8')).toBe(text);
  });

  it('is told as it stands on the disk when somebody changed it', async () => {
    const { send, folder } = await desk();
    writeFileSync(join(folder, 'book.yaml'), 'theirs: 1\n');
    const saved = await send('PUT', '/book', { files: { 'book.yaml': 'x' }, seen: { 'book.yaml': hashOf(book()) } });
    expect([saved.status, await saved.json()]).toEqual([
      409,
      { kind: 'conflict', theirs: { 'book.yaml': 'theirs: 1\n' }, seen: { 'book.yaml': hashOf('theirs: 1\n') } },
    ]);
    expect(readFileSync(join(folder, 'book.yaml'), 'utf8')).toBe('theirs: 1\n');
  });

  it.each<readonly [unknown, number]>([
    ['', 400],
    ['{', 400],
    ['[]', 400],
    ['null', 400],
    ['['.repeat(100_000), 400],
    [{ files: { 'book.yaml': 1 }, seen: {} }, 400],
    [{ files: { 'book.yaml': '' } }, 400],
    [{ files: {}, seen: {}, more: 1 }, 400],
    [{ files: { '../out.yaml': 'x' }, seen: {} }, 422],
    [{ files: { '/etc/x.yaml': 'x' }, seen: {} }, 422],
    [{ files: { 'notes.txt': 'x' }, seen: {} }, 422],
    ['{"files":{"__proto__":"x"},"seen":{}}', 422],
    [{ files: { 'new.yaml': 'x'.repeat(2 ** 21 + 1) }, seen: {} }, 422],
    [`"${'x'.repeat(2 ** 24)}"`, 413],
  ])('is not saved from %#', async (body, status) => {
    const { send, folder } = await desk();
    const answer = await send('PUT', '/book', body);
    expect([answer.status, await answer.json()]).toEqual([
      status,
      { kind: 'refused', says: expect.stringMatching(/\.$|:/) },
    ]);
    expect(filesIn(folder)).toEqual({ 'book.yaml': book() });
  });

  it('of 2 MiB goes both ways', async () => {
    const text = book(`${'# "\\"\n'.repeat(2 ** 18)}`);
    const { ask, send } = await desk({ files: { 'book.yaml': text } });
    expect(await (await ask('/book')).json()).toMatchObject({ book: { files: { 'book.yaml': text } } });
    const most = '\u0001'.repeat(2 ** 21);
    const saved = await send('PUT', '/book', { files: { 'book.yaml': most }, seen: { 'book.yaml': hashOf(text) } });
    expect(await saved.json()).toMatchObject({ kind: 'saved' });
  });

  it('that is a demo stays as it is', async () => {
    const { ask, send, folder } = await desk({ canSave: false });
    expect(await (await ask('/book')).json()).toMatchObject({ canSave: false });
    const saved = await send('PUT', '/book', { files: { 'book.yaml': 'x' }, seen: { 'book.yaml': hashOf(book()) } });
    expect([saved.status, await saved.json()]).toEqual([
      422,
      { kind: 'refused', says: expect.stringContaining('demo') },
    ]);
    expect(filesIn(folder)).toEqual({ 'book.yaml': book() });
  });

  it('that is gone, or too long, is refused in words', async () => {
    const { ask, folder } = await desk();
    writeFileSync(join(folder, 'book.yaml'), '#'.repeat(2 ** 21 + 1));
    const long = await ask('/book');
    expect([long.status, await long.json()]).toEqual([
      422,
      { kind: 'refused', says: expect.stringContaining('2 MiB') },
    ]);
    const other = await ask('/book?book=other');
    expect([other.status, await other.json()]).toMatchObject([404, { kind: 'none' }]);
  });

  it.each(['POST', 'DELETE', 'PATCH', 'OPTIONS', 'HEAD'])('does not answer to %s', async (method) => {
    const { ask } = await desk();
    for (const path of ['/book', '/changes'])
      expect((await ask(path, { method, headers: { origin: `http://${OWN}` } })).status).toBe(405);
  });
});

describe('changes', () => {
  it('are followed by a sign of life from time to time', async () => {
    vi.useFakeTimers({ toFake: ['setInterval', 'clearInterval'] });
    try {
      const { ask } = await desk();
      const reader = (await ask('/changes')).body?.getReader();
      const next = async (): Promise<string> => new TextDecoder().decode((await reader?.read())?.value);
      expect(await next()).toBe('retry: 1000\n\n');
      for (let i = 0; i < 3; i++) {
        const sign = next();
        vi.advanceTimersByTime(15_000);
        expect(await sign).toBe(': \n\n');
      }
    } finally {
      vi.useRealTimers();
    }
  });

  it('are told in one piece, whatever the text holds', async () => {
    const text = 'a: 1\r\n\nevent: changed\ndata: {}\n\n\u2028\r';
    const { ask } = await desk({ files: { 'book.yaml': text } });
    const reader = (await ask('/changes?seen=%7B%7D')).body?.getReader();
    const next = async (): Promise<string> => new TextDecoder().decode((await reader?.read())?.value);
    await next();
    const told = await next();
    expect(told).toMatch(/^event: changed\ndata: [^\n\r]*\n\n$/);
    expect(JSON.parse(told.slice(told.indexOf('{')))).toMatchObject({ files: { 'book.yaml': text } });
  });
});

describe('a new book', () => {
  const files = { 'book.yaml': book(), 'parts/motors.yaml': 'motors: {}\n' };

  it('is made on an empty desk, then opened, saved and followed by its name', async () => {
    const { ask, send, folder } = await desk({ empty: true, files: {} });
    const none = await ask('/book');
    expect([none.status, await none.json()]).toMatchObject([
      404,
      { kind: 'none', newBooksIn: folder.split('/').at(-1) },
    ]);
    const made = await send('POST', '/books', { name: 'My crane', files });
    expect([made.status, await made.json()]).toEqual([201, { kind: 'made', name: 'My crane' }]);
    expect(filesIn(join(folder, 'My crane'))).toEqual(files);
    expect(await (await ask('/book?book=My%20crane')).json()).toMatchObject({ name: 'My crane', canSave: true });
    const saved = { files: { 'book.yaml': book('# more\n') }, seen: { 'book.yaml': hashOf(book()) } };
    expect((await send('PUT', '/book?book=My%20crane', saved)).status).toBe(200);
    expect((await ask('/book')).status).toBe(404);
  });

  it('never goes over something that is there', async () => {
    const { send, folder } = await desk({ empty: true, files: { 'crane/book.yaml': 'mine' } });
    const made = await send('POST', '/books', { name: 'crane', files });
    expect([made.status, await made.json()]).toEqual([
      422,
      { kind: 'refused', says: expect.stringContaining('there already') },
    ]);
    expect(filesIn(folder)).toEqual({ 'crane/book.yaml': 'mine' });
  });

  it.each<readonly [unknown, number]>([
    [{ name: '../out', files }, 422],
    [{ name: 'a/b', files }, 422],
    [{ name: '.hidden', files }, 422],
    [{ name: '', files }, 422],
    [{ name: 'crane', files: {} }, 422],
    [{ name: 'crane', files: { 'other.yaml': '' } }, 422],
    [{ name: 'crane', files: { ...files, '../out.yaml': '' } }, 422],
    [{ name: 'crane', files: { ...files, 'run.sh': '' } }, 422],
    [{ name: 'crane', files, main: 'x' }, 400],
    [{ name: 1, files }, 400],
  ])('is not made from %#, and nothing is left', async (body, status) => {
    const { send, folder } = await desk({ empty: true, files: {} });
    const made = await send('POST', '/books', body);
    expect([made.status, await made.json()]).toMatchObject([status, { kind: 'refused' }]);
    expect(filesIn(folder)).toEqual({});
  });
});
