/** How much of what each rail bears is taken in each mode, over the time that the modes take. */
import { plot, type Layer, type Point } from '../../../figures/index.ts';

export interface RailsDrawn {
  /** Modes in the order of the book with their share of the opening time, in per cent. */
  readonly modes: readonly { readonly name: string; readonly share: number }[];
  /** For each rail its share of the limit in each mode, in per cent. */
  readonly rails: readonly { readonly name: string; readonly uses: readonly number[] }[];
}

const round = (x: number): string => String(Number(x.toPrecision(2)));

export const railsWords = ({ modes, rails }: RailsDrawn): string =>
  rails
    .map(({ name, uses }) => `${name}: ${uses.map((use, k) => `${round(use)} % ${modes[k]?.name ?? ''}`).join(', ')}`)
    .join('; ');

export const railsFigure = (drawn: RailsDrawn): string => {
  const { modes, rails } = drawn;
  const all = modes.reduce((sum, { share }) => sum + share, 0);
  const starts = modes.map((_, k) => modes.slice(0, k).reduce((sum, { share }) => sum + share, 0));
  const highest = Math.max(...rails.flatMap(({ uses }) => uses));
  const strokes = ['full', 'dashed', 'chain', 'dotted'] as const;
  const layers: Layer[] = [
    { kind: 'limit', axis: 'y', at: 100, forbidden: 'above', label: 'what the rail bears' },
    ...starts.map((at, k): Layer => ({ kind: 'rule', axis: 'x', at, stroke: 'dotted', label: modes[k]?.name ?? '' })),
    ...rails.map(({ name, uses }, k): Layer => ({
      kind: 'line',
      points: [...starts.map((x, i): Point => [x, uses[i] ?? NaN]), [all, uses.at(-1) ?? NaN]],
      label: name,
      shape: 'step',
      stroke: strokes[k % strokes.length] ?? 'full',
      weight: 'medium',
    })),
  ];
  return plot({
    title: 'Rails by mode',
    alt: railsWords(drawn),
    x: { label: 'share of the opening time, mode after mode', unit: '%', from: 0, to: all },
    y: {
      label: 'current, of what the rail bears',
      unit: '%',
      from: 0,
      to: Math.max(125, Math.ceil(highest / 10) * 10 + 20),
    },
    layers,
  });
};
