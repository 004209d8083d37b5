/** Loads added up: by rail and mode, from the socket, over a week. */
import { need, pathOf, provide, type Provider } from '../../../contract/index.ts';
import { constant, NotStated, type Value } from '../../../kernel/index.ts';
import {
  drivePower,
  inMode,
  leastDrivePower,
  mainsPower,
  railCurrent,
  railLeast,
  railPeak,
  railPower,
  standingByPower,
  weekEnergy,
  type Members,
  nameAndMode,
} from '../facts.ts';
import type { SupplyBook } from '../schema.ts';
import {
  idleMode,
  isOn,
  loadEntry,
  modesOf,
  ofSupply,
  railsOf,
  refuseRing,
  supplyEntry,
  type SupplyContext,
} from './book.ts';
import { meanCurrent } from './chopper.ts';
import { energyOver, openAndClosed } from './energy.ts';
import { motorsAt, onRail, voltsAt } from './layout.ts';
import { currentTogether, inputPower, loadPower, meanPower, powerTogether } from './loads.ts';

const NO_POWER = constant(0, 'power', 'nothing is on');
const NO_CURRENT = constant(0, 'current', 'nothing is on');
const WEEK = constant(7 * 24 * 3600, 'time', 'a week');

export const together = (powers: readonly Value[]): Value =>
  powers.length === 0 ? NO_POWER : powerTogether.work({ powers });
export const amperesTogether = (currents: readonly Value[]): Value =>
  currents.length === 0 ? NO_CURRENT : currentTogether.work({ currents });

/** What hangs on a wire: some take power whatever the voltage, some take current. */
export interface Hanging {
  readonly powers: readonly Value[];
  readonly currents: readonly Value[];
}

/** On the way; when everything starts and stalls at once; when everything that may move stands. */
export type Moment = 'steady' | 'peak' | 'least';

/** Power that a converter takes in a mode. */
const converterInput = (context: SupplyContext, supply: string, mode: string, moment: Moment): Value => {
  const rails = Object.keys(supplyEntry(context.book, supply).rails ?? {});
  const outputs = rails.map((rail) =>
    moment === 'steady'
      ? context.get(railPower, inMode(rail, mode))
      : loadPower.work({
          rail: voltsAt(context, rail),
          current: context.get(moment === 'peak' ? railPeak : railLeast, inMode(rail, mode)),
        }),
  );
  return inputPower.work({
    output: together(outputs),
    efficiency: ofSupply(context.book, supply, 'efficiency'),
    idle: ofSupply(context.book, supply, 'no-load'),
  });
};

/** What some of the machine takes in a mode at a moment. */
export const hanging = (context: SupplyContext, members: Members, mode: string, moment: Moment): Hanging => {
  const { book } = context;
  const powers: Value[] = [];
  const currents: Value[] = [];
  for (const driver of members.drivers)
    for (const motor of motorsAt(context, driver))
      powers.push(context.get(moment === 'least' ? leastDrivePower : drivePower, inMode(motor, mode)));
  for (const name of members.loads) {
    const load = loadEntry(book, name);
    if (!isOn(load, mode)) continue;
    if (moment === 'peak' && load.peak !== undefined) currents.push(load.peak);
    else if (load.power !== undefined) powers.push(load.power);
    else currents.push(need(load, 'current').current);
  }
  for (const supply of members.converters) powers.push(converterInput(context, supply, mode, moment));
  return { powers, currents };
};

const onRailIn = (context: SupplyContext, key: string, moment: Moment) => {
  const [rail, mode] = nameAndMode(key);
  refuseRing(context.book, rail);
  return { volts: () => voltsAt(context, rail), ...hanging(context, onRail(context, rail), mode, moment) };
};

const powerOf = (context: SupplyContext, key: string): Value => {
  const { volts, powers, currents } = onRailIn(context, key, 'steady');
  return together([...powers, ...currents.map((current) => loadPower.work({ rail: volts(), current }))]);
};

const currentOf = (context: SupplyContext, key: string, moment: Moment): Value => {
  const { volts, powers, currents } = onRailIn(context, key, moment);
  const drawn = powers.length > 0 ? [meanCurrent.work({ power: together(powers), rail: volts() })] : [];
  return amperesTogether([...drawn, ...currents]);
};

/** Power of all rails of a supply in a mode. */
export const supplyOutput = (context: SupplyContext, supply: string, mode: string): Value =>
  together(
    Object.keys(supplyEntry(context.book, supply).rails ?? {}).map((rail) =>
      context.get(railPower, inMode(rail, mode)),
    ),
  );

const fromSocket = (context: SupplyContext, mode: string): Value => {
  const plugged = Object.entries(context.book.supplies ?? {}).filter(([, { from }]) => from === undefined);
  if (plugged.length === 0) throw new NotStated(['supplies']);
  return together(
    plugged.map(([name]) =>
      inputPower.work({
        output: supplyOutput(context, name, mode),
        efficiency: ofSupply(context.book, name, 'efficiency'),
        idle: ofSupply(context.book, name, 'no-load'),
      }),
    ),
  );
};

/** Mean power from the socket while the machine is open. */
export const openPower = (context: SupplyContext): Value => {
  const modes = Object.entries(context.book.modes ?? {});
  if (modes.length === 0) throw new NotStated(['modes']);
  return meanPower.work({
    duties: modes.map(([, mode]) => need(mode, 'duty').duty),
    powers: modes.map(([name]) => context.get(mainsPower, name)),
  });
};

const weekOf = (context: SupplyContext): Value => {
  const { site } = context.book;
  if (site?.open === undefined) throw new NotStated([`${site ? pathOf(site) : 'site'}.open`]);
  const power = openAndClosed.work({
    share: site.open,
    open: openPower(context),
    closed: context.get(standingByPower, 'site'),
  });
  return energyOver.work({ power, time: WEEK });
};

const railKeys = (book: SupplyContext['book']): readonly string[] =>
  railsOf(book).flatMap(([, rail]) => modesOf(book).map((mode) => inMode(rail, mode)));

export const railProviders: readonly Provider<SupplyBook>[] = [
  provide<SupplyBook, Value>(railPower, powerOf, railKeys),
  provide<SupplyBook, Value>(railCurrent, (context, key) => currentOf(context, key, 'steady'), railKeys),
  provide<SupplyBook, Value>(railPeak, (context, key) => currentOf(context, key, 'peak'), railKeys),
  provide<SupplyBook, Value>(railLeast, (context, key) => currentOf(context, key, 'least'), railKeys),
  provide<SupplyBook, Value>(mainsPower, fromSocket, modesOf),
  provide<SupplyBook, Value>(
    standingByPower,
    (context) => context.get(mainsPower, idleMode(context.book)),
    () => ['site'],
  ),
  provide<SupplyBook, Value>(weekEnergy, weekOf, () => ['site']),
];
