/** How the use of a driver's motors falls as its current is raised, and the least current that still holds. */
import { plot, type Layer, type Point } from '../../../figures/index.ts';
import type { Verdict } from '../../../kernel/index.ts';

export interface CurrentUse {
  readonly driver: string;
  readonly unit: string;
  /** Share of the torque that is used, over the current as marked, at the stated middle of all ranges. */
  readonly middle: readonly Point[];
  /** Settings that were tried with every check, at the worst of all ranges. */
  readonly tried: readonly { readonly at: Point; readonly verdict: Verdict }[];
  readonly now: number;
  /** The least that still holds with its margin. */
  readonly lowest?: number;
  /** The same as the author would write it. */
  readonly lowestText: string;
}

/** Uses above this stand off the figure. */
export const MOST_USE = 2;
const PERCENT = 100;

const round = (x: number): string => String(Number(x.toPrecision(3)));

export const currentWords = ({ driver, unit, now, lowest }: CurrentUse): string =>
  lowest === undefined
    ? `${driver} is set to ${round(now)} ${unit}; no current up to that is sure to leave the margin that is advised.`
    : lowest < now * 0.999
      ? `${driver} is set to ${round(now)} ${unit}; ${round(lowest)} ${unit} still hold.`
      : `${driver} is set to ${round(now)} ${unit}, which is the least that still holds.`;

const shapeOf = (verdict: Verdict): 'dot' | 'ring' | 'cross' =>
  verdict === 'holds' ? 'dot' : verdict === 'fails' ? 'cross' : 'ring';

const toneOf = (verdict: Verdict): 'holds' | 'tight' | 'fails' | 'open' =>
  verdict === 'not-stated' ? 'open' : verdict;

export const currentFigure = (of: CurrentUse): string => {
  const seen = of.middle.filter(([, use]) => use <= MOST_USE);
  const layers: Layer[] = [
    { kind: 'limit', axis: 'y', at: PERCENT, forbidden: 'above', label: 'limit' },
    {
      kind: 'line',
      points: seen.map(([x, use]): Point => [x, use * PERCENT]),
      label: 'at the middle of all ranges',
      weight: 'medium',
    },
    { kind: 'rule', axis: 'x', at: of.now, label: 'set', stroke: 'dashed', tone: 'accent' },
    ...of.tried
      .filter(({ at: [, use] }) => use <= MOST_USE)
      .map(({ at: [x, use], verdict }): Layer => ({
        kind: 'point',
        at: [x, use * PERCENT],
        shape: shapeOf(verdict),
        tone: toneOf(verdict),
        label: verdict,
      })),
  ];
  return plot({
    title: `Current of ${of.driver} against what still holds`,
    alt: currentWords(of),
    x: { label: 'current as marked', unit: of.unit, from: 0 },
    y: { label: 'torque used, of limit', unit: '%', from: 0, to: MOST_USE * PERCENT },
    layers,
  });
};
