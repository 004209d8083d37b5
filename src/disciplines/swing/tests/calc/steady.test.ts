/** A load on a line that changes steadily, beside solutions in closed form and by others. */
import { describe, expect, it } from 'vitest';
import { hangingLoad, type HangingLoad } from '../../calc/hanging.ts';
import { Track } from '../../calc/track.ts';
import { steadyHoist } from '../references/bessel.ts';
import { judge } from '../references/load.ts';

const g = 9.80665;
const free = { gravity: g, fadingTime: Infinity };
const rateOf = (L: number): number => Math.sqrt(g / L);

describe('steady hoisting', () => {
  const hoisted = (from: number, to: number, speed: number, angle: number): HangingLoad => {
    const load = hangingLoad({ ...free, tolerance: 1e-12 });
    const track = new Track(from);
    // The line moves at once, as in the solution in closed form.
    track.pieces[6] = speed;
    track.wait((to - from) / speed);
    load.hang(track, from * Math.sin(angle));
    load.run(track);
    return load;
  };
  const angleOf = (load: HangingLoad): number => Math.asin(load.state[0]!);

  it.each([
    [-0.05, -0.224276, 0.244788, 0.226984],
    [-0.1, -0.024879, -1.596259, 0.229313],
  ])('independent: the closed form at %f m/s has the printed digits', (speed, angle, rate, envelope) => {
    const exact = steadyHoist({ from: 0.6, to: 0.2, speed, start: 0.1 }, g);
    expect(exact.angle).toBeCloseTo(angle, 6);
    expect(exact.rate).toBeCloseTo(rate, 5);
    expect(exact.envelope).toBeCloseTo(envelope, 6);
  });

  it.each([
    [0.6, 0.2, -0.05],
    [0.6, 0.2, -0.1],
    [0.9, 0.21, -0.16],
    [0.3, 0.8, 0.12],
  ])('law: from %f m to %f m at %f m/s is Bessel’s solution to a millionth of the envelope', (from, to, speed) => {
    // A swing is slower by θ²/16: on a hoist that triples it, 40 radians of phase then come late by 3e-7.
    const start = 2e-4;
    const load = hoisted(from, to, speed, start);
    const exact = steadyHoist({ from, to, speed, start }, g);
    const vx = load.state[2]! / Math.cos(angleOf(load));
    expect(Math.abs(angleOf(load) - exact.angle)).toBeLessThan(1e-6 * exact.envelope);
    expect(Math.abs(vx - exact.rate) / rateOf(to)).toBeLessThan(1e-6 * exact.envelope);
  });

  it.each([
    [0.6, 0.2, -0.05],
    [0.6, 0.2, -0.1],
    [0.9, 0.21, -0.16],
    [0.3, 0.8, 0.12],
  ])(
    'independent: from 5·10⁻⁴ rad, %f m to %f m at %f m/s, is a general library’s to a millionth, and late by what its size makes it',
    (from, to, speed) => {
      const start = 5e-4;
      const load = hoisted(from, to, speed, start);
      const exact = steadyHoist({ from, to, speed, start }, g);
      const other = judge(
        {
          line: from,
          lineSpeed: speed,
          n: [Math.sin(start), 0, -Math.cos(start)],
          rate: [0, 0, 0],
          fadingTime: Infinity,
          g,
        },
        [{ time: (to - from) / speed, ax: 0, ay: 0, line: 0 }],
      );
      expect(Math.abs(load.state[0]! - other.n[0])).toBeLessThan(1e-6 * exact.envelope);
      expect(Math.abs(load.state[2]! - other.rate[0]) / rateOf(to)).toBeLessThan(1e-6 * exact.envelope);
      // Bessel’s solution is of small swings. One of θ is slower by θ²/16 with θ as L^(−3/4), which over the hoist is a phase
      // of θ₀²·√(g·L₀³)·|1/L₁ − 1/L₀|/(16·|v|): from 3e-8 to 1.5e-6 here, more than a millionth in the first.
      const late = (start ** 2 * Math.sqrt(g * from ** 3) * Math.abs(1 / to - 1 / from)) / (16 * Math.abs(speed));
      const vx = load.state[2]! / Math.cos(angleOf(load));
      const off = Math.hypot(angleOf(load) - exact.angle, (vx - exact.rate) / rateOf(to)) / exact.envelope;
      // The phase takes the swing to grow as slowly as it does for a slow line: short by a share of |v|/√(g·L), 11 % here.
      expect(Math.abs(off - late)).toBeLessThan(0.2 * late + 2e-8);
    },
  );

  it.each([
    [0.6, 0.2, -0.05, 0.1, 0, -0.226599491, 0.1476629053],
    [0.6, 0.2, -0.1, 0.1, 0, -0.01805203034, -1.596512867],
    [0.6, 0.2, -0.1, 5e-4, 0, -0.0001243924528, undefined],
  ])(
    'independent: with the full sine, %f m to %f m at %f m/s from %f rad, ends at the printed digits',
    (from, to, speed, start, _rate, angle, rate) => {
      const load = hoisted(from, to, speed, start);
      expect(Math.abs(angleOf(load) - angle)).toBeLessThan(1e-9);
      if (rate !== undefined) expect(Math.abs(load.state[2]! / Math.cos(angleOf(load)) - rate)).toBeLessThan(5e-9);
    },
  );

  it.each([
    [0.6, 0.2, -0.2, 0.1, 0, -0.1459672662, 1.11935581],
    [0.2, 0.6, 0.1, 0.1, 0, -0.001090394023, -0.1773621321],
    [0.6, 0.2, -0.1, 0.05, 0.3, 0.156247283, -0.8275702328],
  ])(
    'independent: small swings, %f m to %f m at %f m/s from %f rad and %f rad/s, are the printed ones a thousand times smaller',
    (from, to, speed, start, turning, angle, rate) => {
      const k = 1e-3;
      const load = hangingLoad({ ...free, tolerance: 1e-11, swing: k });
      const track = new Track(from);
      track.pieces[6] = speed;
      track.wait((to - from) / speed);
      load.hang(track, from * Math.sin(k * start), 0, k * turning);
      load.run(track);
      // What the size of the swing makes of it: 10⁻⁶ and less.
      expect(Math.abs(angleOf(load) / k - angle)).toBeLessThan(2e-6);
      expect(Math.abs(load.state[2]! / k - rate)).toBeLessThan(2e-6 * rateOf(to));
    },
  );

  it('independent: on a line hoisted under a pivot that is pushed aside, ends where a cartesian solution ends', () => {
    const load = hangingLoad({ ...free, tolerance: 1e-12 });
    const track = new Track(0.6);
    track.pieces[6] = -0.1;
    track.add(0.5, 0.5).wait(2.5);
    load.hang(track, 0, 0.6 * Math.sin(0.1));
    expect(load.run(track)).toBe('end');
    const [x, y, vx, vy] = load.state as unknown as [number, number, number, number];
    expect(Math.abs(x + 0.07935782173)).toBeLessThan(1e-9);
    expect(Math.abs(y + 0.01560301929)).toBeLessThan(1e-9);
    const up = Math.sqrt(1 - x * x - y * y);
    expect(Math.abs(up - 0.9967240751)).toBeLessThan(1e-9);
    const turning = vx * vx + vy * vy + ((x * vx + y * vy) / up) ** 2;
    expect(Math.abs(g * up + 0.3 * turning - 10.19608859)).toBeLessThan(1e-8);
  });

  it('law: a slower hoist nears L^(−3/4), whose digits are printed: 2.27951 from 0.6 m to 0.2 m', () => {
    expect((0.6 / 0.2) ** 0.75).toBeCloseTo(2.27951, 5);
    for (const speed of [-0.1, -0.03, -0.01]) {
      const off = Math.abs(hoisted(0.6, 0.2, speed, 2e-4).amplitude() / 2e-4 / 2.27951 - 1);
      // While the line moves, an amplitude by energy ripples with the phase by half of the share that L changes in 1/ω.
      expect(off).toBeLessThan(-speed / Math.sqrt(g * 0.2));
    }
  });
});
