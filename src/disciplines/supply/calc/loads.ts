/** Loads added up: on a rail, of a supply, over the modes. */
import { formula, type Take } from '../../../kernel/index.ts';
import { amperes, power, volts } from './takes.ts';

const duty = {
  symbol: 'd',
  of: 'ratio',
  means: 'share of the time of each mode',
  from: 0,
  to: 1,
  because: 'a mode lasts between none and all of the time',
  many: true,
  typical: [0.1, 0.6],
} as const satisfies Take;

const efficiency = {
  symbol: 'η',
  of: 'ratio',
  means: 'efficiency at this load',
  above: 0,
  to: 1,
  because: 'a supply gives no more than it takes',
  typical: [0.7, 0.95],
} as const satisfies Take;

/**
 * Currents of one rail together.
 *
 * I_s = Σ I
 * @param currents I, each [A]
 * @returns I_s [A]
 * @throws OutsideRange for a negative current
 */
export const currentTogether = formula({
  name: 'rail-current',
  gives: { symbol: 'I_s', of: 'current', means: 'current of the rail' },
  takes: { currents: { ...amperes, many: true, slope: 'up' } },
  steps: ({ currents }, step) =>
    step(
      'I_s',
      'sum(I)',
      currents.reduce((a, b) => a + b, 0),
      'current',
    ),
  assumes: ['direct currents'],
  source: [{ id: 'own-derivation', at: 'loads' }],
  checked: [{ kind: 'law', against: 'Kirchhoff’s current law' }],
  accuracy: 'exact',
});

/**
 * Powers together.
 *
 * P_s = Σ P
 * @param powers P, each [W]
 * @returns P_s [W]
 * @throws OutsideRange for a negative power
 */
export const powerTogether = formula({
  name: 'power-together',
  gives: { symbol: 'P_s', of: 'power', means: 'powers together' },
  takes: { powers: { ...power, many: true, slope: 'up' } },
  steps: ({ powers }, step) =>
    step(
      'P_s',
      'sum(P)',
      powers.reduce((a, b) => a + b, 0),
      'power',
    ),
  assumes: ['all at the same time'],
  source: [{ id: 'own-derivation', at: 'loads' }],
  checked: [{ kind: 'law', against: 'energy is kept' }],
  accuracy: 'exact',
});

/**
 * Power of a current at a voltage.
 *
 * P = V·I
 * @param rail V [V]
 * @param current I [A]
 * @returns P [W]
 * @throws OutsideRange for no voltage
 */
export const loadPower = formula({
  name: 'load-power',
  gives: { symbol: 'P', of: 'power', means: 'power of the load' },
  takes: { rail: { ...volts, slope: 'up' }, current: { ...amperes, slope: 'up' } },
  steps: ({ rail, current }, step) => step('P', 'V*I', rail * current, 'power'),
  assumes: ['direct current'],
  source: [{ id: 'own-derivation', at: 'loads' }],
  checked: [{ kind: 'law', against: '1 V at 1 A is 1 W' }],
  accuracy: 'exact',
});

/**
 * Shares of the time together.
 *
 * D = Σ d
 * @param shares d, share of the time of each mode [-]
 * @returns D [-]
 * @throws OutsideRange for a share above all
 */
export const sharesTogether = formula({
  name: 'shares-together',
  gives: { symbol: 'D', of: 'ratio', means: 'shares of the time together' },
  takes: { shares: { ...duty, slope: 'up' } },
  steps: ({ shares }, step) =>
    step(
      'D',
      'sum(d)',
      shares.reduce((a, b) => a + b, 0),
      'ratio',
    ),
  assumes: ['no two modes at the same time'],
  source: [{ id: 'own-derivation', at: 'loads' }],
  checked: [{ kind: 'law', against: 'one after the other they fill the time' }],
  accuracy: 'exact',
});

/**
 * Mean power over modes by their shares of the time.
 *
 * P_m = Σ d·P / Σ d
 * @param duties d, share of the time of each mode [-]
 * @param powers P, power in each mode, in the same order [W]
 * @returns P_m [W]
 * @throws OutsideRange when no mode lasts any time
 */
