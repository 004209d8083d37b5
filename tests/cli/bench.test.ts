/** The bench at the command line: forms, readings typed, piped or from a file, and what is written. */
import { chmodSync, mkdirSync, readdirSync, readFileSync, statSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { PassThrough, Readable } from 'node:stream';
import { afterAll, describe, expect, it } from 'vitest';
import { freeName, writeBook } from '../../src/cli/book-writing.ts';
import { linesFrom } from '../../src/cli/lines.ts';
import { disk, type Disk } from '../../src/pack/disk.ts';
import { shelf } from './books.ts';
import { ran } from './terminals.ts';

const books = shelf();
afterAll(books.remove);

const text = `# YAML 1.2
book: 1
title: Bench
revision: A
axes:
  x: { drive: belt, motors: [M1], travel: 560 mm, speed: 220 mm/s, acceleration: 700 mm/s², loses-place-at: 200..400 mm/s }   # seen once
motors: { M1: { part: scrap, driver: D1 } }
drivers: { D1: { current: 1 A } }
parts:
  scrap:
    kind: stepper
    rated-current: 2.8 A
    phase-resistance: { is: 0.95..1.1 ohm, from: plate }   # as printed
`;
const flat = (words: string): string => words.replaceAll(/\s+/g, ' ').trim();
const bookIn = (folder: string): string => readFileSync(join(folder, 'book.yaml'), 'utf8');

/** Lines of a stream that arrives in pieces, read as the program reads its own input. */
const piped = (...pieces: readonly string[]) => ({
  lines: () => linesFrom(Readable.from(pieces.map((piece) => Buffer.from(piece))), new PassThrough()),
});
/** One answer after the other; `before` happens as the last of them is given. */
const typed = (answers: readonly string[], before = (): void => undefined) => ({
  lines: () => {
    const left = [...answers];
    return {
      next: async (): Promise<IteratorResult<string>> => {
        if (left.length === 1) before();
        const value = left.shift();
        return value === undefined ? { done: true, value: undefined } : { done: false, value };
      },
    };
  },
});
const withReadings = (readings: string, name = 'r.yaml'): { readonly folder: string; readonly file: string } => {
  const folder = books.book({ 'book.yaml': text, [name]: readings });
  return { folder, file: join(folder, name) };
};

const good = '{ volts: 0.98 V, current: 0.96 A, temperature: 21 degC }';
const large = '{ volts: 1.5 V, current: 0.96 A, temperature: 21 degC }';

describe('the form', () => {
  it('has instrument, error, procedure and cautions, and asks nothing', async () => {
    const folder = books.book(text);
    const { code, out } = await ran(['bench', 'M1', folder, '--form', '--test', 'winding-resistance'], piped('1 V\n'));
    expect(code).toBe(0);
    for (const words of [
      'winding-resistance of scrap: resistance of one phase',
      'parts.scrap.phase-resistance: 0.95..1.1 ohm, from the plate',
      'multimeter, volts, 10 mV to 60 V, error ±0.5 % ±2 mV',
      'thermometer, −10 °C to 50 °C, error ±1 K',
      'never unplug a motor from a live driver',
      'mains is for people licensed for it, in approved enclosures',
      'Hold the tips of the voltmeter to the leads of the motor',
    ])
      expect(flat(out)).toContain(words);
    expect(out).not.toContain('such as 0.94 V):');
    expect(bookIn(folder)).toBe(text);
  });

  it('warns of hands while a torque test runs', async () => {
    const { out } = await ran(['bench', 'scrap', books.book(text), '--form', '--test', 'holding-torque']);
    expect(flat(out)).toContain('Keep hands, sleeves and hair away from pulley and line while the torque test runs');
  });

  it('without a name is a list, with what to measure first', async () => {
    const { code, out } = await ran(['bench', books.book(text)]);
    expect(code).toBe(0);
    expect(flat(out)).toContain('scrap winding-resistance: 0.95..1.1 ohm, from the plate');
    expect(flat(out)).toContain('WORTH MEASURING FIRST 1 axes.x.loses-place-at: 200..400 mm/s');
    expect(out).toContain('gantrybook bench x --test free-speed');
  });

  it.each([
    [['scrp'], 'Did you mean scrap?'],
    [['scrap', '--test', 'winding-resistence'], 'Did you mean winding-resistance?'],
    [['scrap', '--form', '--readings', 'r.yaml'], 'use one of them'],
    [['scrap', '--readings', 'nowhere.yaml'], 'it is not there'],
  ])('knows what %j was meant to be', async ([part = '', ...rest], says) => {
    const { code, err } = await ran(['bench', part, books.book(text), ...rest]);
    expect([code, flat(err)]).toEqual([2, expect.stringContaining(says)]);
  });
});

describe('readings through a pipe', () => {
  it('narrow the fact and keep every other byte', async () => {
    const folder = books.book(text);
    // Pieces end where a pipe happens to end them; lines may end as on another system, the last one not at all.
    const { code, out } = await ran(
      ['bench', 'M1', folder, '--test', 'winding-resistance'],
      piped('0.98 V\n0.9', '6 A\r\n21 deg', 'C\n0.97 V\n0.95 A\n21 degC'),
    );
    expect(code).toBe(0);
    expect(out).toContain('1. volts, volts across the leads of the phase itself (such as 0.94 V):');
    const [, written] = /is: ([^,]+), from: measured/.exec(bookIn(folder)) ?? [];
    expect(bookIn(folder)).toBe(
      text.replace('{ is: 0.95..1.1 ohm, from: plate }', `{ is: ${written}, from: measured }`),
    );
    expect(flat(out)).toContain(`parts.scrap.phase-resistance: 0.95..1.1 ohm → ${written}, measured.`);
  });

  it('are asked again where they are none, and what was read before stays', async () => {
    const folder = books.book(text);
    const { code, err } = await ran(
      ['bench', 'M1', folder, '--test', 'winding-resistance'],
      piped('0.98 A\n-0.98 V\n0.98 V\n12 A\n0.96 A\n\n21 degC\n'),
    );
    expect(code).toBe(0);
    const told = flat(err);
    expect(told).toContain('volts: "-0.98 V" is less than nothing.');
    expect(told).toContain(
      'current: "12 A" is outside of what the instrument shows. multimeter, ampere: 10 mA to 10 A',
    );
    expect(told).toContain('temperature is still missing');
    expect(bookIn(folder)).toContain('from: measured');
  });

  it('leave a set out when they are told to, and end at an empty line', async () => {
    const folder = books.book(text);
    const { out } = await ran(['bench', 'M1', folder, '--test', 'winding-resistance'], piped('0.98 V\n-\n\n'));
    expect(out).toContain('No readings: nothing was changed.');
    expect(bookIn(folder)).toBe(text);
  });

  it('that break off change nothing, and are kept to be completed', async () => {
    const folder = books.book(text);
    const { code, err } = await ran(
      ['bench', 'M1', folder, '--test', 'winding-resistance'],
      piped('0.98 V\n0.96 A\n21 degC\n0.97 V\n'),
    );
    expect(code).toBe(2);
    expect(flat(err)).toContain('What was read so far is kept in');
    expect(bookIn(folder)).toBe(text);
    const kept = join(folder, 'readings-M1.yaml');
    expect(readFileSync(kept, 'utf8')).toContain('"0.97 V"');
    const half = await ran(['bench', 'M1', folder, '--readings', kept]);
    expect([half.code, flat(half.err)]).toEqual([2, expect.stringContaining('current is missing')]);
    writeFileSync(
      kept,
      readFileSync(kept, 'utf8').replace('"0.97 V"', '"0.97 V", current: 0.95 A, temperature: 21 degC'),
    );
    expect((await ran(['bench', 'M1', folder, '--readings', kept])).code).toBe(0);
    expect(bookIn(folder)).toContain('from: measured');
  });
});

describe('readings from a file', () => {
  it('say which verdict settled, and what is still worth measuring', async () => {
    const { folder, file } = withReadings('free-speed:\n  - { kept: 380 mm/s, lost: 390 mm/s }\n');
    const { code, out } = await ran(['bench', 'x', folder, '--readings', file]);
    expect(code).toBe(0);
    expect(flat(out)).toMatch(/SETTLED \(1\) MOTION-620\/x ╌ open 110 % → ━ holds 5\d %/);
    expect(out).toContain('STILL WORTH MEASURING');
  });

  it('are told with their place, and nothing is changed', async () => {
    const { folder, file } = withReadings(
      'winding-resistance:\n  - { volts: 31 kV, current: 0.96 A, temperature: 21 degC }\n',
    );
    const { code, err } = await ran(['bench', 'M1', folder, '--readings', file]);
    expect(code).toBe(2);
    expect(err).toMatch(/^r\.yaml:2:14 {2}winding-resistance\.0\.volts: "31 kV" is outside/);
    expect(flat(err)).toContain('The book was left as it is; the readings stay in their file.');
    expect(bookIn(folder)).toBe(text);
  });

  it('that contradict the book are told, kept, and fail until it is settled', async () => {
    const { folder, file } = withReadings(`winding-resistance: [${large}]\n`);
    const { code, out } = await ran(['bench', 'M1', folder, '--readings', file]);
    expect(code).toBe(1);
    expect(flat(out)).toContain('CONTRADICTION about winding-resistance of scrap');
    expect(bookIn(folder)).toMatch(/phase-resistance: \{ is: 0\.95\.\.1\.1 ohm, from: plate \}/);
    const checked = await ran(['check', folder, '--json']);
    expect(checked.code).toBe(1);
    expect(JSON.parse(checked.out)).toMatchObject({ tally: { against: ['MOTION-911/scrap+winding-resistance'] } });

    const replaced = await ran(['bench', 'M1', folder, '--readings', file, '--replace']);
    expect(replaced.code).toBe(0);
    const [, written] = /is: ([^,]+), from: measured/.exec(bookIn(folder)) ?? [];
    expect(bookIn(folder)).toBe(
      text.replace('{ is: 0.95..1.1 ohm, from: plate }', `{ is: ${written}, from: measured }`),
    );
  });

  it('that contradict each other are never made a mean of', async () => {
    const { folder, file } = withReadings(`winding-resistance:\n  - ${good}\n  - ${large}\n`);
    const { code, out } = await ran(['bench', 'M1', folder, '--readings', file, '--replace']);
    expect(code).toBe(1);
    expect(flat(out)).toContain('which no one value fits within the error of the instrument');
    expect(bookIn(folder)).toContain('0.95..1.1 ohm, from: plate');
    expect(bookIn(folder).match(/by: winding-resistance/g)).toHaveLength(2);
  });
});

describe('a book that something else changes meanwhile', () => {
  it('is left as that made it, and the readings are kept', async () => {
    const folder = books.book(text);
    const other = text.replace('title: Bench', 'title: Another');
    const { code, err } = await ran(
      ['bench', 'M1', folder, '--test', 'winding-resistance'],
      typed(['0.98 V', '0.96 A', '21 degC', ''], () => writeFileSync(join(folder, 'book.yaml'), other)),
    );
    expect(code).toBe(2);
    expect(flat(err)).toContain('book.yaml was changed by something else in the meantime');
    expect(bookIn(folder)).toBe(other);
    expect(readFileSync(join(folder, 'readings-M1.yaml'), 'utf8')).toContain('volts: "0.98 V"');
  });

  it('keeps its rights, and a link stays a link', () => {
    const folder = books.book({ 'book.yaml': 'a: 1\n' });
    const elsewhere = join(folder, 'elsewhere');
    mkdirSync(elsewhere);
    writeFileSync(join(elsewhere, 'more.yaml'), 'b: 1\n');
    symlinkSync(join(elsewhere, 'more.yaml'), join(folder, 'more.yaml'));
    chmodSync(join(folder, 'book.yaml'), 0o600);
    const files = new Map([
      ['book.yaml', 'a: 1\n'],
      ['more.yaml', 'b: 1\n'],
    ]);
    writeBook(folder, files, new Map([...files.keys()].map((name) => [name, 'c: 2\n'])));
    expect(readFileSync(join(elsewhere, 'more.yaml'), 'utf8')).toBe('c: 2\n');
    expect(statSync(join(folder, 'book.yaml')).mode & 0o777).toBe(0o600);
    expect(readdirSync(folder).toSorted()).toEqual(['book.yaml', 'elsewhere', 'more.yaml']);
    expect(readdirSync(elsewhere)).toEqual(['more.yaml']);
  });

  it('is written whole or not at all', () => {
    const folder = books.book({ 'book.yaml': 'a: 1\n', 'more.yaml': 'b: 1\n' });
    const files = new Map([
      ['book.yaml', 'a: 1\n'],
      ['more.yaml', 'b: 1\n'],
    ]);
    let renamed = 0;
    const full: Disk = {
      ...disk,
      rename: (from, to) => {
        if (++renamed === 2) throw Object.assign(new Error('full'), { code: 'ENOSPC', syscall: 'rename' });
        disk.rename(from, to);
      },
    };
    const changed = new Map([...files.keys()].map((name) => [name, 'c: 2\n']));
    expect(() => writeBook(folder, files, changed, full)).toThrow('is as it was: the disk is full');
    for (const [name, before] of files) expect(readFileSync(join(folder, name), 'utf8')).toBe(before);
    expect(readdirSync(folder).toSorted()).toEqual(['book.yaml', 'more.yaml']);
  });

  it('gives readings a name that is free', () => {
    const folder = books.book({ 'readings-a-b.yaml': '' });
    expect(freeName(folder, 'readings-a/b', '.yaml')).toBe(join(folder, 'readings-a-b-2.yaml'));
  });
});
