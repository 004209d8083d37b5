import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dimensions, readQuantity, show, showRange, toUnit } from '../index.ts';
import type { Dimension } from '../index.ts';
import { dimensionOf } from '../dimensions.ts';
import { KNOWN } from '../units.ts';

/** Every spelling in the table, with the plainest thing that it measures, and every unit that is printed unasked. */
const units: readonly (readonly [unit: string, dimension: Dimension])[] = [
  ...[...KNOWN].flatMap(([text, { atom }]) => {
    const info = dimensionOf(atom.vector);
    return info === undefined ? [] : [[text, info.name] as const];
  }),
  ...dimensions.flatMap((info) =>
    [...info.ladder.map(([unit]) => unit), ...info.likely].map((unit) => [unit, info.name] as const),
  ),
  ['AWG', 'conductor-area'],
];

const FIGURES = 6;
/** Half a unit in the sixth figure, where the first digit is a 1. */
const HALF_FIGURE = 5e-6;

const decimals = fc
  .tuple(fc.integer({ min: -999_999_999, max: 999_999_999 }), fc.integer({ min: 0, max: 9 }))
  .map(([digits, places]) => (digits / 10 ** places).toFixed(places));

describe('round trip', () => {
  it('reads back what it prints, to the figures shown, in every unit of the table', () => {
    for (const [unit, dimension] of units) {
      if (unit === 'AWG' || dimension === 'temperature') continue;
      fc.assert(
        fc.property(decimals, fc.boolean(), (number, ascii) => {
          const first = readQuantity(`${number} ${unit}`, dimension);
          if (!first.ok) throw new Error(`${number} ${unit}: ${first.problem.what}`);
          if (first.unit.currency === '¤' && ascii) return;
          const printed = show(first.lo, dimension, first.unit, { figures: FIGURES, ascii });
          const again = readQuantity(printed, dimension);
          if (!again.ok) throw new Error(`${printed}: ${again.problem.what}`);
          const [a, b] = [toUnit(first.lo, first.unit), toUnit(again.lo, first.unit)];
          expect(Math.abs(a - b)).toBeLessThanOrEqual(HALF_FIGURE * Math.abs(a) * (1 + 1e-9));
          expect(show(again.lo, dimension, again.unit, { figures: FIGURES, ascii })).toBe(printed);
        }),
        { numRuns: 12, seed: 1 },
      );
    }
  });

  it('reads temperatures back in every unit', () => {
    const value = fc.tuple(fc.double({ min: 1, max: 1000, noNaN: true }), fc.constantFrom('°C', 'degF', 'K', 'C'));
    fc.assert(
      fc.property(value, fc.boolean(), ([kelvin, unit], ascii) => {
        const text = show(kelvin, 'temperature', unit, { figures: FIGURES, ascii });
        const again = readQuantity(text, 'temperature');
        // Six figures of at most 1500 degrees.
        expect(Math.abs((again.ok ? again.lo : Number.NaN) - kelvin)).toBeLessThanOrEqual(0.005);
      }),
    );
  });

  it('reads ranges back', () => {
    const ends = fc.tuple(decimals, decimals).map(([a, b]) => (Number(a) < Number(b) ? [a, b] : [b, a]));
    fc.assert(
      fc.property(ends, fc.constantFrom(...units), fc.boolean(), ([lo = '', hi = ''], [unit, dimension], ascii) => {
        if (unit === 'AWG' || dimension === 'temperature' || (dimension.startsWith('money') && ascii)) return;
        const first = readQuantity(`${lo}..${hi} ${unit}`, dimension);
        if (!first.ok) throw new Error(`${lo}..${hi} ${unit}: ${first.problem.what}`);
        const printed = showRange(first.lo, first.hi, dimension, first.unit, { figures: 9, ascii });
        const again = readQuantity(printed, dimension);
        if (!again.ok) throw new Error(`${printed}: ${again.problem.what}`);
        const close = (a: number, b: number): boolean => Math.abs(a - b) <= 5e-9 * Math.abs(a) * (1 + 1e-6);
        expect([close(first.lo, again.lo), close(first.hi, again.hi)]).toEqual([true, true]);
      }),
      { numRuns: 500 },
    );
  });

  it('finds a readable unit for every size of every dimension', () => {
    const magnitude = fc.double({ min: -9, max: 9, noNaN: true });
    for (const { name } of dimensions) {
      fc.assert(
        fc.property(magnitude, (power) => {
          const value = 10 ** power;
          const again = readQuantity(show(value, name), name);
          // Three figures, of a temperature in °C: of the kelvins with the zero of °C.
          const slack = name === 'temperature' ? 0.005 * (value + 273.15) : 0.005 * value * (1 + 1e-9);
          const cents = name === 'money' ? 0.005 : 0;
          expect(Math.abs((again.ok ? again.lo : Number.NaN) - value)).toBeLessThanOrEqual(slack + cents);
        }),
        { numRuns: 40 },
      );
    }
  });
});

