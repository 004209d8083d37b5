/** A save that is broken off at each thing that it does, and who comes after it. */
import { existsSync, mkdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import type { Seen } from '../../desk/folder.ts';
import { journalText } from '../journal.ts';
import { save, tidy, type Files } from '../save.ts';
import { bookAt, hashOf, textsOf, type BookAt } from '../texts.ts';
import { Died, dyingAt, quick, watched } from './disks.ts';
import { book, filesIn, scratch } from './scratch.ts';

const shelf = scratch();
afterAll(shelf.remove);

const before: Files = {
  'book.yaml': book('include: [parts/motors.yaml]\n'),
  'parts/motors.yaml': 'motors: {}\n',
  'rest.yaml': 'rest: 1\n',
};
const edit: Files = {
  'book.yaml': `${before['book.yaml']}# more\n`,
  'parts/motors.yaml': 'motors: { M1: {} }\n',
  'parts/new.yaml': 'new: 1\n',
};
const after: Files = { ...before, ...edit };
const laid = (): BookAt => bookAt(shelf.folder(before));
const seenOf = (at: BookAt): Seen => Object.fromEntries([...textsOf(at)].map(([name, { hash }]) => [name, hash]));

const things = async (): Promise<number> => {
  let count = 0;
  const at = laid();
  const counting = watched((_, number) => (count = number));
  expect(await save(at, edit, seenOf(at), counting)).toMatchObject({ kind: 'saved' });
  return count;
};

const isText = (name: string, text: string): boolean => text === before[name] || text === edit[name];

/** Dies at one thing of a save; says what lies there then. */
const died = async (at: BookAt, thing: number, half: boolean): Promise<void> => {
  await expect(save(at, edit, seenOf(at), dyingAt(thing, half))).rejects.toThrow(Died);
  for (const [name, text] of Object.entries(filesIn(at.home)))
    if (!name.includes('.gantrybook-')) expect([name, isText(name, text)]).toEqual([name, true]);
};

describe('a save that dies', () => {
  it.each([false, true])(
    'leaves each file old or new, and the next desk all old or all new (half: %s)',
    async (half) => {
      const all = await things();
      const ends = new Set<string>();
      for (let thing = 1; thing <= all; thing++) {
        const at = laid();
        await died(at, thing, half);
        await tidy(at, quick);
        const end = filesIn(at.home);
        ends.add(JSON.stringify(end));
        expect([thing, [before, after]]).toEqual([thing, expect.arrayContaining([end])]);
      }
      expect(ends.size).toBe(2);
    },
  );

  it('is ended by the next save too, at each thing that it had come to', async () => {
    const all = await things();
    for (let thing = 1; thing <= all; thing++) {
      const at = laid();
      await died(at, thing, false);
      // The page never got an answer, and saves once more what it has.
      const again = await save(
        at,
        edit,
        Object.fromEntries(Object.entries(before).map(([n, t]) => [n, hashOf(t)])),
        quick,
      );
      expect([thing, again.kind]).toEqual([thing, 'saved']);
      // A second name of an old text may still lie in a folder below, until the next desk is opened.
      expect([thing, filesIn(at.home)]).toEqual([thing, expect.objectContaining(after)]);
      await tidy(at, quick);
      expect([thing, filesIn(at.home)]).toEqual([thing, after]);
    }
  });

  it('may die once more while it is brought to its end', async () => {
    const all = await things();
    for (let thing = 1; thing <= all; thing++)
      for (let second = 1; second <= 6; second++) {
        const at = laid();
        await died(at, thing, false);
        // Before the journal stands there is nothing to bring to an end.
        if (!Object.keys(filesIn(at.home)).some((name) => name.endsWith('.journal'))) break;
        await tidy(at, dyingAt(second, false)).catch((error: unknown) => expect(error).toBeInstanceOf(Died));
        await tidy(at, quick);
        expect([thing, second, [before, after]]).toEqual([thing, second, expect.arrayContaining([filesIn(at.home)])]);
      }
  });

  it('never writes over what somebody did after it died', async () => {
    const all = await things();
    for (let thing = 1; thing <= all; thing++) {
      const at = laid();
      await died(at, thing, false);
      writeFileSync(join(at.home, 'parts', 'motors.yaml'), 'theirs: 1\n');
      await tidy(at, quick);
      expect([thing, filesIn(at.home)]).toEqual([
        thing,
        expect.objectContaining({ 'parts/motors.yaml': 'theirs: 1\n' }),
      ]);
    }
  });
});

describe('what looks like the rest of a save', () => {
  const id = '0123456789abcdef';
  const fresh = `.gantrybook-save-${id}.0.new`;
  const journal = `.gantrybook-save-${id}.journal`;
  const entryFor = (name: string, text: string): string =>
    journalText([{ name, fresh, before: null, after: hashOf(text) }]);

  it.each(['../planted.yaml', '/tmp/planted.yaml', 'away/planted.yaml', 'parts/../../planted.yaml'])(
    'puts nothing at %s',
    async (name) => {
      const at = laid();
      const outside = shelf.folder({});
      symlinkSync(outside, join(at.home, 'away'));
      for (const folder of [at.home, outside, shelf.home]) writeFileSync(join(folder, fresh), 'planted');
      writeFileSync(join(at.home, journal), entryFor(name, 'planted'));
      await tidy(at, quick);
      expect(filesIn(at.home)).toEqual(before);
      expect(filesIn(outside)).toEqual({ [fresh]: 'planted' });
      expect(existsSync(join(shelf.home, 'planted.yaml'))).toBe(false);
    },
  );

  it('is not taken for one when it is a link', async () => {
    const at = laid();
    const outside = shelf.folder({ 'secret.txt': 'secret' });
    symlinkSync(join(outside, 'secret.txt'), join(at.home, fresh));
    writeFileSync(join(at.home, journal), entryFor('stolen.yaml', 'secret'));
    await tidy(at, quick);
    expect(existsSync(join(at.home, 'stolen.yaml'))).toBe(false);
    expect(filesIn(outside)).toEqual({ 'secret.txt': 'secret' });
  });

  it.each(['', 'null', '{', '{"entries":[{}]}', '\0'])('is taken away when it says %j', async (text) => {
    const at = laid();
    writeFileSync(join(at.home, journal), text);
    await tidy(at, quick);
    expect(filesIn(at.home)).toEqual(before);
  });

  it('stays when it is not ours', async () => {
    const at = laid();
    const others = ['.gantrybook-save-mine', `.gantrybook-save-${id}.0.new.bak`, '.other.new'];
    for (const name of others) writeFileSync(join(at.home, name), 'mine');
    mkdirSync(join(at.home, 'sub'));
    writeFileSync(join(at.home, 'sub', fresh), 'left by a save that never was decided');
    await tidy(at, quick);
    expect(Object.keys(filesIn(at.home)).toSorted()).toEqual([...Object.keys(before), ...others].toSorted());
  });
});
