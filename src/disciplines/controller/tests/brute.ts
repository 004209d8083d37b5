/** Every choice tried, one item after the other: what the search is held against. */
import type { Item, Option } from '../calc/assign.ts';

const fits = (option: Option, others: readonly Option[]): boolean =>
  others.every(({ claims }) =>
    claims.every((theirs) =>
      option.claims.every((own) => own.resource !== theirs.resource || (own.mode !== '' && own.mode === theirs.mode)),
    ),
  );

type Total = readonly [moved: number, cost: number, order: number];

const isLess = (a: Total, b: Total): boolean => {
  for (let k = 0; k < 3; k++) if (a[k] !== b[k]) return a[k]! < b[k]!;
  return false;
};

/** The least of moved wires, cost and order, in that order of importance; null where nothing fits. */
export const bruteForce = (items: readonly Item[]): Total | null => {
  let best: Total | null = null;
  const taken: Option[] = [];
  const place = (k: number, [moved, cost, order]: Total): void => {
    const item = items[k];
    if (item === undefined) {
      const total: Total = [moved, cost, order];
      if (best === null || isLess(total, best)) best = total;
      return;
    }
    for (const option of item.options) {
      if (!fits(option, taken)) continue;
      taken.push(option);
      place(k + 1, [moved + option.moved, cost + option.cost, order + option.order]);
      taken.pop();
    }
  };
  place(0, [0, 0, 0]);
  return best;
};

/** A generator of numbers between 0 and 1 that begins anew with each seed. */
export const randomFrom = (seed: number): (() => number) => {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
};
