/** How often lift-offs miss, over the width of the dock. */
import { plot, type Layer, type Point } from '../../../figures/index.ts';
import { spoken } from './scale.ts';

/** Per cent up to which the figure goes where nothing was counted beyond. */
const MOST = 25;

export interface MissCurve {
  /** Spread of the lift-offs, as text. */
  readonly scatter: string;
  readonly points: readonly Point[];
}

export interface MissFigure {
  readonly hoist: string;
  readonly unit: string;
  /** Reckoned, per cent of lift-offs over the width of the dock. */
  readonly curves: readonly MissCurve[];
  /** Counted in simulated plays, with the ends of the exact interval. */
  readonly counted: readonly {
    readonly width: number;
    readonly share: number;
    readonly low: number;
    readonly high: number;
  }[];
  readonly now: number;
  readonly plays: number;
}

export const missWords = ({ hoist, unit, counted, now, plays }: MissFigure): string => {
  const near = counted.reduce((best, one) => (Math.abs(one.width - now) < Math.abs(best.width - now) ? one : best));
  return `Of ${plays} simulated lift-offs of ${hoist} ${spoken(near.share)} % miss a dock of ${spoken(near.width)} ${unit}, between ${spoken(near.low)} and ${spoken(near.high)} % at 95 %.`;
};

export const missFigure = (of: MissFigure): string => {
  const layers: Layer[] = [
    ...of.curves.map(({ scatter, points }, i): Layer => ({
      kind: 'line',
      points,
      label: scatter,
      stroke: (['full', 'dashed', 'dotted'] as const)[i % 3],
    })),
    ...of.counted.map(({ width, share, low, high }): Layer => ({
      kind: 'point',
      at: [width, share],
      y: [low, high],
      tone: 'accent',
    })),
    { kind: 'rule', axis: 'x', at: of.now, label: 'now', stroke: 'chain' },
  ];
  return plot({
    title: `How often ${of.hoist} misses its dock`,
    alt: missWords(of),
    x: { label: 'width of the dock', unit: of.unit, from: 0 },
    y: {
      label: 'lift-offs that miss',
      unit: '%',
      from: 0,
      to: of.counted.some(({ high }) => high > MOST) ? 100 : MOST,
    },
    layers,
  });
};
