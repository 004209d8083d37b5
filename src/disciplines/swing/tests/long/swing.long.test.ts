/** The comparisons of the short tests, over many more machines and with other draws. */
import { describe, expect, it } from 'vitest';
import { seeded } from '../../../../kernel/index.ts';
import { hangingLoad } from '../../calc/hanging.ts';
import { hoistedSideways, hoistTime } from '../../calc/hoisting.ts';
import { loweredSideways } from '../../calc/lowering.ts';
import { swingRate } from '../../calc/period.ts';
import { Track } from '../../calc/track.ts';
import { travelResidual, worstJog } from '../../calc/travel.ts';
import { judge, type Stretch } from '../references/load.ts';

const g = 9.80665;
const drawn = (seed: number) => {
  const random = seeded(seed);
  return (a: number, b: number): number => a + (b - a) * random();
};

describe('independent: the integrated load', () => {
  it('is where a general library has it, on 2,000 random pivots and lines', () => {
    const between = drawn(2020);
    let [off, ended] = [0, 0];
    for (let i = 0; i < 2000; i++) {
      const line = between(0.25, 1.1);
      const fadingTime = between(3, 60);
      const stretches: Stretch[] = Array.from({ length: 6 }, () => ({
        time: between(0.1, 0.8),
        ax: between(-2, 2),
        ay: between(-2, 2),
        line: between(-0.15, 0.15),
      }));
      const track = new Track(line);
      for (const { time, ax, ay, line: a } of stretches) track.add(time, ax, ay, a);
      const load = hangingLoad({ gravity: g, fadingTime, tolerance: 1e-11 });
      const [nx, ny] = [between(-0.3, 0.3), between(-0.3, 0.3)];
      const [vx, vy] = [between(-1, 1), between(-1, 1)];
      load.hang(track, nx * line, ny * line, vx, vy);
      if (load.run(track) !== 'end') continue;
      const nz = -Math.sqrt(1 - nx ** 2 - ny ** 2);
      const other = judge(
        { line, n: [nx, ny, nz], rate: [vx, vy, -(nx * vx + ny * vy) / nz], fadingTime, g },
        stretches,
      );
      ended++;
      off = Math.max(off, Math.abs(load.state[0]! - other.n[0]), Math.abs(load.state[1]! - other.n[1]));
    }
    console.info(`${ended} of 2000 motions end taut, at most ${off.toExponential(1)} from a general library`);
    expect(ended).toBeGreaterThan(1800);
    expect(off).toBeLessThan(2e-8);
  });
});

describe('independent: a bound', () => {
  it('of hoisting holds for 5,000 integrated hoists', () => {
    const between = drawn(88);
    const shares = Array.from({ length: 5000 }, () => {
      const [long, short, fading] = [between(0.6, 1), between(0.15, 0.35), between(6, 60)];
      const profile = { speed: between(0.06, 0.25), acceleration: between(0.3, 1.5) };
      const offset = between(0.002, 0.12 * long);
      const load = hangingLoad({ gravity: g, fadingTime: fading, tolerance: 1e-9 });
      const track = new Track(long).travel('line', short - long, profile);
      load.hang(track, offset);
      load.run(track);
      const swing = short * Math.hypot(load.state[0]!, load.state[2]! / swingRate({ length: short }));
      const time = hoistTime({ long, short, ...profile });
      return swing / hoistedSideways({ offset, long, short, ...profile, time, fading });
    });
    console.info(`hoists reach ${Math.min(...shares).toFixed(3)} to ${Math.max(...shares).toFixed(4)} of their bound`);
    expect(Math.max(...shares)).toBeLessThan(1.01);
    expect(Math.max(...shares)).toBeGreaterThan(0.97);
  });

  it('of lowering holds for 4,000 integrated ways down', () => {
    const between = drawn(790);
    const shares = Array.from({ length: 4000 }, () => {
      const high = between(0.12, 0.6);
      const low = high + between(0.05, 1.2);
      const profile = { speed: between(0.1, 1) * 0.3 * Math.sqrt(g * high), acceleration: between(0.1, 4) };
      const [fading, angle] = [between(4, 80), between(0.01, 0.5)];
      const swinging = hangingLoad({ gravity: g, fadingTime: Infinity, tolerance: 1e-10 });
      swinging.hang(new Track(high), high * Math.sin(angle));
      swinging.run(new Track(high).wait(between(0, 2)));
      const load = hangingLoad({ gravity: g, fadingTime: fading, tolerance: 1e-9, reach: true });
      const track = new Track(high).travel('line', low - high, profile).wait(2);
      load.hang(track, high * swinging.state[0]!, 0, swinging.state[2]!);
      expect(load.run(track)).toBe('end');
      const farthest = Math.max(load.seen.xHigh, -load.seen.xLow);
      return farthest / loweredSideways({ offset: high * Math.sin(angle), high, low, ...profile, fading });
    });
    console.info(`ways down reach at most ${Math.max(...shares).toFixed(4)} of their bound`);
    expect(Math.max(...shares)).toBeLessThan(1.01);
  });

  it('of the worst drive holds for 10,000 drives of 400 machines with rounded ramps', () => {
    const between = drawn(120);
    const k = 1e-3;
    const shares = Array.from({ length: 400 }, () => {
      const [length, speed, asked] = [between(0.1, 1), between(0.05, 0.4), between(0.2, 2)];
      const jerk = 0.2 * 300 ** between(0, 1);
      const acceleration = Math.min(asked, Math.sqrt(speed * jerk));
      const small = { speed: k * speed, acceleration: k * asked, jerk: k * jerk };
      const left = Array.from({ length: 25 }, (_, i) => {
        const load = hangingLoad({ gravity: g, fadingTime: Infinity, tolerance: 1e-9, swing: k });
        const track = new Track(length).jog('x', 1, 0.1 * (i + 1), small);
        load.hang(track);
        load.run(track);
        return load.amplitude() / k;
      });
      return Math.max(...left) / worstJog({ length, speed, acceleration, easing: acceleration / jerk });
    });
    console.info(`drives reach at most ${Math.max(...shares).toFixed(4)} of the worst one`);
    expect(Math.max(...shares)).toBeLessThan(1.001);
  });

  it('of 2 % of 4a/g holds between closed form and integration for 5,000 travels up to 35°', () => {
    const between = drawn(310);
    let most = 0;
    for (let i = 0; i < 5000; i++) {
      const [length, speed, acceleration] = [between(0.15, 1), between(0.1, 0.3), between(0.3, 1.5)];
      const [distance, fading] = [between(0.35, 0.9), between(5, 60)];
      const load = hangingLoad({ gravity: g, fadingTime: fading, tolerance: 1e-9 });
      const track = new Track(length).travel('x', distance, { speed, acceleration });
      load.hang(track);
      load.run(track);
      const closed = travelResidual({ length, speed, acceleration, distance, fading });
      most = Math.max(most, Math.abs(load.amplitude() - closed) / ((4 * acceleration) / g));
    }
    console.info(`travels are off by at most ${(100 * most).toFixed(2)} % of 4a/g`);
    expect(most).toBeLessThan(0.02);
  });
});
