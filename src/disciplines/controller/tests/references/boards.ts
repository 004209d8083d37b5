/** Tables of pins as they were read in public sources, keyed in by hand and apart from the data of the boards. */
import { span } from '../../data/board.ts';

/**
 * Published: arduino/Arduino 431f319a, hardware/arduino/avr/variants/mega/pins_arduino.h,
 * `digital_pin_to_port_PGM`, `digital_pin_to_bit_mask_PGM`, `digital_pin_to_timer_PGM`, `digitalPinToInterrupt`, `digitalPinToPCMSK`.
 */
export const mega = {
  pins: 70,
  analogFrom: 54,
  ports: {
    PE: [0, 1, 2, 3, 5],
    PG: [4, 39, 40, 41],
    PH: [6, 7, 8, 9, 16, 17],
    PB: [10, 11, 12, 13, 50, 51, 52, 53],
    PJ: [14, 15],
    PD: [18, 19, 20, 21, 38],
    PA: span(22, 29),
    PC: span(30, 37),
    PL: span(42, 49),
    PF: span(54, 61),
    PK: span(62, 69),
  },
  /** Some bits, one or more of each port. */
  bits: {
    0: 'PE0',
    2: 'PE4',
    3: 'PE5',
    5: 'PE3',
    4: 'PG5',
    39: 'PG2',
    41: 'PG0',
    9: 'PH6',
    16: 'PH1',
    13: 'PB7',
    50: 'PB3',
    53: 'PB0',
    14: 'PJ1',
    18: 'PD3',
    21: 'PD0',
    38: 'PD7',
    22: 'PA0',
    29: 'PA7',
    30: 'PC7',
    37: 'PC0',
    42: 'PL7',
    46: 'PL3',
    49: 'PL0',
    54: 'PF0',
    61: 'PF7',
    62: 'PK0',
    69: 'PK7',
  },
  timers: {
    2: '3B',
    3: '3C',
    4: '0B',
    5: '3A',
    6: '4A',
    7: '4B',
    8: '4C',
    9: '2B',
    10: '2A',
    11: '1A',
    12: '1B',
    13: '0A',
    44: '5C',
    45: '5B',
    46: '5A',
  },
  interrupts: { 2: 0, 3: 1, 21: 2, 20: 3, 19: 4, 18: 5 },
  pinChange: [...span(10, 13), ...span(50, 53), ...span(62, 69)],
  /** Published: the notes of the data sheet by ports, brought to pins by the port map above. */
  groups: [
    { most: 0.2, pins: [14, 15, ...span(22, 29), 39] },
    { most: 0.2, pins: [...span(18, 21), ...span(30, 38), ...span(40, 49)] },
    { most: 0.2, pins: [...span(6, 13), 16, 17, ...span(50, 53)] },
    { most: 0.1, pins: span(0, 5) },
    { most: 0.1, pins: span(54, 69) },
  ],
  /** Published: arduino-libraries/Servo 3f163ecc, src/avr: pins on which no lamp dims any more, by number of servos. */
  lostToServos: {
    1: [44, 45, 46],
    12: [44, 45, 46],
    13: [11, 12, 44, 45, 46],
    25: [2, 3, 5, 11, 12, 44, 45, 46],
    37: [2, 3, 5, 6, 7, 8, 11, 12, 44, 45, 46],
  },
  /** Published: the same, six bits for the number of a pin. */
  noServoFrom: 64,
  /** Published: cores/arduino/Tone.cpp, timer 2. */
  lostToTones: [9, 10],
} as const;

/** Published: arduino/Arduino 442c768b, hardware/arduino/avr/variants/standard/pins_arduino.h, the same tables. */
export const standard = {
  pins: 20,
  analogFrom: 14,
  timers: { 3: '2B', 5: '0B', 6: '0A', 9: '1A', 10: '1B', 11: '2A' },
  interrupts: { 2: 0, 3: 1 },
  ports: { PD: span(0, 7), PB: span(8, 13), PC: span(14, 19) },
  i2c: ['A4', 'A5'],
  spi: ['12', '11', '13'],
  lostToServos: { 1: [9, 10] },
  lostToTones: [3, 11],
  /** Published: data sheet 8271H, p. 301. */
  groups: [
    { way: 'source', most: 0.15, pins: [...span(0, 4), ...span(14, 19)] },
    { way: 'source', most: 0.15, pins: span(5, 13) },
    { way: 'sink', most: 0.1, pins: span(14, 19) },
    { way: 'sink', most: 0.1, pins: span(5, 13) },
    { way: 'sink', most: 0.1, pins: span(0, 4) },
  ],
} as const;

/** Published: pico-sdk, hardware/pwm.h: which pins share a channel; MicroPython documents: analogue pins. */
export const rp2040Reference = {
  analog: [26, 27, 28, 29],
  sharing: [
    [0, 16],
    [1, 17],
    [2, 18],
    [6, 22],
    [10, 26],
    [12, 28],
  ],
  slices: { 0: '0A', 1: '0B', 2: '1A', 5: '2B', 15: '7B', 16: '0A', 21: '2B', 28: '6A' },
} as const;

/** Published: esp-idf 68cf4ef, gpio.rst; esptool 0480a5ec, boot-mode-selection.rst. */
export const esp32Reference = {
  strapping: [0, 2, 5, 12, 15],
  flash: span(6, 11),
  inputOnly: span(34, 39),
  log: [1, 3],
  atStart: { 0: 'high', 2: 'low', 12: 'low', 15: 'high' },
  i2c: [21, 22],
  spi: [19, 23, 18],
} as const;
