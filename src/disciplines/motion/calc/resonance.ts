/** A stepper on its magnetic spring: how it swings when it is stepped near its own frequency. */
import { formula } from '../../../kernel/index.ts';
import { inertia, rotorTeeth, speed } from './motor-takes.ts';

/**
 * Stiffness of the magnetic spring about a rest position.
 *
 * k = N_r · T
 * @param peakTorque T, torque at the top of the torque curve over angle [N·m]
 * @param teeth N_r, rotor teeth [-]
 * @returns k [N·m/rad]
 * @throws OutsideRange unless both are above zero
 */
export const magneticStiffness = formula({
  name: 'magnetic-stiffness',
  gives: { symbol: 'k', of: 'torsional-stiffness', means: 'stiffness of the magnetic spring' },
  takes: {
    peakTorque: {
      symbol: 'T',
      of: 'torque',
      means: 'torque at the top of the curve over angle',
      above: 0,
      because: 'without torque there is no spring',
      slope: 'up',
      typical: [0.2, 1.3],
    },
    teeth: { ...rotorTeeth, slope: 'up' },
  },
  steps: ({ peakTorque, teeth }, step) => step('k', 'N_r*T', teeth * peakTorque, 'torsional-stiffness'),
  assumes: ['torque is a sinusoid of the shaft angle'],
  source: [{ id: 'resonance-tutorial', at: 'resonance' }],
  checked: [{ kind: 'independent', against: '63.0 N·m/rad for 1.26 N·m and 50 teeth' }],
  accuracy: 'some per cent off where the torque curve is no sinusoid',
});

/**
 * Natural frequency of a rotor with its load on the magnetic spring.
 *
 * f = √(k/J) / 2π
 * @param stiffness k, magnetic spring [N·m/rad]
 * @param inertia J, rotor and coupled load [kg·m²]
 * @returns f [Hz]
 * @throws OutsideRange unless both are above zero
 */
export const naturalFrequency = formula({
  name: 'stepper-natural-frequency',
  gives: { symbol: 'f_n', of: 'frequency', means: 'natural frequency on the magnetic spring' },
  takes: {
    stiffness: {
      symbol: 'k',
      of: 'torsional-stiffness',
      means: 'stiffness of the magnetic spring',
      above: 0,
      because: 'without a spring nothing swings',
      slope: 'up',
      typical: [10, 65],
    },
    inertia: { ...inertia, slope: 'down' },
  },
  steps: ({ stiffness, inertia: J }, step) =>
    step('f_n', 'sqrt(k/J)/(2*pi)', Math.sqrt(stiffness / J) / (2 * Math.PI), 'frequency'),
  assumes: ['small swing', 'load coupled stiffly', 'little damping'],
  source: [{ id: 'resonance-tutorial', at: 'resonance' }],
  checked: [
    {
      kind: 'published',
      against: '56.8 Hz for a spring of 0.0032 N·m in 0.3° and 4.8·10⁻⁶ kg·m²',
      source: { id: 'resonance-example' },
    },
    { kind: 'independent', against: '230.64 and 163.09 Hz at 63.0 N·m/rad' },
    { kind: 'law', against: 'four times the inertia halves it' },
  ],
  accuracy: 'exact for the model; large swings are slower',
});

/**
 * Angle by which a loaded rotor lags behind its field at rest.
 *
 * Δθ = asin(T/T_m) / N_r
 * @param load T, steady load [N·m]
 * @param peakTorque T_m, torque at the top of the curve [N·m]
 * @param teeth N_r, rotor teeth [-]
 * @returns Δθ [rad] at the shaft
 * @throws OutsideRange for a load below zero or above the torque
 */
export const staticLag = formula({
  name: 'static-lag',
  gives: { symbol: 'δ', of: 'angle', means: 'lag of the shaft behind its field' },
  takes: {
    load: {
      symbol: 'T',
      of: 'torque',
      means: 'steady load',
      from: 0,
      because: 'its sense does not matter',
      slope: 'up',
      typical: [0.02, 0.15],
    },
    peakTorque: {
      symbol: 'T_m',
      of: 'torque',
      means: 'torque at the top of the curve over angle',
      above: 0,
      because: 'without torque it would not follow',
      slope: 'down',
      typical: [0.2, 1.3],
    },
    teeth: { ...rotorTeeth, slope: 'down' },
  },
  steps: ({ load, peakTorque, teeth }, step) =>
    // A load above the torque has slipped: the lag is then the whole way to the top of the curve.
    step('δ', 'asin(min(1, T/T_m))/N_r', Math.asin(Math.min(1, load / peakTorque)) / teeth, 'angle'),
  assumes: ['torque is a sinusoid of the shaft angle'],
  source: [{ id: 'pull-out-derivation', at: 'spring' }],
  checked: [{ kind: 'independent', against: '0.2755° for 0.30 of 1.26 N·m and 50 teeth' }],
  accuracy: 'exact for the model',
});

