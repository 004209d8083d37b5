/** The layers of a plot: how each is drawn, what it occupies, where its label would like to stand. */
import { curveLinear, curveMonotoneX, curveStepAfter, line as curve } from 'd3-shape';
import { corners, hatchPath, pathOf, textWidth, type Box, type Point } from './geometry.ts';
import type { Place, Wanted } from './labels.ts';
import { tag, type Markup } from './markup.ts';
import { lettering, type Tone } from './style.ts';
import { line, path, pen } from './svg.ts';
import { px } from './geometry.ts';
import type { Fill, Layer } from './plot-types.ts';

/** The frame of the plot and its two scales, from axis numbers to px. */
export interface Drawn {
  readonly frame: Box;
  readonly x: (value: number) => number;
  readonly y: (value: number) => number;
}

type Of<K extends Layer['kind']> = Extract<Layer, { kind: K }>;

const finite = ([x, y]: Point): boolean => Number.isFinite(x) && Number.isFinite(y);

const filled = (polygon: readonly Point[], fill: Fill, tone: Tone): Markup[] => {
  const lines = (gap: number, angle: number): Markup => path(hatchPath(polygon, { gap, angle }), `s-${tone} w-hair`);
  switch (fill) {
    case 'tone':
      return [path(pathOf(polygon, true), 'f-tone')];
    case 'hatched':
      return [lines(6, Math.PI / 4)];
    case 'sparse':
      return [lines(12, Math.PI / 4)];
    case 'crossed':
      return [lines(6, Math.PI / 4), lines(6, -Math.PI / 4)];
  }
};

const stepped = (points: readonly Point[]): readonly Point[] =>
  points.flatMap(([x, y], i): Point[] => {
    const next = points[i + 1];
    return next
      ? [
          [x, y],
          [next[0], y],
        ]
      : [[x, y]];
  });

const onPage = ({ x, y }: Drawn, points: readonly Point[]): readonly Point[] =>
  points.filter(finite).map(([a, b]): Point => [x(a), y(b)]);

const bandPolygon = (layer: Of<'band'>, { x, y }: Drawn): readonly Point[] => {
  const both = layer.x.map((at, i) => ({ at, low: layer.lower[i] ?? NaN, high: layer.upper[i] ?? NaN }));
  const known = both.filter(
    ({ at, low, high }) => Number.isFinite(at) && Number.isFinite(low) && Number.isFinite(high),
  );
  return [
    ...known.map(({ at, high }): Point => [x(at), y(high)]),
    ...known.map(({ at, low }): Point => [x(at), y(low)]).toReversed(),
  ];
};

const regionBox = (layer: Of<'region'>, { frame, x, y }: Drawn): Box => {
  const [x1, x2] = [layer.x?.[0] ?? null, layer.x?.[1] ?? null];
  const [y1, y2] = [layer.y?.[0] ?? null, layer.y?.[1] ?? null];
  const left = x1 === null ? frame.x : Math.max(x(x1), frame.x);
  const right = x2 === null ? frame.x + frame.width : Math.min(x(x2), frame.x + frame.width);
  const top = y2 === null ? frame.y : Math.max(y(y2), frame.y);
  const foot = y1 === null ? frame.y + frame.height : Math.min(y(y1), frame.y + frame.height);
  return { x: left, y: top, width: Math.max(0, right - left), height: Math.max(0, foot - top) };
};

const across = (layer: Of<'rule'> | Of<'limit'>, { frame, x, y }: Drawn): readonly [Point, Point] =>
  layer.axis === 'x'
    ? [
        [x(layer.at), frame.y],
        [x(layer.at), frame.y + frame.height],
      ]
    : [
        [frame.x, y(layer.at)],
        [frame.x + frame.width, y(layer.at)],
      ];

const limitEdge = (layer: Of<'limit'>, drawn: Drawn): Box => {
  const [[x, y]] = across(layer, drawn);
  const depth = 8;
  const { frame } = drawn;
  if (layer.axis === 'x')
    return { x: layer.forbidden === 'above' ? x : x - depth, y: frame.y, width: depth, height: frame.height };
  return { x: frame.x, y: layer.forbidden === 'above' ? y - depth : y, width: frame.width, height: depth };
};

