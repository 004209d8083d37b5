import { spawn } from 'node:child_process';
import { afterAll, expect, it } from 'vitest';
import { programIn } from './killing.ts';
import { filesIn, scratch } from './scratch.ts';

const shelf = scratch({ inMemory: true });
afterAll(shelf.remove);

const run = (program: string, ...args: readonly string[]): Promise<number | null> =>
  new Promise((resolve) => {
    spawn(process.execPath, [program, ...args], { stdio: ['ignore', 'ignore', 'inherit'] }).on('close', resolve);
  });

it('two desks that save into one folder at the same time lose none of each other', async () => {
  const folder = shelf.folder({ 'book.yaml': 'count: 0\n' });
  const counter = await programIn(shelf, 'counter.ts');
  expect(await Promise.all([run(counter, folder, '40'), run(counter, folder, '40')])).toEqual([0, 0]);
  expect(filesIn(folder)).toEqual({ 'book.yaml': 'count: 80\n' });
});
