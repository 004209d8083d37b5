import { describe, expect, it } from 'vitest';
import { formulasOf, house } from '../../../app/index.ts';
import { firstFault } from '../../../figures/tests/well-formed.ts';
import { formulasIn } from '../formulas.ts';
import { beganDemo, cardIn } from './books.ts';

const formulas = formulasIn(house);

describe('the index of formulas', () => {
  it('has every declared formula, each under its sheet', () => {
    const all = formulas.search('');
    expect(all.map(({ name }) => name).toSorted()).toEqual([...formulasOf(house).keys()].toSorted());
    const sheets = new Set(house.disciplines.map(({ name }) => name));
    for (const { sheet, title, symbol } of all) {
      expect(sheets).toContain(sheet);
      expect(title).not.toBe('');
      expect(symbol).not.toBe('');
    }
  });

  it('is searched by name, meaning, symbol and source, the nearest first', () => {
    expect(formulas.search('swing-period')[0]?.name).toBe('swing-period');
    expect(formulas.search('period of swing').map(({ name }) => name)).toContain('swing-period');
    expect(formulas.search('theta').length).toBeGreaterThan(0);
    expect(formulas.search('θ')).toEqual(formulas.search('theta'));
    const cited = [...formulasOf(house).values()].find(({ declared }) => declared.source.length > 0)!.declared;
    expect(formulas.search(cited.source[0]!.id).map(({ name }) => name)).toContain(cited.name);
    expect(formulas.search('no formula says this')).toEqual([]);
  });
});

describe('a formula', () => {
  it('shows its working, source and evidence with the examples that it gives itself', () => {
    for (const { name } of formulas.search('')) {
      const bare = formulas.page(name, {})!;
      const inputs = Object.fromEntries(bare.takes.map((take) => [take.name, take.example]));
      const page = formulas.page(name, inputs)!;
      // Typical values of all inputs at once may lie outside for a few; then it is said which.
      if (page.markup === undefined) {
        expect(page.problem ?? page.takes.find(({ problem }) => problem)?.problem).toBeTruthy();
        continue;
      }
      expect(firstFault(page.markup.replaceAll('<wbr>', '')), name).toBeUndefined();
      expect(page.markup).toContain('class="steps"');
      expect(page.markup).toContain('<b>Checked</b>');
    }
  });

  it('gives what a pencil gives', () => {
    // Law: a small swing takes 2π√(L/g); for 1 m and g = 9.80665 m/s² that is 2.006409 s.
    expect(formulas.page('swing-period', { length: '1 m', amplitude: '0.01 deg' })!.markup).toContain('2.00641');
  });

  it('says what is wrong with an input, and nothing of those not given yet', () => {
    const { name, takes } = formulas.page(formulas.search('acceler')[0]!.name, {})!;
    expect(takes.every(({ problem }) => problem === undefined)).toBe(true);
    const page = formulas.page(name, { [takes[0]!.name]: '5 bananas' })!;
    expect(page.takes[0]!.problem).toContain('5 bananas');
    expect(page.markup).toBeUndefined();
    expect(formulas.page(name, { nonsense: '1' })!.problem).toContain('takes no nonsense');
    expect(formulas.page(name, { [takes[0]!.name]: '1..2 m' })!.takes[0]!.problem).toBeDefined();
  });

  it('takes what is given by symbol as well as by name', () => {
    for (const { name } of formulas.search('').slice(0, 20)) {
      const { takes } = formulas.page(name, {})!;
      const bySymbol = Object.fromEntries(takes.map(({ symbol, example }) => [symbol, example]));
      const byName = Object.fromEntries(takes.map(({ name, example }) => [name, example]));
      expect(formulas.page(name, bySymbol)).toEqual(formulas.page(name, byName));
    }
  });
});

describe('the bench', () => {
  it('lists what can be measured, each with its form', async () => {
    const { engine } = await beganDemo('tidepool');
    const cards = (await engine.bench(1))!;
    expect(cards.length).toBeGreaterThan(10);
    for (const { name, test, path } of cards) {
      const page = (await engine.benchPage(1, name, test))!;
      expect(page).toMatchObject({ name, test, path });
      expect(page.procedure.length).toBeGreaterThan(0);
      expect(page.cautions.length).toBeGreaterThan(0);
      expect(page.asks.length).toBeGreaterThan(0);
      for (const { means, example, instrument } of page.asks)
        for (const text of [means, example, instrument]) expect(text).not.toBe('');
    }
  });

  it('takes readings, says what they come to, and tries them on a copy', async () => {
    const { engine, laid } = await beganDemo('tidepool-first-draft');
    const card = (await engine.bench(1))!.find(({ test }) => test === 'winding-resistance')!;
    const { asks } = (await engine.benchPage(1, card.name, card.test))!;
    const readings = Object.fromEntries(asks.map(({ name, example }) => [name, [example]]));
    const result = (await engine.benchResult(1, card.name, card.test, readings))!;
    expect(result.problems).toEqual([]);
    expect(result.says.length).toBeGreaterThan(0);
    expect(result.trial?.files['book.yaml']).toContain('measured');
    for (const { key, before } of result.trial?.moved ?? []) expect(before?.verdict).toBe(cardIn(laid, key).verdict);
  });

  it('says of each bad reading what is wrong, and tries nothing', async () => {
    const { engine } = await beganDemo('tidepool-first-draft');
    const { name, test } = (await engine.bench(1))!.find((one) => one.test === 'winding-resistance')!;
    const { asks, times } = (await engine.benchPage(1, name, test))!;
    const [first, ...others] = asks;
    const result = (await engine.benchResult(1, name, test, {
      [first!.name]: ['', '7 bananas', first!.example],
      ...Object.fromEntries(others.map((one) => [one.name, ['', one.example, '']])),
    }))!;
    expect(result.trial).toBeUndefined();
    expect(result.problems).toEqual(
      expect.arrayContaining([
        expect.objectContaining({ name: first!.name, time: 1, says: expect.stringContaining('7 bananas') }),
        expect.objectContaining({ name: others[0]!.name, time: 2, says: expect.stringContaining('Still missing') }),
      ]),
    );
    const many = Object.fromEntries(
      asks.map((one) => [one.name, Array.from({ length: times[1] + 1 }, () => one.example)]),
    );
    expect((await engine.benchResult(1, name, test, many))!.problems[0]).toMatchObject({ name: '' });
    expect(await engine.benchResult(1, name, test, {})).toEqual({
      problems: [],
      says: ['No readings yet: nothing would change.'],
    });
  });
});