export const meanPower = formula({
  name: 'mean-power-over-modes',
  gives: { symbol: 'P_m', of: 'power', means: 'mean power over the modes' },
  takes: { duties: { ...duty, slope: 'one-way' }, powers: { ...power, many: true, slope: 'up' } },
  steps: ({ duties, powers }, step) => {
    const all = step(
      'D',
      'sum(d)',
      duties.reduce((a, b) => a + b, 0),
      'ratio',
    );
    const weighted = duties.reduce((sum, d, i) => sum + d * (powers[i] ?? NaN), 0);
    return step('P_m', 'dot(d, P)/D', weighted / all, 'power');
  },
  assumes: ['the modes are all that happens; shares that do not add up to one are scaled'],
  source: [{ id: 'own-derivation', at: 'loads' }],
  checked: [{ kind: 'law', against: 'a mean lies between the least and the greatest' }],
  accuracy: 'exact',
});

/**
 * Current that heats as much as the currents of several modes do, by their shares of the time.
 *
 * I_q = √(Σ d·I²/Σ d)
 * @param duties d, share of the time of each mode [-]
 * @param currents I, in each mode, in the same order [A]
 * @returns I_q [A]
 * @throws OutsideRange when no mode lasts any time
 */
export const heatingCurrent = formula({
  name: 'heating-current-over-modes',
  gives: { symbol: 'I_q', of: 'current', means: 'current that heats as much' },
  takes: { duties: { ...duty, slope: 'one-way' }, currents: { ...amperes, many: true, slope: 'up' } },
  steps: ({ duties, currents }, step) => {
    const all = step(
      'D',
      'sum(d)',
      duties.reduce((a, b) => a + b, 0),
      'ratio',
    );
    const weighted = duties.reduce((sum, d, i) => sum + d * (currents[i] ?? NaN) ** 2, 0);
    return step('I_q', 'sqrt(dot(d, I.^2)/D)', Math.sqrt(weighted / all), 'current');
  },
  assumes: ['modes that are short beside the warming', 'shares that do not add up to one are scaled'],
  source: [{ id: 'own-derivation', at: 'loads' }],
  checked: [{ kind: 'independent', against: '0.29155 A for 0.7 A at 10 % and 0.2 A at 90 %' }],
  accuracy: 'exact for the model',
});

/**
 * Power that a supply or converter takes for what it gives.
 *
 * P_in = P/η + P_0
 * @param output P, given [W]
 * @param efficiency η at this load, its own consumption without load left out [-]
 * @param idle P_0, taken without any load [W]
 * @returns P_in [W]
 * @throws OutsideRange for an efficiency above one
 */
export const inputPower = formula({
  name: 'supply-input-power',
  gives: { symbol: 'P_in', of: 'power', means: 'power that the supply takes' },
  takes: {
    output: { ...power, means: 'power that the supply gives', slope: 'up' },
    efficiency: { ...efficiency, slope: 'down' },
    idle: { ...power, symbol: 'P_0', means: 'power taken without load', slope: 'up', otherwise: 0, typical: [0.1, 5] },
  },
  steps: ({ output, efficiency: eta, idle }, step) => step('P_in', 'P/η + P_0', output / eta + idle, 'power'),
  assumes: ['one efficiency over the loads that occur, beside a constant part'],
  source: [{ id: 'efficiency-labels' }, { id: 'own-derivation', at: 'loads' }],
  checked: [{ kind: 'independent', against: '60 W from an 87 % supply takes 68.97 W, from an 82 % supply 73.17 W' }],
  accuracy: 'efficiency at light load is often far lower: P_0 stands for it',
});

/**
 * Demand as a share of a limit, for rules that may be met in either of two ways.
 *
 * u = I/I_l; a limit of nothing is used up by any current
 * @param demand I [A]
 * @param limit I_l [A]
 * @returns u [-]
 * @throws OutsideRange for negative currents
 */
export const currentShare = formula({
  name: 'current-share',
  gives: { symbol: 'u', of: 'ratio', means: 'share of the limit' },
  takes: {
    demand: { ...amperes, slope: 'up' },
    limit: { ...amperes, symbol: 'I_l', means: 'limit', slope: 'down' },
  },
  steps: ({ demand, limit }, step) => step('u', 'I/max(I_l, 1e-9)', demand / Math.max(limit, 1e-9), 'ratio'),
  assumes: ['both in the same scenario'],
  source: [{ id: 'own-derivation', at: 'loads' }],
  checked: [{ kind: 'law', against: 'a limit met exactly is one' }],
  accuracy: 'exact',
});
