/** How shorted windings brake a load over its sinking speed. */
import { plot, type Point } from '../../../figures/index.ts';

export interface Sinking {
  readonly axis: string;
  readonly motor: string;
  readonly speedUnit: string;
  readonly torqueUnit: string;
  readonly braking: readonly Point[];
  readonly load: number;
  /** Where the load sinks; none when it is more than the windings can brake. */
  readonly sinks?: Point;
}

export const sinkingWords = ({ axis, motor, sinks, load, speedUnit, torqueUnit }: Sinking): string => {
  const round = (x: number): string => String(Number(x.toPrecision(3)));
  return sinks
    ? `Without power the load of ${axis} turns ${motor} with ${round(load)} ${torqueUnit} and sinks at ${round(sinks[0])} ${speedUnit}, where the shorted windings brake just so much.`
    : `Without power the load of ${axis} turns ${motor} with ${round(load)} ${torqueUnit}, more than its shorted windings can brake at any speed: it falls.`;
};

/** Braking torque over sinking speed, with the torque of the load across it. */
export const sinkingFigure = (of: Sinking): string =>
  plot({
    title: `How ${of.axis} sinks on the shorted windings of ${of.motor}`,
    alt: sinkingWords(of),
    x: { label: 'sinking speed', unit: of.speedUnit, from: 0 },
    y: { label: 'torque at the motor', unit: of.torqueUnit, from: 0 },
    layers: [
      { kind: 'line', points: of.braking, label: 'shorted windings', shape: 'smooth', weight: 'medium' },
      { kind: 'rule', axis: 'y', at: of.load, label: 'load', stroke: 'dashed', tone: 'accent' },
      ...(of.sinks ? [{ kind: 'point', at: of.sinks, label: 'sinks here', tone: 'accent' } as const] : []),
    ],
  });
