/**
 * Every spelling that people type, against its SI value. The values are definitions (1 in = 0.0254 m,
 * 1 lb = 0.45359237 kg, g₀ = 9.80665 m/s², 1 kWh = 3.6 MJ) multiplied out with exact fractions in another language:
 * independent. Where the value contains no π they hold to the last bit.
 */
import { describe, expect, it } from 'vitest';
import { readQuantity } from '../index.ts';
import type { Dimension, Reading } from '../index.ts';

const read = (text: string, dimension: Dimension): Extract<Reading, { ok: true }> => {
  const reading = readQuantity(text, dimension);
  if (!reading.ok) throw new Error(`${reading.problem.what} ${reading.problem.allowed}`);
  return reading;
};

const exactly: readonly (readonly [Dimension, string, number, print: string])[] = [
  ['torque', '1.9 N·m', 1.9, 'N·m'],
  ['torque', '1.9Nm', 1.9, 'N·m'],
  ['torque', '1.9 N*m', 1.9, 'N·m'],
  ['torque', '1.9 N m', 1.9, 'N·m'],
  ['torque', '1.9\u00A0N⋅m', 1.9, 'N·m'],
  ['torque', '1,9 N·m', 1.9, 'N·m'],
  ['torque', '190 Ncm', 1.9, 'N·cm'],
  ['torque', '18 kg-cm', 1.765197, 'kgf·cm'],
  ['torque', '18 kgf·cm', 1.765197, 'kgf·cm'],
  ['torque', '18 kg.cm', 1.765197, 'kgf·cm'],
  ['torque', '18kgcm', 1.765197, 'kgf·cm'],
  ['torque', '270 ozf·in', 1.9066189898410317, 'ozf·in'],
  ['torque', '270 oz-in', 1.9066189898410317, 'ozf·in'],
  ['torque', '270 ozin', 1.9066189898410317, 'ozf·in'],
  ['torque', '2 ft-lb', 2.7116358966628007, 'ft·lbf'],
  ['torque', '2 lb-ft', 2.7116358966628007, 'lbf·ft'],
  ['torque-constant', '45 oz-in/A', 0.317769831640172, 'ozf·in/A'],
  ['length', '18 mm', 0.018, 'mm'],
  ['length', '560 millimetres', 0.56, 'mm'],
  ['length', '3/4 in', 0.01905, 'in'],
  ['length', '3/4"', 0.01905, 'in'],
  ['length', '3/4″', 0.01905, 'in'],
  ['length', '1 1/2 in', 0.0381, 'in'],
  ['length', '1-1/2"', 0.0381, 'in'],
  ['length', '1½ in', 0.0381, 'in'],
  ['length', '½"', 0.0127, 'in'],
  ['length', '-1 1/2 in', -0.0381, 'in'],
  ['length', '.5 in', 0.0127, 'in'],
  ['length', "6'", 1.8288, 'ft'],
  ['length', `6'3-1/2"`, 1.9177, 'in'],
  ['length', '6 ft 3 1/2 in', 1.9177, 'in'],
  ['length', '0,500 mm', 0.0005, 'mm'],
  ['length', '12,5 mm', 0.0125, 'mm'],
  ['length', '1,2345 mm', 0.0012345, 'mm'],
  ['length', '12\u2009345 mm', 12.345, 'mm'],
  ['length', '1\u202F200,5 mm', 1.2005, 'mm'],
  ['length', '−3.2 mm', -0.0032, 'mm'],
  ['length', '12e3 mm', 12, 'mm'],
  ['length', '1.2×10⁻³ m', 0.0012, 'm'],
  ['length', '1.2x10^-3 m', 0.0012, 'm'],
  ['length', '5 um', 5e-6, 'µm'],
  ['length', '5 μm', 5e-6, 'µm'],
  ['area', '5 mm2', 5e-6, 'mm²'],
  ['area', '5 mm²', 5e-6, 'mm²'],
  ['area', '5 sq mm', 5e-6, 'mm²'],
  ['area', '5 sqmm', 5e-6, 'mm²'],
  ['conductor-area', '0.5 mm2', 5e-7, 'mm²'],
  ['mass', '7 lb', 3.17514659, 'lb'],
  ['mass', '620 g', 0.62, 'g'],
  ['force', '7 lbf', 31.1375513068235, 'lbf'],
  ['force', '5 kgf', 49.03325, 'kgf'],
  ['force-per-length', '25 lbf/in', 4378.170881161909, 'lbf/in'],
  ['force-per-length', '25 lb/in', 4378.170881161909, 'lbf/in'],
  ['pressure', '6 kg/cm2', 588399, 'kgf/cm²'],
  ['pressure', '30 N/mm²', 30e6, 'N/mm²'],
  ['pressure', '60 psi', 413685.4375901017, 'psi'],
  ['speed', '300 mm/s', 0.3, 'mm/s'],
  ['speed', '12 m per min', 0.2, 'm/min'],
  ['acceleration', '700 mm/s²', 0.7, 'mm/s²'],
  ['acceleration', '700 mm/s/s', 0.7, 'mm/s²'],
  ['acceleration', '700 mm/s^2', 0.7, 'mm/s²'],
  ['acceleration', '700 mm s-2', 0.7, 'mm/s²'],
  ['acceleration', '0.5 g', 4.903325, 'g'],
  ['inertia', '30 g·cm²', 3e-6, 'g·cm²'],
  ['inertia', '30 g-cm^2', 3e-6, 'g·cm²'],
  ['inertia', '30 g cm2', 3e-6, 'g·cm²'],
  ['inertia', '30 gcm²', 3e-6, 'g·cm²'],
  ['inertia', '18.25 lb·in²', 0.0053406736750829, 'lb·in²'],
  ['inertia', '0.004 oz-in-s^2', 2.8246207256904175e-5, 'ozf·in·s²'],
  ['voltage', '12 V', 12, 'V'],
  ['current', '350mA', 0.35, 'mA'],
  ['resistance', '10k', 10000, 'kΩ'],
  ['resistance', '10K', 10000, 'kΩ'],
  ['resistance', '4k7', 4700, 'kΩ'],
  ['resistance', '2M2', 2.2e6, 'MΩ'],
  ['resistance', '4R7', 4.7, 'Ω'],
  ['resistance', 'R47', 0.47, 'Ω'],
  ['resistance', '1.1 \u2126', 1.1, 'Ω'],
  ['resistance-per-length', '9.38 ohm/100 m', 0.0938, 'Ω/100 m'],
  ['resistance-per-length', '9.38 Ω/100 m', 0.0938, 'Ω/100 m'],
  ['resistance-per-length', '2.567 ohm/100ft', 0.08421916010498688, 'Ω/100 ft'],
  ['capacitance', '100n', 1e-7, 'nF'],
  ['capacitance', '100 nF', 1e-7, 'nF'],
  ['capacitance', '4u7', 4.7e-6, 'µF'],
  ['inductance', '2.5 mH', 0.0025, 'mH'],
  ['inductance', '10u', 1e-5, 'µH'],
  ['emf-constant', '0.225 V·s/rad', 0.225, 'V·s/rad'],
  ['emf-constant', '0.225 Vs/rad', 0.225, 'V·s/rad'],
  ['emf-constant', '0.225 N·m/A', 0.225, 'N·m/A'],
  ['temperature', '72 °F', 295.3722222222222, '°F'],
  ['temperature', '25 degC', 298.15, '°C'],
  ['temperature', '25 C', 298.15, '°C'],
  ['temperature', '300 K', 300, 'K'],
  ['temperature-difference', '40 degC', 40, '°C'],
  ['thermal-resistance', '4 °C/W', 4, '°C/W'],
  ['specific-heat', '385 J/(kg·K)', 385, 'J/(kg·K)'],
  ['specific-heat', '385 J/kg/K', 385, 'J/(kg·K)'],
  ['energy', '43.8 kWh', 157_680_000, 'kWh'],
  ['charge', '2200 mAh', 7920, 'mAh'],
  ['money', '24 EUR', 24, 'EUR'],
  ['money', '€24', 24, 'EUR'],
  ['money-per-energy', '0.28 EUR/kWh', 7.777777777777778e-8, 'EUR/kWh'],
  ['money-per-energy', '€0.28/kWh', 7.777777777777778e-8, 'EUR/kWh'],
  ['rate', '1/h', 1 / 3600, '/h'],
  ['frequency', '4000 steps/s', 4000, 'steps/s'],
  ['duty', '9 h/day', 0.375, 'h/day'],
  ['ratio', '70 %', 0.7, '%'],
  ['ratio', '0.7', 0.7, ''],
  ['ratio', '1/8', 0.125, ''],
  ['temperature-coefficient', '0.4 %/K', 0.004, '%/K'],
  ['count', '20', 20, ''],
  ['count', '3 turns', 3, 'times'],
];

