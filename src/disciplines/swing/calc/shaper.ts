/** Shaped moves: the same motion sent twice or three times, half a swing apart, so that the swings cancel. */
import { formula } from '../../../kernel/index.ts';
import { damping } from './takes.ts';

const ratio = {
  symbol: 'r',
  of: 'ratio',
  means: 'actual rate of swing as a share of the one that was reckoned with',
  above: 0,
  because: 'a load on a line swings',
  slope: 'either',
  typical: [0.7, 1.4],
} as const;

const source = [{ id: 'input-shaping', at: 'residual vibration' }];
const assumes = ['small swings', 'one length of line', 'the same damping as was reckoned with'];

/**
 * Swing left by a motion sent twice, as a share of what one alone leaves.
 *
 * Shares 1/(1 + K) and K/(1 + K), half a damped swing apart, K = e^(−ζπ/√(1−ζ²));
 * V = e^(−ζp)·√(C² + S²), p = r·π/√(1−ζ²)
 * @param ratio r, actual over reckoned rate [-]
 * @param damping ζ [-]
 * @returns V [-]
 * @throws OutsideRange outside the ranges of its inputs
 */
export const twoImpulseResidual = formula({
  name: 'two-impulse-residual',
  gives: { symbol: 'V', of: 'ratio', means: 'share of the swing that is left' },
  takes: { ratio, damping: { ...damping, slope: 'either' } },
  steps: ({ ratio: r, damping: z }, step) => {
    const K = step('K', 'exp(-ζ*pi/sqrt(1 - ζ^2))', Math.exp((-z * Math.PI) / Math.sqrt(1 - z ** 2)), 'ratio');
    const p = step('p', 'r*pi/sqrt(1 - ζ^2)', (r * Math.PI) / Math.sqrt(1 - z ** 2), 'ratio');
    const C = step(
      'C',
      '(1 + K*exp(ζ*p)*cos(r*pi))/(1 + K)',
      (1 + K * Math.exp(z * p) * Math.cos(r * Math.PI)) / (1 + K),
      'ratio',
    );
    const S = step(
      'S',
      'K*exp(ζ*p)*sin(r*pi)/(1 + K)',
      (K * Math.exp(z * p) * Math.sin(r * Math.PI)) / (1 + K),
      'ratio',
    );
    return step('V', 'exp(-ζ*p)*sqrt(C^2 + S^2)', Math.exp(-z * p) * Math.sqrt(C ** 2 + S ** 2), 'ratio');
  },
  assumes,
  source,
  checked: [
    {
      kind: 'independent',
      against: '0.1564 at 10 % off and 0.3090 at 20 % off without damping; 0.1305 and 0.1347 at ζ = 0.1',
      source: { id: 'independent-computation', at: 'shapers' },
    },
    { kind: 'law', against: '|cos(π·r/2)| without damping' },
  ],
  accuracy: 'exact for small swings',
});

/**
 * Swing left by a motion sent three times, as a share of what one alone leaves.
 *
 * Shares 1, 2K and K² over (1 + K)², half a damped swing apart; V as for two, with both later times
 * @param ratio r, actual over reckoned rate [-]
 * @param damping ζ [-]
 * @returns V [-]
 * @throws OutsideRange outside the ranges of its inputs
 */
