import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { axisNumber, corners, hatchPath, overlap, pathOf, px, textWidth, type Point } from '../geometry.ts';

const segmentsOf = (d: string): readonly (readonly [Point, Point])[] =>
  [...d.matchAll(/M([-\d.]+),([-\d.]+)L([-\d.]+),([-\d.]+)/g)].map(([, a, b, c, e]) => [
    [Number(a), Number(b)],
    [Number(c), Number(e)],
  ]);

const total = (d: string): number => segmentsOf(d).reduce((sum, [[a, b], [c, e]]) => sum + Math.hypot(c - a, e - b), 0);

describe('coordinates', () => {
  it('are rounded to two decimals and never read as minus zero', () => {
    expect([1.006, -0.001, 12, 1 / 3].map(px)).toEqual(['1.01', '0', '12', '0.33']);
  });

  it.each([NaN, Infinity])('refuse %s', (x) => {
    expect(() => px(x)).toThrow(RangeError);
  });

  it('make a path', () => {
    expect(pathOf(corners({ x: 0, y: 0, width: 2, height: 1 }), true)).toBe('M0,0L2,0L2,1L0,1Z');
  });
});

describe('hatching', () => {
  it('is as long as the area divided by the gap, at any angle', () => {
    // Law: lines a gap apart over an area have the length area / gap, up to one line at the rim.
    fc.assert(
      fc.property(fc.double({ min: 0, max: 3.1, noNaN: true }), fc.integer({ min: 2, max: 12 }), (angle, gap) => {
        const length = total(hatchPath(corners({ x: 10, y: 20, width: 400, height: 300 }), { gap, angle }));
        expect(Math.abs(length - (400 * 300) / gap)).toBeLessThan(510);
      }),
    );
  });

  it('stays inside a bent polygon', () => {
    const bend: readonly Point[] = [
      [0, 0],
      [90, 0],
      [90, 30],
      [30, 30],
      [30, 90],
      [0, 90],
    ];
    const found = segmentsOf(hatchPath(bend, { gap: 4, angle: Math.PI / 4 }));
    expect(found.length).toBeGreaterThan(20);
    for (const [[a, b], [c, e]] of found) {
      const [x, y] = [(a + c) / 2, (b + e) / 2];
      expect(x > -0.1 && y > -0.1 && (x < 30.1 || y < 30.1)).toBe(true);
    }
  });
});

describe('lettering', () => {
  it('gives a longer text more room', () => {
    expect(textWidth('330 rpm', 12)).toBeGreaterThan(textWidth('330', 12));
    expect(textWidth('WWW', 12)).toBeGreaterThan(textWidth('iii', 12));
  });

  it('writes axis numbers with a real minus and thin spaces', () => {
    expect([axisNumber(-3.25, 1), axisNumber(12500, 0), axisNumber(-0.001, 1), axisNumber(1000, 0)]).toEqual([
      '−3.3',
      '12\u2009500',
      '0.0',
      '1000',
    ]);
  });

  it('knows how much two boxes share', () => {
    expect(overlap({ x: 0, y: 0, width: 4, height: 4 }, { x: 3, y: 2, width: 4, height: 4 })).toBe(2);
    expect(overlap({ x: 0, y: 0, width: 4, height: 4 }, { x: 4, y: 0, width: 4, height: 4 })).toBe(0);
  });
});
