/** Supply's part of the book. */
import * as z from 'zod';
import type { EntryOf, Quantity, Rails, SchemaPart, Seen, Topology } from '../../contract/index.ts';
import { driverEntryKeys, driverHeatKeys, energy, enclosure, motorHeatKeys, mountedKeys } from './schema/heat.ts';
import {
  fuseKeys,
  laidKeys,
  loadKeys,
  modeKeys,
  supplyEntryKeys,
  supplyKeys,
  wirePartKeys,
} from './schema/supplies.ts';

const entriesOf = (keys: Readonly<Record<string, z.ZodType>>): z.ZodType =>
  z.record(
    z.string(),
    z.strictObject(Object.fromEntries(Object.entries(keys).map(([key, schema]) => [key, schema.optional()]))),
  );

export const schema: SchemaPart = {
  top: { loads: entriesOf(loadKeys), fuses: entriesOf(fuseKeys), enclosure, energy },
  entries: {
    supplies: supplyEntryKeys,
    motors: mountedKeys,
    drivers: driverEntryKeys,
    cables: laidKeys,
    modes: modeKeys,
    'parts/supply': supplyKeys,
    'parts/stepper': motorHeatKeys,
    'parts/driver': driverHeatKeys,
    'parts/cable': wirePartKeys,
  },
};

type Table<T> = { readonly [name: string]: T };

export type SupplyEntry = { readonly part?: string; readonly rails?: Rails } & EntryOf<typeof supplyEntryKeys>;
export type LoadEntry = EntryOf<typeof loadKeys>;
export type FuseEntry = EntryOf<typeof fuseKeys>;
export type ModeEntry = NonNullable<Topology['modes']>[string] & EntryOf<typeof modeKeys>;
/** Keys that Motion gives a driver, a cable and a part, as far as they are read here. */
interface OfMotion {
  readonly 'standing-by'?: string;
  readonly 'standstill-current'?: Quantity;
  readonly 'bridge-resistance'?: Quantity;
}
export type DriverEntry = { readonly part?: string; readonly rail?: string } & OfMotion &
  EntryOf<typeof driverEntryKeys>;
export type CableEntry = NonNullable<Topology['cables']>[string] &
  EntryOf<typeof laidKeys> & { readonly parallel?: number; readonly 'loop-resistance'?: Quantity };
export type MotorEntry = {
  readonly part?: string;
  readonly driver?: string;
  readonly winding?: string;
  readonly 'winding-temperature'?: Quantity;
} & EntryOf<typeof mountedKeys>;
export type PartEntry = { readonly kind: string } & EntryOf<
  typeof supplyKeys & typeof motorHeatKeys & Omit<typeof driverHeatKeys, never> & typeof wirePartKeys
> & {
    readonly 'bridge-resistance'?: Quantity;
    readonly core?: Quantity;
    readonly 'resistance-per-length'?: Quantity;
    readonly 'least-volts'?: Quantity;
    readonly leads?: number;
    readonly 'measured-as'?: string;
    readonly 'phase-resistance'?: Quantity;
    readonly 'most-volts'?: Quantity;
  };

/** The book as Supply sees it. Which keys a part has depends on its kind; the reader has made sure of it. */
export interface SupplyBook extends Omit<Topology, 'supplies' | 'cables' | 'modes'> {
  readonly supplies?: Table<SupplyEntry>;
  readonly loads?: Table<LoadEntry>;
  readonly fuses?: Table<FuseEntry>;
  readonly modes?: Table<ModeEntry>;
  readonly motors?: Table<MotorEntry>;
  readonly drivers?: Table<DriverEntry>;
  readonly cables?: Table<CableEntry>;
  readonly parts?: Table<PartEntry>;
  readonly enclosure?: z.output<typeof enclosure>;
  readonly energy?: z.output<typeof energy>;
}

export type SeenMode = Seen<ModeEntry>;
