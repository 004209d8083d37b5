/** Keeps the text of the open book: undo over everything, drafts, saving, and what others do to it on the disk. */
import { computed, effect, signal, type Signal } from '@preact/signals';
import type { BookText } from '../desk/engine.ts';
import { draftName, draftOf, wholeDraft, withDraft } from '../desk/draft.ts';
import type { Folder, OpenedBook } from '../desk/folder.ts';
import { without, type Files } from '../desk/steps.ts';
import type { KeptText, Notice } from './desk.ts';
import { draftsHere, type Drafts, type Kept, type Way } from './folders/drafts.ts';
import { holdersHere, type Holder, type Holders } from './folders/holders.ts';
import { claimed, keeperWith, leftIn, type Keeper, type KeptBody, type KeptState } from './folders/keeper.ts';
import {
  bookOf,
  heard,
  isUnsaved,
  notSaved,
  openText,
  put,
  redone,
  saveBegun,
  saved,
  settled,
  takenBack,
  typed,
  undone,
  type OpenText,
} from '../desk/session.ts';

/** A browser that does not say within this many milliseconds what it kept does not keep the book from being opened. */
const PATIENCE = 4000;

type Doing = 'saving' | 'lost' | 'refused' | undefined;

/** One book as it lies open, from when it is opened until nothing more is to come of it. */
interface Opening {
  readonly at: OpenedBook;
  readonly folder: Folder;
  readonly holder: Holder;
  readonly keeper: Keeper;
  readonly text: Signal<OpenText>;
  readonly doing: Signal<Doing>;
  readonly kept: Signal<KeptState>;
  /** The files that were handed to the browser's downloads. */
  readonly downloaded: Signal<Files | undefined>;
  /** The files that lie in another book by now. */
  moved: Files | undefined;
  /** A save that is on its way. */
  saving: Promise<void> | undefined;
}

interface Around {
  readonly say: (says: string, choices?: Notice['choices']) => () => void;
  readonly failed: (error: unknown) => void;
  readonly changed: (book: BookText, afresh: boolean) => void;
  /** Finds a place for a book that has none. */
  readonly saveAs: (book: BookText, name: string, folder: Folder) => Promise<void>;
  readonly drafts?: Drafts;
  readonly holders?: Holders;
  readonly patience?: number;
}

/** Of a book that was begun here there is no other copy that could be opened again. */
const BEGUN = 'begun ';
const liesNowhere = ({ canSave, id = '' }: OpenedBook): boolean => !canSave && id.startsWith(BEGUN);

const WHERE: Readonly<Record<Way['kind'], string>> = {
  demo: 'a demo',
  server: "a folder of the desk's server",
  folder: 'a folder of this machine',
  loose: 'nowhere but here',
};

/** What is kept of an open text so that nothing of it is lost; nothing when all of it lies elsewhere. */
const bodyOf = ({ at, text, moved }: Opening, way: Way): KeptBody | undefined => {
  const now = text.peek();
  if (now.files === moved) return undefined;
  const draft = liesNowhere(at) ? wholeDraft(now) : draftOf(now);
  if (!draft) return undefined;
  return { book: draftName(at), name: at.name, way, draft, rest: without(now.files, Object.keys(draft.files)) };
};

/** Whether a kept text is of this book. A folder of the disk has no name of its own, but the browser knows it again. */
const isOf = async (kept: Kept, at: OpenedBook, way: Way): Promise<boolean> => {
  if (way.kind !== 'folder' || kept.way.kind !== 'folder') return kept.book === draftName(at);
  return way.directory.isSameEntry(kept.way.directory).catch(() => false);
};

const isSame = (one: Files, other: Files): boolean => {
  const names = Object.keys(one);
  return names.length === Object.keys(other).length && names.every((name) => one[name] === other[name]);
};

