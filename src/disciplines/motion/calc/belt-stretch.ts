/** How a belt gives, and what tones excite it. */
import { formula } from '../../../kernel/index.ts';
import { axial, force, stiffness } from './axis-takes.ts';

/**
 * Stiffness between motor and carriage of belts that run both ways round.
 *
 * k = n·EA·(1/L_1 + 1/L_2)
 * @param axial EA, stiffness of a length of belt [N]
 * @param short L_1, belt from motor to carriage the short way [m]
 * @param long L_2, belt the long way [m]
 * @param belts n, belts side by side [-]
 * @returns k [N/m]
 * @throws OutsideRange when an input lies outside its range
 */
export const beltStiffness = formula({
  name: 'belt-stiffness',
  gives: { symbol: 'k', of: 'stiffness', means: 'stiffness between motor and carriage' },
  takes: {
    axial: { ...axial, slope: 'up', typical: [1e4, 2.5e4] },
    short: {
      symbol: 'L_1',
      of: 'length',
      above: 0,
      means: 'belt from motor to carriage the short way',
      slope: 'down',
      typical: [0.1, 0.7],
    },
    long: { symbol: 'L_2', of: 'length', above: 0, means: 'belt the long way', slope: 'down', typical: [0.7, 1.3] },
    belts: {
      symbol: 'n',
      of: 'count',
      from: 1,
      otherwise: 1,
      means: 'belts side by side',
      slope: 'up',
      typical: [1, 2],
    },
  },
  steps: ({ axial: EA, short, long, belts: n }, step) =>
    step('k', 'n*EA*(1/L_1 + 1/L_2)', n * EA * (1 / short + 1 / long), 'stiffness'),
  assumes: ['both spans stay taut', 'stretch in proportion to force', 'stiff pulleys and frame'],
  source: [{ id: 'timing-belt-theory', at: 'linear positioning' }],
  checked: [{ kind: 'law', against: 'two springs side by side; softest in the middle of the loop' }],
  accuracy: 'the stiffness of rubber and glass belts is not constant: within a factor of two',
});

/**
 * How far a force stretches a drive.
 *
 * x = F/k
 * @param force F, force that moves the carriage [N]
 * @param stiffness k, stiffness of the drive [N/m]
 * @returns x [m]
 * @throws OutsideRange when an input lies outside its range
 */
export const stretch = formula({
  name: 'stretch',
  gives: { symbol: 'x', of: 'length', means: 'how far it gives' },
  takes: {
    force: { ...force, slope: 'up', typical: [2, 20] },
    stiffness: { ...stiffness, slope: 'down', typical: [2e4, 1e5] },
  },
  steps: ({ force: F, stiffness: k }, step) => step('x', 'F/k', F / k, 'length'),
  assumes: ['stretch in proportion to force'],
  source: [{ id: 'own-derivation', at: 'law of the spring' }],
  checked: [{ kind: 'law', against: 'twice as far under twice the force' }],
  accuracy: 'as good as the stiffness',
});

/**
 * Way that is lost when an axis turns back.
 *
 * x_spring = 2·F_run/k
 * x_motor = 2·δ·r
 * x = x_spring + x_motor + b
 * @param friction F_run, running force [N]
 * @param stiffness k, stiffness of the drive [N/m]
 * @param play b, play of teeth or nut [m]
 * @param lag δ, lag of the motor [rad]
 * @param radius r, travel for each radian of the motor [m]
 * @returns x [m]
 * @throws OutsideRange when an input lies outside its range
 */
export const lostMotion = formula({
  name: 'lost-motion',
  gives: { symbol: 'x', of: 'length', means: 'way lost at a turn back' },
  takes: {
    friction: { symbol: 'F_run', of: 'force', from: 0, means: 'running force', slope: 'up', typical: [2, 15] },
    stiffness: { ...stiffness, slope: 'down', typical: [2e4, 1e5] },
    play: { symbol: 'b', of: 'length', from: 0, means: 'play of teeth or nut', slope: 'up', typical: [0, 1e-4] },
    lag: { symbol: 'δ', of: 'angle', from: 0, means: 'lag of the motor', slope: 'up', typical: [0.001, 0.01] },
    radius: {
      symbol: 'r',
      of: 'length',
      above: 0,
      means: 'travel for each radian of the motor',
      because: 'the motor moves the axis',
      slope: 'up',
      typical: [0.005, 0.02],
    },
  },
  steps: ({ friction: F, stiffness: k, play: b, lag: δ, radius: r }, step) => {
    const spring = step('x_spring', '2*F_run/k', (2 * F) / k, 'length');
    const motor = step('x_motor', '2*δ*r', 2 * δ * r, 'length');
    return step('x', 'x_spring + x_motor + b', spring + motor + b, 'length');
  },
  assumes: ['friction pulls one way before and the other way after', 'slow turn back: no mass is swung'],
  source: [{ id: 'own-derivation', at: 'friction stretches the drive both ways' }],
  checked: [{ kind: 'law', against: 'only the play is left without friction' }],
  accuracy: 'as good as stiffness and running force',
});

