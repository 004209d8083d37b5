/**
 * How warm a motor gets: two lumps, winding and case, with copper whose resistance grows as it warms.
 * Everything is linear in the rises, so that rest and time have closed forms; runaway is where the rest has none.
 */
import { formula, NoSolution, OutsideRange, type Recorder, type Take } from '../../../kernel/index.ts';
import { ambient, coefficient, cold, hot, inside, iron, outside } from './takes.ts';

/**
 * Temperature coefficient of copper referred to another temperature than 20 °C.
 *
 * α = α_20/(1 + α_20·(θ_a − 20 °C))
 * @param ambient θ_a, temperature to which it is referred [K]
 * @returns α [1/K]
 * @throws OutsideRange for air that no machine meets
 */
export const coefficientAt = formula({
  name: 'copper-coefficient-at',
  gives: {
    symbol: 'α',
    of: 'temperature-coefficient',
    means: 'temperature coefficient of copper at the temperature of the air',
  },
  takes: {
    ambient: { ...ambient, slope: 'down' },
    reference: {
      ...coefficient,
      symbol: 'α_20',
      means: 'temperature coefficient of copper at 20 °C',
      otherwise: 0.00393,
      slope: 'up',
    },
  },
  steps: ({ ambient: a, reference }, step) =>
    step('α', 'α_20/(1 + α_20*(θ_a - 293.15))', reference / (1 + reference * (a - 293.15)), 'temperature-coefficient'),
  assumes: ['pure copper'],
  source: [{ id: 'iec-60028' }],
  checked: [{ kind: 'law', against: 'the same straight line of resistance, whichever temperature it starts from' }],
  accuracy: 'exact for the straight line',
});

/**
 * How near a held winding is to running away: 1 is where each kelvin of rise brings the heat for another.
 *
 * w = α·(P_h·R_1 + P_0·R_2)
 * @param hot P_h, copper heat that has to leave the hottest phase, with the winding as cold as the air [W]
 * @param cold P_0, mean copper heat with the winding as cold as the air [W]
 * @param inside R_1, winding to case [K/W]
 * @param outside R_2, case to air [K/W]
 * @param coefficient α, at the temperature of the air [1/K]
 * @returns w [-]
 * @throws OutsideRange for negative heat
 */
export const runaway = formula({
  name: 'winding-runaway',
  gives: { symbol: 'w', of: 'ratio', means: 'share of the heat at which the winding runs away' },
  takes: {
    hot: { ...hot, slope: 'up' },
    cold: { ...cold, slope: 'up' },
    inside: { ...inside, slope: 'up' },
    outside: { ...outside, slope: 'up' },
    coefficient: { ...coefficient, slope: 'up' },
  },
  steps: ({ hot: Ph, cold: P, inside: R1, outside: R2, coefficient: a }, step) =>
    step('w', 'α*(P_h*R_1 + P_0*R_2)', a * (Ph * R1 + P * R2), 'ratio'),
  assumes: ['the driver holds the current whatever the resistance'],
  source: [{ id: 'own-derivation', at: 'warming' }],
  checked: [
    {
      kind: 'independent',
      against: 'the lumped equations by a general solver: a rise that settles below 1 and not above',
    },
  ],
  accuracy: 'exact for the model',
});

/** The shown steps of the settled rise. Throws NoSolution when the winding runs away. */
export const settledWinding = (P: number, Pi: number, R1: number, R2: number, a: number, step: Recorder): number => {
  const w = step('w', 'α*P_0*(R_1 + R_2)', a * P * (R1 + R2), 'ratio');
  if (!(w < 1))
    throw new NoSolution(
      'the temperature of the winding',
      'held at this current the winding heats itself faster than it can cool: it runs away',
    );
  return step(
    'Δ_w',
    '(P_0*(R_1 + R_2) + P_i*R_2)/(1 - w)',
    (P * (R1 + R2) + Pi * R2) / (1 - w),
    'temperature-difference',
  );
};

/**
 * Rise at which a held winding settles.
 *
 * Δ_w = (P_0·(R_1 + R_2) + P_i·R_2)/(1 − α·P_0·(R_1 + R_2))
 * @param cold P_0, copper heat with the winding as cold as the air [W]
 * @param iron P_i, heat of iron and drag [W]
 * @param inside R_1, winding to case [K/W]
 * @param outside R_2, case to air [K/W]
 * @param coefficient α, at the temperature of the air [1/K]
 * @returns Δ_w, above the air [K]
 * @throws NoSolution when the winding runs away
 */
