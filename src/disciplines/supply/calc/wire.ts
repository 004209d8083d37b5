/** What a wire bears: for good, as an overload, and for seconds. */
import { formula, type Take } from '../../../kernel/index.ts';
import { amperes } from './takes.ts';

const capacity = {
  symbol: 'I_z',
  of: 'current',
  means: 'current that the wire bears for good',
  from: 0,
  because: 'in air as hot as its insulation bears, a wire bears nothing',
  typical: [3, 15],
} as const satisfies Take;

const conducting = {
  symbol: 'c',
  of: 'ratio',
  means: 'share of the section that conducts like copper',
  above: 0,
  to: 1,
  because: 'no wire conducts better than copper',
  typical: [0.4, 1],
} as const satisfies Take;

const insulation = (symbol: string, means: string, typical: readonly [number, number]) =>
  ({
    symbol,
    of: 'temperature',
    means,
    from: 223.15,
    to: 723.15,
    because: 'insulation lives there',
    typical,
  }) as const satisfies Take;

/**
 * How much less a wire bears in hotter air than its table is for, or more in air down to 30 °C; colder air counts as 30 °C.
 *
 * k_θ = √((θ_m − max(θ_a, 30 °C))/(θ_m − θ_r))
 * @param most θ_m, most that the insulation bears [K]
 * @param ambient θ_a, air round the wire [K]
 * @param reference θ_r, air for which the table is [K]
 * @returns k_θ [-]
 * @throws OutsideRange where the air is as hot as the insulation bears
 */
export const ambientFactor = formula({
  name: 'wire-ambient-factor',
  gives: { symbol: 'k_θ', of: 'ratio', means: 'factor for the temperature of the air' },
  takes: {
    most: { ...insulation('θ_m', 'most that the insulation bears', [343.15, 363.15]), slope: 'either' },
    ambient: { ...insulation('θ_a', 'air round the wire', [293.15, 328.15]), slope: 'down' },
    reference: { ...insulation('θ_r', 'air for which the table is', [303.15, 313.15]), slope: 'up' },
  },
  steps: ({ most, ambient, reference }, step) => {
    const air = step('θ_c', 'max(θ_a, 303.15)', Math.max(ambient, 303.15), 'temperature');
    return step(
      'k_θ',
      'sqrt(max(0, θ_m - θ_c)/(θ_m - θ_r))',
      Math.sqrt(Math.max(0, most - air) / (most - reference)),
      'ratio',
    );
  },
  assumes: ['heat goes with the square of the current and flows in proportion to the rise'],
  source: [{ id: 'iec-60204-currents' }, { id: 'own-derivation', at: 'protection' }],
  checked: [
    { kind: 'law', against: 'the rise of the insulation is used up in full in either air' },
    {
      kind: 'memory',
      against: '1.15 at 30 °C, 0.82 at 50 °C, 0.58 at 60 °C for 70 °C insulation in a table for 40 °C',
    },
  ],
  accuracy: '2 % up to 60 °C; careful in the cold, where the tables stop',
});

/**
 * Copper whose conductance the wire has, over the copper that its section would be: less than all of it for
 * copper-clad aluminium and for thin strands. A wire as its standard allows it counts as whole.
 *
 * c = min(1, 1.16·ρ/(r·A))
 * @param perLength r, resistance of one conductor per length at 20 °C [Ω/m]
 * @param area A, section of the conductor [m²]
 * @returns c [-]
 * @throws OutsideRange for no conductor
 */
