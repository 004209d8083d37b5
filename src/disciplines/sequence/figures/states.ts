/** The chart as a diagram: layers by how many steps a state lies from the start; ways to latched states are only marked. */
import { drawing, type Point, type Shape } from '../../../figures/index.ts';

export interface Box {
  readonly id: string;
  /** How it is drawn: where a play may begin, where somebody must come, or plain. */
  readonly is: 'ready' | 'latched' | null;
  readonly to: readonly string[];
}

export interface States {
  readonly initial: string;
  /** States without states inside; ways of what is around them count as theirs. */
  readonly boxes: readonly Box[];
}

const WIDE = 118;
const HIGH = 30;
const GAP: Point = [24, 34];
const MOST_ACROSS = 5;
const LANE = 12;

/** By layer: what is first reached in so many steps; too many for one line stand in several. */
export const layersOf = ({ initial, boxes }: States): readonly (readonly string[])[] => {
  const left = new Map(boxes.map((box) => [box.id, box]));
  const layers: string[][] = [];
  let next = [initial];
  while (next.length > 0) {
    const layer = next.filter((id) => left.has(id));
    const boxesHere = layer.map((id) => left.get(id)!);
    for (const id of layer) left.delete(id);
    for (let i = 0; i < layer.length; i += MOST_ACROSS) layers.push(layer.slice(i, i + MOST_ACROSS));
    next = [...new Set(boxesHere.flatMap(({ to }) => to))].filter((id) => left.has(id));
  }
  const never = [...left.keys()];
  for (let i = 0; i < never.length; i += MOST_ACROSS) layers.push(never.slice(i, i + MOST_ACROSS));
  return layers;
};

export const statesWords = (of: States): string =>
  `From ${of.initial}: ${layersOf(of)
    .map((layer) => layer.join(', '))
    .join('; then ')}.`;

export const statesFigure = (of: States): string => {
  const layers = layersOf(of);
  const across = Math.max(...layers.map((layer) => layer.length));
  const wide = across * (WIDE + GAP[0]) - GAP[0];
  const high = layers.length * (HIGH + GAP[1]) - GAP[1];
  const places = new Map<string, Point>();
  layers.forEach((layer, row) => {
    const from = (wide - layer.length * (WIDE + GAP[0]) + GAP[0]) / 2;
    layer.forEach((id, column) => places.set(id, [from + column * (WIDE + GAP[0]), high - row * (HIGH + GAP[1])]));
  });
  const latched = new Set(of.boxes.filter(({ is }) => is === 'latched').map(({ id }) => id));
  let lanes = 0;
  /** Back up along a lane of its own, beside all boxes. */
  const back = ([x, top]: Point, [toX, toTop]: Point): readonly Shape[] => {
    const lane = wide + LANE * ++lanes;
    const [from, to] = [top - HIGH / 2 - 6, toTop - HIGH / 2 + 6];
    return [
      {
        kind: 'outline',
        points: [
          [x + WIDE, from],
          [lane, from],
          [lane, to],
        ],
        open: true,
        tone: 'soft',
      },
      { kind: 'arrow', from: [lane, to], to: [toX + WIDE, to], tone: 'soft' },
    ];
  };
  const shapes: Shape[] = of.boxes.flatMap((box): Shape[] => {
    const [x, top] = places.get(box.id)!;
    const middle: Point = [x + WIDE / 2, top - HIGH / 2];
    const arrows = [...new Set(box.to)].flatMap((id): readonly Shape[] => {
      if (id === box.id || latched.has(id)) return [];
      const there = places.get(id)!;
      const [toX, toTop] = there;
      if (toTop > top) return back([x, top], there);
      const isLevel = toTop === top;
      const from: Point = isLevel ? [toX > x ? x + WIDE : x, middle[1]] : [middle[0], top - HIGH];
      const to: Point = isLevel ? [toX > x ? toX : toX + WIDE, toTop - HIGH / 2] : [toX + WIDE / 2, toTop];
      return [{ kind: 'arrow', from, to }];
    });
    const mayLatch = !latched.has(box.id) && box.to.some((id) => latched.has(id));
    return [
      ...arrows,
      {
        kind: 'outline',
        points: [
          [x, top],
          [x + WIDE, top],
          [x + WIDE, top - HIGH],
          [x, top - HIGH],
        ],
        weight: box.is === 'ready' ? 'heavy' : 'medium',
        stroke: box.is === 'latched' ? 'dashed' : 'full',
      },
      { kind: 'note', at: [middle[0], top - HIGH / 2 - 4], text: box.id, anchor: 'middle' },
      ...(mayLatch ? [{ kind: 'circle', at: [x + WIDE - 6, top - 6], radius: 2.5, filled: true } as const] : []),
    ];
  });
  return drawing({
    title: 'States of the cycle',
    alt: statesWords(of),
    x: [0, wide + LANE * lanes],
    y: [0, high],
    shapes,
    width: wide + LANE * lanes + 20,
    room: 10,
  });
};
