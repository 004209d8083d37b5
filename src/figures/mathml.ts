/** Formulas as MathML Core, which browsers typeset without fonts or scripts. */
import { functionNames, numberParts, type Substitutes } from '../kernel/expression-text.ts';
import { parseExpression, symbolParts, termsOf, type Expression } from '../kernel/expression.ts';
import { tag, type Markup } from './markup.ts';

const upright = (name: string): Markup => tag`<mi mathvariant="normal">${name}</mi>`;
const letter = (name: string): Markup =>
  [...name].length === 1 && name !== 'π' ? tag`<mi>${name}</mi>` : upright(name);
// The form is said, because what stands beside an operator may be a value with its unit, which is no operand to a browser.
const sign = (operator: string): Markup => tag`<mo form="infix">${operator}</mo>`;
const prefix = (operator: string): Markup => tag`<mo form="prefix">${operator}</mo>`;
const row = (...inner: readonly Markup[]): Markup => tag`<mrow>${inner}</mrow>`;

const bracketed = (inner: Markup): Markup => row(tag`<mo form="prefix">(</mo>`, inner, tag`<mo form="postfix">)</mo>`);

/** A symbol with its subscripts. */
export const symbolMath = (name: string): Markup => {
  const { base, below } = symbolParts(name);
  if (below.length === 0) return letter(base);
  const parts = below.map((part) => (/^\d+$/.test(part) ? tag`<mn>${part}</mn>` : letter(part)));
  const listed = parts.flatMap((part, i) => (i === 0 ? [part] : [tag`<mo separator="true">,</mo>`, part]));
  return tag`<msub>${letter(base)}${listed.length === 1 ? listed : row(...listed)}</msub>`;
};

/** 0 choice, 1 or, 2 and, 3 comparison, 4 sum, 5 product, 7 power, 8 closed: a fraction, a root, a function. */
interface Piece {
  readonly math: Markup;
  readonly level: number;
  readonly quantity?: boolean;
  readonly tall?: boolean;
}

interface How {
  readonly put: Substitutes;
  /** In an exponent, where a fraction would be too small to read, a stroke divides. */
  readonly flat: boolean;
}

const compared: Readonly<Record<string, string>> = { '<=': '≤', '>=': '≥', '==': '=', '!=': '≠' };

const inside = (piece: Piece, least: number): Markup => (piece.level < least ? bracketed(piece.math) : piece.math);

const numeral = (text: string): Piece => {
  const { mantissa, power } = numberParts(text);
  if (power === undefined) return { math: tag`<mn>${mantissa ?? text}</mn>`, level: 8 };
  const ten = tag`<msup><mn>10</mn><mn>${power}</mn></msup>`;
  return mantissa === undefined
    ? { math: ten, level: 7 }
    : { math: row(tag`<mn>${mantissa}</mn>`, sign('·'), ten), level: 5 };
};

const binary = (node: Extract<Expression, { kind: 'binary' }>, how: How): Piece => {
  const left = typeset(node.left, how);
  const right = typeset(node.right, node.op === '^' ? { ...how, flat: true } : how);
  const quantity = left.quantity === true || right.quantity === true;
  switch (node.op) {
    case '/': {
      if (how.flat) return { math: row(inside(left, 4), sign('/'), inside(right, 7)), level: 4, quantity };
      // A leading minus stands before the stroke, not above it.
      const over = node.left.kind === 'negative' ? node.left.of : undefined;
      const top = over ? typeset(over, how) : left;
      const fraction = tag`<mfrac>${row(top.math)}${row(right.math)}</mfrac>`;
      return over
        ? { math: row(prefix('−'), fraction), level: 4, quantity, tall: true }
        : { math: fraction, level: 8, quantity, tall: true };
    }
    case '^': {
      const base = left.tall || left.quantity ? bracketed(left.math) : inside(left, 8);
      return { math: tag`<msup>${row(base)}${row(right.math)}</msup>`, level: 7 };
    }
    case '*': {
      const leads = node.left.kind === 'negative';
      return {
        math: row(leads ? left.math : inside(left, 5), sign(quantity ? '×' : '·'), inside(right, 5)),
        level: leads ? 4 : 5,
        quantity,
      };
    }
    case '+':
      return { math: row(inside(left, 4), sign('+'), inside(right, 5)), level: 4 };
    case '-':
      return { math: row(inside(left, 4), sign('−'), inside(right, 5)), level: 4 };
    case 'and':
    case 'or': {
      const level = node.op === 'and' ? 2 : 1;
      return {
        math: row(inside(left, level), tag`<mtext>\u00a0${node.op}\u00a0</mtext>`, inside(right, level + 1)),
        level,
      };
    }
    default:
      return { math: row(inside(left, 4), sign(compared[node.op] ?? node.op), inside(right, 4)), level: 3 };
  }
};

