/** Between the force on an axis and the shaft of its motor. */
import { formula } from '../../../kernel/index.ts';
import { efficiency, gravity, radius, share } from './axis-takes.ts';
import { current, torqueConstant } from './motor-takes.ts';

/**
 * Torque at one motor's shaft that drives an axis.
 *
 * T_load = s·F·r/η
 * T_spin = J·a/r
 * T = T_load + T_spin
 * @param force F, force that moves the axis [N]
 * @param radius r, travel for each radian of the motor [m]
 * @param efficiency η, efficiency between motor and load [-]
 * @param share s, share of the axis that this motor moves [-]
 * @param inertia J, rotor, pulley or drum [kg·m²]
 * @param acceleration a, acceleration [m/s²]
 * @returns T [N·m]
 * @throws OutsideRange when an input lies outside its range
 */
export const driveTorque = formula({
  name: 'drive-torque',
  gives: { symbol: 'T', of: 'torque', means: 'torque at the shaft' },
  takes: {
    force: { symbol: 'F', of: 'force', from: 0, means: 'force that moves the axis', slope: 'up', typical: [4, 20] },
    radius: { ...radius, slope: 'either', typical: [0.005, 0.02] },
    efficiency: { ...efficiency, slope: 'down', typical: [0.8, 0.95] },
    share: { ...share, slope: 'up', typical: [0.5, 1] },
    inertia: {
      symbol: 'J',
      of: 'inertia',
      from: 0,
      means: 'rotor, pulley or drum',
      slope: 'up',
      typical: [1e-5, 6e-5],
    },
    acceleration: { symbol: 'a', of: 'acceleration', from: 0, means: 'acceleration', slope: 'up', typical: [0, 2] },
  },
  steps: ({ force: F, radius: r, efficiency: η, share: s, inertia: J, acceleration: a }, step) => {
    const load = step('T_load', 's*F*r/η', (s * F * r) / η, 'torque');
    const spin = step('T_spin', 'J*a/r', (J * a) / r, 'torque');
    return step('T', 'T_load + T_spin', load + spin, 'torque');
  },
  assumes: ['no play', 'the motor drives the load, so that friction adds to its work'],
  source: [{ id: 'own-derivation', at: 'work of torque equals work of force over efficiency' }],
  checked: [
    {
      kind: 'independent',
      against: '4.3923 N on a 20-tooth 2 mm pulley: 0.027962 N·m, with η = 0.95 0.029434 N·m',
      source: { id: 'independent-computation', at: 'belt axis' },
    },
    {
      kind: 'independent',
      against: '0.6 kg on a 6.5 mm drum: 0.038246 N·m, and 0.042146 N·m at 1 m/s²',
      source: { id: 'independent-computation', at: 'hoist' },
    },
  ],
  accuracy: 'as good as the efficiency',
});

/**
 * Turning speed of the motor at a speed of the axis.
 *
 * ω = v/r
 * @param speed v, speed of the axis [m/s]
 * @param radius r, travel for each radian of the motor [m]
 * @returns ω [rad/s]
 * @throws OutsideRange when an input lies outside its range
 */
export const shaftSpeed = formula({
  name: 'shaft-speed',
  gives: { symbol: 'ω', of: 'angular-speed', means: 'turning speed of the motor' },
  takes: {
    speed: { symbol: 'v', of: 'speed', from: 0, means: 'speed of the axis', slope: 'up', typical: [0.05, 0.3] },
    radius: { ...radius, slope: 'down', typical: [0.005, 0.02] },
  },
  steps: ({ speed: v, radius: r }, step) => step('ω', 'v/r', v / r, 'angular-speed'),
  assumes: ['no slip'],
  source: [{ id: 'own-derivation', at: 'rolling without slip' }],
  checked: [
    {
      kind: 'published',
      against: '15 ft/s on a radius of 1.5 in turns at 19.1 rev/s',
      source: { id: 'rack-sizing-example', at: 'p. 25' },
    },
  ],
  accuracy: 'exact',
});

/**
 * Torque that weight and cord ask of a motor at rest, with no help from friction.
 *
 * T_rest = s·(m·g·sin(β) + F_cord)·r
 * @param mass m, mass that hangs on it [kg]
 * @param incline β, rise above level [rad]
 * @param pull F_cord, pull of a cord [N]
 * @param radius r, travel for each radian of the motor [m]
 * @param share s, share of the axis that this motor moves [-]
 * @param gravity g, gravity [m/s²]
 * @returns T_rest [N·m]
 * @throws OutsideRange when an input lies outside its range
 */
