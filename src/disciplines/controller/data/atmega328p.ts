/** The ATmega328P on its usual boards. Ports, timers and interrupts as the public core of those boards lists them. */
import { span, told, type Ability, type Board, type Group, type Pin } from './board.ts';

const sheet = told('published', 'atmega328p-datasheet');
const memory = told('memory', 'board-memory');

const ANALOG = 14;
/** Two more analogue inputs of the flat package, without anything else on them. */
const ANALOG_ONLY = 20;

const portOf = (n: number): string => (n < 8 ? `PD${n}` : n < 14 ? `PB${n - 8}` : `PC${n - 14}`);
const timers: Readonly<Record<number, string>> = { 3: '2B', 5: '0B', 6: '0A', 9: '1A', 10: '1B', 11: '2A' };
const interrupts: Readonly<Record<number, string>> = { 2: '0', 3: '1' };

const spareOf = (n: number): Pin['spare'] =>
  n <= 1
    ? { cost: 40, because: 'the USB port shares it' }
    : n === 13
      ? { cost: 12, because: 'the lamp on the board hangs on it and blinks while the board starts' }
      : n >= 11 && n <= 12
        ? { cost: 3, because: 'SPI sits here and nowhere else' }
        : undefined;

const pinOf = (n: number): Pin => {
  if (n >= ANALOG_ONLY)
    return {
      name: `A${n - ANALOG}`,
      also: [String(n)],
      number: n,
      can: ['analog'],
      pulls: [],
      spare: { cost: 1, because: 'only the flat package has it' },
    };
  const timer = timers[n];
  const interrupt = interrupts[n];
  const spare = spareOf(n);
  const can: Ability[] = [
    'input',
    'output',
    'servo',
    'pin-change',
    ...(timer ? (['pwm'] as const) : []),
    ...(n >= ANALOG ? (['analog'] as const) : []),
    ...(interrupt ? (['interrupt'] as const) : []),
  ];
  return {
    name: n >= ANALOG ? `A${n - ANALOG}` : String(n),
    also: n >= ANALOG ? [String(n)] : [`D${n}`],
    number: n,
    port: portOf(n),
    can,
    ...(timer ? { pwm: { timer: `timer ${timer[0]!}`, channel: timer } } : {}),
    ...(interrupt ? { interrupt } : {}),
    bank: n < 8 ? '2' : n < 14 ? '0' : '1',
    pulls: ['up'],
    ...(spare ? { spare } : {}),
  };
};

const pins = span(0, 21).map(pinOf);
const named = (...numbers: readonly number[]): readonly string[] => numbers.map((n) => pins[n]!.name);
const group = (name: string, way: Group['way'], most: number, numbers: readonly number[]): Group => ({
  name,
  way,
  pins: named(...numbers),
  most: sheet(most, 'DC characteristics, notes on sums of currents, p. 301'),
});

export const atmega328p: Board = {
  name: 'ATmega328P',
  macro: memory('__AVR_ATmega328P__'),
  tables: [
    told('published', 'board-pins-328p')('ports, timers, interrupts, pin-change banks, buses'),
    memory('A6 and A7 read analogue levels and do nothing else'),
  ],
  volts: memory(5),
  mostInput: memory(5.5),
  leastHigh: memory(4.2),
  clock: memory(16e6),
  flash: memory(32 * 1024),
  ram: memory(2 * 1024),
  eeprom: memory(1024),
  wear: memory([1e5, 1e5]),
  pull: memory([20e3, 50e3]),
  pinCurrent: memory(0.04),
  testedCurrent: memory(0.02),
  totalCurrent: memory(0.2),
  groups: [
    group('C-D0to4-high', 'source', 0.15, [...span(14, 19), ...span(0, 4)]),
    group('B-D5to7-high', 'source', 0.15, [...span(8, 13), ...span(5, 7)]),
    group('C-low', 'sink', 0.1, span(14, 19)),
    group('B-D5to7-low', 'sink', 0.1, [...span(8, 13), ...span(5, 7)]),
    group('D0to4-low', 'sink', 0.1, span(0, 4)),
  ],
  atReset: memory('every pin is an input without a pull-up, so that what it drives floats'),
  portResets: memory(true),
  watchdogStays: told('published', 'avr-watchdog-notes')(true),
  clockBits: memory(32),
  servo: told('published', 'servo-timers-avr')({ timers: ['timer 1'], each: 12 }),
  tone: told('published', 'tone-timer-avr')('timer 2'),
  millis: told('published', 'tone-timer-avr')('timer 0', 'beside it: the core keeps its clock on timer 0'),
  stepping: memory(['timer 1', 'timer 2']),
  cycles: told('memory', 'controller-experience')({ own: '60..140', each: '35..80' }),
  logPins: ['0', '1'],
  pins,
  buses: [
    { kind: 'i2c', name: 'i2c', sets: [['A4', 'A5']] },
    { kind: 'spi', name: 'spi', sets: [['12', '11', '13']] },
  ],
};
