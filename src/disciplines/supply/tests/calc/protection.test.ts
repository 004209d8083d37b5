import { describe, expect, it } from 'vitest';
import { OutsideRange } from '../../../../kernel/index.ts';
import { faultCurrent, fuseCapacity, gateLetThrough, sureOpening } from '../../calc/fuse.ts';
import { ambientFactor, bearableOverload, heatingConstant, wireCapacity, wireLetThrough } from '../../calc/wire.ts';
import { adiabaticRate, derated, gaugeArea, heatingConstants, timeLag } from '../references/supply.ts';

const celsius = (x: number): number => x + 273.15;

describe('a wire', () => {
  it('bears what table and factors leave', () => {
    expect(wireCapacity(derated)).toBeCloseTo(derated.amperes, 2);
    expect(bearableOverload({ capacity: 6.98 })).toBeCloseTo(10.121, 12);
  });

  it('bears as much warmer than its table as its insulation is far from its limit', () => {
    // At the table's own air nothing changes; a quarter of the room for warming leaves half of the current.
    expect(ambientFactor({ most: celsius(70), ambient: celsius(40), reference: celsius(40) })).toBe(1);
    expect(ambientFactor({ most: celsius(70), ambient: celsius(62.5), reference: celsius(40) })).toBeCloseTo(0.5, 12);
    expect(ambientFactor({ most: celsius(70), ambient: celsius(80), reference: celsius(40) })).toBe(0);
  });

  it.each(heatingConstants)('has k = $k from $from to $to °C', ({ from, to, k }) => {
    // Whole numbers as printed, from a constant that is itself printed to three digits.
    expect(Math.abs(heatingConstant({ start: celsius(from), end: celsius(to) }) / 1e6 - k)).toBeLessThanOrEqual(0.7);
  });

  it('warms without loss at the rate of its resistivity and heat capacity', () => {
    const { gauge, amperes, kelvinPerSecond } = adiabaticRate;
    const area = gaugeArea(gauge);
    const letThrough = wireLetThrough({ constant: heatingConstant({ start: celsius(20), end: celsius(21) }), area });
    // 1 %: the constant of the standard is printed to three digits, and one kelvin is not yet nothing.
    expect(Math.abs(amperes ** 2 / letThrough / kelvinPerSecond - 1)).toBeLessThan(0.01);
  });

  it('is refused an end below its start', () => {
    expect(() => heatingConstant({ start: celsius(160), end: celsius(70) })).toThrow(OutsideRange);
  });
});

describe('a fuse', () => {
  const { rating, gates } = timeLag;

  it('carries less where it is warm', () => {
    expect(fuseCapacity({ rating: 2, temperature: celsius(23), derating: 0.005 })).toBe(2);
    expect(fuseCapacity({ rating: 2, temperature: celsius(0), derating: 0.005 })).toBe(2);
    expect(fuseCapacity({ rating: 2, temperature: celsius(63), derating: 0.005 })).toBeCloseTo(1.6, 12);
  });

  it('is sure to open at its conventional current', () => {
    expect(sureOpening({ rating, factor: timeLag.sure })).toBeCloseTo(6.615, 12);
  });

  it('lets through what its gates allow, where the fault brings the current', () => {
    const [first, second] = gates as [(typeof gates)[0], (typeof gates)[0]];
    // By hand: 12.6² · 5 and 31.5² · 0.1.
    expect(gateLetThrough({ fault: 40, rating, ...first })).toBeCloseTo(793.8, 9);
    expect(gateLetThrough({ fault: 40, rating, ...second })).toBeCloseTo(99.225, 9);
    expect(gateLetThrough({ fault: 12.6, rating, ...first })).toBeCloseTo(793.8, 9);
    expect(gateLetThrough({ fault: 12.5, rating, ...first })).toBe(0);
  });

  it('sees no more than supply and wire bring', () => {
    expect(faultCurrent({ supply: 6, rail: 24, loop: 0.5 })).toBe(6);
    expect(faultCurrent({ supply: 100, rail: 24, loop: 0.5 })).toBe(48);
  });
});
