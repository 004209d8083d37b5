import type { Point } from './geometry.ts';
import type { Tone, Weight } from './style.ts';

/** An axis; its numbers are in the unit that it names. */
export interface Axis {
  readonly label: string;
  /** Empty for a pure number. */
  readonly unit: string;
  /** Ends of the axis; without them the data decides, and tidy ticks. */
  readonly from?: number;
  readonly to?: number;
}

export type Fill = 'tone' | 'hatched' | 'crossed' | 'sparse';

export type Layer =
  /** A curve, named where it ends and not in a legend. Points that are no number interrupt it. */
  | {
      readonly kind: 'line';
      readonly points: readonly Point[];
      readonly label?: string;
      readonly stroke?: 'full' | 'dashed' | 'dotted' | 'chain';
      readonly weight?: Weight;
      readonly tone?: Tone;
      /** `step`: each value holds until the next point. */
      readonly shape?: 'straight' | 'smooth' | 'step';
    }
  /** The area between two curves over the same x. */
  | {
      readonly kind: 'band';
      readonly x: readonly number[];
      readonly lower: readonly number[];
      readonly upper: readonly number[];
      readonly fill: Fill;
      readonly tone?: Tone;
      readonly edges?: 'full' | 'dashed' | 'none';
      readonly label?: string;
    }
  /** A shaded rectangle; an end that is left out reaches the frame. */
  | {
      readonly kind: 'region';
      readonly x?: readonly [from: number | null, to: number | null];
      readonly y?: readonly [from: number | null, to: number | null];
      readonly fill: Fill;
      readonly tone?: Tone;
      readonly label?: string;
    }
  /** A limit: a heavy line with short hatching on the side where nobody may be. */
  | {
      readonly kind: 'limit';
      readonly axis: 'x' | 'y';
      readonly at: number;
      readonly forbidden: 'above' | 'below';
      readonly label: string;
      readonly tone?: Tone;
    }
  /** A thin line through the whole frame. */
  | {
      readonly kind: 'rule';
      readonly axis: 'x' | 'y';
      readonly at: number;
      readonly label?: string;
      readonly stroke?: 'full' | 'dashed' | 'dotted' | 'chain';
      readonly tone?: Tone;
    }
  /** A point; where it is uncertain, brackets span its ranges. */
  | {
      readonly kind: 'point';
      readonly at: Point;
      readonly x?: readonly [from: number, to: number];
      readonly y?: readonly [from: number, to: number];
      readonly label?: string;
      readonly tone?: Tone;
      readonly shape?: 'dot' | 'ring' | 'cross';
    };

export interface Plot {
  /** What the figure shows. */
  readonly title: string;
  /** What it says, in words, for those who cannot see it. */
  readonly alt: string;
  readonly x: Axis;
  readonly y: Axis;
  readonly layers: readonly Layer[];
  /** Px; 520 × 320 when not given. */
  readonly width?: number;
  readonly height?: number;
  readonly bare?: boolean;
}
