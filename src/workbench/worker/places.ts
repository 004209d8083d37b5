/** Places in the texts of a book, counted in UTF-16 units from 0, as editors count. */
import { isMap, type Document, type Node } from 'yaml';
import { colonEnd, contentEnd, isEmpty, isFact, locate, type Found } from '../../engine/read/locate.ts';
import type { BookProblem } from '../../engine/read/problem.ts';
import { parseFile } from '../../engine/read/yaml.ts';
import type { Place } from '../../kernel/index.ts';
import type { FactPlace, TextProblem } from '../desk/engine.ts';

const BYTE_ORDER_MARK = '\uFEFF';

/** Where a line and column, both from 1, are; no farther than the end of the text. */
export const offsetAt = (text: string, { line, column }: Pick<Place, 'line' | 'column'>): number => {
  let start = text.startsWith(BYTE_ORDER_MARK) ? 1 : 0;
  for (let i = 1; i < line; i++) {
    const feed = text.indexOf('\n', start);
    if (feed < 0) return text.length;
    start = feed + 1;
  }
  return Math.min(text.length, start + column - 1);
};

/** Problems of a book with their stretch of text; a file that is not there has none, so that they point to nothing. */
export const problemsIn = (
  problems: readonly BookProblem[],
  files: Readonly<Record<string, string>>,
): readonly TextProblem[] =>
  problems.map(({ place, width, path, what, allowed, severity }) => {
    const text = Object.hasOwn(files, place.file) ? files[place.file]! : '';
    const from = offsetAt(text, place);
    return {
      place,
      from,
      to: Math.min(text.length, from + width),
      says: `${path ? `${path}: ` : ''}${what}${allowed === '' ? '' : ` ${allowed}`}`,
      keepsFromReading: severity === 'error',
    };
  });

interface Parsed {
  readonly file: string;
  readonly text: string;
  readonly document: Document.Parsed;
}

const spanOf = ({ file, text }: Parsed, { node, steps, rest }: Found): FactPlace | undefined => {
  const step = steps.at(-1);
  const isThere = rest.length === 0;
  if (isThere && node && !isEmpty(node)) {
    const value = isFact(node) ? (node.get('is', true) as unknown as Node) : node;
    return { file, from: value.range![0], to: contentEnd(text, value), exact: true };
  }
  if (!step) return undefined;
  if (step.in === 'list') return spanAround(file, text, step.list.items[step.index] as Node);
  const [from] = step.pair.key.range!;
  return { file, from, to: isThere ? colonEnd(step.pair) : step.pair.key.range![1], exact: false };
};

const spanAround = (file: string, text: string, node: Node): FactPlace => ({
  file,
  from: node.range![0],
  to: isMap(node) ? node.range![0] : contentEnd(text, node),
  exact: false,
});

/** Where facts stand in readable texts. Files are parsed once, when the first fact is looked for. */
export const placesIn = (files: ReadonlyMap<string, string>): ((path: string) => FactPlace | undefined) => {
  let parsed: readonly Parsed[] | undefined;
  const parse = (): readonly Parsed[] =>
    [...files].flatMap(([file, text]) => {
      const result = parseFile(file, text);
      return result.ok ? [{ file, text, document: result.document as unknown as Document.Parsed }] : [];
    });
  const found = (one: Parsed, path: readonly string[]): Found => {
    const there = locate(one.document.contents as Node | null, path);
    const target = there.alias?.resolve(one.document);
    // What an alias repeats stands where its anchor is.
    return target ? locate(target as Node, there.rest, there.steps) : there;
  };
  return (path) => {
    let best: { readonly one: Parsed; readonly there: Found } | undefined;
    for (const one of (parsed ??= parse())) {
      const there = found(one, path.split('.'));
      if (!best || there.rest.length < best.there.rest.length) best = { one, there };
    }
    return best && spanOf(best.one, best.there);
  };
};
