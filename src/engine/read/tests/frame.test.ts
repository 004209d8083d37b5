import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { frameOf, nearest, type BookProblem } from '../index.ts';
import { displayWidth } from '../frame.ts';
import { distance } from '../../../kernel/nearest.ts';

const problem = (line: number, column: number, width: number, more: Partial<BookProblem> = {}): BookProblem => ({
  place: { file: 'book.yaml', line, column },
  width,
  what: 'It is wrong.',
  allowed: 'This would do.',
  severity: 'error',
  ...more,
});
const framed = (text: string, one: BookProblem): string => frameOf(one, new Map([['book.yaml', text]]));

describe('the frame of a problem', () => {
  it('shows place, path, sentence, the line before, the line with the spot underlined, and what would do', () => {
    const text = `${'\n'.repeat(39)}  z:\n    speed: 160\n`;
    expect(framed(text, problem(41, 12, 3, { path: 'axes.z.speed', what: '"160" has no unit.' }))).toBe(
      [
        'book.yaml:41:12  axes.z.speed: "160" has no unit.',
        '   40 |   z:',
        ' > 41 |     speed: 160',
        '      |            ^^^',
        '  This would do.',
      ].join('\n'),
    );
  });

  it('leaves out what is not there', () => {
    expect(framed('a: 1', problem(1, 4, 1, { allowed: '' }))).toBe(
      'book.yaml:1:4  It is wrong.\n >  1 | a: 1\n      |    ^',
    );
    expect(frameOf(problem(1, 1, 1), new Map())).toBe('book.yaml:1:1  It is wrong.\n  This would do.');
    expect(framed('a', problem(7, 1, 1))).toBe('book.yaml:7:1  It is wrong.\n  This would do.');
  });

  it('stands under the spot behind tabs and letters of two columns', () => {
    const lines = framed('\t"日本🦀": e\u0301x', problem(1, 10, 3)).split('\n');
    expect(lines.slice(1, 3)).toEqual([' >  1 |   "日本🦀": e\u0301x', '      |             ^^']);
  });

  it('cuts a long line on both sides of the spot', () => {
    const text = `${'a'.repeat(200)}HERE${'b'.repeat(200)}`;
    const [, shown = '', mark = ''] = framed(text, problem(1, 201, 4)).split('\n');
    expect(shown).toMatch(/^ > {2}1 \| …a+HEREb+…$/);
    expect(shown).toHaveLength(100);
    expect(shown.indexOf('HERE')).toBe(mark.indexOf('^^^^'));
  });

  it('lets no control character through to the terminal', () => {
    const shown = framed('a: \u001b[31m\u202e', problem(1, 4, 1, { what: 'It says "\u001b[2J".' }));
    expect(shown).not.toMatch(/[^\P{Cc}\n]|\u202e/u);
  });

  it('never has a line of more than a hundred columns, and always a mark under its line', () => {
    const line = fc.string({ unit: 'grapheme', maxLength: 300 }).map((one) => one.replaceAll(/[\r\n]/g, ' '));
    fc.assert(
      fc.property(line, fc.nat(320), fc.integer({ min: 1, max: 400 }), line, (text, column, width, what) => {
        const lines = framed(text, problem(1, column + 1, width, { what: `x${what}`, allowed: what })).split('\n');
        expect(lines.filter((one) => displayWidth(one) > 100)).toEqual([]);
        expect(lines.filter((one) => /^ {6}\| *\^+$/.test(one)).length).toBeGreaterThan(0);
      }),
      { numRuns: 200 },
    );
  });
});

describe('the nearest name', () => {
  it.each([
    ['sped', 'speed'],
    ['spede', 'speed'],
    ['moving_mass', 'moving-mass'],
    ['Moving Mass', 'moving-mass'],
    ['movingmass', 'moving-mass'],
  ])('of %s is %s', (given, expected) => {
    expect(nearest(given, ['speed', 'travel', 'moving-mass'])).toBe(expected);
  });

  it('is none when nothing is near', () => {
    expect(nearest('wheels', ['speed', 'travel'])).toBeUndefined();
    expect(nearest('x'.repeat(100), ['x'.repeat(99)])).toBeUndefined();
    expect(nearest('speed', [])).toBeUndefined();
  });

  it('counts letters changed, added, left out and swapped', () => {
    const pairs = [
      ['', ''],
      ['abc', ''],
      ['abc', 'abd'],
      ['abc', 'acb'],
      ['kitten', 'sitting'],
      ['ca', 'abc'],
    ] as const;
    // Levenshtein's own distances where no swap helps; "ca" to "abc" is 3 without editing a swapped pair again.
    expect(pairs.map(([a, b]) => distance(a, b))).toEqual([0, 3, 1, 1, 3, 3]);
  });
});
