/** Keys of axes, of the belts that drive them and of the cables to their motors. */
import * as z from 'zod';
import { count, nameOf, oneOf, quantity, type Shape } from '../../../contract/index.ts';
import type { Measurement } from '../../../kernel/index.ts';

const onScale: Measurement = {
  what: 'mass that moves',
  instrument: 'kitchen or luggage scale',
  procedure: 'Unclip the belt or line, hang everything that moves on the scale; add half of the cable chain.',
  error: '±2 %',
  minutes: 10,
};
const byPulling: Measurement = {
  what: 'running force',
  instrument: 'luggage scale',
  procedure:
    'Motor unplugged from a dead driver. Pull slowly along the axis both ways over the whole travel; note the most, take the mean of both ways.',
  error: '±10 %, at least 0.5 N',
  minutes: 5,
};
const byStarting: Measurement = {
  ...byPulling,
  what: 'force that starts it',
  procedure:
    'As for the running force, but read the scale in the moment in which it starts, five times, after a night at rest.',
};
const byLifting: Measurement = {
  what: 'efficiency',
  instrument: 'luggage scale',
  procedure:
    'Pull a known load up and let it down slowly over drum or screw; the efficiency is the weight over the mean of up and weight.',
  error: '±5 %',
  minutes: 15,
};
const byNote: Measurement = {
  what: 'tension of the belt',
  instrument: 'telephone with a tuner',
  procedure: 'Pluck a free span and read its tone; write the tone and the span under note.',
  error: '±10 %',
  minutes: 5,
};
const byStretching: Measurement = {
  what: 'stiffness of the belt',
  instrument: 'luggage scale and caliper',
  procedure:
    'Hang a metre of belt, mark 500 mm, load it with 2 kg and with 3 kg, measure both; stiffness is 9.8 N over the growth per length.',
  error: '±20 %',
  minutes: 20,
};
const byWeighing: Measurement = {
  what: 'mass of a length of belt',
  instrument: 'letter scale',
  procedure: 'Weigh a metre of it.',
  error: '±3 %',
  minutes: 3,
};
const bySheet: Measurement = {
  what: 'allowable tension of the belt',
  instrument: 'the printing on the belt and its maker’s sheet',
  procedure: 'Read pitch, profile and cord on its back; look up the tension for that width.',
  error: 'none',
  minutes: 15,
};
const byTilting: Measurement = {
  what: 'friction in the thread',
  instrument: 'luggage scale on a lever',
  procedure: 'Load the nut, turn the screw slowly both ways with a lever of known length, note both forces.',
  error: '±15 %',
  minutes: 20,
};
const byOhms: Measurement = {
  what: 'resistance of the loop',
  instrument: 'ohmmeter with four wires, or volts at a known current',
  procedure: 'Short the far end; put 1 A through both cores of a phase and read the volts at the near end.',
  error: '±2 %',
  minutes: 10,
};

const bySpeeding: Measurement = {
  what: 'speed at which it loses its place',
  instrument: 'the axis itself and a strip of tape',
  procedure: 'Run it to and fro over a mark, faster by a twentieth each time, until it does not come back to the mark.',
  error: '±5 %',
  minutes: 20,
};
const byRocking: Measurement = {
  what: 'play of a tooth in its groove',
  instrument: 'dial gauge',
  procedure:
    'Motor holding. Rock the carriage by hand both ways with 5 N, read the gauge; take off what the belt stretches.',
  error: '±0.02 mm',
  minutes: 10,
};

const share = { from: 0, to: 1, because: 'a share lies between nothing and all' } as const;