const withPi: readonly (readonly [Dimension, string, number])[] = [
  ['angular-speed', '55 rpm', 5.759586531581288],
  ['angular-speed', '55 r/min', 5.759586531581288],
  ['angle', '1.8°', 0.031415926535897934],
  ['angle', '1.8 deg', 0.031415926535897934],
  ['emf-constant', '23.6 V/krpm', 0.22536339941812383],
  ['emf-constant', '23.6 V/1000 rpm', 0.22536339941812383],
  ['length-per-angle', '8 mm/rev', 0.0012732395447351628],
  ['count-per-angle', '200 steps/rev', 31.830988618379067],
];

describe('one value', () => {
  it.each(exactly)('%s: %s', (dimension, text, si, print) => {
    const reading = read(text, dimension);
    expect([reading.lo, reading.hi]).toEqual([si, si]);
    expect(reading.nominal).toBeUndefined();
    expect(reading.unit.print).toBe(print);
  });

  // One multiplication by π is rounded on its own: two units in the last place.
  it.each(withPi)('%s: %s', (dimension, text, si) => {
    expect(Math.abs(read(text, dimension).lo / si - 1)).toBeLessThan(2 ** -51);
  });
});

const ranges: readonly (readonly [Dimension, string, lo: number, hi: number, nominal: number | undefined])[] = [
  ['torque', '0.9..1.3 N·m', 0.9, 1.3, undefined],
  ['force', '5..8 N', 5, 8, undefined],
  ['force', '5.8..8 N', 5.8, 8, undefined],
  ['force', '5 N..8 N', 5, 8, undefined],
  ['force', '5 N .. 8000 mN', 5, 8, undefined],
  ['force', '5 N..8', 5, 8, undefined],
  ['force', '5 to 8 N', 5, 8, undefined],
  ['force', '5…8 N', 5, 8, undefined],
  ['force', '5–8 N', 5, 8, undefined],
  ['force', '5..5 N', 5, 5, undefined],
  ['length', '-5..-3 mm', -0.005, -0.003, undefined],
  ['length', '3/4..1-1/2 in', 0.01905, 0.0381, undefined],
  ['length', '18 mm..3/4 in', 0.018, 0.01905, undefined],
  ['temperature', '8..32 degC', 281.15, 305.15, undefined],
  ['temperature', '8..32 °C', 281.15, 305.15, undefined],
  ['rate', '60..140 /day', 60 / 86_400, 140 / 86_400, undefined],
  ['rate', '60..140 plays/day', 60 / 86_400, 140 / 86_400, undefined],
  ['count', '6..14 swings', 6, 14, undefined],
  ['ratio', '60..70 %', 0.6, 0.7, undefined],
  ['resistance', '4k7..10k', 4700, 10_000, undefined],
  ['voltage', '24 V ±2%', 23.52, 24.48, 24],
  ['voltage', '24 V +/- 2 %', 23.52, 24.48, 24],
  ['voltage', '24 V ±500 mV', 23.5, 24.5, 24],
  ['voltage', '-12 V ±10%', -13.2, -10.8, -12],
  ['torque', '1.1 N·m ±15%', 0.935, 1.265, 1.1],
  ['torque', '1.1 ±0.1 N·m', 1, 1.2, 1.1],
  ['torque', '1.1 +-0.1Nm', 1, 1.2, 1.1],
  ['torque', '1.1 N·m ±0.1 N·m', 1, 1.2, 1.1],
  ['torque', '1.1 Nm ±100 mNm', 1, 1.2, 1.1],
  ['temperature', '20 ±5 °C', 288.15, 298.15, 293.15],
  ['temperature', '20 °C ±5 K', 288.15, 298.15, 293.15],
  ['ratio', '0.7 ±0.1', 0.6, 0.8, 0.7],
  ['count', '20 ±10%', 18, 22, 20],
];

