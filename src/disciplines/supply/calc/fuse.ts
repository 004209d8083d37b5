/** What a fuse carries, when it is sure to open, what it lets through, and what the supply gives into a fault. */
import { formula, type Take } from '../../../kernel/index.ts';
import { amperes, volts } from './takes.ts';

const rating = {
  symbol: 'I_n',
  of: 'current',
  means: 'rated current of the fuse',
  above: 0,
  because: 'a fuse is rated for a current',
  typical: [0.5, 10],
} as const satisfies Take;

/**
 * Current that a fuse carries for good where it sits.
 *
 * I_f = I_n·(1 − c·max(0, θ − 23 °C))
 * @param rating I_n [A]
 * @param temperature θ, of the air round the fuse [K]
 * @param derating c, loss for each kelvin [1/K]
 * @returns I_f [A]
 * @throws OutsideRange above 125 °C
 */
export const fuseCapacity = formula({
  name: 'fuse-capacity',
  gives: { symbol: 'I_f', of: 'current', means: 'current that the fuse carries for good' },
  takes: {
    rating: { ...rating, slope: 'up' },
    temperature: {
      symbol: 'θ',
      of: 'temperature',
      means: 'air round the fuse',
      from: 223.15,
      to: 398.15,
      because: 'data sheets go no further',
      slope: 'down',
      typical: [293.15, 338.15],
    },
    derating: {
      symbol: 'c',
      of: 'temperature-coefficient',
      means: 'loss for each kelvin above 23 °C',
      from: 0,
      to: 0.0098,
      because: 'a fuse that loses more is for another place',
      slope: 'down',
      typical: [0.001, 0.005],
    },
  },
  steps: ({ rating: In, temperature, derating }, step) =>
    step('I_f', 'I_n*(1 - c*max(0, θ - 296.15))', In * (1 - derating * Math.max(0, temperature - 296.15)), 'current'),
  assumes: ['a straight line, as data sheets draw it'],
  source: [{ id: 'fuse-derating' }],
  checked: [
    { kind: 'published-secondary', against: '0.2 % to 0.5 % for each kelvin', source: { id: 'fuse-derating' } },
    { kind: 'law', against: 'no loss at 23 °C' },
  ],
  accuracy: '5 %',
});

/**
 * Current at which a protective device is sure to open within its conventional time.
 *
 * I_2 = f·I_n
 * @param rating I_n [A]
 * @param factor f, of its kind [-]
 * @returns I_2 [A]
 * @throws OutsideRange for a factor of one or less
 */
export const sureOpening = formula({
  name: 'sure-opening-current',
  gives: { symbol: 'I_2', of: 'current', means: 'current at which the fuse is sure to open' },
  takes: {
    rating: { ...rating, slope: 'up' },
    factor: {
      symbol: 'f',
      of: 'ratio',
      means: 'sure opening over rated current',
      above: 1,
      to: 20,
      because: 'no fuse opens at its rating',
      slope: 'up',
      typical: [1.35, 2.75],
    },
  },
  steps: ({ rating: In, factor }, step) => step('I_2', 'f*I_n', factor * In, 'current'),
  assumes: ['air of 23 °C round the fuse'],
  source: [{ id: 'fuse-5x20-time-lag' }, { id: 'fuse-5x20-fast' }],
  checked: [
    {
      kind: 'published',
      against: '2.1 times the rating within 30 minutes',
      source: { id: 'fuse-5x20-time-lag', at: 'standard sheet 5' },
    },
  ],
  accuracy: 'a limit of the standard: a fuse may open sooner',
});

/**
 * Most current that can flow into a short circuit at the end of a wire.
 *
 * I_k = min(I_s, V/R)
 * @param supply I_s, most that the supply gives into a short circuit for long enough [A]
 * @param rail V [V]
 * @param loop R, wire out and back [Ω]
 * @returns I_k [A]
 * @throws OutsideRange for no resistance
 */
export const faultCurrent = formula({
  name: 'fault-current',
  gives: { symbol: 'I_k', of: 'current', means: 'current into a short circuit' },
  takes: {
    supply: {
      ...amperes,
      symbol: 'I_s',
      means: 'most that the supply gives into a short circuit',
      slope: 'up',
      typical: [3, 40],
    },
    rail: { ...volts, slope: 'up' },
    loop: {
      symbol: 'R',
      of: 'resistance',
      means: 'wire out and back',
      above: 0,
      because: 'copper has resistance',
      slope: 'down',
      typical: [0.02, 1],
    },
  },
  steps: ({ supply, rail, loop }, step) => step('I_k', 'min(I_s, V/R)', Math.min(supply, rail / loop), 'current'),
  assumes: ['what the supply’s capacitor gives in the first milliseconds is left out'],
  source: [{ id: 'supply-overload-kinds' }, { id: 'own-derivation', at: 'protection' }],
  checked: [{ kind: 'law', against: 'Ohm’s law with a supply that gives all' }],
  accuracy: 'that of the supply’s data sheet',
});