export const conductingShare = formula({
  name: 'conducting-share',
  gives: { symbol: 'c', of: 'ratio', means: 'share of the section that conducts like copper' },
  takes: {
    perLength: {
      symbol: 'r',
      of: 'resistance-per-length',
      means: 'resistance of one conductor per length',
      above: 0,
      because: 'every conductor has some',
      slope: 'down',
      typical: [0.02, 0.2],
    },
    area: {
      symbol: 'A',
      of: 'conductor-area',
      means: 'section of the conductor',
      above: 0,
      because: 'a current needs metal',
      slope: 'down',
      typical: [0.2e-6, 2.5e-6],
    },
  },
  steps: ({ perLength, area }, step) =>
    step('c', 'min(1, 1.16*1.7241e-8/(r*A))', Math.min(1, (1.16 * 1.7241e-8) / (perLength * area)), 'ratio'),
  assumes: ['16 % above the resistance of pure copper is what standards allow a fine-stranded wire'],
  source: [{ id: 'iec-60228-resistance' }],
  checked: [
    {
      kind: 'published-secondary',
      against: 'greatest resistances of fine-stranded copper from 0.5 to 1.5 mm² count as whole',
      source: { id: 'iec-60228-resistance' },
    },
    { kind: 'law', against: 'twice the resistance is half of the conductance' },
  ],
  accuracy: 'that of the stated resistance',
});

/**
 * Current that a wire bears for good as it is laid.
 *
 * I_z = I_t·√c·k_g·k_θ·max(1, p − 1): of conductors in parallel one may be open, and nothing tells
 * @param table I_t, from a table for one circuit in its reference air [A]
 * @param share c, of the section that conducts like copper [-]
 * @param grouping k_g, factor for circuits side by side [-]
 * @param parallel p, conductors in parallel for each way [-]
 * @param ambient k_θ, factor for the temperature of the air [-]
 * @returns I_z [A]
 * @throws OutsideRange for a factor that no table has
 */
export const wireCapacity = formula({
  name: 'wire-capacity',
  gives: { symbol: 'I_z', of: 'current', means: 'current that the wire bears for good' },
  takes: {
    table: {
      ...amperes,
      symbol: 'I_t',
      means: 'current from the table',
      above: 0,
      because: 'a wire bears some current',
      slope: 'up',
      typical: [4, 20],
    },
    share: { ...conducting, otherwise: 1, slope: 'up' },
    grouping: {
      symbol: 'k_g',
      of: 'ratio',
      means: 'factor for circuits side by side',
      above: 0,
      to: 1,
      because: 'company never cools',
      otherwise: 1,
      slope: 'up',
      typical: [0.5, 1],
    },
    parallel: {
      symbol: 'p',
      of: 'count',
      means: 'conductors in parallel for each way',
      from: 1,
      because: 'one at least carries the current',
      otherwise: 1,
      slope: 'up',
      typical: [1, 3],
    },
    ambient: {
      symbol: 'k_θ',
      of: 'ratio',
      means: 'factor for the temperature of the air',
      from: 0,
      to: 1.5,
      because: 'tables go no further',
      slope: 'up',
      typical: [0.5, 1.15],
    },
  },
  steps: ({ table, share, grouping, parallel, ambient }, step) => {
    const one = step('I_1', 'I_t*sqrt(c)*k_g*k_θ', table * Math.sqrt(share) * grouping * ambient, 'current');
    return step('I_z', 'I_1*max(1, p - 1)', one * Math.max(1, parallel - 1), 'current');
  },
  assumes: ['all circuits of the group are loaded', 'one of several conductors in parallel may have lost its contact'],
  source: [{ id: 'iec-60204-currents' }, { id: 'own-derivation', at: 'protection' }],
  checked: [
    { kind: 'independent', against: '13.1 A, four circuits at 0.65, 50 °C at 0.82: 6.98 A' },
    { kind: 'law', against: 'the same heat flows where I²/c is the same' },
  ],
  accuracy: 'that of the table, about 5 %',
});

/**
 * Overload that a wire bears until its fuse has opened.
 *
 * I_o = 1.45·I_z
 * @param capacity I_z [A]
 * @returns I_o [A]
 * @throws OutsideRange for less than nothing
 */
