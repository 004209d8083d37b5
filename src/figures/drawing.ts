/** Simple dimensioned drawings: outlines, hatching, dimension lines, leaders; to one scale, y upward. */
import { corners, hatchPath, pathOf, px, textWidth, type Point } from './geometry.ts';
import { tag, type Markup } from './markup.ts';
import { lettering, type Tone, type Weight } from './style.ts';
import { figure, line, path, pen, text } from './svg.ts';

type Stroke = 'full' | 'dashed' | 'dotted' | 'chain';

export type Shape =
  | {
      readonly kind: 'outline';
      readonly points: readonly Point[];
      readonly open?: boolean;
      readonly weight?: Weight;
      readonly stroke?: Stroke;
      readonly tone?: Tone;
    }
  | {
      readonly kind: 'circle';
      readonly at: Point;
      readonly radius: number;
      readonly weight?: Weight;
      readonly stroke?: Stroke;
      readonly tone?: Tone;
      readonly filled?: boolean;
    }
  /** A cut surface. */
  | {
      readonly kind: 'hatch';
      readonly points: readonly Point[];
      readonly tone?: Tone;
      readonly leaning?: 'left' | 'right';
    }
  /** Chain line through a centre or along an axis. */
  | { readonly kind: 'centre'; readonly from: Point; readonly to: Point }
  /** Distance between two points, measured along them or along one axis; `offset` in px to the left of from → to. */
  | {
      readonly kind: 'dimension';
      readonly from: Point;
      readonly to: Point;
      readonly along?: 'line' | 'x' | 'y';
      readonly offset: number;
      readonly text: string;
    }
  /** Diameter or radius, with an arrow from outside at `angle` (radians, counter-clockwise from x). */
  | {
      readonly kind: 'round';
      readonly at: Point;
      readonly radius: number;
      readonly angle: number;
      readonly text: string;
    }
  /** A note with a line to the point it speaks of; the elbow is px from there, right and up. */
  | { readonly kind: 'leader'; readonly at: Point; readonly elbow: Point; readonly text: string }
  /** A force, a speed, a direction. */
  | { readonly kind: 'arrow'; readonly from: Point; readonly to: Point; readonly text?: string; readonly tone?: Tone }
  | { readonly kind: 'note'; readonly at: Point; readonly text: string; readonly anchor?: 'start' | 'middle' | 'end' };

export interface Drawing {
  readonly title: string;
  /** The drawing in words. */
  readonly alt: string;
  /** What must be seen, in drawing units. */
  readonly x: readonly [from: number, to: number];
  readonly y: readonly [from: number, to: number];
  readonly shapes: readonly Shape[];
  /** Px of the whole figure; 520 when not given. The height follows from the scale. */
  readonly width?: number;
  /** Px kept free around for dimensions and notes; one number, or left, top, right, foot. */
  readonly room?: number | readonly [left: number, top: number, right: number, foot: number];
  readonly bare?: boolean;
}

interface Sheet {
  readonly at: (point: Point) => Point;
  readonly scale: number;
}

const plus = ([a, b]: Point, [c, d]: Point, times = 1): Point => [a + c * times, b + d * times];

const unit = (from: Point, to: Point): Point => {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  return length > 0 ? [(to[0] - from[0]) / length, (to[1] - from[1]) / length] : [1, 0];
};

/** A slender filled arrowhead whose tip is at `tip`, px. */
const head = (tip: Point, [dx, dy]: Point, tone: Tone): Markup => {
  const back: Point = [tip[0] - dx * 9, tip[1] - dy * 9];
  return path(pathOf([tip, plus(back, [-dy, dx], 2.2), plus(back, [-dy, dx], -2.2)], true), `f-${tone}`);
};

/** Lettering along a line, turned so that it reads from the foot or from the right of the sheet. */
const along = (middle: Point, direction: Point, words: string): Markup => {
  let degrees = (Math.atan2(direction[1], direction[0]) * 180) / Math.PI;
  if (degrees > 89.99) degrees -= 180;
  if (degrees < -90.01) degrees += 180;
  const radians = (degrees * Math.PI) / 180;
  return text(plus(middle, [Math.sin(radians), -Math.cos(radians)], 5), words, {
    anchor: 'middle',
    classes: 'small halo',
    turn: degrees,
  });
};

const dimension = (shape: Extract<Shape, { kind: 'dimension' }>, { at }: Sheet): Markup[] => {
  const [a, b] = [at(shape.from), at(shape.to)];
  const run: Point =
    shape.along === 'x'
      ? [Math.sign(b[0] - a[0]) || 1, 0]
      : shape.along === 'y'
        ? [0, Math.sign(b[1] - a[1]) || 1]
        : unit(a, b);
  const left: Point = [run[1], -run[0]];
  const level = (p: Point): number => p[0] * left[0] + p[1] * left[1];
  // The dimension line lies beyond the farther of the two points.
  const base = shape.offset >= 0 ? Math.max(level(a), level(b)) : Math.min(level(a), level(b));
  const foot = (p: Point): Point => plus(p, left, base - level(p) + shape.offset);
  const [from, to] = [foot(a), foot(b)];
  const side = Math.sign(shape.offset) || 1;
  const extension = (p: Point, end: Point): Markup =>
    line(plus(p, left, 2 * side), plus(end, left, 4 * side), 's-soft w-hair');
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const wide = textWidth(shape.text, lettering.small);
  const middle: Point = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
  if (length >= 26 && length >= wide + 8) {
    return [
      extension(a, from),
      extension(b, to),
      line(from, to, 's-soft w-fine'),
      head(from, [-run[0], -run[1]], 'soft'),
      head(to, run, 'soft'),
      along(middle, run, shape.text),
    ];
  }
  // Too short for its text: the arrows point inward from outside, the text stands behind the far one.
  const tail = plus(to, run, 18);
  return [
    extension(a, from),
    extension(b, to),
    line(plus(from, run, -18), tail, 's-soft w-fine'),
    head(from, run, 'soft'),
    head(to, [-run[0], -run[1]], 'soft'),
    along(plus(tail, run, wide / 2 + 3), run, shape.text),
  ];
};

