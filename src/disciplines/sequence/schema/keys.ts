/** Keys of the cycle: states, transitions and what is done in them. */
import * as z from 'zod';
import {
  count,
  nameOf,
  namesOf,
  oneOf,
  quantity,
  text,
  yesNo,
  type EntryOf,
  type Shape,
} from '../../../contract/index.ts';

export const faultWords = ['dead', 'stuck', 'chatters', 'stalls', 'power-lost', 'reset'] as const;
export type FaultWord = (typeof faultWords)[number];

const optional = <S extends Shape>(shape: S): { [K in keyof S]: z.ZodOptional<S[K]> } =>
  Object.fromEntries(Object.entries(shape).map(([key, leaf]) => [key, leaf.optional()])) as {
    [K in keyof S]: z.ZodOptional<S[K]>;
  };

const actionKeys = {
  drives: oneOf(['on', 'off'], { means: 'power of all drives' }),
  home: namesOf('axes', { means: 'axis that goes to its switch and knows its place then', example: 'z' }),
  move: nameOf('axes', { means: 'axis that goes to a place by counted steps', example: 'x' }),
  jog: namesOf('axes', { means: 'axes that the player steers', example: '[x, y]' }),
  drive: nameOf('axes', { means: 'axis that runs until its state is left', example: 'x' }),
  hoist: nameOf('axes', { means: 'axis that goes up until its upper switch', example: 'z' }),
  lower: nameOf('axes', { means: 'axis that goes down', example: 'z' }),
  stop: namesOf('axes', { means: 'axes that stop', example: '[x, y]' }),
  to: oneOf(['min', 'between', 'max', 'on', 'off'], { means: 'where an axis goes, or what a lamp becomes' }),
  until: nameOf('signals', { means: 'input that ends the lowering', example: 'S7' }),
  servo: oneOf(['grip', 'release', 'off'], { means: 'what the servo of the gripper does' }),
  wait: quantity('time', { range: 'exact', means: 'time after which the event waited comes', example: '1.5 s' }),
  lamp: nameOf('signals', { means: 'lamp that is lit or put out', example: 'H1' }),
  sound: nameOf('signals', { means: 'sound that is made', example: 'H2' }),
  count: text({ means: 'counter that goes up by one', example: 'retries' }),
  clear: text({ means: 'counter that goes back to nothing', example: 'retries' }),
  raise: text({ means: 'event for the chart itself', example: 'lost' }),
} satisfies Shape;
const action = z.strictObject(optional(actionKeys));

const bounds = (means: string) => z.record(z.string(), count({ means, example: '2', to: 255 }));

const conditionKeys = {
  on: namesOf('signals', { means: 'inputs that must be on', example: '[S6]' }),
  off: namesOf('signals', { means: 'inputs that must be off', example: '[S8, S9]' }),
  in: text({ means: 'state that the cycle must be in', example: 'serving' }),
  below: bounds('value that a counter must not have reached'),
  reached: bounds('value that a counter must have reached'),
} satisfies Shape;

const transitionKeys = {
  on: nameOf('signals', { means: 'input that comes on', example: 'S6' }),
  off: nameOf('signals', { means: 'input that goes off', example: 'S6' }),
  done: nameOf('axes', { means: 'axis that has come to where it was sent', example: 'x' }),
  event: text({ means: 'event that was raised, or waited, or done.state.NAME', example: 'lost' }),
  after: quantity('time', { range: 'exact', means: 'time in the state after which it is due', example: '6 s' }),
  cond: z.strictObject(optional(conditionKeys)),
  target: text({ means: 'state that is entered', example: 'hoisting' }),
  internal: yesNo({ means: 'whether its own state stays while a state inside is entered' }),
  actions: z.array(action),
} satisfies Shape;

const stateKeys = {
  in: text({ means: 'compound state around it', example: 'serving' }),
  initial: text({ means: 'state inside that is entered first', example: 'aiming' }),
  final: yesNo({ means: 'whether the compound state around it is done' }),
  is: oneOf(['ready', 'latched'], { means: 'where a play may begin, or where somebody must come' }),
  play: oneOf(['begun', 'ended', 'lost'], { means: 'what becomes of a play here' }),
  'travels-low': yesNo({ means: 'whether a load may travel below its travel height here' }),
  service: yesNo({ means: 'whether somebody may work at the open machine here, holding a button to run it' }),
  onentry: z.array(action),
  onexit: z.array(action),
  transitions: z.array(z.strictObject(optional(transitionKeys))),
} satisfies Shape;

const faultKeys = {
  kinds: z.array(oneOf(faultWords, { means: 'kinds of faults that may set in' })),
  'at-most': count({ means: 'kinds of faults along one trace', example: '2', from: 0, to: 4 }),
  intermittent: z.array(oneOf(faultWords, { means: 'kinds of faults that come and go' })),
} satisfies Shape;

const limit = (means: string, example: string) => quantity('time', { range: 'exact', means, example });

/** Keys of the cycle. */
export const cycleKeys = {
  tick: limit('time from one look at the inputs to the next, in the search', '200 ms'),
  initial: text({ means: 'state after power comes', example: 'starting' }),
  counters: z.record(z.string(), count({ means: 'greatest value of a counter', example: '2', to: 255 })),
  states: z.record(z.string(), z.strictObject(optional(stateKeys))),
  faults: z.strictObject(optional(faultKeys)),
  tells: namesOf('signals', { means: 'lamps that tell the operator', example: '[H3]' }),
  'cut-by': namesOf('signals', { means: 'contacts that cut the drives by themselves', example: '[S8, S9]' }),
  'hold-to-run': nameOf('signals', { means: 'button that is held to run it in service', example: 'S12' }),
  'harmless-falls': namesOf('axes', { means: 'axes whose free fall hurts nobody and breaks nothing', example: '[z]' }),
  debounce: quantity('time', {
    range: 'exact',
    from: 0,
    means: 'time that an input must last to be believed',
    example: '10 ms',
  }),
  'settles-within': limit(
    'time in which it is ready or latched again, from anywhere, with the player’s own time',
    '90 s',
  ),
  'longest-play': limit('longest time that a play may take', '80 s'),
  'against-an-end': limit('longest time that an axis may be driven against its end when a switch is dead', '6 s'),
  'energised-idle': limit('longest time that a drive or servo may be on while nobody plays', '40 s'),
  'timeout-margin': quantity('ratio', {
    range: 'exact',
    from: 0,
    means: 'what a time-out has beyond the slowest healthy case',
    example: '25 %',
  }),
  'most-states': count({
    means: 'states after which the search is cut',
    example: '3000000',
    from: 1000,
    to: 8_000_000,
  }),
} satisfies Shape;

export const cycleShape = z.strictObject(optional(cycleKeys));

export type ActionEntry = EntryOf<typeof actionKeys>;
export type ConditionEntry = EntryOf<typeof conditionKeys>;
export type TransitionEntry = EntryOf<typeof transitionKeys>;
export type StateEntry = EntryOf<typeof stateKeys>;
export type CycleEntry = EntryOf<typeof cycleKeys>;

/** The verbs, of which an action has exactly one. */
export const verbs = [
  'drives',
  'home',
  'move',
  'jog',
  'drive',
  'hoist',
  'lower',
  'stop',
  'servo',
  'wait',
  'lamp',
  'sound',
  'count',
  'clear',
  'raise',
] as const satisfies readonly (keyof ActionEntry)[];

/** What a transition may wait for, one of them at most. */
export const triggers = ['on', 'off', 'done', 'event', 'after'] as const satisfies readonly (keyof TransitionEntry)[];
