/** Taking hold of a number on the sheet: each change is spliced into the text, and all of one hold is one thing to undo. */
import { signal, type ReadonlySignal } from '@preact/signals';
import type { Engine, Trial } from '../desk/engine.ts';
import type { Edit } from '../../kernel/index.ts';
import type { Held } from './desk.ts';
import { turned } from './turn.ts';

/** Rest after typing in the field, in milliseconds, before what stands there is put into the book. */
const REST = 250;

export interface Holding {
  readonly held: ReadonlySignal<Held | undefined>;
  readonly hold: (element: HTMLElement) => void;
  readonly turn: (steps: number) => void;
  readonly hand: (text: string) => void;
  readonly letGo: (keep: boolean) => void;
}

interface Around {
  readonly engine: Engine;
  readonly settled: () => Promise<number | undefined>;
  readonly tried: (edits: readonly Edit[]) => Promise<Trial | undefined>;
  /** Puts files into the book; what has the same `together` is undone at once. */
  readonly take: (files: Readonly<Record<string, string>>, words: string, together: string) => void;
  readonly takeBack: (together: string) => void;
  readonly jump: (path: string) => Promise<void>;
  readonly failed: (error: unknown) => void;
}

/** What one hold wants to stand at its path. */
interface Wish {
  readonly path: string;
  readonly text: string;
  readonly from: string;
  readonly own: string;
}

export const holdingWith = ({ engine, settled, tried, take, takeBack, jump, failed }: Around): Holding => {
  const held = signal<Held | undefined>(undefined);
  let count = 0;
  /** Mark of the hold in hand; what was put back is marked no more, so that nothing of it comes late. */
  let together = '';
  const putBack = new Set<string>();
  let from = '';
  let wish: Wish | undefined;
  let putting: Promise<void> | undefined;
  let rest: ReturnType<typeof setTimeout> | undefined;
  let owed = 0;
  let back: HTMLElement | undefined;

  const change = (part: Partial<Held>, own = together): void => {
    const now = held.peek();
    if (now && own === together) held.value = { ...now, ...part };
  };

  const putOne = async ({ path, text, from: was, own }: Wish): Promise<void> => {
    const trial = await tried([{ path, text }]);
    if (!trial || putBack.has(own)) return;
    change({ problem: trial.problem }, own);
    if (Object.keys(trial.files).length > 0) take(trial.files, `${path}: ${was} → ${text}`, own);
  };
  /** One after the other, and of what came meanwhile only the last. */
  const putAll = async (): Promise<void> => {
    try {
      while (wish) {
        const next = wish;
        wish = undefined;
        await putOne(next);
      }
    } finally {
      putting = undefined;
    }
  };
  const want = (text: string): void => {
    const now = held.peek();
    if (!now?.ready) return;
    clearTimeout(rest);
    rest = undefined;
    wish = { path: now.path, text, from, own: together };
    putting ??= putAll().catch(failed);
  };
  /** What was written and not yet put is put now. */
  const flush = (): void => {
    const now = held.peek();
    if (rest !== undefined && now) want(now.text);
  };
  const turn = (steps: number): void => {
    const now = held.peek();
    if (!now) return;
    if (!now.ready) {
      owed += steps;
      return;
    }
    const text = turned(now.text, steps);
    if (text === undefined) return;
    change({ text, problem: undefined });
    want(text);
  };
  const unmark = (): void => {
    for (const one of document.querySelectorAll<HTMLElement>('[data-held]')) delete one.dataset['held'];
  };
  const close = (path: string): void => {
    held.value = undefined;
    together = '';
    // The element was drawn anew meanwhile: its successor has the same path.
    const marked = document.querySelector<HTMLElement>('.sheet [data-held]');
    const successor =
      marked?.dataset['path'] === path
        ? marked
        : [...document.querySelectorAll<HTMLElement>('.sheet [data-path][tabindex]')].find(
            (one) => one.dataset['path'] === path,
          );
    unmark();
    (back?.isConnected ? back : successor)?.focus({ preventScroll: true });
  };

  return {
    held,
    turn,
    hold: (element) => {
      const { path } = element.dataset;
      if (path === undefined) return;
      flush();
      const { left, top, bottom } = element.getBoundingClientRect();
      back = element;
      unmark();
      element.dataset['held'] = '';
      count += 1;
      together = `hold ${count}`;
      owed = 0;
      held.value = { path, means: '', text: '', ready: false, at: { left, top, bottom } };
      const own = together;
      const ask = async (): Promise<void> => {
        await putting;
        const version = await settled();
        const handle = version === undefined ? undefined : await engine.handle(version, path);
        if (own !== together) return;
        if (!handle) {
          // What is no single fact is shown where it stands.
          held.value = undefined;
          unmark();
          await jump(path);
          return;
        }
        from = handle.text === '' ? 'not stated' : handle.text;
        change({ means: handle.means, text: handle.text, ready: true });
        if (owed !== 0) turn(owed);
        owed = 0;
      };
      void ask().catch(failed);
    },
    hand: (text) => {
      change({ text, problem: undefined });
      clearTimeout(rest);
      rest = setTimeout(() => want(text), REST);
    },
    letGo: (keep) => {
      const now = held.peek();
      if (!now) return;
      const own = together;
      if (!keep) {
        clearTimeout(rest);
        rest = undefined;
        wish = undefined;
        putBack.add(own);
        close(now.path);
        takeBack(own);
        return;
      }
      flush();
      // A text that cannot stand there keeps the field open, with what is wrong beside it.
      const last = async (): Promise<void> => {
        await putting;
        if (own === together && held.peek()?.problem === undefined) close(now.path);
      };
      void last().catch(failed);
    },
  };
};
