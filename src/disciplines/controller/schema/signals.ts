/** Keys of signals, and of the inputs of drivers. */
import * as z from 'zod';
import { nameOf, oneOf, quantity, type Shape } from '../../../contract/index.ts';
import { signalNeeds } from './board.ts';

/** `off` and `on` are booleans to other readers of a book. */
const restWords = ['inactive', 'active', 'floating'] as const;

export const signalKeys = {
  direction: oneOf(['in', 'out'], { means: 'which way it goes, where its kind does not tell' }),
  needs: z.array(oneOf(signalNeeds, { means: 'what it needs of its pin' })),
  pull: oneOf(['internal', 'external', 'none'], { means: 'what holds the input while its contact is open' }),
  'pull-resistance': quantity('resistance', {
    range: 'doubt',
    means: 'resistance that holds the input',
    example: '1 kohm',
    measure: {
      what: 'resistance that holds an input',
      instrument: 'multimeter',
      procedure:
        'Power off: ohms from the input to the supply of the board. One inside the chip: microampere to ground with the input held by it, its volts over that.',
      error: '±2 %',
      minutes: 5,
    },
  }),
  'least-current': quantity('current', {
    range: 'exact',
    means: 'least current with which the contact stays clean',
    example: '1 mA',
  }),
  volts: quantity('voltage', { range: 'spread', means: 'most that it puts on the pin', example: '5 V ±3%' }),
  'least-high': quantity('voltage', {
    range: 'exact',
    means: 'least voltage that what it feeds takes for high',
    example: '3.5 V',
  }),
  current: quantity('current', {
    range: 'spread',
    from: 0,
    means: 'current that the pin gives or takes while the signal is on',
    example: '5 mA',
  }),
  'on-when': oneOf(['high', 'low'], { means: 'level at which it is on' }),
  'at-reset': oneOf(restWords, {
    means: 'what it is while the pin is not driven, by its own circuit and resistors',
  }),
  bounce: quantity('time', {
    range: 'doubt',
    from: 0,
    means: 'time for which the contact bounces',
    example: '0.5..6 ms',
    measure: {
      what: 'bounce of a contact',
      instrument: 'logic analyser or oscilloscope',
      procedure: 'Press and let go twenty times as the machine does; the longest time from the first edge to the last.',
      error: '±0.1 ms',
      minutes: 20,
    },
  }),
  debounce: quantity('time', {
    range: 'exact',
    from: 0,
    means: 'time for which it must stay before it is believed',
    example: '8 ms',
  }),
} satisfies Shape;

/** Inputs of a driver; stated at it, or at the part that it is. */
export const driverPartKeys = {
  'input-current': quantity('current', {
    range: 'spread',
    from: 0,
    means: 'current of one input of the driver',
    example: '8..16 mA',
  }),
  'least-high': quantity('voltage', {
    range: 'exact',
    means: 'least voltage that its inputs take for high',
    example: '3.5 V',
  }),
  'enable-when': oneOf(['high', 'low'], { means: 'level of the enable input at which it drives' }),
} satisfies Shape;

export const driverEntryKeys = {
  'enabled-by': nameOf('signals', {
    means: 'signal that gives it its power, in place of an enable input',
    example: 'K1',
  }),
  'at-reset': oneOf(restWords, {
    means: 'what it does while the pin of its enable is not driven, by its own circuit and resistors',
  }),
} satisfies Shape;
