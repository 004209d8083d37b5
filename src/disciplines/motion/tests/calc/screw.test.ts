import { describe, expect, it } from 'vitest';
import { OutsideRange } from '../../../../kernel/index.ts';
import { bucklingForce, criticalSpeed } from '../../calc/screw-limits.ts';
import { leadRadius, screwBackDriving, screwEfficiency, screwInertia } from '../../calc/screw.ts';
import { bucklingFactors, criticalSpeedFactor, screwJack } from '../references/mechanics.ts';

describe('a screw jack, published', () => {
  const { given, gives, within } = screwJack;
  it('needs the torque', () => {
    const efficiency = screwEfficiency({ ...given, flank: 0 });
    const torque = (given.force * leadRadius(given)) / efficiency;
    expect(Math.abs(torque - gives)).toBeLessThanOrEqual(within);
  });
});

describe('holding itself', () => {
  const thread = { mean: 0.007, flank: 0.26, friction: 0.15 };
  const slopeOfFriction = thread.friction / Math.cos(thread.flank);
  it.each([0.5, 0.9, 0.999])('a slope of %f of the friction does not turn back', (share) => {
    const lead = share * slopeOfFriction * Math.PI * thread.mean;
    expect(screwBackDriving({ standing: 0.05, lead, ...thread })).toBe(0);
    expect(screwEfficiency({ lead, ...thread })).toBeLessThanOrEqual(0.5);
  });
  it('a steeper one does', () => {
    const lead = 1.2 * slopeOfFriction * Math.PI * thread.mean;
    expect(screwBackDriving({ standing: 0.05, lead, ...thread })).toBeGreaterThan(0);
  });
  it('a thread without friction gives everything back', () => {
    expect(screwBackDriving({ standing: 0.05, lead: 0.008, mean: 0.007, friction: 0, flank: 0 })).toBeCloseTo(0.05, 12);
    expect(screwEfficiency({ lead: 0.008, mean: 0.007, friction: 0, flank: 0 })).toBeCloseTo(1, 12);
  });
  it('a thread that binds is refused', () => {
    expect(() => screwEfficiency({ lead: 0.1, mean: 0.007, friction: 0.3, flank: 0 })).toThrow(OutsideRange);
  });
});

describe('whip and buckling, published', () => {
  it('whips at C·4.76·10⁶·d/L²', () => {
    const INCH = 0.0254;
    const [d, L] = [0.5 * INCH, 30 * INCH];
    const rpm = (criticalSpeed({ root: d, length: L, ends: 1 }) * 60) / (2 * Math.PI);
    const factor = (rpm * (L / INCH) ** 2) / (d / INCH);
    expect(Math.abs(factor - criticalSpeedFactor.gives)).toBeLessThanOrEqual(criticalSpeedFactor.within);
  });
  it.each(bucklingFactors)(
    'buckles at twice $gives·10⁴·d⁴/L² with a factor of $given.ends',
    ({ given, gives, within }) => {
      const [d, L] = [10, 500];
      const half = bucklingForce({ root: d / 1000, length: L / 1000, ends: given.ends }) / 2;
      expect(Math.abs((half * L ** 2) / (d ** 4 * 1e4) - gives)).toBeLessThanOrEqual(within);
    },
  );
});

describe('inertia', () => {
  it('is sixteen times as much at twice the diameter', () => {
    const at = (diameter: number): number => screwInertia({ diameter, length: 0.4 });
    expect(at(0.02)).toBeCloseTo(16 * at(0.01), 15);
    // A bar of 10 mm and 400 mm weighs 0.2466 kg: m·d²/8.
    expect(at(0.01)).toBeCloseTo(((7850 * Math.PI * 0.01 ** 2 * 0.4) / 4) * (0.01 ** 2 / 8), 12);
  });
});
