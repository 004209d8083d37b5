/** Capacitors of a rail, what starts with it, and what comes back to it when an axis brakes. */
import { onRail, stateOf, voltsAt } from './layout.ts';
import { energyGivenBack, movingGroups, type Members } from '../facts.ts';
import { entry, need, provide, type Provider } from '../../../contract/index.ts';
import type { Value } from '../../../kernel/index.ts';
import { driveFacts, motorFacts, reflectedInertia, staticTorque, travelProfile } from '../../motion/facts.ts';
import {
  clampOf,
  isIdle,
  isOn,
  loadEntry,
  modesOf,
  ofDriver,
  ofSupply,
  refuseRing,
  supplyEntry,
  supplyOf,
  type SupplyContext,
} from './book.ts';
import type { SupplyBook } from '../schema.ts';
import { meanCurrent, phaseHeat } from './chopper.ts';
import { energyOver } from './energy.ts';
import { fullSpeed, phasesOf } from './drive-facts.ts';
import { inputPower, loadPower } from './loads.ts';
import { amperesTogether, hanging, together } from './rail-facts.ts';
import { capacitanceTogether } from './start.ts';
import { brakingEnergy, clampedVoltage, energyTogether, loweringPower, rampTime, voltageAfterBraking } from './stop.ts';

/** Capacitors at the inputs of drivers, loads and converters, as far as they are known. */
export const capacitorsOf = ({ book }: SupplyContext, { drivers, loads, converters }: Members): readonly Value[] => [
  ...drivers.map((name) => ofDriver(book, name, 'capacitance')),
  ...loads.flatMap((name) => book.loads?.[name]?.capacitance ?? []),
  ...converters.map((name) => ofSupply(book, name, 'input-capacitance')),
];

/** Every capacitor that hangs on a rail, as far as it is known. */
export const capacitorsHangingOn = (context: SupplyContext, rail: string): readonly Value[] =>
  capacitorsOf(context, onRail(context, rail));

/** The same, and the capacitor of the supply itself. */
export const capacitorsOn = (context: SupplyContext, rail: string): readonly Value[] => [
  ofSupply(context.book, supplyOf(context.book, rail), 'output-capacitance'),
  ...capacitorsHangingOn(context, rail),
];

/** Whether a load is on as its rail comes up: the machine wakes up standing by, where it knows such a mode. */
const wakesUp = ({ book }: SupplyContext, name: string): boolean => {
  const idle = modesOf(book).filter((mode) => isIdle(book, mode));
  const load = loadEntry(book, name);
  return idle.length === 0 || idle.some((mode) => isOn(load, mode));
};

/** What loads and converters take as their rail comes up, starting all at once; drives wait for their first step. */
export const startingOn = (context: SupplyContext, rail: string): Value => {
  const { book } = context;
  refuseRing(book, rail);
  const { loads, converters } = onRail(context, rail);
  const volts = voltsAt(context, rail);
  const on = loads.filter((name) => wakesUp(context, name));
  const { powers, currents } = hanging(context, { drivers: [], loads: on, converters: [] }, '', 'peak');
  const behind = converters.map((name) =>
    inputPower.work({
      output: together(
        Object.keys(supplyEntry(book, name).rails ?? {}).map((own) =>
          loadPower.work({ rail: voltsAt(context, own), current: startingOn(context, own) }),
        ),
      ),
      efficiency: ofSupply(book, name, 'efficiency'),
      idle: ofSupply(book, name, 'no-load'),
    }),
  );
  const drawn = [...powers, ...behind].map((power) => meanCurrent.work({ power, rail: volts }));
  return amperesTogether([...drawn, ...currents]);
};

const motorsOf = ({ book }: SupplyContext, axis: string): readonly string[] =>
  need(entry(book.axes, 'axes', axis, 'axes'), 'motors').motors;

