/** A chart as a W3C SCXML document. What the machine does stands in a namespace of its own. */
import type { Action, Chart, ChartState, Transition } from '../facts.ts';
import { conditionText, signalsIn } from './guard-text.ts';
import { escapeXml } from './xml.ts';

export const SCXML = 'http://www.w3.org/2005/07/scxml';
export const TRADE = 'urn:gantrybook:cycle:1';

const attribute = (name: string, value: string | null): string =>
  value === null ? '' : ` ${name}="${escapeXml(value)}"`;

/** A delayed event stands for the time-out of a state. */
export const timerOf = (state: string, ticks: number): string => `after.${state}.${ticks}`;

/** Whole digits of a time in seconds. */
const seconds = (ticks: number, tick: number): string => `${Number((ticks * tick).toPrecision(12))}s`;

const actionXml = (chart: Chart, action: Action): string => {
  switch (action.do) {
    case 'raise':
      return `<raise${attribute('event', action.event)}/>`;
    case 'count': {
      const { counter } = action;
      const most = chart.counters[counter] ?? 0;
      return `<assign${attribute('location', counter)}${attribute('expr', `Math.min(${counter} + 1, ${most})`)}/>`;
    }
    case 'clear':
      return `<assign${attribute('location', action.counter)}${attribute('expr', '0')}/>`;
    case 'drives':
      return `<g:drives${attribute('to', action.on ? 'on' : 'off')}/>`;
    case 'lamp':
      return `<g:lamp${attribute('signal', action.signal)}${attribute('to', action.on ? 'on' : 'off')}/>`;
    case 'sound':
      return `<g:sound${attribute('signal', action.signal)}/>`;
    case 'servo':
      return `<g:servo${attribute('to', action.to)}/>`;
    default:
      return `<g:${action.do}${attribute('axis', action.axis)}${'to' in action ? attribute('to', action.to) : ''}${'until' in action ? attribute('until', action.until) : ''}/>`;
  }
};

const transitionXml = (chart: Chart, { id }: ChartState, given: Transition): string => {
  const event = given.after === null ? (given.events?.join(' ') ?? null) : timerOf(id, given.after);
  const open = `<transition${attribute('event', event)}${attribute('cond', given.cond && conditionText(given.cond))}${attribute('target', given.target)}${given.internal ? ' type="internal"' : ''}`;
  return given.actions.length === 0
    ? `${open}/>`
    : `${open}>${given.actions.map((action) => actionXml(chart, action)).join('')}</transition>`;
};

const stateXml = (chart: Chart, tick: number, state: ChartState, indent: string): string => {
  const times = [...new Set(state.transitions.flatMap(({ after }) => (after === null ? [] : [after])))];
  const entry = [
    ...times.map(
      (ticks) =>
        `<send${attribute('event', timerOf(state.id, ticks))}${attribute('id', timerOf(state.id, ticks))}${attribute('delay', seconds(ticks, tick))}/>`,
    ),
    ...state.onentry.map((action) => actionXml(chart, action)),
  ];
  const exit = [
    ...times.map((ticks) => `<cancel${attribute('sendid', timerOf(state.id, ticks))}/>`),
    ...state.onexit.map((action) => actionXml(chart, action)),
  ];
  const lines = [
    ...(entry.length > 0 ? [`<onentry>${entry.join('')}</onentry>`] : []),
    ...(exit.length > 0 ? [`<onexit>${exit.join('')}</onexit>`] : []),
    ...state.transitions.map((one) => transitionXml(chart, state, one)),
  ].map((line) => `${indent}  ${line}\n`);
  const inside = chart.states
    .filter(({ parent }) => parent === state.id)
    .map((child) => stateXml(chart, tick, child, `${indent}  `));
  const name = state.final ? 'final' : 'state';
  const open = `${indent}<${name}${attribute('id', state.id)}${attribute('initial', state.initial)}`;
  return lines.length + inside.length === 0
    ? `${open}/>\n`
    : `${open}>\n${lines.join('')}${inside.join('')}${indent}</${name}>\n`;
};

/**
 * The chart as an SCXML 1.0 document; `readScxml` reads it back.
 *
 * @param tick length of a tick [s]
 */
export const writeScxml = (chart: Chart, tick: number): string => {
  const inputs = new Set(
    chart.states.flatMap(({ transitions }) => transitions.flatMap(({ cond }) => (cond ? signalsIn(cond) : []))),
  );
  const data = [
    ...[...inputs].map((name) => `<data${attribute('id', name)} expr="false"/>`),
    ...Object.keys(chart.counters).map((name) => `<data${attribute('id', name)} expr="0"/>`),
  ];
  return `<?xml version="1.0" encoding="UTF-8"?>
<scxml xmlns="${SCXML}" xmlns:g="${TRADE}" version="1.0" datamodel="ecmascript"${attribute('initial', chart.initial)}>
${data.length > 0 ? `  <datamodel>${data.join('')}</datamodel>\n` : ''}${chart.states
    .filter(({ parent }) => parent === null)
    .map((state) => stateXml(chart, tick, state, '  '))
    .join('')}</scxml>
`;
};
