/** Pieces of a line of YAML, without minding whether the rest of it is any. */

// Lengths are bounded, so that no line takes longer than its length to look through.
export const KEY =
  /(?:"((?:[^"\\\n]|\\.){0,300})"|'((?:[^'\n]|''){0,300})'|([^\s#"'{}[\],&*!|>%@`?-][^\n#]{0,300}?|-[^\s\n#][^\n#]{0,300}?))[ \t]{0,40}:(?=[ \t]|\r?\n|$)/y;
export const FLOW_KEY =
  /(?:"((?:[^"\\\n]|\\.){0,300})"|'((?:[^'\n]|''){0,300})'|([^\s#"'{}[\],][^\n#{}[\],]{0,300}?))[ \t]{0,40}:(?=[ \t,}\]]|\r?\n|$)/y;

/** The end of the line, before its line feed. */
export const lineEnd = (text: string, at: number): number => {
  const feed = text.indexOf('\n', at);
  return feed < 0 ? text.length : feed;
};

export const skipBlanks = (text: string, at: number): number => {
  let here = at;
  while (text[here] === ' ' || text[here] === '\t') here++;
  return here;
};

export interface Key {
  readonly name: string;
  /** Where the key itself ends, and where its colon does. */
  readonly keyEnd: number;
  readonly end: number;
}

/** A key with its colon that begins here. */
export const keyAt = (text: string, pattern: RegExp, at: number): Key | undefined => {
  pattern.lastIndex = at;
  const found = pattern.exec(text);
  if (!found) return undefined;
  const end = pattern.lastIndex;
  const name = found[1] ?? found[2]?.replaceAll("''", "'") ?? found[3]!;
  return { name, end, keyEnd: at + text.slice(at, end - 1).trimEnd().length };
};

/** The end of a quoted text, or of its line where the quote is not closed. */
const quotedEnd = (text: string, at: number): number => {
  const quote = text[at];
  for (let i = at + 1; i < text.length; i++) {
    if (text[i] === '\\' && quote === '"') i++;
    else if (text[i] === quote) {
      if (quote === "'" && text[i + 1] === "'") i++;
      else return i + 1;
    }
  }
  return lineEnd(text, at);
};

/** The end of a plain text: of its line, or before a comment, or before what ends a text between brackets. */
export const plainEnd = (text: string, at: number, stops?: RegExp): number => {
  let here = at;
  while (here < text.length && text[here] !== '\n') {
    if (text[here] === '#' && (here === at || /\s/.test(text[here - 1]!))) break;
    if (stops?.test(text[here]!)) break;
    here++;
  }
  return here;
};

export interface Scalar {
  readonly from: number;
  readonly to: number;
  readonly value: string;
}

export const scalarAt = (text: string, at: number, inBraces: boolean): Scalar => {
  if (text[at] === '"' || text[at] === "'") {
    const to = quotedEnd(text, at);
    return { from: at, to, value: text.slice(at + 1, Math.max(at + 1, to - 1)) };
  }
  const end = plainEnd(text, at, inBraces ? /[,{}[\]]/ : undefined);
  const value = text.slice(at, end).trimEnd();
  return { from: at, to: at + value.length, value };
};

/** Anchors and tags before a value mean nothing here. */
export const pastProperties = (text: string, at: number): number => {
  let here = skipBlanks(text, at);
  while (text[here] === '&' || text[here] === '!')
    here = skipBlanks(text, here + /^[^\s]*/.exec(text.slice(here, here + 200))![0].length);
  return here;
};
