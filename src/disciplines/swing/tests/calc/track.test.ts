import { describe, expect, it } from 'vitest';
import { FIELD, rampTime, Track, travelTime, WIDTH } from '../../calc/track.ts';

const profile = { speed: 0.22, acceleration: 0.7 };
const rounded = { ...profile, jerk: 8 };

const fieldsAtEnd = (track: Track) => {
  const at = (field: number): number => track.pieces[track.count * WIDTH + field]!;
  return { vx: at(FIELD.vx), vy: at(FIELD.vy), lineSpeed: at(FIELD.lineSpeed) };
};

/** Greatest of a quantity over a track, looked at finely. */
const most = (track: Track, of: 'speed' | 'acceleration'): number => {
  let found = 0;
  for (let i = 0; i < track.count; i++) {
    const p = track.pieces.subarray(i * WIDTH, (i + 1) * WIDTH);
    const time = track.pieces[(i + 1) * WIDTH]! - p[FIELD.t]!;
    for (let k = 0; k <= 20; k++) {
      const s = (time * k) / 20;
      const a = p[FIELD.ax]! + s * p[FIELD.jx]!;
      const v = p[FIELD.vx]! + s * (p[FIELD.ax]! + (s * p[FIELD.jx]!) / 2);
      found = Math.max(found, Math.abs(of === 'speed' ? v : a));
    }
  }
  return found;
};

describe('a travel', () => {
  it.each([
    ['a trapezoid', 0.5, profile],
    ['one too short for its speed', 0.02, profile],
    ['rounded ramps', 0.5, rounded],
    ['rounded ramps that do not reach their acceleration', 0.5, { speed: 0.02, acceleration: 0.7, jerk: 8 }],
    ['rounded ramps on a short way', 0.02, rounded],
    ['rounded ramps on a very short way', 0.0005, rounded],
    ['the other way', -0.3, rounded],
  ])('law: %s ends at rest where it should, within its limits', (_, distance, how) => {
    const track = new Track(0.5).travel('x', distance, how);
    expect(track.x).toBeCloseTo(distance, 12);
    expect(fieldsAtEnd(track).vx).toBeCloseTo(0, 12);
    expect(track.end).toBeCloseTo(travelTime(distance, how), 12);
    expect(most(track, 'speed')).toBeLessThan(how.speed * (1 + 1e-9));
    expect(most(track, 'acceleration')).toBeLessThan(how.acceleration * (1 + 1e-9));
  });

  it('independent: 0.5 m at 0.25 m/s and 1 m/s² takes 2.25 s, with 10 m/s³ 2.35 s', () => {
    expect(travelTime(0.5, { speed: 0.25, acceleration: 1 })).toBeCloseTo(2.25, 12);
    expect(travelTime(0.5, { speed: 0.25, acceleration: 1, jerk: 10 })).toBeCloseTo(2.35, 12);
  });

  it('of nothing writes nothing', () => {
    expect(new Track(0.5).travel('x', 0, profile).count).toBe(0);
    expect(travelTime(0, profile)).toBe(0);
  });

  it('of the line changes the line alone', () => {
    const track = new Track(0.9).travel('line', -0.7, profile).travel('y', 0.1, profile);
    expect([track.line, track.x, track.y]).toEqual([expect.closeTo(0.2, 12), 0, expect.closeTo(0.1, 12)]);
    expect(fieldsAtEnd(track).lineSpeed).toBeCloseTo(0, 12);
  });
});

describe('a drive by hand', () => {
  it.each([
    ['long', 1, profile, 0.22 * 1],
    ['short', 0.2, profile, 0.7 * 0.2 * 0.2],
    ['long and rounded', 1, rounded, 0.22],
    ['short and rounded', 0.2, rounded, 0.7 * (0.2 - 0.7 / 8) * 0.2],
    ['very short and rounded', 0.1, rounded, (8 * 0.1 ** 2) / 4 / 10],
  ])('law: held %s goes as far as speed times the time held', (_, hold, how, way) => {
    const track = new Track(0.2).jog('x', -1, hold, how);
    expect(track.x).toBeCloseTo(-way, 12);
    expect(fieldsAtEnd(track).vx).toBeCloseTo(0, 12);
    expect(most(track, 'acceleration')).toBeLessThan(how.acceleration * (1 + 1e-9));
  });
});

