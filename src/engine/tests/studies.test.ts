import { describe, expect, it } from 'vitest';
import type { Discipline, Study } from '../../contract/index.ts';
import { createHouse, finish } from '../machine.ts';
import { base, heaviest, houseOf, open, rows, shelfTrade, throws } from './bench.ts';

describe('a study', () => {
  it('asks about changed copies and leaves the book alone', () => {
    const machine = open(base);
    const before = JSON.stringify(machine.findings);
    // By pencil: 0.8·1.2 mm is reached with 21.41 kg; halving from 200 kg stops within 1 kg below it.
    const found = machine.study(heaviest, { shelf: 'top' });
    expect(found?.kilograms).toBeGreaterThan(20.41);
    expect(found?.kilograms).toBeLessThanOrEqual(21.41);
    expect(JSON.stringify(machine.findings)).toBe(before);
  });

  it('throws the same dice however often and in whatever order it is asked', () => {
    const machine = open(base);
    const first = machine.study(throws, null);
    machine.study(heaviest, { shelf: 'top' });
    expect(machine.study(throws, null)).toEqual(first);
    expect(open(base).study(throws, null)).toEqual(first);
    expect(new Set(first).size).toBe(3);
  });

  it('is dropped at its next step when nobody waits any more, and puts away what it holds', () => {
    let [steps, closed] = [0, false];
    const endless: Study<null, number> = {
      name: 'endless',
      *run() {
        try {
          for (;;) yield ++steps;
        } finally {
          closed = true;
        }
      },
    };
    const machine = open(base, houseOf({ cancelled: () => steps >= 3 }));
    expect(machine.study(endless, null)).toBeUndefined();
    expect([steps, closed]).toEqual([3, true]);
    expect(finish(endless.run(undefined as never, null), () => true)).toBeUndefined();
  });

  it('hears of an edit that cannot be written as something that is not known', () => {
    const machine = open(base);
    const tried = machine.study(
      {
        name: 'try',
        *run(asker) {
          yield [];
          return asker.ask([{ path: 'shelves.top.span', text: '5 m' }], ['SHELF-010/top']);
        },
      },
      null,
    );
    expect(tried).toMatchObject([{ key: 'SHELF-010/top', verdict: 'open', reason: { kind: 'outside' } }]);
    expect(tried?.[0]).not.toHaveProperty('use');
  });

  it('takes nothing out that is not there, and adds to a list', () => {
    const machine = open(base);
    const keys = (path: string) =>
      machine.study(
        {
          name: 'try',
          *run(asker) {
            yield [];
            return asker.ask([{ path, text: null }]).map(({ key }) => key);
          },
        },
        null,
      );
    expect(keys('shelves.low.span')).toEqual(machine.findings.map(({ key }) => key));
    expect(keys('shelves.top')).toEqual([]);
  });

  it('writes numbers as the author does, and knows the parts of a kind', () => {
    const machine = open(`${base}parts: { own: { kind: board }, plank-18: { kind: board } }\n`);
    const seen = machine.study(
      {
        name: 'look',
        *run(asker) {
          yield null;
          return {
            parts: asker.partsOf('board'),
            none: asker.partsOf('stepper'),
            written: asker.write('shelves.top.span', 0.6543, 3),
            text: asker.textAt('shelves.top.load'),
            range: asker.rangeAt('shelves.top.load'),
            missing: [asker.textAt('shelves.top.depth'), asker.rangeAt('shelves.top.note')],
          };
        },
      } as Study<null, unknown>,
      null,
    );
    expect(seen).toEqual({
      parts: ['own', 'plank-18', 'plank-22', 'plank-40'],
      none: [],
      written: '654 mm',
      text: '10..20 kg',
      range: { low: 10, high: 20, text: '10..20 kg' },
      missing: [null, null],
    });
  });
});

describe('services', () => {
  it('run jobs here in their order, each from its own seed', async () => {
    const jobs = [7, 8, 7].map((seed) => ({ task: 'shelf.toss', args: { times: 2 }, seed }));
    const [a, b, c] = await houseOf().inline.run(jobs);
    expect(a).toEqual(c);
    expect(a).not.toEqual(b);
    expect(await houseOf().inline.run(jobs)).toEqual([a, b, c]);
    await expect(houseOf().inline.run([{ task: 'shelf.nothing', args: {}, seed: 1 }])).rejects.toThrow(
      'no task named shelf.nothing',
    );
  });

  it('make a model from its name and plain parameters', () => {
    const token = { name: 'shelf.spring' } as {
      name: string;
      type?: (p: { rate: number }) => { force: (by: number) => number };
    };
    expect(houseOf().model(token, { rate: 3 }).force(2)).toBe(6);
    expect(() => houseOf().model({ name: 'shelf.rope' }, {} as never)).toThrow('no model named shelf.rope');
  });

  it('are refused to two trades of one name, and to a sheet that is not there', () => {
    const twin = { ...shelfTrade, schema: {} } as unknown as Discipline;
    expect(() => createHouse({ disciplines: [shelfTrade as unknown as Discipline, twin], catalogue: rows })).toThrow(
      'shelf.sag',
    );
    expect(() => houseOf({}, [...rows, rows[0]!])).toThrow('plank-18');
    expect(() => open(base).sheet('cellar')).toThrow('no sheet named cellar');
  });

  it('can be left out of a sheet, which then says so and is there at once', () => {
    let runs = 0;
    const counted: Study<null, number> = {
      name: 'counted',
      *run() {
        yield ++runs;
        return 7;
      },
    };
    const studied: Discipline = {
      ...shelfTrade,
      sheet: (context) => {
        const found = context.attempt(() => context.study(counted, null));
        return { blocks: [{ kind: 'paragraph', text: found.ok ? `found ${found.value}` : found.why }] };
      },
    };
    const house = createHouse({ disciplines: [studied], catalogue: rows });
    const read = house.read((name) => (name === 'book.yaml' ? base : undefined), 'book.yaml');
    if (!read.ok) throw new Error('the book of this test cannot be read');
    const machine = house.open(read.book);
    const [early, late] = [machine.sheet(studied.name, 'later'), machine.sheet(studied.name)];
    expect(runs).toBe(1);
    expect([early.awaits, late.awaits]).toEqual([1, 0]);
    expect(early.document.blocks).toEqual([{ kind: 'paragraph', text: 'still being worked out' }]);
    expect(late.document.blocks).toEqual([{ kind: 'paragraph', text: 'found 7' }]);
    expect(early.factsHash).not.toBe(late.factsHash);
  });
});
