import { describe, expect, it } from 'vitest';
import { checkBook, find } from '../../../../app/testing.ts';
import { house } from '../house.ts';
import { base, cases } from '../cases.ts';

const machine = checkBook(base, house);
const edited = (edits: Parameters<typeof machine.editedTexts>[0]) =>
  edits.length === 0 ? machine : checkBook(machine.editedTexts(edits).get('book.yaml') ?? base, house);

describe('each question', () => {
  it.each(cases.map((one) => [one.finding, one.verdict, one.because, one] as const))(
    '%s %s: %s',
    (key, verdict, _, { edits }) => {
      const found = find(edited(edits), key);
      expect(found.verdict, `${found.sentence} ${found.reason?.text ?? ''}`).toBe(verdict);
    },
  );
});
