/** Inputs that several motor formulas share, with one symbol each. */
import type { Take } from '../../../kernel/index.ts';

export const torqueConstant = {
  symbol: 'K',
  of: 'torque-constant',
  means: 'torque per ampere of one phase, peak',
  above: 0,
  because: 'a motor without magnet torque turns nothing',
  typical: [0.1, 0.6],
} as const satisfies Take;

export const resistance = {
  symbol: 'R',
  of: 'resistance',
  means: 'resistance of one phase with cable and bridge',
  above: 0,
  because: 'copper has resistance',
  typical: [0.9, 6],
} as const satisfies Take;

export const inductance = {
  symbol: 'L',
  of: 'inductance',
  means: 'inductance of one phase',
  above: 0,
  because: 'a winding has inductance',
  typical: [1e-3, 15e-3],
} as const satisfies Take;

export const rotorTeeth = {
  symbol: 'N_r',
  of: 'count',
  means: 'rotor teeth, 50 for a step of 1.8°',
  above: 0,
  because: 'the electrical angle is the shaft angle times the teeth',
  typical: [50, 100],
} as const satisfies Take;

export const amplitude = {
  symbol: 'V',
  of: 'voltage',
  means: 'amplitude of the voltage on one phase',
  above: 0,
  because: 'without a supply nothing is driven',
  typical: [11, 36],
} as const satisfies Take;

export const current = {
  symbol: 'I_p',
  of: 'current',
  means: 'peak phase current that the driver is set to',
  above: 0,
  because: 'without current there is no torque',
  typical: [0.5, 3],
} as const satisfies Take;

export const speed = {
  symbol: 'ω',
  of: 'angular-speed',
  means: 'speed of the motor shaft',
  from: 0,
  because: 'the sense of turning is left out; both are alike',
  typical: [5, 60],
} as const satisfies Take;

export const inertia = {
  symbol: 'J',
  of: 'inertia',
  means: 'inertia at the shaft, rotor and load together',
  above: 0,
  because: 'everything that turns has inertia',
  typical: [3e-5, 3e-4],
} as const satisfies Take;