export const keepingWith = ({ say, failed, changed, saveAs, patience = PATIENCE, ...around }: Around) => {
  const drafts = around.drafts ?? draftsHere();
  const holders = around.holders ?? holdersHere();
  const here = signal<Opening | undefined>(undefined);
  const opened = computed(() => here.value?.at);
  const text = computed(() => here.value?.text.value);
  const book = signal<BookText | undefined>(undefined);
  const conflictShown = signal(false);
  const left = signal<readonly Kept[]>([]);
  let stop = (): void => undefined;
  let unsayLost = (): void => undefined;
  let unsayRestored = (): void => undefined;
  let unsayChanged = (): void => undefined;

  const dirty = computed(() => text.value !== undefined && isUnsaved(text.value));
  /** Whether what lies open would be out of sight without lying anywhere. */
  const isLoose = computed(() => {
    const [one, now] = [here.value, text.value];
    if (!one || !now || one.downloaded.value === now.files || one.moved === now.files) return false;
    return dirty.value || liesNowhere(one.at);
  });

  /** Looks at what is kept and lies open nowhere. */
  const look = async (): Promise<void> => {
    left.value = await leftIn(drafts, holders).catch(() => []);
  };

  /** Everything that changes a text goes through here, also that of a book which lies open no more. */
  const become = (one: Opening, next: OpenText): void => {
    const before = one.text.peek();
    if (next === before) return;
    one.text.value = next;
    if (one.doing.peek() === 'refused' && next.files !== before.files) one.doing.value = undefined;
    if (one === here.peek() && next.files !== before.files) {
      book.value = bookOf(next);
      changed(book.value, false);
    }
    one.keeper.keep();
  };
  const alterAt = (one: Opening, change: (now: OpenText) => OpenText): void => become(one, change(one.text.peek()));
  const alter = (change: (now: OpenText) => OpenText): void => {
    const one = here.peek();
    if (one) alterAt(one, change);
  };

  const follow = (one: Opening): void => {
    stop();
    stop = one.folder.follow({
      changed: (change) => {
        const before = one.text.peek();
        alterAt(one, (now) => heard(now, change, Date.now()));
        const after = one.text.peek();
        if (after === before) return;
        if (after.conflict) conflictShown.value = true;
        else if (after.files !== before.files)
          unsayChanged = say(
            `The book was changed on the disk: ${Object.keys(change.files).join(', ')}. The desk shows the new text.`,
          );
      },
      lost: () => {
        one.doing.value = 'lost';
        unsayLost = say(
          'The server of this desk has ended. The text is kept here and in the browser; start it again, and save.',
          [],
        );
      },
      found: () => {
        unsayLost();
        if (one.doing.peek() === 'lost') one.doing.value = undefined;
      },
    });
  };

  const sayRestored = (one: Opening, before: Files): void => {
    if (one.text.peek().conflict) conflictShown.value = true;
    unsayRestored = say('Text that was not saved the last time was put back. It is not on the disk yet.', [
      { word: 'Keep it', run: () => undefined },
      {
        word: "Go back to the disk's text",
        run: () => alterAt(one, (now) => put(now, before, { words: 'going back to the disk', now: Date.now() })),
      },
    ]);
  };
  /** What was kept comes only now. It is put back where nobody has done anything yet, and stays kept where somebody has. */
  const restoreLate = async (one: Opening, fresh: OpenText, kept: Kept): Promise<void> => {
    if (one === here.peek() && one.text.peek() === fresh && one.keeper.goOn(kept.id)) {
      become(one, withDraft(fresh, kept.draft, Date.now()));
      if (one.text.peek() !== fresh) sayRestored(one, fresh.files);
      else one.keeper.keep();
      return;
    }
    await drafts.claim(kept.id, one.holder.id, '');
    await look();
    say(`Another text of ${kept.name} is kept that was not saved the last time. It is listed under Books.`);
  };

  /** Lets go of a book as soon as nothing more is to come of it, so that its draft can be taken up again. */
  const leave = async (one: Opening): Promise<void> => {
    await one.keeper.settled();
    one.holder.release();
  };

  /**
   * Lays a book. What of it was kept is put back; nothing of what is kept goes away before it was read.
   *
   * @param kept a certain text that was kept, in place of the latest of this book
   */
  const open = async (next: Folder, way: Way, kept?: Kept): Promise<void> => {
    const at = await next.open();
    const before = here.peek();
    const pause = (): Promise<'late'> => new Promise((resolve) => void setTimeout(resolve, patience, 'late'));
    const leaving = before && !before.saving ? leave(before) : undefined;
    if (leaving) await Promise.race([leaving, pause()]);
    const holder = holders.take();
    const fits = (one: Kept): boolean | Promise<boolean> =>
      kept ? one.id === kept.id : one.draft.main === at.book.main && isOf(one, at, way);
    const finding = claimed(drafts, holders, holder, fits).catch(() => undefined);
    const found = await Promise.race([finding, pause()]);
    const fresh = openText(at);
    const now = found && found !== 'late' ? withDraft(fresh, found.draft, Date.now()) : fresh;
    const state = signal<KeptState>('kept');
    const keeper = keeperWith(
      { drafts, holder, patience },
      () => bodyOf(one, way),
      (told) => {
        state.value = told;
      },
    );
    const one: Opening = {
      at,
      folder: next,
      holder,
      keeper,
      text: signal(now),
      doing: signal<Doing>(undefined),
      kept: state,
      downloaded: signal(undefined),
      moved: undefined,
      saving: undefined,
    };
    // Somebody may have opened yet another meanwhile, which then is left.
    const last = here.peek();
    unsayLost();
    unsayRestored();
    unsayChanged();
    here.value = one;
    conflictShown.value = false;
    book.value = bookOf(now);
    changed(book.value, true);
    if (found && found !== 'late') keeper.goOn(found.id);
    keeper.keep();
    follow(one);
    if (now !== fresh) sayRestored(one, fresh.files);
    if (found === 'late') void finding.then((late) => late && restoreLate(one, fresh, late)).catch(() => undefined);
    if (last && (last !== before || !leaving)) void (last.saving ?? Promise.resolve()).then(() => leave(last));
    void look();
  };

  const sayNotSaved = (one: Opening, says: string): void => {
    const away =
      one === here.peek() ? '' : ` The text of ${one.at.name} is kept by this browser; it is listed under Books.`;
    say(says + away);
  };
  /** Whatever lies open when the answer comes: it is about the book that was sent. */
  const store = async (one: Opening, sent: NonNullable<ReturnType<typeof saveBegun>>): Promise<void> => {
    const answer = await one.folder.save(sent.files, sent.seen);
    one.doing.value = undefined;
    if (answer.kind === 'saved') {
      alterAt(one, (now) => saved(now, sent.files, answer.seen, Date.now()));
      const now = here.peek();
      // The same book, opened anew meanwhile, has not been told of what this page itself saved.
      if (now && now !== one && draftName(now.at) === draftName(one.at))
        alterAt(now, (its) => heard(its, { files: sent.files, seen: answer.seen }, Date.now()));
      return;
    }
    alterAt(one, notSaved);
    if (answer.kind === 'conflict') {
      alterAt(one, (now) => heard(now, { files: answer.theirs, seen: answer.seen }, Date.now()));
      if (one !== here.peek()) sayNotSaved(one, `Not saved: ${one.at.name} was changed on the disk too.`);
    } else {
      one.doing.value = 'refused';
      sayNotSaved(one, `Not saved. ${answer.says}`);
    }
  };
  const send = async (one: Opening, sent: NonNullable<ReturnType<typeof saveBegun>>): Promise<void> => {
    try {
      await store(one, sent);
    } catch {
      alterAt(one, notSaved);
      one.doing.value = 'lost';
      if (one === here.peek()) {
        unsayLost();
        unsayLost = say(
          'Not saved: nothing answers. The text is kept here and in the browser; try again when it does.',
          [],
        );
      } else sayNotSaved(one, 'Not saved: nothing answers.');
    }
    one.saving = undefined;
    if (one === here.peek() && one.text.peek().conflict) conflictShown.value = true;
  };
  const save = async (): Promise<void> => {
    const one = here.peek();
    if (!one || one.doing.peek() === 'saving') return;
    const now = one.text.peek();
    if (!one.at.canSave) {
      await saveAs(bookOf(now), one.at.name, one.folder).catch(failed);
      return;
    }
    const sent = saveBegun(now);
    if (now.conflict) conflictShown.value = true;
    if (!sent) return;
    become(one, sent.text);
    one.doing.value = 'saving';
    one.saving = send(one, sent);
    await one.saving;
  };

  effect(() => {
    if (text.value && !text.value.conflict) conflictShown.value = false;
  });

  const saving = computed((): string => {
    const [one, now] = [here.value, text.value];
    if (!one || !now) return '';
    if (one.doing.value === 'saving') return 'saving …';
    if (now.conflict) return 'changed here and on the disk: choose';
    if (one.doing.value === 'lost') return dirty.value ? 'not saved: nothing answers; kept here' : 'nothing answers';
    if (!one.at.canSave && one.downloaded.value === now.files) return 'downloaded';
    if (!dirty.value && !liesNowhere(one.at)) return one.at.canSave ? 'saved' : 'as it came';
    if (one.kept.value === 'not kept') return 'not saved, and this browser keeps nothing';
    return one.at.canSave ? 'not saved; kept by the browser' : 'kept by this browser, not saved';
  });

  return {
    opened,
    book,
    open,
    write: (file: string, content: string): void => alter((now) => typed(now, file, content, Date.now())),
    take: (files: Readonly<Record<string, string>>, words: string, together?: string): void =>
      alter((now) => put(now, files, { words, together, now: Date.now() })),
    takeBack: (together: string): void => alter((now) => takenBack(now, together)),
    undo: (): void => alter(undone),
    redo: (): void => alter(redone),
    undoWords: computed(() => text.value?.past.at(-1)?.words),
    redoWords: computed(() => text.value?.future.at(-1)?.words),
    save,
    /** The text as it is was handed to the browser's downloads. */
    wasDownloaded: (files: Files): void => {
      const one = here.peek();
      if (one && isSame(one.text.peek().files, files)) one.downloaded.value = one.text.peek().files;
    },
    /** The text lies in another book now, unless it has changed since it was sent there. */
    wasMoved: (files: Files): void => {
      const one = here.peek();
      if (!one || !isSame(one.text.peek().files, files)) return;
      one.moved = one.text.peek().files;
      one.keeper.keep();
    },
    isLoose: (): boolean => here.peek() !== undefined && isLoose.peek(),
    /** Whether the browser has what is not saved. */
    isKept: (): boolean => here.peek()?.kept.peek() !== 'not kept',
    look,
    drafts: computed((): readonly KeptText[] =>
      left.value.map(({ id, name, at, way, book: its }) => ({
        id,
        name,
        at,
        where: its.startsWith(BEGUN) ? WHERE.loose : way.kind === 'loose' ? 'a file of this machine' : WHERE[way.kind],
      })),
    ),
    /** The latest text that is kept and fits. */
    keptOf: async (fits: (kept: Kept) => boolean): Promise<Kept | undefined> =>
      (await drafts.all()).filter(fits).toSorted((a, b) => b.at - a.at)[0],
    dropDraft: async (id: string): Promise<void> => {
      const kept = left.peek().find((one) => one.id === id);
      if (kept) await drafts.drop(id, kept.holder);
      await look();
    },
    canSave: computed(() =>
      opened.value?.canSave === true ? dirty.value && here.value?.doing.value !== 'saving' : true,
    ),
    saving,
    dirty,
    conflict: computed(() => text.value?.conflict),
    conflictShown,
    showConflict: (): void => {
      conflictShown.value = true;
    },
    settle: (choices: Readonly<Record<string, 'mine' | 'theirs'>>): void => {
      // What was said of the two texts before somebody chose is no longer so.
      unsayRestored();
      unsayChanged();
      alter((now) => settled(now, choices, Date.now()));
    },
    lookAway: (): void => {
      conflictShown.value = false;
    },
  };
};
