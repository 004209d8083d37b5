/** Where a stepper on a saturated chopper excites its own hunting, and how far that grows on one travel. */
import { formula } from '../../../kernel/index.ts';
import {
  amplitude,
  current,
  inductance,
  inertia,
  resistance,
  rotorTeeth,
  speed,
  torqueConstant,
} from './motor-takes.ts';

/**
 * Speed above which the chopper no longer regulates an unloaded motor: its current would need more than the rail.
 *
 * V² = (R·I_p)² + (N_r·ω)²·(L·I_p + K/N_r)², solved for ω
 * @param constant K, torque per ampere [N·m/A]
 * @param loop R, phase resistance with cable and bridge [Ω]
 * @param inductance L, phase inductance [H]
 * @param teeth N_r, rotor teeth [-]
 * @param volts V, phase voltage amplitude [V]
 * @param peak I_p, peak phase current [A]
 * @returns ω_s [rad/s]; small, not zero, when the rail cannot drive the current even at rest
 * @throws OutsideRange outside the ranges of its inputs
 */
export const saturationSpeed = formula({
  name: 'chopper-saturation-speed',
  gives: { symbol: 'ω_s', of: 'angular-speed', means: 'speed above which the chopper no longer regulates' },
  takes: {
    constant: { ...torqueConstant, slope: 'down' },
    loop: { ...resistance, slope: 'down' },
    inductance: { ...inductance, slope: 'down' },
    teeth: { ...rotorTeeth, slope: 'down' },
    volts: { ...amplitude, slope: 'up' },
    peak: { ...current, slope: 'down' },
  },
  steps: ({ constant: K, loop: R, inductance: L, teeth, volts: V, peak: I }, step) => {
    // A rail that cannot drive the current even at rest still regulates a little, at the crossing of each sinusoid.
    const left = step(
      'V_x',
      'sqrt(max(0.01*V^2, V^2 - (R*I_p)^2))',
      Math.sqrt(Math.max(0.01 * V ** 2, V ** 2 - (R * I) ** 2)),
      'voltage',
    );
    return step('ω_s', 'V_x/(N_r*L*I_p + K)', left / (teeth * L * I + K), 'angular-speed');
  },
  assumes: ['no load: the current stands in line with the rotor flux, the case in which it saturates first'],
  source: [{ id: 'mid-band-derivation' }],
  checked: [{ kind: 'law', against: 'at that speed the voltage of the whole set current is the rail’s' }],
  accuracy: 'exact for the model',
});

/** The resistance that makes hunting grow fastest is tan(22.5°) of the reactance. */
const WORST = Math.SQRT2 - 1;

/**
 * How far hunting grows on one travel, as a power of e: up the ramp, at speed, and down again.
 *
 * Hunting is damped by B and by the slope of the drag that the EMF makes, T_e = K²·R·ω/(R² + X²), X = N_r·ω·L, which
 * falls with speed once X > R: B_e = −dT_e/dω = K²·R·(X² − R²)/(R² + X²)². Growth is (B_e − B)/(2·J) each second.
 * Where a smaller resistance than R would make it grow faster, that is taken: B_e = K²/(4·X) for X < 2.41·R.
 * @param constant K, torque per ampere [N·m/A]
 * @param loop R, phase resistance with cable and bridge [Ω]
 * @param inductance L, phase inductance [H]
 * @param teeth N_r, rotor teeth [-]
 * @param inertia J, rotor and load [kg·m²]
 * @param damping B, drag that rises with speed [N·m·s/rad]
 * @param hunting h, share of this growth that the decay of the driver leaves [-]
 * @param saturation ω_s, speed above which the chopper no longer regulates [rad/s]
 * @param speed ω, greatest speed of the travel [rad/s]
 * @param ramp t_r, time from rest to that speed [s]
 * @param total t, time of the whole travel [s]
 * @returns G [-], zero where nothing grows
 * @throws OutsideRange outside the ranges of its inputs
 */
