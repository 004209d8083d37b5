/** How often a hoisted load misses its dock. */
import { formula } from '../../../kernel/index.ts';
import { erf } from './normal.ts';

/**
 * Share of lift-offs that miss a round dock, when nothing is known of the phase in which the load arrives.
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
  takes: {
    reach: {
      symbol: 'c',
      of: 'length',
      means: 'how far out of plumb the dock still catches',
      slope: 'down',
      typical: [0.01, 0.03],
    },
    scatter: {
      symbol: 'σ',
      of: 'length',
      means: 'standard deviation of the offset on arrival, along one axis',
      above: 0,
      because: 'no two lift-offs are alike',
      slope: 'up',
      typical: [0.006, 0.02],
    },
  },
  steps: ({ reach: c, scatter: s }, step) =>
    // A head wider than its cup misses always.
    step('P', '1 - erf(max(c, 0)/(σ*sqrt(2)))', 1 - erf(Math.max(c, 0) / (s * Math.SQRT2)), 'ratio'),
  assumes: [
    'offsets at lift-off are normal and alike along both axes',
    'all phases on arrival are as likely',
    'the load leaves the heap at rest',
  ],
  source: [{ id: 'own-derivation', at: 'projection of a round normal distribution' }],
  checked: [
    {
      kind: 'independent',
      against: 'counted among simulated lift-offs from a heap of uneven height, within their exact interval',
    },
    { kind: 'law', against: 'one in 22 at two standard deviations, one in 370 at three' },
  ],
  accuracy: 'as good as the spread, which twenty trials give within a third',
});
