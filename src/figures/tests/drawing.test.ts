import { describe, expect, it } from 'vitest';
import { drawing, rectangle, type Drawing, type Shape } from '../drawing.ts';
import { firstFault } from './well-formed.ts';

const asked = (shapes: readonly Shape[], more: Partial<Drawing> = {}): Drawing => ({
  title: 'Drum',
  alt: 'A drum of 32 mm.',
  x: [0, 100],
  y: [0, 50],
  width: 300,
  room: 50,
  shapes,
  ...more,
});

const every: readonly Shape[] = [
  { kind: 'outline', points: rectangle([0, 0], [100, 50]) },
  { kind: 'circle', at: [50, 25], radius: 10 },
  { kind: 'hatch', points: rectangle([0, 0], [20, 50]) },
  { kind: 'centre', from: [0, 25], to: [100, 25] },
  { kind: 'dimension', from: [0, 0], to: [100, 0], offset: -20, text: '100' },
  { kind: 'dimension', from: [0, 0], to: [0, 50], offset: 20, text: '50' },
  { kind: 'dimension', from: [40, 50], to: [41, 50], offset: 12, text: '1' },
  { kind: 'round', at: [50, 25], radius: 10, angle: 0.8, text: 'Ø20' },
  { kind: 'leader', at: [90, 40], elbow: [20, 20], text: 'plate <2>' },
  { kind: 'arrow', from: [50, 25], to: [80, 25], text: 'F' },
  { kind: 'note', at: [10, 10], text: 'up' },
];

const placed = (svg: string, words: string): { x: number; y: number; turn: number } => {
  const found = new RegExp(`<text x="([-\\d.]+)" y="([-\\d.]+)"[^>]*?(?:rotate\\(([-\\d.]+)[^>]*)?>${words}<`).exec(
    svg,
  );
  return { x: Number(found?.[1]), y: Number(found?.[2]), turn: Number(found?.[3] ?? 0) };
};

describe('a dimensioned drawing', () => {
  const svg = drawing(asked(every));

  it('is well formed, escaped and the same every time', () => {
    expect(firstFault(svg)).toBeUndefined();
    expect(svg).toBe(drawing(asked(every)));
    expect(svg).toContain('plate &lt;2&gt;');
    expect(svg).not.toMatch(/NaN|undefined|\bid=/);
  });

  it('keeps one scale for both axes and counts y upward', () => {
    // 100 wide on 300 − 2 × 50 px: 2 px each.
    expect(svg).toContain('viewBox="0 0 300 200"');
    expect(svg).toContain('d="M50,150L250,150L250,50L50,50Z"');
    expect(svg).toContain('cx="150" cy="100" r="20"');
  });

  it('writes a level dimension below when it is offset to the right of its run, and an upright one so that it reads from the right', () => {
    expect(placed(svg, '100')).toEqual({ x: 150, y: 165, turn: 0 });
    expect(placed(svg, '50')).toEqual({ x: 25, y: 100, turn: -90 });
  });

  it('moves the text of a short dimension outside', () => {
    expect(placed(svg, '1').x).toBeGreaterThan(132 + 18);
  });

  it('refuses what has no extent or no room', () => {
    expect(() => drawing(asked([], { x: [1, 1] }))).toThrow(RangeError);
    expect(() => drawing(asked([], { width: 90 }))).toThrow(RangeError);
  });
});
