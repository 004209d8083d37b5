/**
 * Error function, erf(x) = 2/√π ∫₀ˣ e^(−t²) dt.
 *
 * Series e^(−x²)·Σ 2ⁿx^(2n+1)/(2n+1)!! near zero, continued fraction of the rest farther out.
 * @param x any number
 * @returns −1 … 1, to about 15 digits
 */
export const erf = (x: number): number => {
  const size = Math.abs(x);
  if (!(size < 6)) return Number.isNaN(x) ? NaN : Math.sign(x);
  const bell = (2 / Math.sqrt(Math.PI)) * Math.exp(-size * size);
  if (size < 2.5) {
    let term = size;
    let sum = size;
    for (let n = 1; term > 1e-17 * sum; n++) {
      term *= (2 * size * size) / (2 * n + 1);
      sum += term;
    }
    return Math.sign(x) * bell * sum;
  }
  let rest = size;
  for (let n = 60; n > 0; n--) rest = size + n / 2 / rest;
  return Math.sign(x) * (1 - bell / 2 / rest);
};