const call = (name: string, of: readonly Expression[], how: How): Piece => {
  const inner = of.map((one) => typeset(one, how).math);
  const list = row(...inner.flatMap((one, i) => (i === 0 ? [one] : [tag`<mo separator="true">,</mo>`, one])));
  const closed = (math: Markup): Piece => ({ math, level: 8 });
  const fence = (open: string, close: string): Piece =>
    closed(
      row(
        tag`<mo form="prefix" stretchy="true">${open}</mo>`,
        list,
        tag`<mo form="postfix" stretchy="true">${close}</mo>`,
      ),
    );
  switch (name) {
    case 'sqrt':
      return closed(tag`<msqrt>${list}</msqrt>`);
    case 'cbrt':
      return closed(tag`<mroot>${list}<mn>3</mn></mroot>`);
    case 'exp':
      return {
        math: tag`<msup>${upright('e')}${row(...of.map((one) => typeset(one, { ...how, flat: true }).math))}</msup>`,
        level: 7,
      };
    case 'abs':
      return fence('|', '|');
    case 'floor':
      return fence('⌊', '⌋');
    case 'ceil':
      return fence('⌈', '⌉');
    case 'sum':
      return { math: row(prefix('∑'), bracketed(list)), level: 5 };
    default: {
      const written = functionNames[name];
      const head = written ? upright(written) : /^log\d+$/.test(name) ? symbolMath(name) : upright(name);
      return closed(row(head, tag`<mo>\u2061</mo>`, bracketed(list)));
    }
  }
};

const cases = (node: Extract<Expression, { kind: 'choice' }>, how: How): Piece => {
  const rows: Markup[] = [];
  let rest: Expression = node;
  while (rest.kind === 'choice') {
    const [value, when] = [typeset(rest.value, how).math, typeset(rest.when, how).math];
    rows.push(tag`<mtr><mtd>${value}</mtd><mtd><mtext>if\u00a0</mtext>${when}</mtd></mtr>`);
    rest = rest.otherwise;
  }
  rows.push(tag`<mtr><mtd>${typeset(rest, how).math}</mtd><mtd><mtext>otherwise</mtext></mtd></mtr>`);
  return {
    math: row(tag`<mo form="prefix" stretchy="true">{</mo>`, tag`<mtable>${rows}</mtable>`),
    level: 0,
    tall: true,
  };
};

const typeset = (node: Expression, how: How): Piece => {
  switch (node.kind) {
    case 'number':
      return numeral(node.text);
    case 'symbol': {
      const value = how.put.get(node.name);
      if (value === undefined) return { math: symbolMath(node.name), level: 8 };
      const shown = /^[−-]/.test(value) ? `(${value})` : value;
      return { math: tag`<mn>${shown}</mn>`, level: 8, quantity: true };
    }
    case 'negative':
      return { math: row(prefix('−'), inside(typeset(node.of, how), 5)), level: 4 };
    case 'binary':
      return binary(node, how);
    case 'call':
      return call(node.name, node.of, how);
    case 'choice':
      return cases(node, how);
  }
};

/**
 * A formula as the inside of a MathML element.
 * @param formula a formula text or its tree
 * @param put texts with units to stand in place of symbols
 * @throws UnreadableExpression
 */
export const mathInner = (formula: Expression | string, put: Substitutes = new Map()): Markup =>
  typeset(typeof formula === 'string' ? parseExpression(formula) : formula, { put, flat: false }).math;

/** One `<math>` element around an inside. */
export const math = (...inner: readonly Markup[]): Markup => tag`<math displaystyle="true">${inner}</math>`;

/** The factors of a product from left to right; what is no product is its own only factor. */
const factorsOf = (whole: Expression): readonly Expression[] =>
  whole.kind === 'binary' && whole.op === '*' ? [...factorsOf(whole.left), whole.right] : [whole];

/**
 * A formula as `<math>` elements that a line may break between: the terms of its outermost sum, and their factors.
 * @param formula a formula text
 * @param put texts with units to stand in place of symbols
 * @returns the elements in order, each with the operator that leads it
 * @throws UnreadableExpression
 */
export const mathTerms = (formula: string, put: Substitutes = new Map()): readonly Markup[] =>
  termsOf(parseExpression(formula)).flatMap(({ sign: leading, term }, i) => {
    const parts = factorsOf(term);
    const factors = parts.map((part) => typeset(part, { put, flat: false }));
    const times = factors.some(({ quantity }) => quantity) ? '×' : '·';
    return factors.map((factor, j) => {
      if (j > 0) return math(sign(times), inside(factor, 5));
      if (i > 0) return math(sign(leading === '-' ? '−' : '+'), inside(factor, 5));
      // A minus may lead a product without brackets, a sum may not.
      return math(parts.length === 1 || parts[0]?.kind === 'negative' ? factor.math : inside(factor, 5));
    });
  });
