/** The questions about readings that disagree with the book. */
import { atLeast, atMost, greatest, least, NotStated, showRange, type Value } from '../kernel/index.ts';
import { benchPaths, isEntries, type BenchTest } from './bench.ts';
import type { Check, Context, Subject } from './discipline.ts';

/** What readings left of a fact that the book states otherwise, as it stands in a book. */
interface BenchRecord {
  readonly by: string;
  readonly of: string;
  readonly least: Value;
  readonly most: Value;
}

const isValue = (x: unknown): x is Value => isEntries(x) && typeof x['number'] === 'number' && 'origin' in x;

/** The fact of a record in a seen book, and its path. */
const factOf = (book: unknown, test: BenchTest, name: string): { readonly path: string; readonly value?: Value } => {
  const match = benchPaths(book, test.fact).find((one) => one.name === name);
  const keys = match?.keys ?? test.fact.split('.').map((part) => (part === '*' ? name : part));
  const value = match?.keys.reduce<unknown>((here, key) => (isEntries(here) ? here[key] : undefined), book);
  return { path: keys.join('.'), ...(isValue(value) ? { value } : {}) };
};

const recordsOf = (book: unknown): readonly BenchRecord[] =>
  (book as { readonly bench?: readonly BenchRecord[] }).bench ?? [];

/**
 * Two questions of a trade about readings that the book keeps because they disagree with a fact or with each other: whether
 * the fact is above what they left, and whether it is below.
 *
 * @param codes of the two, in the trade's own count
 */
export const benchChecks = <B>(
  tests: readonly BenchTest[],
  codes: { readonly above: string; readonly below: string },
): readonly Check<B>[] => {
  const named = new Map(tests.map((test) => [test.name, test]));
  const subjects = (book: unknown): readonly Subject[] => {
    const found = new Map<string, Subject>();
    recordsOf(book).forEach(({ by, of }, i) => {
      const key = JSON.stringify([of, by]);
      if (named.has(by) && !found.has(key)) found.set(key, { designations: [of, by], at: `bench.${i}` });
    });
    return [...found.values()];
  };
  const gathered = ({ book }: Context<B>, { designations: [of, by] }: Subject) => {
    const records = recordsOf(book).filter((record) => record.of === of && record.by === by);
    const test = named.get(by!)!;
    const { path, value } = factOf(book, test, of!);
    const low = greatest(...records.map((record) => record.least));
    const high = least(...records.map((record) => record.most));
    const text = showRange(low.number, high.number, test.of, undefined, { figures: 8, ascii: true });
    return {
      low,
      high,
      what: `${test.title} of ${of}`,
      fact: (): Value => {
        if (value === undefined) throw new NotStated([path]);
        return value;
      },
      levers: [
        {
          set: [{ path, text: `{ is: ${text}, from: measured }` }],
          means: 'take what the readings left, if they are good',
        },
      ],
    };
  };
  return [
    {
      code: codes.above,
      asks: 'Is a fact at most what readings at the bench left of it?',
      subjects,
      run: (context, subject) => {
        const { low, high, what, fact, levers } = gathered(context, subject);
        // Whatever the fact is, readings that leave it no room contradict each other.
        if (!(low.number <= high.number))
          return atMost(low, high, {
            says: ({ demand, limit }) =>
              `Readings contradict each other about ${what}: one leaves at least ${demand}, another at most ${limit}. Measure again, then take the bad ones out of the book.`,
          });
        return atMost(fact(), high, {
          says: ({ demand, limit, verdict }) =>
            verdict === 'holds'
              ? `The book has ${demand} for ${what}; readings left at most ${limit}.`
              : `The book has up to ${demand} for ${what}, but readings left at most ${limit}: one of the two is wrong.`,
          levers,
        });
      },
    },
    {
      code: codes.below,
      asks: 'Is a fact at least what readings at the bench left of it?',
      subjects,
      run: (context, subject) => {
        const { low, high, what, fact, levers } = gathered(context, subject);
        // Said by the other question.
        if (!(low.number <= high.number)) return null;
        return atLeast(fact(), low, {
          says: ({ demand, limit, verdict }) =>
            verdict === 'holds'
              ? `The book has ${demand} for ${what}; readings left at least ${limit}.`
              : `The book has as little as ${demand} for ${what}, but readings left at least ${limit}: one of the two is wrong.`,
          levers,
        });
      },
    },
  ];
};
