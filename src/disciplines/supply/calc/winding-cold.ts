/** Resistance of a winding as it is connected, at room temperature. */
import { formula } from '../../../kernel/index.ts';

/**
 * Resistance of one winding at 20 °C as its coils are connected.
 *
 * R_20 = R_m·ρ
 * @param measured R_m, as measured or printed [Ω]
 * @param ratio ρ, resistance of the connection that is used over the one that was measured [-]
 * @returns R_20 [Ω]
 * @throws OutsideRange unless both are above zero
 */
export const coldResistance = formula({
  name: 'cold-winding-resistance',
  gives: { symbol: 'R_20', of: 'resistance', means: 'resistance of one winding at 20 °C' },
  takes: {
    measured: {
      symbol: 'R_m',
      of: 'resistance',
      means: 'resistance of one phase as measured',
      above: 0,
      because: 'copper has resistance',
      slope: 'up',
      typical: [0.5, 8],
    },
    ratio: {
      symbol: 'ρ',
      of: 'ratio',
      means: 'resistance as connected over as measured',
      above: 0,
      because: 'copper has resistance',
      slope: 'up',
      typical: [0.25, 4],
    },
  },
  steps: ({ measured, ratio }, step) => step('R_20', 'R_m*ρ', measured * ratio, 'resistance'),
  assumes: ['both halves of a phase are alike', 'measured in a room of about 20 °C'],
  source: [{ id: 'own-derivation', at: 'warming' }],
  checked: [{ kind: 'law', against: 'two halves in series are twice, in parallel half of one' }],
  accuracy: '4 % for each 10 K that the room was off',
});
