/** What is refused, with the whole sentence: people read these at the moment that they are stuck. */
import { describe, expect, it } from 'vitest';
import { dimensions, readQuantity } from '../index.ts';
import type { Dimension, Problem } from '../index.ts';

const problemOf = (text: string, dimension: Dimension): Problem => {
  const reading = readQuantity(text, dimension);
  if (reading.ok) throw new Error(`"${text}" was read as ${reading.lo} to ${reading.hi} ${reading.unit.print}`);
  return reading.problem;
};

const LENGTHS = 'A length is wanted, such as 560 mm, 3/4 in or 3.4 m.';
const FORCES = 'A force is wanted, such as 5..8 N or 7 lbf.';

const refused: readonly (readonly [Dimension, string, what: string, allowed: string])[] = [
  // No unit
  ['speed', '160', '"160" has no unit.', 'A speed needs one: 160 mm/s, 9.6 m/min and 6.3 in/s would do.'],
  ['force', '5..8', '"5..8" has no unit.', 'A force needs one: 5..8 N, 0.51..0.816 kgf and 1.12..1.8 lbf would do.'],
  ['temperature', '20', '"20" has no unit.', 'A temperature needs one: 20 °C and 68 °F would do.'],
  ['money', '24', '"24" has no unit.', 'An amount of money needs one: 24 EUR, 24 USD and 24 GBP would do.'],
  ['conductor-area', '24', '"24" has no unit.', 'A wire size needs one: 24 mm² and AWG 24 would do.'],
  ['conductor-area', '0.5', '"0.5" has no unit.', 'A wire size needs one: 0.5 mm² would do.'],
  ['voltage', '24 V ±2', '"24 V ±2" has a tolerance without a unit.', '±2 V and ±2 % would do.'],
  ['temperature', '20 °C ±5', '"20 °C ±5" has a tolerance without a unit.', '±5 °C would do.'],

  // The wrong thing
  ['speed', '12 mm', '"12 mm" is a length; a speed is wanted.', '12 mm/s, 0.72 m/min and 0.472 in/s would do.'],
  ['torque', '5 J', '"5 J" is an energy; a torque is wanted.', '5 N·m, 51 kgf·cm and 708 ozf·in would do.'],
  ['energy', '5 N·m', '"5 N·m" is a torque; an energy is wanted.', '5 J and 0.00139 Wh would do.'],
  ['force', '5 kg', '"5 kg" is a mass; a force is wanted.', '5 kgf or 49 N would do.'],
  ['force', '5..8 lb', '"5..8 lb" is a mass; a force is wanted.', '5..8 lbf or 22.2..35.6 N would do.'],
  [
    'angular-speed',
    '330 min⁻¹',
    '"330 min⁻¹" is a frequency; a turning speed is wanted.',
    '330 rpm, 5.5 rev/s and 34.6 rad/s would do.',
  ],
  ['conductor-area', '24 mm', '"24 mm" is a length; a wire size is wanted.', '24 mm² would do.'],
  ['length', '24 AWG', '"24 AWG" is a wire size.', LENGTHS],
  ['count', '5 mm', '"5 mm" is a length; a count is wanted.', '5 would do.'],
  ['count', '5 %', '"5 %" is a ratio; a count is wanted.', '5 would do.'],
  ['force', '5 N..8 mm', '"5 N..8 mm" mixes a force and a length.', '5..8 N would do.'],
  ['force', '5 mm..8 N', '"5 mm..8 N" mixes a force and a length.', '5..8 N would do.'],
  ['money', '5 EUR..8 USD', '"5 EUR..8 USD" mixes EUR and USD.', 'One currency would do.'],
  ['money', '5 EUR ±1 USD', '"5 EUR ±1 USD" mixes EUR and USD.', 'One currency would do.'],

  // Slips
  ['length', '5 Mm', '"5 Mm" has a unit that is not known: "Mm".', 'Capitals count in units: 5 mm would do.'],
  ['frequency', '5 mhz', '"5 mhz" has a unit that is not known: "mhz".', 'Capitals count in units: 5 MHz would do.'],
  ['torque', '5 NM', '"5 NM" has a unit that is not known: "NM".', 'Capitals count in units: 5 N·m would do.'],
  ['mass', '5 KG', '"5 KG" has a unit that is not known: "KG".', 'Capitals count in units: 5 kg would do.'],
  ['power', '5 mw', '"5 mw" has a unit that is not known: "mw".', 'Capitals count in units: 5 mW or 5 MW would do.'],
  ['torque', '18 KG-CM', '"18 KG-CM" has a unit that is not known: "KG".', '18 kgf·cm would do.'],
  ['length', '5 milimeter', '"5 milimeter" has a unit that is not known: "milimeter".', '5 mm would do.'],
  ['speed', '5 mm/sce', '"5 mm/sce" has a unit that is not known: "sce".', '5 mm/s would do.'],
  [
    'speed',
    '5 knots',
    '"5 knots" has a unit that is not known: "knots".',
    '5 mm/s, 0.3 m/min and 0.197 in/s would do.',
  ],

  // Units that mean more than one thing
  [
    'length',
    '5 mil',
    '"5 mil" is not clear: "mil" is a thousandth of an inch to some and a millimetre to others.',
    '5 thou or 5 mm would do.',
  ],
  ['time', '3 months', '"3 months" is not clear: a month has no fixed length.', '3 days or 3 weeks would do.'],
  ['money', '$24', '"$24" is not clear: "$" stands for several currencies.', '24 USD, 24 CAD or 24 AUD would do.'],
  ['conductor-area', '24 ga', '"24 ga" is not clear: there is more than one wire gauge.', '24 AWG or 24 mm² would do.'],
  [
    'specific-heat',
    '385 J/kg·K',
    '"385 J/kg·K" has two units behind its fraction bar, which people read in two ways.',
    '385 J/(kg·K) would do.',
  ],
  [
    'current',
    '1.2 A peak',
    '"1.2 A peak" has a word behind its unit that does not belong to it: "peak".',
    '1.2 A would do.',
  ],

  // Numbers that could be read in two ways
  ['length', '1,900 mm', '"1,900 mm" could be read in two ways.', '1.900 mm or 1900 mm would do.'],
  ['length', '1,234.5 mm', '"1,234.5 mm" has commas between its digits.', '1234.5 mm would do.'],
  ['length', '1.234,5 mm', '"1.234,5 mm" has points between its digits.', '1234.5 mm would do.'],
  ['length', '1_000 mm', '"1_000 mm" has underscores between its digits.', '1000 mm would do.'],
  ['length', '1 000 mm', '"1 000 mm" has a space between its digits.', '1000 mm would do.'],
  ['length', '1-5/4 in', '"1-5/4 in" could be read in two ways.', '1..5/4 in or 2.25 in would do.'],
  ['torque', '0.9-1.3 N·m', '"0.9-1.3 N·m" could be a range or a subtraction.', '0.9..1.3 N·m would do.'],
  ['torque', '0.9 - 1.3 N·m', '"0.9 - 1.3 N·m" could be a range or a subtraction.', '0.9..1.3 N·m would do.'],
  [
    'ratio',
    '70 % ±5 %',
    '"70 % ±5 %" is not clear: percent of the value, or so many percent more and less.',
    'Both ends as a range would do, such as 65..75 %.',
  ],
  ['torque', '1.1 ±10% N·m', '"1.1 ±10% N·m" has its unit behind the percentage.', '1.1 N·m ±10% would do.'],
  [
    'temperature',
    '20 °C ±10%',
    '"20 °C ±10%" takes a percentage of a temperature.',
    '20 ±5 °C and 15..25 °C would do.',
  ],

  // Ranges
  ['force', '5..3 N', '"5..3 N" is empty: its first end is the larger one.', '3..5 N would do.'],
  ['force', '5 N..30 mN', '"5 N..30 mN" is empty: its first end is the larger one.', '30 mN..5 N would do.'],
  ['count', '5..3', '"5..3" is empty: its first end is the larger one.', '3..5 would do.'],
  ['length', '..5 mm', '"..5 mm" has only one end.', `Both ends are needed. ${LENGTHS}`],
  ['length', '5 mm..', '"5 mm.." has only one end.', `Both ends are needed. ${LENGTHS}`],
  ['length', '1..2..3 mm', '"1..2..3 mm" has more than one range in it.', `One range or one ± would do. ${LENGTHS}`],
  ['length', '1..2 ±1 mm', '"1..2 ±1 mm" has more than one range in it.', `One range or one ± would do. ${LENGTHS}`],
  ['length', '.5...8 mm', '".5...8 mm" has more than two dots between its ends.', '.5..8 mm would do.'],
  [
    'length',
    '±1 mm',
    '"±1 mm" lacks one side of its ±.',
    `A value stands before the ± and a tolerance behind it. ${LENGTHS}`,
  ],
  ['length', '5 ±-1 mm', '"5 ±-1 mm" has a tolerance below zero.', 'A tolerance from zero up would do.'],
  ['length', '5 mm ±120 %', '"5 mm ±120 %" has a tolerance of more than the value.', 'Up to ±100 % would do.'],
  [
    'conductor-area',
    'AWG 24 ±1 AWG',
    '"AWG 24 ±1 AWG" puts a tolerance on a gauge.',
    '22..24 AWG and 0.5 ±0.02 mm² would do.',
  ],
  ['length', '~5 mm', '"~5 mm" does not say how far it may be off.', `A range would do. ${LENGTHS}`],

  // No quantity at all
  ['length', '', 'Nothing is written here.', LENGTHS],
  ['length', '  \t', 'Nothing is written here.', LENGTHS],
  ['length', 'NaN', '"NaN" is not a number that a quantity can have.', LENGTHS],
  ['force', 'Infinity N', '"Infinity N" is not a number that a quantity can have.', FORCES],
  ['force', '-.inf', '"-.inf" is not a number that a quantity can have.', FORCES],
  ['length', '1e999 mm', '"1e999 mm" is too large to be meant.', LENGTHS],
  ['length', '1e-999 mm', '"1e-999 mm" is too small to be meant.', LENGTHS],
  ['length', '1/0 mm', '"1/0 mm" divides by zero.', LENGTHS],
  ['length', '5. mm', '"5. mm" is not a number.', '5 mm would do.'],
  ['length', 'long', '"long" does not begin with a number.', LENGTHS],
  ['length', 'mm', '"mm" does not begin with a number.', LENGTHS],
  ['length', '5 6 mm', '"5 6 mm" holds two numbers.', `One number or a range would do. ${LENGTHS}`],
  ['length', '5 mm 6', '"5 mm 6" cannot be read from "6" on.', LENGTHS],
  ['length', '5 mm!', '"5 mm!" cannot be read from "!" on.', LENGTHS],
  ['length', "6'3", '"6\'3" cannot be read from "3" on.', LENGTHS],
  ['length', "1'000 mm", '"1\'000 mm" cannot be read from "000 mm" on.', LENGTHS],
  ['temperature', '-300 °C', '"-300 °C" lies below absolute zero.', 'Temperatures from −273.15 °C up would do.'],
  ['conductor-area', '24.5 AWG', '"24.5 AWG" is no gauge.', 'AWG 4/0 to AWG 56 would do.'],
  ['conductor-area', 'AWG 99', '"AWG 99" is no gauge.', 'AWG 4/0 to AWG 56 would do.'],
];

