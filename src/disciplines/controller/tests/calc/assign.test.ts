/** The search for pins against every choice tried, which knows nothing of bounds and branches (independent). */
import { describe, expect, it } from 'vitest';
import { assign, isPossible, smallestClash, type Claim, type Item, type Option } from '../../calc/assign.ts';
import { bruteForce, randomFrom } from '../brute.ts';

const pick = (random: () => number, below: number): number => Math.floor(random() * below);

/** A small board with pins, channels that pins share, and timers that some claim alone and others share. */
const smallCase = (seed: number): Item[] => {
  const random = randomFrom(seed);
  const pins = 3 + pick(random, 5);
  const count = 2 + pick(random, 5);
  const optionOf = (): Option => {
    const claims: Claim[] = [];
    const kind = pick(random, 10);
    if (kind < 8) claims.push({ resource: `pin:${pick(random, pins)}`, mode: '' });
    if (kind === 7) claims.push({ resource: `pin:${pins + pick(random, 2)}`, mode: '' });
    if (kind >= 5) claims.push({ resource: `timer:${pick(random, 2)}`, mode: ['', 'pwm', 'clock'][pick(random, 3)]! });
    if (kind === 3) claims.push({ resource: `channel:${pick(random, 2)}`, mode: '' });
    return { claims, moved: pick(random, 2), cost: pick(random, 4), order: pick(random, 30) };
  };
  return Array.from({ length: count }, (_, k) => ({
    name: `s${k}`,
    options: Array.from({ length: 1 + pick(random, 2 + (seed % 3)) }, optionOf),
  }));
};

const cases = Array.from({ length: 500 }, (_, seed) => smallCase(seed + 1));

describe('the search for pins', () => {
  it('finds what trying every choice finds, on 500 small cases of which many cannot be had', () => {
    let impossible = 0;
    for (const [seed, items] of cases.entries()) {
      const expected = bruteForce(items);
      const found = assign(items);
      if (expected === null) impossible++;
      const order = found?.chosen.reduce((sum, option, k) => sum + items[k]!.options[option]!.order, 0) ?? 0;
      expect(found && [found.moved, found.cost, order], `seed ${seed + 1}`).toEqual(expected);
    }
    expect(impossible).toBeGreaterThanOrEqual(150);
    expect(impossible).toBeLessThanOrEqual(350);
  });

  it('names of what cannot be had a part that cannot be had either, and of which nothing can be left out', () => {
    for (const items of cases) {
      if (bruteForce(items) !== null) continue;
      const clash = smallestClash(items);
      expect(bruteForce(clash)).toBeNull();
      for (const one of clash) expect(bruteForce(clash.filter((item) => item !== one))).not.toBeNull();
    }
  });

  it('gives the same answer again', () => {
    for (const items of cases.slice(0, 50)) expect(assign(items)).toEqual(assign(items));
  });

  it('sees at once that twenty pulses do not fit on sixteen channels', () => {
    const items = Array.from({ length: 20 }, (_, k): Item => ({
      name: `lamp ${k}`,
      options: Array.from({ length: 26 }, (__, pin) => ({
        claims: [
          { resource: `pin:${pin}`, mode: '' },
          { resource: `channel:${pin % 16}`, mode: '' },
        ],
        moved: 0,
        cost: pin % 3,
        order: (pin - k) ** 2,
      })),
    }));
    expect(isPossible(items)).toBe(false);
    expect(isPossible(items.slice(0, 16))).toBe(true);
    expect(smallestClash(items)).toHaveLength(17);
  });

  it('has nothing to say of nothing', () => {
    expect(assign([])).toMatchObject({ chosen: [], moved: 0, cost: 0 });
    expect(assign([{ name: 'a', options: [] }])).toBeNull();
  });
});
