import { describe, expect, it } from 'vitest';
import { Quantity } from '../../../contract/index.ts';
import { frameOf, type Book } from '../index.ts';
import { readFiles, readText } from './sample.ts';

const head = 'book: 1\ntitle: Limpet\nrevision: A\n';

const soundBook = (text: string): Book => {
  const result = readText(text);
  if (!result.ok)
    throw new Error(result.problems.map((one) => frameOf(one, new Map([['book.yaml', text]]))).join('\n'));
  return result.book;
};

const whats = (text: string): readonly string[] => {
  const result = readText(text);
  return result.ok ? [] : result.problems.map(({ what }) => what);
};

describe('a sound book', () => {
  const text = `${head}axes:
  x:
    drive: belt
    travel: 560 mm # measured twice
    moving-mass: { is: 2.4..2.6 kg, from: measured }
    motors: M1
    pulley-teeth: 20
    belt: 2GT-6
motors: { M1: { part: chain-4x0.5 } }
parts:
  2GT-6: { kind: belt }
  chain-4x0.5: { kind: stepper, found-in: 'an old "printer"' }
`;
  const book = soundBook(text);
  const axis = (book.tree['axes'] as Record<string, Record<string, unknown>>)['x']!;

  it('is a tree of SI quantities that know unit, origin and text', () => {
    const travel = axis['travel'] as Quantity;
    expect(travel).toBeInstanceOf(Quantity);
    expect([travel.low, travel.high, travel.provenance, travel.text]).toEqual([0.56, 0.56, 'stated', '560 mm']);
    const mass = axis['moving-mass'] as Quantity;
    expect([mass.low, mass.high, mass.provenance, mass.range]).toEqual([2.4, 2.6, 'measured', 'doubt']);
    expect(axis['pulley-teeth']).toBe(20);
    expect(axis['motors']).toEqual(['M1']);
    expect(book.tree['book']).toBe(1);
  });

  it('knows where everything stands, or else what is around it', () => {
    const places = [
      'axes.x.travel',
      'axes.x.moving-mass',
      'axes.x.motors.0',
      'axes.x',
      'axes.x.speed',
      'axes.q.speed',
      'wires',
    ];
    expect(places.map((path) => book.placeOf(path)).map((place) => [place?.line, place?.column])).toEqual([
      [7, 13],
      [8, 24],
      [9, 13],
      [5, 3],
      [5, 3],
      [4, 1],
      [1, 1],
    ]);
    expect(book.placeOf('parts.chain-4x0.5.found-in')).toEqual({ file: 'book.yaml', line: 15, column: 43 });
  });

  it('gives back what its author wrote', () => {
    const paths = [
      'axes.x.travel',
      'axes.x.moving-mass',
      'axes.x.motors.0',
      'axes.x.pulley-teeth',
      'parts.2GT-6',
      'parts.chain-4x0.5.found-in',
      'axes',
      'nothing',
    ];
    expect(paths.map((path) => book.textAt(path))).toEqual([
      '560 mm',
      '2.4..2.6 kg',
      'M1',
      '20',
      '{ kind: belt }',
      'an old "printer"',
      null,
      null,
    ]);
  });

  it('may begin with a byte order mark and end its lines as it likes', () => {
    const marked = soundBook(`\uFEFF${text.replaceAll('\n', '\r\n')}`);
    expect(marked.tree).toEqual(book.tree);
    expect(marked.placeOf('book')).toEqual({ file: 'book.yaml', line: 1, column: 7 });
    expect(marked.placeOf('axes.x.travel')).toEqual({ file: 'book.yaml', line: 7, column: 13 });
  });

  it('may leave tables and entries empty', () => {
    expect(soundBook(`${head}axes:\nmotors:\n  M1:\nsite:\n`).tree).toEqual({
      book: 1,
      title: 'Limpet',
      revision: 'A',
      motors: { M1: {} },
    });
  });

  it('may repeat a value by an alias', () => {
    const { tree } = soundBook(`${head}cables:\n  W1: &lead { length: 3.4 m }\n  W2: *lead\n`);
    const cables = tree['cables'] as Record<string, { length: Quantity }>;
    expect(cables['W2']!.length.low).toBe(3.4);
  });

  it('hears of words that other readers take for a boolean', () => {
    const result = readText(`${head}about: off\n`);
    expect(result.ok && result.warnings.map(({ what, path }) => [path, what])).toEqual([
      ['about', '"off" is a boolean to other readers of this file.'],
    ]);
  });
});