/** Rail that feeds the drives of an axis; the first motor's, where they differ. Nothing where none is stated. */
export const railOfAxis = (book: SupplyContext['book'], axis: string): string | undefined => {
  const driver = book.motors?.[book.axes?.[axis]?.motors?.[0] ?? '']?.driver;
  return driver === undefined ? undefined : book.drivers?.[driver]?.rail;
};

/** Axes whose drives a rail feeds. */
export const axesOn = (book: SupplyContext['book'], rail: string): readonly string[] =>
  Object.keys(book.axes ?? {}).filter((axis) => railOfAxis(book, axis) === rail);

/** Copper and cable at the set current. */
const lossesOf = (context: SupplyContext, motor: string): Value => {
  const current = context.get(driveFacts.peakCurrent, motor);
  const phases = phasesOf(context, motor);
  return together([
    phaseHeat.work({ current, resistance: context.get(motorFacts.phaseResistance, motor), phases }),
    phaseHeat.work({ current, resistance: context.get(driveFacts.loopResistance, motor), phases }),
  ]);
};

/** Energy that all motors of an axis give back when it stops from full speed, downhill where it is upright. */
export const energyBack = (context: Pick<SupplyContext, 'get'>, axis: string): Value =>
  context.get(energyGivenBack, axis);

const energyOf = (context: SupplyContext, axis: string): Value => {
  const { speed, acceleration } = context.get(travelProfile, axis);
  const energies = motorsOf(context, axis).map((motor) =>
    brakingEnergy.work({
      load: context.get(reflectedInertia, axis),
      rotor: context.get(motorFacts.rotorInertia, motor),
      gravity: context.get(staticTorque, axis),
      speed: fullSpeed(context, motor),
      losses: lossesOf(context, motor),
      time: rampTime.work({ speed, acceleration }),
    }),
  );
  return energyTogether.work({ energies });
};

/** Energy that all motors of an axis give back while its load is lowered over the whole travel. */
export const energyOfLowering = (context: SupplyContext, axis: string): Value => {
  const { totalTime } = context.get(travelProfile, axis);
  const energies = motorsOf(context, axis).map((motor) =>
    energyOver.work({
      power: loweringPower.work({
        torque: context.get(staticTorque, axis),
        speed: fullSpeed(context, motor),
        losses: lossesOf(context, motor),
      }),
      time: totalTime,
    }),
  );
  return energyTogether.work({ energies });
};

/** Axes on a rail that move at the same time, by mode. Nothing where none of them moves. */
export const movingTogether = (context: Pick<SupplyContext, 'get'>, rail: string): readonly (readonly string[])[] =>
  context.get(movingGroups, rail);

const groupsOn = (context: SupplyContext, rail: string): readonly (readonly string[])[] => {
  const { book } = context;
  return modesOf(book)
    .filter((mode) => !isIdle(book, mode))
    .map((mode) =>
      axesOn(book, rail).filter((axis) =>
        motorsOf(context, axis).some((motor) => stateOf(context, motor, mode) === 'moving'),
      ),
    )
    .filter((axes) => axes.length > 0);
};

/** Voltage to which energy lifts a rail; a clamp of its supply holds it down. */
export const liftedBy = (context: SupplyContext, rail: string, energy: Value): Value => {
  const { book } = context;
  const volts = voltsAt(context, rail);
  const lifted = voltageAfterBraking.work({
    rail: volts,
    energy,
    capacitance: capacitanceTogether.work({ parts: capacitorsOn(context, rail) }),
  });
  const clamp = clampOf(book, supplyOf(book, rail));
  return clamp === undefined ? lifted : clampedVoltage.work({ lifted, clamp: need(clamp, 'volts').volts, rail: volts });
};

export const regenerationProviders: readonly Provider<SupplyBook>[] = [
  provide<SupplyBook, readonly (readonly string[])[]>(movingGroups, groupsOn),
  provide<SupplyBook, Value>(energyGivenBack, energyOf),
];
