/** The built command as a process: what a shell and a CI meet. */
import { execFile, spawn } from 'node:child_process';
import { existsSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { failing, fine, shelf, unreadable } from './books.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const cli = join(root, 'dist', 'cli.js');
const books = shelf();
afterAll(books.remove);

const newest = (folder: string): number =>
  Math.max(
    ...readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
      .filter((file) => !file.split(/[\\/]/).includes('tests'))
      .map((file) => statSync(join(root, folder, file)).mtimeMs),
  );

beforeAll(() => {
  const sources = Math.max(...['src', 'catalogue', 'sources'].map(newest));
  if (!existsSync(cli) || statSync(cli).mtimeMs < sources)
    throw new Error('dist is older than src: npm run build first');
});

interface Ran {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

const ran = (command: string, args: readonly string[], env: Readonly<Record<string, string>> = {}): Promise<Ran> =>
  new Promise((resolve) => {
    const all = { PATH: process.env['PATH'] ?? '', LANG: 'C.UTF-8', ...env };
    const child = execFile(command, args, { cwd: books.home, env: all, maxBuffer: 1 << 28 }, (error, out, err) => {
      resolve({ code: error === null ? 0 : child.exitCode, out, err });
    });
  });
const gantrybook = (args: readonly string[], env: Readonly<Record<string, string>> = {}): Promise<Ran> =>
  ran(process.execPath, [cli, ...args], env);

describe('the built command', () => {
  it.each([
    [fine, 0],
    [failing, 1],
    [unreadable, 2],
  ])('ends as it says (%#)', async (text, code) => {
    const result = await gantrybook(['check', books.book(text), '--quick']);
    expect([result.code, result.err !== '']).toEqual([code, code === 2]);
  });

  it('writes no colours into a pipe, and plain ASCII where the locale knows no more', async () => {
    const { out } = await gantrybook(['check', books.book(failing)], { LANG: 'C', FORCE_COLOR: '1' });
    expect(out).toMatch(/^[\n\x20-\x7e]*$/);
  });

  it.each(['tidepool', 'tidepool-first-draft', 'seed-library', 'five-facts'])(
    'shows %s on one screen',
    async (name) => {
      const { code, out, err } = await gantrybook(['check', join(root, 'examples', name), '--quick']);
      expect([code === 0 || code === 1, err]).toEqual([true, '']);
      const lines = out.trimEnd().split('\n');
      expect(lines.length).toBeLessThanOrEqual(39);
      expect(lines.filter((line) => [...line].length > 80)).toEqual([]);
    },
  );

  it('says nothing when its reader has seen enough', async () => {
    const script = `set -o pipefail; "${process.execPath}" "${cli}" check "${books.book(failing)}" --json | head -c 20`;
    const { code, out, err } = await ran('bash', ['--norc', '-c', script]);
    expect([code, out, err]).toEqual([1, '{\n  "gantrybook": "1"'.slice(0, 20), '']);
  });

  it('admits a fault of its own in one line, ends with 70, and shows the stack only when asked', async () => {
    // Stands in for any fault: something of Node's that the program relies on throws what nobody expects.
    const fault =
      "import fs from 'node:fs'; import { syncBuiltinESMExports } from 'node:module'; fs.fstatSync = () => { throw new TypeError('made up'); }; syncBuiltinESMExports();";
    const env = { NODE_OPTIONS: `--import data:text/javascript,${encodeURIComponent(fault)}` };
    const folder = books.book(fine);
    const quiet = await gantrybook(['check', folder], env);
    expect([quiet.code, quiet.out]).toEqual([70, '']);
    expect(quiet.err).toMatch(
      /^gantrybook: a fault of the program, not of your book: made up\. Please report it .*GANTRYBOOK_TRACE=1.*\n$/,
    );
    const loud = await gantrybook(['check', folder], { ...env, GANTRYBOOK_TRACE: '1' });
    expect(loud.err).toMatch(/\n {4}at /);
  });

  it.each([
    ['a pack', () => ['show', books.book(fine), '--into', join(books.home, 'shown')], '<h1'],
    ['the desk', () => ['open', books.book(fine), '--no-browser'], '<div id="desk"'],
  ])('serves %s until it is interrupted, and then ends with 0', async (_, args, content) => {
    const child = spawn(process.execPath, [cli, ...args()], {
      env: { PATH: process.env['PATH'] ?? '', LANG: 'C.UTF-8' },
    });
    let out = '';
    const address = await new Promise<string>((resolve, reject) => {
      child.on('close', () => reject(new Error(`it ended early:\n${out}`)));
      child.stdout.on('data', (chunk: Buffer) => {
        out += chunk.toString('utf8');
        const found = /http:\S+\n/.exec(out);
        if (found) resolve(found[0].trim());
      });
    });
    const answer = await fetch(address);
    expect([answer.status, await answer.text()]).toEqual([200, expect.stringContaining(content)]);
    child.removeAllListeners('close');
    const ended = new Promise<number | null>((resolve) => child.on('close', resolve));
    child.kill('SIGINT');
    expect(await ended).toBe(0);
  });
});
