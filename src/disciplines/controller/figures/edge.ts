/** The board with its pins along two edges, and a line with an arrow for each signal. */
import { drawing, type Point, type Shape } from '../../../figures/index.ts';

export interface EdgePin {
  readonly pin: string;
  readonly signal?: string;
  readonly way?: 'in' | 'out';
}

export interface Edge {
  readonly board: string;
  readonly pins: readonly EdgePin[];
}

/** Width of the board and length of a line, in rows. */
const WIDTH = 9;
const REACH = 3.2;
/** Rows that a letter is wide, at most. */
const LETTER = 0.6;

const split = ({ pins }: Edge): readonly [readonly EdgePin[], readonly EdgePin[]] => {
  const half = Math.ceil(pins.length / 2);
  return [pins.slice(0, half), pins.slice(half)];
};

export const edgeWords = ({ board, pins }: Edge): string => {
  const used = pins.filter(({ signal }) => signal !== undefined);
  return `The ${board} with ${used.length} of ${pins.length} pins in use: ${used.map(({ pin, signal, way }) => `${pin} ${way === 'in' ? 'from' : 'to'} ${signal!}`).join(', ')}.`;
};

const line = ({ pin, signal, way }: EdgePin, row: number, side: 'left' | 'right'): readonly Shape[] => {
  const y = -row;
  const [inner, outer] = side === 'left' ? [0, -REACH] : [WIDTH, WIDTH + REACH];
  const tilt = side === 'left' ? 1 : -1;
  const label: Shape = {
    kind: 'note',
    at: [inner + tilt * 0.3, y - 0.3],
    text: pin,
    anchor: side === 'left' ? 'start' : 'end',
  };
  if (signal === undefined) return [label];
  const [from, to]: readonly [Point, Point] =
    way === 'in'
      ? [
          [outer, y],
          [inner, y],
        ]
      : [
          [inner, y],
          [outer, y],
        ];
  return [
    label,
    { kind: 'arrow', from, to, ...(way === 'in' ? { tone: 'accent' as const } : {}) },
    {
      kind: 'note',
      at: [outer - tilt * 0.3, y - 0.3],
      text: signal,
      anchor: side === 'left' ? 'end' : 'start',
    },
  ];
};

/** The board as a box; inputs point at it, outputs away from it. It shows no real outline. */
export const edgeFigure = (edge: Edge): string => {
  const [first, second] = split(edge);
  const rows = Math.max(first.length, second.length);
  const foot = -rows - 0.2;
  const longest = Math.max(1, ...edge.pins.map(({ signal }) => signal?.length ?? 0));
  const room = REACH + 1 + longest * LETTER;
  const shapes: Shape[] = [
    {
      kind: 'outline',
      points: [
        [0, 0.2],
        [WIDTH, 0.2],
        [WIDTH, foot],
        [0, foot],
      ],
      weight: 'medium',
    },
    ...first.flatMap((pin, k) => line(pin, k + 0.5, 'left')),
    ...second.flatMap((pin, k) => line(pin, k + 0.5, 'right')),
  ];
  return drawing({
    title: `Pins of the ${edge.board}`,
    alt: edgeWords(edge),
    x: [-room, WIDTH + room],
    y: [foot, 0.2],
    width: 13.4 * (WIDTH + 2 * room) + 16,
    room: 8,
    shapes,
  });
};
