/** What comes back to a rail when moving masses are braked or lowered, and where it goes. */
import { formula, NoSolution, type Take } from '../../../kernel/index.ts';
import { capacitance, power, volts } from './takes.ts';

const energy = {
  symbol: 'E',
  of: 'energy',
  means: 'energy that comes back',
  from: 0,
  because: 'what is taken is reckoned apart',
  typical: [0.01, 5],
} as const satisfies Take;

/**
 * Time in which a steady deceleration stops a speed.
 *
 * t = v/a
 * @param speed v [m/s]
 * @param acceleration a [m/s²]
 * @returns t [s]
 * @throws OutsideRange for no deceleration
 */
export const rampTime = formula({
  name: 'braking-time',
  gives: { symbol: 't', of: 'time', means: 'time of the braking' },
  takes: {
    speed: {
      symbol: 'v',
      of: 'speed',
      means: 'speed before braking',
      from: 0,
      because: 'the sense is left out',
      slope: 'up',
      typical: [0.05, 0.4],
    },
    acceleration: {
      symbol: 'a',
      of: 'acceleration',
      means: 'deceleration',
      above: 0,
      because: 'braking slows',
      slope: 'down',
      typical: [0.3, 2],
    },
  },
  steps: ({ speed, acceleration }, step) => step('t', 'v/a', speed / acceleration, 'time'),
  assumes: ['steady deceleration; a rounded ramp takes longer and gives back less'],
  source: [{ id: 'own-derivation', at: 'stop' }],
  checked: [{ kind: 'law', against: 'a·t is the speed that is lost' }],
  accuracy: 'exact',
});

/**
 * Energy that a braked load gives back after the motor’s own losses.
 *
 * E = max(0, (J_l + J_r)·ω²/2 + T_g·ω·t/2 − P_l·t)
 * @param load J_l, at the motor without its rotor [kg·m²]
 * @param rotor J_r [kg·m²]
 * @param gravity T_g, of gravity at the motor, downhill [N·m]
 * @param speed ω, before braking [rad/s]
 * @param losses P_l, copper and cable while braking [W]
 * @param time t, of the braking [s]
 * @returns E [J]
 * @throws OutsideRange for negative parts
 */
export const brakingEnergy = formula({
  name: 'braking-energy',
  gives: { symbol: 'E', of: 'energy', means: 'energy that comes back' },
  takes: {
    load: {
      symbol: 'J_l',
      of: 'inertia',
      means: 'inertia at the motor without its rotor',
      from: 0,
      because: 'everything that turns has inertia',
      slope: 'up',
      typical: [5e-5, 5e-3],
    },
    rotor: {
      symbol: 'J_r',
      of: 'inertia',
      means: 'inertia of the rotor',
      from: 0,
      because: 'everything that turns has inertia',
      slope: 'up',
      typical: [5e-6, 1e-4],
    },
    speed: {
      symbol: 'ω',
      of: 'angular-speed',
      means: 'speed before braking',
      from: 0,
      because: 'the sense of turning is left out',
      slope: 'up',
      typical: [10, 80],
    },
    gravity: {
      symbol: 'T_g',
      of: 'torque',
      means: 'torque of gravity at the motor, downhill',
      from: 0,
      because: 'gravity pulls one way',
      otherwise: 0,
      slope: 'up',
      typical: [0, 0.3],
    },
    losses: { ...power, symbol: 'P_l', means: 'losses while braking', slope: 'down', otherwise: 0, typical: [0.5, 5] },
    time: {
      symbol: 't',
      of: 'time',
      means: 'time of the braking',
      from: 0,
      because: 'time goes forward',
      slope: 'either',
      typical: [0.05, 0.5],
    },
  },
  steps: ({ load, rotor, speed, gravity, losses, time }, step) => {
    const kinetic = step('E_k', '(J_l + J_r)*ω^2/2', ((load + rotor) * speed ** 2) / 2, 'energy');
    const fallen = step('E_g', 'T_g*ω*t/2', (gravity * speed * time) / 2, 'energy');
    return step('E', 'max(0, E_k + E_g - P_l*t)', Math.max(0, kinetic + fallen - losses * time), 'energy');
  },
  assumes: ['steady deceleration', 'friction left out', 'losses that do not change over the braking'],
  source: [{ id: 'regeneration-notes' }, { id: 'own-derivation', at: 'stop' }],
  checked: [{ kind: 'law', against: 'energy is kept; without losses all of it comes back' }],
  accuracy: 'careful: friction takes part of it',
});

