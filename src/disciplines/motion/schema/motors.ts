/** Keys of motors and drivers, of the parts that they are, and of being pushed by hand. */
import * as z from 'zod';
import { count, oneOf, quantity, type Shape } from '../../../contract/index.ts';
import type { Measurement } from '../../../kernel/index.ts';

/** How the coils of a phase are connected. A motor with four leads has one coil a phase. */
export const windings = ['coil', 'half', 'series', 'parallel'] as const;

const fourWire: Measurement = {
  what: 'resistance of one phase',
  instrument: 'bench supply and two multimeters',
  procedure:
    'Send 0.5 to 1 A through one phase and read the volts across its own leads, not across the clips; volts over ampere. A hand meter on ohms cannot tell 0.9 from 1.2.',
  error: '±2 %',
  minutes: 10,
};
const byTurning: Measurement = {
  what: 'inductance of one phase',
  instrument: 'LCR meter at 1 kHz',
  procedure: 'Turn the shaft slowly over a few steps and note the least and the most; write both as a range.',
  error: '±5 %',
  minutes: 10,
};
const onPulley: Measurement = {
  what: 'holding torque',
  instrument: 'luggage scale and a pulley',
  procedure:
    'Both phases on at the rated current from a bench supply. Pull tangentially at a pulley of known radius until it gives way, five times; force times radius.',
  error: '±7 %',
  minutes: 20,
};
const byPlate: Measurement = {
  what: 'rated current of one phase',
  instrument: 'the plate, or a thermometer',
  procedure:
    'Read the plate. Without one: both phases in series on a bench supply, raise the current until the case settles 50 K above the room after an hour.',
  error: '±5 %',
  minutes: 70,
};
const byDial: Measurement = {
  what: 'detent torque',
  instrument: 'luggage scale and a pulley',
  procedure: 'Leads open. Pull slowly at a pulley of known radius until it clicks over, ten times; force times radius.',
  error: '±15 %',
  minutes: 10,
};
const bySwinging: Measurement = {
  what: 'inertia of the rotor',
  instrument: 'a disc of known inertia and a telephone that films',
  procedure:
    'Both phases on at a small current. Film the ringing after a flick with and without the disc; the squares of the two periods are as the inertias.',
  error: '±10 %',
  minutes: 45,
};
const byDrill: Measurement = {
  what: 'drag of the iron with speed',
  instrument: 'drill with a speed that is known, lever and luggage scale',
  procedure:
    'Leads open. Turn the shaft with the drill at two speeds and hold the case on a lever; the difference of the torques over the difference of the speeds.',
  error: '±20 %',
  minutes: 40,
};
const byRinging: Measurement = {
  what: 'damping after a step',
  instrument: 'telephone that films, pointer on the shaft',
  procedure: 'Make one full step and film the pointer; halves after n swings is a damping of 0.110/n.',
  error: '±20 %',
  minutes: 15,
};
const byAmmeter: Measurement = {
  what: 'peak over marked current',
  instrument: 'multimeter in one phase',
  procedure:
    'Microstep by microstep over one electrical turn, note the largest current in one phase; over the number that is set.',
  error: '±3 %',
  minutes: 15,
};
const byVolts: Measurement = {
  what: 'resistance of the bridge',
  instrument: 'multimeter',
  procedure:
    'Feed the motor rail from a bench supply and set the driver to more than the supply gives, so that it does not chop: a meter on a chopping bridge reads a mean and not a drop. With about 1 A standing in one phase, read volts between rail and one lead, and between the other lead and ground; their sum over the current.',
  error: '±10 %',
  minutes: 10,
};
const byListening: Measurement = {
  what: 'whether it hunts',
  instrument: 'the axis itself, ear and luggage scale',
  procedure:
    'Run the axis to and fro at its speed for ten minutes, braked by hand with once more its running force. It growls or loses its place: 1. It runs as quietly as at a third of the speed: 0.',
  error: 'it does or it does not',
  minutes: 20,
};
const atRest: Measurement = {
  what: 'current that is kept at standstill',
  instrument: 'multimeter in one phase',
  procedure: 'Read it while it steps slowly and a second after it stopped.',
  error: '±5 %',
  minutes: 10,
};

const onScale: Measurement = {
  what: 'mass of the motor',
  instrument: 'kitchen scale',
  procedure: 'Take off plugs and pulleys and weigh it.',
  error: '±1 %',
  minutes: 3,
};

/** Keys of a motor. */
export const motorKeys = {
  winding: oneOf(windings, { means: 'how its coils are connected' }),
  'winding-temperature': quantity('temperature', {
    range: 'spread',
    from: 223.15,
    to: 473.15,
    because: 'copper and varnish are between frost and scorching',
    means: 'temperature of the winding',
    example: '10..100 degC',
  }),
} satisfies Shape;