describe('names in a book', () => {
  it('may stand for parts of a catalogue', () => {
    const text = `${head}motors: { M1: { part: frame-23-56 } }\n`;
    expect(whats(text)).toEqual(['There is no part "frame-23-56" in the book.']);
    const known = (kind: string): string[] => (kind === 'parts' ? ['frame-23-56'] : []);
    expect(readText(text, { known }).ok).toBe(true);
  });

  it('may stand for signals and cables of a book that has none yet', () => {
    expect(
      whats(`${head}axes: { x: { drive: belt, switches: { min: S1 } } }\ndrivers: { D1: { cable: W1 } }\n`),
    ).toEqual([]);
    expect(whats(`${head}axes: { x: { drive: belt, switches: { min: S1 } } }\nsignals: { S2: {} }\n`)).toEqual([
      'There is no signal "S1" in the book.',
    ]);
  });

  it('find rails where their supplies state them', () => {
    const rails = 'supplies: { G1: { rails: { 24V: { volts: 24 V } } } }\n';
    expect(whats(`${head}${rails}drivers: { D1: { rail: 24V } }\n`)).toEqual([]);
    expect(whats(`${head}${rails}drivers: { D1: { rail: 12V } }\n`)).toEqual(['There is no rail "12V" in the book.']);
  });
});

describe('a book of several files', () => {
  const main = `${head}include: [parts/motors.yaml, ./drivers.yaml]\nmotors: { M1: { driver: D1 } }\n`;
  const files = {
    'book.yaml': main,
    'parts/motors.yaml': 'motors:\n  M2: { driver: D2 }\ninclude: [drivers.yaml]\n',
    'drivers.yaml': 'drivers: { D1: {}, D2: {} }\n',
  };

  it('is one tree, and each value knows its file', () => {
    const result = readFiles(files);
    if (!result.ok) throw new Error('the book is sound');
    expect(Object.keys(result.book.tree['motors'] as object)).toEqual(['M1', 'M2']);
    expect(result.book.placeOf('motors.M2.driver')).toEqual({ file: 'parts/motors.yaml', line: 2, column: 17 });
    expect(result.book.placeOf('motors.M1.driver')?.file).toBe('book.yaml');
    expect(result.book.placeOf('drivers')?.file).toBe('drivers.yaml');
    expect([...result.book.files.keys()]).toEqual(['book.yaml', 'parts/motors.yaml', 'drivers.yaml']);
  });

  it('tells problems in the file where they stand', () => {
    const result = readFiles({ ...files, 'drivers.yaml': 'drivers: { D1: {}, D2: { rial: 24V } }\n' });
    expect(!result.ok && result.problems.map(({ place, path }) => [place.file, path])).toEqual([
      ['drivers.yaml', 'drivers.D2.rial'],
    ]);
  });

  it('keeps quiet about the rest when one of them is no YAML', () => {
    const result = readFiles({ ...files, 'drivers.yaml': 'drivers: { D1: {}\n' });
    expect(!result.ok && result.problems.map(({ place }) => place.file)).toEqual(['drivers.yaml']);
  });
});

describe('a book that is refused', () => {
  it('because it is not there', () => {
    const result = readFiles({});
    expect(!result.ok && result.problems.map(({ what }) => what)).toEqual(['There is no file "book.yaml".']);
  });

  it('because it is too large, counted in bytes', () => {
    const most = 2 * 1024 * 1024;
    const filled = (letter: string, bytes: number): string => `${head}# ${letter.repeat(bytes)}\n`;
    const room = most - head.length - 3;
    expect(readText(filled('x', room)).ok).toBe(true);
    expect(whats(filled('x', room + 1))).toEqual(['This file has 2.0 MiB.']);
    expect(whats(filled('ü', room / 2 + 1))).toHaveLength(1);
    expect(whats(filled('\u{1F980}', room / 4 + 1))).toHaveLength(1);
  });

  it('tells everything at once, each thing once, in the order of the lines', () => {
    const result = readText(
      `${head}axes:\n  x: { drive: belt, travel: 1, speed: 2, sped: 3 }\nmotors: { M1: { driver: D7 } }\n`,
    );
    expect(!result.ok && result.problems.map(({ path, width }) => [path, width])).toEqual([
      ['axes.x.travel', 1],
      ['axes.x.speed', 1],
      ['axes.x.sped', 4],
      ['motors.M1.driver', 2],
    ]);
  });
});
