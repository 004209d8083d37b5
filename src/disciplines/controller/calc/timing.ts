/** Times of the program: contacts that bounce, steps and the interrupt that gives them, clocks that wrap, cells that wear. */
import { formula, type Take } from '../../../kernel/index.ts';

const speed = {
  symbol: 'v',
  of: 'speed',
  means: 'speed with which the switch is met',
  above: 0,
  because: 'an axis moves',
  typical: [0.02, 0.4],
} as const satisfies Take;

const debounce = {
  symbol: 't_d',
  of: 'time',
  means: 'time for which the contact must stay',
  from: 0,
  because: 'a time is not negative',
  typical: [0.001, 0.03],
} as const satisfies Take;

const scan = {
  symbol: 't_s',
  of: 'time',
  means: 'time from one look at the inputs to the next',
  above: 0,
  because: 'a program looks again and again',
  typical: [1e-4, 0.01],
} as const satisfies Take;

/**
 * Time from the first edge of a contact until it is believed, at most.
 *
 * t = t_d + t_s
 * @param debounce t_d [s]
 * @param scan t_s [s]
 * @returns t [s]
 */
export const timeToBelieve = formula({
  name: 'time-to-believe',
  gives: { symbol: 't_b', of: 'time', means: 'time until a contact is believed' },
  takes: { debounce: { ...debounce, slope: 'up' }, scan: { ...scan, slope: 'up' } },
  steps: ({ debounce: d, scan: s }, step) => step('t_b', 't_d + t_s', d + s, 'time'),
  assumes: ['the contact closes just after a look', 'it is believed at the first look after it has stayed that long'],
  source: [{ id: 'own-derivation', at: 'sampling' }],
  checked: [
    { kind: 'law', against: 'no earlier than the debounce, no later than one look more' },
    { kind: 'independent', against: 'a contact and a sampler stepped through time, at random phases' },
  ],
  accuracy: 'the most that occurs; on average half a look less',
});

/**
 * Way that an axis goes on after it has met its switch: until the switch is believed, and on its ramp.
 *
 * s = v·t_b + v²/2a
 * @param speed v [m/s]
 * @param believed t_b [s]
 * @param acceleration a [m/s²]
 * @returns s [m]
 */
export const wayAfterSwitch = formula({
  name: 'way-after-switch',
  gives: { symbol: 's', of: 'length', means: 'way that is run through after the contact' },
  takes: {
    speed: { ...speed, slope: 'up' },
    believed: {
      symbol: 't_b',
      of: 'time',
      means: 'time until the contact is believed',
      from: 0,
      because: 'a time is not negative',
      slope: 'up',
      typical: [0.001, 0.03],
    },
    acceleration: {
      symbol: 'a',
      of: 'acceleration',
      means: 'acceleration of the brake ramp',
      above: 0,
      because: 'without a ramp it would not stop',
      slope: 'down',
      typical: [0.5, 5],
    },
  },
  steps: ({ speed: v, believed: t, acceleration: a }, step) => {
    const blind = step('s_b', 'v*t_b', v * t, 'length');
    const ramp = step('s_r', 'v^2/(2*a)', v ** 2 / (2 * a), 'length');
    return step('s', 's_b + s_r', blind + ramp, 'length');
  },
  assumes: ['full approach speed until the contact is believed', 'no step is lost on the ramp'],
  source: [{ id: 'own-derivation', at: 'uniform acceleration' }],
  checked: [
    {
      kind: 'law',
      against: 'with no time to believe it is the ramp alone; in proportion to v where the ramp is short',
    },
    { kind: 'independent', against: '60 mm/s, 10 ms, 1500 mm/s²: 0.6 mm and 1.2 mm, by pencil' },
  ],
  accuracy: 'exact for the model',
});

/**
 * Steps in a second that a drive is given.
 *
 * f = v/(2π·r)·4·N_r·m
 * @param speed v [m/s]
 * @param radius r [m for each radian]
 * @param teeth N_r
 * @param microsteps m
 * @returns f [1/s]
 */
export const stepFrequency = formula({
  name: 'step-frequency',
  gives: { symbol: 'f', of: 'frequency', means: 'steps in a second' },
  takes: {
    speed: { ...speed, means: 'speed of the axis', slope: 'up' },
    radius: {
      symbol: 'r',
      of: 'length',
      means: 'travel for each radian of the shaft',
      above: 0,
      because: 'a turn moves the axis',
      slope: 'down',
      typical: [0.001, 0.02],
    },
    teeth: {
      symbol: 'N_r',
      of: 'count',
      means: 'rotor teeth',
      above: 0,
      because: 'a stepper has teeth',
      slope: 'up',
      typical: [50, 100],
    },
    microsteps: {
      symbol: 'm',
      of: 'count',
      means: 'microsteps in a full step',
      above: 0,
      because: 'a full step has at least one',
      slope: 'up',
      typical: [1, 32],
    },
  },
  steps: ({ speed: v, radius: r, teeth: n, microsteps: m }, step) => {
    const turns = step('n', 'v/(2*pi*r)', v / (2 * Math.PI * r), 'frequency');
    const steps = step('z', '4*N_r*m', 4 * n * m, 'count');
    return step('f', 'n*z', turns * steps, 'frequency');
  },
  assumes: ['four full steps for each tooth', 'each step moves the motor by one microstep'],
  source: [{ id: 'own-derivation', at: 'steps of a two-phase motor' }],
  checked: [{ kind: 'independent', against: '220 mm/s at 40 mm a turn, 200 full steps in eighths: 8800 a second' }],
  accuracy: 'exact',
});

