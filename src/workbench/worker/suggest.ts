/** What may be written at the caret: keys with their meaning, words, names of what stands in the book, units. */
import type { House } from '../../app/index.ts';
import { entryKinds, infoOf, type KeyInfo } from '../../contract/index.ts';
import { listed } from '../../engine/read/problem.ts';
import { core, keysOf } from '../../engine/read/walk.ts';
import { dimensionInfo, type Provenance } from '../../kernel/index.ts';
import type * as z from 'zod';
import type { BookText, Suggestion } from '../desk/engine.ts';
import type { Caret, Tree } from './outline.ts';
import { namesIn, namesOfKind, reach, writtenBook } from './written.ts';

type Offer = Omit<Suggestion, 'from'> & { readonly from?: number };

const MOST = 200;

const origins: Readonly<Record<Provenance, string>> = {
  measured: 'somebody measured it',
  plate: 'it stands on the plate of the part',
  datasheet: 'it stands in a data sheet',
  table: 'it is out of a table',
  guess: 'nobody has measured it',
  stated: 'its author says so',
};

const meansOfKey = (key: string, schema: z.ZodType | undefined, isTop: boolean): string => {
  const info = schema && infoOf(schema);
  if (info) return info.means;
  if (isTop && Object.hasOwn(entryKinds, key)) return `each ${entryKinds[key]!.means}, under its name`;
  const inner = schema && core(schema);
  if (inner?.type === 'record') return 'entries, each under its name';
  return schema ? `with ${listed(keysOf(schema), 6)}` : '';
};

/** Keys that are allowed in a map and do not stand in it yet. */
const keyOffers = (
  schemas: readonly z.ZodType[],
  value: unknown,
  { typed, within }: Caret,
  isFollowedByColon: boolean,
): readonly Offer[] => {
  const colon = isFollowedByColon ? '' : ': ';
  const facts = schemas.map((one) => infoOf(one)).find((info) => info?.form === 'quantity');
  if (facts) {
    const keys = { is: facts.means, from: 'where it comes from' };
    return Object.entries(keys).map(([key, means]) => ({ text: key + colon, means }));
  }
  const there = new Set(namesIn(value).filter((key) => key !== typed));
  const found = new Map<string, Offer>();
  for (const schema of schemas)
    for (const key of keysOf(schema, value)) {
      if (there.has(key) || found.has(key)) continue;
      const { schemas: below } = reach(schema, value as Tree, [key]);
      found.set(key, { text: key + colon, means: meansOfKey(key, below[0], within.length === 0) });
    }
  return [...found.values()];
};

/** A number that waits for its unit: `160`, `0.9..1.3 N`. */
const NUMBER = /^([-+\d.,/½¼¾]+(?:\s*(?:\.\.|±|\+-)\s*[-+\d.,/]+)?)(\s*)([^\s\d]*)$/u;

const unitOffers = (info: KeyInfo, { typed, from }: Caret): readonly Offer[] => {
  const [, number, gap = '', unit = ''] = NUMBER.exec(typed) ?? [];
  if (number === undefined || info.of === undefined) return [];
  const { likely, words } = dimensionInfo(info.of);
  return likely
    .filter((one) => one !== '')
    .map((one) => ({
      text: gap === '' ? ` ${one}` : one,
      means: words,
      from: from + typed.length - unit.length,
    }));
};

/** Parts of the catalogue; those of the kind that the key gives as its example stand first. */
const rowOffers = (example: string, house: House): readonly Offer[] => {
  const like = house.catalogue.get(example)?.kind;
  return [...house.catalogue.values()]
    .toSorted((a, b) => Number(b.kind === like) - Number(a.kind === like))
    .map(({ name, says }) => ({ text: name, means: says }));
};

const nameOffers = (kind: string, example: string, tree: Tree, house: House): readonly Offer[] => {
  const means = kind === 'rails' ? 'rail' : (entryKinds[kind]?.means ?? kind.replace(/s$/, ''));
  const own = namesOfKind(kind, tree).map((text) => ({ text, means: `${means} of this book` }));
  return kind === 'parts' ? [...own, ...rowOffers(example, house)] : own;
};

const valueOffers = (info: KeyInfo, caret: Caret, tree: Tree, house: House): readonly Offer[] => {
  const { means, example, words, refers, form, range } = info;
  if (words) return words.map((text) => ({ text, means }));
  if (refers !== undefined) return nameOffers(refers, example, tree, house);
  if (form === 'yes-no') return ['true', 'false'].map((text) => ({ text, means }));
  if (form === 'text') return [];
  const units = unitOffers(info, caret);
  if (units.length > 0) return units;
  const bare = example.replaceAll(/^"|"$/g, '');
  return [
    { text: bare, means: `${means}, for example` },
    ...(form === 'quantity' && range === 'doubt'
      ? [{ text: `{ is: ${bare}, from: guess }`, means: `${means}, and where it comes from` }]
      : []),
  ];
};

const offersAt = (caret: Caret, tree: Tree, house: House, isFollowedByColon: boolean): readonly Offer[] => {
  const { within, key } = caret;
  const around = reach(house.schema.zod, tree, within);
  // A list of names, or one name that may stand without the brackets of a list.
  const leaf = around.schemas.map((one) => infoOf(one)).find((info) => info !== undefined && info.form !== 'quantity');
  const many = reach(house.schema.zod, tree, within.slice(0, -1))
    .schemas.map((one) => infoOf(one))
    .find((info) => info?.many === true);
  if (key === undefined) {
    const item = leaf ?? many;
    if (item) return valueOffers(item, caret, tree, house);
    return keyOffers(around.schemas, around.value, caret, isFollowedByColon);
  }
  const isFact = around.schemas.some((one) => infoOf(one)?.form === 'quantity');
  if (isFact && key === 'from') return Object.entries(origins).map(([text, means]) => ({ text, means }));
  const schemas = isFact && key === 'is' ? around.schemas : reach(house.schema.zod, tree, [...within, key]).schemas;
  const info = schemas.map((one) => infoOf(one)).find((one) => one !== undefined);
  return info ? valueOffers(info, caret, tree, house) : [];
};

export const suggestionsAt = (book: BookText, file: string, offset: number, house: House): readonly Suggestion[] => {
  const written = writtenBook(book, file, offset);
  const caret = written?.here.caret;
  if (!written || !caret) return [];
  const rest = book.files[file]!.slice(offset, offset + 80);
  const isFollowedByColon = /^[\w.-]*["']?\s*:/.test(rest);
  const wanted = caret.typed.trimStart().toLowerCase();
  const begins = ({ text }: Offer): boolean => text.toLowerCase().startsWith(wanted);
  const seen = new Set<string>();
  return offersAt(caret, written.tree, house, isFollowedByColon)
    .filter((offer) => offer.from !== undefined || offer.text.toLowerCase().includes(wanted))
    .filter(({ text }) => !seen.has(text) && seen.add(text))
    .toSorted((a, b) => Number(begins(b)) - Number(begins(a)))
    .slice(0, MOST)
    .map(({ text, means, from }) => ({ text, means, from: from ?? caret.from }));
};
