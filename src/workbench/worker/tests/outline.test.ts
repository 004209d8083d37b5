import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Document, isCollection, visit } from 'yaml';
import { outline } from '../outline.ts';

/** A text with a bar where the caret is. */
const at = (text: string) => {
  const caret = text.indexOf('|');
  return outline(text.slice(0, caret) + text.slice(caret + 1), caret);
};
const caretOf = (text: string) => {
  const { caret } = at(text);
  return caret && [caret.within.join('/'), caret.key, caret.typed];
};

describe('the caret', () => {
  it.each([
    ['tit|', ['', undefined, 'tit']],
    ['|', ['', undefined, '']],
    ['book: 1\n|', ['', undefined, '']],
    ['book: 1\nti|tle: x\n', ['', undefined, 'ti']],
    ['axes:\n  |', ['axes', undefined, '']],
    ['axes:\n  x:\n    sp|', ['axes/x', undefined, 'sp']],
    ['axes:\n  x:\n    drive: belt\n    sp|\n  y:\n    drive: belt\n', ['axes/x', undefined, 'sp']],
    ['axes:\n  x:\n    drive: belt\n    |\n', ['axes/x', undefined, '']],
    ['axes:\n  x:\n    drive: belt\n  |\n', ['axes', undefined, '']],
    ['axes:\n  x:\n    drive: |', ['axes/x', 'drive', '']],
    ['axes:\n  x:\n    drive:|', ['axes/x', 'drive', '']],
    ['axes:\n  x:\n    drive: be|lt\n', ['axes/x', 'drive', 'be']],
    ['axes:\n  x:\n    speed: 160 | # fast\n', ['axes/x', 'speed', '160 ']],
    ['axes:\n  x: { dr| }', ['axes/x', undefined, 'dr']],
    ['axes:\n  x: { drive: be| }', ['axes/x', 'drive', 'be']],
    ['axes:\n  x: { drive: belt, | }', ['axes/x', undefined, '']],
    ['axes:\n  x: { drive: belt, |', ['axes/x', undefined, '']],
    ['axes:\n  x: { drive: belt, sp|\n  y: { drive: belt }\n', ['axes/x', undefined, 'sp']],
    ['axes:\n  x: { drive: | }', ['axes/x', 'drive', '']],
    ['axes:\n  x:\n    motors: [M1, M|]', ['axes/x/motors/1', undefined, 'M']],
    ['axes:\n  x:\n    motors: [|]', ['axes/x/motors/0', undefined, '']],
    ['axes:\n  x:\n    motors:\n      - M1\n      - M|', ['axes/x/motors/1', undefined, 'M']],
    ['axes:\n  x:\n    motors:\n    - M1\n    - |', ['axes/x/motors/1', undefined, '']],
    ['accepted:\n  - finding: a\n    bec|', ['accepted/0', undefined, 'bec']],
    ['accepted:\n  - finding: a\n  - fin|: b', ['accepted/1', undefined, 'fin']],
    ['parts:\n  p:\n    mass: { is: 1 kg, from: g| }', ['parts/p/mass', 'from', 'g']],
    ['supplies:\n  G1: { rails: { 24V: { volts: 2| } } }', ['supplies/G1/rails/24V', 'volts', '2']],
    ['"quoted key": { a| }', ['quoted key', undefined, 'a']],
    ['about: >\n  several\n  lines\ntit|', ['', undefined, 'tit']],
    ['\uFEFFtit|', ['', undefined, 'tit']],
    ['a:\r\n  b: c|\r\n', ['a', 'b', 'c']],
  ])('in %j', (text, expected) => {
    expect(caretOf(text)).toEqual(expected);
  });

  it.each(['# tit|', 'a: 1 # b|'])('is of no interest in a comment: %j', (text) => {
    const { caret } = at(text);
    expect(caret === undefined || caret.key === 'a').toBe(true);
  });
});

