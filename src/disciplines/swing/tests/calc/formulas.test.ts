import { describe, expect, it } from 'vitest';
import { OutsideRange, root, seeded } from '../../../../kernel/index.ts';
import { exactInterval } from '../../../../kernel/binomial.ts';
import { hangingLoad } from '../../calc/hanging.ts';
import { missShare, worstMissShare } from '../../calc/misses.ts';
import { erf } from '../../calc/normal.ts';
import { dampingFromHalving, fadingTime, swingPeriod, swingRate } from '../../calc/period.ts';
import { shapingOverrun, shapingTime, threeImpulseResidual, twoImpulseResidual } from '../../calc/shaper.ts';
import { Track } from '../../calc/track.ts';
import { settleTime, sidewaysAt, steadyLean, swingLeft, travelResidual, worstJog } from '../../calc/travel.ts';

const g = 9.80665;
const degree = Math.PI / 180;

describe('periods', () => {
  // Independent, four decimals.
  it.each([
    [0.1, 0.6345],
    [0.2, 0.8973],
    [0.3, 1.099],
    [0.4, 1.269],
    [0.5, 1.4187],
    [0.6, 1.5542],
    [0.8, 1.7946],
    [1.0, 2.0064],
  ])('independent: %f m swings in %f s', (length, period) => {
    expect(Math.abs((2 * Math.PI) / swingRate({ length }) - period)).toBeLessThan(5e-5);
  });

  // Published, secondary: a calculator's table (its prose example at 30° is wrong by 5e-5), six decimals.
  it.each([
    [5, 1.000476],
    [10, 1.001907],
    [15, 1.004301],
    [20, 1.007669],
    [30, 1.017409],
    [45, 1.039973],
    [60, 1.073182],
    [90, 1.180341],
  ])('published-secondary: at %i° a swing takes %f of a small one', (angle, ratio) => {
    const small = swingPeriod({ length: 1, amplitude: 0 });
    expect(Math.abs(swingPeriod({ length: 1, amplitude: angle * degree }) / small - ratio)).toBeLessThan(5.1e-7);
  });

  it.each([
    [0, 2.006409],
    [10, 2.010236],
    [30, 2.041338],
    [90, 2.368246],
  ])('published-secondary: a metre at %i° swings in %f s', (angle, period) => {
    expect(Math.abs(swingPeriod({ length: 1, amplitude: angle * degree }) - period)).toBeLessThan(5.1e-7);
  });

  // Published, secondary: lecture notes; the difference there is taken from the longer period.
  it.each([
    [0.400164, 0.01],
    [1.26933, 0.1],
  ])('published-secondary: small swings are short by a share at %f rad: %f', (amplitude, share) => {
    const small = swingPeriod({ length: 1, amplitude: 0 });
    const off = 1 - small / swingPeriod({ length: 1, amplitude });
    // Half a millionth of the angle, times the slope of the share there.
    expect(Math.abs(off - share)).toBeLessThan(1e-6);
  });

  it('are those of the integrated load, at 30° and at 80°', () => {
    for (const amplitude of [30 * degree, 80 * degree]) {
      const load = hangingLoad({ gravity: g, fadingTime: Infinity, tolerance: 1e-11 });
      const track = new Track(0.7).wait(5 * swingPeriod({ length: 0.7, amplitude }));
      load.hang(track, 0.7 * Math.sin(amplitude));
      load.run(track);
      expect(load.state[0]).toBeCloseTo(Math.sin(amplitude), 7);
      expect(Math.abs(load.state[2]!)).toBeLessThan(1e-6);
    }
  });

  it('refuse a swing past the horizontal', () => {
    expect(() => swingPeriod({ length: 1, amplitude: 1.6 })).toThrow(OutsideRange);
  });
});