const draw = (shape: Shape, sheet: Sheet): Markup[] => {
  const { at, scale } = sheet;
  switch (shape.kind) {
    case 'outline':
      return [path(pathOf(shape.points.map(at), !shape.open), pen({ weight: 'medium', ...shape }))];
    case 'circle': {
      const [x, y] = at(shape.at);
      const classes = shape.filled ? `f-${shape.tone ?? 'ink'}` : pen({ weight: 'medium', ...shape });
      return [tag`<circle class="${classes}" cx="${px(x)}" cy="${px(y)}" r="${px(shape.radius * scale)}"/>`];
    }
    case 'hatch': {
      const angle = shape.leaning === 'left' ? -Math.PI / 4 : Math.PI / 4;
      return [path(hatchPath(shape.points.map(at), { gap: 6, angle }), `s-${shape.tone ?? 'ink'} w-hair`)];
    }
    case 'centre':
      return [line(at(shape.from), at(shape.to), 's-soft w-fine chain')];
    case 'dimension':
      return dimension(shape, sheet);
    case 'round': {
      const direction: Point = [Math.cos(shape.angle), -Math.sin(shape.angle)];
      const rim = plus(at(shape.at), direction, shape.radius * scale);
      return pointed(rim, plus(rim, direction, 26), shape.text);
    }
    case 'leader':
      return pointed(at(shape.at), plus(at(shape.at), [shape.elbow[0], -shape.elbow[1]]), shape.text);
    case 'arrow': {
      const [from, to] = [at(shape.from), at(shape.to)];
      const tone = shape.tone ?? 'ink';
      const run = unit(from, to);
      const middle: Point = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
      const steep = Math.abs(run[1]) > Math.abs(run[0]);
      const label = shape.text
        ? [
            text(plus(middle, steep ? [7, 4] : [0, -7]), shape.text, {
              anchor: steep ? 'start' : 'middle',
              classes: 'small halo',
            }),
          ]
        : [];
      return [line(from, plus(to, run, -7), `s-${tone} w-medium`), head(to, run, tone), ...label];
    }
    case 'note':
      return [text(at(shape.at), shape.text, { anchor: shape.anchor ?? 'start', classes: 'small halo' })];
  }
};

/** An arrow from a note's shoulder to the point it speaks of. */
const pointed = (tip: Point, elbow: Point, words: string): Markup[] => {
  const right = elbow[0] >= tip[0];
  const shoulder = plus(elbow, [right ? 10 : -10, 0]);
  const run = unit(elbow, tip);
  return [
    path(pathOf([plus(tip, run, -7), elbow, shoulder]), 's-soft w-fine'),
    head(tip, run, 'soft'),
    text(plus(shoulder, [right ? 4 : -4, 4]), words, { anchor: right ? 'start' : 'end', classes: 'small halo' }),
  ];
};

const order: Readonly<Record<Shape['kind'], number>> = {
  hatch: 0,
  outline: 1,
  circle: 1,
  centre: 2,
  arrow: 3,
  dimension: 4,
  round: 4,
  leader: 4,
  note: 5,
};

/**
 * Draws outlines with their dimensions to one scale.
 * @param drawing shapes in drawing units, y upward; lettering and offsets in px
 * @returns one self-contained SVG element
 * @throws RangeError when the extent is empty
 */
export const drawing = (asked: Drawing): string => {
  const { width = 520, room = 56 } = asked;
  const [left, top, right, foot] = typeof room === 'number' ? [room, room, room, room] : room;
  const [[x1, x2], [y1, y2]] = [asked.x, asked.y];
  if (!(x2 > x1 && y2 > y1)) throw new RangeError(`a drawing from ${x1}, ${y1} to ${x2}, ${y2} has no extent`);
  const scale = (width - left - right) / (x2 - x1);
  if (!(scale > 0)) throw new RangeError(`a drawing ${width} px wide leaves no room beside its margins`);
  const height = (y2 - y1) * scale + top + foot;
  const at = ([x, y]: Point): Point => [left + (x - x1) * scale, height - foot - (y - y1) * scale];
  const sorted = asked.shapes.toSorted((a, b) => order[a.kind] - order[b.kind]);
  return figure(
    { width, height, title: asked.title, alt: asked.alt, bare: asked.bare },
    sorted.map((shape) => draw(shape, { at, scale })),
  );
};

/** The corners of an upright rectangle in drawing units. */
export const rectangle = (from: Point, to: Point): readonly Point[] =>
  corners({ x: from[0], y: from[1], width: to[0] - from[0], height: to[1] - from[1] });
