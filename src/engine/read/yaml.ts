/** YAML text to a document that can be trusted, or what is wrong with it. */
import { Composer, isCollection, isScalar, Lexer, Parser, visit, type CST, type Document, type ParsedNode } from 'yaml';
import { problemAt, sourceOf, type BookProblem, type Source } from './problem.ts';

export type ParsedFile =
  | { readonly ok: true; readonly source: Source; readonly document: Document.Parsed<ParsedNode> }
  | { readonly ok: false; readonly source: Source; readonly problems: readonly BookProblem[] };

export const MOST_BYTES = 2 * 1024 * 1024;
export const MOST_LEVELS = 40;
/** A slip near the top can put every later line out of place. */
const MOST_SHOWN = 20;

const bytesOf = (text: string): number => {
  let bytes = 0;
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    // Each half of a surrogate pair counts for two of its four bytes.
    bytes += code < 0x80 ? 1 : code < 0x800 || (code >= 0xd800 && code < 0xe000) ? 2 : 3;
  }
  return bytes;
};

/** Text that never was UTF-8, or that no editor shows. */
const unreadable = (source: Source): BookProblem | undefined => {
  const { text } = source;
  const at = text.search(/[^\P{Cc}\t\n\r]|[\ufffd\ufffe\uffff]|\r(?!\n)/u);
  if (at < 0) return undefined;
  const code = text.charCodeAt(at);
  const span = { source, start: at, end: at + 1 };
  if (code === 0xfffd || code === 0 || code >= 0xfffe)
    return problemAt(span, 'This file is not UTF-8 here.', 'Save it as UTF-8; an editor calls that the encoding.');
  if (code === 0x0d)
    return problemAt(
      span,
      'A line ends in a lone carriage return here.',
      'Lines end in a line feed, with or without a carriage return before it.',
    );
  return problemAt(
    span,
    `An invisible control character (code ${code}) stands here.`,
    'Delete it; only tabs and line ends have a place in a text.',
  );
};

const opensLevel = ({ type }: CST.Token): boolean =>
  type === 'block-map' || type === 'block-seq' || type === 'flow-collection';

/** Tokens of the file, or the offset at which it is nested too deeply. Deeper texts would exhaust the stack later. */
const tokensOf = (text: string): CST.Token[] | number => {
  const parser = new Parser();
  const tokens: CST.Token[] = [];
  for (const lexeme of new Lexer().lex(text)) {
    for (const token of parser.next(lexeme)) tokens.push(token);
    if (parser.stack.length > MOST_LEVELS && parser.stack.filter(opensLevel).length > MOST_LEVELS)
      return Math.min(parser.offset, text.length) - 1;
  }
  for (const token of parser.end()) tokens.push(token);
  return tokens;
};

type Told = readonly [what: string, allowed: string];

const unknownSyntax: Told = [
  'This cannot be read as YAML.',
  'One "key: value" on a line; a text with : # { [ , or quotes in it stands in quotes.',
];
const oneLine: Told = [
  'This is no "key: value".',
  'A key, a colon, a space and its value on one line; keys of one map begin in the same column.',
];
const sentences: Readonly<Record<string, Told>> = {
  TAB_AS_INDENT: ['A tab stands in the indentation.', 'Indent with spaces only, two for each level.'],
  BAD_INDENT: [
    'This begins in another column than its neighbours.',
    'Keys of one map begin in the same column, items of one list too.',
  ],
  BLOCK_AS_IMPLICIT_KEY: [
    'A second colon and space stand in one line.',
    'Put a value that holds ": " in quotes, or begin the inner key on its own line.',
  ],
  MULTILINE_IMPLICIT_KEY: oneLine,
  BLOCK_IN_FLOW: [
    'Between { and } a comma is missing, or a line begins as outside of them.',
    '{ key: value, key: value }',
  ],
  BAD_SCALAR_START: ['A value cannot begin with this character.', 'Put the value in quotes.'],
  BAD_DQ_ESCAPE: [
    'A backslash in double quotes begins an escape, and there is none of this name.',
    'Write \\\\ for a backslash, or use single quotes.',
  ],
  MULTIPLE_DOCS: [
    'A second document begins here.',
    'A file of a book holds one document: take out the line of dashes.',
  ],
  ALIAS_PROPS: ['An alias stands for a value as it is.', 'Take out the anchor or tag before it.'],
  TAG_RESOLVE_FAILED: [
    'A tag means nothing in a book.',
    'Leave it out; a text that should stay a text stands in quotes.',
  ],
  BAD_DIRECTIVE: ['This line is no directive of YAML.', 'A value that begins with % stands in quotes.'],
};
const unclosed: Told = [
  'Something that was opened before is not closed: a { or a [.',
  'Close it with } or ] before the next key.',
];
const unquoted: Told = [
  'A quote that was opened before is not closed.',
  'Close it with the same quote; a text that begins with a quote stands in the other kind of quotes.',
];
const commentSpace: Told = ['A # right after a value begins no comment.', 'Put a space before the #.'];
const afterValue: Told = [
  'Something stands behind a value that is already complete.',
  'Put the whole value in single quotes; a comma parts the values of a list.',
];

