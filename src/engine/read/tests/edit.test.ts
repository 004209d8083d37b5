import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Edit } from '../../../kernel/index.ts';
import { CannotEdit, editBook } from '../edit.ts';
import { readFiles, readText } from './sample.ts';

const edited = (text: string, ...edits: readonly Edit[]): string =>
  editBook({ files: new Map([['book.yaml', text]]) }, edits).get('book.yaml') ?? text;
const set = (text: string, path: string, value: string | null): string => edited(text, { path, text: value });

describe('a value that stands already', () => {
  it.each([
    ['a: 5 N\n', 'a', '6 N', 'a: 6 N\n'],
    ['a:   5 N   # pulled\nb: 1\n', 'a', '6 N', 'a:   6 N   # pulled\nb: 1\n'],
    ['x: { a: 5 N, b: 1 }', 'x.a', '0.9..1.3 N·m', 'x: { a: 0.9..1.3 N·m, b: 1 }'],
    ['x:\r\n  a: 5 N # c\r\n', 'x.a', '6 N', 'x:\r\n  a: 6 N # c\r\n'],
    ['\uFEFFa: 5 N', 'a', '6 N', '\uFEFFa: 6 N'],
    ['l: [M1, M2]\n', 'l.1', 'M3', 'l: [M1, M3]\n'],
    ['l: [M1, M2]\n', 'l', '[M4]', 'l: [M4]\n'],
    ['l: M1\n', 'l.0', 'M2', 'l: M2\n'],
    ['l:\n- M1\n- M2 # spare\n', 'l.1', 'M3', 'l:\n- M1\n- M3 # spare\n'],
    [
      'parts:\n  chain-4x0.5:\n    price: 2 EUR\n',
      'parts.chain-4x0.5.price',
      '3 EUR',
      'parts:\n  chain-4x0.5:\n    price: 3 EUR\n',
    ],
    ['a: ~\n', 'a', '6 N', 'a: 6 N\n'],
    ['a: "B"\n', 'a', 'C', 'a: "C"\n'],
    ["a: '2'\n", 'a', '3', "a: '3'\n"],
    ['a: |\n  old\n  text\nb: 1\n', 'a', 'new', 'a: new\nb: 1\n'],
    ['a: old\n  text\nb: 1\n', 'a', 'new', 'a: new\nb: 1\n'],
  ])('in %j: %s becomes %s', (text, path, value, expected) => {
    expect(set(text, path, value)).toBe(expected);
  });

  it.each([
    ['a:\nb: 1\n', 'a: 6 N\nb: 1\n'],
    ['a: # to be measured\nb: 1\n', 'a: 6 N # to be measured\nb: 1\n'],
    ['a:', 'a: 6 N'],
    ['{ a: , b: 1 }', '{ a: 6 N , b: 1 }'],
  ])('and is empty, in %j', (text, expected) => {
    expect(set(text, 'a', '6 N')).toBe(expected);
  });

  it('keeps where it comes from unless the edit says otherwise', () => {
    const flow = 'a: { is: 5..8 N, from: guess } # c\n';
    expect(set(flow, 'a', '6 N')).toBe('a: { is: 6 N, from: guess } # c\n');
    expect(set(flow, 'a', '{ is: 6 N, from: measured }')).toBe('a: { is: 6 N, from: measured } # c\n');
    expect(edited(flow, { path: 'a.is', text: '6 N' }, { path: 'a.from', text: 'measured' })).toBe(
      'a: { is: 6 N, from: measured } # c\n',
    );
    expect(set('a:\n  is: 5 N # pulled\n  from: guess\n', 'a', '6 N')).toBe('a:\n  is: 6 N # pulled\n  from: guess\n');
  });

  it('can be told where it comes from', () => {
    expect(set('a: 5..8 N # c\n', 'a.from', 'measured')).toBe('a: { is: 5..8 N, from: measured } # c\n');
    expect(set('a: 1,9 N\n', 'a.from', 'measured')).toBe('a: { is: "1,9 N", from: measured }\n');
  });

  it('that fills several lines gives way, and its comments move above', () => {
    const text = 'x:\n  a: # first\n    b: 1 # one\n    # two\n    c: 2\n  # after\n  d: 3\n';
    expect(set(text, 'x.a', '[]')).toBe('x:\n  # first\n  # one\n  # two\n  a: []\n  # after\n  d: 3\n');
  });

  it.each([
    ['a: b: c', 'a: "a: b: c"\n'],
    ['#10-32', 'a: "#10-32"\n'],
    ['x #y', 'a: "x #y"\n'],
    ['- x', 'a: "- x"\n'],
    ['*x', 'a: "*x"\n'],
    ['"', "a: '\"'\n"],
    [`it's "so": yes`, `a: 'it''s "so": yes'\n`],
    ['two\nlines', 'a: "two\\nlines"\n'],
    [' spaced ', 'a: " spaced "\n'],
    ['', 'a: ""\n'],
    ['null', 'a: "null"\n'],
    ['"404"', 'a: "404"\n'],
    ['3/4"', 'a: 3/4"\n'],
    ['20', 'a: 20\n'],
    ['1,9 N', 'a: 1,9 N\n'],
  ])('is quoted where YAML needs it: %j', (value, expected) => {
    expect(set('a: 5 N\n', 'a', value)).toBe(expected);
  });

  it('needs more quotes between brackets', () => {
    expect(set('x: { a: 5 N }\n', 'x.a', '1,9 N')).toBe('x: { a: "1,9 N" }\n');
    expect(set('x: [a]\n', 'x.0', 'b]')).toBe('x: ["b]"]\n');
  });
});

