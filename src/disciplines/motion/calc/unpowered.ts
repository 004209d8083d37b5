/** What a raised load does when the power goes. */
import { formula, NoSolution } from '../../../kernel/index.ts';
import { STANDARD_GRAVITY } from './axis-takes.ts';

/** A motor whose windings are shorted: what brakes it. */
const shorted = {
  constant: {
    symbol: 'K',
    of: 'torque-constant',
    above: 0,
    means: 'torque constant of a phase, peak',
    because: 'a rotor has a magnet',
    slope: 'up',
    typical: [0.2, 0.6],
  },
  teeth: {
    symbol: 'N_r',
    of: 'count',
    above: 0,
    means: 'electrical turns in one turn',
    because: 'a rotor has poles',
    slope: 'down',
    typical: [50, 100],
  },
  inductance: {
    symbol: 'L',
    of: 'inductance',
    above: 0,
    means: 'inductance of a phase',
    because: 'a winding has turns',
    slope: 'down',
    typical: [0.002, 0.012],
  },
} as const;

/**
 * Greatest torque with which a motor brakes when its windings are shorted.
 *
 * T_short = K^2/(2·N_r·L)
 * @param constant K, torque constant of a phase, peak [N·m/A]
 * @param teeth N_r, electrical turns in one turn [-]
 * @param inductance L, inductance of a phase [H]
 * @returns T_short [N·m]
 * @throws OutsideRange when an input lies outside its range
 */
export const shortedTorque = formula({
  name: 'shorted-torque',
  gives: { symbol: 'T_short', of: 'torque', means: 'greatest braking torque of shorted windings' },
  takes: {
    ...shorted,
  },
  steps: ({ constant: K, teeth: N, inductance: L }, step) =>
    step('T_short', 'K^2/(2*N_r*L)', K ** 2 / (2 * N * L), 'torque'),
  assumes: ['both phases shorted', 'sinusoidal back-EMF', 'inductance alike in every position'],
  source: [{ id: 'own-derivation', at: 'maximum of K²·ω·R/(R² + (N_r·ω·L)²) over ω' }],
  checked: [
    { kind: 'law', against: 'the highest point of the braking torque over speed' },
    {
      kind: 'independent',
      against: '0.405 N·m for 1.26 N·m, 2.8 A, 0.9 Ω, 2.5 mH, by both phases in time',
      source: { id: 'independent-computation', at: 'shorted windings' },
    },
  ],
  accuracy: 'about 20 %: iron saturates and inductance changes with position',
});

/**
 * Torque with which a motor brakes at a speed when its windings are shorted.
 *
 * T = K^2·ω·R/(R^2 + (N_r·ω·L)^2)
 * @param speed ω, turning speed of the motor [rad/s]
 * @param constant K, torque constant of a phase, peak [N·m/A]
 * @param teeth N_r, electrical turns in one turn [-]
 * @param inductance L, inductance of a phase [H]
 * @param resistance R, resistance of a phase and what shorts it [Ω]
 * @returns T [N·m]
 * @throws OutsideRange when an input lies outside its range
 */
export const brakingTorque = formula({
  name: 'braking-torque',
  gives: { symbol: 'T', of: 'torque', means: 'braking torque of shorted windings' },
  takes: {
    speed: {
      symbol: 'ω',
      of: 'angular-speed',
      from: 0,
      means: 'turning speed of the motor',
      slope: 'either',
      typical: [1, 40],
    },
    ...shorted,
    resistance: {
      symbol: 'R',
      of: 'resistance',
      above: 0,
      means: 'resistance of a phase and what shorts it',
      because: 'copper resists',
      slope: 'either',
      typical: [0.8, 4],
    },
  },
  steps: ({ speed: ω, constant: K, teeth: N, inductance: L, resistance: R }, step) =>
    step('T', 'K^2*ω*R/(R^2 + (N_r*ω*L)^2)', (K ** 2 * ω * R) / (R ** 2 + (N * ω * L) ** 2), 'torque'),
  assumes: ['both phases shorted', 'sinusoidal back-EMF', 'iron and bearings do not help'],
  source: [{ id: 'own-derivation', at: 'heat in the shorted windings over speed, both phases together' }],
  checked: [
    { kind: 'law', against: 'its highest point is K²/(2·N_r·L), at N_r·ω·L = R' },
    {
      kind: 'independent',
      against: '0.5 to 100 rad/s, by both phases in time',
      source: { id: 'independent-computation', at: 'shorted windings' },
    },
  ],
  accuracy: 'about 20 %: iron saturates and inductance changes with position',
});

