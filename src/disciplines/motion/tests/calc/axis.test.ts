import { describe, expect, it } from 'vitest';
import {
  axisForce,
  evenShare,
  inertiaRatio,
  inertiaTogether,
  loadInertia,
  massTogether,
} from '../../calc/axis-load.ts';
import { backDrivingTorque, driveTorque, forceFromTorque, shaftSpeed, standingTorque } from '../../calc/axis-torque.ts';
import { stepTone } from '../../calc/belt-stretch.ts';
import { pulleyRadius } from '../../calc/pulley.ts';
import { beltAxis, hoist, rackExample } from '../references/mechanics.ts';

const off = (got: number, wanted: number): number => Math.abs(got - wanted);
const level = { pull: 0, incline: 0 };

describe('a belt axis, independent', () => {
  const radius = pulleyRadius(beltAxis);
  const force = axisForce({ ...beltAxis, ...level });
  const torque = { force, radius, share: 1, inertia: 0, acceleration: beltAxis.acceleration };

  it('has the radius of its pulley', () => {
    expect(off(radius, beltAxis.radius)).toBeLessThanOrEqual(beltAxis.radiusWithin);
  });
  it('needs the force', () => {
    expect(off(force, beltAxis.force)).toBeLessThanOrEqual(beltAxis.forceWithin);
  });
  it('needs the torque, without and with losses', () => {
    expect(off(driveTorque({ ...torque, efficiency: 1 }), beltAxis.torque)).toBeLessThanOrEqual(beltAxis.torqueWithin);
    expect(off(driveTorque({ ...torque, efficiency: 0.95 }), beltAxis.torqueAt95)).toBeLessThanOrEqual(
      beltAxis.torqueAt95Within,
    );
  });
  it('turns the inertia', () => {
    const load = loadInertia({ mass: beltAxis.mass, radius, share: 1, turning: 0 });
    expect(off(load, beltAxis.inertia)).toBeLessThanOrEqual(beltAxis.inertiaWithin);
    expect(off(inertiaRatio({ load, rotor: 300e-7 }), beltAxis.ratio)).toBeLessThanOrEqual(beltAxis.ratioWithin);
  });
});

describe('a rack, published', () => {
  const { mass, radius, speed } = rackExample;
  it('has the inertia of its mass on the pinion', () => {
    expect(off(loadInertia({ mass, radius, share: 1, turning: 0 }), rackExample.inertia)).toBeLessThanOrEqual(
      rackExample.inertiaWithin,
    );
  });
  it('turns the pinion, and steps 200 times a turn', () => {
    expect(off(shaftSpeed({ speed, radius }) / (2 * Math.PI), rackExample.revolutions)).toBeLessThanOrEqual(
      rackExample.revolutionsWithin,
    );
    expect(off(stepTone({ speed, radius, teeth: 50, multiple: 4 }), rackExample.steps)).toBeLessThanOrEqual(
      rackExample.stepsWithin,
    );
  });
});

describe('a hoist, independent', () => {
  const { mass, radius, within } = hoist;
  it('holds', () => {
    expect(
      off(standingTorque({ mass, incline: Math.PI / 2, pull: 0, radius, share: 1 }), hoist.standing),
    ).toBeLessThanOrEqual(within);
  });
  it('lifts', () => {
    const force = axisForce({ mass, acceleration: 1, resistance: 0, pull: 0, incline: Math.PI / 2 });
    const torque = driveTorque({ force, radius, efficiency: 1, share: 1, inertia: 0, acceleration: 1 });
    expect(off(torque, hoist.lifting)).toBeLessThanOrEqual(within);
  });
});

describe('laws', () => {
  it('a rotor asks the same torque as its mass at the radius', () => {
    const rest = { radius: 0.01, efficiency: 1, share: 1, acceleration: 2 };
    const asMass = driveTorque({
      ...rest,
      force: axisForce({ mass: 0.3, acceleration: 2, resistance: 0, ...level }),
      inertia: 0,
    });
    expect(driveTorque({ ...rest, force: 0, inertia: 0.3 * 0.01 ** 2 })).toBeCloseTo(asMass, 12);
  });
  it('two motors share what one would do', () => {
    const all = { force: 10, radius: 0.01, efficiency: 0.9, inertia: 0, acceleration: 1 };
    expect(2 * driveTorque({ ...all, share: evenShare({ motors: 2 }) })).toBeCloseTo(
      driveTorque({ ...all, share: 1 }),
      12,
    );
  });
  it('an axis at 30° carries half of its weight', () => {
    const standing = (incline: number): number => standingTorque({ mass: 2, incline, pull: 0, radius: 0.01, share: 1 });
    expect(standing(Math.PI / 6)).toBeCloseTo(standing(Math.PI / 2) / 2, 12);
    expect(standing(0)).toBe(0);
  });
  // Published: screw-statics, problem 3.
  it('half an efficiency holds itself', () => {
    expect(backDrivingTorque({ standing: 0.1, efficiency: 0.5 })).toBe(0);
    expect(backDrivingTorque({ standing: 0.1, efficiency: 0.3 })).toBe(0);
    expect(backDrivingTorque({ standing: 0.1, efficiency: 1 })).toBe(0.1);
  });
  it('lifting and sinking take the same loss off the load', () => {
    const standing = 0.12;
    const lifting = standing / 0.8;
    expect(lifting - standing).toBeCloseTo(standing - backDrivingTorque({ standing, efficiency: 0.8 }), 12);
  });
  it('sums are sums, and a force comes back from its torque', () => {
    expect(massTogether({ own: 0.62, load: 0.14 })).toBeCloseTo(0.76, 12);
    expect(inertiaTogether({ rotor: 3e-5, turning: 1e-6 })).toBeCloseTo(3.1e-5, 12);
    const torque = driveTorque({ force: 12, radius: 0.008, efficiency: 1, share: 1, inertia: 0, acceleration: 0 });
    expect(forceFromTorque({ torque, radius: 0.008 })).toBeCloseTo(12, 12);
  });
});
