/** Heat of what is not a motor: drivers, servos, the air in the cabinet, the sun on its windows. */
import { formula, OutsideRange } from '../../../kernel/index.ts';
import { amperes, phases, power, volts } from './takes.ts';

/**
 * Heat of a driver: its bridge and what it takes for itself.
 *
 * P_d = p·I²·R_b + P_q
 * @param current I, peak phase current [A]
 * @param bridge R_b, both switches of one phase, warm [Ω]
 * @param quiescent P_q, own consumption and switching [W]
 * @param phases p, 1 for a sinusoid, 2 for full steps [-]
 * @returns P_d [W]
 * @throws OutsideRange for negative parts
 */
export const driverHeat = formula({
  name: 'driver-heat',
  gives: { symbol: 'P_d', of: 'power', means: 'heat of the driver' },
  takes: {
    current: { ...amperes, means: 'peak phase current', slope: 'up', typical: [0.3, 3] },
    bridge: {
      symbol: 'R_b',
      of: 'resistance',
      means: 'bridge of one phase',
      from: 0,
      because: 'a switch adds resistance',
      slope: 'up',
      typical: [0.1, 1],
    },
    quiescent: { ...power, symbol: 'P_q', means: 'own consumption and switching', slope: 'up', typical: [0.1, 1] },
    phases: { ...phases, slope: 'up' },
  },
  steps: ({ current, bridge, quiescent, phases: p }, step) =>
    step('P_d', 'p*I^2*R_b + P_q', p * current ** 2 * bridge + quiescent, 'power'),
  assumes: ['bridge resistance as warm as it gets', 'sense resistors counted with the bridge'],
  source: [{ id: 'own-derivation', at: 'cooling' }],
  checked: [{ kind: 'law', against: 'heat goes with the square of the current' }],
  accuracy: 'switching losses are only as good as P_q',
});

/**
 * Current that heats a servo as much as its play does: part of the time it stalls, for the rest it moves or holds.
 *
 * I_rms = √(s·I_st² + (1 − s)·I²)
 * @param stalled s, share of the time [-]
 * @param stall I_st, current when it stalls [A]
 * @param current I, otherwise [A]
 * @returns I_rms [A]
 * @throws OutsideRange when it takes less stalled than otherwise
 */
export const servoCurrent = formula({
  name: 'servo-current',
  gives: { symbol: 'I_rms', of: 'current', means: 'current that heats as much' },
  takes: {
    stalled: {
      symbol: 's',
      of: 'ratio',
      means: 'share of the time in which it stalls',
      from: 0,
      to: 1,
      because: 'a share of the time lies between none and all of it',
      slope: 'up',
      typical: [0.02, 0.3],
    },
    stall: { ...amperes, symbol: 'I_st', means: 'stall current', slope: 'up', typical: [1, 3] },
    current: { ...amperes, means: 'current otherwise', slope: 'up', typical: [0.1, 0.9] },
  },
  steps: ({ stalled, stall, current }, step) => {
    if (!(stall >= current))
      throw new OutsideRange('servo-current', 'I_st', stall, 'I_st ≥ I', 'a servo takes most when it stalls');
    const square = stalled * stall ** 2 + (1 - stalled) * current ** 2;
    return step('I_rms', 'sqrt(s*I_st^2 + (1 - s)*I^2)', Math.sqrt(square), 'current');
  },
  assumes: ['plays that are short beside the warming'],
  source: [{ id: 'own-derivation', at: 'cooling' }],
  checked: [{ kind: 'independent', against: '0.29155 A for 0.7 A at 10 % and 0.2 A at 90 %' }],
  accuracy: 'exact for the model',
});

/**
 * Heat of a servo: its motor has the resistance that stalls it, and most of its time it only holds.
 *
 * P_v = V·I_rms²/I_st
 * @param rail V, at the servo [V]
 * @param current I_rms, current that heats as much as the play does [A]
 * @param stall I_st, current when it stalls at this voltage [A]
 * @returns P_v [W]
 * @throws OutsideRange for no stall current
 */
export const servoHeat = formula({
  name: 'servo-heat',
  gives: { symbol: 'P_v', of: 'power', means: 'heat of the servo' },
  takes: {
    rail: { ...volts, means: 'voltage at the servo', slope: 'up', typical: [4.8, 7.4] },
    current: { ...amperes, symbol: 'I_rms', means: 'current that heats as much', slope: 'up', typical: [0.1, 1] },
    stall: {
      ...amperes,
      symbol: 'I_st',
      means: 'stall current',
      above: 0,
      because: 'a servo without current does nothing',
      slope: 'down',
      typical: [1, 3],
    },
  },
  steps: ({ rail, current, stall }, step) => {
    const resistance = step('R', 'V/I_st', rail / stall, 'resistance');
    return step('P_v', 'I_rms^2*R', current ** 2 * resistance, 'power');
  },
  assumes: ['the stall current is limited by the winding alone', 'work done on the load left out'],
  source: [{ id: 'own-derivation', at: 'cooling' }],
  checked: [{ kind: 'law', against: 'stalled for good, all of V·I_st is heat' }],
  accuracy: '20 %; electronics and gear left out',
});

