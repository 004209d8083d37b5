/** Texts as they stand in YAML. */
import { isCollection, isMap, isScalar, parseDocument, type Node, type Scalar } from 'yaml';

const options = { version: '1.2', schema: 'core', uniqueKeys: false, prettyErrors: false } as const;

/** What YAML makes of a text behind a key, when it takes the whole text and nothing else for the value. */
const readBehindKey = (text: string, inFlow: boolean): Node | undefined => {
  const [before, after] = inFlow ? ['{ k: ', ', z: 0 }'] : ['k: ', '\n'];
  const { contents, errors } = parseDocument(before + text + after, options);
  if (errors.length > 0 || !isMap(contents) || contents.items.length !== (inFlow ? 2 : 1)) return undefined;
  const value = contents.items[0]!.value;
  const range = isScalar(value) || isCollection(value) ? value.range : undefined;
  return range && range[0] === before.length && range[1] === before.length + text.length ? (value as Node) : undefined;
};

const isQuoted = (node: Node | undefined): boolean =>
  isScalar(node) && (node.type === 'QUOTE_DOUBLE' || node.type === 'QUOTE_SINGLE');

const singleQuoted = (text: string): string => `'${text.replaceAll("'", "''")}'`;
/** JSON's strings are YAML's double-quoted ones. */
const doubleQuoted = (text: string): string => JSON.stringify(text);

const inQuotes = (text: string, style: Scalar.Type | null | undefined): string => {
  if (/[\p{Cc}\u2028\u2029]/u.test(text)) return doubleQuoted(text);
  if (style === 'QUOTE_SINGLE') return singleQuoted(text);
  return style !== 'QUOTE_DOUBLE' && /["\\]/.test(text) ? singleQuoted(text) : doubleQuoted(text);
};

/** Whether the text is a list or map in brackets, or stands in quotes already. */
export const isSnippet = (text: string): boolean => {
  const node = readBehindKey(text, true);
  return isCollection(node) || isQuoted(node);
};

/**
 * A value as it is written behind a key: as given where YAML takes it so, else in quotes.
 * @param before the scalar that it replaces; its quotes are kept
 */
export const writtenValue = (text: string, inFlow: boolean, before?: Scalar): string => {
  if (isSnippet(text)) return text;
  if (isQuoted(before)) return inQuotes(text, before?.type);
  const node = readBehindKey(text, inFlow);
  const isPlain =
    isScalar(node) && node.type === 'PLAIN' && node.value !== null && node.source === text && !node.anchor && !node.tag;
  return isPlain ? text : inQuotes(text, undefined);
};

/** A key as it is written before its colon. */
export const writtenKey = (key: string, inFlow: boolean): string => {
  const { contents, errors } = parseDocument(inFlow ? `{ ${key}: 1 }` : `${key}: 1\n`, options);
  const [pair] = isMap(contents) && contents.items.length === 1 ? contents.items : [];
  const isPlain =
    errors.length === 0 &&
    isScalar(pair?.key) &&
    pair.key.source === key &&
    pair.key.type === 'PLAIN' &&
    isScalar(pair.value) &&
    pair.value.source === '1';
  return isPlain ? key : inQuotes(key, undefined);
};
