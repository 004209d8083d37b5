/** What hoisting does to a swing, and what the line bears while it does. */
import { formula, OutsideRange } from '../../../kernel/index.ts';
import { fading, gravity, hoistAcceleration, hoistSpeed, length, SLOW } from './takes.ts';

const long = {
  ...length,
  symbol: 'L_0',
  means: 'from the pivot to the centre of mass at lift-off',
  typical: [0.7, 0.95],
} as const;
const short = {
  ...length,
  symbol: 'L_1',
  means: 'from the pivot to the centre of mass at the dock',
  typical: [0.18, 0.35],
} as const;
/** Swings wider than this share of the line are not small where hoisting makes them wider: 20°. */
const WIDE = 0.35;

/**
 * Time of a hoist from rest to rest.
 *
 * t = D/v + v/a with D = L₀ − L₁, or 2√(D/a) where the speed is not reached
 * @param long L₀ [m]
 * @param short L₁ [m]
 * @param speed v [m/s]
 * @param acceleration a [m/s²]
 * @returns t [s]
 * @throws OutsideRange unless the line gets shorter
 */
export const hoistTime = formula({
  name: 'hoist-time',
  gives: { symbol: 't_h', of: 'time', means: 'time of the hoist' },
  takes: {
    long: { ...long, slope: 'up' },
    short: { ...short, slope: 'down' },
    speed: { ...hoistSpeed, slope: 'down' },
    acceleration: { ...hoistAcceleration, slope: 'down' },
  },
  steps: ({ long: L0, short: L1, speed: v, acceleration: a }, step) => {
    const D = step('D', 'L_0 - L_1', L0 - L1, 'length');
    if (!(D > 0)) throw new OutsideRange('hoist-time', 'L_1', L1, `L_1 < ${L0}`, 'hoisting makes the line shorter');
    return step(
      't_h',
      'v^2 <= a*D ? D/v + v/a : 2*sqrt(D/a)',
      v ** 2 <= a * D ? D / v + v / a : 2 * Math.sqrt(D / a),
      'time',
    );
  },
  assumes: ['equal ramps up and down'],
  source: [{ id: 'own-derivation', at: 'kinematics of constant acceleration' }],
  checked: [{ kind: 'law', against: 'the two ramps and the cruise between them cover the hoist' }],
  accuracy: 'exact for the profile',
});

/**
 * Farthest that a load swings from the plumb line when it reaches the dock, hoisted out of plumb from rest.
 *
 * x₁ = x₀·(L₁/L₀)^¼·√((g + a)/(g − a))·e^(−t_h/τ). Sideways motion obeys ẍ + (g − L̈)/L·x = 0, whose amplitude follows the
 * fourth root of L while L changes slowly; each ramp of the hoist can add its share once, whatever the phase.
 * @param offset x₀, out of plumb at lift-off [m]
 * @param long L₀ [m]
 * @param short L₁ [m]
 * @param speed v [m/s]
 * @param acceleration a, below gravity [m/s²]
 * @param time t_h, of the hoist [s]
 * @param fading τ, time to fade to 37 % [s]
 * @param gravity g [m/s²]
 * @returns x₁ [m]
 * @throws OutsideRange for a hoist that is not slow, v ≤ 0.3·√(g·L₁), or an offset that is no small angle
 */
