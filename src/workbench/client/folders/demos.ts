/** The demo books that come with the page. */
import type { BookText } from '../../desk/engine.ts';
import type { Folder } from '../../desk/folder.ts';

export interface Demo {
  readonly name: string;
  readonly title: string;
  readonly revision: string;
  readonly about: string;
}

const fetched = async (name: string): Promise<unknown> => {
  const response = await fetch(new URL(`books/${name}.json`, document.baseURI));
  if (!response.ok) throw new Error(`The book "${name}" is not there: the server answered with ${response.status}.`);
  return response.json();
};

export const demos = async (): Promise<readonly Demo[]> => (await fetched('index')) as readonly Demo[];

/** A text that nobody else can change: a demo, or a book begun in this page. It is saved as another book. */
export const looseFolder = (name: string, id: string, book: BookText | (() => Promise<BookText>)): Folder => ({
  open: async () => ({
    name,
    id,
    book: typeof book === 'function' ? await book() : book,
    seen: {},
    canSave: false,
  }),
  save: () => Promise.resolve({ kind: 'refused', says: 'This book lies nowhere yet: save it as a book of your own.' }),
  follow: () => () => undefined,
});

export const demoFolder = (name: string): Folder =>
  looseFolder(name, `demo ${name}`, async () => (await fetched(name)) as BookText);
