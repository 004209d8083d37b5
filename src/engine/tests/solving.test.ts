import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { OutsideRange, type Slope } from '../../kernel/index.ts';
import { extremes, solve, type Answer, type Ask } from '../scenarios.ts';
import { verdictOf } from '../verdict.ts';

type At = (path: string) => number;
interface Range {
  readonly path: string;
  readonly low: number;
  readonly high: number;
  readonly range: 'spread' | 'doubt';
}
const range = (path: string, low: number, high: number, kind: 'spread' | 'doubt'): Range => ({
  path,
  low,
  high,
  range: kind,
});

/** Asks a function of ranges; only the ranges that it looks at count as read. */
const asking = (
  axes: readonly Range[],
  work: (at: At) => number | Partial<Answer>,
  slopes: Readonly<Record<string, Slope>> = {},
): Ask => {
  const known = new Map(axes.map(({ path }) => [path, slopes[path] ?? 'either'] as const));
  const sets = new Map<string, readonly Range[]>();
  return (scenario) => {
    const read = new Set<string>();
    const found = work((path) => {
      read.add(path);
      const axis = axes.find((one) => one.path === path)!;
      return scenario.get(path) ?? (axis.low + axis.high) / 2;
    });
    const name = [...read].sort().join();
    const seen = sets.get(name) ?? axes.filter(({ path }) => read.has(path));
    sets.set(name, seen);
    return { axes: seen, ...(typeof found === 'number' ? { usage: found, slopes: known } : { usage: NaN, ...found }) };
  };
};
const trouble = new OutsideRange('test', 'x', 1, 'x < 1', '');
const verdict = (ask: Ask, narrowed?: ReadonlyMap<string, readonly [number, number]>) =>
  verdictOf(solve(ask, narrowed), 1).verdict;

