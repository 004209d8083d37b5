/** How winding and case of a motor warm from cold while players queue. */
import { plot, type Layer, type Point } from '../../../figures/index.ts';

export interface WarmingDrawn {
  readonly motor: string;
  readonly unit: string;
  /** Minutes and temperature, at the middle of all ranges. */
  readonly winding: readonly Point[];
  readonly shell: readonly Point[];
  /** Where they settle at the ends of all ranges. */
  readonly settled: { readonly winding: readonly [number, number]; readonly shell: readonly [number, number] };
  readonly limits: readonly { readonly label: string; readonly at: number }[];
}

const round = (x: number): string => String(Number(x.toPrecision(3)));

export const warmingWords = ({ motor, unit, winding, shell, settled, limits }: WarmingDrawn): string => {
  const last = winding.at(-1);
  const [low, high] = settled.winding;
  return `${motor} after ${round(last?.[0] ?? 0)} min: winding ${round(last?.[1] ?? NaN)} ${unit}, case ${round(shell.at(-1)?.[1] ?? NaN)} ${unit}. The winding settles between ${round(low)} and ${round(high)} ${unit}. ${limits.map(({ label, at }) => `${label}: ${round(at)} ${unit}`).join('; ')}.`;
};

export const warmingFigure = (drawn: WarmingDrawn): string => {
  const { motor, unit, winding, shell, settled, limits } = drawn;
  const end = winding.at(-1)?.[0] ?? 1;
  const middle = ([low, high]: readonly [number, number]): number => (low + high) / 2;
  const bracket = (range: readonly [number, number], at: number): Layer => ({
    kind: 'point',
    at: [at, middle(range)],
    y: range,
    shape: 'ring',
  });
  return plot({
    title: `How ${motor} warms`,
    alt: warmingWords(drawn),
    x: { label: 'time since it was switched on', unit: 'min', from: 0, to: end * 1.1 },
    y: { label: 'temperature', unit },
    layers: [
      ...limits.map(({ label, at }): Layer => ({ kind: 'limit', axis: 'y', at, forbidden: 'above', label })),
      { kind: 'line', points: winding, label: 'winding', weight: 'heavy', shape: 'smooth' },
      { kind: 'line', points: shell, label: 'case', weight: 'medium', stroke: 'dashed', shape: 'smooth' },
      bracket(settled.winding, end * 1.03),
      bracket(settled.shell, end * 1.06),
    ],
  });
};