const pieces = fc.constantFrom(
  ' ',
  '\u2009',
  ...'1 24 0.9 3/4 1,9 1e9 . - − – + .. … ± +- % / · ^2 ² ( ) " \' °'.split(' '),
  ...'N m mm s kg oz in AWG EUR € k µ C peak mil to'.split(' '),
);

const textual = fc.oneof(
  fc.array(pieces, { maxLength: 12 }).map((parts) => parts.join('')),
  fc.string({ unit: 'grapheme', maxLength: 40 }),
  fc.string({ unit: 'binary', maxLength: 40 }),
  fc.constantFrom(...units).chain(([unit]) => fc.string().map((tail) => `5 ${unit}${tail}`)),
);

/** What is wrong with the answer to a text; nothing when it keeps its promises. */
const complaint = (text: string, dimension: Dimension): string | undefined => {
  const reading = readQuantity(text, dimension);
  if (!reading.ok) {
    const { what, allowed, at = [0, 0] } = reading.problem;
    const inside = 0 <= at[0] && at[0] <= at[1] && at[1] <= text.length;
    return /^["A-Z].*\.$/su.test(what) && /^\S.*\.$/su.test(allowed) && inside
      ? undefined
      : `${what} ${allowed} ${String(at)}`;
  }
  const { lo, hi, nominal = lo, figures, unit } = reading;
  const inOrder = Number.isFinite(lo) && Number.isFinite(hi) && lo <= nominal && nominal <= hi;
  const printable = !showRange(lo, hi, dimension, unit).includes('NaN');
  return inOrder && figures > 0 && printable ? undefined : `${lo} ${nominal} ${hi}`;
};

describe('any text', () => {
  it('is read as finite ends in order, or refused with a sentence and a place inside it', () => {
    fc.assert(
      fc.property(textual, fc.constantFrom(...dimensions), (text, { name }) => {
        expect(complaint(text, name)).toBeUndefined();
      }),
      { numRuns: 5000 },
    );
  });

  it('means the same with other spaces, dots and minus signs', () => {
    fc.assert(
      fc.property(decimals, (number) => {
        const plain = readQuantity(`${number} N·m`, 'torque');
        const fancy = readQuantity(`\u00A0${number.replace('-', '−')}\u202FN⋅m\u2009`, 'torque');
        expect(fancy.ok && plain.ok && fancy.lo === plain.lo).toBe(true);
      }),
    );
  });
});

describe('decimal numbers', () => {
  // JavaScript's own reading of a decimal is the nearest double: independent of the fractions used here.
  it('are the nearest double in the SI unit', () => {
    fc.assert(
      fc.property(decimals, (number) => {
        const reading = readQuantity(`${number} m`, 'length');
        expect(reading.ok && reading.lo).toBe(Number(number) === 0 ? 0 : Number(number));
      }),
    );
  });

  it('are the nearest double in a thousandth of it', () => {
    fc.assert(
      fc.property(fc.integer({ min: -1e9, max: 1e9 }), (number) => {
        const reading = readQuantity(`${number} mm`, 'length');
        expect(reading.ok && reading.lo).toBe(number === 0 ? 0 : Number(`${number}e-3`));
      }),
    );
  });
});
