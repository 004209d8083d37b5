/** A book's folder behind the server that gave this page. */
import type { BookText } from '../../desk/engine.ts';
import type { Folder, FolderChange, Made, OpenedBook, Saved, Seen } from '../../desk/folder.ts';

const json = (response: Response): boolean =>
  response.headers.get('content-type')?.startsWith('application/json') === true;

/** Tells this page from another one at the same server, which is not told of its own work. */
const page = crypto.getRandomValues(new Uint32Array(2)).join('-');

type Query = Readonly<Record<string, string | undefined>>;

const address = (name: string, query: Query = {}): string => {
  const url = new URL(name, document.baseURI);
  for (const [key, value] of Object.entries(query)) if (value !== undefined) url.searchParams.set(key, value);
  return url.href;
};

const ask = (where: string, options: RequestInit = {}): Promise<Response> =>
  fetch(where, { cache: 'no-store', redirect: 'error', ...options });

const send = (where: string, method: 'PUT' | 'POST', body: unknown): Promise<Response> =>
  ask(where, { method, headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) });

const make = async (name: string, book: BookText): Promise<Made> => {
  const response = await send(address('books'), 'POST', { name, files: book.files });
  return json(response) ? ((await response.json()) as Made) : refusal(response);
};

/** What to say of an answer that is none of those agreed upon. */
const refusal = async (response: Response): Promise<{ readonly kind: 'refused'; readonly says: string }> => {
  const says = json(response) ? '' : (await response.text()).trim();
  return { kind: 'refused', says: says || `The server answered with ${response.status}.` };
};

const openedAt = async (book: string | undefined): Promise<OpenedBook> => {
  const response = await ask(address('book', { book }));
  if (!response.ok || !json(response)) throw new Error((await refusal(response)).says);
  return (await response.json()) as OpenedBook;
};

/**
 * The folder of one book behind this page's server.
 * @param fetched the book, where it was just fetched
 */
export const serverFolder = (book: string | undefined, fetched?: OpenedBook): Folder => {
  let seen: Seen = {};
  let first = fetched;
  return {
    open: async () => {
      const known = first;
      first = undefined;
      const opened = known ?? (await openedAt(book));
      seen = opened.seen;
      return opened;
    },
    save: async (files, over): Promise<Saved> => {
      const response = await send(address('book', { book }), 'PUT', { files, seen: over, desk: page });
      if (!json(response)) return refusal(response);
      return (await response.json()) as Saved;
    },
    follow: ({ changed, lost, found }) => {
      let isLost = false;
      const events = new EventSource(address('changes', { book, desk: page, seen: JSON.stringify(seen) }));
      events.addEventListener('changed', ({ data }: MessageEvent<string>) => {
        changed(JSON.parse(data) as FolderChange);
      });
      events.addEventListener('error', () => {
        if (!isLost) lost();
        isLost = true;
      });
      events.addEventListener('open', () => {
        if (!isLost) return;
        isLost = false;
        // What happened meanwhile is told by the server, which compares with what the address says was seen.
        found();
      });
      return () => events.close();
    },
    make,
  };
};

/** What the page's own server has for it. */
export type Found =
  | { readonly kind: 'book'; readonly opened: OpenedBook }
  /** A server of desks on which no book lies; new ones are made in the folder of that name. */
  | { readonly kind: 'empty'; readonly newBooksIn: string | null }
  | { readonly kind: 'refused'; readonly says: string }
  /** A server of files only, or none any more. */
  | { readonly kind: 'files' };

/** Asks the server that gave this page whether it has a book for it. */
export const atTheServer = async (book: string | undefined): Promise<Found> => {
  try {
    const response = await ask(address('book', { book }));
    if (!json(response)) return { kind: 'files' };
    if (response.ok) return { kind: 'book', opened: (await response.json()) as OpenedBook };
    const said = (await response.json()) as {
      readonly kind: string;
      readonly says: string;
      readonly newBooksIn?: string;
    };
    if (said.kind === 'none') return { kind: 'empty', newBooksIn: said.newBooksIn ?? null };
    return { kind: 'refused', says: said.says };
  } catch {
    return { kind: 'files' };
  }
};

/** Makes a new book at the server, and the address by which it is opened. */
export const makeAtTheServer = make;
