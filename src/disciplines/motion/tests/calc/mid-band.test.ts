import { describe, expect, it } from 'vitest';
import { OutsideRange, seeded } from '../../../../kernel/index.ts';
import { midBandGrowth, saturationSpeed } from '../../calc/mid-band.ts';
import { growths, hunter, huntsFrom } from '../references/derived-motor.ts';
import { fastest } from '../references/eigenvalues.ts';

const base = { constant: 0.5, loop: 2.4, inductance: 10e-3, teeth: 50 };
type Motor = typeof base;

/** Next to no drag. */
const LEAST = 1e-9;

/** Growth in one second of cruising at this speed. */
const rate = (m: Motor, J: number, B: number, w: number): number =>
  midBandGrowth({ ...m, inertia: J, damping: B, saturation: 1e-3, speed: w, ramp: 1e-9, total: 1 + 2e-9 });

describe('mid-band', () => {
  it('is judged by eigenvalues that another program finds too', () => {
    // Independent: numpy.linalg.eigvals, printed to 0.0001, for this motor at 40 rad/s, 24 V, 0.05 N·m, 2·10⁻⁴ kg·m².
    expect(fastest(base, 2e-4, 0, 24, 0.05, 40)).toBeCloseTo(3.7084, 4);
  });

  const RPM = (2 * Math.PI) / 60;
  const { inertia, volts, ...winding } = hunter;

  it.each(growths)('which grow $gives a second at $given.rpm rpm', ({ given, gives, within }) => {
    const found = fastest(winding, inertia, 0, volts, 0, given.rpm * RPM);
    expect(Math.abs(found! - gives)).toBeLessThanOrEqual(within);
  });

  it.each(huntsFrom)('which begin to grow at $gives rad/s under $given.load N·m', ({ given, gives, within }) => {
    const at = (speed: number): number => fastest(winding, inertia, 0, volts, given.load, speed)!;
    expect(at(gives - within)).toBeLessThan(0);
    expect(at(gives + within)).toBeGreaterThan(0);
  });

  it('is foretold as declared: within a tenth on a soft spring, and nowhere by less than two thirds', () => {
    for (const { given, gives } of growths) {
      const ratio = gives / rate(winding, inertia, LEAST, given.rpm * RPM);
      expect(ratio).toBeLessThan(1.5);
      // Soft against the electrical frequency, as declared.
      const soft = (winding.constant * 50) / inertia < 0.05 * (50 * given.rpm * RPM) ** 2;
      if (soft) expect(Math.abs(ratio - 1), `${given.rpm} rpm`).toBeLessThan(0.1);
    }
  });

  it('begins to saturate where the whole current takes the whole rail', () => {
    const peak = 1.2;
    const w = saturationSpeed({ ...base, volts: 24, peak });
    const volts = Math.hypot(base.loop * peak, base.teeth * w * base.inductance * peak + base.constant * w);
    expect(volts).toBeCloseTo(24, 10);
    expect(saturationSpeed({ ...base, volts: 2, peak })).toBeLessThan(0.2);
  });

  it('grows as the eigenvalues of the linearised motor say, at every load', () => {
    const random = seeded(7);
    const between = (a: number, b: number) => a * (b / a) ** random();
    const ratios: number[] = [];
    for (let i = 0; i < 400; i++) {
      const m = { constant: between(0.1, 1), loop: between(0.5, 10), inductance: 0, teeth: 50 };
      m.inductance = m.loop * between(1e-3, 6e-3);
      const w = (m.loop / (m.inductance * m.teeth)) * between(2.5, 10);
      const J = between(3e-5, 1e-3);
      const soft = (m.constant * m.teeth) / J < 0.05 * (m.teeth * w) ** 2;
      const volts = m.constant * w * between(0.9, 2);
      const top = m.constant * (volts / (m.teeth * w * m.inductance));
      const exact = fastest(m, J, LEAST, volts, random() * 0.5 * top, w);
      if (!soft || exact === undefined || w > 200) continue;
      ratios.push(exact / rate(m, J, LEAST, w));
    }
    expect(ratios.length).toBeGreaterThan(100);
    expect(Math.max(...ratios)).toBeLessThan(1.5);
    const near = ratios.filter((ratio) => Math.abs(ratio - 1) < 0.1);
    expect(near.length / ratios.length).toBeGreaterThan(0.85);
  });

  it('is ended by the drag at which the eigenvalues turn', () => {
    const [J, w] = [2e-4, 40];
    const { constant: K, loop: R } = base;
    const X = 50 * w * base.inductance;
    const fall = (K ** 2 * R * (X ** 2 - R ** 2)) / (R ** 2 + X ** 2) ** 2;
    expect(rate(base, J, 0.9 * fall, w)).toBeGreaterThan(0);
    expect(fastest(base, J, 0.9 * fall, 24, 0.05, w)).toBeGreaterThan(0);
    // What is left is the ramp, a billionth of a second long.
    expect(rate(base, J, 1.1 * fall, w)).toBeLessThan(1e-6);
    expect(fastest(base, J, 1.1 * fall, 24, 0.05, w)).toBeLessThan(0);
  });

  const fallAt = (w: number): number => {
    const { constant: K, loop: R } = base;
    const X = 50 * w * base.inductance;
    // The worst resistance up to R, found by trying.
    let worst = 0;
    for (let i = 1; i <= 400; i++) {
      const r = (R * i) / 400;
      worst = Math.max(worst, (K ** 2 * r * (X ** 2 - r ** 2)) / (r ** 2 + X ** 2) ** 2);
    }
    return worst;
  };

  it.each([
    { damping: 1e-3, saturation: 9 },
    { damping: 1e-3, saturation: 20 },
    { damping: 8e-3, saturation: 2 },
    { damping: 12e-3, saturation: 2 },
  ])('adds up over a ramp what a sum of small pieces does, $damping N·m·s/rad from $saturation rad/s', (some) => {
    const given = { ...base, inertia: 1.5e-4, speed: 50, ramp: 0.4, total: 0.8, ...some };
    const pieces = 5_000;
    let sum = 0;
    for (let i = 0; i < pieces; i++) {
      const w = (50 * (i + 0.5)) / pieces;
      if (w > some.saturation) sum += (Math.max(0, fallAt(w) - some.damping) / (2 * 1.5e-4)) * (0.4 / pieces);
    }
    // Up and down again; the sum is off by a piece at the edge where it begins.
    expect(midBandGrowth(given)).toBeGreaterThan(0);
    expect(midBandGrowth(given) / (2 * sum)).toBeCloseTo(1, 2);
  });

  it('is careful about resistances below the one that is known, and nowhere hopeful', () => {
    for (const w of [3, 6, 10, 20, 50]) {
      expect(rate(base, 1e-4, LEAST, w) * 2e-4).toBeCloseTo(fallAt(w), 4);
      expect(rate(base, 1e-4, LEAST, w)).toBeGreaterThanOrEqual(rate({ ...base, loop: 1 }, 1e-4, LEAST, w));
    }
  });

  it('is what the decay of the driver leaves of it', () => {
    const given = { ...base, inertia: 2e-4, damping: 5e-4, saturation: 10, speed: 40, ramp: 0.3, total: 2 };
    expect(midBandGrowth({ ...given, hunting: 0.25 })).toBeCloseTo(midBandGrowth(given) / 4, 12);
    expect(midBandGrowth({ ...given, hunting: 0 })).toBe(0);
  });

  it('takes half as long to grow with half the inertia, and is refused without any', () => {
    const given = { ...base, inertia: 2e-4, damping: 5e-4, saturation: 10, speed: 40, ramp: 0.3, total: 2 };
    expect(midBandGrowth({ ...given, inertia: 1e-4 })).toBeCloseTo(2 * midBandGrowth(given), 10);
    expect(midBandGrowth({ ...given, speed: 9 })).toBe(0);
    expect(() => midBandGrowth({ ...given, inertia: 0 })).toThrow(OutsideRange);
  });
});
