/** Keeps one open text among the drafts, and finds what was kept of a book before. */
import type { Drafts, Kept } from './drafts.ts';
import { randomId, type Holder, type Holders } from './holders.ts';

/** What is kept of a text, without what the keeper adds. */
export type KeptBody = Pick<Kept, 'book' | 'name' | 'way' | 'draft' | 'rest'>;

/** How it stands with what the browser was last given. */
export type KeptState = 'kept' | 'not kept';

export interface Keeper {
  /** The text has changed; what changes while it is written is written next. */
  readonly keep: () => void;
  /** When everything so far is written, or was refused. */
  readonly settled: () => Promise<void>;
  /** Goes on with a text that was claimed for this holder; false where it has one of its own by now. */
  readonly goOn: (id: string) => boolean;
}

/**
 * @param body what is to be kept now; nothing when all is saved
 * @param told how it went; a browser that says nothing for that long keeps nothing as far as anyone knows
 */
export const keeperWith = (
  { drafts, holder, patience }: { readonly drafts: Drafts; readonly holder: Holder; readonly patience: number },
  body: () => KeptBody | undefined,
  told: (state: KeptState) => void,
): Keeper => {
  let id = randomId();
  let isThere = false;
  let isStale = false;
  let working: Promise<void> | undefined;

  const written = async (): Promise<void> => {
    await holder.ready;
    const now = body();
    if (!now) {
      if (isThere) await drafts.drop(id, holder.id);
      isThere = false;
      return;
    }
    const kept = (): Kept => ({ format: 2, id, holder: holder.id, at: Date.now(), ...now });
    if (!(await drafts.keep(kept()))) {
      // A page that was taken for gone finds its text with another, and keeps its own beside.
      id = randomId();
      await drafts.keep(kept());
    }
    isThere = true;
  };
  const work = async (): Promise<void> => {
    while (isStale) {
      isStale = false;
      const late = setTimeout(() => told('not kept'), patience);
      // A browser that keeps nothing, as in a private window, is no trouble as long as nothing crashes.
      const state = await written().then(
        (): KeptState => 'kept',
        (): KeptState => 'not kept',
      );
      clearTimeout(late);
      told(state);
    }
    working = undefined;
  };
  return {
    keep: () => {
      isStale = true;
      working ??= work();
    },
    settled: async () => {
      while (working) await working;
    },
    goOn: (claimed) => {
      if (isThere || working) return false;
      id = claimed;
      isThere = true;
      return true;
    },
  };
};

const latestFirst = (all: readonly Kept[]): readonly Kept[] => all.toSorted((a, b) => b.at - a.at);

/** What is kept and lies open nowhere, the latest first. */
export const leftIn = async (drafts: Drafts, holders: Holders): Promise<readonly Kept[]> => {
  const all = latestFirst(await drafts.all());
  const gone = await Promise.all(all.map(({ holder }) => holders.isGone(holder)));
  return all.filter((_, i) => gone[i]);
};

/** Takes over the latest text that fits and lies open nowhere. */
export const claimed = async (
  drafts: Drafts,
  holders: Holders,
  holder: Holder,
  fits: (kept: Kept) => boolean | Promise<boolean>,
): Promise<Kept | undefined> => {
  for (const kept of latestFirst(await drafts.all())) {
    if (!(await fits(kept)) || !(await holders.isGone(kept.holder))) continue;
    await holder.ready;
    if (await drafts.claim(kept.id, kept.holder, holder.id)) return kept;
  }
  return undefined;
};
