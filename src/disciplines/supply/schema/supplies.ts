/** Keys of supplies and converters, of what else hangs on their rails, of fuses and of the wires behind them. */
import * as z from 'zod';
import { nameOf, namesOf, oneOf, quantity, yesNo, type Shape } from '../../../contract/index.ts';
import type { Measurement } from '../../../kernel/index.ts';

const byWattmeter: Measurement = {
  what: 'power from the socket',
  instrument: 'wattmeter in a socket adapter',
  procedure:
    'Plug the supply into the adapter, let it settle for ten minutes, read the watts; never open the mains side.',
  error: '±3 %, at least 0.3 W',
  minutes: 15,
};
const byBothSides: Measurement = {
  what: 'efficiency of the supply',
  instrument: 'wattmeter in a socket adapter, multimeter, a lamp as load',
  procedure:
    'Read the watts at the socket, volts and ampere at the load; their quotient, less what it takes without load.',
  error: '±4 %',
  minutes: 20,
};
const byLoading: Measurement = {
  what: 'current at which the supply limits',
  instrument: 'multimeter and lamps or power resistors',
  procedure:
    'Add load on load to the low-voltage side, fuse in place, until the voltage falls by a tenth; the ampere just before. Resistors get hot.',
  error: '±5 %',
  minutes: 20,
};
const byAmmeter: Measurement = {
  what: 'current of the load',
  instrument: 'multimeter in series',
  procedure: 'Switch off, put the meter in series, switch on; note the most over a minute in every mode.',
  error: '±2 %',
  minutes: 10,
};
const byData: Measurement = {
  what: 'heating value of the fuse',
  instrument: 'data sheet of the fuse',
  procedure: 'Look up the melting I²t of that make and rating.',
  error: 'none',
  minutes: 15,
};
const byDrop: Measurement = {
  what: 'resistance of a fuse',
  instrument: 'multimeter',
  procedure: 'With the load on, millivolts over the fuse by the ampere through it; on the low-voltage side only.',
  error: '±5 %',
  minutes: 10,
};
const byWarmth: Measurement = {
  what: 'thermal resistance',
  instrument: 'contact thermometer and multimeter',
  procedure: 'Run it at a known power until an hour brings no change; rise above the air over watts.',
  error: '±10 %',
  minutes: 90,
};

/** What a supply or converter is; stated at it, or at the part that it is. */
export const supplyKeys = {
  power: quantity('power', { range: 'exact', means: 'most that all its rails give together', example: '100 W' }),
  efficiency: quantity('ratio', {
    range: 'doubt',
    above: 0,
    to: 1,
    because: 'a supply gives no more than it takes',
    means: 'efficiency at the loads that occur',
    example: '82..88 %',
    measure: byBothSides,
  }),
  'no-load': quantity('power', {
    range: 'doubt',
    from: 0,
    means: 'power that it takes without any load',
    example: '0.3..0.8 W',
    measure: byWattmeter,
  }),
  minimum: z.record(
    z.string(),
    quantity('current', { range: 'exact', means: 'least load of the rail', example: '0.3 A' }),
  ),
  overload: oneOf(['constant current', 'hiccup', 'fold-back', 'shut-off'], { means: 'what it does when overloaded' }),
  'overload-current': quantity('current', {
    range: 'doubt',
    means: 'current at which it limits',
    example: '4.4..6.3 A',
    measure: byLoading,
  }),
  'short-circuit-current': quantity('current', {
    range: 'doubt',
    from: 0,
    means: 'current that it goes on giving into a short circuit',
    example: '0.8..1.2 A',
  }),
  'start-within': quantity('time', {
    range: 'doubt',
    means: 'time that it goes on limiting before it gives up a start',
    example: '50..200 ms',
  }),
  'output-capacitance': quantity('capacitance', {
    range: 'doubt',
    from: 0,
    means: 'capacitors at its output',
    example: '1000..2200 µF',
  }),
  'input-capacitance': quantity('capacitance', {
    range: 'doubt',
    from: 0,
    means: 'capacitors at its input, when it is a converter',
    example: '47..470 µF',
  }),
  'most-air': quantity('temperature', {
    range: 'exact',
    from: 273.15,
    means: 'hottest air in which it gives its full power',
    example: '50 degC',
  }),
  clamp: z.strictObject({
    volts: quantity('voltage', {
      range: 'doubt',
      means: 'voltage at which the clamp conducts',
      example: '34..38 V',
    }).optional(),
    power: quantity('power', {
      range: 'exact',
      means: 'power that the clamp bears for good',
      example: '10 W',
    }).optional(),
  }),
} satisfies Shape;