export const hoistedSideways = formula({
  name: 'hoisted-sideways',
  gives: { symbol: 'x_1', of: 'length', means: 'farthest from the plumb line on arrival' },
  takes: {
    offset: {
      symbol: 'x_0',
      of: 'length',
      means: 'out of plumb at lift-off',
      from: 0,
      because: 'it is taken without sign',
      slope: 'up',
      typical: [0.005, 0.03],
    },
    long: { ...long, slope: 'down' },
    short: { ...short, slope: 'up' },
    // It decides only whether the formula may be used.
    speed: { ...hoistSpeed, slope: 'up' },
    acceleration: { ...hoistAcceleration, slope: 'up' },
    time: {
      symbol: 't_h',
      of: 'time',
      means: 'time of the hoist',
      above: 0,
      because: 'a hoist takes time',
      slope: 'down',
      typical: [2, 6],
    },
    fading: { ...fading, slope: 'up' },
    gravity: { ...gravity, slope: 'down' },
  },
  steps: ({ offset: x0, long: L0, short: L1, speed: v, acceleration: a, time: t, fading: tau, gravity: g }, step) => {
    if (!(L1 < L0))
      throw new OutsideRange('hoisted-sideways', 'L_1', L1, `L_1 < ${L0}`, 'hoisting makes the line shorter');
    if (!(a < g)) throw new OutsideRange('hoisted-sideways', 'a', a, `a < ${g}`, 'the line would go slack');
    if (!(v <= SLOW * Math.sqrt(g * L1)))
      throw new OutsideRange(
        'hoisted-sideways',
        'v',
        v,
        `v ≤ ${SLOW}·√(g·L_1)`,
        'a faster hoist does not let the swing grow slowly',
      );
    if (!(x0 <= WIDE * L0))
      throw new OutsideRange('hoisted-sideways', 'x_0', x0, `x_0 ≤ ${WIDE}·L_0`, 'larger swings are not small');
    const growth = step('k', '(L_1/L_0)^0.25', (L1 / L0) ** 0.25, 'ratio');
    const ramps = step('k_a', 'sqrt((g + a)/(g - a))', Math.sqrt((g + a) / (g - a)), 'ratio');
    return step('x_1', 'x_0*k*k_a*exp(-t_h/τ)', x0 * growth * ramps * Math.exp(-t / tau), 'length');
  },
  assumes: [
    'the load leaves the heap at rest',
    'small swings',
    'the pivot stands still',
    'the line changes slowly against a swing',
  ],
  source: [
    { id: 'hoisted-pendulum', at: 'steady change of length' },
    { id: 'own-derivation', at: 'sideways motion on a line of changing length' },
  ],
  checked: [
    {
      kind: 'independent',
      against: '0.75984 of the offset from 0.6 m to 0.2 m without ramps and damping',
      source: { id: 'independent-computation', at: 'hoisting' },
    },
    {
      kind: 'independent',
      against: '300 random hoists integrated in three dimensions stay within it, and reach 80 % of it',
    },
  ],
  accuracy: 'a bound over all phases of the swing; the load is at most this far out when it arrives',
});

/**
 * Lean of a load that is so far to the side.
 *
 * θ = asin(x/L)
 * @param sideways x [m]
 * @param length L, pivot to centre of mass [m]
 * @returns θ [rad]
 * @throws OutsideRange when it is farther out than the line is long
 */
export const leanAt = formula({
  name: 'lean-at',
  gives: { symbol: 'θ', of: 'angle', means: 'lean of line and load' },
  takes: {
    sideways: {
      symbol: 'x',
      of: 'length',
      means: 'distance from the plumb line',
      from: 0,
      because: 'it is taken without sign',
      slope: 'up',
      typical: [0.005, 0.05],
    },
    length: { ...length, slope: 'down' },
  },
  steps: ({ sideways: x, length: L }, step) => {
    if (!(x <= L))
      throw new OutsideRange('lean-at', 'x', x, `x ≤ ${L}`, 'a load is never farther out than its line is long');
    return step('θ', 'asin(x/L)', Math.asin(x / L), 'angle');
  },
  assumes: ['a straight line', 'a rigid claw that leans with its line'],
  source: [{ id: 'own-derivation', at: 'a right triangle' }],
  checked: [{ kind: 'law', against: 'its sine times the length is the distance again' }],
  accuracy: 'exact',
});

/**
 * How far the hook is out when the centre of mass is so far out.
 *
 * x_h = x·(L − h)/L
 * @param sideways x, of the centre of mass [m]
 * @param length L, pivot to centre of mass [m]
 * @param below h, from the hook down to the centre of mass [m]
 * @returns x_h [m]
 * @throws OutsideRange unless the hook hangs below the pivot
 */
