/** From a motor's plate to the constants of the winding as it is connected. */
import { formula } from '../../../kernel/index.ts';
import { rotorTeeth, torqueConstant } from './motor-takes.ts';

const turns = {
  symbol: 'n',
  of: 'ratio',
  means: 'turns in series, as connected over as measured',
  above: 0,
  because: 'a winding has turns',
  typical: [0.5, 2],
} as const;

const copper = {
  symbol: 'ρ',
  of: 'ratio',
  means: 'resistance, as connected over as measured',
  above: 0,
  because: 'copper has resistance',
  typical: [0.25, 4],
} as const;

/**
 * Torque per ampere of one phase from the holding torque with both phases at rated current.
 *
 * K = T_h / (√2 · I_r)
 * @param holding T_h, holding torque with both phases on [N·m]
 * @param rated I_r, rated current of each phase with both on [A]
 * @returns K [N·m/A], numerically the peak back-EMF constant [V·s/rad]
 * @throws OutsideRange unless both are above zero
 */
export const torqueConstantOf = formula({
  name: 'stepper-torque-constant',
  gives: { symbol: 'K', of: 'torque-constant', means: 'torque per ampere of one phase, peak' },
  takes: {
    holding: {
      symbol: 'T_h',
      of: 'torque',
      means: 'holding torque, both phases at rated current',
      above: 0,
      because: 'a stepper that holds nothing drives nothing',
      slope: 'up',
      typical: [0.3, 2],
    },
    rated: {
      symbol: 'I_r',
      of: 'current',
      means: 'rated current of each phase, both on',
      above: 0,
      because: 'the torque belongs to a current',
      slope: 'down',
      typical: [0.5, 4],
    },
  },
  steps: ({ holding, rated }, step) =>
    step('K', 'T_h/(sqrt(2)*I_r)', holding / (Math.SQRT2 * rated), 'torque-constant'),
  assumes: ['torque in proportion to current up to the rated one', 'the torque of the two phases is 90° apart'],
  source: [
    { id: 'stepper-drive-manuals', at: 'back-EMF constant from holding torque and nominal current' },
    { id: 'pull-out-derivation' },
  ],
  checked: [
    {
      kind: 'published',
      against: 'RMS back-EMF constant T/(2·I) of the manuals, which is K/√2: 0.225 V·s/rad for 1.26 N·m and 2.8 A',
      source: { id: 'stepper-drive-manuals' },
    },
    { kind: 'law', against: 'both phases at the rated current give the holding torque back' },
  ],
  accuracy: 'as good as the holding torque; magnetic saturation near the rated current takes some per cent',
});

/**
 * Flux that the magnet sends through one phase, per electrical radian.
 *
 * λ = K / N_r
 * @param constant K, torque per ampere [N·m/A]
 * @param teeth N_r, rotor teeth [-]
 * @returns λ [V·s], amplitude
 * @throws OutsideRange unless both are above zero
 */
export const fluxLinkageOf = formula({
  name: 'stepper-flux-linkage',
  gives: { symbol: 'λ', of: 'emf-constant', means: 'flux linkage of the magnet with one phase, peak' },
  takes: { constant: { ...torqueConstant, slope: 'up' }, teeth: { ...rotorTeeth, slope: 'down' } },
  steps: ({ constant, teeth }, step) => step('λ', 'K/N_r', constant / teeth, 'emf-constant'),
  assumes: ['flux linkage is a sinusoid of the shaft angle'],
  source: [{ id: 'pull-out-derivation' }],
  checked: [{ kind: 'law', against: 'the EMF at shaft speed ω is λ·N_r·ω = K·ω' }],
  accuracy: 'exact for the model',
});

/**
 * Resistance of a phase as its coils are connected.
 *
 * R = R_m · ρ
 * @param measured R_m, resistance as measured or printed [Ω]
 * @param copper ρ, resistance ratio of the two connections [-]
 * @returns R [Ω]
 * @throws OutsideRange unless both are above zero
 */
export const windingResistance = formula({
  name: 'winding-resistance',
  gives: { symbol: 'R_w', of: 'resistance', means: 'resistance of one phase as connected' },
  takes: {
    measured: {
      symbol: 'R_m',
      of: 'resistance',
      means: 'phase resistance as measured',
      above: 0,
      because: 'copper has resistance',
      slope: 'up',
      typical: [0.5, 8],
    },
    copper: { ...copper, slope: 'up' },
  },
  steps: ({ measured, copper: ratio }, step) => step('R_w', 'R_m*ρ', measured * ratio, 'resistance'),
  assumes: ['both halves of a phase are alike'],
  source: [{ id: 'pull-out-derivation', at: 'windings' }],
  checked: [{ kind: 'law', against: 'two halves in series are twice, in parallel half of one' }],
  accuracy: 'exact for equal halves',
});

/**
 * Inductance of a phase as its coils are connected: it goes with the square of the turns in series.
 *
 * L = L_m · n²
 * @param measured L_m, inductance as measured or printed [H]
 * @param turns n, ratio of turns in series [-]
 * @returns L [H]
 * @throws OutsideRange unless both are above zero
 */
export const windingInductance = formula({
  name: 'winding-inductance',
  gives: { symbol: 'L_w', of: 'inductance', means: 'inductance of one phase as connected' },
  takes: {
    measured: {
      symbol: 'L_m',
      of: 'inductance',
      means: 'phase inductance as measured',
      above: 0,
      because: 'a winding has inductance',
      slope: 'up',
      typical: [1e-3, 10e-3],
    },
    turns: { ...turns, slope: 'up' },
  },
  steps: ({ measured, turns: ratio }, step) => step('L_w', 'L_m*n^2', measured * ratio ** 2, 'inductance'),
  assumes: ['both halves of a phase share all their flux'],
  source: [{ id: 'pull-out-derivation', at: 'windings' }],
  checked: [
    { kind: 'law', against: 'the full coil has four times the inductance of a half; halves in parallel have one' },
  ],
  accuracy: 'leakage between the halves takes some per cent',
});

