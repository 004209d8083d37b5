/** From readings at the bench to the numbers of a motor. */
import { formula, OutsideRange } from '../../../kernel/index.ts';

const amperes = {
  symbol: 'I',
  of: 'current',
  means: 'current in each phase that is on',
  above: 0,
  because: 'nothing is measured without a current',
  typical: [0.5, 3],
} as const;

const room = {
  of: 'temperature',
  from: 223.15,
  to: 473.15,
  because: 'copper follows a straight line at ordinary temperatures',
  typical: [285, 300],
} as const;

/**
 * Resistance of a phase at 20 °C from the volts across it at a known current.
 *
 * R_m = V / (I · (1 + 0.00393·(θ − 20 °C)))
 * @param volts V, across the leads of the phase itself [V]
 * @param current I, through it [A]
 * @param temperature θ, of the winding [K]
 * @returns R_m [Ω]
 * @throws OutsideRange unless volts and current are above zero
 */
export const resistanceFromVolts = formula({
  name: 'resistance-from-volts',
  gives: { symbol: 'R_m', of: 'resistance', means: 'resistance of one phase at 20 °C' },
  takes: {
    volts: {
      symbol: 'V',
      of: 'voltage',
      means: 'volts across the leads of the phase',
      above: 0,
      because: 'copper has resistance',
      slope: 'up',
      typical: [0.4, 8],
    },
    current: { ...amperes, means: 'current through the phase', slope: 'down' },
    temperature: { ...room, symbol: 'θ', means: 'temperature of the winding', slope: 'down' },
  },
  steps: ({ volts, current, temperature }, step) => {
    const warm = step('R_θ', 'V/I', volts / current, 'resistance');
    return step('R_m', 'R_θ/(1 + 0.00393*(θ - 293.15))', warm / (1 + 0.00393 * (temperature - 293.15)), 'resistance');
  },
  assumes: ['no current flows in the leads to the voltmeter', 'the winding is as warm as the room'],
  source: [{ id: 'iec-60028' }, { id: 'own-derivation', at: 'Ohm' }],
  checked: [{ kind: 'law', against: 'the warm resistance that the cold one gives is what volts and current say' }],
  accuracy: 'as the readings',
});

/**
 * Inductance of a phase between the least and the most that are read over a turn of the rotor.
 *
 * L_m = L_l + s·(L_h − L_l)
 * @param least L_l, least reading [H]
 * @param most L_h, greatest reading [H]
 * @param share s, where between them [-]
 * @returns L_m [H]
 * @throws OutsideRange for no inductance, or a share outside 0 ≤ s ≤ 1
 */
export const inductanceOverTurn = formula({
  name: 'inductance-over-turn',
  gives: { symbol: 'L_m', of: 'inductance', means: 'inductance of one phase' },
  takes: {
    least: {
      symbol: 'L_l',
      of: 'inductance',
      means: 'least over a turn of the rotor',
      above: 0,
      because: 'a winding has inductance',
      slope: 'up',
      typical: [1e-3, 5e-3],
    },
    most: {
      symbol: 'L_h',
      of: 'inductance',
      means: 'greatest over a turn of the rotor',
      above: 0,
      because: 'a winding has inductance',
      slope: 'up',
      typical: [5e-3, 9e-3],
    },
    share: {
      symbol: 's',
      of: 'ratio',
      means: 'where between the two',
      from: 0,
      to: 1,
      because: 'it lies between the two',
      slope: 'up',
      typical: [0, 1],
    },
  },
  steps: ({ least, most, share }, step) =>
    step('L_m', 'L_l + s*(L_h - L_l)', least + share * (most - least), 'inductance'),
  assumes: ['the inductance at work lies between the two'],
  source: [{ id: 'own-derivation', at: 'between two readings' }],
  checked: [{ kind: 'law', against: 'one reading at no share, the other at the whole' }],
  accuracy: 'as the readings; 1 kHz is read below the frequencies of a chopper, where iron takes some per cent more',
});

/** Furthest that the current of a pull may be from the rated one, over it. */
const [LEAST_PULL, MOST_PULL] = [0.6, 1.25];

/**
 * Holding torque at the rated current from the pull at which the rotor gives way.
 *
 * T_h = F·(d + w)/2 · (1 + (1 − σ)·(I_r/I − 1))
 * @param pull F, along the line [N]
 * @param diameter d, of the pulley where the line lies [m]
 * @param line w, thickness of the line [m]
 * @param current I, in each of both phases [A]
 * @param rated I_r, rated current of each phase [A]
 * @param saturation σ, share of a rise of current that saturation takes [-]
 * @returns T_h [N·m]
 * @throws OutsideRange when the current is less than 0.6 or more than 1.25 of the rated one
 */
