/** Swing's part of the book. */
import * as z from 'zod';
import {
  oneOf,
  quantity,
  type EntryOf,
  type Quantity,
  type SchemaPart,
  type Seen,
  type Shape,
  type Topology,
} from '../../contract/index.ts';
import type { Measurement } from '../../kernel/index.ts';

const byCounting: Measurement = {
  what: 'how soon the swing fades',
  instrument: 'eyes and a strip of tape',
  procedure:
    'Let the claw down as far as it goes, pull it aside by a hand’s breadth, let go, and count full swings there and back until it goes half as far.',
  error: '±1 swing',
  minutes: 5,
};
const byTrials: Measurement = {
  what: 'spread of the lift-offs',
  instrument: 'telephone camera and a ruler',
  procedure:
    'Let the claw hang still, lower it and lift off, twenty times from the heap as plays leave it; film from the front and from the side, note how far the claw goes to each side of the plumb line; take the standard deviation of each.',
  error: '±20 %',
  minutes: 40,
};

const byPeriod: Measurement = {
  what: 'depth of the hook below the pivot',
  instrument: 'stopwatch and tape measure',
  procedure:
    'Let the claw down nearly all the way, measure how far, and take the time of twenty small swings there and back.',
  error: '±15 mm',
  minutes: 10,
};
const byReleasing: Measurement = {
  what: 'share of releases that dock',
  instrument: 'hands and eyes',
  procedure:
    'Let it go out of plumb by the most of lift-off-offset, to each side in turn, a number of times fixed before; count what docks.',
  error: 'the exact interval of the count',
  minutes: 30,
};

/** Keys of what hangs on the line. */
export const hangingKeys = {
  'halves-after': quantity('count', {
    range: 'doubt',
    above: 0,
    because: 'a swing that has halved at once was none',
    means: 'full swings at the longest line after which half of it is left',
    example: '6..14 swings',
    measure: byCounting,
  }),
  'centre-of-mass-below-hook': quantity('length', {
    range: 'spread',
    from: 0,
    means: 'from the hook down to the centre of mass, with and without a load',
    example: '60..80 mm',
  }),
  'lift-off-offset': quantity('length', {
    range: 'spread',
    from: 0,
    means: 'how far out of plumb it leaves the heap in ordinary plays, when it hung still as it was lowered',
    example: '10..20 mm',
  }),
  'lift-off-scatter': quantity('length', {
    range: 'doubt',
    means: 'standard deviation of that offset along one axis',
    example: '8..14 mm',
    measure: byTrials,
  }),
  'half-width': quantity('length', {
    range: 'exact',
    means: 'half of the widest part of claw and load',
    example: '85 mm',
  }),
  head: quantity('length', { range: 'exact', from: 0, means: 'width of what enters the dock', example: '14 mm' }),
  calm: quantity('angle', {
    range: 'exact',
    below: Math.PI / 2,
    means: 'swing with which it may be lowered or let go of a load',
    example: '2°',
  }),
  dwell: quantity('time', {
    range: 'exact',
    from: 0,
    means: 'wait between a travel and lowering or letting go',
    example: '1.5 s',
  }),
} satisfies Shape;

/** Keys of a hoist: where its load goes when it is up. */
export const dockKeys = {
  dock: z.strictObject({
    kind: oneOf(['cup', 'rest', 'none'], {
      means: 'what takes the load when it is up: a cup holds it while it travels, at a rest it hangs free',
    }).optional(),
    catch: quantity('length', {
      range: 'exact',
      means: 'width in which it is caught: the mouth of the cup, the reach of the switch from side to side',
      example: '45 mm',
    }).optional(),
    lean: quantity('angle', {
      range: 'exact',
      below: Math.PI / 2,
      means: 'lean with which it still goes in',
      example: '15°',
    }).optional(),
    'below-pivot': quantity('length', {
      range: 'doubt',
      means: 'from the point where the line leaves the carriage down to the hook, when it is up',
      example: '140 mm',
      measure: byPeriod,
    }).optional(),
    caught: quantity('ratio', {
      range: 'doubt',
      from: 0,
      to: 1,
      because: 'a share lies between none and all',
      means: 'share of trial releases, out of plumb by the most of lift-off-offset, that docked',
      example: '75..100 %',
      measure: byReleasing,
    }).optional(),
    misses: quantity('ratio', {
      range: 'exact',
      above: 0,
      below: 1,
      because: 'no dock always misses, and none never does',
      means: 'share of lift-offs that may miss',
      example: '0.5 %',
    }).optional(),
  }),
} satisfies Shape;

/** Keys of an axis that carries a hanging load. */
export const wallKeys = {
  wall: quantity('length', {
    range: 'spread',
    means: 'from the plumb line at the end of the travel to the nearest wall or window',
    example: '165 mm',
  }),
} satisfies Shape;

export const schema: SchemaPart = {
  top: { hanging: z.strictObject(optional(hangingKeys)) },
  entries: { 'axes/hoist': dockKeys, 'axes/belt': wallKeys, 'axes/screw': wallKeys },
};

function optional<S extends Shape>(shape: S): { [K in keyof S]: z.ZodOptional<S[K]> } {
  return Object.fromEntries(Object.entries(shape).map(([key, leaf]) => [key, leaf.optional()])) as {
    [K in keyof S]: z.ZodOptional<S[K]>;
  };
}

/** What is read of an axis; travel, ramps and inclines are others' keys. */
export type AxisEntry = NonNullable<Topology['axes']>[string] &
  EntryOf<typeof dockKeys & typeof wallKeys> & {
    readonly drive: 'belt' | 'screw' | 'hoist';
    readonly travel?: Quantity;
    readonly incline?: Quantity;
    readonly 'lands-after'?: Quantity;
    readonly stopping?: { readonly acceleration?: Quantity };
  };

/** The book as Swing sees it. */
export interface SwingBook extends Omit<Topology, 'axes'> {
  readonly axes?: Readonly<Record<string, AxisEntry>>;
  readonly hanging?: EntryOf<typeof hangingKeys>;
}

export type SeenAxis = Seen<AxisEntry>;
