/** What a chopper driver and its rail give a winding. */
import { formula } from '../../../kernel/index.ts';
import { current, inductance, resistance } from './motor-takes.ts';

/**
 * Peak phase current behind the number to which a driver is set.
 *
 * I_p = I_s · m
 * @param setting I_s, current as the driver's marking counts it [A]
 * @param marking m, peak over marked: 1 for a marking in peak, √2 for one in RMS [-]
 * @returns I_p [A], peak
 * @throws OutsideRange when the marking is taken for less than peak or more than √2 of it
 */
export const peakCurrent = formula({
  name: 'driver-peak-current',
  gives: { symbol: 'I_p', of: 'current', means: 'peak phase current' },
  takes: {
    setting: {
      symbol: 'I_s',
      of: 'current',
      means: 'current that the driver is set to, as marked',
      above: 0,
      because: 'without current there is no torque',
      slope: 'up',
      typical: [0.5, 3],
    },
    marking: {
      symbol: 'm',
      of: 'ratio',
      means: 'peak over marked current',
      from: 1,
      to: 1.4143,
      because: 'drivers are marked in peak or in RMS of a sinusoid',
      slope: 'up',
      typical: [1, Math.SQRT2],
    },
  },
  steps: ({ setting, marking }, step) => step('I_p', 'I_s*m', setting * marking, 'current'),
  assumes: ['sinusoidal microstepping'],
  source: [{ id: 'stepper-drive-manuals', at: 'RMS microstep current and its peak, 1.41 times' }],
  checked: [
    {
      kind: 'published',
      against: '2 A full scale is 1.414 A RMS in microstepping',
      source: { id: 'drv8825-datasheet', at: 'p. 9' },
    },
  ],
  accuracy: 'the driver’s own tolerance, often 5 to 10 %',
});

/**
 * Current that a driver with sense resistors regulates to at a reference voltage.
 *
 * V_ref = I_p · g · R_s
 * @param peak I_p, peak phase current wanted [A]
 * @param gain g, gain between reference and sense resistor [-]
 * @param sense R_s, sense resistor [Ω]
 * @returns V_ref [V]
 * @throws OutsideRange unless all are above zero
 */
export const referenceVoltage = formula({
  name: 'driver-reference-voltage',
  gives: { symbol: 'V_ref', of: 'voltage', means: 'reference voltage to set' },
  takes: {
    peak: { ...current, slope: 'up' },
    gain: {
      symbol: 'g',
      of: 'ratio',
      means: 'gain between reference and sense resistor',
      above: 0,
      because: 'the data sheet of the driver gives it',
      slope: 'up',
      typical: [5, 8],
    },
    sense: {
      symbol: 'R_s',
      of: 'resistance',
      means: 'sense resistor',
      above: 0,
      because: 'a current is sensed across a resistor',
      slope: 'up',
      typical: [0.05, 0.25],
    },
  },
  steps: ({ peak, gain, sense }, step) => step('V_ref', 'I_p*g*R_s', peak * gain * sense, 'voltage'),
  assumes: ['the driver chops at peak current across one resistor a phase'],
  source: [{ id: 'drv8825-datasheet', at: 'p. 9' }],
  checked: [
    {
      kind: 'published',
      against: '2.5 V and 0.25 Ω at a gain of 5 give 2 A',
      source: { id: 'drv8825-datasheet', at: 'p. 9' },
    },
  ],
  accuracy: 'tolerance of the resistor and of the trimmer',
});

/**
 * Resistance in a phase's loop: winding with what stands in series.
 *
 * R = R_θ + R_a
 * @param winding R_θ, winding as warm as it runs [Ω]
 * @param added R_a, cable and bridge [Ω]
 * @returns R [Ω]
 * @throws OutsideRange for no winding or less than no cable
 */
export const phaseLoopResistance = formula({
  name: 'phase-loop-resistance',
  gives: { symbol: 'R', of: 'resistance', means: 'resistance of one phase with cable and bridge' },
  takes: {
    winding: { ...resistance, symbol: 'R_θ', means: 'resistance of the winding', slope: 'up' },
    added: {
      symbol: 'R_a',
      of: 'resistance',
      means: 'cable and bridge',
      from: 0,
      because: 'a cable adds resistance and takes none',
      slope: 'up',
      typical: [0.1, 2],
    },
  },
  steps: ({ winding, added }, step) => step('R', 'R_θ + R_a', winding + added, 'resistance'),
  assumes: ['contacts in good order'],
  source: [{ id: 'pull-out-derivation' }],
  checked: [{ kind: 'law', against: 'resistances in series add' }],
  accuracy: 'exact',
});

/**
 * Cable out and back with the bridge: what stands in series with a winding.
 *
 * R_a = 2·l·r / p + R_b
 * @param length l, cable one way [m]
 * @param perLength r, resistance of one conductor per length [Ω/m]
 * @param parallel p, conductors in parallel for each lead [-]
 * @param bridge R_b, both switches and the sense resistor [Ω]
 * @returns R_a [Ω]
 * @throws OutsideRange for negative parts or no conductor
 */
