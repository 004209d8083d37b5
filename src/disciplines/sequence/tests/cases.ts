/** What makes each question hold and fail. The reasons are reckoned by hand from the chart. */
import type { CheckCase } from '../../../contract/index.ts';
import type { Edit, Verdict } from '../../../kernel/index.ts';

export { base } from './base.ts';

const at = (path: string, text: string | null): Edit => ({ path: `sequence.${path}`, text });
const state = (name: string, key: string, text: string | null): Edit => at(`states.${name}.${key}`, text);
const of =
  (code: string) =>
  (verdict: Verdict, because: string, ...edits: readonly Edit[]): CheckCase => ({
    finding: `SEQUENCE-${code}/cycle`,
    verdict,
    because,
    edits,
  });

const [settles, stands, limits, presses, travels, waits] = ['010', '020', '030', '035', '040', '050'].map(of) as [
  ReturnType<typeof of>,
  ReturnType<typeof of>,
  ReturnType<typeof of>,
  ReturnType<typeof of>,
  ReturnType<typeof of>,
  ReturnType<typeof of>,
];
const told = of('060');
const held = of('070');
const order = of('080');
const doors = of('082');
const service = of('084');
const alive = of('090');
const plays = of('100');
const idles = of('110');

const cut = at('most-states', '1000');
const endlessHoist = state('hoisting', 'transitions', '[{ done: z, target: carrying }]');

export const cases: readonly CheckCase[] = [
  settles('holds', 'the longest of its ways is a play: 10 s and four waits of 5 s at most, and 1 s'),
  settles('fails', 'those 31 s at most are more than 10 s', at('settles-within', '10 s')),
  settles('fails', 'a dead S6 is waited for without an end', endlessHoist),
  settles('open', 'what lies beyond the first thousand states is not known', cut),

  stands('holds', 'ready puts drives and servo off'),
  stands('fails', 'nothing puts the servo off after the drop', state('ready', 'onentry', '[{ drives: off }]')),
  stands('open', 'a search that was cut has not seen all', cut),

  limits('holds', 'every verb that goes to an end stops there by itself'),
  limits(
    'fails',
    'driven on for the 5 s of its time-out, ten ticks, with S1 pressed',
    state('carrying', 'onentry', '[{ drive: x, to: min }]'),
    state('carrying', 'transitions', '[{ after: 5 s, target: latched }]'),
  ),

  presses('holds', 'aiming lasts 10 s and so does service'),
  presses('fails', 'a player leans on a dead S2 for the 10 s of aiming', at('against-an-end', '8 s')),

  travels('holds', 'no one fault brings the load down unnoticed'),
  travels('fails', 'it carries at once, with the line out', state('lowering', 'transitions.0.target', 'carrying')),

  waits('holds', 'each state but ready and latched has a time-out'),
  waits('fails', 'S6 dead: hoisting waits for ever', endlessHoist),

  told('holds', 'latched and service light H3'),
  told('fails', 'nothing lights H3', state('latched', 'onentry', '[{ drives: off }, { servo: off }]')),

  held('holds', 'the fall is declared harmless'),
  held('fails', 'free without power, and nobody says that it is harmless', at('harmless-falls', null)),
  held('holds', 'a brake holds it', at('harmless-falls', null), { path: 'axes.z.unpowered', text: 'brake' }),

  order('holds', 'z is homed before x in every start'),
  order(
    'fails',
    'x first',
    state('waking', 'transitions.2.target', 'homing-x'),
    state('homing-x', 'onentry', '[{ drives: on }, { home: x }]'),
  ),

  doors('holds', 'an open door latches, and waking looks at it'),
  doors('fails', 'nobody looks at the door while it runs', state('running', 'transitions.1', null)),

  service('holds', 'letting go of S12 stops it'),
  service('fails', 'letting go of S12 means nothing', state('crawling', 'transitions.0', null)),

  alive('holds', 'each state and transition is used in some play'),
  alive('fails', 'nothing raises lost', state('ready', 'transitions.2', '{ event: lost, target: latched }')),

  plays('holds', '31 s at most for 40 s'),
  plays('fails', 'aiming alone takes 10 s', at('longest-play', '10 s')),

  idles('holds', 'a start takes 5 s, 2 s, 5 s and 5 s at most'),
  idles('fails', 'homing a stalled z takes 5 s until it latches', at('energised-idle', '4 s')),
];
