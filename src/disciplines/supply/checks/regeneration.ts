/** What comes back when an axis brakes, and where it goes. */
import { need, type Subject } from '../../../contract/index.ts';
import { atMost, least, type Outcome, type Shown, type Value } from '../../../kernel/index.ts';
import { clampOf, ofDriver, voltsOf, type SupplyContext } from '../calc/book.ts';
import { capacitorsOn, driversOfAxis, energyBack, energyOfLowering, railOfAxis } from '../calc/regeneration-facts.ts';
import { capacitanceTogether } from '../calc/start.ts';
import { clampPower, voltageAfterBraking } from '../calc/stop.ts';
import { onRail } from '../calc/rail-facts.ts';
import { travelProfile } from '../../motion/facts.ts';
import { each, experience, nameIn, type SupplyCheck } from './common.ts';

/** Whether gravity moves an axis. */
const isUpright = (axis: object | undefined): boolean => {
  const { drive, incline } = (axis ?? {}) as { readonly drive?: string; readonly incline?: unknown };
  return drive === 'hoist' || incline !== undefined;
};

const gentler = (axis: string) => [
  { turn: `axes.${axis}.speed`, toward: 'lower' as const, means: `move ${axis} more slowly` },
];

const lifts = (
  context: SupplyContext,
  axis: string,
  energy: Value,
  says: (shown: Shown, rail: string) => string,
): Outcome => {
  const rail = railOfAxis(context, axis);
  const bears = least(...onRail(context, rail).drivers.map((driver) => ofDriver(context.book, driver, 'most-volts')));
  const lifted = voltageAfterBraking.work({
    rail: voltsOf(context.book, rail),
    energy,
    capacitance: capacitanceTogether.work({ parts: capacitorsOn(context, rail) }),
  });
  return atMost(lifted, bears, {
    says: (shown) => says(shown, rail),
    advice: experience(0.9, 'capacitors lose a part of what is printed on them over the years'),
    levers: [
      ...gentler(axis),
      ...driversOfAxis(context, axis).map((driver) => ({
        substitute: `drivers.${driver}.part`,
        kind: 'driver',
        means: `another driver for ${driver}`,
      })),
    ],
  });
};

export const railAfterBraking: SupplyCheck = {
  code: 'SUPPLY-050',
  asks: 'Do the drivers bear the voltage to which a braked axis lifts their rail?',
  subjects: each('axes'),
  run: (context, subject) => {
    const axis = nameIn(subject);
    return lifts(
      context,
      axis,
      energyBack(context, axis),
      ({ demand, limit }, rail) =>
        `Stopping ${axis} from full speed can lift rail ${rail} to ${demand}; its drivers bear ${limit}.`,
    );
  },
};

export const railWhileLowering: SupplyCheck = {
  code: 'SUPPLY-052',
  asks: 'Do the drivers bear the voltage to which a load that is lowered lifts their rail?',
  subjects: (book) => each('axes')(book).filter((subject) => isUpright(book.axes?.[nameIn(subject)])),
  run: (context, subject) => {
    const axis = nameIn(subject);
    return lifts(
      context,
      axis,
      energyOfLowering(context, axis),
      ({ demand, limit }, rail) =>
        `Lowering ${axis} over its whole travel can lift rail ${rail} to ${demand} where nothing else takes it; its drivers bear ${limit}.`,
    );
  },
};

/** Axes whose rail has a clamp. */
const clamped: SupplyCheck['subjects'] = (book) => {
  const rails = Object.entries(book.supplies ?? {})
    .filter(([name]) => clampOf(book, name) !== undefined)
    .flatMap(([name, { rails: own }]) => Object.keys(own ?? {}).map((rail) => ({ name, rail })));
  return Object.entries(book.axes ?? {}).flatMap(([axis, { motors = [] }]): Subject[] => {
    const driver = book.motors?.[motors[0] ?? '']?.driver;
    const rail = driver === undefined ? undefined : book.drivers?.[driver]?.rail;
    const supply = rails.find((one) => one.rail === rail);
    return supply ? [{ designations: [supply.name, axis], at: `supplies.${supply.name}` }] : [];
  });
};

export const clampHeat: SupplyCheck = {
  code: 'SUPPLY-055',
  asks: 'Does the clamp bear what it burns when an axis goes to and fro without a rest?',
  subjects: clamped,
  run: (context, { designations: [supply = '', axis = ''] }) => {
    const clamp = clampOf(context.book, supply);
    if (clamp === undefined) return null;
    const { volts, power } = need(clamp, 'volts', 'power');
    const rail = railOfAxis(context, axis);
    const burns = clampPower.work({
      energy: energyBack(context, axis),
      capacitance: capacitanceTogether.work({ parts: capacitorsOn(context, rail) }),
      clamp: volts,
      rail: voltsOf(context.book, rail),
      every: context.get(travelProfile, axis).totalTime,
    });
    return atMost(burns, power, {
      says: ({ demand, limit }) =>
        `Going to and fro, ${axis} makes the clamp of ${supply} burn ${demand}; it bears ${limit}.`,
      levers: gentler(axis),
    });
  },
};
