/** Keeps the text of the open book: undo over everything, drafts, saving, and what others do to it on the disk. */
import { computed, effect, signal } from '@preact/signals';
import type { BookText } from '../desk/engine.ts';
import { draftName, draftOf, withDraft, type Draft } from '../desk/draft.ts';
import type { Folder, OpenedBook } from '../desk/folder.ts';
import type { Notice } from './desk.ts';
import { draftsIn } from './folders/drafts.ts';
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

const pause = (time: number): Promise<undefined> => new Promise((resolve) => void setTimeout(resolve, time, undefined));

type Doing = 'saving' | 'lost' | 'refused' | undefined;

interface Around {
  readonly say: (says: string, choices?: Notice['choices']) => () => void;
  readonly failed: (error: unknown) => void;
  readonly changed: (book: BookText, afresh: boolean) => void;
  /** Finds a place for a book that has none. */
  readonly saveAs: (book: BookText, name: string, folder: Folder) => Promise<void>;
}

export const drafts = draftsIn<Draft>();

/** Of a book that was begun or opened here there is no other copy that could be opened again. */
const liesNowhere = ({ canSave, seen, id = '' }: OpenedBook): boolean =>
  !canSave && Object.keys(seen).length === 0 && !id.startsWith('demo ');

export const keepingWith = ({ say, failed, changed, saveAs }: Around) => {
  const opened = signal<OpenedBook | undefined>(undefined);
  const text = signal<OpenText | undefined>(undefined);
  const book = signal<BookText | undefined>(undefined);
  const doing = signal<Doing>(undefined);
  const conflictShown = signal(false);
  const downloaded = signal<BookText['files'] | undefined>(undefined);
  let folder: Folder | undefined;
  let stop = (): void => undefined;
  let unsayLost = (): void => undefined;

  const dirty = computed(() => text.value !== undefined && isUnsaved(text.value));

  /** Keeps what is not saved at once; what changes while that is written is written next. */
  let keeping: Promise<void> | undefined;
  let isStale = false;
  const written = async (): Promise<void> => {
    const [at, now] = [opened.peek(), text.peek()];
    if (!at || !now) return;
    const draft = liesNowhere(at) ? { format: 1 as const, ...bookOf(now), seen: {} } : draftOf(now);
    if (draft) await drafts.keep(draftName(at), draft);
    else await drafts.drop(draftName(at));
  };
  const keepDraft = (): void => {
    isStale = true;
    const work = async (): Promise<void> => {
      while (isStale) {
        isStale = false;
        // A browser that keeps nothing, as in a private window, is no trouble as long as nothing crashes.
        await written().catch(() => undefined);
      }
      keeping = undefined;
    };
    keeping ??= work();
  };

  /** Everything that changes the text goes through here. */
  const become = (next: OpenText): void => {
    const before = text.peek();
    if (next === before) return;
    text.value = next;
    if (next.files !== before?.files) {
      book.value = bookOf(next);
      changed(book.value, before === undefined);
      doing.value = doing.peek() === 'refused' ? undefined : doing.peek();
    }
    keepDraft();
  };
  const alter = (change: (now: OpenText) => OpenText): void => {
    const now = text.peek();
    if (now) become(change(now));
  };

  const followed = (): void => {
    stop();
    stop =
      folder?.follow({
        changed: (change) => {
          const before = text.peek();
          alter((now) => heard(now, change, Date.now()));
          const after = text.peek();
          if (!after || after === before) return;
          if (after.conflict) conflictShown.value = true;
          else if (after.files !== before?.files)
            say(
              `The book was changed on the disk: ${Object.keys(change.files).join(', ')}. The desk shows the new text.`,
            );
        },
        lost: () => {
          doing.value = 'lost';
          unsayLost = say(
            'The server of this desk has ended. The text is kept here and in the browser; start it again, and save.',
            [],
          );
        },
        found: () => {
          unsayLost();
          if (doing.peek() === 'lost') doing.value = undefined;
        },
      }) ?? ((): void => undefined);
  };

  const restore = (draft: unknown): void => {
    const now = text.peek();
    if (!now) return;
    const again = withDraft(now, draft, Date.now());
    if (again === now) return;
    become(again);
    if (again.conflict) conflictShown.value = true;
    say('Text that was not saved the last time was put back. It is not on the disk yet.', [
      { word: 'Keep it', run: () => undefined },
      {
        word: "Go back to the disk's text",
        run: () => alter((one) => put(one, now.files, { words: 'going back to the disk', now: Date.now() })),
      },
    ]);
  };

  const open = async (next: Folder): Promise<void> => {
    const at = await next.open();
    await keeping;
    const draft = await Promise.race([drafts.read(draftName(at)).catch(() => undefined), pause(PATIENCE)]);
    stop();
    folder = next;
    opened.value = at;
    text.value = undefined;
    doing.value = undefined;
    conflictShown.value = false;
    become(openText(at));
    followed();
    if (draft) restore(draft);
  };

  const store = async (at: Folder, sent: NonNullable<ReturnType<typeof saveBegun>>): Promise<void> => {
    const answer = await at.save(sent.files, sent.seen);
    doing.value = undefined;
    if (answer.kind === 'saved') {
      alter((now) => saved(now, sent.files, answer.seen, Date.now()));
      keepDraft();
      return;
    }
    alter(notSaved);
    if (answer.kind === 'conflict') alter((now) => heard(now, { files: answer.theirs, seen: answer.seen }, Date.now()));
    else {
      doing.value = 'refused';
      say(`Not saved. ${answer.says}`);
    }
  };
  const save = async (): Promise<void> => {
    const [now, at] = [text.peek(), opened.peek()];
    if (!now || !at || !folder || doing.peek() === 'saving') return;
    if (!at.canSave) {
      await saveAs(bookOf(now), at.name, folder).catch(failed);
      return;
    }
    const sent = saveBegun(now);
    if (now.conflict) conflictShown.value = true;
    if (!sent) return;
    become(sent.text);
    doing.value = 'saving';
    try {
      await store(folder, sent);
    } catch {
      alter(notSaved);
      doing.value = 'lost';
      unsayLost();
      unsayLost = say(
        'Not saved: nothing answers. The text is kept here and in the browser; try again when it does.',
        [],
      );
    }
    if (text.peek()?.conflict) conflictShown.value = true;
  };

  effect(() => {
    if (text.value && !text.value.conflict) conflictShown.value = false;
  });

  const saving = computed((): string => {
    const [now, at] = [text.value, opened.value];
    if (!now || !at) return '';
    if (doing.value === 'saving') return 'saving …';
    if (now.conflict) return 'changed here and on the disk: choose';
    if (doing.value === 'lost') return dirty.value ? 'not saved: nothing answers; kept here' : 'nothing answers';
    if (!at.canSave)
      return downloaded.value === now.files
        ? 'downloaded'
        : dirty.value
          ? 'changed; lies nowhere but here'
          : 'as it came';
    return dirty.value ? 'not saved; kept by the browser' : 'saved';
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
    wasDownloaded: (): void => {
      downloaded.value = text.peek()?.files;
    },
    canSave: computed(() => (opened.value?.canSave === true ? dirty.value && doing.value !== 'saving' : true)),
    saving,
    dirty,
    conflict: computed(() => text.value?.conflict),
    conflictShown,
    showConflict: (): void => {
      conflictShown.value = true;
    },
    settle: (choices: Readonly<Record<string, 'mine' | 'theirs'>>): void =>
      alter((now) => settled(now, choices, Date.now())),
    lookAway: (): void => {
      conflictShown.value = false;
    },
  };
};
