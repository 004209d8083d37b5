/** The facts that Sequence tells, worked out from the book. */
import { provide, type Provider } from '../../contract/index.ts';
import { chartOf, specOf, tickOf } from './calc/book.ts';
import { proofOf, proofToken } from './calc/proof.ts';
import { cycleChart } from './facts.ts';
import type { SequenceBook } from './schema.ts';

const whereStated = ({ sequence }: { readonly sequence?: unknown }): readonly string[] =>
  sequence === undefined ? [] : ['sequence'];

export const facts: readonly Provider<SequenceBook>[] = [
  provide<SequenceBook, NonNullable<(typeof cycleChart)['type']>>(
    cycleChart,
    (context) => ({ chart: chartOf(context), tick: tickOf(context).number }),
    whereStated,
  ),
  provide<SequenceBook, NonNullable<(typeof proofToken)['type']>>(
    proofToken,
    (context) => {
      const spec = specOf(context);
      return { spec, proof: proofOf(spec) };
    },
    whereStated,
  ),
];
