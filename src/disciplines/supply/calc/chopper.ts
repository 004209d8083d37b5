/** What a chopper driver takes from its rail: power first, current from it; mean and ripple apart. */
import { formula } from '../../../kernel/index.ts';
import { amperes, peakCurrent, phases, power, volts } from './takes.ts';

/**
 * Phase current that the driver holds as it is set.
 *
 * I_h = s·I_p
 * @param peak I_p, peak phase current that the driver is set to [A]
 * @param share s, share of it that is kept [-]
 * @returns I_h, peak [A]
 * @throws OutsideRange for a share above all
 */
export const keptCurrent = formula({
  name: 'kept-phase-current',
  gives: { symbol: 'I_h', of: 'current', means: 'phase current that the driver holds, peak' },
  takes: {
    peak: { ...peakCurrent, slope: 'up' },
    share: {
      symbol: 's',
      of: 'ratio',
      means: 'share of the current that is kept',
      from: 0,
      to: 1,
      because: 'a driver lowers its current at rest and never raises it',
      slope: 'up',
      typical: [0.3, 1],
    },
  },
  steps: ({ peak, share }, step) => step('I_h', 's*I_p', share * peak, 'current'),
  assumes: ['the rail is high enough to push it through the copper; what follows from it is careful where it is not'],
  source: [{ id: 'own-derivation', at: 'chopper' }],
  checked: [{ kind: 'law', against: 'all of it is the setting' }],
  accuracy: 'the driver’s own tolerance, often 5 to 10 %',
});

/**
 * Resistance of a winding at its temperature.
 *
 * R_θ = R_20·(1 + α·(θ − 20 °C))
 * @param cold R_20, one winding at 20 °C [Ω]
 * @param temperature θ, temperature of the winding [K]
 * @returns R_θ [Ω]
 * @throws OutsideRange where the straight line of copper was not drawn
 */
export const windingAt = formula({
  name: 'winding-resistance-at',
  gives: { symbol: 'R_θ', of: 'resistance', means: 'resistance of one winding as warm as it is' },
  takes: {
    cold: {
      symbol: 'R_20',
      of: 'resistance',
      means: 'resistance of one winding at 20 °C',
      above: 0,
      because: 'copper has resistance',
      slope: 'up',
      typical: [0.5, 8],
    },
    temperature: {
      symbol: 'θ',
      of: 'temperature',
      means: 'temperature of the winding',
      from: 223.15,
      to: 523.15,
      because: 'the straight line is for ordinary temperatures',
      slope: 'up',
      typical: [293.15, 403.15],
    },
    coefficient: {
      symbol: 'α',
      of: 'temperature-coefficient',
      means: 'temperature coefficient of copper at 20 °C',
      from: 0,
      to: 0.006,
      because: 'metals for wire lie there',
      otherwise: 0.00393,
      slope: 'either',
      typical: [0.0038, 0.0042],
    },
  },
  steps: ({ cold, temperature, coefficient: a }, step) =>
    step('R_θ', 'R_20*(1 + α*(θ - 293.15))', cold * (1 + a * (temperature - 293.15)), 'resistance'),
  assumes: ['pure copper', 'the whole winding at one temperature'],
  source: [{ id: 'iec-60028' }],
  checked: [{ kind: 'law', against: '39.3 % more for 100 K' }],
  accuracy: '1 % up to 130 °C',
});

/**
 * Heat of a resistance that both phases have: winding, or cable and bridge.
 *
 * P_r = p·I²·R
 * @param current I, peak phase current [A]
 * @param resistance R, in each phase [Ω]
 * @param phases p, 1 for a sinusoid, 2 for full steps [-]
 * @returns P_r [W]
 * @throws OutsideRange for less than no resistance
 */
export const phaseHeat = formula({
  name: 'two-phase-heat',
  gives: { symbol: 'P_r', of: 'power', means: 'heat of the resistance in both phases' },
  takes: {
    current: { ...amperes, means: 'peak phase current', slope: 'up', typical: [0.5, 3] },
    resistance: {
      symbol: 'R',
      of: 'resistance',
      means: 'resistance in each phase',
      from: 0,
      because: 'a conductor adds resistance and takes none',
      slope: 'up',
      typical: [0.1, 8],
    },
    phases: { ...phases, slope: 'up' },
  },
  steps: ({ current, resistance, phases: p }, step) => step('P_r', 'p*I^2*R', p * current ** 2 * resistance, 'power'),
  assumes: ['the resistance is as warm as it is stated for', 'ripple of the chopper left out'],
  source: [{ id: 'own-derivation', at: 'chopper' }],
  checked: [
    { kind: 'independent', against: '14.11 W in full steps and 7.06 W in microsteps at 2.8 A in 0.9 Ω' },
    { kind: 'law', against: 'heat goes with the square of the current' },
  ],
  accuracy: 'exact for the model; chopper ripple adds some per cent where the inductance is low',
});