describe('a key that is not there yet', () => {
  it.each([
    ['x:\n  a: 1\ny: 2\n', 'x.b', 'x:\n  a: 1\n  b: v\ny: 2\n'],
    ['x:\n  a: 1 # c\n  # more\n\ny: 2\n', 'x.b', 'x:\n  a: 1 # c\n  b: v\n  # more\n\ny: 2\n'],
    ['x:\n    a: 1', 'x.b', 'x:\n    a: 1\n    b: v'],
    ['x:\r\n  a: 1\r\n', 'x.b', 'x:\r\n  a: 1\r\n  b: v\r\n'],
    ['x:\n  a: { c: 1 }\n', 'x.a.b', 'x:\n  a: { c: 1, b: v }\n'],
    ['x: {a: 1}\n', 'x.b', 'x: {a: 1, b: v}\n'],
    ['x: {}\n', 'x.b', 'x: { b: v }\n'],
    ['x: { a: 1, }\n', 'x.b', 'x: { a: 1, b: v, }\n'],
    ['x: {\n  a: 1, # one\n  c: 2 # two\n}\n', 'x.b', 'x: {\n  a: 1, # one\n  c: 2, b: v # two\n}\n'],
    ['x:\n  a:\n    c: 1\ny: 2\n', 'x.b', 'x:\n  a:\n    c: 1\n  b: v\ny: 2\n'],
    ['x:\n  a: |\n    text\n\ny: 2\n', 'x.b', 'x:\n  a: |\n    text\n  b: v\n\ny: 2\n'],
    ['x:\n  a: [1,\n    2]\n', 'x.b', 'x:\n  a: [1,\n    2]\n  b: v\n'],
    ['x:\n  a:\ny: 1\n', 'x.b', 'x:\n  a:\n  b: v\ny: 1\n'],
    ['x:\n  M1:\n  M2: {}\n', 'x.M1.b', 'x:\n  M1:\n    b: v\n  M2: {}\n'],
    ['x: { M1: , M2: {} }\n', 'x.M1.b', 'x: { M1: { b: v } , M2: {} }\n'],
    ['x:\n    M1:\n        a: 1\n', 'x.M2.b', 'x:\n    M1:\n        a: 1\n    M2:\n        b: v\n'],
    ['a: 1\n', 'x.M2.b', 'a: 1\nx:\n  M2:\n    b: v\n'],
    ['x: { a: 1 }\n', 'x.b.c', 'x: { a: 1, b: { c: v } }\n'],
    ['a: 1\n', 'l.0.b', 'a: 1\nl: [{ b: v }]\n'],
    ['l:\n  - a: 1\n    b: 2\n', 'l.0.c', 'l:\n  - a: 1\n    b: 2\n    c: v\n'],
    ['l:\n  - a: 1\n', 'l.1.a', 'l:\n  - a: 1\n  - { a: v }\n'],
    ['l: [a]\n', 'l.1', 'l: [a, v]\n'],
    ['l: []\n', 'l.0', 'l: [v]\n'],
    ['', 'a', 'a: v\n'],
    ['# only a remark', 'a', '# only a remark\na: v\n'],
    ['x:\n  a: 1\n', 'x.b: c', 'x:\n  a: 1\n  "b: c": v\n'],
  ])('in %j: %s', (text, path, expected) => {
    expect(set(text, path, 'v')).toBe(expected);
  });

  it('cannot stand below a value', () => {
    expect(() => set('a: 5 N\n', 'a.b', 'v')).toThrow(CannotEdit);
    expect(() => set('l: [a]\n', 'l.5', 'v')).toThrow(CannotEdit);
  });
});

