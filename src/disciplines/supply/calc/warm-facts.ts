/** How warm things get: the air in the cabinet, windings, cases, drivers, servos. */
import { entry, need, provide, type Provider, type Seen } from '../../../contract/index.ts';
import { constant, greatest, NotStated, type Value } from '../../../kernel/index.ts';
import { driveFacts } from '../../motion/facts.ts';
import { cabinetWarmth, caseTemperature, insideAir, mainsPower, windingTemperature } from '../facts.ts';
import type { PartEntry, SupplyBook } from '../schema.ts';
import { loadEntry, modesOf, motorsOn, ofDriver, partOf, voltsOf, type SupplyContext } from './book.ts';
import { windingHeat } from './chopper.ts';
import { cabinetRise, driverHeat, plainRise, servoCurrent, servoHeat, sunGain } from './cooling.ts';
import { hottestCurrent, hottestIron, phasesOf } from './drive-facts.ts';
import { together } from './rail-facts.ts';
import { temperatureFrom, windingRise } from './warming.ts';
import { coldResistance } from './winding-cold.ts';

/** Where the straight line of copper ends, and no winding lasts. */
const TOO_HOT = constant(523.15, 'temperature', 'end of the straight line of copper, 250 °C');
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
  const electrical = greatest(...modesOf(context.book).map((mode) => context.get(mainsPower, mode)));
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
  const measured = need(part, 'phase-resistance')['phase-resistance'];
  const { winding, part: name } = entry(context.book.motors, 'motors', motor, 'motors');
  const used = connected(winding, part.leads, `motors.${motor}.winding`);
  const known = connected(part['measured-as'], part.leads, `parts.${name}.measured-as`);
  return used === known
    ? measured
    : coldResistance.work({ measured, ratio: constant(used / known, 'ratio', 'resistance of both connections') });
};

/** What warms a motor in the mode that warms it most, as if that mode lasted for good. */
export const warmingOf = (context: SupplyContext, motor: string) => {
  const part = need(stepperOf(context, motor), 'winding-to-case', 'case-to-air');
  return {
    current: hottestCurrent(context, motor),
    cold: coldOf(context, motor),
    phases: phasesOf(context, motor),
    rail: context.get(driveFacts.railVoltage, motor),
    iron: hottestIron(context, motor),
    inside: part['winding-to-case'],
    outside: part['case-to-air'],
  };
};

const windingOf = (context: SupplyContext, motor: string): Value => {
  const { iron, inside, outside, ...copper } = warmingOf(context, motor);
  const air = context.get(insideAir, 'site');
  const next = (temperature: Value): Value =>
    temperatureFrom.work({
      ambient: air,
      rise: windingRise.work({ copper: windingHeat.work({ ...copper, temperature }), iron, inside, outside }),
    });
  const closed = context.loop({
    name: `the temperature of the winding of ${motor}`,
    from: air,
    most: TOO_HOT,
    tolerance: 1e-6,
    next,
    otherwise: `held at this current the winding of ${motor} runs away, or settles above 250 °C: it heats itself faster than it can cool`,
  });
  // Once more round at the closing value: the loop moves with every fact as its own turn does, so the slopes stay known.
  return next(constant(closed.number, 'temperature', CLOSED));
};

const caseOf = (context: SupplyContext, motor: string): Value => {
  const { current, cold, phases, rail, iron, outside } = warmingOf(context, motor);
  const temperature = context.get(windingTemperature, motor);
  const copper = windingHeat.work({ current, cold, phases, rail, temperature });
  return temperatureFrom.work({
    ambient: context.get(insideAir, 'site'),
    rise: plainRise.work({ power: together([copper, iron]), resistance: outside }),
  });
};

/** Temperature of the hottest part of a driver. */
export const driverTemperature = (context: SupplyContext, driver: string): Value => {
  const motors = motorsOn(context.book, driver);
  const [first] = motors;
  if (first === undefined) throw new NotStated(['motors']);
  const power = driverHeat.work({
    current: greatest(...motors.map((motor) => hottestCurrent(context, motor))),
    bridge: ofDriver(context.book, driver, 'bridge-resistance'),
    quiescent: ofDriver(context.book, driver, 'own-power'),
    phases: phasesOf(context, first),
  });
  return temperatureFrom.work({
    ambient: context.get(insideAir, 'site'),
    rise: plainRise.work({ power, resistance: ofDriver(context.book, driver, 'thermal-resistance') }),
  });
};

/** Temperature of a servo that plays all day. */
export const servoTemperature = (context: SupplyContext, name: string): Value => {
  const { rail, current, peak, stalled, ...rest } = need(
    loadEntry(context.book, name),
    'rail',
    'current',
    'peak',
    'stalled',
    'thermal-resistance',
  );
  const power = servoHeat.work({
    rail: voltsOf(context.book, rail),
    current: servoCurrent.work({ stalled, stall: peak, current }),
    stall: peak,
  });
  return temperatureFrom.work({
    ambient: context.get(insideAir, 'site'),
    rise: plainRise.work({ power, resistance: rest['thermal-resistance'] }),
  });
};

const motorsIn = (book: SupplyContext['book']): readonly string[] => Object.keys(book.motors ?? {});

export const warmProviders: readonly Provider<SupplyBook>[] = [
  provide<SupplyBook, Value>(insideAir, airOf, () => ['site']),
  provide<SupplyBook, Value>(cabinetWarmth, riseOf, () => ['site']),
  provide<SupplyBook, Value>(windingTemperature, windingOf, motorsIn),
  provide<SupplyBook, Value>(caseTemperature, caseOf, motorsIn),
];
