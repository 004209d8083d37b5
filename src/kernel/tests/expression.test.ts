import * as fc from 'fast-check';
import { evaluate } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { expressionText } from '../expression-text.ts';
import { parseExpression, symbolParts, termsOf, UnreadableExpression, type Expression } from '../expression.ts';

const values: Readonly<Record<string, number>> = { a: 3.25, b: -1.5, c: 0.75, x1: 2, T_hold: 1.9, θ: 0.4, pi: Math.PI };

const numberOf = (node: Expression): number => {
  switch (node.kind) {
    case 'number':
      return node.value;
    case 'symbol':
      return values[node.name] ?? NaN;
    case 'negative':
      return -numberOf(node.of);
    case 'choice':
      return numberOf(numberOf(node.when) ? node.value : node.otherwise);
    case 'call': {
      const known: Readonly<Record<string, (...x: number[]) => number>> = {
        sqrt: Math.sqrt,
        abs: Math.abs,
        cos: Math.cos,
        max: Math.max,
        exp: Math.exp,
      };
      return known[node.name]?.(...node.of.map(numberOf)) ?? NaN;
    }
    case 'binary': {
      const [l, r] = [numberOf(node.left), numberOf(node.right)];
      const made = { '+': l + r, '-': l - r, '*': l * r, '/': l / r, '^': l ** r };
      const held = { '<': l < r, '<=': l <= r, '>': l > r, '>=': l >= r, '==': l === r, '!=': l !== r };
      if (node.op === 'and') return Number(l !== 0 && r !== 0);
      if (node.op === 'or') return Number(l !== 0 || r !== 0);
      return node.op in made ? made[node.op as keyof typeof made] : Number(held[node.op as keyof typeof held]);
    }
  }
};

const judged = (text: string): number => Number(evaluate(text, { ...values }));

describe('reading a formula text', () => {
  // The judge is a general expression library.
  it.each([
    '2*pi*sqrt(a/c)',
    'T_hold/(sqrt(2)*a)',
    'a < b ? a : c',
    'a > 1 and c < 1 ? 2 : 3',
    'a < 1 or c < 1 ? 2 : 3',
    'a == 1 ? 1 : a == 3.25 ? 2 : 3',
    '-a^2',
    '(-a)^2',
    '2^-3',
    'x1^c^2',
    'a - b - c',
    'a/b/c',
    'a/b*c',
    '-a*b',
    'a*-b',
    '1.5e-3*a + .5',
    'max(a, b, c)*cos(θ/2)',
    'abs(b)^x1',
    'exp(-a/c)',
  ])('gives %s the meaning that others give it', (text) => {
    expect(numberOf(parseExpression(text))).toBeCloseTo(judged(text), 12);
  });

  it('reads elementwise operators like the plain ones', () => {
    expect(parseExpression('sum(T.^2.*t)./a')).toEqual(parseExpression('sum(T^2*t)/a'));
  });

  it.each([
    ['', 0],
    ['2L', 1],
    ['a b', 2],
    ['(a', 2],
    ['a)', 1],
    ['a+', 2],
    ['a*/b', 2],
    ['sqrt()', 5],
    ['f(a', 3],
    ['a < b < c', 6],
    ['a ? b', 5],
    ['$x', 0],
    ['T_', 1],
    ['1..2', 1],
    ['a = b', 2],
    ['1e999', 0],
  ])('refuses "%s" and says where', (text, at) => {
    expect(() => parseExpression(text)).toThrow(UnreadableExpression);
    expect(() => parseExpression(text)).toThrow(expect.objectContaining({ at }));
  });

  it('says what is missing', () => {
    expect(() => parseExpression('2*(a')).toThrow(
      '"2*(a", character 5: a closing parenthesis is missing before the end.',
    );
    expect(() => parseExpression('2 a')).toThrow(
      '"2 a", character 3: an operator is missing before "a"; a product is written with "*".',
    );
  });

  it('reads any text or refuses it, also one nested without end', () => {
    const pieces = fc.array(
      fc.constantFrom('a', '(', ')', '+', '-', '^', '*', '2', '?', ':', '<', 'f(', ',', ' ', '_', '.'),
    );
    const refusal = (text: string): unknown => {
      try {
        parseExpression(text);
        return undefined;
      } catch (problem) {
        return problem instanceof UnreadableExpression ? undefined : problem;
      }
    };
    const texts = fc.oneof(
      fc.string(),
      pieces.map((list) => list.join('')),
    );
    fc.assert(fc.property(texts, (text) => refusal(text) === undefined));
    expect(() => parseExpression('('.repeat(100_000))).toThrow(/nested too deeply/);
    expect(() => parseExpression('-'.repeat(100_000))).toThrow(/nested too deeply/);
    expect(() => parseExpression('a?'.repeat(100_000))).toThrow(/nested too deeply/);
  });
});

