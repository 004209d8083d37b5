/** Travels, belts and drums against values that were derived without sight of the formulas. */
import { describe, expect, it } from 'vitest';
import { inertiaTogether, loadInertia } from '../../calc/axis-load.ts';
import { drumCapacity } from '../../calc/drum-room.ts';
import { layersNeeded, topRadius, turnsPerLayer } from '../../calc/drum.ts';
import { beltLength, electricalTurn, pulleyRadius, teethInMesh, wrapAngle } from '../../calc/pulley.ts';
import { rampTime } from '../../calc/resonance.ts';
import { sCurveRampTime, sCurveReachedAcceleration, sCurveReachedSpeed, sCurveTravelTime } from '../../calc/s-curve.ts';
import { reachedSpeed, travelTime } from '../../calc/trapezoid.ts';
import * as derived from '../references/derived-axis.ts';

const near = (got: number, { gives, within }: { readonly gives: number; readonly within: number }): void =>
  expect(Math.abs(got - gives)).toBeLessThanOrEqual(within);

const millimetre = 1e-3;
const radius = (teeth: number): number => pulleyRadius({ teeth, pitch: 2 * millimetre });
const DEGREE = Math.PI / 180;

describe('a trapezoid, independent', () => {
  it('has its ramps and its steady stretch', () => {
    const { given, ramp, steady, total } = derived.trapezoid;
    const speed = reachedSpeed(given);
    const time = travelTime({ ...given, speed });
    const up = rampTime({ total: time, distance: given.distance, speed });
    near(time, total);
    near(up, ramp);
    near(time - 2 * up, steady);
  });

  it('by thirds takes a second for 200 mm', () => {
    const { given } = derived.byThirds;
    const speed = reachedSpeed(given);
    near(travelTime({ ...given, speed }), derived.byThirds);
    expect(speed).toBe(given.asked);
  });
});

describe('jerk-limited travels, independent', () => {
  it.each(derived.branches)('$means', ({ given, total, easing, flat, top, speed }) => {
    const reached = sCurveReachedSpeed(given);
    const ramp = sCurveRampTime({ ...given, speed: reached });
    const most = sCurveReachedAcceleration({ ...given, speed: reached });
    near(reached, speed);
    near(most, top);
    near(most / given.jerk, easing);
    near(ramp - (2 * most) / given.jerk, flat);
    near(sCurveTravelTime({ ...given, speed: reached, ramp }), total);
  });

  it('have a ramp of 0.35 s', () => near(sCurveRampTime(derived.rampOfAll.given), derived.rampOfAll));
});

describe('twenty teeth, independent', () => {
  const r = radius(20);
  const full = electricalTurn({ radius: r, teeth: 50 }) / 4;
  it.each([
    ['diameter', 2 * r],
    ['turn', 2 * Math.PI * r],
    ['step', full],
    ['sixteenth', full / 16],
  ] as const)('%s', (what, got) => near(got, derived.twentyTeeth[what]));
});

describe('belts round two pulleys, independent', () => {
  it.each(derived.loops)('$small and $large teeth, $centres m apart', (loop) => {
    const { small, large, centres } = loop;
    near(beltLength({ centres, small: radius(small), large: radius(large) }), loop.length);
    if (!('wrap' in loop)) return;
    const wrap = wrapAngle({ centres, small: 2 * radius(small), large: 2 * radius(large) });
    near(wrap / DEGREE, loop.wrap);
    near(teethInMesh({ teeth: small, wrap }), loop.mesh);
  });
});

it('published: a rack with its pinion and rotor turns 18.25 lb·in²', () => {
  const { weight, pinion, rotor } = derived.rackWithRotor;
  const POUND = 0.45359237;
  const INCH = 0.0254;
  const unit = POUND * INCH ** 2;
  const load = loadInertia({
    mass: weight * POUND,
    radius: derived.rackWithRotor.radius * INCH,
    share: 1,
    turning: pinion * unit,
  });
  // Exact in those units: half of the last digit is far wider than rounding.
  near(inertiaTogether({ rotor: rotor * unit, turning: load }) / unit, derived.rackWithRotor);
});

describe('a drum in layers, independent', () => {
  const drum = { drum: 12 * millimetre, line: 1 * millimetre };
  const turns = turnsPerLayer({ width: 10 * millimetre, lay: drum.line });
  const holds = (layers: number): number => (layers === 0 ? 0 : drumCapacity({ ...drum, turns, layers }));

  it.each(derived.layers)('layer $layer', ({ layer, radius: r, own, all }) => {
    near(topRadius({ ...drum, layers: layer }), r);
    near(holds(layer), all);
    near(holds(layer) - holds(layer - 1), own);
    expect(layersNeeded({ ...drum, turns, length: all.gives - all.within })).toBe(layer);
  });

  it('holds some per cent less where the lines lie in the grooves of each other', () => {
    const less = derived.nested.gives / holds(3);
    expect(less).toBeGreaterThan(0.98);
    expect(less).toBeLessThan(0.99);
  });
});
