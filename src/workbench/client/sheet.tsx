/** The sheet as it lies on the desk: the renderers' own markup, part by part, and what can be done with it in place. */
import { useSignal } from '@preact/signals';
import { render } from 'preact';
import { useEffect, useLayoutEffect, useRef } from 'preact/hooks';
import { useText } from '../../figures/use-scale.ts';
import type { Moved, SheetPart } from '../desk/engine.ts';
import { DeskContext, useDesk, type Desk } from './desk.ts';
import { enliven, markCaret, unfold, type Folds } from './enliven.ts';
import { Hold } from './hold.tsx';
import { put } from './markup.ts';
import { Slip } from './slip.tsx';

/** Parts that stand together under the first letter; the rest are zones of their own, and the title block. */
const FRONT = new Set(['title', 'strip', 'worst', 'cautions', 'questions']);
/** How long old and new use stand on the same ruler, in milliseconds. */
const SETTLES = 4500;

interface PartProps {
  readonly part: SheetPart;
  readonly folds: Folds;
  readonly replaced: (element: HTMLElement, focused: Focused | undefined) => void;
}

/** What had the focus before a part was drawn anew. */
type Focused = HTMLElement | { readonly path: string };

const focusedIn = (element: HTMLElement): Focused | undefined => {
  const active = document.activeElement;
  if (!(active instanceof HTMLElement) || !element.contains(active)) return undefined;
  if (active.closest('.slip-place')) return active;
  const { path } = active.dataset;
  return path === undefined ? undefined : { path };
};

const Part = ({ part, folds, replaced }: PartProps) => {
  const element = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    const { current } = element;
    if (!current) return;
    const focused = focusedIn(current);
    put(current, part.markup);
    enliven(current, folds);
    replaced(current, focused);
  }, [part.markup]);
  return <div class="part" data-part={part.id} ref={element} />;
};

const findingOf = (sheet: HTMLElement, key: string): HTMLElement | undefined =>
  [...sheet.querySelectorAll<HTMLElement>('.finding[data-key]')].find((row) => row.dataset['key'] === key);

/** Shows old and new use on one ruler for a moment, where they stand. */
const showOld = (sheet: HTMLElement, moved: readonly Moved[]): (() => void) => {
  const shown = moved.flatMap(({ key, before, ruler }) => {
    const used = before?.use && ruler !== undefined ? findingOf(sheet, key)?.querySelector('.used') : undefined;
    if (!used || !before?.use || ruler === undefined) return [];
    const was = document.createElement('p');
    was.className = 'was-here fading';
    put(was, ruler);
    was.append(` was ${useText(before.use)}`);
    used.append(was);
    return [was];
  });
  const timer = setTimeout(() => shown.forEach((was) => was.remove()), SETTLES);
  return () => {
    clearTimeout(timer);
    shown.forEach((was) => was.remove());
  };
};

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

const toggle = (desk: Desk, key: string): void => {
  const route = desk.route.peek();
  if (route.page !== 'sheet') return;
  const name = desk.sheet.peek()?.name;
  desk.go({ page: 'sheet', name, finding: route.finding === key ? undefined : key });
};

const clicked = (desk: Desk, sheet: HTMLElement, folds: Folds, event: MouseEvent): void => {
  const target = event.target as Element;
  const row = target.closest<HTMLElement>('.finding[data-key]');
  const key = row?.dataset['key'];
  const link = target.closest('a');
  const href = link?.getAttribute('href') ?? '';
  if (link && href.startsWith('#') && !href.startsWith('#/')) {
    event.preventDefault();
    if (href.startsWith('#working-') && key !== undefined) toggle(desk, key);
    else void follow(sheet, href.slice(1), folds);
    return;
  }
  const handle = target.closest<HTMLElement>('[data-path][tabindex]');
  if (handle) {
    desk.hold(handle);
    return;
  }
  if (key !== undefined && target.closest('.sentence') && row?.dataset['hasWorking'] !== undefined) toggle(desk, key);
};

const pressed = (desk: Desk, event: KeyboardEvent): void => {
  const handle = (event.target as Element).closest<HTMLElement>('[data-path][tabindex]');
  if (!handle || (event.key !== 'Enter' && event.key !== ' ')) return;
  event.preventDefault();
  desk.hold(handle);
};