export const addedResistance = formula({
  name: 'cable-and-bridge-resistance',
  gives: { symbol: 'R_a', of: 'resistance', means: 'cable and bridge' },
  takes: {
    length: {
      symbol: 'l',
      of: 'length',
      means: 'cable from driver to motor',
      from: 0,
      because: 'a cable has a length',
      slope: 'up',
      typical: [0.5, 5],
    },
    perLength: {
      symbol: 'r',
      of: 'resistance-per-length',
      means: 'resistance of one conductor per length',
      from: 0,
      because: 'copper has resistance',
      slope: 'up',
      typical: [0.02, 0.1],
    },
    parallel: {
      symbol: 'p',
      of: 'count',
      means: 'conductors in parallel for each lead',
      from: 1,
      because: 'one at least carries the current',
      slope: 'down',
      otherwise: 1,
      typical: [1, 2],
    },
    bridge: {
      symbol: 'R_b',
      of: 'resistance',
      means: 'bridge, both switches and sense resistor',
      from: 0,
      because: 'a switch adds resistance and takes none',
      slope: 'up',
      typical: [0.1, 1],
    },
  },
  steps: ({ length, perLength, parallel, bridge }, step) => {
    const cable = step('R_c', '2*l*r/p', (2 * length * perLength) / parallel, 'resistance');
    return step('R_a', 'R_c + R_b', cable + bridge, 'resistance');
  },
  assumes: ['the current goes out on one lead and back on the other', 'contacts in good order'],
  source: [{ id: 'pull-out-derivation' }],
  checked: [{ kind: 'law', against: 'resistances in series add; twice the length doubles the cable’s part' }],
  accuracy: 'exact',
});

/**
 * Voltage that reaches a winding: the rail less what the bridge keeps.
 *
 * V = V_r − V_d
 * @param rail V_r, rail at the driver [V]
 * @param drop V_d, drop of the bridge that does not go with current: none for field-effect transistors, about 2 V for bipolar ones [V]
 * @returns V [V]
 * @throws OutsideRange unless both are possible
 */
export const bridgeVoltage = formula({
  name: 'bridge-voltage',
  gives: { symbol: 'V', of: 'voltage', means: 'voltage that the bridge can put on a phase' },
  takes: {
    rail: {
      symbol: 'V_r',
      of: 'voltage',
      means: 'rail at the driver',
      above: 0,
      because: 'without a supply nothing is driven',
      slope: 'up',
      typical: [12, 36],
    },
    drop: {
      symbol: 'V_d',
      of: 'voltage',
      means: 'drop of the bridge',
      from: 0,
      because: 'a bridge adds no voltage',
      slope: 'down',
      otherwise: 0,
      typical: [0, 2],
    },
  },
  steps: ({ rail, drop }, step) => step('V', 'max(0, V_r - V_d)', Math.max(0, rail - drop), 'voltage'),
  assumes: ['the rail is stiff'],
  source: [{ id: 'pull-out-derivation' }],
  checked: [{ kind: 'law', against: 'voltages in series add' }],
  accuracy: 'exact',
});

/**
 * Amplitude of the sinusoid inside a square wave: the most that a bridge can make of its rail.
 *
 * V_s = 4·V/π
 * @param bridge V, voltage of the bridge [V]
 * @returns V_s [V]
 * @throws OutsideRange unless above zero
 */
export const squareWaveAmplitude = formula({
  name: 'square-wave-amplitude',
  gives: { symbol: 'V_s', of: 'voltage', means: 'amplitude of the fundamental of a square wave' },
  takes: {
    bridge: {
      symbol: 'V',
      of: 'voltage',
      means: 'voltage that the bridge can put on a phase',
      above: 0,
      because: 'without a supply nothing is driven',
      slope: 'up',
      typical: [11, 36],
    },
  },
  steps: ({ bridge }, step) => step('V_s', '4*V/pi', (4 * bridge) / Math.PI, 'voltage'),
  assumes: ['harmonics give no steady torque'],
  source: [{ id: 'pull-out-derivation', at: 'band' }],
  checked: [{ kind: 'law', against: 'Fourier series of a square wave' }],
  accuracy: 'exact',
});

/**
 * Time in which a current gets to 63 % of its end.
 *
 * τ = L / R
 * @param inductance L [H]
 * @param loop R [Ω]
 * @returns τ [s]
 * @throws OutsideRange unless both are above zero
 */
export const electricalTime = formula({
  name: 'winding-time',
  gives: { symbol: 'τ', of: 'time', means: 'electrical time of a phase' },
  takes: { inductance: { ...inductance, slope: 'up' }, loop: { ...resistance, slope: 'down' } },
  steps: ({ inductance: L, loop }, step) => step('τ', 'L/R', L / loop, 'time'),
  assumes: ['no iron losses'],
  source: [{ id: 'pull-out-derivation' }],
  checked: [{ kind: 'independent', against: '2.778 ms for 2.5 mH and 0.9 Ω' }],
  accuracy: 'exact for the model',
});
