/** What a drive takes in each mode. */
import { need, provide, type Provider } from '../../../contract/index.ts';
import { constant, greatest, least, NotStated, type Value } from '../../../kernel/index.ts';
import { demand, driveFacts, effectiveRadius, motorFacts, travelProfile } from '../../motion/facts.ts';
import { drivePower, inMode } from '../facts.ts';
import type { SupplyBook } from '../schema.ts';
import { axisOf, driverEntry, driverOf, isIdle, modesOf, nameAndMode, ofDriver, type SupplyContext } from './book.ts';
import { chopperInput, ironHeat, keptCurrent, motorSpeed, phaseHeat, railHeat, shaftPower } from './chopper.ts';

const NO_POWER = constant(0, 'power', 'the drive is off');
const NO_CURRENT = constant(0, 'current', 'the drive is off');
const MICROSTEPS = constant(1, 'count', 'microsteps: the squares of both currents add up to that of the peak');
const FULL_STEPS = constant(2, 'count', 'full steps: both phases carry the peak');

export type DriveState = 'off' | 'held' | 'moving';

/** What a motor does in a mode. */
export const stateOf = ({ book }: SupplyContext, motor: string, mode: string): DriveState => {
  const axis = axisOf(book, motor);
  if (mode === '') return 'moving';
  const entry = book.modes?.[mode];
  if (axis !== undefined && entry?.unpowered?.includes(axis)) return 'off';
  if (isIdle(book, mode)) {
    const driver = driverOf(book, motor);
    return need(driverEntry(book, driver), 'standing-by')['standing-by'] === 'unpowered' ? 'off' : 'held';
  }
  if (entry?.moving === undefined) throw new NotStated([`modes.${mode}.moving`]);
  return axis !== undefined && entry.moving.includes(axis) ? 'moving' : 'held';
};

/** Mean square of the phase currents over the square of the peak. */
export const phasesOf = (context: SupplyContext, motor: string): Value =>
  context.get(driveFacts.microsteps, motor).number === 1 ? FULL_STEPS : MICROSTEPS;

/** Peak phase current in a mode. Nothing flows when the drive is off. */
export const phaseCurrent = (context: SupplyContext, motor: string, mode: string): Value => {
  const state = stateOf(context, motor, mode);
  if (state === 'off') return NO_CURRENT;
  const peak = context.get(driveFacts.peakCurrent, motor);
  if (state === 'moving') return peak;
  const driver = driverEntry(context.book, driverOf(context.book, motor));
  return keptCurrent.work({ peak, share: need(driver, 'standstill-current')['standstill-current'] });
};

/** Full speed of a motor. */
export const fullSpeed = (context: SupplyContext, motor: string): Value => {
  const axis = axisOf(context.book, motor);
  if (axis === undefined) throw new NotStated(['axes']);
  return motorSpeed.work({
    speed: context.get(travelProfile, axis).speed,
    radius: context.get(effectiveRadius, axis),
  });
};

const ironAt = (context: SupplyContext, motor: string, speed: Value): Value =>
  ironHeat.work({ drag: context.get(motorFacts.ironDrag, motor), speed });

const powerOf = (context: SupplyContext, key: string): Value => {
  const [motor, mode] = nameAndMode(key);
  const state = stateOf(context, motor, mode);
  if (state === 'off') return NO_POWER;
  const phases = phasesOf(context, motor);
  const current = phaseCurrent(context, motor, mode);
  const most = railHeat.work({ current, rail: context.get(driveFacts.railVoltage, motor), phases });
  const heatIn = (resistance: Value): Value => {
    const heat = phaseHeat.work({ current, resistance, phases });
    return most.number < heat.number ? least(most, heat) : heat;
  };
  const standing = {
    copper: heatIn(context.get(motorFacts.phaseResistance, motor)),
    series: heatIn(context.get(driveFacts.loopResistance, motor)),
    quiescent: ofDriver(context.book, driverOf(context.book, motor), 'own-power'),
  };
  const axis = axisOf(context.book, motor);
  if (state === 'held' || axis === undefined) return chopperInput.work(standing);
  const points = context.get(demand, axis).points.filter((point) => point.motor === motor);
  return greatest(
    ...points.map(({ torque, motorSpeed: speed }) =>
      chopperInput.work({
        ...standing,
        iron: ironAt(context, motor, speed),
        mechanical: shaftPower.work({ torque, speed }),
      }),
    ),
  );
};

/** The greatest phase current of a motor over the modes. */
export const hottestCurrent = (context: SupplyContext, motor: string): Value =>
  greatest(...modesOf(context.book).map((mode) => phaseCurrent(context, motor, mode)));

/** Heat of iron and drag in the mode in which the motor moves; nothing when it never does. */
export const hottestIron = (context: SupplyContext, motor: string): Value =>
  modesOf(context.book).some((mode) => stateOf(context, motor, mode) === 'moving')
    ? ironAt(context, motor, fullSpeed(context, motor))
    : constant(0, 'power', 'it never moves');

export const driveProviders: readonly Provider<SupplyBook>[] = [
  provide<SupplyBook, Value>(drivePower, powerOf, (book) =>
    Object.keys(book.motors ?? {}).flatMap((motor) => modesOf(book).map((mode) => inMode(motor, mode))),
  ),
];
