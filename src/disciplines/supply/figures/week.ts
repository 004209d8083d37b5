/** Energy from the socket over a week, day and night. */
import { plot, type Layer, type Point } from '../../../figures/index.ts';

export interface WeekDrawn {
  readonly unit: string;
  /** Hours that the machine is open in a day. */
  readonly open: number;
  /** Energy of an open and of a closed hour, in the unit. */
  readonly openHour: number;
  readonly closedHour: number;
  /** Energy of the week at the ends of all ranges, in the unit. */
  readonly ends: readonly [number, number];
  readonly price?: string;
}

const DAYS = 7;
const HOURS = 24;

/** Energy up to each opening and closing of the week. */
export const weekPoints = ({ open, openHour, closedHour }: WeekDrawn): readonly Point[] => {
  const night = (HOURS - open) / 2;
  const day = closedHour * (HOURS - open) + openHour * open;
  return [
    [0, 0],
    ...Array.from({ length: DAYS }, (_, k): Point[] => [
      [k + night / HOURS, k * day + closedHour * night],
      [k + (night + open) / HOURS, k * day + closedHour * night + openHour * open],
      [k + 1, (k + 1) * day],
    ]).flat(),
  ];
};

const round = (x: number): string => String(Number(x.toPrecision(3)));

export const weekWords = (drawn: WeekDrawn): string => {
  const total = weekPoints(drawn).at(-1)?.[1] ?? NaN;
  const [low, high] = drawn.ends;
  return `In a week ${round(total)} ${drawn.unit}, between ${round(low)} and ${round(high)} over all ranges${drawn.price === undefined ? '' : `, for ${drawn.price}`}; an open hour takes ${round(drawn.openHour)}, a closed one ${round(drawn.closedHour)} ${drawn.unit}.`;
};

export const weekFigure = (drawn: WeekDrawn): string => {
  const points = weekPoints(drawn);
  const total = points.at(-1)?.[1] ?? NaN;
  const standing = drawn.closedHour * HOURS * DAYS;
  const layers: Layer[] = [
    { kind: 'line', points, label: 'open and closed', weight: 'heavy' },
    {
      kind: 'line',
      points: [
        [0, 0],
        [DAYS, standing],
      ],
      label: 'standing by only',
      stroke: 'dashed',
    },
    { kind: 'point', at: [DAYS, total], y: drawn.ends, shape: 'ring', ...(drawn.price ? { label: drawn.price } : {}) },
  ];
  return plot({
    title: 'Energy of a week',
    alt: weekWords(drawn),
    x: { label: 'day', unit: '', from: 0, to: DAYS * 1.06 },
    y: { label: 'energy from the socket', unit: drawn.unit, from: 0 },
    layers,
  });
};