describe('a key that is taken out', () => {
  it.each([
    ['a: 1\nb: 2\nc: 3\n', 'b', 'a: 1\nc: 3\n'],
    ['a: 1\r\nb: 2\r\n', 'b', 'a: 1\r\n'],
    ['a: 1\nb: 2', 'b', 'a: 1'],
    ['a: 1\n# about b\nb: 2 # two\nc: 3\n', 'b', 'a: 1\n# about b\n# two\nc: 3\n'],
    ['x:\n  a:\n    c: 1 # one\n    # two\n    d: 2\n  b: 2\n', 'x.a', 'x:\n  # one\n  # two\n  b: 2\n'],
    ['x:\n  a: 1 # one\ny: 2\n', 'x.a', '# one\nx: {}\ny: 2\n'],
    ['x: { a: 1, b: 2, c: 3 }\n', 'x.b', 'x: { a: 1, c: 3 }\n'],
    ['x: { a: 1, b: 2 }\n', 'x.b', 'x: { a: 1 }\n'],
    ['x: { a: 1 }\n', 'x.a', 'x: {  }\n'],
    ['x: {\n  a: 1, # one\n  b: 2 # two\n}\n', 'x.b', 'x: {\n  a: 1 # one\n   # two\n}\n'],
    ['x: {\n  a: 1, # one\n  b: 2 # two\n}\n', 'x.a', 'x: {\n   # one\n  b: 2 # two\n}\n'],
    ['l: [M1, M2]\n', 'l.0', 'l: [M2]\n'],
    ['l:\n  - a # one\n  - b\n', 'l.0', 'l:\n  # one\n  - b\n'],
    ['l:\n  - a: 1 # one\n    b: 2\n', 'l.0.a', 'l:\n  # one\n  - b: 2\n'],
    ['a: |\n  text\n  more\nb: 1\n', 'a', 'b: 1\n'],
    ['a: 1\n', 'b', 'a: 1\n'],
    ['a: 1\n', 'a.b.c', 'a: 1\n'],
  ])('from %j: %s', (text, path, expected) => {
    expect(set(text, path, null)).toBe(expected);
  });
});

describe('aliases', () => {
  const text = 'a: &m { mass: 1 kg, force: 2 N } # shared\nb: *m # as a\n';

  it('give way to what they stand for, where something below them changes', () => {
    expect(set(text, 'b.mass', '3 kg')).toBe(
      'a: &m { mass: 1 kg, force: 2 N } # shared\nb: { mass: 3 kg, force: 2 N } # as a\n',
    );
    expect(set(text, 'b.speed', null)).toBe(text);
    expect(set(text, 'b', '{}')).toBe('a: &m { mass: 1 kg, force: 2 N } # shared\nb: {} # as a\n');
  });

  it('hold what they stand for in its place', () => {
    expect(() => set(text, 'a', null)).toThrow(CannotEdit);
    expect(() => set(text, 'a', '{}')).toThrow(CannotEdit);
    expect(set(text, 'b', null)).toBe('a: &m { mass: 1 kg, force: 2 N } # shared\n# as a\n');
  });
});

describe('a book of several files', () => {
  const files = {
    'book.yaml': 'book: 1\ntitle: Limpet\nrevision: A\ninclude: [motors.yaml]\ndrivers: { D1: {} }\n',
    'motors.yaml': 'motors:\n  M1: { driver: D1 }\n',
  };

  it('changes in the file where the key stands, else where its entry does', () => {
    const result = readFiles(files);
    if (!result.ok) throw new Error('the book is sound');
    expect([...editBook(result.book, [{ path: 'motors.M1.part', text: 'scrap-17' }])]).toEqual([
      ['motors.yaml', 'motors:\n  M1: { driver: D1, part: scrap-17 }\n'],
    ]);
    expect([...editBook(result.book, [{ path: 'about', text: 'a crane' }]).keys()]).toEqual(['book.yaml']);
    expect(editBook(result.book, []).size).toBe(0);
  });
});

// Every way in which a value can stand: flow and block, quoted, in a fact, in a list, with a remark before and behind.
const rich = [
  '# YAML 1.2',
  'book: 1   # the format',
  "title: 'Limpet'",
  'revision: "B"',
  'about: Crane for',
  '  a small room.',
  '',
  'axes:',
  '  # the long way',
  '  x:',
  '    drive: belt   # quiet',
  '    travel: 560 mm',
  '    moving-mass: { is: 2.4..2.6 kg, from: measured }  # with claw',
  '    motors: [ M1, M2 ]',
  '  z: { drive: hoist, travel: 700 mm, drum: { diameter: 32 mm, smooth: true }, motors: M3 } # up',
  'motors:',
  '    M1: { part: scrap-17, driver: D1 }',
  '    M2: { part: scrap-17,   # the same',
  '          driver: D1 }',
  '    M3:',
  '        part: scrap-17',
  'drivers: { D1: {} }',
  'parts:',
  '  scrap-17:',
  '    kind: stepper',
  '    holding-torque:',
  '      is: 0.3..0.5 N·m # bench',
  '      from: guess',
  '    # found twice',
  '',
];

