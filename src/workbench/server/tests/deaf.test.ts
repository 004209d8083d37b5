/** Where the system tells of no change at all: on some network drives, or when it has no more watches to give. */
import { EventEmitter } from 'node:events';
import { rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, expect, it, vi } from 'vitest';
import { following } from '../follow.ts';
import { bookAt } from '../texts.ts';
import { book, scratch } from './scratch.ts';

const closed = vi.hoisted(() => vi.fn<() => void>());
vi.mock('chokidar', () => ({
  watch: () => {
    const silent = Object.assign(new EventEmitter(), { close: () => Promise.resolve(closed()) });
    queueMicrotask(() => silent.emit('error', Object.assign(new Error('no more watches'), { code: 'ENOSPC' })));
    return silent;
  },
}));

const shelf = scratch();
afterAll(shelf.remove);

it('changes are noticed all the same', async () => {
  const folder = shelf.folder({ 'book.yaml': book(), 'gone.yaml': 'a: 1\n' });
  const followed = following(bookAt(folder));
  const follower = followed.follow();
  writeFileSync(join(folder, 'book.yaml'), book('# more\n'));
  rmSync(join(folder, 'gone.yaml'));
  expect((await follower.next())?.files).toEqual({ 'book.yaml': book('# more\n'), 'gone.yaml': null });
  await followed.close();
  expect(closed).toHaveBeenCalled();
});
