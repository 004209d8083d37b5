/** Traces in words. */
import type { CycleSpec } from './spec.ts';
import type { Trace, TraceStep } from './trace.ts';

const PLACES = ['min', 'between', 'max'] as const;
const HEIGHTS = ['down on a slack line', 'between', 'up'] as const;

/** Where an axis is. */
export const placeWords = (spec: Pick<CycleSpec, 'axes'>, axis: number, place: number): string =>
  spec.axes[axis]!.raising ? HEIGHTS[place]! : `at ${PLACES[place]!}`.replace('at between', 'between its ends');

/** What a tick brought that is worth telling; empty for a tick in which only time passes. */
export const stepWords = ({ surprise, events, entered, state }: TraceStep, before: TraceStep | undefined): string => {
  const happened = events.filter((name) => name !== surprise);
  const parts = [
    ...(surprise === null ? [] : [surprise]),
    ...(happened.length > 0 ? [happened.join(', ')] : []),
    ...(entered.length > 0 ? [`→ ${state ?? 'the end'}`] : state === null && before?.state !== null ? ['dark'] : []),
  ];
  return parts.join('; ');
};

export interface Line {
  readonly tick: number;
  readonly words: string;
}

/** A trace as lines with the tick of each; ticks in which only time passes are left out. */
export const traceLines = (spec: CycleSpec, { steps, loop }: Trace): readonly Line[] => {
  const lines = steps.flatMap((step, tick): readonly Line[] => {
    const words = stepWords(step, steps[tick - 1]);
    return words === '' ? [] : [{ tick, words }];
  });
  const last = steps.at(-1)!;
  const places = spec.axes.map(({ name }, axis) => `${name} ${placeWords(spec, axis, last.places[axis]!)}`).join(', ');
  const moving = spec.axes.flatMap(({ name }, axis) =>
    last.motions[axis] ? [`${name} told to ${last.motions[axis]}`] : [],
  );
  const end = [
    `${last.state ?? 'no state'}`,
    last.drives ? 'drives on' : 'drives off',
    ...(last.servo === 'off' ? [] : ['servo on']),
    places,
    ...moving,
  ].join(', ');
  return [
    ...lines,
    { tick: steps.length - 1, words: loop === null ? `it is then in ${end}` : `and so on for ever: ${end}` },
  ];
};

/** A trace in one sentence: what surprised and which states it went through. */
export const shortWords = (spec: CycleSpec, trace: Trace): string => {
  const surprises = trace.steps.flatMap(({ surprise }) => (surprise === null ? [] : [surprise]));
  const way = trace.steps.flatMap(({ entered, state }) => (entered.length > 0 && state !== null ? [state] : []));
  const short = way.length > 6 ? ['…', ...way.slice(-5)] : way;
  const told = surprises.length > 4 ? ['…', ...surprises.slice(-4)] : surprises;
  const end = traceLines(spec, trace).at(-1)!.words;
  return [
    short.length > 0 ? short.join(' → ') : 'as soon as power comes',
    ...(told.length > 0 ? [`with ${told.join(', ')}`] : []),
    end,
  ].join('; ');
};
