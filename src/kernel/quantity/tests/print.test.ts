import { describe, expect, it } from 'vitest';
import { readQuantity, show, showNumber, showRange, siUnit, toUnit, unitNamed, isProblem } from '../index.ts';
import type { Dimension, Unit } from '../index.ts';

const unit = (text: string, dimension: Dimension): Unit => {
  const answer = unitNamed(text, dimension);
  if (isProblem(answer)) throw new Error(answer.what);
  return answer;
};

describe('numbers', () => {
  it.each([
    [0, '0'],
    [-0, '0'],
    [1.9, '1.9'],
    [-3.2, '−3.2'],
    [0.0123456, '0.0123'],
    [999.6, '1000'],
    [9.996, '10'],
    [1888.4, '1888'],
    [1234.5678, '1235'],
    [12345, '12\u2009345'],
    [1234567.8, '1\u2009234\u2009568'],
    [0.00001234, '0.0000123'],
    [1.234e-7, '1.23×10⁻⁷'],
    [-2e12, '−2×10¹²'],
    [2.675, '2.68'],
    [0.1 + 0.2, '0.3'],
    [100, '100'],
  ])('%d is printed as %s', (value, text) => {
    expect(showNumber(value)).toBe(text);
  });

  it.each([
    [-3.2, '-3.2'],
    [12345, '12345'],
    [1.234e-7, '1.23e-7'],
  ])('%d is printed in ASCII as %s', (value, text) => {
    expect(showNumber(value, { ascii: true })).toBe(text);
  });

  it('prints as many figures as asked for', () => {
    expect(showNumber(Math.PI, { figures: 6 })).toBe('3.14159');
    expect(showNumber(Math.PI, { figures: 1 })).toBe('3');
    expect(showNumber(17.85, { figures: 4 })).toBe('17.85');
  });

  it.each([Number.NaN, Infinity, -Infinity])('has nothing to print for %d', (value) => {
    expect(() => showNumber(value)).toThrow(RangeError);
    expect(() => show(value, 'length')).toThrow(RangeError);
    expect(() => show(value, 'length', 'mm')).toThrow(RangeError);
    expect(() => showRange(0, value, 'length')).toThrow(RangeError);
  });
});

describe('quantities', () => {
  it.each([
    [1.9, 'torque', 'N·m', '1.9 N·m'],
    [1.765197, 'torque', 'kg-cm', '18 kgf·cm'],
    [-0.0032, 'length', 'mm', '−3.2 mm'],
    [0.01905, 'length', '"', '0.75 in'],
    [Math.PI / 100, 'angle', 'deg', '1.8°'],
    [281.15, 'temperature', 'degC', '8 °C'],
    [15, 'temperature-difference', 'degC', '15 °C'],
    [0.7, 'ratio', '%', '70 %'],
    [0.7, 'ratio', '', '0.7'],
    [1.8, 'money', 'EUR', '1.80 EUR'],
    [24, 'money', 'EUR', '24 EUR'],
    [1537.256, 'money', 'EUR', '1537.26 EUR'],
    [60 / 86400, 'rate', '/day', '60 /day'],
    [0.0938, 'resistance-per-length', 'ohm/100 m', '9.38 Ω/100 m'],
  ] as const)('%d of %s in %s', (value, dimension, text, printed) => {
    expect(show(value, dimension, text)).toBe(printed);
    expect(show(value, dimension, unit(text, dimension))).toBe(printed);
  });

  it.each([
    [0.018, 'length', '18 mm'],
    [3.4, 'length', '3400 mm'],
    [12, 'length', '12 m'],
    [0, 'length', '0 mm'],
    [0.62, 'mass', '620 g'],
    [4.9, 'mass', '4.9 kg'],
    [0.028, 'torque', '28 mN·m'],
    [0.145, 'torque', '0.145 N·m'],
    [0.0025, 'inductance', '2.5 mH'],
    [4700, 'resistance', '4.7 kΩ'],
    [1e-7, 'capacitance', '100 nF'],
    [34.5575, 'angular-speed', '330 rpm'],
    [0.375, 'duty', '37.5 %'],
    [20, 'count', '20'],
    [24, 'money', '24 ¤'],
    [5e-7, 'conductor-area', '0.5 mm²'],
  ] as const)('%d of %s without a unit is %s', (value, dimension, printed) => {
    expect(show(value, dimension)).toBe(printed);
  });

  it('has an ASCII form', () => {
    expect(show(-1.9, 'torque', 'N·m', { ascii: true })).toBe('-1.9 N*m');
    expect(show(3e-6, 'inertia', 'g·cm²', { ascii: true })).toBe('30 g*cm^2');
    expect(show(Math.PI / 100, 'angle', '°', { ascii: true })).toBe('1.8 deg');
    expect(show(5e-6, 'length', 'µm', { ascii: true })).toBe('5 um');
    expect(showRange(281.15, 305.15, 'temperature', '°C', { ascii: true })).toBe('8..32 degC');
  });

  it('can leave the unit to the head of a table', () => {
    expect(show(1.9, 'torque', 'N·m', { plusUnit: false })).toBe('1.9');
    expect(showRange(0.9, 1.3, 'torque', 'N·m', { plusUnit: false })).toBe('0.9–1.3');
  });

  it('refuses a unit of another dimension', () => {
    expect(() => show(1, 'torque', 'J')).toThrow(RangeError);
    expect(() => show(1, 'torque', unit('J', 'energy'))).toThrow(RangeError);
  });

  it('does not carry the zero of a temperature into a difference', () => {
    expect(show(15, 'temperature-difference', unit('°C', 'temperature'))).toBe('15 °C');
  });
});

describe('ranges', () => {
  it.each([
    [0.9, 1.3, 'torque', 'N·m', '0.9–1.3 N·m'],
    [0.9, 0.9, 'torque', 'N·m', '0.9 N·m'],
    [-0.005, 0.003, 'length', 'mm', '−5 to 3 mm'],
    [23.52, 24.48, 'voltage', 'V', '23.5–24.5 V'],
    [1, 1.0004, 'voltage', 'V', '1–1.0004 V'],
    [281.15, 305.15, 'temperature', '°C', '8–32 °C'],
    [24, 29.5, 'money', 'EUR', '24–29.50 EUR'],
  ] as const)('%d to %d of %s in %s', (lo, hi, dimension, text, printed) => {
    expect(showRange(lo, hi, dimension, text)).toBe(printed);
  });

  it('chooses one unit for both ends', () => {
    expect(showRange(0.4, 2.6, 'mass')).toBe('0.4–2.6 kg');
  });
});

describe('units', () => {
  it('names the SI unit', () => {
    expect([siUnit('torque'), siUnit('speed'), siUnit('ratio')]).toEqual(['N·m', 'm/s', '1']);
  });

  it('turns SI into the author’s unit', () => {
    expect(toUnit(0.018, unit('mm', 'length'))).toBe(18);
    expect(toUnit(295.3722222222222, unit('°F', 'temperature'))).toBeCloseTo(72, 9);
  });

  it('says what is wrong with a unit', () => {
    expect(unitNamed('furlong', 'length')).toMatchObject({
      what: '"furlong" has a unit that is not known: "furlong".',
    });
    expect(unitNamed('', 'length')).toMatchObject({ what: 'No unit is written.' });
    expect(unitNamed('J', 'torque')).toMatchObject({ what: '"J" is an energy; a torque is wanted.' });
  });

  it('prints back what was read', () => {
    const reading = readQuantity('270 oz-in', 'torque');
    expect(reading.ok && show(reading.lo, 'torque', reading.unit)).toBe('270 ozf·in');
  });
});
