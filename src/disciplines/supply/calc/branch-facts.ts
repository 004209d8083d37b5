/** Branches: a fuse, the wire behind it and what hangs on it. */
import { entry, need, pathOf, provide, type Provider, type Seen } from '../../../contract/index.ts';
import { constant, given, greatest, NotStated, type Value } from '../../../kernel/index.ts';
import { insulations } from '../data/wires.ts';
import {
  branchCurrent,
  branchDrop,
  fuseLoop,
  fuseRail,
  inMode,
  insideAir,
  modeDrop,
  peakDrop,
  wireBears,
  nameAndMode,
} from '../facts.ts';
import type { CableEntry, FuseEntry, PartEntry, SupplyBook } from '../schema.ts';
import { modesOf, partOf, type SupplyContext } from './book.ts';
import { meanCurrent } from './chopper.ts';
import {
  branchResistance,
  deepestDrop,
  feedDrop,
  feedResistance,
  knownFeedResistance,
  NO_POINT,
  voltageLeft,
} from './drop.ts';
import { behind, voltsAt } from './layout.ts';
import { ambientFactor, conductingShare, heatingConstant, wireCapacity, wireLetThrough } from './wire.ts';
import { amperesTogether, hanging, together } from './rail-facts.ts';

const NO_DROP = constant(0, 'voltage', 'no drop');
const CLOSED = 'drop at which the loop of current and voltage closes';
const TABLE_AIR = constant(313.15, 'temperature', 'air for which the table is, 40 °C', { id: 'iec-60204-currents' });
const celsius = (degrees: number, means: string): Value =>
  constant(degrees + 273.15, 'temperature', means, { id: 'cable-k-factors' });

export const fuseEntry = ({ book }: SupplyContext, name: string): Seen<FuseEntry> =>
  entry(book.fuses, 'fuses', name, 'fuses');

/** Rails of everything behind a fuse. One is right. */
export const railsBehind = (context: SupplyContext, fuse: string): readonly string[] => {
  const { drivers, loads, converters } = behind(context, fuse);
  const { book } = context;
  const rails = [
    ...drivers.map((name) => book.drivers?.[name]?.rail),
    ...loads.map((name) => book.loads?.[name]?.rail),
    ...converters.map((name) => book.supplies?.[name]?.from),
  ];
  return [...new Set(rails.filter((rail) => rail !== undefined))];
};

/** The rail that a fuse is on. */
export const branchRail = (context: Pick<SupplyContext, 'get'>, fuse: string): string => context.get(fuseRail, fuse);

const railOf = (context: SupplyContext, fuse: string): string => {
  const [rail] = railsBehind(context, fuse);
  if (rail !== undefined) return rail;
  const { drivers, loads, converters } = behind(context, fuse);
  const wanted = [
    ...drivers.map((name) => `drivers.${name}.rail`),
    ...loads.map((name) => `loads.${name}.rail`),
    ...converters.map((name) => `supplies.${name}.from`),
  ];
  throw new NotStated(wanted.length > 0 ? wanted.slice(0, 1) : ['drivers']);
};

const cableOf = (context: SupplyContext, fuse: string): Seen<CableEntry> =>
  entry(context.book.cables, 'cables', need(fuseEntry(context, fuse), 'cable').cable, `fuses.${fuse}.cable`);

const cablePart = (context: SupplyContext, fuse: string): Seen<PartEntry> => {
  const cable = cableOf(context, fuse);
  return partOf(context.book, need(cable, 'part').part, `${pathOf(cable)}.part`);
};

const parallelOf = (cable: Seen<CableEntry>): Value | undefined =>
  cable.parallel === undefined ? undefined : given(cable.parallel, 'count', `${pathOf(cable)}.parallel`);

/** Resistance of the wire behind a fuse, out and back: as measured, as its kind is stated, or as its copper says. */
export const feedOf = (context: SupplyContext, fuse: string): Value => {
  const cable = cableOf(context, fuse);
  const measured = cable['loop-resistance'];
  if (measured !== undefined) return measured;
  const part = cablePart(context, fuse);
  const laid = {
    length: need(cable, 'length').length,
    parallel: parallelOf(cable),
    temperature: context.get(insideAir, 'site'),
  };
  const perLength = part['resistance-per-length'];
  return perLength === undefined
    ? feedResistance.work({ ...laid, area: need(part, 'core').core })
    : knownFeedResistance.work({ ...laid, perLength });
};

/** Wire and fuse: what stands between a rail and what hangs behind a fuse. */
export const loopOf = (context: Pick<SupplyContext, 'get'>, fuse: string): Value => context.get(fuseLoop, fuse);

const loopBehind = (context: SupplyContext, fuse: string): Value =>
  branchResistance.work({
    feed: feedOf(context, fuse),
    fuse: need(fuseEntry(context, fuse), 'resistance').resistance,
  });