describe('a range', () => {
  it.each(ranges)('%s: %s', (dimension, text, lo, hi, nominal) => {
    expect(read(text, dimension)).toMatchObject({ lo, hi, ...(nominal !== undefined && { nominal }) });
  });

  it('adds a tolerance in degrees to an angle in radians', () => {
    const { lo, hi } = read('1 rad ±1 deg', 'angle');
    expect(lo).toBeCloseTo(1 - Math.PI / 180, 15);
    expect(hi).toBeCloseTo(1 + Math.PI / 180, 15);
  });
});

describe('what comes with a value', () => {
  it.each<[text: string, figures: number]>([
    ['1.90 N·m', 3],
    ['2.4 N·m', 2],
    ['0.017241 N·m', 5],
    ['2.40..2.625 N·m', 4],
  ])('%s was written with %i figures', (text, figures) => {
    expect(read(text, 'torque').figures).toBe(figures);
  });

  it('gives eleven sixteenths all its digits', () => {
    expect(read('11/16 in', 'length').figures).toBe(4);
  });

  it('keeps the unit as authored beside its printed form', () => {
    expect(read('18 kg-cm', 'torque').unit).toMatchObject({ text: 'kg-cm', print: 'kgf·cm', ascii: 'kgf*cm' });
  });

  it('knows the currency', () => {
    expect(read('24 CHF', 'money').unit.currency).toBe('CHF');
  });

  it('is plain data that a worker can be sent', () => {
    const reading = read('0.9..1.3 N·m', 'torque');
    expect(structuredClone(reading)).toEqual(reading);
    expect(JSON.parse(JSON.stringify(reading))).toEqual(JSON.parse(JSON.stringify(structuredClone(reading))));
  });
});