export const settledRise = formula({
  name: 'settled-winding-rise',
  gives: { symbol: 'Δ_w', of: 'temperature-difference', means: 'rise of the winding above the air' },
  takes: {
    cold: { ...cold, slope: 'up' },
    iron: { ...iron, slope: 'up' },
    inside: { ...inside, slope: 'up' },
    outside: { ...outside, slope: 'up' },
    coefficient: { ...coefficient, slope: 'up' },
  },
  steps: ({ cold: P, iron: Pi, inside: R1, outside: R2, coefficient: a }, step) =>
    settledWinding(P, Pi, R1, R2, a, step),
  assumes: [
    'two lumps, each at one temperature',
    'the driver holds the current whatever the resistance',
    'cooling in proportion to the rise',
  ],
  source: [{ id: 'two-lump-motor' }, { id: 'own-derivation', at: 'warming' }],
  checked: [
    {
      kind: 'published-secondary',
      against: 'P·(R_1 + R_2) when the resistance stays cold',
      source: { id: 'two-lump-motor' },
    },
    { kind: 'independent', against: 'the lumped equations run to rest by a general solver, within 0.001 K' },
  ],
  accuracy: 'that of the thermal resistances; cooling by air grows a little faster than the rise',
});

/**
 * Rise of the case when the winding has settled.
 *
 * Δ_c = (P_0·(1 + α·Δ_w) + P_i)·R_2
 * @param cold P_0, copper heat with the winding as cold as the air [W]
 * @param iron P_i, heat of iron and drag [W]
 * @param outside R_2, case to air [K/W]
 * @param coefficient α, at the temperature of the air [1/K]
 * @param winding Δ_w, rise of the winding [K]
 * @returns Δ_c, above the air [K]
 * @throws OutsideRange for a winding colder than the air
 */
export const caseRise = formula({
  name: 'settled-case-rise',
  gives: { symbol: 'Δ_c', of: 'temperature-difference', means: 'rise of the case above the air' },
  takes: {
    cold: { ...cold, slope: 'up' },
    iron: { ...iron, slope: 'up' },
    outside: { ...outside, slope: 'up' },
    coefficient: { ...coefficient, slope: 'up' },
    winding: {
      symbol: 'Δ_w',
      of: 'temperature-difference',
      means: 'rise of the winding',
      from: 0,
      because: 'a heated winding is not colder than the air',
      slope: 'up',
      typical: [5, 80],
    },
  },
  steps: ({ cold: P, iron: Pi, outside: R2, coefficient: a, winding }, step) => {
    const warm = step('P_c', 'P_0*(1 + α*Δ_w)', P * (1 + a * winding), 'power');
    return step('Δ_c', '(P_c + P_i)*R_2', (warm + Pi) * R2, 'temperature-difference');
  },
  assumes: ['the case at one temperature'],
  source: [{ id: 'two-lump-motor' }, { id: 'own-derivation', at: 'warming' }],
  checked: [
    { kind: 'published-secondary', against: 'P·R_2 when the resistance stays cold', source: { id: 'two-lump-motor' } },
    { kind: 'independent', against: 'the lumped equations run to rest by a general solver, within 0.001 K' },
  ],
  accuracy: 'that of the thermal resistance',
});

/**
 * Rise of a winding for the heat that it has: one turn of the loop that the engine closes. The case takes part in the
 * mean of all that happens; the winding on it is quick, and follows its hottest mode.
 *
 * Δ_w = P_h·R_1 + P_m·R_2
 * @param hot P_h, copper heat that has to leave the hottest phase: that of both phases where they share it evenly, twice
 *   that of one where one has all of it, for R_1 is that of both side by side [W]
 * @param mean P_m, mean heat of copper, as warm as the winding is, of iron and of drag [W]
 * @param inside R_1, winding to case, both phases heated alike [K/W]
 * @param outside R_2, case to air [K/W]
 * @returns Δ_w, above the air [K]
 * @throws OutsideRange for negative heat
 */