/**
 * Share of the processor that an interrupt takes which looks at every drive each time that it comes.
 *
 * u = f_t·(c_0 + n·c_1)/f_c
 * @param ticks f_t [1/s]
 * @param own c_0, cycles
 * @param each c_1, cycles
 * @param drives n
 * @param clock f_c [1/s]
 * @returns u
 */
export const interruptShare = formula({
  name: 'interrupt-share',
  gives: { symbol: 'u', of: 'ratio', means: 'share of the processor that stepping takes' },
  takes: {
    ticks: {
      symbol: 'f_t',
      of: 'frequency',
      means: 'how often the interrupt comes',
      above: 0,
      because: 'without it nothing steps',
      slope: 'up',
      typical: [5e3, 4e4],
    },
    own: {
      symbol: 'c_0',
      of: 'count',
      means: 'cycles of the interrupt itself',
      from: 0,
      because: 'a count is not negative',
      slope: 'up',
      typical: [30, 200],
    },
    each: {
      symbol: 'c_1',
      of: 'count',
      means: 'cycles for each drive',
      from: 0,
      because: 'a count is not negative',
      slope: 'up',
      typical: [20, 100],
    },
    drives: {
      symbol: 'n_D',
      of: 'count',
      means: 'drives that it serves',
      from: 0,
      because: 'a count is not negative',
      slope: 'up',
      typical: [1, 8],
    },
    clock: {
      symbol: 'f_c',
      of: 'frequency',
      means: 'clock of the processor',
      above: 0,
      because: 'it runs',
      slope: 'down',
      typical: [8e6, 2.4e8],
    },
  },
  steps: ({ ticks, own, each, drives, clock }, step) => {
    const cycles = step('c', 'c_0 + n_D*c_1', own + drives * each, 'count');
    return step('u', 'f_t*c/f_c', (ticks * cycles) / clock, 'ratio');
  },
  assumes: [
    'every drive is looked at each time, whether it steps or not',
    'one instruction stream, no waiting for memory',
  ],
  source: [{ id: 'own-derivation', at: 'time of an interrupt' }],
  checked: [
    { kind: 'independent', against: '20 kHz, 100 and 4 · 50 cycles, 16 MHz: 300 of 800 cycles, by pencil' },
    { kind: 'law', against: 'twice the clock halves it, twice the ticks double it' },
  ],
  accuracy: 'as good as the cycles; measure them',
});

/**
 * Time after which a clock that counts in a whole number of bits begins anew.
 *
 * T = t·2^b
 * @param tick t [s]
 * @param bits b
 * @returns T [s]
 */
export const clockWrap = formula({
  name: 'clock-wrap',
  gives: { symbol: 'T_w', of: 'time', means: 'time after which the clock begins anew' },
  takes: {
    tick: {
      symbol: 't',
      of: 'time',
      means: 'time that it counts in',
      above: 0,
      because: 'it counts',
      slope: 'up',
      typical: [1e-6, 1e-3],
    },
    bits: {
      symbol: 'b',
      of: 'count',
      means: 'bits of its count',
      from: 1,
      to: 64,
      because: 'it is a whole number in a register',
      slope: 'up',
      typical: [16, 32],
    },
  },
  steps: ({ tick, bits }, step) => step('T_w', 't*2^b', tick * 2 ** bits, 'time'),
  assumes: ['it counts evenly'],
  source: [{ id: 'own-derivation', at: 'counting' }],
  checked: [{ kind: 'independent', against: '4294967296 ms are 49 days 17 h 2 min 47.296 s' }],
  accuracy: 'as good as the oscillator',
});

/**
 * Writes that one cell has had at the end.
 *
 * w = p·T·k/c
 * @param plays p [1/s]
 * @param life T [s]
 * @param writes k
 * @param cells c
 * @returns w
 */
export const cellWrites = formula({
  name: 'cell-writes',
  gives: { symbol: 'w', of: 'count', means: 'writes of one cell' },
  takes: {
    plays: {
      symbol: 'p',
      of: 'rate',
      means: 'plays in a time',
      from: 0,
      because: 'a count is not negative',
      slope: 'up',
      typical: [1e-4, 2e-3],
    },
    life: {
      symbol: 'T',
      of: 'time',
      means: 'time that the machine shall last',
      above: 0,
      because: 'it lasts',
      slope: 'up',
      typical: [3e7, 3e8],
    },
    writes: {
      symbol: 'k',
      of: 'count',
      means: 'writes for each play',
      from: 0,
      because: 'a count is not negative',
      slope: 'up',
      typical: [1, 4],
    },
    cells: {
      symbol: 'c',
      of: 'count',
      means: 'cells among which they are spread',
      from: 1,
      because: 'something is written somewhere',
      slope: 'down',
      typical: [1, 64],
    },
  },
  steps: ({ plays, life, writes, cells }, step) => {
    const all = step('w_all', 'p*T*k', plays * life * writes, 'count');
    return step('w', 'w_all/c', all / cells, 'count');
  },
  assumes: ['spread evenly', 'as many plays every day'],
  source: [{ id: 'own-derivation', at: 'counting' }],
  checked: [{ kind: 'independent', against: '140 plays a day for five years of 365 days, once each: 255,500' }],
  accuracy: 'exact for the model',
});
