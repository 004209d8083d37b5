/** What a drive takes in each mode. */
import { need, provide, type Provider } from '../../../contract/index.ts';
import { constant, decided, greatest, least, NotStated, type Value } from '../../../kernel/index.ts';
import { demand, driveFacts, effectiveRadius, motorFacts, travelProfile } from '../../motion/facts.ts';
import { drivePower, inMode, leastDrivePower, nameAndMode } from '../facts.ts';
import type { SupplyBook } from '../schema.ts';
import { driverEntry, driverOf, modesOf, ofDriver, type SupplyContext } from './book.ts';
import { axisAt, stateOf } from './layout.ts';
import { dutiesOf, meanOver, type Regime } from './regimes.ts';
import { heatingCurrent } from './loads.ts';
import { chopperInput, ironHeat, keptCurrent, motorSpeed, phaseHeat, railHeat, shaftPower } from './chopper.ts';

const NO_POWER = constant(0, 'power', 'the drive is off');
const NO_CURRENT = constant(0, 'current', 'the drive is off');
const NO_IRON = constant(0, 'power', 'it does not turn');
const MICROSTEPS = constant(1, 'count', 'microsteps: the squares of both currents add up to that of the peak');
const FULL_STEPS = constant(2, 'count', 'full steps: both phases carry the peak');

const ONE_PHASE = constant(2, 'count', 'at rest one phase may carry the whole peak and warms alone');

/** Mean square of the phase currents over the square of the peak. */
export const phasesOf = (context: SupplyContext, motor: string): Value =>
  context.get(driveFacts.microsteps, motor).number === 1 ? FULL_STEPS : MICROSTEPS;

/** Peak phase current that a driver keeps at rest. */
const keptOf = (context: SupplyContext, motor: string): Value => {
  const driver = driverEntry(context.book, driverOf(context.book, motor));
  return keptCurrent.work({
    peak: context.get(driveFacts.peakCurrent, motor),
    share: need(driver, 'standstill-current')['standstill-current'],
  });
};

/** Peak phase current in a mode. Nothing flows when the drive is off. */
export const phaseCurrent = (context: SupplyContext, motor: string, mode: string): Value => {
  const state = stateOf(context, motor, mode);
  if (state === 'off') return NO_CURRENT;
  const peak = context.get(driveFacts.peakCurrent, motor);
  return state === 'moving' ? peak : keptOf(context, motor);
};

/** Full speed of a motor. */
export const fullSpeed = (context: SupplyContext, motor: string): Value => {
  const axis = axisAt(context, motor);
  if (axis === undefined) throw new NotStated(['axes']);
  return motorSpeed.work({
    speed: context.get(travelProfile, axis).speed,
    radius: context.get(effectiveRadius, axis),
  });
};

const ironAt = (context: SupplyContext, motor: string, speed: Value): Value =>
  ironHeat.work({ drag: context.get(motorFacts.ironDrag, motor), speed });

/** Heat of a resistance in both phases, no more than the rail can make in it. */
export const heatIn = (resistance: Value, current: Value, phases: Value, rail: Value): Value => {
  const asked = phaseHeat.work({ current, resistance, phases });
  if (!(resistance.number > 0)) return asked;
  const most = railHeat.work({ rail, resistance });
  // Where the rail is enough it only decides that it is, and the slopes stay known.
  return most.number < asked.number ? least(most, asked) : decided(asked, rail);
};

/** Copper, cable and driver at a phase current, whatever else the motor does. */
const standing = (context: SupplyContext, motor: string, current: Value) => {
  const phases = phasesOf(context, motor);
  const rail = context.get(driveFacts.railVoltage, motor);
  return {
    copper: heatIn(context.get(motorFacts.phaseResistance, motor), current, phases, rail),
    series: heatIn(context.get(driveFacts.loopResistance, motor), current, phases, rail),
    quiescent: ofDriver(context.book, driverOf(context.book, motor), 'own-power'),
  };
};

const powerOf = (context: SupplyContext, key: string): Value => {
  const [motor, mode] = nameAndMode(key);
  const state = stateOf(context, motor, mode);
  if (state === 'off') return NO_POWER;
  const always = standing(context, motor, phaseCurrent(context, motor, mode));
  const axis = axisAt(context, motor);
  if (state === 'held' || axis === undefined) return chopperInput.work(always);
  const points = context.get(demand, axis).points.filter((point) => point.motor === motor);
  return greatest(
    ...points.map(({ torque, motorSpeed: speed }) =>
      chopperInput.work({
        ...always,
        iron: ironAt(context, motor, speed),
        mechanical: shaftPower.work({ torque, speed }),
      }),
    ),
  );
};

/** The least that a driver takes for a motor in a mode: where it may move it may as well stand. */
const leastOf = (context: SupplyContext, key: string): Value => {
  const [motor, mode] = nameAndMode(key);
  return stateOf(context, motor, mode) === 'off'
    ? NO_POWER
    : chopperInput.work(standing(context, motor, keptOf(context, motor)));
};

/** The greatest phase current of a motor over the modes. */
export const hottestCurrent = (context: SupplyContext, motor: string): Value =>
  greatest(...modesOf(context.book).map((mode) => phaseCurrent(context, motor, mode)));

/** Current that heats a motor as much as a regime does. */
export const heatingCurrentOf = (context: SupplyContext, motor: string, regime: Regime): Value => {
  const currents = regime.map((mode) => phaseCurrent(context, motor, mode));
  return currents.length === 1
    ? currents[0]!
    : heatingCurrent.work({ duties: dutiesOf(context.book, regime), currents });
};

/** Heat of iron and drag in a mode, as if the motor turned at full speed all the time where it moves. */
export const ironIn = (context: SupplyContext, motor: string, mode: string): Value =>
  stateOf(context, motor, mode) === 'moving' && axisAt(context, motor) !== undefined
    ? ironAt(context, motor, fullSpeed(context, motor))
    : NO_IRON;

/** Mean heat of iron and drag over a regime. */
export const ironOver = (context: SupplyContext, motor: string, regime: Regime): Value =>
  meanOver(
    context.book,
    regime,
    regime.map((mode) => ironIn(context, motor, mode)),
  );

/** How the heat of both phases presses on the hottest one: evenly while it moves in microsteps, else on one or in full on both. */
export const crowding = (context: SupplyContext, motor: string, mode: string): Value =>
  stateOf(context, motor, mode) === 'moving' ? phasesOf(context, motor) : ONE_PHASE;

const motorsInModes = (book: SupplyContext['book']): readonly string[] =>
  Object.keys(book.motors ?? {}).flatMap((motor) => modesOf(book).map((mode) => inMode(motor, mode)));

export const driveProviders: readonly Provider<SupplyBook>[] = [
  provide<SupplyBook, Value>(drivePower, powerOf, motorsInModes),
  provide<SupplyBook, Value>(leastDrivePower, leastOf, motorsInModes),
];
