import { describe, expect, it } from 'vitest';
import {
  factToken,
  need,
  provide,
  Quantity,
  type Check,
  type Discipline,
  type Provider,
  type Seen,
} from '../../contract/index.ts';
import {
  atMost,
  constant,
  mustBe,
  NotStated,
  OutsideRange,
  unitNamed,
  type Unit,
  type Value,
} from '../../kernel/index.ts';
import { Evaluator } from '../evaluate.ts';
import { createHouse } from '../machine.ts';
import { Memory } from '../memory.ts';
import type { BookSchema } from '../read/schema.ts';
import { expand, type Tree } from '../snapshot.ts';
import { base, find, houseOf, open, rows, shelfTrade, type ShelfBook } from './bench.ts';

const length = (low: number, high = low, range: 'spread' | 'doubt' = 'doubt') =>
  new Quantity(low, high, 'length', unitNamed('m', 'length') as Unit, range, 'stated', `${low}..${high} m`);

interface Box {
  readonly width?: Quantity;
  readonly height?: Quantity;
  readonly marks?: readonly string[];
  readonly lid?: string;
}
interface Shop {
  readonly boxes?: Readonly<Record<string, Box>>;
}
type Book = Seen<Shop>;

const evaluatorOf = (boxes: Tree, providers: readonly Provider[] = [], memory = new Memory()) => {
  const schema = { keyInfo: () => undefined } as unknown as BookSchema;
  const snapshot = expand({ boxes }, schema, new Map(), []);
  return new Evaluator(snapshot, new Map(providers.map((p) => [p.token.name, p])), memory);
};

/** The same look at one book after another, with results kept between them. */
const looks = <T>(look: (book: Book) => T, ...books: readonly Tree[]): T[] => {
  const memory = new Memory();
  return books.map((boxes) => {
    const evaluator = evaluatorOf(boxes, [], memory);
    const { result } = evaluator.run('look', '', new Map(), () => look(evaluator.context.book as Book));
    if (!result.ok) throw result.error;
    return result.value;
  });
};
const box = (book: Book, name = 'a') => need(book, 'boxes').boxes[name]!;

describe('a kept result is not taken for another book', () => {
  it.each<[string, (book: Book) => unknown, Tree, Tree]>([
    ['names that hold the sign between names', (b) => Object.keys(b.boxes!).length, { 'a,b': {} }, { a: {}, b: {} }],
    [
      'texts that hold the sign between texts',
      (b) => `${box(b).lid} ${box(b, 'b').lid}`,
      { a: { lid: 'p"|"q' }, b: { lid: 'r' } },
      { a: { lid: 'p' }, b: { lid: 'q"|"r' } },
    ],
    ['whether a key is there, asked by own key', (b) => Object.hasOwn(box(b), 'lid'), { a: {} }, { a: { lid: 'x' } }],
    ['whether a key is there, asked by in', (b) => 'lid' in box(b), { a: {} }, { a: { lid: 'x' } }],
    [
      'the indices of a list',
      (b) => Object.keys(box(b).marks!).length,
      { a: { marks: ['x'] } },
      { a: { marks: ['x', 'y'] } },
    ],
    ['whether a list has an entry', (b) => 1 in box(b).marks!, { a: { marks: ['x'] } }, { a: { marks: ['x', 'y'] } }],
    ['the end of a list', (b) => box(b).marks!.at(-1), { a: { marks: ['x'] } }, { a: { marks: ['x', 'y'] } }],
    [
      'a list that is walked through',
      (b) => [...box(b).marks!].join(),
      { a: { marks: ['x', 'y'] } },
      { a: { marks: ['y', 'x'] } },
    ],
    ['a number and a quantity', (b) => typeof box(b).width, { a: { width: 2 } }, { a: { width: length(2) } }],
    ['an empty map and nothing', (b) => b.boxes!['a'] !== undefined, { a: {} }, {}],
  ])('%s', (_, look, one, other) => {
    const [fresh] = looks(look, other);
    expect(looks(look, one, other)[1]).toEqual(fresh);
    expect(looks(look, one)[0]).not.toEqual(fresh);
  });
});

describe('what was read', () => {
  const pathsOf = (boxes: Tree, look: (book: Book) => unknown) => {
    const evaluator = evaluatorOf(boxes);
    return evaluator.trace(new Map(), () => look(evaluator.context.book as Book)).paths;
  };

  it('does not count what stands under keys that were only listed', () => {
    const boxes = { a: { width: length(1, 2), height: length(1, 2) } };
    expect(pathsOf(boxes, (b) => Object.keys(box(b)))).not.toContain('boxes.a.width');
    expect(pathsOf(boxes, (b) => Object.entries(box(b)))).toContain('boxes.a.width');
    expect(pathsOf(boxes, (b) => ({ ...box(b) }))).toContain('boxes.a.width');
  });

  it('still counts when it could not be worked out', () => {
    const evaluator = evaluatorOf({ a: { width: length(1, 2) } });
    const { paths } = evaluator.trace(new Map(), () => {
      const inner = evaluator.run('inner', '', new Map(), () =>
        need(box(evaluator.context.book as Book), 'width', 'height'),
      );
      return inner.result.ok;
    });
    expect(paths).toEqual(expect.arrayContaining(['boxes.a.width', 'boxes.a.height']));
  });
});

