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

/**
 * Resistance of one winding at 20 °C from what it is reckoned with warm.
 *
 * R_20 = R_w/(1 + α·(θ_w − 20 °C))
 * @param warm R_w, at the temperature θ_w [Ω]
 * @param temperature θ_w [K]
 * @returns R_20 [Ω]
 * @throws OutsideRange where the straight line of copper was not drawn
 */
export const coldFromWarm = formula({
  name: 'cold-from-warm-resistance',
  gives: { symbol: 'R_20', of: 'resistance', means: 'resistance of one winding at 20 °C' },
  takes: {
    warm: {
      symbol: 'R_w',
      of: 'resistance',
      means: 'resistance of one winding as it is reckoned with warm',
      above: 0,
      because: 'copper has resistance',
      slope: 'up',
      typical: [0.5, 8],
    },
    temperature: {
      symbol: 'θ_w',
      of: 'temperature',
      means: 'temperature for which that is',
      from: 223.15,
      to: 523.15,
      because: 'the straight line is for ordinary temperatures',
      slope: 'down',
      typical: [283.15, 373.15],
    },
  },
  steps: ({ warm, temperature }, step) =>
    step('R_20', 'R_w/(1 + 0.00393*(θ_w - 293.15))', warm / (1 + 0.00393 * (temperature - 293.15)), 'resistance'),
  assumes: ['pure copper'],
  source: [{ id: 'iec-60028' }],
  checked: [{ kind: 'law', against: 'warmed again it has the resistance that it came from' }],
  accuracy: '1 % up to 130 °C',
});