describe('damping', () => {
  it('independent: halving in 10 swings is ζ = 0.0110311', () => {
    expect(Math.abs(dampingFromHalving({ swings: 10 }) - 0.0110311)).toBeLessThan(5e-8);
  });

  it('an integrated load at its longest line has halved after the swings that went in', () => {
    for (const swings of [6, 14]) {
      const rate = swingRate({ length: 0.9 });
      const fading = fadingTime({ damping: dampingFromHalving({ swings }), longest: rate });
      const load = hangingLoad({ gravity: g, fadingTime: fading, tolerance: 1e-11 });
      const damped = rate * Math.sqrt(1 - dampingFromHalving({ swings }) ** 2);
      const track = new Track(0.9).wait((swings * 2 * Math.PI) / damped);
      load.hang(track, 1e-4);
      load.run(track);
      expect(load.state[0]! / (1e-4 / 0.9)).toBeCloseTo(0.5, 5);
    }
  });

  it('law: a swing has settled when what is left is what is allowed', () => {
    const wait = settleTime({ angle: 0.2, allowed: 0.03, fading: 17 });
    expect(swingLeft({ angle: 0.2, wait, fading: 17 })).toBeCloseTo(0.03, 14);
    expect(settleTime({ angle: 0.02, allowed: 0.03, fading: 17 })).toBe(0);
    expect(swingLeft({ angle: 0.2, wait: 17 * Math.LN2, fading: 17 })).toBeCloseTo(0.1, 14);
  });
});

