/** From a book to what is searched. */
import { checkBook } from '../../../../app/testing.ts';
import { Evaluator } from '../../../../engine/evaluate.ts';
import { Memory } from '../../../../engine/memory.ts';
import type { Edit } from '../../../../kernel/index.ts';
import { specOf, type SequenceContext } from '../../calc/book.ts';
import type { CycleSpec } from '../../calc/spec.ts';
import { house } from '../house.ts';

/** The cycle of a book, with edits made to its text. */
export const specFrom = (book: string, edits: readonly Edit[] = []): CycleSpec => {
  const machine = checkBook(book, house);
  const { snapshot } =
    edits.length === 0 ? machine : checkBook(machine.editedTexts(edits).get('book.yaml') ?? book, house);
  const providers = new Map(
    house.disciplines.flatMap(({ facts }) => facts.map((one) => [one.token.name, one] as const)),
  );
  const evaluator = new Evaluator(snapshot, providers, new Memory());
  return evaluator.trace(new Map(), () => specOf(evaluator.context as unknown as SequenceContext)).value;
};
