/** Steppers against values that were derived without sight of the formulas, and against the published ones. */
import { describe, expect, it } from 'vitest';
import { NoSolution } from '../../../../kernel/index.ts';
import { detentShare } from '../../data/steppers.ts';
import { electricalTime } from '../../calc/drive.ts';
import { kneeSpeed, pullOut, voltagePullOut } from '../../calc/pull-out.ts';
import { magneticStiffness } from '../../calc/resonance.ts';
import { keptCurrent, peakLimit, standstillTorque } from '../../calc/standstill.ts';
import { brakingTorque, shortedTorque, sinkingSpeed } from '../../calc/unpowered.ts';
import { torqueConstantOf } from '../../calc/winding.ts';
import * as derived from '../references/derived-motor.ts';
import { plate } from '../references/stepper.ts';

const RPM = (2 * Math.PI) / 60;
const off = (got: number, wanted: number): number => Math.abs(got - wanted);

interface Plate {
  readonly holding: number;
  readonly rated: number;
  readonly resistance: number;
  readonly inductance: number;
}
const windingOf = ({ holding, rated, resistance, inductance }: Plate) => ({
  constant: torqueConstantOf({ holding, rated }),
  loop: resistance,
  inductance,
  teeth: 50,
});
const peakOf = ({ rated }: Pick<Plate, 'rated'>): number => Math.SQRT2 * rated;
const motor = windingOf(plate);

describe('torque at speed', () => {
  it.each([...derived.pullOuts, ...derived.falling])(
    '$kind: $given.holding N·m at $given.rpm rpm on $given.volts V',
    ({ given, voltageOnly, limited }) => {
      const at = { ...windingOf(given), speed: given.rpm * RPM, volts: given.volts };
      expect(off(voltagePullOut(at), voltageOnly.gives)).toBeLessThanOrEqual(voltageOnly.within);
      expect(off(pullOut({ ...at, peak: peakOf(given) }), limited.gives)).toBeLessThanOrEqual(limited.within);
    },
  );

  it.each(derived.knees)(
    '$kind: at $given.volts V the current limit binds from $gives rpm and idles from $idle.gives',
    ({ given, gives, within, idle }) => {
      const at = { ...motor, volts: given.volts, peak: peakOf(plate) };
      expect(off(kneeSpeed(at) / RPM, gives)).toBeLessThanOrEqual(within);
      const unlimited = (rpm: number): number =>
        voltagePullOut({ ...at, speed: rpm * RPM }) - pullOut({ ...at, speed: rpm * RPM });
      // The loss begins with the square of the distance: a thousandth below is far above rounding.
      expect(unlimited(idle.gives * 0.999)).toBeGreaterThan(1e-9);
      expect(unlimited(idle.gives + idle.within)).toBeCloseTo(0, 12);
    },
  );

  it.each(derived.summits)('$kind: greatest, $gives N·m, at $holding N·m of holding torque', (summit) => {
    const { given, holding, gives, within } = summit;
    const at = (h: number): number =>
      pullOut({
        ...windingOf({ ...given, holding: h }),
        speed: given.rpm * RPM,
        volts: given.volts,
        peak: peakOf(given),
      });
    expect(off(at(holding), gives)).toBeLessThanOrEqual(within);
    expect(at(holding * 1.02)).toBeLessThan(at(holding));
    expect(at(holding * 0.98)).toBeLessThan(at(holding));
  });

  it.each(derived.powerless)(
    '$kind: $given.holding N·m gives $gives N·m by voltage and promises nothing within the current',
    ({ given, gives, within }) => {
      const at = { ...windingOf(given), speed: given.rpm * RPM, volts: given.volts };
      expect(off(voltagePullOut(at), gives)).toBeLessThanOrEqual(within);
      expect(pullOut({ ...at, peak: peakOf(given) })).toBe(0);
    },
  );

  it('independent: at rest, what the rail pushes through the copper', () => {
    const { given, gives, within } = derived.starved;
    const got = pullOut({ ...windingOf(given), speed: 0, volts: 12, peak: peakOf(given) });
    expect(off(got, gives)).toBeLessThanOrEqual(within);
  });
});

describe('shorted windings', () => {
  const { loop: resistance, ...of } = motor;

  it.each(derived.braking)('$kind: brake with $gives N·m at $given.speed rad/s', ({ given, gives, within }) => {
    expect(off(brakingTorque({ ...of, resistance, ...given }), gives)).toBeLessThanOrEqual(within);
  });

  it('independent: brake with 0.405 N·m at most, at 7.2 rad/s', () => {
    const most = derived.braking[2]!;
    expect(off(shortedTorque(of), most.gives)).toBeLessThanOrEqual(most.within);
    expect(resistance / (of.teeth * of.inductance)).toBeCloseTo(most.given.speed, 12);
  });

  it.each(derived.sinking)('$kind: carry $given.torque N·m at $gives rad/s, and at $faster', (one) => {
    const { given, gives, within, faster } = one;
    const turning = sinkingSpeed({ ...of, resistance, torque: given.torque, radius: 1 });
    expect(off(turning, gives)).toBeLessThanOrEqual(within);
    // The torque at a printed speed is as exact as that: ten digits.
    for (const speed of [gives, faster])
      expect(brakingTorque({ ...of, resistance, speed }) / given.torque).toBeCloseTo(1, 8);
    expect(faster).toBeGreaterThan(turning);
  });

  it('independent: carry no more than that at any speed', () => {
    expect(() => sinkingSpeed({ ...of, resistance, torque: 0.42, radius: 1 })).toThrow(NoSolution);
  });
});

describe('published relations', () => {
  it('torque goes with current', () => {
    const { given, gives, within } = derived.inProportion;
    const holds = (peak: number): number => standstillTorque({ constant: motor.constant, atRest: peak, detent: 0 });
    const kept = keptCurrent({ peak: peakOf(plate), share: given.share });
    expect(off(holds(kept) / plate.holding, gives)).toBeLessThanOrEqual(within);
    expect(off(pullOut({ ...motor, speed: 0, volts: 12, peak: kept }) / plate.holding, gives)).toBeLessThanOrEqual(
      within,
    );
  });

  it('the peak of microsteps is 1.41 of the nominal current', () => {
    const { given, gives, within } = derived.peakOverNominal;
    expect(off(peakLimit({ ...given, microsteps: 16 }) / given.rated, gives)).toBeLessThanOrEqual(within);
  });

  it.each(derived.onePhase)('secondary: one phase at $given.share of its current holds $gives', (one) => {
    const holds = standstillTorque({
      constant: motor.constant,
      atRest: one.given.share * plate.rated,
      detent: 0,
    });
    expect(off(holds / plate.holding, one.gives)).toBeLessThanOrEqual(one.within);
  });

  it('the spring of the worked example, as torque over a small angle', () => {
    const { given, gives, within } = derived.springOfExample;
    const angle = (given.degrees * Math.PI) / 180;
    // A tooth pitch so large that the torque is straight over the angle.
    expect(off(magneticStiffness({ peakTorque: given.torque / angle, teeth: 1 }), gives)).toBeLessThanOrEqual(within);
  });

  it('what is taken for an unknown detent spans what is published', () => {
    expect(detentShare[0]).toBeLessThanOrEqual(derived.detent.from);
    expect(detentShare[1]).toBeGreaterThanOrEqual(derived.detent.to);
  });

  it('the electrical time says when the brake is strongest: ω·τ·N_r = 1', () => {
    const τ = electricalTime({ inductance: plate.inductance, loop: plate.resistance });
    expect(derived.braking[2]!.given.speed * τ * 50).toBeCloseTo(1, 12);
  });
});