/**
 * Torque per ampere of a phase as its coils are connected.
 *
 * K = K_m · n
 * @param measured K_m, constant of the connection that was measured [N·m/A]
 * @param turns n, ratio of turns in series [-]
 * @returns K [N·m/A]
 * @throws OutsideRange unless both are above zero
 */
export const windingTorqueConstant = formula({
  name: 'winding-torque-constant',
  gives: { symbol: 'K', of: 'torque-constant', means: 'torque per ampere of one phase as connected, peak' },
  takes: {
    measured: { ...torqueConstant, symbol: 'K_m', slope: 'up' },
    turns: { ...turns, slope: 'up' },
  },
  steps: ({ measured, turns: ratio }, step) => step('K', 'K_m*n', measured * ratio, 'torque-constant'),
  assumes: ['both halves of a phase are alike'],
  source: [{ id: 'pull-out-derivation', at: 'windings' }],
  checked: [{ kind: 'law', against: 'at equal copper heat every connection gives the same torque per conductor' }],
  accuracy: 'exact for equal halves',
});

/**
 * Rated current of a phase as its coils are connected: the one that heats the copper as much as the measured one did.
 *
 * I = I_m / √ρ
 * @param measured I_m, rated current of the connection on the plate [A]
 * @param copper ρ, resistance ratio of the two connections [-]
 * @returns I_r [A], each phase, both on
 * @throws OutsideRange unless both are above zero
 */
export const windingCurrent = formula({
  name: 'winding-current',
  gives: { symbol: 'I_r', of: 'current', means: 'rated current of each phase as connected, both on' },
  takes: {
    measured: {
      symbol: 'I_m',
      of: 'current',
      means: 'rated current as printed',
      above: 0,
      because: 'a winding is rated for a current',
      slope: 'up',
      typical: [0.5, 4],
    },
    copper: { ...copper, slope: 'down' },
  },
  steps: ({ measured, copper: ratio }, step) => step('I_r', 'I_m/sqrt(ρ)', measured / Math.sqrt(ratio), 'current'),
  assumes: ['the rating is one of copper heat'],
  source: [{ id: 'pull-out-derivation', at: 'windings' }],
  checked: [{ kind: 'law', against: 'I²R is the same before and after' }],
  accuracy: 'exact for the copper; iron losses are left out',
});

/**
 * Resistance of a warm copper winding.
 *
 * R = R_20 · (1 + α·(θ − 20 °C))
 * @param cold R_20, resistance at 20 °C [Ω]
 * @param temperature θ, temperature of the copper [K]
 * @param coefficient α, change per kelvin at 20 °C [1/K]
 * @returns R [Ω]
 * @throws OutsideRange below −50 °C and above 200 °C, where the straight line was not drawn
 */
export const warmResistance = formula({
  name: 'warm-copper-resistance',
  gives: { symbol: 'R_θ', of: 'resistance', means: 'resistance of one phase, warm' },
  takes: {
    cold: {
      symbol: 'R_20',
      of: 'resistance',
      means: 'resistance of one phase at 20 °C',
      above: 0,
      because: 'copper has resistance',
      slope: 'up',
      typical: [0.5, 8],
    },
    temperature: {
      symbol: 'θ',
      of: 'temperature',
      means: 'temperature of the winding',
      from: 223.15,
      to: 473.15,
      because: 'the straight line is for ordinary temperatures',
      slope: 'up',
      typical: [293.15, 373.15],
    },
    coefficient: {
      symbol: 'α',
      of: 'temperature-coefficient',
      means: 'temperature coefficient of copper at 20 °C',
      from: 0,
      to: 0.005,
      otherwise: 0.00393,
      because: 'metals for wire lie there',
      slope: 'either',
      typical: [0.0038, 0.004],
    },
  },
  steps: ({ cold, temperature, coefficient }, step) =>
    step('R_θ', 'R_20*(1 + α*(θ - 293.15))', cold * (1 + coefficient * (temperature - 293.15)), 'resistance'),
  assumes: ['pure copper', 'the whole winding at one temperature'],
  source: [{ id: 'iec-60028' }],
  checked: [{ kind: 'law', against: 'nothing changes at 20 °C; a rise of 100 K adds 39.3 %' }],
  accuracy: '1 % between 0 and 130 °C',
});

/**
 * Rotor teeth of a two-phase hybrid motor from its full step.
 *
 * N_r = π / (2·φ): four full steps are one electrical turn
 * @param step φ, full step [rad]
 * @returns N_r [-]
 * @throws OutsideRange for no step
 */
export const rotorTeethOf = formula({
  name: 'rotor-teeth',
  gives: { symbol: 'N_r', of: 'count', means: 'rotor teeth' },
  takes: {
    full: {
      symbol: 'φ',
      of: 'angle',
      means: 'full step',
      above: 0,
      because: 'a stepper steps',
      slope: 'down',
      typical: [Math.PI / 200, Math.PI / 100],
    },
  },
  steps: ({ full }, step) => step('N_r', 'pi/(2*φ)', Math.PI / (2 * full), 'count'),
  assumes: ['two phases'],
  source: [{ id: 'pull-out-derivation' }],
  checked: [{ kind: 'law', against: '50 teeth at 1.8°, 100 at 0.9°' }],
  accuracy: 'exact',
});
