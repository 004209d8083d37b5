/** What the page adds to a drawn part: what can be taken hold of is reached by the keyboard, long workings are folded. */

import { put } from './markup.ts';

const handles = (root: Element): readonly HTMLElement[] => [...root.querySelectorAll<HTMLElement>('[data-path]')];

/** Formulas that are wider than their place scroll, which the keyboard must be able to do too. */
export const letScroll = (root: Element): void => {
  for (const wide of root.querySelectorAll<HTMLElement>('.step .right'))
    if (wide.scrollWidth > wide.clientWidth) wide.tabIndex = 0;
};

const letHold = (root: Element): void => {
  for (const handle of handles(root)) {
    if (handle.closest('a, button')) continue;
    handle.tabIndex = 0;
    const { path = '' } = handle.dataset;
    if (handle.textContent !== path) handle.title = path;
    handle.setAttribute('role', 'button');
    handle.setAttribute('aria-haspopup', 'dialog');
  }
};

/** What the reader has unfolded stays so when a part is drawn anew. */
export interface Folds {
  readonly open: Set<string>;
  /** The content of a folded working. */
  readonly fetch: (key: string) => Promise<string | undefined>;
}

/** Unfolds a working and draws what is in it. */
export const unfold = async (working: HTMLDetailsElement, { open, fetch }: Folds): Promise<void> => {
  const key = working.dataset['key'] ?? '';
  open.add(key);
  working.open = true;
  if (!working.querySelector('.entries')) {
    const markup = await fetch(key);
    if (markup === undefined || !working.isConnected || working.querySelector('.entries')) return;
    const inside = document.createElement('div');
    put(inside, markup);
    working.append(inside);
    letHold(inside);
  }
  letScroll(working);
};

/** Enlivens a part that was drawn anew. */
export const enliven = (part: Element, folds: Folds): void => {
  letHold(part);
  for (const row of part.querySelectorAll<HTMLElement>('.finding[data-key]'))
    if (row.querySelector('a[href^="#working-"]')) row.dataset['hasWorking'] = '';
  // A row of a group says its head once; what is empty is no head.
  for (const head of part.querySelectorAll('th')) if (head.textContent.trim() === '') head.setAttribute('role', 'cell');
  for (const working of part.querySelectorAll<HTMLDetailsElement>('details.working')) {
    const key = working.dataset['key'] ?? '';
    if (folds.open.has(key)) void unfold(working, folds);
    working.addEventListener('toggle', () => {
      if (working.open) void unfold(working, folds);
      else folds.open.delete(key);
    });
  }
};

/** Marks the fact that the caret stands at, wherever the sheet shows it. */
export const markCaret = (sheet: Element, path: string | undefined): void => {
  for (const handle of handles(sheet)) {
    const isIt = path !== undefined && handle.dataset['path'] === path;
    if (isIt) handle.dataset['atCaret'] = '';
    else delete handle.dataset['atCaret'];
  }
};
