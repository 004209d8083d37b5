/** A motor that stands still: its current, its torque and its heat. */
import { formula } from '../../../kernel/index.ts';
import { current, resistance, torqueConstant } from './motor-takes.ts';

/**
 * Copper heat of a motor, both phases together.
 *
 * P = p·I_p²·R: p is 1 in microsteps, 2 with both phases full on
 * @param peak I_p, peak phase current [A]
 * @param winding R, one winding [Ω]
 * @param phases p, 1 for a sinusoid, 2 for full steps [-]
 * @returns P [W]
 * @throws OutsideRange unless all are possible
 */
export const copperHeat = formula({
  name: 'stepper-copper-heat',
  gives: { symbol: 'P', of: 'power', means: 'copper heat of both phases' },
  takes: {
    peak: { ...current, above: undefined, from: 0, slope: 'up' },
    winding: { ...resistance, means: 'resistance of one winding', slope: 'up' },
    phases: {
      symbol: 'p',
      of: 'count',
      means: 'mean square of the phase currents over the peak square: 1 in microsteps, 2 in full steps',
      from: 1,
      to: 2,
      because: 'two phases carry it',
      slope: 'up',
      otherwise: 1,
      typical: [1, 2],
    },
  },
  steps: ({ peak, winding, phases }, step) => step('P', 'p*I_p^2*R', phases * peak ** 2 * winding, 'power'),
  assumes: ['ripple of the chopper left out'],
  source: [{ id: 'pull-out-derivation' }],
  checked: [
    { kind: 'independent', against: '14.11 W in full steps and 7.06 W in microsteps at 2.8 A in 0.9 Ω' },
    { kind: 'law', against: 'heat goes with the square of the current' },
  ],
  accuracy: 'exact for the copper',
});

/**
 * Current of the phase at rest: what is set, or what the rail can push through the copper.
 *
 * I_0 = min(I_p·s, V/R)
 * @param peak I_p, peak phase current [A]
 * @param share s, share of it at standstill [-]
 * @param volts V, bridge voltage [V]
 * @param loop R, loop resistance [Ω]
 * @returns I_0 [A]
 * @throws OutsideRange when the share is not between none and all
 */
export const standstillCurrent = formula({
  name: 'standstill-current',
  gives: { symbol: 'I_0', of: 'current', means: 'phase current at rest, peak' },
  takes: {
    peak: { ...current, slope: 'up' },
    share: {
      symbol: 's',
      of: 'ratio',
      means: 'share of the current that is kept at standstill',
      from: 0,
      to: 1,
      because: 'drivers lower the current at rest and never raise it',
      slope: 'up',
      otherwise: 1,
      typical: [0.3, 1],
    },
    volts: {
      symbol: 'V',
      of: 'voltage',
      means: 'voltage that the bridge can put on a phase',
      from: 0,
      because: 'a bridge has a sense',
      slope: 'up',
      typical: [11, 36],
    },
    loop: { ...resistance, slope: 'down' },
  },
  steps: ({ peak, share, volts, loop }, step) =>
    step('I_0', 'min(I_p*s, V/R)', Math.min(peak * share, volts / loop), 'current'),
  assumes: ['the chopper has settled'],
  source: [{ id: 'pull-out-derivation' }],
  checked: [{ kind: 'law', against: 'Ohm’s law where the rail is too low for the setting' }],
  accuracy: 'exact for the model',
});

/**
 * Torque that holds the shaft at rest wherever it stands: the magnet torque less the detent that works against it.
 *
 * T_0 = max(0, K·I_0 − T_d)
 * @param constant K, torque per ampere [N·m/A]
 * @param atRest I_0, phase current at rest, peak [A]
 * @param detent T_d, detent torque [N·m]
 * @returns T_0 [N·m]
 * @throws OutsideRange unless all are possible
 */
