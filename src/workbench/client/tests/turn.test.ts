import { describe, expect, it } from 'vitest';
import { turned } from '../turn.ts';

// Own: what a step is, is the desk's choice. The texts are as a book has them.
describe('a number is turned', () => {
  it.each([
    ['220 mm/s', 1, '230 mm/s'],
    ['220 mm/s', -3, '190 mm/s'],
    ['1.2 A peak', 1, '1.3 A peak'],
    ['1.20 A', 1, '1.30 A'],
    ['0.9 N·m', 1, '0.91 N·m'],
    ['5..8 N', 1, '5.1..8.1 N'],
    ['24 V ±2%', 1, '25 V ±2%'],
    ['8', 1, '9'],
    ['20', -1, '19'],
    ['-5..35 degC', 1, '-4..36 degC'],
    ['99 mm', 1, '100 mm'],
    ['12 V', 10, '22 V'],
  ])('%s by %i steps is %s', (text, steps, result) => {
    expect(turned(text, steps)).toBe(result);
  });

  it('comes back by as many steps', () => {
    expect(turned(turned('5..8 N', 3) ?? '', -3)).toBe('5.0..8.0 N');
  });

  it('does not turn into nothing or change its sign', () => {
    expect(turned('2', -2)).toBeUndefined();
    expect(turned('1.2 A', -20)).toBeUndefined();
  });

  it.each(['', 'belt', 'windings shorted', '${x}', 'NaN'])('finds no number in "%s"', (text) => {
    expect(turned(text, 1)).toBeUndefined();
  });
});