describe('refusals', () => {
  it.each(refused)('%s: %s', (dimension, text, what, allowed) => {
    const { what: said, allowed: offered } = problemOf(text, dimension);
    expect(`${said} ${offered}`).toBe(`${what} ${allowed}`);
  });

  it('points at the part that is to blame', () => {
    const blamed = (text: string, dimension: Dimension): string =>
      text.slice(...(problemOf(text, dimension).at ?? [0, 0]));
    expect(blamed('1.2 A peak', 'current')).toBe('peak');
    expect(blamed('5 mm/sce', 'speed')).toBe('sce');
    expect(blamed('  5 J', 'torque')).toBe('J');
    expect(blamed('1,900 mm', 'length')).toBe('1,900');
    expect(blamed('5 N..8 mm', 'force')).toBe('mm');
    expect(blamed('24 V ±2', 'voltage')).toBe('2');
  });

  it('refuses a text that goes on and on, and quotes only its beginning', () => {
    const { what } = problemOf('1'.repeat(5000), 'length');
    expect(what).toBe(`"${'1'.repeat(47)}…" is too long for a quantity.`);
  });

  it('never takes a percent of a unit for a unit', () => {
    expect(problemOf('5 %·N', 'force').what).toBe('"5 %·N" cannot be read from "%·N" on.');
    expect(problemOf('5 EUR/USD', 'ratio').what).toBe('"5 EUR/USD" cannot be read from "EUR/USD" on.');
  });
});

describe('suggestions', () => {
  const needsUnit = dimensions.filter((info) => !info.bare).map((info) => info.name);

  it.each(needsUnit)('of units for a bare number can be written as they stand: %s', (dimension) => {
    const offered = /: (.*) would do\.$/.exec(problemOf('12', dimension).allowed)?.[1]?.split(/, | and /) ?? [];
    expect(offered.length).toBeGreaterThan(0);
    const values = offered.map((text) => {
      const reading = readQuantity(text, dimension);
      return reading.ok ? reading.lo : Number.NaN;
    });
    // A gauge is another wire, and currencies do not convert; all others say the same size to three figures.
    const [first = Number.NaN] = values;
    for (const value of dimension === 'conductor-area' ? [first] : values) {
      expect(Math.abs(value / first - 1)).toBeLessThanOrEqual(0.005);
    }
  });

  it.each(dimensions.flatMap((info) => info.examples.map((example) => [info.name, example] as const)))(
    'of examples can be read: %s, %s',
    (dimension, example) => {
      expect(readQuantity(example, dimension)).toMatchObject({ ok: true });
    },
  );
});
