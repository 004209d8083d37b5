/** The ATmega2560 on its usual board. Ports, timers and interrupts as the public core of that board lists them. */
import { told, type Ability, type Board, type Pin } from './board.ts';

const core = told('published', 'board-pins-2560');
const sheet = told('published', 'atmega2560-datasheet');
const servos = told('published', 'servo-timers-avr');
const memory = told('memory', 'board-memory');

const ANALOG = 54;
const downward = (port: string): string[] => [7, 6, 5, 4, 3, 2, 1, 0].map((bit) => `${port}${bit}`);
const upward = (port: string): string[] => downward(port).toReversed();

/** Port of each pin, from pin 0 on. */
const ports: readonly string[] = [
  'E0 E1 E4 E5 G5 E3 H3 H4 H5 H6 B4 B5 B6 B7 J1 J0 H1 H0 D3 D2 D1 D0'.split(' '),
  upward('A'),
  downward('C'),
  'D7 G2 G1 G0'.split(' '),
  downward('L'),
  'B3 B2 B1 B0'.split(' '),
  upward('F'),
  upward('K'),
].flat();

/** Timer and channel of the pins that have one: those from 2 on, and three on port L. */
const timers: Readonly<Record<number, string>> = Object.fromEntries([
  ...'3B 3C 0B 3A 4A 4B 4C 2B 2A 1A 1B 0A'.split(' ').map((channel, k) => [2 + k, channel] as const),
  ...'5C 5B 5A'.split(' ').map((channel, k) => [44 + k, channel] as const),
]);
const interrupts: Readonly<Record<number, string>> = { 2: '0', 3: '1', 18: '5', 19: '4', 20: '3', 21: '2' };

const bankOf = (n: number): string | undefined =>
  (n >= 10 && n <= 13) || (n >= 50 && n <= 53) ? '0' : n >= 62 ? '2' : undefined;

const spareOf = (n: number): Pin['spare'] =>
  n <= 1
    ? { cost: 40, because: 'the USB port shares it' }
    : n === 13
      ? { cost: 12, because: 'the lamp on the board hangs on it and blinks while the board starts' }
      : n >= 50 && n <= 53
        ? { cost: 4, because: 'SPI sits here and nowhere else' }
        : undefined;

/** The servo library keeps the number of a pin in six bits, so that it would drive another pin than one of these. */
const BEYOND_SIX_BITS = 64;

const pinOf = (port: string, n: number): Pin => {
  const timer = timers[n];
  const interrupt = interrupts[n];
  const bank = bankOf(n);
  const spare = spareOf(n);
  const isAnalog = n >= ANALOG;
  const can: Ability[] = [
    'input',
    'output',
    ...(timer ? (['pwm'] as const) : []),
    ...(isAnalog ? (['analog'] as const) : []),
    ...(interrupt ? (['interrupt'] as const) : []),
    ...(bank ? (['pin-change'] as const) : []),
    ...(n < BEYOND_SIX_BITS ? (['servo'] as const) : []),
  ];
  return {
    name: isAnalog ? `A${n - ANALOG}` : String(n),
    also: isAnalog ? [String(n)] : [`D${n}`],
    number: n,
    port: `P${port}`,
    can,
    ...(timer ? { pwm: { timer: `timer ${timer[0]!}`, channel: timer } } : {}),
    ...(interrupt ? { interrupt } : {}),
    ...(bank ? { bank } : {}),
    pulls: ['up'],
    ...(spare ? { spare } : {}),
  };
};

const pins = ports.map(pinOf);
const on = (...wanted: readonly string[]): readonly string[] =>
  pins.flatMap(({ name, port }) => (wanted.some((one) => port!.startsWith(`P${one}`)) ? [name] : []));

const group = (name: string, most: number, ...wanted: readonly string[]) => ({
  name,
  pins: on(...wanted),
  way: 'either' as const,
  most: sheet(most, 'DC characteristics, notes on sums of currents'),
});

export const atmega2560: Board = {
  name: 'ATmega2560',
  macro: memory('__AVR_ATmega2560__'),
  tables: [
    core('ports, timers, interrupts, pin-change banks, buses'),
    servos('pins of which the number takes more than six bits drive no servo', 'src/avr, ServoPin_t'),
  ],
  volts: memory(5),
  mostInput: memory(5.5),
  leastHigh: sheet(4.2, 'DC characteristics, output high at 20 mA and 5 V'),
  clock: memory(16e6),
  flash: memory(256 * 1024),
  ram: memory(8 * 1024),
  eeprom: memory(4 * 1024),
  wear: memory([1e5, 1e5]),
  pull: memory([20e3, 50e3]),
  pinCurrent: sheet(0.04, 'absolute maximum ratings'),
  testedCurrent: sheet(0.02, 'DC characteristics'),
  totalCurrent: sheet(0.2, 'absolute maximum ratings, VCC and GND pins'),
  groups: [
    group('A-J-G2', 0.2, 'J', 'A', 'G2'),
    group('C-D-L-G0-G1', 0.2, 'C', 'G0', 'G1', 'D', 'L'),
    group('B-H-G3-G4', 0.2, 'G3', 'G4', 'B', 'H'),
    group('E-G5', 0.1, 'E', 'G5'),
    group('F-K', 0.1, 'F', 'K'),
  ],
  atReset: memory('every pin is an input without a pull-up, so that what it drives floats'),
  portResets: memory(true),
  watchdogStays: told('published', 'avr-watchdog-notes')(true),
  clockBits: memory(32),
  servo: servos({ timers: ['timer 5', 'timer 1', 'timer 3', 'timer 4'], each: 12 }),
  tone: told('published', 'tone-timer-avr')('timer 2'),
  millis: told('published', 'tone-timer-avr')('timer 0', 'beside it: the core keeps its clock on timer 0'),
  stepping: memory(['timer 1', 'timer 3', 'timer 4', 'timer 5']),
  cycles: told('memory', 'controller-experience')({ own: '60..140', each: '35..80' }),
  logPins: ['0', '1'],
  pins,
  buses: [
    { kind: 'uart', name: 'serial 1', sets: [['18', '19']] },
    { kind: 'uart', name: 'serial 2', sets: [['16', '17']] },
    { kind: 'uart', name: 'serial 3', sets: [['14', '15']] },
    { kind: 'i2c', name: 'i2c', sets: [['20', '21']] },
    { kind: 'spi', name: 'spi', sets: [['50', '51', '52']] },
  ],
};
