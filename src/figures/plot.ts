/** Plots with tidy axes and curves that are named where they are, as SVG text. */
import { extent, tickStep } from 'd3-array';
import { scaleLinear, type ScaleLinear } from 'd3-scale';
import { axisNumber, corners, pathOf, px, textWidth, type Box, type Point } from './geometry.ts';
import { dotsAlong, placeLabels, type Placed } from './labels.ts';
import { drawLayer, labelOf, outlineOf, type Drawn } from './plot-layers.ts';
import { tag, type Markup } from './markup.ts';
import { figure, path, text } from './svg.ts';
import { lettering } from './style.ts';
import type { Axis, Layer, Plot } from './plot-types.ts';

export type { Axis, Fill, Layer, Plot } from './plot-types.ts';

const finite = (x: number | null | undefined): x is number => typeof x === 'number' && Number.isFinite(x);

const valuesOn = (axis: 'x' | 'y', layer: Layer): readonly (number | null | undefined)[] => {
  const i = axis === 'x' ? 0 : 1;
  switch (layer.kind) {
    case 'line':
      return layer.points.map((point) => point[i]);
    case 'band':
      return axis === 'x' ? layer.x : [...layer.lower, ...layer.upper];
    case 'region':
      return layer[axis] ?? [];
    case 'limit':
    case 'rule':
      return layer.axis === axis ? [layer.at] : [];
    case 'point':
      return [layer.at[i], ...(layer[axis] ?? [])];
  }
};

/** The ends of an axis: as stated, otherwise the data's, with room, out to the next tick. */
const domain = (axis: 'x' | 'y', stated: Axis, layers: readonly Layer[], ticks: number): readonly [number, number] => {
  const all = layers.flatMap((layer) => valuesOn(axis, layer)).filter(finite);
  const [low = 0, high = 1] = extent(all);
  const lowEnd = stated.from ?? (low > 0 && low < 0.4 * high ? 0 : low);
  const highEnd = stated.to ?? high;
  if (!(lowEnd <= highEnd)) throw new RangeError(`the ${axis} axis of a plot runs from ${lowEnd} to ${highEnd}`);
  const room = lowEnd === highEnd ? Math.abs(highEnd) * 0.1 || 1 : 0;
  const [from = 0, to = 1] = scaleLinear([lowEnd - room, highEnd + room], [0, 1])
    .nice(ticks)
    .domain();
  return [stated.from ?? from, stated.to ?? to];
};

interface Ticks {
  readonly at: readonly number[];
  readonly texts: readonly string[];
}

const ticksOf = ([from, to]: readonly [number, number], count: number): Ticks => {
  const step = Math.abs(tickStep(from, to, count));
  const decimals = Math.max(0, Math.min(12, -Math.floor(Math.log10(step) + 1e-9)));
  const at = scaleLinear([from, to], [0, 1]).ticks(count);
  return { at, texts: at.map((x) => axisNumber(x, decimals)) };
};

const named = ({ label, unit }: Axis): string => (unit ? `${label}, ${unit}` : label);

const axes = (
  frame: Box,
  plot: Plot,
  x: ScaleLinear<number, number>,
  y: ScaleLinear<number, number>,
  xs: Ticks,
  ys: Ticks,
) => {
  const [left, right, top, foot] = [frame.x, frame.x + frame.width, frame.y, frame.y + frame.height];
  const across = (d: readonly string[]): string => d.join('');
  const grid = [
    ...xs.at.map((v) =>
      pathOf([
        [x(v), top],
        [x(v), foot],
      ]),
    ),
    ...ys.at.map((v) =>
      pathOf([
        [left, y(v)],
        [right, y(v)],
      ]),
    ),
  ];
  const marks = [
    ...xs.at.map((v) =>
      pathOf([
        [x(v), foot],
        [x(v), foot + 5],
      ]),
    ),
    ...ys.at.map((v) =>
      pathOf([
        [left - 5, y(v)],
        [left, y(v)],
      ]),
    ),
  ];
  const small = { classes: 'small' } as const;
  return {
    behind: path(across(grid), 's-hair w-hair'),
    front: [
      path(across(marks), 's-ink w-fine'),
      path(
        pathOf([
          [left, top],
          [left, foot],
          [right, foot],
        ]),
        's-ink w-medium',
      ),
      ...xs.at.map((v, i) => text([x(v), foot + 18], xs.texts[i] ?? '', { ...small, anchor: 'middle' })),
      ...ys.at.map((v, i) => text([left - 8, y(v) + 4], ys.texts[i] ?? '', { ...small, anchor: 'end' })),
      text([right, foot + 36], named(plot.x), { anchor: 'end' }),
      text([0, 13], named(plot.y)),
    ],
  };
};

const lettered = ({ at, anchor, text: words }: Placed): Markup => text(at, words, { anchor, classes: 'small halo' });

/**
 * Draws a plot.
 * @param plot axes in named units, and layers; later layers lie on earlier ones
 * @returns one self-contained SVG element, the same bytes for the same data
 * @throws RangeError for an axis whose ends are the wrong way round or no numbers
 */
export const plot = (asked: Plot): string => {
  const { width = 520, height = 320, layers } = asked;
  const [columns, rows] = [Math.max(3, Math.round(width / 85)), Math.max(3, Math.round(height / 60))];
  const xDomain = domain('x', asked.x, layers, columns);
  const yDomain = domain('y', asked.y, layers, rows);
  const [xs, ys] = [ticksOf(xDomain, columns), ticksOf(yDomain, rows)];
  const left = 12 + Math.max(...ys.texts.map((t) => textWidth(t, lettering.small)));
  const lastX = xs.texts.at(-1) ?? '';
  const right = Math.max(6, textWidth(lastX, lettering.small) / 2);
  const frame: Box = { x: left, y: 24, width: width - left - right, height: height - 24 - 42 };
  const x = scaleLinear(xDomain, [frame.x, frame.x + frame.width]);
  const y = scaleLinear(yDomain, [frame.y + frame.height, frame.y]);
  const drawn: Drawn = { frame, x: (v) => x(v), y: (v) => y(v) };
  const { behind, front } = axes(frame, asked, x, y, xs, ys);
  const inside = (p: Point): boolean => holdsPoint(frame, p);
  const curves = layers.flatMap((layer) => dotsAlong(outlineOf(layer, drawn)).filter(inside));
  const wanted = layers.flatMap((layer) => labelOf(layer, drawn) ?? []);
  const labels = placeLabels(wanted, { ...frame, x: frame.x + 2, width: frame.width - 2 }, curves);
  // A nested viewport cuts off what leaves the frame, without an id that would have to be unique on the page.
  const [fx, fy, fw, fh] = [px(frame.x), px(frame.y), px(frame.width), px(frame.height)];
  const lines = layers.filter((layer) => layer.kind !== 'point');
  const area = tag`<svg x="${fx}" y="${fy}" width="${fw}" height="${fh}" viewBox="${fx} ${fy} ${fw} ${fh}" overflow="hidden">${lines.map((layer) => drawLayer(layer, drawn))}</svg>`;
  const points = layers.filter((layer) => layer.kind === 'point' && inside([x(layer.at[0]), y(layer.at[1])]));
  return figure({ width, height, title: asked.title, alt: asked.alt, bare: asked.bare }, [
    path(pathOf(corners(frame), true), 'f-paper'),
    behind,
    area,
    front,
    points.map((layer) => drawLayer(layer, drawn)),
    labels.map(lettered),
  ]);
};

const holdsPoint = (box: Box, [a, b]: Point): boolean =>
  a >= box.x && a <= box.x + box.width && b >= box.y && b <= box.y + box.height;