/**
 * Most that a fuse lets through at one gate of its standard: up to the gate it opens in the time of the gate; a fault that
 * brings less flows on, and what it brings in that time is counted. What goes on for longer the wire has to bear for good.
 *
 * J_g = min(I_k, n·I_n)²·t
 * @param fault I_k, current into a short circuit [A]
 * @param rating I_n [A]
 * @param multiple n, of the gate [-]
 * @param time t, longest time at the gate [s]
 * @returns J_g [A²·s]
 * @throws OutsideRange for no rating
 */
export const gateLetThrough = formula({
  name: 'fuse-gate-let-through',
  gives: { symbol: 'J_g', of: 'current-squared-time', means: 'let-through of the fuse at the gate' },
  takes: {
    fault: { ...amperes, symbol: 'I_k', means: 'current into a short circuit', slope: 'up', typical: [1, 60] },
    rating: { ...rating, slope: 'up' },
    multiple: {
      symbol: 'n',
      of: 'ratio',
      means: 'multiple of the rating at the gate',
      above: 1,
      because: 'no fuse opens at its rating',
      slope: 'up',
      typical: [2.75, 10],
    },
    time: {
      symbol: 't',
      of: 'time',
      means: 'longest time at the gate',
      above: 0,
      because: 'no fuse opens at once',
      slope: 'up',
      typical: [0.02, 5],
    },
  },
  steps: ({ fault, rating: In, multiple, time }, step) => {
    const gate = step('I_g', 'min(I_k, n*I_n)', Math.min(fault, multiple * In), 'current');
    return step('J_g', 'I_g^2*t', gate ** 2 * time, 'current-squared-time');
  },
  assumes: [
    'between two gates the limit runs straight on a double logarithmic scale, so that the greatest let-through stands at a gate',
  ],
  source: [{ id: 'fuse-5x20-time-lag' }, { id: 'fuse-5x20-fast' }],
  checked: [
    {
      kind: 'published',
      against: 'limits of the standard sheets at 4 and 10 times the rating',
      source: { id: 'fuse-5x20-time-lag', at: 'standard sheet 5' },
    },
    { kind: 'law', against: 'a fault below the gate brings its own square times the time' },
  ],
  accuracy: 'careful: most fuses of a kind open far sooner',
});

/**
 * Most current that can flow on behind a fuse without opening it within seconds.
 *
 * I_x = min(I_l, n·I_n)
 * @param supply I_l, current at which the supply limits, into whatever fault suits it [A]
 * @param rating I_n [A]
 * @param multiple n, of the gate at which the fuse opens within seconds [-]
 * @returns I_x [A]
 * @throws OutsideRange for no rating
 */
export const lingeringCurrent = formula({
  name: 'lingering-fault-current',
  gives: { symbol: 'I_x', of: 'current', means: 'most current that no fuse ends within seconds' },
  takes: {
    supply: {
      ...amperes,
      symbol: 'I_l',
      means: 'current at which the supply limits',
      slope: 'up',
      typical: [3, 40],
    },
    rating: { ...rating, slope: 'up' },
    multiple: {
      symbol: 'n',
      of: 'ratio',
      means: 'multiple of the rating that opens it within seconds',
      above: 1,
      because: 'no fuse opens at its rating',
      slope: 'up',
      typical: [2.75, 10],
    },
  },
  steps: ({ supply, rating: In, multiple }, step) =>
    step('I_x', 'min(I_l, n*I_n)', Math.min(supply, multiple * In), 'current'),
  assumes: ['a fault has any resistance, so that every current up to the limit of the supply may flow'],
  source: [{ id: 'supply-overload-kinds' }, { id: 'own-derivation', at: 'protection' }],
  checked: [{ kind: 'law', against: 'more than the gate opens the fuse, more than its limit no supply gives' }],
  accuracy: 'that of the supply’s data sheet',
});

/**
 * Most current of a rail on which a wire without a fuse is no fire: that of a source whose power is limited.
 *
 * I_f = 100 VA/max(V, 20 V)
 * @param rail V [V]
 * @returns I_f [A]
 * @throws OutsideRange above 60 V
 */
export const fuselessCurrent = formula({
  name: 'fuseless-current',
  gives: { symbol: 'I_f', of: 'current', means: 'most current of a rail that needs no fuse' },
  takes: {
    rail: { ...volts, to: 60, because: 'the limits are printed up to 60 V', slope: 'down' },
  },
  steps: ({ rail }, step) => {
    const base = step('V_f', 'max(V, 20)', Math.max(rail, 20), 'voltage');
    return step('I_f', '100/V_f', 100 / base, 'current');
  },
  assumes: ['the supply keeps its limit also when it has one fault of its own'],
  source: [{ id: 'limited-power-source' }],
  checked: [
    {
      kind: 'published-secondary',
      against: 'no more than 5 VA for each volt up to 20 V, and 100 VA up to 60 V',
      source: { id: 'limited-power-source' },
    },
  ],
  accuracy: 'a convention',
});
