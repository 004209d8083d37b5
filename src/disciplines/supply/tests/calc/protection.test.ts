import { describe, expect, it } from 'vitest';
import { OutsideRange } from '../../../../kernel/index.ts';
import {
  faultCurrent,
  fuseCapacity,
  fuselessCurrent,
  gateLetThrough,
  lingeringCurrent,
  sureOpening,
} from '../../calc/fuse.ts';
import {
  ambientFactor,
  bearableOverload,
  conductingShare,
  heatingConstant,
  wireCapacity,
  wireLetThrough,
} from '../../calc/wire.ts';
import { adiabaticRate, derated, fineStranded, gaugeArea, heatingConstants, timeLag } from '../references/supply.ts';

const celsius = (x: number): number => x + 273.15;

describe('a wire', () => {
  it('bears what table and factors leave', () => {
    expect(wireCapacity(derated)).toBeCloseTo(derated.amperes, 2);
    expect(bearableOverload({ capacity: 6.98 })).toBeCloseTo(10.121, 12);
  });

  it('bears with several conductors in parallel what it bears with one of them open', () => {
    const one = { table: 4, ambient: 1 };
    expect(wireCapacity({ ...one, parallel: 2 })).toBe(4);
    expect(wireCapacity({ ...one, parallel: 3 })).toBe(8);
  });

  // Published-secondary (iec-60228-resistance): the greatest resistances that fine-stranded copper may have.
  it.each(fineStranded)('of $area mm² at $ohms Ω/km counts as whole copper', ({ area, ohms }) => {
    expect(conductingShare({ perLength: ohms / 1000, area: area * 1e-6 })).toBe(1);
  });

  it('of copper-clad aluminium conducts less, bears less and lets less through', () => {
    // By hand: 1.16 · 8.410 Ω/100 m of pure copper on 23 Ω/100 m of clad aluminium, 0.205 mm².
    const share = conductingShare({ perLength: 0.23, area: 0.205e-6 });
    expect(share).toBeCloseTo(0.4242, 4);
    expect(wireCapacity({ table: 4, ambient: 1, share })).toBeCloseTo(4 * Math.sqrt(share), 12);
    const constant = 1.15e8;
    expect(wireLetThrough({ constant, area: 1e-6, share }) / wireLetThrough({ constant, area: 1e-6 })).toBeCloseTo(
      share,
      12,
    );
  });

  it('bears as much warmer than its table as its insulation is far from its limit', () => {
    // At the table's own air nothing changes; a quarter of the room for warming leaves half of the current.
    expect(ambientFactor({ most: celsius(70), ambient: celsius(40), reference: celsius(40) })).toBe(1);
    expect(ambientFactor({ most: celsius(70), ambient: celsius(62.5), reference: celsius(40) })).toBeCloseTo(0.5, 12);
    expect(ambientFactor({ most: celsius(70), ambient: celsius(80), reference: celsius(40) })).toBe(0);
    // In the cold nothing is counted on that no table prints.
    const mild = ambientFactor({ most: celsius(70), ambient: celsius(30), reference: celsius(40) });
    expect(mild).toBeCloseTo(Math.sqrt(4 / 3), 12);
    expect(ambientFactor({ most: celsius(70), ambient: celsius(-20), reference: celsius(40) })).toBe(mild);
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

  it('lets through what its gates allow, and of a lesser fault what it brings in that time', () => {
    const [first, second] = gates as [(typeof gates)[0], (typeof gates)[0]];
    // By hand: 12.6² · 5 and 31.5² · 0.1.
    expect(gateLetThrough({ fault: 40, rating, ...first })).toBeCloseTo(793.8, 9);
    expect(gateLetThrough({ fault: 40, rating, ...second })).toBeCloseTo(99.225, 9);
    expect(gateLetThrough({ fault: 12.6, rating, ...first })).toBeCloseTo(793.8, 9);
    expect(gateLetThrough({ fault: 10, rating, ...first })).toBeCloseTo(500, 9);
  });

  it('leaves to the wire what neither it nor the supply ends', () => {
    expect(lingeringCurrent({ supply: 6, rating: 1, multiple: 4 })).toBe(4);
    expect(lingeringCurrent({ supply: 3, rating: 1, multiple: 4 })).toBe(3);
  });

  // Published-secondary (limited-power-source): 5 VA for each volt up to 20 V, 100 VA above.
  it.each([
    { rail: 5, amperes: 5 },
    { rail: 12, amperes: 5 },
    { rail: 20, amperes: 5 },
    { rail: 24, amperes: 4.1667 },
    { rail: 48, amperes: 2.0833 },
  ])('may be left out where a rail of $rail V gives no more than $amperes A', ({ rail, amperes }) => {
    expect(fuselessCurrent({ rail })).toBeCloseTo(amperes, 4);
    expect(() => fuselessCurrent({ rail: 61 })).toThrow(OutsideRange);
  });

  it('sees no more than supply and wire bring', () => {
    expect(faultCurrent({ supply: 6, rail: 24, loop: 0.5 })).toBe(6);
    expect(faultCurrent({ supply: 100, rail: 24, loop: 0.5 })).toBe(48);
  });
});
