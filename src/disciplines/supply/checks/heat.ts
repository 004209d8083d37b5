/** How warm motors, drivers and servos get, and what bears it. */
import { motorsAt, voltsAt } from '../calc/layout.ts';
import { entry, need } from '../../../contract/index.ts';
import { atMost, type Lever, type Value } from '../../../kernel/index.ts';
import { driverOf, loadEntry, modesOf, motorsOn, ofDriver, type SupplyContext } from '../calc/book.ts';
import { phaseCurrent } from '../calc/drive-facts.ts';
import { chopperRipple, meanCurrent } from '../calc/chopper.ts';
import {
  driverTemperature,
  hottestRegime,
  overRoom,
  servoTemperature,
  stepperOf,
  warmingOf,
} from '../calc/warm-facts.ts';
import { coefficientAt, runaway } from '../calc/warming.ts';
import { classLimits, mountLimits, touchLimit } from '../data/insulation.ts';
import {
  caseTemperature,
  caseOverAir,
  drivePower,
  inMode,
  insideAir,
  windingTemperature,
  windingOverAir,
} from '../facts.ts';
import { greatest } from '../../../kernel/index.ts';
import { driverEntry } from '../calc/book.ts';
import { drivesLess, each, experience, nameIn, type SupplyCheck } from './common.ts';

const spare = experience(0.8, 'thermal resistances are rarely known to a tenth');

/** Percentages of a temperature are of the rise above the air of the room; `rise` is that above the air in the cabinet. */
const aboveRoom = (context: SupplyContext, rise: Value): { readonly base?: Value; readonly above?: Value } => {
  const { ambient } = context.book.site ?? {};
  return ambient === undefined ? {} : { base: ambient, above: overRoom(context, rise) };
};

const cooler = ({ book }: SupplyContext, motor: string): readonly Lever[] => {
  const driver = driverOf(book, motor);
  return [
    { turn: `drivers.${driver}.current`, toward: 'lower', means: `set ${driver} to less current` },
    {
      turn: `drivers.${driver}.standstill-current`,
      toward: 'lower',
      means: `keep less current at rest on ${driver}`,
    },
    { substitute: `motors.${motor}.part`, kind: 'stepper', means: `another motor for ${motor}` },
  ];
};

export const windingWarmth: SupplyCheck = {
  code: 'SUPPLY-060',
  asks: 'Does the winding stay within its insulation class, and settle at all?',
  subjects: each('motors'),
  run: (context, subject) => {
    const motor = nameIn(subject);
    const letter = need(stepperOf(context, motor), 'insulation-class')['insulation-class'];
    const limit = classLimits[letter];
    const temperature = context.get(windingTemperature, motor);
    return atMost(temperature, limit, {
      says: ({ demand, limit: most }) =>
        `The winding of ${motor} settles at ${demand}, with players queueing or standing by for nights, whichever is hotter; its class ${letter} bears ${most}.`,
      ...aboveRoom(context, context.get(windingOverAir, motor)),
      advice: spare,
      beside: () => {
        const air = context.get(insideAir, 'site');
        const { copper, hot, inside, outside } = warmingOf(context, motor, hottestRegime(context, motor));
        const coefficient = coefficientAt.work({ ambient: air });
        return {
          'share of running away': runaway.work({ hot: hot(air), cold: copper(air), inside, outside, coefficient }),
        };
      },
      levers: () => cooler(context, motor),
    });
  },
};

export const caseTouched: SupplyCheck = {
  code: 'SUPPLY-070',
  asks: 'Is a case that a hand can reach cool enough to be touched?',
  subjects: (book) => each('motors')(book).filter((subject) => book.motors?.[nameIn(subject)]?.touchable !== false),
  neverAccepted: true,
  run: (context, subject) => {
    const motor = nameIn(subject);
    if (!need(entry(context.book.motors, 'motors', motor, 'motors'), 'touchable').touchable) return null;
    return atMost(context.get(caseTemperature, motor), touchLimit, {
      says: ({ demand, limit }) =>
        `The case of ${motor} gets ${demand} and a hand can reach it; ${limit} can be touched.`,
      ...aboveRoom(context, context.get(caseOverAir, motor)),
      advice: spare,
      levers: () => [
        ...cooler(context, motor),
        {
          set: [{ path: `motors.${motor}.touchable`, text: 'false' }],
          means: `guard ${motor} so that no hand reaches it`,
        },
      ],
    });
  },
};