describe('travelling', () => {
  it('independent: leans by 2.919° at 0.5 m/s²', () => {
    expect(Math.abs(steadyLean({ acceleration: 0.5 }) / degree - 2.919)).toBeLessThan(5e-4);
  });

  it('independent: 0.054357 rad at 0.4 m are 21.74 mm, as small angles', () => {
    expect(0.4 * 0.054357).toBeCloseTo(0.02174, 5);
    // The sine takes 0.01 mm off.
    expect(Math.abs(sidewaysAt({ length: 0.4, angle: 0.054357 }) - 0.02174)).toBeLessThan(1.5e-5);
  });

  it('law: leaves nothing when a ramp, or the way from ramp to ramp, lasts whole swings', () => {
    const T = (2 * Math.PI) / swingRate({ length: 0.5 });
    const rest = { length: 0.5, fading: 1e12 };
    expect(travelResidual({ ...rest, speed: 0.2, acceleration: 0.2 / T, distance: 0.5 })).toBeLessThan(1e-9);
    expect(travelResidual({ ...rest, speed: 0.2, acceleration: 0.8, distance: 0.4 * T })).toBeLessThan(1e-9);
    expect(travelResidual({ ...rest, speed: 0.2, acceleration: 0.8, distance: 0.3 * T })).toBeGreaterThan(0.1);
  });

  it('law: the worst drive is the greatest of all lengths, with rounded ramps too', () => {
    for (const easing of [0, 0.12]) {
      const given = { length: 0.6, speed: 0.22, acceleration: 0.7, easing };
      const all = Array.from({ length: 400 }, (_, i) =>
        travelResidual({ ...given, distance: 0.12 + i / 500, fading: 1e12 }),
      );
      expect(Math.max(...all) / worstJog(given)).toBeCloseTo(1, 4);
    }
  });

  it('independent: no drive with ramps rounded at random leaves more than the worst one', () => {
    // Where a rounded ramp happens to last whole swings it leaves nothing, but a shorter drive has shorter ramps.
    const random = seeded(12);
    const between = (a: number, b: number): number => a + (b - a) * random();
    const k = 1e-3;
    const shares = Array.from({ length: 60 }, () => {
      const [length, speed, asked] = [between(0.1, 1), between(0.05, 0.4), between(0.2, 2)];
      const jerk = 0.2 * 300 ** random();
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
    expect(Math.max(...shares)).toBeLessThan(1.001);
    expect(Math.max(...shares)).toBeGreaterThan(0.99);
  });

  it('independent: up to 35° it is off by no more than 2 % of 4a/g from the integrated travel', () => {
    const random = seeded(31);
    const between = (a: number, b: number): number => a + (b - a) * random();
    for (let i = 0; i < 200; i++) {
      const [length, speed, acceleration] = [between(0.15, 1), between(0.1, 0.3), between(0.3, 1.5)];
      const [distance, fading] = [between(0.35, 0.9), between(5, 60)];
      const load = hangingLoad({ gravity: g, fadingTime: fading, tolerance: 1e-9 });
      const track = new Track(length).travel('x', distance, { speed, acceleration });
      load.hang(track);
      load.run(track);
      const closed = travelResidual({ length, speed, acceleration, distance, fading });
      expect(Math.abs(load.amplitude() - closed)).toBeLessThan((0.02 * 4 * acceleration) / g);
    }
  });

  it('law: a drive that is long against a swing leaves no more than 4a/g', () => {
    expect(worstJog({ length: 0.1, speed: 0.5, acceleration: 0.5 })).toBeCloseTo(2 / g, 12);
  });
});

describe('shaped moves', () => {
  // Independent, four decimals: ±10 % and ±20 % in the rate.
  it.each([
    [0, 1.1, 0.1564, 0.0245],
    [0, 0.9, 0.1564, 0.0245],
    [0, 1.2, 0.309, 0.0955],
    [0, 0.8, 0.309, 0.0955],
    [0.1, 1.1, 0.1305, 0.017],
    [0.1, 0.9, 0.1347, 0.0181],
    [0.1, 1.2, 0.2538, 0.0644],
    [0.1, 0.8, 0.2704, 0.0731],
  ])('independent: at ζ %f and %f of the rate two copies leave %f, three %f', (damping, ratio, two, three) => {
    expect(Math.abs(twoImpulseResidual({ ratio, damping }) - two)).toBeLessThan(5e-5);
    expect(Math.abs(threeImpulseResidual({ ratio, damping }) - three)).toBeLessThan(5e-5);
  });

  it.each([
    [twoImpulseResidual, 0, 0.9682, 1.0318],
    [threeImpulseResidual, 0, 0.8564, 1.1436],
  ])('independent: less than 5 % is left from %#', (residual, damping, low, high) => {
    const at = (from: number, to: number): number =>
      root((ratio) => residual({ ratio, damping }) - 0.05, from, to, 1e-9);
    expect(Math.abs(at(0.5, 1) - low)).toBeLessThan(5.1e-5);
    expect(Math.abs(at(1, 1.5) - high)).toBeLessThan(5.1e-5);
  });

  it.each([
    [twoImpulseResidual, 0.0751],
    [threeImpulseResidual, 0.3402],
  ])('independent: at ζ = 0.1 the 5 % band is as wide as printed', (residual, width) => {
    const at = (from: number, to: number): number =>
      root((ratio) => residual({ ratio, damping: 0.1 }) - 0.05, from, to, 1e-9);
    expect(Math.abs(at(1, 1.5) - at(0.5, 1) - width)).toBeLessThan(5.1e-5);
  });

  it('law: without damping |cos(πr/2)|, and its square', () => {
    for (const ratio of [0.7, 0.93, 1.31]) {
      expect(twoImpulseResidual({ ratio, damping: 0 })).toBeCloseTo(Math.abs(Math.cos((Math.PI * ratio) / 2)), 14);
      expect(threeImpulseResidual({ ratio, damping: 0 })).toBeCloseTo(Math.cos((Math.PI * ratio) / 2) ** 2, 14);
    }
  });

  it.each([1, 2])(
    'an integrated load is left with the share that is reckoned, with %i copies, also at a wrong length',
    (later) => {
      const reckoned = 0.6;
      const damping = dampingFromHalving({ swings: 8 });
      const rate = swingRate({ length: reckoned });
      const K = Math.exp((-damping * Math.PI) / Math.sqrt(1 - damping ** 2));
      const delay = shapingTime({ later: 1, rate, damping });
      const shares = later === 1 ? [1, K] : [1, 2 * K, K * K];
      const sum = shares.reduce((a, b) => a + b, 0);
      const impulses = shares.map((share, i) => ({ share: share / sum, delay: i * delay }));
      for (const length of [0.6, 0.45]) {
        const ratio = Math.sqrt(reckoned / length);
        const amplitude = (shaped: boolean): number => {
          const fading = fadingTime({ damping, longest: swingRate({ length }) });
          const load = hangingLoad({ gravity: g, fadingTime: fading, tolerance: 1e-12 });
          const track = new Track(length).travel(
            'x',
            5e-4,
            { speed: 2e-4, acceleration: 7e-4 },
            shaped ? impulses : undefined,
          );
          expect(track.x).toBeCloseTo(5e-4, 15);
          load.hang(track);
          load.run(track);
          return Math.hypot(load.state[0]!, load.state[2]! / swingRate({ length }));
        };
        const V = (later === 1 ? twoImpulseResidual : threeImpulseResidual)({ ratio, damping });
        // What one copy leaves has faded longer by the delays: V counts from the last copy.
        // The ripple of a damped amplitude is of the order of ζ.
        expect(Math.abs(amplitude(true) / amplitude(false) - V)).toBeLessThan(2 * damping * V + 1e-6);
      }
    },
  );

  it('independent: a shaped track goes on farther after the stick is let go by the mean delay', () => {
    const [damping, rate, speed] = [0.02, 4, 0.22];
    const K = Math.exp((-damping * Math.PI) / Math.sqrt(1 - damping ** 2));
    const delay = shapingTime({ later: 1, rate, damping });
    const impulses = [
      { share: 1 / (1 + K), delay: 0 },
      { share: K / (1 + K), delay },
    ];
    const plain = new Track(1).travel('x', 1, { speed, acceleration: 0.7 });
    const shaped = new Track(1).travel('x', 1, { speed, acceleration: 0.7 }, impulses);
    expect(shaped.end - plain.end).toBeCloseTo(delay, 12);
    // The stick is let go where the plain axis begins to brake; both then end at the same place.
    const release = 1 / speed;
    const positionAt = (track: Track, t: number): number => {
      for (let i = track.count - 1; i >= 0; i--) {
        const p = track.pieces.subarray(13 * i, 13 * i + 13);
        const s = t - p[0]!;
        if (s >= 0) return p[9]! + s * (p[10]! + (s * p[1]!) / 2);
      }
      return 0;
    };
    const farther = positionAt(plain, release) - positionAt(shaped, release);
    expect(farther).toBeCloseTo(shapingOverrun({ speed, later: 1, rate, damping }), 12);
  });
});

describe('misses', () => {
  it('law: one in 22 beyond two deviations, one in 370 beyond three', () => {
    expect(missShare({ reach: 2, scatter: 1 })).toBeCloseTo(0.0455003, 7);
    expect(missShare({ reach: 3, scatter: 1 })).toBeCloseTo(0.0026998, 7);
  });

  it('law: at the turn of the swing one in 7.39 beyond two deviations, one in 90 beyond three, and all beyond the reach', () => {
    expect(worstMissShare({ reach: 2, left: 0, scatter: 1 })).toBeCloseTo(Math.exp(-2), 14);
    expect(worstMissShare({ reach: 0.03, left: 0, scatter: 0.01 })).toBeCloseTo(1 / 90.0171, 7);
    expect(worstMissShare({ reach: 0.03, left: 0.01, scatter: 0.01 })).toBeCloseTo(Math.exp(-2), 14);
    expect(worstMissShare({ reach: 0.03, left: 0.04, scatter: 0.01 })).toBe(1);
    expect(worstMissShare({ reach: -0.01, left: 0, scatter: 0.01 })).toBe(1);
    expect(missShare({ reach: -0.01, scatter: 0.01 })).toBe(1);
  });

  // Independent: the error function of a C library, to its last digit.
  it.each([
    [0.1, 0.1124629160182849],
    [0.5, 0.5204998778130465],
    [1, 0.8427007929497149],
    [2, 0.9953222650189527],
    [2.4999, 0.9995928300996666],
    [2.5, 0.999593047982555],
    [3, 0.9999779095030014],
    [4, 0.9999999845827421],
    [5.9, 1],
  ])('independent: the error function of %f is %f', (x, value) => {
    expect(Math.abs(erf(x) - value)).toBeLessThan(1e-15);
  });

  it('law: the error function is odd, and its slope the bell curve', () => {
    for (const x of [0.1, 0.9, 2.49, 2.51, 4]) {
      expect(erf(-x)).toBe(-erf(x));
      const h = 1e-4;
      const slope = (erf(x + h) - erf(x - h)) / (2 * h);
      const bell = (2 / Math.sqrt(Math.PI)) * Math.exp(-x * x);
      expect(Math.abs(slope - bell)).toBeLessThan(1e-7 * Math.max(1, bell));
    }
    expect(erf(0)).toBe(0);
    expect(erf(7)).toBe(1);
    expect(erf(NaN)).toBeNaN();
  });

  it('independent: the interval of one in forty is 0.06 % to 13 %', () => {
    const { low, high } = exactInterval(1, 40);
    expect(Math.abs(low - 0.000633)).toBeLessThan(5e-7);
    expect(Math.abs(high - 0.131586)).toBeLessThan(5e-7);
  });
});
