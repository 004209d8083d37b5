import {
  chmodSync,
  closeSync,
  mkdirSync,
  openSync,
  readFileSync,
  readlinkSync,
  renameSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
  writeSync,
} from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import type { Seen } from '../../desk/folder.ts';
import { withEndsOf } from '../../desk/folder.ts';
import { save, type Files } from '../save.ts';
import { bookAt, hashOf, textsOf, type BookAt } from '../texts.ts';
import { trouble, watched } from './disks.ts';
import { book, filesIn, scratch } from './scratch.ts';

const shelf = scratch();
afterAll(shelf.remove);

const two: Files = { 'book.yaml': book('include: [motors.yaml]\n'), 'motors.yaml': 'motors: {}\n' };
const changed: Files = { 'book.yaml': `${two['book.yaml']}# more\n`, 'motors.yaml': 'motors: { M1: {} }\n' };
const laid = (files: Files = two): BookAt => bookAt(shelf.folder(files));
const seenOf = (at: BookAt): Seen => Object.fromEntries([...textsOf(at)].map(([name, { hash }]) => [name, hash]));

describe('saving', () => {
  it('writes what changed, tells the new hashes, and leaves nothing else', async () => {
    const at = laid();
    const saved = await save(at, changed, seenOf(at));
    expect(saved).toEqual({ kind: 'saved', seen: seenOf(at) });
    expect(filesIn(at.home)).toEqual(changed);
  });

  it('makes a file that was not there, also in a folder that is', async () => {
    const at = laid();
    mkdirSync(join(at.home, 'parts'));
    expect(await save(at, { 'parts/new.yaml': 'a: 1\n' }, {})).toMatchObject({ kind: 'saved' });
    expect(readFileSync(join(at.home, 'parts', 'new.yaml'), 'utf8')).toBe('a: 1\n');
  });

  it('says the same when it is asked twice, as after an answer that was lost', async () => {
    const at = laid();
    const seen = seenOf(at);
    const first = await save(at, changed, seen);
    expect(await save(at, changed, seen)).toEqual(first);
  });

  it('keeps who may read a file', async () => {
    const at = laid();
    chmodSync(join(at.home, 'book.yaml'), 0o640);
    await save(at, changed, seenOf(at));
    expect(statSync(join(at.home, 'book.yaml')).mode & 0o777).toBe(0o640);
  });

  it('keeps a link, and writes the file that it leads to', async () => {
    const at = laid();
    symlinkSync('motors.yaml', join(at.home, 'link.yaml'));
    expect(await save(at, { 'link.yaml': 'motors: { M2: {} }\n' }, seenOf(at))).toMatchObject({ kind: 'saved' });
    expect(readlinkSync(join(at.home, 'link.yaml'))).toBe('motors.yaml');
    expect(readFileSync(join(at.home, 'motors.yaml'), 'utf8')).toBe('motors: { M2: {} }\n');
  });

  it('keeps line ends and a mark at the beginning that an editor dropped', async () => {
    const at = laid({ 'book.yaml': '\ufeffbook: 1\r\ntitle: Bench\r\n' });
    const saved = await save(at, { 'book.yaml': 'book: 1\ntitle: Desk\n' }, seenOf(at));
    expect(filesIn(at.home)).toEqual({ 'book.yaml': '\ufeffbook: 1\r\ntitle: Desk\r\n' });
    expect(saved).toEqual({ kind: 'saved', seen: { 'book.yaml': hashOf('\ufeffbook: 1\r\ntitle: Desk\r\n') } });
  });
});

describe('line ends', () => {
  it.each([
    ['a\nb\n', 'c\nd\n', 'c\nd\n'],
    ['a\r\nb\r\n', 'c\nd\n', 'c\r\nd\r\n'],
    ['a\r\nb\r\n', 'c\r\nd\n', 'c\r\nd\n'],
    ['a\r\nb\n', 'c\nd\n', 'c\nd\n'],
    ['\na\r\n', 'c\n', 'c\n'],
    ['\ufeffa\n', 'b\n', '\ufeffb\n'],
    ['\ufeffa\n', '\ufeffb\n', '\ufeffb\n'],
    ['', 'b\n', 'b\n'],
  ])('of %j over %j', (before, text, after) => expect(withEndsOf(before, text)).toBe(after));
});

