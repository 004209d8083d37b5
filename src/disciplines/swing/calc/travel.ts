/** What a travel of the pivot does to a load on a line of one length. */
import { formula, OutsideRange } from '../../../kernel/index.ts';
import { easing, fading, gravity, length, travelAcceleration, travelSpeed } from './takes.ts';

/** What is left of a swing started by two jumps when the acceleration comes up in a time of its own. */
const softening = 'softening by an acceleration that comes up';

/**
 * Lean of a load behind a pivot that keeps accelerating.
 *
 * θ = atan(a/g)
 * @param acceleration a [m/s²]
 * @param gravity g [m/s²]
 * @returns θ [rad]
 * @throws OutsideRange for an acceleration below zero
 */
export const steadyLean = formula({
  name: 'steady-lean',
  gives: { symbol: 'θ_s', of: 'angle', means: 'lean behind a pivot that keeps accelerating' },
  takes: { acceleration: { ...travelAcceleration, slope: 'up' }, gravity: { ...gravity, slope: 'down' } },
  steps: ({ acceleration: a, gravity: g }, step) => step('θ_s', 'atan(a/g)', Math.atan(a / g), 'angle'),
  assumes: ['nothing swings'],
  source: [{ id: 'own-derivation', at: 'gravity as felt on the moving pivot' }],
  checked: [
    {
      kind: 'independent',
      against: '2.919° at 0.5 m/s²',
      source: { id: 'independent-computation', at: 'trolley' },
    },
  ],
  accuracy: 'exact; from rest the load overshoots to about twice this',
});

/**
 * Swing that is left after a travel from rest to rest, at its end.
 *
 * Four jumps of the acceleration, at 0, t_a = v/a, t_b = D/v and t_e = t_a + t_b, each start a fading swing of a/g; they
 * add as vectors: θ_r = (a/g)·e^(−r·t_e)·√(C² + S²)·ω/ω_d·k, r = 1/τ, ω_d = √(ω² − r²). Undamped and with jumps this is
 * (4a/g)·|sin(ω·t_a/2)·sin(ω·t_b/2)|. An acceleration that comes up in t_j softens it by k.
 * @param length L, pivot to centre of mass [m]
 * @param speed v, reached [m/s]
 * @param acceleration a, reached [m/s²]
 * @param distance D [m]
 * @param fading τ, time to fade to 37 % [s]
 * @param easing t_j, time in which the acceleration comes up [s]
 * @param gravity g [m/s²]
 * @returns θ_r [rad]
 * @throws OutsideRange where the speed is not reached on the way, or the swing is no oscillation
 */
