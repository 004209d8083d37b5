/** A slice through the motors that would do instead. */
import { plot, type Layer } from '../../../figures/index.ts';
import type { Verdict } from '../../../kernel/index.ts';

export interface SubstituteSlice {
  readonly axis: string;
  readonly motor: string;
  readonly across: { readonly label: string; readonly unit: string };
  readonly up: { readonly label: string; readonly unit: string };
  readonly points: readonly { readonly across: number; readonly up: number; readonly verdict: Verdict }[];
  /** The ends of what stands in the book. */
  readonly now: { readonly across: readonly [number, number]; readonly up: readonly [number, number] };
}

const marks: Readonly<
  Record<Verdict, { readonly shape: 'dot' | 'ring' | 'cross'; readonly tone: 'holds' | 'tight' | 'fails' | 'open' }>
> = {
  holds: { shape: 'dot', tone: 'holds' },
  tight: { shape: 'ring', tone: 'tight' },
  open: { shape: 'ring', tone: 'open' },
  'not-stated': { shape: 'ring', tone: 'open' },
  fails: { shape: 'cross', tone: 'fails' },
};

const round = (x: number): string => String(Number(x.toPrecision(3)));

export const substituteWords = ({ axis, motor, points, across, up }: SubstituteSlice): string => {
  const tried = `Of ${points.length} motors tried in place of ${motor} on ${axis}`;
  const holding = points.filter(({ verdict }) => verdict === 'holds');
  const [first, ...others] = holding;
  if (first === undefined) return `${tried} none is sure to hold.`;
  const least = others.reduce((best, one) => (one.up < best.up ? one : best), first);
  return `${tried} ${holding.length} hold; the one with the least ${up.label} has ${round(least.up)} ${up.unit} and an ${across.label} of ${round(least.across)} ${across.unit}.`;
};

export const substituteFigure = (of: SubstituteSlice): string => {
  const middle = ([a, b]: readonly [number, number]): number => (a + b) / 2;
  const layers: Layer[] = [
    ...of.points.map(({ across, up, verdict }): Layer => ({ kind: 'point', at: [across, up], ...marks[verdict] })),
    {
      kind: 'point',
      at: [middle(of.now.across), middle(of.now.up)],
      x: of.now.across,
      y: of.now.up,
      label: of.motor,
      tone: 'accent',
    },
  ];
  return plot({
    title: `Motors that would do in place of ${of.motor} on ${of.axis}`,
    alt: substituteWords(of),
    x: { ...of.across, from: 0 },
    y: { ...of.up, from: 0 },
    layers,
  });
};
