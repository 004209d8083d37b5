/** What of motors and axes can be measured at the bench. */
import {
  ammeter,
  caliper,
  contactThermometer,
  benchChecks,
  hangingScale,
  inductanceMeter,
  kitchenScale,
  luggageScale,
  thermometer,
  voltmeter,
  type BenchReading,
  type BenchTest,
} from '../../contract/index.ts';
import type { Formula } from '../../kernel/index.ts';
import { lostStepSpeed, massFromWeighing, runningForceFromPulls } from './calc/bench-axis.ts';
import {
  holdingTorqueFromPull,
  inductanceOverTurn,
  ratedCurrentFromRun,
  resistanceFromVolts,
} from './calc/bench-motor.ts';
import type { MotionBook } from './schema.ts';

const shown = (formula: unknown): Formula => formula as Formula;

const HOT =
  'A motor that a current flows through gets hot enough to burn skin: let it stand on something that does not melt.';
const DEAD =
  'Everything off, and capacitors discharged, before you connect or touch anything; never unplug a motor from a live driver.';
const EXTRA_LOW = 'Use a bench supply of low voltage; mains is for people licensed for it, in approved enclosures.';
const HANDS =
  'Keep hands, sleeves and hair away from pulley and line while the torque test runs: the rotor snaps to the next step when it gives way.';
const RAISED = 'A raised load falls: lower it, or prop it up, before you take its belt or line off.';
const DRIVES = 'Keep hands and heads out while the drives are on; a stepping motor does not feel a finger.';

const somewhere = { low: 0, high: 1, means: 'where between the two it lies' };

/** A board counts its steps by a clock that is off by far less than this. */
const setSpeed = (read: Pick<BenchReading, 'means' | 'example'>): BenchReading => ({
  ...read,
  of: 'speed',
  instrument: 'the speed to which the board is set',
  least: 0.001,
  most: 5,
  share: 0.01,
  rest: 0,
});

