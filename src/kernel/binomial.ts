import { root } from './numerics.ts';

/** Natural logarithm of n! by Stirling's series, small ones by their product. */
const logFactorial = (n: number): number => {
  if (n < 20) {
    let product = 1;
    for (let k = 2; k <= n; k++) product *= k;
    return Math.log(product);
  }
  const x = n + 1;
  return (
    (x - 0.5) * Math.log(x) - x + Math.log(2 * Math.PI) / 2 + 1 / (12 * x) - 1 / (360 * x ** 3) + 1 / (1260 * x ** 5)
  );
};

/** Probability of exactly `k` of `n`, 0 < p < 1. */
const exactly = (k: number, n: number, p: number): number =>
  Math.exp(logFactorial(n) - logFactorial(k) - logFactorial(n - k) + k * Math.log(p) + (n - k) * Math.log1p(-p));

/** Probability of at most `k` of `n` when each happens with probability `p`; summed away from the mean, where terms shrink. */
const atMost = (k: number, n: number, p: number): number => {
  const odds = p / (1 - p);
  let [sum, ratio] = [0, 1];
  if (k <= n * p) {
    for (let i = k; i >= 0 && ratio > 1e-17 * sum; i--) {
      sum += ratio;
      ratio *= i / ((n - i + 1) * odds);
    }
    return Math.min(1, exactly(k, n, p) * sum);
  }
  for (let i = k + 1; i <= n && ratio > 1e-17 * sum; i++) {
    sum += ratio;
    ratio *= ((n - i) * odds) / (i + 1);
  }
  return k >= n ? 1 : Math.max(0, 1 - exactly(k + 1, n, p) * sum);
};

export interface Interval {
  readonly low: number;
  readonly high: number;
}

/**
 * Exact two-sided interval of a probability from `count` of `trials` (Clopper and Pearson): its low end would give that
 * many or more, its high end that many or fewer, with half of what the confidence leaves.
 *
 * @param count how often it happened, 0 … trials
 * @param trials at least one
 * @param confidence between 0 and 1, 0.95 for 95 %
 * @returns ends in 0 … 1
 * @throws RangeError for counts that are none, or a confidence that is no share between 0 and 1
 */
export const exactInterval = (count: number, trials: number, confidence = 0.95): Interval => {
  if (!(Number.isInteger(count) && Number.isInteger(trials) && count >= 0 && trials >= 1 && count <= trials))
    throw new RangeError(`${count} of ${trials} is no count of trials`);
  if (!(confidence > 0 && confidence < 1)) throw new RangeError(`${confidence} is no confidence between 0 and 1`);
  // The tail is summed over the shorter side.
  if (2 * count > trials) {
    const { low, high } = exactInterval(trials - count, trials, confidence);
    return { low: 1 - high, high: 1 - low };
  }
  const tail = (1 - confidence) / 2;
  const within = (f: (logit: number) => number): number => 1 / (1 + Math.exp(-root(f, -60, 30, 1e-13)));
  const at = (logit: number): number => 1 / (1 + Math.exp(-logit));
  return {
    low: count === 0 ? 0 : within((x) => 1 - atMost(count - 1, trials, at(x)) - tail),
    high: within((x) => atMost(count, trials, at(x)) - tail),
  };
};
