/** Formulas as one line of plain Unicode text, for a terminal. */
import { parseExpression, symbolParts, type Expression } from './expression.ts';

/** Texts to stand in place of symbols: a formula with its numbers put in. */
export type Substitutes = ReadonlyMap<string, string>;

const raised = new Map([...'0123456789-+'].map((digit, i) => [digit, [...'⁰¹²³⁴⁵⁶⁷⁸⁹⁻⁺'][i] ?? digit]));
const lowered = new Map([...'0123456789'].map((digit, i) => [digit, [...'₀₁₂₃₄₅₆₇₈₉'][i] ?? digit]));
const shift = (text: string, by: ReadonlyMap<string, string>): string => [...text].map((c) => by.get(c) ?? c).join('');

const thin = '\u2009';

/** Functions whose name on paper differs from that in a formula text. */
export const functionNames: Readonly<Record<string, string>> = {
  log: 'ln',
  asin: 'arcsin',
  acos: 'arccos',
  atan: 'arctan',
  atan2: 'arctan',
  sum: 'Σ',
};

/** A number as it stands in a formula text, in parts: `2.5e-7` is 2.5 times ten to the −7. */
export const numberParts = (text: string): { readonly mantissa?: string; readonly power?: string } => {
  const [mantissa = '', exponent] = text.toLowerCase().split('e');
  const [whole = '', fraction] = mantissa.split('.');
  const grouped = whole.length > 4 ? whole.replace(/\B(?=(\d{3})+$)/g, thin) : whole || '0';
  const shown = fraction === undefined ? grouped : `${grouped}.${fraction}`;
  if (exponent === undefined) return { mantissa: shown };
  const power = String(Number(exponent)).replace('-', '−');
  return shown === '1' ? { power } : { mantissa: shown, power };
};

/**
 * A symbol as plain text, with digits lowered: `T0` is T₀, `T_hold` stays.
 * @param name as it stands in a formula text
 */
export const symbolText = (name: string): string => {
  const { base, below } = symbolParts(name);
  return base + below.map((part) => (/^\d+$/.test(part) ? shift(part, lowered) : `_${part}`)).join('');
};

interface Piece {
  readonly text: string;
  /** 0 choice, 1 or, 2 and, 3 comparison, 4 sum, 5 product, 6 negative or quantity, 7 power, 8 closed. */
  readonly level: number;
  /** A value with its unit, which a dot or a bare stroke would run into its neighbour. */
  readonly quantity?: true;
  /** A minus leads it, and it is no sum: it may begin a product without brackets. */
  readonly led?: true;
}

const words: Readonly<Record<string, string>> = { '<=': '≤', '>=': '≥', '==': '=', '!=': '≠' };

const piece = (node: Expression, put: Substitutes): Piece => {
  const bracket = (inner: Piece, least: number): string => (inner.level < least ? `(${inner.text})` : inner.text);
  switch (node.kind) {
    case 'number': {
      const { mantissa, power } = numberParts(node.text);
      if (power === undefined) return { text: mantissa ?? node.text, level: 8 };
      const ten = `10${shift(power.replace('−', '-'), raised)}`;
      return mantissa === undefined ? { text: ten, level: 7 } : { text: `${mantissa}·${ten}`, level: 5 };
    }
    case 'symbol': {
      const value = put.get(node.name);
      if (value === undefined) return { text: symbolText(node.name), level: 8 };
      if (/^[−-]/.test(value)) return { text: `(${value})`, level: 8, quantity: true };
      return /\s|\//.test(value)
        ? { text: value, level: 6, quantity: true }
        : { text: value, level: 8, quantity: true };
    }
    case 'negative':
      return { text: `−${bracket(piece(node.of, put), 5)}`, level: 4, led: true };
    case 'call':
      return called(node.name, node.of, put);
    case 'choice': {
      const [when, value, otherwise] = [piece(node.when, put), piece(node.value, put), piece(node.otherwise, put)];
      return { text: `${bracket(value, 1)} if ${bracket(when, 1)}, otherwise ${otherwise.text}`, level: 0 };
    }
    case 'binary':
      return joined(node, piece(node.left, put), piece(node.right, put), bracket);
  }
};

const joined = (
  { op, right: exponent }: Expression & { kind: 'binary' },
  left: Piece,
  right: Piece,
  bracket: (inner: Piece, least: number) => string,
): Piece => {
  const wide = left.quantity === true || right.quantity === true;
  switch (op) {
    case '^': {
      const base = bracket(left, 8);
      const whole =
        exponent.kind === 'number' && /^\d+$/.test(exponent.text)
          ? exponent.text
          : exponent.kind === 'negative' && exponent.of.kind === 'number' && /^\d+$/.test(exponent.of.text)
            ? `-${exponent.of.text}`
            : undefined;
      return { text: whole === undefined ? `${base}^${bracket(right, 8)}` : base + shift(whole, raised), level: 7 };
    }
    case '*':
    case '/': {
      // A leading minus needs no brackets, but what it leads then binds like a sum.
      const leads = left.led === true;
      const sign = op === '*' ? (wide ? ' × ' : '·') : wide ? ' / ' : '/';
      const text = `${leads ? left.text : bracket(left, 5)}${sign}${bracket(right, op === '*' ? 5 : 7)}`;
      return { text, level: leads ? 4 : 5, ...(leads && { led: true }), ...(wide && { quantity: true }) };
    }
    case '+':
      return { text: `${bracket(left, 4)} + ${bracket(right, 5)}`, level: 4 };
    case '-':
      return { text: `${bracket(left, 4)} − ${bracket(right, 5)}`, level: 4 };
    case 'and':
      return { text: `${bracket(left, 2)} and ${bracket(right, 3)}`, level: 2 };
    case 'or':
      return { text: `${bracket(left, 1)} or ${bracket(right, 2)}`, level: 1 };
    default:
      return { text: `${bracket(left, 4)} ${words[op] ?? op} ${bracket(right, 4)}`, level: 3 };
  }
};

const called = (name: string, of: readonly Expression[], put: Substitutes): Piece => {
  const inner = of.map((one) => piece(one, put));
  const list = inner.map((one) => one.text).join(', ');
  const [first] = of;
  const [only] = inner;
  if (inner.length === 1 && only && first) {
    const bare = first.kind === 'symbol' || first.kind === 'number' ? only.level >= 8 && !only.quantity : false;
    if (name === 'sqrt') return { text: bare ? `√${only.text}` : `√(${only.text})`, level: 8 };
    if (name === 'cbrt') return { text: bare ? `∛${only.text}` : `∛(${only.text})`, level: 8 };
    if (name === 'abs') return { text: `|${only.text}|`, level: 8 };
    if (name === 'floor') return { text: `⌊${only.text}⌋`, level: 8 };
    if (name === 'ceil') return { text: `⌈${only.text}⌉`, level: 8 };
  }
  return { text: `${functionNames[name] ?? symbolText(name)}(${list})`, level: 8 };
};

/**
 * A formula as one line of Unicode text: `2·π·√(L/g)`.
 * @param formula a formula text or its tree
 * @param put texts to stand in place of symbols, for the line with numbers
 * @returns the line
 * @throws UnreadableExpression
 */
export const expressionText = (formula: Expression | string, put: Substitutes = new Map()): string =>
  piece(typeof formula === 'string' ? parseExpression(formula) : formula, put).text;