export const hookOffset = formula({
  name: 'hook-offset',
  gives: { symbol: 'x_h', of: 'length', means: 'distance of the hook from the plumb line' },
  takes: {
    sideways: { ...leanAt.declared.takes.sideways, means: 'distance of the centre of mass from the plumb line' },
    length: { ...length, slope: 'up' },
    below: {
      symbol: 'h',
      of: 'length',
      means: 'from the hook down to the centre of mass',
      from: 0,
      because: 'a load hangs below its hook',
      slope: 'down',
      typical: [0.03, 0.1],
    },
  },
  steps: ({ sideways: x, length: L, below: h }, step) => {
    if (!(h < L)) throw new OutsideRange('hook-offset', 'h', h, `h < ${L}`, 'the hook hangs below the pivot');
    return step('x_h', 'x*(L - h)/L', (x * (L - h)) / L, 'length');
  },
  assumes: ['a straight line', 'a rigid claw that leans with its line'],
  source: [{ id: 'own-derivation', at: 'similar triangles' }],
  checked: [{ kind: 'law', against: 'with no distance between them, hook and centre of mass are as far out' }],
  accuracy: 'exact',
});

/**
 * What the ramps of hoist and travel take from the pull of the line, for each kilogram.
 *
 * a_s = a_h + a_t·sin θ
 * @param hoist a_h, with which the line gives way or a rising load is stopped [m/s²]
 * @param travel a_t, of the pivot [m/s²]
 * @param angle θ, largest angle from the plumb line [rad]
 * @returns a_s [m/s²]
 * @throws OutsideRange outside the ranges of its inputs
 */
export const pullTaken = formula({
  name: 'pull-taken',
  gives: { symbol: 'a_s', of: 'acceleration', means: 'what ramps take from the pull of the line' },
  takes: {
    hoist: {
      symbol: 'a_h',
      of: 'acceleration',
      means: 'acceleration of the hoist',
      from: 0,
      because: 'it is taken without sign',
      slope: 'up',
      typical: [0.3, 2],
    },
    travel: {
      symbol: 'a_t',
      of: 'acceleration',
      means: 'acceleration of the pivot',
      from: 0,
      because: 'it is taken without sign',
      slope: 'up',
      typical: [0, 1.5],
    },
    angle: {
      symbol: 'θ',
      of: 'angle',
      means: 'largest angle from the plumb line',
      from: 0,
      to: Math.PI / 2,
      because: 'past the horizontal a line goes slack',
      slope: 'up',
      typical: [0.02, 0.5],
    },
  },
  steps: ({ hoist, travel, angle }, step) =>
    step('a_s', 'a_h + a_t*sin(θ)', hoist + travel * Math.sin(angle), 'acceleration'),
  assumes: ['both at once, at the end of a swing, where turning adds no pull'],
  source: [{ id: 'own-derivation', at: 'force along the line' }],
  checked: [
    {
      kind: 'independent',
      against: 'random motions integrated in three dimensions go slack only where this reaches the pull there is',
    },
  ],
  accuracy: 'a bound',
});

/**
 * Pull of the line that weight alone gives at the end of a swing, for each kilogram.
 *
 * a_w = g·cos θ
 * @param angle θ, largest angle from the plumb line [rad]
 * @param gravity g [m/s²]
 * @returns a_w [m/s²]
 * @throws OutsideRange past the horizontal
 */
export const pullThere = formula({
  name: 'pull-there',
  gives: { symbol: 'a_w', of: 'acceleration', means: 'pull of the line by weight at the end of a swing' },
  takes: {
    angle: { ...pullTaken.declared.takes.angle, slope: 'down' },
    gravity: { ...gravity, slope: 'up' },
  },
  steps: ({ angle, gravity: g }, step) => step('a_w', 'g*cos(θ)', g * Math.cos(angle), 'acceleration'),
  assumes: ['the load turns round there'],
  source: [{ id: 'own-derivation', at: 'force along the line' }],
  checked: [{ kind: 'law', against: 'all of the weight at rest, nothing at the horizontal' }],
  accuracy: 'exact',
});
