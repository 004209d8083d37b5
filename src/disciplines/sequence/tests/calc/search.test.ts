import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { OutsideRange } from '../../../../kernel/index.ts';
import { ticksOfTime, timeOfTicks, timeOut } from '../../calc/formulas.ts';
import { Explorer } from '../../calc/explore.ts';
import { explore, prove } from '../../calc/prove.ts';
import { FOREVER, longestOf, longestRuns, NO_KIND, runFrom } from '../../calc/runs.ts';
import { bitsFor, layout, Numbers, PairMap, Space } from '../../calc/space.ts';
import type { CycleSpec } from '../../calc/spec.ts';
import { driving, hoisting, steering } from '../references/charts.ts';

describe('packed states', () => {
  it('are told apart as texts of their words are', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.nat(3), fc.nat(3), fc.nat()), { maxLength: 300 }), (states) => {
        const space = new Space(3, 4);
        const known = new Map<string, number>();
        for (const words of states) {
          const key = words.join();
          const number = space.add(Uint32Array.from(words));
          expect(number).toBe(known.get(key) ?? known.size);
          known.set(key, number);
        }
        expect(space.count).toBe(known.size);
      }),
    );
  });

  it('have room for every field, and no two fields share a bit', () => {
    fc.assert(
      fc.property(fc.array(fc.nat(31), { maxLength: 20 }), (bits) => {
        const { fields, words } = layout(bits);
        const used = Array.from({ length: words }, () => 0);
        fields.forEach(({ word, shift, mask }, i) => {
          expect(mask).toBe(2 ** bits[i]! - 1);
          const there = (mask << shift) >>> 0;
          expect((used[word]! & there) >>> 0).toBe(0);
          expect(there >>> shift).toBe(mask);
          used[word]! |= there;
        });
      }),
    );
    expect([0, 1, 2, 3, 4, 255, 256].map(bitsFor)).toEqual([0, 1, 2, 2, 3, 8, 9]);
  });

  it('pairs are found again as in a map', () => {
    const pairs = new PairMap(2);
    for (let a = 0; a < 40; a++) for (let b = 0; b < 40; b++) pairs.set(a - 20, b * 7919, a * 40 + b);
    for (let a = 0; a < 40; a++) for (let b = 0; b < 40; b++) expect(pairs.get(a - 20, b * 7919)).toBe(a * 40 + b);
    expect(pairs.get(99, 0)).toBe(-1);
  });
});

/** A graph from lists of next states. */
const graph = (next: readonly (readonly number[])[]) => {
  const [starts, list] = [new Numbers(2), new Numbers(2)];
  for (const one of next) {
    starts.push(list.length);
    for (const state of one) list.push(state);
  }
  starts.push(list.length);
  return { count: next.length, starts, next: list };
};

describe('longest runs', () => {
  it('are those of a walk that tries every way', () => {
    const acyclic = fc.array(fc.array(fc.nat(9), { maxLength: 3 }), { minLength: 2, maxLength: 9 });
    fc.assert(
      fc.property(acyclic, fc.array(fc.boolean(), { minLength: 9, maxLength: 9 }), (ways, inside) => {
        const next = ways.map((to, i) => to.map((n) => i + 1 + n).filter((n) => n < ways.length));
        const kinds = Int32Array.from(next, (_, i) => (inside[i] ? 0 : NO_KIND));
        const walk = (state: number): number =>
          kinds[state] === NO_KIND ? 0 : 1 + Math.max(0, ...next[state]!.map(walk));
        const runs = longestRuns(graph(next), kinds);
        next.forEach((_, state) => expect(runs.longest[state]).toBe(walk(state)));
        next.forEach((_, state) => {
          if (walk(state) > 0) expect(runFrom(graph(next), runs, state)).toHaveLength(walk(state));
        });
      }),
    );
  });

  it('have no end where they come round, and where they lead to what does', () => {
    const g = graph([[1], [2], [3, 1], [], [3]]);
    const runs = longestRuns(g, new Int32Array(5));
    expect([...runs.longest]).toEqual([FOREVER, FOREVER, FOREVER, 1, 2]);
    expect(longestOf(runs)).toBe(FOREVER);
    expect(runFrom(g, runs, 1)).toEqual([1, 2]);
  });
});

describe('the search', () => {
  it.each([
    ['a driven belt', driving],
    ['a hoist', hoisting],
    ['two belts', steering],
  ])('steps of %s that are shared are those that each state has of its own', (_, spec) => {
    const shared = new Explorer(spec);
    const own = new Explorer(spec);
    shared.begin(() => {});
    own.begin(() => {});
    for (let state = 0; state < shared.codec.space.count; state++) {
      const count = shared.step(state);
      const found = new Map<number, boolean>();
      for (let i = 0; i < count; i++) {
        const next = shared.found[i]!;
        found.set(next, shared.alone[i] === 1 || found.get(next) === true);
      }
      const there = new Map<number, boolean>();
      own.expand(state, (next, _isNew, left) => there.set(next, left || there.get(next) === true));
      expect([...found].sort()).toEqual([...there].sort());
    }
    expect(own.codec.space.count).toBe(shared.codec.space.count);
  });

  it('ends a shortest trace where a rule is first broken', () => {
    const left: CycleSpec = { ...hoisting, marks: hoisting.marks.map((mark) => ({ ...mark, is: null })) };
    const { safety } = prove({
      ...left,
      marks: left.marks.map((mark, i) => (i === 2 ? { ...mark, is: 'ready' } : mark)),
    });
    // down is said to be ready: it is reached by a start from up, homed in the next tick, and a press of the button.
    expect(safety['idle-energised']?.steps.map(({ state }) => state)).toEqual(['up', 'ready', 'down']);
  });

  it('says that it was cut, and is not so when it saw all', () => {
    expect(explore({ ...driving, mostStates: 50 }).cut).toContain('after 50 states');
    expect(explore(driving).cut).toBeNull();
  });
});

describe('a cycle that is too large', () => {
  it('is refused with what there is too much of', () => {
    const buttons = Array.from({ length: 17 }, (_, i) => ({ ...steering.inputs[0]!, name: `S${100 + i}` }));
    expect(() => prove({ ...steering, inputs: buttons })).toThrow(/inputs = 17 is outside at most 16/);
    expect(() => prove({ ...driving, axes: Array.from({ length: 5 }, () => driving.axes[0]!) })).toThrow(OutsideRange);
  });
});

describe('times', () => {
  it.each([
    [6, 0.2, 30],
    [1.1, 0.1, 11],
    [0.6, 0.2, 3],
    [0.61, 0.2, 4],
    [0, 0.5, 0],
  ])('%f s are at ticks of %f s %i of them', (time, tick, ticks) => expect(ticksOfTime({ time, tick })).toBe(ticks));

  it('are never shorter in ticks, and by less than a tick longer', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 500, noNaN: true }),
        fc.double({ min: 0.01, max: 1, noNaN: true }),
        (time, tick) => {
          const again = timeOfTicks({ ticks: ticksOfTime({ time, tick }), tick });
          expect(again).toBeGreaterThan(time - 2e-6 * tick);
          expect(again).toBeLessThan(time + tick);
        },
      ),
    );
  });

  it('of a time-out leave a healthy machine alone', () => {
    expect(timeOut({ healthy: 4, margin: 0.25 })).toBe(5);
    expect(timeOut({ healthy: 4, margin: 0 })).toBe(4);
    expect(() => timeOut({ healthy: 0, margin: 0 })).toThrow(/outside/);
  });
});
