/** Verdicts and uses of a limit in components: the same mark and the same ruler as on every sheet. */
import { markSvg, verdictWord, worstFirst } from '../../figures/mark.ts';
import { useText } from '../../figures/use-scale.ts';
import type { Verdict } from '../../kernel/index.ts';
import type { Moved } from '../desk/engine.ts';
import { inner } from './markup.ts';

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

const said = (stand: Stand | undefined): string =>
  stand ? `${verdictWord[stand.verdict]}${stand.use ? ` at ${useText(stand.use)} of limit` : ''}` : 'not asked';

/** The same in words, for those who hear the page. */
export const movedWords = ({ sentence, before, after }: Moved): string =>
  `${sentence} Before: ${said(before)}; now: ${said(after)}.`;

const rank = (stand: Stand | undefined): number => (stand ? worstFirst.indexOf(stand.verdict) : worstFirst.length);
const far = ({ before, after }: Moved): number => {
  const [a, b] = [before?.use?.worst ?? 0, after?.use?.worst ?? 0].map((use) => Math.min(use, 10));
  return Math.abs((a ?? 0) - (b ?? 0));
};

/** What a reader must see first: other verdicts before other percentages, the worst of them before the rest. */
export const mostTelling = (moved: readonly Moved[]): readonly Moved[] =>
  moved.toSorted((a, b) => {
    const [changedA, changedB] = [a, b].map(({ before, after }) => (before?.verdict === after?.verdict ? 1 : 0));
    return (
      (changedA ?? 0) - (changedB ?? 0) ||
      Math.min(rank(a.before), rank(a.after)) - Math.min(rank(b.before), rank(b.after)) ||
      far(b) - far(a)
    );
  });

/** What moved; no more than can be taken in. */
export const MovedList = ({ moved, most }: { readonly moved: readonly Moved[]; readonly most: number }) => (
  <>
    <ul>
      {mostTelling(moved)
        .slice(0, most)
        .map((one) => (
          <li key={one.key}>
            <span>
              {one.sentence} <span class="tags mono">{one.key}</span>
            </span>
            <BothUses {...one} />
          </li>
        ))}
    </ul>
    {moved.length > most ? <p class="aside">and {moved.length - most} more</p> : null}
  </>
);