/**
 * Rise of something that sheds its heat through one thermal resistance.
 *
 * Δ = P·R
 * @param power P [W]
 * @param resistance R, to the air [K/W]
 * @returns Δ [K]
 * @throws OutsideRange for negative heat
 */
export const plainRise = formula({
  name: 'rise-through-resistance',
  gives: { symbol: 'Δ', of: 'temperature-difference', means: 'rise above the air' },
  takes: {
    power: { ...power, slope: 'up', typical: [0.1, 10] },
    resistance: {
      symbol: 'R',
      of: 'thermal-resistance',
      means: 'thermal resistance to the air',
      from: 0,
      because: 'heat flows from warm to cold',
      slope: 'up',
      typical: [1, 40],
    },
  },
  steps: ({ power: P, resistance }, step) => step('Δ', 'P*R', P * resistance, 'temperature-difference'),
  assumes: ['settled'],
  source: [{ id: 'two-lump-motor' }],
  checked: [
    {
      kind: 'published-secondary',
      against: 'rise is power times thermal resistance',
      source: { id: 'two-lump-motor' },
    },
  ],
  accuracy: 'that of the thermal resistance',
});

/**
 * Heat that the sun brings through windows.
 *
 * P_g = g·E·A
 * @param transmittance g, share of the sun’s power that passes the pane [-]
 * @param irradiance E, on the pane [W/m²]
 * @param area A, of panes that the sun meets [m²]
 * @returns P_g [W]
 * @throws OutsideRange for more than all of the sun
 */
export const sunGain = formula({
  name: 'sun-gain',
  gives: { symbol: 'P_g', of: 'power', means: 'heat of the sun' },
  takes: {
    transmittance: {
      symbol: 'g',
      of: 'ratio',
      means: 'share of the sun that passes the pane',
      from: 0,
      to: 1,
      because: 'a pane adds no light',
      slope: 'up',
      typical: [0.6, 0.9],
    },
    irradiance: {
      symbol: 'E',
      of: 'irradiance',
      means: 'power of the sun on the pane',
      from: 0,
      to: 1367,
      because: 'above the air the sun brings 1367 W/m²',
      slope: 'up',
      typical: [0, 800],
    },
    area: {
      symbol: 'A',
      of: 'area',
      means: 'panes that the sun meets',
      from: 0,
      because: 'a pane has a size',
      slope: 'up',
      typical: [0.1, 1.5],
    },
  },
  steps: ({ transmittance, irradiance, area }, step) =>
    step('P_g', 'g*E*A', transmittance * irradiance * area, 'power'),
  assumes: ['all that passes is taken up inside'],
  source: [{ id: 'glazing-solar' }, { id: 'own-derivation', at: 'cooling' }],
  checked: [{ kind: 'law', against: 'energy is kept; no sun, no gain' }],
  accuracy: 'careful: part of it is thrown back out',
});

/**
 * How much warmer the air in a closed cabinet is than the room.
 *
 * Δ = P/(h·A)
 * @param power P, all heat inside [W]
 * @param transfer h, through wall and air films [W/(m²·K)]
 * @param surface A, outside of the cabinet that air can reach [m²]
 * @returns Δ [K]
 * @throws OutsideRange for no surface
 */
export const cabinetRise = formula({
  name: 'cabinet-rise',
  gives: { symbol: 'Δ', of: 'temperature-difference', means: 'rise of the air in the cabinet' },
  takes: {
    power: { ...power, means: 'all heat inside', slope: 'up', typical: [5, 300] },
    transfer: {
      symbol: 'h',
      of: 'heat-transfer',
      means: 'heat transfer through wall and air',
      above: 0,
      because: 'every wall lets heat through',
      slope: 'down',
      typical: [2.5, 6],
    },
    surface: {
      symbol: 'A',
      of: 'area',
      means: 'surface that air can reach',
      above: 0,
      because: 'a cabinet has an outside',
      slope: 'down',
      typical: [1, 6],
    },
  },
  steps: ({ power: P, transfer, surface }, step) =>
    step('Δ', 'P/(h*A)', P / (transfer * surface), 'temperature-difference'),
  assumes: ['closed cabinet', 'air well mixed', 'settled'],
  source: [{ id: 'cabinet-k-values' }],
  checked: [
    {
      kind: 'published-secondary',
      against: '500 W, 5.5 W/(m²·K), 6.06 m² and 15 K belong together',
      source: { id: 'cabinet-k-values' },
    },
  ],
  accuracy: '30 %: draughts and the place against a wall decide',
});
