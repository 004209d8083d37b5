import { afterAll, expect, it } from 'vitest';
import { killings, wrongIn } from './killing.ts';
import { scratch } from './scratch.ts';

const shelf = scratch();
afterAll(shelf.remove);

it('200 kills in the middle of saving leave no half file and lose no edit that was acknowledged', async () => {
  const outcomes = await killings(shelf, 200, 2027);
  expect(outcomes).toHaveLength(200);
  expect(wrongIn(outcomes)).toEqual([]);
});
