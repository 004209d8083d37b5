/** Lengths and widths that other formulas start from. */
import { formula } from '../../../kernel/index.ts';

/**
 * Length of the pendulum: from where the line leaves the carriage to the centre of mass.
 *
 * L = p + s + h
 * @param pivot p, down to the hook when it is up [m]
 * @param down s, let down from there [m]
 * @param below h, from the hook to the centre of mass [m]
 * @returns L [m]
 * @throws OutsideRange outside the ranges of its inputs
 */
export const hangingLength = formula({
  name: 'hanging-length',
  gives: { symbol: 'L', of: 'length', means: 'from the pivot to the centre of mass' },
  takes: {
    pivot: {
      symbol: 'p',
      of: 'length',
      means: 'from the pivot to the hook when it is up',
      above: 0,
      because: 'the hook hangs below the pivot',
      slope: 'up',
      typical: [0.1, 0.3],
    },
    down: {
      symbol: 's',
      of: 'length',
      means: 'way that it is let down',
      from: 0,
      because: 'it goes down from there',
      slope: 'up',
      typical: [0, 0.7],
    },
    below: {
      symbol: 'h',
      of: 'length',
      means: 'from the hook to the centre of mass',
      from: 0,
      because: 'a load hangs below its hook',
      slope: 'up',
      typical: [0.03, 0.1],
    },
  },
  steps: ({ pivot, down, below }, step) => step('L', 'p + s + h', pivot + down + below, 'length'),
  assumes: ['a line that does not stretch', 'a rigid claw that leans with its line'],
  source: [{ id: 'own-derivation', at: 'sum' }],
  checked: [{ kind: 'law', against: 'a centimetre more of any of the three is a centimetre more of line' }],
  accuracy: 'exact',
});

/**
 * Time in which a rounded ramp comes up to its acceleration.
 *
 * t_j = a/j
 * @param acceleration a, reached [m/s²]
 * @param jerk j [m/s³]
 * @returns t_j [s]
 * @throws OutsideRange unless both are above zero
 */
export const easingTime = formula({
  name: 'easing-time',
  gives: { symbol: 't_j', of: 'time', means: 'time in which the acceleration comes up' },
  takes: {
    acceleration: {
      symbol: 'a',
      of: 'acceleration',
      means: 'acceleration that is reached',
      above: 0,
      because: 'nothing starts without it',
      slope: 'up',
      typical: [0.4, 1.5],
    },
    jerk: {
      symbol: 'j',
      of: 'jerk',
      means: 'jerk',
      above: 0,
      because: 'a jerk of nothing never starts',
      slope: 'down',
      typical: [3, 30],
    },
  },
  steps: ({ acceleration: a, jerk: j }, step) => step('t_j', 'a/j', a / j, 'time'),
  assumes: ['constant jerk'],
  source: [{ id: 'own-derivation', at: 'kinematics of constant jerk' }],
  checked: [{ kind: 'law', against: 'twice the jerk takes half the time' }],
  accuracy: 'exact for the profile',
});

/**
 * How far out of plumb a head may be and still be caught.
 *
 * c = (w − d)/2
 * @param mouth w, width in which it is caught [m]
 * @param head d, width of what is caught [m]
 * @returns c [m], below zero when the head is wider than the mouth
 * @throws OutsideRange for widths below zero
 */
export const catchReach = formula({
  name: 'catch-reach',
  gives: { symbol: 'c', of: 'length', means: 'how far out of plumb the dock still catches' },
  takes: {
    mouth: {
      symbol: 'w',
      of: 'length',
      means: 'width in which it is caught',
      above: 0,
      because: 'a dock that catches nothing is none',
      slope: 'up',
      typical: [0.02, 0.05],
    },
    head: {
      symbol: 'd',
      of: 'length',
      means: 'width of what is caught',
      from: 0,
      because: 'a width is not below nothing',
      slope: 'down',
      typical: [0, 0.018],
    },
  },
  steps: ({ mouth, head }, step) => step('c', '(w - d)/2', (mouth - head) / 2, 'length'),
  assumes: ['a round mouth under the pivot', 'what touches its slope from inside slides in'],
  source: [{ id: 'own-derivation', at: 'a circle in a circle' }],
  checked: [{ kind: 'law', against: 'a head as wide as the mouth must come in plumb' }],
  accuracy: 'exact for round ones',
});

/**
 * How far a swinging load reaches to the side.
 *
 * b = x + b₀
 * @param sideways x, of its middle [m]
 * @param half b₀, half of its width [m]
 * @returns b [m]
 * @throws OutsideRange for sizes below zero
 */
export const sideReach = formula({
  name: 'side-reach',
  gives: { symbol: 'b', of: 'length', means: 'how far the load reaches to the side' },
  takes: {
    sideways: {
      symbol: 'x',
      of: 'length',
      means: 'how far its middle is out',
      from: 0,
      because: 'it is taken without sign',
      slope: 'up',
      typical: [0.01, 0.2],
    },
    half: {
      symbol: 'b_0',
      of: 'length',
      means: 'half of its width',
      from: 0,
      because: 'a width is not below nothing',
      slope: 'up',
      typical: [0.05, 0.1],
    },
  },
  steps: ({ sideways, half }, step) => step('b', 'x + b_0', sideways + half, 'length'),
  assumes: ['the widest part is as low as the centre of mass'],
  source: [{ id: 'own-derivation', at: 'sum' }],
  checked: [{ kind: 'law', against: 'a load that hangs still reaches as far as it is wide' }],
  accuracy: 'a few per cent of the way to the side when the widest part is lower',
});
