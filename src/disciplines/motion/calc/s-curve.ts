/** Travels with rounded ramps: constant jerk in stretches. */
import { formula, OutsideRange } from '../../../kernel/index.ts';
import { acceleration, distance, jerk } from './axis-takes.ts';

/**
 * Speed that a jerk-limited profile reaches.
 *
 * D_full = 2·a^3/j^2
 * v_D = D >= D_full ? (a/2)·(√((a/j)^2 + 4·D/a) - a/j) : (D^2·j/4)^(1/3)
 * v = min(v_set, v_D)
 * @param asked v_set, speed asked for [m/s]
 * @param acceleration a, acceleration [m/s²]
 * @param jerk j, jerk [m/s³]
 * @param distance D, length of the travel [m]
 * @returns v [m/s]
 * @throws OutsideRange when an input lies outside its range
 */
export const sCurveReachedSpeed = formula({
  name: 's-curve-reached-speed',
  gives: { symbol: 'v', of: 'speed', means: 'speed that is reached' },
  takes: {
    asked: { symbol: 'v_set', of: 'speed', above: 0, means: 'speed asked for', slope: 'up', typical: [0.1, 0.3] },
    acceleration: { ...acceleration, slope: 'up', typical: [0.5, 2] },
    jerk: { ...jerk, slope: 'up', typical: [5, 40] },
    distance: { ...distance, slope: 'up', typical: [0.02, 0.6] },
  },
  steps: ({ asked: v, acceleration: a, jerk: j, distance: D }, step) => {
    const full = step('D_full', '2*a^3/j^2', (2 * a ** 3) / j ** 2, 'length');
    const most = D >= full ? (a / 2) * (Math.sqrt((a / j) ** 2 + (4 * D) / a) - a / j) : ((D ** 2 * j) / 4) ** (1 / 3);
    step('v_D', 'D >= D_full ? (a/2)*(sqrt((a/j)^2 + 4*D/a) - a/j) : (D^2*j/4)^(1/3)', most, 'speed');
    return step('v', 'min(v_set, v_D)', Math.min(v, most), 'speed');
  },
  assumes: ['equal ramps up and down', 'constant jerk in four stretches', 'from rest to rest'],
  source: [{ id: 'own-derivation', at: 'two ramps of v/a + a/j each, or of 2·√(v/j) where a is not reached' }],
  checked: [
    { kind: 'law', against: 'the two ramps to the reached speed fill the travel' },
    { kind: 'law', against: 'becomes the trapezoid as the jerk grows' },
    {
      kind: 'independent',
      against: 'eight travels, one for each branch and edge; a linear programme over the jerk finds none faster',
      source: { id: 'independent-computation', at: 'motion profiles' },
    },
  ],
  accuracy: 'exact for the profile',
});

/**
 * Acceleration that a jerk-limited ramp reaches before it must ease off.
 *
 * a_top = min(a, √(v·j))
 * @param speed v, speed that is reached [m/s]
 * @param acceleration a, acceleration [m/s²]
 * @param jerk j, jerk [m/s³]
 * @returns a_top [m/s²]
 * @throws OutsideRange when an input lies outside its range
 */
export const sCurveReachedAcceleration = formula({
  name: 's-curve-reached-acceleration',
  gives: { symbol: 'a_top', of: 'acceleration', means: 'acceleration that is reached' },
  takes: {
    speed: { symbol: 'v', of: 'speed', above: 0, means: 'speed that is reached', slope: 'up', typical: [0.01, 0.3] },
    acceleration: { ...acceleration, slope: 'up', typical: [0.5, 2] },
    jerk: { ...jerk, slope: 'up', typical: [5, 40] },
  },
  steps: ({ speed: v, acceleration: a, jerk: j }, step) =>
    step('a_top', 'min(a, sqrt(v*j))', Math.min(a, Math.sqrt(v * j)), 'acceleration'),
  assumes: ['constant jerk'],
  source: [{ id: 'own-derivation', at: 'v = a²/j where the acceleration just peaks' }],
  checked: [
    { kind: 'law', against: 'a ramp that peaks at a lasts 2·a/j' },
    {
      kind: 'independent',
      against: '0.7071 m/s² at 0.05 m/s and 10 m/s³',
      source: { id: 'independent-computation', at: 'motion profiles' },
    },
  ],
  accuracy: 'exact for the profile',
});

/**
 * Duration of one jerk-limited ramp.
 *
 * t_a = v·j >= a^2 ? v/a + a/j : 2·√(v/j)
 * @param speed v, speed that is reached [m/s]
 * @param acceleration a, acceleration [m/s²]
 * @param jerk j, jerk [m/s³]
 * @returns t_a [s]
 * @throws OutsideRange when an input lies outside its range
 */
export const sCurveRampTime = formula({
  name: 's-curve-ramp-time',
  gives: { symbol: 't_a', of: 'time', means: 'time from rest to the speed' },
  takes: {
    speed: { symbol: 'v', of: 'speed', above: 0, means: 'speed that is reached', slope: 'up', typical: [0.01, 0.3] },
    acceleration: { ...acceleration, slope: 'down', typical: [0.5, 2] },
    jerk: { ...jerk, slope: 'down', typical: [5, 40] },
  },
  steps: ({ speed: v, acceleration: a, jerk: j }, step) =>
    step('t_a', 'v*j >= a^2 ? v/a + a/j : 2*sqrt(v/j)', v * j >= a ** 2 ? v / a + a / j : 2 * Math.sqrt(v / j), 'time'),
  assumes: ['constant jerk in stretches'],
  source: [{ id: 'own-derivation', at: 'kinematics of constant jerk' }],
  checked: [
    {
      kind: 'independent',
      against: '0.25 m/s at 1 m/s² and 10 m/s³ takes 0.35 s',
      source: { id: 'independent-computation', at: 'motion profiles' },
    },
    {
      kind: 'published-secondary',
      against: '10 in/s at 200 in/s²: the ramp is 0.5 in long at 4000 in/s³ and 0.375 in at 8000 in/s³',
      source: { id: 's-curve-ramp-distance', at: 'table of test cases' },
    },
  ],
  accuracy: 'exact for the profile',
});

