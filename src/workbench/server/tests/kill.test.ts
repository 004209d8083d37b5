import { afterAll, expect, it } from 'vitest';
import { killings, wrongIn } from './killing.ts';
import { scratch } from './scratch.ts';

const shelf = scratch({ inMemory: true });
afterAll(shelf.remove);

it('20 kills in the middle of saving leave no half file and lose no edit that was acknowledged', async () => {
  const outcomes = await killings(shelf, 20, 41);
  expect(outcomes).toHaveLength(20);
  expect(wrongIn(outcomes)).toEqual([]);
});

it('such a loss would be noticed', () => {
  const fine = { told: 3, left: [3, 4], found: [4, 4], others: [] };
  expect(wrongIn([fine])).toEqual([]);
  for (const wrong of [
    { ...fine, left: [3, NaN] },
    { ...fine, left: [2, 4] },
    { ...fine, found: [3, 4] },
    { ...fine, found: [5, 5] },
    { ...fine, others: ['.gantrybook-save-0.new'] },
  ])
    expect(wrongIn([wrong])).toHaveLength(1);
});