const startsSpecial: Told = [
  'A value that begins with * or & stands for another value.',
  'Put a text that begins so in quotes.',
];

const sentenceFor = (code: string, message: string): Told => {
  if (code === 'BAD_INDENT' && /end with a/.test(message)) return unclosed;
  if (code === 'MISSING_CHAR' && /closing/.test(message)) return unquoted;
  if (code === 'MISSING_CHAR' && message.startsWith('Comments')) return commentSpace;
  if (code === 'MISSING_CHAR' && /map values/.test(message)) return oneLine;
  if (code === 'UNEXPECTED_TOKEN' && /at node end/.test(message)) return afterValue;
  return sentences[code] ?? unknownSyntax;
};

/** Where the quote or bracket stands that misses its partner; the library only says where it gave up. */
const openedAt = (source: Source, document: Document.Parsed<ParsedNode>, quoted: boolean): number | undefined => {
  let found: number | undefined;
  visit(document, {
    Node: (_, node) => {
      if (!node.range) return;
      const [start, end] = node.range;
      const last = source.text[end - 1];
      const open = quoted
        ? isScalar(node) && node.type?.startsWith('QUOTE') === true && (end - start < 2 || last !== source.text[start])
        : isCollection(node) && node.flow === true && last !== '}' && last !== ']';
      if (open) found = start;
    },
  });
  return found;
};

const syntaxProblems = (source: Source, documents: readonly Document.Parsed<ParsedNode>[]): readonly BookProblem[] => {
  const found: BookProblem[] = [];
  const lines = new Set<number>();
  const tell = (start: number, end: number, [what, allowed]: Told): void => {
    const problem = problemAt({ source, start: Math.min(start, source.text.length), end }, what, allowed);
    // One slip makes the library complain several times about the same line.
    if (lines.has(problem.place.line) || found.length >= MOST_SHOWN) return;
    lines.add(problem.place.line);
    found.push(problem);
  };
  const [first, second] = documents;
  for (const { code, message, pos } of [...(first?.errors ?? []), ...(first?.warnings ?? [])]) {
    const told = sentenceFor(code, message);
    const opened =
      first && (told === unclosed || told === unquoted) ? openedAt(source, first, told === unquoted) : undefined;
    const line = source.text.slice(source.text.lastIndexOf('\n', pos[0] - 1) + 1);
    const indent = code === 'BAD_INDENT' && opened === undefined ? /^ */.exec(line)![0].length : 0;
    const start = source.text.length - line.length;
    if (told === afterValue && /(?:: |- )[*&]\S*$/.test(source.text.slice(start, pos[0]).trimEnd()))
      tell(pos[0], pos[1], startsSpecial);
    else if (indent > 0) tell(start + indent, start + (/^[^:\n]*/.exec(line)?.[0].length ?? indent), told);
    else if (opened === undefined) tell(pos[0], pos[1], told);
    else tell(opened, opened + 1, told);
  }
  if (second) {
    const dashes = source.text.lastIndexOf('---', second.range[0] + 3);
    const start = dashes < 0 ? second.range[0] : dashes;
    tell(start, start + 3, sentences['MULTIPLE_DOCS']!);
  }
  const { explicit, version } = first?.directives?.yaml ?? { version: '1.2' };
  if (explicit && version !== '1.2')
    tell(Math.max(0, source.text.search(/^\ufeff?%YAML/m)), source.text.length, [
      `A book is YAML 1.2, and this line says ${version}.`,
      'Take the line out, or write %YAML 1.2.',
    ]);
  return found;
};

/** Parses one file. A file with a fault of syntax has no document: what could be rescued would only mislead. */
export const parseFile = (file: string, text: string): ParsedFile => {
  const source = sourceOf(file, text);
  const refuse = (...problems: BookProblem[]): ParsedFile => ({ ok: false, source, problems });
  if (text.length * 3 > MOST_BYTES && bytesOf(text) > MOST_BYTES)
    return refuse(
      problemAt(
        { source, start: 0, end: 1 },
        `This file has ${(bytesOf(text) / 1024 / 1024).toFixed(1)} MiB.`,
        'A file of a book has at most 2 MiB; a log or an outline stands in its own file.',
      ),
    );
  const odd = unreadable(source);
  if (odd) return refuse(odd);
  const tokens = tokensOf(text);
  if (typeof tokens === 'number')
    return refuse(
      problemAt(
        { source, start: tokens, end: tokens + 1 },
        `More than ${MOST_LEVELS} levels are nested here.`,
        'A book needs fewer than ten.',
      ),
    );
  const composer = new Composer({
    version: '1.2',
    schema: 'core',
    uniqueKeys: false,
    prettyErrors: false,
    keepSourceTokens: true,
  });
  const documents = [...composer.compose(tokens, true, text.length)] as Document.Parsed<ParsedNode>[];
  const problems = syntaxProblems(source, documents);
  if (problems.length > 0) return refuse(...problems);
  return { ok: true, source, document: documents[0]! };
};
