/** Verdicts and uses of a limit in components: the same mark and the same ruler as on every sheet. */
import { useSignal } from '@preact/signals';
import type { VNode } from 'preact';
import { useRef } from 'preact/hooks';
import { markSvg, verdictWord } from '../../figures/mark.ts';
import { useText } from '../../figures/use-scale.ts';
import type { Verdict } from '../../kernel/index.ts';
import type { Moved } from '../desk/engine.ts';
import { useDesk } from './desk.ts';
import { inner } from './markup.ts';
import { mostTelling } from './moved.ts';
import { hashOf } from './routes.ts';

export const Mark = ({ verdict }: { readonly verdict: Verdict }) => (
  <span class={`mark v-${verdict}`}>
    <span dangerouslySetInnerHTML={inner(markSvg(verdict))} />
    <span class="word">{verdictWord[verdict]}</span>
  </span>
);

type Stand = NonNullable<Moved['before']>;

const Standing = ({ stand }: { readonly stand: Stand | undefined }) =>
  stand ? (
    <span class="stand">
      <Mark verdict={stand.verdict} /> {stand.use ? useText(stand.use) : ''}
    </span>
  ) : (
    <span class="stand">not asked</span>
  );

/** Old and new use on one ruler, the old one paler and above; and both in words. */
const BothUses = ({ before, after, ruler }: Moved) => (
  <span class="both-uses">
    {ruler === undefined ? null : <span class="ruler" dangerouslySetInnerHTML={inner(ruler)} />}
    <span class="was">
      <Standing stand={before} />
    </span>
    <span class="stand">
      <span aria-hidden="true">→ </span>
      <span class="hidden">now </span>
      <Standing stand={after} />
    </span>
  </span>
);

/** A finding by its sentence, which leads to it on its sheet; by its key where the book has no such finding now. */
export const FindingLink = ({ of, says }: { readonly of: string; readonly says?: string }) => {
  const card = useDesk().laid.value?.findings.find(({ key }) => key === of);
  const sentence = says ?? card?.sentence;
  return (
    <>
      {card ? (
        <a href={hashOf({ page: 'sheet', name: card.sheet, finding: of })}>{sentence ?? card.sentence}</a>
      ) : (
        sentence
      )}{' '}
      <span class="tags mono">{of}</span>
    </>
  );
};

/** A list of which only the beginning is shown until somebody asks for the rest. */
export const Few = ({ most, children }: { readonly most: number; readonly children: readonly VNode[] }) => {
  const all = useSignal(false);
  const list = useRef<HTMLUListElement>(null);
  const rest = children.length - most;
  const unfold = (): void => {
    all.value = true;
    // The button goes away: the focus goes on at the first row that was hidden.
    requestAnimationFrame(() => list.current?.children[most]?.querySelector('a')?.focus());
  };
  return (
    <>
      <ul ref={list}>{all.value ? children : children.slice(0, most)}</ul>
      {rest > 0 && !all.value ? (
        <button type="button" class="bare" onClick={unfold}>
          and {rest} more
        </button>
      ) : null}
    </>
  );
};

/** What moved; no more at once than can be taken in. */
export const MovedList = ({ moved, most }: { readonly moved: readonly Moved[]; readonly most: number }) => (
  <Few most={most}>
    {mostTelling(moved).map((one) => (
      <li key={one.key}>
        <span>
          <FindingLink of={one.key} says={one.sentence} />
        </span>
        <BothUses {...one} />
      </li>
    ))}
  </Few>
);