describe('symbols and terms', () => {
  it('takes a symbol apart', () => {
    expect(symbolParts('T_hold')).toEqual({ base: 'T', below: ['hold'] });
    expect(symbolParts('T0_x')).toEqual({ base: 'T', below: ['0', 'x'] });
    expect(symbolParts('pi')).toEqual({ base: 'π', below: [] });
  });

  it('splits a sum at its outermost signs', () => {
    const signs = termsOf(parseExpression('a - (b + c) + a*b')).map(({ sign }) => sign);
    expect(signs).toEqual(['+', '-', '+']);
  });
});

describe('a formula as one line of text', () => {
  it.each([
    ['2*pi*sqrt(L/g)', '2·π·√(L/g)'],
    ['T_hold/(sqrt(2)*I_rated)', 'T_hold/(√2·I_rated)'],
    ['T0/agm(1, cos(θ/2))', 'T₀/agm(1, cos(θ/2))'],
    ['a <= b ? x^2 : -1', 'x² if a ≤ b, otherwise −1'],
    ['a*(b + c)', 'a·(b + c)'],
    ['a - (b - c)', 'a − (b − c)'],
    ['a/(b*c)', 'a/(b·c)'],
    ['(-a)^2 + b^-1', '(−a)² + b⁻¹'],
    ['(-a + b)/c', '(−a + b)/c'],
    ['4e-7*x', '4·10⁻⁷·x'],
    ['1e-7', '10⁻⁷'],
    ['12345.5', '12\u2009345.5'],
    ['log(x) + asin(y)', 'ln(x) + arcsin(y)'],
    ['abs(x) + floor(y)', '|x| + ⌊y⌋'],
    ['sum(T^2*t)', 'Σ(T²·t)'],
  ])('writes %s as %s', (text, shown) => {
    expect(expressionText(text)).toBe(shown);
  });

  it('puts values with units in place of symbols without running them into each other', () => {
    const put = new Map([
      ['L', '700 mm'],
      ['g', '9.81 m/s²'],
      ['d', '−3 mm'],
    ]);
    expect(expressionText('2*pi*sqrt(L/g)', put)).toBe('2·π·√(700 mm / (9.81 m/s²))');
    expect(expressionText('L^2*d', put)).toBe('(700 mm)² × (−3 mm)');
  });

  // Turned back into a formula text, the line must mean the same to a general expression library.
  const back = (line: string): string =>
    line
      .replaceAll('·', '*')
      .replaceAll('−', '-')
      .replaceAll('√(', 'sqrt(')
      .replace(/√([\p{L}\d.]+)/gu, 'sqrt($1)')
      .replace(/[⁰¹²³⁴⁵⁶⁷⁸⁹⁻]+/g, (up) => `^(${[...up].map((c) => '0123456789-'['⁰¹²³⁴⁵⁶⁷⁸⁹⁻'.indexOf(c)]).join('')})`);
  const leaf = fc.constantFrom('a', 'c', '2', '0.5', '3');
  const { formula } = fc.letrec<{ formula: string }>((tie) => ({
    formula: fc.oneof(
      { maxDepth: 4 },
      leaf,
      fc
        .tuple(tie('formula'), fc.constantFrom('+', '-', '*', '/'), tie('formula'))
        .map(([l, op, r]) => `(${l}) ${op} (${r})`),
      tie('formula').map((f) => `-(${f})`),
      tie('formula').map((f) => `sqrt((${f})^2)`),
      fc.tuple(tie('formula'), fc.constantFrom('2', '-1', '3')).map(([f, n]) => `(${f})^${n}`),
    ),
  }));

  it('keeps the meaning while it leaves brackets out', () => {
    fc.assert(
      fc.property(formula, (text) => {
        const [meant, shown] = [judged(text), judged(back(expressionText(text)))];
        fc.pre(Number.isFinite(meant) && Math.abs(meant) < 1e12);
        expect(Math.abs(shown - meant)).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(meant)));
      }),
      { numRuns: 1000 },
    );
  });
});
