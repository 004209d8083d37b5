import { describe, expect, it } from 'vitest';
import { houseOn } from '../../../app/index.ts';
import type { BookText } from '../../desk/engine.ts';
import { helpAt } from '../help.ts';
import { suggestionsAt } from '../suggest.ts';
import { bookOf, demo } from './books.ts';

const house = houseOn();

/** Suggestions where the bar is, applied as an editor would: everything between `from` and the caret is replaced. */
const suggested = (text: string) => {
  const caret = text.indexOf('|');
  const plain = text.slice(0, caret) + text.slice(caret + 1);
  return suggestionsAt(bookOf(plain), 'book.yaml', caret, house).map(({ text: put, means, from }) => ({
    text: put,
    means,
    line: (plain.slice(0, from) + put + plain.slice(caret))
      .split('\n')
      .find((_, i, all) => all.slice(0, i + 1).join('\n').length >= from),
  }));
};
const texts = (text: string): readonly string[] => suggested(text).map((one) => one.text);

const rest = `
motors:
  M1: { part: scrap-23 }
  M2: {}
parts: { scrap-23: { kind: stepper } }
supplies: { G1: { rails: { 24V: {} } } }
`;

describe('keys', () => {
  it('at the top are those of the book that it does not have yet', () => {
    const keys = texts(`book: 1\n|`);
    expect(keys).toEqual(expect.arrayContaining(['title: ', 'axes: ', 'motors: ', 'site: ']));
    expect(keys).not.toContain('book: ');
  });

  it('of an entry are those of its variant', () => {
    const belt = texts(`axes:\n  x:\n    drive: belt\n    |${rest}`);
    expect(belt).toContain('belt: ');
    expect(belt).not.toContain('drum: ');
    expect(belt).not.toContain('drive: ');
    const hoist = texts(`axes:\n  x: { drive: hoist, |`);
    expect(hoist).toContain('drum: ');
    expect(hoist).not.toContain('belt: ');
  });

  it('of an entry without a variant are those of every variant', () => {
    expect(texts('axes:\n  x:\n    |')).toEqual(expect.arrayContaining(['drive: ', 'belt: ', 'drum: ']));
  });

  it('say what they mean, and begin with what is typed', () => {
    const [first] = suggested('axes:\n  x:\n    drive: belt\n    spe|');
    expect(first).toEqual({ text: 'speed: ', means: 'greatest speed', line: '    speed: ' });
  });

  it('put no second colon', () => {
    expect(texts('axes:\n  x:\n    drive: belt\n    spe|d: 3 mm/s\n')[0]).toBe('speed');
  });

  it('of a fact are its value and where it comes from', () => {
    expect(texts('axes:\n  x: { drive: belt, moving-mass: { | } }')).toEqual(['is: ', 'from: ']);
  });
});

describe('values', () => {
  it('are words where the key has words', () => {
    expect(texts('axes:\n  x:\n    drive: |')).toEqual(['belt', 'hoist', 'screw']);
    expect(texts('drivers:\n  D1: { marked: p|')).toEqual(['peak']);
    expect(texts('axes:\n  x: { drive: belt, moving-mass: { is: 2 kg, from: me| } }')).toEqual(['measured']);
  });

  it('are names of what stands in the book, or in the catalogue', () => {
    expect(texts(`axes:\n  x: { drive: belt, motors: [M1, |] }${rest}`)).toEqual(['M1', 'M2']);
    expect(texts(`axes:\n  x:\n    drive: belt\n    motors:\n      - M|${rest}`)).toEqual(['M1', 'M2']);
    expect(texts(`drivers:\n  D1: { rail: | }${rest}`)).toEqual(['24V']);
    const parts = texts(`motors:\n  M9: { part: | }\n${rest.replace('motors:', 'loads:')}`);
    expect(parts).toEqual(expect.arrayContaining(['scrap-23', 'frame-23-56']));
    expect(texts('drivers:\n  D1: { part: | }')[0]).toBe('chopper-1A5');
    expect(texts('axes:\n  x: { drive: belt, belt: | }')[0]).toBe('2GT-6');
  });

  it('are units behind a number', () => {
    const lines = suggested('axes:\n  x:\n    drive: belt\n    speed: 160|').map(({ line }) => line);
    expect(lines).toContain('    speed: 160 mm/s');
    expect(suggested('axes:\n  x:\n    drive: belt\n    speed: 160 m|').map(({ line }) => line)).toContain(
      '    speed: 160 mm/s',
    );
    expect(suggested('axes:\n  x: { drive: belt, moving-mass: 2..3 | }').map(({ line }) => line)).toContain(
      '  x: { drive: belt, moving-mass: 2..3 kg }',
    );
  });

  it('are an example where nothing stands yet', () => {
    expect(texts('axes:\n  x:\n    drive: belt\n    moving-mass: |')).toEqual([
      '2.4..2.6 kg',
      '{ is: 2.4..2.6 kg, from: guess }',
    ]);
  });

  it('are none of free text, of names of new entries, and in comments', () => {
    expect(texts('title: |')).toEqual([]);
    expect(texts('motors:\n  |')).toEqual([]);
    expect(texts('title: a # |')).toEqual([]);
  });
});

