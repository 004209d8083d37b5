/**
 * The formula texts of shown steps, read into a small tree. Everything that shows a formula is made from this tree,
 * so that there is one text per formula and never two hand-kept ones.
 */

export type Operator = '+' | '-' | '*' | '/' | '^' | '<' | '<=' | '>' | '>=' | '==' | '!=' | 'and' | 'or';

export type Expression =
  | { readonly kind: 'number'; readonly text: string; readonly value: number }
  | { readonly kind: 'symbol'; readonly name: string }
  | { readonly kind: 'negative'; readonly of: Expression }
  | { readonly kind: 'binary'; readonly op: Operator; readonly left: Expression; readonly right: Expression }
  | { readonly kind: 'call'; readonly name: string; readonly of: readonly Expression[] }
  | { readonly kind: 'choice'; readonly when: Expression; readonly value: Expression; readonly otherwise: Expression };

/** A formula text that cannot be read. `at` counts characters from 0. */
export class UnreadableExpression extends Error {
  override readonly name = 'UnreadableExpression';
  readonly text: string;
  readonly at: number;
  constructor(text: string, at: number, why: string) {
    super(`"${text}", character ${at + 1}: ${why}`);
    this.text = text;
    this.at = at;
  }
}

interface Token {
  readonly kind: 'number' | 'name' | 'sign' | 'end';
  readonly text: string;
  readonly at: number;
}

const shape =
  /(?<number>(?:\d+(?:\.\d+)?|\.\d+)(?:[eE][+-]?\d+)?)|(?<name>\p{L}[\p{L}\p{M}\p{N}]*(?:_[\p{L}\p{N}]+)*)|(?<sign><=|>=|==|!=|\.\^|\.\*|\.\/|[-+*/^<>?:(),])/uy;

const tokensOf = (text: string): readonly Token[] => {
  const tokens: Token[] = [];
  let at = 0;
  while (at < text.length) {
    if (/\s/.test(text.charAt(at))) {
      at++;
      continue;
    }
    shape.lastIndex = at;
    const found = shape.exec(text);
    if (!found) {
      const [seen] = text.slice(at);
      throw new UnreadableExpression(text, at, `"${seen ?? ''}" does not start a number, a symbol or an operator.`);
    }
    const kind =
      found.groups?.['number'] !== undefined ? 'number' : found.groups?.['name'] !== undefined ? 'name' : 'sign';
    // The elementwise operators differ only for a program that computes with lists; on paper they look alike.
    tokens.push({ kind, text: found[0].replace(/^\.(?=[*/^])/, ''), at });
    at = shape.lastIndex;
  }
  return [...tokens, { kind: 'end', text: 'the end', at: text.length }];
};

const compares: ReadonlySet<string> = new Set(['<', '<=', '>', '>=', '==', '!=']);

/** How tightly an operator binds; the order is that of common expression languages, so that `-a^2` is `-(a^2)`. */
const binding = (text: string): number =>
  text === 'or'
    ? 1
    : text === 'and'
      ? 2
      : compares.has(text)
        ? 3
        : /^[+-]$/.test(text)
          ? 4
          : /^[*/]$/.test(text)
            ? 5
            : text === '^'
              ? 7
              : 0;

const deepest = 200;

/**
 * Reads a formula text: numbers, symbols with subscripts after `_`, `+ - * / ^`, comparisons, `and`, `or`,
 * `a ? b : c`, and function calls.
 * @param text for instance `2*pi*sqrt(L/g)`
 * @returns the tree
 * @throws UnreadableExpression with the place, when anything is missing or left over
 */
