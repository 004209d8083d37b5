/**
 * mathjs as the judge: an independent table of units. It takes torque for energy and has no kgf·cm in a torque's
 * clothes, so only the sizes are compared, unit by unit and in every compound that the dimensions need.
 */
import { evaluate, unit as judge } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { readQuantity } from '../index.ts';
import type { Dimension } from '../index.ts';

/** Our spelling beside the judge's. */
type Pair = readonly [ours: string, theirs: string];

const same = (...words: readonly string[]): readonly Pair[] => words.map((word) => [word, word]);

const length: readonly Pair[] = [...same('m', 'mm', 'cm', 'km', 'um', 'in', 'ft', 'yd'), ['"', 'in'], ['thou', 'mil']];
const mass: readonly Pair[] = [...same('kg', 'g', 'mg', 'oz'), ['lb', 'lbm']];
const time: readonly Pair[] = [...same('s', 'ms', 'us', 'ns', 'h', 'day', 'week'), ['min', 'minute']];
const force: readonly Pair[] = [...same('N', 'kN', 'mN', 'lbf'), ['kgf', '9.80665 N'], ['ozf', '0.0625 lbf']];
const angle: readonly Pair[] = [...same('rad', 'deg', 'arcmin', 'arcsec'), ['°', 'deg'], ['rev', 'cycle']];
const energy: readonly Pair[] = [...same('J', 'kJ', 'mJ'), ['Wh', 'W h'], ['kWh', 'kW h']];
const current: readonly Pair[] = same('A', 'mA', 'uA', 'nA');
const ohms: readonly Pair[] = [...same('ohm', 'mohm', 'kohm', 'Mohm'), ['Ω', 'ohm'], ['kΩ', 'kohm']];

const product = (a: readonly Pair[], b: readonly Pair[], ours: string): readonly Pair[] =>
  a.flatMap(([x, u]) => b.map(([y, v]) => [`${x}${ours}${y}`, `(${u})*(${v})`] as const));
const over = (a: readonly Pair[], b: readonly Pair[]): readonly Pair[] =>
  a.flatMap(([x, u]) => b.map(([y, v]) => [`${x}/${y}`, `(${u})/(${v})`] as const));
const squared = (a: readonly Pair[]): readonly Pair[] =>
  a
    .filter(([x]) => x !== '"')
    .flatMap(
      ([x, u]) =>
        [
          [`${x}²`, `(${u})^2`],
          [`${x}^2`, `(${u})^2`],
        ] as const,
    );
const cubed = (a: readonly Pair[]): readonly Pair[] =>
  a.filter(([x]) => x !== '"').map(([x, u]) => [`${x}3`, `(${u})^3`]);

const table: readonly (readonly [Dimension, si: string, readonly Pair[]])[] = [
  ['length', 'm', length],
  ['area', 'm^2', squared(length)],
  ['volume', 'm^3', [...cubed(length), ...same('L', 'ml', 'cl')]],
  ['mass', 'kg', mass],
  ['time', 's', time],
  ['speed', 'm/s', over(length, time)],
  ['acceleration', 'm/s^2', over(length, squared(time))],
  ['jerk', 'm/s^3', over(length, cubed(time))],
  ['angle', 'rad', angle],
  ['angular-speed', 'rad/s', over(angle, time)],
  ['angular-acceleration', 'rad/s^2', over(angle, squared(time))],
  ['force', 'N', force],
  ['torque', 'N m', product(force, length, '·')],
  ['energy', 'J', energy],
  ['power', 'W', [...same('W', 'mW', 'kW', 'uW'), ...over(energy, time)]],
  ['inertia', 'kg m^2', product(mass, squared(length), '·')],
  ['stiffness', 'N/m', over(force, length)],
  ['torsional-stiffness', 'N m/rad', over(product(force, length, '·'), angle)],
  [
    'pressure',
    'Pa',
    [...same('Pa', 'kPa', 'MPa', 'GPa', 'bar', 'mbar'), ['psi', 'lbf/in^2'], ...over(force, squared(length))],
  ],
  ['density', 'kg/m^3', over(mass, cubed(length))],
  ['mass-per-length', 'kg/m', over(mass, length)],
  ['current', 'A', current],
  ['voltage', 'V', same('V', 'mV', 'kV', 'uV')],
  ['resistance', 'ohm', ohms],
  [
    'resistance-per-length',
    'ohm/m',
    [...over(ohms, length), ['ohm/100 m', 'ohm/(100 m)'], ['ohm/1000 ft', 'ohm/(1000 ft)']],
  ],
  ['conductance', 'S', same('S', 'mS', 'uS')],
  ['inductance', 'H', same('H', 'mH', 'uH', 'nH')],
  ['capacitance', 'F', same('F', 'mF', 'uF', 'nF', 'pF')],
  ['charge', 'C', [...same('C', 'mC', 'uC'), ['Ah', 'A h'], ['mAh', 'mA h']]],
  ['current-density', 'A/m^2', over(current, squared(length))],
  ['frequency', 'Hz', same('Hz', 'kHz', 'MHz', 'GHz')],
  [
    'emf-constant',
    'V s/rad',
    [
      ['V·s/rad', 'V s/rad'],
      ['mV·s/deg', 'mV s/deg'],
    ],
  ],
  [
    'thermal-resistance',
    'K/W',
    over(
      [['K', 'K']],
      [
        ['W', 'W'],
        ['mW', 'mW'],
      ],
    ),
  ],
  [
    'specific-heat',
    'J/(kg K)',
    [
      ['J/(kg·K)', 'J/(kg K)'],
      ['kJ/(kg·K)', 'kJ/(kg K)'],
      ['J/g/K', 'J/(g K)'],
    ],
  ],
  ['temperature-difference', 'K', same('K', 'mK')],
];

// Both sides round a few times in a product of up to four factors.
const ROUNDING = 1e-14;

describe('an independent table of units', () => {
  it.each(table)('agrees on %s', (dimension, si, pairs) => {
    for (const [ours, theirs] of pairs) {
      const reading = readQuantity(`37.5 ${ours}`, dimension);
      if (!reading.ok) throw new Error(`${ours}: ${reading.problem.what}`);
      const judged = (evaluate(`37.5 (${theirs})`) as { toNumber(unit: string): number }).toNumber(si);
      expect(Math.abs(reading.lo / judged - 1), `${ours} is ${reading.lo}, the judge says ${judged}`).toBeLessThan(
        ROUNDING,
      );
    }
  });

  it.each([
    ['degC', 21.5],
    ['degF', 72.25],
  ])('agrees on temperatures in %s', (unit, value) => {
    const reading = readQuantity(`${value} ${unit}`, 'temperature');
    const judged = judge(value, unit).toNumber('K');
    expect(reading.ok && Math.abs(reading.lo / judged - 1)).toBeLessThan(ROUNDING);
  });
});
