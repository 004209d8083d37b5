/**
 * One open book: what stands in it, what stands on the disk as far as that is known, and every step between that can be undone.
 * Pure: each function gives the next state. Nothing that somebody wrote, here or elsewhere, goes away without having been seen.
 */
import type { BookText } from './engine.ts';
import type { FolderChange, OpenedBook, Seen } from './folder.ts';
import {
  backward,
  forward,
  kept,
  only,
  patchesBetween,
  textIn,
  touches,
  without,
  withParts,
  type Files,
  type Parts,
  type Step,
} from './steps.ts';

export interface OpenText {
  readonly main: string;
  readonly files: Files;
  /** The texts as they stand on the disk. */
  readonly base: Files;
  readonly seen: Seen;
  readonly past: readonly Step[];
  readonly future: readonly Step[];
  /** Files that were changed here and on the disk. */
  readonly conflict?: { readonly theirs: Parts; readonly seen: Seen };
  /** What is on its way to the disk: heard of again, it is no news from others. */
  readonly saving?: Files;
}

/** Typing that goes on within this many milliseconds is one step. */
const PAUSE = 1200;

/** As the desk holds texts: without a mark at the beginning, lines ended by a line feed. The folder puts back what it had. */
const plain = (text: string): string => text.replace(/^\uFEFF/, '').replaceAll('\r\n', '\n');

const plainFiles = (files: Files): Files =>
  Object.fromEntries(Object.entries(files).map(([name, text]) => [name, plain(text)]));

export const openText = ({ book, seen }: Pick<OpenedBook, 'book' | 'seen'>): OpenText => {
  const files = plainFiles(book.files);
  return { main: book.main, files, base: files, seen, past: [], future: [] };
};

export const bookOf = ({ main, files }: Pick<OpenText, 'main' | 'files'>): BookText => ({ main, files });

/** Files that are other than on the disk, whole. */
export const unsaved = ({ files, base }: Pick<OpenText, 'files' | 'base'>): Files =>
  Object.fromEntries(Object.entries(files).filter(([name, text]) => textIn(base, name) !== text));

export const isUnsaved = (text: OpenText): boolean => Object.keys(unsaved(text)).length > 0;

export interface Doing {
  readonly words: string;
  /** Steps with the same mark, one after the other, are undone as one. */
  readonly together?: string;
  readonly now: number;
}

/** The step, or steps gone on with, that lead to these parts; what was undone before leads nowhere any more. */
const stepped = (text: OpenText, parts: Parts, { words, together, now }: Doing): OpenText => {
  const changed = Object.entries(parts).filter(([name, part]) => textIn(text.files, name) !== part);
  if (changed.length === 0) return text;
  const files = withParts(text.files, Object.fromEntries(changed));
  const last = text.past.at(-1);
  const goesOn = together !== undefined && last?.together === together && text.future.length === 0;
  const before = goesOn ? backward(text.files, last) : text.files;
  const names = [...(goesOn ? last.patches.map(({ file }) => file) : []), ...changed.map(([name]) => name)];
  const patches = patchesBetween(before, files, names);
  const rest = goesOn ? text.past.slice(0, -1) : text.past;
  const step: Step = { words, patches, ...(together === undefined ? {} : { together }), at: now };
  return { ...text, files, past: patches.length > 0 ? kept([...rest, step]) : rest, future: [] };
};

/** Puts texts into the book as a step. What is the same already is none. */
export const put = stepped;

/** Typing: what is written without a longer pause is one step. */
export const typed = (text: OpenText, file: string, content: string, now: number): OpenText => {
  const last = text.past.at(-1);
  const words = `typing in ${file}`;
  const goesOn = last?.together?.startsWith(words) === true && now - last.at < PAUSE;
  return stepped(text, { [file]: content }, { words, together: goesOn ? last.together : `${words} ${now}`, now });
};

export const undone = (text: OpenText): OpenText => {
  const step = text.past.at(-1);
  if (!step) return text;
  return {
    ...text,
    files: backward(text.files, step),
    past: text.past.slice(0, -1),
    future: [...text.future, step],
  };
};

export const redone = (text: OpenText): OpenText => {
  const step = text.future.at(-1);
  if (!step) return text;
  return {
    ...text,
    files: forward(text.files, step),
    past: [...text.past, step],
    future: text.future.slice(0, -1),
  };
};

/** Takes back what was done under a mark, as if it had never been. */
export const takenBack = (text: OpenText, together: string): OpenText =>
  text.past.at(-1)?.together === together ? { ...undone(text), future: text.future } : text;

/** Takes over what stands on the disk, as a step. What was undone in other files can still be done again. */
const takenOver = (text: OpenText, parts: Parts, now: number): OpenText => {
  const next = stepped(text, parts, { words: `a change on the disk: ${Object.keys(parts).join(', ')}`, now });
  if (next === text) return next;
  const names = new Set(Object.keys(parts));
  return { ...next, future: text.future.some((step) => touches(step, names)) ? [] : text.future };
};