/**
 * Swing at which an unloaded rotor loses a step: the way to the hill beyond its place.
 *
 * A = π / N_r, two full steps; a load that uses 70 % of the torque leaves half of it
 * @param teeth N_r, rotor teeth [-]
 * @returns A [rad] at the shaft
 * @throws OutsideRange for no teeth
 */
export const swingRoom = formula({
  name: 'step-swing-room',
  gives: { symbol: 'A', of: 'angle', means: 'swing at which a step is lost' },
  takes: { teeth: { ...rotorTeeth, slope: 'down' } },
  steps: ({ teeth }, step) => step('A', 'pi/N_r', Math.PI / teeth, 'angle'),
  assumes: ['torque is a sinusoid of the shaft angle', 'no load'],
  source: [{ id: 'pull-out-derivation', at: 'spring' }],
  checked: [{ kind: 'law', against: 'two full steps' }],
  accuracy: 'exact for the model; with a load T less by the share 2/π·asin(T/T_m)',
});

/** Cruise this much faster than the resonance in its own steps, and it is only passed through. */
const CLEAR = 1.5;

/**
 * Swing that the steps themselves stir up near the natural frequency.
 *
 * Passing with a steady ramp: A_p = 1.17·s·f_n/√ḟ. Staying there: A_s = s/(1 − e^(−2πζ)). s is the angle of one step as
 * driven, ḟ the rise of the step rate. Each step adds a swing of its own size; on a ramp they add like a Fresnel integral,
 * whose first loop goes 17 % beyond its end.
 * @param natural f_n, natural frequency [Hz]
 * @param speed ω, speed that is kept after the ramp [rad/s]
 * @param ramp t_r, time from rest to that speed [s]
 * @param microsteps m, microsteps in a full step [-]
 * @param damping ζ, share of critical damping [-]
 * @param teeth N_r, rotor teeth [-]
 * @returns A_r [rad] at the shaft
 * @throws OutsideRange outside the ranges of its inputs
 */
export const resonanceSwing = formula({
  name: 'resonance-swing',
  gives: { symbol: 'A_r', of: 'angle', means: 'swing that stepping stirs up at resonance' },
  takes: {
    natural: {
      symbol: 'f_n',
      of: 'frequency',
      means: 'natural frequency on the magnetic spring',
      above: 0,
      because: 'everything on a spring has one',
      slope: 'up',
      typical: [60, 200],
    },
    speed: { ...speed, from: undefined, above: 0, means: 'speed that is kept after the ramp', slope: 'down' },
    ramp: {
      symbol: 't_r',
      of: 'time',
      means: 'time from rest to the speed',
      above: 0,
      because: 'nothing starts in no time',
      slope: 'up',
      typical: [0.1, 1],
    },
    microsteps: {
      symbol: 'm',
      of: 'count',
      means: 'microsteps in a full step',
      from: 1,
      because: 'a full step is the largest',
      slope: 'down',
      typical: [1, 16],
    },
    damping: {
      symbol: 'ζ',
      of: 'ratio',
      means: 'share of critical damping after a step',
      above: 0,
      below: 1,
      because: 'a rotor rings and comes to rest',
      slope: 'down',
      typical: [0.02, 0.1],
    },
    teeth: { ...rotorTeeth, slope: 'down' },
  },
  steps: ({ natural, speed: w, ramp, microsteps, damping, teeth }, step) => {
    const s = step('s', 'pi/(2*N_r*m)', Math.PI / (2 * teeth * microsteps), 'angle');
    const rate = step('f_s', 'ω/s', w / s, 'frequency');
    const staying = step('A_s', 's/(1 - exp(-2*pi*ζ))', s / (1 - Math.exp(-2 * Math.PI * damping)), 'angle');
    const passing = step('A_p', '1.17*s*f_n/sqrt(f_s/t_r)', (1.17 * s * natural) / Math.sqrt(rate / ramp), 'angle');
    return step(
      'A_r',
      `f_s > ${CLEAR}*f_n ? min(A_p, A_s) : A_s`,
      rate > CLEAR * natural ? Math.min(passing, staying) : staying,
      'angle',
    );
  },
  assumes: [
    'a speed that is not one and a half times clear of the resonance counts as standing on it',
    'small swing',
    'equal microsteps',
  ],
  source: [{ id: 'pull-out-derivation', at: 'spring' }],
  checked: [
    { kind: 'independent', against: 'a damped oscillator stepped in time on a ramp, summed step by step' },
    { kind: 'law', against: 'a full step on an undamped resonance has no bound; half the step is half the swing' },
  ],
  accuracy:
    'careful by up to a third; crossings at a half and a third of the resonance add to it when damping is below 0.01, friction takes from it',
});

