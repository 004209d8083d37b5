/** A drum with its line, cut lengthwise. */
import { drawing, type Point, type Shape } from '../../../figures/index.ts';

/** Lengths in one unit, that of the texts. */
export interface Drum {
  readonly axis: string;
  readonly diameter: number;
  readonly width: number;
  readonly flange: number;
  readonly line: number;
  readonly lay: number;
  readonly layers: number;
  /** Turns on the drum with the load at the top, dead ones included. */
  readonly turns: number;
  readonly dead: number;
  readonly texts: { readonly diameter: string; readonly width: string; readonly flange: string; readonly line: string };
}

const box = (x: number, y: number, width: number, height: number): readonly Point[] => [
  [x, y],
  [x + width, y],
  [x + width, y + height],
  [x, y + height],
];

/** Middles of the turns, from the first at the left flange; every second layer runs back. */
export const turnsOf = ({ diameter, width, line, lay, turns }: Drum): readonly Point[] => {
  const each = Math.max(1, Math.floor(width / lay + 1e-6));
  return Array.from({ length: Math.ceil(turns) }, (_, k): Point => {
    const layer = Math.floor(k / each);
    const place = layer % 2 === 0 ? k % each : each - 1 - (k % each);
    return [line / 2 + place * lay, diameter / 2 + line / 2 + layer * line];
  });
};

export const drumWords = ({ axis, turns, dead, layers, texts }: Drum): string =>
  `The drum of ${axis}: ${texts.diameter} thick, ${texts.width} between flanges ${texts.flange} high; with the load at the top ${Math.ceil(turns * 10) / 10} turns of ${texts.line} line in ${layers === 1 ? 'one layer' : `${layers} layers`}, ${dead} of them dead.`;

/** The drum cut lengthwise with the load at the top: dead turns filled, the others open. */
export const drumFigure = (drum: Drum): string => {
  const { diameter, width, flange, line, dead, texts } = drum;
  const radius = diameter / 2;
  const wall = Math.max(line, width / 12);
  const rim = radius + flange;
  const middles = turnsOf(drum);
  const last = middles.at(-1);
  const shapes: Shape[] = [
    { kind: 'outline', points: box(0, -radius, width, diameter) },
    { kind: 'hatch', points: box(0, -radius, width, diameter) },
    { kind: 'outline', points: box(-wall, -rim, wall, 2 * rim), weight: 'heavy' },
    { kind: 'outline', points: box(width, -rim, wall, 2 * rim), weight: 'heavy' },
    { kind: 'centre', from: [-2 * wall, 0], to: [width + 2 * wall, 0] },
    ...middles.flatMap(([x, y], k): Shape[] => [
      { kind: 'circle', at: [x, y], radius: line / 2, filled: k < dead, weight: 'fine' },
      { kind: 'circle', at: [x, -y], radius: line / 2, filled: k < dead, weight: 'fine' },
    ]),
    { kind: 'dimension', from: [0, rim], to: [width, rim], along: 'x', offset: 18, text: texts.width },
    { kind: 'dimension', from: [-wall, -radius], to: [-wall, radius], along: 'y', offset: 26, text: texts.diameter },
    {
      kind: 'dimension',
      from: [width + wall, radius],
      to: [width + wall, rim],
      along: 'y',
      offset: -22,
      text: texts.flange,
    },
  ];
  if (last) shapes.push({ kind: 'leader', at: last, elbow: [8, 20], text: `line ${texts.line}` });
  return drawing({
    title: `The drum of ${drum.axis} with its load at the top`,
    alt: drumWords(drum),
    x: [-wall, width + wall],
    y: [-rim, rim],
    room: [90, 56, 110, 24],
    width: 420,
    shapes,
  });
};