describe('the memory', () => {
  const half = factToken<Value>('shop.half');
  const kinds = (make: () => void) =>
    provide<Shop, Value>(half, ({ book }) => {
      make();
      return need(box(book), 'width').width;
    });

  it('keeps that there is no number, and never a fault of the program', () => {
    const memory = new Memory();
    let [runs, error]: [number, Error] = [0, new OutsideRange('f', 'x', 1, 'x < 1', '')];
    const provider = kinds(() => {
      runs++;
      throw error;
    });
    const ask = () => {
      const evaluator = evaluatorOf({ a: { width: length(1) } }, [provider], memory);
      return () => evaluator.trace(new Map(), () => evaluator.context.get(half, 'a'));
    };
    expect(ask()).toThrow(OutsideRange);
    expect(ask()).toThrow(OutsideRange);
    expect(runs).toBe(1);
    memory.era().forget();
    memory.era().forget();
    error = new TypeError('a slip');
    expect(ask()).toThrow('a slip');
    expect(ask()).toThrow('a slip');
    expect(runs).toBe(3);
  });

  it('keeps what was asked for since it last made room', () => {
    const memory = new Memory();
    let runs = 0;
    const provider = kinds(() => void runs++);
    const ask = () => {
      const evaluator = evaluatorOf({ a: { width: length(1) } }, [provider], memory);
      evaluator.trace(new Map(), () => evaluator.context.get(half, 'a'));
    };
    for (let time = 0; time < 5; time++) {
      ask();
      memory.era().forget();
    }
    expect(runs).toBe(1);
    memory.era().forget();
    ask();
    expect(runs).toBe(2);
  });

  it('forgets as a whole when it is full, and goes on right', () => {
    const memory = new Memory(10, 20);
    const provider = kinds(() => undefined);
    const evaluator = evaluatorOf({ a: { width: length(0, 100) } }, [provider], memory);
    for (let x = 0; x < 100; x++) {
      const { value } = evaluator.trace(new Map([['boxes.a.width', x]]), () => evaluator.context.get(half, 'a').number);
      expect(value).toBe(x);
    }
    expect(memory.era().size).toBeLessThanOrEqual(10);
    // One who works in an old stretch goes on beside one who works in a new one.
    for (let i = 0; i < 60; i++) memory.era().id(`some.path.${i}`);
    const later = evaluatorOf({ a: { width: length(7) } }, [provider], memory);
    const width = (one: Evaluator) => one.trace(new Map(), () => one.context.get(half, 'a').number).value;
    expect([width(evaluator), width(later)]).toEqual([50, 7]);
  });

  it('is asked only inside a calculation, so that nothing is read unseen', () => {
    const evaluator = evaluatorOf({ a: { width: length(1) } }, [kinds(() => undefined)]);
    expect(() => box(evaluator.context.book as Book).lid).toThrow('boxes is read outside of a calculation');
    expect(() => evaluator.context.get(half, 'a')).toThrow('shop.half(a) is asked for outside of a calculation');
  });

  it('does not let a fact hand a piece of an old book to a new one', () => {
    const piece = factToken<Seen<Box>>('shop.piece');
    const provider = provide<Shop, Seen<Box>>(piece, ({ book }) => box(book));
    const memory = new Memory();
    const width = (boxes: Tree) => {
      const evaluator = evaluatorOf(boxes, [provider], memory);
      return evaluator.trace(new Map(), () => evaluator.context.get(piece, 'a').width?.number).value;
    };
    expect(width({ a: { width: length(1) } })).toBe(1);
    expect(() => width({ a: { width: length(2) } })).toThrow('read outside of a calculation');
  });
});

