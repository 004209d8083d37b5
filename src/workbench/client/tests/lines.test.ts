import { describe, expect, it } from 'vitest';
import { lineDifferences } from '../lines.ts';

const marked = (before: string, after: string): readonly (readonly string[])[] =>
  lineDifferences(before, after).map((lines) => lines.filter(({ differs }) => differs).map(({ text }) => text));

describe('lines that two texts do not share', () => {
  it('are found in the middle', () => {
    expect(marked('a\nb\nc', 'a\nB\nc')).toEqual([['b'], ['B']]);
  });

  it('are found where lines came and went', () => {
    expect(marked('a\nb\nc\nd', 'b\nx\nc\nd\ne')).toEqual([['a'], ['x', 'e']]);
  });

  it('are none in the same text, whatever its line ends', () => {
    expect(marked('a\r\nb', 'a\nb')).toEqual([[], []]);
  });

  it('keep every line of both, so that nothing is hidden', () => {
    const [left, right] = lineDifferences('a\nb', '');
    expect(left.map(({ text }) => text)).toEqual(['a', 'b']);
    expect(right.map(({ text }) => text)).toEqual(['']);
  });

  it('of texts that are long and wholly different are given up as a whole', () => {
    const long = (word: string): string => Array.from({ length: 3000 }, (_, i) => `${word}${i}`).join('\n');
    const [left, right] = lineDifferences(long('a'), long('b'));
    expect([left, right].every((lines) => lines.length === 3000 && lines.every(({ differs }) => differs))).toBe(true);
  });
});