export const parseExpression = (text: string): Expression => {
  const tokens = tokensOf(text);
  let next = 0;
  let depth = 0;
  const last: Token = { kind: 'end', text: 'the end', at: text.length };
  const peek = (): Token => tokens[next] ?? last;
  const fail = (token: Token, why: string): never => {
    throw new UnreadableExpression(text, token.at, why);
  };
  const named = (token: Token): string => (token.kind === 'end' ? 'the end' : `"${token.text}"`);
  const take = (sign: string, why: string): void => {
    const token = peek();
    if (token.kind !== 'sign' || token.text !== sign) fail(token, why);
    next++;
  };

  const call = (name: string): Expression => {
    const of: Expression[] = [choice()];
    while (peek().text === ',') {
      next++;
      of.push(choice());
    }
    take(')', `a closing parenthesis of ${name}( is missing before ${named(peek())}.`);
    return { kind: 'call', name, of };
  };

  const atom = (): Expression => {
    const token = peek();
    if (token.kind === 'number') {
      next++;
      const value = Number(token.text);
      return Number.isFinite(value)
        ? { kind: 'number', text: token.text, value }
        : fail(token, `${token.text} is too large for a number.`);
    }
    if (token.kind === 'name' && binding(token.text) === 0) {
      next++;
      if (peek().text !== '(') return { kind: 'symbol', name: token.text };
      next++;
      return call(token.text);
    }
    if (token.text === '(') {
      next++;
      const inner = choice();
      take(')', `a closing parenthesis is missing before ${named(peek())}.`);
      return inner;
    }
    return fail(token, `a number, a symbol or "(" is missing before ${named(token)}.`);
  };

  const unary = (): Expression => {
    if (peek().text === '-' && peek().kind === 'sign') {
      next++;
      return { kind: 'negative', of: operators(6) };
    }
    return atom();
  };

  const operators = (least: number): Expression => {
    if (++depth > deepest) fail(peek(), 'the formula is nested too deeply.');
    let left = unary();
    for (;;) {
      const token = peek();
      const strength = token.kind === 'number' ? 0 : binding(token.text);
      if (strength === 0 || strength < least) break;
      next++;
      const op = token.text as Operator;
      const right = operators(op === '^' ? 6 : strength + 1);
      left = { kind: 'binary', op, left, right };
      if (strength === 3 && compares.has(peek().text)) {
        fail(peek(), 'comparisons do not chain; join two of them with "and".');
      }
    }
    depth--;
    return left;
  };

  const choice = (): Expression => {
    if (++depth > deepest) fail(peek(), 'the formula is nested too deeply.');
    const when = operators(1);
    let result = when;
    if (peek().text === '?') {
      next++;
      const value = choice();
      take(':', `":" is missing before ${named(peek())}: a choice is written "condition ? value : other".`);
      result = { kind: 'choice', when, value, otherwise: choice() };
    }
    depth--;
    return result;
  };

  const whole = choice();
  const rest = peek();
  if (rest.kind !== 'end') {
    fail(
      rest,
      `an operator is missing before ${named(rest)}${rest.kind === 'sign' ? '' : '; a product is written with "*"'}.`,
    );
  }
  return whole;
};

/** A symbol taken apart: `T0_hold` is T with the subscripts 0 and hold. */
export interface SymbolParts {
  readonly base: string;
  readonly below: readonly string[];
}

/**
 * Takes a symbol apart into its letter and what stands below it.
 * @param name as it stands in a formula text, for instance `T_hold`, `x1`
 * @returns the letter or word, and the subscripts in order
 */
export const symbolParts = (name: string): SymbolParts => {
  const [first = '', ...below] = name.split('_');
  const [, base = first, digits] = /^(\p{L}[\p{L}\p{M}]*)(\p{N}+)$/u.exec(first) ?? [];
  return { base: base === 'pi' ? 'π' : base, below: digits === undefined ? below : [digits, ...below] };
};

/** The terms of a sum with their signs, the first term's sign included. */
export const termsOf = (whole: Expression): readonly { readonly sign: '+' | '-'; readonly term: Expression }[] =>
  whole.kind === 'binary' && (whole.op === '+' || whole.op === '-')
    ? [...termsOf(whole.left), { sign: whole.op, term: whole.right }]
    : [{ sign: '+', term: whole }];
