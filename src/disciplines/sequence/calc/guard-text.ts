/** Guards as the conditions of an SCXML document: `S6 && !S9`, `retries < 2 || In('serving')`. */
import type { Condition } from '../facts.ts';

export type ReadCondition =
  | { readonly ok: true; readonly condition: Condition }
  | { readonly ok: false; readonly what: string; readonly at: readonly [number, number] };

interface Token {
  readonly text: string;
  readonly at: readonly [number, number];
}

class Fault extends Error {
  constructor(
    message: string,
    readonly at: readonly [number, number],
  ) {
    super(message);
  }
}

const WORD = /^[\p{L}_][\p{L}\p{N}_.-]*$/u;

const tokensOf = (text: string): readonly Token[] => {
  const found: Token[] = [];
  for (const match of text.matchAll(/>=|<|\(|\)|&&|\|\||!|'[^']*'|[\p{L}\p{N}_.-]+|\S/gu))
    found.push({ text: match[0], at: [match.index, match.index + match[0].length] });
  return found;
};

/** Reads a guard. `||` binds less than `&&`, `&&` less than `!`. */
export const readCondition = (text: string): ReadCondition => {
  const tokens = tokensOf(text);
  let next = 0;
  const end: Token = { text: '', at: [text.length, text.length] };
  const peek = (): Token => tokens[next] ?? end;
  const pass = (): Token => {
    const token = peek();
    next++;
    return token;
  };
  const expect = (wanted: string): void => {
    const token = pass();
    if (token.text !== wanted) throw new Fault(`"${wanted}" is missing in the condition.`, token.at);
  };
  const name = (): Token => {
    const token = pass();
    if (!WORD.test(token.text))
      throw new Fault(
        token.text === '' ? 'The condition stops short.' : `"${token.text}" is no name of a signal or counter.`,
        token.at,
      );
    return token;
  };
  const list = (kind: 'all' | 'any', word: string, one: () => Condition): Condition => {
    const of = [one()];
    while (peek().text === word) {
      pass();
      of.push(one());
    }
    return of.length === 1 ? of[0]! : { kind, of };
  };
  const single = (): Condition => {
    if (peek().text === '!') {
      pass();
      return { kind: 'not', of: single() };
    }
    if (peek().text === '(') {
      pass();
      const inner = any();
      expect(')');
      return inner;
    }
    const token = name();
    if (token.text === 'In' && peek().text === '(') {
      pass();
      const state = pass();
      if (!/^'.+'$/.test(state.text)) throw new Fault('In asks for the name of a state in quotes.', state.at);
      expect(')');
      return { kind: 'in', state: state.text.slice(1, -1) };
    }
    const { text: is } = peek();
    if (is !== '<' && is !== '>=') {
      return { kind: 'on', signal: token.text };
    }
    pass();
    const than = pass();
    if (!/^\d+$/.test(than.text)) throw new Fault('A counter is compared with a whole number.', than.at);
    return { kind: 'counter', counter: token.text, is, than: Number(than.text) };
  };
  const all = (): Condition => list('all', '&&', single);
  const any = (): Condition => list('any', '||', all);
  try {
    const condition = any();
    if (next < tokens.length) throw new Fault(`"${peek().text}" is too much in the condition.`, peek().at);
    return { ok: true, condition };
  } catch (error) {
    if (error instanceof Fault) return { ok: false, what: error.message, at: error.at };
    throw error;
  }
};

/** A guard as text; `readCondition` reads it back. */
export const conditionText = (cond: Condition, inner = false): string => {
  switch (cond.kind) {
    case 'on':
      return cond.signal;
    case 'in':
      return `In('${cond.state}')`;
    case 'counter':
      return `${cond.counter} ${cond.is} ${cond.than}`;
    case 'not':
      return `!${cond.of.kind === 'counter' ? `(${conditionText(cond.of)})` : conditionText(cond.of, true)}`;
    default: {
      const text = cond.of.map((one) => conditionText(one, true)).join(cond.kind === 'all' ? ' && ' : ' || ');
      return inner ? `(${text})` : text;
    }
  }
};

/** Signals that a guard looks at. */
export const signalsIn = (cond: Condition): readonly string[] => {
  if (cond.kind === 'on') return [cond.signal];
  if (cond.kind === 'not') return signalsIn(cond.of);
  return cond.kind === 'all' || cond.kind === 'any' ? cond.of.flatMap(signalsIn) : [];
};