export const travelResidual = formula({
  name: 'travel-residual',
  gives: { symbol: 'θ_r', of: 'angle', means: 'swing that is left at the end of the travel' },
  takes: {
    length: { ...length, slope: 'either' },
    speed: { ...travelSpeed, slope: 'either' },
    acceleration: { ...travelAcceleration, slope: 'either' },
    distance: {
      symbol: 'D',
      of: 'length',
      means: 'length of the travel',
      above: 0,
      because: 'a travel has a length',
      slope: 'either',
      typical: [0.3, 0.6],
    },
    fading: { ...fading, slope: 'either' },
    easing: { ...easing, slope: 'either' },
    gravity: { ...gravity, slope: 'either' },
  },
  steps: ({ length: L, speed: v, acceleration: a, distance: D, fading: tau, easing: tj, gravity: g }, step) => {
    if (!(v / a + tj <= (D / v) * (1 + 1e-9)))
      throw new OutsideRange(
        'travel-residual',
        'v',
        v,
        'what D leaves room for',
        'the travel ends before this speed is reached',
      );
    const w = step('ω', 'sqrt(g/L)', Math.sqrt(g / L), 'angular-speed');
    const r = step('r', '1/τ', 1 / tau, 'rate');
    if (!(r < w)) throw new OutsideRange('travel-residual', 'τ', tau, 'τ > 1/ω', 'the load would not swing at all');
    const wd = step('ω_d', 'sqrt(ω^2 - r^2)', Math.sqrt(w ** 2 - r ** 2), 'angular-speed');
    const ta = step('t_a', 'v/a', v / a, 'time');
    const tb = step('t_b', 'D/v', D / v, 'time');
    const te = step('t_e', 't_a + t_b', ta + tb, 'time');
    const sum = (part: (x: number) => number): number =>
      part(0) - Math.exp(r * ta) * part(wd * ta) - Math.exp(r * tb) * part(wd * tb) + Math.exp(r * te) * part(wd * te);
    const text = (part: string, first: string): string =>
      `${first} - exp(r*t_a)*${part}(ω_d*t_a) - exp(r*t_b)*${part}(ω_d*t_b) + exp(r*t_e)*${part}(ω_d*t_e)`;
    const C = step('C', text('cos', '1'), sum(Math.cos), 'ratio');
    const S = step('S', text('sin', '0'), sum(Math.sin), 'ratio');
    // As a sum of squares, which loses no digits where the ramp is sudden.
    const E = step('E', 'exp(-r*t_j)', Math.exp(-r * tj), 'ratio');
    const k = step(
      'k',
      'ω*t_j < 1e-6 ? 1 : sqrt((1 - E)^2 + 4*E*sin(ω_d*t_j/2)^2)/(ω*t_j)',
      w * tj < 1e-6 ? 1 : Math.sqrt((1 - E) ** 2 + 4 * E * Math.sin((wd * tj) / 2) ** 2) / (w * tj),
      'ratio',
    );
    return step(
      'θ_r',
      '(a/g)*exp(-r*t_e)*sqrt(C^2 + S^2)*(ω/ω_d)*k',
      (a / g) * Math.exp(-r * te) * Math.sqrt(C ** 2 + S ** 2) * (w / wd) * k,
      'angle',
    );
  },
  assumes: [
    'small swings',
    'the load hangs still at the start',
    'one length of line',
    `${softening} alike at each ramp`,
  ],
  source: [{ id: 'own-derivation', at: 'sum of four steps of acceleration' }],
  checked: [
    {
      kind: 'independent',
      against: '0.054357 and 0.170406 rad after two trapezoids without damping',
      source: { id: 'independent-computation', at: 'trolley' },
    },
    { kind: 'independent', against: 'the same travel integrated in three dimensions, at a thousandth of its size' },
    { kind: 'law', against: 'nothing is left when a ramp, or the time from ramp to ramp, lasts whole swings' },
  ],
  accuracy:
    'exact for small swings; up to 35° off by at most 2 % of 4a/g, half a degree, since large swings are slower: all of what is left near a length at which the ramps cancel',
});

/**
 * Largest swing that one drive of the worst length can leave, from rest to rest.
 *
 * θ_j = (4a/g)·sin(min(ω·v/a, π)/2)·k, k = sin(min(ω·t_j, π)/2)/(ω·t_j/2): two ramps whose swings meet in step. A shorter
 * drive comes up to less speed or acceleration in less time; where less time is worse, it is the drive that counts.
 * @param length L, pivot to centre of mass [m]
 * @param speed v, reached [m/s]
 * @param acceleration a, reached [m/s²]
 * @param easing t_j, time in which the acceleration comes up [s]
 * @param gravity g [m/s²]
 * @returns θ_j [rad]
 * @throws OutsideRange outside the ranges of its inputs
 */
export const worstJog = formula({
  name: 'worst-jog',
  gives: { symbol: 'θ_j', of: 'angle', means: 'largest swing that one drive of any length leaves' },
  takes: {
    length: { ...length, slope: 'either' },
    speed: { ...travelSpeed, slope: 'up' },
    acceleration: { ...travelAcceleration, slope: 'up' },
    easing: { ...easing, slope: 'down' },
    gravity: { ...gravity, slope: 'either' },
  },
  steps: ({ length: L, speed: v, acceleration: a, easing: tj, gravity: g }, step) => {
    const w = step('ω', 'sqrt(g/L)', Math.sqrt(g / L), 'angular-speed');
    const k = step(
      'k',
      'ω*t_j < 1e-6 ? 1 : sin(min(ω*t_j, pi)/2)/(ω*t_j/2)',
      w * tj < 1e-6 ? 1 : Math.sin(Math.min(w * tj, Math.PI) / 2) / ((w * tj) / 2),
      'ratio',
    );
    return step(
      'θ_j',
      '(4*a/g)*sin(min(ω*v/a, pi)/2)*k',
      ((4 * a) / g) * Math.sin(Math.min((w * v) / a, Math.PI) / 2) * k,
      'angle',
    );
  },
  assumes: ['small swings', 'no damping', 'the load hangs still at the start', 'ramps that do not overlap'],
  source: [{ id: 'own-derivation', at: 'both ramps of a travel in step' }],
  checked: [
    { kind: 'law', against: 'the greatest of what a travel leaves, over all its lengths' },
    { kind: 'independent', against: 'integrated drives of 60 lengths reach it and none passes it' },
    { kind: 'independent', against: 'none of 1,500 integrated drives with ramps rounded at random passes it' },
  ],
  accuracy: 'a bound for small swings, passed by 1 % at 38°; drives that follow each other in step can add up to more',
});

