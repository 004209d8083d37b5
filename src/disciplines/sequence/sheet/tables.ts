/** The tables of the Sequence sheet. */
import { type Block, type Cell, left, number, type SheetContext } from '../../../contract/index.ts';
import { constant, type Finding } from '../../../kernel/index.ts';
import { cycleOf, tickOf } from '../calc/book.ts';
import { timeOfTicks } from '../calc/formulas.ts';
import { conditionText } from '../calc/guard-text.ts';
import type { Proof } from '../calc/prove.ts';
import { faultWords, type CycleSpec } from '../calc/spec.ts';
import type { Trace } from '../calc/trace.ts';
import { traceLines } from '../calc/words.ts';
import { missingTimeOut } from '../checks/lasting.ts';
import type { SequenceBook } from '../schema.ts';

export type Sheet = SheetContext<SequenceBook>;

export const timeText = (sheet: Sheet, ticks: number | null): string =>
  ticks === null
    ? 'without an end'
    : sheet.show(timeOfTicks.work({ ticks: constant(ticks, 'count', 'ticks of the search'), tick: tickOf(sheet) }));

/** Each property with its verdict, in the order of the codes. */
export const propertyTable = (findings: readonly Finding[]): Block => ({
  kind: 'table',
  name: 'properties',
  caption: 'What the search was asked, and what it found.',
  columns: [left('code'), left('question'), left('verdict')],
  rows: findings.map((finding): readonly Cell[] => [
    finding.code,
    finding.asks,
    { text: finding.verdict, verdict: finding.verdict, finding: finding.key },
  ]),
});

/** How long it can wait, and the time-out that the slowest healthy case asks for. */
export const waitTable = (sheet: Sheet, { dwells }: Proof): Block => ({
  kind: 'table',
  name: 'waits',
  caption:
    'How long the cycle can stay in each state at most, once nothing more breaks; with nothing broken; and, where something else than its own time ends a healthy stay, the shortest time-out that leaves a healthy machine alone, with its margin.',
  columns: [left('state'), number('at most'), number('healthy'), number('time-out from')],
  rows: dwells.map((dwell) => [
    dwell.state,
    timeText(sheet, dwell.ticks),
    dwell.healthy === 0
      ? 'never there'
      : dwell.healthy === null
        ? 'as long as a person likes'
        : timeText(sheet, dwell.healthy),
    dwell.healthy === 0 || dwell.healthy === dwell.ticks ? '—' : sheet.show(missingTimeOut(sheet, dwell)),
  ]),
});

/** What may break in the search. */
export const faultTable = (spec: CycleSpec): Block => ({
  kind: 'table',
  name: 'faults',
  caption: `Faults that may set in at any tick, at most ${spec.atMost} of them on one way. A player may do anything at any time, always.`,
  columns: [left('fault'), left('lasts')],
  rows: spec.faults.map((fault) => [
    faultWords(spec, fault),
    fault.kind === 'power-lost' || fault.kind === 'reset'
      ? 'again and again'
      : fault.kind === 'chatters' || fault.intermittent
        ? 'comes and goes'
        : 'stays',
  ]),
});

/** Every transition, in the order in which it is looked at. */
export const transitionTable = (sheet: Sheet, { chart }: CycleSpec): Block => ({
  kind: 'table',
  name: 'transitions',
  caption: 'Every transition in the order in which it is tried; those of an inner state go before those around it.',
  columns: [left('state'), left('on'), left('if'), left('to')],
  rows: chart.states.flatMap(({ id, transitions }) =>
    transitions.map(({ events, after, cond, target }) => [
      id,
      after === null ? (events?.join(' ') ?? 'at once') : `after ${timeText(sheet, after)}`,
      cond === null ? '' : conditionText(cond),
      target ?? 'stays',
    ]),
  ),
});

/** A trace in words. */
export const traceTable = (sheet: Sheet, spec: CycleSpec, trace: Trace, name: string, caption: string): Block => ({
  kind: 'table',
  name,
  caption,
  columns: [number('time'), left('what happens')],
  rows: traceLines(spec, trace).map(({ tick, words }) => [timeText(sheet, tick), words]),
});

/** What the search was, and what it does not see. */
export const searchWords = (sheet: Sheet, proof: Proof): readonly string[] => {
  const tick = sheet.show(tickOf(sheet));
  const { debounce } = cycleOf(sheet);
  const seen = `${proof.states} states of chart and machine, ${proof.steps} steps between them, ${proof.bytesEach} bytes a state.`;
  return [
    proof.cut === null
      ? `The search saw all that can come at a tick of ${tick}: ${seen}`
      : `${proof.cut}: what it did not see is not known. It saw ${seen}`,
    `Below the tick lies ${debounce === undefined ? 'the debounce of the inputs, which the book does not state' : `the debounce of ${sheet.show(debounce)}`}, the bounce of contacts and the order of two surprises within ${tick}: of these only one comes in one tick, the other in the next. A motion may end at any tick up to its longest time, rounded up.`,
    `A dead servo is not told apart from a claw that holds nothing, which is possible in every play.`,
  ];
};