export const standstillTorque = formula({
  name: 'standstill-torque',
  gives: { symbol: 'T_0', of: 'torque', means: 'torque that holds at rest' },
  takes: {
    constant: { ...torqueConstant, slope: 'up' },
    atRest: {
      symbol: 'I_0',
      of: 'current',
      means: 'phase current at rest, peak',
      from: 0,
      because: 'the sense is left out',
      slope: 'up',
      typical: [0.3, 3],
    },
    detent: {
      symbol: 'T_d',
      of: 'torque',
      means: 'detent torque',
      from: 0,
      because: 'it is given as a size',
      slope: 'down',
      typical: [0.01, 0.08],
    },
  },
  steps: ({ constant, atRest, detent }, step) =>
    step('T_0', 'max(0, K*I_0 - T_d)', Math.max(0, constant * atRest - detent), 'torque'),
  assumes: ['the current vector keeps its length between the full steps'],
  source: [{ id: 'pull-out-derivation' }],
  checked: [
    { kind: 'law', against: 'half the current holds half as much, less the same detent' },
    {
      kind: 'published',
      against: '70 % of the current holds 70 % of the torque',
      source: { id: 'stepper-drive-manuals' },
    },
    {
      kind: 'published-secondary',
      against: 'one phase alone holds 1/√2; at 85 % of the current 60 %',
      source: { id: 'one-phase-torque' },
    },
  ],
  accuracy: 'careful: at many places the detent helps',
});

/**
 * Peak phase current at which the copper of both phases is as hot as at the rated current.
 *
 * I_m = √2·I_r in microsteps, I_r in full and half steps, which hold both phases at the peak
 * @param rated I_r, rated current of each phase, both on [A]
 * @param microsteps m, microsteps in a full step [-]
 * @returns I_m [A], peak
 * @throws OutsideRange unless both are possible
 */
export const peakLimit = formula({
  name: 'rated-peak-current',
  gives: { symbol: 'I_m', of: 'current', means: 'peak current that the copper is rated for' },
  takes: {
    rated: {
      symbol: 'I_r',
      of: 'current',
      means: 'rated current of each phase, both on',
      above: 0,
      because: 'a winding is rated for a current',
      slope: 'up',
      typical: [0.5, 4],
    },
    microsteps: {
      symbol: 'm',
      of: 'count',
      means: 'microsteps in a full step',
      from: 1,
      because: 'a full step is the largest',
      slope: 'up',
      typical: [1, 16],
    },
  },
  steps: ({ rated, microsteps }, step) =>
    step('I_m', 'm > 2 ? sqrt(2)*I_r : I_r', microsteps > 2 ? Math.SQRT2 * rated : rated, 'current'),
  assumes: ['half steps are not lowered by the driver'],
  source: [
    { id: 'stepper-drive-manuals', at: 'RMS of the microstep current is the nominal current, its peak 1.41 times' },
  ],
  checked: [
    {
      kind: 'published',
      against: 'peak of the microstep current is 1.41 of the nominal one',
      source: { id: 'stepper-drive-manuals' },
    },
    { kind: 'law', against: 'the copper heat of both phases is that of the rating' },
  ],
  accuracy: 'exact for the copper',
});

/**
 * Peak phase current that a driver keeps at rest, while its rail can drive it.
 *
 * I_k = I_p·s
 * @param peak I_p, peak phase current [A]
 * @param share s, share of it at standstill [-]
 * @returns I_k [A], peak
 * @throws OutsideRange when the share is not between none and all
 */
export const keptCurrent = formula({
  name: 'kept-current',
  gives: { symbol: 'I_k', of: 'current', means: 'peak phase current that is kept at rest' },
  takes: { peak: { ...current, slope: 'up' }, share: { ...standstillCurrent.declared.takes.share, slope: 'up' } },
  steps: ({ peak, share }, step) => step('I_k', 'I_p*s', peak * share, 'current'),
  assumes: ['the rail can drive it'],
  source: [{ id: 'pull-out-derivation' }],
  checked: [{ kind: 'law', against: 'half the share is half the current' }],
  accuracy: 'exact; more than flows where the rail is too low',
});
