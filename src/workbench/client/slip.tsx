/** What would cure a finding, and its working, under it. */
import { useSignal, useSignalEffect } from '@preact/signals';
import { useLayoutEffect, useRef } from 'preact/hooks';
import type { Remedy } from '../../kernel/index.ts';
import { useDesk } from './desk.ts';
import { letScroll } from './enliven.ts';
import { put } from './markup.ts';
import { Remedies } from './remedies.tsx';

interface Known {
  readonly working?: string;
  readonly remedies?: readonly Remedy[];
}

/** Each input leads to its line in the book, also by the keyboard. */
const openInputs = (element: Element): void => {
  letScroll(element);
  for (const input of element.querySelectorAll<HTMLElement>('[data-path]')) {
    input.tabIndex = 0;
    input.setAttribute('role', 'link');
  }
};

/** The last step is what the finding says; the ones that it rests on are folded behind it. */
const foldEarlier = (element: Element, isOpen: boolean): HTMLDetailsElement | undefined => {
  const steps = [...element.querySelectorAll('.entries > .entry, .entries > .again')];
  const last = steps.at(-1);
  if (!last || steps.length < 2) return undefined;
  const earlier = document.createElement('details');
  const summary = document.createElement('summary');
  earlier.className = 'rests-on';
  earlier.open = isOpen;
  summary.textContent = `and what it rests on: ${steps.length === 2 ? 'one step' : `${steps.length - 1} steps`}`;
  earlier.append(summary, ...steps.slice(0, -1));
  last.after(earlier);
  return earlier;
};

const Working = ({ markup }: { readonly markup: string }) => {
  const host = useRef<HTMLDivElement>(null);
  const earlier = useRef<HTMLDetailsElement | undefined>(undefined);
  useLayoutEffect(() => {
    if (!host.current) return;
    put(host.current, markup);
    earlier.current = foldEarlier(host.current, earlier.current?.open === true);
    earlier.current?.addEventListener('toggle', ({ currentTarget }) => letScroll(currentTarget as Element));
    openInputs(host.current);
  }, [markup]);
  return <div ref={host} />;
};

export const Slip = ({ finding, close }: { readonly finding: string; readonly close: () => void }) => {
  const desk = useDesk();
  const known = useSignal<Known>({});

  // What is known of an earlier text stays until it is known of this one.
  useSignalEffect(() => {
    const version = desk.version.value;
    if (version === 0) return;
    void desk.engine.working(version, finding).then((working) => {
      if (working !== undefined) known.value = { ...known.peek(), working };
    }, desk.failed);
    const later = setTimeout(() => {
      void desk.engine.remedies(version, finding).then((remedies) => {
        if (remedies) known.value = { ...known.peek(), remedies };
      }, desk.failed);
    }, 150);
    return () => clearTimeout(later);
  });

  const card = desk.laid.value?.findings.find(({ key }) => key === finding);
  const { working, remedies } = known.value;
  const clicked = (event: MouseEvent): void => {
    const target = event.target as Element;
    const link = target.closest('a');
    const href = link?.getAttribute('href') ?? '';
    const path = target.closest<HTMLElement>('[data-path]')?.dataset['path'];
    event.stopPropagation();
    if (path !== undefined) void desk.jump(path);
    if (!href.startsWith('#') || href.startsWith('#/')) return;
    event.preventDefault();
    const within = event.currentTarget as HTMLElement;
    const id = href.slice(1);
    const goal = [...within.querySelectorAll('[id]')].find((one) => one.id === id) ?? document.getElementById(id);
    goal?.closest('details')?.setAttribute('open', '');
    goal?.scrollIntoView({ block: 'center' });
  };
  const pressed = (event: KeyboardEvent): void => {
    const path = (event.target as Element).closest<HTMLElement>('[data-path]')?.dataset['path'];
    event.stopPropagation();
    if (event.key === 'Escape') close();
    else if (event.key === 'Enter' && path !== undefined) void desk.jump(path);
  };
  return (
    <section
      class="slip"
      aria-label={`Cure and working of ${finding}`}
      onClick={clicked}
      onKeyDown={pressed}
      onPointerDown={(event) => event.stopPropagation()}
    >
      <h3 tabIndex={-1}>
        {card?.hasLevers ? 'What would cure it' : 'Working'} <span class="tags mono">{finding}</span>
      </h3>
      {card?.hasLevers ? <Remedies remedies={remedies} finding={finding} /> : null}
      <div class="slip-doings">
        {card?.place ? (
          <button type="button" class="bare" onClick={() => card.place && desk.jumpTo(card.place)}>
            Show in the text
          </button>
        ) : null}
        <button type="button" onClick={close}>
          Fold
        </button>
      </div>
      <div class="slip-working">
        {card?.hasLevers ? <h4>Working</h4> : null}
        {working === undefined ? (
          <p class="quiet">Being worked out …</p>
        ) : working === '' ? (
          <p class="quiet">There is nothing to work out yet: a fact is not stated.</p>
        ) : (
          <Working markup={working} />
        )}
      </div>
    </section>
  );
};
