/** The part of the book that belongs to no single trade: what stands at the top, and who joins whom. */
import * as z from 'zod';
import { dimensions } from '../kernel/index.ts';
import {
  count,
  nameOf,
  namesOf,
  oneOf,
  quantity,
  text,
  unitFor,
  type EntryOf,
  type Quantity,
  type Shape,
} from './schema.ts';

const site = z.strictObject({
  ambient: quantity('temperature', {
    range: 'spread',
    from: 200,
    means: 'air temperature around the machine',
    example: '8..32 degC',
  }).optional(),
  mains: quantity('voltage', { range: 'exact', means: 'mains voltage', example: '230 V' }).optional(),
  players: text({ means: 'who plays', example: 'age 3 and over' }).optional(),
  open: quantity('duty', { range: 'spread', means: 'opening time', example: '9 h/day' }).optional(),
  plays: quantity('rate', { range: 'spread', from: 0, means: 'plays a day', example: '60..140 /day' }).optional(),
  'energy-price': quantity('money-per-energy', {
    range: 'exact',
    from: 0,
    means: 'price of energy',
    example: '0.28 EUR/kWh',
  }).optional(),
});

const accepted = z.array(
  z.strictObject({
    finding: text({ means: 'the key of a finding', example: 'TRADE-020/z' }),
    because: text({ means: 'why it is accepted', example: 'the window is padded there' }),
    at: quantity('ratio', {
      range: 'exact',
      means: 'percentage of limit at which it was accepted',
      example: '104 %',
    }).optional(),
    until: text({ means: 'the day on which to look again', example: '2027-05-01' }).optional(),
  }),
);

/** Keys at the top of a book that belong to no trade; `book` is the format number. */
export const topKeys = {
  book: count({ means: 'the format', example: '1' }),
  title: text({ means: 'name of the machine', example: 'Tidepool' }),
  revision: text({ means: 'revision letter or number', example: 'B' }),
  about: text({ means: 'what the machine is', example: 'a prize crane for a visitor centre' }),
  site,
  accepted,
  units: z.strictObject(Object.fromEntries(dimensions.map(({ name }) => [name, unitFor(name).optional()]))),
  include: z.array(text({ means: 'a file in the folder of the book', example: 'motors.yaml' })),
  revisions: z.array(
    z.strictObject({
      revision: text({ means: 'revision', example: 'A' }),
      says: text({ means: 'what changed', example: 'first drawn' }),
    }),
  ),
} satisfies Shape;

export const switchKeys = {
  min: namesOf('signals', { means: 'switch or switches at the low end', example: 'S1' }),
  max: namesOf('signals', { means: 'switch or switches at the high end', example: 'S2' }),
} satisfies Shape;

/** Entry kinds with the keys that say who joins whom. `drive`, `kind` name the variant where trades give variants. */
export const entryKinds: Readonly<
  Record<string, { readonly shape: Shape; readonly variant?: string; readonly means: string }>
> = {
  axes: {
    means: 'axis',
    variant: 'drive',
    shape: {
      motors: namesOf('motors', { means: 'the motor or motors that move it', example: '[M1]' }),
      switches: z.strictObject({ min: switchKeys.min.optional(), max: switchKeys.max.optional() }),
    },
  },
  motors: {
    means: 'motor',
    shape: {
      part: nameOf('parts', { means: 'which part it is', example: 'scrap-23' }),
      driver: nameOf('drivers', { means: 'the driver that feeds it', example: 'D1' }),
    },
  },
  drivers: {
    means: 'driver',
    shape: {
      part: nameOf('parts', { means: 'which part it is', example: 'chopper-4A' }),
      rail: nameOf('rails', { means: 'the supply rail that feeds it', example: '24V' }),
      cable: nameOf('cables', { means: 'the cable to its motor', example: 'W1' }),
    },
  },
  parts: { means: 'part', variant: 'kind', shape: {} },
  supplies: {
    means: 'power supply',
    shape: {
      part: nameOf('parts', { means: 'which part it is', example: 'enclosed-24V-100W' }),
      rails: z.record(
        z.string(),
        z.strictObject({
          volts: quantity('voltage', { range: 'spread', means: 'rail voltage', example: '24 V ±2%' }).optional(),
          limit: quantity('current', {
            range: 'exact',
            means: 'most current that the rail gives',
            example: '4.2 A',
          }).optional(),
          sag: quantity('resistance', {
            range: 'doubt',
            from: 0,
            means: 'volts that the rail loses for each ampere',
            example: '20..60 mohm',
            measure: {
              what: 'sag of the rail',
              instrument: 'two multimeters and a lamp or power resistor',
              procedure:
                'On the low-voltage side, read volts at the terminals and ampere with a small load and with one near the limit; the difference of the volts over that of the ampere.',
              error: '±5 mΩ',
              minutes: 15,
            },
          }).optional(),
        }),
      ),
    },
  },
  cables: {
    means: 'cable',
    shape: {
      part: nameOf('parts', { means: 'which part it is', example: 'chain-rated-4x0.5' }),
      length: quantity('length', { range: 'spread', means: 'length along its route', example: '3.4 m' }),
      route: z.array(text({ means: 'a place on the way', example: 'chain-y' })),
    },
  },
  signals: {
    means: 'signal',
    shape: {
      kind: oneOf(['switch', 'button', 'stop', 'door', 'sensor', 'lamp', 'relay', 'sound'], {
        means: 'what kind of signal it is',
      }),
      contact: oneOf(['normally-open', 'normally-closed'], { means: 'how the contact rests' }),
      about: text({ means: 'what it tells', example: 'claw is in its cup' }),
    },
  },
  modes: {
    means: 'mode',
    shape: {
      duty: quantity('ratio', {
        range: 'spread',
        from: 0,
        to: 1,
        because: 'a share of the time lies between none and all of it',
        means: 'share of opening time',
        example: '60..80 %',
      }),
      about: text({ means: 'what happens in it', example: 'the load travels home, docked' }),
    },
  },
};

export type Rails = Readonly<
  Record<string, { readonly volts?: Quantity; readonly limit?: Quantity; readonly sag?: Quantity }>
>;
export type TopologySite = z.output<typeof site>;
/** The topology as trades see it; a trade intersects these with the keys that it adds. */
export interface Topology {
  readonly title?: string;
  readonly revision?: string;
  readonly site?: TopologySite;
  readonly axes?: Readonly<
    Record<
      string,
      {
        readonly motors?: readonly string[];
        readonly switches?: { readonly min?: readonly string[]; readonly max?: readonly string[] };
      }
    >
  >;
  readonly supplies?: Readonly<Record<string, { readonly part?: string; readonly rails?: Rails }>>;
  readonly cables?: Readonly<
    Record<string, { readonly part?: string; readonly length?: Quantity; readonly route?: readonly string[] }>
  >;
  readonly signals?: Readonly<
    Record<string, { readonly kind?: string; readonly contact?: string; readonly about?: string }>
  >;
  readonly modes?: Readonly<Record<string, { readonly duty?: Quantity; readonly about?: string }>>;
}
export type { EntryOf };