export const standingTorque = formula({
  name: 'standing-torque',
  gives: { symbol: 'T_rest', of: 'torque', means: 'torque at rest' },
  takes: {
    mass: { symbol: 'm', of: 'mass', above: 0, means: 'mass that hangs on it', slope: 'up', typical: [0.5, 5] },
    incline: {
      symbol: 'β',
      of: 'angle',
      from: 0,
      to: Math.PI / 2,
      means: 'rise above level',
      because: 'an axis runs between level and upright',
      slope: 'up',
      typical: [0, Math.PI / 2],
    },
    pull: { symbol: 'F_cord', of: 'force', from: 0, means: 'pull of a cord', slope: 'up', typical: [0, 3] },
    radius: { ...radius, slope: 'up', typical: [0.005, 0.02] },
    share: { ...share, slope: 'up', typical: [0.5, 1] },
    gravity: { ...gravity, slope: 'up' },
  },
  steps: ({ mass: m, incline: β, pull: P, radius: r, share: s, gravity: g }, step) =>
    step('T_rest', 's*(m*g*sin(β) + F_cord)*r', s * (m * g * Math.sin(β) + P) * r, 'torque'),
  assumes: ['friction is not counted on: a knock overcomes it'],
  source: [{ id: 'own-derivation', at: 'equilibrium' }],
  checked: [
    {
      kind: 'independent',
      against: '0.6 kg on a 6.5 mm drum: 0.038246 N·m',
      source: { id: 'independent-computation', at: 'hoist' },
    },
  ],
  accuracy: 'exact for the model; friction makes it less',
});

/**
 * Torque with which a load drives its motor backward.
 *
 * T_lost = T_rest·(1/η - 1)
 * T_back = max(0, T_rest - T_lost)
 * @param standing T_rest, torque at rest without friction [N·m]
 * @param efficiency η, efficiency between motor and load [-]
 * @returns T_back [N·m]
 * @throws OutsideRange when an input lies outside its range
 */
export const backDrivingTorque = formula({
  name: 'back-driving-torque',
  gives: { symbol: 'T_back', of: 'torque', means: 'torque that the load puts on the motor' },
  takes: {
    standing: {
      symbol: 'T_rest',
      of: 'torque',
      from: 0,
      means: 'torque at rest without friction',
      slope: 'up',
      typical: [0.02, 0.2],
    },
    efficiency: { ...efficiency, slope: 'up', typical: [0.6, 0.95] },
  },
  steps: ({ standing: T, efficiency: η }, step) => {
    const lost = step('T_lost', 'T_rest*(1/η - 1)', T * (1 / η - 1), 'torque');
    return step('T_back', 'max(0, T_rest - T_lost)', Math.max(0, T - lost), 'torque');
  },
  assumes: ['friction takes the same torque in both directions'],
  source: [{ id: 'own-derivation', at: 'balance of torques in both directions' }],
  checked: [
    {
      kind: 'published',
      against: 'nothing drives back through an efficiency of 50 % or less',
      source: { id: 'screw-statics', at: 'problem 3' },
    },
  ],
  accuracy: 'as good as the efficiency',
});

/**
 * Force on the load that a torque at the shaft can make.
 *
 * F = T/r
 * @param torque T, torque at the shaft [N·m]
 * @param radius r, travel for each radian of the motor [m]
 * @returns F [N]
 * @throws OutsideRange when an input lies outside its range
 */
export const forceFromTorque = formula({
  name: 'force-from-torque',
  gives: { symbol: 'F', of: 'force', means: 'force on the load' },
  takes: {
    torque: { symbol: 'T', of: 'torque', from: 0, means: 'torque at the shaft', slope: 'up', typical: [0.1, 1.2] },
    radius: { ...radius, slope: 'down', typical: [0.005, 0.02] },
  },
  steps: ({ torque: T, radius: r }, step) => step('F', 'T/r', T / r, 'force'),
  assumes: ['no friction on the way, which is the strongest case'],
  source: [{ id: 'own-derivation', at: 'work of torque equals work of force' }],
  checked: [{ kind: 'law', against: 'undoes the torque of that force' }],
  accuracy: 'upper bound',
});

/**
 * Torque of a motor with its current vector where it pulls hardest.
 *
 * T = K·I_p
 * @param constant K, torque per ampere of one phase, peak [N·m/A]
 * @param current I_p, peak phase current [A]
 * @returns T [N·m]
 * @throws OutsideRange when an input lies outside its range
 */
export const torqueAtCurrent = formula({
  name: 'torque-at-current',
  gives: { symbol: 'T', of: 'torque', means: 'torque at standstill at this current' },
  takes: { constant: { ...torqueConstant, slope: 'up' }, current: { ...current, slope: 'up' } },
  steps: ({ constant: K, current: I }, step) => step('T', 'K*I_p', K * I, 'torque'),
  assumes: ['the rail is high enough for the current', 'iron does not saturate'],
  source: [{ id: 'own-derivation', at: 'definition of the torque constant' }],
  checked: [{ kind: 'law', against: 'half the current pulls half as hard' }],
  accuracy: 'about 10 %, less near saturation',
});
