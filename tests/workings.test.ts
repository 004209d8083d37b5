/**
 * For every declared formula of every trade: the shown steps are recomputed by an expression library from the recorded
 * inputs, and the declared slopes and ranges are tried.
 */
import * as fc from 'fast-check';
import { all, create, type MathJsInstance } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { registry } from '../src/disciplines/registry.ts';
import { isNoNumber, type Formula, type Take } from '../src/kernel/index.ts';

const math: MathJsInstance = create(all!);
// The library calls numbers equal that differ in their last digit, and would take the other branch there.
math.import(
  {
    larger: (a: number, b: number) => a > b,
    largerEq: (a: number, b: number) => a >= b,
    smaller: (a: number, b: number) => a < b,
    smallerEq: (a: number, b: number) => a <= b,
  },
  { override: true },
);
const formulas: readonly Formula[] = registry.flatMap((trade) => trade.formulas);

type Numbers = Record<string, number | number[]>;

/** Ordinary inputs, now and then outside what is ordinary but inside what is allowed. */
const inputsFor = (formula: Formula): fc.Arbitrary<Numbers> =>
  fc.record(
    Object.fromEntries(
      Object.entries(formula.declared.takes as Record<string, Take>).map(([name, { typical, many }]) => {
        const one = fc.double({ min: typical[0], max: typical[1], noNaN: true });
        return [name, many ? fc.array(one, { minLength: 3, maxLength: 3 }) : one];
      }),
    ),
  ) as fc.Arbitrary<Numbers>;

const attempt = (run: () => number): number | undefined => {
  try {
    return run();
  } catch (error) {
    if (isNoNumber(error)) return undefined;
    throw error;
  }
};

const near = (a: number, b: number, scale: number): boolean =>
  Math.abs(a - b) <= 1e-9 * Math.max(Math.abs(a), Math.abs(b), scale, 1e-12);

describe.each(formulas.map((formula) => [formula.declared.name, formula] as const))('%s', (_, formula) => {
  const takes = Object.entries(formula.declared.takes as Record<string, Take>);

  it('shows steps that an expression library recomputes from the recorded inputs', () => {
    let reckoned = 0;
    fc.assert(
      fc.property(inputsFor(formula), (numbers) => {
        const plain = attempt(() => formula(numbers as never));
        if (plain === undefined) return;
        reckoned++;
        const { number, steps } = formula.show(numbers as never);
        expect(number).toBe(plain);
        expect(steps.length, 'a formula shows at least one step').toBeGreaterThan(0);
        expect(steps.at(-1)!.number, 'the last step is the result').toBe(number);
        const scope: Record<string, unknown> = {};
        for (const [name, take] of takes) scope[take.symbol] = numbers[name];
        for (const step of steps) {
          if (step.within === undefined) {
            const again = Number(math.evaluate(step.text, scope));
            expect(near(again, step.number, 0), `${step.symbol} = ${step.text}: ${again} beside ${step.number}`).toBe(
              true,
            );
          } else {
            const rest = Number(math.evaluate(step.text, { ...scope, [step.symbol]: step.number }));
            expect(Math.abs(rest), `${step.text} at ${step.symbol} = ${step.number}`).toBeLessThanOrEqual(step.within);
          }
          scope[step.symbol] = step.number;
        }
      }),
      { numRuns: 60 },
    );
    expect(reckoned, 'ordinary inputs give a number in most cases').toBeGreaterThan(20);
  });

  it('moves with each input as its slope says', () => {
    fc.assert(
      fc.property(inputsFor(formula), fc.double({ min: 0, max: 1, noNaN: true }), (numbers, share) => {
        const base = attempt(() => formula(numbers as never));
        if (base === undefined) return;
        for (const [name, { slope, typical }] of takes) {
          if (slope === undefined || slope === 'either' || slope === 'one-way' || slope === 'flat') continue;
          const raise = (x: number): number => x + share * (typical[1] - x);
          const old = numbers[name]!;
          const more = attempt(() =>
            formula({ ...numbers, [name]: Array.isArray(old) ? old.map(raise) : raise(old) } as never),
          );
          if (more === undefined) continue;
          const slack = 1e-9 * Math.max(Math.abs(base), Math.abs(more));
          expect(slope === 'up' ? more >= base - slack : more <= base + slack, `${name}: ${base} → ${more}`).toBe(true);
        }
      }),
      { numRuns: 150 },
    );
  });

  it('goes one way all along with each input that is said to', () => {
    const oneWay = takes.filter(([, { slope }]) => slope === 'one-way');
    const inOrder = fc.uniqueArray(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 3, maxLength: 3 });
    fc.assert(
      fc.property(inputsFor(formula), inOrder, (numbers, shares) => {
        for (const [name, { typical }] of oneWay) {
          const old = numbers[name]!;
          const list = Array.isArray(old) ? old : [old];
          for (const i of list.keys()) {
            const at = shares
              .toSorted((a, b) => a - b)
              .map((share) => list.with(i, typical[0] + share * (typical[1] - typical[0])))
              .map((tried) =>
                attempt(() => formula({ ...numbers, [name]: Array.isArray(old) ? tried : tried[0] } as never)),
              );
            if (at.includes(undefined)) continue;
            const [low, middle, high] = at as [number, number, number];
            const slack = 1e-9 * Math.max(Math.abs(low), Math.abs(middle), Math.abs(high));
            const between = middle >= Math.min(low, high) - slack && middle <= Math.max(low, high) + slack;
            expect(between, `${name}: ${low}, ${middle}, ${high}`).toBe(true);
          }
        }
      }),
      { numRuns: oneWay.length > 0 ? 150 : 1 },
    );
  });

  it('refuses what lies outside its declared ranges, and what is no number', () => {
    const ordinary = Object.fromEntries(
      takes.map(([name, { typical, many }]) => [name, many ? [typical[0], typical[1]] : (typical[0] + typical[1]) / 2]),
    );
    for (const [name, { above, from, below, to, many }] of takes) {
      const outside = [
        NaN,
        Infinity,
        above,
        below,
        ...(from === undefined ? [] : [from - 1]),
        ...(to === undefined ? [] : [to + 1]),
      ];
      for (const x of outside)
        if (x !== undefined)
          expect(() => formula({ ...ordinary, [name]: many ? [x] : x } as never), `${name} = ${x}`).toThrow();
    }
  });
});
