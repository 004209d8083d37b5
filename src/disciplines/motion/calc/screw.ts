/** Screws that drive an axis. */
import { formula, OutsideRange } from '../../../kernel/index.ts';
import { flank, friction, lead, length, mean, STEEL_DENSITY } from './axis-takes.ts';

/**
 * Travel for each radian of a motor with a screw.
 *
 * r = p_h/(2·π·u)
 * @param lead p_h, lead of the screw [m]
 * @param reduction u, turns of the motor for one of the screw [-]
 * @returns r [m]
 * @throws OutsideRange when an input lies outside its range
 */
export const leadRadius = formula({
  name: 'lead-radius',
  gives: { symbol: 'r', of: 'length', means: 'travel for each radian of the motor' },
  takes: {
    lead: { ...lead, slope: 'up', typical: [0.002, 0.01] },
    reduction: {
      symbol: 'u',
      of: 'ratio',
      above: 0,
      otherwise: 1,
      means: 'turns of the motor for one of the screw',
      because: 'the motor turns the screw',
      slope: 'down',
      typical: [1, 3],
    },
  },
  steps: ({ lead: p, reduction: u }, step) => step('r', 'p_h/(2*pi*u)', p / (2 * Math.PI * u), 'length'),
  assumes: ['no play'],
  source: [{ id: 'own-derivation', at: 'one lead in one turn' }],
  checked: [{ kind: 'law', against: 'one turn of the screw is one lead' }],
  accuracy: 'exact',
});

/**
 * Efficiency of a sliding screw that drives its load.
 *
 * t = p_h/(π·d_m)
 * μ_1 = μ/cos(α)
 * η = t·(1 - μ_1·t)/(t + μ_1)
 * @param lead p_h, lead of the screw [m]
 * @param mean d_m, mean diameter of the thread [m]
 * @param friction μ, friction in the thread [-]
 * @param flank α, half of the angle of the thread [rad]
 * @returns η [-]
 * @throws OutsideRange when the thread binds
 */
export const screwEfficiency = formula({
  name: 'screw-efficiency',
  gives: { symbol: 'η', of: 'ratio', means: 'efficiency of the screw' },
  takes: {
    lead: { ...lead, slope: 'either', typical: [0.002, 0.01] },
    mean: { ...mean, slope: 'either', typical: [0.007, 0.01] },
    friction: { ...friction, slope: 'down', typical: [0.05, 0.2] },
    flank: { ...flank, slope: 'down', typical: [0, 0.26] },
  },
  steps: ({ lead: p, mean: d, friction: μ, flank: α }, step) => {
    const slope = step('t', 'p_h/(pi*d_m)', p / (Math.PI * d), 'ratio');
    const wedged = step('μ_1', 'μ/cos(α)', μ / Math.cos(α), 'ratio');
    if (!(wedged * slope < 1)) throw new OutsideRange('screw-efficiency', 'μ', μ, 'μ·t < 1', 'so steep a thread binds');
    return step('η', 't*(1 - μ_1*t)/(t + μ_1)', (slope * (1 - wedged * slope)) / (slope + wedged), 'ratio');
  },
  assumes: ['friction of the thread alone; the thrust bearing rolls'],
  source: [{ id: 'screw-statics' }, { id: 'lead-screw-formulas' }],
  checked: [
    {
      kind: 'published',
      against: '10 000 lb on a square thread, 2 in mean, 2 threads to the inch, μ = 0.2: 2840 in·lb',
      source: { id: 'screw-statics', at: 'problem 2' },
    },
    {
      kind: 'published',
      against: 'at most 50 % where it holds itself',
      source: { id: 'screw-statics', at: 'problem 3' },
    },
  ],
  accuracy: 'as good as the friction: within 30 % dry',
});

/**
 * Torque with which a load turns a sliding screw backward.
 *
 * t = p_h/(π·d_m)
 * μ_1 = μ/cos(α)
 * η_back = (t - μ_1)/(t·(1 + μ_1·t))
 * T_back = max(0, T_rest·η_back)
 * @param standing T_rest, torque at rest without friction [N·m]
 * @param lead p_h, lead of the screw [m]
 * @param mean d_m, mean diameter of the thread [m]
 * @param friction μ, friction in the thread [-]
 * @param flank α, half of the angle of the thread [rad]
 * @returns T_back [N·m]
 * @throws OutsideRange when an input lies outside its range
 */
export const screwBackDriving = formula({
  name: 'screw-back-driving',
  gives: { symbol: 'T_back', of: 'torque', means: 'torque that the load puts on the motor' },
  takes: {
    standing: {
      symbol: 'T_rest',
      of: 'torque',
      from: 0,
      means: 'torque at rest without friction',
      slope: 'up',
      typical: [0.005, 0.1],
    },
    lead: { ...lead, slope: 'either', typical: [0.004, 0.01] },
    mean: { ...mean, slope: 'either', typical: [0.007, 0.01] },
    friction: { ...friction, slope: 'down', typical: [0.05, 0.12] },
    flank: { ...flank, slope: 'down', typical: [0, 0.26] },
  },
  steps: ({ standing: T, lead: p, mean: d, friction: μ, flank: α }, step) => {
    const slope = step('t', 'p_h/(pi*d_m)', p / (Math.PI * d), 'ratio');
    const wedged = step('μ_1', 'μ/cos(α)', μ / Math.cos(α), 'ratio');
    const back = step(
      'η_back',
      '(t - μ_1)/(t*(1 + μ_1*t))',
      (slope - wedged) / (slope * (1 + wedged * slope)),
      'ratio',
    );
    return step('T_back', 'max(0, T_rest*η_back)', Math.max(0, T * back), 'torque');
  },
  assumes: ['friction of the thread alone', 'shaking lowers friction: a screw that only just holds creeps'],
  source: [{ id: 'screw-statics', at: 'problem 1' }, { id: 'lead-screw-formulas' }],
  checked: [{ kind: 'law', against: 'nothing where the slope of the thread is less than its friction' }],
  accuracy: 'as good as the friction: within 30 % dry',
});

/**
 * Inertia of a screw.
 *
 * J_turn = π·ρ·L·d_m^4/32
 * @param diameter d_m, mean diameter of the thread [m]
 * @param length L, length of the screw [m]
 * @param density ρ, density of the screw [kg/m³]
 * @returns J_turn [kg·m²]
 * @throws OutsideRange when an input lies outside its range
 */
export const screwInertia = formula({
  name: 'screw-inertia',
  gives: { symbol: 'J_turn', of: 'inertia', means: 'inertia of the screw' },
  takes: {
    diameter: { ...mean, slope: 'up', typical: [0.007, 0.02] },
    length: { ...length, means: 'length of the screw', slope: 'up', typical: [0.2, 1] },
    density: {
      symbol: 'ρ',
      of: 'density',
      above: 0,
      otherwise: STEEL_DENSITY,
      means: 'density of the screw',
      because: 'it is heavy',
      slope: 'up',
      typical: [7800, 7900],
    },
  },
  steps: ({ diameter: d, length: L, density: ρ }, step) =>
    step('J_turn', 'pi*ρ*L*d_m^4/32', (Math.PI * ρ * L * d ** 4) / 32, 'inertia'),
  assumes: ['a round bar of the mean diameter'],
  source: [{ id: 'own-derivation', at: 'round bar' }],
  checked: [{ kind: 'law', against: 'sixteen times as much at twice the diameter' }],
  accuracy: 'about 5 %',
});
