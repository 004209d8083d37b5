/** What happens when a rail comes up and when a contact closes on empty capacitors. */
import { formula, NoSolution } from '../../../kernel/index.ts';
import { amperes, capacitance, volts } from './takes.ts';

/**
 * Time in which a supply that limits its current brings a rail up.
 *
 * t = C·V/(I_l − I)
 * @param capacitance C, all capacitors on the rail [F]
 * @param rail V [V]
 * @param limit I_l, current at which the supply limits [A]
 * @param load I, taken at once by what starts with the rail [A]
 * @returns t [s]
 * @throws NoSolution when the loads take all that the supply gives, so that the rail never comes up
 */
export const chargingTime = formula({
  name: 'rail-start-time',
  gives: { symbol: 't', of: 'time', means: 'time in which the rail comes up' },
  takes: {
    capacitance: { ...capacitance, slope: 'up' },
    rail: { ...volts, slope: 'up' },
    limit: { ...amperes, symbol: 'I_l', means: 'current at which the supply limits', slope: 'down', typical: [4, 8] },
    load: {
      ...amperes,
      means: 'taken at once by what starts with the rail',
      slope: 'up',
      otherwise: 0,
      typical: [0.1, 3],
    },
  },
  steps: ({ capacitance: C, rail, limit, load }, step) => {
    const spare = step('I_x', 'I_l - I', limit - load, 'current');
    if (!(spare > 0))
      throw new NoSolution(
        'the start of the rail',
        'what hangs on the rail takes all the current that its supply gives, so that it never comes up',
      );
    return step('t', 'C*V/I_x', (C * rail) / spare, 'time');
  },
  assumes: [
    'the supply holds its limit while the voltage is low',
    'the loads take their full current from the first volt',
  ],
  source: [{ id: 'own-derivation', at: 'start' }],
  checked: [{ kind: 'law', against: 'charge is kept: C·V arrives in the time' }],
  accuracy: 'careful: most loads start later than the rail',
});

/**
 * Current at the moment a contact closes on empty capacitors.
 *
 * I_i = V/R
 * @param rail V [V]
 * @param loop R, wire, contact and capacitor [Ω]
 * @returns I_i [A]
 * @throws OutsideRange for no resistance
 */
export const inrushPeak = formula({
  name: 'inrush-peak',
  gives: { symbol: 'I_i', of: 'current', means: 'current at the moment of switching' },
  takes: {
    rail: { ...volts, slope: 'up' },
    loop: {
      symbol: 'R',
      of: 'resistance',
      means: 'wire, contact and capacitor',
      above: 0,
      because: 'every loop has some',
      slope: 'down',
      typical: [0.05, 1],
    },
  },
  steps: ({ rail, loop }, step) => step('I_i', 'V/R', rail / loop, 'current'),
  assumes: ['inductance of the wire left out', 'a charged capacitor of the supply stands behind the contact'],
  source: [{ id: 'own-derivation', at: 'start' }],
  checked: [{ kind: 'law', against: 'Ohm’s law' }],
  accuracy: 'careful',
});

/**
 * Let-through of the charging of a capacitor: what a fuse must bear at each switching on.
 *
 * J_i = C·V²/(2·R)
 * @param capacitance C, behind the fuse [F]
 * @param rail V [V]
 * @param loop R, wire, contact and capacitor [Ω]
 * @returns J_i [A²·s]
 * @throws OutsideRange for no resistance
 */
export const inrushLetThrough = formula({
  name: 'inrush-let-through',
  gives: { symbol: 'J_i', of: 'current-squared-time', means: 'let-through of one charging' },
  takes: {
    capacitance: { ...capacitance, slope: 'up' },
    rail: { ...volts, slope: 'up' },
    loop: {
      symbol: 'R',
      of: 'resistance',
      means: 'wire, contact and capacitor',
      above: 0,
      because: 'every loop has some',
      slope: 'down',
      typical: [0.05, 1],
    },
  },
  steps: ({ capacitance: C, rail, loop }, step) =>
    step('J_i', 'C*V^2/(2*R)', (C * rail ** 2) / (2 * loop), 'current-squared-time'),
  assumes: ['the capacitor was empty', 'the supply does not limit within the first milliseconds'],
  source: [{ id: 'own-derivation', at: 'start' }],
  checked: [{ kind: 'independent', against: 'the square of V/R·e^(−t/RC) integrated by a general solver' }],
  accuracy: 'exact for the model',
});

/**
 * What stands in the way of a charging current.
 *
 * R = R_k + R_f
 * @param contacts R_k, fuse, contacts and capacitor [Ω]
 * @param feed R_f, wire out and back [Ω]
 * @returns R [Ω]
 * @throws OutsideRange for negative parts
 */
export const inrushResistance = formula({
  name: 'inrush-resistance',
  gives: { symbol: 'R', of: 'resistance', means: 'wire, contact and capacitor' },
  takes: {
    contacts: {
      symbol: 'R_k',
      of: 'resistance',
      means: 'fuse, contacts and capacitor',
      from: 0,
      because: 'every loop has some',
      slope: 'up',
      typical: [0.02, 0.2],
    },
    feed: {
      symbol: 'R_f',
      of: 'resistance',
      means: 'wire out and back',
      from: 0,
      because: 'copper has resistance',
      slope: 'up',
      typical: [0.02, 1],
    },
  },
  steps: ({ contacts, feed }, step) => step('R', 'R_k + R_f', contacts + feed, 'resistance'),
  assumes: ['inductance of the wire left out'],
  source: [{ id: 'own-derivation', at: 'start' }],
  checked: [{ kind: 'law', against: 'resistances in series add' }],
  accuracy: 'exact',
});

/**
 * Capacitors side by side.
 *
 * C = Σ C_i
 * @param parts C_i, each [F]
 * @returns C [F]
 * @throws OutsideRange for a negative part
 */
export const capacitanceTogether = formula({
  name: 'capacitance-together',
  gives: { symbol: 'C', of: 'capacitance', means: 'capacitance on the rail' },
  takes: {
    parts: { ...capacitance, symbol: 'C_i', means: 'capacitor', above: undefined, from: 0, many: true, slope: 'up' },
  },
  steps: ({ parts }, step) =>
    step(
      'C',
      'sum(C_i)',
      parts.reduce((a, b) => a + b, 0),
      'capacitance',
    ),
  assumes: ['all on the same rail without diodes between them'],
  source: [{ id: 'own-derivation', at: 'stop' }],
  checked: [{ kind: 'law', against: 'charges add at one voltage' }],
  accuracy: 'electrolytic capacitors are −20 % to +20 %',
});