describe('a verdict', () => {
  const x = range('x', 0, 1, 'doubt');
  const s = range('s', 0, 1, 'spread');

  it('never holds when the check gives no number in a part of a range', () => {
    const ask = asking([s], (at) => (at('s') > 0.9 ? { usage: NaN, slopes: new Map([['s', 'up']]) } : 0.5), {
      s: 'up',
    });
    expect(verdictOf(solve(ask), 1)).toEqual({ verdict: 'open', reason: 'did-not-converge' });
  });

  it('stands although the question does not arise in a part of a range', () => {
    const ask = asking([s], (at) => (at('s') > 0.9 ? { moot: true, usage: 0 } : 2 * at('s')));
    expect(solve(ask).worst.usage).toBeGreaterThan(1.7);
    expect(verdict(ask)).toBe('fails');
    expect(solve(asking([s], () => ({ moot: true, usage: 0 }))).moot).toBe(true);
  });

  it('is open, and does not fail, where nothing is known at one end of a doubt', () => {
    const ask = asking([x], (at) => (at('x') < 0.1 ? { trouble } : 2));
    expect(verdict(ask)).toBe('open');
  });

  it('fails although a scenario is not known, when the same doubts fail at another spread', () => {
    const ask = asking([x, s], (at) => (at('s') < 0.05 && at('x') >= 0 ? { trouble } : 2));
    expect(verdict(ask)).toBe('fails');
  });

  it('is open when a doubt that is read only at the best end of another one could still make it hold', () => {
    const late = range('late', 0, 1, 'doubt');
    const ask = asking([x, late], (at) => (at('x') < 0.25 ? 0.5 + at('late') * 1.5 : 3), { x: 'up', late: 'up' });
    const solved = solve(ask);
    expect(solved.best.usage).toBeCloseTo(0.5, 9);
    expect(verdict(ask)).toBe('open');
  });

  it('does not fail on the word of a slope that is wrong at the best end', () => {
    const ask = asking([x], (at) => 1.2 - 0.8 * Math.sin(Math.PI * at('x')) + 0.1 * at('x'), { x: 'up' });
    const solved = solve(ask);
    expect(solved.slopeBroken).toBe(true);
    expect(solved.best.usage).toBeLessThan(0.5);
    expect(verdict(ask)).toBe('open');
  });

  it('counts the worst that was seen anywhere, also where a search passed over it', () => {
    const seen: number[] = [];
    const axes = [range('a', 0, 1, 'doubt'), range('b', 0, 1, 'doubt'), range('c', 0, 1, 'spread')];
    const ask = asking(axes, (at) => {
      const narrow = Math.exp(-400 * ((at('a') - 0.37) ** 2 + (at('b') - 0.61) ** 2 + (at('c') - 0.83) ** 2));
      const y = 0.2 + 0.1 * at('a') + 3 * narrow;
      seen.push(y);
      return y;
    });
    const { worst } = solve(ask);
    expect(worst.usage).toBe(Math.max(...seen));
  });

  it('takes one value of a doubt at that value, also when nothing else is free', () => {
    const ask = asking([x], (at) => 0.5 + at('x'));
    for (const at of [0, 0.2, 0.9]) {
      const { worst, best } = solve(ask, new Map([['x', [at, at]]]));
      expect([worst.usage, best.usage]).toEqual([0.5 + at, 0.5 + at]);
    }
  });

  it('keeps a narrowed doubt inside its part in every scenario that it asks', () => {
    const axes = [x, range('y', 0, 1, 'doubt'), s];
    const asked: number[] = [];
    const ask = asking(axes, (at) => {
      // The narrowed one is read late, and only in some scenarios.
      if (at('y') < 0.5) return 0.4 + at('s');
      asked.push(at('x'));
      return 0.2 + at('x') + at('s');
    });
    solve(ask, new Map([['x', [0.8, 0.9]]]));
    expect(Math.min(...asked)).toBeGreaterThanOrEqual(0.8);
    expect(Math.max(...asked)).toBeLessThanOrEqual(0.9);
  });

  it('asks at one free spread for each of one free doubt: the least over doubts of the most over spread', () => {
    // By hand: max over s of |s − x| is max(x, 1 − x), least at x = 1/2.
    const solved = solve(asking([x, s], (at) => 1.2 * Math.abs(at('s') - at('x')) + 0.3));
    expect(solved.worst.usage).toBeCloseTo(1.5, 9);
    expect(solved.best.usage).toBeCloseTo(0.9, 3);
  });

  it('is reached within a bounded number of scenarios when much is free, and when there is no solution anywhere', () => {
    const axes = Array.from({ length: 10 }, (_, i) => range(`p${i}`, 0, 1, i < 6 ? 'doubt' : 'spread'));
    for (const usage of [(sum: number) => 0.3 + 0.05 * sum + 0.1 * Math.sin(9 * sum), () => Infinity]) {
      let asked = 0;
      const ask = asking(axes, (at) => {
        asked++;
        return usage(axes.reduce((sum, { path }, i) => sum + (i % 2 ? 1 : -1) * at(path), 0));
      });
      solve(ask);
      expect(asked).toBeLessThan(150_000);
    }
  });

  it('of a narrowed doubt never goes from holds to fails', () => {
    const part = fc.tuple(fc.double({ min: 0, max: 1, noNaN: true }), fc.double({ min: 0, max: 1, noNaN: true }));
    fc.assert(
      fc.property(
        part,
        fc.double({ min: 0.2, max: 1.2, noNaN: true }),
        fc.integer({ min: 1, max: 12 }),
        ([p, q], size, waves) => {
          const ask = asking([x, s], (at) => size * (0.5 + 0.5 * Math.sin(waves * at('x') + 2 * at('s'))));
          if (verdict(ask) !== 'holds') return;
          expect(verdict(ask, new Map([['x', [Math.min(p, q), Math.max(p, q)]]]))).not.toBe('fails');
        },
      ),
      { numRuns: 60 },
    );
  });
});

describe('extremes', () => {
  it('take the ends that slopes name, and search where there are none', () => {
    const axes = [range('a', 1, 2, 'spread'), range('b', -1, 1, 'doubt')];
    const slopes = new Map<string, Slope>([
      ['a', 'up'],
      ['b', 'either'],
    ]);
    const ends = extremes((scenario) => {
      const [a, b] = [scenario.get('a') ?? 1.5, scenario.get('b') ?? 0];
      return { number: a - b * b, slopes, axes };
    });
    expect(ends.low).toBeCloseTo(0, 9);
    expect(ends.high).toBeCloseTo(2, 6);
  });

  it('are refused when it is no number somewhere', () => {
    const axes = [range('a', 0, 1, 'doubt')];
    const number = (a: number) => (a > 0.9 ? NaN : a);
    expect(() => extremes((at) => ({ number: number(at.get('a') ?? 0.5), slopes: new Map(), axes }))).toThrow(
      'no number',
    );
  });
});
