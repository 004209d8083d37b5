/** Names in the book that stand for other entries of it. */
import { entryKinds, type KeyInfo } from '../../contract/index.ts';
import { spanOf, withArticle, type Held } from './issues.ts';
import { nearest } from '../../kernel/nearest.ts';
import { listed, placeAt, problemAt, quote, under, type BookProblem } from './problem.ts';
import { isMap, visitLeaves } from './walk.ts';

/** Tables that a young book may leave out although other entries name what will stand in them. */
const mayBeAbsent: ReadonlySet<string> = new Set(['signals', 'cables']);
/** Parts have names of the trade, and modes are not things. */
const withoutDesignation: ReadonlySet<string> = new Set(['parts', 'modes']);

const entriesOf = (raw: Held['raw'], kind: string): Readonly<Record<string, unknown>> => {
  const table = Object.hasOwn(raw, kind) ? raw[kind] : undefined;
  return isMap(table) ? table : {};
};

/** Each rail with the supplies that have one of that name. */
const railsOf = (raw: Held['raw']): ReadonlyMap<string, readonly string[]> => {
  const found = new Map<string, string[]>();
  for (const [supply, entry] of Object.entries(entriesOf(raw, 'supplies'))) {
    const rails = isMap(entry) ? entry['rails'] : undefined;
    for (const rail of isMap(rails) ? Object.keys(rails) : []) found.set(rail, [...(found.get(rail) ?? []), supply]);
  }
  return found;
};

const meansOf = (kind: string): string =>
  kind === 'rails' ? 'rail' : Object.hasOwn(entryKinds, kind) ? entryKinds[kind]!.means : kind.replace(/s$/, '');

const plural = (kind: string): string =>
  Object.hasOwn(entryKinds, kind) || kind === 'rails' ? kind : `entries in ${kind}`;

/** Names that stand for nothing, and rails that two supplies have. */
export const danglingNames = (held: Held, known: (kind: string) => readonly string[]): readonly BookProblem[] => {
  const problems: BookProblem[] = [];
  const rails = railsOf(held.raw);
  const look = (info: KeyInfo, value: unknown, path: string): void => {
    const kind = info.refers;
    if (kind === undefined || typeof value !== 'string') return;
    const tell = (what: string, allowed: string): void => {
      const span = spanOf(held.spots, path);
      if (span) problems.push(problemAt(span, what, allowed, { path }));
    };
    if (kind === 'rails') {
      const owners = rails.get(value) ?? [];
      if (owners.length > 1)
        tell(
          `${quote(value)} is a rail of ${listed(owners)}: it is not clear which is meant.`,
          'Give each rail a name of its own.',
        );
      if (owners.length > 0) return;
    }
    const own = kind === 'rails' ? [...rails.keys()] : Object.keys(entriesOf(held.raw, kind));
    const names = [...own, ...known(kind)];
    if (names.includes(value) || (own.length === 0 && mayBeAbsent.has(kind))) return;
    const close = nearest(value, names);
    const title = `${plural(kind)[0]!.toUpperCase()}${plural(kind).slice(1)}`;
    const all = `${title}: ${listed(names)}.`;
    const none =
      kind === 'rails'
        ? 'No supply of the book states its rails yet.'
        : `The book has no ${plural(kind)} yet: ${kind}: { ${value}: { … } } at the top.`;
    tell(
      `There is no ${meansOf(kind)} ${quote(value)} in the book${known(kind).length > 0 ? ' or the catalogue' : ''}.`,
      close === undefined
        ? names.length > 0
          ? all
          : none
        : `Did you mean ${close}?${names.length > 12 || withoutDesignation.has(kind) ? '' : ` ${all}`}`,
    );
  };
  visitLeaves(held.schema, held.raw, '', look);
  return problems;
};

/** Two things of different kinds with the same designation. */
export const sharedDesignations = (held: Held): readonly BookProblem[] => {
  const first = new Map<string, string>();
  const problems: BookProblem[] = [];
  for (const kind of Object.keys(entryKinds).filter((kind) => !withoutDesignation.has(kind)))
    for (const name of Object.keys(entriesOf(held.raw, kind))) {
      const before = first.get(name);
      const path = under(kind, name);
      if (before === undefined) {
        first.set(name, kind);
        continue;
      }
      const here = held.spots.get(path);
      const there = held.spots.get(under(before, name));
      if (!here?.key || !there?.key) continue;
      // The later of the two is the one to change.
      const isLater = here.source === there.source && here.key.start < there.key.start;
      const [later, earlier] = isLater ? [there, here] : [here, there];
      const place = placeAt(earlier.source, earlier.key!.start);
      problems.push(
        problemAt(
          { source: later.source, ...later.key! },
          `${quote(name)} is the designation of ${withArticle(meansOf(isLater ? kind : before))} already, at ${place.file}:${place.line}:${place.column}.`,
          `A designation stands for one thing in the whole book: name this ${meansOf(isLater ? before : kind)} otherwise.`,
          { path: isLater ? under(before, name) : path },
        ),
      );
    }
  return problems;
};
