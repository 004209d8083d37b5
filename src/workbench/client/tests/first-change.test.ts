import { describe, expect, it } from 'vitest';
import { firstChange } from '../first-change.ts';

const of = (before: string, after: string): string | undefined => {
  const found = firstChange({ a: before }, { a: after }, 'a');
  return found && after.slice(found.from, found.to);
};

describe('where the text of a book changed', () => {
  it('is the whole line', () => {
    expect(of('one\ntwo: 2 mm\nthree', 'one\ntwo: 3 mm\nthree')).toBe('two: 3 mm');
  });

  it('is the first line to the last of several', () => {
    expect(of('a\nb\nc\nd\ne', 'a\nB\nc\nD\ne')).toBe('B\nc\nD');
  });

  it('is a line at either end of the text', () => {
    expect(of('a\nb', 'A\nb')).toBe('A');
    expect(of('a\nb', 'a\nB')).toBe('B');
  });

  it('is the line that was put in, and some line where one was taken out', () => {
    expect(of('a\nc', 'a\nb\nc')).toContain('b');
    expect(firstChange({ a: 'a\nb\nc' }, { a: 'a\nc' }, 'a')).toBeDefined();
  });

  it('is looked for in the file in front, then in the others', () => {
    expect(firstChange({ a: '1', b: '1' }, { a: '2', b: '2' }, 'b')?.file).toBe('b');
    expect(firstChange({ a: '1', b: '1' }, { a: '1', b: '2' }, 'a')?.file).toBe('b');
    expect(firstChange({ a: '1' }, { a: '1', b: '2' }, 'a')).toEqual({ file: 'b', from: 0, to: 1 });
  });

  it('is nowhere in the same text, nor where a file went away', () => {
    expect(of('a\nb', 'a\nb')).toBeUndefined();
    expect(firstChange({ a: '1', b: '1' }, { a: '1' }, 'a')).toBeUndefined();
  });
});
