import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { escapeText, raw, tag } from '../markup.ts';
import { math, mathInner, mathTerms, symbolMath } from '../mathml.ts';
import { firstFault } from './well-formed.ts';

const inner = (formula: string, put?: ReadonlyMap<string, string>): string => mathInner(formula, put).markup;
const letters = (markup: string): string => markup.replace(/<[^>]*>/g, '');

describe('a formula in MathML', () => {
  it('sets a quotient as a fraction without the brackets of its text', () => {
    expect(inner('a/(b*c)')).toBe(
      '<mfrac><mrow><mi>a</mi></mrow><mrow><mrow><mi>b</mi><mo form="infix">·</mo><mi>c</mi></mrow></mrow></mfrac>',
    );
  });

  it('sets roots, powers, subscripts and upright functions', () => {
    expect(inner('sqrt(L)')).toBe('<msqrt><mrow><mi>L</mi></mrow></msqrt>');
    expect(inner('x^2')).toBe('<msup><mrow><mi>x</mi></mrow><mrow><mn>2</mn></mrow></msup>');
    expect(symbolMath('T_hold').markup).toBe('<msub><mi>T</mi><mi mathvariant="normal">hold</mi></msub>');
    expect(symbolMath('T0').markup).toBe('<msub><mi>T</mi><mn>0</mn></msub>');
    expect(inner('cos(θ)')).toContain('<mi mathvariant="normal">cos</mi>');
    expect(inner('2*pi')).toContain('<mi mathvariant="normal">π</mi>');
  });

  it('sets a choice as cases, one row for each', () => {
    const cases = inner('a < b ? x : a > c ? y : z');
    expect(cases.match(/<mtr>/g)).toHaveLength(3);
    expect(letters(cases)).toBe('{xif\u00a0a&lt;byif\u00a0a&gt;czotherwise'.replace('a&lt;b', 'a&lt;b'));
  });

  it.each([
    ['(a+b)*c', '(a+b)·c'],
    ['a-(b-c)', 'a−(b−c)'],
    ['(a/b)^2', '(ab)2'],
    ['(-a)^2', '(−a)2'],
    ['-a^2', '−a2'],
    ['-(a+b)', '−(a+b)'],
    ['abs(x)', '|x|'],
    ['exp(-t/τ)', 'e−t/τ'],
    ['sum(T^2*t)', '∑(T2·t)'],
    ['log(x)', 'ln\u2061(x)'],
    ['1.5e-7', '1.5·10−7'],
  ])('keeps the brackets of %s that matter', (formula, shown) => {
    expect(letters(inner(formula))).toBe(shown);
  });

  it('puts values with units in, and multiplies them with a cross', () => {
    const put = new Map([
      ['m', '2.6 kg'],
      ['a', '−3 m/s²'],
    ]);
    expect(letters(inner('m*a', put))).toBe('2.6 kg×(−3 m/s²)');
    expect(letters(inner('m^2', put))).toBe('(2.6 kg)2');
  });

  it('comes apart at its outermost sum and product, so that a line can break', () => {
    expect(mathTerms('F*r - (a+b)*c').map(({ markup }) => letters(markup))).toEqual(['F', '·r', '−(a+b)', '·c']);
    expect(mathTerms('(a+b)*c').map(({ markup }) => letters(markup))).toEqual(['(a+b)', '·c']);
    expect(mathTerms('-a*b').map(({ markup }) => letters(markup))).toEqual(['−a', '·b']);
  });

  it('is well formed, also with values that hold markup', () => {
    const put = new Map([['x', '<b>&']]);
    for (const formula of ['x/(1+x)^2', 'x <= 1 and x > 0 ? -x : floor(x, 2)', 'cbrt(abs(x))*10^-3']) {
      expect(firstFault(math(mathInner(formula, put)).markup)).toBeUndefined();
    }
  });
});

describe('markup', () => {
  it('escapes texts, and puts markup and lists in as they are', () => {
    expect(tag`<p title="${'"'}">${['a<b', raw('<i>c</i>'), null, false, undefined, 2]}</p>`.markup).toBe(
      '<p title="&quot;">a&lt;b<i>c</i>2</p>',
    );
  });

  it('lets no text out of its element, nor any character that a page may not hold', () => {
    const units = fc.constantFrom(
      '<',
      '>',
      '&',
      '"',
      "'",
      '=',
      '/',
      'a',
      ' ',
      '\n',
      '\u0000',
      '\u001f',
      '\ud800',
      '\uffff',
      '😀',
    );
    fc.assert(
      fc.property(fc.string({ unit: units }), (text) => {
        expect(firstFault(tag`<p title="${text}">${text}</p>`.markup)).toBeUndefined();
        expect(escapeText(text)).not.toMatch(/[^\P{Cc}\n]/u);
      }),
    );
    expect(escapeText('a\u0000\ud800b')).toBe('a\ufffd\ufffdb');
  });
});