export const caseOnMount: SupplyCheck = {
  code: 'SUPPLY-075',
  asks: 'Does what a motor is bolted to bear its warmth?',
  subjects: (book) => each('motors')(book).filter((subject) => book.motors?.[nameIn(subject)]?.mount !== 'metal'),
  run: (context, subject) => {
    const motor = nameIn(subject);
    const { mount } = need(entry(context.book.motors, 'motors', motor, 'motors'), 'mount');
    const limit = mountLimits[mount];
    if (limit === undefined) return null;
    return atMost(context.get(caseTemperature, motor), limit, {
      says: ({ demand, limit: most }) =>
        `The case of ${motor} gets ${demand} and sits on ${mount}, which gives way at ${most}.`,
      ...aboveRoom(context, context.get(caseOverAir, motor)),
      advice: experience(0.7, 'plastic and wood creep under load long before they soften'),
      levers: () => [
        ...cooler(context, motor),
        { set: [{ path: `motors.${motor}.mount`, text: 'metal' }], means: `bolt ${motor} to metal` },
      ],
    });
  },
};

export const driverWarmth: SupplyCheck = {
  code: 'SUPPLY-080',
  asks: 'Does the driver stay cool enough?',
  subjects: (book) => each('drivers')(book).filter((subject) => motorsOn(book, nameIn(subject)).length > 0),
  run: (context, subject) => {
    const driver = nameIn(subject);
    const { temperature, rise } = driverTemperature(context, driver);
    return atMost(temperature, ofDriver(context.book, driver, 'most-temperature'), {
      says: ({ demand, limit }) =>
        `The hottest part of ${driver} gets ${demand} in its hottest mode; it bears ${limit}. Hotter, it lowers its current or stops, and lets go what it holds.`,
      ...aboveRoom(context, rise),
      advice: spare,
      levers: () => [
        ...drivesLess([driver]),
        { substitute: `drivers.${driver}.part`, kind: 'driver', means: `another driver for ${driver}` },
      ],
    });
  },
};

export const servoWarmth: SupplyCheck = {
  code: 'SUPPLY-085',
  asks: 'Does a servo stay cool enough while players queue?',
  subjects: (book) => each('loads')(book).filter((subject) => book.loads?.[nameIn(subject)]?.stalled !== undefined),
  run: (context, subject) => {
    const name = nameIn(subject);
    const limit = need(loadEntry(context.book, name), 'most-temperature')['most-temperature'];
    const { temperature, rise } = servoTemperature(context, name);
    return atMost(temperature, limit, {
      says: ({ demand, limit: most }) => `${name} gets ${demand} while players queue; it bears ${most}.`,
      ...aboveRoom(context, rise),
      advice: spare,
      levers: () => [
        { turn: `loads.${name}.stalled`, toward: 'lower', means: `let ${name} stall for less of the time` },
      ],
    });
  },
};

export const driverRipple: SupplyCheck = {
  code: 'SUPPLY-190',
  asks: 'Does the capacitor at the driver bear the ripple of its chopper?',
  subjects: (book) => each('drivers')(book).filter((subject) => motorsOn(book, nameIn(subject)).length > 0),
  run: (context, subject) => {
    const driver = nameIn(subject);
    const { book } = context;
    const rail = voltsAt(context, need(driverEntry(book, driver), 'rail').rail);
    const ripples = motorsAt(context, driver).flatMap((motor) =>
      modesOf(book).flatMap((mode) => {
        const current = phaseCurrent(context, motor, mode);
        const power = context.get(drivePower, inMode(motor, mode));
        return current.number > 0
          ? [chopperRipple.work({ peak: current, mean: meanCurrent.work({ power, rail }) })]
          : [];
      }),
    );
    if (ripples.length === 0) return null;
    return atMost(greatest(...ripples), ofDriver(book, driver, 'ripple-current'), {
      says: ({ demand, limit }) =>
        `Chopping, ${driver} draws ${demand} of ripple from its capacitor, which bears ${limit}.`,
      advice: experience(0.8, 'fast decay draws more than is reckoned here'),
      levers: () => [
        ...drivesLess([driver]),
        { substitute: `drivers.${driver}.part`, kind: 'driver', means: `another driver for ${driver}` },
      ],
    });
  },
};
