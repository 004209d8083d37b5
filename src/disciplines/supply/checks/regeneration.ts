/** What comes back when axes brake or a load is lowered, and where it goes. */
import { onRail, voltsAt } from '../calc/layout.ts';
import { need, type Subject } from '../../../contract/index.ts';
import { atMost, greatest, least, type Outcome, type Shown, type Value } from '../../../kernel/index.ts';
import { clampOf, ofDriver, railsOf, supplyOf, type SupplyContext } from '../calc/book.ts';
import {
  axesOn,
  capacitorsOn,
  energyBack,
  energyOfLowering,
  liftedBy,
  movingTogether,
} from '../calc/regeneration-facts.ts';
import { capacitanceTogether } from '../calc/start.ts';
import { clampPower, energyTogether } from '../calc/stop.ts';

import { travelProfile } from '../../motion/facts.ts';
import { experience, nameIn, type SupplyCheck } from './common.ts';

type Book = SupplyContext['book'];

/** Whether gravity moves an axis. */
const isUpright = (book: Book, axis: string): boolean => {
  const { drive, incline } = (book.axes?.[axis] ?? {}) as { readonly drive?: string; readonly incline?: unknown };
  return drive === 'hoist' || incline !== undefined;
};

const gentler = (axes: readonly string[]) =>
  axes.map((axis) => ({ turn: `axes.${axis}.speed`, toward: 'lower' as const, means: `move ${axis} more slowly` }));

const lifts = (
  context: SupplyContext,
  rail: string,
  axes: readonly string[],
  energy: Value,
  says: (shown: Shown) => string,
): Outcome => {
  const { drivers } = onRail(context, rail);
  const bears = least(...drivers.map((driver) => ofDriver(context.book, driver, 'most-volts')));
  return atMost(liftedBy(context, rail, energy), bears, {
    says,
    advice: experience(0.9, 'capacitors lose a part of what is printed on them over the years'),
    levers: () => [
      ...gentler(axes),
      ...drivers.map((driver) => ({
        substitute: `drivers.${driver}.part`,
        kind: 'driver',
        means: `another driver for ${driver}`,
      })),
    ],
  });
};

/** Rails that feed axes. */
const rails =
  (wanted: (book: Book, axes: readonly string[]) => boolean): SupplyCheck['subjects'] =>
  (book) =>
    railsOf(book)
      .filter(([, rail]) => wanted(book, axesOn(book, rail)))
      .map(([supply, rail]): Subject => ({ designations: [rail], at: `supplies.${supply}.rails.${rail}` }));

export const railAfterBraking: SupplyCheck = {
  code: 'SUPPLY-050',
  asks: 'Do the drivers bear the voltage to which their rail is lifted when everything that moves together stops at once?',
  subjects: rails((_, axes) => axes.length > 0),
  run: (context, subject) => {
    const rail = nameIn(subject);
    const groups = movingTogether(context, rail);
    if (groups.length === 0) return null;
    const energies = groups.map((axes) =>
      energyTogether.work({ energies: axes.map((axis) => energyBack(context, axis)) }),
    );
    const energy = greatest(...energies);
    return lifts(
      context,
      rail,
      axesOn(context.book, rail),
      energy,
      ({ demand, limit }) =>
        `Everything that moves together on rail ${rail}, stopping at once from full speed, can lift it to ${demand}; its drivers bear ${limit}.`,
    );
  },
};

export const railWhileLowering: SupplyCheck = {
  code: 'SUPPLY-052',
  asks: 'Do the drivers bear the voltage to which a load that is lowered lifts their rail?',
  subjects: (book) =>
    Object.keys(book.axes ?? {})
      .filter((axis) => isUpright(book, axis))
      .flatMap((axis): Subject[] => {
        const rail = railsOf(book).find(([, own]) => axesOn(book, own).includes(axis));
        return rail ? [{ designations: [axis], at: `axes.${axis}` }] : [];
      }),
  run: (context, subject) => {
    const axis = nameIn(subject);
    const [, rail] = railsOf(context.book).find(([, own]) => axesOn(context.book, own).includes(axis)) ?? [];
    if (rail === undefined) return null;
    return lifts(
      context,
      rail,
      [axis],
      energyOfLowering(context, axis),
      ({ demand, limit }) =>
        `Lowering ${axis} over its whole travel can lift rail ${rail} to ${demand} where nothing else takes it; its drivers bear ${limit}.`,
    );
  },
};

/** Energy of one travel and the stop at its end, downhill where the axis is upright. */
const energyOfTravel = (context: SupplyContext, axis: string): Value =>
  isUpright(context.book, axis)
    ? energyTogether.work({ energies: [energyBack(context, axis), energyOfLowering(context, axis)] })
    : energyBack(context, axis);

export const clampHeat: SupplyCheck = {
  code: 'SUPPLY-055',
  asks: 'Does the clamp bear what it burns when everything that moves together goes to and fro without a rest?',
  subjects: (book) =>
    rails((_, axes) => axes.length > 0)(book).filter(
      (subject) => clampOf(book, supplyOf(book, nameIn(subject))) !== undefined,
    ),
  run: (context, subject) => {
    const rail = nameIn(subject);
    const { book } = context;
    const supply = supplyOf(book, rail);
    const clamp = clampOf(book, supply);
    const groups = movingTogether(context, rail);
    if (clamp === undefined || groups.length === 0) return null;
    const { volts, power } = need(clamp, 'volts', 'power');
    const burns = groups.map((axes) =>
      clampPower.work({
        energy: energyTogether.work({ energies: axes.map((axis) => energyOfTravel(context, axis)) }),
        capacitance: capacitanceTogether.work({ parts: capacitorsOn(context, rail) }),
        clamp: volts,
        rail: voltsAt(context, rail),
        every: least(...axes.map((axis) => context.get(travelProfile, axis).totalTime)),
      }),
    );
    return atMost(greatest(...burns), power, {
      says: ({ demand, limit }) =>
        `With everything on rail ${rail} going to and fro, the clamp of ${supply} burns ${demand}; it bears ${limit}.`,
      levers: () => gentler(axesOn(book, rail)),
    });
  },
};
