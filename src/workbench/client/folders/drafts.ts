/** Unsaved text, kept by the browser until it is saved, so that a crash loses nothing. */
const NAME = 'gantrybook';
const STORE = 'drafts';

export interface Drafts<T> {
  readonly read: (id: string) => Promise<T | undefined>;
  readonly keep: (id: string, draft: T) => Promise<void>;
  readonly drop: (id: string) => Promise<void>;
}

const opened = (): Promise<IDBDatabase> =>
  new Promise((resolve, reject) => {
    const request = indexedDB.open(NAME, 1);
    request.addEventListener('upgradeneeded', () => request.result.createObjectStore(STORE));
    request.addEventListener('success', () => resolve(request.result));
    request.addEventListener('error', () => reject(request.error ?? new Error('the browser keeps no drafts')));
  });

/** Drafts by the id of their book. Where the browser keeps nothing, as in a private window, neither do these. */
export const draftsIn = <T>(): Drafts<T> => {
  // Begun at once: a book waits for its draft before it is shown.
  const database = opened();
  database.catch(() => undefined);
  const run = async <R>(mode: IDBTransactionMode, work: (store: IDBObjectStore) => IDBRequest<R>): Promise<R> => {
    const base = await database;
    return new Promise((resolve, reject) => {
      const request = work(base.transaction(STORE, mode, { durability: 'relaxed' }).objectStore(STORE));
      request.addEventListener('success', () => resolve(request.result));
      request.addEventListener('error', () => reject(request.error ?? new Error('the draft was not kept')));
    });
  };
  return {
    read: (id) => run('readonly', (store) => store.get(id) as IDBRequest<T | undefined>),
    keep: async (id, draft) => {
      await run('readwrite', (store) => store.put(draft, id));
    },
    drop: async (id) => {
      await run('readwrite', (store) => store.delete(id));
    },
  };
};
