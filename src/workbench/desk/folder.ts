/** Where the desk's books lie: a folder behind the loopback server, files that the browser opened, or the demos of a static page. */
import type { BookText } from './engine.ts';

/** A hash for each of some files as they stood when they were read or saved. Other files may be there too. */
export type Seen = Readonly<Record<string, string>>;

export interface OpenedBook {
  /** Name of the folder or file as a person knows it. */
  readonly name: string;
  /** Tells books of the same name apart, and is the same each time the book is opened: what is kept for it goes by this. */
  readonly id?: string;
  readonly book: BookText;
  readonly seen: Seen;
  /** False for a demo, which is saved as another book. */
  readonly canSave: boolean;
}

export type Saved =
  /** `seen` has the saved files; the hashes of others stay what they were. */
  | { readonly kind: 'saved'; readonly seen: Seen }
  /**
   * Somebody else changed these files since they were seen; nothing was written. `theirs` is what stands there now, null where
   * nothing does; `seen` has the hashes of exactly these, so that to save over them on purpose is to save once more with it.
   */
  | { readonly kind: 'conflict'; readonly theirs: Readonly<Record<string, string | null>>; readonly seen: Seen }
  | { readonly kind: 'refused'; readonly says: string };

/**
 * What became of the book on the disk while it lay open: the files that are other than they were, null where one is gone, and the
 * hashes of those that are there. A file may be told again that is known already; by its hash it is no news.
 */
export interface FolderChange {
  readonly files: Readonly<Record<string, string | null>>;
  readonly seen: Seen;
}

export type Made =
  /** `name` is what the new book is opened by. */
  { readonly kind: 'made'; readonly name: string } | { readonly kind: 'refused'; readonly says: string };

export interface Folder {
  readonly open: () => Promise<OpenedBook>;
  /** Writes the given files, each whole or not at all, and only over what was seen; one not in `seen` must not be there. */
  readonly save: (files: Readonly<Record<string, string>>, seen: Seen) => Promise<Saved>;
  /** Tells of changes by others until stopped; `lost` when nothing more can be heard (the server ended), `found` when it is back. */
  readonly follow: (heard: {
    readonly changed: (change: FolderChange) => void;
    readonly lost: () => void;
    readonly found: () => void;
  }) => () => void;
  /** Makes a new book beside, and leaves this one as it is. Absent where there is no place for one. */
  readonly make?: (name: string, book: BookText) => Promise<Made>;
}

const BOM = '\ufeff';

/**
 * The text as it is saved over another: with the mark at its beginning and the line ends that the other has, where those are all
 * alike and an editor dropped them.
 */
export const withEndsOf = (before: string, text: string): string => {
  const marked = before.startsWith(BOM) && !text.startsWith(BOM) ? BOM + text : text;
  const wasWindows = before.includes('\r\n') && !/(^|[^\r])\n/.test(before);
  return wasWindows && !text.includes('\r') ? marked.replaceAll('\n', '\r\n') : marked;
};