const pointMark = ([x, y]: Point, shape: 'dot' | 'ring' | 'cross', tone: Tone): Markup =>
  shape === 'cross'
    ? path(
        pathOf([
          [x - 4, y - 4],
          [x + 4, y + 4],
        ]) +
          pathOf([
            [x - 4, y + 4],
            [x + 4, y - 4],
          ]),
        `s-${tone} w-heavy`,
      )
    : tag`<circle class="${shape === 'dot' ? `f-${tone}` : `s-${tone} w-medium both`}" cx="${px(x)}" cy="${px(y)}" r="3.6"/>`;

const bracket = (from: Point, to: Point, tone: Tone): Markup => {
  const level = Math.abs(to[0] - from[0]) > Math.abs(to[1] - from[1]);
  const end = ([x, y]: Point): string =>
    level
      ? pathOf([
          [x, y - 5],
          [x, y + 5],
        ])
      : pathOf([
          [x - 5, y],
          [x + 5, y],
        ]);
  return path(pathOf([from, to]) + end(from) + end(to), `s-${tone} w-medium`);
};

const shapes = { straight: curveLinear, smooth: curveMonotoneX, step: curveStepAfter } as const;

/** Draws one layer. */
export const drawLayer = (layer: Layer, drawn: Drawn): Markup[] => {
  const { x, y } = drawn;
  switch (layer.kind) {
    case 'line': {
      const draw = curve<Point>()
        .defined(finite)
        .x(([v]) => x(v))
        .y(([, v]) => y(v))
        .curve(shapes[layer.shape ?? 'straight'])
        .digits(2);
      const classes = pen({ weight: 'medium', ...layer });
      return [path(draw([...layer.points]) ?? '', classes)];
    }
    case 'band': {
      const polygon = bandPolygon(layer, drawn);
      const half = polygon.length / 2;
      const { tone = 'soft', edges = 'full' } = layer;
      const edge = pen({ tone: layer.tone ?? 'ink', weight: 'fine', stroke: edges === 'dashed' ? 'dashed' : 'full' });
      return [
        ...filled(polygon, layer.fill, tone),
        ...(edges === 'none' ? [] : [path(pathOf(polygon.slice(0, half)) + pathOf(polygon.slice(half)), edge)]),
      ];
    }
    case 'region':
      return filled(corners(regionBox(layer, drawn)), layer.fill, layer.tone ?? 'soft');
    case 'limit': {
      const tone = layer.tone ?? 'fails';
      return [
        path(hatchPath(corners(limitEdge(layer, drawn)), { gap: 5, angle: Math.PI / 4 }), `s-${tone} w-fine`),
        line(...across(layer, drawn), `s-${tone} w-heavy`),
      ];
    }
    case 'rule':
      return [line(...across(layer, drawn), pen({ stroke: 'dashed', tone: 'soft', ...layer }))];
    case 'point': {
      const [a, b] = layer.at;
      const tone = layer.tone ?? 'ink';
      if (!finite(layer.at)) return [];
      return [
        ...(layer.x ? [bracket([x(layer.x[0]), y(b)], [x(layer.x[1]), y(b)], tone)] : []),
        ...(layer.y ? [bracket([x(a), y(layer.y[0])], [x(a), y(layer.y[1])], tone)] : []),
        pointMark([x(a), y(b)], layer.shape ?? 'dot', tone),
      ];
    }
  }
};

/** The lines of a layer on the page, which labels should keep off. */
export const outlineOf = (layer: Layer, drawn: Drawn): readonly Point[] => {
  switch (layer.kind) {
    case 'line':
      return onPage(drawn, layer.shape === 'step' ? stepped(layer.points) : layer.points);
    case 'band':
      return layer.edges === 'none' ? [] : bandPolygon(layer, drawn);
    case 'limit':
    case 'rule':
      return across(layer, drawn);
    case 'region':
      return [];
    case 'point':
      return onPage(drawn, [layer.at]).flatMap(([x, y]): Point[] =>
        corners({ x: x - 5, y: y - 5, width: 10, height: 10 }).slice(),
      );
  }
};

const beside = ([x, y]: Point): readonly Place[] => [
  { at: [x + 7, y - 6], anchor: 'start' },
  { at: [x - 7, y - 6], anchor: 'end' },
  { at: [x + 7, y + 15], anchor: 'start' },
  { at: [x - 7, y + 15], anchor: 'end' },
  { at: [x + 9, y + 4], anchor: 'start' },
  { at: [x - 9, y + 4], anchor: 'end' },
  { at: [x, y - 11], anchor: 'middle' },
  { at: [x, y + 21], anchor: 'middle' },
];

