/** From readings at a hanging load to what the book says of it. */
import { formula, OutsideRange } from '../../../kernel/index.ts';
import { gravity } from './takes.ts';

/**
 * Depth of the hook below the pivot, by way of the length of the pendulum that its period gives.
 *
 * L_e = g·(t/(2π·n))²·M², M = ((1 + √cos(θ/2))/2)², L = L_e/2 + √(L_e²/4 − k²), h = L − d − c
 * @param time t, of all swings [s]
 * @param swings n, there and back [-]
 * @param angle θ, largest angle from the plumb line [rad]
 * @param size k, radius of gyration of the claw about its centre of mass [m]
 * @param down d, line that is let down [m]
 * @param below c, from the hook down to the centre of mass [m]
 * @returns h, with no line let down [m]
 * @throws OutsideRange when the claw is too large for so short a line
 */
export const hookDepthFromPeriod = formula({
  name: 'hook-depth-from-period',
  gives: { symbol: 'h', of: 'length', means: 'from the pivot down to the hook, when it is up' },
  takes: {
    time: {
      symbol: 't',
      of: 'time',
      means: 'time of all swings',
      above: 0,
      because: 'a swing takes time',
      slope: 'up',
      typical: [36, 40],
    },
    swings: {
      symbol: 'n',
      of: 'count',
      means: 'full swings there and back',
      above: 0,
      because: 'a period is there and back',
      slope: 'down',
      typical: [19, 20],
    },
    angle: {
      symbol: 'θ',
      of: 'angle',
      means: 'largest angle from the plumb line',
      from: 0,
      to: 0.5,
      because: 'the mean is taken once only, which is exact for small swings',
      slope: 'down',
      typical: [0, 0.2],
    },
    size: {
      symbol: 'k',
      of: 'length',
      means: 'radius of gyration of the claw about its centre of mass',
      from: 0,
      because: 'a claw has a size or none',
      slope: 'down',
      typical: [0, 0.06],
    },
    down: {
      symbol: 'd',
      of: 'length',
      means: 'line that is let down',
      from: 0,
      because: 'a line is let down or not',
      slope: 'down',
      typical: [0.4, 0.6],
    },
    below: {
      symbol: 'c',
      of: 'length',
      means: 'from the hook down to the centre of mass',
      from: 0,
      because: 'what hangs, hangs below',
      slope: 'down',
      typical: [0.06, 0.09],
    },
    gravity: { ...gravity, slope: 'up' },
  },
  steps: ({ time, swings, angle, size, down, below, gravity: g }, step) => {
    const period = step('T', 't/n', time / swings, 'time');
    const mean = step('M', '((1 + sqrt(cos(θ/2)))/2)^2', ((1 + Math.sqrt(Math.cos(angle / 2))) / 2) ** 2, 'ratio');
    const even = step('L_e', 'g*(T/(2*pi)*M)^2', g * ((period / (2 * Math.PI)) * mean) ** 2, 'length');
    const rest = even ** 2 / 4 - size ** 2;
    if (!(rest >= 0))
      throw new OutsideRange(
        'hook-depth-from-period',
        'L_e',
        even,
        'L_e ≥ 2·k',
        'a claw on so short a line is no pendulum',
      );
    const length = step('L', 'L_e/2 + sqrt(L_e^2/4 - k^2)', even / 2 + Math.sqrt(rest), 'length');
    return step('h', 'L - d - c', length - down - below, 'length');
  },
  assumes: [
    'line and claw swing as one stiff body',
    'a line without mass',
    'a pivot at rest',
    'drag too small to slow it',
  ],
  source: [
    { id: 'pendulum-period', at: 'exact period by the complete elliptic integral' },
    { id: 'own-derivation', at: 'physical pendulum' },
  ],
  checked: [
    {
      kind: 'published-secondary',
      against: 'length of a pendulum from its tabled periods at 5°, 10° and 20°',
      source: { id: 'pendulum-period', at: 'table' },
    },
    { kind: 'law', against: 'a claw of no size has the length of a point' },
  ],
  accuracy: 'as the readings; the centre of mass is seldom known better than to a centimetre',
});

/**
 * Swings after which half is left, from two widths of one fading swing.
 *
 * n_h = n·ln 2/ln(A_0/A_n)
 * @param swings n, full swings between the two [-]
 * @param first A_0, width at the beginning [m]
 * @param last A_n, width at the end [m]
 * @returns n_h [-]
 * @throws OutsideRange unless it has faded
 */
export const halvingFromFading = formula({
  name: 'halving-from-fading',
  gives: { symbol: 'n_h', of: 'count', means: 'full swings after which half of it is left' },
  takes: {
    swings: {
      symbol: 'n',
      of: 'count',
      means: 'full swings there and back between the two',
      above: 0,
      because: 'fading is counted in swings',
      slope: 'up',
      typical: [5, 15],
    },
    first: {
      symbol: 'A_0',
      of: 'length',
      means: 'width of the swing at the beginning',
      above: 0,
      because: 'it swings',
      slope: 'down',
      typical: [0.15, 0.25],
    },
    last: {
      symbol: 'A_n',
      of: 'length',
      means: 'width of the swing at the end',
      above: 0,
      because: 'a swing fades and never ends',
      slope: 'up',
      typical: [0.05, 0.12],
    },
  },
  steps: ({ swings, first, last }, step) => {
    if (!(last < first))
      throw new OutsideRange(
        'halving-from-fading',
        'A_n',
        last,
        'A_n < A_0',
        'it has not faded by what a tape can tell',
      );
    const fading = step('δ', 'log(A_0/A_n)', Math.log(first / last), 'ratio');
    return step('n_h', 'n*log(2)/δ', (swings * Math.LN2) / fading, 'count');
  },
  assumes: ['the same share is lost in every swing'],
  source: [{ id: 'own-derivation', at: 'logarithmic decrement' }],
  checked: [{ kind: 'law', against: 'what has halved after n swings halves after n; after 2·n a quarter is left' }],
  accuracy: 'as the readings; drag that grows faster makes small swings fade more slowly',
});

/**
 * Share of trials that miss, from the share that dock.
 *
 * q = 1 − p
 * @param docked p, share that docks [-]
 * @returns q [-]
 * @throws OutsideRange outside 0 ≤ p ≤ 1
 */
export const missedShare = formula({
  name: 'missed-share',
  gives: { symbol: 'q', of: 'ratio', means: 'share that misses' },
  takes: {
    docked: {
      symbol: 'p',
      of: 'ratio',
      means: 'share that docks',
      from: 0,
      to: 1,
      because: 'a share lies between none and all',
      slope: 'down',
      typical: [0.8, 0.99],
    },
  },
  steps: ({ docked }, step) => step('q', '1 - p', 1 - docked, 'ratio'),
  assumes: [],
  source: [{ id: 'own-derivation', at: 'definition' }],
  checked: [{ kind: 'law', against: 'what docks and what misses are all' }],
  accuracy: 'exact',
});
