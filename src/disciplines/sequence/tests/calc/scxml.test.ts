/**
 * Cases after the algorithm of SCXML 1.0 (W3C Recommendation, 1 September 2015): each names the section whose rule decides it.
 * What was expected was worked out by hand from that rule. Not covered, as a chart has none of it here: parallel (3.4), history
 * (3.10), invoke (6.4), script (5.8), if, foreach and log (4.3 to 4.6), data beside counters (5.2 to 5.4), errors as events
 * (5.10.2), sending other than time-outs (6.2), more than one target (3.5).
 */
import { describe, expect, it } from 'vitest';
import { readScxml } from '../../calc/scxml-read.ts';
import { SCXML, TRADE, writeScxml } from '../../calc/scxml-write.ts';
import { transition } from '../../calc/transition.ts';
import type { Action, Chart, ChartEvent, ChartPoint } from '../../facts.ts';
import { base } from '../base.ts';
import { counting, driving, steering } from '../references/charts.ts';
import { specFrom } from '../references/specs.ts';

const TICK = 0.5;

const documentOf = (body: string, initial = ''): string =>
  `<scxml xmlns="${SCXML}" xmlns:g="${TRADE}" version="1.0" datamodel="ecmascript"${initial && ` initial="${initial}"`}>${body}</scxml>`;

const chartFrom = (text: string): Chart => {
  const read = readScxml(text, TICK);
  if (!read.ok) throw new Error(read.problems.map(({ what }) => what).join('\n'));
  return read.chart;
};

/** A mark in the order of things. */
const s = (name: string): string => `<g:sound signal="${name}"/>`;
const io = (id: string): string => `<onentry>${s(`+${id}`)}</onentry><onexit>${s(`-${id}`)}</onexit>`;

const play = (chart: Chart, events: readonly (string | number)[]): { state: string | null; marks: string } => {
  const told: Action[] = [];
  let point: ChartPoint = { state: null, clocks: [], counters: {}, on: [] };
  const happen = (event: ChartEvent): void => {
    const [next, actions] = transition(chart, point, event);
    point = next;
    told.push(...actions);
  };
  happen({ kind: 'reset' });
  for (const event of events)
    if (typeof event === 'number') for (let i = 0; i < event; i++) happen({ kind: 'time' });
    else if (/^[+-]/.test(event)) happen({ kind: 'input', signal: event.slice(1), on: event.startsWith('+') });
    else happen({ kind: 'event', name: event });
  return { state: point.state, marks: told.flatMap((one) => (one.do === 'sound' ? [one.signal] : [])).join(' ') };
};

type Case = readonly [
  section: string,
  rule: string,
  body: string,
  events: readonly (string | number)[],
  state: string | null,
  marks: string,
];

const nested = `<state id="p" initial="p1">${io('p')}
  <transition event="e" target="q">${s('t')}</transition>
  <state id="p1">${io('p1')}<transition event="in" target="p2"/></state>
  <state id="p2">${io('p2')}</state></state>
  <state id="q">${io('q')}</state>`;