/** What is to be saved, noted as on its way; a file about which nobody has chosen yet stays here. Nothing when there is none. */
export const saveBegun = (
  text: OpenText,
): { readonly text: OpenText; readonly files: Files; readonly seen: Seen } | undefined => {
  const files = without(unsaved(text), Object.keys(text.conflict?.theirs ?? {}));
  if (Object.keys(files).length === 0) return undefined;
  return { text: { ...text, saving: files }, files, seen: text.seen };
};

const notSaving = ({ saving: _saving, ...text }: OpenText): OpenText => text;

/** The save came to nothing; what was on its way is unsaved as before. */
export const notSaved = notSaving;

/** The given texts were written to the disk. */
export const saved = (text: OpenText, files: Files, seen: Seen, now = 0): OpenText => {
  const { conflict, ...rest } = notSaving(text);
  // What others wrote meanwhile was written over ours: ours was checked against what had been seen.
  const later = Object.keys(files).filter((name) => conflict && Object.hasOwn(conflict.theirs, name));
  const base = { ...text.base, ...files };
  const next: OpenText = { ...rest, base, seen: { ...text.seen, ...seen } };
  if (!conflict) return next;
  // Where nothing more was written here since, that is no contest.
  const over = later.filter((name) => textIn(text.files, name) === textIn(files, name));
  const withConflict = { ...next, conflict };
  return over.length === 0
    ? withConflict
    : heard(withConflict, { files: only(conflict.theirs, over), seen: only(conflict.seen, over) }, now);
};

/**
 * Hears what stands on the disk now. Where nothing was changed here that is taken over, as a step; where something was, both
 * texts are kept until somebody chooses.
 */
export const heard = (text: OpenText, { files, seen }: FolderChange, now: number): OpenText => {
  const news = Object.entries(files)
    .map(([name, theirs]) => ({ name, theirs: theirs === null ? null : plain(theirs) }))
    .filter(({ name }) => (seen[name] ?? '') !== (text.seen[name] ?? '') || text.conflict?.theirs[name] !== undefined);
  const settles = ({ name, theirs }: (typeof news)[number]): 'take' | 'note' | 'ask' => {
    const [mine, before] = [textIn(text.files, name), textIn(text.base, name)];
    if (theirs === mine || theirs === before) return 'note';
    if (theirs !== null && theirs === textIn(text.saving ?? {}, name)) return 'note';
    // Without its main file there is no book: that it is gone is for somebody to decide.
    return mine === before && !(theirs === null && name === text.main) ? 'take' : 'ask';
  };
  const sorted = news.map((one) => ({ ...one, what: settles(one) }));
  const asked = sorted.filter(({ what }) => what === 'ask');
  const known = sorted.filter(({ what }) => what !== 'ask');
  const names = known.map(({ name }) => name);
  const partsOf = (list: typeof sorted): Parts => Object.fromEntries(list.map(({ name, theirs }) => [name, theirs]));
  const took = takenOver(text, partsOf(known.filter(({ what }) => what === 'take')), now);
  const { conflict: before, ...rest } = took;
  const theirs: Parts = { ...without(before?.theirs ?? {}, names), ...partsOf(asked) };
  const next: OpenText = {
    ...rest,
    base: withParts(text.base, partsOf(known)),
    seen: { ...without(text.seen, names), ...only(seen, names) },
  };
  if (Object.keys(theirs).length === 0) return next;
  const askedNames = asked.map(({ name }) => name);
  const conflictSeen = { ...without(before?.seen ?? {}, [...names, ...askedNames]), ...only(seen, askedNames) };
  return { ...next, conflict: { theirs, seen: conflictSeen } };
};

/**
 * Settles a conflict: `theirs` is taken over as a step, `mine` is saved over the disk's text next time. The text that was not
 * chosen is one step back. A main file that is gone cannot be chosen.
 */
export const settled = (
  text: OpenText,
  choices: Readonly<Record<string, 'mine' | 'theirs'>>,
  now: number,
): OpenText => {
  const { conflict, ...rest } = text;
  if (!conflict) return text;
  const names = Object.keys(conflict.theirs).filter(
    (name) =>
      choices[name] === 'mine' ||
      (choices[name] === 'theirs' && !(name === text.main && conflict.theirs[name] === null)),
  );
  if (names.length === 0) return text;
  const disk: Parts = only(conflict.theirs, names);
  const mine: Parts = Object.fromEntries(
    names.filter((name) => choices[name] === 'mine').map((name) => [name, textIn(text.files, name)]),
  );
  // A main file that is gone has no text to go through.
  const through = without(disk, disk[text.main] === null ? [text.main] : []);
  const looked = stepped(rest, through, { words: "taking the disk's text", now });
  const chosen = stepped(looked, mine, { words: "keeping the desk's text", now });
  const next: OpenText = {
    ...chosen,
    base: withParts(text.base, disk),
    seen: { ...without(text.seen, names), ...only(conflict.seen, names) },
  };
  const left = without(conflict.theirs, names);
  return Object.keys(left).length === 0
    ? next
    : { ...next, conflict: { theirs: left, seen: without(conflict.seen, names) } };
};
