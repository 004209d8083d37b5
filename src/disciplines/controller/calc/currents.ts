/** Currents of pins and contacts. */
import { formula } from '../../../kernel/index.ts';

/**
 * Currents of several pins together.
 *
 * I = Σ I_k
 * @param currents I_k [A]
 * @returns I [A]
 */
export const pinsTogether = formula({
  name: 'pins-together',
  gives: { symbol: 'I_sum', of: 'current', means: 'current of these pins together' },
  takes: {
    currents: {
      symbol: 'I',
      of: 'current',
      means: 'current of a pin',
      from: 0,
      because: 'what is given and what is taken are counted apart',
      slope: 'up',
      many: true,
      typical: [0, 0.02],
    },
  },
  steps: ({ currents }, step) =>
    step(
      'I_sum',
      'sum(I)',
      currents.reduce((sum, one) => sum + one, 0),
      'current',
    ),
  assumes: ['all are on at once'],
  source: [{ id: 'own-derivation', at: 'sums' }],
  checked: [{ kind: 'law', against: 'it is the current of a single one when the others are off' }],
  accuracy: 'exact; less where not all are on at once',
});

/**
 * Current through a contact that is closed to ground.
 *
 * I = V/R
 * @param volts V [V]
 * @param pull R [Ω]
 * @returns I [A]
 */
export const contactCurrent = formula({
  name: 'contact-current',
  gives: { symbol: 'I', of: 'current', means: 'current through the closed contact' },
  takes: {
    volts: {
      symbol: 'V',
      of: 'voltage',
      means: 'voltage of the board',
      above: 0,
      because: 'it is supplied',
      slope: 'up',
      typical: [3.3, 5],
    },
    pull: {
      symbol: 'R',
      of: 'resistance',
      means: 'resistance that holds the input',
      above: 0,
      because: 'a wire instead of it would short the supply',
      slope: 'down',
      typical: [500, 50000],
    },
  },
  steps: ({ volts, pull }, step) => step('I', 'V/R', volts / pull, 'current'),
  assumes: ['the resistance of wire and contact is small beside it'],
  source: [{ id: 'own-derivation', at: 'law of Ohm' }],
  checked: [{ kind: 'independent', against: '5 V and 1 kΩ: 5 mA' }],
  accuracy: 'exact for the model',
});
