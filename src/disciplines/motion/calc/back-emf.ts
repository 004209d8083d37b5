/** A motor turned from outside is a generator. */
import { formula } from '../../../kernel/index.ts';
import { speed, torqueConstant } from './motor-takes.ts';

/**
 * Peak voltage of one phase of a motor that is turned from outside.
 *
 * E = K · ω
 * @param constant K, torque per ampere, numerically volt-seconds per radian [N·m/A]
 * @param speed ω, shaft speed [rad/s]
 * @returns E [V], peak
 * @throws OutsideRange for no magnet or a speed below zero
 */
export const backEmf = formula({
  name: 'back-emf',
  gives: { symbol: 'E', of: 'voltage', means: 'peak voltage of one phase' },
  takes: { constant: { ...torqueConstant, slope: 'up' }, speed: { ...speed, slope: 'up' } },
  steps: ({ constant, speed: w }, step) => step('E', 'K*ω', constant * w, 'voltage'),
  assumes: ['no current flows yet', 'the diodes of the bridge drop nothing'],
  source: [{ id: 'stepper-drive-manuals', at: 'back-EMF constant' }],
  checked: [{ kind: 'law', against: 'electrical power E·I/2 a phase, twice, is the mechanical power K·I·ω' }],
  accuracy: 'careful by two diode drops',
});