/** Keys of every axis. */
export const axisKeys = {
  travel: quantity('length', { range: 'exact', means: 'travel between the ends', example: '560 mm' }),
  speed: quantity('speed', { range: 'exact', means: 'greatest speed', example: '220 mm/s' }),
  acceleration: quantity('acceleration', { range: 'exact', means: 'acceleration', example: '700 mm/s²' }),
  jerk: quantity('jerk', { range: 'exact', means: 'jerk, when the ramps are rounded', example: '10 m/s³' }),
  'moving-mass': quantity('mass', {
    range: 'doubt',
    means: 'mass that moves',
    example: '2.4..2.6 kg',
    measure: onScale,
  }),
  'running-force': quantity('force', {
    range: 'doubt',
    from: 0,
    means: 'force that keeps it moving',
    example: '5..8 N',
    measure: byPulling,
  }),
  'starting-force': quantity('force', {
    range: 'doubt',
    from: 0,
    means: 'force that starts it',
    example: '9 N',
    measure: byStarting,
  }),
  'cable-pull': quantity('force', {
    range: 'spread',
    from: 0,
    means: 'pull of cable chain or coil cord',
    example: '0..2 N',
  }),
  efficiency: quantity('ratio', {
    range: 'doubt',
    above: 0,
    to: 1,
    because: 'friction only takes',
    means: 'efficiency from motor to load',
    example: '80..90 %',
    measure: byLifting,
  }),
  reduction: quantity('ratio', {
    range: 'exact',
    means: 'turns of the motor for one of pulley, drum or screw',
    example: '3',
  }),
  incline: quantity('angle', {
    range: 'exact',
    from: 0,
    to: Math.PI / 2,
    because: 'an axis runs between level and upright',
    means: 'rise above level',
    example: '90°',
  }),
  share: quantity('ratio', {
    range: 'spread',
    above: 0,
    to: 1,
    because: share.because,
    means: 'largest share of the axis on one motor',
    example: '50..65 %',
  }),
  'loses-place-at': quantity('speed', {
    range: 'doubt',
    means: 'speed at which it was seen to lose its place',
    example: '420..440 mm/s',
    measure: bySpeeding,
  }),
  accuracy: quantity('length', { range: 'exact', means: 'way that may be lost at a turn back', example: '1 mm' }),
  'approach-speed': quantity('speed', { range: 'exact', means: 'speed at which switches are met', example: '60 mm/s' }),
  overtravel: quantity('length', {
    range: 'exact',
    means: 'room between the switch and the hard end',
    example: '20 mm',
  }),
  stopping: z.strictObject({
    reaction: quantity('time', {
      range: 'spread',
      from: 0,
      means: 'time from the contact to the ramp',
      example: '2..12 ms',
    }).optional(),
    acceleration: quantity('acceleration', {
      range: 'exact',
      means: 'acceleration of the brake ramp',
      example: '1500 mm/s²',
    }).optional(),
  }),
  unpowered: oneOf(['free', 'windings shorted', 'brake'], { means: 'what holds it without power' }),
  'rests-on': oneOf(['its drive', 'a catch', 'the ground'], { means: 'what bears a raised load while nobody plays' }),
  'harmless-energy': quantity('energy', {
    range: 'exact',
    means: 'energy of a landing that hurts nobody',
    example: '2 J',
  }),
  squares: oneOf(['every play', 'switching on'], { means: 'when two sides are squared' }),
  skew: quantity('length', {
    range: 'exact',
    means: 'lead of one side over the other that does no harm',
    example: '2 mm',
  }),
  'racking-force': quantity('force', {
    range: 'doubt',
    means: 'force on one side that the frame bears',
    example: '80..150 N',
    measure: {
      what: 'force on one side that the frame bears',
      instrument: 'luggage scale',
      procedure: 'Hold one side, pull the other until the beam lags by the harmless skew.',
      error: '±10 %',
      minutes: 10,
    },
  }),
} satisfies Shape;

/** Keys of an axis on a toothed belt. */
export const beltAxisKeys = {
  belt: nameOf('parts', { means: 'which belt it is', example: '2GT-6' }),
  belts: count({ means: 'belts side by side', example: '2' }),
  'pulley-teeth': count({ means: 'teeth of the motor pulley', example: '20', from: 6 }),
  'pulley-inertia': quantity('inertia', {
    range: 'exact',
    from: 0,
    means: 'inertia of the pulley that drives the belt',
    example: '12 g·cm²',
  }),
  wrap: quantity('angle', {
    range: 'exact',
    below: 2 * Math.PI,
    above: 0,
    because: 'a belt touches part of a pulley',
    means: 'angle over which the belt lies on the motor pulley',
    example: '180°',
  }),
  'belt-span': quantity('length', { range: 'exact', means: 'distance from motor pulley to idler', example: '700 mm' }),
  pretension: quantity('force', {
    range: 'doubt',
    from: 0,
    means: 'tension of the belt at rest',
    example: '20..30 N',
    measure: byNote,
  }),
  note: z.strictObject({
    span: quantity('length', { range: 'exact', means: 'free span that was plucked', example: '400 mm' }).optional(),
    tone: quantity('frequency', {
      range: 'doubt',
      means: 'tone of the plucked span',
      example: '58..62 Hz',
      measure: byNote,
    }).optional(),
  }),
  'frame-movement': quantity('ratio', {
    range: 'spread',
    from: 0,
    below: 0.1,
    because: 'no frame moves by a tenth',
    means: 'share by which the frame grows and shrinks with the weather',
    example: '0..0.03 %',
  }),
} satisfies Shape;

