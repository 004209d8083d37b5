/** What an axis weighs and resists. */
import { formula } from '../../../kernel/index.ts';
import { gravity, radius, share } from './axis-takes.ts';

/**
 * Even share of several motors on one axis.
 *
 * s = 1/n
 * @param motors n, motors on the axis [-]
 * @returns s [-]
 * @throws OutsideRange when an input lies outside its range
 */
export const evenShare = formula({
  name: 'even-share',
  gives: { symbol: 's', of: 'ratio', means: 'share of one motor' },
  takes: { motors: { symbol: 'n', of: 'count', from: 1, means: 'motors on the axis', slope: 'down', typical: [1, 2] } },
  steps: ({ motors: n }, step) => step('s', '1/n', 1 / n, 'ratio'),
  assumes: ['the load stands in the middle between the motors'],
  source: [{ id: 'own-derivation', at: 'definition' }],
  checked: [{ kind: 'law', against: 'the shares of all motors make the whole' }],
  accuracy: 'exact for an even load; a load at one end asks more of its side',
});

/**
 * A mass and what hangs on it.
 *
 * m = m_0 + m_1
 * @param own m_0, mass that is always there [kg]
 * @param load m_1, load [kg]
 * @returns m [kg]
 * @throws OutsideRange when an input lies outside its range
 */
export const massTogether = formula({
  name: 'mass-together',
  gives: { symbol: 'm', of: 'mass', means: 'mass that is moved' },
  takes: {
    own: { symbol: 'm_0', of: 'mass', above: 0, means: 'mass that is always there', slope: 'up', typical: [0.5, 3] },
    load: { symbol: 'm_1', of: 'mass', from: 0, means: 'load', slope: 'up', typical: [0, 0.2] },
  },
  steps: ({ own, load }, step) => step('m', 'm_0 + m_1', own + load, 'mass'),
  assumes: [],
  source: [{ id: 'own-derivation', at: 'definition' }],
  checked: [{ kind: 'law', against: 'a sum' }],
  accuracy: 'exact',
});

/**
 * Force that moves an axis.
 *
 * F = m·a + F_run + F_cord + m·g·sin(β)
 * @param mass m, mass that is moved [kg]
 * @param acceleration a, acceleration [m/s²]
 * @param resistance F_run, friction, as pulled with a scale [N]
 * @param pull F_cord, pull of cable chain or cord [N]
 * @param incline β, rise of the axis above level [rad]
 * @param gravity g, gravity [m/s²]
 * @returns F [N]
 * @throws OutsideRange when an input lies outside its range
 */
export const axisForce = formula({
  name: 'axis-force',
  gives: { symbol: 'F', of: 'force', means: 'force that moves the axis' },
  takes: {
    mass: { symbol: 'm', of: 'mass', above: 0, means: 'mass that is moved', slope: 'up', typical: [0.5, 5] },
    acceleration: { symbol: 'a', of: 'acceleration', from: 0, means: 'acceleration', slope: 'up', typical: [0, 2] },
    resistance: {
      symbol: 'F_run',
      of: 'force',
      from: 0,
      means: 'friction, as pulled with a scale',
      slope: 'up',
      typical: [0, 15],
    },
    pull: {
      symbol: 'F_cord',
      of: 'force',
      from: 0,
      means: 'pull of cable chain or cord',
      slope: 'up',
      typical: [0, 3],
    },
    incline: {
      symbol: 'β',
      of: 'angle',
      from: 0,
      to: Math.PI / 2,
      means: 'rise of the axis above level',
      because: 'an axis runs between level and upright',
      slope: 'up',
      typical: [0, Math.PI / 2],
    },
    gravity: { ...gravity, slope: 'up' },
  },
  steps: ({ mass: m, acceleration: a, resistance: F, pull: P, incline: β, gravity: g }, step) =>
    step('F', 'm*a + F_run + F_cord + m*g*sin(β)', m * a + F + P + m * g * Math.sin(β), 'force'),
  assumes: ['the mass moves as one', 'uphill and against the cord, which is the worst way'],
  source: [{ id: 'own-derivation', at: "Newton's second law" }],
  checked: [
    {
      kind: 'independent',
      against: '2 kg at 2 m/s² with μ = 0.02 needs 4.3923 N',
      source: { id: 'independent-computation', at: 'belt axis' },
    },
  ],
  accuracy: 'exact for the model; a running force measured once is good to about 20 %',
});

/**
 * Inertia that a motor turns besides its own rotor.
 *
 * J_load = s·m·r^2 + J_turn
 * @param mass m, mass that is moved [kg]
 * @param radius r, travel for each radian of the motor [m]
 * @param share s, share of the axis that this motor moves [-]
 * @param turning J_turn, pulley, drum or screw [kg·m²]
 * @returns J_load [kg·m²]
 * @throws OutsideRange when an input lies outside its range
 */