/**
 * Time of one ramp of a travel that begins and ends alike.
 *
 * t_r = t − D/v
 * @param total t, time of the whole travel [s]
 * @param distance D, travel [m]
 * @param speed v, speed that is reached [m/s]
 * @returns t_r [s]
 * @throws OutsideRange unless all are above zero
 */
export const rampTime = formula({
  name: 'ramp-time',
  gives: { symbol: 't_r', of: 'time', means: 'time from rest to the speed' },
  takes: {
    total: {
      symbol: 't',
      of: 'time',
      means: 'time of the whole travel',
      above: 0,
      because: 'nothing travels in no time',
      slope: 'up',
      typical: [3, 6],
    },
    distance: {
      symbol: 'D',
      of: 'length',
      means: 'travel',
      above: 0,
      because: 'a travel has a length',
      slope: 'down',
      typical: [0.2, 0.4],
    },
    speed: {
      symbol: 'v',
      of: 'speed',
      means: 'speed that is reached',
      above: 0,
      because: 'it moves',
      slope: 'up',
      typical: [0.15, 0.3],
    },
  },
  // Rounding may leave less than nothing of a ramp that takes no time.
  steps: ({ total, distance, speed: v }, step) =>
    step('t_r', 'max(1e-9, t - D/v)', Math.max(1e-9, total - distance / v), 'time'),
  assumes: ['both ramps alike, trapezoid or rounded'],
  source: [{ id: 'pull-out-derivation' }],
  checked: [{ kind: 'independent', against: '0.25 s of a trapezoid of 0.5 m, 0.25 m/s and 1 m/s², 2.25 s in all' }],
  accuracy: 'exact',
});

/**
 * Time of a ramp that ends at another speed of the same acceleration.
 *
 * t_1 = t_r·v_1/v
 * @param ramp t_r, time from rest to the greatest speed [s]
 * @param speed v, greatest speed [m/s]
 * @param other v_1, the other speed [m/s]
 * @returns t_1 [s]
 * @throws OutsideRange unless all are above zero
 */
export const rampToOther = formula({
  name: 'ramp-to-other-speed',
  gives: { symbol: 't_1', of: 'time', means: 'time from rest to the other speed' },
  takes: {
    ramp: {
      symbol: 't_r',
      of: 'time',
      means: 'time from rest to the greatest speed',
      above: 0,
      because: 'nothing starts in no time',
      slope: 'up',
      typical: [0.1, 1],
    },
    speed: {
      symbol: 'v',
      of: 'speed',
      means: 'greatest speed',
      above: 0,
      because: 'it moves',
      slope: 'down',
      typical: [0.15, 0.3],
    },
    other: {
      symbol: 'v_1',
      of: 'speed',
      means: 'the other speed',
      above: 0,
      because: 'it moves',
      slope: 'up',
      typical: [0.01, 0.1],
    },
  },
  steps: ({ ramp, speed: v, other }, step) => step('t_1', 't_r*v_1/v', (ramp * other) / v, 'time'),
  assumes: ['the same mean acceleration'],
  source: [{ id: 'own-derivation', at: 'kinematics of constant acceleration' }],
  checked: [{ kind: 'law', against: 'half the speed after half the time' }],
  accuracy: 'exact for straight ramps; a rounded one to a low speed takes longer',
});
