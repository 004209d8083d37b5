/** A fact of the book that can be taken hold of where a sheet shows it. */
import type { House, Machine } from '../../app/index.ts';
import { Quantity } from '../../contract/index.ts';
import { at } from '../../engine/snapshot.ts';
import type { FactPlace, Handle } from '../desk/engine.ts';

/** Nothing for what is no single fact: a table, an entry, a list. */
export const handleOf = (
  { book, snapshot }: Machine,
  { schema }: Pick<House, 'schema'>,
  path: string,
  place: FactPlace | undefined,
): Handle | undefined => {
  const info = schema.keyInfo(path, snapshot.tree);
  if (!info) return undefined;
  const stands = at(snapshot.tree, path);
  const complete = stands instanceof Quantity ? stands.text : typeof stands === 'object' ? undefined : stands;
  const text = book.textAt(path) ?? (complete === undefined ? '' : String(complete));
  return { path, means: info.means, text, ...(place ? { place } : {}) };
};
