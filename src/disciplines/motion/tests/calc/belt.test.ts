import { describe, expect, it } from 'vitest';
import { OutsideRange } from '../../../../kernel/index.ts';
import {
  beltStiffness,
  lostMotion,
  springFrequency,
  stepTone,
  stretch,
  toneDistance,
} from '../../calc/belt-stretch.ts';
import { leastTension, shareOfForce, spanTension, spanTone, tautestTension } from '../../calc/belt-tension.ts';
import { beltLength, electricalTurn, pulleyRadius, teethInMesh, wrapAngle } from '../../calc/pulley.ts';
import { belts } from '../references/mechanics.ts';

const off = (got: number, wanted: number): number => Math.abs(got - wanted);
const radius = (teeth: number): number => pulleyRadius({ teeth, pitch: 0.002 });
const DEGREE = Math.PI / 180;

describe('belts, independent', () => {
  it('have the length', () => {
    expect(
      off(beltLength({ centres: 0.5, large: radius(20), small: radius(20) }), belts.length2020),
    ).toBeLessThanOrEqual(belts.length2020Within);
    expect(
      off(beltLength({ centres: 0.1, large: radius(60), small: radius(20) }), belts.length2060),
    ).toBeLessThanOrEqual(belts.length2060Within);
  });
  it('lie on the small pulley', () => {
    const wrap = wrapAngle({ large: 2 * radius(60), small: 2 * radius(16), centres: 0.06 });
    expect(off(wrap / DEGREE, belts.wrap1660)).toBeLessThanOrEqual(belts.wrap1660Within);
    expect(off(teethInMesh({ teeth: 16, wrap }), belts.mesh1660)).toBeLessThanOrEqual(belts.mesh1660Within);
  });
  it('sound their tension', () => {
    const mass = 0.0084;
    const tension = spanTension({ mass, span: 0.4, tone: 60 });
    expect(off(tension, belts.noteTension)).toBeLessThanOrEqual(belts.noteTensionWithin);
    expect(spanTone({ tension, mass, span: 0.4 })).toBeCloseTo(60, 12);
  });
  // Published-secondary: belt-length-page gives 40 mm a turn for 20 teeth.
  it('move a fifth of a millimetre a full step on 20 teeth', () => {
    expect(electricalTurn({ radius: radius(20), teeth: 50 })).toBeCloseTo(0.8e-3, 12);
  });
});

describe('resonance', () => {
  // Published: resonance-example, 0.611 N·m/rad and 4.8·10⁻⁶ kg·m² at 56.8 Hz; stiffness and mass stand for them.
  it('is where the turning twin has it', () => {
    expect(off(springFrequency({ stiffness: 0.611, mass: 4.8e-6 }), 56.8)).toBeLessThanOrEqual(0.05);
  });
  it('lies a tone at a share of it', () => {
    expect(toneDistance({ tone: 30, natural: 20 })).toBeCloseTo(0.5, 12);
    expect(toneDistance({ tone: 10, natural: 20 })).toBeCloseTo(0.5, 12);
    expect(toneDistance({ tone: 20, natural: 20 })).toBe(0);
  });
  it('hears four full steps in an electrical turn', () => {
    const given = { speed: 0.22, radius: radius(20), teeth: 50 };
    expect(stepTone({ ...given, multiple: 4 })).toBeCloseTo(0.22 / 0.0002, 9);
    expect(stepTone({ ...given, multiple: 1 })).toBeCloseTo(0.22 / 0.0008, 9);
  });
});

describe('stretch', () => {
  const EA = 15e3;
  it('is greatest in the middle of the loop', () => {
    const at = (short: number): number => beltStiffness({ axial: EA, short, long: 1.4 - short });
    expect(at(0.7)).toBeLessThan(at(0.6));
    expect(at(0.7)).toBeCloseTo((4 * EA) / 1.4, 9);
    expect(beltStiffness({ axial: EA, short: 0.7, long: 0.7, belts: 2 })).toBeCloseTo(2 * at(0.7), 9);
  });
  it('grows with the force', () => {
    expect(stretch({ force: 20, stiffness: 4e4 })).toBeCloseTo(5e-4, 12);
  });
  it('leaves only play without friction', () => {
    const given = { friction: 0, stiffness: 4e4, play: 5e-5, lag: 0, radius: radius(20) };
    expect(lostMotion(given)).toBe(5e-5);
    expect(lostMotion({ ...given, friction: 8 })).toBeCloseTo(5e-5 + 4e-4, 12);
    expect(lostMotion({ ...given, lag: 0.001 })).toBeCloseTo(5e-5 + 2 * 0.001 * radius(20), 12);
  });
});

describe('tension over the year', () => {
  it('goes down and up with the frame', () => {
    const given = { pretension: 25, axial: 15e3, movement: 3e-4 };
    expect(leastTension(given)).toBeCloseTo(20.5, 12);
    expect(tautestTension({ ...given, force: 8 })).toBeCloseTo(37.5, 12);
    expect(shareOfForce({ force: 8, share: 0.5 })).toBe(4);
  });
  it('refuses a frame that moves by a tenth', () => {
    expect(() => leastTension({ pretension: 25, axial: 15e3, movement: 0.1 })).toThrow(OutsideRange);
  });
});