export const threeImpulseResidual = formula({
  name: 'three-impulse-residual',
  gives: { symbol: 'V', of: 'ratio', means: 'share of the swing that is left' },
  takes: { ratio, damping: { ...damping, slope: 'either' } },
  steps: ({ ratio: r, damping: z }, step) => {
    const K = step('K', 'exp(-ζ*pi/sqrt(1 - ζ^2))', Math.exp((-z * Math.PI) / Math.sqrt(1 - z ** 2)), 'ratio');
    const p = step('p', 'r*pi/sqrt(1 - ζ^2)', (r * Math.PI) / Math.sqrt(1 - z ** 2), 'ratio');
    const B = step('B', 'K*exp(ζ*p)', K * Math.exp(z * p), 'ratio');
    const whole = (1 + K) ** 2;
    const C = step(
      'C',
      '(1 + 2*B*cos(r*pi) + B^2*cos(2*r*pi))/(1 + K)^2',
      (1 + 2 * B * Math.cos(r * Math.PI) + B ** 2 * Math.cos(2 * r * Math.PI)) / whole,
      'ratio',
    );
    const S = step(
      'S',
      '(2*B*sin(r*pi) + B^2*sin(2*r*pi))/(1 + K)^2',
      (2 * B * Math.sin(r * Math.PI) + B ** 2 * Math.sin(2 * r * Math.PI)) / whole,
      'ratio',
    );
    return step('V', 'exp(-2*ζ*p)*sqrt(C^2 + S^2)', Math.exp(-2 * z * p) * Math.sqrt(C ** 2 + S ** 2), 'ratio');
  },
  assumes,
  source,
  checked: [
    {
      kind: 'independent',
      against: '0.0245 at 10 % off and 0.0955 at 20 % off without damping; 0.0170 and 0.0181 at ζ = 0.1',
      source: { id: 'independent-computation', at: 'shapers' },
    },
    { kind: 'law', against: 'the square of what a motion sent twice leaves, without damping' },
  ],
  accuracy: 'exact for small swings',
});

const later = {
  symbol: 'n',
  of: 'count',
  means: 'copies after the first',
  from: 1,
  to: 2,
  because: 'two or three impulses are meant',
  slope: 'up',
  typical: [1, 2],
} as const;
const rate = {
  symbol: 'ω',
  of: 'angular-speed',
  means: 'rate of small swings',
  above: 0,
  because: 'a load on a line swings',
  slope: 'down',
  typical: [3, 7],
} as const;

/**
 * Time that shaping adds to a move.
 *
 * t = n·π/(ω·√(1−ζ²))
 * @param later n, copies after the first [-]
 * @param rate ω [rad/s]
 * @param damping ζ [-]
 * @returns t [s]
 * @throws OutsideRange outside the ranges of its inputs
 */
export const shapingTime = formula({
  name: 'shaping-time',
  gives: { symbol: 't', of: 'time', means: 'time that shaping adds' },
  takes: { later, rate, damping: { ...damping, slope: 'up' } },
  steps: ({ later: n, rate: w, damping: z }, step) =>
    step('t', 'n*pi/(ω*sqrt(1 - ζ^2))', (n * Math.PI) / (w * Math.sqrt(1 - z ** 2)), 'time'),
  assumes: ['copies half a damped swing apart'],
  source,
  checked: [{ kind: 'law', against: 'half a period for two impulses and a whole one for three' }],
  accuracy: 'exact',
});

/**
 * How much farther a shaped axis goes after the stick is let go.
 *
 * s = v·n·π/(ω·√(1−ζ²))·K/(1 + K): the mean delay of the copies, by their shares
 * @param speed v [m/s]
 * @param later n, copies after the first [-]
 * @param rate ω [rad/s]
 * @param damping ζ [-]
 * @returns s [m]
 * @throws OutsideRange outside the ranges of its inputs
 */
export const shapingOverrun = formula({
  name: 'shaping-overrun',
  gives: { symbol: 's', of: 'length', means: 'way that a shaped axis goes on farther' },
  takes: {
    speed: {
      symbol: 'v',
      of: 'speed',
      means: 'speed at which the stick is let go',
      from: 0,
      because: 'it is taken without sign',
      slope: 'up',
      typical: [0.1, 0.3],
    },
    later,
    rate,
    damping: { ...damping, slope: 'either' },
  },
  steps: ({ speed: v, later: n, rate: w, damping: z }, step) => {
    const K = step('K', 'exp(-ζ*pi/sqrt(1 - ζ^2))', Math.exp((-z * Math.PI) / Math.sqrt(1 - z ** 2)), 'ratio');
    const t = step('t', 'n*pi/(ω*sqrt(1 - ζ^2))', (n * Math.PI) / (w * Math.sqrt(1 - z ** 2)), 'time');
    return step('s', 'v*t*K/(1 + K)', (v * t * K) / (1 + K), 'length');
  },
  assumes: ['the axis had reached its speed', 'copies half a damped swing apart'],
  source,
  checked: [{ kind: 'independent', against: 'a shaped track is that much longer than the plain one, piece by piece' }],
  accuracy: 'exact',
});
