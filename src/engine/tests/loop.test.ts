import { describe, expect, it } from 'vitest';
import { constant, NoSolution, NotConverged, type Value } from '../../kernel/index.ts';
import { closeLoop } from '../loop.ts';

const value = (n: number): Value => constant(n, 'ratio', 'trial');
const close = (f: (x: number) => number, { from = 0, most = 1, tolerance = 1e-6 } = {}) =>
  closeLoop({
    name: 'test',
    from: value(from),
    most: value(most),
    tolerance,
    next: (x) => value(f(x.number)),
    otherwise: 'it runs away',
  }).number;

describe('a loop', () => {
  it('takes the lower of two crossings that lie between two points of its scan', () => {
    // x = f(x) at 0.5003 and 0.5150 only: (x − 0.5003)(x − 0.5150) is the gap.
    expect(close((x) => x + (x - 0.5003) * (x - 0.515))).toBeCloseTo(0.5003, 5);
    expect(close((x) => x + (x - 0.001) * (x - 0.012))).toBeCloseTo(0.001, 5);
    expect(close((x) => x + (x - 0.99) * (x - 0.999))).toBeCloseTo(0.99, 5);
  });

  it('has no solution where the gap comes near and does not close', () => {
    expect(() => close((x) => x + (x - 0.5) ** 2 + 1e-5)).toThrow(NoSolution);
    expect(() => close((x) => x + 0.1)).toThrow('it runs away');
  });

  it('does not take a jump for a crossing', () => {
    expect(() => close((x) => (x < 0.4 ? 0.9 : 0.1))).toThrow(NotConverged);
  });

  it('closes a steep loop to the tolerance that it shows', () => {
    const f = (x: number) => 1000 * (0.37 - x) + x;
    expect(Math.abs(f(close(f)) - 0.37)).toBeLessThan(1e-6);
  });

  it('closes at its start when it stays there', () => {
    expect(close(() => 0)).toBe(0);
    expect(close((x) => x / 2 - 1e-9)).toBe(0);
  });

  it('has no solution when it starts at or above its bound, which a book can bring about', () => {
    expect(() => close((x) => x, { from: 2, most: 1 })).toThrow(NoSolution);
    expect(() => close((x) => x, { from: 1, most: 1 })).toThrow(NoSolution);
  });

  it('is not called a failure of the machine when it gives no number', () => {
    expect(() => close(() => NaN)).toThrow(NotConverged);
    expect(() => close((x) => (x > 0.3 ? NaN : x + 1))).toThrow(NotConverged);
    expect(() => close((x) => x, { most: NaN })).toThrow(NotConverged);
  });
});

describe('a loop that never gives less back for more', () => {
  const counted = (f: (x: number) => number, rising?: true) => {
    let turns = 0;
    const at = closeLoop({
      name: 'test',
      from: value(0),
      most: value(1),
      tolerance: 1e-6,
      next: (x) => {
        turns++;
        return value(f(x.number));
      },
      ...(rising ? { rising } : {}),
      otherwise: 'it runs away',
    }).number;
    return { at, turns };
  };

  it.each([
    ['straight', (x: number) => 0.2 + 0.3 * x, 0.2 / 0.7],
    ['nearly running away', (x: number) => 0.02 + 0.97 * x, 0.02 / 0.03],
    ['bent, with a second crossing above', (x: number) => 0.1 + x * x, (1 - Math.sqrt(0.6)) / 2],
    ['with a step that it stays below', (x: number) => (x < 0.5 ? 0.1 + x / 2 : 0.9), 0.2],
    ['with a step above its first crossing', (x: number) => (x < 0.15 ? 0.1 : 0.1 + x), 0.1],
  ])('closes at the lowest value: %s', (_, f, lowest) => {
    expect(counted(f, true).at).toBeCloseTo(lowest, 8);
    expect(counted(f).at).toBeCloseTo(lowest, 8);
  });

  it('is followed from below in far fewer turns than by a scan', () => {
    const f = (x: number): number => 0.1 + 0.3 * x;
    expect(counted(f, true).turns * 3).toBeLessThan(counted((x) => 0.6 + 0.3 * x).turns);
  });

  it('has no solution where it runs away', () => {
    expect(() => counted((x) => 0.1 + 1.05 * x, true)).toThrow('it runs away');
    expect(() => counted((x) => x + (x - 0.5) ** 2 + 1e-5, true)).toThrow(NoSolution);
  });
});
