import { describe, expect, it } from 'vitest';
import { draftName, draftOf, withDraft } from '../draft.ts';
import {
  bookOf,
  heard,
  isUnsaved,
  notSaved,
  openText,
  put,
  redone,
  saveBegun,
  saved,
  settled,
  takenBack,
  typed,
  undone,
  unsaved,
  type OpenText,
} from '../session.ts';

const open = (files: Record<string, string> = { 'book.yaml': 'a', 'motors.yaml': 'm' }): OpenText =>
  openText({
    book: { main: 'book.yaml', files },
    seen: Object.fromEntries(Object.keys(files).map((name) => [name, `hash of ${files[name]}`])),
  });
const disk = (files: Record<string, string | null>) => ({
  files,
  seen: Object.fromEntries(
    Object.entries(files).flatMap(([name, text]) => (text === null ? [] : [[name, `hash of ${text}`]])),
  ),
});
const write = (text: OpenText, content: string, now = 0): OpenText => typed(text, 'book.yaml', content, now);
const main = ({ files }: OpenText): string | undefined => files['book.yaml'];

describe('undo', () => {
  it('takes typing without a pause as one step', () => {
    let text = open();
    for (const [i, content] of ['ab', 'abc', 'abcd'].entries()) text = write(text, content, i * 100);
    text = write(text, 'abcd e', 5000);
    expect(text.past).toHaveLength(2);
    expect(main(undone(text))).toBe('abcd');
    expect(main(undone(undone(text)))).toBe('a');
    expect(main(redone(redone(undone(undone(text)))))).toBe('abcd e');
  });

  it('has no step for typing that was taken back by typing', () => {
    const text = write(write(open(), 'ab', 0), 'a', 100);
    expect(text.past).toEqual([]);
    expect(isUnsaved(text)).toBe(false);
  });

  it('goes over typing, remedies and readings in the order in which they came, each with its words', () => {
    let text = write(open(), 'ab', 0);
    text = put(text, { 'motors.yaml': 'm2', 'book.yaml': 'abc' }, { words: 'remedy: lower the speed', now: 10 });
    text = put(text, { 'motors.yaml': 'm3' }, { words: 'readings of M1', now: 20 });
    expect(text.past.map(({ words }) => words)).toEqual([
      'typing in book.yaml',
      'remedy: lower the speed',
      'readings of M1',
    ]);
    text = undone(undone(text));
    expect(text.files).toEqual({ 'book.yaml': 'ab', 'motors.yaml': 'm' });
    expect(text.future.at(-1)?.words).toBe('remedy: lower the speed');
  });

  it('takes what is done under one mark as one step, and can take it back without a trace', () => {
    let text = write(open(), 'ab', 0);
    text = put(text, { 'book.yaml': 'ab1' }, { words: 'speed: 1 → 2', together: 'hold 1', now: 10 });
    text = put(
      text,
      { 'book.yaml': 'ab22', 'motors.yaml': 'n' },
      { words: 'speed: 1 → 3', together: 'hold 1', now: 9999 },
    );
    expect(text.past).toHaveLength(2);
    expect(undone(text).files).toEqual({ 'book.yaml': 'ab', 'motors.yaml': 'm' });
    const back = takenBack(text, 'hold 1');
    expect(back.files).toEqual({ 'book.yaml': 'ab', 'motors.yaml': 'm' });
    expect(back.future).toEqual([]);
    expect(takenBack(text, 'hold 2')).toBe(text);
  });

  it('does nothing where there is nothing to undo', () => {
    const text = open();
    expect(undone(text)).toBe(text);
    expect(redone(text)).toBe(text);
    expect(write(text, 'a')).toBe(text);
  });

  it('brings back files that came and went', () => {
    const text = put(open(), { 'new.yaml': 'n', 'motors.yaml': null }, { words: 'moved', now: 0 });
    expect(bookOf(text).files).toEqual({ 'book.yaml': 'a', 'new.yaml': 'n' });
    expect(undone(text).files).toEqual({ 'book.yaml': 'a', 'motors.yaml': 'm' });
    expect(redone(undone(text)).files).toEqual(text.files);
  });

  it('keeps what it replaces, not whole texts', () => {
    const long = 'x'.repeat(200_000);
    let text = open({ 'book.yaml': long });
    for (let i = 0; i < 1100; i++) text = write(text, `${main(text)}${i}\n`, i * 10_000);
    expect(text.past).toHaveLength(1000);
    expect(JSON.stringify(text.past).length).toBeLessThan(long.length);
  });
});

