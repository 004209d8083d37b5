/** The books that lie on a desk: the one it was opened with, and those that were made at it. */
import { basename, join, resolve } from 'node:path';
import { Refused } from '../../pack/refused.ts';
import type { Made, OpenedBook, Saved, Seen } from '../desk/folder.ts';
import { following, type Follower, type Following } from './follow.ts';
import { makeBook } from './new-book.ts';
import { refusedBy, save, tidy, type Files } from './save.ts';
import { bookAt, hashOf, textsOf, type BookAt } from './texts.ts';

export interface DeskBook {
  readonly open: () => OpenedBook | { readonly kind: 'refused'; readonly says: string };
  /** @param desk which page saves: it is not told of its own work */
  readonly save: (files: Files, seen: Seen, desk: string) => Promise<Saved>;
  readonly follow: (desk: string, seen?: Seen) => Follower;
  readonly followers: () => number;
  readonly close: () => Promise<void>;
}

export interface Books {
  /** The book that was made under a name; without one, the book that the desk was opened with. */
  readonly get: (name: string | undefined) => DeskBook | undefined;
  readonly make: (name: string, files: Files) => Made;
  /** Name of the folder in which new books are made. */
  readonly newBooksIn: string | undefined;
  readonly followers: () => number;
  readonly close: () => Promise<void>;
}

const demo =
  'This is a demo, and stays as it is for whoever comes next. Save it as a new book, which is yours to change.';

const nameOf = ({ home, main }: BookAt): string =>
  main === 'book.yaml' ? basename(home) || home : `${basename(home)}/${main}`;

const bookOn = (at: BookAt, canSave: boolean): DeskBook => {
  const followed: Following = following(at);
  const desks = new Map<Follower, string>();
  return {
    open: () => {
      try {
        const texts = textsOf(at);
        if (!texts.has(at.main))
          return { kind: 'refused', says: `${at.main} is not in ${at.home} any more. Put it back and open it again.` };
        return {
          name: nameOf(at),
          id: hashOf(join(at.home, at.main)),
          book: { main: at.main, files: Object.fromEntries([...texts].map(([name, { text }]) => [name, text])) },
          seen: Object.fromEntries([...texts].map(([name, { hash }]) => [name, hash])),
          canSave,
        };
      } catch (error) {
        return refusedBy(error, 'The book cannot be read');
      }
    },
    save: async (files, seen, desk) => {
      if (!canSave) return { kind: 'refused', says: demo };
      const saved = await save(at, files, seen);
      if (saved.kind !== 'saved') return saved;
      for (const [follower, name] of desks) if (name === desk && desk !== '') follower.saved(saved.seen);
      followed.look();
      return saved;
    },
    follow: (desk, seen) => {
      const follower = followed.follow(seen);
      const counted: Follower = {
        ...follower,
        stop: () => {
          desks.delete(counted);
          follower.stop();
        },
      };
      desks.set(counted, desk);
      return counted;
    },
    followers: () => desks.size,
    close: followed.close,
  };
};

/**
 * Lays the books on a desk.
 *
 * @param opened the book that it is opened with; without one the desk begins empty
 * @param shelf folder in which new books are made
 * @param heard is told the name of each
 */
export const booksOn = async (
  opened: { readonly at: BookAt; readonly canSave: boolean } | undefined,
  shelf: string | undefined,
  heard: (name: string) => void = () => undefined,
): Promise<Books> => {
  if (opened?.canSave) await tidy(opened.at);
  const first = opened && bookOn(opened.at, opened.canSave);
  const made = new Map<string, DeskBook>();
  const all = (): readonly DeskBook[] => [...(first ? [first] : []), ...made.values()];
  return {
    get: (name) => (name === undefined || name === '' ? first : made.get(name)),
    make: (name, files) => {
      if (shelf === undefined) return { kind: 'refused', says: 'No new books are made at this desk.' };
      const result = makeBook(shelf, name, files);
      if (result.kind === 'made') {
        try {
          made.set(name, bookOn(bookAt(join(shelf, name)), true));
          heard(name);
        } catch (error) {
          if (!(error instanceof Refused)) throw error;
          return { kind: 'refused', says: error.message };
        }
      }
      return result;
    },
    newBooksIn: shelf === undefined ? undefined : basename(resolve(shelf)),
    followers: () => all().reduce((sum, book) => sum + book.followers(), 0),
    close: async () => {
      await Promise.all(all().map((book) => book.close()));
    },
  };
};
