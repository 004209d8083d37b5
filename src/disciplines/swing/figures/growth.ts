/** What hoisting makes of a swing: steeper, and narrower. */
import { plot, type Point } from '../../../figures/index.ts';
import { spoken } from './scale.ts';

export interface Growth {
  readonly hoist: string;
  readonly unit: string;
  /** Length of the pendulum against angle and way to the side, both as shares of those at lift-off. */
  readonly angle: readonly Point[];
  readonly sideways: readonly Point[];
  /** The same at both ends, as texts. */
  readonly from: { readonly angle: string; readonly sideways: string };
  readonly to: { readonly angle: string; readonly sideways: string };
}

export const growthWords = ({ hoist, angle, sideways, from, to }: Growth): string =>
  `While ${hoist} is hoisted its swing grows from ${from.angle} to ${to.angle}, ${spoken(angle.at(-1)![1])} times, and its way to the side goes from ${from.sideways} to ${to.sideways}, ${spoken(sideways.at(-1)![1])} times.`;

export const growthFigure = (of: Growth): string =>
  plot({
    title: `Angle and way to the side while ${of.hoist} is hoisted`,
    alt: growthWords(of),
    x: { label: 'from the pivot to the centre of mass', unit: of.unit, from: 0 },
    y: { label: 'as a share of that at lift-off', unit: '', from: 0 },
    layers: [
      { kind: 'rule', axis: 'y', at: 1, stroke: 'dotted', tone: 'soft' },
      { kind: 'line', points: of.angle, weight: 'heavy', tone: 'accent', label: 'angle' },
      { kind: 'line', points: of.sideways, stroke: 'dashed', label: 'to the side' },
    ],
  });