/** Keys of an axis on a screw. */
export const screwAxisKeys = {
  screw: z.strictObject({
    thread: oneOf(['square', 'trapezoidal', 'ball'], { means: 'form of the thread' }).optional(),
    lead: quantity('length', { range: 'exact', means: 'travel for one turn', example: '8 mm' }).optional(),
    diameter: quantity('length', { range: 'exact', means: 'mean diameter of the thread', example: '7 mm' }).optional(),
    'root-diameter': quantity('length', {
      range: 'exact',
      means: 'diameter of the core',
      example: '6.2 mm',
    }).optional(),
    length: quantity('length', { range: 'exact', means: 'length between the supports', example: '320 mm' }).optional(),
    ends: oneOf(['fixed-free', 'supported-supported', 'fixed-supported', 'fixed-fixed'], {
      means: 'how the ends are held',
    }).optional(),
    friction: quantity('ratio', {
      range: 'doubt',
      from: 0,
      below: 1,
      because: 'more than one binds',
      means: 'friction in the thread',
      example: '0.1..0.2',
      measure: byTilting,
    }).optional(),
  }),
} satisfies Shape;

/** Keys of a hoist. */
export const hoistAxisKeys = {
  load: quantity('mass', { range: 'spread', from: 0, means: 'what it lifts', example: '0..140 g' }),
  drum: z.strictObject({
    diameter: quantity('length', { range: 'exact', means: 'diameter of the drum', example: '32 mm' }).optional(),
    width: quantity('length', { range: 'exact', means: 'width between the flanges', example: '24 mm' }).optional(),
    flange: quantity('length', { range: 'exact', means: 'height of the flanges', example: '6 mm' }).optional(),
    surface: oneOf(['smooth', 'grooved'], { means: 'surface of the drum' }).optional(),
    lay: quantity('length', { range: 'exact', means: 'distance from turn to turn', example: '1.4 mm' }).optional(),
    layers: count({ means: 'layers that it is meant to wind', example: '1' }).optional(),
    'dead-turns': count({ means: 'turns that never leave the drum', example: '3', from: 0 }).optional(),
    'keeper-gap': quantity('length', {
      range: 'exact',
      from: 0,
      means: 'gap between the flanges and the keeper round them',
      example: '0.5 mm',
    }).optional(),
    inertia: quantity('inertia', {
      range: 'exact',
      from: 0,
      means: 'inertia of the drum',
      example: '150 g·cm²',
    }).optional(),
  }),
  line: z.strictObject({
    diameter: quantity('length', { range: 'exact', means: 'diameter of the line', example: '1.2 mm' }).optional(),
    kind: oneOf(['braid', 'cord', 'wire'], { means: 'kind of line' }).optional(),
  }),
  fairlead: z.strictObject({
    distance: quantity('length', {
      range: 'exact',
      means: 'distance from the drum to the fairlead',
      example: '190 mm',
    }).optional(),
    offset: quantity('length', {
      range: 'exact',
      from: 0,
      means: 'fairlead beside the middle of the turns',
      example: '2 mm',
    }).optional(),
  }),
  'slack-switch': nameOf('signals', { means: 'switch that feels slack line', example: 'S7' }),
  'slack-room': quantity('length', {
    range: 'exact',
    from: 0,
    means: 'slack that lever or spring takes up',
    example: '40 mm',
  }),
  'lands-after': quantity('length', {
    range: 'spread',
    from: 0,
    means: 'way down after which the load may land',
    example: '400..700 mm',
  }),
} satisfies Shape;

/** Keys of a belt. */
export const beltPartKeys = {
  pitch: quantity('length', { range: 'exact', means: 'pitch', example: '2 mm' }),
  width: quantity('length', { range: 'exact', means: 'width', example: '6 mm' }),
  'allowable-tension': quantity('force', {
    range: 'doubt',
    means: 'tension that it bears in the long run',
    example: '20..30 N',
    measure: bySheet,
  }),
  'axial-stiffness': quantity('axial-stiffness', {
    range: 'doubt',
    means: 'force for a whole length of stretch',
    example: '10..25 kN',
    measure: byStretching,
  }),
  'mass-per-length': quantity('mass-per-length', {
    range: 'doubt',
    means: 'mass of a length',
    example: '8.4 g/m',
    measure: byWeighing,
  }),
  play: quantity('length', {
    range: 'doubt',
    from: 0,
    means: 'play of a tooth in its groove',
    example: '0..0.05 mm',
    measure: byRocking,
  }),
} satisfies Shape;

/** Keys of a cable as laid. */
export const cableKeys = {
  parallel: count({ means: 'cores in parallel for each lead', example: '1' }),
  'loop-resistance': quantity('resistance', {
    range: 'doubt',
    from: 0,
    means: 'resistance out and back, as measured',
    example: '0.26 ohm',
    measure: byOhms,
  }),
} satisfies Shape;

/** Keys of a kind of cable. */
export const cablePartKeys = {
  core: quantity('conductor-area', { range: 'exact', means: 'section of one core', example: '0.5 mm²' }),
  cores: count({ means: 'cores', example: '4' }),
  'resistance-per-length': quantity('resistance-per-length', {
    range: 'doubt',
    means: 'resistance of one core',
    example: '39 ohm/km',
    measure: byOhms,
  }),
  stranding: oneOf(['solid', 'stranded', 'fine'], { means: 'how its cores are made' }),
} satisfies Shape;