/** Share of the wire behind a fuse that conducts like copper; all of it where nothing else is stated. */
const shareOf = (context: SupplyContext, fuse: string): Value | undefined => {
  const part = cablePart(context, fuse);
  const perLength = part['resistance-per-length'];
  return perLength === undefined ? undefined : conductingShare.work({ perLength, area: need(part, 'core').core });
};

/** Drop on the wire behind a fuse in a mode: a true loop, for the load pulls more as it sags. */
export const dropIn = (
  context: Pick<SupplyContext, 'get'>,
  fuse: string,
  mode: string,
  moment: 'steady' | 'peak',
): Value => context.get(moment === 'peak' ? peakDrop : modeDrop, inMode(fuse, mode));

const dropAt = (context: SupplyContext, key: string, moment: 'steady' | 'peak'): Value => {
  const [fuse, mode] = nameAndMode(key);
  const { powers, currents } = hanging(context, behind(context, fuse), mode, moment);
  const steady = amperesTogether(currents);
  const power = together(powers);
  const rail = voltsAt(context, branchRail(context, fuse));
  const feed = loopOf(context, fuse);
  const next = (assumed: Value): Value => feedDrop.work({ feed, constant: steady, power, rail, assumed });
  const closed = context.loop({
    name: `the drop behind ${fuse}`,
    from: NO_DROP,
    most: deepestDrop.work({ rail, feed, constant: steady }),
    tolerance: 1e-7,
    next,
    rising: true,
    otherwise: `behind ${fuse} ${NO_POINT}`,
  });
  // Once more round at the closing value: the loop moves with every fact as its own turn does, so the slopes stay known.
  return next(constant(closed.number, 'voltage', CLOSED));
};

const currentIn = (context: SupplyContext, fuse: string, mode: string): Value => {
  const { powers, currents } = hanging(context, behind(context, fuse), mode, 'steady');
  if (powers.length === 0) return amperesTogether(currents);
  const rail = voltsAt(context, branchRail(context, fuse));
  const atLoad =
    fuseEntry(context, fuse).cable === undefined
      ? rail
      : voltageLeft.work({ rail, drop: dropIn(context, fuse, mode, 'steady') });
  return amperesTogether([meanCurrent.work({ power: together(powers), rail: atLoad }), ...currents]);
};

const overModes = (context: SupplyContext, run: (mode: string) => Value): Value =>
  greatest(...modesOf(context.book).map(run));

/** What the insulation of the wire behind a fuse bears; PVC for 70 °C where nothing is said. */
const insulationOf = (context: SupplyContext, fuse: string) =>
  insulations[cablePart(context, fuse).insulation ?? 'PVC 70'];

const capacityOf = (context: SupplyContext, fuse: string): Value => {
  const cable = cableOf(context, fuse);
  const laid = need(cable, 'continuous-current', 'grouping');
  const ambient = ambientFactor.work({
    most: celsius(insulationOf(context, fuse).forGood, 'most that the insulation bears for good'),
    ambient: context.get(insideAir, 'site'),
    reference: TABLE_AIR,
  });
  return wireCapacity.work({
    table: laid['continuous-current'],
    share: shareOf(context, fuse),
    grouping: laid.grouping,
    parallel: parallelOf(cable),
    ambient,
  });
};

/** Let-through that the wire behind a fuse bears when it starts as hot as its insulation bears for good. */
export const wireLetsThrough = (context: SupplyContext, fuse: string): Value => {
  const { forGood, forSeconds } = insulationOf(context, fuse);
  return wireLetThrough.work({
    constant: heatingConstant.work({
      start: celsius(forGood, 'wire as hot as its insulation bears for good'),
      end: celsius(forSeconds, 'most that its insulation bears for seconds'),
    }),
    area: need(cablePart(context, fuse), 'core').core,
    share: shareOf(context, fuse),
  });
};

const fusesIn = (book: SupplyContext['book']): readonly string[] => Object.keys(book.fuses ?? {});

export const branchProviders: readonly Provider<SupplyBook>[] = [
  provide<SupplyBook, string>(fuseRail, railOf),
  provide<SupplyBook, Value>(fuseLoop, loopBehind),
  provide<SupplyBook, Value>(modeDrop, (context, key) => dropAt(context, key, 'steady')),
  provide<SupplyBook, Value>(peakDrop, (context, key) => dropAt(context, key, 'peak')),
  provide<SupplyBook, Value>(
    branchCurrent,
    (context, fuse) => overModes(context, (mode) => currentIn(context, fuse, mode)),
    fusesIn,
  ),
  provide<SupplyBook, Value>(
    branchDrop,
    (context, fuse) => overModes(context, (mode) => dropIn(context, fuse, mode, 'steady')),
    fusesIn,
  ),
  provide<SupplyBook, Value>(wireBears, capacityOf, fusesIn),
];
