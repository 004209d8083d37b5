/** More holding torque can mean less torque at speed: then the strong end of a doubt decides a verdict. */
import { describe, expect, it } from 'vitest';
import { checkBook, find } from '../../../../app/testing.ts';
import { falling, summits } from '../references/derived-motor.ts';

/** 5 Ω with the bridge, 8 mH, 1 A RMS on 12 V, at 300 rpm: 200 mm/s at 40 mm a turn. Loads and ends were fixed before the first run. */
const book = (holding: string, friction: string): string => `book: 1
title: Strong and slow
revision: A
axes:
  x: { drive: belt, motors: M1, travel: 400 mm, speed: 200 mm/s, acceleration: 500 mm/s², moving-mass: 2 kg, running-force: ${friction}, efficiency: 100 %, belt: B1, pulley-teeth: 20 }
motors: { M1: { part: motor, driver: D1, winding-temperature: 20 degC } }
drivers: { D1: { rail: 12V, current: 1 A, marked: RMS, microsteps: 8, bridge-resistance: 0.4 ohm, cable-resistance: 0 ohm } }
parts:
  motor: { kind: stepper, leads: 4, holding-torque: ${holding}, rated-current: 1 A, phase-resistance: 4.6 ohm, phase-inductance: 8 mH, rotor-inertia: 300 g·cm², detent-torque: 0 N·m, iron-drag: 0.000000001 N·m·s/rad }
  B1: { kind: belt, pitch: 2 mm, width: 6 mm }
supplies: { G1: { rails: { 12V: { volts: 12 V } } } }
`;
const asked = (holding: string, friction: string) => find(checkBook(book(holding, friction)), 'MOTION-010/x+M1');

const radius = 0.04 / (2 * Math.PI);
/** Torque at the end of the ramp, by hand: mass, friction, rotor. */
const demand = (friction: number): number => (2 * 0.5 + friction) * radius + (300e-7 * 0.5) / radius;
/** Independent: what that motor has at 300 rpm, by holding torque. */
const has = (holding: number): number => {
  const row = falling.find(({ given }) => given.rated === 1 && given.holding === holding);
  if (!row) throw new Error(`no value at ${holding} N·m`);
  return row.limited.gives;
};
/** The iron takes 3·10⁻⁸ N·m, a millionth of what is left. */
const SMALL = 1e-5;

describe('a motor of 0.6 to 1.2 N·m that needs 0.072 N·m at 300 rpm', () => {
  const friction = '10 N';

  it('holds at the low end alone and fails at the high end alone', () => {
    const weak = asked('0.6 N·m', friction);
    expect(weak.verdict).toBe('holds');
    expect(weak.use!.worst).toBeCloseTo(demand(10) / has(0.6), 5);
    const strong = asked('1.2 N·m', friction);
    expect(strong.verdict).toBe('fails');
    expect(Math.abs(strong.use!.worst / (demand(10) / has(1.2)) - 1)).toBeLessThan(SMALL);
  });

  it('is open over the doubt, and the high end is the worst of it', () => {
    const doubtful = asked('0.6..1.2 N·m', friction);
    expect(doubtful.verdict).toBe('open');
    expect(doubtful.reason?.kind).toBe('doubt');
    const end = doubtful.scenario.find(({ path }) => path === 'parts.motor.holding-torque');
    expect(end).toMatchObject({ number: 1.2, end: 'high' });
    expect(Math.abs(doubtful.use!.worst / (demand(10) / has(1.2)) - 1)).toBeLessThan(SMALL);
  });

  it('is best inside the doubt, where neither end is', () => {
    const doubtful = asked('0.6..1.2 N·m', friction);
    expect(doubtful.searched).toBe(true);
    // Flat on top: the search may be off by a thousandth.
    expect(doubtful.use!.best / (demand(10) / summits[0]!.gives)).toBeCloseTo(1, 3);
  });
});

it('with less friction the same doubt is tight by its high end, where the low one leaves five sixths', () => {
  expect(asked('0.9 N·m', '4 N').verdict).toBe('holds');
  const doubtful = asked('0.9..1.2 N·m', '4 N');
  expect(doubtful.verdict).toBe('tight');
  expect(Math.abs(doubtful.use!.worst / (demand(4) / has(1.2)) - 1)).toBeLessThan(SMALL);
});
