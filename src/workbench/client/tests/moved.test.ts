import { describe, expect, it } from 'vitest';
import type { Verdict } from '../../../kernel/index.ts';
import type { Moved } from '../../desk/engine.ts';
import { together } from '../moved.ts';

const stand = (verdict: Verdict, worst: number) => ({
  verdict,
  use: { worst, best: worst, advised: 0.8, verdict },
});
const moved = (key: string, before: number, after: number): Moved => ({
  key,
  sheet: 'first',
  sentence: `${key} uses ${after}.`,
  before: stand(before > 1 ? 'fails' : 'holds', before),
  after: stand(after > 1 ? 'fails' : 'holds', after),
  ruler: '<svg></svg>',
});

describe('two steps of one edit', () => {
  it('show how it stood before the first and how it stands after the second', () => {
    const [one, ...others] = together([moved('A', 0.5, 0.1)], [moved('A', 0.1, 1.2)]);
    expect(others).toEqual([]);
    expect(one).toMatchObject({ before: { use: { worst: 0.5 } }, after: { verdict: 'fails', use: { worst: 1.2 } } });
    expect(one?.sentence).toBe('A uses 1.2.');
  });

  it('draw both on a new ruler', () => {
    const [one] = together([moved('A', 0.5, 0.1)], [moved('A', 0.1, 1.2)]);
    expect(one?.ruler).toContain('Before: holds, 50 % of limit');
    expect(one?.ruler).toContain('fails');
  });

  it('say nothing of what came back', () => {
    expect(together([moved('A', 0.5, 0.1)], [moved('A', 0.1, 0.5)])).toEqual([]);
  });

  it('keep what only one of them moved', () => {
    const keys = together([moved('A', 0.5, 0.1)], [moved('B', 0.1, 0.5)]).map(({ key }) => key);
    expect(keys.toSorted()).toEqual(['A', 'B']);
  });

  it('know findings that came and went', () => {
    const came: Moved = { key: 'A', sheet: 'first', sentence: 'A.', after: stand('holds', 0.5) };
    const went: Moved = { key: 'A', sheet: 'first', sentence: 'A.', before: stand('holds', 0.5) };
    expect(together([came], [went])).toEqual([]);
  });
});