/**
 * Natural frequency of a mass on a spring.
 *
 * f = √(k/m)/(2·π)
 * @param stiffness k, stiffness of the drive [N/m]
 * @param mass m, mass that swings [kg]
 * @returns f [Hz]
 * @throws OutsideRange when an input lies outside its range
 */
export const springFrequency = formula({
  name: 'spring-frequency',
  gives: { symbol: 'f', of: 'frequency', means: 'natural frequency' },
  takes: {
    stiffness: { ...stiffness, slope: 'up', typical: [2e4, 1e5] },
    mass: {
      symbol: 'm',
      of: 'mass',
      above: 0,
      means: 'mass that swings',
      because: 'something swings',
      slope: 'down',
      typical: [0.5, 5],
    },
  },
  steps: ({ stiffness: k, mass: m }, step) =>
    step('f', 'sqrt(k/m)/(2*pi)', Math.sqrt(k / m) / (2 * Math.PI), 'frequency'),
  assumes: ['the motor holds still', 'no damping'],
  source: [{ id: 'resonance-tutorial', at: 'resonance' }],
  checked: [
    {
      kind: 'published',
      against: 'the turning twin: 0.611 N·m/rad on 4.8·10⁻⁶ kg·m² rings at 56.8 Hz',
      source: { id: 'resonance-example' },
    },
  ],
  accuracy: 'as good as the stiffness: within 40 % for rubber belts',
});

/**
 * Tone that a stepping motor makes at a speed.
 *
 * f = n·N_r·v/(2·π·r)
 * @param speed v, speed of the axis [m/s]
 * @param radius r, travel for each radian of the motor [m]
 * @param teeth N_r, electrical turns in one turn [-]
 * @param multiple n, times in one electrical turn [-]
 * @returns f [Hz]
 * @throws OutsideRange when an input lies outside its range
 */
export const stepTone = formula({
  name: 'step-tone',
  gives: { symbol: 'f', of: 'frequency', means: 'tone of the motor' },
  takes: {
    speed: { symbol: 'v', of: 'speed', from: 0, means: 'speed of the axis', slope: 'up', typical: [0.02, 0.3] },
    radius: {
      symbol: 'r',
      of: 'length',
      above: 0,
      means: 'travel for each radian of the motor',
      because: 'the motor moves the axis',
      slope: 'down',
      typical: [0.005, 0.02],
    },
    teeth: {
      symbol: 'N_r',
      of: 'count',
      above: 0,
      means: 'electrical turns in one turn',
      because: 'a rotor has poles',
      slope: 'up',
      typical: [50, 100],
    },
    multiple: {
      symbol: 'n',
      of: 'count',
      from: 1,
      means: 'times in one electrical turn',
      slope: 'up',
      typical: [1, 4],
    },
  },
  steps: ({ speed: v, radius: r, teeth: N, multiple: n }, step) =>
    step('f', 'n*N_r*v/(2*pi*r)', (n * N * v) / (2 * Math.PI * r), 'frequency'),
  assumes: ['unequal phases sound once and twice in an electrical turn, full steps four times'],
  source: [{ id: 'own-derivation', at: 'rolling without slip' }],
  checked: [
    {
      kind: 'published',
      against: '19.1 rev/s at 200 steps a turn: 3820 steps/s',
      source: { id: 'rack-sizing-example', at: 'p. 25' },
    },
  ],
  accuracy: 'exact for the tones; how loud they are is not said',
});

/**
 * How far a tone lies from a natural frequency, as a share of it.
 *
 * s = abs(f/f_n - 1)
 * @param tone f, tone [Hz]
 * @param natural f_n, natural frequency [Hz]
 * @returns s [-]
 * @throws OutsideRange when an input lies outside its range
 */
export const toneDistance = formula({
  name: 'tone-distance',
  gives: { symbol: 's', of: 'ratio', means: 'distance of the tone from the natural frequency' },
  takes: {
    tone: { symbol: 'f', of: 'frequency', from: 0, means: 'tone', slope: 'either', typical: [100, 400] },
    natural: {
      symbol: 'f_n',
      of: 'frequency',
      above: 0,
      means: 'natural frequency',
      because: 'something swings',
      slope: 'either',
      typical: [15, 60],
    },
  },
  steps: ({ tone: f, natural: n }, step) => step('s', 'abs(f/f_n - 1)', Math.abs(f / n - 1), 'ratio'),
  assumes: [],
  source: [{ id: 'own-derivation', at: 'definition' }],
  checked: [{ kind: 'law', against: 'nothing at resonance, one for a tone at rest' }],
  accuracy: 'exact',
});