export const bearableOverload = formula({
  name: 'bearable-overload',
  gives: { symbol: 'I_o', of: 'current', means: 'overload that the wire bears until the fuse opens' },
  takes: { capacity: { ...capacity, slope: 'up' } },
  steps: ({ capacity: Iz }, step) => step('I_o', '1.45*I_z', 1.45 * Iz, 'current'),
  assumes: ['overloads are rare and end within an hour or two'],
  source: [{ id: 'overcurrent-rule' }],
  checked: [{ kind: 'published-secondary', against: 'I_2 ≤ 1.45·I_z', source: { id: 'overcurrent-rule' } }],
  accuracy: 'a convention',
});

/**
 * Constant of a wire for short heating without loss.
 *
 * k = √(c·δ/(ρ·α)·ln(1 + α·(θ_f − θ_i)/(1 + α·(θ_i − 20 °C)))), for copper
 * @param start θ_i, insulation at the start [K]
 * @param end θ_f, most that the insulation bears for seconds [K]
 * @returns k [A·√s/m²], as a current density over one second
 * @throws OutsideRange when the end is not above the start
 */
export const heatingConstant = formula({
  name: 'adiabatic-constant',
  gives: { symbol: 'k', of: 'current-density', means: 'current density that heats to the limit in one second' },
  takes: {
    start: { ...insulation('θ_i', 'wire at the start', [303.15, 363.15]), slope: 'down' },
    end: { ...insulation('θ_f', 'most that the insulation bears for seconds', [413.15, 523.15]), slope: 'up' },
  },
  steps: ({ start, end }, step) => {
    const ratio = step('q', '(θ_f - θ_i)/(234.5 + θ_i - 273.15)', (end - start) / (234.5 + start - 273.15), 'ratio');
    return step('k', '2.26e8*sqrt(log(1 + q))', 2.26e8 * Math.sqrt(Math.log(1 + ratio)), 'current-density');
  },
  assumes: ['no heat leaves the copper', 'up to about five seconds'],
  source: [{ id: 'cable-k-factors' }],
  checked: [
    {
      kind: 'published-secondary',
      against: '115 for 70 → 160 °C, 100 for 90 → 160 °C, 143 for 90 → 250 °C, 141 for 60 → 200 °C, in A·√s/mm²',
      source: { id: 'cable-k-factors' },
    },
    { kind: 'independent', against: 'copper heats at 2.98 K/s in AWG 24 at 5 A, by ρ, c and density' },
  ],
  accuracy: '1 %',
});

/**
 * Let-through that a wire bears before its insulation is too hot.
 *
 * J_w = c·k²·A²
 * @param constant k [A·√s/m²]
 * @param area A, of one conductor [m²]
 * @param share c, of the section that conducts like copper [-]
 * @returns J_w [A²·s]
 * @throws OutsideRange for no copper
 */
export const wireLetThrough = formula({
  name: 'wire-let-through',
  gives: { symbol: 'J_w', of: 'current-squared-time', means: 'let-through that the wire bears' },
  takes: {
    constant: {
      symbol: 'k',
      of: 'current-density',
      means: 'current density that heats to the limit in one second',
      above: 0,
      because: 'copper bears some',
      slope: 'up',
      typical: [0.8e8, 1.5e8],
    },
    area: {
      symbol: 'A',
      of: 'conductor-area',
      means: 'section of the conductor',
      above: 0,
      because: 'a current needs metal',
      slope: 'up',
      typical: [0.2e-6, 2.5e-6],
    },
    share: { ...conducting, otherwise: 1, slope: 'up' },
  },
  steps: ({ constant, area, share }, step) =>
    step('J_w', 'c*k^2*A^2', share * constant ** 2 * area ** 2, 'current-squared-time'),
  assumes: [
    'no heat leaves the conductor',
    'up to about five seconds',
    'one conductor carries all of it, also of several in parallel',
  ],
  source: [{ id: 'cable-k-factors' }],
  checked: [{ kind: 'published-secondary', against: 'the form A = √(I²·t)/k', source: { id: 'cable-k-factors' } }],
  accuracy: '1 %, and careful above a second',
});