describe('a file that somebody else changed', () => {
  it('stays, with everything else, and comes back as it stands', async () => {
    const at = laid();
    const seen = seenOf(at);
    writeFileSync(join(at.home, 'motors.yaml'), 'theirs: 1\n');
    const saved = await save(at, changed, seen);
    expect(saved).toEqual({
      kind: 'conflict',
      theirs: { 'motors.yaml': 'theirs: 1\n' },
      seen: { 'motors.yaml': hashOf('theirs: 1\n') },
    });
    expect(filesIn(at.home)).toEqual({ ...two, 'motors.yaml': 'theirs: 1\n' });
    const chosen = { ...seen, ...(saved.kind === 'conflict' ? saved.seen : {}) };
    expect(await save(at, changed, chosen)).toMatchObject({ kind: 'saved' });
    expect(filesIn(at.home)).toEqual(changed);
  });

  it('may be gone, or be there where none was', async () => {
    const at = laid();
    const seen = seenOf(at);
    rmSync(join(at.home, 'motors.yaml'));
    expect(await save(at, changed, seen)).toEqual({ kind: 'conflict', theirs: { 'motors.yaml': null }, seen: {} });
    expect(await save(at, { 'book.yaml': 'mine: 1\n' }, {})).toMatchObject({
      kind: 'conflict',
      theirs: { 'book.yaml': two['book.yaml'] },
    });
    expect(await save(at, { 'motors.yaml': 'mine: 1\n' }, {})).toMatchObject({ kind: 'saved' });
  });

  it('is noticed at the last instant, when all else is written', async () => {
    const at = laid();
    const seen = seenOf(at);
    const late = watched((what, _, path) => {
      if (what === 'write' && path.endsWith('.1.new')) writeFileSync(join(at.home, 'book.yaml'), 'theirs: 1\n');
    });
    expect(await save(at, changed, seen, late)).toMatchObject({ theirs: { 'book.yaml': 'theirs: 1\n' } });
    expect(filesIn(at.home)).toEqual({ ...two, 'book.yaml': 'theirs: 1\n' });
  });

  it('is noticed between the last look and the replacement, and everything is as others left it', async () => {
    const at = laid();
    const seen = seenOf(at);
    const late = watched((what, _, path) => {
      if (what === 'rename' && path.endsWith('.0.new')) writeFileSync(join(at.home, 'book.yaml'), 'theirs: 1\n');
    });
    expect(await save(at, changed, seen, late)).toEqual({
      kind: 'conflict',
      theirs: { 'book.yaml': 'theirs: 1\n' },
      seen: { 'book.yaml': hashOf('theirs: 1\n') },
    });
    expect(filesIn(at.home)).toEqual({ ...two, 'book.yaml': 'theirs: 1\n' });
  });

  it('is given back to an editor that held it open and wrote just after it was replaced', async () => {
    const at = laid({ 'book.yaml': two['book.yaml']! });
    const seen = seenOf(at);
    const held = openSync(join(at.home, 'book.yaml'), 'r+');
    const late = watched((what) => {
      if (what === 'settle') writeSync(held, '# THEIRS #', 0);
    });
    const saved = await save(at, { 'book.yaml': changed['book.yaml']! }, seen, late);
    closeSync(held);
    expect(saved.kind).toBe('conflict');
    expect(readFileSync(join(at.home, 'book.yaml'), 'utf8')).toMatch(/^# THEIRS #/);
    expect(Object.keys(filesIn(at.home))).toEqual(['book.yaml']);
  });

  it('stays beside under a name of its own where a third text stands in its place by then', async () => {
    const at = laid({ 'book.yaml': two['book.yaml']! });
    const path = join(at.home, 'book.yaml');
    const seen = seenOf(at);
    const held = openSync(path, 'r+');
    const late = watched((what) => {
      if (what !== 'settle') return;
      writeSync(held, '# THEIRS #', 0);
      writeFileSync(path, 'third: 1\n');
    });
    const saved = await save(at, { 'book.yaml': changed['book.yaml']! }, seen, late);
    closeSync(held);
    expect(saved).toMatchObject({ kind: 'conflict', theirs: { 'book.yaml': 'third: 1\n' } });
    const { 'book.yaml': main, ...beside } = filesIn(at.home);
    expect(main).toBe('third: 1\n');
    expect(Object.keys(beside)).toEqual([expect.stringMatching(/^book-written-meanwhile-[0-9a-f]{8}\.yaml$/)]);
    expect(Object.values(beside)).toEqual([expect.stringMatching(/^# THEIRS #/)]);
  });
});

describe('saving is refused, with what to do', () => {
  const refusal = async (at: BookAt, files: Files, seen = seenOf(at)): Promise<string> => {
    const before = filesIn(at.home);
    const saved = await save(at, files, seen);
    expect(filesIn(at.home)).toEqual(before);
    return saved.kind === 'refused' ? saved.says : saved.kind;
  };

  it.each([
    ['../out.yaml', 'x: 1\n', 'is no name for a text of a book'],
    ['notes.txt', 'x', 'is no name for a text of a book'],
    ['.hidden.yaml', 'x', 'is no name for a text of a book'],
    ['none/new.yaml', 'x: 1\n', 'There is no folder none'],
    ['book.yaml', 'x'.repeat(2 ** 21 + 1), 'longer than 2 MiB'],
    ['book.yaml', 'half: \ud83d\n', 'half of a character'],
  ])('for %s', async (name, text, says) => {
    expect(await refusal(laid(), { [name]: text })).toContain(says);
  });

  it('for more than 64 files', async () => {
    const many = Object.fromEntries(Array.from({ length: 65 }, (_, i) => [`a${i}.yaml`, '']));
    expect(await refusal(laid(), many)).toContain('64 files at most');
  });

  it('for a file that is not UTF-8, which would lose bytes', async () => {
    const at = bookAt(shelf.folder({ 'book.yaml': Buffer.from([0x61, 0x3a, 0x20, 0xe4, 0x0a]) }));
    expect(await refusal(at, { 'book.yaml': 'a: b\n' })).toContain('not UTF-8');
  });

  it('for links that lead out, and for a second name of the same file', async () => {
    const outside = shelf.folder({ 'secret.yaml': 'secret\n' });
    const at = laid();
    symlinkSync(join(outside, 'secret.yaml'), join(at.home, 'out.yaml'));
    symlinkSync(outside, join(at.home, 'away'));
    symlinkSync('motors.yaml', join(at.home, 'link.yaml'));
    expect(await refusal(at, { 'out.yaml': 'x\n' }, {})).toContain('leads out');
    expect(await refusal(at, { 'away/new.yaml': 'x\n' }, {})).toContain('outside');
    expect(await refusal(at, { 'motors.yaml': 'a\n', 'link.yaml': 'b\n' })).toContain('second name');
    expect(filesIn(outside)).toEqual({ 'secret.yaml': 'secret\n' });
  });

  it('for a folder that is gone', async () => {
    const at = laid();
    const seen = seenOf(at);
    renameSync(at.home, `${at.home}-moved`);
    const saved = await save(at, changed, seen);
    expect(saved).toMatchObject({ kind: 'refused', says: expect.stringContaining('Put the folder back') });
    expect(filesIn(`${at.home}-moved`)).toEqual(two);
  });

  it.each([
    ['ENOSPC', 'write', 'the disk is full. Make room on the disk and save again.'],
    ['EROFS', 'write', 'nothing can be written there. Save it as a new book'],
    ['EACCES', 'write', 'you may not. Save it as a new book'],
    ['EBUSY', 'rename', 'another program holds it. Save again in a moment.'],
    ['EIO', 'settle', 'EIO. Save again in a moment.'],
  ] as const)('for %s at a %s, and everything is as it was', async (code, at, says) => {
    for (const nth of [1, 2, 3]) {
      const place = laid();
      let met = 0;
      const failing = watched((what) => {
        if (what === at && ++met === nth) throw trouble(code, what);
      });
      const saved = await save(place, changed, seenOf(place), failing);
      expect(saved).toEqual({ kind: 'refused', says: expect.stringContaining(says) });
      expect(filesIn(place.home)).toEqual(two);
    }
  });

  it('for a replacement that goes wrong half-way: what was replaced is put back', async () => {
    const at = laid();
    const failing = watched((what, _, path) => {
      if (what === 'rename' && path.endsWith('.1.new')) throw trouble('EBUSY', 'rename');
    });
    expect(await save(at, changed, seenOf(at), failing)).toMatchObject({ kind: 'refused' });
    expect(filesIn(at.home)).toEqual(two);
  });

  it('for a replacement that can be neither ended nor undone, and names what stands there new', async () => {
    const at = laid();
    const failing = watched((what, _, path) => {
      if (what === 'rename' && /\.1\.new$|\.0\.old$/.test(path)) throw trouble('EBUSY', 'rename');
    });
    expect(await save(at, changed, seenOf(at), failing)).toEqual({
      kind: 'refused',
      says: 'Only book.yaml could be written, and not the rest: another program holds it. Save again, so that the files agree.',
    });
    expect(filesIn(at.home)).toEqual({ ...two, 'book.yaml': changed['book.yaml'] });
  });

  it('but not because something hidden could not be taken away afterwards', async () => {
    const at = laid();
    const failing = watched((what) => {
      if (what === 'remove') throw trouble('EPERM', 'unlink');
    });
    expect(await save(at, changed, seenOf(at), failing)).toEqual({ kind: 'saved', seen: seenOf(at) });
    expect(filesIn(at.home)).toMatchObject(changed);
    expect(await save(at, two, seenOf(at))).toMatchObject({ kind: 'saved' });
    expect(filesIn(at.home)).toEqual(two);
  });

  it('but a fault that is none of the disk is not hidden', async () => {
    const at = laid();
    const broken = watched(() => {
      throw new TypeError('made up');
    });
    await expect(save(at, changed, seenOf(at), broken)).rejects.toThrow('made up');
  });
});
