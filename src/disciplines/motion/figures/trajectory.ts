/** What an axis asks of a motor, drawn over what the motor can give. */
import { plot, type Layer, type Point } from '../../../figures/index.ts';

export interface Trajectory {
  readonly axis: string;
  readonly motor: string;
  readonly speedUnit: string;
  readonly torqueUnit: string;
  readonly speeds: readonly number[];
  /** Over the stated middle of all ranges, between the careful and the hopeful edge. */
  readonly lower: readonly number[];
  readonly upper: readonly number[];
  /** At fewer speeds: what the motor is sure to give whatever its doubtful facts turn out to be. */
  readonly sure: readonly Point[];
  readonly demand: readonly Point[];
  /** The hardest point with the ends of its torque. */
  readonly hardest: { readonly at: Point; readonly torque: readonly [number, number] };
}

export const trajectoryWords = ({ axis, motor, hardest, sure, torqueUnit, speedUnit }: Trajectory): string => {
  const round = (x: number): string => String(Number(x.toPrecision(3)));
  const near = sure.reduce((best, one) =>
    Math.abs(one[0] - hardest.at[0]) < Math.abs(best[0] - hardest.at[0]) ? one : best,
  );
  return `${axis} asks at most ${round(hardest.torque[1])} ${torqueUnit} of ${motor}, at ${round(hardest.at[0])} ${speedUnit}; near that speed ${motor} is sure to give ${round(near[1])} ${torqueUnit}.`;
};

/** Torque over speed: the band of capacity, its sure edge, and the way that the axis takes through it. */
export const trajectoryFigure = (of: Trajectory): string => {
  const { axis, motor, speeds, lower, upper, sure, demand, hardest } = of;
  const layers: Layer[] = [
    { kind: 'band', x: speeds, lower, upper, fill: 'hatched', edges: 'full', label: `${motor} gives` },
    { kind: 'line', points: sure, stroke: 'dashed', label: 'sure to give', tone: 'soft' },
    { kind: 'line', points: demand, weight: 'heavy', label: `${axis} asks`, tone: 'accent' },
    { kind: 'point', at: hardest.at, y: hardest.torque, tone: 'accent' },
  ];
  return plot({
    title: `What ${axis} asks of ${motor}, over what ${motor} gives`,
    alt: trajectoryWords(of),
    x: { label: 'speed of the motor', unit: of.speedUnit, from: 0 },
    y: { label: 'torque', unit: of.torqueUnit, from: 0 },
    layers,
  });
};
