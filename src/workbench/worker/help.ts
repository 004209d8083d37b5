/** What the key under the pointer is about. */
import type { House } from '../../app/index.ts';
import { entryKinds, infoOf } from '../../contract/index.ts';
import { dimensionInfo } from '../../kernel/index.ts';
import type { BookText, KeyHelp } from '../desk/engine.ts';
import type { Entry, Span } from './outline.ts';
import { reach, writtenBook } from './written.ts';

const holds = (span: Span | undefined, offset: number): boolean =>
  span !== undefined && offset >= span.from && offset <= span.to;

/** Units that would do, the likeliest first. */
const unitsOf = (of: Parameters<typeof dimensionInfo>[0]): string | undefined => {
  const likely = dimensionInfo(of).likely.filter((unit) => unit !== '');
  return likely.length > 0 ? likely.join(', ') : undefined;
};

/** Parts of a fact that says where it comes from belong to the fact. */
const pathsFor = ({ path }: Entry): readonly (readonly string[])[] => [path, path.slice(0, -1)];

export const helpAt = (book: BookText, file: string, offset: number, house: House): KeyHelp | undefined => {
  const written = writtenBook(book, file, offset);
  const entry = written?.here.entries.find(({ key, value }) => holds(key, offset) || holds(value, offset));
  if (!written || !entry) return undefined;
  const { from, to } = (holds(entry.key, offset) ? entry.key : entry.value)!;
  for (const path of pathsFor(entry)) {
    const { schemas } = reach(house.schema.zod, written.tree, path);
    const info = schemas.map((one) => infoOf(one)).find((one) => one !== undefined);
    if (!info) continue;
    const unit = info.of === undefined ? undefined : unitsOf(info.of);
    return {
      path: path.join('.'),
      means: info.means,
      ...(unit === undefined ? {} : { unit }),
      example: info.example,
      ...(info.range === 'spread' || info.range === 'doubt' ? { range: info.range } : {}),
      from,
      to,
    };
  }
  const [kind = '', ...below] = entry.path;
  const known = Object.hasOwn(entryKinds, kind) ? entryKinds[kind] : undefined;
  if (!known || below.length > 1) return undefined;
  return { path: entry.path.join('.'), means: below.length === 1 ? known.means : `each ${known.means}`, from, to };
};
