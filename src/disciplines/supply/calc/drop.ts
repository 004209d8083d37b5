/** Wire between a supply and what it feeds: a load that takes constant power pulls more current as the voltage sags. */
import { formula, NoSolution, type Take } from '../../../kernel/index.ts';
import { amperes, power, volts } from './takes.ts';

/** Why a wire has no working point. */
export const NO_POINT =
  'the wire cannot bring that power: the more current flows, the less voltage is left, down to nothing';

const feed = {
  symbol: 'R_f',
  of: 'resistance',
  means: 'wire out and back',
  from: 0,
  because: 'copper has resistance',
  typical: [0.02, 1],
} as const satisfies Take;

const ways = {
  symbol: 'p',
  of: 'count',
  means: 'conductors in parallel for each way',
  from: 1,
  because: 'one at least carries the current',
  otherwise: 1,
  typical: [1, 2],
} as const satisfies Take;

const warmth = {
  symbol: 'θ',
  of: 'temperature',
  means: 'temperature of the conductor',
  from: 223.15,
  to: 473.15,
  because: 'the straight line is for ordinary temperatures',
  otherwise: 293.15,
  typical: [293.15, 343.15],
} as const satisfies Take;

/**
 * Resistance of a pair of wires, out and back.
 *
 * R_f = 2·l·ρ/(p·A)·(1 + α·(θ − 20 °C))
 * @param length l, one way [m]
 * @param area A, copper of one conductor [m²]
 * @param parallel p, conductors in parallel for each way [-]
 * @param temperature θ, of the copper [K]
 * @returns R_f [Ω]
 * @throws OutsideRange for no copper
 */
export const feedResistance = formula({
  name: 'feed-resistance',
  gives: { symbol: 'R_f', of: 'resistance', means: 'wire out and back' },
  takes: {
    length: {
      symbol: 'l',
      of: 'length',
      means: 'length of the wire, one way',
      from: 0,
      because: 'a wire has a length',
      slope: 'up',
      typical: [0.3, 6],
    },
    area: {
      symbol: 'A',
      of: 'conductor-area',
      means: 'copper of one conductor',
      above: 0,
      because: 'a current needs copper',
      slope: 'down',
      typical: [0.2e-6, 2.5e-6],
    },
    parallel: { ...ways, slope: 'down' },
    temperature: { ...warmth, slope: 'up' },
    resistivity: {
      symbol: 'ρ',
      of: 'resistivity',
      means: 'resistivity of copper at 20 °C',
      above: 0,
      because: 'no wire of a machine is without resistance',
      otherwise: 1.7241e-8,
      slope: 'up',
      typical: [1.72e-8, 1.8e-8],
    },
  },
  steps: ({ length, area, parallel, temperature, resistivity }, step) => {
    const cold = step('R_c', '2*l*ρ/(p*A)', (2 * length * resistivity) / (parallel * area), 'resistance');
    return step('R_f', 'R_c*(1 + 0.00393*(θ - 293.15))', cold * (1 + 0.00393 * (temperature - 293.15)), 'resistance');
  },
  assumes: ['pure copper, drawn to its nominal area', 'contacts in good order and left out'],
  source: [{ id: 'iec-60028' }, { id: 'own-derivation', at: 'drop' }],
  checked: [
    {
      kind: 'independent',
      against: '0.8421 Ω for 10 m of AWG 24 at 20 °C, 0.9745 Ω at 60 °C; 0.12569 Ω for 6 m of AWG 18',
    },
  ],
  accuracy: '1 %; a wire may be 11 % above its nominal resistance, copper-clad aluminium 60 % and more',
});

/**
 * Resistance of a pair of wires, out and back, of which the resistance per length is known.
 *
 * R_f = 2·l·r/p·(1 + α·(θ − 20 °C))
 * @param length l, one way [m]
 * @param perLength r, of one conductor at 20 °C [Ω/m]
 * @param parallel p, conductors in parallel for each way [-]
 * @param temperature θ, of the conductor [K]
 * @returns R_f [Ω]
 * @throws OutsideRange for no conductor
 */