/**
 * Speed at which a load sinks against a motor with shorted windings.
 *
 * ω = 2·T·R/(K^2 + √(K^4 - (2·T·N_r·L)^2))
 * v = ω·r
 * @param torque T, torque that the load puts on the motor [N·m]
 * @param constant K, torque constant of a phase, peak [N·m/A]
 * @param teeth N_r, electrical turns in one turn [-]
 * @param inductance L, inductance of a phase [H]
 * @param resistance R, resistance of a phase and what shorts it [Ω]
 * @param radius r, travel for each radian of the motor [m]
 * @returns v [m/s]
 * @throws NoSolution when the load is more than the windings can brake
 */
export const sinkingSpeed = formula({
  name: 'sinking-speed',
  gives: { symbol: 'v', of: 'speed', means: 'speed at which the load sinks' },
  takes: {
    torque: {
      symbol: 'T',
      of: 'torque',
      from: 0,
      means: 'torque that the load puts on the motor',
      slope: 'up',
      typical: [0.02, 0.15],
    },
    constant: {
      symbol: 'K',
      of: 'torque-constant',
      above: 0,
      means: 'torque constant of a phase, peak',
      because: 'a rotor has a magnet',
      slope: 'down',
      typical: [0.3, 0.6],
    },
    teeth: {
      symbol: 'N_r',
      of: 'count',
      above: 0,
      means: 'electrical turns in one turn',
      because: 'a rotor has poles',
      slope: 'up',
      typical: [25, 50],
    },
    inductance: {
      symbol: 'L',
      of: 'inductance',
      above: 0,
      means: 'inductance of a phase',
      because: 'a winding has turns',
      slope: 'up',
      typical: [0.002, 0.005],
    },
    resistance: {
      symbol: 'R',
      of: 'resistance',
      above: 0,
      means: 'resistance of a phase and what shorts it',
      because: 'copper resists',
      slope: 'up',
      typical: [0.8, 4],
    },
    radius: {
      symbol: 'r',
      of: 'length',
      above: 0,
      means: 'travel for each radian of the motor',
      because: 'the motor moves the load',
      slope: 'up',
      typical: [0.005, 0.02],
    },
  },
  steps: ({ torque: T, constant: K, teeth: N, inductance: L, resistance: R, radius: r }, step) => {
    const inner = K ** 4 - (2 * T * N * L) ** 2;
    if (!(inner >= 0))
      throw new NoSolution('sinking speed', 'the load is more than shorted windings can brake at any speed: it falls');
    const turning = step(
      'ω',
      '2*T*R/(K^2 + sqrt(K^4 - (2*T*N_r*L)^2))',
      (2 * T * R) / (K ** 2 + Math.sqrt(inner)),
      'angular-speed',
    );
    return step('v', 'ω*r', turning * r, 'speed');
  },
  assumes: ['both phases shorted', 'steady sinking', 'sinusoidal back-EMF', 'iron and bearings do not help'],
  source: [{ id: 'own-derivation', at: 'K²·ω·R/(R² + (N_r·ω·L)²) = T, the slower of two answers' }],
  checked: [
    { kind: 'law', against: 'the braking torque at that speed is the torque of the load' },
    { kind: 'law', against: 'T·R/K² for a small load' },
    {
      kind: 'independent',
      against:
        '0.3407, 1.9018 and 6.1480 rad/s at 0.0382, 0.2 and 0.4 N·m, by root finding; the faster answers run away',
      source: { id: 'independent-computation', at: 'shorted windings' },
    },
  ],
  accuracy:
    'about 30 %; a warm winding sinks faster; let go from rest, it is up to 2.5 times as fast for some hundredths of a second',
});

/**
 * How far a load comes down on its travel.
 *
 * H = D·sin(β)
 * @param travel D, travel of the axis [m]
 * @param incline β, rise of the axis above level [rad]
 * @returns H [m]
 * @throws OutsideRange when an input lies outside its range
 */
