/** What a motor without a plate is rated for, from its size and one measured number. */
import { formula } from '../../../kernel/index.ts';

const heat = {
  symbol: 'P_r',
  of: 'power',
  means: 'copper heat of both phases at the rated current',
  above: 0,
  because: 'a current heats',
  typical: [5, 16],
} as const;

const ohms = {
  symbol: 'R_m',
  of: 'resistance',
  means: 'phase resistance as measured',
  above: 0,
  because: 'copper has resistance',
  typical: [0.5, 8],
} as const;

/**
 * Rated current of a winding from its resistance and the copper heat that a motor of its size bears.
 *
 * I_m = √(P_r / (2·R_m))
 * @param heat P_r, copper heat of both phases at the rated current [W]
 * @param resistance R_m, one phase [Ω]
 * @returns I_m [A], each phase, both on
 * @throws OutsideRange unless both are above zero
 */
export const ratedFromHeat = formula({
  name: 'rated-current-from-heat',
  gives: { symbol: 'I_m', of: 'current', means: 'rated current of each phase, both on' },
  takes: { heat: { ...heat, slope: 'up' }, resistance: { ...ohms, slope: 'down' } },
  steps: ({ heat: P, resistance: R }, step) => step('I_m', 'sqrt(P_r/(2*R_m))', Math.sqrt(P / (2 * R)), 'current'),
  assumes: ['motors of one size bear one heat, however they are wound'],
  source: [{ id: 'pull-out-derivation', at: 'heat' }, { id: 'motor-experience' }],
  checked: [{ kind: 'independent', against: '2.8 A in 0.9 Ω is 14.11 W' }],
  accuracy: 'as good as the heat; a tenth or two',
});

/**
 * Resistance of a winding from its rated current and the copper heat that a motor of its size bears.
 *
 * R_m = P_r / (2·I_m²)
 * @param heat P_r, copper heat of both phases at the rated current [W]
 * @param rated I_m, each phase, both on [A]
 * @returns R_m [Ω]
 * @throws OutsideRange unless both are above zero
 */
export const resistanceFromHeat = formula({
  name: 'phase-resistance-from-heat',
  gives: { symbol: 'R_m', of: 'resistance', means: 'resistance of one phase' },
  takes: {
    heat: { ...heat, slope: 'up' },
    rated: {
      symbol: 'I_m',
      of: 'current',
      means: 'rated current of each phase, both on',
      above: 0,
      because: 'a winding is rated for a current',
      slope: 'down',
      typical: [0.5, 4],
    },
  },
  steps: ({ heat: P, rated: I }, step) => step('R_m', 'P_r/(2*I_m^2)', P / (2 * I ** 2), 'resistance'),
  assumes: ['motors of one size bear one heat, however they are wound'],
  source: [{ id: 'pull-out-derivation', at: 'heat' }, { id: 'motor-experience' }],
  checked: [{ kind: 'independent', against: '14.11 W at 2.8 A is 0.9 Ω' }],
  accuracy: 'as good as the heat; a quarter',
});

/**
 * Inductance of a winding from its resistance and the electrical time of a motor of its size.
 *
 * L_m = τ · R_m
 * @param time τ, electrical time [s]
 * @param resistance R_m, one phase [Ω]
 * @returns L_m [H]
 * @throws OutsideRange unless both are above zero
 */
export const inductanceFromTime = formula({
  name: 'phase-inductance-from-time',
  gives: { symbol: 'L_m', of: 'inductance', means: 'inductance of one phase' },
  takes: {
    time: {
      symbol: 'τ',
      of: 'time',
      means: 'electrical time of a phase',
      above: 0,
      because: 'a winding has inductance',
      slope: 'up',
      typical: [1e-3, 5e-3],
    },
    resistance: { ...ohms, slope: 'up' },
  },
  steps: ({ time, resistance: R }, step) => step('L_m', 'τ*R_m', time * R, 'inductance'),
  assumes: ['motors of one size have one electrical time, however they are wound'],
  source: [{ id: 'pull-out-derivation', at: 'windings' }, { id: 'motor-experience' }],
  checked: [{ kind: 'independent', against: '2.778 ms and 0.9 Ω are 2.5 mH' }],
  accuracy: 'as good as the time; a third',
});
