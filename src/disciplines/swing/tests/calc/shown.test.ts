/** The working of every formula as it is shown: what each line is called, and what kind of quantity it is. */
import { describe, expect, it } from 'vitest';
import { dimensions, type Take } from '../../../../kernel/index.ts';
import { formulas } from '../../calc/all.ts';

const known = new Set<string>(dimensions.map(({ name }) => name));

describe.each(formulas.map((formula) => [formula.declared.name, formula] as const))(
  'the working of %s',
  (_, formula) => {
    const { gives, takes } = formula.declared;
    // One ordinary value of each input after another, so that both sides of a case are shown.
    const numbers = [0, 1].map((end) =>
      Object.fromEntries(
        Object.entries(takes as Record<string, Take>).map(([name, { typical }]) => [name, typical[end]!]),
      ),
    );

    it('ends with what the formula gives, by its symbol and kind', () => {
      for (const given of numbers) {
        const last = formula.show(given as never).steps.at(-1)!;
        expect([last.symbol, last.of]).toEqual([gives.symbol, gives.of]);
      }
    });

    it('names every line once, as a quantity of a known kind', () => {
      for (const given of numbers) {
        const { steps } = formula.show(given as never);
        const symbols = steps.map(({ symbol }) => symbol);
        expect(symbols).not.toContain('');
        expect(new Set(symbols).size).toBe(symbols.length);
        expect(steps.filter(({ of }) => !known.has(of)).map(({ symbol }) => symbol)).toEqual([]);
      }
    });
  },
);
