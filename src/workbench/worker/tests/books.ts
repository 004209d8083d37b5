import { readFileSync } from 'node:fs';
import type { BookText, LaidBook } from '../../desk/engine.ts';
import { engineFor } from '../engine.ts';

export const demo = (name: string): BookText => ({
  main: 'book.yaml',
  files: { 'book.yaml': readFileSync(new URL(`../../../../examples/${name}/book.yaml`, import.meta.url), 'utf8') },
});

export const bookOf = (text: string): BookText => ({ main: 'book.yaml', files: { 'book.yaml': text } });

/** The same book with one stretch of its text replaced, which must be there. */
export const changed = (book: BookText, from: string, to: string): BookText => {
  const text = book.files[book.main]!;
  if (!text.includes(from)) throw new Error(`the text has no ${from}`);
  return { ...book, files: { ...book.files, [book.main]: text.replace(from, to) } };
};

/** An engine with a book on it, at version 1. */
export const begin = async (book: BookText) => {
  const engine = engineFor({ turn: async () => {} });
  const laid = await engine.lay(book, 1);
  if (!laid?.ok) throw new Error(JSON.stringify(laid));
  return { engine, laid };
};

const begun = new Map<string, ReturnType<typeof begin>>();
/** The same with a demo, worked out once for all who only ask: nobody lays another book on it. */
export const beganDemo = (name: string): ReturnType<typeof begin> => {
  const known = begun.get(name) ?? begin(demo(name));
  begun.set(name, known);
  return known;
};

export const cardIn = ({ findings }: LaidBook, key: string) => {
  const card = findings.find((one) => one.key === key);
  if (!card) throw new Error(`no finding ${key}`);
  return card;
};