describe('a kept finding', () => {
  const text = (more: string) => base.replace('    backstop: true\n', `    backstop: true\n${more}`);

  it('is formed again when only its sentence read what changed', () => {
    const house = houseOf();
    const sentence = (note: string) => find(open(text(`    note: ${note}\n`), house), 'SHELF-010/top').sentence;
    expect(sentence('by the door')).toContain('by the door');
    expect(sentence('by the wall')).toContain('by the wall');
  });

  it('is formed again when the unit it is printed in changed, also one that no fact of the book has', () => {
    const house = houseOf();
    const demand = (more: string) => find(open(text('') + more, house), 'SHELF-010/top').demand?.text;
    expect(demand('units: { length: mm }\n')).toMatch(/ mm$/);
    expect(demand('units: { length: in }\n')).toMatch(/ in$/);
    const trade = {
      ...shelfTrade,
      checks: [
        {
          code: 'SHELF-900',
          asks: '',
          subjects: () => [{ designations: [], at: 'shelves' }],
          run: () =>
            atMost(constant(10, 'force', 'push'), constant(20, 'force', 'stand'), { says: ({ demand: d }) => d }),
        },
      ],
    } as unknown as Discipline;
    const bare = createHouse({ disciplines: [trade], catalogue: rows });
    const push = (unit: string) => open(`${base}units: { force: ${unit} }\n`, bare).findings[0]!.sentence;
    expect(push('N')).toBe('10 N');
    expect(push('lbf')).toBe('2.25 lbf');
  });

  it('is formed again when its subject stands elsewhere', () => {
    const code = 'SHELF-900';
    const check: Check<ShelfBook> = {
      code,
      asks: '',
      subjects: ({ shelves = {} }) =>
        Object.keys(shelves).flatMap((name) =>
          shelves[name]!.note === 'here' ? [{ designations: ['it'], at: `shelves.${name}` }] : [],
        ),
      run: ({ book }, { at }) =>
        mustBe(need(book.shelves![at.slice('shelves.'.length)]!, 'load').load.number > 9, {
          says: ({ verdict }) => verdict,
        }),
    };
    const house = createHouse({
      disciplines: [{ ...shelfTrade, checks: [check] } as unknown as Discipline],
      catalogue: rows,
    });
    const book = (a: string, b: string) =>
      open(
        `book: 1\ntitle: T\nrevision: A\nshelves: { a: { load: 5 kg, note: ${a} }, b: { load: 20 kg, note: ${b} } }\n`,
        house,
      );
    expect(book('here', 'there').findings[0]!.verdict).toBe('fails');
    expect(book('there', 'here').findings[0]!.verdict).toBe('holds');
  });

  it('still tells that a declared slope is wrong when it is found again', () => {
    const check: Check<ShelfBook> = {
      code: 'SHELF-900',
      asks: '',
      subjects: () => [{ designations: [], at: 'shelves' }],
      run: ({ book }) => {
        const height = need(book.shelves!['top']!, 'height').height;
        // The origin says that it grows with the height, and it does not.
        const bent: Value = { ...height, number: 1 - (height.number - 1.3) ** 2 };
        return atMost(bent, constant(2, 'length', 'bound'), { says: () => '' });
      },
    };
    const house = createHouse({
      disciplines: [{ ...shelfTrade, checks: [check] } as unknown as Discipline],
      catalogue: rows,
    });
    expect(open(base, house).slopeFaults).toEqual(['SHELF-900']);
    expect(open(base, house).slopeFaults).toEqual(['SHELF-900']);
  });

  it('has a key that no other subject shares, whatever the names', () => {
    const check = {
      ...shelfTrade.checks[0]!,
      subjects: () => [
        { designations: ['a+b'], at: '' },
        { designations: ['a', 'b'], at: '' },
        { designations: ['a'], at: '', mode: 'b' },
        { designations: ['a@b'], at: '' },
      ],
      run: () => mustBe(true, { says: () => '' }),
    };
    const trade = { ...shelfTrade, checks: [check] } as unknown as Discipline;
    const keys = open(base, createHouse({ disciplines: [trade], catalogue: rows })).findings.map(({ key }) => key);
    expect(keys).toEqual(['SHELF-010/"a+b"', 'SHELF-010/a+b', 'SHELF-010/a@b', 'SHELF-010/"a@b"']);
  });

  it('is refused to two subjects of one name, and a code to two checks', () => {
    const twice = {
      ...shelfTrade.checks[0]!,
      subjects: () => [
        { designations: ['a'], at: 'x' },
        { designations: ['a'], at: 'y' },
      ],
    };
    const trade = (checks: unknown) => ({ ...shelfTrade, checks }) as unknown as Discipline;
    expect(() => open(base, createHouse({ disciplines: [trade([twice])], catalogue: rows }))).toThrow('SHELF-010/a');
    const [one] = shelfTrade.checks;
    expect(() => createHouse({ disciplines: [trade([one, one])], catalogue: rows })).toThrow('SHELF-010');
  });
});

describe('a check', () => {
  const houseWith = (check: Partial<Check<ShelfBook>>) =>
    createHouse({
      disciplines: [
        { ...shelfTrade, checks: [{ ...shelfTrade.checks[0]!, code: 'SHELF-900', ...check }] } as unknown as Discipline,
      ],
      catalogue: rows,
    });

  it('whose subjects are not stated asks nothing yet', () => {
    const house = houseWith({
      subjects: () => {
        throw new NotStated(['shelves.top.door']);
      },
    });
    expect(open(base, house).findings).toEqual([]);
  });

  it('that a doubt turns from yes to no is open without a percentage', () => {
    const house = houseWith({
      run: ({ book }, { designations: [name] }) => {
        const { height } = need(book.shelves![name!]!, 'height');
        return mustBe(height.number > 1.3, {
          says: ({ verdict, percent }) => `${verdict}${percent}`,
          because: [height],
        });
      },
    });
    const finding = find(open(base, house), 'SHELF-900/top');
    expect(finding.sentence).toBe('open');
    expect(finding.use).toBeUndefined();
    expect(finding.reason?.text).toBe('one way or the other, depending on height of the shelf');
    expect(finding.searched).toBe(true);
  });
});
