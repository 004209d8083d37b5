/**
 * Exact fractions. Unit factors and authored decimals are fractions of whole numbers, so a quantity is rounded once,
 * at the very end: 18 mm is the double nearest to 18/1000, and 0.1 in the one nearest to 254/100000.
 */
export interface Exact {
  readonly n: bigint;
  /** Always above zero. */
  readonly d: bigint;
}

const divisor = (a: bigint, b: bigint): bigint => {
  let [x, y] = [a < 0n ? -a : a, b];
  while (y !== 0n) [x, y] = [y, x % y];
  return x === 0n ? 1n : x;
};

export const exact = (n: bigint | number, d: bigint | number = 1n): Exact => {
  const [top, bottom] = [BigInt(n), BigInt(d)];
  if (bottom === 0n) throw new RangeError('A fraction needs a denominator other than zero.');
  const g = divisor(top, bottom < 0n ? -bottom : bottom);
  return bottom < 0n ? { n: -top / g, d: -bottom / g } : { n: top / g, d: bottom / g };
};

export const ZERO = exact(0);
export const ONE = exact(1);

export const times = (a: Exact, b: Exact): Exact => exact(a.n * b.n, a.d * b.d);
export const plus = (a: Exact, b: Exact): Exact => exact(a.n * b.d + b.n * a.d, a.d * b.d);
export const minus = (a: Exact): Exact => ({ n: -a.n, d: a.d });
export const size = (a: Exact): Exact => (a.n < 0n ? minus(a) : a);
export const isLess = (a: Exact, b: Exact): boolean => a.n * b.d < b.n * a.d;

export const power = (a: Exact, exponent: number): Exact => {
  const e = BigInt(Math.abs(exponent));
  return exponent < 0 ? exact(a.d ** e, a.n ** e) : exact(a.n ** e, a.d ** e);
};

/** Ten to a whole power, as a fraction. */
export const ten = (exponent: number): Exact => power(exact(10), exponent);

/** The length in bits, up to three more. */
const bits = (a: bigint): number => a.toString(16).length * 4;

/** The double nearest to a fraction (ties to even), for magnitudes far from the ends of the double range. */
export const toNumber = (a: Exact): number => {
  if (a.n === 0n) return 0;
  const top = a.n < 0n ? -a.n : a.n;
  const shift = bits(a.d) - bits(top) + 64;
  const [n, d] = shift > 0 ? [top << BigInt(shift), a.d] : [top, a.d << BigInt(-shift)];
  // The last bit stands far below the rounding place; it only says that something was left over.
  const quotient = n % d === 0n ? n / d : (n / d) | 1n;
  const value = Number(quotient) * 2 ** -shift;
  return a.n < 0n ? -value : value;
};
