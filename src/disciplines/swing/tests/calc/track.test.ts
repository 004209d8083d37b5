import { describe, expect, it } from 'vitest';
import { FIELD, Track, travelTime, WIDTH } from '../../calc/track.ts';

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

describe('room', () => {
  it('grows with what is written, and is used again after clearing', () => {
    const track = new Track(0.5);
    for (let i = 0; i < 100; i++) track.jog('y', i % 2 ? 1 : -1, 0.5, profile).wait(0.1);
    expect(track.count).toBeGreaterThan(300);
    expect(track.y).toBeCloseTo(0, 12);
    track.clear(0.3);
    expect([track.count, track.end, track.line, track.y]).toEqual([0, 0, 0.3, 0]);
  });
});
