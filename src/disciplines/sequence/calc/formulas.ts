/** Times and ticks: everything that is rounded is rounded so that the machine may be slower, and the wait longer. */
import { formula, type Formula, type Take } from '../../../kernel/index.ts';

const tick = {
  symbol: 't_k',
  of: 'time',
  means: 'one tick',
  above: 0,
  because: 'a tick takes time',
  typical: [0.01, 0.25],
} as const satisfies Take;

/**
 * Ticks that a time takes, rounded up.
 *
 * n = ⌈T/t_k⌉
 * @param time T [s]
 * @param tick t_k [s]
 * @returns n
 * @throws OutsideRange below nothing, or with a tick of nothing
 */
export const ticksOfTime = formula({
  name: 'ticks-of-a-time',
  gives: { symbol: 'n', of: 'count', means: 'ticks' },
  takes: {
    time: {
      symbol: 'T',
      of: 'time',
      means: 'time',
      from: 0,
      because: 'no time is negative',
      slope: 'up',
      typical: [0.1, 60],
    },
    tick: { ...tick, slope: 'down' },
  },
  // A time that is whole in ticks must not become one more by the rounding of its digits.
  steps: ({ time, tick }, step) =>
    step('n', 'max(0, ceil(T/t_k - 0.000001))', Math.max(0, Math.ceil(time / tick - 0.000001)), 'count'),
  assumes: ['inputs are looked at once in a tick'],
  source: [{ id: 'own-derivation', at: 'rounding outward' }],
  checked: [{ kind: 'law', against: 'n ticks are never shorter than the time, and one tick less always is' }],
  accuracy: 'longer by less than a tick',
});

/**
 * Time that a number of ticks takes.
 *
 * T = n·t_k
 * @param ticks n
 * @param tick t_k [s]
 * @returns T [s]
 * @throws OutsideRange below nothing, or with a tick of nothing
 */
export const timeOfTicks = formula({
  name: 'time-of-ticks',
  gives: { symbol: 'T', of: 'time', means: 'time' },
  takes: {
    ticks: {
      symbol: 'n',
      of: 'count',
      means: 'ticks',
      from: 0,
      because: 'no time is negative',
      slope: 'up',
      typical: [1, 400],
    },
    tick: { ...tick, slope: 'up' },
  },
  steps: ({ ticks, tick }, step) => step('T', 'n*t_k', ticks * tick, 'time'),
  assumes: ['the whole of every tick counts'],
  source: [{ id: 'own-derivation', at: 'product' }],
  checked: [{ kind: 'law', against: 'twice the ticks take twice the time' }],
  accuracy: 'exact for the model; what happens in a tick may be over up to a tick earlier',
});

/**
 * Time of a homing run over the whole travel.
 *
 * T = s/v
 * @param travel s [m]
 * @param speed v [m/s]
 * @returns T [s]
 * @throws OutsideRange unless both are above zero
 */
export const homingTime = formula({
  name: 'homing-time',
  gives: { symbol: 'T', of: 'time', means: 'time of a homing run' },
  takes: {
    travel: {
      symbol: 's',
      of: 'length',
      means: 'travel between the ends',
      above: 0,
      because: 'it has a way to go',
      slope: 'up',
      typical: [0.3, 0.8],
    },
    speed: {
      symbol: 'v',
      of: 'speed',
      means: 'speed of approach',
      above: 0,
      because: 'it never comes otherwise',
      slope: 'down',
      typical: [0.03, 0.3],
    },
  },
  steps: ({ travel, speed }, step) => step('T', 's/v', travel / speed, 'time'),
  assumes: ['from the far end at the speed of approach all the way', 'ramps take no time'],
  source: [{ id: 'own-derivation', at: 'quotient' }],
  checked: [{ kind: 'law', against: 'half the speed takes twice the time' }],
  accuracy: 'longer than the run of a machine that only slows down at the end',
});

/**
 * Time-out that no healthy machine meets.
 *
 * T_o = (1 + m)·T_h
 * @param healthy T_h, the slowest healthy case [s]
 * @param margin m, what it has beyond that
 * @returns T_o [s]
 * @throws OutsideRange below nothing
 */
export const timeOut = formula({
  name: 'time-out',
  gives: { symbol: 'T_o', of: 'time', means: 'time-out' },
  takes: {
    healthy: {
      symbol: 'T_h',
      of: 'time',
      means: 'slowest healthy case',
      above: 0,
      because: 'a wait takes time',
      slope: 'up',
      typical: [0.5, 12],
    },
    margin: {
      symbol: 'm',
      of: 'ratio',
      means: 'margin of a time-out',
      from: 0,
      because: 'a shorter one would stop a healthy machine',
      slope: 'up',
      typical: [0.1, 0.5],
    },
  },
  steps: ({ healthy, margin }, step) => step('T_o', '(1 + m)*T_h', (1 + margin) * healthy, 'time'),
  assumes: ['the slowest healthy case is that of the search'],
  source: [{ id: 'own-derivation', at: 'a margin' }],
  checked: [{ kind: 'law', against: 'without a margin it is the slowest healthy case itself' }],
  accuracy: 'as good as the slowest healthy case',
});

export const formulas: readonly Formula[] = [
  ticksOfTime,
  timeOfTicks,
  homingTime,
  timeOut,
] as unknown as readonly Formula[];
