/** How warm things get: the air in the cabinet, windings, cases, drivers, servos. */
import { entry, need, provide, type Provider, type Seen } from '../../../contract/index.ts';
import { constant, greatest, NotStated, settledWith, type Value } from '../../../kernel/index.ts';
import { driveFacts, motorFacts } from '../../motion/facts.ts';
import {
  cabinetWarmth,
  caseTemperature,
  caseOverAir,
  insideAir,
  mainsPower,
  windingTemperature,
  windingOverAir,
} from '../facts.ts';
import type { PartEntry, SupplyBook } from '../schema.ts';
import { isOn, loadEntry, ofDriver, partOf, type SupplyContext } from './book.ts';
import { windingAt } from './chopper.ts';
import { cabinetRise, driverHeat, plainRise, servoCurrent, servoHeat, sunGain } from './cooling.ts';
import {
  crowding,
  heatIn,
  heatingCurrentOf,
  hottestCurrent,
  ironIn,
  ironOver,
  phaseCurrent,
  phasesOf,
} from './drive-facts.ts';
import { motorsAt, stateOf, voltsAt } from './layout.ts';
import { meanOver, regimesOf, type Regime } from './regimes.ts';
import { together } from './rail-facts.ts';
import { risesTogether, temperatureFrom, windingRise } from './warming.ts';
import { coldFromWarm, coldResistance } from './winding-cold.ts';

/** Where the straight line of copper ends, and no winding lasts. */
const TOO_HOT = constant(523.15, 'temperature', 'end of the straight line of copper, 250 °C');
const NO_HEAT = constant(0, 'power', 'it is off');
const CLOSED = 'temperature at which the loop of heat and resistance closes';

const airOf = ({ book }: SupplyContext): Value => {
  const { site, enclosure } = book;
  if (site?.ambient === undefined) throw new NotStated(['site.ambient']);
  if (enclosure?.rise === undefined) throw new NotStated(['enclosure.rise']);
  return temperatureFrom.work({ ambient: site.ambient, rise: enclosure.rise });
};

const riseOf = (context: SupplyContext): Value => {
  const { enclosure } = context.book;
  if (enclosure === undefined) throw new NotStated(['enclosure.surface']);
  const { transfer, surface } = need(enclosure, 'transfer', 'surface');
  const electrical = greatest(
    ...regimesOf(context.book).map((regime) =>
      meanOver(
        context.book,
        regime,
        regime.map((mode) => context.get(mainsPower, mode)),
      ),
    ),
  );
  const sun =
    enclosure.windows === undefined
      ? []
      : [
          sunGain.work({
            transmittance: need(enclosure, 'transmittance').transmittance,
            irradiance: need(enclosure, 'sun').sun,
            area: enclosure.windows,
          }),
        ];
  return cabinetRise.work({ power: together([electrical, ...sun]), transfer, surface });
};

export const stepperOf = ({ book }: SupplyContext, motor: string): Seen<PartEntry> => {
  const { part } = need(entry(book.motors, 'motors', motor, 'motors'), 'part');
  return partOf(book, part, `motors.${motor}.part`);
};

/** Resistance of a phase by how its halves are connected, in halves. A lone coil is its own half. */
const halves: Readonly<Record<string, number>> = { coil: 1, half: 1, series: 2, parallel: 0.5 };
const connected = (way: string | undefined, leads: number | undefined, path: string): number => {
  const found = halves[way ?? (leads === 4 ? 'coil' : '')];
  if (found === undefined) throw new NotStated([path]);
  return found;
};

/** Resistance of one winding as connected, at room temperature. */
export const coldOf = (context: SupplyContext, motor: string): Value => {
  const part = stepperOf(context, motor);
  const measured = part['phase-resistance'];
  // Motion reckons it, as connected and warm, from the rated current of a motor of that size.
  if (measured === undefined) {
    const warm = context.get(motorFacts.phaseResistance, motor);
    const temperature = entry(context.book.motors, 'motors', motor, 'motors')['winding-temperature'];
    return temperature === undefined ? warm : coldFromWarm.work({ warm, temperature });
  }
  const { winding, part: name } = entry(context.book.motors, 'motors', motor, 'motors');
  const used = connected(winding, part.leads, `motors.${motor}.winding`);
  const known = connected(part['measured-as'], part.leads, `parts.${name}.measured-as`);
  return used === known
    ? measured
    : coldResistance.work({ measured, ratio: constant(used / known, 'ratio', 'resistance of both connections') });
};

