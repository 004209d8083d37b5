/** What every formula of the supply says of itself, and how it behaves at the edges of what it says. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { siUnit, type Formula, type Take } from '../../../../kernel/index.ts';
import { formulas } from '../../calc/formulas.ts';

const root = new URL('../../../../../', import.meta.url).pathname;
const statusOf = (id: string): string =>
  (JSON.parse(readFileSync(`${root}sources/${id}.json`, 'utf8')) as { readonly status: string }).status;

const takesOf = (formula: Formula): readonly (readonly [string, Take])[] =>
  Object.entries(formula.declared.takes as Record<string, Take>);

/** Words that a reader sees: at least two letters. */
const words = /\p{L}{2}/u;

it('there are many, and no two share a name', () => {
  const names = formulas.map(({ declared }) => declared.name);
  expect(names.length).toBeGreaterThan(50);
  expect(new Set(names).size).toBe(names.length);
});

describe.each(formulas.map((formula) => [formula.declared.name, formula] as const))('%s', (_, formula) => {
  const { declared } = formula;

  it('says what it gives and takes, and why it takes no more', () => {
    expect(declared.gives.means).toMatch(words);
    expect(declared.gives.symbol).toMatch(/\S/);
    expect(declared.accuracy).toMatch(/\S/);
    for (const text of declared.assumes) expect(text).toMatch(words);
    for (const [name, take] of takesOf(formula)) {
      expect(take.means, name).toMatch(words);
      expect(take.symbol, name).toMatch(/\S/);
      const isBounded = [take.above, take.from, take.to, take.below].some((end) => end !== undefined);
      if (isBounded) expect(take.because, name).toMatch(words);
    }
  });

  it('names sources that are there, and evidence that is worth what it is called', () => {
    for (const { id, at } of declared.source) {
      expect(statusOf(id), id).toMatch(words);
      if (at !== undefined) expect(at, id).toMatch(words);
    }
    expect(declared.source.length).toBeGreaterThan(0);
    for (const { kind, against, source } of declared.checked) {
      expect(against).toMatch(/\S{2}/);
      if (source === undefined) expect(['independent', 'law', 'memory']).toContain(kind);
      else expect(statusOf(source.id), source.id).toBe(kind);
      if (source?.at !== undefined) expect(source.at).toMatch(words);
    }
    expect(declared.checked.some(({ kind }) => kind !== 'memory')).toBe(true);
  });

  it('shows every step with a symbol and a unit, and ends with what it gives', () => {
    const ordinary = Object.fromEntries(
      takesOf(formula).map(
        ([
          name,
          {
            typical: [low, high],
            many,
          },
        ]) => [name, many ? [low, high] : (low + high) / 2],
      ),
    );
    const { steps } = formula.show(ordinary as never);
    for (const { symbol, of } of steps) {
      expect(symbol).toMatch(/\p{L}/u);
      expect(siUnit(of), symbol).toMatch(/\S/);
    }
    expect(steps.at(-1)).toMatchObject({ symbol: declared.gives.symbol, of: declared.gives.of });
    expect(new Set(steps.map(({ symbol }) => symbol)).size, 'no step is shown twice').toBe(steps.length);
  });

  it('is tried where it may be used, and moves one way or says that it does not', () => {
    for (const [
      name,
      { typical, above = -Infinity, from = -Infinity, to = Infinity, below = Infinity, slope },
    ] of takesOf(formula)) {
      const [low, high] = typical;
      expect(low, name).toBeLessThan(high);
      expect(low > above && low >= from && high <= to && high < below, `${name}: typical inside its range`).toBe(true);
      expect(['up', 'down', 'one-way', 'either'], name).toContain(slope);
    }
  });
});
