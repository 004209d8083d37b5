/** A trace as a timing diagram: one line for each thing, a tick as wide as every other. */
import { drawing, type Point, type Shape } from '../../../figures/index.ts';

export interface Row {
  readonly name: string;
  /** By tick, from 0 to `levels` − 1. */
  readonly values: readonly number[];
  readonly levels: 2 | 3;
}

export interface Timing {
  readonly title: string;
  /** Of the first tick that is drawn, counted from the start. */
  readonly from: number;
  /** Seconds of a tick. */
  readonly tick: number;
  /** By tick: the state, by name. */
  readonly states: readonly string[];
  readonly rows: readonly Row[];
  /** Ticks at which something surprised, counted from the first that is drawn. */
  readonly surprises: readonly { readonly at: number; readonly what: string }[];
  /** The tick from which it goes on for ever; null when it ends. */
  readonly loop: number | null;
}

const WIDE = 560;
const HIGH = 26;
const LETTER = 6.5;

const line = ({ values, levels }: Row, step: number, foot: number): Shape => {
  const at = (value: number): number => foot + 4 + ((HIGH - 10) * value) / (levels - 1);
  const points = values.flatMap((value, i): Point[] => [
    [i * step, at(value)],
    [(i + 1) * step, at(value)],
  ]);
  return { kind: 'outline', points, open: true, weight: 'medium' };
};

/** The diagram in words. */
export const timingWords = ({ title, states, surprises, loop, tick }: Timing): string => {
  const way = states.filter((state, i) => state !== states[i - 1]);
  const what = surprises.map((one) => one.what);
  return `${title}: ${way.join(', then ')}${what.length > 0 ? `, with ${what.join(', ')}` : ''}${loop === null ? '' : ', and so on for ever'}. A tick is ${tick} s.`;
};

export const timingFigure = (of: Timing): string => {
  const ticks = of.states.length;
  const step = WIDE / ticks;
  const rows = of.rows.length + 1;
  const high = rows * HIGH;
  const footOf = (row: number): number => high - (row + 1) * HIGH;
  const shapes: Shape[] = [];
  of.states.forEach((state, i) => {
    if (state === of.states[i - 1]) return;
    let end = i;
    while (end < ticks && of.states[end] === state) end++;
    const foot = footOf(0);
    shapes.push({
      kind: 'outline',
      points: [
        [i * step, foot + 3],
        [end * step, foot + 3],
        [end * step, foot + HIGH - 3],
        [i * step, foot + HIGH - 3],
      ],
    });
    if ((end - i) * step > state.length * LETTER)
      shapes.push({ kind: 'note', at: [((i + end) * step) / 2, foot + 9], text: state, anchor: 'middle' });
  });
  shapes.push({ kind: 'note', at: [-8, footOf(0) + 9], text: 'state', anchor: 'end' });
  of.rows.forEach((row, i) => {
    const foot = footOf(i + 1);
    shapes.push({ kind: 'centre', from: [0, foot], to: [WIDE, foot] }, line(row, step, foot), {
      kind: 'note',
      at: [-8, foot + 9],
      text: row.name,
      anchor: 'end',
    });
  });
  of.surprises.forEach(({ at }) => {
    shapes.push({
      kind: 'outline',
      points: [
        [at * step, 0],
        [at * step, high],
      ],
      open: true,
      stroke: 'dashed',
      tone: 'fails',
    });
  });
  if (of.loop !== null)
    shapes.push({ kind: 'arrow', from: [WIDE - 4, high + 8], to: [of.loop * step, high + 8], text: 'for ever' });
  const seconds = (tick: number): string => `${Number(((of.from + tick) * of.tick).toPrecision(4))} s`;
  shapes.push(
    { kind: 'note', at: [0, -16], text: seconds(0) },
    { kind: 'note', at: [WIDE, -16], text: seconds(ticks), anchor: 'end' },
  );
  return drawing({
    title: of.title,
    alt: timingWords(of),
    x: [0, WIDE],
    y: [-20, high + 26],
    shapes,
    width: WIDE + 110,
    room: [90, 4, 20, 4],
  });
};
