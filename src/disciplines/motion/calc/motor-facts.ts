/** The facts of motors and of what feeds them, worked out from the book. */
import { entry, need, pathOf, provide, type Context, type Provider, type Seen } from '../../../contract/index.ts';
import { constant, given, NotStated, type Value } from '../../../kernel/index.ts';
import { ratioBetween, type Winding } from '../data/windings.ts';
import { capacity, driveFacts, motorFacts, type Capacity, type DriveFacts, type MotorFacts } from '../facts.ts';
import type { DriverEntry, MotionBook, MotorEntry, PartEntry } from '../schema.ts';
import { addedResistance, bridgeVoltage, peakCurrent, phaseLoopResistance, squareWaveAmplitude } from './drive.ts';
import { pullOut, shaftTorque } from './pull-out.ts';
import { inductanceFromTime, ratedFromHeat, resistanceFromHeat } from './rating.ts';
import {
  fluxLinkageOf,
  rotorTeethOf,
  torqueConstantOf,
  warmResistance,
  windingCurrent,
  windingInductance,
  windingResistance,
  windingTorqueConstant,
} from './winding.ts';

type MotionContext = Context<MotionBook>;
type Getter = Pick<MotionContext, 'get'>;

const FIFTY = constant(50, 'count', 'rotor teeth of a motor with 1.8° steps');
const RMS = constant(Math.SQRT2, 'ratio', 'peak of a sinusoid over its RMS');
const PEAK = constant(1, 'ratio', 'the marking counts the peak');
const NO_BRIDGE_DROP = constant(0, 'voltage', 'field-effect transistors have no fixed drop');

/** The facts of a motor, each asked for when it is read, so that a question uses only what it asks. */
export const motorOf = ({ get }: Getter, key: string): MotorFacts => ({
  get holdingTorque() {
    return get(motorFacts.holdingTorque, key);
  },
  get ratedCurrent() {
    return get(motorFacts.ratedCurrent, key);
  },
  get phaseResistance() {
    return get(motorFacts.phaseResistance, key);
  },
  get phaseInductance() {
    return get(motorFacts.phaseInductance, key);
  },
  get rotorInertia() {
    return get(motorFacts.rotorInertia, key);
  },
  get detentTorque() {
    return get(motorFacts.detentTorque, key);
  },
  get ironDrag() {
    return get(motorFacts.ironDrag, key);
  },
  get ringing() {
    return get(motorFacts.ringing, key);
  },
  get teeth() {
    return get(motorFacts.teeth, key);
  },
  get torqueConstant() {
    return get(motorFacts.torqueConstant, key);
  },
  get fluxLinkage() {
    return get(motorFacts.fluxLinkage, key);
  },
});

/** The facts of what feeds a motor, each asked for when it is read. */
export const driveOf = ({ get }: Getter, key: string): DriveFacts => ({
  get peakCurrent() {
    return get(driveFacts.peakCurrent, key);
  },
  get railVoltage() {
    return get(driveFacts.railVoltage, key);
  },
  get loopResistance() {
    return get(driveFacts.loopResistance, key);
  },
  get microsteps() {
    return get(driveFacts.microsteps, key);
  },
});

export const motorEntry = ({ book }: MotionContext, name: string): Seen<MotorEntry> =>
  entry(book.motors, 'motors', name, 'motors');

export const stepperOf = (context: MotionContext, name: string): Seen<PartEntry> =>
  entry(context.book.parts, 'parts', motorEntry(context, name).part, `motors.${name}.part`);

/** The driver of a motor, with its name. */
export const driverNameOf = (context: MotionContext, name: string): string =>
  need(motorEntry(context, name), 'driver').driver;

export const driverEntry = ({ book }: MotionContext, name: string): Seen<DriverEntry> =>
  entry(book.drivers, 'drivers', name, 'drivers');

export const driverPart = (context: MotionContext, name: string): Seen<PartEntry> | undefined => {
  const { part } = driverEntry(context, name);
  return part === undefined ? undefined : entry(context.book.parts, 'parts', part, `drivers.${name}.part`);
};

/** The part that a driver is, for what only its data sheet tells; NotStated without one. */
export const statedDriverPart = (context: MotionContext, name: string): Seen<PartEntry> =>
  entry(context.book.parts, 'parts', driverEntry(context, name).part, `drivers.${name}.part`);

/** How the winding is connected; a motor with four leads has one way only. */
const connectionOf = (
  of: Seen<MotorEntry> | Seen<PartEntry>,
  key: 'winding' | 'measured-as',
  leads: number | undefined,
) => {
  const said = (of as Readonly<Record<string, Winding | undefined>>)[key];
  if (said !== undefined) return said;
  if (leads === 4) return 'coil';
  throw new NotStated([`${pathOf(of)}.${key}`]);
};

