/** Torque of a two-phase hybrid stepper at speed, within the voltage of its bridge and the current of its driver. */
import { formula } from '../../../kernel/index.ts';
import { amplitude, current, inductance, resistance, rotorTeeth, speed, torqueConstant } from './motor-takes.ts';

/**
 * Pull-out torque where the voltage alone governs.
 *
 * T = K·(V/Z − K·ω·R/Z²), Z = √(R² + (N_r·ω·L)²)
 * @param constant K, torque per ampere [N·m/A]
 * @param loop R, phase resistance with cable and bridge [Ω]
 * @param inductance L, phase inductance [H]
 * @param teeth N_r, rotor teeth [-]
 * @param speed ω, shaft speed [rad/s]
 * @param volts V, phase voltage amplitude [V]
 * @returns T [N·m]; below zero where the EMF brakes more than the supply drives
 * @throws OutsideRange outside the ranges of its inputs
 */
export const voltagePullOut = formula({
  name: 'pull-out-by-voltage',
  gives: { symbol: 'T_v', of: 'torque', means: 'pull-out torque without a current limit' },
  takes: {
    constant: { ...torqueConstant, slope: 'either' },
    loop: { ...resistance, slope: 'either' },
    inductance: { ...inductance, slope: 'either' },
    teeth: { ...rotorTeeth, slope: 'either' },
    speed: { ...speed, slope: 'either' },
    volts: { ...amplitude, slope: 'up' },
  },
  steps: ({ constant: K, loop: R, inductance: L, teeth, speed: w, volts }, step) => {
    const X = step('X', 'N_r*ω*L', teeth * w * L, 'resistance');
    const Z = step('Z', 'sqrt(R^2 + X^2)', Math.hypot(R, X), 'resistance');
    const E = step('E', 'K*ω', K * w, 'voltage');
    return step('T_v', 'K*(V/Z - E*R/Z^2)', K * (volts / Z - (E * R) / Z ** 2), 'torque');
  },
  assumes: ['sinusoidal flux', 'inductance that does not vary with angle', 'no iron loss', 'steady speed'],
  source: [{ id: 'pull-out-derivation' }],
  checked: [
    { kind: 'independent', against: '60, 150, 300 and 600 rpm at 12 V, by brute force over the load angle' },
    { kind: 'independent', against: 'seven speeds at 12 V and at 48/π V, by a scan of the voltage circle' },
  ],
  accuracy: 'exact for the model',
});

/**
 * Pull-out torque of a chopper drive: the greatest torque over every current phasor that the voltage can drive and
 * the setting allows.
 *
 * T = K·max i_q over |i| ≤ I_p and |v| ≤ V, with v_d = R·i_d − X·i_q, v_q = R·i_q + X·i_d + K·ω, X = N_r·ω·L.
 * Both limits are circles; the best point is the top of one of them or where they cross.
 * @param constant K, torque per ampere [N·m/A]
 * @param loop R, phase resistance with cable and bridge [Ω]
 * @param inductance L, phase inductance [H]
 * @param teeth N_r, rotor teeth [-]
 * @param speed ω, shaft speed [rad/s]
 * @param volts V, phase voltage amplitude [V]
 * @param peak I_p, peak phase current [A]
 * @returns T [N·m], zero where no torque can be promised
 * @throws OutsideRange outside the ranges of its inputs
 */
