/** Just enough XML to read a state chart: elements, attributes, comments and the five named entities. */

export interface Element {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: readonly Element[];
  readonly line: number;
  readonly column: number;
}

/** Why a text is no document, and where. */
export class XmlFault extends Error {
  constructor(
    message: string,
    readonly line: number,
    readonly column: number,
  ) {
    super(message);
  }
}

const NAME = /[\p{L}_:][\p{L}\p{N}_:.-]*/uy;
const entities: Readonly<Record<string, string>> = { lt: '<', gt: '>', amp: '&', quot: '"', apos: "'" };

export const escapeXml = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');

/**
 * Reads one document. Texts between elements are passed over; declarations of entities are refused, so that nothing unfolds.
 *
 * @throws XmlFault with line and column
 */
export const readXml = (text: string): Element => {
  let at = 0;
  const placeOf = (offset: number): [number, number] => {
    const before = text.slice(0, offset).split('\n');
    return [before.length, before.at(-1)!.length + 1];
  };
  const fail = (what: string, offset = at): never => {
    throw new XmlFault(what, ...placeOf(offset));
  };
  const skip = (end: string, what: string): void => {
    const found = text.indexOf(end, at);
    if (found < 0) fail(`${what} does not end.`);
    at = found + end.length;
  };
  const space = (): void => {
    while (/\s/.test(text[at] ?? '')) at++;
  };
  const name = (): string => {
    NAME.lastIndex = at;
    const found = NAME.exec(text)?.[0] ?? fail('A name is missing.');
    at += found.length;
    return found;
  };
  const unescaped = (raw: string, offset: number): string =>
    raw.replaceAll(/&(#x[\da-f]+|#\d+|\w+);/gi, (_, entity: string) => {
      const code = /^#x/i.test(entity) ? parseInt(entity.slice(2), 16) : Number(entity.slice(1));
      if (!entity.startsWith('#')) return entities[entity] ?? fail(`&${entity}; is not known.`, offset);
      return code > 0 && code <= 0x10ffff ? String.fromCodePoint(code) : fail(`&${entity}; is no character.`, offset);
    });
  /** Comments, declarations and texts between elements. */
  const passOver = (): void => {
    for (;;) {
      while (at < text.length && text[at] !== '<') at++;
      if (text.startsWith('<!--', at)) skip('-->', 'A comment');
      else if (text.startsWith('<?', at)) skip('?>', 'An instruction');
      else if (text.startsWith('<![CDATA[', at)) skip(']]>', 'A text');
      else if (text.startsWith('<!', at)) fail('A document type is not read here.');
      else return;
    }
  };
  const element = (depth: number): Element => {
    if (depth > 100) fail('Elements stand too deep in each other.');
    const start = at;
    at++;
    const called = name();
    const attributes: Record<string, string> = Object.create(null) as Record<string, string>;
    for (space(); text[at] !== '>' && text[at] !== '/'; space()) {
      const key = name();
      if (key in attributes) fail(`${key} stands twice.`);
      space();
      if (text[at] !== '=') fail(`${key} has no value.`);
      at++;
      space();
      const quote = text[at];
      if (quote !== '"' && quote !== "'") fail(`The value of ${key} has no quotes.`);
      const from = at + 1;
      const to = text.indexOf(quote!, from);
      if (to < 0) fail(`The value of ${key} does not end.`);
      attributes[key] = unescaped(text.slice(from, to), from);
      at = to + 1;
    }
    const [line, column] = placeOf(start);
    const children: Element[] = [];
    if (text.startsWith('/>', at)) at += 2;
    else if (text[at] === '>') {
      at++;
      for (passOver(); !text.startsWith('</', at); passOver()) {
        if (at >= text.length) fail(`<${called}> does not end.`, start);
        children.push(element(depth + 1));
      }
      const end = at;
      at += 2;
      if (name() !== called) fail(`<${called}> is ended by another name.`, end);
      space();
      if (text[at] !== '>') fail('A > is missing.');
      at++;
    } else fail('A > is missing.');
    return { name: called, attributes: { ...attributes }, children, line, column };
  };
  passOver();
  if (at >= text.length) fail('There is no element.');
  const root = element(0);
  passOver();
  if (at < text.length) fail('Something follows the document.');
  return root;
};
