/** Reads what stands in the book about supplies, drives and loads; what does not follow from anything else is NotStated. */
import { entry, need, type Context, type Seen } from '../../../contract/index.ts';
import { NoSolution, NotStated, type Value } from '../../../kernel/index.ts';
import type { DriverEntry, LoadEntry, PartEntry, SupplyBook, SupplyEntry } from '../schema.ts';

export type SupplyContext = Context<SupplyBook>;
type Book = SupplyContext['book'];

/** Names of the modes; a book that states none has one without a name, in which everything is on and moves. */
export const modesOf = (book: Book): readonly string[] => {
  const names = Object.keys(book.modes ?? {});
  return names.length > 0 ? names : [''];
};

/** Whether nobody plays in a mode. The mode that is named standing-by is idle unless it says otherwise. */
export const isIdle = (book: Book, mode: string): boolean => book.modes?.[mode]?.idle ?? mode === 'standing-by';

/** The mode in which the machine stands while it is closed. */
export const idleMode = (book: Book): string => {
  const found = Object.keys(book.modes ?? {}).find((mode) => isIdle(book, mode));
  if (found === undefined) throw new NotStated(['modes.standing-by']);
  return found;
};

export const railsOf = (book: Book): readonly (readonly [supply: string, rail: string])[] =>
  Object.entries(book.supplies ?? {}).flatMap(([supply, { rails }]) =>
    Object.keys(rails ?? {}).map((rail) => [supply, rail] as const),
  );

/** Name of the supply that has a rail. */
export const supplyOf = (book: Book, rail: string): string => {
  const found = railsOf(book).find(([, own]) => own === rail);
  if (found === undefined) throw new NotStated(['supplies']);
  return found[0];
};

const railEntry = (book: Book, rail: string) => {
  const supply = supplyOf(book, rail);
  return { at: `supplies.${supply}.rails.${rail}`, entry: book.supplies?.[supply]?.rails?.[rail] };
};

const railKey = (book: Book, rail: string, key: 'volts' | 'limit'): Value => {
  const { at, entry: found } = railEntry(book, rail);
  const value = found?.[key];
  if (value === undefined) throw new NotStated([`${at}.${key}`]);
  return value;
};
export const voltsOf = (book: Book, rail: string): Value => railKey(book, rail, 'volts');
export const limitOf = (book: Book, rail: string): Value => railKey(book, rail, 'limit');

export const partOf = (book: Book, part: string, wanted: string): Seen<PartEntry> =>
  entry(book.parts, 'parts', part, wanted);

/** A key that stands at an entry, or at the part that it is. */
const detail = <E extends { readonly part?: string | undefined }, K extends string>(
  book: Book,
  kind: string,
  name: string,
  own: E,
  key: K,
): Value | undefined => {
  const at = own as unknown as Readonly<Record<string, Value | undefined>>;
  if (at[key] !== undefined) return at[key];
  if (own.part === undefined) return undefined;
  return (partOf(book, own.part, `${kind}.${name}.part`) as unknown as Readonly<Record<string, Value | undefined>>)[
    key
  ];
};

const where = (kind: string, name: string, part: string | undefined, key: string): string =>
  part === undefined ? `${kind}.${name}.${key}` : `parts.${part}.${key}`;

export const supplyEntry = (book: Book, name: string): Seen<SupplyEntry> =>
  entry(book.supplies, 'supplies', name, 'supplies');

type SupplyKey =
  | 'power'
  | 'efficiency'
  | 'no-load'
  | 'overload-current'
  | 'short-circuit-current'
  | 'start-within'
  | 'output-capacitance'
  | 'input-capacitance'
  | 'most-air';

/** A fact of a supply, or NotStated. */
export const ofSupply = (book: Book, name: string, key: SupplyKey): Value => {
  const own = supplyEntry(book, name);
  const found = detail(book, 'supplies', name, own, key);
  if (found === undefined) throw new NotStated([where('supplies', name, own.part, key)]);
  return found;
};

/** Least load of a rail, when its supply needs one. */
export const minimumOf = (book: Book, rail: string): Value | undefined => {
  const own = supplyEntry(book, supplyOf(book, rail));
  const part = own.part === undefined ? undefined : book.parts?.[own.part];
  return own.minimum?.[rail] ?? part?.minimum?.[rail];
};

/** Volts and power of the clamp of a supply, when it has one. */
export const clampOf = (
  book: Book,
  name: string,
): SupplyEntry['clamp'] extends infer C ? Seen<C> | undefined : never => {
  const own = supplyEntry(book, name);
  return own.clamp ?? (own.part === undefined ? undefined : book.parts?.[own.part]?.clamp);
};

export const driverEntry = (book: Book, name: string): Seen<DriverEntry> =>
  entry(book.drivers, 'drivers', name, 'drivers');

type DriverKey =
  | 'own-power'
  | 'thermal-resistance'
  | 'most-temperature'
  | 'capacitance'
  | 'ripple-current'
  | 'bridge-resistance'
  | 'most-volts';

/** A fact of a driver, or NotStated. */
export const ofDriver = (book: Book, name: string, key: DriverKey): Value => {
  const own = driverEntry(book, name);
  const found = detail(book, 'drivers', name, own, key);
  if (found === undefined) throw new NotStated([where('drivers', name, own.part, key)]);
  return found;
};

export const loadEntry = (book: Book, name: string): Seen<LoadEntry> => entry(book.loads, 'loads', name, 'loads');

/** Whether a load is on in a mode. */
export const isOn = (load: Seen<LoadEntry>, mode: string): boolean =>
  load.modes === undefined || mode === '' || load.modes.includes(mode);

export const driverOf = (book: Book, motor: string): string =>
  need(entry(book.motors, 'motors', motor, 'motors'), 'driver').driver;

export const motorsOn = (book: Book, driver: string): readonly string[] =>
  Object.entries(book.motors ?? {})
    .filter(([, motor]) => motor.driver === driver)
    .map(([name]) => name);

/** The axis that a motor moves, if one does. */
export const axisOf = (book: Book, motor: string): string | undefined =>
  Object.entries(book.axes ?? {}).find(([, axis]) => axis.motors?.includes(motor))?.[0];

/** Refuses a converter that feeds itself, by whatever way round. */
export const refuseRing = (book: Book, rail: string): void => {
  const seen = new Set<string>();
  for (let at: string | undefined = rail; at !== undefined;) {
    const supply: string = supplyOf(book, at);
    if (seen.has(supply))
      throw new NoSolution(
        `the supply of ${rail}`,
        `${[...seen, supply].join(' is fed by ')}: a converter cannot feed itself`,
      );
    seen.add(supply);
    at = supplyEntry(book, supply).from;
  }
};