const cases: readonly Case[] = [
  [
    '3.2',
    'without an initial attribute the first state of the document is entered',
    '<state id="a"/><state id="b"/>',
    [],
    'a',
    '',
  ],
  [
    '3.3',
    'a compound state enters the first of its states by default',
    '<state id="p"><state id="p1"/><state id="p2"/></state>',
    [],
    'p1',
    '',
  ],
  [
    '3.3',
    'its initial attribute names another',
    '<state id="p" initial="p2"><state id="p1"/><state id="p2"/></state>',
    [],
    'p2',
    '',
  ],
  [
    '3.3',
    'the initial state may stand deeper',
    '<state id="p" initial="d"><state id="m"><state id="x"/><state id="d"/></state></state>',
    [],
    'd',
    '',
  ],
  [
    '3.6',
    'an initial element does the same',
    '<state id="p"><initial><transition target="p2"/></initial><state id="p1"/><state id="p2"/></state>',
    [],
    'p2',
    '',
  ],
  ['3.8', 'states are entered from the outside to the inside', nested, [], 'p1', '+p +p1'],
  [
    '3.9',
    'and left from the inside to the outside, before the content of the transition',
    nested,
    ['e'],
    'q',
    '+p +p1 -p1 -p t +q',
  ],
  ['3.13', 'what is around both source and target is not left', nested, ['in'], 'p2', '+p +p1 -p1 +p2'],
  ['3.13', 'an event that nothing waits for changes nothing', nested, ['other'], 'p1', '+p +p1'],
  [
    '3.13',
    'the transition of the inner state goes before that of the outer',
    '<state id="p"><transition event="e" target="q"/><state id="c"><transition event="e" target="d"/></state><state id="d"/></state><state id="q"/>',
    ['e'],
    'd',
    '',
  ],
  [
    '3.13',
    'where its condition is false the outer one is taken',
    `<state id="p"><transition event="e" target="q"/><state id="c"><transition event="e" cond="In('q')" target="d"/></state><state id="d"/></state><state id="q"/>`,
    ['e'],
    'q',
    '',
  ],
  [
    '3.13',
    'of one state the first in document order is taken',
    '<state id="a"><transition event="e" target="b"/><transition event="e" target="c"/></state><state id="b"/><state id="c"/>',
    ['e'],
    'b',
    '',
  ],
  [
    '3.13',
    'a state that goes to itself is left and entered',
    `<state id="a">${io('a')}<transition event="e" target="a">${s('t')}</transition></state>`,
    ['e'],
    'a',
    '+a -a t +a',
  ],
  [
    '3.13',
    'without a target nothing is left',
    `<state id="a">${io('a')}<transition event="e">${s('t')}</transition></state>`,
    ['e'],
    'a',
    '+a t',
  ],
  [
    '3.13',
    'an external transition from a compound state into itself leaves it',
    `<state id="p" initial="c">${io('p')}<transition event="e" target="d"/><state id="c">${io('c')}</state><state id="d">${io('d')}</state></state>`,
    ['e'],
    'd',
    '+p +c -c -p +p +d',
  ],
  [
    '3.13',
    'an internal one does not',
    `<state id="p" initial="c">${io('p')}<transition event="e" type="internal" target="d"/><state id="c">${io('c')}</state><state id="d">${io('d')}</state></state>`,
    ['e'],
    'd',
    '+p +c -c +d',
  ],
  [
    '3.13',
    'internal to a state outside is external',
    `<state id="p" initial="c">${io('p')}<transition event="e" type="internal" target="q"/><state id="c">${io('c')}</state></state><state id="q"/>`,
    ['e'],
    'q',
    '+p +c -c -p',
  ],
  [
    '3.13',
    'internal from a state without states inside is external',
    `<state id="a">${io('a')}<transition event="e" type="internal" target="a"/></state>`,
    ['e'],
    'a',
    '+a -a +a',
  ],
  [
    '3.13',
    'what needs no event is taken at once',
    `<state id="a">${io('a')}<transition target="b"/></state><state id="b">${io('b')}</state>`,
    [],
    'b',
    '+a -a +b',
  ],
  [
    '3.13',
    'and before an event that was raised',
    `<state id="a"><onentry><raise event="r"/></onentry><transition event="r" target="c"/><transition target="b"/></state><state id="b"><transition event="r" target="d"/></state><state id="c"/><state id="d"/>`,
    [],
    'd',
    '',
  ],
  [
    '4.2',
    'raised events come before the next from outside, in their order',
    `<state id="a"><transition event="e" target="b"><raise event="x"/><raise event="y"/></transition></state><state id="b"><transition event="y" target="wrong"/><transition event="x" target="c"/><transition event="f" target="wrong"/></state><state id="c"><transition event="y" target="d"/></state><state id="d"><transition event="f" target="f"/></state><state id="f"/><state id="wrong"/>`,
    ['e', 'f'],
    'f',
    '',
  ],
  [
    '4.2',
    'a raised event that nothing waits for is gone',
    `<state id="a"><onentry><raise event="x"/></onentry><transition event="e" target="b"/></state><state id="b"><transition event="x" target="c"/></state><state id="c"/>`,
    ['e'],
    'b',
    '',
  ],
  [
    '3.7',
    'a final state tells that what is around it is done',
    `<state id="p" initial="c"><transition event="done.state.p" target="q"/><state id="c"><transition event="e" target="f"/></state><final id="f"/></state><state id="q"/>`,
    ['e'],
    'q',
    '',
  ],
  [
    '3.7',
    'done comes after what entering raised',
    `<state id="p" initial="c"><transition event="done.state.p" target="q"/><transition event="x" target="r"/><state id="c"><transition event="e" target="f"/></state><final id="f"><onentry><raise event="x"/></onentry></final></state><state id="q"/><state id="r"/>`,
    ['e'],
    'r',
    '',
  ],
  [
    '3.7',
    'a final state at the top ends the chart',
    '<state id="a"><transition event="e" target="f"/></state><final id="f"/>',
    ['e', 'e'],
    null,
    '',
  ],
  [
    '3.12.1',
    'a descriptor matches an event that begins with its tokens',
    '<state id="a"><transition event="z" target="b"/></state><state id="b"/>',
    ['z.done'],
    'b',
    '',
  ],
  [
    '3.12.1',
    'but not one that only begins with its letters',
    '<state id="a"><transition event="z" target="b"/></state><state id="b"/>',
    ['zoom'],
    'a',
    '',
  ],
  [
    '3.12.1',
    'a star at the end of a descriptor changes nothing',
    '<state id="a"><transition event="z.*" target="b"/></state><state id="b"/>',
    ['z'],
    'b',
    '',
  ],
  [
    '3.12.1',
    'a star alone matches every event',
    '<state id="a"><transition event="*" target="b"/></state><state id="b"/>',
    ['any.thing'],
    'b',
    '',
  ],
  [
    '3.12.1',
    'of several descriptors one is enough',
    '<state id="a"><transition event="x y" target="b"/></state><state id="b"/>',
    ['y'],
    'b',
    '',
  ],
  [
    '5.9.1',
    'In asks whether a state or one inside it is active',
    `<state id="p"><state id="c"><transition event="e" cond="In('p') &amp;&amp; !In('q')" target="d"/></state><state id="d"/></state><state id="q"/>`,
    ['e'],
    'd',
    '',
  ],
  [
    '5.9.1',
    'a condition is asked when its event comes',
    '<state id="a"><transition event="e" cond="S6" target="b"/></state><state id="b"/>',
    ['e', '+S6', 'e'],
    'b',
    '',
  ],
  [
    '5.4',
    'what was assigned counts in the next condition',
    '<state id="a"><transition event="e" cond="n &gt;= 2" target="b"/><transition event="e"><assign location="n" expr="Math.min(n + 1, 2)"/></transition></state><state id="b"/>',
    ['e', 'e', 'e'],
    'b',
    '',
  ],
  [
    '6.2',
    'a delayed event of a state comes when its time is over',
    '<state id="a"><onentry><send event="after.a.3" id="after.a.3" delay="1.5s"/></onentry><onexit><cancel sendid="after.a.3"/></onexit><transition event="after.a.3" target="b"/></state><state id="b"/>',
    [2, 'none', 1],
    'b',
    '',
  ],
  [
    '6.3',
    'and not after the state was left',
    '<state id="a"><onentry><send event="after.a.3" id="after.a.3" delay="1500ms"/></onentry><onexit><cancel sendid="after.a.3"/></onexit><transition event="after.a.3" target="b"/><transition event="e" target="a"/></state><state id="b"/>',
    [2, 'e', 2],
    'a',
    '',
  ],
];

