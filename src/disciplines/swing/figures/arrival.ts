/** The hook on its way up: how far out of plumb it is over time, with what the dock catches. */
import { plot, type Layer, type Point } from '../../../figures/index.ts';
import { spoken } from './scale.ts';

export interface Arrival {
  readonly hoist: string;
  readonly unit: string;
  /** Seconds and offset of the hook. */
  readonly path: readonly Point[];
  /** How far the swing may be out at each of these times, whatever its phase. */
  readonly envelope: readonly Point[];
  /** What the dock catches, to either side; none where there is no dock. */
  readonly reach?: number;
}

export const arrivalWords = ({ hoist, path, envelope, reach, unit }: Arrival): string => {
  const last = envelope.at(-1)!;
  const caught = reach === undefined ? '' : `; the dock catches ${spoken(reach)} ${unit} to either side`;
  return `The hook of ${hoist} leaves the heap ${spoken(Math.abs(path[0]![1]))} ${unit} out of plumb and arrives after ${spoken(last[0])} s within ${spoken(last[1])} ${unit}${caught}.`;
};

export const arrivalFigure = (of: Arrival): string => {
  const { reach, path, envelope } = of;
  const layers: Layer[] = [
    ...(reach === undefined ? [] : [{ kind: 'region', y: [-reach, reach], fill: 'sparse', label: 'caught' } as const]),
    { kind: 'line', points: envelope, stroke: 'dashed', tone: 'soft', label: 'at most' },
    { kind: 'line', points: envelope.map(([t, x]): Point => [t, -x]), stroke: 'dashed', tone: 'soft' },
    { kind: 'line', points: path, weight: 'heavy', tone: 'accent', label: 'hook' },
  ];
  return plot({
    title: `The hook of ${of.hoist} on its way up`,
    alt: arrivalWords(of),
    x: { label: 'time from lift-off', unit: 's', from: 0 },
    y: { label: 'out of plumb', unit: of.unit },
    layers,
  });
};
