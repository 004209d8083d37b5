/** Formulas of times and currents, with what stands behind each. */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { contactCurrent, pinsTogether } from '../../calc/currents.ts';
import {
  cellWrites,
  clockWrap,
  interruptShare,
  stepFrequency,
  timeToBelieve,
  wayAfterSwitch,
} from '../../calc/timing.ts';
import { randomFrom } from '../brute.ts';

/** Independent: a program that looks every `scan` and believes a contact that has read closed for `debounce`. */
const believedByStepping = (debounce: number, scan: number, phase: number): number => {
  let closedSince: number | undefined;
  for (let look = phase; ; look += scan) {
    closedSince ??= look;
    if (look - closedSince >= debounce - 1e-12) return look;
  }
};

describe('a contact', () => {
  it('is believed no later than reckoned, and not much sooner, by stepping through time (independent)', () => {
    const random = randomFrom(7);
    for (const looks of [1, 2, 5, 8]) {
      const scan = 0.001;
      const debounce = looks * scan;
      const limit = timeToBelieve({ debounce, scan });
      const times = Array.from({ length: 200 }, () => believedByStepping(debounce, scan, random() * scan));
      expect(Math.max(...times)).toBeLessThanOrEqual(limit + 1e-12);
      // A contact that closes just after a look waits for nearly one more.
      expect(Math.max(...times)).toBeGreaterThan(limit - 0.05 * scan);
      expect(Math.min(...times)).toBeGreaterThanOrEqual(debounce);
    }
  });

  it('lets an axis run on as by pencil: 0.6 mm until it is believed, 1.2 mm on the ramp (independent)', () => {
    expect(wayAfterSwitch({ speed: 0.06, believed: 0.01, acceleration: 1.5 })).toBeCloseTo(0.0018, 12);
  });

  it('is ramp alone when it is believed at once (law)', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 1, noNaN: true }),
        fc.double({ min: 0.1, max: 5, noNaN: true }),
        (speed, acceleration) => {
          expect(2 * acceleration * wayAfterSwitch({ speed, believed: 0, acceleration })).toBeCloseTo(speed ** 2, 12);
        },
      ),
    );
  });

  it('carries 5 mA at 5 V over 1 kΩ (independent)', () => {
    expect(contactCurrent({ volts: 5, pull: 1000 })).toBeCloseTo(0.005, 15);
  });
});

describe('steps', () => {
  it('come at 8800 a second: 5.5 turns of 40 mm, 1600 microsteps each (independent)', () => {
    expect(stepFrequency({ speed: 0.22, radius: 0.04 / (2 * Math.PI), teeth: 50, microsteps: 8 })).toBeCloseTo(8800, 9);
  });

  it('take 300 of the 800 cycles between two interrupts (independent)', () => {
    expect(interruptShare({ ticks: 20e3, own: 100, each: 50, drives: 4, clock: 16e6 })).toBeCloseTo(300 / 800, 12);
  });

  it('take half the share at twice the clock, twice at twice the ticks (law)', () => {
    const at = { ticks: 1e4, own: 80, each: 40, drives: 3, clock: 16e6 };
    const share = interruptShare(at);
    expect(interruptShare({ ...at, clock: 32e6 })).toBeCloseTo(share / 2, 12);
    expect(interruptShare({ ...at, ticks: 2e4 })).toBeCloseTo(2 * share, 12);
  });
});

describe('weeks', () => {
  it('end for a clock of 32 bits after 49 days 17 h 2 min 47.296 s (independent)', () => {
    expect(clockWrap({ tick: 1e-3, bits: 32 })).toBeCloseTo(49 * 86400 + 17 * 3600 + 2 * 60 + 47.296, 6);
  });

  it('write a cell 255,500 times in five years of 140 plays a day (independent)', () => {
    expect(cellWrites({ plays: 140 / 86400, life: 5 * 365 * 86400, writes: 1, cells: 1 })).toBeCloseTo(255500, 6);
    expect(cellWrites({ plays: 140 / 86400, life: 5 * 365 * 86400, writes: 1, cells: 50 })).toBeCloseTo(5110, 6);
  });
});

describe('pins together', () => {
  it('give the sum, and one alone its own current (law)', () => {
    expect(pinsTogether({ currents: [0.02, 0.005, 0.01] })).toBeCloseTo(0.035, 15);
    expect(pinsTogether({ currents: [0, 0.012, 0] })).toBe(0.012);
  });

  it('refuse a current that is negative or no number', () => {
    expect(() => pinsTogether({ currents: [-0.001] })).toThrow(/counted apart/);
    expect(() => pinsTogether({ currents: [NaN] })).toThrow();
  });
});