/** Turning a number by drawing it sideways. */
const DRAWN = 14;
const drawn = (desk: Desk, event: PointerEvent): void => {
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

export const Sheet = () => {
  const desk = useDesk();
  const shown = desk.sheet.value;
  const route = desk.route.value;
  const open = route.page === 'sheet' ? route.finding : undefined;
  const printed = useSignal(0);
  const sheet = useRef<HTMLDivElement>(null);
  const scroller = useRef<HTMLDivElement>(null);
  const place = useRef<HTMLDivElement | undefined>(undefined);
  const focused = useRef<Focused | undefined>(undefined);
  const folds = useRef<Folds>({ open: new Set(), fetch: (key) => desk.unfold(key).catch(() => undefined) });
  place.current ??= Object.assign(document.createElement('div'), { className: 'slip-place' });

  const replaced = (_: HTMLElement, had: Focused | undefined): void => {
    focused.current = had ?? focused.current;
  };

  // After every drawing: the slip goes back under its finding, and the focus to where it was.
  useLayoutEffect(() => {
    const { current } = sheet;
    const host = place.current;
    if (!current || !host) return;
    for (const row of current.querySelectorAll<HTMLElement>('[data-open]')) delete row.dataset['open'];
    const row = open === undefined ? undefined : findingOf(current, open);
    if (row) {
      row.dataset['open'] = '';
      if (host.parentElement !== row) row.append(host);
    } else host.remove();
    const had = focused.current;
    focused.current = undefined;
    if (!had) return;
    const back =
      had instanceof HTMLElement
        ? had
        : [...current.querySelectorAll<HTMLElement>('[data-path][tabindex]')].find(
            ({ dataset }) => dataset['path'] === had.path,
          );
    back?.focus({ preventScroll: true });
  });

  useLayoutEffect(() => {
    const host = place.current;
    if (!host) return undefined;
    render(
      open === undefined ? null : (
        <DeskContext.Provider value={desk}>
          <Slip
            key={open}
            finding={open}
            close={() => {
              toggle(desk, open);
              const row = sheet.current && findingOf(sheet.current, open);
              row?.querySelector<HTMLElement>('a[href^="#working-"]')?.focus();
            }}
          />
        </DeskContext.Provider>
      ),
      host,
    );
    return undefined;
  }, [open]);

  // A finding that was linked to is brought into sight once it is there.
  const isThere = shown !== undefined && shown.complete;
  useEffect(() => {
    const row = open !== undefined && isThere && sheet.current ? findingOf(sheet.current, open) : undefined;
    row?.scrollIntoView({ block: 'nearest' });
  }, [open, isThere, shown?.name]);

  useEffect(() => {
    scroller.current?.scrollTo({ top: 0 });
  }, [shown?.name]);

  const moved = desk.moved.value;
  useEffect(() => {
    if (!sheet.current || !shown?.complete || !desk.current.value) return undefined;
    return showOld(
      sheet.current,
      moved.filter((one) => one.sheet === shown.name),
    );
  }, [moved, shown]);

  // Paper has every working; the screen gets its folded ones back afterwards.
  useEffect(() => {
    const drawWith = (parts: readonly SheetPart[], isPaper: boolean): void => {
      for (const { id, markup } of parts) {
        const element = sheet.current?.querySelector(`.part[data-part="${id}"]`);
        if (!element) continue;
        put(element, markup);
        if (!isPaper) enliven(element, folds.current);
      }
    };
    const before = (): void => {
      const whole = desk.paper.peek();
      if (whole && whole.name === shown?.name) drawWith(whole.parts, true);
    };
    const after = (): void => {
      drawWith(shown?.parts ?? [], false);
      printed.value += 1;
    };
    addEventListener('beforeprint', before);
    addEventListener('afterprint', after);
    return () => {
      removeEventListener('beforeprint', before);
      removeEventListener('afterprint', after);
    };
  }, [shown]);

  const caret = desk.caretPath.value;
  useEffect(() => {
    if (sheet.current) markCaret(sheet.current, caret);
  }, [caret, shown]);

  if (!shown) return <div class="lying" />;
  const front = shown.parts.filter(({ id }) => FRONT.has(id));
  const rest = shown.parts.filter(({ id }) => !FRONT.has(id));
  const earlier = !desk.current.value && desk.problems.value.some(({ keepsFromReading }) => keepsFromReading);
  return (
    <div class="lying" ref={scroller} data-earlier={earlier}>
      {earlier ? (
        <p class="earlier">
          <b>Of an earlier text.</b> The book cannot be read as it stands; this is the last sheet that could be worked
          out.
        </p>
      ) : null}
      <div
        class="sheet"
        key={shown.name}
        ref={sheet}
        data-complete={shown.complete}
        data-printed={printed.value}
        data-paper={desk.paper.value?.name === shown.name}
        onClick={(event) => sheet.current && clicked(desk, sheet.current, folds.current, event)}
        onKeyDown={(event) => pressed(desk, event)}
        onPointerDown={(event) => drawn(desk, event)}
        onPointerOver={(event) =>
          desk.point((event.target as Element).closest<HTMLElement>('[data-path]')?.dataset['path'])
        }
        onFocusIn={(event) =>
          desk.point((event.target as Element).closest<HTMLElement>('[data-path]')?.dataset['path'])
        }
      >
        <main id="sheet" tabIndex={-1}>
          <section class="zone front" aria-labelledby="title">
            <div class="letter" aria-hidden="true">
              <span>A</span>
            </div>
            <div class="field">
              {front.map((part) => (
                <Part key={part.id} part={part} folds={folds.current} replaced={replaced} />
              ))}
            </div>
          </section>
          {rest
            .filter(({ id }) => id !== 'title-block')
            .map((part) => (
              <Part key={part.id} part={part} folds={folds.current} replaced={replaced} />
            ))}
        </main>
        {rest
          .filter(({ id }) => id === 'title-block')
          .map((part) => (
            <Part key={part.id} part={part} folds={folds.current} replaced={replaced} />
          ))}
      </div>
      {shown.problem === undefined ? null : (
        <p class="quiet" role="alert">
          The rest of this sheet cannot be drawn yet: {shown.problem}.
        </p>
      )}
      <Hold />
    </div>
  );
};