describe('pieces', () => {
  it.each([
    ['a trapezoid', 0.5, profile, 3],
    ['one too short for its speed', 0.02, profile, 2],
    ['rounded ramps', 0.5, rounded, 7],
    ['rounded ramps that do not reach their acceleration', 0.5, { speed: 0.02, acceleration: 0.7, jerk: 8 }, 5],
    ['rounded ramps on a very short way', 0.0005, rounded, 4],
  ])('of %s are as many as it has', (_, distance, how, count) => {
    expect(new Track(0.5).travel('x', distance, how).count).toBe(count);
  });

  it('of a drive are two ramps, and what lies between them', () => {
    expect(new Track(0.5).jog('x', 1, 1, profile).count).toBe(3);
    // A ramp of 0.22/0.7 = 0.314 s that fills the drive.
    expect(new Track(0.5).jog('x', 1, 0.3, profile).count).toBe(2);
    expect(new Track(0.5).jog('y', -1, 1, rounded).count).toBe(7);
  });

  it('of no time are none', () => {
    const track = new Track(0.5);
    expect(track.add(0, 1)).toBe(track);
    expect(track.add(-1, 1).add(NaN, 1).wait(0).count).toBe(0);
    expect(track.jog('x', 1, 0, profile).count).toBe(0);
  });

  it('law: all three motions are as far as constant jerk takes them, each on its own', () => {
    const track = new Track(0.7).add(0.3, 0.5, -0.4, 0.2, 1, -2, 3).add(0.2, -0.1, 0.3, -0.2, 2, 1, -1);
    // By hand over both pieces: s + v·t + a·t²/2 + j·t³/6.
    const after = (a: number, j: number, b: number, k: number, start: number): readonly [number, number] => {
      const v = 0.3 * a + (0.09 * j) / 2;
      const s = start + (0.09 * a) / 2 + (0.027 * j) / 6;
      return [s + 0.2 * v + (0.04 * b) / 2 + (0.008 * k) / 6, v + 0.2 * b + (0.04 * k) / 2];
    };
    const [x, vx] = after(0.5, 1, -0.1, 2, 0);
    const [y, vy] = after(-0.4, -2, 0.3, 1, 0);
    const [line, lineSpeed] = after(0.2, 3, -0.2, -1, 0.7);
    expect([track.x, track.y, track.line, track.lineSpeed, track.end]).toEqual(
      [x, y, line, lineSpeed, 0.5].map((n) => expect.closeTo(n, 14)),
    );
    expect(fieldsAtEnd(track)).toEqual({
      vx: expect.closeTo(vx, 14),
      vy: expect.closeTo(vy, 14),
      lineSpeed: expect.closeTo(lineSpeed, 14),
    });
    // And inside a piece, at its start, before the first and past the last.
    expect(track.at(0.1)).toEqual({
      x: expect.closeTo(0.005 * 0.5 + 0.001 / 6, 14),
      y: expect.closeTo(-0.005 * 0.4 - 0.002 / 6, 14),
      line: expect.closeTo(0.7 + 0.005 * 0.2 + 0.003 / 6, 14),
    });
    expect(track.at(0.3).x).toBeCloseTo((0.09 * 0.5) / 2 + 0.027 / 6, 14);
    expect(track.at(0.5)).toEqual({ x: track.x, y: track.y, line: track.line });
    expect(track.at(9)).toEqual({ x: track.x, y: track.y, line: track.line });
    expect(track.at(-1)).toEqual({ x: 0, y: 0, line: 0.7 });
  });

  it('keep their speed through a wait', () => {
    const track = new Track(0.7).add(0.5, 0.2, 0.1, -0.3).wait(2);
    expect(track.x).toBeCloseTo(0.025 + 0.2, 14);
    expect(track.y).toBeCloseTo(0.0125 + 0.1, 14);
    expect(track.line).toBeCloseTo(0.7 - 0.0375 - 0.3, 14);
  });
});

describe('time of a ramp', () => {
  it('law: is v/a, or with rounded ends v/a + a/j, or 2√(v/j) where the acceleration is not reached', () => {
    expect(rampTime(0.2, { speed: 1, acceleration: 0.5 })).toBeCloseTo(0.4, 14);
    expect(rampTime(0.2, { speed: 1, acceleration: 0.5, jerk: 5 })).toBeCloseTo(0.5, 14);
    expect(rampTime(0.05, { speed: 1, acceleration: 0.5, jerk: 5 })).toBeCloseTo(0.2, 14);
    expect(rampTime(0.02, { speed: 1, acceleration: 0.5, jerk: 2 })).toBeCloseTo(0.2, 14);
  });
});

describe('copies of a travel', () => {
  const impulses = [
    { share: 0.5, delay: 0 },
    // One begins while the acceleration of another still comes up, one in its cruise.
    { share: 0.3, delay: 0.05 },
    { share: 0.2, delay: 0.9 },
  ];

  it.each([
    ['jumping', profile, 0.5],
    ['rounded', rounded, 0.5],
    ['short', profile, 0.05],
    ['backwards', rounded, -0.3],
  ])('law: laid over each other are their sum at every moment, %s', (_, how, distance) => {
    for (const channel of ['x', 'y', 'line'] as const) {
      const plain = new Track(1).travel(channel, distance, how);
      const shaped = new Track(1).travel(channel, distance, how, impulses);
      expect(shaped.end).toBeCloseTo(plain.end + 0.9, 12);
      const start = plain.at(0)[channel];
      for (let t = 0; t <= shaped.end + 0.1; t += 0.01) {
        const sum = impulses.reduce(
          (sum, { share, delay }) => sum + share * (plain.at(Math.max(0, t - delay))[channel] - start),
          start,
        );
        expect(Math.abs(shaped.at(t)[channel] - sum)).toBeLessThan(1e-12);
      }
    }
  });

  it('of one that is not delayed are the travel itself', () => {
    const plain = new Track(1).travel('x', 0.4, rounded);
    const same = new Track(1).travel('x', 0.4, rounded, [{ share: 1, delay: 0 }]);
    expect(same.count).toBe(plain.count);
    expect(same.x).toBeCloseTo(plain.x, 14);
  });
});

describe('room', () => {
  it('grows with what is written, and is used again after clearing', () => {
    const track = new Track(0.5);
    for (let i = 0; i < 100; i++) track.jog('y', i % 2 ? 1 : -1, 0.5, profile).wait(0.1);
    expect(track.count).toBeGreaterThan(300);
    expect(track.y).toBeCloseTo(0, 12);
    const kept = Array.from({ length: track.count + 1 }, (_, i) => track.pieces[i * WIDTH]!);
    expect(kept).toEqual([...kept].sort((a, b) => a - b));
    track.clear(0.3);
    expect([track.count, track.end, track.line, track.y]).toEqual([0, 0, 0.3, 0]);
  });
});
