/** Where the desk's books lie: a folder behind the loopback server, files that the browser opened, or the demos of a static page. */
import type { BookText } from './engine.ts';

/** What the folder held when it was read or saved: a hash for each file. */
export type Seen = Readonly<Record<string, string>>;

export interface OpenedBook {
  /** Name of the folder or file as a person knows it. */
  readonly name: string;
  readonly book: BookText;
  readonly seen: Seen;
  /** False for a demo, which is saved as another book. */
  readonly canSave: boolean;
}

export type Saved =
  | { readonly kind: 'saved'; readonly seen: Seen }
  /** Somebody else changed these files since they were seen; nothing was written. `theirs` is what stands there now. */
  | { readonly kind: 'conflict'; readonly theirs: Readonly<Record<string, string | null>>; readonly seen: Seen }
  | { readonly kind: 'refused'; readonly says: string };

/** What became of the book on the disk while it lay open. */
export interface FolderChange {
  readonly files: Readonly<Record<string, string | null>>;
  readonly seen: Seen;
}

export interface Folder {
  readonly open: () => Promise<OpenedBook>;
  /** Writes the given files, each whole or not at all, and only over what was seen. */
  readonly save: (files: Readonly<Record<string, string>>, seen: Seen) => Promise<Saved>;
  /** Tells of changes by others until stopped; `lost` when nothing more can be heard (the server ended), `found` when it is back. */
  readonly follow: (heard: {
    readonly changed: (change: FolderChange) => void;
    readonly lost: () => void;
    readonly found: () => void;
  }) => () => void;
}
