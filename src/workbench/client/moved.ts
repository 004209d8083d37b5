/** What moved since an edit began: several key presses are one edit to whoever makes it. */
import { movedScaleSvg } from '../../figures/use-scale.ts';
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