export const fallHeight = formula({
  name: 'fall-height',
  gives: { symbol: 'H', of: 'length', means: 'height of the fall' },
  takes: {
    travel: {
      symbol: 'D',
      of: 'length',
      above: 0,
      means: 'travel of the axis',
      because: 'it was raised',
      slope: 'up',
      typical: [0.2, 1],
    },
    incline: {
      symbol: 'β',
      of: 'angle',
      above: 0,
      to: Math.PI / 2,
      means: 'rise of the axis above level',
      because: 'nothing comes down a level axis',
      slope: 'up',
      typical: [0.1, Math.PI / 2],
    },
  },
  steps: ({ travel: D, incline: β }, step) => step('H', 'D*sin(β)', D * Math.sin(β), 'length'),
  assumes: ['from one end of the travel to the other'],
  source: [{ id: 'own-derivation', at: 'a slope' }],
  checked: [{ kind: 'law', against: 'half of the travel at 30°, all of it upright' }],
  accuracy: 'exact',
});

/**
 * Speed of a load that falls and spins its motor up.
 *
 * v = √(2·m·g·H/(m + J/r^2))
 * @param mass m, mass that falls [kg]
 * @param height H, height of the fall [m]
 * @param inertia J, rotor and drum [kg·m²]
 * @param radius r, travel for each radian of the motor [m]
 * @param gravity g, gravity [m/s²]
 * @returns v [m/s]
 * @throws OutsideRange when an input lies outside its range
 */
export const fallSpeed = formula({
  name: 'fall-speed',
  gives: { symbol: 'v', of: 'speed', means: 'speed at the end of the fall' },
  takes: {
    mass: {
      symbol: 'm',
      of: 'mass',
      above: 0,
      means: 'mass that falls',
      because: 'something hangs there',
      slope: 'up',
      typical: [0.5, 3],
    },
    height: {
      symbol: 'H',
      of: 'length',
      above: 0,
      means: 'height of the fall',
      because: 'it was raised',
      slope: 'up',
      typical: [0.2, 1],
    },
    inertia: { symbol: 'J', of: 'inertia', from: 0, means: 'rotor and drum', slope: 'down', typical: [1e-5, 6e-5] },
    radius: {
      symbol: 'r',
      of: 'length',
      above: 0,
      means: 'travel for each radian of the motor',
      because: 'the motor moves the load',
      slope: 'up',
      typical: [0.005, 0.02],
    },
    gravity: {
      symbol: 'g',
      of: 'acceleration',
      above: 0,
      otherwise: STANDARD_GRAVITY,
      means: 'gravity',
      because: 'nothing falls otherwise',
      slope: 'up',
      typical: [9.78, 9.83],
    },
  },
  steps: ({ mass: m, height: H, inertia: J, radius: r, gravity: g }, step) =>
    step('v', 'sqrt(2*m*g*H/(m + J/r^2))', Math.sqrt((2 * m * g * H) / (m + J / r ** 2)), 'speed'),
  assumes: ['detent averages out once it turns', 'friction is not counted on', 'the windings are open'],
  source: [{ id: 'own-derivation', at: 'energy' }],
  checked: [{ kind: 'law', against: 'free fall without inertia' }],
  accuracy: 'upper bound',
});

/**
 * Energy of motion with which a load lands.
 *
 * W = m·v^2/2
 * @param mass m, mass that lands [kg]
 * @param speed v, speed at landing [m/s]
 * @returns W [J]
 * @throws OutsideRange when an input lies outside its range
 */
export const landingEnergy = formula({
  name: 'landing-energy',
  gives: { symbol: 'W', of: 'energy', means: 'energy at landing' },
  takes: {
    mass: {
      symbol: 'm',
      of: 'mass',
      above: 0,
      means: 'mass that lands',
      because: 'something lands',
      slope: 'up',
      typical: [0.5, 3],
    },
    speed: { symbol: 'v', of: 'speed', from: 0, means: 'speed at landing', slope: 'up', typical: [0.05, 3] },
  },
  steps: ({ mass: m, speed: v }, step) => step('W', 'm*v^2/2', (m * v ** 2) / 2, 'energy'),
  assumes: ['the line goes slack at landing, so that rotor and drum do not push'],
  source: [{ id: 'own-derivation', at: 'energy of motion' }],
  checked: [{ kind: 'law', against: 'four times as much at twice the speed' }],
  accuracy: 'exact for the speed',
});
