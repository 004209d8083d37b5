/** The servers of this machine: the desk, and a made pack to look at. */
import { getRequestListener } from '@hono/node-server';
import { assetsIn } from './assets.ts';
import { booksOn } from './books.ts';
import { deskAnswers } from './desk.ts';
import { listen, type Served } from './listen.ts';
import { bookAt } from './texts.ts';

export { serve } from './pack.ts';
export type { Served } from './listen.ts';

export interface DeskOptions {
  /** Folder of the book to open; without one the desk begins with the first visit. */
  readonly folder?: string;
  /** Name of the file to begin with in that folder: `book.yaml` when nobody says. */
  readonly main?: string;
  /** False for a book that stays as it is, such as a demo. */
  readonly canSave?: boolean;
  /** Folder in which new books are made; without one none are. */
  readonly newBooksIn?: string;
  /** Hears of each new book. */
  readonly made?: (name: string) => void;
  /** Folder of the desk's built files. */
  readonly assets: string;
  /** The wished port; 0 for any. */
  readonly port: number;
}

/**
 * Serves the desk to this machine only.
 *
 * @throws Refused when the book or the desk's own files are not there; Error when no port is free
 */
export const serveDesk = async (options: DeskOptions): Promise<Served> => {
  const { folder, main, canSave = true, newBooksIn, made, assets, port: wished } = options;
  const files = assetsIn(assets);
  const opened = folder === undefined ? undefined : { at: bookAt(folder, main), canSave };
  const books = await booksOn(opened, newBooksIn, made);
  let own = 0;
  const answer = getRequestListener(deskAnswers(books, files, () => own).fetch, { overrideGlobalObjects: false });
  return listen(
    (request, response, port) => {
      own = port;
      void answer(request, response);
    },
    wished,
    books.close,
  );
};
