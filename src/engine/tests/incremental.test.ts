import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Machine } from '../machine.ts';
import { find, houseOf, open } from './bench.ts';

/** A shelf by the texts of its facts; what is undefined is not in the book. */
type Entry = Readonly<Record<string, string | undefined>>;
interface Facts {
  readonly shelves: Readonly<Record<string, Entry>>;
  readonly board: Entry;
  readonly units: string | undefined;
}

const lines = (entry: Entry): string[] =>
  Object.entries(entry).flatMap(([key, text]) => (text === undefined ? [] : [`    ${key}: ${text}`]));
const bookOf = ({ shelves, board, units }: Facts): string =>
  [
    'book: 1',
    'title: Pantry',
    'revision: A',
    ...(units === undefined ? [] : [`units: { length: ${units} }`]),
    'shelves:',
    ...Object.entries(shelves).flatMap(([name, entry]) => [`  ${name}:`, ...lines(entry)]),
    'parts:',
    '  own:',
    '    kind: board',
    ...lines(board),
    '',
  ].join('\n');

const range = (low: number, high: number, unit: string) =>
  fc
    .tuple(fc.integer({ min: low, max: high }), fc.integer({ min: 0, max: Math.ceil((high - low) / 3) }))
    .map(([at, width]) => (width === 0 ? `${at} ${unit}` : `${at}..${at + width} ${unit}`));
const maybe = (texts: fc.Arbitrary<string>) => fc.option(texts, { nil: undefined, freq: 6 });
const exactly = (low: number, high: number, unit: string) =>
  fc.integer({ min: low, max: high }).map((x) => `${x} ${unit}`);

const shelfFacts: Readonly<Record<string, fc.Arbitrary<string>>> = {
  board: fc.constantFrom('own', 'plank-18', 'plank-22'),
  span: exactly(400, 2700, 'mm'),
  load: range(1, 60, 'kg'),
  'allowed-sag': exactly(1, 5, 'mm'),
  height: range(700, 1600, 'mm'),
  passing: range(2, 9, 'Hz'),
  hum: range(3, 20, 'Hz'),
  backstop: fc.constantFrom('true', 'false'),
  note: fc.constantFrom('here', 'there'),
};
const boardFacts: Readonly<Record<string, fc.Arbitrary<string>>> = {
  width: exactly(200, 400, 'mm'),
  thickness: range(12, 30, 'mm'),
  stiffness: range(6, 14, 'GPa'),
  bears: range(10, 60, 'kg'),
  grade: fc.constantFrom('thin', 'thick'),
};
const entryOf = (facts: Readonly<Record<string, fc.Arbitrary<string>>>) =>
  // A shelf without any fact would be an empty place in the file.
  fc.record(Object.fromEntries(Object.entries(facts).map(([key, texts]) => [key, maybe(texts)])));
const shelfEntry = entryOf(shelfFacts).map((entry): Entry => ({
  board: 'own',
  ...entry,
  note: entry['note'] ?? 'here',
}));
const boardEntry = entryOf(boardFacts).map((entry): Entry => entry);

type Change = (facts: Facts) => Facts;
const change: fc.Arbitrary<Change> = fc.oneof(
  {
    weight: 8,
    arbitrary: fc.constantFrom(...Object.keys(shelfFacts)).chain((key) =>
      fc.tuple(fc.constantFrom('a', 'b'), maybe(shelfFacts[key]!)).map(
        ([name, text]): Change =>
          (facts) =>
            key === 'note' && text === undefined
              ? facts
              : {
                  ...facts,
                  shelves: { ...facts.shelves, [name]: { ...facts.shelves[name], note: 'here', [key]: text } },
                },
      ),
    ),
  },
  {
    weight: 4,
    arbitrary: fc.constantFrom(...Object.keys(boardFacts)).chain((key) =>
      maybe(boardFacts[key]!).map((text): Change => (facts) => ({
        ...facts,
        board: { ...facts.board, [key]: text },
      })),
    ),
  },
  {
    weight: 1,
    arbitrary: fc.constantFrom('mm', 'in', undefined).map((units): Change => (facts) => ({ ...facts, units })),
  },
  {
    weight: 1,
    arbitrary: fc.constant<Change>(({ shelves: { b: _b, ...rest }, ...facts }) => ({
      ...facts,
      shelves: { a: rest['a']!, ...rest },
    })),
  },
);

