/** The files of a book, joined at their top level. */
import { Plain } from '../../contract/index.ts';
import { placeAt, problemAt, quote, under, type BookProblem, type Span } from './problem.ts';
import { unfold, type Spot, type Unfolded } from './unfold.ts';
import { isMap } from './walk.ts';
import { parseFile } from './yaml.ts';

export interface Gathered {
  readonly raw: Readonly<Record<string, unknown>>;
  readonly spots: ReadonlyMap<string, Spot>;
  readonly files: ReadonlyMap<string, string>;
  readonly problems: readonly BookProblem[];
  readonly settled: ReadonlySet<string>;
  /** False when a file could not be read at all, so that the rest is not worth judging. */
  readonly whole: boolean;
}

/** The name of an included file relative to the folder of the book, or why it is refused. */
const nameOrObjection = (given: string): { readonly name: string } | { readonly what: string } => {
  if (/^[a-z][a-z0-9+.-]*:/i.test(given)) return { what: `${quote(given)} is an address or names a drive.` };
  if (given.includes('\\')) return { what: `${quote(given)} has a backslash.` };
  if (given.startsWith('/') || given.startsWith('~'))
    return { what: `${quote(given)} does not begin in the folder of the book.` };
  const segments = given.split('/').filter((segment) => segment !== '.' && segment !== '');
  if (segments.includes('..')) return { what: `${quote(given)} leaves the folder of the book.` };
  return segments.length > 0 ? { name: segments.join('/') } : { what: `${quote(given)} names no file.` };
};

const insideOnly = 'A file in the folder of the book or below it, such as motors.yaml or parts/motors.yaml.';

const keySpan = (spot: Spot): Span => ({ source: spot.source, ...(spot.key ?? { start: spot.start, end: spot.end }) });

/** `a`, `a.b`, `a.b.c`: a name may hold a dot itself. */
const prefixes = (path: string): readonly string[] => path.split('.').map((_, i, all) => all.slice(0, i + 1).join('.'));

/** Joins one more file. Entries of the same kind may be spread over files; nothing may stand in two. */
const join = (
  into: Record<string, unknown>,
  spots: Map<string, Spot>,
  more: Unfolded,
  problems: BookProblem[],
): void => {
  const twice = (path: string): void => {
    const here = more.spots.get(path);
    const there = spots.get(path);
    if (!here || !there) return;
    const { file, line, column } = placeAt(there.source, keySpan(there).start);
    const name = path.slice(path.lastIndexOf('.') + 1);
    problems.push(
      problemAt(
        keySpan(here),
        `${quote(name)} stands in two files; it is already at ${file}:${line}:${column}.`,
        'Keep one of them.',
        { path },
      ),
    );
  };
  const taken = new Set<string>();
  for (const [key, value] of Object.entries(more.raw)) {
    if (key === 'include') continue;
    const before = Object.hasOwn(into, key) ? into[key] : undefined;
    if (before === undefined) {
      into[key] = value;
      taken.add(key);
    } else if (isMap(before) && isMap(value)) {
      const joined: Record<string, unknown> = { ...before };
      for (const [name, entry] of Object.entries(value)) {
        const path = under(key, name);
        if (Object.hasOwn(joined, name)) twice(path);
        else {
          joined[name] = entry;
          taken.add(path);
        }
      }
      into[key] = joined;
    } else twice(key);
  }
  for (const [path, spot] of more.spots) if (prefixes(path).some((prefix) => taken.has(prefix))) spots.set(path, spot);
};

/** Reads the main file and all that it includes. */
export const gather = (read: (name: string) => string | undefined, main: string): Gathered => {
  const files = new Map<string, string>();
  const problems: BookProblem[] = [];
  const settled = new Set<string>();
  const raw: Record<string, unknown> = {};
  const spots = new Map<string, Spot>();
  let whole = true;

  const include = (list: unknown, unfolded: Unfolded, chain: readonly string[]): void => {
    if (list === undefined || unfolded.settled.has('include')) return;
    const tell = (path: string, what: string, allowed: string): void => {
      const spot = unfolded.spots.get(path) ?? unfolded.spots.get('include');
      if (spot) problems.push(problemAt(spot.scalar ? spot : keySpan(spot), what, allowed, { path }));
      settled.add(path);
    };
    if (!Array.isArray(list)) {
      if (!(list instanceof Plain && list.value === null))
        tell('include', 'A list of files belongs here.', 'include: [motors.yaml]');
      settled.add('include');
      return;
    }
    list.forEach((given: unknown, i) => {
      const path = under('include', i);
      if (typeof given !== 'string') {
        tell(path, 'This is no name of a file.', insideOnly);
        return;
      }
      const checked = nameOrObjection(given);
      if ('what' in checked) tell(path, checked.what, insideOnly);
      else if (chain.includes(checked.name)) {
        const round = [...chain.slice(chain.indexOf(checked.name)), checked.name].join(', ');
        tell(
          path,
          `These files include each other in a ring: ${round}.`,
          'Include each file once, best from the main file.',
        );
      } else if (!files.has(checked.name)) {
        const text = read(checked.name);
        if (text === undefined)
          tell(path, `There is no file ${quote(checked.name)} in the folder of the book.`, insideOnly);
        else take(checked.name, text, chain);
      }
    });
  };

  const take = (name: string, text: string, chain: readonly string[]): void => {
    files.set(name, text);
    const parsed = parseFile(name, text);
    if (!parsed.ok) {
      problems.push(...parsed.problems);
      whole = false;
      return;
    }
    const unfolded = unfold(parsed);
    problems.push(...unfolded.problems);
    if (!unfolded.whole) whole = false;
    // A second file that is no map says nothing about the rest of the book.
    for (const path of unfolded.settled) if (path !== '' || chain.length === 0) settled.add(path);
    if (chain.length === 0) {
      Object.assign(raw, unfolded.raw);
      for (const [path, spot] of unfolded.spots) spots.set(path, spot);
    } else join(raw, spots, unfolded, problems);
    include(unfolded.raw['include'], unfolded, [...chain, name]);
  };

  const text = read(main);
  if (text === undefined) {
    problems.push({
      place: { file: main, line: 1, column: 1 },
      width: 1,
      what: `There is no file ${quote(main)}.`,
      allowed: 'A book is a folder with a file book.yaml in it.',
      severity: 'error',
    });
    whole = false;
  } else take(main, text, []);
  return { raw, spots, files, problems, settled, whole };
};