export const knownFeedResistance = formula({
  name: 'known-feed-resistance',
  gives: { symbol: 'R_f', of: 'resistance', means: 'wire out and back' },
  takes: {
    length: {
      symbol: 'l',
      of: 'length',
      means: 'length of the wire, one way',
      from: 0,
      because: 'a wire has a length',
      slope: 'up',
      typical: [0.3, 6],
    },
    perLength: {
      symbol: 'r',
      of: 'resistance-per-length',
      means: 'resistance of one conductor per length',
      from: 0,
      because: 'every conductor has some',
      slope: 'up',
      typical: [0.02, 0.2],
    },
    parallel: { ...ways, slope: 'down' },
    temperature: { ...warmth, slope: 'up' },
  },
  steps: ({ length, perLength, parallel, temperature }, step) => {
    const cold = step('R_c', '2*l*r/p', (2 * length * perLength) / parallel, 'resistance');
    return step('R_f', 'R_c*(1 + 0.00393*(θ - 293.15))', cold * (1 + 0.00393 * (temperature - 293.15)), 'resistance');
  },
  assumes: ['stated for 20 °C', 'aluminium warms like copper within 3 %', 'contacts in good order and left out'],
  source: [{ id: 'iec-60028' }, { id: 'own-derivation', at: 'drop' }],
  checked: [{ kind: 'independent', against: '0.8421 Ω for 10 m of AWG 24, 84.21 Ω/km, at 20 °C, 0.9745 Ω at 60 °C' }],
  accuracy: 'that of the stated resistance',
});

/**
 * Wire and fuse in series.
 *
 * R_b = R_f + R_s
 * @param feed R_f, wire out and back [Ω]
 * @param fuse R_s, the fuse itself [Ω]
 * @returns R_b [Ω]
 * @throws OutsideRange for negative parts
 */
export const branchResistance = formula({
  name: 'branch-resistance',
  gives: { symbol: 'R_b', of: 'resistance', means: 'wire out and back with its fuse' },
  takes: {
    feed: { ...feed, slope: 'up' },
    fuse: {
      ...feed,
      symbol: 'R_s',
      means: 'the fuse itself',
      because: 'what melts by a current has resistance',
      slope: 'up',
      typical: [0.02, 0.25],
    },
  },
  steps: ({ feed: R, fuse }, step) => step('R_b', 'R_f + R_s', R + fuse, 'resistance'),
  assumes: ['the holder in good order'],
  source: [{ id: 'own-derivation', at: 'drop' }],
  checked: [{ kind: 'law', against: 'resistances in series add' }],
  accuracy: 'exact',
});

/**
 * Drop on the wire for an assumed drop: one turn of the loop that the engine closes.
 *
 * ΔV = R_f·(I_c + P/(V − x))
 * @param feed R_f, wire out and back [Ω]
 * @param constant I_c, loads that take a constant current [A]
 * @param power P, loads that take a constant power [W]
 * @param rail V, at the supply [V]
 * @param assumed x, assumed drop [V]
 * @returns ΔV [V]
 * @throws OutsideRange when the assumed drop leaves no voltage
 */
export const feedDrop = formula({
  name: 'feed-drop',
  gives: { symbol: 'ΔV', of: 'voltage', means: 'drop on the wire' },
  takes: {
    feed: { ...feed, slope: 'up' },
    constant: {
      ...amperes,
      symbol: 'I_c',
      means: 'loads that take a constant current',
      slope: 'up',
      otherwise: 0,
      typical: [0.05, 2],
    },
    power: { ...power, means: 'loads that take a constant power', slope: 'up', otherwise: 0 },
    rail: { ...volts, means: 'voltage at the supply', slope: 'down', typical: [12, 36] },
    assumed: {
      symbol: 'x',
      of: 'voltage',
      means: 'assumed drop',
      from: 0,
      because: 'a wire adds no voltage',
      slope: 'up',
      typical: [0, 4],
    },
  },
  steps: ({ feed: R, constant, power: P, rail, assumed }, step) => {
    const left = step('V_l', 'V - x', rail - assumed, 'voltage');
    // With nothing left at the load no current brings the power: the next value is beyond all limits.
    const current = step('I', 'I_c + P/V_l', left > 0 ? constant + P / left : Infinity, 'current');
    return step('ΔV', 'R_f*I', R * current, 'voltage');
  },
  assumes: ['a converter or chopper takes the same power at any voltage'],
  source: [{ id: 'own-derivation', at: 'drop' }],
  checked: [
    { kind: 'independent', against: 'the lower root of x² − V·x + R·P = 0 at the closed loop' },
    { kind: 'law', against: 'Ohm’s law when all loads take constant current' },
  ],
  accuracy: 'exact for the model',
});

/**
 * Voltage that is left at the end of the wire.
 *
 * V_l = V − ΔV
 * @param rail V [V]
 * @param drop ΔV [V]
 * @returns V_l [V]
 * @throws OutsideRange for a negative drop
 */