const quantities = {
  'axes.x.travel': 'mm',
  'axes.z.travel': 'mm',
  'axes.x.moving-mass': 'kg',
  'axes.z.drum.diameter': 'mm',
  'parts.scrap-17.holding-torque': 'N·m',
} as const;

describe('any edit of any value', () => {
  const ending = fc.constantFrom('\n', '\r\n');
  const text = fc
    .tuple(ending, fc.boolean(), fc.boolean())
    .map(([end, mark, final]) => `${mark ? '\uFEFF' : ''}${rich.join(end)}${final ? '' : end}`);
  const paths = Object.keys(quantities) as (keyof typeof quantities)[];

  it('changes the value alone, and is read again as the new one', () => {
    fc.assert(
      fc.property(text, fc.constantFrom(...paths), fc.integer({ min: 1, max: 99_999 }), (before, path, number) => {
        const value = `${number} ${quantities[path]}`;
        const first = readText(before);
        if (!first.ok) throw new Error('the book is sound');
        const old = first.book.textAt(path)!;
        const at = before.indexOf(
          old,
          before.indexOf(`${path.split('.').at(-1)}:`, before.indexOf(`  ${path.split('.')[1]}:`)),
        );
        const after = edited(before, { path, text: value });
        expect(after).toBe(before.slice(0, at) + value + before.slice(at + old.length));
        const again = readText(after);
        expect(again.ok && again.book.textAt(path)).toBe(value);
      }),
      { numRuns: 60 },
    );
  });

  it('keeps every text that a person can write', () => {
    const words = fc.string({ unit: 'grapheme', maxLength: 20 }).filter((one) => !/[\p{Cc}\ufffd-\uffff]/u.test(one));
    fc.assert(
      fc.property(
        text,
        fc.constantFrom('about', 'title', 'parts.scrap-17.found-in', 'revision'),
        words,
        (before, path, value) => {
          // A text in brackets or quotes is one that the author wrote so on purpose.
          fc.pre(!/^\s*[[{"']/.test(value));
          fc.pre(value === '' || Number.isNaN(Number(value)));
          const again = readText(edited(before, { path, text: value }));
          fc.pre(!/^(true|false)$/i.test(value));
          expect(again.ok && again.book.textAt(path)).toBe(value);
        },
      ),
      { numRuns: 60 },
    );
  });

  it('that puts in and takes out again gives the same bytes', () => {
    const places = fc.constantFrom(
      'site.mains',
      'axes.z.speed',
      'axes.x.speed',
      'motors.M9',
      'modes.play.duty',
      'parts.scrap-17.found-in',
    );
    fc.assert(
      fc.property(text, places, (before, path) => {
        const value =
          path === 'motors.M9'
            ? '{ driver: D1 }'
            : path.endsWith('found-in')
              ? 'a printer'
              : path.endsWith('duty')
                ? '70 %'
                : path.endsWith('mains')
                  ? '230 V'
                  : '200 mm/s';
        const put = edited(before, { path, text: value });
        expect(readText(put).ok).toBe(true);
        const parts = path.split('.');
        const top = before.includes(`\n${parts[0]}:`) ? path : parts[0]!;
        expect(edited(put, { path: top, text: null })).toBe(before);
      }),
      { numRuns: 60 },
    );
  });

  it('keeps every remark', () => {
    const remarks = (text: string): readonly string[] =>
      (text.match(/# [a-zA-Z 0-9.]+/g) ?? []).map((one) => one.trim()).toSorted();
    const all = [
      'axes',
      'axes.x',
      'axes.x.motors',
      'axes.x.motors.0',
      'axes.z',
      'motors.M2',
      'motors.M2.part',
      'motors.M3',
      'parts.scrap-17',
      'parts.scrap-17.holding-torque',
      'book',
      'about',
    ];
    fc.assert(
      fc.property(
        text,
        fc.constantFrom(...all),
        fc.constantFrom(null, '{ is: 3 }', '[]', '5 mm'),
        (before, path, value) => {
          expect(remarks(edited(before, { path, text: value }))).toEqual(remarks(before));
        },
      ),
      { numRuns: 60 },
    );
  });
});
