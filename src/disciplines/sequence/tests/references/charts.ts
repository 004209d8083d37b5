/** Small cycles, each with something that the others have not. */
import type { Action, ChartState, Transition } from '../../facts.ts';
import type { AxisSpec, CycleSpec, FaultSpec, InputSpec, StateMarks } from '../../calc/spec.ts';

export const on = (event: string, target: string | null, more: Partial<Transition> = {}): Transition => ({
  events: [event],
  after: null,
  cond: null,
  target,
  internal: false,
  actions: [],
  ...more,
});
export const after = (ticks: number, target: string, more: Partial<Transition> = {}): Transition => ({
  ...on('', target, more),
  events: null,
  after: ticks,
});
export const when = (
  cond: NonNullable<Transition['cond']>,
  target: string | null,
  more: Partial<Transition> = {},
): Transition => ({
  ...on('', target, more),
  events: null,
  cond,
});

type Given = Partial<ChartState> & { readonly marks?: Partial<StateMarks> };

const chartPart = (given: Given): Partial<ChartState> =>
  Object.fromEntries(Object.entries(given).filter(([key]) => key !== 'marks'));

/** A cycle from its states in document order. */
export const cycle = (
  states: Readonly<Record<string, Given>>,
  more: Partial<Omit<CycleSpec, 'chart' | 'marks'>> & { readonly counters?: Readonly<Record<string, number>> } = {},
): CycleSpec => {
  const { counters = {}, ...rest } = more;
  return {
    chart: {
      initial: Object.keys(states)[0]!,
      counters,
      states: Object.entries(states).map(([id, given]) => ({
        id,
        parent: null,
        initial: null,
        final: false,
        onentry: [],
        onexit: [],
        transitions: [],
        ...chartPart(given),
      })),
    },
    marks: Object.values(states).map(({ marks }) => ({
      is: null,
      play: null,
      travelsLow: false,
      service: false,
      ...marks,
    })),
    axes: [],
    inputs: [],
    faults: [],
    atMost: 1,
    tells: [],
    cutBy: [],
    hold: null,
    mostStates: 1_000_000,
    ...rest,
  };
};

const belt = (name: string): AxisSpec => ({
  name,
  raising: false,
  moveTicks: 3,
  homeTicks: 4,
  homeEnd: 0,
  catches: false,
  sinks: false,
  harmless: false,
});
const hoist: AxisSpec = { ...belt('z'), raising: true, homeEnd: 2, catches: true, sinks: true };
const limit = (name: string, axis: number, end: 0 | 2): InputSpec => ({
  name,
  kind: 'switch',
  feels: { axis, end },
  pulse: false,
});
const person = (name: string, kind: InputSpec['kind'], pulse = false): InputSpec => ({
  name,
  kind,
  feels: null,
  pulse,
});
const fault = (kind: 'dead' | 'stuck' | 'chatters', input: number, intermittent = false): FaultSpec => ({
  kind,
  input,
  intermittent,
});
const drives = (isOn: boolean): Action => ({ do: 'drives', on: isOn });

/** No axis: compound states, counters, raised events, a final state and a transition without a target. */
export const counting = cycle(
  {
    idle: { marks: { is: 'ready' }, transitions: [on('B1.on', 'work')] },
    work: {
      initial: 'first',
      marks: { play: 'begun' },
      onentry: [{ do: 'count', counter: 'tries' }],
      transitions: [
        on('done.state.work', 'ended'),
        on('B2', null, { actions: [{ do: 'raise', event: 'again' }] }),
        after(7, 'ended'),
      ],
    },
    first: {
      parent: 'work',
      transitions: [
        on('again', 'second', { cond: { kind: 'counter', counter: 'tries', is: '<', than: 2 } }),
        after(3, 'second'),
      ],
    },
    second: {
      parent: 'work',
      initial: 'deep',
      transitions: [on('again', 'deep', { internal: true }), after(4, 'over')],
    },
    deep: {
      parent: 'second',
      onentry: [{ do: 'lamp', signal: 'H1', on: true }],
      onexit: [{ do: 'lamp', signal: 'H1', on: false }],
    },
    over: { parent: 'work', final: true },
    ended: {
      marks: { play: 'ended' },
      transitions: [when({ kind: 'counter', counter: 'tries', is: '>=', than: 2 }, 'worn'), after(1, 'idle')],
    },
    worn: {
      marks: { is: 'latched' },
      onentry: [{ do: 'lamp', signal: 'H1', on: true }],
      transitions: [on('B2.on', 'idle', { actions: [{ do: 'clear', counter: 'tries' }] })],
    },
  },
  {
    inputs: [person('B1', 'button', true), person('B2', 'button', true)],
    tells: ['H1'],
    counters: { tries: 2 },
    faults: [{ kind: 'reset', intermittent: false }],
  },
);

