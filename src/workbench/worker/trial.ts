/** Edits tried on a copy of the book. */
import type { House, Machine } from '../../app/index.ts';
import { CannotEdit } from '../../engine/read/edit.ts';
import type { Edit } from '../../kernel/index.ts';
import type { Trial } from '../desk/engine.ts';
import { movedFrom } from './laid.ts';

/** What edits would do. The texts keep every byte that the edits do not mean. */
export const trialOf = (machine: Machine, house: House, edits: readonly Edit[]): Trial => {
  const { book } = machine;
  try {
    const texts = machine.editedTexts(edits);
    if (texts.size === 0) return { moved: [], files: {} };
    const result = house.read((name) => texts.get(name) ?? book.files.get(name), book.main);
    if (result.ok)
      return { moved: movedFrom(machine.findings, house.open(result.book).findings), files: Object.fromEntries(texts) };
    const [first] = result.problems;
    return { problem: `${first!.what} ${first!.allowed}`, moved: [], files: {} };
  } catch (error) {
    // Both say in words for the author why a text has no room for an edit.
    if (!(error instanceof CannotEdit)) throw error;
    return { problem: `${error.message}.`, moved: [], files: {} };
  }
};
