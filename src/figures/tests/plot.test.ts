import { describe, expect, it } from 'vitest';
import { overlap, textWidth, type Box } from '../geometry.ts';
import { placeLabels } from '../labels.ts';
import { plot, type Layer, type Plot } from '../plot.ts';
import { lettering } from '../style.ts';
import { firstFault } from './well-formed.ts';

const curve: Layer = {
  kind: 'line',
  points: [
    [0, 90],
    [200, 80],
    [400, 40],
    [800, 10],
  ],
  label: 'has',
  shape: 'smooth',
};

const asked = (layers: readonly Layer[], more: Partial<Plot> = {}): Plot => ({
  title: 'Torque over speed',
  alt: 'It falls.',
  x: { label: 'speed', unit: 'rpm' },
  y: { label: 'torque', unit: 'mN·m' },
  layers,
  ...more,
});

const every: readonly Layer[] = [
  { kind: 'region', x: [100, 170], fill: 'tone', label: 'mid-band' },
  { kind: 'band', x: [0, 400, 800], lower: [80, 40, 10], upper: [120, 70, 20], fill: 'hatched', label: 'doubt' },
  curve,
  {
    kind: 'line',
    points: [
      [0, 20],
      [300, 60],
    ],
    shape: 'step',
    stroke: 'dashed',
    label: 'needs',
  },
  { kind: 'limit', axis: 'y', at: 100, forbidden: 'above', label: 'limit' },
  { kind: 'rule', axis: 'x', at: 330, label: '330 rpm' },
  { kind: 'point', at: [330, 65], x: [300, 360], y: [60, 70], label: 'here', shape: 'ring' },
];

const texts = (svg: string): readonly string[] => [...svg.matchAll(/<text[^>]*>([^<]*)</g)].map(([, t = '']) => t);

/** Where each label of the plot's layers stands, as far as its width is known. */
const labelBoxes = (svg: string): readonly Box[] =>
  [...svg.matchAll(/<text x="([\d.]+)" y="([\d.]+)"(?: text-anchor="(\w+)")? class="small halo">([^<]*)</g)].map(
    ([, x, y, anchor, text = '']) => {
      const width = textWidth(text, lettering.small);
      const left = Number(x) - (anchor === 'end' ? width : anchor === 'middle' ? width / 2 : 0);
      return { x: left, y: Number(y) - 9, width, height: 11 };
    },
  );

describe('a plot', () => {
  it('is well formed, self-contained and the same every time', () => {
    const svg = plot(asked(every));
    expect(firstFault(svg)).toBeUndefined();
    expect(svg).toBe(plot(asked(every)));
    expect(svg).not.toMatch(/\bid=|url\(|href=|NaN|undefined/);
    expect(svg).toContain('aria-label="Torque over speed. It falls."');
  });

  it('has tidy ticks, named units and a label on each layer', () => {
    const shown = texts(plot(asked(every)));
    expect(shown).toEqual(expect.arrayContaining(['0', '200', '400', '800', 'speed, rpm', 'torque, mN·m']));
    expect(shown).toEqual(expect.arrayContaining(['mid-band', 'doubt', 'has', 'needs', 'limit', '330 rpm', 'here']));
  });

  it('keeps labels off each other and inside the figure', () => {
    const boxes = labelBoxes(plot(asked(every)));
    expect(boxes).toHaveLength(7);
    for (const [i, box] of boxes.entries()) {
      expect(box.x).toBeGreaterThan(0);
      expect(box.x + box.width).toBeLessThan(520);
      for (const other of boxes.slice(i + 1)) expect(overlap(box, other)).toBe(0);
    }
  });

  it('puts greater values higher and further right', () => {
    const svg = plot(
      asked([
        { kind: 'point', at: [1, 1] },
        { kind: 'point', at: [2, 3] },
      ]),
    );
    const [a, b] = [...svg.matchAll(/cx="([\d.]+)" cy="([\d.]+)"/g)].map(([, x, y]) => [Number(x), Number(y)]);
    expect(b?.[0]).toBeGreaterThan(a?.[0] ?? Infinity);
    expect(b?.[1]).toBeLessThan(a?.[1] ?? -Infinity);
  });

  it('keeps to stated ends and leaves out points beyond them', () => {
    const svg = plot(
      asked([{ kind: 'point', at: [5, 5], label: 'far' }, curve], { x: { label: 'x', unit: '', from: 100, to: 300 } }),
    );
    expect(texts(svg)).toContain('300');
    expect(texts(svg)).not.toContain('400');
    expect(svg).not.toContain('<circle');
  });

  it('interrupts a curve where there is no number', () => {
    const svg = plot(
      asked([
        {
          kind: 'line',
          points: [
            [0, 1],
            [1, 2],
            [2, NaN],
            [3, 4],
            [4, 5],
          ],
        },
      ]),
    );
    const d = /class="s-ink w-medium" d="([^"]*)"/.exec(svg.slice(svg.indexOf('overflow')))?.[1] ?? '';
    expect(d.match(/M/g)).toHaveLength(2);
  });

  it('escapes what people write', () => {
    const svg = plot(asked([{ ...curve, label: '<b>&"' }], { title: "it's <x>" }));
    expect(firstFault(svg)).toBeUndefined();
    expect(svg).toContain('&lt;b&gt;&amp;&quot;');
  });

  it('draws axes when there is nothing to draw, or one value only', () => {
    expect(firstFault(plot(asked([])))).toBeUndefined();
    expect(plot(asked([{ kind: 'rule', axis: 'y', at: 0 }]))).not.toContain('NaN');
  });

  it('refuses an axis that runs backward', () => {
    expect(() => plot(asked([curve], { x: { label: 'x', unit: '', from: 3, to: 1 } }))).toThrow(RangeError);
  });
});

describe('placing labels', () => {
  const frame: Box = { x: 0, y: 0, width: 200, height: 100 };

  it('takes the first place where nothing is in the way', () => {
    const places = [
      { at: [20, 50], anchor: 'start' },
      { at: [90, 90], anchor: 'start' },
    ] as const;
    expect(placeLabels([{ text: 'a', places }], frame, [])).toEqual([{ text: 'a', ...places[0] }]);
  });

  it('gives way to a label already there, to a curve and to the frame', () => {
    const places = [
      { at: [20, 50], anchor: 'start' },
      { at: [120, 90], anchor: 'start' },
    ] as const;
    const two = placeLabels(
      [
        { text: 'first', places },
        { text: 'second', places },
      ],
      frame,
      [],
    );
    expect(two.map(({ at }) => at)).toEqual([
      [20, 50],
      [120, 90],
    ]);
    const curved = Array.from({ length: 20 }, (_, i) => [20 + i, 46] as const);
    expect(placeLabels([{ text: 'first', places }], frame, curved)[0]?.at).toEqual([120, 90]);
    const outside = [
      { at: [190, 50], anchor: 'start' },
      { at: [120, 90], anchor: 'start' },
    ] as const;
    expect(placeLabels([{ text: 'a long one', places: outside }], frame, [])[0]?.at).toEqual([120, 90]);
  });
});
