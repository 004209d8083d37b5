/** What a book may not say about its board: file, line, column and what would do. */
import { describe, expect, it } from 'vitest';
import { checkFiles } from '../../../../app/index.ts';
import { base, ownHouse } from '../base.ts';

const problemsOf = (text: string): readonly string[] => {
  const checked = checkFiles((name) => (name === 'book.yaml' ? text : undefined), 'book.yaml', ownHouse);
  return checked.ok ? [] : checked.problems.map(({ frame }) => frame);
};
const withLine = (line: string, put: string): readonly string[] => {
  expect(base).toContain(line);
  return problemsOf(base.replace(line, put));
};

describe('a book is refused', () => {
  it.each([
    [
      'board: ATmega2560',
      'board: ATmega2561',
      /"ATmega2561" is not one of the words for which board it is[\s\S]*ATmega2560, ATmega328P, RP2040, ESP32/,
    ],
    ['S12: 2,', 'S12: [2],', /A list or map stands where a pin belongs[\s\S]*22, A3 or GP5/],
    ['S12: 2,', 'S12: pin two,', /"pin two" is no pin/],
    ['S12: 2,', 'S12: 2.5,', /"2.5" is no pin/],
    ['reader: uart', 'reader: usb', /"usb" is not one of the words for what kind of bus it is[\s\S]*uart, i2c, spi/],
    ['watchdog: true', 'watchdog: yes', /"yes" is neither true nor false/],
    [
      'D1: { part: chopper, rail: 24V, microsteps: 8, current: 1.2 A, marked: peak, standstill-current: 50 %, at-reset: inactive',
      'D1: { at-reset: off',
      /"off" is a boolean to other readers[\s\S]*inactive, active, floating/,
    ],
    ['scan: 1 ms', 'scan: 1', /"1" has no unit/],
    ['debounce: 5 ms', 'debounce: 1..5 ms', /this is one exact value/],
    ['needs: [servo]', 'needs: [servos]', /"servos" is not one of the words for what it needs of its pin/],
    ['enabled-by: K1', 'enabled-by: K7', /There is no signal "K7" in the book/],
    ['log-port: usb', 'log-prt: usb', /log-prt[\s\S]*log-port/],
    ['cells: 16', 'cells: 0', /"0" is not possible here: something is written somewhere/],
  ])('%s → %s', (line, put, says) => {
    const problems = withLine(line, put);
    expect(problems.join('\n')).toMatch(says);
    expect(problems.join('\n')).toMatch(/book\.yaml:\d+:\d+/);
  });

  it('not for a pin that is written as a number', () => expect(withLine('S12: 2,', 'S12: 3,')).toEqual([]));
});
