import { describe, expect, it } from 'vitest';
import { exactInterval } from '../binomial.ts';

describe('the exact interval of a probability', () => {
  // Independent: quantiles of the beta distribution by a statistics library, six decimals.
  it.each([
    [0, 10, 0, 0.308497],
    [0, 30, 0, 0.115703],
    [0, 100, 0, 0.036217],
    [1, 40, 0.000633, 0.131586],
    [2, 40, 0.006114, 0.169197],
    [3, 40, 0.015742, 0.203865],
    [5, 40, 0.04186, 0.268033],
    [10, 100, 0.049005, 0.176223],
    [40, 40, 0.911903, 1],
  ])('of %i in %i is %f to %f', (count, trials, low, high) => {
    const found = exactInterval(count, trials);
    expect(Math.abs(found.low - low)).toBeLessThan(5.1e-7);
    expect(Math.abs(found.high - high)).toBeLessThan(5.1e-7);
  });

  it('one-sided: 0 of 40 is at most 0.072158, one in 40 at most 0.113188', () => {
    expect(exactInterval(0, 40, 0.9).high).toBeCloseTo(0.072158, 6);
    expect(exactInterval(1, 40, 0.9).high).toBeCloseTo(0.113188, 6);
  });

  it('law: is the mirror image for what did not happen', () => {
    const [missed, caught] = [exactInterval(3, 20), exactInterval(17, 20)];
    expect(caught.low).toBeCloseTo(1 - missed.high, 14);
    expect(caught.high).toBeCloseTo(1 - missed.low, 14);
  });

  it('law: nears count ± two deviations for many trials', () => {
    const { low, high } = exactInterval(20_000, 100_000);
    const deviation = Math.sqrt((0.2 * 0.8) / 100_000);
    expect(low).toBeCloseTo(0.2 - 1.959964 * deviation, 4);
    expect(high).toBeCloseTo(0.2 + 1.959964 * deviation, 4);
  });

  it.each([
    [-1, 10],
    [11, 10],
    [0.5, 10],
    [0, 0],
    [NaN, 10],
  ])('refuses %f of %f', (count, trials) => {
    expect(() => exactInterval(count, trials)).toThrow(RangeError);
  });
});

it.each([0, 1, 1.2, -0.5, NaN])('refuses a confidence of %f', (confidence) => {
  expect(() => exactInterval(3, 10, confidence)).toThrow(RangeError);
});
