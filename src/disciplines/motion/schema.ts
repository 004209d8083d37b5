/** Motion's part of the book. */
import type { EntryOf, SchemaPart, Seen, Topology } from '../../contract/index.ts';
import {
  axisKeys,
  beltAxisKeys,
  beltPartKeys,
  cableKeys,
  cablePartKeys,
  hoistAxisKeys,
  screwAxisKeys,
} from './schema/axes.ts';
import { driverKeys, driverPartKeys, motorKeys, pushedKeys, stepperPartKeys } from './schema/motors.ts';

export const schema: SchemaPart = {
  entries: {
    axes: axisKeys,
    'axes/belt': { ...beltAxisKeys, ...pushedKeys },
    'axes/screw': screwAxisKeys,
    'axes/hoist': hoistAxisKeys,
    motors: motorKeys,
    drivers: driverKeys,
    cables: cableKeys,
    'parts/belt': beltPartKeys,
    'parts/cable': cablePartKeys,
    'parts/stepper': stepperPartKeys,
    'parts/driver': driverPartKeys,
  },
};

type Table<T> = { readonly [name: string]: T };

export type AxisEntry = { readonly drive: 'belt' | 'screw' | 'hoist' } & NonNullable<Topology['axes']>[string] &
  EntryOf<typeof axisKeys & typeof beltAxisKeys & typeof pushedKeys & typeof screwAxisKeys & typeof hoistAxisKeys>;
export type CableEntry = NonNullable<Topology['cables']>[string] & EntryOf<typeof cableKeys>;
export type PartEntry = { readonly kind: string } & EntryOf<
  typeof beltPartKeys & typeof cablePartKeys & typeof stepperPartKeys & typeof driverPartKeys
>;
export type MotorEntry = { readonly part?: string; readonly driver?: string } & EntryOf<typeof motorKeys>;
export type DriverEntry = { readonly part?: string; readonly rail?: string; readonly cable?: string } & EntryOf<
  typeof driverKeys
>;

/** The book as Motion sees it. Which keys an entry has depends on its drive or kind; the reader has made sure of it. */
export interface MotionBook extends Omit<Topology, 'axes' | 'cables'> {
  readonly axes?: Table<AxisEntry>;
  readonly motors?: Table<MotorEntry>;
  readonly drivers?: Table<DriverEntry>;
  readonly cables?: Table<CableEntry>;
  readonly parts?: Table<PartEntry>;
}

export type SeenAxis = Seen<AxisEntry>;
