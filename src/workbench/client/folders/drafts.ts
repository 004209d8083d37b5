/** Unsaved text, kept by the browser until it is saved, so that a crash loses nothing. */
import { isDraft, type Draft } from '../../desk/draft.ts';
import type { BookText } from '../../desk/engine.ts';
import type { Files } from '../../desk/steps.ts';

const NAME = 'gantrybook';
const STORE = 'drafts';

/** A folder of the disk, as the browser hands it out. */
export interface Directory {
  readonly name: string;
  values: () => AsyncIterable<FileSystemHandle>;
  getFileHandle: (name: string, options?: { create?: boolean }) => Promise<FileSystemFileHandle>;
  isSameEntry: (other: Directory) => Promise<boolean>;
  /** Asks whoever sits there; not every browser does. */
  requestPermission?: (options: { mode: 'readwrite' }) => Promise<PermissionState>;
}

/** How a book is had again. */
export type Way =
  | { readonly kind: 'demo'; readonly name: string }
  | { readonly kind: 'server'; readonly name?: string | undefined }
  | { readonly kind: 'folder'; readonly directory: Directory }
  | { readonly kind: 'loose' };

/** One text that is not saved. Each opening of a book has its own, so that no page writes over another's. */
export interface Kept {
  readonly format: 2;
  readonly id: string;
  /** Which book, by the id that it was opened with. */
  readonly book: string;
  readonly name: string;
  /** Who writes it. */
  readonly holder: string;
  readonly at: number;
  readonly way: Way;
  readonly draft: Draft;
  /** The other files of the book, so that it can be shown where its place cannot be had. */
  readonly rest: Files;
}

export const wholeOf = ({ draft, rest }: Kept): BookText => ({
  main: draft.main,
  files: { ...rest, ...draft.files },
});

export interface Drafts {
  readonly all: () => Promise<readonly Kept[]>;
  /** False, and nothing is written, where the text of that id became another's. */
  readonly keep: (kept: Kept) => Promise<boolean>;
  /** Takes a text over from a holder; false where that has it no more. */
  readonly claim: (id: string, from: string, to: string) => Promise<boolean>;
  /** Takes a text away that a holder has; another's stays. */
  readonly drop: (id: string, holder: string) => Promise<void>;
}

const isKept = (value: unknown): value is Kept => {
  if (typeof value !== 'object' || value === null) return false;
  const { format, draft } = value as Partial<Record<keyof Kept, unknown>>;
  return format === 2 && isDraft(draft);
};

const opened = (): Promise<IDBDatabase> =>
  new Promise((resolve, reject) => {
    const request = indexedDB.open(NAME, 1);
    request.addEventListener('upgradeneeded', () => request.result.createObjectStore(STORE));
    request.addEventListener('success', () => resolve(request.result));
    request.addEventListener('error', () => reject(request.error ?? new Error('the browser keeps no drafts')));
  });

/** Drafts in the browser. Where it keeps nothing, as in a private window, each call is refused. */
export const draftsHere = (): Drafts => {
  let database: Promise<IDBDatabase> | undefined;
  const base = (): Promise<IDBDatabase> => {
    database ??= opened().catch((error: unknown) => {
      database = undefined;
      throw error;
    });
    return database;
  };
  // Begun at once: a book waits for its draft before it is shown.
  base().catch(() => undefined);

  /** Does one thing whole, and is done only when it is kept. */
  const run = async <R>(
    mode: IDBTransactionMode,
    nothing: R,
    work: (store: IDBObjectStore, give: (result: R) => void) => void,
  ): Promise<R> => {
    const transaction = (await base()).transaction(STORE, mode, { durability: 'relaxed' });
    return new Promise((resolve, reject) => {
      let result = nothing;
      transaction.addEventListener('complete', () => resolve(result));
      transaction.addEventListener('abort', () => reject(transaction.error ?? new Error('the draft was not kept')));
      work(transaction.objectStore(STORE), (given) => {
        result = given;
      });
    });
  };
  /** Looks at what stands under an id and goes on within the same step. */
  const looking = (id: string, work: (store: IDBObjectStore, there: Kept | undefined) => boolean): Promise<boolean> =>
    run('readwrite', false, (store, give) => {
      const request: IDBRequest<unknown> = store.get(id);
      request.addEventListener('success', () => give(work(store, isKept(request.result) ? request.result : undefined)));
    });

  return {
    all: () =>
      run<readonly Kept[]>('readonly', [], (store, give) => {
        const request: IDBRequest<unknown[]> = store.getAll();
        request.addEventListener('success', () => give(request.result.filter(isKept)));
      }),
    keep: (kept) =>
      looking(kept.id, (store, there) => {
        if (there && there.holder !== kept.holder) return false;
        store.put(kept, kept.id);
        return true;
      }),
    claim: (id, from, to) =>
      looking(id, (store, there) => {
        if (there?.holder !== from) return false;
        store.put({ ...there, holder: to }, id);
        return true;
      }),
    drop: async (id, holder) => {
      await looking(id, (store, there) => {
        if (there?.holder === holder) store.delete(id);
        return there?.holder === holder;
      });
    },
  };
};