/**
 * Time of a jerk-limited travel from rest to rest.
 *
 * t = D/v + t_a
 * @param distance D, length of the travel [m]
 * @param speed v, speed that is reached [m/s]
 * @param ramp t_a, time of one ramp [s]
 * @returns t [s]
 * @throws OutsideRange when two ramps are longer than the travel
 */
export const sCurveTravelTime = formula({
  name: 's-curve-travel-time',
  gives: { symbol: 't', of: 'time', means: 'time of the whole travel' },
  takes: {
    distance: { ...distance, slope: 'up', typical: [0.3, 0.6] },
    speed: { symbol: 'v', of: 'speed', above: 0, means: 'speed that is reached', slope: 'down', typical: [0.1, 0.3] },
    ramp: { symbol: 't_a', of: 'time', above: 0, means: 'time of one ramp', slope: 'up', typical: [0.1, 0.4] },
  },
  steps: ({ distance: D, speed: v, ramp }, step) => {
    if (!(v * ramp <= D * (1 + 1e-9)))
      throw new OutsideRange('s-curve-travel-time', 't_a', ramp, 't_a ≤ D/v', 'two ramps are longer than the travel');
    return step('t', 'D/v + t_a', D / v + ramp, 'time');
  },
  assumes: ['equal ramps up and down, each point-symmetric'],
  source: [{ id: 'own-derivation', at: 'a symmetric ramp covers v·t_a/2' }],
  checked: [
    {
      kind: 'independent',
      against: '0.5 m at 0.25 m/s, 1 m/s², 10 m/s³ takes 2.35 s',
      source: { id: 'independent-computation', at: 'motion profiles' },
    },
    {
      kind: 'published-secondary',
      against: '4 m in 1 s by thirds: 27 m/s², 243 m/s³',
      source: { id: 'profile-by-thirds', at: 'S-curves' },
    },
  ],
  accuracy: 'exact for the profile',
});

/**
 * Speed at which a jerk-limited ramp still has a given share of its acceleration while it eases off.
 *
 * v_s = v - (s·a_top)^2/(2·j)
 * @param speed v, speed at the end of the ramp [m/s]
 * @param acceleration a_top, acceleration that is reached [m/s²]
 * @param jerk j, jerk [m/s³]
 * @param share s, share of the acceleration that is left [-]
 * @returns v_s [m/s]
 * @throws OutsideRange when the ramp never reaches the acceleration
 */
export const easingSpeed = formula({
  name: 'easing-speed',
  gives: { symbol: 'v_s', of: 'speed', means: 'speed while the acceleration eases off' },
  takes: {
    speed: {
      symbol: 'v',
      of: 'speed',
      above: 0,
      means: 'speed at the end of the ramp',
      slope: 'up',
      typical: [0.2, 0.3],
    },
    acceleration: {
      ...acceleration,
      symbol: 'a_top',
      means: 'acceleration that is reached',
      slope: 'down',
      typical: [0.5, 1],
    },
    jerk: { ...jerk, slope: 'up', typical: [5, 40] },
    share: {
      symbol: 's',
      of: 'ratio',
      from: 0,
      to: 1,
      means: 'share of the acceleration that is left',
      slope: 'down',
      typical: [0.5, 1],
    },
  },
  steps: ({ speed: v, acceleration: a, jerk: j, share: s }, step) => {
    if (!(a * a <= v * j * (1 + 1e-9)))
      throw new OutsideRange('easing-speed', 'a_top', a, 'a_top ≤ √(v·j)', 'the ramp never reaches more');
    return step('v_s', 'v - (s*a_top)^2/(2*j)', v - (s * a) ** 2 / (2 * j), 'speed');
  },
  assumes: ['constant jerk while easing off'],
  source: [{ id: 'own-derivation', at: 'kinematics of constant jerk' }],
  checked: [{ kind: 'law', against: 'equals half the speed where a ramp just peaks' }],
  accuracy: 'exact for the profile',
});

/**
 * A share of an acceleration.
 *
 * a_s = s·a_top
 * @param acceleration a_top, acceleration that is reached [m/s²]
 * @param share s, share that is left [-]
 * @returns a_s [m/s²]
 * @throws OutsideRange when an input lies outside its range
 */
export const easedAcceleration = formula({
  name: 'eased-acceleration',
  gives: { symbol: 'a_s', of: 'acceleration', means: 'acceleration while it eases off' },
  takes: {
    acceleration: {
      ...acceleration,
      symbol: 'a_top',
      means: 'acceleration that is reached',
      slope: 'up',
      typical: [0.5, 2],
    },
    share: { symbol: 's', of: 'ratio', from: 0, to: 1, means: 'share that is left', slope: 'up', typical: [0.5, 1] },
  },
  steps: ({ acceleration: a, share: s }, step) => step('a_s', 's*a_top', s * a, 'acceleration'),
  assumes: [],
  source: [{ id: 'own-derivation', at: 'definition' }],
  checked: [{ kind: 'law', against: 'all of it at the beginning, none at the end' }],
  accuracy: 'exact',
});
