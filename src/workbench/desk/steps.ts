/** Steps between texts that can be gone back and forth, kept as what they replace and not as whole texts. */

export type Files = Readonly<Record<string, string>>;
/** A file that is not there has null. */
export type Parts = Readonly<Record<string, string | null>>;

/** From `at` on, `removed` gave way to `added`; null stands for a file that is not there. */
export interface Patch {
  readonly file: string;
  readonly at: number;
  readonly removed: string | null;
  readonly added: string | null;
}

export interface Step {
  /** What was done, in words. */
  readonly words: string;
  readonly patches: readonly Patch[];
  /** Steps with the same mark, one after the other, are one. */
  readonly together?: string;
  /** When it was last added to, in milliseconds. */
  readonly at: number;
}

export interface Steps {
  readonly past: readonly Step[];
  readonly future: readonly Step[];
}

/** Steps that can be undone, and the letters that they may hold together. */
const MOST_STEPS = 1000;
const MOST_LETTERS = 64 * 1024 * 1024;

export const textIn = (files: Files, name: string): string | null =>
  Object.hasOwn(files, name) ? (files[name] ?? null) : null;

export const withParts = (files: Files, parts: Parts): Files => {
  const all = Object.entries({ ...files, ...parts });
  return Object.fromEntries(all.filter((entry): entry is [string, string] => entry[1] !== null));
};

export const without = <T>(all: Readonly<Record<string, T>>, names: readonly string[]): Readonly<Record<string, T>> =>
  Object.fromEntries(Object.entries(all).filter(([name]) => !names.includes(name)));

export const only = <T>(all: Readonly<Record<string, T>>, names: readonly string[]): Readonly<Record<string, T>> =>
  Object.fromEntries(names.flatMap((name) => (Object.hasOwn(all, name) ? [[name, all[name]!] as const] : [])));

const STRETCH = 4096;

const isLow = (code: number): boolean => code >= 0xdc00 && code <= 0xdfff;

/** What changed between two texts: one stretch, without what they have in common before and behind it. */
const patchOf = (file: string, before: string | null, after: string | null): Patch | undefined => {
  if (before === after) return undefined;
  if (before === null || after === null) return { file, at: 0, removed: before, added: after };
  const most = Math.min(before.length, after.length);
  let at = 0;
  // Whole stretches are compared faster than letters.
  while (at + STRETCH <= most && before.slice(at, at + STRETCH) === after.slice(at, at + STRETCH)) at += STRETCH;
  while (at < most && before.charCodeAt(at) === after.charCodeAt(at)) at++;
  let behind = 0;
  const tail = (text: string, length: number): string =>
    text.slice(text.length - behind - length, text.length - behind);
  while (behind + STRETCH <= most - at && tail(before, STRETCH) === tail(after, STRETCH)) behind += STRETCH;
  while (behind < most - at && tail(before, 1) === tail(after, 1)) behind++;
  // Both halves of a letter go together.
  if (at > 0 && (isLow(before.charCodeAt(at)) || isLow(after.charCodeAt(at)))) at--;
  if (behind > 0 && isLow(before.charCodeAt(before.length - behind))) behind--;
  return {
    file,
    at,
    removed: before.slice(at, before.length - behind),
    added: after.slice(at, after.length - behind),
  };
};

export const patchesBetween = (before: Files, after: Files, names: Iterable<string>): readonly Patch[] =>
  [...new Set(names)].flatMap((name) => patchOf(name, textIn(before, name), textIn(after, name)) ?? []);

/** @throws RangeError when the texts are not those that the step was made of, which would be a fault of ours */
const patched = (files: Files, { file, at, removed, added }: Patch): Files => {
  const text = textIn(files, file);
  if (removed === null || added === null) {
    if (text !== removed) throw new RangeError(`${file} is not what it was`);
    return withParts(files, { [file]: added });
  }
  if (text?.slice(at, at + removed.length) !== removed) throw new RangeError(`${file} is not what it was`);
  return { ...files, [file]: text.slice(0, at) + added + text.slice(at + removed.length) };
};

export const forward = (files: Files, { patches }: Step): Files => patches.reduce(patched, files);

export const backward = (files: Files, { patches }: Step): Files =>
  patches.reduceRight(
    (all, { removed, added, ...rest }) => patched(all, { ...rest, removed: added, added: removed }),
    files,
  );

const lettersIn = ({ patches }: Step): number =>
  patches.reduce((sum, { removed, added }) => sum + (removed?.length ?? 0) + (added?.length ?? 0), 0);

/** As many of the latest steps as may be kept, the last in any case. */
export const kept = (past: readonly Step[]): readonly Step[] => {
  let from = Math.max(0, past.length - MOST_STEPS);
  let letters = past.slice(from).reduce((sum, step) => sum + lettersIn(step), 0);
  while (letters > MOST_LETTERS && from < past.length - 1) letters -= lettersIn(past[from++]!);
  return from === 0 ? past : past.slice(from);
};

export const touches = ({ patches }: Step, names: ReadonlySet<string>): boolean =>
  patches.some(({ file }) => names.has(file));
