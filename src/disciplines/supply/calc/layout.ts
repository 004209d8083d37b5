/** Who joins whom: on a rail, behind a fuse, on a driver, on an axis; what a motor does in a mode. */
import { need, provide, type Provider } from '../../../contract/index.ts';
import { NotStated, type Value } from '../../../kernel/index.ts';
import {
  driverMotors,
  driveState,
  fuseMembers,
  inMode,
  motorAxis,
  railMembers,
  railVolts,
  type DriveState,
  type Members,
  nameAndMode,
} from '../facts.ts';
import type { SupplyBook } from '../schema.ts';
import { axisOf, driverEntry, driverOf, isIdle, motorsOn, voltsOf, type SupplyContext } from './book.ts';

/** Everything on a rail. */
export const onRail = (context: Pick<SupplyContext, 'get'>, rail: string): Members => context.get(railMembers, rail);

/** Everything behind a fuse. */
export const behind = (context: Pick<SupplyContext, 'get'>, fuse: string): Members => context.get(fuseMembers, fuse);

/** The motors of a driver. */
export const motorsAt = (context: Pick<SupplyContext, 'get'>, driver: string): readonly string[] =>
  context.get(driverMotors, driver);

/** The axis that a motor moves, if it moves one. */
export const axisAt = (context: Pick<SupplyContext, 'get'>, motor: string): string | undefined =>
  context.get(motorAxis, motor);

/** The voltage of a rail. */
export const voltsAt = (context: Pick<SupplyContext, 'get'>, rail: string): Value => context.get(railVolts, rail);

/** What a motor does in a mode. */
export const stateOf = (context: Pick<SupplyContext, 'get'>, motor: string, mode: string): DriveState =>
  context.get(driveState, inMode(motor, mode));

const membersBy = (
  { book }: SupplyContext,
  key: 'rail' | 'fuse',
  converters: 'from' | 'fuse',
  wanted: string,
): Members => ({
  drivers: Object.entries(book.drivers ?? {}).flatMap(([name, driver]) => (driver[key] === wanted ? [name] : [])),
  loads: Object.entries(book.loads ?? {}).flatMap(([name, load]) => (load[key] === wanted ? [name] : [])),
  converters: Object.entries(book.supplies ?? {}).flatMap(([name, supply]) =>
    supply[converters] === wanted ? [name] : [],
  ),
});

const stateIn = (context: SupplyContext, key: string): DriveState => {
  const [motor, mode] = nameAndMode(key);
  const { book } = context;
  const axis = axisAt(context, motor);
  if (mode === '') return 'moving';
  const entry = book.modes?.[mode];
  if (axis !== undefined && entry?.unpowered?.includes(axis)) return 'off';
  if (isIdle(book, mode)) {
    const driver = driverOf(book, motor);
    return need(driverEntry(book, driver), 'standing-by')['standing-by'] === 'unpowered' ? 'off' : 'held';
  }
  if (entry?.moving === undefined) throw new NotStated([`modes.${mode}.moving`]);
  return axis !== undefined && entry.moving.includes(axis) ? 'moving' : 'held';
};

export const layoutProviders: readonly Provider<SupplyBook>[] = [
  provide<SupplyBook, Members>(railMembers, (context, rail) => membersBy(context, 'rail', 'from', rail)),
  provide<SupplyBook, Members>(fuseMembers, (context, fuse) => membersBy(context, 'fuse', 'fuse', fuse)),
  provide<SupplyBook, readonly string[]>(driverMotors, ({ book }, driver) => motorsOn(book, driver)),
  provide<SupplyBook, string | undefined>(motorAxis, ({ book }, motor) => axisOf(book, motor)),
  provide<SupplyBook, DriveState>(driveState, stateIn),
  provide<SupplyBook, Value>(railVolts, ({ book }, rail) => voltsOf(book, rail)),
];