/** A belt that is driven until its limit tells, with switches that chatter and contacts that cut its power. */
export const driving = cycle(
  {
    start: {
      onentry: [drives(true), { do: 'home', axis: 'x' }],
      transitions: [on('x.done', 'ready'), after(6, 'stuck')],
    },
    ready: {
      marks: { is: 'ready' },
      onentry: [drives(false)],
      transitions: [on('B1.on', 'out', { cond: { kind: 'not', of: { kind: 'on', signal: 'S8' } } })],
    },
    out: {
      marks: { play: 'begun' },
      onentry: [drives(true), { do: 'drive', axis: 'x', to: 'max' }],
      transitions: [on('S2.on', 'back'), after(6, 'stuck'), on('S8.on', 'stuck')],
    },
    back: { onentry: [{ do: 'move', axis: 'x', to: 'min' }], transitions: [on('x.done', 'ready'), on('S8', 'stuck')] },
    stuck: {
      marks: { is: 'latched', play: 'lost' },
      onentry: [drives(false), { do: 'lamp', signal: 'H3', on: true }],
      onexit: [{ do: 'lamp', signal: 'H3', on: false }],
      transitions: [on('B1.on', 'start')],
    },
  },
  {
    axes: [belt('x')],
    inputs: [person('S8', 'stop'), limit('S1', 0, 0), limit('S2', 0, 2), person('B1', 'button', true)],
    faults: [
      fault('chatters', 1),
      fault('chatters', 2),
      fault('dead', 2, true),
      fault('stuck', 1, true),
      { kind: 'stalls', axis: 0, intermittent: true },
    ],
    atMost: 2,
    tells: ['H3'],
    cutBy: [0],
  },
);

/** A hoist alone, which falls when its power goes. */
export const hoisting = cycle(
  {
    up: { onentry: [drives(true), { do: 'home', axis: 'z' }], transitions: [on('z.done', 'ready'), after(8, 'lost')] },
    ready: { marks: { is: 'ready' }, onentry: [drives(false)], transitions: [on('B1.on', 'down')] },
    down: {
      onentry: [drives(true), { do: 'lower', axis: 'z', until: 'S7' }],
      transitions: [on('z.done', 'lift'), after(5, 'lost')],
    },
    lift: {
      onentry: [{ do: 'hoist', axis: 'z' }],
      transitions: [on('z.done', 'ready'), on('z.early', 'lost'), after(5, 'lost')],
    },
    lost: { marks: { is: 'latched' }, onentry: [drives(false)], transitions: [on('B1.on', 'up')] },
  },
  {
    axes: [hoist],
    inputs: [limit('S6', 0, 2), limit('S7', 0, 0), person('B1', 'button', true)],
    faults: [
      fault('dead', 0),
      fault('stuck', 0),
      fault('chatters', 1),
      { kind: 'stalls', axis: 0, intermittent: false },
      { kind: 'power-lost', intermittent: false },
    ],
    atMost: 2,
  },
);

/** Two belts at once: steered, sent, stopped, behind a door that is held open in service. */
export const steering = cycle(
  {
    ready: {
      marks: { is: 'ready' },
      onentry: [drives(false), { do: 'servo', to: 'off' }],
      transitions: [
        on('B1.on', 'steer', { cond: { kind: 'not', of: { kind: 'on', signal: 'S9' } } }),
        on('S9.on', 'open'),
      ],
    },
    steer: {
      marks: { play: 'begun' },
      onentry: [drives(true), { do: 'jog', axis: 'x' }, { do: 'jog', axis: 'y' }],
      transitions: [on('S9.on', 'open'), on('B1.on', 'send'), after(5, 'send')],
    },
    send: {
      onentry: [
        { do: 'servo', to: 'grip' },
        { do: 'move', axis: 'x', to: 'max' },
        { do: 'move', axis: 'y', to: 'between' },
      ],
      transitions: [
        on('S9', 'open'),
        on('x.done', null, {
          actions: [
            { do: 'stop', axis: 'y' },
            { do: 'raise', event: 'there' },
          ],
        }),
        on('there', 'ready', { actions: [] }),
        after(4, 'ready'),
      ],
    },
    open: {
      marks: { is: 'latched' },
      onentry: [drives(false), { do: 'servo', to: 'off' }],
      transitions: [on('S9.off', 'ready'), on('B2.on', 'crawl')],
    },
    crawl: {
      marks: { service: true },
      onentry: [drives(true), { do: 'jog', axis: 'y' }],
      onexit: [drives(false)],
      transitions: [on('B2.off', 'open'), on('S9.off', 'ready'), after(3, 'open')],
    },
  },
  {
    axes: [belt('x'), belt('y')],
    inputs: [
      person('S9', 'door'),
      limit('S1', 0, 0),
      limit('S2', 0, 2),
      limit('S3', 1, 0),
      person('B1', 'button', true),
      person('B2', 'button'),
    ],
    faults: [
      fault('dead', 2),
      fault('stuck', 3),
      { kind: 'stalls', axis: 1, intermittent: false },
      { kind: 'reset', intermittent: false },
    ],
    atMost: 2,
    hold: 5,
  },
);