/**
 * Power that a load gives back while it is lowered at a steady speed.
 *
 * P_b = max(0, η·T·ω − P_l)
 * @param torque T, of gravity at the motor [N·m]
 * @param speed ω, of the motor [rad/s]
 * @param efficiency η, from load to motor [-]
 * @param losses P_l, copper, cable and driver [W]
 * @returns P_b [W]
 * @throws OutsideRange for a negative torque
 */
export const loweringPower = formula({
  name: 'lowering-power',
  gives: { symbol: 'P_b', of: 'power', means: 'power that comes back' },
  takes: {
    torque: {
      symbol: 'T',
      of: 'torque',
      means: 'torque of gravity at the motor',
      from: 0,
      because: 'gravity pulls one way',
      slope: 'up',
      typical: [0.05, 0.6],
    },
    speed: {
      symbol: 'ω',
      of: 'angular-speed',
      means: 'speed of the motor',
      from: 0,
      because: 'the sense of turning is left out',
      slope: 'up',
      typical: [5, 40],
    },
    efficiency: {
      symbol: 'η',
      of: 'ratio',
      means: 'efficiency from load to motor',
      from: 0,
      to: 1,
      because: 'nothing gives more than it has',
      otherwise: 1,
      slope: 'up',
      typical: [0.7, 1],
    },
    losses: { ...power, symbol: 'P_l', means: 'losses while lowering', slope: 'down', otherwise: 0, typical: [0.5, 5] },
  },
  steps: ({ torque, speed, efficiency, losses }, step) =>
    step('P_b', 'max(0, η*T*ω - P_l)', Math.max(0, efficiency * torque * speed - losses), 'power'),
  assumes: ['steady speed'],
  source: [{ id: 'own-derivation', at: 'stop' }],
  checked: [{ kind: 'law', against: 'energy is kept: m·g·v without losses' }],
  accuracy: 'careful: friction takes part of it',
});

/**
 * Voltage of a rail whose supply takes nothing back, after energy came back.
 *
 * V_b = √(V² + 2·E/C)
 * @param rail V, before [V]
 * @param energy E, that comes back [J]
 * @param capacitance C, all capacitors on the rail [F]
 * @returns V_b [V]
 * @throws OutsideRange for no capacitor
 */
export const voltageAfterBraking = formula({
  name: 'voltage-after-braking',
  gives: { symbol: 'V_b', of: 'voltage', means: 'voltage of the rail after braking' },
  takes: {
    rail: { ...volts, slope: 'up' },
    energy: { ...energy, slope: 'up' },
    capacitance: { ...capacitance, slope: 'down' },
  },
  steps: ({ rail, energy: E, capacitance: C }, step) =>
    step('V_b', 'sqrt(V^2 + 2*E/C)', Math.sqrt(rail ** 2 + (2 * E) / C), 'voltage'),
  assumes: [
    'no other load takes it',
    'the supply’s own capacitor counts only when it stands on the rail without a diode',
  ],
  source: [{ id: 'regeneration-notes' }, { id: 'own-derivation', at: 'stop' }],
  checked: [{ kind: 'law', against: 'energy is kept in ½·C·V²' }],
  accuracy: 'careful',
});

/**
 * Voltage of a rail that a clamp holds down.
 *
 * V_c = min(V_b, V_k)
 * @param lifted V_b, to which the rail would be lifted [V]
 * @param clamp V_k, voltage at which the clamp conducts [V]
 * @param rail V, of the supply [V]
 * @returns V_c [V]
 * @throws NoSolution when the clamp conducts below what the supply gives, and burns that
 */
