import { describe, expect, it } from 'vitest';
import { factToken, need, provide, type Discipline } from '../../contract/index.ts';
import { createHouse } from '../machine.ts';
import { base, houseOf, open, rows, shelfTrade, type ShelfBook } from './bench.ts';

const factsOf = (text: string, house = houseOf()) =>
  new Map(
    open(text, house)
      .facts()
      .map((fact) => [fact.name, fact]),
  );

describe('the list of facts', () => {
  const facts = factsOf(base);

  it('holds what the book and the catalogue say, in SI, with its kind and origin', () => {
    expect(facts.get('shelves.top.load')).toEqual({
      name: 'shelves.top.load',
      low: 10,
      high: 20,
      of: 'mass',
      unit: 'kg',
      origin: 'book',
      provenance: 'stated',
      range: 'spread',
    });
    expect(facts.get('parts.plank-18.thickness')).toMatchObject({ low: 0.018, provenance: 'table' });
    expect(facts.get('shelves.top.span')).not.toHaveProperty('range');
    expect(facts.get('shelves.top.backstop')).toEqual({ name: 'shelves.top.backstop', word: true, origin: 'book' });
  });

  it('holds what was worked out, at both ends of all ranges', () => {
    // By pencil: 0.4484 mm with 10 kg, 0.8968 mm with 20 kg.
    const fact = facts.get('shelf.sag(top)');
    expect(fact).toMatchObject({ of: 'length', unit: 'm', origin: 'worked' });
    expect(fact && 'low' in fact && [fact.low * 1e3, fact.high * 1e3]).toEqual([
      expect.closeTo(0.4484, 4),
      expect.closeTo(0.8968, 4),
    ]);
  });

  it('says why something is not there', () => {
    const missing = factsOf(base.replace('    span: 800 mm\n', ''));
    expect(missing.get('shelf.sag(top)')).toEqual({
      name: 'shelf.sag(top)',
      absent: 'not stated: shelves.top.span',
      origin: 'worked',
    });
  });

  it('takes facts apart, also where a name holds a dot, and says of a part by itself that it is not there', () => {
    const wide = factToken<unknown>('shelf.wide');
    const trade: Discipline<ShelfBook> = {
      ...shelfTrade,
      facts: [
        provide<ShelfBook, unknown>(
          wide,
          ({ book }, name) => {
            const { load } = need(book.shelves![name]!, 'load');
            return { 'part 1.5': { load }, sure: 'yes', some: load.number < 18 ? load : undefined };
          },
          () => ['top'],
        ),
      ],
      checks: [],
    };
    const house = createHouse({ disciplines: [trade as unknown as Discipline], catalogue: rows });
    const all = factsOf(base, house);
    expect(all.get('shelf.wide(top).part 1.5.load')).toMatchObject({ low: 10, high: 20 });
    expect(all.get('shelf.wide(top).sure')).toEqual({ name: 'shelf.wide(top).sure', word: 'yes', origin: 'worked' });
    expect(all.get('shelf.wide(top).some')).toMatchObject({ absent: expect.stringContaining('no number') as string });
  });

  it('says why a fact is not there in a part of its ranges', () => {
    // The formula may be used up to 2.5 m.
    const far = factsOf(base.replace('span: 800 mm', 'span: 2.6 m'));
    expect(far.get('shelf.sag(top)')).toMatchObject({
      absent: expect.stringContaining('L = 2.6 is outside 0 < L ≤ 2.5 m') as string,
    });
  });
});
