import { atLeast, atMost, mustBe, type Advice, type Lever } from '../../../kernel/index.ts';
import { need } from '../../../contract/index.ts';
import { driverEntry, peakOf, railOf, statedDriverPart } from '../calc/motor-facts.ts';
import { everyDriver, onlyName, type MotorCheck } from './motors.ts';

const another = (name: string): Lever => ({
  substitute: `drivers.${name}.part`,
  kind: 'driver',
  means: `another driver for ${name}`,
});

const warm: Advice = {
  share: 0.8,
  because: 'a driver at its limit is hot, and lowers the current by itself',
  source: { id: 'driver-experience' },
};
const rising: Advice = {
  share: 0.9,
  because: 'a motor that brakes lifts its rail',
  source: { id: 'driver-experience' },
};

export const driverCurrent: MotorCheck = {
  code: 'MOTION-050',
  asks: 'Can the driver give the current to which it is set?',
  subjects: everyDriver,
  run: (context, subject) => {
    const name = onlyName(subject);
    return atMost(peakOf(context, name), need(statedDriverPart(context, name), 'most-current')['most-current'], {
      says: ({ demand, limit }) => `${name} is set to ${demand} peak; it can give ${limit}.`,
      advice: warm,
      levers: () => [
        { turn: `drivers.${name}.current`, toward: 'lower', means: `set ${name} to less current` },
        another(name),
      ],
    });
  },
};

export const driverMostVolts: MotorCheck = {
  code: 'MOTION-051',
  asks: 'Is the rail below the voltage that the driver bears?',
  subjects: everyDriver,
  run: (context, subject) => {
    const name = onlyName(subject);
    return atMost(railOf(context, name), need(statedDriverPart(context, name), 'most-volts')['most-volts'], {
      says: ({ demand, limit }) => `The rail gives ${name} up to ${demand}; it bears ${limit}.`,
      advice: rising,
      levers: () => [another(name)],
    });
  },
};

export const driverLeastVolts: MotorCheck = {
  code: 'MOTION-052',
  asks: 'Is the rail above the voltage that the driver needs?',
  subjects: everyDriver,
  run: (context, subject) => {
    const name = onlyName(subject);
    return atLeast(railOf(context, name), need(statedDriverPart(context, name), 'least-volts')['least-volts'], {
      says: ({ demand, limit }) => `The rail gives ${name} at least ${demand}; it needs ${limit}.`,
      levers: () => [another(name)],
    });
  },
};

export const driverMicrosteps: MotorCheck = {
  code: 'MOTION-053',
  asks: 'Has the driver the microsteps to which it is set?',
  subjects: everyDriver,
  run: (context, subject) => {
    const name = onlyName(subject);
    const { microsteps } = need(driverEntry(context, name), 'microsteps');
    const { microstepping } = need(statedDriverPart(context, name), 'microstepping');
    const holds = microstepping.includes(microsteps);
    return mustBe(holds, {
      says: () =>
        holds
          ? `${name} can make ${microsteps} microsteps.`
          : `${name} cannot make ${microsteps} microsteps; it has ${microstepping.join(', ')}.`,
      levers: () => [
        // The nearest first, and rather finer than coarser.
        ...[...microstepping]
          .sort((a, b) => Math.abs(Math.log(a / microsteps)) - Math.abs(Math.log(b / microsteps)) || b - a)
          .map((m) => ({
            set: [{ path: `drivers.${name}.microsteps`, text: String(m) }],
            means: m === 1 ? `set ${name} to full steps` : `set ${name} to ${m} microsteps`,
          })),
        another(name),
      ],
    });
  },
};

export const driverSwitch: MotorCheck = {
  code: 'MOTION-054',
  asks: 'Is there a position of the current switch for the current to which the driver is set?',
  subjects: everyDriver,
  run: (context, subject) => {
    const name = onlyName(subject);
    const steps = statedDriverPart(context, name)['current-steps'];
    // A trimmer reaches every current.
    if (steps === undefined) return null;
    const { current } = need(driverEntry(context, name), 'current');
    // A twentieth of an ampere is less than the tolerance of any such driver.
    const holds = steps.some((step) => Math.abs(step.number - current.number) < 0.05);
    const nearest = [...steps]
      .sort((a, b) => Math.abs(a.number - current.number) - Math.abs(b.number - current.number))
      .slice(0, 2)
      .map((step) => `${Number(step.number.toPrecision(4))} A`);
    return mustBe(holds, {
      because: [current],
      says: () =>
        holds
          ? `The switch of ${name} has a position for its current.`
          : `The switch of ${name} has no position for its current; the nearest are ${nearest.join(' and ')}.`,
      levers: () => [
        ...nearest.map((text) => ({
          set: [{ path: `drivers.${name}.current`, text }],
          means: `set ${name} to ${text}`,
        })),
        another(name),
      ],
    });
  },
};
