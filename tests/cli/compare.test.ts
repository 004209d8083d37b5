/** What `compare` says of two books: on one screen, in full, as data and as a sheet. */
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openBook } from '../../src/cli/books.ts';
import { inFull } from '../../src/cli/compare-full.ts';
import { tourScreen, type TourInput } from '../../src/cli/compare-tour.ts';
import { comparisonOf } from '../../src/cli/compare.ts';
import { ROWS } from '../../src/cli/summary.ts';
import { displayWidth } from '../../src/engine/read/frame.ts';
import { comparisonSheet } from '../../src/pack/html/compare.ts';
import { bench, failing, fine, shelf, unreadable } from './books.ts';
import { ran, terminal } from './terminals.ts';

const books = shelf();
afterAll(books.remove);

const example = (name: string): string => fileURLToPath(new URL(`../../examples/${name}`, import.meta.url));
const tooLong = (lines: readonly string[], columns = 80): readonly string[] =>
  lines.filter((line) => displayWidth(line) > columns);

describe('the demo and its first draft', () => {
  let better: TourInput;
  let worse: TourInput;
  beforeAll(() => {
    const at = terminal({ env: { LANG: 'C.UTF-8', SOURCE_DATE_EPOCH: '1790000000' } });
    const draft = openBook(example('tidepool-first-draft'), at);
    const demo = openBook(example('tidepool'), at, draft.house);
    better = comparisonOf([draft, demo], at);
    worse = comparisonOf([demo, draft], at);
  }, 240_000);

  it('fit a screen of 80 columns and 40 rows, either way round', () => {
    for (const input of [better, worse])
      for (const at of [terminal(), terminal({ env: { LANG: 'C' } })]) {
        const lines = tourScreen(input, at);
        expect(lines.length).toBeLessThanOrEqual(ROWS);
        expect(tooLong(lines)).toEqual([]);
      }
  });

  it('keep to a narrow terminal', () => {
    const narrow = terminal({ live: true, columns: 56, env: { LANG: 'C.UTF-8', NO_COLOR: '1' } });
    const lines = tourScreen(better, narrow);
    expect(lines.length).toBeLessThanOrEqual(ROWS);
    expect(tooLong(lines, 56)).toEqual([]);
  });

  it('tell the story: each change with what it cures', () => {
    const lines = tourScreen(better, terminal());
    expect(lines.join('\n')).toMatch(/^Motion +\d+ → 0 /m);
    const under = (change: string): string => lines[lines.findIndex((line) => line.startsWith(change)) + 1] ?? '';
    expect(under('axes.z.unpowered: free → windings shorted')).toMatch(/╳ fails → not asked +Without power z /);
    expect(under('drivers.D1–D4.rail: 12V → 24V')).toMatch(/╌ open +→ ━ holds +M1 may hunt/);
    expect(under('motors.M3.part: printer-23 → scrap-23')).toMatch(/╳ fails → ━ holds .* with D1–D4\.rail$/);
    expect(under('axes.z.dock.kind: rest → cup')).toMatch(/╳ fails → not asked .* ×2$/);
  });

  it('tell it the other way round too', () => {
    const text = tourScreen(worse, terminal()).join('\n');
    expect(text).toContain('BROKEN OR WORSE');
    expect(text).toMatch(/^axes\.z\.unpowered: windings shorted → free .*\n +not asked → ╳ fails +Without power z /m);
  });

  it('leave nothing out of the whole', () => {
    const text = inFull(better, terminal()).join('\n');
    const { moved, quiet } = better.comparison;
    expect(moved.filter(({ key }) => !text.includes(`  ${key}  `))).toEqual([]);
    expect(quiet.filter(({ path }) => !text.includes(`  ${path}: `))).toEqual([]);
    expect(tooLong(inFull(better, terminal()))).toEqual([]);
  });

  it('leave nothing out of the sheet, which asks for nothing from anywhere', () => {
    const { from, to, comparison, tour } = better;
    const html = comparisonSheet({
      before: from.machine,
      after: to.machine,
      disciplines: to.house.disciplines,
      comparison,
      tour,
    });
    expect(comparison.moved.filter(({ key }) => !html.includes(`>${key}<`))).toEqual([]);
    for (const { machine } of [from, to])
      expect(html.includes(`<dd>${machine.stamp.content.slice(0, 12)}</dd>`)).toBe(true);
    // The name of the format of drawings is no address that anything is fetched from.
    const asked = html
      .replaceAll('xmlns="http://www.w3.org/2000/svg"', '')
      .match(/<script|<link|\bsrc=|https?:|url\((?!data:)/g);
    expect(asked).toBeNull();
    expect(html.includes("default-src 'none'")).toBe(true);
    const ids = [...html.matchAll(/ id="([^"]*)"/g)].map(([, id]) => id);
    expect(new Set(ids).size).toBe(ids.length);
    expect(['undefined', 'NaN', '[object'].filter((word) => html.includes(word))).toEqual([]);
  });
});

describe('two small books', () => {
  it('are compared in detail where there is room', async () => {
    const { code, out } = await ran(['compare', books.book(failing), books.book(fine)]);
    expect(code).toBe(0);
    expect(out).toContain('CURED (1)\naxes.x.pulley-teeth: 8 → 20\n  MOTION-120/x  ╳ fails 150 % → ━ holds 60 %\n');
    expect((await ran(['compare', books.book(fine), books.book(failing)])).out).toContain('BROKEN OR WORSE (1)');
  });

  it('move nothing where they are one', async () => {
    const book = books.book(fine);
    expect(await ran(['compare', book, book])).toMatchObject({
      code: 0,
      out: expect.stringContaining('Nothing moves: '),
    });
    const { out } = await ran(['compare', book, books.book(fine.replace('revision: A', 'revision: B'))]);
    expect(out).toMatch(/Nothing moves: \d+ findings as before\. 1 fact differs/);
  });

  it('show what keeps its verdict', async () => {
    const { out } = await ran(['compare', books.book(bench(20)), books.book(bench(16))]);
    expect(out).toMatch(/THE VERDICT STAYS, THE PERCENTAGE MOVES \(1\)\n +━ holds +60 % → 75 %/);
  });

  it('are compared as data, with the change behind each verdict', async () => {
    const { out } = await ran(['compare', books.book(failing), books.book(fine), '--json']);
    expect(JSON.parse(out)).toMatchObject({
      gantrybook: '1',
      changes: [{ name: 'axes.x.pulley-teeth', paths: ['axes.x.pulley-teeth'], before: '8', after: '20' }],
      moved: [
        {
          key: 'MOTION-120/x',
          kind: 'cured',
          because: { changes: ['axes.x.pulley-teeth'], enough: true },
          before: { verdict: 'fails' },
          after: { verdict: 'holds' },
          behind: [{ path: 'axes.x.pulley-teeth' }],
        },
      ],
      quiet: [],
    });
  });

  it('are shown trade by trade', async () => {
    const pair = [books.book(failing), books.book(fine)];
    expect((await ran(['compare', ...pair, '--sheet', 'motion'])).out).toContain('1 finding of Motion moves.');
    expect((await ran(['compare', ...pair, '--sheet', 'supply'])).out).not.toContain('MOTION-120');
    expect(await ran(['compare', ...pair, '--sheet', 'motoin'])).toMatchObject({
      code: 2,
      out: '',
      err: expect.stringContaining('Did you mean motion?'),
    });
    expect(await ran(['compare', ...pair, '--json', '--all'])).toMatchObject({ code: 2, out: '' });
  });

  it('end with 2 where one cannot be read, after the problems of both', async () => {
    const { code, out, err } = await ran(['compare', books.book(unreadable), books.book(unreadable)]);
    expect([code, out, err.match(/nothing was checked/g)?.length]).toEqual([2, '', 2]);
    expect((await ran(['compare', books.book(fine), join(books.home, 'none')])).code).toBe(2);
  });
});

describe('the sheet of a comparison', () => {
  const pair = (): string[] => [books.book(failing), books.book(fine)];

  it('is one file, the same for the same books, and replaces an earlier one', async () => {
    const into = join(books.home, 'new', 'compared');
    const both = pair();
    const { code, err } = await ran(['compare', ...both, '--into', into]);
    expect([code, readdirSync(into)]).toEqual([0, ['comparison.html']]);
    expect(err).toContain(join(into, 'comparison.html'));
    const first = readFileSync(join(into, 'comparison.html'), 'utf8');
    await ran(['compare', ...both, '--into', into, '--json']);
    expect(readFileSync(join(into, 'comparison.html'), 'utf8')).toBe(first);
    await ran(['compare', ...both.toReversed(), '--into', into]);
    expect(readFileSync(join(into, 'comparison.html'), 'utf8')).not.toBe(first);
    expect(readdirSync(into)).toEqual(['comparison.html']);
  });

  it('stands beside a pack and leaves it whole', async () => {
    const into = join(books.home, 'packed');
    const [before = '', after = ''] = pair();
    await ran(['pack', after, '--into', into]);
    const names = readdirSync(into);
    await ran(['compare', before, after, '--into', into]);
    expect(readdirSync(into)).toEqual([...names, 'comparison.html'].toSorted());
    expect((await ran(['pack', after, '--into', into])).out).not.toContain('was not whole');
  });

  it('is not written over what somebody else made, nor where it cannot be', async () => {
    const into = join(books.home, 'taken');
    mkdirSync(into);
    writeFileSync(join(into, 'comparison.html'), '<p>mine</p>');
    const { code, err } = await ran(['compare', ...pair(), '--into', into]);
    expect([code, err.replaceAll(/\s+/g, ' ')]).toEqual([2, expect.stringContaining('was not made by this program')]);
    expect(readFileSync(join(into, 'comparison.html'), 'utf8')).toBe('<p>mine</p>');
    const inFile = join(into, 'comparison.html', 'deeper');
    expect((await ran(['compare', ...pair(), '--into', inFile])).code).toBe(2);
    expect(existsSync(inFile)).toBe(false);
  });
});
