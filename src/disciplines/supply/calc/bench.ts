/** How far a rail sags, and how that is read at the bench. */
import { formula, OutsideRange } from '../../../kernel/index.ts';

/**
 * Sag of a rail for each ampere, from its volts at two currents.
 *
 * R_s = (V_1 − V_2)/(I_2 − I_1)·g
 * @param lightVolts V_1, at the smaller current [V]
 * @param heavyVolts V_2, at the greater one [V]
 * @param light I_1, smaller current [A]
 * @param heavy I_2, greater current [A]
 * @param scale g, true over read of what both meters share, volts over ampere [-]
 * @returns R_s [Ω]
 * @throws OutsideRange unless the second current is the greater one
 */
export const sagFromVolts = formula({
  name: 'sag-from-volts',
  gives: { symbol: 'R_s', of: 'resistance', means: 'sag for each ampere' },
  takes: {
    lightVolts: {
      symbol: 'V_1',
      of: 'voltage',
      means: 'volts at the smaller current',
      from: 0,
      because: 'a rail has one sign',
      slope: 'up',
      typical: [24, 24.2],
    },
    heavyVolts: {
      symbol: 'V_2',
      of: 'voltage',
      means: 'volts at the greater current',
      from: 0,
      because: 'a rail has one sign',
      slope: 'down',
      typical: [23.6, 23.9],
    },
    light: {
      symbol: 'I_1',
      of: 'current',
      means: 'smaller current',
      from: 0,
      because: 'a load takes current or none',
      slope: 'either',
      typical: [0.1, 0.5],
    },
    heavy: {
      symbol: 'I_2',
      of: 'current',
      means: 'greater current',
      from: 0,
      because: 'a load takes current or none',
      slope: 'either',
      typical: [3, 4],
    },
    scale: {
      symbol: 'g',
      of: 'ratio',
      means: 'true over read of what both meters share',
      above: 0,
      because: 'meters are off by some per cent',
      slope: 'either',
      typical: [0.98, 1.02],
    },
  },
  steps: ({ lightVolts, heavyVolts, light, heavy, scale }, step) => {
    const more = step('ΔI', 'I_2 - I_1', heavy - light, 'current');
    if (!(more > 0))
      throw new OutsideRange('sag-from-volts', 'I_2', heavy, 'I_2 > I_1', 'a sag is seen between two currents');
    const lost = step('ΔV', 'V_1 - V_2', lightVolts - heavyVolts, 'voltage');
    return step('R_s', 'ΔV/ΔI*g', (lost / more) * scale, 'resistance');
  },
  assumes: ['a straight line between the two', 'both meters on the same range both times'],
  source: [{ id: 'own-derivation', at: 'Ohm' }],
  checked: [
    { kind: 'law', against: 'the resistance in series with a stiff source is found again at any two currents' },
  ],
  accuracy: 'as the readings; a supply that regulates at its terminals may sag by less than they can tell',
});

/**
 * Volts that a rail loses between no load and a current.
 *
 * ΔV = R_s·I
 * @param sag R_s, for each ampere [Ω]
 * @param current I [A]
 * @returns ΔV [V]
 * @throws OutsideRange below nothing
 */
export const railSag = formula({
  name: 'rail-sag',
  gives: { symbol: 'ΔV', of: 'voltage', means: 'volts that a rail loses under load' },
  takes: {
    sag: {
      symbol: 'R_s',
      of: 'resistance',
      means: 'sag for each ampere',
      from: 0,
      because: 'no load lifts a rail',
      slope: 'up',
      typical: [0.01, 0.1],
    },
    current: {
      symbol: 'I',
      of: 'current',
      means: 'current that is asked of it',
      from: 0,
      because: 'a load takes current or none',
      slope: 'up',
      typical: [0.5, 5],
    },
  },
  steps: ({ sag, current }, step) => step('ΔV', 'R_s*I', sag * current, 'voltage'),
  assumes: ['a straight line up to that current'],
  source: [{ id: 'own-derivation', at: 'Ohm' }],
  checked: [{ kind: 'law', against: 'twice the current loses twice as much' }],
  accuracy: 'as the sag',
});
