/** Places labels so that they stay off each other and, where it can be had, off the curves. */
import { overlap, textWidth, type Box, type Point } from './geometry.ts';
import { lettering } from './style.ts';

export interface Place {
  readonly at: Point;
  readonly anchor: 'start' | 'middle' | 'end';
}

export interface Wanted {
  readonly text: string;
  /** Best first. */
  readonly places: readonly Place[];
}

export interface Placed extends Place {
  readonly text: string;
}

const height = lettering.small * 1.2;

const boxOf = (text: string, { at: [x, y], anchor }: Place): Box => {
  const width = textWidth(text, lettering.small);
  const left = anchor === 'start' ? x : anchor === 'end' ? x - width : x - width / 2;
  return { x: left, y: y - height * 0.8, width, height };
};

const outside = (box: Box, frame: Box): number => box.width * box.height - overlap(box, frame);

const hits = (box: Box, dots: readonly Point[]): number =>
  dots.filter(([x, y]) => x > box.x - 1 && x < box.x + box.width + 1 && y > box.y && y < box.y + box.height).length;

/**
 * Gives every label the place that costs least: first inside the frame and clear of labels already placed, then clear
 * of the curves, then early in its own list.
 * @param wanted labels in order of importance
 * @param frame where labels may stand
 * @param curves points close together on what is drawn, px
 * @returns one place for each label
 */
export const placeLabels = (wanted: readonly Wanted[], frame: Box, curves: readonly Point[]): readonly Placed[] => {
  const taken: Box[] = [];
  return wanted.flatMap(({ text, places }) => {
    let best: { place: Place; box: Box; cost: number } | undefined;
    for (const [i, place] of places.entries()) {
      const box = boxOf(text, place);
      const shared = taken.reduce((sum, other) => sum + overlap(box, other), 0);
      const cost = 40 * outside(box, frame) + 40 * shared + 12 * hits(box, curves) + 2 * i;
      if (!best || cost < best.cost) best = { place, box, cost };
    }
    if (!best) return [];
    taken.push(best.box);
    return [{ ...best.place, text }];
  });
};

/** Points a few px apart along a polyline, for `placeLabels`. */
export const dotsAlong = (points: readonly Point[], apart = 4): readonly Point[] =>
  points.flatMap((from, i): Point[] => {
    const to = points[i + 1];
    if (!to) return [from];
    const steps = Math.min(400, Math.max(1, Math.ceil(Math.hypot(to[0] - from[0], to[1] - from[1]) / apart)));
    return Array.from({ length: steps }, (_, k): Point => [
      from[0] + ((to[0] - from[0]) * k) / steps,
      from[1] + ((to[1] - from[1]) * k) / steps,
    ]);
  });
