import * as z from 'zod';
import { dimensionInfo } from '../kernel/index.ts';
import type { BenchTest } from './bench.ts';
import { nameOf, oneOf, quantity, told } from './schema.ts';

/** What the `*` of a test's path stands for, or the one entry that the path begins with. */
const subjectOf = (fact: string): z.ZodType => {
  const parts = fact.split('.');
  const last = parts.lastIndexOf('*');
  return last < 0
    ? oneOf([parts[0]!], { means: 'what was measured' })
    : nameOf(parts[last - 1]!, { means: 'what was measured', example: 'the name of an entry' });
};

/** The key `bench` of a book: what readings left of a fact that the book states otherwise. Nothing without tests. */
export const benchKey = (tests: readonly BenchTest[]): z.ZodType | undefined => {
  const words = tests.map(({ name }) => name);
  if (words.length === 0) return undefined;
  const options = tests.map(({ name, fact, of, title }) => {
    const end = (means: string) =>
      quantity(of, { range: 'exact', from: 0, means: `${means} ${title}`, example: dimensionInfo(of).examples[0]! });
    return z.strictObject({
      by: told(z.literal(name), { means: 'test at the bench', example: name, words, form: 'word' }),
      of: subjectOf(fact),
      least: end('the least that readings left of the'),
      most: end('the most that readings left of the'),
    });
  });
  return z.array(z.discriminatedUnion('by', options as [(typeof options)[0], ...typeof options]));
};
