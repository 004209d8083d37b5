import { NotConverged } from './errors.ts';

/**
 * Root of `f` between `a` and `b`, where it changes sign, by Brent's method.
 *
 * @returns x within `tolerance` (absolute) of a sign change
 * @throws NotConverged when the ends have one sign or a value is no number
 */
export const root = (f: (x: number) => number, a: number, b: number, tolerance: number, most = 300): number => {
  let [x0, x1] = [a, b];
  let [f0, f1] = [f(x0), f(x1)];
  if (f0 === 0) return x0;
  if (f1 === 0) return x1;
  // Signs and not products: two very small numbers multiply to nought.
  if (!(f0 < 0 ? f1 > 0 : f0 > 0 && f1 < 0)) throw new NotConverged('root', `no change of sign between ${a} and ${b}`);
  let [x2, f2] = [x0, f0];
  let step = x1 - x0;
  let before = step;
  for (let i = 0; i < most; i++) {
    if (f1 > 0 === f2 > 0) {
      [x2, f2] = [x0, f0];
      step = before = x1 - x0;
    }
    if (Math.abs(f2) < Math.abs(f1)) {
      [x0, x1, x2] = [x1, x2, x1];
      [f0, f1, f2] = [f1, f2, f1];
    }
    const near = 2 * Number.EPSILON * Math.abs(x1) + tolerance / 2;
    const half = (x2 - x1) / 2;
    if (Math.abs(half) <= near || f1 === 0) return x1;
    if (Math.abs(before) >= near && Math.abs(f0) > Math.abs(f1)) {
      const s = f1 / f0;
      let p: number;
      let q: number;
      if (x0 === x2) {
        p = 2 * half * s;
        q = 1 - s;
      } else {
        const r = f1 / f2;
        const t = f0 / f2;
        p = s * (2 * half * t * (t - r) - (x1 - x0) * (r - 1));
        q = (t - 1) * (r - 1) * (s - 1);
      }
      if (p > 0) q = -q;
      else p = -p;
      if (2 * p < Math.min(3 * half * q - Math.abs(near * q), Math.abs(before * q))) {
        before = step;
        step = p / q;
      } else before = step = half;
    } else before = step = half;
    [x0, f0] = [x1, f1];
    x1 += Math.abs(step) > near ? step : Math.sign(half) * near;
    f1 = f(x1);
    if (Number.isNaN(f1)) throw new NotConverged('root', `no number at ${x1}`);
  }
  throw new NotConverged('root', `still ${Math.abs(x2 - x1)} wide after ${most} steps`);
};

const GOLDEN = (Math.sqrt(5) - 1) / 2;

/**
 * Highest point of `f` in a bracket, by golden section; a local one when there are several.
 *
 * @param most evaluations to spend
 * @returns the best point seen and its value
 */
export const peak = (f: (x: number) => number, a: number, b: number, most: number): { x: number; y: number } => {
  let [low, high] = [a, b];
  let x1 = high - GOLDEN * (high - low);
  let x2 = low + GOLDEN * (high - low);
  let [y1, y2] = [f(x1), f(x2)];
  for (let i = 2; i < most; i++) {
    if (y1 > y2) {
      high = x2;
      [x2, y2] = [x1, y1];
      x1 = high - GOLDEN * (high - low);
      y1 = f(x1);
    } else {
      low = x1;
      [x1, y1] = [x2, y2];
      x2 = low + GOLDEN * (high - low);
      y2 = f(x2);
    }
  }
  return y1 > y2 ? { x: x1, y: y1 } : { x: x2, y: y2 };
};

/** The `index`-th point of the Halton sequence in the unit cube, index from 1: even coverage that is the same every time. */
export const halton = (index: number, dimensions: number): number[] => {
  const primes = [2, 3, 5, 7, 11, 13, 17, 19, 23, 29, 31, 37, 41, 43, 47, 53];
  return Array.from({ length: dimensions }, (_, d) => {
    // Past the sixteenth coordinate the sequence shifts instead of taking ever larger primes, which cover badly.
    const base = primes[d % primes.length]!;
    let [n, fraction, sum] = [index + 7 * Math.floor(d / primes.length), 1, 0];
    while (n > 0) {
      fraction /= base;
      sum += fraction * (n % base);
      n = Math.floor(n / base);
    }
    return sum;
  });
};

/** Repeatable random numbers in [0, 1): mulberry32, good enough for play, tests and sampling, not for secrets. */
export const seeded = (seed: number): (() => number) => {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
};