export const midBandGrowth = formula({
  name: 'mid-band-growth',
  gives: { symbol: 'G', of: 'ratio', means: 'growth of hunting on one travel, as a power of e' },
  takes: {
    constant: { ...torqueConstant, slope: 'up' },
    loop: { ...resistance, slope: 'up' },
    inductance: { ...inductance, slope: 'either' },
    teeth: { ...rotorTeeth, slope: 'either' },
    inertia: { ...inertia, slope: 'down' },
    damping: {
      symbol: 'B',
      of: 'rotary-damping',
      means: 'drag at the shaft that rises with speed',
      above: 0,
      because: 'iron brakes a little',
      slope: 'down',
      typical: [1e-4, 3e-3],
    },
    hunting: {
      symbol: 'h',
      of: 'ratio',
      means: 'share of the growth that the decay of the driver leaves',
      from: 0,
      to: 1,
      because: 'a decay damps or leaves alone',
      slope: 'up',
      otherwise: 1,
      typical: [0.2, 1],
    },
    saturation: {
      symbol: 'ω_s',
      of: 'angular-speed',
      means: 'speed above which the chopper no longer regulates',
      above: 0,
      because: 'every rail drives some current at rest',
      slope: 'down',
      typical: [5, 40],
    },
    speed: { ...speed, from: undefined, above: 0, means: 'greatest speed of the travel', slope: 'either' },
    ramp: {
      symbol: 't_r',
      of: 'time',
      means: 'time from rest to the greatest speed',
      above: 0,
      because: 'nothing starts in no time',
      slope: 'either',
      typical: [0.1, 1],
    },
    total: {
      symbol: 't',
      of: 'time',
      means: 'time of the whole travel',
      above: 0,
      because: 'nothing travels in no time',
      slope: 'up',
      typical: [2.5, 6],
    },
  },
  steps: (given, step) => {
    const { constant: K, loop: R, inductance: L, teeth: N, inertia: J, damping: B, speed: w } = given;
    const x = step('x', 'B*R/K^2', (B * R) / K ** 2, 'ratio');
    const turn = step('ω_c', 'R/((sqrt(2) - 1)*N_r*L)', R / (WORST * N * L), 'angular-speed');
    // The fall of the drag meets B where the one or the other form of it does.
    const end = step(
      'X_e',
      'x < (sqrt(2) - 1)/4 ? R*sqrt((1 - 2*x + sqrt(1 - 8*x))/(2*x)) : K^2/(4*B)',
      x < WORST / 4 ? R * Math.sqrt((1 - 2 * x + Math.sqrt(1 - 8 * x)) / (2 * x)) : K ** 2 / (4 * B),
      'resistance',
    );
    const first = step('ω_1', 'min(ω, ω_s)', Math.min(w, given.saturation), 'angular-speed');
    const last = step(
      'ω_2',
      'max(ω_1, min(ω, X_e/(N_r*L)))',
      Math.max(first, Math.min(w, end / (N * L))),
      'angular-speed',
    );
    const low = step(
      'T_a',
      'K^2/(4*N_r*L)*log(min(ω_2, max(ω_1, ω_c))/ω_1)',
      (K ** 2 / (4 * N * L)) * Math.log(Math.min(last, Math.max(first, turn)) / first),
      'torque',
    );
    // In the order of the text: where both ends nearly meet, only rounding is left.
    const slipped = (at: number) => at / (R ** 2 + (N * at * L) ** 2);
    const from = step('ω_3', 'max(ω_1, ω_c)', Math.max(first, turn), 'angular-speed');
    const to = step('ω_4', 'max(ω_2, ω_3)', Math.max(last, from), 'angular-speed');
    const high = step(
      'T_b',
      'K^2*R*(ω_3/(R^2 + (N_r*ω_3*L)^2) - ω_4/(R^2 + (N_r*ω_4*L)^2))',
      K ** 2 * R * (slipped(from) - slipped(to)),
      'torque',
    );
    const ramps = step(
      'G_r',
      't_r/(J*ω)*(T_a + T_b - B*(ω_2 - ω_1))',
      (given.ramp / (J * w)) * (low + high - B * (last - first)),
      'ratio',
    );
    const X = step('X', 'N_r*ω*L', N * w * L, 'resistance');
    const fall = step(
      'B_e',
      'ω < ω_c ? K^2/(4*X) : K^2*R*(X^2 - R^2)/(R^2 + X^2)^2',
      w < turn ? K ** 2 / (4 * X) : (K ** 2 * R * (X ** 2 - R ** 2)) / (R ** 2 + X ** 2) ** 2,
      'rotary-damping',
    );
    const cruise = step(
      'G_c',
      'ω > ω_1 ? max(0, t - 2*t_r)*max(0, B_e - B)/(2*J) : 0',
      w > first ? (Math.max(0, given.total - 2 * given.ramp) * Math.max(0, fall - B)) / (2 * J) : 0,
      'ratio',
    );
    return step('G', 'h*max(0, G_r + G_c)', given.hunting * Math.max(0, ramps + cruise), 'ratio');
  },
  assumes: [
    'hunting is slow against the electrical angle',
    'growth does not depend on the load',
    'the regulated chopper below ω_s does not excite it',
    'Coulomb friction neither damps nor excites a shaft that keeps turning one way',
  ],
  source: [{ id: 'mid-band-derivation' }],
  checked: [
    { kind: 'independent', against: 'eigenvalues of the motor linearised about steady running, 400 random motors' },
    { kind: 'independent', against: 'growth at 600, 1200 and 2400 rpm of a motor on 12 V, by numpy' },
    {
      kind: 'independent',
      against: 'both phases with a switching chopper and a free rotor, integrated in time by a general library',
    },
    { kind: 'law', against: 'twice the inertia halves it; enough drag ends it' },
  ],
  accuracy:
    'for X > 2.41·R mostly within 10 %, and hunting grows at most 1.5 times as fast, while K·N_r/J is under 5 % of the electrical frequency squared; with a stiffer magnetic spring it may grow twice as fast, or not at all; below X = 2.41·R careful',
});