const alongLine = (points: readonly Point[], { x, y, width, height }: Box): readonly Place[] => {
  const seen = points.filter(([a, b]) => a >= x && a <= x + width && b >= y && b <= y + height);
  const end = seen.at(-1);
  if (!end) return [];
  const atEnd: Place[] = [
    { at: [end[0] + 5, end[1] + 4], anchor: 'start' },
    { at: [end[0] - 3, end[1] - 6], anchor: 'end' },
    { at: [end[0] - 3, end[1] + 15], anchor: 'end' },
  ];
  const along = [0.85, 0.7, 0.55, 0.4, 0.25, 0.1].flatMap((share): Place[] => {
    const point = seen[Math.round(share * (seen.length - 1))];
    if (!point) return [];
    const [a, b] = point;
    return [
      { at: [a + 4, b - 6], anchor: 'start' },
      { at: [a - 4, b - 6], anchor: 'end' },
      { at: [a + 4, b + 15], anchor: 'start' },
      { at: [a - 4, b + 15], anchor: 'end' },
    ];
  });
  return [...atEnd, ...along];
};

const within = (box: Box): readonly Place[] =>
  [0.5, 0.94, 0.06, 0.3, 0.7, 0.82, 0.18].flatMap((down) =>
    [0.5, 0.25, 0.75].map((right): Place => ({
      at: [box.x + right * box.width, box.y + down * box.height + 4],
      anchor: 'middle',
    })),
  );

/** The label of a layer and the places it would like, best first. */
export const labelOf = (layer: Layer, drawn: Drawn): Wanted | undefined => {
  const { label } = layer;
  if (!label) return undefined;
  const { frame } = drawn;
  switch (layer.kind) {
    case 'line': {
      const dense = layer.shape === 'step' ? stepped(layer.points) : layer.points;
      return { text: label, places: alongLine(onPage(drawn, dense), frame) };
    }
    case 'band': {
      const polygon = bandPolygon(layer, drawn);
      const half = polygon.length / 2;
      // In the middle of the band, where it is thickest first.
      const pairs = polygon
        .slice(0, half)
        .map(([a, b], i) => ({ a, b, foot: polygon[polygon.length - 1 - i]?.[1] ?? b }));
      const order = pairs
        .filter((_, i) => i % Math.max(1, Math.floor(half / 12)) === 0)
        .toSorted((p, q) => q.foot - q.b - (p.foot - p.b))
        .map(({ a, b, foot }): Place => ({ at: [a, (b + foot) / 2 + 4], anchor: 'middle' }));
      return { text: label, places: [...order, ...alongLine(polygon.slice(0, half), frame)] };
    }
    case 'region':
      return { text: label, places: within(regionBox(layer, drawn)) };
    case 'point':
      return { text: label, places: onPage(drawn, [layer.at]).flatMap(beside) };
    case 'limit':
    case 'rule':
      return { text: label, places: besideRule(layer, label, drawn) };
  }
};

const besideRule = (layer: Of<'limit'> | Of<'rule'>, label: string, drawn: Drawn): readonly Place[] => {
  const [[x, y]] = across(layer, drawn);
  const { frame } = drawn;
  const depth = layer.kind === 'limit' ? 10 : 0;
  if (layer.axis === 'y') {
    const above = layer.kind === 'limit' && layer.forbidden === 'above' ? depth : 0;
    const below = layer.kind === 'limit' && layer.forbidden === 'below' ? depth : 0;
    const ends: readonly (readonly [number, 'start' | 'end'])[] = [
      [frame.x + frame.width - 4, 'end'],
      [frame.x + 6, 'start'],
      [frame.x + frame.width * 0.45, 'start'],
    ];
    return ends.flatMap(([at, anchor]): Place[] => [
      { at: [at, y - 5 - above], anchor },
      { at: [at, y + 14 + below], anchor },
    ]);
  }
  const width = textWidth(label, lettering.small);
  const [right, left] =
    layer.kind === 'limit' && layer.forbidden === 'above' ? [depth, 0] : [0, layer.kind === 'limit' ? depth : 0];
  const roomRight = x + width + 6 + right < frame.x + frame.width;
  return [0.05, 0.15, 0.25, 0.4, 0.55, 0.7, 0.9].flatMap((down): Place[] => {
    const at = frame.y + 8 + down * (frame.height - 12);
    const sides: Place[] = [
      { at: [x + 5 + right, at], anchor: 'start' },
      { at: [x - 5 - left, at], anchor: 'end' },
    ];
    return roomRight ? sides : sides.toReversed();
  });
};
