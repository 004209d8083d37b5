/** What lowering does to a swing. */
import { formula, OutsideRange } from '../../../kernel/index.ts';
import { fading, gravity, hoistAcceleration, hoistSpeed, length, SLOW } from './takes.ts';

/** Swings wider than this share of the line are not small: 37° before it is lowered. */
const FAR = 0.6;

/**
 * Farthest that a swinging load goes from the plumb line while it is lowered.
 *
 * x₁ = x₀·(L_m/L₀)^¼·√((g + a)/(g − a))·e^(−(L_m − L₀)/(v·τ)), L_m = v·τ/4 between L₀ and L₁: the fourth root of the length
 * grows faster than the swing fades up to there, and more slowly beyond. Each ramp can add its share once.
 * @param offset x₀, largest distance from the plumb line before it is lowered [m]
 * @param high L₀, from the pivot to the centre of mass, up [m]
 * @param low L₁, let down [m]
 * @param speed v [m/s]
 * @param acceleration a, below gravity [m/s²]
 * @param fading τ, time to fade to 37 % [s]
 * @param gravity g [m/s²]
 * @returns x₁ [m]
 * @throws OutsideRange for a way that is not slow, v ≤ 0.3·√(g·L₀), or a swing that is no small angle
 */
export const loweredSideways = formula({
  name: 'lowered-sideways',
  gives: { symbol: 'x_1', of: 'length', means: 'farthest from the plumb line on the way down' },
  takes: {
    offset: {
      symbol: 'x_0',
      of: 'length',
      means: 'largest distance from the plumb line before it is lowered',
      from: 0,
      because: 'it is taken without sign',
      slope: 'up',
      typical: [0.005, 0.06],
    },
    high: {
      ...length,
      symbol: 'L_0',
      means: 'from the pivot to the centre of mass, up',
      slope: 'down',
      typical: [0.18, 0.35],
    },
    low: {
      ...length,
      symbol: 'L_1',
      means: 'from the pivot to the centre of mass, let down',
      slope: 'up',
      typical: [0.7, 0.95],
    },
    speed: { ...hoistSpeed, means: 'speed of lowering', slope: 'up' },
    acceleration: { ...hoistAcceleration, slope: 'up' },
    fading: { ...fading, slope: 'up' },
    gravity: { ...gravity, slope: 'down' },
  },
  steps: ({ offset: x0, high: L0, low: L1, speed: v, acceleration: a, fading: tau, gravity: g }, step) => {
    if (!(L0 <= L1))
      throw new OutsideRange('lowered-sideways', 'L_1', L1, `L_1 ≥ ${L0}`, 'lowering makes the line longer');
    if (!(a < g)) throw new OutsideRange('lowered-sideways', 'a', a, `a < ${g}`, 'the line would go slack');
    if (!(v <= SLOW * Math.sqrt(g * L0)))
      throw new OutsideRange(
        'lowered-sideways',
        'v',
        v,
        `v ≤ ${SLOW}·√(g·L_0)`,
        'a faster way down does not let the swing change slowly',
      );
    if (!(x0 <= FAR * L0))
      throw new OutsideRange('lowered-sideways', 'x_0', x0, `x_0 ≤ ${FAR}·L_0`, 'larger swings are not small');
    const widest = step('L_m', 'min(max(v*τ/4, L_0), L_1)', Math.min(Math.max((v * tau) / 4, L0), L1), 'length');
    const growth = step('k', '(L_m/L_0)^0.25', (widest / L0) ** 0.25, 'ratio');
    const ramps = step('k_a', 'sqrt((g + a)/(g - a))', Math.sqrt((g + a) / (g - a)), 'ratio');
    return step(
      'x_1',
      'x_0*k*k_a*exp(-(L_m - L_0)/(v*τ))',
      x0 * growth * ramps * Math.exp(-(widest - L0) / (v * tau)),
      'length',
    );
  },
  assumes: ['small swings', 'the pivot stands still', 'the line changes slowly against a swing'],
  source: [
    { id: 'hoisted-pendulum', at: 'steady change of length' },
    { id: 'own-derivation', at: 'sideways motion on a line of changing length' },
  ],
  checked: [
    {
      kind: 'independent',
      against: '400 random ways down integrated in three dimensions stay within it, and the widest reaches 95 % of it',
    },
    { kind: 'law', against: 'what a hoist takes from the way to the side, lowering gives back' },
  ],
  accuracy:
    'a bound over all phases of the swing, passed by 3 % at 37°; up to 40 % too far where steep ramps happen to calm it',
});

/**
 * How far out of plumb a load leaves the heap when it came down swinging.
 *
 * x_0 = x_a + x_l
 * @param still x_a, out of plumb when it came down hanging still [m]
 * @param swung x_l, how far beside the plumb line it came down [m]
 * @returns x_0 [m]
 * @throws OutsideRange for distances below zero
 */
export const leavingOffset = formula({
  name: 'leaving-offset',
  gives: { symbol: 'x_0', of: 'length', means: 'out of plumb as it leaves the heap' },
  takes: {
    still: {
      symbol: 'x_a',
      of: 'length',
      means: 'out of plumb when it came down hanging still',
      from: 0,
      because: 'it is taken without sign',
      slope: 'up',
      typical: [0.005, 0.03],
    },
    swung: {
      symbol: 'x_l',
      of: 'length',
      means: 'how far beside the plumb line it came down',
      from: 0,
      because: 'it is taken without sign',
      slope: 'up',
      typical: [0, 0.06],
    },
  },
  steps: ({ still, swung }, step) => step('x_0', 'x_a + x_l', still + swung, 'length'),
  assumes: ['both to the same side', 'it leaves the heap where it came down, under a pivot that has not moved'],
  source: [{ id: 'own-derivation', at: 'sum' }],
  checked: [{ kind: 'law', against: 'one that comes down in plumb leaves as far out as one that hung still' }],
  accuracy: 'a bound',
});