export const voltageLeft = formula({
  name: 'voltage-left',
  gives: { symbol: 'V_l', of: 'voltage', means: 'voltage at the load' },
  takes: {
    rail: { ...volts, slope: 'up', typical: [12, 36] },
    drop: {
      symbol: 'ΔV',
      of: 'voltage',
      means: 'drop on the wire',
      from: 0,
      because: 'a wire adds no voltage',
      slope: 'down',
      typical: [0, 4],
    },
  },
  steps: ({ rail, drop }, step) => step('V_l', 'V - ΔV', rail - drop, 'voltage'),
  assumes: ['supply and return belong to the same wire'],
  source: [{ id: 'own-derivation', at: 'drop' }],
  checked: [{ kind: 'independent', against: '0.6284 V lost on 3 m of AWG 18 at 5 A' }],
  accuracy: 'exact',
});

/**
 * The most constant power that a wire can bring: at half of the voltage, where as much is lost as arrives.
 *
 * P_max = (V − R_f·I_c)²/(4·R_f)
 * @param rail V, at the supply [V]
 * @param feed R_f, wire out and back [Ω]
 * @param constant I_c, loads that take a constant current [A]
 * @returns P_max [W]
 * @throws OutsideRange for a wire without resistance, which knows no such limit
 */
export const mostPower = formula({
  name: 'most-power-through-wire',
  gives: { symbol: 'P_max', of: 'power', means: 'most power that the wire can bring' },
  takes: {
    rail: { ...volts, means: 'voltage at the supply', slope: 'up', typical: [12, 36] },
    feed: { ...feed, above: 0, because: 'a wire without resistance knows no such limit', slope: 'down' },
    constant: {
      ...amperes,
      symbol: 'I_c',
      means: 'loads that take a constant current',
      slope: 'down',
      otherwise: 0,
      typical: [0.05, 2],
    },
  },
  steps: ({ rail, feed: R, constant }, step) => {
    const left = step('U', 'max(0, V - R_f*I_c)', Math.max(0, rail - R * constant), 'voltage');
    return step('P_max', 'U^2/(4*R_f)', left ** 2 / (4 * R), 'power');
  },
  assumes: ['the supply itself holds its voltage'],
  source: [{ id: 'own-derivation', at: 'drop' }],
  checked: [{ kind: 'law', against: 'greatest of I·(U − R·I) over the current, reached at U/(2R)' }],
  accuracy: 'exact for the model',
});

/**
 * Drop beyond which more current brings less power: where a working point, if there is one, has been passed.
 *
 * x_m = (V + R_f·I_c)/2
 * @param rail V, at the supply [V]
 * @param feed R_f, wire out and back [Ω]
 * @param constant I_c, loads that take a constant current [A]
 * @returns x_m [V]
 * @throws NoSolution when the constant currents alone use up the voltage
 */
export const deepestDrop = formula({
  name: 'deepest-drop',
  gives: { symbol: 'x_m', of: 'voltage', means: 'drop beyond which more current brings less power' },
  takes: {
    rail: { ...volts, means: 'voltage at the supply', slope: 'up', typical: [12, 36] },
    feed: { ...feed, slope: 'up' },
    constant: {
      ...amperes,
      symbol: 'I_c',
      means: 'loads that take a constant current',
      slope: 'up',
      typical: [0.05, 2],
    },
  },
  steps: ({ rail, feed: R, constant }, step) => {
    const lost = step('x_c', 'R_f*I_c', R * constant, 'voltage');
    if (!(lost < rail)) throw new NoSolution('the drop on the wire', NO_POINT);
    return step('x_m', '(V + x_c)/2', (rail + lost) / 2, 'voltage');
  },
  assumes: ['the supply itself holds its voltage'],
  source: [{ id: 'own-derivation', at: 'drop' }],
  checked: [{ kind: 'law', against: 'the voltage left there is half of what the constant currents leave' }],
  accuracy: 'exact for the model',
});

/**
 * Drop that is allowed: a share of the voltage.
 *
 * ΔV_a = a·V
 * @param rail V [V]
 * @param share a [-]
 * @returns ΔV_a [V]
 * @throws OutsideRange for a share above all
 */
export const allowedDrop = formula({
  name: 'allowed-drop',
  gives: { symbol: 'ΔV_a', of: 'voltage', means: 'drop that is allowed' },
  takes: {
    rail: { ...volts, slope: 'up' },
    share: {
      symbol: 'a',
      of: 'ratio',
      means: 'share of the voltage',
      above: 0,
      to: 1,
      because: 'no wire loses more than all',
      slope: 'up',
      typical: [0.03, 0.05],
    },
  },
  steps: ({ rail, share }, step) => step('ΔV_a', 'a*V', share * rail, 'voltage'),
  assumes: [],
  source: [{ id: 'voltage-drop-limits' }],
  checked: [
    {
      kind: 'independent',
      against: '5 % of 12 V is 0.600 V: the longest run of AWG 24 at 0.5 A is 7.125 m, of AWG 18 at 5 A 2.864 m',
    },
  ],
  accuracy: 'a convention',
});
