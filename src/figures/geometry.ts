/** What every figure needs to place lines and letters: rounding, paths, hatching, the width of a text. */

export type Point = readonly [x: number, y: number];

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/**
 * A coordinate to two decimals, so that the same figure is the same bytes everywhere.
 * @throws RangeError for what is no number: a figure must not place anything it does not know the place of
 */
export const px = (x: number): string => {
  if (!Number.isFinite(x)) throw new RangeError(`a figure cannot place ${x}`);
  const rounded = Math.round(x * 100) / 100;
  return String(rounded === 0 ? 0 : rounded);
};

/** A path through points, open or closed. */
export const pathOf = (points: readonly Point[], closed = false): string =>
  points.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${px(x)},${px(y)}`).join('') + (closed && points.length ? 'Z' : '');

/** The corners of a box, clockwise on the page. */
export const corners = ({ x, y, width, height }: Box): readonly Point[] => [
  [x, y],
  [x + width, y],
  [x + width, y + height],
  [x, y + height],
];

export interface Hatching {
  /** Distance between the lines, px. */
  readonly gap: number;
  /** Radians from the horizontal, counted upward on the page. */
  readonly angle: number;
}

/**
 * Hatch lines cut to a polygon, even-odd, as path data. Drawn as lines and not as a pattern, because a pattern needs an
 * id that is unique on the page and is lost by some printers. The lines count from the page's origin, so that
 * hatched neighbours meet.
 * @param polygon corners on the page, px
 * @param hatching gap and angle
 */
export const hatchPath = (polygon: readonly Point[], { gap, angle }: Hatching): string => {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  // Turned so that the hatch lines lie along u.
  const turned = polygon.map(([x, y]): Point => [x * cos - y * sin, x * sin + y * cos]);
  const heights = turned.map(([, v]) => v);
  const [low, high] = [Math.min(...heights), Math.max(...heights)];
  const pieces: string[] = [];
  for (let k = Math.ceil(low / gap); k * gap <= high; k++) {
    const v = k * gap;
    const crossings = turned
      .flatMap(([u1, v1], i) => {
        const [u2, v2] = turned[(i + 1) % turned.length] ?? [u1, v1];
        return v1 <= v !== v2 <= v ? [u1 + ((v - v1) / (v2 - v1)) * (u2 - u1)] : [];
      })
      .sort((a, b) => a - b);
    for (let i = 0; i + 1 < crossings.length; i += 2) {
      const ends = [crossings[i] ?? 0, crossings[i + 1] ?? 0].map((u): Point => [u * cos + v * sin, v * cos - u * sin]);
      pieces.push(pathOf(ends));
    }
  }
  return pieces.join('');
};

// Advance widths in thousandths of the letter size, by class of character, for a humanist sans.
const advances: readonly (readonly [RegExp, number])[] = [
  [/[ilj.,:;'|!’·]/, 270],
  [/[ft r()[\]-]/, 370],
  [/[\u2009\u202f]/, 200],
  [/[mwMW%@—]/, 860],
  [/[A-ZΩ−=+<>≤≥±×√–]/, 620],
  [/\d/, 560],
];

/** About how wide a text is, px; a little generous, since it serves to keep labels apart. */
export const textWidth = (text: string, size: number): number =>
  [...text].reduce((sum, c) => sum + (advances.find(([of]) => of.test(c))?.[1] ?? 560), 0) * (size / 1000) * 1.03;

/** The area that two boxes share. */
export const overlap = (a: Box, b: Box): number => {
  const width = Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x);
  const height = Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y);
  return width > 0 && height > 0 ? width * height : 0;
};

/** A number on an axis: real minus, thin spaces from five digits on. */
export const axisNumber = (x: number, decimals: number): string => {
  const [whole = '', fraction] = Math.abs(x).toFixed(decimals).split('.');
  const grouped = whole.length > 4 ? whole.replace(/\B(?=(\d{3})+$)/g, '\u2009') : whole;
  const shown = fraction === undefined ? grouped : `${grouped}.${fraction}`;
  return x < 0 && /[1-9]/.test(shown) ? `−${shown}` : shown;
};
