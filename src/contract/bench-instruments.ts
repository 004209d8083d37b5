/**
 * Instruments of an ordinary bench, with limits of error that they keep when they are in order. These are from experience; who
 * knows their own instrument better writes its error behind the reading, `0.94 V ±0.1%`.
 */
import type { BenchReading } from './bench.ts';

type Read = Pick<BenchReading, 'means' | 'example'>;
const instrument =
  (of: Omit<BenchReading, 'means' | 'example'>) =>
  (read: Read): BenchReading => ({ ...of, ...read });

const ZERO_CELSIUS = 273.15;
const WEIGHT = 9.80665;

export const voltmeter = instrument({
  of: 'voltage',
  instrument: 'multimeter, volts',
  least: 0.01,
  most: 60,
  share: 0.005,
  rest: 0.002,
});
export const ammeter = instrument({
  of: 'current',
  instrument: 'multimeter, ampere',
  least: 0.01,
  most: 10,
  share: 0.01,
  rest: 0.005,
});
export const inductanceMeter = instrument({
  of: 'inductance',
  instrument: 'LCR meter at 1 kHz',
  least: 1e-5,
  most: 1,
  share: 0.02,
  rest: 2e-6,
});
export const luggageScale = instrument({
  of: 'force',
  instrument: 'luggage scale that keeps the most',
  least: 0.5,
  most: 50 * WEIGHT,
  share: 0.02,
  rest: 0.2,
});
export const hangingScale = instrument({
  of: 'mass',
  instrument: 'luggage scale',
  least: 0.05,
  most: 50,
  share: 0.02,
  rest: 0.02,
});
export const kitchenScale = instrument({
  of: 'mass',
  instrument: 'kitchen scale',
  least: 0.005,
  most: 5,
  share: 0.005,
  rest: 0.002,
});
export const caliper = instrument({
  of: 'length',
  instrument: 'caliper',
  least: 0.0001,
  most: 0.2,
  share: 0,
  rest: 0.0001,
});
export const tape = instrument({
  of: 'length',
  instrument: 'tape measure',
  least: 0.001,
  most: 5,
  share: 0.001,
  rest: 0.001,
});
export const stopwatch = instrument({
  of: 'time',
  instrument: 'stopwatch',
  least: 1,
  most: 3600,
  share: 0.0001,
  rest: 0.3,
});
export const thermometer = instrument({
  of: 'temperature',
  instrument: 'thermometer',
  least: ZERO_CELSIUS - 10,
  most: ZERO_CELSIUS + 50,
  share: 0,
  rest: 1,
});
export const contactThermometer = instrument({
  of: 'temperature',
  instrument: 'contact thermometer',
  least: ZERO_CELSIUS - 10,
  most: ZERO_CELSIUS + 150,
  share: 0,
  rest: 2,
});
/** Counts from one or from none up, without an error unless one is named. */
export const counted = (read: Read, { least = 1, most = 1000, rest = 0 } = {}): BenchReading => ({
  ...read,
  of: 'count',
  instrument: 'counting',
  least,
  most,
  share: 0,
  rest,
  whole: true,
});