/** Keys of a supply as it stands in the machine. */
export const supplyEntryKeys = {
  from: nameOf('rails', { means: 'rail that feeds it, when it is a converter', example: '24V' }),
  fuse: nameOf('fuses', { means: 'fuse that feeds it, when it is a converter', example: 'F2' }),
  ...supplyKeys,
} satisfies Shape;

/** What hangs on a rail and is no drive. */
export const loadKeys = {
  rail: nameOf('rails', { means: 'rail that feeds it', example: '5V' }),
  fuse: nameOf('fuses', { means: 'fuse that feeds it', example: 'F3' }),
  modes: namesOf('modes', {
    means: 'modes in which it is on; all of them when left out',
    example: '[aiming, fetching]',
  }),
  current: quantity('current', {
    range: 'spread',
    from: 0,
    means: 'current while it is on',
    example: '0.2 A',
    measure: byAmmeter,
  }),
  power: quantity('power', {
    range: 'spread',
    from: 0,
    means: 'power while it is on, whatever the voltage',
    example: '3 W',
  }),
  peak: quantity('current', {
    range: 'spread',
    means: 'most that it takes for moments: start, stall',
    example: '1.8 A',
    measure: byAmmeter,
  }),
  stalled: quantity('ratio', {
    range: 'spread',
    from: 0,
    to: 1,
    because: 'a share of the time lies between none and all of it',
    means: 'share of its modes in which it stalls',
    example: '5..10 %',
  }),
  'least-volts': quantity('voltage', { range: 'exact', means: 'least voltage at which it works', example: '4.75 V' }),
  capacitance: quantity('capacitance', {
    range: 'doubt',
    from: 0,
    means: 'capacitors at its input',
    example: '220 µF',
  }),
  'thermal-resistance': quantity('thermal-resistance', {
    range: 'doubt',
    means: 'thermal resistance to the air',
    example: '15..30 K/W',
    measure: byWarmth,
  }),
  'most-temperature': quantity('temperature', {
    range: 'exact',
    from: 273.15,
    means: 'hottest that it may get',
    example: '80 degC',
  }),
} satisfies Shape;

/** A fuse and what is behind it. */
export const fuseKeys = {
  rating: quantity('current', { range: 'exact', means: 'rated current', example: '3.15 A' }),
  kind: oneOf(['time-lag', 'fast'], { means: 'kind of fuse' }),
  'sure-opening': quantity('ratio', {
    range: 'exact',
    above: 1,
    because: 'no fuse opens at its rating',
    means: 'current at which it is sure to open, over its rating',
    example: '2.1',
  }),
  melting: quantity('current-squared-time', {
    range: 'doubt',
    means: 'let-through that melts it',
    example: '31 A²·s',
    measure: byData,
  }),
  derating: quantity('temperature-coefficient', {
    range: 'doubt',
    from: 0,
    below: 0.0098,
    because: 'a fuse that loses more is for another place',
    means: 'loss of rating for each kelvin above 23 °C',
    example: '0.2..0.5 %/K',
    measure: byData,
  }),
  cable: nameOf('cables', { means: 'wire from it to what it feeds', example: 'W20' }),
  'contact-resistance': quantity('resistance', {
    range: 'doubt',
    from: 0,
    means: 'contacts and capacitor, beside wire and fuse',
    example: '20..150 mohm',
  }),
  resistance: quantity('resistance', {
    range: 'doubt',
    from: 0,
    means: 'resistance of the fuse itself, from cold to fully loaded',
    example: '40..45 mohm',
    measure: byDrop,
  }),
} satisfies Shape;

/** Keys of a wire as it is laid. */
export const laidKeys = {
  laid: oneOf(['in trunking', 'in free air'], { means: 'how it is laid' }),
  grouping: quantity('ratio', {
    range: 'spread',
    above: 0,
    to: 1,
    because: 'company never cools',
    means: 'factor for circuits side by side',
    example: '0.65..0.8',
  }),
  'continuous-current': quantity('current', {
    range: 'exact',
    means: 'current that a table gives it for good at 40 °C, one circuit',
    example: '7.5 A',
  }),
} satisfies Shape;

export const wirePartKeys = {
  insulation: oneOf(['PVC 70', 'PVC 90', 'XLPE 90', 'silicone 180'], { means: 'what insulates its cores' }),
} satisfies Shape;

/** What a mode does, beside its share of the time. */
export const modeKeys = {
  moving: namesOf('axes', { means: 'axes that move in it', example: '[x, y]' }),
  unpowered: namesOf('axes', { means: 'axes whose drives are off in it', example: '[z]' }),
  idle: yesNo({ means: 'whether nobody plays in it' }),
} satisfies Shape;
