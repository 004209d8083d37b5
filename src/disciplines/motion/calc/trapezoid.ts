/** Travels with straight ramps, and what a motor feels over them. */
import { formula, OutsideRange } from '../../../kernel/index.ts';
import { acceleration, distance } from './axis-takes.ts';

/**
 * Speed that a trapezoid reaches: the one asked for, or less where the travel ends first.
 *
 * v_D = √(a·D)
 * v = min(v_set, v_D)
 * @param asked v_set, speed asked for [m/s]
 * @param acceleration a, acceleration [m/s²]
 * @param distance D, length of the travel [m]
 * @returns v [m/s]
 * @throws OutsideRange when an input lies outside its range
 */
export const reachedSpeed = formula({
  name: 'reached-speed',
  gives: { symbol: 'v', of: 'speed', means: 'speed that is reached' },
  takes: {
    asked: { symbol: 'v_set', of: 'speed', above: 0, means: 'speed asked for', slope: 'up', typical: [0.1, 0.3] },
    acceleration: { ...acceleration, slope: 'up', typical: [0.5, 2] },
    distance: { ...distance, slope: 'up', typical: [0.02, 0.6] },
  },
  steps: ({ asked: v, acceleration: a, distance: D }, step) => {
    const most = step('v_D', 'sqrt(a*D)', Math.sqrt(a * D), 'speed');
    return step('v', 'min(v_set, v_D)', Math.min(v, most), 'speed');
  },
  assumes: ['equal ramps up and down', 'from rest to rest'],
  source: [{ id: 'own-derivation', at: 'kinematics of constant acceleration' }],
  checked: [
    {
      kind: 'independent',
      against: 'a 50 mm travel at 1 m/s² peaks at 0.22361 m/s',
      source: { id: 'independent-computation', at: 'motion profiles' },
    },
  ],
  accuracy: 'exact for the profile',
});

/**
 * Time of a trapezoid from rest to rest.
 *
 * t_a = v/a
 * t = D/v + t_a
 * @param speed v, speed that is reached [m/s]
 * @param acceleration a, acceleration [m/s²]
 * @param distance D, length of the travel [m]
 * @returns t [s]
 * @throws OutsideRange when the travel ends before the speed is reached
 */
export const travelTime = formula({
  name: 'travel-time',
  gives: { symbol: 't', of: 'time', means: 'time of the whole travel' },
  takes: {
    speed: { symbol: 'v', of: 'speed', above: 0, means: 'speed that is reached', slope: 'down', typical: [0.1, 0.3] },
    acceleration: { ...acceleration, slope: 'down', typical: [0.5, 2] },
    distance: { ...distance, slope: 'up', typical: [0.3, 0.6] },
  },
  steps: ({ speed: v, acceleration: a, distance: D }, step) => {
    if (!(v * v <= a * D * (1 + 1e-9)))
      throw new OutsideRange('travel-time', 'v', v, 'v ≤ √(a·D)', 'the travel ends before this speed is reached');
    const ramp = step('t_a', 'v/a', v / a, 'time');
    return step('t', 'D/v + t_a', D / v + ramp, 'time');
  },
  assumes: ['equal ramps up and down', 'from rest to rest'],
  source: [{ id: 'own-derivation', at: 'kinematics of constant acceleration' }],
  checked: [
    {
      kind: 'independent',
      against: '0.5 m at 0.25 m/s and 1 m/s² takes 2.25 s',
      source: { id: 'independent-computation', at: 'motion profiles' },
    },
    {
      kind: 'published-secondary',
      against: '4 m in 1 s by thirds: 6 m/s, 18 m/s²',
      source: { id: 'profile-by-thirds', at: 'linear ramps' },
    },
  ],
  accuracy: 'exact for the profile',
});

/**
 * Way from the moment a signal changes until the axis stands.
 *
 * s = v·t + v^2/(2·a)
 * @param speed v, speed [m/s]
 * @param reaction t, time until the brake ramp begins [s]
 * @param acceleration a, acceleration of the brake ramp [m/s²]
 * @returns s [m]
 * @throws OutsideRange when an input lies outside its range
 */
export const stoppingDistance = formula({
  name: 'stopping-distance',
  gives: { symbol: 's', of: 'length', means: 'way until it stands' },
  takes: {
    speed: { symbol: 'v', of: 'speed', from: 0, means: 'speed', slope: 'up', typical: [0.05, 0.3] },
    reaction: {
      symbol: 't',
      of: 'time',
      from: 0,
      means: 'time until the brake ramp begins',
      slope: 'up',
      typical: [0.002, 0.05],
    },
    acceleration: { ...acceleration, means: 'acceleration of the brake ramp', slope: 'down', typical: [0.5, 3] },
  },
  steps: ({ speed: v, reaction: t, acceleration: a }, step) =>
    step('s', 'v*t + v^2/(2*a)', v * t + v ** 2 / (2 * a), 'length'),
  assumes: ['full speed until the brake ramp begins', 'no step is lost'],
  source: [{ id: 'own-derivation', at: 'kinematics of constant acceleration' }],
  checked: [{ kind: 'law', against: 'four times as far at twice the speed where the reaction takes no time' }],
  accuracy: 'exact for the ramp',
});

/**
 * Mean torque that heats a motor as much as the changing one.
 *
 * T_rms = √(sum((T^2)·t)/sum(t))
 * @param torques T, torque in each stretch [N·m]
 * @param times t, time of each stretch [s]
 * @returns T_rms [N·m]
 * @throws OutsideRange unless every torque lasts for some time
 */
export const rmsTorque = formula({
  name: 'rms-torque',
  gives: { symbol: 'T_rms', of: 'torque', means: 'root mean square torque' },
  takes: {
    torques: {
      symbol: 'T',
      of: 'torque',
      means: 'torque in each stretch',
      many: true,
      slope: 'either',
      typical: [0.01, 0.05],
    },
    times: {
      symbol: 't',
      of: 'time',
      above: 0,
      means: 'time of each stretch',
      many: true,
      slope: 'either',
      typical: [0.2, 2],
    },
  },
  steps: ({ torques, times }, step) => {
    if (torques.length !== times.length || torques.length === 0)
      throw new OutsideRange(
        'rms-torque',
        't',
        times.length,
        `${torques.length} stretches`,
        'every torque lasts for some time',
      );
    const heat = torques.reduce((sum, T, k) => sum + T ** 2 * times[k]!, 0);
    const all = times.reduce((sum, t) => sum + t, 0);
    return step('T_rms', 'sqrt(sum((T.^2).*t)/sum(t))', Math.sqrt(heat / all), 'torque');
  },
  assumes: ['constant torque in each stretch'],
  source: [{ id: 'own-derivation', at: 'mean of the square' }],
  checked: [
    {
      kind: 'independent',
      against: 'four stretches give 0.018553 N·m',
      source: { id: 'independent-computation', at: 'RMS torque' },
    },
  ],
  accuracy: 'exact for the stretches',
});
