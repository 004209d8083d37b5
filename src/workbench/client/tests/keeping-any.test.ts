import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Way } from '../folders/drafts.ts';
import { keepingWith } from '../keeping.ts';
import { calm, folderOf, later, memory, pages } from './shelf.ts';

const server: Way = { kind: 'server' };

type Doing =
  | { readonly do: 'type' | 'save' | 'crash' | 'answer'; readonly page: number }
  | { readonly do: 'open'; readonly page: number; readonly book: number }
  | { readonly do: 'browser'; readonly fails: boolean };

const page = fc.nat(1);
const doings: fc.Arbitrary<readonly Doing[]> = fc.array(
  fc.oneof(
    { weight: 4, arbitrary: fc.record({ do: fc.constant('type' as const), page }) },
    fc.record({ do: fc.constantFrom('save' as const, 'crash' as const, 'answer' as const), page }),
    { weight: 2, arbitrary: fc.record({ do: fc.constant('open' as const), page, book: fc.nat(1) }) },
    fc.record({ do: fc.constant('browser' as const), fails: fc.boolean() }),
  ),
  { maxLength: 30 },
);

describe('whatever two pages do with two books', () => {
  it('each text that was typed last in an opening is kept or was written to the disk', async () => {
    await fc.assert(
      fc.asyncProperty(doings, async (all) => {
        const [shelf, browser] = [memory(), pages()];
        const waiting: (() => void)[] = [];
        const wait = (): Promise<void> => {
          const answered = later<undefined>();
          waiting.push(() => answered.resolve(undefined));
          return answered.promise;
        };
        const books = [folderOf('A', 'a', {}, wait), folderOf('B', 'b', {}, wait)];
        const fresh = () => {
          const own = browser.page();
          const keeping = keepingWith({
            say: () => () => undefined,
            failed: () => undefined,
            changed: () => undefined,
            saveAs: () => Promise.resolve(),
            drafts: shelf.drafts,
            holders: own.holders,
            patience: 60_000,
          });
          return { ...keeping, close: own.close };
        };
        const there = [fresh(), fresh()];
        const owed = new Set<string>();
        let count = 0;
        for (const one of all) {
          if (one.do === 'browser')
            shelf.first((what) =>
              one.fails && what === 'all' ? Promise.reject(new Error('made up')) : Promise.resolve(),
            );
          else if (one.do === 'open') await there[one.page]!.open(books[one.book]!.folder, server);
          else if (one.do === 'save') void there[one.page]!.save();
          else if (one.do === 'answer') waiting.shift()?.();
          else if (one.do === 'crash') {
            there[one.page]!.close();
            there[one.page] = fresh();
          } else {
            const before = there[one.page]!.book.peek()?.files['book.yaml'];
            if (before === undefined) continue;
            owed.delete(before);
            const text = `typed ${(count += 1)}`;
            there[one.page]!.write('book.yaml', text);
            owed.add(text);
          }
          await calm();
        }
        for (const go of waiting) go();
        await calm();
        const had = new Set([...books.flatMap(({ written }) => written), ...shelf.texts()]);
        expect([...owed].filter((text) => !had.has(text))).toEqual([]);
      }),
      { numRuns: 300 },
    );
  });
});
