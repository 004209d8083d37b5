import { describe, expect, it } from 'vitest';
import { houseOn } from '../../../app/index.ts';
import type { BookText, FirstFacts } from '../../desk/engine.ts';
import { firstBook, firstChoices } from '../first-book.ts';

const house = houseOn();
const choices = firstChoices(house);
const wordsFor = (name: keyof FirstFacts): readonly string[] =>
  choices.find((one) => one.name === name)!.words.map(({ word }) => word);

const made = (facts: Partial<FirstFacts>): BookText => {
  const book = firstBook(facts, house);
  if ('problems' in book) throw new Error(JSON.stringify(book.problems));
  return book;
};
/** Everything that is said of a book on reading it, warnings too. */
const read = ({ files, main }: BookText) => {
  const result = house.read((name) => files[name], main);
  return result.ok ? { said: result.warnings, machine: house.open(result.book) } : { said: result.problems };
};

describe('the five questions', () => {
  it('have words that mean something, or an example', () => {
    expect(choices.map(({ name }) => name)).toEqual([
      'title',
      'width',
      'depth',
      'height',
      'players',
      'motor',
      'supply',
      'board',
    ]);
    for (const { asks, because, words, example } of choices) {
      expect(asks).toMatch(/\?$/);
      expect(because).toMatch(/\.$/);
      expect(example).not.toBe('');
      for (const { word, means } of words) expect(means, word).not.toBe('');
    }
    for (const name of ['motor', 'supply', 'board'] as const) expect(wordsFor(name).length).toBeGreaterThan(3);
  });

  it('offer no converter and nothing of 5 V for motors', () => {
    const offered = wordsFor('supply');
    expect(offered).toContain('enclosed-24V-100W');
    expect(offered.filter((word) => /5V|buck/.test(word))).toEqual([]);
  });
});

describe('a first book', () => {
  it('of no answers reads well, and holds an answer already', () => {
    const { said, machine } = read(made({}));
    expect(said).toEqual([]);
    const verdicts = machine!.findings.map(({ verdict }) => verdict);
    expect(verdicts).toContain('not-stated');
    expect(verdicts.filter((verdict) => verdict !== 'not-stated').length).toBeGreaterThan(0);
    expect(verdicts).not.toContain('fails');
  });

  it.each(choices.flatMap(({ name, words }) => words.map(({ word }) => [name, word] as const)))(
    'of one answer reads well: %s, %s',
    (name, word) => {
      const book = made({ [name]: word });
      const { said, machine } = read(book);
      expect(said).toEqual([]);
      expect(machine!.findings.length).toBeGreaterThan(0);
      expect(book.files['book.yaml']).toContain(word);
    },
  );

  it('of all answers says whether the motors can do it', () => {
    const book = made({
      title: 'Low Tide: a "crane", #2',
      width: '560 mm',
      depth: '16 in',
      height: '0.7 m',
      players: 'age 3 and over, with help',
      motor: 'frame-23-56',
      supply: 'office-computer-300W',
      board: 'ATmega2560',
    });
    const { said, machine } = read(book);
    expect(said).toEqual([]);
    expect(machine!.book.tree).toMatchObject({
      title: 'Low Tide: a "crane", #2',
      site: { players: 'age 3 and over, with help' },
      axes: { x: { travel: { low: 0.56 } }, y: { travel: { low: 16 * 0.0254 } }, z: { travel: { low: 0.7 } } },
      loads: { board: { rail: '5V' } },
    });
    // Every axis with a motor is asked whether its motor moves it without losing steps.
    const judged = machine!.findings.filter(
      ({ verdict, designations }) =>
        verdict !== 'not-stated' && designations.some((one) => /^[MD]?[1-3xyz]$/.test(one)),
    );
    expect(judged.length).toBeGreaterThan(10);
  });

  it('looks as a person would write it', () => {
    const text = made({ title: 'Low Tide', width: '560 mm', motor: 'frame-17-48', supply: 'enclosed-24V-100W' }).files[
      'book.yaml'
    ]!;
    expect(text).toMatch(/^# YAML 1\.2\n/);
    expect(text).toContain('title: Low Tide\n');
    expect(text).toContain('    travel: 560 mm\n');
    expect(text).toContain('rails: { 24V: { volts: { is: 24 V ±2%, from: guess }, limit: 4.2 A } }');
    expect(text).toMatch(/[^\n]\n$/);
    expect(text).not.toMatch(/undefined|\{\}\s*\n\n|\n\n\n/);
    expect(Math.max(...text.split('\n').map((line) => line.length))).toBeLessThan(140);
  });

  it('is not made of answers that cannot stand, and says so of each at once', () => {
    const book = firstBook(
      {
        width: '560',
        depth: '-3 mm',
        height: '3..4 m',
        motor: 'fram-23-56',
        supply: 'a big one',
        title: 'a\nbook: 2',
      },
      house,
    );
    expect(book).toEqual({
      problems: {
        title: 'A title is one line, without control characters.',
        width: expect.stringContaining('mm'),
        depth: expect.stringContaining('more than nothing'),
        height: expect.stringContaining('one exact value'),
        motor: expect.stringContaining('Did you mean frame-23-56?'),
        supply: expect.stringContaining('enclosed-24V-100W'),
      },
    });
  });

  it.each([
    '&a',
    '*a',
    '- x',
    '{ a: 1 }',
    "'",
    '"',
    'a: b',
    'a #b',
    '!x',
    '%a',
    '<script>',
    '~',
    'null',
    '1',
    'yes',
    '\u202e',
  ])('takes %j for a title and for who plays, and nothing else', (hostile) => {
    const book = made({ title: hostile, players: hostile });
    const { said, machine } = read(book);
    expect(said).toEqual([]);
    expect(machine!.book.tree).toMatchObject({ title: hostile, site: { players: hostile } });
    expect(Object.keys(machine!.book.tree)).toEqual(expect.not.arrayContaining(['a', 'b']));
  });
});
