import { describe, expect, it } from 'vitest';
import { blueprint, light, print, type Palette, type Tone } from '../style.ts';

type Linear = readonly [number, number, number];

const linear = (hex: string): Linear => {
  const channel = (at: number): number => {
    const c = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
  };
  return [channel(1), channel(3), channel(5)];
};

// Relative luminance and contrast as WCAG 2.2 defines them.
const luminance = ([r, g, b]: Linear): number => 0.2126 * r + 0.7152 * g + 0.0722 * b;
const contrast = (a: string, b: string): number => {
  const [low = 0, high = 0] = [luminance(linear(a)), luminance(linear(b))].toSorted((p, q) => p - q);
  return (high + 0.05) / (low + 0.05);
};

// Matrices of Machado, Oliveira and Fernandes (2009) for full severity, read at second hand; they act on linear light.
const sights: Readonly<Record<string, readonly (readonly [number, number, number])[]>> = {
  protanopia: [
    [0.152286, 1.052583, -0.204868],
    [0.114503, 0.786281, 0.099216],
    [-0.003882, -0.048116, 1.051998],
  ],
  deuteranopia: [
    [0.367322, 0.860646, -0.227968],
    [0.280085, 0.672501, 0.047413],
    [-0.01182, 0.04294, 0.968881],
  ],
  tritanopia: [
    [1.255528, -0.076749, -0.178779],
    [-0.078411, 0.930809, 0.147602],
    [0.004733, 0.691367, 0.3039],
  ],
};

const seen = (colour: Linear, sight: readonly (readonly [number, number, number])[]): Linear => {
  const [r = 0, g = 0, b = 0] = sight.map(([x, y, z]) =>
    Math.min(1, Math.max(0, x * colour[0] + y * colour[1] + z * colour[2])),
  );
  return [r, g, b];
};

// CIE 1976 L*a*b*, D65.
const lab = ([r, g, b]: Linear): Linear => {
  const f = (t: number): number => (t > 216 / 24389 ? Math.cbrt(t) : ((24389 / 27) * t + 16) / 116);
  const x = f((0.4124 * r + 0.3576 * g + 0.1805 * b) / 0.9505);
  const y = f(0.2126 * r + 0.7152 * g + 0.0722 * b);
  const z = f((0.0193 * r + 0.1192 * g + 0.9505 * b) / 1.089);
  return [116 * y - 16, 500 * (x - y), 200 * (y - z)];
};

const difference = (a: Linear, b: Linear): number => {
  const [p, q] = [lab(a), lab(b)];
  return Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2]);
};

const palettes: readonly (readonly [string, Palette])[] = [
  ['light', light],
  ['blueprint', blueprint],
  ['print', print],
];
const lettered: readonly Tone[] = ['ink', 'soft', 'accent', 'holds', 'tight', 'fails', 'open'];

describe.each(palettes)('the %s palette', (_, palette) => {
  it.each(lettered)('shows %s on paper and on tone with the contrast that text needs', (tone) => {
    // 4.5 is level AA for text of ordinary size.
    expect(contrast(palette[tone], palette.paper)).toBeGreaterThanOrEqual(4.5);
    expect(contrast(palette[tone], palette.tone)).toBeGreaterThanOrEqual(4.5);
  });
});

describe.each(palettes.slice(0, 2))('verdicts in the %s palette', (_, palette) => {
  const pairs = (['holds', 'tight', 'fails', 'open'] as const).flatMap((a, i, all) =>
    all.slice(i + 1).map((b) => [a, b] as const),
  );
  it.each(pairs)('%s and %s look different with every common colour vision', (a, b) => {
    // A difference of 10 is seen at a glance; a just noticeable one is about 2.3.
    for (const sight of Object.values(sights)) {
      expect(difference(seen(linear(palette[a]), sight), seen(linear(palette[b]), sight))).toBeGreaterThan(10);
    }
  });
});
