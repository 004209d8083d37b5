/** Seen from above while the line is short: where the carriage goes in one play, and where the load goes. */
import { drawing, type Point, type Shape } from '../../../figures/index.ts';
import { spoken } from './scale.ts';

export interface Plan {
  readonly hoist: string;
  readonly unit: string;
  /** Half of the travel along both axes, and from its ends to the walls. */
  readonly field: readonly [number, number];
  readonly walls: readonly [number | undefined, number | undefined];
  readonly pivot: readonly Point[];
  readonly load: readonly Point[];
  /** Half of the load's width, drawn where it swings farthest from under the carriage. */
  readonly half: number;
  readonly farthest: Point;
  readonly out: number;
}

export const planWords = ({ hoist, unit, out }: Plan): string =>
  `In this simulated play the load of ${hoist} swings up to ${spoken(out)} ${unit} from under its carriage while the line is short.`;

const box = (x: number, y: number): readonly Point[] => [
  [-x, -y],
  [x, -y],
  [x, y],
  [-x, y],
];

export const planFigure = (of: Plan): string => {
  const [x, y] = of.field;
  const [beyondX, beyondY] = [of.walls[0] ?? of.half + of.out, of.walls[1] ?? of.half + of.out];
  const hasWalls = of.walls.some((wall) => wall !== undefined);
  const shapes: Shape[] = [
    { kind: 'outline', points: box(x, y), stroke: 'chain' },
    ...(hasWalls ? [{ kind: 'outline', points: box(x + beyondX, y + beyondY), weight: 'heavy' } as const] : []),
    { kind: 'outline', points: of.pivot, open: true, stroke: 'dashed', tone: 'soft' },
    { kind: 'outline', points: of.load, open: true, tone: 'accent' },
    { kind: 'circle', at: of.farthest, radius: of.half, stroke: 'dotted' },
    { kind: 'leader', at: of.farthest, elbow: [30, 24], text: `${spoken(of.out)} ${of.unit} out` },
  ];
  return drawing({
    title: `One play of ${of.hoist} from above, while the line is short`,
    alt: planWords(of),
    x: [-x - beyondX, x + beyondX],
    y: [-y - beyondY, y + beyondY],
    shapes,
    room: 24,
  });
};
