/** How a motor warms in time, from cold: the two lumps solved by their two rates. */
import { formula, type Recorder, type Take } from '../../../kernel/index.ts';
import { coefficient, cold, inside, iron, outside } from './takes.ts';
import { settledWinding } from './warming.ts';

const windingCapacity = {
  symbol: 'C_1',
  of: 'heat-capacity',
  means: 'heat capacity of the winding',
  above: 0,
  because: 'copper stores heat',
  typical: [20, 100],
} as const satisfies Take;
const caseCapacity = {
  ...windingCapacity,
  symbol: 'C_2',
  means: 'heat capacity of iron and case',
  typical: [200, 800],
} as const satisfies Take;
const time = {
  symbol: 't',
  of: 'time',
  means: 'time since the current was switched on',
  from: 0,
  because: 'time goes forward',
  typical: [60, 7200],
} as const satisfies Take;

const lumps = {
  cold: { ...cold, slope: 'up' },
  iron: { ...iron, slope: 'up' },
  inside: { ...inside, above: 0, because: 'two lumps are apart', slope: 'either' },
  outside: { ...outside, slope: 'up' },
  windingCapacity: { ...windingCapacity, slope: 'down' },
  caseCapacity: { ...caseCapacity, slope: 'down' },
  coefficient: { ...coefficient, slope: 'up' },
  time: { ...time, slope: 'up' },
} as const;

interface Lumps {
  readonly cold: number;
  readonly iron: number;
  readonly inside: number;
  readonly outside: number;
  readonly windingCapacity: number;
  readonly caseCapacity: number;
  readonly coefficient: number;
}

/** The two rates with which the lumps settle, both negative; the slower first. */
const rates = (
  { cold: P, inside: R1, outside: R2, windingCapacity: C1, caseCapacity: C2, coefficient: a }: Lumps,
  step: Recorder,
) => {
  const a1 = step('a_1', '(1/R_1 - α*P_0)/C_1', (1 / R1 - a * P) / C1, 'rate');
  const a2 = step('a_2', '(1/R_1 + 1/R_2)/C_2', (1 / R1 + 1 / R2) / C2, 'rate');
  const half = step('h', '(a_1 + a_2)/2', (a1 + a2) / 2, 'rate');
  const apart = step(
    's',
    'sqrt((a_1 - a_2)^2/4 + 1/(C_1*C_2*R_1^2))',
    Math.sqrt((a1 - a2) ** 2 / 4 + 1 / (C1 * C2 * R1 ** 2)),
    'rate',
  );
  return {
    slow: step('λ_1', 's - h', apart - half, 'rate'),
    fast: step('λ_2', '-s - h', -apart - half, 'rate'),
  };
};

/**
 * Rise of the winding some time after a current is switched on and held, from cold.
 *
 * C_1·Δ_w′ = P_0·(1 + α·Δ_w) − (Δ_w − Δ_c)/R_1 and C_2·Δ_c′ = (Δ_w − Δ_c)/R_1 − Δ_c/R_2 + P_i, solved by their two rates
 * @param cold P_0, copper heat with the winding as cold as the air [W]
 * @param iron P_i, heat of iron and drag [W]
 * @param inside R_1 [K/W], outside R_2 [K/W], windingCapacity C_1 [J/K], caseCapacity C_2 [J/K]
 * @param coefficient α, at the temperature of the air [1/K]
 * @param time t [s]
 * @returns rise above the air [K]
 * @throws NoSolution when the winding runs away
 */
export const windingRiseAt = formula({
  name: 'winding-rise-in-time',
  gives: { symbol: 'Δ_t', of: 'temperature-difference', means: 'rise of the winding above the air' },
  takes: lumps,
  steps: (given, step) => {
    const { cold: P, iron: Pi, inside: R1, outside: R2, windingCapacity: C1, coefficient: a, time: t } = given;
    const end = settledWinding(P, Pi, R1, R2, a, step);
    const { slow, fast } = rates(given, step);
    const first = step(
      'A',
      '(P_0/C_1 + λ_2*Δ_w)/(λ_1 - λ_2)',
      (P / C1 + fast * end) / (slow - fast),
      'temperature-difference',
    );
    const second = step('B', '-Δ_w - A', -end - first, 'temperature-difference');
    return step(
      'Δ_t',
      'Δ_w + A*exp(λ_1*t) + B*exp(λ_2*t)',
      end + first * Math.exp(slow * t) + second * Math.exp(fast * t),
      'temperature-difference',
    );
  },
  assumes: [
    'two lumps, each at one temperature',
    'winding and case start as cold as the air',
    'the driver holds the current',
  ],
  source: [{ id: 'own-derivation', at: 'warming' }],
  checked: [
    {
      kind: 'independent',
      against: 'the lumped equations by a general solver at random motors and times, within 1e-6 of the rise',
    },
  ],
  accuracy: 'that of the lumps',
});

/**
 * Rise of the case some time after a current is switched on and held, from cold.
 *
 * The second of the two equations of the winding’s rise
 * @param cold P_0, copper heat with the winding as cold as the air [W]
 * @param iron P_i, heat of iron and drag [W]
 * @param inside R_1 [K/W], outside R_2 [K/W], windingCapacity C_1 [J/K], caseCapacity C_2 [J/K]
 * @param coefficient α, at the temperature of the air [1/K]
 * @param time t [s]
 * @returns rise above the air [K]
 * @throws NoSolution when the winding runs away
 */
export const caseRiseAt = formula({
  name: 'case-rise-in-time',
  gives: { symbol: 'Δ_t', of: 'temperature-difference', means: 'rise of the case above the air' },
  takes: lumps,
  steps: (given, step) => {
    const { cold: P, iron: Pi, inside: R1, outside: R2, caseCapacity: C2, coefficient: a, time: t } = given;
    const winding = settledWinding(P, Pi, R1, R2, a, step);
    const end = step('Δ_c', '(P_0*(1 + α*Δ_w) + P_i)*R_2', (P * (1 + a * winding) + Pi) * R2, 'temperature-difference');
    const { slow, fast } = rates(given, step);
    const first = step(
      'A',
      '(P_i/C_2 + λ_2*Δ_c)/(λ_1 - λ_2)',
      (Pi / C2 + fast * end) / (slow - fast),
      'temperature-difference',
    );
    const second = step('B', '-Δ_c - A', -end - first, 'temperature-difference');
    return step(
      'Δ_t',
      'Δ_c + A*exp(λ_1*t) + B*exp(λ_2*t)',
      end + first * Math.exp(slow * t) + second * Math.exp(fast * t),
      'temperature-difference',
    );
  },
  assumes: [
    'two lumps, each at one temperature',
    'winding and case start as cold as the air',
    'the driver holds the current',
  ],
  source: [{ id: 'own-derivation', at: 'warming' }],
  checked: [
    {
      kind: 'independent',
      against: 'the lumped equations by a general solver at random motors and times, within 1e-6 of the rise',
    },
  ],
  accuracy: 'that of the lumps',
});
