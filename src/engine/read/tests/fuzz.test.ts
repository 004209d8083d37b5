import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { frameOf } from '../index.ts';
import { readText } from './sample.ts';

const examples = fileURLToPath(new URL('../../../../examples/broken-on-purpose/', import.meta.url));
const books = readdirSync(examples).map((name) => readFileSync(`${examples}${name}/book.yaml`, 'utf8'));

/** What is wrong with the way in which the text is refused; nothing when it is read or refused as it should be. */
const faultsOf = (text: string): readonly string[] => {
  const result = readText(text);
  if (result.ok) return [];
  const lines = text.split('\n').length;
  const frames = result.problems.map((problem) => frameOf(problem, new Map([['book.yaml', text]])));
  return [
    ...(result.problems.length > 0 ? [] : ['no reason']),
    ...result.problems.flatMap(({ what, place }) =>
      what === '' || place.line > lines || !(place.column > 0) ? [what] : [],
    ),
    ...frames.filter((frame) => !/^\S+:\d+:\d+ {2}/.test(frame)),
  ];
};

describe('whatever stands in the file', () => {
  it('any text is read or refused with a place', () => {
    const letters = fc.constantFrom(
      ...'{}[]:,#&*!|>\'"%@`?- \t\n\r\u0000\u0007\ufeff\ufffd\u2028aé日🦀0.~<'.split(/(?:)/u),
      '- ',
      ': ',
      '\n  ',
      '&a ',
      '*a',
      '---\n',
      '<<: ',
    );
    fc.assert(
      fc.property(
        fc.array(letters, { maxLength: 60 }).map((all) => all.join('')),
        (text) => {
          expect(faultsOf(text)).toEqual([]);
        },
      ),
      { numRuns: 150 },
    );
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        expect(faultsOf(text)).toEqual([]);
      }),
      { numRuns: 150 },
    );
  });

  it('any bytes are read or refused with a place', () => {
    const decoder = new TextDecoder('utf-8', { ignoreBOM: true });
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 200 }), (bytes) => {
        expect(faultsOf(decoder.decode(bytes))).toEqual([]);
      }),
      { numRuns: 150 },
    );
  });

  it('a sound book with a slip in it is read or refused with a place', () => {
    const slip = fc.record({
      book: fc.constantFrom(...books),
      at: fc.double({ min: 0, max: 1, noNaN: true }),
      drop: fc.nat(6),
      put: fc.constantFrom(
        '',
        ' ',
        '\n',
        '\t',
        ':',
        '#',
        '"',
        "'",
        '{',
        ']',
        '- ',
        '5 N',
        '*x',
        '&x ',
        '__proto__: ',
        '1e999',
        '\n\n',
      ),
    });
    fc.assert(
      fc.property(slip, ({ book, at, drop, put }) => {
        const from = Math.floor(at * book.length);
        expect(faultsOf(book.slice(0, from) + put + book.slice(from + drop))).toEqual([]);
      }),
      { numRuns: 150 },
    );
  });

  it.each([
    ['brackets', '['.repeat(200_000)],
    ['dashes', '- '.repeat(200_000)],
    ['question marks', '? '.repeat(100_000)],
    ['colons', ': '.repeat(200_000)],
    ['maps', '{a: '.repeat(100_000)],
  ])('no depth exhausts the stack: %s', (_, text) => {
    const result = readText(text);
    expect(!result.ok && result.problems.map(({ what }) => what)).toEqual(['More than 40 levels are nested here.']);
  });
});
