import { mkdtempSync, rmSync, symlinkSync, unlinkSync, writeFileSync } from 'node:fs';
import { createServer, request } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { writePack } from '../../src/pack/index.ts';
import { serve, type Served } from '../../src/workbench/server/index.ts';

const home = mkdtempSync(join(tmpdir(), 'gantrybook-serve-'));
const folder = join(home, 'made');
let served: Served;

beforeAll(async () => {
  writePack(folder, {
    version: '1',
    book: { title: 'Tidepool', file: 'book.yaml' },
    stamp: { revision: 'A', content: '00' },
    files: [
      { name: 'index.html', text: '<!doctype html><title>cover</title>' },
      { name: 'linked.csv', text: 'a,b\n' },
      { name: 'findings.json', text: '{}\n' },
    ],
  });
  writeFileSync(join(home, 'secret.txt'), 'secret');
  writeFileSync(join(folder, 'notes.txt'), 'secret notes');
  unlinkSync(join(folder, 'linked.csv'));
  symlinkSync(join(home, 'secret.txt'), join(folder, 'linked.csv'));
  served = await serve(folder, 0);
});
afterAll(async () => {
  await served.close();
  rmSync(home, { recursive: true, force: true });
});

interface Answer {
  readonly status: number;
  readonly headers: Readonly<Record<string, string | string[] | undefined>>;
  readonly body: string;
}

/** As written: no client tidies up the path or the headers. */
const ask = (path: string, headers: Readonly<Record<string, string>> = {}, method = 'GET'): Promise<Answer> =>
  new Promise((resolve, reject) => {
    const options = { host: '127.0.0.1', port: served.port, path, method, headers, agent: false };
    request(options, (response) => {
      let body = '';
      response.on('data', (chunk: Buffer) => (body += chunk.toString('utf8')));
      response.on('end', () => resolve({ status: response.statusCode ?? 0, headers: response.headers, body }));
    })
      .on('error', reject)
      .end();
  });

describe('the server', () => {
  it('gives the cover, and each file as what it is', async () => {
    const cover = await ask('/');
    expect([cover.status, cover.body]).toEqual([200, '<!doctype html><title>cover</title>']);
    expect(cover.headers).toMatchObject({
      'content-type': 'text/html; charset=utf-8',
      'content-security-policy': expect.stringContaining("default-src 'none'"),
      'x-content-type-options': 'nosniff',
    });
    expect((await ask('/findings.json')).headers['content-type']).toBe('application/json; charset=utf-8');
    expect((await ask('/manifest.json')).status).toBe(200);
  });

  it('answers HEAD without a body, and nothing that would change something', async () => {
    const head = await ask('/index.html', {}, 'HEAD');
    expect([head.status, head.body]).toEqual([200, '']);
    for (const method of ['POST', 'PUT', 'DELETE', 'PATCH', 'OPTIONS']) {
      const answer = await ask('/index.html', {}, method);
      expect([method, answer.status, answer.headers['allow']]).toEqual([method, 405, 'GET, HEAD']);
    }
  });

  it.each(['localhost', '127.0.0.1', '[::1]'])('answers to %s', async (name) => {
    const host = `${name}:${served.port}`;
    expect((await ask('/', { host, origin: `http://${host}` })).status).toBe(200);
  });

  it.each<Readonly<Record<string, string>>>([
    { host: 'shop.example' },
    { host: 'localhost.shop.example' },
    { host: '127.0.0.1' },
    { host: '127.0.0.1:1' },
    { host: '0.0.0.0' },
    { origin: 'http://shop.example' },
    { origin: 'null' },
    { origin: 'https://localhost' },
  ])('refuses a page from elsewhere: %o', async (headers) => {
    const answer = await ask('/', headers);
    expect(answer.status).toBe(403);
    expect(answer.body).not.toContain('cover');
  });

  it.each([
    '/../secret.txt',
    '/..%2fsecret.txt',
    '/%2e%2e/secret.txt',
    '/%2e%2e%2fsecret.txt',
    '/..%5csecret.txt',
    '/....//secret.txt',
    '//etc/passwd',
    '/%00',
    '/index.html/../../secret.txt',
    '/linked.csv',
    '/notes.txt',
    '/%',
    '/index.html%00.csv',
    '/constructor',
  ])('gives nothing for %s', async (path) => {
    const answer = await ask(path);
    expect([400, 404]).toContain(answer.status);
    expect(answer.body).not.toMatch(/secret|root:/);
  });

  it('lists no folder', async () => {
    expect((await ask('/photos/')).status).toBe(404);
  });
});

describe('a port', () => {
  const taken = createServer();
  afterEach(() => new Promise<void>((done) => void taken.close(() => done())));

  it('that is taken is left, and the next that is free is said', async () => {
    await new Promise<void>((done) => void taken.listen(0, '127.0.0.1', done));
    const { port } = taken.address() as AddressInfo;
    const other = await serve(folder, port);
    expect(other.moved).toBe(true);
    expect(other.port).toBeGreaterThan(port);
    expect(other.address).toBe(`http://127.0.0.1:${other.port}/`);
    await other.close();
  });
});