describe('the tree', () => {
  it('is that of a text without faults', () => {
    const text = [
      '# YAML 1.2',
      'title: "It: is" # c',
      'about: |',
      '  a: b',
      'axes:',
      '  x: { drive: belt, motors: [M1, M2], switches: { min: S1 } }',
      '  chain-4x0.5:',
      '    motors:',
      '    - M3',
      '    - M4',
      '    speed: &s 220 mm/s',
      'list:',
      '- a: 1',
      '  b: 2',
      '- - c',
      '  - d',
      'last: {',
      '  e: 1,',
      '  f: 2 }',
    ].join('\n');
    expect(outline(text).tree).toEqual({
      title: 'It: is',
      about: '',
      axes: {
        x: { drive: 'belt', motors: ['M1', 'M2'], switches: { min: 'S1' } },
        'chain-4x0.5': { motors: ['M3', 'M4'], speed: '220 mm/s' },
      },
      list: [{ a: '1', b: '2' }, ['c', 'd']],
      last: { e: '1', f: '2' },
    });
  });

  it('is that of the library, for whatever it writes', () => {
    const name = fc.stringMatching(/^[a-z][a-z0-9-]{0,6}(\.[0-9])?$/);
    const scalar = fc.oneof(
      name,
      fc.constantFrom('24 V ±2%', '0.9..1.3 N·m', 'a: b', '# no comment', "it's", '"', '- x', '{', ''),
    );
    const { value } = fc.letrec((tie) => ({
      map: fc.dictionary(name, tie('value'), { minKeys: 1, maxKeys: 4, noNullPrototype: true }),
      value: fc.oneof(
        { maxDepth: 4, withCrossShrink: true },
        scalar,
        tie('map'),
        fc.array(fc.oneof(scalar, tie('map')), { minLength: 1, maxLength: 3 }),
      ),
    }));
    const whole = fc.dictionary(name, value, { minKeys: 1, maxKeys: 5, noNullPrototype: true });
    fc.assert(
      fc.property(whole, fc.constantFrom(0, 2, 99), fc.boolean(), (tree, flowFrom, indentSeq) => {
        const document = new Document(tree);
        visit(document, {
          Collection: (_, node, path) =>
            void (node.flow = path.filter(isCollection).length >= flowFrom && path.length > 1),
        });
        const text = document.toString({ lineWidth: 0, indentSeq });
        expect(outline(text).tree).toEqual(tree);
      }),
      { numRuns: 500 },
    );
  });

  it('goes on behind a bracket or a quote that is not closed', () => {
    expect(outline('axes:\n  x: { drive: belt,\n  y: { drive: screw }\nmotors:\n  M1: {}\n').tree).toEqual({
      axes: { x: { drive: 'belt' }, y: { drive: 'screw' } },
      motors: { M1: {} },
    });
    expect(outline('title: "open\nmotors:\n  M1: {}\n').tree).toMatchObject({ motors: { M1: {} } });
  });

  it('gives no object another prototype', () => {
    const { tree } = outline('__proto__:\n  polluted: 1\nconstructor: { prototype: { polluted: 1 } }\n');
    expect(({} as Record<string, unknown>)['polluted']).toBeUndefined();
    expect(Object.getPrototypeOf(tree)).toBe(Object.prototype);
  });
});

describe('any text', () => {
  const pieces = fc.constantFrom(
    'a',
    'b:',
    ': ',
    '- ',
    '\n',
    '  ',
    '{',
    '}',
    '[',
    ']',
    ',',
    '"',
    "'",
    '#',
    '|',
    '>',
    '&x ',
    '\t',
    '\r\n',
    '?',
    '…',
  );
  const text = fc.array(pieces, { maxLength: 60 }).map((list) => list.join(''));

  it('is gone through to its end, wherever the caret is', () => {
    fc.assert(
      fc.property(text, fc.nat(120), (text, caret) => {
        const { entries, caret: found } = outline(text, Math.min(caret, text.length));
        for (const { key, value } of entries)
          for (const span of [key, value])
            if (span) expect(0 <= span.from && span.from <= span.to && span.to <= text.length).toBe(true);
        if (found) expect(found.from).toBeLessThanOrEqual(caret);
      }),
      { numRuns: 2000 },
    );
  });

  it.each([
    ['brackets in brackets', '['.repeat(200_000)],
    ['braces in braces', '{a: '.repeat(200_000)],
    ['dashes', '- '.repeat(200_000)],
    ['one long line', `a: ${'x'.repeat(2_000_000)}`],
    ['a key that is all spaces', `a${' '.repeat(2_000_000)}`],
    ['keys of commas', `{${'a,'.repeat(800_000)}`],
    ['many lines', 'a: 1\n'.repeat(300_000)],
    ['quotes that never close', `a: "\n`.repeat(3_000)],
    ['stairs', Array.from({ length: 1500 }, (_, i) => `${' '.repeat(i)}a:\n`).join('')],
  ])('of two mebibytes takes no longer than a person waits: %s', (_, text) => {
    const from = performance.now();
    outline(text, text.length);
    expect(performance.now() - from).toBeLessThan(10_000);
  });
});
