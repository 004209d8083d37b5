import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { halton, NotConverged, peak, root, seeded } from '../index.ts';

describe('root', () => {
  it.each([
    // Independent: values in closed form.
    ['x³ = 2', (x: number) => x ** 3 - 2, 0, 4, Math.cbrt(2)],
    ['cos x = 0', Math.cos, 0, 3, Math.PI / 2],
    ['steep at one end', (x: number) => Math.exp(20 * x) - 2, -1, 1, Math.log(2) / 20],
    ['flat at the root', (x: number) => (x - 0.3) ** 5, 0, 1, 0.3],
  ])('%s', (_, f, a, b, expected) => {
    // A fifth-order root is flat over about (smallest number)^(1/5); the method then stops on an exact nought.
    expect(Math.abs(root(f, a, b, 1e-12) - expected)).toBeLessThan(1e-9);
  });

  it('finds the zero of any rising cubic between its ends', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -0.9, max: 0.9, noNaN: true }),
        fc.double({ min: 0.1, max: 10, noNaN: true }),
        (zero, slope) => {
          const f = (x: number) => (x - zero) * (slope + (x - zero) ** 2);
          expect(Math.abs(root(f, -1, 1, 1e-10) - zero)).toBeLessThan(1e-9);
        },
      ),
    );
  });

  it('lies between values so small that their product is nought', () => {
    expect(root((x) => (x - 0.3) * 1e-200, 0, 1, 1e-12)).toBeCloseTo(0.3, 10);
  });

  it('says so when there is none between the ends, or the function has no number', () => {
    expect(() => root((x) => x * x + 1, -1, 1, 1e-9)).toThrow(NotConverged);
    expect(() => root((x) => (x < 0.5 ? -1 : NaN), 0, 1, 1e-9)).toThrow(NotConverged);
  });
});

it('peak climbs a single hill', () => {
  const { x, y } = peak((at) => 3 - (at - 0.7) ** 2, 0, 2, 40);
  expect(x).toBeCloseTo(0.7, 4);
  expect(y).toBeCloseTo(3, 8);
});

it('halton covers the cube evenly and begins as published', () => {
  // Published: the base-2 and base-3 radical inverse sequences, 1/2 1/4 3/4 and 1/3 2/3 1/9 (Halton 1960, as in any text on it).
  expect([1, 2, 3].map((i) => halton(i, 2))).toEqual(
    [
      [1 / 2, 1 / 3],
      [1 / 4, 2 / 3],
      [3 / 4, 1 / 9 + 0],
    ].map(([a, b]) => [a, expect.closeTo(b!, 15)]),
  );
  for (let d = 1; d <= 20; d++) expect(halton(5, d).every((u) => u >= 0 && u < 1)).toBe(true);
});

it('seeded numbers repeat and fill the interval', () => {
  const [a, b] = [seeded(7), seeded(7)];
  const first = Array.from({ length: 1000 }, a);
  expect(Array.from({ length: 1000 }, b)).toEqual(first);
  expect(Math.min(...first)).toBeGreaterThanOrEqual(0);
  expect(Math.max(...first)).toBeLessThan(1);
  expect(first.reduce((s, x) => s + x) / 1000).toBeCloseTo(0.5, 1);
});