describe('the disk', () => {
  it('is what unsaved texts differ from, however its lines end', () => {
    const text = openText({ book: { main: 'b', files: { b: '\uFEFFa\r\nb' } }, seen: {} });
    expect(text.files['b']).toBe('a\nb');
    expect(isUnsaved(text)).toBe(false);
    expect(unsaved(typed(text, 'b', 'a', 0))).toEqual({ b: 'a' });
  });

  it('has its changes taken over where nothing is unsaved, as a step', () => {
    const text = heard(open(), disk({ 'motors.yaml': 'n\r\n' }), 0);
    expect(text.files['motors.yaml']).toBe('n\n');
    expect(text.seen['motors.yaml']).toBe('hash of n\r\n');
    expect(isUnsaved(text)).toBe(false);
    expect(text.past.at(-1)?.words).toContain('motors.yaml');
    expect(undone(text).files['motors.yaml']).toBe('m');
  });

  it('stands against unsaved text until somebody chooses', () => {
    const text = heard(write(open(), 'mine'), disk({ 'book.yaml': 'theirs' }), 0);
    expect(main(text)).toBe('mine');
    expect(text.conflict).toEqual({ theirs: { 'book.yaml': 'theirs' }, seen: { 'book.yaml': 'hash of theirs' } });
    expect(saveBegun(text)).toBeUndefined();

    const mine = settled(text, { 'book.yaml': 'mine' }, 0);
    expect(saveBegun(mine)).toMatchObject({
      files: { 'book.yaml': 'mine' },
      seen: { 'book.yaml': 'hash of theirs', 'motors.yaml': 'hash of m' },
    });
    expect(main(undone(mine))).toBe('theirs');

    const theirs = settled(text, { 'book.yaml': 'theirs' }, 0);
    expect(main(theirs)).toBe('theirs');
    expect(isUnsaved(theirs)).toBe(false);
    expect(main(undone(theirs))).toBe('mine');
  });

  it('is chosen file by file', () => {
    let text = put(open(), { 'book.yaml': 'mine', 'motors.yaml': 'my motors' }, { words: 'both', now: 0 });
    text = heard(text, disk({ 'book.yaml': 'theirs', 'motors.yaml': 'their motors' }), 0);
    text = settled(text, { 'book.yaml': 'mine' }, 0);
    expect(text.conflict?.theirs).toEqual({ 'motors.yaml': 'their motors' });
    expect(saveBegun(text)?.files).toEqual({ 'book.yaml': 'mine' });
    text = settled(text, { 'motors.yaml': 'theirs' }, 0);
    expect(text.conflict).toBeUndefined();
    expect(text.files).toEqual({ 'book.yaml': 'mine', 'motors.yaml': 'their motors' });
  });

  it('is no conflict any more once both are the same, or the disk is as it was', () => {
    const text = heard(write(open(), 'mine'), disk({ 'book.yaml': 'theirs' }), 0);
    const again = heard(text, disk({ 'book.yaml': 'a' }), 0);
    expect(again.conflict).toBeUndefined();
    expect(main(again)).toBe('mine');
    expect(unsaved(again)).toEqual({ 'book.yaml': 'mine' });
    const same = heard(text, disk({ 'book.yaml': 'mine' }), 0);
    expect(same.conflict).toBeUndefined();
    expect(isUnsaved(same)).toBe(false);
  });

  it('may lose a file: one that is included goes, the main one is asked about', () => {
    const without = heard(open(), disk({ 'motors.yaml': null }), 0);
    expect(Object.keys(without.files)).toEqual(['book.yaml']);
    expect(undone(without).files['motors.yaml']).toBe('m');
    const asked = heard(open(), disk({ 'book.yaml': null }), 0);
    expect(main(asked)).toBe('a');
    expect(asked.conflict?.theirs).toEqual({ 'book.yaml': null });
    expect(settled(asked, { 'book.yaml': 'theirs' }, 0)).toBe(asked);
    const kept = settled(asked, { 'book.yaml': 'mine' }, 0);
    // What is not there has no hash, so that it is written anew.
    expect(saveBegun(kept)).toMatchObject({ files: { 'book.yaml': 'a' }, seen: { 'motors.yaml': 'hash of m' } });
    expect(kept.seen['book.yaml']).toBeUndefined();
  });

  it('keeps what was undone in other files', () => {
    const text = undone(write(open(), 'mine'));
    expect(main(redone(heard(text, disk({ 'motors.yaml': 'n' }), 0)))).toBe('mine');
    expect(heard(text, disk({ 'book.yaml': 'n' }), 0).future).toEqual([]);
  });
});