/** What warms a motor while a regime goes on: the mean of its modes in the case, the hottest of them in the winding. */
export interface Warming {
  /** Mean copper heat of both phases at a winding temperature. */
  readonly copper: (temperature: Value) => Value;
  /** Mean heat of copper, at that temperature, of iron and of drag. */
  readonly mean: (temperature: Value) => Value;
  /** Copper heat that has to leave the hottest phase. */
  readonly hot: (temperature: Value) => Value;
  /** Mean heat of iron and drag. */
  readonly iron: () => Value;
  readonly inside: Value;
  readonly outside: Value;
}

export const warmingOf = (context: SupplyContext, motor: string, regime: Regime): Warming => {
  const part = need(stepperOf(context, motor), 'winding-to-case', 'case-to-air');
  const cold = coldOf(context, motor);
  const rail = context.get(driveFacts.railVoltage, motor);
  const phases = phasesOf(context, motor);
  // What is the same in two modes is reckoned once: a winding is turned over often until it has settled.
  const states = regime.map((mode) => stateOf(context, motor, mode));
  const kinds = [...new Map(states.map((state, i) => [state, regime[i]!]))].map(([state, mode]) => ({
    state,
    current: phaseCurrent(context, motor, mode),
    crowded: crowding(context, motor, mode),
    iron: ironIn(context, motor, mode),
  }));
  const at = (temperature: Value): Value => windingAt.work({ cold, temperature });
  return {
    // Mode by mode, so that the shares of the time come in once.
    mean: (temperature) => {
      const resistance = at(temperature);
      const powers = new Map(
        kinds.map(({ state, current, iron }) => [state, together([heatIn(resistance, current, phases, rail), iron])]),
      );
      return meanOver(
        context.book,
        regime,
        states.map((state) => powers.get(state)!),
      );
    },
    copper: (temperature) => heatIn(at(temperature), heatingCurrentOf(context, motor, regime), phases, rail),
    hot: (temperature) => {
      const resistance = at(temperature);
      return greatest(...kinds.map(({ current, crowded }) => heatIn(resistance, current, crowded, rail)));
    },
    iron: () => ironOver(context, motor, regime),
    inside: part['winding-to-case'],
    outside: part['case-to-air'],
  };
};

/** How far above the air the winding settles while a regime goes on. */
const settledIn = (context: SupplyContext, motor: string, regime: Regime): Value => {
  const { mean, hot, inside, outside } = warmingOf(context, motor, regime);
  const air = context.get(insideAir, 'site');
  const riseAt = (temperature: Value): Value =>
    windingRise.work({ hot: hot(temperature), mean: mean(temperature), inside, outside });
  const next = (temperature: Value): Value => temperatureFrom.work({ ambient: air, rise: riseAt(temperature) });
  const closed = context.loop({
    name: `the temperature of the winding of ${motor}`,
    from: air,
    most: TOO_HOT,
    tolerance: 1e-6,
    next,
    rising: true,
    otherwise: `held at this current the winding of ${motor} runs away, or settles above 250 °C: it heats itself faster than it can cool`,
  });
  // Once more round at the closing value: the loop moves with every fact as its own turn does, so the slopes stay known.
  return riseAt(constant(closed.number, 'temperature', CLOSED));
};

/** Regimes in which a motor is on at all; the first of all where it never is. */
const heatingRegimes = (context: SupplyContext, motor: string): readonly Regime[] => {
  const all = regimesOf(context.book);
  const on = all.filter((regime) => regime.some((mode) => stateOf(context, motor, mode) !== 'off'));
  return on.length > 0 ? on : all.slice(0, 1);
};

