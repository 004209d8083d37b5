/** Keys of the board, its pins and its program. */
import * as z from 'zod';
import { oneOf, Plain, quantity, told, yesNo } from '../../../contract/index.ts';

/** Names of the boards that there are data of. */
export const boardNames = ['ATmega2560', 'ATmega328P', 'RP2040', 'ESP32'] as const;

const busKinds = ['uart', 'i2c', 'spi'] as const;
export type BusKind = (typeof busKinds)[number];

/** What a signal may need of its pin besides being read or set. */
export const signalNeeds = ['pwm', 'analog', 'interrupt', 'pin-change', 'servo', 'tone'] as const;

/** A pin as it is printed on the board; a plain number is a name too. */
const pinName = () =>
  told(
    z.unknown().transform((raw, context): string => {
      const written = raw instanceof Plain ? raw.source : raw;
      if (typeof written === 'string' && /^[A-Za-z]*\d+$/.test(written)) return written;
      const what =
        typeof written === 'string' ? `"${written}" is no pin.` : 'A list or map stands where a pin belongs.';
      context.addIssue({
        code: 'custom',
        message: what,
        params: { what, allowed: 'The pin as it is printed on the board, such as 22, A3 or GP5.' },
      });
      return z.NEVER;
    }),
    { means: 'pin as it is printed on the board', example: '22', form: 'text' },
  );

const stepping = z.strictObject({
  ticks: quantity('frequency', {
    range: 'exact',
    means: 'how often the stepping interrupt comes',
    example: '20 kHz',
  }).optional(),
  cycles: quantity('count', {
    range: 'doubt',
    means: 'processor cycles that the interrupt takes besides those of each drive',
    example: '60..120',
    measure: {
      what: 'length of the stepping interrupt',
      instrument: 'logic analyser or oscilloscope on a spare pin',
      procedure:
        'Motors unplugged, power off before. Let the interrupt raise a spare pin as it begins and lower it as it ends; read the longest width with one drive and with all; the difference for each drive more, the rest for itself.',
      error: '±1 µs',
      minutes: 30,
    },
  }).optional(),
  'cycles-each': quantity('count', {
    range: 'doubt',
    means: 'cycles for each drive that it serves',
    example: '30..70',
    measure: {
      what: 'length of the stepping interrupt for each drive',
      instrument: 'logic analyser or oscilloscope on a spare pin',
      procedure: 'As for the cycles of the interrupt itself: the width with all drives less that with one.',
      error: '±1 µs',
      minutes: 30,
    },
  }).optional(),
});

const keeps = z.strictObject({
  'per-play': quantity('count', { range: 'exact', means: 'writes for each play', example: '1' }).optional(),
  cells: quantity('count', {
    range: 'exact',
    from: 1,
    because: 'something is written somewhere',
    means: 'cells among which they are spread',
    example: '64',
  }).optional(),
  for: quantity('time', { range: 'exact', means: 'time that the machine shall last', example: '1825 day' }).optional(),
  bears: quantity('count', {
    range: 'doubt',
    means: 'writes that one cell bears',
    example: '100000',
  }).optional(),
});

/** The table `controller`. */
export const controllerTable = z.strictObject({
  board: oneOf(boardNames, { means: 'which board it is' }).optional(),
  pins: z.record(z.string(), pinName()).optional(),
  landed: z.record(z.string(), pinName()).optional(),
  unusable: z.array(pinName()).optional(),
  buses: z.record(z.string(), oneOf(busKinds, { means: 'what kind of bus it is' })).optional(),
  'log-port': oneOf(['usb', 'second serial', 'none'], { means: 'where the log comes out' }).optional(),
  'auto-reset': oneOf(['as built', 'cut'], {
    means: 'whether opening the USB port can still reset the board',
  }).optional(),
  watchdog: yesNo({ means: 'whether the watchdog resets a program that hangs' }).optional(),
  loader: oneOf(['stops the watchdog', 'leaves the watchdog on', 'none'], {
    means: 'what the loader does with a running watchdog',
  }).optional(),
  'times-compared': oneOf(['by difference', 'by end'], {
    means: 'how the program tells that a time has passed',
  }).optional(),
  'runs-for': quantity('time', {
    range: 'spread',
    means: 'time for which it stays switched on',
    example: '30..90 day',
  }).optional(),
  'longest-wait': quantity('time', {
    range: 'exact',
    means: 'longest time that it waits for',
    example: '60 s',
  }).optional(),
  scan: quantity('time', {
    range: 'exact',
    means: 'time from one look at the inputs to the next',
    example: '1 ms',
  }).optional(),
  debounce: quantity('time', {
    range: 'exact',
    from: 0,
    means: 'time for which a contact must stay before it is believed, unless the signal says otherwise',
    example: '8 ms',
  }).optional(),
  stepping: stepping.optional(),
  keeps: keeps.optional(),
});