/**
 * How far an angle is to the side.
 *
 * x = L·sin θ
 * @param length L, pivot to the point that matters [m]
 * @param angle θ, from the plumb line [rad]
 * @returns x [m]
 * @throws OutsideRange past the horizontal
 */
export const sidewaysAt = formula({
  name: 'sideways-at',
  gives: { symbol: 'x', of: 'length', means: 'distance from the plumb line' },
  takes: {
    length: { ...length, slope: 'up' },
    angle: {
      symbol: 'θ',
      of: 'angle',
      means: 'angle from the plumb line',
      from: 0,
      to: Math.PI / 2,
      because: 'past the horizontal a line goes slack',
      slope: 'up',
      typical: [0.02, 0.5],
    },
  },
  steps: ({ length: L, angle }, step) => step('x', 'L*sin(θ)', L * Math.sin(angle), 'length'),
  assumes: ['a straight line', 'a rigid claw that leans with its line'],
  source: [{ id: 'own-derivation', at: 'a right triangle' }],
  checked: [
    {
      kind: 'independent',
      against: '21.74 mm for 0.054357 rad at 0.4 m, small angle',
      source: { id: 'independent-computation', at: 'trolley' },
    },
  ],
  accuracy: 'exact',
});

/**
 * What a swing has fallen to after a wait.
 *
 * θ_w = θ·e^(−t/τ)
 * @param angle θ, at the start [rad]
 * @param wait t [s]
 * @param fading τ, time to fade to 37 % [s]
 * @returns θ_w [rad]
 * @throws OutsideRange for a wait below zero
 */
export const swingLeft = formula({
  name: 'swing-left',
  gives: { symbol: 'θ_w', of: 'angle', means: 'swing after the wait' },
  takes: {
    angle: {
      symbol: 'θ',
      of: 'angle',
      means: 'swing at the start of the wait',
      from: 0,
      because: 'it is taken without sign',
      slope: 'up',
      typical: [0.02, 0.3],
    },
    wait: {
      symbol: 't',
      of: 'time',
      means: 'wait',
      from: 0,
      because: 'nobody waits less than not at all',
      slope: 'down',
      typical: [0, 10],
    },
    fading: { ...fading, slope: 'up' },
  },
  steps: ({ angle, wait: t, fading: tau }, step) => step('θ_w', 'θ*exp(-t/τ)', angle * Math.exp(-t / tau), 'angle'),
  assumes: ['pivot and line stand still', 'drag in proportion to speed'],
  source: [{ id: 'own-derivation', at: 'damped small swings' }],
  checked: [
    { kind: 'law', against: 'half is left after τ·ln 2, whatever the angle' },
    { kind: 'independent', against: 'the same swing integrated in three dimensions' },
  ],
  accuracy: 'as good as the damping',
});

/**
 * How long a swing takes to fall to what is allowed.
 *
 * t = τ·ln(max(1, θ/θ_a))
 * @param angle θ, at the start [rad]
 * @param allowed θ_a [rad]
 * @param fading τ, time to fade to 37 % [s]
 * @returns t [s]
 * @throws OutsideRange when nothing is allowed
 */
export const settleTime = formula({
  name: 'settle-time',
  gives: { symbol: 't', of: 'time', means: 'time until the swing has fallen to what is allowed' },
  takes: {
    angle: {
      symbol: 'θ',
      of: 'angle',
      means: 'swing at the start',
      from: 0,
      because: 'it is taken without sign',
      slope: 'up',
      typical: [0.05, 0.3],
    },
    allowed: {
      symbol: 'θ_a',
      of: 'angle',
      means: 'swing that is allowed',
      above: 0,
      because: 'no swing ever fades to nothing',
      slope: 'down',
      typical: [0.01, 0.05],
    },
    fading: { ...fading, slope: 'up' },
  },
  steps: ({ angle, allowed, fading: tau }, step) =>
    step('t', 'τ*log(max(1, θ/θ_a))', tau * Math.log(Math.max(1, angle / allowed)), 'time'),
  assumes: ['pivot and line stand still', 'drag in proportion to speed'],
  source: [{ id: 'own-derivation', at: 'damped small swings' }],
  checked: [{ kind: 'law', against: 'the swing left after this time is the one allowed' }],
  accuracy: 'as good as the damping',
});
