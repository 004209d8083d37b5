/** How fast a load swings and how it fades. */
import { formula } from '../../../kernel/index.ts';
import { damping, gravity, length } from './takes.ts';

/**
 * Rate of small swings.
 *
 * ω = √(g/L)
 * @param length L, pivot to centre of mass [m]
 * @param gravity g [m/s²]
 * @returns ω [rad/s]
 * @throws OutsideRange unless both are above zero
 */
export const swingRate = formula({
  name: 'swing-rate',
  gives: { symbol: 'ω', of: 'angular-speed', means: 'rate of small swings' },
  takes: { length: { ...length, slope: 'down' }, gravity: { ...gravity, slope: 'up' } },
  steps: ({ length: L, gravity: g }, step) => step('ω', 'sqrt(g/L)', Math.sqrt(g / L), 'angular-speed'),
  assumes: ['all mass in one point', 'a line without mass', 'small swings'],
  source: [{ id: 'pendulum-period', at: 'small swings' }],
  checked: [
    {
      kind: 'independent',
      against: '2π/ω at nine lengths from 0.1 m to 1 m, to four decimals',
      source: { id: 'independent-computation', at: 'pendulum periods' },
    },
  ],
  accuracy: 'exact for small swings; the period is 0.2 % longer at 10° and 1.7 % at 30°',
});

/**
 * Period of a load on a line, at any swing up to the horizontal.
 *
 * T = 2π√(L/g) / agm(1, cos(θ/2)); four means leave nothing to round
 * @param length L, pivot to centre of mass [m]
 * @param amplitude θ, largest angle from the plumb line [rad]
 * @param gravity g [m/s²]
 * @returns T, there and back [s]
 * @throws OutsideRange outside 0 ≤ θ ≤ π/2
 */
export const swingPeriod = formula({
  name: 'swing-period',
  gives: { symbol: 'T', of: 'time', means: 'time of one swing there and back' },
  takes: {
    length: { ...length, slope: 'up' },
    amplitude: {
      symbol: 'θ',
      of: 'angle',
      means: 'largest angle from the plumb line',
      from: 0,
      to: Math.PI / 2,
      because: 'past the horizontal a line goes slack',
      slope: 'up',
      typical: [0.02, 1.2],
    },
    gravity: { ...gravity, slope: 'down' },
  },
  steps: ({ length: L, amplitude, gravity: g }, step) => {
    const T0 = step('T_0', '2*pi*sqrt(L/g)', 2 * Math.PI * Math.sqrt(L / g), 'time');
    const c = step('c', 'cos(θ/2)', Math.cos(amplitude / 2), 'ratio');
    let a = step('a_1', '(1 + c)/2', (1 + c) / 2, 'ratio');
    let b = step('b_1', 'sqrt(c)', Math.sqrt(c), 'ratio');
    for (const n of [2, 3]) {
      const mean = step(`a_${n}`, `(a_${n - 1} + b_${n - 1})/2`, (a + b) / 2, 'ratio');
      b = step(`b_${n}`, `sqrt(a_${n - 1}*b_${n - 1})`, Math.sqrt(a * b), 'ratio');
      a = mean;
    }
    return step('T', 'T_0/((a_3 + b_3)/2)', T0 / ((a + b) / 2), 'time');
  },
  assumes: ['all mass in one point', 'a line without mass', 'a pivot at rest', 'no drag'],
  source: [{ id: 'pendulum-period', at: 'exact period by the complete elliptic integral' }],
  checked: [
    {
      kind: 'published-secondary',
      against: 'T over its small-swing value at nine angles from 5° to 90°, to six decimals',
      source: { id: 'pendulum-period', at: 'table' },
    },
    {
      kind: 'published-secondary',
      against: '1 % at 0.400164 rad and 10 % at 1.269330 rad',
      source: { id: 'pendulum-anharmonic' },
    },
    { kind: 'law', against: 'four times the length swings at half the rate at every angle' },
  ],
  accuracy: 'to the last digit for the model',
});

/**
 * Damping from how soon a swing has fallen to a half.
 *
 * δ = ln 2 / n, ζ = δ/√(4π² + δ²)
 * @param swings n, full swings there and back after which half of it is left [-]
 * @returns ζ, share of critical damping [-]
 * @throws OutsideRange unless n is above zero
 */
export const dampingFromHalving = formula({
  name: 'damping-from-halving',
  gives: { symbol: 'ζ', of: 'ratio', means: 'share of critical damping' },
  takes: {
    swings: {
      symbol: 'n',
      of: 'count',
      means: 'full swings after which half of it is left',
      above: 0,
      because: 'a swing that has halved at once was none',
      slope: 'down',
      typical: [4, 20],
    },
  },
  steps: ({ swings: n }, step) => {
    const d = step('δ', 'log(2)/n', Math.LN2 / n, 'ratio');
    return step('ζ', 'δ/sqrt(4*pi^2 + δ^2)', d / Math.sqrt(4 * Math.PI ** 2 + d ** 2), 'ratio');
  },
  assumes: ['the same share is lost in every swing'],
  source: [{ id: 'own-derivation', at: 'logarithmic decrement' }],
  checked: [
    {
      kind: 'independent',
      against: 'halving in 10 swings is δ = 0.0693147 and ζ = 0.0110311',
      source: { id: 'independent-computation', at: 'damping' },
    },
  ],
  accuracy: 'exact for drag in proportion to speed; drag that grows faster makes small swings fade more slowly',
});

/**
 * Time in which a swing fades to 37 %, the same at every length of the line.
 *
 * τ = 1/(ζ·ω_m), so that c/m = 2/τ
 * @param damping ζ, share of critical damping at the longest line [-]
 * @param longest ω_m, rate of small swings at the longest line [rad/s]
 * @returns τ [s]
 * @throws OutsideRange unless both are above zero
 */
export const fadingTime = formula({
  name: 'fading-time',
  gives: { symbol: 'τ', of: 'time', means: 'time in which the swing fades to 37 %' },
  takes: {
    damping: { ...damping, from: undefined, above: 0, because: 'every swing fades', slope: 'down' },
    longest: {
      symbol: 'ω_m',
      of: 'angular-speed',
      means: 'rate of small swings at the longest line',
      above: 0,
      because: 'a load on a line swings',
      slope: 'down',
      typical: [3, 5],
    },
  },
  steps: ({ damping: z, longest }, step) => step('τ', '1/(ζ*ω_m)', 1 / (z * longest), 'time'),
  assumes: ['drag in proportion to speed, the same for each kilogram at every length'],
  source: [{ id: 'own-derivation', at: 'damped small swings' }],
  checked: [
    { kind: 'independent', against: 'a swing integrated by another method has halved after the swings that went in' },
    { kind: 'law', against: 'twice the damping fades in half the time' },
  ],
  accuracy: 'as good as the damping, which is seldom known within a factor of two',
});
