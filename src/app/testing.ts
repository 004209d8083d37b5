/** For tests of a trade: a book checked from its text. */
import type { Finding } from '../kernel/index.ts';
import { checkFiles, house, type House, type Machine } from './index.ts';

/**
 * The machine of a book, with every trade of the house.
 *
 * @param book text of `book.yaml`, or the texts of all files by name
 * @throws Error with every problem in its frame when the book cannot be read
 */
export const checkBook = (
  book: string | { readonly files: Readonly<Record<string, string>> },
  within: House = house,
): Machine => {
  const files = typeof book === 'string' ? { 'book.yaml': book } : book.files;
  const checked = checkFiles((name) => (Object.hasOwn(files, name) ? files[name] : undefined), 'book.yaml', within);
  if (!checked.ok)
    throw new Error(`The book cannot be read.\n\n${checked.problems.map(({ frame }) => frame).join('\n\n')}`);
  return checked.machine;
};

/**
 * The finding of that key.
 *
 * @throws RangeError naming the keys of the same code when there is none
 */
export const find = (machine: Pick<Machine, 'findings'>, key: string): Finding => {
  const found = machine.findings.find((finding) => finding.key === key);
  if (found) return found;
  const code = key.split(/[/@]/)[0] ?? key;
  const like = machine.findings.filter((finding) => finding.code === code).map((finding) => finding.key);
  throw new RangeError(
    `no finding has the key ${key}; ${like.length > 0 ? `there are ${like.join(', ')}` : `${code} asks nothing here`}`,
  );
};