/**
 * Most heat that a rail can make in a resistance that both phases have, however much current is asked for.
 *
 * P_v = 2·V²/R: where the set current is reached at some angle of the microsteps, no more than p·I²·R arises
 * @param rail V, of the bridge [V]
 * @param resistance R, in each phase [Ω]
 * @returns P_v [W]
 * @throws OutsideRange for no voltage or no resistance
 */
export const railHeat = formula({
  name: 'rail-limited-heat',
  gives: { symbol: 'P_v', of: 'power', means: 'most heat that the rail can make' },
  takes: {
    rail: { ...volts, means: 'voltage of the bridge', slope: 'up' },
    resistance: {
      symbol: 'R',
      of: 'resistance',
      means: 'resistance in each phase',
      above: 0,
      because: 'a conductor has resistance',
      slope: 'down',
      typical: [0.5, 20],
    },
  },
  steps: ({ rail, resistance }, step) => step('P_v', '2*V^2/R', (2 * rail ** 2) / resistance, 'power'),
  assumes: ['both phases at the whole voltage of the rail'],
  source: [{ id: 'own-derivation', at: 'chopper' }],
  checked: [
    {
      kind: 'law',
      against: 'the lesser of this and p·I²·R is what Ohm’s law gives at the worst angle of the microsteps',
    },
  ],
  accuracy: 'exact for the model',
});

/**
 * Power that the iron of a stepper takes at a speed.
 *
 * P_fe = D·ω²
 * @param drag D, drag of the iron that rises with speed [N·m·s/rad]
 * @param speed ω, of the shaft [rad/s]
 * @returns P_fe [W]
 * @throws OutsideRange for negative parts
 */
export const ironHeat = formula({
  name: 'stepper-iron-heat',
  gives: { symbol: 'P_fe', of: 'power', means: 'heat of the iron' },
  takes: {
    drag: {
      symbol: 'D',
      of: 'rotary-damping',
      means: 'drag of the iron that rises with speed',
      from: 0,
      because: 'iron takes and gives nothing',
      slope: 'up',
      typical: [2e-4, 2e-3],
    },
    speed: {
      symbol: 'ω',
      of: 'angular-speed',
      means: 'speed of the shaft',
      from: 0,
      because: 'the sense of turning is left out',
      slope: 'up',
      typical: [5, 60],
    },
  },
  steps: ({ drag, speed }, step) => {
    const torque = step('T_fe', 'D*ω', drag * speed, 'torque');
    return step('P_fe', 'T_fe*ω', torque * speed, 'power');
  },
  assumes: ['the detent gives back what it takes'],
  source: [{ id: 'own-derivation', at: 'chopper' }],
  checked: [{ kind: 'law', against: 'what the iron takes from the torque at a speed it takes as power' }],
  accuracy: 'that of the measured drag',
});

/**
 * Power that a torque takes at a speed.
 *
 * P_t = T·ω
 * @param torque T, at the shaft [N·m]
 * @param speed ω, of the shaft [rad/s]
 * @returns P_t [W]
 * @throws OutsideRange for a negative torque or speed; power given back is reckoned apart
 */
export const shaftPower = formula({
  name: 'shaft-power',
  gives: { symbol: 'P_t', of: 'power', means: 'power at the shaft' },
  takes: {
    torque: {
      symbol: 'T',
      of: 'torque',
      means: 'torque at the shaft',
      from: 0,
      because: 'what is given back is reckoned apart',
      slope: 'up',
      typical: [0.01, 0.6],
    },
    speed: {
      symbol: 'ω',
      of: 'angular-speed',
      means: 'speed of the shaft',
      from: 0,
      because: 'the sense of turning is left out',
      slope: 'up',
      typical: [5, 60],
    },
  },
  steps: ({ torque, speed }, step) => step('P_t', 'T*ω', torque * speed, 'power'),
  assumes: ['steady turning'],
  source: [{ id: 'own-derivation', at: 'chopper' }],
  checked: [{ kind: 'law', against: '1 N·m at 1 rad/s is 1 W' }],
  accuracy: 'exact',
});

/**
 * Mean power that one driver takes from its rail.
 *
 * P = P_c + P_s + P_fe + P_m + P_q
 * @param copper P_c, copper heat of the motor [W]
 * @param series P_s, heat of cable and bridge [W]
 * @param iron P_fe, iron and drag of the motor [W]
 * @param mechanical P_m, what moves the load [W]
 * @param quiescent P_q, what the driver takes for itself [W]
 * @returns P [W]
 * @throws OutsideRange for a negative part
 */