describe('the algorithm of SCXML', () => {
  it.each(cases)('%s: %s', (_, _rule, body, events, state, marks) => {
    const chart = chartFrom(documentOf(body));
    expect(play(chart, events)).toEqual({ state, marks });
  });

  it('refuses a chart that goes round in a ring', () => {
    const chart = chartFrom(
      documentOf('<state id="a"><transition target="b"/></state><state id="b"><transition target="a"/></state>'),
    );
    expect(() => play(chart, [])).toThrow(/round in a ring/);
  });

  it('changes nothing that it is given', () => {
    const { chart } = counting;
    const [before] = transition(chart, { state: null, clocks: [], counters: {}, on: [] }, { kind: 'reset' });
    const copy = structuredClone(before);
    transition(chart, before, { kind: 'event', name: 'B1.on' });
    expect(before).toEqual(copy);
  });
});

describe('a document', () => {
  it.each([
    ['the crane', specFrom(base).chart],
    ['counters, raised events, a final state', counting.chart],
    ['a driven belt', driving.chart],
    ['two belts', steering.chart],
  ])('of %s reads back as the chart that it was written from', (_, chart) => {
    const written = writeScxml(chart, TICK);
    const again = chartFrom(written);
    expect(again.counters).toEqual(chart.counters);
    expect(again.initial).toBe(chart.initial);
    const sorted = ({ states }: Chart) => [...states].sort((a, b) => (a.id < b.id ? -1 : 1));
    expect(sorted(again)).toEqual(sorted(chart));
    expect(writeScxml(again, TICK)).toBe(written);
  });

  it.each([
    ['<parallel id="p"/>', '<parallel> is not read here.', [1, 118]],
    ['<state id="a">\n  <history id="h"/></state>', '<history> is not read here.', [2, 3]],
    ['<state id="a"><onentry><script>x</script></onentry></state>', '<script> is not read here.', undefined],
    ['<state id="a"><transition event="e" target="b"/></state>', 'There is no state "b".', undefined],
    ['<state id="a"/><state id="a"/>', '"a" stands twice.', undefined],
    ['<state><onentry/></state>', 'This state has no id.', undefined],
    ['<state id="a"><transition cond="S6 +" target="a"/></state>', '"+" is too much in the condition.', undefined],
    ['<state id="a"><onentry><g:fly axis="z"/></onentry></state>', 'There is no action "fly".', undefined],
    ['<state id="a"><onentry><g:move axis="z" to="up"/></onentry></state>', '"up" is no to of move.', undefined],
    [
      '<state id="a"><onentry><assign location="n" expr="n - 1"/></onentry></state>',
      '"n - 1" is not read here.',
      undefined,
    ],
    [
      '<state id="a"><transition event="e" target="a b"/></state>',
      'More than one target wants parallel states.',
      undefined,
    ],
    ['<state id="a">', '<state> is ended by another name.', undefined],
    ['<state id="a" id="b"/>', 'id stands twice.', undefined],
    ['<!DOCTYPE x [<!ENTITY a "b">]>', 'A document type is not read here.', undefined],
    ['<state id="&boom;"/>', '&boom; is not known.', undefined],
    ['', 'There is no state.', undefined],
  ])('with %s is refused', (body, what, place) => {
    const read = readScxml(documentOf(body), TICK);
    const [first] = read.ok ? [] : read.problems;
    expect(first?.what).toBe(what);
    if (place) expect([first!.line, first!.column]).toEqual(place);
  });

  it('that is none is refused', () => {
    expect(readScxml('<html/>', TICK)).toMatchObject({ ok: false });
    expect(readScxml('S6', TICK)).toMatchObject({ ok: false });
    expect(readScxml('<scxml>', TICK)).toMatchObject({ ok: false });
  });
});
