/** Controller's part of the book. */
import type * as z from 'zod';
import type { EntryOf, Quantity, SchemaPart, Seen, Topology } from '../../contract/index.ts';
import { controllerTable } from './schema/board.ts';
import { driverEntryKeys, driverPartKeys, signalKeys } from './schema/signals.ts';

export { boardNames, signalNeeds, type BusKind } from './schema/board.ts';

export const schema: SchemaPart = {
  top: { controller: controllerTable },
  entries: {
    signals: signalKeys,
    drivers: { ...driverPartKeys, ...driverEntryKeys },
    'parts/driver': driverPartKeys,
  },
};

type Table<T> = Readonly<Record<string, T>>;

export type SignalEntry = NonNullable<Topology['signals']>[string] & EntryOf<typeof signalKeys>;
export type DriverEntry = { readonly part?: string } & EntryOf<typeof driverPartKeys & typeof driverEntryKeys>;
export type ControllerTable = z.output<typeof controllerTable>;
/** What is read of axes and modes; these keys are others'. */
export type AxisEntry = NonNullable<Topology['axes']>[string] & {
  readonly drive?: string;
  readonly speed?: Quantity;
  readonly 'approach-speed'?: Quantity;
  readonly overtravel?: Quantity;
  readonly 'slack-switch'?: string;
  readonly stopping?: { readonly acceleration?: Quantity };
};

/** The book as Controller sees it. */
export interface ControllerBook extends Omit<Topology, 'signals' | 'axes'> {
  readonly controller?: ControllerTable;
  readonly signals?: Table<SignalEntry>;
  readonly drivers?: Table<DriverEntry>;
  readonly motors?: Table<{ readonly part?: string; readonly driver?: string }>;
  readonly axes?: Table<AxisEntry>;
  readonly parts?: Table<EntryOf<typeof driverPartKeys>>;
}

export type SeenSignal = Seen<SignalEntry>;
