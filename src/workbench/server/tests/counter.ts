/** Adds one to a number in a book again and again, as a desk does that is told of conflicts. Run as a program of its own. */
import { save } from '../save.ts';
import { bookAt, textAt } from '../texts.ts';

const [folder = '', times = '0'] = process.argv.slice(2);
const at = bookAt(folder);

for (let done = 0; done < Number(times);) {
  const now = textAt(at, 'book.yaml');
  if (!now) throw new Error('the book is gone');
  const text = now.text.replace(/\d+/, (count) => String(Number(count) + 1));
  const saved = await save(at, { 'book.yaml': text }, { 'book.yaml': now.hash });
  if (saved.kind === 'refused') throw new Error(saved.says);
  if (saved.kind === 'saved') done += 1;
}