interface Ratio {
  readonly turns: Value;
  readonly copper: Value;
}

/** From the connection that was measured to the one that is used; nothing when they are the same. */
const ratioOf = (context: MotionContext, name: string): Ratio | undefined => {
  const part = stepperOf(context, name);
  const used = connectionOf(motorEntry(context, name), 'winding', part.leads);
  const measured = connectionOf(part, 'measured-as', part.leads);
  const { turns, copper } = ratioBetween(measured, used);
  if (turns === 1 && copper === 1) return undefined;
  const means = `${used} against ${measured}`;
  return {
    turns: constant(turns, 'ratio', `turns in series, ${means}`),
    copper: constant(copper, 'ratio', `resistance, ${means}`),
  };
};

/** As printed; without a plate, what a motor of its size bears in its copper. */
const ratedAsMeasured = (part: Seen<PartEntry>): Value => {
  const rated = part['rated-current'];
  if (rated !== undefined) return rated;
  const { 'rated-heat': heat, 'phase-resistance': resistance } = part;
  if (heat === undefined || resistance === undefined) throw new NotStated([`${pathOf(part)}.rated-current`]);
  return ratedFromHeat.work({ heat, resistance });
};

const resistanceAsMeasured = (part: Seen<PartEntry>): Value => {
  const resistance = part['phase-resistance'];
  if (resistance !== undefined) return resistance;
  const { 'rated-heat': heat, 'rated-current': rated } = part;
  if (heat === undefined || rated === undefined) throw new NotStated([`${pathOf(part)}.phase-resistance`]);
  return resistanceFromHeat.work({ heat, rated });
};

const inductanceAsMeasured = (part: Seen<PartEntry>): Value => {
  const { 'electrical-time': time, 'phase-inductance': inductance } = part;
  if (inductance !== undefined || time === undefined) return need(part, 'phase-inductance')['phase-inductance'];
  return inductanceFromTime.work({ time, resistance: resistanceAsMeasured(part) });
};

const torqueConstant = (context: MotionContext, name: string): Value => {
  const part = stepperOf(context, name);
  const { 'holding-torque': holding } = need(part, 'holding-torque');
  const measured = torqueConstantOf.work({ holding, rated: ratedAsMeasured(part) });
  const ratio = ratioOf(context, name);
  return ratio ? windingTorqueConstant.work({ measured, turns: ratio.turns }) : measured;
};

const ratedCurrent = (context: MotionContext, name: string): Value => {
  const measured = ratedAsMeasured(stepperOf(context, name));
  const ratio = ratioOf(context, name);
  return ratio ? windingCurrent.work({ measured, copper: ratio.copper }) : measured;
};

const phaseResistance = (context: MotionContext, name: string): Value => {
  const measured = resistanceAsMeasured(stepperOf(context, name));
  const ratio = ratioOf(context, name);
  const cold = ratio ? windingResistance.work({ measured, copper: ratio.copper }) : measured;
  const temperature = motorEntry(context, name)['winding-temperature'];
  return temperature === undefined ? cold : warmResistance.work({ cold, temperature });
};

const phaseInductance = (context: MotionContext, name: string): Value => {
  const measured = inductanceAsMeasured(stepperOf(context, name));
  const ratio = ratioOf(context, name);
  return ratio ? windingInductance.work({ measured, turns: ratio.turns }) : measured;
};

const teeth = (context: MotionContext, name: string): Value => {
  const full = stepperOf(context, name)['step-angle'];
  return full === undefined ? FIFTY : rotorTeethOf.work({ full });
};

const ofPart =
  (key: 'holding-torque' | 'rotor-inertia' | 'detent-torque' | 'iron-drag' | 'ringing') =>
  (context: MotionContext, name: string): Value =>
    need(stepperOf(context, name), key)[key];

/** Peak current of a driver, whatever its marking counts. */
export const peakOf = (context: MotionContext, name: string): Value => {
  const driver = driverEntry(context, name);
  const setting = need(driver, 'current').current;
  const marked = driver.marked ?? driverPart(context, name)?.marked;
  const marking =
    marked === 'peak' ? PEAK : marked === 'RMS' ? RMS : need(driver, 'peak-per-marked')['peak-per-marked'];
  return peakCurrent.work({ setting, marking });
};

