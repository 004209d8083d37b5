import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { atLeast, atMost, constant, formula, given, slopes, usage, usageSlopes } from '../index.ts';

const says = () => '';
const length = (n: number) => constant(n, 'length', 'trial');
const most = (demand: number, limit: number) => usage(atMost(length(demand), length(limit), { says }));
const least = (actual: number, limit: number) => usage(atLeast(length(actual), length(limit), { says }));
const real = fc.double({ min: -1e6, max: 1e6, noNaN: true });

describe('usage', () => {
  it('is too much where less than nothing is left and more is wanted', () => {
    expect(least(-5, 0)).toBe(Infinity);
    expect(most(-3, -5)).toBe(Infinity);
    expect(most(0, -1)).toBe(Infinity);
  });

  it('is nothing where what is wanted is there without any', () => {
    expect(least(0, 0)).toBe(0);
    expect(least(3, -1)).toBe(0);
    expect(most(-5, -3)).toBe(0);
    expect(most(0, 0)).toBe(0);
  });

  it('is at most 1 exactly where the demand is at most the limit', () => {
    fc.assert(
      fc.property(real, real, (a, b) => {
        expect(most(a, b) <= 1).toBe(a <= b);
        expect(least(a, b) <= 1).toBe(a >= b);
      }),
    );
  });

  it('is more than 1 even where the demand is only the next number above the limit', () => {
    const limit = 2 - 2 ** -52;
    expect(most(2, limit)).toBeGreaterThan(1);
  });

  it('never falls when a demand grows', () => {
    fc.assert(
      fc.property(real, real, fc.double({ min: 0, max: 1e6, noNaN: true }), (demand, limit, more) => {
        expect(most(demand + more, limit)).toBeGreaterThanOrEqual(most(demand, limit));
        expect(least(demand - more, limit)).toBeGreaterThanOrEqual(least(demand, limit));
      }),
    );
  });
});

describe('slopes that were joined before', () => {
  const sum = (name: string, slope: 'up' | 'down') =>
    formula({
      name,
      gives: { symbol: 's', of: 'length', means: 'sum' },
      takes: {
        a: { symbol: 'a', of: 'length', means: 'one', slope, typical: [1, 2] },
        more: { symbol: 'm', of: 'length', means: 'more', slope: 'up', typical: [1, 2], many: true },
      },
      steps: ({ a, more }) => (slope === 'up' ? a : -a) + more.reduce((x, y) => x + y, 0),
      assumes: [],
      source: [],
      checked: [],
      accuracy: 'exact',
    });
  const x = given(1, 'length', 'x');
  const y = given(2, 'length', 'y');

  it('are kept apart by formula, by place among the inputs and by list', () => {
    const [up, down] = [sum('test-up', 'up'), sum('test-down', 'down')];
    expect(slopes(up.work({ a: x, more: [y] }))).toEqual(
      new Map([
        ['x', 'up'],
        ['y', 'up'],
      ]),
    );
    expect(slopes(down.work({ a: x, more: [y] }))).toEqual(
      new Map([
        ['x', 'down'],
        ['y', 'up'],
      ]),
    );
    expect(slopes(down.work({ a: y, more: [x] }))).toEqual(
      new Map([
        ['y', 'down'],
        ['x', 'up'],
      ]),
    );
    expect(slopes(down.work({ a: x, more: [x, y] }))).toEqual(
      new Map([
        ['x', 'either'],
        ['y', 'up'],
      ]),
    );
    expect(slopes(down.work({ a: 1, more: [] }))).toEqual(new Map());
  });

  it('are the same map for what was made alike, whatever its number', () => {
    const one = sum('test-alike', 'up');
    const from = (n: number) => slopes(one.work({ a: given(n, 'length', 'x'), more: [given(n, 'length', 'y')] }));
    expect(from(3)).toBe(from(4));
  });

  it('turn round between demand and limit, and say nothing of a fact that is on both sides', () => {
    const against = (base?: typeof x) => usageSlopes(atMost(x, y, { says, ...(base ? { base } : {}) }));
    expect(against()).toEqual(
      new Map([
        ['x', 'up'],
        ['y', 'down'],
      ]),
    );
    expect(against(given(0, 'length', 'z'))).toEqual(
      new Map([
        ['x', 'up'],
        ['z', 'either'],
        ['y', 'down'],
      ]),
    );
    expect(usageSlopes(atMost(y, x, { says }))).toEqual(
      new Map([
        ['y', 'up'],
        ['x', 'down'],
      ]),
    );
  });
});
