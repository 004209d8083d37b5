/** What a browser and a disk do for the tests of what is kept: at once, late, or not at all. */
import type { Folder, FolderChange, OpenedBook, Saved, Seen } from '../../desk/folder.ts';
import type { Drafts, Kept } from '../folders/drafts.ts';
import type { Holders } from '../folders/holders.ts';

/** A promise that somebody else settles. */
export const later = <T>() => {
  let settle: { readonly resolve: (value: T) => void; readonly reject: (why: Error) => void } | undefined;
  const promise = new Promise<T>((resolve, reject) => {
    settle = { resolve, reject };
  });
  return { promise, resolve: (value: T) => settle?.resolve(value), reject: (why: Error) => settle?.reject(why) };
};

/** Lets everything go on that waits for nothing outside. */
export const calm = async (): Promise<void> => {
  for (let i = 0; i < 50; i++) await Promise.resolve();
};

/** Drafts that stay when a page goes, with a note of each thing that was done to them. */
export const memory = (first: readonly Kept[] = []) => {
  const store = new Map(first.map((kept) => [kept.id, kept]));
  const done: string[] = [];
  let before = (_what: 'all' | 'keep' | 'claim' | 'drop'): Promise<void> => Promise.resolve();
  const drafts: Drafts = {
    all: async () => {
      await before('all');
      return [...store.values()];
    },
    keep: async (kept) => {
      await before('keep');
      const there = store.get(kept.id);
      if (there && there.holder !== kept.holder) return false;
      done.push(`keep ${kept.id}`);
      store.set(kept.id, structuredClone(kept));
      return true;
    },
    claim: async (id, from, to) => {
      await before('claim');
      const there = store.get(id);
      if (there?.holder !== from) return false;
      store.set(id, { ...there, holder: to });
      return true;
    },
    drop: async (id, holder) => {
      await before('drop');
      if (store.get(id)?.holder !== holder) return;
      done.push(`drop ${id}`);
      store.delete(id);
    },
  };
  return {
    drafts,
    store,
    done,
    texts: (): readonly string[] => [...store.values()].flatMap(({ draft }) => Object.values(draft.files)),
    /** What happens before each call; what it throws is what the call says. */
    first: (work: typeof before): void => {
      before = work;
    },
  };
};

/** Holders of all pages of a browser. */
export const pages = () => {
  const there = new Set<string>();
  let count = 0;
  return {
    /** What one page has; `close` is what happens when it goes away or crashes. */
    page: () => {
      const own = new Set<string>();
      const holders: Holders = {
        take: () => {
          const id = `holder ${(count += 1)}`;
          own.add(id);
          there.add(id);
          return { id, ready: Promise.resolve(), release: () => there.delete(id) };
        },
        isGone: (id) => Promise.resolve(!there.has(id)),
      };
      return {
        holders,
        close: (): void => {
          for (const id of own) there.delete(id);
        },
      };
    },
  };
};

/**
 * A folder with one text, which a test can change and hold back the saving of.
 *
 * @param before what a save waits for
 */
export const folderOf = (
  id: string,
  text: string,
  options: Partial<OpenedBook> = {},
  before: () => Promise<void> = () => Promise.resolve(),
) => {
  const written: string[] = [];
  const disk = { text, count: 1 };
  const seen = (): Seen => (options.canSave === false ? {} : { 'book.yaml': `${id} ${disk.count}` });
  const sent: { readonly files: Readonly<Record<string, string>>; readonly seen: Seen }[] = [];
  let answer: (() => Promise<Saved>) | undefined;
  let tell: ((change: FolderChange) => void) | undefined;
  const folder: Folder = {
    open: () =>
      Promise.resolve({
        name: 'bench',
        id,
        book: { main: 'book.yaml', files: { 'book.yaml': disk.text } },
        seen: seen(),
        canSave: true,
        ...options,
      }),
    save: async (files, over) => {
      sent.push({ files, seen: over });
      if (answer) return answer();
      await before();
      if (over['book.yaml'] !== seen()['book.yaml'])
        return { kind: 'conflict', theirs: { 'book.yaml': disk.text }, seen: seen() };
      disk.text = files['book.yaml'] ?? disk.text;
      disk.count += 1;
      written.push(disk.text);
      return { kind: 'saved', seen: seen() };
    },
    follow: ({ changed }) => {
      tell = changed;
      return () => {
        tell = undefined;
      };
    },
  };
  return {
    folder,
    sent,
    disk,
    /** Every text that was saved, the last at the end. */
    written,
    answers: (next: () => Promise<Saved>): void => {
      answer = next;
    },
    /** Somebody else writes into it. */
    write: (other: string): void => {
      disk.text = other;
      disk.count += 1;
      tell?.({ files: { 'book.yaml': other }, seen: seen() });
    },
  };
};
