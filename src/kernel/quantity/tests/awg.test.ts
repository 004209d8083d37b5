import { describe, expect, it } from 'vitest';
import { awgArea, awgNumber, readQuantity, show, showRange } from '../index.ts';

/**
 * Diameter [mm] and area [mm²] by gauge: independent, computed elsewhere from d = 0.127 mm · 92^((36 − n)/39) and
 * printed to four decimals.
 */
const TABLE: readonly (readonly [gauge: number, diameter: number, area: number])[] = [
  [10, 2.5882, 5.2612],
  [11, 2.3048, 4.1723],
  [12, 2.0525, 3.3088],
  [13, 1.8278, 2.624],
  [14, 1.6277, 2.0809],
  [15, 1.4495, 1.6502],
  [16, 1.2908, 1.3087],
  [17, 1.1495, 1.0378],
  [18, 1.0237, 0.823],
  [19, 0.9116, 0.6527],
  [20, 0.8118, 0.5176],
  [21, 0.7229, 0.4105],
  [22, 0.6438, 0.3255],
  [23, 0.5733, 0.2582],
  [24, 0.5106, 0.2047],
  [25, 0.4547, 0.1624],
  [26, 0.4049, 0.1288],
  [27, 0.3606, 0.1021],
  [28, 0.3211, 0.081],
  [29, 0.2859, 0.0642],
  [30, 0.2546, 0.0509],
];

/** Ω per 100 ft at 20 °C: published in a wire maker's table (cirris.com, read second-hand from the standard). */
const PUBLISHED: readonly (readonly [gauge: number, resistance: number, digits: number])[] = [
  [18, 0.6385, 4],
  [20, 1.015, 3],
  [22, 1.614, 3],
  [24, 2.567, 3],
  [26, 4.081, 3],
  [28, 6.49, 3],
  [30, 10.32, 2],
];
/** Annealed copper at 20 °C [Ω·m], as in the table. */
const COPPER = 1.7241e-8;

/** Half the last printed digit. */
const HALF_DIGIT = 0.5e-4;

describe('wire gauges', () => {
  it.each(TABLE)('AWG %i', (gauge, diameter, area) => {
    const reading = readQuantity(`AWG ${gauge}`, 'conductor-area');
    if (!reading.ok) throw new Error(reading.problem.what);
    expect(Math.abs(reading.lo * 1e6 - area)).toBeLessThanOrEqual(HALF_DIGIT);
    expect(Math.abs(Math.sqrt((4 * reading.lo) / Math.PI) * 1e3 - diameter)).toBeLessThanOrEqual(HALF_DIGIT);
  });

  it.each(PUBLISHED)('AWG %i has the published resistance', (gauge, resistance, digits) => {
    const hundredFeet = 30.48;
    expect(Math.abs((COPPER / awgArea(gauge)) * hundredFeet - resistance)).toBeLessThanOrEqual(0.5 * 10 ** -digits);
  });

  it.each(['24 AWG', 'AWG24', 'AWG 24', 'awg-24', '24awg', '24 - AWG'])('reads %s', (text) => {
    const reading = readQuantity(text, 'conductor-area');
    expect(reading).toMatchObject({ ok: true, lo: awgArea(24), hi: awgArea(24) });
    expect(reading.ok && show(reading.lo, 'conductor-area', reading.unit)).toBe('AWG 24');
  });

  it.each([
    ['AWG 4/0', 'AWG 4/0', -3],
    ['1/0 AWG', 'AWG 1/0', 0],
    ['AWG 0/0', undefined, undefined],
  ])('%s', (text, printed, gauge) => {
    const reading = readQuantity(text, 'conductor-area');
    expect(reading.ok).toBe(printed !== undefined);
    if (!reading.ok) return;
    expect(reading.lo).toBe(awgArea(gauge ?? Number.NaN));
    expect(show(reading.lo, 'conductor-area', reading.unit)).toBe(printed);
  });

  it.each(['22..24 AWG', 'AWG 24..22', 'AWG22..AWG24'])('takes %s in either order', (text) => {
    const reading = readQuantity(text, 'conductor-area');
    expect(reading).toMatchObject({ ok: true, lo: awgArea(24), hi: awgArea(22) });
    expect(reading.ok && showRange(reading.lo, reading.hi, 'conductor-area', reading.unit)).toBe('AWG 24–22');
  });

  it('prints an area between two gauges in mm²', () => {
    expect(show(0.22e-6, 'conductor-area', 'AWG')).toBe('0.22 mm²');
  });

  it('finds the gauge of every area it gives', () => {
    for (let n = -3; n <= 56; n += 1) expect(awgNumber(awgArea(n))).toBeCloseTo(n, 9);
  });
});
