/** Inputs that several formulas of the supply share, with one symbol each. */
import type { Take } from '../../../kernel/index.ts';

export const power = {
  symbol: 'P',
  of: 'power',
  means: 'power',
  from: 0,
  because: 'what is taken is counted as positive',
  typical: [1, 60],
} as const satisfies Take;

export const volts = {
  symbol: 'V',
  of: 'voltage',
  means: 'voltage of the rail',
  above: 0,
  because: 'a rail has a voltage',
  typical: [5, 36],
} as const satisfies Take;

export const amperes = {
  symbol: 'I',
  of: 'current',
  means: 'current',
  from: 0,
  because: 'what is taken is counted as positive',
  typical: [0.1, 5],
} as const satisfies Take;

export const peakCurrent = {
  symbol: 'I_p',
  of: 'current',
  means: 'peak phase current',
  above: 0,
  because: 'a driver that gives no current drives nothing',
  typical: [0.5, 3],
} as const satisfies Take;

export const phases = {
  symbol: 'p',
  of: 'count',
  means: 'mean square of both phase currents over the square of the peak: 1 in microsteps, 2 in full steps',
  from: 1,
  to: 2,
  because: 'two phases carry it',
  otherwise: 1,
  typical: [1, 2],
} as const satisfies Take;

export const ambient = {
  symbol: 'θ_a',
  of: 'temperature',
  means: 'air temperature',
  from: 233.15,
  to: 373.15,
  because: 'the air of a machine lies between −40 and 100 °C',
  typical: [281.15, 313.15],
} as const satisfies Take;

export const coefficient = {
  symbol: 'α',
  of: 'temperature-coefficient',
  means: 'temperature coefficient of copper',
  from: 0,
  to: 0.006,
  because: 'metals for wire lie there',
  typical: [0.0035, 0.0042],
} as const satisfies Take;

export const inside = {
  symbol: 'R_1',
  of: 'thermal-resistance',
  means: 'thermal resistance from winding to case',
  from: 0,
  because: 'heat flows from warm to cold',
  typical: [0.5, 2],
} as const satisfies Take;

export const outside = {
  symbol: 'R_2',
  of: 'thermal-resistance',
  means: 'thermal resistance from case to air',
  above: 0,
  because: 'no case is cooled without limit',
  typical: [2, 6],
} as const satisfies Take;

export const capacitance = {
  symbol: 'C',
  of: 'capacitance',
  means: 'capacitance on the rail',
  above: 0,
  because: 'every rail has some',
  typical: [100e-6, 5e-3],
} as const satisfies Take;

export const cold = {
  ...power,
  symbol: 'P_0',
  means: 'copper heat with the winding as cold as the air',
  typical: [1, 12],
} as const satisfies Take;

export const hot = {
  ...power,
  symbol: 'P_h',
  means: 'copper heat that has to leave the hottest phase',
  typical: [1, 12],
} as const satisfies Take;

export const iron = {
  ...power,
  symbol: 'P_i',
  means: 'heat that arises in iron and case',
  otherwise: 0,
  typical: [0.1, 4],
} as const satisfies Take;