/** Keys of a driver. */
export const driverKeys = {
  microsteps: count({ means: 'microsteps in a full step', example: '8', to: 256 }),
  current: quantity('current', {
    range: 'doubt',
    means: 'current to which it is set, as its marking counts',
    positions: 'current-steps',
    example: '1.2 A',
    measure: byAmmeter,
  }),
  marked: oneOf(['peak', 'RMS', 'unknown'], { means: 'what the marking of the current means' }),
  'peak-per-marked': quantity('ratio', {
    range: 'doubt',
    from: 1,
    to: 1.4143,
    because: 'a marking is in peak or in RMS of a sinusoid',
    means: 'peak over marked current',
    example: '1..1.414',
    measure: byAmmeter,
  }),
  'standstill-current': quantity('ratio', {
    range: 'doubt',
    from: 0,
    to: 1,
    because: 'drivers lower the current at rest and never raise it',
    means: 'share of the current that is kept at standstill',
    example: '50 %',
    measure: atRest,
  }),
  hunting: quantity('ratio', {
    range: 'doubt',
    from: 0,
    to: 1,
    because: 'a decay damps hunting or leaves it alone',
    means: 'share of the growth of hunting that the decay of the driver leaves',
    example: '0..1',
    measure: byListening,
  }),
  decay: oneOf(['slow', 'mixed', 'fast', 'unknown'], { means: 'how the current decays between two pulses' }),
  'standing-by': oneOf(['powered', 'unpowered'], { means: 'whether it stays on while nobody plays' }),
  'bridge-resistance': quantity('resistance', {
    range: 'doubt',
    from: 0,
    means: 'resistance of its bridge, both switches and the sense resistor',
    example: '0.4..0.9 ohm',
    measure: byVolts,
  }),
  'cable-resistance': quantity('resistance', {
    range: 'doubt',
    from: 0,
    means: 'resistance of the cable to its motor, out and back, while no cable is named',
    example: '0..1 ohm',
  }),
} satisfies Shape;

/** Keys of a stepper. Which connection the electrical ones are for stands under `measured-as`. */
export const stepperPartKeys = {
  frame: count({ means: 'frame size, a tenth of an inch', example: '23', from: 6, to: 51 }),
  body: quantity('length', { range: 'exact', means: 'length of the body without the shaft', example: '56 mm' }),
  leads: count({ means: 'leads', example: '6', from: 4, to: 8 }),
  'step-angle': quantity('angle', { range: 'exact', means: 'full step', example: '1.8°' }),
  'measured-as': oneOf(windings, { means: 'connection for which torque, current, ohms and henries are given' }),
  'holding-torque': quantity('torque', {
    range: 'doubt',
    means: 'holding torque, both phases at rated current',
    example: '0.9..1.3 N·m',
    measure: onPulley,
  }),
  'rated-current': quantity('current', {
    range: 'doubt',
    means: 'rated current of each phase, both on',
    example: '2.8 A',
    measure: byPlate,
  }),
  'phase-resistance': quantity('resistance', {
    range: 'doubt',
    means: 'resistance of one phase at room temperature',
    example: '0.95..1.1 ohm',
    measure: fourWire,
  }),
  'phase-inductance': quantity('inductance', {
    range: 'doubt',
    means: 'inductance of one phase',
    example: '2.2..2.8 mH',
    measure: byTurning,
  }),
  'rated-heat': quantity('power', {
    range: 'doubt',
    means: 'copper heat of both phases at the rated current, where no current is printed',
    example: '10..16 W',
    measure: byPlate,
  }),
  'electrical-time': quantity('time', {
    range: 'doubt',
    means: 'inductance over resistance of one phase, where no inductance is known',
    example: '1.8..4.2 ms',
    measure: byTurning,
  }),
  'rotor-inertia': quantity('inertia', {
    range: 'doubt',
    means: 'inertia of the rotor',
    example: '260..320 g·cm²',
    measure: bySwinging,
  }),
  'detent-torque': quantity('torque', {
    range: 'doubt',
    from: 0,
    means: 'detent torque with the leads open',
    example: '30..70 mN·m',
    measure: byDial,
  }),
  'iron-drag': quantity('rotary-damping', {
    range: 'doubt',
    above: 0,
    because: 'iron always brakes a little',
    means: 'drag of the iron that rises with speed',
    example: '0.0002..0.002 N·m·s/rad',
    measure: byDrill,
  }),
  ringing: quantity('ratio', {
    range: 'doubt',
    above: 0,
    below: 1,
    because: 'a rotor rings and comes to rest',
    means: 'share of critical damping after a step',
    example: '0.02..0.12',
    measure: byRinging,
  }),
  mass: quantity('mass', {
    range: 'doubt',
    means: 'mass of the motor',
    example: '0.65..0.75 kg',
    measure: onScale,
  }),
} satisfies Shape;

/** Keys of a kind of driver. */
export const driverPartKeys = {
  'most-current': quantity('current', { range: 'exact', means: 'greatest peak current of a phase', example: '4 A' }),
  'least-volts': quantity('voltage', { range: 'exact', means: 'least rail voltage', example: '12 V' }),
  'most-volts': quantity('voltage', { range: 'exact', means: 'greatest rail voltage', example: '40 V' }),
  'bridge-resistance': driverKeys['bridge-resistance'],
  'bridge-drop': quantity('voltage', {
    range: 'doubt',
    from: 0,
    means: 'drop of a bipolar bridge, which does not go with current',
    example: '1.6..2.4 V',
    measure: byVolts,
  }),
  marked: driverKeys.marked,
  decay: driverKeys.decay,
  microstepping: z.array(count({ means: 'microsteps in a full step', example: '8', to: 256 })),
  'current-steps': z.array(
    quantity('current', { range: 'exact', means: 'a position of the current switch, as marked', example: '1.2 A' }),
  ),
  'reference-gain': quantity('ratio', {
    range: 'exact',
    means: 'gain between reference and sense resistor',
    example: '8',
  }),
  'sense-resistor': quantity('resistance', { range: 'exact', means: 'sense resistor of a phase', example: '0.1 ohm' }),
} satisfies Shape;

/** Keys of an axis on a belt, about being pushed. */
export const pushedKeys = {
  'pushed-at': quantity('speed', {
    range: 'spread',
    from: 0,
    means: 'speed at which a hand pushes the carriage',
    example: '0.2..0.8 m/s',
  }),
} satisfies Shape;
