/** What the checks of a cycle share. */
import type { Check, Subject } from '../../../contract/index.ts';
import { NotConverged, type Edit, type Value } from '../../../kernel/index.ts';
import { counted, cycleOf, tickOf, type SequenceContext } from '../calc/book.ts';
import { timeOfTicks } from '../calc/formulas.ts';
import type { Lasted, Proof } from '../calc/prove.ts';
import { proofToken } from '../calc/proof.ts';
import type { Safety } from '../calc/rules.ts';
import type { CycleSpec } from '../calc/spec.ts';
import { shortWords } from '../calc/words.ts';
import type { SequenceBook } from '../schema.ts';

export type SequenceCheck = Check<SequenceBook>;

/** One finding of the whole cycle. */
export const ofTheCycle = ({ sequence }: SequenceContext['book']): readonly Subject[] =>
  sequence === undefined ? [] : [{ designations: ['cycle'], at: 'sequence' }];

export interface Searched {
  readonly spec: CycleSpec;
  readonly proof: Proof;
}

export const searched = (context: SequenceContext): Searched => context.get(proofToken, 'sequence');

/** A search that was cut has not seen that something never is; what it did see is broken all the same. */
export const whole = ({ proof }: Searched): Searched['proof'] => {
  if (proof.cut !== null) throw new NotConverged('the search', `${proof.cut}; what lies beyond is not known`);
  return proof;
};

const faultCount = (faults: number): string =>
  faults === 0 ? 'with nothing broken' : faults === 1 ? 'with one fault' : `with ${faults} faults at once`;

/** How a safety property is broken, or null where a whole search never broke it. */
export const brokenBy = (found: Searched, rule: Safety): string | null => {
  const trace = found.proof.safety[rule];
  if (trace) return `${faultCount(trace.faults)}: ${shortWords(found.spec, trace)}`;
  whole(found);
  return null;
};

/** The length of a run in time; null where it has no end. */
export const timeOf = (context: SequenceContext, lasted: Pick<Lasted, 'ticks'>, means: string): Value | null =>
  lasted.ticks === null ? null : timeOfTicks.work({ ticks: counted(lasted.ticks, means), tick: tickOf(context) });

/** Where a new transition of a state goes. */
export const transitionAt = (context: SequenceContext, state: string, text: string): Edit => {
  const there = cycleOf(context).states?.[state]?.transitions?.length ?? 0;
  return { path: `sequence.states.${state}.transitions.${there}`, text };
};
