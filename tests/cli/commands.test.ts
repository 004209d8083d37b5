/** What each command says and what it ends with, run inside this process. */
import { existsSync, readdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { readPack } from '../../src/pack/index.ts';
import { accepted, failing, fine, shelf, unreadable } from './books.ts';
import { ran, type Around } from './terminals.ts';

const books = shelf();
afterAll(books.remove);

const before: Around = { env: { LANG: 'C.UTF-8', SOURCE_DATE_EPOCH: '1790000000' } };
const later: Around = { env: { LANG: 'C.UTF-8', SOURCE_DATE_EPOCH: '1890000000' } };
/** Wrapped lines made one. */
const flat = (text: string): string => text.replaceAll(/\s+/g, ' ').trim();

describe('check', () => {
  it.each([
    ['nothing fails', fine, [], before, 0],
    ['something fails', failing, [], before, 1],
    ['what fails is accepted', accepted, [], before, 0],
    ['what was accepted has run out', accepted, [], later, 1],
    ['strict, and something is not stated', fine, ['--strict'], before, 1],
    ['it cannot be read', unreadable, [], before, 2],
    ['it cannot be read, whatever is asked', unreadable, ['--json', '--strict', '--quick'], before, 2],
  ] as const)('when %s', async (_, text, options, around, code) => {
    expect((await ran(['check', books.book(text), ...options], around)).code).toBe(code);
  });

  it('takes a folder or a file', async () => {
    const folder = books.book({ 'crane.yaml': fine });
    expect((await ran(['check', join(folder, 'crane.yaml')])).out).toContain('Bench, revision A');
    expect(await ran(['check', folder])).toMatchObject({ code: 2, err: expect.stringContaining('holds no book.yaml') });
  });

  it('tells every problem with its line, and writes nothing', async () => {
    const folder = books.book(unreadable);
    const { code, out, err } = await ran(['check', folder, '--sarif', join(folder, 'log.sarif')]);
    expect([code, out]).toEqual([2, '']);
    expect(err).toMatch(/^book\.yaml:6:\d+ {2}axes\.x\.speed: "220" has no unit\.\n/);
    expect(err).toContain('"5 parsec"');
    expect(err).toMatch(/2 problems; nothing was checked and nothing was written\.\n$/);
    expect(readdirSync(folder)).toEqual(['book.yaml']);
  });

  it('gives programs the problems too', async () => {
    const { out } = await ran(['check', books.book(unreadable), '--json']);
    expect(JSON.parse(out)).toMatchObject({
      gantrybook: '1',
      problems: [
        { place: { file: 'book.yaml', line: 6 }, path: 'axes.x.speed', what: '"220" has no unit.' },
        { path: 'axes.x.acceleration' },
      ],
    });
  });

  it('looks for cures and measurements, and in a hurry for none', async () => {
    const folder = books.book(failing);
    expect((await ran(['check', folder])).out).toContain('cure:');
    expect((await ran(['check', folder, '--quick'])).out).not.toContain('cure:');
  });

  it('prints one sheet in full, with the working to follow', async () => {
    const { out } = await ran(['check', books.book(failing), '--sheet', 'motion']);
    expect(out).toContain('worked by teeth-in-mesh');
    expect(out).toContain('4 of at least 6');
    expect(out).toContain('CAUTIONS');
    expect((await ran(['check', books.book(failing), '--sheet', '1'])).out).toContain('worked by teeth-in-mesh');
  });

  it('knows what a slip was meant to be', async () => {
    const folder = books.book(fine);
    expect(flat((await ran(['check', folder, '--sheet', 'moton'])).err)).toContain(
      'There is no sheet moton. Did you mean motion?',
    );
    expect((await ran(['chek', folder])).err).toContain("unknown command 'chek' (Did you mean check?)");
    const option = await ran(['check', '--jsn', folder]);
    expect([option.code, option.err]).toEqual([
      2,
      "gantrybook: unknown option '--jsn' (Did you mean --json?)\nHelp: gantrybook check --help\n",
    ]);
  });

  it('refuses two ways of printing at once', async () => {
    expect(await ran(['check', books.book(fine), '--json', '--sheet', 'motion'])).toMatchObject({ code: 2, out: '' });
  });

  it('reads no file outside the folder, and none through a link that leads there', async () => {
    const outside = books.book({ 'more.yaml': 'about: from elsewhere\n' });
    const folder = books.book(fine.replace('revision: A', 'revision: A\ninclude: [more.yaml]'));
    symlinkSync(join(outside, 'more.yaml'), join(folder, 'more.yaml'));
    const { code, err } = await ran(['check', folder]);
    expect(code).toBe(2);
    expect(err).toContain('more.yaml');
    expect(err).not.toContain('from elsewhere');
  });

  it('refuses a huge file without reading it whole', async () => {
    const folder = books.book(`${fine}# ${'x'.repeat(9 * 1024 * 1024)}\n`);
    const { code, err } = await ran(['check', folder]);
    expect(code).toBe(2);
    expect(err).toContain('2 MiB');
  });

  it('says which book is proposed where there is none', async () => {
    const { code, err } = await ran(['check', join(books.home, 'nowhere')]);
    expect(code).toBe(2);
    expect(flat(err)).toContain(
      "Name a book's folder or file, or begin one: gantrybook new my-machine --from five-facts",
    );
    expect(flat((await ran(['check', books.book({ 'book.yml': fine })])).err)).toContain(
      'holds book.yml and no book.yaml. Rename it',
    );
  });
});

describe('check --json', () => {
  it('holds every finding and fact, and is the same each time', async () => {
    const folder = books.book(failing);
    const [first, second] = [await ran(['check', folder, '--json']), await ran(['check', folder, '--json'])];
    expect(second.out).toBe(first.out);
    const report = JSON.parse(first.out) as { findings: { key: string }[] };
    expect(report).toMatchObject({
      gantrybook: '1',
      book: { title: 'Bench', revision: 'A', main: 'book.yaml', files: ['book.yaml'] },
      stamp: { revision: 'A', content: expect.stringMatching(/^[0-9a-f]{64}$/) },
      tally: { counts: { fails: 1 }, against: ['MOTION-120/x'] },
      sheets: expect.arrayContaining([expect.objectContaining({ name: 'motion', number: 1 })]),
    });
    expect(report.findings.find(({ key }) => key === 'MOTION-120/x')).toMatchObject({
      code: 'MOTION-120',
      sheet: 'motion',
      verdict: 'fails',
      demand: { number: 4 },
      limit: { number: 6 },
      use: { worst: 1.5 },
      place: { file: 'book.yaml', line: 6 },
      working: [expect.objectContaining({ formula: 'teeth-in-mesh' })],
      remedies: [expect.objectContaining({ verdict: 'holds', breaks: [] })],
    });
    expect((report as unknown as { facts: object[] }).facts).toContainEqual(
      expect.objectContaining({ name: 'axes.x.moving-mass', low: 2.5, high: 2.5, unit: 'kg', origin: 'book' }),
    );
  });
});

describe('pack', () => {
  it('makes a whole pack, says so, and makes the same again', async () => {
    const folder = books.book(fine);
    const into = join(books.home, 'made');
    expect(await ran(['pack', folder, '--into', into])).toMatchObject({
      code: 0,
      out: expect.stringMatching(/^Made \d+ files in .*: revision A, stamp [0-9a-f]{12}\.\n$/),
    });
    const bytes = (): string[] => readdirSync(into).map((name) => readFileSync(join(into, name), 'utf8'));
    const first = bytes();
    expect(readPack(into).state).toBe('complete');
    expect((await ran(['pack', folder, '--into', into])).out).toMatch(/^Made again/);
    expect(bytes()).toEqual(first);
    writeFileSync(join(into, 'index.html'), '');
    expect((await ran(['pack', folder, '--into', into])).out).toContain(
      'not whole or had been changed (index.html); it is made anew.',
    );
    expect(bytes()).toEqual(first);
  });

  it('stamps every file with revision, content and facts', async () => {
    const into = join(books.home, 'stamped');
    await ran(['pack', books.book(fine), '--into', into]);
    const state = readPack(into);
    if (state.state !== 'complete') throw new Error('the pack is not whole');
    const stamp = state.manifest.stamp.content.slice(0, 12);
    for (const { name, sheet, factsHash } of state.manifest.files) {
      expect(readFileSync(join(into, name), 'utf8'), name).toContain(stamp);
      expect(factsHash === undefined, name).toBe(sheet === undefined);
    }
  });

  it('ends with 1 when something fails, and makes the pack all the same', async () => {
    const into = join(books.home, 'of-failing');
    expect((await ran(['pack', books.book(failing), '--into', into])).code).toBe(1);
    expect(readPack(into).state).toBe('complete');
  });

  it('makes nothing of a book that cannot be read', async () => {
    const into = join(books.home, 'of-unreadable');
    expect((await ran(['pack', books.book(unreadable), '--into', into])).code).toBe(2);
    expect(existsSync(into)).toBe(false);
  });

  it('does not write over a book, and wants to be told where to', async () => {
    const folder = books.book(fine);
    expect(await ran(['pack', folder, '--into', folder])).toMatchObject({ code: 2, out: '' });
    expect(readdirSync(folder)).toEqual(['book.yaml']);
    expect((await ran(['pack', folder])).err).toContain("required option '-i, --into <folder>' not specified");
  });
});

describe('work', () => {
  it('lists every formula with its source and what stands behind it', async () => {
    const { code, out } = await ran(['work']);
    expect(code).toBe(0);
    expect(out).toMatch(/^teeth-in-mesh: /m);
    expect(out.match(/^ {2}source: /gm)?.length).toBe(out.match(/^[a-z].*: .*\[.*\]$/gm)?.length);
  });

  it('shows the working, step by step, put in as a pencil would', async () => {
    const { code, out } = await ran([
      'work',
      'axis-force',
      'm=2.5 kg',
      'acceleration=700 mm/s^2',
      'F_run=7 N',
      'F_cord=0 N',
      'beta=0°',
    ]);
    expect([code, flat(out)]).toEqual([0, expect.stringContaining('2.5 kg × 0.7 m/s²')]);
    expect(out).toMatch(/^F = 8\.75 N$/m);
  });

  it('refuses a value outside the range with the reason', async () => {
    const { code, out, err } = await ran([
      'work',
      'axis-force',
      'm=2.5 kg',
      'a=-1 m/s^2',
      'F_run=7 N',
      'pull=0 N',
      'incline=0 deg',
    ]);
    expect([code, out]).toEqual([1, '']);
    expect(flat(err)).toMatch(/is −1000 mm\/s²\. axis-force may be used for: from 0/);
  });

  it.each([
    [['axis-forse'], 'There is no formula axis-forse. Did you mean axis-force?'],
    [['axis-force', 'mas=1 kg'], 'takes no mas. Did you mean mass?'],
    [['axis-force', 'm=1'], 'm: "1" has no unit.'],
    [['axis-force', 'm=1 mm'], 'm: "1 mm" is a length'],
    [['axis-force', 'm=1..2 kg'], 'is a range. A formula takes one value'],
    [['axis-force', 'm=1 kg', 'mass=1 kg'], 'mass (m) is given twice.'],
    [['axis-force', 'm'], '"m" gives no value. Write it as key=value'],
    [['axis-force', 'm=1 kg'], 'Not given: acceleration (a'],
  ] as const)('%j is refused kindly', async (args, says) => {
    const { code, out, err } = await ran(['work', ...args]);
    expect([code, out]).toEqual([2, '']);
    expect(flat(err)).toContain(says);
  });
});

describe('new and schema', () => {
  it('copies an example that can be checked, with its schema beside it', async () => {
    const into = join(books.home, 'mine');
    expect((await ran(['new', into, '--from', 'five-facts'])).code).toBe(0);
    expect(readdirSync(into).sort()).toEqual(['book.schema.json', 'book.yaml']);
    expect(readFileSync(join(into, 'book.yaml'), 'utf8')).toMatch(
      /^# YAML 1\.2\n# yaml-language-server: \$schema=book\.schema\.json\n/,
    );
    expect((await ran(['check', into, '--quick'])).code).toBe(0);
    expect((await ran(['schema'])).out).toBe(readFileSync(join(into, 'book.schema.json'), 'utf8'));
  });

  it('goes into no folder that holds something, and knows a slip', async () => {
    const folder = books.book(fine);
    expect(await ran(['new', folder])).toMatchObject({ code: 2, err: expect.stringContaining('is there already') });
    expect(readFileSync(join(folder, 'book.yaml'), 'utf8')).toBe(fine);
    const { err } = await ran(['new', join(books.home, 'x'), '--from', 'tidepol']);
    expect(flat(err)).toContain('There is no example tidepol. Did you mean tidepool? Examples: five-facts,');
    expect(existsSync(join(books.home, 'x'))).toBe(false);
  });
});

describe('help', () => {
  it('has an example for every command', async () => {
    const { code, out } = await ran([]);
    expect(code).toBe(0);
    const commands = [...out.matchAll(/^ {2}(\w+) .*/gm)]
      .map(([, name]) => name ?? '')
      .filter((name) => /^[a-z]+$/.test(name) && name !== 'help' && name !== 'gantrybook');
    expect(commands).toEqual(['open', 'check', 'pack', 'show', 'bench', 'compare', 'work', 'new', 'schema']);
    for (const name of commands) {
      const help = await ran([name, '--help']);
      expect([name, help.code, help.out]).toEqual([name, 0, expect.stringContaining(`\n  gantrybook ${name}`)]);
    }
  });
});
