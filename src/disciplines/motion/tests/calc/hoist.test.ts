import { describe, expect, it } from 'vitest';
import { NoSolution, OutsideRange } from '../../../../kernel/index.ts';
import { bendingRatio, drumCapacity, fleetAngle, pileHeight, widthWanted } from '../../calc/drum-room.ts';
import { drumRadius, firstLayerLength, layersNeeded, topRadius, turnsOnDrum, turnsPerLayer } from '../../calc/drum.ts';
import { looseLine, slackRoom } from '../../calc/slack.ts';
import { fallSpeed, landingEnergy, brakingTorque, shortedTorque, sinkingSpeed } from '../../calc/unpowered.ts';
import { drumOf940Feet, fleetDistances } from '../references/mechanics.ts';

const drum = { drum: 0.032, line: 0.0012 };

describe('drums', () => {
  it('published-secondary: a barrel of 10 in holds 940 ft', () => {
    const { given, gives, within } = drumOf940Feet;
    const turns = turnsPerLayer({ width: given.width, lay: given.line });
    expect(turns).toBe(24);
    expect(Math.abs(drumCapacity({ ...given, turns }) - gives)).toBeLessThanOrEqual(within);
  });
  // Published: materials-handling-drum, Z = H/(π·D) + 2 for one fall of line on the diameter D.
  it('take H/(π·D) + 2 turns', () => {
    expect(turnsOnDrum({ travel: Math.PI * 0.0332 * 5, ...drum, dead: 2 })).toBeCloseTo(7, 12);
    expect(firstLayerLength({ turns: 5, ...drum })).toBeCloseTo(Math.PI * 0.0332 * 5, 12);
  });
  it('take no more layers than the line fills', () => {
    for (const length of [0.3, 1, 2.4, 5]) {
      const layers = layersNeeded({ length, turns: 8, ...drum });
      expect(drumCapacity({ turns: 8, layers, ...drum })).toBeGreaterThanOrEqual(length);
      if (layers > 1) expect(drumCapacity({ turns: 8, layers: layers - 1, ...drum })).toBeLessThan(length);
    }
  });
  it('count a layer that is just full as full', () => {
    const length = drumCapacity({ turns: 8, layers: 2, ...drum });
    expect(layersNeeded({ length, turns: 8, ...drum })).toBe(2);
  });
  it('grow by a line diameter with every layer', () => {
    expect(topRadius({ ...drum, layers: 1 })).toBeCloseTo(drumRadius(drum), 12);
    expect(topRadius({ ...drum, layers: 3 }) - topRadius({ ...drum, layers: 2 })).toBeCloseTo(drum.line, 12);
    expect(topRadius({ ...drum, layers: 2, reduction: 2 })).toBeCloseTo(topRadius({ ...drum, layers: 2 }) / 2, 12);
    expect(pileHeight({ layers: 2, line: 0.0012 })).toBeCloseTo(3.6e-3, 12);
  });
  it('want a turn more width than the line lies on', () => {
    const length = drumCapacity({ turns: 9, layers: 2, ...drum });
    expect(widthWanted({ length, layers: 2, ...drum, lay: 0.0013 })).toBeCloseTo(10 * 0.0013, 12);
  });
  it('are refused when not one turn fits', () => {
    expect(() => turnsPerLayer({ width: 0.001, lay: 0.0012 })).toThrow(OutsideRange);
  });
  it('are so many times as thick as the line', () => {
    expect(bendingRatio(drum)).toBeCloseTo(26.67, 2);
  });
});

describe('the way to the fairlead', () => {
  it.each(fleetDistances)('$kind: $given.degrees° wants $gives half widths', ({ given, gives, within }) => {
    const angle = fleetAngle({ width: 2, offset: 0, distance: gives });
    expect(Math.abs(1 / Math.tan(angle) - 1 / Math.tan((given.degrees * Math.PI) / 180))).toBeLessThanOrEqual(within);
  });
  it('is steeper beside the middle', () => {
    expect(fleetAngle({ width: 0.01, offset: 0.005, distance: 0.1 })).toBeCloseTo(Math.atan(0.1), 12);
  });
});

describe('slack', () => {
  it('stands as high as 2π allows', () => {
    const given = { lever: 0, flange: 0.006, layers: 1, line: 0.0012 };
    expect(slackRoom(given)).toBeCloseTo(2 * Math.PI * 0.0048, 12);
    expect(slackRoom({ ...given, lever: 0.04 })).toBeCloseTo(0.04 + 2 * Math.PI * 0.0048, 12);
  });
  it('has no room on a full drum', () => {
    expect(slackRoom({ lever: 0, flange: 0.002, layers: 2, line: 0.0012 })).toBe(0);
  });
  it('runs out after landing', () => {
    expect(looseLine({ travel: 0.7, lands: 0.45 })).toBeCloseTo(0.25, 12);
    expect(looseLine({ travel: 0.7, lands: 0.8 })).toBe(0);
  });
});

describe('shorted windings', () => {
  const motor = { constant: 0.6, teeth: 50, inductance: 0.012 };
  const R = 2;
  // Straight from the circuit: EMF K·ω on R and N_r·ω·L in series, the power in R over ω, for both phases together.
  const braking = (ω: number): number => (motor.constant ** 2 * ω * R) / (R ** 2 + (50 * ω * motor.inductance) ** 2);

  it('brake as the circuit says', () => {
    for (const ω of [0.5, 3, 20])
      expect(brakingTorque({ speed: ω, ...motor, resistance: R })).toBeCloseTo(braking(ω), 12);
  });
  it('brake at most as much as the highest point of the curve', () => {
    const speeds = Array.from({ length: 4000 }, (_, k) => 0.01 * (k + 1));
    const highest = Math.max(...speeds.map(braking));
    expect(shortedTorque(motor)).toBeCloseTo(highest, 5);
    expect(shortedTorque(motor)).toBeGreaterThanOrEqual(highest);
  });
  it.each([0.02, 0.1, 0.25])('brake a load of %f N·m just so much at the sinking speed', (torque) => {
    const speed = sinkingSpeed({ torque, ...motor, resistance: R, radius: 0.0166 });
    expect(braking(speed / 0.0166)).toBeCloseTo(torque, 12);
  });
  it('let a small load sink at T·R/K²', () => {
    const torque = 1e-4;
    expect(sinkingSpeed({ torque, ...motor, resistance: R, radius: 1 })).toBeCloseTo(
      (torque * R) / motor.constant ** 2,
      9,
    );
  });
  it('say so when the load is too much', () => {
    expect(() => sinkingSpeed({ torque: 0.31, ...motor, resistance: R, radius: 0.0166 })).toThrow(NoSolution);
  });
});

describe('a fall', () => {
  it('is free without inertia, and slower with it', () => {
    const given = { mass: 0.76, height: 0.7, inertia: 0, radius: 0.0166 };
    const free = Math.sqrt(2 * 9.80665 * 0.7);
    expect(fallSpeed(given)).toBeCloseTo(free, 12);
    const heavy = fallSpeed({ ...given, inertia: 0.76 * 0.0166 ** 2 });
    expect(heavy).toBeCloseTo(free / Math.SQRT2, 12);
    expect(landingEnergy({ mass: 0.76, speed: free })).toBeCloseTo(0.76 * 9.80665 * 0.7, 12);
  });
});