export const pullOut = formula({
  name: 'pull-out-torque',
  gives: { symbol: 'T_p', of: 'torque', means: 'pull-out torque of the magnet' },
  takes: {
    constant: { ...torqueConstant, slope: 'either' },
    loop: { ...resistance, slope: 'down' },
    inductance: { ...inductance, slope: 'either' },
    teeth: { ...rotorTeeth, slope: 'either' },
    speed: { ...speed, slope: 'down' },
    volts: { ...amplitude, slope: 'up' },
    peak: { ...current, slope: 'up' },
  },
  steps: ({ constant: K, loop: R, inductance: L, teeth, speed: w, volts: V, peak: I }, step) => {
    const X = step('X', 'N_r*ω*L', teeth * w * L, 'resistance');
    const E = step('E', 'K*ω', K * w, 'voltage');
    const Z = step('Z', 'sqrt(R^2 + X^2)', Math.hypot(R, X), 'resistance');
    // All the set current across the rotor: what voltage does that take?
    const needed = step('V_i', 'sqrt((R*I_p + E)^2 + (X*I_p)^2)', Math.hypot(R * I + E, X * I), 'voltage');
    // All the voltage at its best angle: which current does that drive?
    const across = step('i_v', 'V/Z - E*R/Z^2', V / Z - (E * R) / Z ** 2, 'current');
    const driven = step('I_v', 'sqrt(i_v^2 + (E*X/Z^2)^2)', Math.hypot(across, (E * X) / Z ** 2), 'current');
    // Both at their limits: along the line between the two centres, and square to it.
    const along = step(
      'h',
      'E > 0 ? (I_p^2 - (V/Z)^2 + (E/Z)^2)/(2*E/Z) : 0',
      E > 0 ? (I ** 2 - (V / Z) ** 2 + (E / Z) ** 2) / ((2 * E) / Z) : 0,
      'current',
    );
    const both = step(
      'i_b',
      'h^2 < I_p^2 ? (X*sqrt(max(0, I_p^2 - h^2)) - R*h)/Z : 0',
      along ** 2 < I ** 2 ? (X * Math.sqrt(Math.max(0, I ** 2 - along ** 2)) - R * along) / Z : 0,
      'current',
    );
    const best = step(
      'i_q',
      'V_i <= V ? I_p : (I_v <= I_p ? i_v : i_b)',
      needed <= V ? I : driven <= I ? across : both,
      'current',
    );
    return step('T_p', 'K*max(0, i_q)', K * Math.max(0, best), 'torque');
  },
  assumes: [
    'sinusoidal flux and currents',
    'inductance that does not vary with angle',
    'no iron loss',
    'steady speed',
    'the current may be turned against the rotor as the load asks',
  ],
  source: [{ id: 'pull-out-derivation' }],
  checked: [
    { kind: 'independent', against: '60, 150, 300 and 600 rpm at 12 V with the current limit, by brute force' },
    {
      kind: 'independent',
      against:
        'both limits at once, by a scan of both circles: 1.121968504 N·m at 12 V and 200 rpm, 1.186830824 N·m at 48/π V and 250 rpm',
    },
    { kind: 'independent', against: 'motors whose torque at speed falls as their holding torque rises' },
    { kind: 'independent', against: 'search over a grid of current phasors' },
    { kind: 'independent', against: 'both phases with a switching chopper, integrated in time by a general library' },
    { kind: 'law', against: 'at rest it is K times the lesser of the setting and V/R' },
  ],
  accuracy: 'exact for the model; iron and bearing drag come off separately',
});

/**
 * Torque left at the shaft: pull-out less detent and iron drag.
 *
 * T = max(0, T_p − T_d − B·ω)
 * @param magnet T_p, pull-out torque of the magnet [N·m]
 * @param detent T_d, detent torque, taken whole for hysteresis and bearings [N·m]
 * @param iron B, eddy-current drag [N·m·s/rad]
 * @param speed ω, shaft speed [rad/s]
 * @returns T [N·m]
 * @throws OutsideRange for negative drags
 */
export const shaftTorque = formula({
  name: 'shaft-torque',
  gives: { symbol: 'T', of: 'torque', means: 'torque that the shaft can give at speed' },
  takes: {
    magnet: {
      symbol: 'T_p',
      of: 'torque',
      means: 'pull-out torque of the magnet',
      from: 0,
      because: 'less than none is not promised',
      slope: 'up',
      typical: [0.1, 1.2],
    },
    detent: {
      symbol: 'T_d',
      of: 'torque',
      means: 'detent torque',
      from: 0,
      because: 'a drag takes torque and gives none',
      slope: 'down',
      typical: [0.01, 0.08],
    },
    iron: {
      symbol: 'B',
      of: 'rotary-damping',
      means: 'drag of the iron with speed',
      from: 0,
      because: 'a drag takes torque and gives none',
      slope: 'down',
      typical: [1e-4, 1e-3],
    },
    speed: { ...speed, slope: 'down' },
  },
  steps: ({ magnet, detent, iron, speed: w }, step) => {
    const drag = step('T_f', 'T_d + B*ω', detent + iron * w, 'torque');
    return step('T', 'max(0, T_p - T_f)', Math.max(0, magnet - drag), 'torque');
  },
  assumes: ['the whole detent torque is lost while it runs; the loss in it is less'],
  source: [{ id: 'pull-out-derivation', at: 'drag' }],
  checked: [{ kind: 'law', against: 'at rest only the detent comes off' }],
  accuracy: 'careful',
});

/**
 * Speed up to which the whole set current can stand across the rotor.
 *
 * V² = (R·I_p + K·ω)² + (N_r·ω·L·I_p)², solved for ω
 * @param constant K, torque per ampere [N·m/A]
 * @param loop R, phase resistance with cable and bridge [Ω]
 * @param inductance L, phase inductance [H]
 * @param teeth N_r, rotor teeth [-]
 * @param volts V, phase voltage amplitude [V]
 * @param peak I_p, peak phase current [A]
 * @returns ω [rad/s], zero when the rail cannot drive the current even at rest
 * @throws OutsideRange outside the ranges of its inputs
 */
