/** The sheet as it lies on the desk: the renderers' own markup, part by part, and what can be done with it in place. */
import { useSignal } from '@preact/signals';
import { render } from 'preact';
import { useEffect, useLayoutEffect, useRef } from 'preact/hooks';
import { useText } from '../../figures/use-scale.ts';
import type { Moved, SheetPart } from '../desk/engine.ts';
import { anchorIn, bringUp, findingOf, type Anchor } from './anchor.ts';
import { linkForms } from './bench-links.ts';
import { DeskContext, useDesk } from './desk.ts';
import { enliven, markCaret, type Folds } from './enliven.ts';
import { Hold } from './hold.tsx';
import { put } from './markup.ts';
import { clicked, drawn, pressed, toggle } from './sheet-hands.ts';
import { Slip } from './slip.tsx';

/** Parts that stand together under the first letter; the rest are zones of their own, and the title block. */
const FRONT = new Set(['title', 'strip', 'worst', 'cautions', 'questions']);
/** How long old and new use stand on the same ruler, in milliseconds. */
const SETTLES = 4500;

interface PartProps {
  readonly part: SheetPart;
  readonly folds: Folds;
  /** Called before it is drawn anew. */
  readonly replaces: (focused: Focused | undefined) => void;
}

/** What had the focus before a part was drawn anew. */
type Focused = HTMLElement | { readonly path: string } | { readonly finding: string };

const focusedIn = (element: HTMLElement): Focused | undefined => {
  const active = document.activeElement;
  if (!(active instanceof HTMLElement) || !element.contains(active)) return undefined;
  if (active.closest('.slip-place')) return active;
  const { path, key } = active.dataset;
  if (key !== undefined && active.matches('.finding')) return { finding: key };
  return path === undefined ? undefined : { path };
};

/** The same in the sheet as it was drawn anew. */
const focusedAgain = (sheet: HTMLElement, had: Focused): HTMLElement | undefined => {
  if (had instanceof HTMLElement) return had.isConnected ? had : undefined;
  if ('path' in had)
    return [...sheet.querySelectorAll<HTMLElement>('[data-path][tabindex]')].find(
      ({ dataset }) => dataset['path'] === had.path,
    );
  const row = findingOf(sheet, had.finding);
  if (row) row.tabIndex = -1;
  return row;
};

const Part = ({ part, folds, replaces }: PartProps) => {
  const element = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    const { current } = element;
    if (!current) return;
    replaces(focusedIn(current));
    put(current, part.markup);
    enliven(current, folds);
  }, [part.markup]);
  return <div class="part" data-part={part.id} ref={element} />;
};

/** Shows old and new use on one ruler for a moment, where they stand. */
const showOld = (sheet: HTMLElement, moved: readonly Moved[]): (() => void) => {
  const shown = moved.flatMap(({ key, before, after, ruler }) => {
    const used = findingOf(sheet, key)?.querySelector('.used');
    if (!used || !before?.use || !after?.use || ruler === undefined) return [];
    // Beside a value that is still the old one, or reads the same, it would say that nothing moved.
    const now = useText(after.use);
    const stands = used.querySelector('.percent b')?.textContent;
    if (stands !== now || now === useText(before.use)) return [];
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

  const anchor = useRef<Anchor | undefined>(undefined);
  const replaces = (had: Focused | undefined): void => {
    focused.current = had ?? focused.current;
    if (scroller.current && sheet.current) anchor.current ??= anchorIn(scroller.current, sheet.current, open);
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
    anchor.current?.keep();
    anchor.current = undefined;
    const had = focused.current;
    focused.current = undefined;
    if (had) (focusedAgain(current, had) ?? current.querySelector('main'))?.focus({ preventScroll: true });
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
  const isByReader = useRef(false);
  useEffect(() => {
    const row = open !== undefined && isThere && sheet.current ? findingOf(sheet.current, open) : undefined;
    if (row && scroller.current) {
      bringUp(scroller.current, row);
      // What the address opened leaves the focus where a page begins.
      if (isByReader.current) row.querySelector<HTMLElement>('.slip h3')?.focus({ preventScroll: true });
    }
    isByReader.current ||= isThere;
  }, [open, isThere, shown?.name]);

  useEffect(() => {
    scroller.current?.scrollTo({ top: 0 });
  }, [shown?.name]);

  // Questions lead to their forms; that comes a moment later and must move nothing.
  const version = desk.version.value;
  useEffect(() => {
    if (!shown?.complete || !sheet.current?.querySelector('.questions')) return undefined;
    let isOver = false;
    void desk.engine.bench(version).then((cards) => {
      if (isOver || !cards || !sheet.current || !scroller.current) return;
      const still = anchorIn(scroller.current, sheet.current, open);
      linkForms(sheet.current, cards);
      still.keep();
    }, desk.failed);
    return () => {
      isOver = true;
    };
  }, [shown, version, printed.value]);

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
                <Part key={part.id} part={part} folds={folds.current} replaces={replaces} />
              ))}
            </div>
          </section>
          {rest
            .filter(({ id }) => id !== 'title-block')
            .map((part) => (
              <Part key={part.id} part={part} folds={folds.current} replaces={replaces} />
            ))}
        </main>
        {rest
          .filter(({ id }) => id === 'title-block')
          .map((part) => (
            <Part key={part.id} part={part} folds={folds.current} replaces={replaces} />
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
