/** `gantrybook open`: what it says, what it serves, and when it ends. */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';
import { openerOf } from '../../src/cli/browser.ts';
import { open } from '../../src/cli/open.ts';
import { terminalIn } from '../../src/cli/terminal.ts';
import { fine, shelf, unreadable } from './books.ts';
import { ran } from './terminals.ts';

const books = shelf();
afterAll(books.remove);
const assets = join(books.home, 'assets');
mkdirSync(assets);
writeFileSync(join(assets, 'index.html'), '<!doctype html><html lang="en"><title>desk</title></html>');
const demo = fileURLToPath(new URL('../../examples/tidepool', import.meta.url));

interface Opened {
  readonly said: string;
  readonly address: string;
  readonly bookThere: { readonly status: number; readonly body: Readonly<Record<string, unknown>> };
  readonly sent: number;
  readonly code: number;
}

/** Opens a desk, asks it for its book, lets a page send something, and has had enough. */
const opened = async (
  typed: string | undefined,
  {
    here = books.home,
    port = 0,
    send,
  }: { here?: string; port?: number; send?: readonly [string, string, object] } = {},
): Promise<Opened> => {
  let said = '';
  let enough = (): void => undefined;
  const until = new Promise<void>((resolve) => (enough = resolve));
  const address = new Promise<string>((resolve) => {
    const hear = (text: string): void => {
      said += text;
      const found = /http:\S+\/(?=\n[^]*Ctrl-C)/.exec(said);
      if (found) resolve(found[0]);
    };
    const terminal = terminalIn({
      env: { LANG: 'C.UTF-8' },
      platform: 'linux',
      out: { write: hear },
      err: { write: hear },
    });
    ended = open(typed, { port, browser: false }, terminal, { assets, here, until });
    ended.catch(() => resolve(''));
  });
  const at = await address;
  if (at === '') await ended;
  const answer = await fetch(`${at}book`);
  const body = (await answer.json()) as Record<string, unknown>;
  let sent = 0;
  if (send) {
    const [method, path, what] = send;
    const headers = { 'content-type': 'application/json', origin: at.slice(0, -1) };
    sent = (await fetch(at + path, { method, headers, body: JSON.stringify(what) })).status;
  }
  enough();
  return { said, address: at, bookThere: { status: answer.status, body }, sent, code: await ended };
};
let ended: Promise<number> = Promise.resolve(0);

describe('open', () => {
  it('lays a book on the desk, says where, and ends with 0', async () => {
    const folder = books.book(fine);
    const { said, address, bookThere, code } = await opened(folder);
    expect(said).toBe(`The desk, with ${folder} on it: ${address}\nCtrl-C ends it.\n`);
    expect(address).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/$/);
    expect(bookThere).toMatchObject({ status: 200, body: { canSave: true, book: { files: { 'book.yaml': fine } } } });
    expect(code).toBe(0);
    await expect(fetch(address)).rejects.toThrow();
  });

  it('takes a file, the book of the folder it is in, and a book that cannot be read yet', async () => {
    const folder = books.book({ 'crane.yaml': fine });
    expect((await opened(join(folder, 'crane.yaml'))).bookThere.body).toMatchObject({ book: { main: 'crane.yaml' } });
    const own = books.book(unreadable);
    expect((await opened(undefined, { here: own })).bookThere.body).toMatchObject({
      book: { files: { 'book.yaml': unreadable } },
    });
  });

  it('begins with nothing where there is no book, and makes new ones there', async () => {
    const here = books.book({});
    const send = ['POST', 'books', { name: 'my crane', files: { 'book.yaml': fine } }] as const;
    const { said, bookThere, sent } = await opened(undefined, { here, send });
    expect(bookThere).toMatchObject({ status: 404, body: { kind: 'none' } });
    expect(sent).toBe(201);
    expect(said).toContain('with no book yet on it');
    expect(said).toContain('my crane is made, and is yours. Next time: gantrybook open "my crane"\n');
    expect(readFileSync(join(here, 'my crane', 'book.yaml'), 'utf8')).toBe(fine);
  });

  it('keeps a demo as it is', async () => {
    const send = ['PUT', 'book', { files: { 'book.yaml': 'x' }, seen: {} }] as const;
    const before = readFileSync(join(demo, 'book.yaml'), 'utf8');
    const { said, bookThere, sent } = await opened(demo, { send });
    expect(bookThere.body).toMatchObject({ name: 'tidepool', canSave: false });
    expect(sent).toBe(422);
    expect(said).toContain('It is a demo and stays as it is');
    expect(readFileSync(join(demo, 'book.yaml'), 'utf8')).toBe(before);
  });

  it('says when its port is taken, and takes the next', async () => {
    const taken = createServer();
    await new Promise<void>((done) => void taken.listen(0, '127.0.0.1', done));
    const { port } = taken.address() as AddressInfo;
    const { said, address } = await opened(books.book(fine), { port });
    await new Promise((done) => taken.close(done));
    expect(said).toContain(`Port ${port} is taken; this is the next that is free.`);
    expect(Number(new URL(address).port)).toBeGreaterThan(port);
  });

  it.each([
    [['open', join(books.home, 'nowhere')], 'There is no '],
    [['open', books.book({ 'notes.txt': fine })], 'holds no book.yaml'],
    [['open', '--port', 'x'], 'A port is a number'],
    [['open', 'a', 'b'], 'too many arguments'],
  ])('refuses what it cannot do: %#', async (args, says) => {
    const { code, err } = await ran([...args, ...(args.includes('--port') ? [] : ['--no-browser'])]);
    expect([code, err.replaceAll(/\s+/g, ' ')]).toEqual([2, expect.stringContaining(says)]);
  });

  it('refuses a text that does not end as YAML does', async () => {
    const path = join(books.book({ 'crane.txt': fine }), 'crane.txt');
    await expect(opened(path)).rejects.toThrow('end in .yaml or .yml');
  });
});

describe('a browser', () => {
  it.each(['linux', 'darwin', 'win32', 'freebsd'])('is asked for on %s without a shell', (platform) => {
    const address = 'http://127.0.0.1:4860/';
    const [program, ...args] = openerOf(address, platform);
    expect(program).not.toMatch(/cmd|sh$|shell/);
    expect(args.at(-1)).toBe(address);
  });
});
