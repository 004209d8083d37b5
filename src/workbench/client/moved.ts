/** What moved since an edit began: several key presses are one edit to whoever makes it. */
import { verdictWord, worstFirst } from '../../figures/mark.ts';
import { movedScaleSvg, useText } from '../../figures/use-scale.ts';
import type { Moved } from '../desk/engine.ts';

const isAsBefore = ({ before, after }: Moved): boolean =>
  before?.verdict === after?.verdict &&
  before?.use?.worst === after?.use?.worst &&
  before?.use?.best === after?.use?.best &&
  before?.use?.advised === after?.use?.advised;

/**
 * Two steps as one: how findings stood before the first, and how they stand after the second.
 * @param first what the first step moved
 * @param second what the second moved after it
 */
export const together = (first: readonly Moved[], second: readonly Moved[]): readonly Moved[] => {
  const known = new Map(first.map((one) => [one.key, one]));
  const again = second.map((now): Moved => {
    const was = known.get(now.key);
    known.delete(now.key);
    if (!was) return now;
    const { key, sheet, sentence, after } = now;
    const { before } = was;
    const [old, use] = [before?.use, after?.use];
    const ruler = old && use ? movedScaleSvg(old, use, 'small', true) : (now.ruler ?? was.ruler);
    return {
      key,
      sheet,
      sentence,
      ...(before ? { before } : {}),
      ...(after ? { after } : {}),
      ...(ruler === undefined ? {} : { ruler }),
    };
  });
  return [...known.values(), ...again].filter((one) => !isAsBefore(one));
};

type Stand = NonNullable<Moved['before']>;

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

/** What a reader must see first: other verdicts before other percentages, and of both what went farthest. */
export const mostTelling = (moved: readonly Moved[]): readonly Moved[] =>
  moved.toSorted((a, b) => {
    const [changedA, changedB] = [a, b].map(({ before, after }) => (before?.verdict === after?.verdict ? 1 : 0));
    return (
      (changedA ?? 0) - (changedB ?? 0) ||
      far(b) - far(a) ||
      Math.min(rank(a.before), rank(a.after)) - Math.min(rank(b.before), rank(b.after))
    );
  });