export const kneeSpeed = formula({
  name: 'knee-speed',
  gives: { symbol: 'ω_k', of: 'angular-speed', means: 'speed up to which the set current is reached' },
  takes: {
    constant: { ...torqueConstant, slope: 'down' },
    loop: { ...resistance, slope: 'down' },
    inductance: { ...inductance, slope: 'down' },
    teeth: { ...rotorTeeth, slope: 'down' },
    volts: { ...amplitude, slope: 'up' },
    peak: { ...current, slope: 'down' },
  },
  steps: ({ constant: K, loop: R, inductance: L, teeth, volts: V, peak: I }, step) => {
    const perSpeed = step('ψ', 'sqrt(K^2 + (N_r*L*I_p)^2)', Math.hypot(K, teeth * L * I), 'emf-constant');
    const u = step('u', 'K*R*I_p/ψ', (K * R * I) / perSpeed, 'voltage');
    return step(
      'ω_k',
      'V > R*I_p ? (sqrt(u^2 + V^2 - (R*I_p)^2) - u)/ψ : 0',
      V > R * I ? (Math.sqrt(u ** 2 + V ** 2 - (R * I) ** 2) - u) / perSpeed : 0,
      'angular-speed',
    );
  },
  assumes: ['current at right angles to the rotor flux', 'no iron loss'],
  source: [{ id: 'pull-out-derivation' }],
  checked: [
    { kind: 'independent', against: '157.3 rpm at 12 V, 355.2 rpm at 24 V for 1.26 N·m, 2.8 A, 0.9 Ω, 2.5 mH' },
  ],
  accuracy: 'exact for the model',
});

/**
 * Rule of thumb for the greatest speed of a stepper: the time in which a current can turn round.
 *
 * ω = 2π·V / (2·L·I·n)
 * @param volts V, supply [V]
 * @param inductance L, phase inductance [H]
 * @param rated I, phase current [A]
 * @param steps n, full steps a turn [-]
 * @returns ω [rad/s]
 * @throws OutsideRange unless all are above zero
 */
export const ruleOfThumbSpeed = formula({
  name: 'stepper-speed-rule-of-thumb',
  gives: { symbol: 'ω_t', of: 'angular-speed', means: 'greatest speed by the rule of thumb' },
  takes: {
    volts: { ...amplitude, means: 'supply', slope: 'up' },
    inductance: { ...inductance, slope: 'down' },
    rated: { ...current, symbol: 'I', means: 'phase current', slope: 'down' },
    steps: {
      symbol: 'n',
      of: 'count',
      means: 'full steps a turn',
      above: 0,
      because: 'a stepper steps',
      slope: 'down',
      otherwise: 200,
      typical: [200, 400],
    },
  },
  steps: ({ volts, inductance: L, rated, steps }, step) =>
    step('ω_t', '2*pi*V/(2*L*I*n)', (2 * Math.PI * volts) / (2 * L * rated * steps), 'angular-speed'),
  assumes: ['no back-EMF, no resistance'],
  source: [{ id: 'stepper-rule-of-thumb' }],
  checked: [{ kind: 'published', against: 'V/(2·L·I·n) turns a second', source: { id: 'stepper-rule-of-thumb' } }],
  accuracy: 'rule of thumb: above the knee of a real motor; torque does not end there, it falls on',
});

/**
 * How much of its torque a motor uses at one point of a travel.
 *
 * u = T / C
 * @param asked T, torque asked [N·m]
 * @param given C, torque that the motor has at that speed [N·m]
 * @returns u [-]; a very large number where torque is asked and none is there
 * @throws OutsideRange for negative torques
 */
export const torqueUse = formula({
  name: 'torque-use',
  gives: { symbol: 'u', of: 'ratio', means: 'share of the motor’s torque that is used' },
  takes: {
    asked: {
      symbol: 'T',
      of: 'torque',
      means: 'torque asked',
      from: 0,
      because: 'a demand that drives itself is none',
      slope: 'up',
      typical: [0.02, 0.3],
    },
    given: {
      symbol: 'C',
      of: 'torque',
      means: 'torque that the motor has there',
      from: 0,
      because: 'less than none is not promised',
      slope: 'down',
      typical: [0.2, 1],
    },
  },
  // A motor with nothing left is far past its limit; a micro-newton-metre in its place keeps an order among failures.
  steps: ({ asked, given }, step) => step('u', 'T/max(C, 1e-6)', asked / Math.max(given, 1e-6), 'ratio'),
  assumes: ['demand and torque at the same speed'],
  source: [{ id: 'pull-out-derivation' }],
  checked: [{ kind: 'law', against: 'twice the demand is twice the use' }],
  accuracy: 'exact',
});