export const chopperInput = formula({
  name: 'chopper-input',
  gives: { symbol: 'P', of: 'power', means: 'power that one driver takes' },
  takes: {
    copper: { ...power, symbol: 'P_c', means: 'copper heat', slope: 'up' },
    series: { ...power, symbol: 'P_s', means: 'heat of cable and bridge', slope: 'up', typical: [0.1, 5] },
    iron: { ...power, symbol: 'P_fe', means: 'iron and drag', slope: 'up', otherwise: 0, typical: [0.1, 4] },
    mechanical: {
      ...power,
      symbol: 'P_m',
      means: 'what moves the load',
      slope: 'up',
      otherwise: 0,
      typical: [0.5, 15],
    },
    quiescent: {
      ...power,
      symbol: 'P_q',
      means: 'what the driver takes for itself',
      slope: 'up',
      otherwise: 0,
      typical: [0.1, 1],
    },
  },
  steps: ({ copper, series, iron, mechanical, quiescent }, step) =>
    step('P', 'P_c + P_s + P_fe + P_m + P_q', copper + series + iron + mechanical + quiescent, 'power'),
  assumes: ['the chopper regulates its current, so that the rail sees power and not the phase current'],
  source: [{ id: 'own-derivation', at: 'chopper' }],
  checked: [
    { kind: 'independent', against: 'a simulated chopper bridge: energy from the rail over whole turns, within 1 %' },
    { kind: 'law', against: 'energy is kept' },
  ],
  accuracy: 'as good as its parts; switching losses stand in P_q',
});

/**
 * Mean current of a load that takes power.
 *
 * I = P/V
 * @param power P [W]
 * @param rail V, voltage at the load [V]
 * @returns I, mean [A]
 * @throws OutsideRange for no voltage
 */
export const meanCurrent = formula({
  name: 'mean-current',
  gives: { symbol: 'I', of: 'current', means: 'mean current from the rail' },
  takes: { power: { ...power, slope: 'up' }, rail: { ...volts, slope: 'down' } },
  steps: ({ power: P, rail }, step) => step('I', 'P/V', P / rail, 'current'),
  assumes: ['the rail’s ripple is small beside its voltage'],
  source: [{ id: 'own-derivation', at: 'chopper' }],
  checked: [{ kind: 'law', against: 'energy is kept' }],
  accuracy: 'exact for the mean',
});

/**
 * Ripple current that a chopper of two phases draws beside its mean; the capacitor at the driver carries it.
 *
 * With m = min(I/I_p, 16/(9π)): I_r = I_p·√(2·(4m/(3π) − 3m²/8)), averaged over the electrical turn; past the m at which it is
 * greatest it is taken to stay there
 * @param peak I_p, peak phase current [A]
 * @param mean I, mean current of the driver [A]
 * @returns I_r, RMS [A]
 * @throws OutsideRange for no phase current
 */
export const chopperRipple = formula({
  name: 'chopper-ripple',
  gives: { symbol: 'I_r', of: 'current', means: 'ripple current of the driver’s input, RMS' },
  takes: {
    peak: { ...peakCurrent, slope: 'up' },
    mean: { ...amperes, means: 'mean current of the driver', slope: 'up', typical: [0.05, 2] },
  },
  steps: ({ peak, mean }, step) => {
    const m = step('m', 'min(I/I_p, 16/(9*pi))', Math.min(mean / peak, 16 / (9 * Math.PI)), 'ratio');
    const square = step('q', '2*(4*m/(3*pi) - 3*m^2/8)', 2 * ((4 * m) / (3 * Math.PI) - (3 * m ** 2) / 8), 'ratio');
    return step('I_r', 'I_p*sqrt(q)', peak * Math.sqrt(square), 'current');
  },
  assumes: [
    'sinusoidal microsteps',
    'slow decay',
    'phase current and phase voltage together in time',
    'the two phases chop at times of their own',
  ],
  source: [{ id: 'own-derivation', at: 'ripple' }],
  checked: [
    {
      kind: 'independent',
      against:
        'mean square of the pulses summed over 20 000 angles: within 0.1 % up to its greatest, never below it after',
    },
    { kind: 'independent', against: 'a simulated chopper bridge: what the rail gives beside its mean, within 5 %' },
  ],
  accuracy:
    'held at the worst angle 9 % more; fast decay draws up to twice as much, phases that chop together up to √2 more',
});

/**
 * Speed of a motor from the speed of its axis.
 *
 * ω = v/r
 * @param speed v [m/s]
 * @param radius r, travel for each radian of the motor [m]
 * @returns ω [rad/s]
 * @throws OutsideRange for no travel
 */
export const motorSpeed = formula({
  name: 'motor-speed-of-axis',
  gives: { symbol: 'ω', of: 'angular-speed', means: 'speed of the motor' },
  takes: {
    speed: {
      symbol: 'v',
      of: 'speed',
      means: 'speed of the axis',
      from: 0,
      because: 'the sense is left out',
      slope: 'up',
      typical: [0.05, 0.4],
    },
    radius: {
      symbol: 'r',
      of: 'length',
      means: 'travel for each radian of the motor',
      above: 0,
      because: 'an axis that does not move turns nothing',
      slope: 'down',
      typical: [0.001, 0.02],
    },
  },
  steps: ({ speed, radius }, step) => step('ω', 'v/r', speed / radius, 'angular-speed'),
  assumes: ['nothing slips'],
  source: [{ id: 'own-derivation', at: 'chopper' }],
  checked: [{ kind: 'law', against: 'one turn takes the travel of one turn' }],
  accuracy: 'exact',
});