export const bench: readonly BenchTest[] = [
  {
    name: 'winding-resistance',
    fact: 'parts.*.phase-resistance',
    variants: ['stepper'],
    of: 'resistance',
    title: 'resistance of one phase',
    readings: {
      volts: voltmeter({ means: 'volts across the leads of the phase itself', example: '0.94 V' }),
      current: ammeter({ means: 'current through it', example: '0.96 A' }),
      temperature: thermometer({ means: 'temperature of room and motor', example: '21 degC' }),
    },
    gives: { by: 'formula', formula: shown(resistanceFromVolts) },
    times: [3, 10],
    procedure: [
      'Let the motor lie in the room for two hours.',
      'Send about 1 A through one phase, or its rated current if that is less. If the book has measured-as, use that connection.',
      'Hold the tips of the voltmeter to the leads of the motor, not to the clips that bring the current. A hand meter on ohms cannot tell 0.9 from 1.2.',
      'Read both meters within half a minute, then switch off. The other phase, and once more, are readings of their own.',
    ],
    cautions: [DEAD, HOT, EXTRA_LOW],
    shows: ['.measured-as'],
  },
  {
    name: 'winding-inductance',
    fact: 'parts.*.phase-inductance',
    variants: ['stepper'],
    of: 'inductance',
    title: 'inductance of one phase',
    readings: {
      least: inductanceMeter({ means: 'least while the shaft is turned', example: '2.3 mH' }),
      most: inductanceMeter({ means: 'most while the shaft is turned', example: '2.7 mH' }),
    },
    gives: { by: 'formula', formula: shown(inductanceOverTurn), open: { share: somewhere } },
    times: [2, 6],
    procedure: [
      'Leads open, meter at one phase. If the book has measured-as, use that connection.',
      'Turn the shaft slowly over a few steps and note the least and the most.',
    ],
    cautions: [DEAD],
    shows: ['.measured-as'],
  },
  {
    name: 'holding-torque',
    fact: 'parts.*.holding-torque',
    variants: ['stepper'],
    of: 'torque',
    title: 'holding torque',
    readings: {
      pull: luggageScale({ means: 'most before it gives way', example: '44 N' }),
      diameter: caliper({ means: 'diameter of the pulley where the line lies', example: '50 mm' }),
      line: caliper({ means: 'thickness of the line', example: '1.2 mm' }),
      current: ammeter({ means: 'current in each of both phases', example: '2.8 A' }),
    },
    gives: {
      by: 'formula',
      formula: shown(holdingTorqueFromPull),
      book: { rated: '.rated-current' },
      open: { saturation: { low: 0, high: 0.3, means: 'share of a rise of current that saturation takes' } },
    },
    times: [5, 20],
    procedure: [
      'Clamp the motor. Fix the pulley to its shaft so that it cannot slip, and the end of the line to the pulley.',
      'Both phases in series on a bench supply that is set to the rated current, or to no less than 0.6 of it.',
      'Pull the line slowly along a tangent until the rotor gives way; note the most.',
      'Switch off between pulls and let it cool.',
    ],
    cautions: [HANDS, HOT, DEAD, EXTRA_LOW],
    shows: ['.rated-current', '.measured-as'],
  },
  {
    name: 'rated-current',
    fact: 'parts.*.rated-current',
    variants: ['stepper'],
    of: 'current',
    title: 'rated current',
    readings: {
      current: ammeter({ means: 'current in each of both phases', example: '2.6 A' }),
      warm: contactThermometer({ means: 'temperature of the case at the end', example: '68 degC' }),
      air: thermometer({ means: 'temperature of the room', example: '21 degC' }),
    },
    gives: {
      by: 'formula',
      formula: shown(ratedCurrentFromRun),
      open: {
        coming: { low: 0, high: 2.5, means: 'rise that would still have come' },
        ratio: { low: 1, high: 1.8, means: 'rise of the winding over that of the case' },
        draught: { low: 0, high: 0.25, means: 'how much more than in proportion warm air takes' },
      },
    },
    times: [1, 4],
    procedure: [
      'Read the plate first: where there is one, it goes before this.',
      'Mount the motor as in the machine, out of any draught. Both phases in series on a bench supply.',
      'Choose a current at which the case settles 35 to 65 K above the room, and keep it.',
      'Wait until a quarter of an hour adds less than 1 K: an hour or longer. Then read all three.',
    ],
    cautions: [
      HOT,
      'Stay with it, and keep it off wood and printed plastic: switch off at 80 K above the room.',
      DEAD,
      EXTRA_LOW,
    ],
    shows: ['.measured-as'],
  },
  {
    name: 'motor-mass',
    fact: 'parts.*.mass',
    variants: ['stepper'],
    of: 'mass',
    title: 'mass of the motor',
    readings: {
      gross: kitchenScale({ means: 'motor and what it lies in', example: '702 g' }),
      tare: { ...kitchenScale({ means: 'what it lies in, alone', example: '0 g' }), least: 0 },
    },
    gives: { by: 'formula', formula: shown(massFromWeighing) },
    times: [1, 5],
    procedure: ['Take off plugs and pulleys.', 'Weigh it, then weigh what it lay in.'],
    cautions: [DEAD],
  },
  {
    name: 'running-force',
    fact: 'axes.*.running-force',
    variants: ['belt', 'screw'],
    of: 'force',
    title: 'running force',
    readings: {
      there: luggageScale({ means: 'most while it is pulled one way', example: '7.1 N' }),
      back: luggageScale({ means: 'most while it is pulled back', example: '6.6 N' }),
    },
    gives: { by: 'formula', formula: shown(runningForceFromPulls) },
    times: [3, 10],
    procedure: [
      'Switch everything off and unplug the motor from its dead driver, or take the belt off.',
      'Hook the scale to the carriage and pull slowly along the axis over the whole travel; note the most once it moves.',
      'The same back.',
    ],
    cautions: [DEAD, RAISED, 'A carriage pulled by hand makes its motor a generator: never into a driver.'],
  },
  {
    name: 'free-speed',
    fact: 'axes.*.loses-place-at',
    of: 'speed',
    title: 'speed at which it loses its place',
    readings: {
      kept: setSpeed({ means: 'greatest speed from which it came back to its mark', example: '420 mm/s' }),
      lost: setSpeed({ means: 'least speed from which it did not', example: '440 mm/s' }),
    },
    gives: { by: 'formula', formula: shown(lostStepSpeed), open: { share: somewhere } },
    times: [2, 10],
    procedure: [
      'Mark carriage and frame with a strip of tape where it stands.',
      'Run it to and fro ten times over its free travel, with ramp, load and rail as in play, and look at the mark.',
      'Faster by a twentieth each time, until it does not come back to its mark. Note that speed and the one before.',
    ],
    cautions: [
      DRIVES,
      RAISED,
      HOT,
      'It may run into its end: take the speed up in small steps and keep a finger on the stop button.',
    ],
  },
  {
    name: 'moving-mass',
    fact: 'axes.*.moving-mass',
    of: 'mass',
    title: 'mass that moves',
    readings: {
      gross: hangingScale({ means: 'everything that moves, and what holds it', example: '2.52 kg' }),
      tare: { ...hangingScale({ means: 'what holds it, alone', example: '0 g' }), least: 0 },
    },
    gives: { by: 'formula', formula: shown(massFromWeighing) },
    times: [2, 10],
    procedure: [
      'Unclip belt or line and hang everything that moves on the scale; with it, half of the cable chain.',
      'A light claw belongs on a kitchen scale: write its error behind the reading, 620 g ±2 g.',
    ],
    cautions: [RAISED, DEAD],
  },
];

export const readingChecks = benchChecks<MotionBook>(bench, { above: 'MOTION-910', below: 'MOTION-911' });