export const loadInertia = formula({
  name: 'load-inertia',
  gives: { symbol: 'J_load', of: 'inertia', means: 'inertia of the load as the motor feels it' },
  takes: {
    mass: { symbol: 'm', of: 'mass', above: 0, means: 'mass that is moved', slope: 'up', typical: [0.5, 5] },
    radius: { ...radius, slope: 'up', typical: [0.005, 0.02] },
    share: { ...share, slope: 'up', typical: [0.5, 1] },
    turning: {
      symbol: 'J_turn',
      of: 'inertia',
      from: 0,
      means: 'pulley, drum or screw',
      slope: 'up',
      typical: [0, 1e-5],
    },
  },
  steps: ({ mass: m, radius: r, share: s, turning: J }, step) =>
    step('J_load', 's*m*r^2 + J_turn', s * m * r ** 2 + J, 'inertia'),
  assumes: ['stiff between motor and load'],
  source: [{ id: 'own-derivation', at: 'equal kinetic energy' }],
  checked: [
    {
      kind: 'independent',
      against: '2 kg on a 20-tooth 2 mm pulley: 810.6 g·cm²',
      source: { id: 'independent-computation', at: 'belt axis' },
    },
    { kind: 'published', against: '5 lb at 1.5 in: 11.25 lb·in²', source: { id: 'rack-sizing-example', at: 'p. 25' } },
  ],
  accuracy: 'exact for the model',
});

/**
 * Inertia of pulley, drum or screw as the motor feels it through a reduction.
 *
 * J_turn = J_0/u^2
 * @param own J_0, pulley, drum or screw about its own shaft [kg·m²]
 * @param reduction u, turns of the motor for one of it [-]
 * @returns J_turn [kg·m²]
 * @throws OutsideRange when an input lies outside its range
 */
export const turningAtMotor = formula({
  name: 'turning-at-motor',
  gives: { symbol: 'J_turn', of: 'inertia', means: 'pulley, drum or screw as the motor feels it' },
  takes: {
    own: {
      symbol: 'J_0',
      of: 'inertia',
      from: 0,
      means: 'pulley, drum or screw about its own shaft',
      slope: 'up',
      typical: [0, 1e-4],
    },
    reduction: {
      symbol: 'u',
      of: 'ratio',
      above: 0,
      means: 'turns of the motor for one of it',
      because: 'the motor turns it',
      slope: 'down',
      typical: [1, 5],
    },
  },
  steps: ({ own: J, reduction: u }, step) => step('J_turn', 'J_0/u^2', J / u ** 2, 'inertia'),
  assumes: ['wheels and belt of the reduction weigh nothing', 'no play'],
  source: [{ id: 'own-derivation', at: 'equal kinetic energy' }],
  checked: [{ kind: 'law', against: 'the energy of its own slower turning' }],
  accuracy: 'exact for the model',
});

/**
 * Inertia that turns with the shaft: the rotor and what is fixed to it.
 *
 * J = J_rotor + J_turn
 * @param rotor J_rotor, rotor [kg·m²]
 * @param turning J_turn, pulley, drum or screw [kg·m²]
 * @returns J [kg·m²]
 * @throws OutsideRange when an input lies outside its range
 */
export const inertiaTogether = formula({
  name: 'inertia-together',
  gives: { symbol: 'J', of: 'inertia', means: 'inertia that turns with the shaft' },
  takes: {
    rotor: { symbol: 'J_rotor', of: 'inertia', from: 0, means: 'rotor', slope: 'up', typical: [1e-5, 6e-5] },
    turning: {
      symbol: 'J_turn',
      of: 'inertia',
      from: 0,
      means: 'pulley, drum or screw',
      slope: 'up',
      typical: [0, 1e-5],
    },
  },
  steps: ({ rotor, turning }, step) => step('J', 'J_rotor + J_turn', rotor + turning, 'inertia'),
  assumes: [],
  source: [{ id: 'own-derivation', at: 'definition' }],
  checked: [{ kind: 'law', against: 'a sum' }],
  accuracy: 'exact',
});

/**
 * How many times its own rotor a motor has to swing along.
 *
 * q = J_load/J_rotor
 * @param load J_load, inertia of the load [kg·m²]
 * @param rotor J_rotor, inertia of the rotor [kg·m²]
 * @returns q [-]
 * @throws OutsideRange when an input lies outside its range
 */
export const inertiaRatio = formula({
  name: 'inertia-ratio',
  gives: { symbol: 'q', of: 'count', means: 'inertia of the load over that of the rotor' },
  takes: {
    load: {
      symbol: 'J_load',
      of: 'inertia',
      from: 0,
      means: 'inertia of the load',
      slope: 'up',
      typical: [1e-5, 1e-4],
    },
    rotor: {
      symbol: 'J_rotor',
      of: 'inertia',
      above: 0,
      means: 'inertia of the rotor',
      slope: 'down',
      typical: [1e-5, 6e-5],
    },
  },
  steps: ({ load, rotor }, step) => step('q', 'J_load/J_rotor', load / rotor, 'count'),
  assumes: [],
  source: [{ id: 'own-derivation', at: 'definition' }],
  checked: [
    {
      kind: 'independent',
      against: '810.6 over 300 g·cm² is 2.70',
      source: { id: 'independent-computation', at: 'belt axis' },
    },
  ],
  accuracy: 'exact',
});