export const windingRise = formula({
  name: 'winding-rise',
  gives: { symbol: 'Δ_w', of: 'temperature-difference', means: 'rise of the winding above the air' },
  takes: {
    hot: { ...hot, slope: 'up' },
    mean: {
      ...cold,
      symbol: 'P_m',
      means: 'mean heat of copper, as warm as the winding is, of iron and of drag',
      slope: 'up',
    },
    inside: { ...inside, slope: 'up' },
    outside: { ...outside, slope: 'up' },
  },
  steps: ({ hot: Ph, mean, inside: R1, outside: R2 }, step) =>
    step('Δ_w', 'P_h*R_1 + P_m*R_2', Ph * R1 + mean * R2, 'temperature-difference'),
  assumes: [
    'each phase and the case at one temperature',
    'the case has settled to the mean of all modes, the winding to its hottest mode, which is careful',
    'the phases warm each other through the case only',
  ],
  source: [{ id: 'two-lump-motor' }],
  checked: [
    {
      kind: 'published-secondary',
      against: 'P·(R_1 + R_2) without iron in one mode',
      source: { id: 'two-lump-motor' },
    },
    { kind: 'independent', against: 'closed as a loop it gives the closed form of the settled rise, within 1e-5 K' },
    {
      kind: 'independent',
      against:
        'modes of random length and heat that follow each other, by a general solver with each phase apart: never above it',
    },
  ],
  accuracy: 'that of the thermal resistances',
});

const rise = {
  symbol: 'Δ',
  of: 'temperature-difference',
  means: 'rise above the air',
  from: 0,
  because: 'nothing here cools',
  typical: [0, 90],
} as const satisfies Take;

/**
 * Temperature from a rise.
 *
 * θ = θ_a + Δ
 * @param ambient θ_a [K]
 * @param rise Δ [K]
 * @returns θ [K]
 * @throws OutsideRange for air that no machine meets
 */
export const temperatureFrom = formula({
  name: 'temperature-from-rise',
  gives: { symbol: 'θ', of: 'temperature', means: 'temperature' },
  takes: {
    ambient: { ...ambient, slope: 'up' },
    rise: { ...rise, slope: 'up' },
  },
  steps: ({ ambient: a, rise: by }, step) => step('θ', 'θ_a + Δ', a + by, 'temperature'),
  assumes: [],
  source: [{ id: 'own-derivation', at: 'warming' }],
  checked: [{ kind: 'law', against: 'no rise, no change' }],
  accuracy: 'exact',
});

/**
 * Rises one on the other.
 *
 * Δ_s = Σ Δ
 * @param rises Δ, each [K]
 * @returns Δ_s [K]
 * @throws OutsideRange where something is colder than what is round it
 */
export const risesTogether = formula({
  name: 'rises-together',
  gives: { symbol: 'Δ_s', of: 'temperature-difference', means: 'rise above the room' },
  takes: { rises: { ...rise, many: true, slope: 'up' } },
  steps: ({ rises }, step) =>
    step(
      'Δ_s',
      'sum(Δ)',
      rises.reduce((a, b) => a + b, 0),
      'temperature-difference',
    ),
  assumes: ['what is warmer stands in the air that is warmer'],
  source: [{ id: 'own-derivation', at: 'warming' }],
  checked: [{ kind: 'law', against: 'the temperature less that of the room' }],
  accuracy: 'exact',
});

/**
 * Life of an insulation as a multiple of its life at the limit of its class.
 *
 * n = 2^((θ_l − θ)/10 K)
 * @param limit θ_l, limit of the class [K]
 * @param temperature θ, of the winding [K]
 * @returns n [-]
 * @throws OutsideRange more than 60 K from the limit, where the rule says nothing
 */
export const insulationLife = formula({
  name: 'insulation-life',
  gives: { symbol: 'n', of: 'ratio', means: 'life over the life at the limit of the class' },
  takes: {
    limit: {
      symbol: 'θ_l',
      of: 'temperature',
      means: 'limit of the insulation class',
      from: 363.15,
      to: 493.15,
      because: 'the classes lie there',
      slope: 'up',
      typical: [403.15, 428.15],
    },
    temperature: {
      symbol: 'θ',
      of: 'temperature',
      means: 'temperature of the winding',
      from: 223.15,
      to: 523.15,
      because: 'windings live there',
      slope: 'down',
      typical: [373.15, 413.15],
    },
  },
  steps: ({ limit, temperature }, step) => {
    if (!(Math.abs(limit - temperature) <= 60))
      throw new OutsideRange(
        'insulation-life',
        'θ',
        temperature,
        'within 60 K of the limit',
        'the rule says nothing further off',
      );
    return step('n', '2^((θ_l - θ)/10)', 2 ** ((limit - temperature) / 10), 'ratio');
  },
  assumes: ['ageing by heat alone'],
  source: [{ id: 'iec-60085', at: 'life halves for each 10 K' }],
  checked: [{ kind: 'published-secondary', against: '10 K more halve the life', source: { id: 'iec-60085' } }],
  accuracy: 'a rule of thumb: 8 to 12 K for a half',
});
