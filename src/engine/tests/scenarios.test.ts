import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { NotStated, OutsideRange, type Slope } from '../../kernel/index.ts';
import { extremes, solve, type Ask } from '../scenarios.ts';
import type { Axis } from '../search.ts';

type Use = (at: (path: string) => number) => number;

const askOf = (use: Use, axes: readonly Axis[], slopes: Record<string, Slope> = {}): Ask => {
  const known = new Map(axes.map(({ path }) => [path, slopes[path] ?? 'either'] as const));
  return (scenario) => ({
    usage: use((path) => {
      const axis = axes.find((one) => one.path === path)!;
      return scenario.get(path) ?? (axis.low + axis.high) / 2;
    }),
    slopes: known,
    axes,
  });
};
const axis = (path: string, low: number, high: number, range: 'spread' | 'doubt'): Axis => ({ path, low, high, range });

describe('solving over ranges', () => {
  it('takes the ends that the slopes name, demand and limit in the same scenario', () => {
    const axes = [axis('load', 1, 2, 'spread'), axis('strength', 4, 8, 'doubt')];
    const solved = solve(askOf((at) => at('load') / at('strength'), axes, { load: 'up', strength: 'down' }));
    expect(solved.worst.usage).toBe(0.5);
    expect(solved.best.usage).toBe(0.25);
    expect(solved.worst.scenario).toEqual(
      new Map([
        ['load', 2],
        ['strength', 4],
      ]),
    );
    expect(solved.searched).toBe(false);
  });

  it('cancels a fact that stands on both sides instead of comparing its two ends', () => {
    const solved = solve(askOf((at) => at('m') / (2 * at('m')), [axis('m', 1, 10, 'doubt')]));
    expect(solved.worst.usage).toBe(0.5);
  });

  it('finds a worst case that lies inside a range', () => {
    const use: Use = (at) => 0.4 + 0.8 / (1 + 400 * (at('length') - 0.63) ** 2);
    const solved = solve(askOf(use, [axis('length', 0.5, 0.9, 'spread')]));
    expect(solved.worst.usage).toBeCloseTo(1.2, 3);
    expect(solved.worst.scenario.get('length')).toBeCloseTo(0.63, 2);
    expect(solved.searched).toBe(true);
  });

  it('finds the best doubt inside its range too, at the worst spread', () => {
    const use: Use = (at) => 0.6 + (at('guess') - 3) ** 2 + 0.2 * at('wind');
    const solved = solve(askOf(use, [axis('guess', 1, 6, 'doubt'), axis('wind', 0, 1, 'spread')], { wind: 'up' }));
    expect(solved.best.usage).toBeCloseTo(0.8, 4);
    expect(solved.worst.usage).toBeCloseTo(9.8, 9);
  });

  it('tries only the ends of ranges that go one way, whichever way each goes there', () => {
    const axes = ['a', 'b', 'c', 'd', 'e'].map((path) => axis(path, 0, 1, path < 'c' ? 'spread' : 'doubt'));
    const slopes = Object.fromEntries(axes.map(({ path }) => [path, 'one-way' as const]));
    let asked = 0;
    const mean: Use = (at) => {
      asked++;
      const shares = axes.map(({ path }) => 0.1 + at(path));
      const powers = [3, 1, 4, 1.5, 2.6];
      return (
        shares.reduce((sum, share, i) => sum + share * powers[i]!, 0) /
        shares.reduce((sum, share) => sum + share, 0) /
        5
      );
    };
    const solved = solve(askOf(mean, axes, slopes));
    const corners = Array.from({ length: 32 }, (_, bits) => mean((path) => (bits >> 'abcde'.indexOf(path)) & 1));
    expect(solved.worst.usage).toBe(Math.max(...corners));
    expect(solved.searched).toBe(false);
    expect(asked - 32).toBeLessThan(60);
  });

  it('searches inside where something between the ends was worse than they are', () => {
    const use: Use = (at) => 0.9 - (at('x') - 0.5) ** 2;
    const solved = solve(askOf(use, [axis('x', 0, 1, 'spread')], { x: 'flat' }));
    expect(solved.worst.usage).toBeCloseTo(0.9, 6);
    expect(solved.searched).toBe(true);
    expect(solved.slopeBroken).toBe(false);
  });

  it('takes a range that only decides on one side of a threshold to both of its ends', () => {
    const axes = [axis('volts', 10, 20, 'spread')];
    const ask: Ask = (scenario) => {
      const volts = scenario.get('volts') ?? 15;
      return { usage: Math.min(0.4, volts / 30), slopes: new Map([['volts', volts < 12 ? 'up' : 'flat']]), axes };
    };
    expect(solve(ask).worst.usage).toBe(0.4);
    const falling: Ask = (scenario) => {
      const volts = scenario.get('volts') ?? 15;
      return { usage: Math.max(0.4, 6 / volts), slopes: new Map([['volts', volts < 15 ? 'down' : 'flat']]), axes };
    };
    expect(solve(falling).worst.usage).toBe(0.6);
  });

  it('says the same whether it was probed before, is probed now, or takes slopes on trust', () => {
    const axes = [axis('air', 0, 10, 'spread'), axis('load', 1, 2, 'spread')];
    const slopes = new Map<string, Slope>([
      ['air', 'up'],
      ['load', 'up'],
    ]);
    // Too cold is outside of what is known, and it is the far corner that is too cold.
    const ask: Ask = (scenario) => {
      const [air, load] = [scenario.get('air') ?? 5, scenario.get('load') ?? 1.5];
      return air < 1
        ? { usage: NaN, axes, trouble: new OutsideRange('f', 'θ', air, 'θ ≥ 1', '') }
        : { usage: (air * load) / 40, slopes, axes };
    };
    const [first, second, trusting] = [solve(ask), solve(ask), solve(ask, new Map(), true)];
    for (const solved of [first, second, trusting]) {
      expect(solved.trouble).toBeInstanceOf(OutsideRange);
      expect(solved.worst).toEqual(first.worst);
      expect(solved.best).toEqual(first.best);
    }
  });

  it('leaves no trace of a probe, not even where it comes upon something that is not stated', () => {
    const axes = [axis('x', 0, 1, 'spread'), axis('y', 0, 1, 'spread')];
    const slopes = new Map<string, Slope>([
      ['x', 'up'],
      ['y', 'up'],
    ]);
    const heard: boolean[] = [];
    const ask: Ask = (scenario, quietly) => {
      const [x, y] = [scenario.get('x') ?? 0.5, scenario.get('y') ?? 0.5];
      heard.push(quietly === true);
      if (x !== y) throw new NotStated(['only.between']);
      return { usage: (x + y) / 4, slopes, axes };
    };
    const [probedNow, probedBefore] = [solve(ask), solve(ask)];
    expect(heard).toContain(true);
    expect([probedNow.worst, probedNow.moot]).toEqual([probedBefore.worst, probedBefore.moot]);
  });

  it('searches a range that pulls one way on one side of a threshold and the other way on the other', () => {
    const axes = [axis('volts', 10, 20, 'spread')];
    const ask: Ask = (scenario) => {
      const volts = scenario.get('volts') ?? 15;
      const slope: Slope = volts < 12 ? 'up' : volts > 18 ? 'down' : 'flat';
      return { usage: Math.min(0.9, volts / 13, 1.08 - (volts - 18) / 20), slopes: new Map([['volts', slope]]), axes };
    };
    for (let time = 0; time < 3; time++) {
      const { worst } = solve(ask);
      expect(worst.usage).toBeCloseTo(0.9, 6);
    }
  });

  it('looks for the best inside a doubt where the worst over all spread turns round', () => {
    const axes = [axis('share', 0, 1, 'doubt'), axis('load', 0, 1, 'spread')];
    const use: Use = (at) => {
      const [share, load] = [at('share'), Math.round(at('load'))];
      return load === 0 ? 0.4 + share : 1.4 - share;
    };
    const { best, worst } = solve(askOf(use, axes, { share: 'one-way', load: 'one-way' }));
    expect(worst.usage).toBeCloseTo(1.4, 9);
    expect(best.usage).toBeCloseTo(0.9, 2);
  });

  it('notices a declared slope that is wrong and searches instead', () => {
    const use: Use = (at) => 1 - (at('x') - 0.5) ** 2;
    const solved = solve(askOf(use, [axis('x', 0, 1, 'doubt')], { x: 'up' }));
    expect(solved.slopeBroken).toBe(true);
    expect(solved.worst.usage).toBeCloseTo(1, 6);
  });

  it('tells of a scenario that could not be worked out, and never lets it hold', () => {
    const axes = [axis('x', 0, 1, 'doubt')];
    const ask: Ask = (scenario) => {
      const x = scenario.get('x') ?? 0.5;
      return x > 0.9
        ? { usage: NaN, slopes: new Map(), axes, trouble: new Error('too long') }
        : { usage: 0.1 * x, slopes: new Map([['x', 'up']]), axes };
    };
    expect(solve(ask).trouble?.message).toBe('too long');
  });

  it('agrees with a dense grid on 200 random machines', () => {
    const axes = [axis('a', 0.5, 2, 'spread'), axis('b', 1, 3, 'doubt'), axis('c', 0.2, 0.9, 'doubt')];
    const coefficient = fc.double({ min: -1, max: 1, noNaN: true });
    fc.assert(
      fc.property(fc.array(coefficient, { minLength: 6, maxLength: 6 }), ([p, q, r, s, t, u]) => {
        const use: Use = (at) => {
          const [a, b, c] = [at('a'), at('b'), at('c')];
          // A usage is never negative.
          return Math.max(
            0,
            1 +
              0.4 * p! * a +
              0.3 * q! * b +
              0.5 * r! * c +
              0.3 * s! * Math.sin(3 * a * c) +
              0.2 * t! * (b - 2) ** 2 +
              0.2 * u! * a * b,
          );
        };
        const solved = solve(askOf(use, axes));
        const steps = Array.from({ length: 31 }, (_, i) => i / 30);
        const on = (one: Axis, u_: number) => one.low + (one.high - one.low) * u_;
        let [worst, best] = [-Infinity, Infinity];
        for (const ub of steps)
          for (const uc of steps) {
            let here = -Infinity;
            for (const ua of steps) {
              const point: Record<string, number> = { a: on(axes[0]!, ua), b: on(axes[1]!, ub), c: on(axes[2]!, uc) };
              here = Math.max(
                here,
                use((path) => point[path]!),
              );
            }
            worst = Math.max(worst, here);
            best = Math.min(best, here);
          }
        // The grid itself is coarse: the search may do better than it, and worse by no more than the grid's own step.
        expect(solved.worst.usage).toBeGreaterThan(worst - 0.01);
        expect(solved.best.usage).toBeLessThan(best + 0.02);
      }),
      // Two ranges whose ridge is crossed: climbed from its two best points only, it was missed by a hundredth.
      {
        numRuns: 200,
        examples: [[[0, -0.25518954942597005, -0.90833977722111, -0.6734332497040512, 0, 0]]],
      },
    );
  });

  it('never turns holds into fails when a doubt is narrowed', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0.2, max: 1, noNaN: true }),
        (from, share) => {
          const axes = [axis('x', 0, 2, 'doubt'), axis('s', 0.5, 1, 'spread')];
          const ask = askOf((at) => 0.5 + 0.3 * Math.sin(4 * at('x')) * at('s'), axes);
          const wide = solve(ask);
          const low = 2 * from * (1 - share);
          const narrow = solve(ask, new Map([['x', [low, low + 2 * share * (1 - from) + 1e-9]]]));
          expect(narrow.worst.usage).toBeLessThanOrEqual(wide.worst.usage + 1e-3);
          expect(narrow.best.usage).toBeGreaterThanOrEqual(wide.best.usage - 1e-3);
        },
      ),
    );
  });
});

it('extremes of a value may be negative', () => {
  const axes = [axis('x', -1, 2, 'doubt')];
  const ends = extremes((scenario) => {
    const x = scenario.get('x') ?? 0.5;
    return { number: x * x - 3, slopes: new Map([['x', 'either' as const]]), axes };
  });
  expect(ends.low).toBeCloseTo(-3, 6);
  expect(ends.high).toBeCloseTo(1, 9);
});
