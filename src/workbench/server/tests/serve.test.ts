/** The desk's server as pages and other programs meet it: over the network of this machine. */
import { mkdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { request, type IncomingMessage } from 'node:http';
import { connect } from 'node:net';
import { join } from 'node:path';
import { afterAll, afterEach, describe, expect, it } from 'vitest';
import type { FolderChange } from '../../desk/folder.ts';
import { serveDesk, type DeskOptions, type Served } from '../index.ts';
import { hashOf } from '../texts.ts';
import { book, filesIn, page, scratch } from './scratch.ts';

const shelf = scratch();
afterAll(shelf.remove);
const assets = shelf.folder(page);

const open: Served[] = [];
afterEach(async () => {
  await Promise.all(open.splice(0).map((one) => one.close()));
});
const served = async (options: Partial<DeskOptions> = {}): Promise<Served> => {
  const one = await serveDesk({ assets, port: 0, ...options });
  open.push(one);
  return one;
};

/** As written: no client tidies up the path. */
const ask = (port: number, path: string): Promise<{ readonly status: number; readonly body: string }> =>
  new Promise((resolve, reject) => {
    request({ host: '127.0.0.1', port, path, agent: false }, (response) => {
      let body = '';
      response.on('data', (chunk: Buffer) => (body += chunk.toString('utf8')));
      response.on('end', () => resolve({ status: response.statusCode ?? 0, body }));
    })
      .on('error', reject)
      .end();
  });

const put = ({ port }: Served, body: object, query = ''): Promise<Response> =>
  fetch(`http://127.0.0.1:${port}/book${query}`, {
    method: 'PUT',
    body: JSON.stringify(body),
    headers: { 'content-type': 'application/json', origin: `http://127.0.0.1:${port}` },
  });

interface Page {
  /** The next change that this page is told of; nothing when the server has ended the telling. */
  readonly next: () => Promise<FolderChange | undefined>;
  readonly leave: () => void;
}

/** A page that follows: what the server writes, taken apart as server-sent events are. */
const follow = async ({ port }: Served, query = ''): Promise<Page> => {
  const response = await new Promise<IncomingMessage>((resolve, reject) => {
    request({ host: '127.0.0.1', port, path: `/changes${query}`, agent: false }, resolve)
      .on('error', reject)
      .end();
  });
  expect(response.headers['content-type']).toBe('text/event-stream');
  const chunks: AsyncIterator<Buffer> = response[Symbol.asyncIterator]();
  let text = '';
  return {
    next: async () => {
      for (;;) {
        const [whole, data] = /event: changed\ndata: (.*)\n\n/.exec(text) ?? [];
        if (whole !== undefined && data !== undefined) {
          text = text.slice(text.indexOf(whole) + whole.length);
          return JSON.parse(data) as FolderChange;
        }
        const chunk = await chunks.next();
        if (chunk.done) return undefined;
        text += chunk.value.toString('utf8');
      }
    },
    leave: () => void response.destroy(),
  };
};

describe('no path leads elsewhere', () => {
  const folder = shelf.folder({ ...page, 'secret.json': 'secret' });
  const home = join(folder, 'desk');
  mkdirSync(home);
  writeFileSync(join(home, 'index.html'), page['index.html'] ?? '');
  writeFileSync(join(home, '.hidden.json'), 'secret');
  symlinkSync(join(folder, 'secret.json'), join(home, 'linked.json'));
  symlinkSync(folder, join(home, 'away'));

  it.each([
    '/../secret.json',
    '/..%2fsecret.json',
    '/%2e%2e/secret.json',
    '/%2e%2e%2fsecret.json',
    '/..%5csecret.json',
    '/....//secret.json',
    '//etc/passwd',
    '/etc/passwd',
    '/%00',
    '/index.html%00.js',
    '/index.html/../../secret.json',
    '/linked.json',
    '/away/secret.json',
    '/.hidden.json',
    '/%',
    '/constructor',
    '/__proto__',
    '/book.yaml',
    '/book/book.yaml',
    `/${'x'.repeat(8000)}`,
    `/${'../'.repeat(500)}etc/passwd`,
  ])('such as %s', async (path) => {
    const { port } = await served({ assets: home, folder: shelf.folder({ 'book.yaml': 'secret' }) });
    const { status, body } = await ask(port, path);
    expect([400, 404]).toContain(status);
    expect(body).not.toMatch(/secret|root:/);
  });
});

describe('two pages on one book', () => {
  it('hear of each other, and none of its own work', async () => {
    const folder = shelf.folder({ 'book.yaml': book() });
    const desk = await served({ folder });
    const seen = { 'book.yaml': hashOf(book()) };
    const query = (name: string): string => `?desk=${name}&seen=${encodeURIComponent(JSON.stringify(seen))}`;
    const [one, other] = [await follow(desk, query('one')), await follow(desk, query('other'))];

    const first = book('# by one\n');
    expect((await put(desk, { files: { 'book.yaml': first }, seen, desk: 'one' })).status).toBe(200);
    expect(await other.next()).toEqual({ files: { 'book.yaml': first }, seen: { 'book.yaml': hashOf(first) } });

    const late = await put(desk, { files: { 'book.yaml': 'lost' }, seen, desk: 'other' });
    expect([late.status, await late.json()]).toMatchObject([409, { theirs: { 'book.yaml': first } }]);

    const second = book('# by other\n');
    const now = { 'book.yaml': hashOf(first) };
    expect((await put(desk, { files: { 'book.yaml': second }, seen: now, desk: 'other' })).status).toBe(200);
    expect(await one.next()).toEqual({ files: { 'book.yaml': second }, seen: { 'book.yaml': hashOf(second) } });
  });

  it('that save at the same moment: one is saved, the other is told', async () => {
    const folder = shelf.folder({ 'book.yaml': book() });
    const desks = [await served({ folder }), await served({ folder })];
    const seen = { 'book.yaml': hashOf(book()) };
    const answers = await Promise.all(
      Array.from({ length: 10 }, (_, i) => put(desks[i % 2]!, { files: { 'book.yaml': book(`# ${i}\n`) }, seen })),
    );
    const statuses = answers.map(({ status }) => status);
    expect(statuses.toSorted()).toEqual([200, ...Array.from({ length: 9 }, () => 409)]);
    expect(filesIn(folder)).toEqual({ 'book.yaml': book(`# ${statuses.indexOf(200)}\n`) });
  });

  it('at two servers hear of each other too', async () => {
    const folder = shelf.folder({ 'book.yaml': book() });
    const [one, other] = [await served({ folder }), await served({ folder })];
    const listening = await follow(other);
    const text = book('# by one\n');
    await put(one, { files: { 'book.yaml': text }, seen: { 'book.yaml': hashOf(book()) } });
    expect(await listening.next()).toEqual({ files: { 'book.yaml': text }, seen: { 'book.yaml': hashOf(text) } });
  });

  it('are told at once of what changed while they were not listening', async () => {
    const folder = shelf.folder({ 'book.yaml': book('# now\n') });
    const desk = await served({ folder });
    const seen = encodeURIComponent(JSON.stringify({ 'book.yaml': hashOf(book()), 'gone.yaml': '1' }));
    const told = await (await follow(desk, `?seen=${seen}`)).next();
    expect(told?.files).toEqual({ 'book.yaml': book('# now\n'), 'gone.yaml': null });
    for (const wrong of ['{', '[]', '{"a":1}', 'null'])
      expect((await ask(desk.port, `/changes?seen=${encodeURIComponent(wrong)}`)).status).toBe(400);
  });
});

describe('following', () => {
  it('ends cleanly when the server does, and the port is free again', async () => {
    const folder = shelf.folder({ 'book.yaml': book() });
    const desk = await served({ folder });
    const listening = await follow(desk);
    const ended = listening.next();
    await desk.close();
    expect(await ended).toBeUndefined();
    const again = await served({ folder, port: desk.port });
    expect([again.port, again.moved]).toEqual([desk.port, false]);
  });

  it('is for so many pages and no more, until one leaves', async () => {
    const desk = await served({ folder: shelf.folder({ 'book.yaml': book() }) });
    const pages = await Promise.all(Array.from({ length: 64 }, () => follow(desk)));
    expect((await ask(desk.port, '/changes')).status).toBe(503);
    for (const one of pages) one.leave();
    // The server hears of it when it hears of it: ask until it has.
    while ((await ask(desk.port, '/changes?seen=%7B')).status === 503);
    await expect(follow(desk)).resolves.toHaveProperty('next');
  });
});

describe('the server', () => {
  it('begins with the book in order, whatever an earlier one was broken off at', async () => {
    const left = '.gantrybook-save-0123456789abcdef.0.new';
    const folder = shelf.folder({ 'book.yaml': book(), [left]: 'half', [`parts/${left}`]: 'half' });
    await served({ folder });
    expect(filesIn(folder)).toEqual({ 'book.yaml': book() });
  });

  it('changes nothing in a folder of a book that stays as it is', async () => {
    const left = '.gantrybook-save-0123456789abcdef.0.new';
    const folder = shelf.folder({ 'book.yaml': book(), [left]: 'half' });
    await served({ folder, canSave: false });
    expect(filesIn(folder)).toEqual({ 'book.yaml': book(), [left]: 'half' });
  });

  it('tells of a new book', async () => {
    const made: string[] = [];
    const desk = await served({ newBooksIn: shelf.folder({}), made: (name) => made.push(name) });
    const origin = `http://127.0.0.1:${desk.port}`;
    const headers = { 'content-type': 'application/json', origin };
    const body = JSON.stringify({ name: 'crane', files: { 'book.yaml': book() } });
    expect((await fetch(`${origin}/books`, { method: 'POST', body, headers })).status).toBe(201);
    expect(made).toEqual(['crane']);
  });

  it('makes no books where it was given no place for them', async () => {
    const desk = await served();
    const origin = `http://127.0.0.1:${desk.port}`;
    const headers = { 'content-type': 'application/json', origin };
    const body = JSON.stringify({ name: 'crane', files: { 'book.yaml': book() } });
    expect((await fetch(`${origin}/books`, { method: 'POST', body, headers })).status).toBe(422);
  });

  it('outlives one that talks nonsense, or goes away in the middle', async () => {
    const desk = await served({ folder: shelf.folder({ 'book.yaml': book() }) });
    const talk = (text: string): Promise<void> =>
      new Promise((resolve) => {
        const socket = connect(desk.port, '127.0.0.1', () => socket.end(text));
        socket.on('close', () => resolve()).on('error', () => resolve());
        socket.resume();
      });
    const host = `Host: 127.0.0.1:${desk.port}\r\nOrigin: http://127.0.0.1:${desk.port}\r\n`;
    await talk('\0\0\0\r\n\r\n');
    await talk('GET / HTTP/1.1\r\n\r\n');
    await talk(`PUT /book HTTP/1.1\r\n${host}Content-Type: application/json\r\nContent-Length: 1000\r\n\r\n{"files"`);
    await talk(
      `PUT /book HTTP/1.1\r\n${host}Content-Type: application/json\r\nTransfer-Encoding: chunked\r\n\r\nzz\r\n`,
    );
    expect((await ask(desk.port, '/book')).status).toBe(200);
  });

  it('does not begin without a book that is there', async () => {
    await expect(serveDesk({ assets, port: 0, folder: join(shelf.home, 'nowhere') })).rejects.toThrow('not there');
    await expect(serveDesk({ assets, port: 0, folder: shelf.folder({}) })).rejects.toThrow('There is no book.yaml');
  });
});
