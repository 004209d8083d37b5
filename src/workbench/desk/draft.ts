/** Unsaved text as it is kept for the next time, so that a crash loses nothing. */
import type { OpenedBook, Seen } from './folder.ts';
import { put, unsaved, type OpenText } from './session.ts';
import { only, textIn, without, type Files, type Parts } from './steps.ts';

/** Plain data. A disk that is still as it was seen has what the text was written over, so that it need not be kept as well. */
export interface Draft {
  readonly format: 1;
  readonly main: string;
  /** The unsaved files, whole. */
  readonly files: Files;
  /** What the disk held when they were written. */
  readonly seen: Seen;
}

/** A book takes in no more files; a page holds a text beyond what a book may have, which then cannot be saved. */
const MOST_FILES = 64;
const MOST_LETTERS = 16 * 1024 * 1024;

/** What is kept of a text that lies nowhere: all of it, over nothing. */
export const wholeDraft = ({ main, files }: Pick<OpenText, 'main' | 'files'>): Draft => ({
  format: 1,
  main,
  files,
  seen: {},
});

/** Nothing when everything is on the disk. */
export const draftOf = (text: OpenText): Draft | undefined => {
  const files = unsaved(text);
  const names = Object.keys(files);
  if (names.length === 0) return undefined;
  return { format: 1, main: text.main, files, seen: only(text.seen, names) };
};

const isTexts = (value: unknown): value is Readonly<Record<string, string>> =>
  typeof value === 'object' &&
  value !== null &&
  !Array.isArray(value) &&
  Object.values(value).every((one) => typeof one === 'string');

export const isDraft = (value: unknown): value is Draft => {
  if (typeof value !== 'object' || value === null) return false;
  const { format, main, files, seen } = value as Partial<Record<keyof Draft, unknown>>;
  return (
    format === 1 &&
    typeof main === 'string' &&
    isTexts(files) &&
    isTexts(seen) &&
    Object.keys(files).length <= MOST_FILES &&
    Object.values(files).every((text) => text.length <= MOST_LETTERS)
  );
};

/**
 * The opened book with the draft in it, as steps that can be undone. Where the disk has changed since, both texts stand
 * against each other until somebody chooses.
 *
 * @param draft whatever was kept; what is no draft of this book is left alone
 */
export const withDraft = (text: OpenText, draft: unknown, now: number): OpenText => {
  if (!isDraft(draft) || draft.main !== text.main) return text;
  const names = Object.keys(draft.files).filter((name) => textIn(text.files, name) !== draft.files[name]);
  if (names.length === 0) return text;
  const isMoved = (name: string): boolean => (draft.seen[name] ?? '') !== (text.seen[name] ?? '');
  const moved = names.filter(isMoved);
  const words = { words: 'what was kept from before', now };
  const back = put(text, Object.fromEntries(names.map((name) => [name, draft.files[name]!])), words);
  const theirs: Parts = Object.fromEntries(
    moved.flatMap((name) => (Object.hasOwn(text.files, name) ? [[name, text.files[name]!]] : [])),
  );
  if (Object.keys(theirs).length === 0) return back;
  return {
    ...back,
    // What they were written over is not known any more.
    base: without(back.base, moved),
    seen: { ...without(text.seen, moved), ...only(draft.seen, moved) },
    conflict: { theirs, seen: only(text.seen, moved) },
  };
};

/** By what the drafts of a book are kept apart from those of another. */
export const draftName = ({ id, name }: Pick<OpenedBook, 'id' | 'name'>): string => id ?? name;
