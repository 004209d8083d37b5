import { existsSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { makeBook } from '../new-book.ts';
import { Died, dyingAt, quick, trouble, watched } from './disks.ts';
import { book, filesIn, scratch } from './scratch.ts';

const shelf = scratch();
afterAll(shelf.remove);

const files = { 'book.yaml': book(), 'parts/motors.yaml': 'motors: {}\n' };

describe('a new book', () => {
  it('is made whole, in a folder of its name', () => {
    const place = shelf.folder({});
    expect(makeBook(place, 'my crane', files)).toEqual({ kind: 'made', name: 'my crane' });
    expect(filesIn(join(place, 'my crane'))).toEqual(files);
  });

  it('is whole or not there, wherever making it is broken off', () => {
    const ends = new Set<boolean>();
    for (let thing = 1; ; thing++) {
      const place = shelf.folder({});
      try {
        makeBook(place, 'crane', files, dyingAt(thing, true));
        break;
      } catch (error) {
        expect(error).toBeInstanceOf(Died);
      }
      const there = Object.entries(filesIn(place)).filter(([name]) => name.startsWith('crane'));
      if (there.length > 0) expect(filesIn(join(place, 'crane'))).toEqual(files);
      ends.add(there.length > 0);
    }
    expect(ends).toEqual(new Set([false, true]));
  });

  it.each([
    ['a book', { 'crane/book.yaml': 'mine' }],
    ['an empty folder but for a hidden file', { 'crane/.keep': '' }],
    ['a file', { crane: 'mine' }],
  ])('goes over nothing: neither %s', (_, there) => {
    const place = shelf.folder(there);
    expect(makeBook(place, 'crane', files)).toMatchObject({
      kind: 'refused',
      says: expect.stringContaining('there already'),
    });
    expect(filesIn(place)).toEqual(there);
  });

  it('follows no link that has its name', () => {
    const place = shelf.folder({});
    symlinkSync(join(shelf.home, 'nowhere'), join(place, 'crane'));
    expect(makeBook(place, 'crane', files)).toMatchObject({ kind: 'refused' });
    expect(existsSync(join(shelf.home, 'nowhere'))).toBe(false);
  });

  it('takes away what an earlier process was broken off at, and nothing that another is at', () => {
    const gone = '.gantrybook-new-2147483641-0123456789abcdef';
    const busy = `.gantrybook-new-${process.ppid}-0123456789abcdef`;
    const place = shelf.folder({
      [`${gone}/book.yaml`]: 'half',
      [`${busy}/book.yaml`]: 'half',
      '.gantrybook-new-mine/book.yaml': 'mine',
    });
    makeBook(place, 'crane', { 'book.yaml': book() }, quick);
    expect(Object.keys(filesIn(place))).toEqual([
      `${busy}/book.yaml`,
      '.gantrybook-new-mine/book.yaml',
      'crane/book.yaml',
    ]);
  });

  it.each(['ENOSPC', 'EACCES', 'EROFS'])('is not made for %s, and leaves nothing', (code) => {
    const place = shelf.folder({});
    const failing = watched((what, _, path) => {
      if (what === 'write' && path.endsWith('motors.yaml')) throw trouble(code, 'write');
    });
    expect(makeBook(place, 'crane', files, failing)).toMatchObject({
      kind: 'refused',
      says: expect.stringMatching(/^The new book crane cannot be made: .*\. .*\.$/),
    });
    expect(filesIn(place)).toEqual({});
  });
});