describe('a book of several files', () => {
  const book: BookText = {
    main: 'book.yaml',
    files: {
      'book.yaml': 'book: 1\ninclude: [motors.yaml]\naxes:\n  x: { drive: belt, motors: [] }\n',
      'motors.yaml': 'motors:\n  M7: {}\n',
    },
  };
  it('knows the names of all', () => {
    const offset = book.files['book.yaml']!.indexOf('[] }') + 1;
    expect(suggestionsAt(book, 'book.yaml', offset, house).map(({ text }) => text)).toEqual(['M7']);
  });
  it('has nothing to say of a file that it does not have', () => {
    for (const file of ['other.yaml', '__proto__', 'toString']) {
      expect(suggestionsAt(book, file, 0, house)).toEqual([]);
      expect(helpAt(book, file, 0, house)).toBeUndefined();
    }
  });
});

describe('help', () => {
  const book = demo('tidepool');
  const text = book.files['book.yaml']!;
  const helpOn = (what: string, within = 0) => {
    const offset = text.indexOf(what) + within;
    const help = helpAt(book, 'book.yaml', offset, house);
    return help && { ...help, on: text.slice(help.from, help.to) };
  };

  it('explains a key, with its units, an example and what a range means', () => {
    expect(helpOn('speed: 220')).toMatchObject({
      path: 'axes.x.speed',
      means: 'greatest speed',
      unit: 'mm/s, m/min, in/s',
      example: '220 mm/s',
      on: 'speed',
    });
    expect(helpOn('ambient:')).toMatchObject({ path: 'site.ambient', range: 'spread' });
    expect(helpOn('moving-mass: { is')).toMatchObject({ path: 'axes.x.moving-mass', range: 'doubt' });
  });

  it('explains the value of a fact by its key', () => {
    expect(helpOn('2.4..2.6 kg', 3)).toMatchObject({ path: 'axes.x.moving-mass', on: '2.4..2.6 kg' });
    expect(helpOn('from: measured', 8)).toMatchObject({ path: 'axes.x.moving-mass', on: 'measured' });
  });

  it('explains tables and entries', () => {
    expect(helpOn('axes:')).toMatchObject({ path: 'axes', means: 'each axis' });
    expect(helpOn('M1: {')).toMatchObject({ path: 'motors.M1', means: 'motor' });
  });

  it('is silent where no key is', () => {
    expect(helpOn('# Tidepool')).toBeUndefined();
    expect(helpAt(bookOf('nonsense: 1\n'), 'book.yaml', 2, house)).toBeUndefined();
  });

  it('explains every key of a long book without a fault', () => {
    let explained = 0;
    for (const { index } of text.matchAll(/[\w-]+(?=:)/g)) if (helpAt(book, 'book.yaml', index, house)) explained++;
    expect(explained).toBeGreaterThan(300);
  });
});