export const holdingTorqueFromPull = formula({
  name: 'holding-torque-from-pull',
  gives: { symbol: 'T_h', of: 'torque', means: 'holding torque, both phases at rated current' },
  takes: {
    pull: {
      symbol: 'F',
      of: 'force',
      means: 'pull at which the rotor gives way',
      above: 0,
      because: 'a stepper holds',
      slope: 'up',
      typical: [10, 60],
    },
    diameter: {
      symbol: 'd',
      of: 'length',
      means: 'diameter of the pulley where the line lies',
      above: 0,
      because: 'a force needs a lever',
      slope: 'up',
      typical: [0.03, 0.08],
    },
    line: {
      symbol: 'w',
      of: 'length',
      means: 'thickness of the line',
      from: 0,
      because: 'a line has a thickness',
      slope: 'up',
      typical: [0.0003, 0.002],
    },
    current: { ...amperes, slope: 'down', typical: [1.8, 2.6] },
    rated: {
      symbol: 'I_r',
      of: 'current',
      means: 'rated current of each phase, both on',
      above: 0,
      because: 'the torque belongs to a current',
      slope: 'up',
      typical: [2.4, 2.8],
    },
    saturation: {
      symbol: 'σ',
      of: 'ratio',
      means: 'share of a rise of current that saturation takes',
      from: 0,
      to: 1,
      because: 'iron takes part of it',
      slope: 'either',
      typical: [0, 0.3],
    },
  },
  steps: ({ pull, diameter, line, current, rated, saturation }, step) => {
    const torque = step('T', 'F*(d + w)/2', (pull * (diameter + line)) / 2, 'torque');
    if (!(current >= LEAST_PULL * rated && current <= MOST_PULL * rated))
      throw new OutsideRange(
        'holding-torque-from-pull',
        'I/I_r',
        current / rated,
        `${LEAST_PULL} ≤ I/I_r ≤ ${MOST_PULL}`,
        'torque at a current far from the rated one says little about it',
      );
    const more = step('u', 'I_r/I - 1', rated / current - 1, 'ratio');
    return step('T_h', 'T*(1 + (1 - σ)*u)', torque * (1 + (1 - saturation) * more), 'torque');
  },
  assumes: [
    'pulled slowly, along a tangent',
    'bearings without friction',
    'torque in proportion to current, less saturation',
  ],
  source: [
    { id: 'own-derivation', at: 'lever' },
    { id: 'stepper-drive-manuals', at: 'torque in proportion to current' },
  ],
  checked: [{ kind: 'law', against: 'at the rated current it is the pull times its lever' }],
  accuracy: 'as the readings; friction and the detent add or take some per cent',
});

/** Rise of the case over the room that makes a current the rated one [K]. */
const RATED_RISE = 50;
/** Rises from which the rated one may be reckoned [K]. */
const [LEAST_RISE, MOST_RISE] = [25, 80];

/**
 * Rated current from a run at a steady one: the current at which the case settles 50 K above the room.
 *
 * I_r = I·√((50 K/Δ)^(1+p) · ρ(κ·Δ)/ρ(κ·50 K)), Δ = θ_c − θ_a + u, ρ(x) = 1 + 0.00393·(θ_a − 20 °C + x)
 * @param current I, in each of both phases [A]
 * @param warm θ_c, of the case at the end [K]
 * @param air θ_a, of the room [K]
 * @param coming u, rise that would still have come [K]
 * @param ratio κ, rise of the winding over that of the case [-]
 * @param draught p, by how much more than in proportion heat goes with the rise [-]
 * @returns I_r [A], each phase, both on
 * @throws OutsideRange for a rise of less than 25 K or more than 80 K
 */
export const ratedCurrentFromRun = formula({
  name: 'rated-current-from-run',
  gives: { symbol: 'I_r', of: 'current', means: 'rated current of each phase, both on' },
  takes: {
    current: { ...amperes, slope: 'up' },
    warm: { ...room, symbol: 'θ_c', means: 'temperature of the case at the end', slope: 'down', typical: [340, 350] },
    air: { ...room, symbol: 'θ_a', means: 'temperature of the room', slope: 'either', typical: [288, 300] },
    coming: {
      symbol: 'u',
      of: 'temperature-difference',
      means: 'rise that would still have come',
      from: 0,
      because: 'a motor that is being heated gets no cooler',
      slope: 'down',
      typical: [0, 3],
    },
    ratio: {
      symbol: 'κ',
      of: 'ratio',
      means: 'rise of the winding over that of the case',
      from: 1,
      because: 'the winding heats the case',
      slope: 'either',
      typical: [1, 1.8],
    },
    draught: {
      symbol: 'p',
      of: 'ratio',
      means: 'by how much more than in proportion heat goes with the rise',
      from: 0,
      to: 0.5,
      because: 'warm air rises of itself, and radiation grows',
      slope: 'either',
      typical: [0, 0.3],
    },
  },
  steps: ({ current, warm, air, coming, ratio, draught }, step) => {
    const rise = step('Δ', 'θ_c - θ_a + u', warm - air + coming, 'temperature-difference');
    if (!(rise >= LEAST_RISE && rise <= MOST_RISE))
      throw new OutsideRange(
        'rated-current-from-run',
        'Δ',
        rise,
        `${LEAST_RISE} ≤ Δ ≤ ${MOST_RISE}`,
        'a run that ends far from 50 K says little about it',
      );
    const cold = step('c', '1 + 0.00393*(θ_a - 293.15)', 1 + 0.00393 * (air - 293.15), 'ratio');
    const copper = step(
      'q',
      '(c + 0.00393*κ*Δ)/(c + 0.00393*κ*50)',
      (cold + 0.00393 * ratio * rise) / (cold + 0.00393 * ratio * RATED_RISE),
      'ratio',
    );
    return step(
      'I_r',
      'I*sqrt((50/Δ)^(1 + p)*q)',
      current * Math.sqrt((RATED_RISE / rise) ** (1 + draught) * copper),
      'current',
    );
  },
  assumes: ['the same current in both phases', 'copper makes all of the heat', 'mounted for the run as in the machine'],
  source: [{ id: 'own-derivation', at: 'warming' }, { id: 'iec-60028' }],
  checked: [
    { kind: 'law', against: 'a run that ends at 50 K gives its own current back' },
    {
      kind: 'independent',
      against: '1,000 simulated motors of two lumps, each brought to rest with its copper warming',
    },
  ],
  accuracy: 'as the readings; a draught or another mount moves it by a tenth',
});
