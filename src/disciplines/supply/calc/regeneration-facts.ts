/** Capacitors of a rail, what starts with it, and what comes back to it when an axis brakes. */
import { entry, need } from '../../../contract/index.ts';
import type { Value } from '../../../kernel/index.ts';
import { driveFacts, motorFacts, reflectedInertia, staticTorque, travelProfile } from '../../motion/facts.ts';
import { driverEntry, driverOf, ofDriver, ofSupply, supplyOf, type SupplyContext } from './book.ts';
import { phaseHeat } from './chopper.ts';
import { energyOver } from './energy.ts';
import { fullSpeed, phasesOf } from './drive-facts.ts';
import { amperesTogether, hanging, onRail, together } from './rail-facts.ts';
import { brakingEnergy, energyTogether, loweringPower, rampTime } from './stop.ts';

/** Every capacitor that hangs on a rail, as far as it is known. */
export const capacitorsHangingOn = (context: SupplyContext, rail: string): readonly Value[] => {
  const { book } = context;
  const { drivers, loads } = onRail(context, rail);
  return [
    ...drivers.map((name) => ofDriver(book, name, 'capacitance')),
    ...loads.flatMap((name) => book.loads?.[name]?.capacitance ?? []),
  ];
};

/** The same, and the capacitor of the supply itself. */
export const capacitorsOn = (context: SupplyContext, rail: string): readonly Value[] => [
  ofSupply(context.book, supplyOf(context.book, rail), 'output-capacitance'),
  ...capacitorsHangingOn(context, rail),
];

/** What the loads of a rail take as it comes up; drives wait for their first step. */
export const startingOn = (context: SupplyContext, rail: string): Value => {
  const { loads } = onRail(context, rail);
  const { currents } = hanging(context, { drivers: [], loads, converters: [] }, '', 'steady');
  return amperesTogether(currents);
};

const motorsOf = ({ book }: SupplyContext, axis: string): readonly string[] =>
  need(entry(book.axes, 'axes', axis, 'axes'), 'motors').motors;

/** Rail that feeds the drives of an axis; the first motor's, where they differ. */
export const railOfAxis = (context: SupplyContext, axis: string): string => {
  const [motor = ''] = motorsOf(context, axis);
  return need(driverEntry(context.book, driverOf(context.book, motor)), 'rail').rail;
};

export const driversOfAxis = (context: SupplyContext, axis: string): readonly string[] => [
  ...new Set(motorsOf(context, axis).map((motor) => driverOf(context.book, motor))),
];

/** Copper and cable at the set current. */
const lossesOf = (context: SupplyContext, motor: string): Value => {
  const current = context.get(driveFacts.peakCurrent, motor);
  const phases = phasesOf(context, motor);
  return together([
    phaseHeat.work({ current, resistance: context.get(motorFacts.phaseResistance, motor), phases }),
    phaseHeat.work({ current, resistance: context.get(driveFacts.loopResistance, motor), phases }),
  ]);
};

/** Energy that all motors of an axis give back when it stops from full speed. */
export const energyBack = (context: SupplyContext, axis: string): Value => {
  const { speed, acceleration } = context.get(travelProfile, axis);
  const energies = motorsOf(context, axis).map((motor) => {
    return brakingEnergy.work({
      load: context.get(reflectedInertia, axis),
      rotor: context.get(motorFacts.rotorInertia, motor),
      speed: fullSpeed(context, motor),
      losses: lossesOf(context, motor),
      time: rampTime.work({ speed, acceleration }),
    });
  });
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
