/** The ESP32 on its usual module and board, by the numbers of its GPIO. */
import { span, told, type Ability, type Board, type BootRole, type Pin } from './board.ts';

const gpio = told('published', 'esp32-gpio-docs');
const bootMode = told('published', 'esp32-boot-mode');
const variant = told('published', 'esp32-board-pins');
const memory = told('memory', 'board-memory');

/** On the flash of the module. */
const flashPins = gpio(span(6, 11));
/** Inputs without output and without pulls. */
const inputOnly = gpio(span(34, 39));
/** Used by a second memory on some modules. */
const secondMemory = gpio([16, 17]);
const debugPins = gpio(span(12, 15));
/** Read at the second converter, which stands still while the radio is on. */
const secondConverter = gpio([0, 2, 4, ...span(12, 15), ...span(25, 27)]);
const firstConverter = gpio(span(32, 39));

const boot = (wants: BootRole['wants'], because: string, by: typeof bootMode): BootRole => {
  const { source, status } = by(because);
  return { wants, because, source, status };
};
const roles: Readonly<Record<number, BootRole>> = {
  0: boot('high', 'held low, the board waits for a program instead of running its own', bootMode),
  1: boot('driven', 'the board prints on it as it starts', bootMode),
  2: boot('low', 'high, no new program can be loaded', bootMode),
  5: boot('high', 'it sets the timing of a bus as the board starts', memory),
  12: boot('low', 'high, the memory of the program gets 1.8 V and the board does not start', bootMode),
  15: boot('high', 'low, the board starts without a word', bootMode),
};

const spareOf = (n: number): Pin['spare'] =>
  roles[n] !== undefined || n === 3
    ? { cost: 40, because: 'the board needs it while it starts' }
    : secondMemory.is.includes(n)
      ? { cost: 15, because: 'some modules keep a second memory here' }
      : debugPins.is.includes(n)
        ? { cost: 5, because: 'a debugger would sit here' }
        : undefined;

const pinOf = (n: number): Pin => {
  const isInput = inputOnly.is.includes(n);
  const spare = spareOf(n);
  const role = roles[n];
  const isAnalog = firstConverter.is.includes(n) || secondConverter.is.includes(n);
  const can: Ability[] = [
    'input',
    'interrupt',
    'pin-change',
    ...(isInput ? [] : (['output', 'pwm', 'servo'] as const)),
    ...(isAnalog ? (['analog'] as const) : []),
  ];
  return {
    name: `GPIO${n}`,
    also: [String(n), `IO${n}`],
    number: n,
    can,
    interrupt: String(n),
    bank: '0',
    pulls: isInput ? [] : ['up', 'down'],
    ...(role ? { boot: role } : {}),
    ...(spare ? { spare } : {}),
  };
};

/** No module brings these out. */
const missing: readonly number[] = [20, 24, 28, 29, 30, 31, 37, 38];
const pins = span(0, 39)
  .filter((n) => !flashPins.is.includes(n) && !missing.includes(n))
  .map(pinOf);

export const esp32: Board = {
  name: 'ESP32',
  macro: memory('ARDUINO_ARCH_ESP32'),
  tables: [
    gpio('inputs only, strapping, flash, analogue, debugger'),
    variant('pins of I²C and SPI'),
    memory('pins of the second and third serial port; which pins a module leaves out'),
  ],
  volts: memory(3.3),
  mostInput: memory(3.6),
  leastHigh: memory(2.64),
  clock: memory(240e6),
  flash: memory(4 * 1024 * 1024),
  ram: memory(320 * 1024),
  wear: memory([1e4, 1e5]),
  pull: memory([30e3, 80e3]),
  pinCurrent: memory(0.028),
  testedCurrent: memory(0.02),
  groups: [],
  atReset: memory('most pins are inputs that float; some are pulled, and the board prints on GPIO1'),
  portResets: bootMode(true, 'automatic bootloader'),
  watchdogStays: memory(false),
  clockBits: memory(32),
  servo: memory({ timers: [], each: 0 }),
  stepping: memory(['timer 0', 'timer 1', 'timer 2', 'timer 3']),
  cycles: told('memory', 'controller-experience')({ own: '60..400', each: '20..60' }),
  logPins: ['GPIO1', 'GPIO3'],
  pins,
  buses: [
    {
      kind: 'uart',
      name: 'uart 1',
      sets: [
        ['GPIO26', 'GPIO25'],
        ['GPIO33', 'GPIO32'],
      ],
    },
    {
      kind: 'uart',
      name: 'uart 2',
      sets: [
        ['GPIO17', 'GPIO16'],
        ['GPIO27', 'GPIO14'],
      ],
    },
    { kind: 'i2c', name: 'i2c', sets: [['GPIO21', 'GPIO22']] },
    { kind: 'spi', name: 'spi', sets: [['GPIO19', 'GPIO23', 'GPIO18']] },
  ],
};