/** Volts of the rail that feeds a driver. */
export const railOf = (context: MotionContext, name: string): Value => {
  const { rail } = need(driverEntry(context, name), 'rail');
  const supply = Object.entries(context.book.supplies ?? {}).find(
    ([, { rails }]) => rails !== undefined && rail in rails,
  );
  const volts = supply?.[1].rails?.[rail]?.volts;
  if (volts === undefined) throw new NotStated([`supplies.${supply?.[0] ?? 'G1'}.rails.${rail}.volts`]);
  return volts;
};

const bridge = (context: MotionContext, of: string): Value => {
  const name = driverNameOf(context, of);
  const drop = driverPart(context, name)?.['bridge-drop'] ?? NO_BRIDGE_DROP;
  return bridgeVoltage.work({ rail: railOf(context, name), drop });
};

const bridgeResistance = (context: MotionContext, name: string): Value =>
  driverPart(context, name)?.['bridge-resistance'] ??
  need(driverEntry(context, name), 'bridge-resistance')['bridge-resistance'];

const added = (context: MotionContext, of: string): Value => {
  const name = driverNameOf(context, of);
  const driver = driverEntry(context, name);
  const own = bridgeResistance(context, name);
  if (driver.cable === undefined)
    return phaseLoopResistance.work({ winding: own, added: need(driver, 'cable-resistance')['cable-resistance'] });
  const cable = entry(context.book.cables, 'cables', driver.cable, `drivers.${name}.cable`);
  const loop = cable['loop-resistance'];
  if (loop !== undefined) return phaseLoopResistance.work({ winding: own, added: loop });
  const { length, part } = need(cable, 'length', 'part');
  const kind = entry(context.book.parts, 'parts', part, `cables.${driver.cable}.part`);
  return addedResistance.work({
    length,
    perLength: need(kind, 'resistance-per-length')['resistance-per-length'],
    parallel: cable.parallel === undefined ? undefined : given(cable.parallel, 'count', `${pathOf(cable)}.parallel`),
    bridge: own,
  });
};

export const microstepsOf = (context: MotionContext, name: string): Value => {
  const driver = driverEntry(context, name);
  return given(need(driver, 'microsteps').microsteps, 'count', `${pathOf(driver)}.microsteps`);
};

/** Resistance of the whole loop of a phase. */
export const loopOf = (context: MotionContext, name: string): Value =>
  phaseLoopResistance.work({
    winding: motorOf(context, name).phaseResistance,
    added: driveOf(context, name).loopResistance,
  });

const capacityOf = (context: MotionContext, name: string): Capacity => {
  const { railVoltage: volts, peakCurrent: peak } = driveOf(context, name);
  const {
    torqueConstant: K,
    phaseInductance: L,
    teeth: N,
    detentTorque: detent,
    ironDrag: iron,
  } = motorOf(context, name);
  const shared = { constant: K, loop: loopOf(context, name), inductance: L, teeth: N, peak };
  const edge = (speed: Value, amplitude: Value): Value =>
    shaftTorque.work({ magnet: pullOut.work({ ...shared, speed, volts: amplitude }), detent, iron, speed });
  return {
    at: (speed) => ({
      get lower() {
        return edge(speed, volts);
      },
      get upper() {
        return edge(speed, squareWaveAmplitude.work({ bridge: volts }));
      },
    }),
  };
};

const motorsIn = (book: Seen<MotionBook>): readonly string[] => Object.keys(book.motors ?? {});
const value = (
  token: (typeof motorFacts)[keyof typeof motorFacts],
  run: (context: MotionContext, name: string) => Value,
) => provide<MotionBook, Value>(token, run, motorsIn);

export const motorProviders: readonly Provider<MotionBook>[] = [
  value(motorFacts.holdingTorque, ofPart('holding-torque')),
  value(motorFacts.ratedCurrent, ratedCurrent),
  value(motorFacts.phaseResistance, phaseResistance),
  value(motorFacts.phaseInductance, phaseInductance),
  value(motorFacts.rotorInertia, ofPart('rotor-inertia')),
  value(motorFacts.detentTorque, ofPart('detent-torque')),
  value(motorFacts.ironDrag, ofPart('iron-drag')),
  value(motorFacts.ringing, ofPart('ringing')),
  value(motorFacts.teeth, teeth),
  value(motorFacts.torqueConstant, torqueConstant),
  value(motorFacts.fluxLinkage, (context, name) =>
    fluxLinkageOf.work({ constant: torqueConstant(context, name), teeth: teeth(context, name) }),
  ),
  value(driveFacts.peakCurrent, (context, name) => peakOf(context, driverNameOf(context, name))),
  value(driveFacts.railVoltage, bridge),
  value(driveFacts.loopResistance, added),
  value(driveFacts.microsteps, (context, name) => microstepsOf(context, driverNameOf(context, name))),
  provide<MotionBook, Capacity>(capacity, capacityOf),
];
