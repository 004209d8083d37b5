/** What hands do to the sheet: links, findings that are opened, numbers that are taken hold of. */
import { findingOf } from './anchor.ts';
import type { Desk } from './desk.ts';
import { unfold, type Folds } from './enliven.ts';

/** Follows a link within the sheet. */
const follow = async (sheet: HTMLElement, id: string, folds: Folds): Promise<void> => {
  const named = (): HTMLElement | undefined =>
    [...sheet.querySelectorAll<HTMLElement>('[id]')].find((element) => element.id === id);
  const step = id.replace(/^step-/, '');
  const folded = named()
    ? undefined
    : [...sheet.querySelectorAll<HTMLDetailsElement>('details[data-steps]')].find((working) =>
        working.dataset['steps']?.split(' ').includes(step),
      );
  if (folded) await unfold(folded, folds);
  const target = named();
  if (!target) return;
  target.closest('details')?.setAttribute('open', '');
  target.scrollIntoView({ block: 'center' });
  if (target.tabIndex < 0) target.setAttribute('tabindex', '-1');
  target.focus({ preventScroll: true });
};

export const toggle = (desk: Desk, key: string): void => {
  const route = desk.route.peek();
  if (route.page !== 'sheet') return;
  const name = desk.sheet.peek()?.name;
  desk.go({ page: 'sheet', name, finding: route.finding === key ? undefined : key });
};

/** Opens the finding that a link leads to; false where it has no working, or is not on this sheet. */
const openOne = (desk: Desk, sheet: HTMLElement, link: Element): boolean => {
  const key = link.closest('.back') ? undefined : link.closest<HTMLElement>('[data-key]')?.dataset['key'];
  const row = key === undefined ? undefined : findingOf(sheet, key);
  const route = desk.route.peek();
  if (key === undefined || row?.dataset['hasWorking'] === undefined || route.page !== 'sheet') return false;
  if (route.finding !== key) toggle(desk, key);
  else {
    row.scrollIntoView({ block: 'start' });
    row.querySelector<HTMLElement>('.slip h3')?.focus({ preventScroll: true });
  }
  return true;
};

export const clicked = (desk: Desk, sheet: HTMLElement, folds: Folds, event: MouseEvent): void => {
  const target = event.target as Element;
  const row = target.closest<HTMLElement>('.finding[data-key]');
  const key = row?.dataset['key'];
  const link = target.closest('a');
  const href = link?.getAttribute('href') ?? '';
  if (link && href.startsWith('#') && !href.startsWith('#/')) {
    event.preventDefault();
    if (href.startsWith('#working-') && key !== undefined) toggle(desk, key);
    else if (!href.startsWith('#finding-') || !openOne(desk, sheet, link)) void follow(sheet, href.slice(1), folds);
    return;
  }
  const handle = target.closest<HTMLElement>('[data-path][tabindex]');
  if (handle) {
    desk.hold(handle);
    return;
  }
  if (key !== undefined && target.closest('.sentence') && row?.dataset['hasWorking'] !== undefined) toggle(desk, key);
};

export const pressed = (desk: Desk, event: KeyboardEvent): void => {
  const target = event.target as HTMLElement;
  if (event.key !== 'Enter' && event.key !== ' ') return;
  if (target.matches('.finding[data-has-working]')) {
    event.preventDefault();
    toggle(desk, target.dataset['key'] ?? '');
    return;
  }
  const handle = target.closest<HTMLElement>('[data-path][tabindex]');
  if (!handle) return;
  event.preventDefault();
  desk.hold(handle);
};

/** Turning a number by drawing it sideways. */
const DRAWN = 14;
export const drawn = (desk: Desk, event: PointerEvent): void => {
  const handle = (event.target as Element).closest<HTMLElement>('[data-path][tabindex]');
  if (!handle || event.button !== 0) return;
  const from = event.clientX;
  let steps = 0;
  const moved = ({ clientX }: PointerEvent): void => {
    const now = Math.trunc((clientX - from) / DRAWN);
    if (now === steps) return;
    if (!desk.held.peek()) desk.hold(handle);
    desk.turn(now - steps);
    steps = now;
  };
  const end = (): void => {
    removeEventListener('pointermove', moved);
    removeEventListener('pointerup', end);
    removeEventListener('pointercancel', end);
    if (steps === 0) return;
    // The click that follows would take hold of it anew.
    const swallow = (click: MouseEvent): void => {
      click.stopPropagation();
      click.preventDefault();
    };
    addEventListener('click', swallow, { capture: true, once: true });
    setTimeout(() => removeEventListener('click', swallow, { capture: true }));
  };
  addEventListener('pointermove', moved);
  addEventListener('pointerup', end);
  addEventListener('pointercancel', end);
};