const told = (machine: Machine): string => JSON.stringify([machine.findings, machine.sheet('shelf'), machine.facts()]);
const heavy = (text: string): number => Number.parseFloat(text.split('..').at(-1)!);

describe('an edited book', () => {
  it('gives byte for byte what a fresh house gives, edit after edit', () => {
    let edits = 0;
    fc.assert(
      fc.property(shelfEntry, boardEntry, fc.array(change, { minLength: 10, maxLength: 10 }), (a, board, changes) => {
        const standing = houseOf();
        let facts: Facts = { shelves: { a }, board, units: undefined };
        for (const next of changes) {
          facts = next(facts);
          const text = bookOf(facts);
          expect(told(open(text, standing))).toBe(told(open(text)));
          edits++;
        }
      }),
      { numRuns: 20, seed: 4711 },
    );
    expect(edits).toBeGreaterThanOrEqual(200);
  });

  it('asked through a study gives the findings that the edited text gives', () => {
    fc.assert(
      fc.property(shelfEntry, boardEntry, range(1, 60, 'kg'), (a, board, load) => {
        const machine = open(bookOf({ shelves: { a }, board, units: undefined }));
        const edit = { path: 'shelves.a.load', text: load };
        const asked = machine.study(
          {
            name: 'ask',
            run: function* ask(asker) {
              yield [];
              return asker.ask([edit]);
            },
          },
          null,
        );
        const text =
          machine.editedTexts([edit]).get('book.yaml') ?? bookOf({ shelves: { a }, board, units: undefined });
        const bare = open(text).findings.map(({ place: _place, ...finding }) => finding);
        expect(JSON.stringify(asked)).toBe(JSON.stringify(bare));
      }),
      { numRuns: 60 },
    );
  });
});

describe('on any book', () => {
  const books = fc.tuple(shelfEntry, boardEntry);
  const machineOf = (a: Entry, board: Entry): Machine => open(bookOf({ shelves: { a }, board, units: undefined }));

  it('no finding holds on what is no number', () => {
    fc.assert(
      fc.property(books, ([a, board]) => {
        for (const { verdict, use } of machineOf(a, board).findings)
          if (verdict === 'holds' || verdict === 'tight') expect(use === undefined || use.worst <= 1).toBe(true);
          else if (verdict === 'fails') expect(use === undefined || use.best > 1).toBe(true);
      }),
      { numRuns: 100 },
    );
  });

  it('a percentage never falls when a demand grows', () => {
    fc.assert(
      fc.property(books, range(1, 60, 'kg'), fc.integer({ min: 0, max: 20 }), ([a, board], load, more) => {
        const at = (text: string) => machineOf({ ...a, load: text }, board);
        const [low, high] = [Number.parseFloat(load), heavy(load)];
        const [before, after] = [at(`${low}..${high} kg`), at(`${low}..${high + more} kg`)];
        for (const key of ['SHELF-010/a', 'SHELF-020/a']) {
          const [x, y] = [find(before, key).use?.worst, find(after, key).use?.worst];
          if (x !== undefined && y !== undefined) expect(y).toBeGreaterThanOrEqual(x);
        }
      }),
      { numRuns: 100 },
    );
  });

  it('a narrowed doubt never turns holds into fails, and leaves what fails failing', () => {
    const ends = fc.tuple(fc.integer({ min: 0, max: 10 }), fc.integer({ min: 0, max: 10 }));
    fc.assert(
      fc.property(books, ends, ends, ([a, board], height, hum) => {
        const part = (low: number, high: number, [p, q]: readonly [number, number]) =>
          [Math.min(p, q), Math.max(p, q)].map((x) => low + ((high - low) * x) / 10).join('..');
        const wide = machineOf({ ...a, height: '700..1600 mm', hum: '3..20 Hz' }, board);
        const narrow = machineOf(
          { ...a, height: `${part(700, 1600, height)} mm`, hum: `${part(3, 20, hum)} Hz` },
          board,
        );
        for (const { key, verdict } of wide.findings) {
          const now = find(narrow, key).verdict;
          if (verdict === 'holds') expect(now).toBe('holds');
          if (verdict === 'fails') expect(now).toBe('fails');
        }
      }),
      { numRuns: 100 },
    );
  });
});
