/** How often a hoisted load misses its dock. */
import { formula } from '../../../kernel/index.ts';
import { erf } from './normal.ts';

const reach = {
  symbol: 'c',
  of: 'length',
  means: 'how far out of plumb the dock still catches',
  slope: 'down',
  typical: [0.01, 0.03],
} as const;
const scatter = {
  symbol: 'σ',
  of: 'length',
  means: 'standard deviation of the offset on arrival, along one axis',
  above: 0,
  because: 'no two lift-offs are alike',
  slope: 'up',
  typical: [0.006, 0.02],
} as const;
const assumed = [
  'offsets at lift-off are normal and alike along both axes',
  'the load leaves the heap at rest',
] as const;

/**
 * Share of lift-offs that miss a round dock, over all the heights of a heap: over all phases in which the load arrives.
 *
 * P = 1 − erf(c/(σ·√2)): lift-off offsets that are normal along both axes with the same spread reach the dock as swings
 * through the plumb line; at an unknown phase their distance from it is normal again, with the spread that a swing of one
 * standard deviation has on arrival.
 * @param reach c, of the dock [m]
 * @param scatter σ, standard deviation of the offset on arrival, along one axis [m]
 * @returns P [-]
 * @throws OutsideRange unless the spread is above zero
 */
export const missShare = formula({
  name: 'miss-share',
  gives: { symbol: 'P', of: 'ratio', means: 'share of lift-offs that miss' },
  takes: { reach, scatter },
  steps: ({ reach: c, scatter: s }, step) =>
    // A head wider than its cup misses always.
    step('P', '1 - erf(max(c, 0)/(σ*sqrt(2)))', 1 - erf(Math.max(c, 0) / (s * Math.SQRT2)), 'ratio'),
  assumes: [...assumed, 'all phases on arrival are as likely, as from a heap of uneven height'],
  source: [{ id: 'own-derivation', at: 'projection of a round normal distribution' }],
  checked: [
    {
      kind: 'independent',
      against:
        'counted among simulated lift-offs from a heap of uneven height: inside their exact interval, or above it by what the ramps of the hoist may add',
    },
    { kind: 'law', against: 'one in 22 at two standard deviations, one in 370 at three' },
  ],
  accuracy: 'as good as the spread, which twenty trials give within a third',
});

/**
 * Share of lift-offs that miss a round dock from the height of a heap from which they arrive at their farthest, and the
 * swing that is left of a drive with them.
 *
 * P = e^(−max(c − ℓ, 0)²/(2σ²)): how far a pair of normal offsets is from the plumb line at the turn of its swing. One height
 * of the heap means one phase, and the phase at the turn is the worst.
 * @param reach c, of the dock [m]
 * @param left ℓ, offset on arrival by what is left of a drive; nothing where it travels in a cup [m]
 * @param scatter σ, standard deviation of the offset on arrival, along one axis [m]
 * @returns P [-]
 * @throws OutsideRange unless the spread is above zero
 */
export const worstMissShare = formula({
  name: 'worst-miss-share',
  gives: { symbol: 'P', of: 'ratio', means: 'share of lift-offs that miss, from the worst height' },
  takes: {
    reach,
    left: {
      symbol: 'ℓ',
      of: 'length',
      means: 'offset on arrival by what is left of a drive',
      from: 0,
      because: 'it is taken without sign',
      slope: 'up',
      typical: [0, 0.02],
    },
    scatter,
  },
  steps: ({ reach: c, left, scatter: s }, step) =>
    step('P', 'exp(-max(c - ℓ, 0)^2/(2*σ^2))', Math.exp(-(Math.max(c - left, 0) ** 2) / (2 * s * s)), 'ratio'),
  assumes: [...assumed, 'the drive and the lift-off put it to the same side'],
  source: [{ id: 'own-derivation', at: 'size of a pair of normal numbers' }],
  checked: [
    {
      kind: 'independent',
      against:
        'simulated lift-offs from each of 13 heights of a heap: their exact interval is never wholly above it, and near it at the worst height',
    },
    { kind: 'law', against: 'one in 7.4 at two standard deviations, one in 90 at three; all of them beyond the reach' },
  ],
  accuracy: 'a bound; over heaps of all heights a third of it or less',
});