export const clampedVoltage = formula({
  name: 'clamped-voltage',
  gives: { symbol: 'V_c', of: 'voltage', means: 'voltage of the rail with its clamp' },
  takes: {
    lifted: {
      ...volts,
      symbol: 'V_b',
      means: 'voltage to which the rail would be lifted',
      slope: 'up',
      typical: [24, 60],
    },
    clamp: { ...volts, symbol: 'V_k', means: 'voltage at which the clamp conducts', slope: 'up', typical: [36, 45] },
    rail: { ...volts, slope: 'either', typical: [12, 30] },
  },
  steps: ({ lifted, clamp, rail }, step) => {
    if (!(clamp > rail))
      throw new NoSolution(
        'the clamp',
        'the clamp conducts at what the supply gives anyway, and burns its power for good',
      );
    return step('V_c', 'min(V_b, V_k)', Math.min(lifted, clamp), 'voltage');
  },
  assumes: ['the clamp bears the current of the braking; what it burns in the mean is a question of its own'],
  source: [{ id: 'regeneration-notes' }, { id: 'own-derivation', at: 'stop' }],
  checked: [{ kind: 'law', against: 'a clamp that conducts lets nothing rise further' }],
  accuracy: 'that of the clamp',
});

/**
 * Mean power of a clamp that holds the rail down.
 *
 * P_k = max(0, E − C·(V_k² − V²)/2)/t
 * @param energy E, that comes back each time [J]
 * @param capacitance C, all capacitors on the rail [F]
 * @param clamp V_k, voltage at which the clamp conducts [V]
 * @param rail V, before [V]
 * @param every t, from one time to the next [s]
 * @returns P_k [W]
 * @throws OutsideRange for no capacitor
 */
export const clampPower = formula({
  name: 'clamp-power',
  gives: { symbol: 'P_k', of: 'power', means: 'mean power of the clamp' },
  takes: {
    energy: { ...energy, slope: 'up' },
    capacitance: { ...capacitance, slope: 'down' },
    clamp: { ...volts, symbol: 'V_k', means: 'voltage at which the clamp conducts', slope: 'down', typical: [36, 45] },
    rail: { ...volts, slope: 'up', typical: [12, 30] },
    every: {
      symbol: 't',
      of: 'time',
      means: 'from one time to the next',
      above: 0,
      because: 'one braking follows another',
      slope: 'down',
      typical: [0.5, 20],
    },
  },
  steps: ({ energy: E, capacitance: C, clamp, rail, every }, step) => {
    const stored = step('E_c', 'C*(V_k^2 - V^2)/2', (C * (clamp ** 2 - rail ** 2)) / 2, 'energy');
    return step('P_k', 'max(0, E - E_c)/t', Math.max(0, E - stored) / every, 'power');
  },
  assumes: ['the rail has settled again before the next time', 'the clamp conducts above the rail'],
  source: [{ id: 'regeneration-notes' }, { id: 'own-derivation', at: 'stop' }],
  checked: [{ kind: 'law', against: 'energy is kept' }],
  accuracy: 'careful',
});

/**
 * Energies that come back at once.
 *
 * E_s = Σ E
 * @param energies E, each [J]
 * @returns E_s [J]
 * @throws OutsideRange for a negative energy
 */
export const energyTogether = formula({
  name: 'energy-together',
  gives: { symbol: 'E_s', of: 'energy', means: 'energy that comes back at once' },
  takes: { energies: { ...energy, many: true, slope: 'up' } },
  steps: ({ energies }, step) =>
    step(
      'E_s',
      'sum(E)',
      energies.reduce((a, b) => a + b, 0),
      'energy',
    ),
  assumes: ['everything that moves at the same time brakes together'],
  source: [{ id: 'own-derivation', at: 'stop' }],
  checked: [{ kind: 'law', against: 'energy is kept' }],
  accuracy: 'exact',
});
