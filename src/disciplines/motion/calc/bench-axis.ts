/** From readings at the bench to the numbers of an axis. */
import { formula } from '../../../kernel/index.ts';

const pull = {
  of: 'force',
  from: 0,
  because: 'a scale pulls',
  typical: [3, 20],
} as const;

/**
 * Force that keeps an axis moving, from pulls both ways: what leans or weighs one way cancels.
 *
 * F_run = (F_1 + F_2)/2
 * @param there F_1, most while it is pulled one way [N]
 * @param back F_2, most while it is pulled the other way [N]
 * @returns F_run [N]
 * @throws OutsideRange for less than nothing
 */
export const runningForceFromPulls = formula({
  name: 'running-force-from-pulls',
  gives: { symbol: 'F_run', of: 'force', means: 'force that keeps it moving' },
  takes: {
    there: { ...pull, symbol: 'F_1', means: 'pull one way', slope: 'up' },
    back: { ...pull, symbol: 'F_2', means: 'pull the other way', slope: 'up' },
  },
  steps: ({ there, back }, step) => step('F_run', '(F_1 + F_2)/2', (there + back) / 2, 'force'),
  assumes: ['friction is the same both ways', 'pulled slowly, along the axis'],
  source: [{ id: 'own-derivation', at: 'friction against a slope' }],
  checked: [{ kind: 'law', against: 'a slope adds to one pull what it takes from the other' }],
  accuracy: 'as the readings',
});

/**
 * Speed at which an axis loses its place: between the last that it kept and the first that it lost.
 *
 * v_f = v_k + s·(v_l − v_k)
 * @param kept v_k, greatest speed from which it came back to its mark [m/s]
 * @param lost v_l, least speed from which it did not [m/s]
 * @param share s, where between them [-]
 * @returns v_f [m/s]
 * @throws OutsideRange unless both are above zero
 */
export const lostStepSpeed = formula({
  name: 'lost-step-speed',
  gives: { symbol: 'v_f', of: 'speed', means: 'speed at which it loses its place' },
  takes: {
    kept: {
      symbol: 'v_k',
      of: 'speed',
      means: 'greatest speed from which it came back to its mark',
      above: 0,
      because: 'an axis moves',
      slope: 'up',
      typical: [0.2, 0.4],
    },
    lost: {
      symbol: 'v_l',
      of: 'speed',
      means: 'least speed from which it did not',
      above: 0,
      because: 'an axis moves',
      slope: 'up',
      typical: [0.4, 0.6],
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
  steps: ({ kept, lost, share }, step) => step('v_f', 'v_k + s*(v_l - v_k)', kept + share * (lost - kept), 'speed'),
  assumes: ['the same ramp, rail and load as in play'],
  source: [{ id: 'own-derivation', at: 'between two readings' }],
  checked: [{ kind: 'law', against: 'one reading at no share, the other at the whole' }],
  accuracy: 'as fine as the speeds were stepped; wear and cold move it',
});

/**
 * Mass on a scale, less what holds it there.
 *
 * m = m_1 − m_0
 * @param gross m_1, all that hangs or stands on the scale [kg]
 * @param tare m_0, of it what does not belong there [kg]
 * @returns m [kg]
 * @throws OutsideRange unless something is weighed
 */
export const massFromWeighing = formula({
  name: 'mass-from-weighing',
  gives: { symbol: 'm', of: 'mass', means: 'mass' },
  takes: {
    gross: {
      symbol: 'm_1',
      of: 'mass',
      means: 'all that hangs or stands on the scale',
      above: 0,
      because: 'nothing is weighed with nothing on it',
      slope: 'up',
      typical: [1, 6],
    },
    tare: {
      symbol: 'm_0',
      of: 'mass',
      means: 'hook, box and string',
      from: 0,
      because: 'what holds it weighs something or nothing',
      slope: 'down',
      typical: [0, 0.5],
    },
  },
  steps: ({ gross, tare }, step) => step('m', 'm_1 - m_0', gross - tare, 'mass'),
  assumes: ['it hangs free'],
  source: [{ id: 'own-derivation', at: 'definition' }],
  checked: [{ kind: 'law', against: 'what holds it, weighed alone, is nothing' }],
  accuracy: 'as the readings',
});
