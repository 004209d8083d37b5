/** A page of the desk as far as it keeps texts, for tests. */
import type { Notice } from '../desk.ts';
import type { Kept, Way } from '../folders/drafts.ts';
import { keepingWith } from '../keeping.ts';
import { pages, type memory } from './shelf.ts';

export const server: Way = { kind: 'server' };
export const loose: Way = { kind: 'loose' };
export const PATIENCE = 4000;

/** A text that a page left behind. */
export const kept = (id: string, text: string, more: Partial<Kept> = {}): Kept => ({
  format: 2,
  id,
  book: 'A',
  name: 'bench',
  holder: 'gone',
  at: 1,
  way: server,
  draft: { format: 1, main: 'book.yaml', files: { 'book.yaml': text }, seen: { 'book.yaml': 'A 1' } },
  rest: {},
  ...more,
});

/** A page with a browser's shelf. */
export const pageOn = (shelf: ReturnType<typeof memory>, browser = pages()) => {
  const said: Notice[] = [];
  const page = browser.page();
  const keeping = keepingWith({
    say: (says, choices = []) => {
      const notice = { says, choices };
      said.push(notice);
      return () => void (said.includes(notice) && said.splice(said.indexOf(notice), 1));
    },
    failed: (error) => {
      throw error;
    },
    changed: () => undefined,
    saveAs: () => Promise.resolve(),
    drafts: shelf.drafts,
    holders: page.holders,
    patience: PATIENCE,
  });
  return {
    ...keeping,
    said,
    close: page.close,
    shown: () => keeping.book.value?.files['book.yaml'],
    type: (text: string) => keeping.write('book.yaml', text),
  };
};