const windingOf = (context: SupplyContext, motor: string): Value =>
  greatest(...heatingRegimes(context, motor).map((regime) => settledIn(context, motor, regime)));

const warmed = (context: SupplyContext, rise: Value): Value =>
  temperatureFrom.work({ ambient: context.get(insideAir, 'site'), rise });

/** How much warmer than the room something gets that is so much warmer than the air in the cabinet. */
export const overRoom = ({ book }: SupplyContext, rise: Value): Value =>
  book.enclosure?.rise === undefined ? rise : risesTogether.work({ rises: [book.enclosure.rise, rise] });

const caseOf = (context: SupplyContext, motor: string): Value => {
  const temperature = context.get(windingTemperature, motor);
  return greatest(
    ...heatingRegimes(context, motor).map((regime) => {
      const { mean, outside } = warmingOf(context, motor, regime);
      // The winding moves with every fact as this heat does, so that its number is enough and its facts come in once.
      const power = mean(constant(temperature.number, 'temperature', CLOSED));
      return plainRise.work({ power: settledWith(power, temperature), resistance: outside });
    }),
  );
};

/** The regime in which a motor has most to shed. */
export const hottestRegime = (context: SupplyContext, motor: string): Regime => {
  const air = context.get(insideAir, 'site');
  const regimes = heatingRegimes(context, motor).map((regime) => ({
    regime,
    heat: warmingOf(context, motor, regime).copper(air).number,
  }));
  return regimes.reduce((a, b) => (b.heat > a.heat ? b : a)).regime;
};

/** A temperature, and how far it lies above the air in the cabinet. */
export interface Warmed {
  readonly temperature: Value;
  readonly rise: Value;
}

/** Of the hottest part of a driver. */
export const driverTemperature = (context: SupplyContext, driver: string): Warmed => {
  const motors = motorsAt(context, driver);
  const [first] = motors;
  if (first === undefined) throw new NotStated(['motors']);
  const power = driverHeat.work({
    current: greatest(...motors.map((motor) => hottestCurrent(context, motor))),
    bridge: ofDriver(context.book, driver, 'bridge-resistance'),
    quiescent: ofDriver(context.book, driver, 'own-power'),
    phases: phasesOf(context, first),
  });
  const rise = plainRise.work({ power, resistance: ofDriver(context.book, driver, 'thermal-resistance') });
  return { temperature: warmed(context, rise), rise };
};

/** Of a servo while players queue, or standing by where it is on then. */
export const servoTemperature = (context: SupplyContext, name: string): Warmed => {
  const { book } = context;
  const load = loadEntry(book, name);
  const { rail, current, peak, stalled, ...rest } = need(
    load,
    'rail',
    'current',
    'peak',
    'stalled',
    'thermal-resistance',
  );
  const on = servoHeat.work({
    rail: voltsAt(context, rail),
    current: servoCurrent.work({ stalled, stall: peak, current }),
    stall: peak,
  });
  const power = greatest(
    ...regimesOf(book).map((regime) =>
      meanOver(
        book,
        regime,
        regime.map((mode) => (isOn(load, mode) ? on : NO_HEAT)),
      ),
    ),
  );
  const rise = plainRise.work({ power, resistance: rest['thermal-resistance'] });
  return { temperature: warmed(context, rise), rise };
};

const motorsIn = (book: SupplyContext['book']): readonly string[] => Object.keys(book.motors ?? {});

export const warmProviders: readonly Provider<SupplyBook>[] = [
  provide<SupplyBook, Value>(insideAir, airOf, () => ['site']),
  provide<SupplyBook, Value>(cabinetWarmth, riseOf, () => ['site']),
  provide<SupplyBook, Value>(windingOverAir, windingOf, motorsIn),
  provide<SupplyBook, Value>(caseOverAir, caseOf, motorsIn),
  provide<SupplyBook, Value>(
    windingTemperature,
    (context, motor) => warmed(context, context.get(windingOverAir, motor)),
    motorsIn,
  ),
  provide<SupplyBook, Value>(
    caseTemperature,
    (context, motor) => warmed(context, context.get(caseOverAir, motor)),
    motorsIn,
  ),
];