describe('saving', () => {
  it('leaves what was typed meanwhile unsaved', () => {
    const begun = saveBegun(write(open(), 'one'))!;
    const after = saved(write(begun.text, 'one two', 9999), begun.files, { 'book.yaml': 'h1' });
    expect(unsaved(after)).toEqual({ 'book.yaml': 'one two' });
    expect(after.seen).toEqual({ 'book.yaml': 'h1', 'motors.yaml': 'hash of m' });
    expect(after.saving).toBeUndefined();
  });

  it('does not take its own text on the disk for that of others', () => {
    const begun = saveBegun(write(open(), 'one'))!;
    const typing = write(begun.text, 'one two', 9999);
    const echo = heard(typing, disk({ 'book.yaml': 'one' }), 0);
    expect(echo.conflict).toBeUndefined();
    const after = saved(echo, begun.files, { 'book.yaml': 'hash of one' });
    expect(heard(after, disk({ 'book.yaml': 'one' }), 0)).toEqual(after);
    expect(unsaved(after)).toEqual({ 'book.yaml': 'one two' });
  });

  it('that was refused changes nothing', () => {
    const text = write(open(), 'one');
    expect(notSaved(saveBegun(text)!.text)).toEqual(text);
  });

  it('that met another text asks', () => {
    const begun = saveBegun(write(open(), 'one'))!;
    const asked = heard(notSaved(begun.text), disk({ 'book.yaml': 'theirs' }), 0);
    expect(asked.conflict?.theirs).toEqual({ 'book.yaml': 'theirs' });
    expect(main(asked)).toBe('one');
  });

  it('that was written over at once takes the later text, or asks where more was typed', () => {
    const begun = saveBegun(write(open(), 'one'))!;
    const told = heard(begun.text, disk({ 'book.yaml': 'theirs' }), 0);
    const taken = saved(told, begun.files, { 'book.yaml': 'hash of one' });
    expect(taken.conflict).toBeUndefined();
    expect(main(taken)).toBe('theirs');
    expect(taken.seen['book.yaml']).toBe('hash of theirs');
    expect(main(undone(taken))).toBe('one');
    const more = saved(write(told, 'one two', 9999), begun.files, { 'book.yaml': 'hash of one' });
    expect(more.conflict?.theirs).toEqual({ 'book.yaml': 'theirs' });
    expect(main(more)).toBe('one two');
  });

  it('has nothing to do where nothing is unsaved', () => {
    expect(saveBegun(open())).toBeUndefined();
  });
});

describe('a draft', () => {
  const crashed = write(open(), 'mine');
  const draft = JSON.parse(JSON.stringify(draftOf(crashed)));

  it('holds what is unsaved and nothing else', () => {
    expect(draftOf(open())).toBeUndefined();
    expect(draft).toEqual({
      format: 1,
      main: 'book.yaml',
      files: { 'book.yaml': 'mine' },
      seen: { 'book.yaml': 'hash of a' },
    });
  });

  it('comes back as a step', () => {
    const back = withDraft(open(), draft, 0);
    expect(back.conflict).toBeUndefined();
    expect(unsaved(back)).toEqual({ 'book.yaml': 'mine' });
    expect(main(undone(back))).toBe('a');
  });

  it('stands against what came onto the disk meanwhile', () => {
    const now = open({ 'book.yaml': 'theirs', 'motors.yaml': 'm' });
    const back = withDraft(now, draft, 0);
    expect(main(back)).toBe('mine');
    expect(back.conflict).toEqual({ theirs: { 'book.yaml': 'theirs' }, seen: { 'book.yaml': 'hash of theirs' } });
    // Heard once more, it is still for somebody to choose.
    expect(heard(back, disk({ 'book.yaml': 'theirs' }), 0).conflict).toEqual(back.conflict);
    expect(main(settled(back, { 'book.yaml': 'theirs' }, 0))).toBe('theirs');
    // A second crash changes nothing.
    expect(withDraft(now, JSON.parse(JSON.stringify(draftOf(back))), 0)).toEqual(back);
  });

  it('is of no use once it is on the disk, or when the file it was in is gone', () => {
    expect(withDraft(open({ 'book.yaml': 'mine' }), draft, 0).past).toEqual([]);
    const gone = withDraft(open({ 'book.yaml': 'a' }), { ...draft, files: { 'motors.yaml': 'my motors' } }, 0);
    expect(gone.conflict).toBeUndefined();
    expect(unsaved(gone)).toEqual({ 'motors.yaml': 'my motors' });
  });

  it.each([
    undefined,
    null,
    7,
    'draft',
    [],
    {},
    { ...draft, format: 2 },
    { ...draft, main: 'other.yaml' },
    { ...draft, files: { 'book.yaml': 7 } },
    { ...draft, seen: null },
    { ...draft, files: Object.fromEntries(Array.from({ length: 65 }, (_, i) => [`${i}.yaml`, ''])) },
    { ...draft, files: { 'book.yaml': 'x'.repeat(17 * 1024 * 1024) } },
  ])('that is none is left alone', (odd) => {
    const text = open();
    expect(withDraft(text, odd, 0)).toBe(text);
  });

  it('is kept under what tells books apart', () => {
    expect(draftName({ id: 'x1', name: 'tidepool' })).toBe('x1');
    expect(draftName({ name: 'tidepool' })).toBe('tidepool');
  });
});
