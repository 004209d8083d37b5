import { describe, expect, it } from 'vitest';
import type { Verdict } from '../../../kernel/index.ts';
import type { Moved } from '../../desk/engine.ts';
import { mostTelling } from '../moved.ts';

const stand = (verdict: Verdict, worst: number) => ({ verdict, use: { worst, best: worst, advised: 0.8, verdict } });
const moved = (key: string, from: readonly [Verdict, number], to: readonly [Verdict, number]): Moved => ({
  key,
  sheet: 'first',
  sentence: `${key}.`,
  before: stand(...from),
  after: stand(...to),
});
const order = (...all: readonly Moved[]): string =>
  mostTelling(all)
    .map(({ key }) => key)
    .join('');

describe('what moved', () => {
  it('begins with another verdict, however little it moved', () => {
    expect(order(moved('a', ['holds', 0.1], ['holds', 0.7]), moved('b', ['tight', 0.99], ['fails', 1.01]))).toBe('ba');
  });

  it('goes on by how far the use moved, up or down', () => {
    expect(
      order(
        moved('a', ['fails', 1.5], ['holds', 0.5]),
        moved('b', ['holds', 0.5], ['fails', 2.5]),
        moved('c', ['fails', 1.2], ['holds', 0.6]),
      ),
    ).toBe('bac');
  });

  it('has the worse verdict first where two moved as far', () => {
    expect(order(moved('a', ['tight', 0.75], ['holds', 0.5]), moved('b', ['holds', 0.75], ['fails', 1]))).toBe('ba');
  });

  it('takes what has no use as not moved by it', () => {
    const asked: Moved = { key: 'b', sheet: 'first', sentence: 'b.', after: { verdict: 'open' } };
    expect(order(asked, moved('a', ['fails', 1.5], ['holds', 0.5]))).toBe('ab');
  });
});
