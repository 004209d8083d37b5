/** The RP2040 on its usual board, by the numbers of its GPIO. */
import { span, told, type Ability, type Board, type Bus, type Pin } from './board.ts';

const docs = told('published', 'rp2040-language-docs');
const slices = told('published', 'rp2040-pwm-slices');
const memory = told('memory', 'board-memory');

/** Four of them serve the board itself: supply, sense of the USB voltage, the lamp, sense of the supply. */
const inside: readonly number[] = [23, 24, 25, 29];
const ANALOG = 26;

/** Each slice has two channels; pins sixteen apart share one. */
const sliceOf = (n: number): number => (n >> 1) & 7;

const pinOf = (n: number): Pin => {
  const can: Ability[] = [
    'input',
    'output',
    'pwm',
    'interrupt',
    'pin-change',
    'servo',
    ...(n >= ANALOG ? (['analog'] as const) : []),
  ];
  return {
    name: `GP${n}`,
    also: [String(n), `GPIO${n}`],
    number: n,
    can,
    pwm: { timer: `slice ${sliceOf(n)}`, channel: `${sliceOf(n)}${n % 2 === 0 ? 'A' : 'B'}` },
    interrupt: String(n),
    bank: '0',
    pulls: ['up', 'down'],
    ...(n <= 1 ? { spare: { cost: 3, because: 'a second log would come out here' } } : {}),
  };
};

const numbers = span(0, 28).filter((n) => !inside.includes(n));
const has = (n: number): boolean => numbers.includes(n);
const named = (set: readonly number[]): readonly string[] => set.map((n) => `GP${n}`);
const setsOf = (starts: readonly number[], lines: readonly number[], unit: number, of: (n: number) => number) =>
  starts
    .filter((n) => of(n) === unit)
    .map((n) => lines.map((line) => n + line))
    .filter((set) => set.every(has))
    .map(named);

const uartOf = (n: number): number => ((n + 4) >> 3) & 1;
const i2cOf = (n: number): number => (n >> 1) & 1;
const spiOf = (n: number): number => (n >> 3) & 1;
const fours = span(0, 7).map((k) => 4 * k);
const twos = span(0, 14).map((k) => 2 * k);

const bus = (kind: Bus['kind'], unit: number): Bus => ({
  kind,
  name: `${kind} ${unit}`,
  sets:
    kind === 'uart'
      ? setsOf(fours, [0, 1], unit, uartOf)
      : kind === 'i2c'
        ? setsOf(twos, [0, 1], unit, i2cOf)
        : setsOf(fours, [0, 3, 2], unit, spiOf),
});

export const rp2040: Board = {
  name: 'RP2040',
  macro: memory('ARDUINO_ARCH_RP2040'),
  tables: [
    docs('30 pins, four of them analogue, two of each bus, eight slices of two channels'),
    slices('which slice and channel a pin has, so that pins sixteen apart share one'),
    memory('which pins each bus may sit on; which four serve the board itself'),
  ],
  volts: memory(3.3),
  mostInput: told('published', 'rp2040-current-pinout')(3.3),
  leastHigh: memory(2.62),
  clock: memory(125e6),
  flash: memory(2 * 1024 * 1024),
  ram: memory(264 * 1024),
  wear: memory([1e5, 1e5]),
  pull: memory([50e3, 80e3]),
  pinCurrent: memory(0.012),
  testedCurrent: memory(0.004),
  totalCurrent: told('published', 'rp2040-current-pinout')(0.05, 'sum of GPIO and QSPI'),
  groups: [],
  atReset: memory('every pin is an input with a weak pull-down'),
  portResets: memory(false),
  watchdogStays: memory(false),
  clockBits: memory(32),
  servo: memory({ timers: [], each: 0 }),
  stepping: memory(['alarm 1', 'alarm 2', 'alarm 3']),
  cycles: told('memory', 'controller-experience')({ own: '60..240', each: '20..60' }),
  logPins: [],
  pins: numbers.map(pinOf),
  buses: (['uart', 'i2c', 'spi'] as const).flatMap((kind) => [bus(kind, 0), bus(kind, 1)]),
};
