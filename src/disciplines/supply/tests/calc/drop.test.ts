import { assert, double, pre, property } from 'fast-check';
import { describe, expect, it } from 'vitest';
import { closeLoop } from '../../../../engine/loop.ts';
import { constant, NoSolution, OutsideRange } from '../../../../kernel/index.ts';
import {
  allowedDrop,
  branchResistance,
  deepestDrop,
  feedDrop,
  feedResistance,
  knownFeedResistance,
  mostPower,
  voltageLeft,
} from '../../calc/drop.ts';
import { feeds, gauge24, gaugeArea } from '../references/supply.ts';

describe('a wire out and back', () => {
  it.each(feeds)(
    'of AWG $gauge, $length m, $parallel in parallel at $celsius °C has the resistance and drop printed',
    (one) => {
      const ohms = feedResistance({
        length: one.length,
        area: gaugeArea(one.gauge),
        parallel: one.parallel,
        temperature: one.celsius + 273.15,
      });
      expect(ohms).toBeCloseTo(one.ohms, one.digits);
      const drop = feedDrop({ feed: ohms, constant: one.amperes, rail: 12, assumed: 0 });
      expect(drop).toBeCloseTo(one.volts, 4);
      expect(voltageLeft({ rail: 12, drop })).toBeCloseTo(12 - one.volts, 4);
    },
  );
});

it('a wire of known resistance per length resists as the reference says, and its fuse with it', () => {
  const perLength = gauge24.ohmsPerKilometre / 1000;
  const [cold, warm] = [20, 60].map((celsius) =>
    knownFeedResistance({ length: 5, perLength, temperature: celsius + 273.15 }),
  ) as [number, number];
  expect(cold).toBeCloseTo(0.8421, 4);
  expect(warm).toBeCloseTo(0.9745, 4);
  expect(knownFeedResistance({ length: 5, perLength, parallel: 2 })).toBeCloseTo(0.42105, 5);
  expect(branchResistance({ feed: cold, fuse: 0.25 })).toBeCloseTo(1.0921, 4);
});

/** The drop at which the loop closes, by the engine. */
const closed = (feed: number, steady: number, power: number, rail: number): number => {
  const given = {
    feed: constant(feed, 'resistance', 'wire'),
    constant: constant(steady, 'current', 'steady'),
    rail: constant(rail, 'voltage', 'rail'),
  };
  return closeLoop({
    name: 'drop on the wire',
    from: constant(0, 'voltage', 'no drop'),
    most: deepestDrop.work(given),
    tolerance: 1e-9,
    next: (assumed) => feedDrop.work({ ...given, power: constant(power, 'power', 'load'), assumed }),
    otherwise: 'the wire cannot bring that power',
  }).number;
};

const volts = double({ min: 5, max: 48, noNaN: true });
const ohms = double({ min: 0.02, max: 2, noNaN: true });
const share = (most: number) => double({ min: 1e-3, max: most, noNaN: true });

describe('a load of constant power at the end of a wire', () => {
  // Independent: the voltage v at the load solves v² − U·v + R·P = 0, upper root, U what constant currents leave.
  it('settles at the lower drop of its square', () => {
    assert(
      property(volts, ohms, share(0.9), share(0.98), (rail, feed, lost, part) => {
        const steady = (lost * 0.5 * rail) / feed;
        const left = rail - feed * steady;
        const power = part * mostPower({ rail, feed, constant: steady });
        const upper = (left + Math.sqrt(left ** 2 - 4 * feed * power)) / 2;
        expect(closed(feed, steady, power, rail)).toBeCloseTo(rail - upper, 5);
      }),
      { numRuns: 100 },
    );
  });

  it('settles nowhere beyond U²/4R', () => {
    assert(
      property(volts, ohms, share(0.9), share(2), (rail, feed, lost, part) => {
        pre(part > 1.02);
        const steady = (lost * 0.5 * rail) / feed;
        const power = part * mostPower({ rail, feed, constant: steady });
        expect(() => closed(feed, steady, power, rail)).toThrow(NoSolution);
      }),
      { numRuns: 100 },
    );
  });

  it('settles nowhere when the constant currents alone use up the voltage', () => {
    expect(() => deepestDrop({ rail: 12, feed: 2, constant: 6 })).toThrow(NoSolution);
  });

  it('by hand: 24 W over 1 Ω from 12 V settles at 9.464 V, 36 W is the most', () => {
    expect(12 - closed(1, 0, 24, 12)).toBeCloseTo(9.464, 3);
    expect(mostPower({ rail: 12, feed: 1 })).toBe(36);
    expect(() => closed(1, 0, 37, 12)).toThrow(NoSolution);
  });

  it('knows no number where the assumed drop leaves nothing', () => {
    expect(() => feedDrop({ feed: 1, power: 5, rail: 12, assumed: 12 })).toThrow(OutsideRange);
    expect(() => mostPower({ rail: 12, feed: 0 })).toThrow(OutsideRange);
  });
});

describe('a drop of 5 %', () => {
  // Independent: 0.600 V; longest runs one way, printed to 0.001 m.
  it.each([
    { gauge: 24, amperes: 0.5, length: 7.125 },
    { gauge: 18, amperes: 5, length: 2.864 },
  ])('is what $amperes A lose on $length m of AWG $gauge at 12 V', ({ gauge, amperes, length }) => {
    expect(allowedDrop({ rail: 12, share: 0.05 })).toBeCloseTo(0.6, 12);
    const drop = (metres: number): number => amperes * feedResistance({ length: metres, area: gaugeArea(gauge) });
    expect(drop(length - 0.0005)).toBeLessThan(0.6);
    expect(drop(length + 0.0005)).toBeGreaterThan(0.6);
  });
});
