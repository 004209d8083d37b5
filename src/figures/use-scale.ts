/**
 * The use scale: a short ruler with the capacity as the tick at its end; the demand as a bar in the verdict's line type, whose
 * uncertain part is a bracket; the advised margin is the shaded last stretch. The same everywhere.
 */
import type { Verdict } from '../kernel/findings.ts';
import { percentText } from '../kernel/percent.ts';
import { corners, hatchPath, pathOf, type Box } from './geometry.ts';
import { tag, type Markup } from './markup.ts';
import { lineType, verdictSign, verdictTone, verdictWord } from './mark.ts';
import { figure, line, path, text } from './svg.ts';

/** Shares of the limit, 1 at the limit; best and worst differ where a doubtful fact is behind them. */
export interface Used {
  readonly worst: number;
  readonly best: number;
  readonly advised: number;
  readonly verdict: Verdict;
}

/** The percentage, or its range where a doubtful fact makes it one: `61–94 %`. */
export const useText = ({ worst, best }: Pick<Used, 'worst' | 'best'>): string => {
  const [low, high] = [percentText(best), percentText(worst)];
  return low === high || !(best < worst) ? high : `${low.replace(/ %$/, '')}–${high}`;
};

const inWords = (use: Used): string =>
  `${verdictWord[use.verdict]}, ${useText(use)} of limit; advised is up to ${percentText(use.advised)}`;

interface Ruler {
  readonly left: number;
  readonly limit: number;
  readonly end: number;
  readonly top: number;
  readonly height: number;
}

const ruler = ({ left, limit, top, height }: Ruler): Markup[] => {
  const foot = top + height;
  const at = (share: number): number => left + share * (limit - left);
  const ticks = Array.from({ length: 10 }, (_, i) => {
    const tall = i % 5 === 0 ? 0.32 : 0.16;
    return pathOf([
      [at(i / 10), foot],
      [at(i / 10), foot - tall * height],
    ]);
  });
  return [
    path(ticks.join(''), 's-soft w-fine'),
    line([left, foot], [limit, foot], 's-soft w-fine'),
    line([limit, top - 2], [limit, foot + 2], 's-ink w-heavy'),
  ];
};

const margin = ({ left, limit, top, height }: Ruler, advised: number): Markup[] => {
  if (!(advised > 0 && advised < 1)) return [];
  const x = left + advised * (limit - left);
  const box: Box = { x, y: top, width: limit - x, height };
  return [
    path(pathOf(corners(box), true), 'f-tone'),
    path(hatchPath(corners(box), { gap: 3, angle: Math.PI / 2 }), 's-hair w-fine'),
    line([x, top], [x, top + height], 's-soft w-hair'),
  ];
};

const demand = (on: Ruler, { best, worst, verdict }: Used): Markup[] => {
  if (verdict === 'not-stated' || Number.isNaN(worst)) return [];
  const at = (share: number): number => Math.min(on.left + Math.max(share, 0) * (on.limit - on.left), on.end);
  const sure = Math.min(best, worst);
  const [from, to] = [at(sure), at(worst)];
  const bar: Box = { x: on.left, y: on.top + 2, width: from - on.left, height: on.height - 5 };
  const tone = verdictTone[verdict];
  const drawn = bar.width > 0.5 ? lineType(verdict, bar) : [];
  if (to - from > 1) {
    // A bracket lying on its side: two ends with lips, and the line between them.
    const [head, foot, middle] = [on.top, on.top + on.height - 1, on.top + on.height / 2 - 0.5];
    const lip = Math.min(3, (to - from) / 3);
    const ends =
      pathOf([
        [from + lip, head],
        [from, head],
        [from, foot],
        [from + lip, foot],
      ]) +
      pathOf([
        [to - lip, head],
        [to, head],
        [to, foot],
        [to - lip, foot],
      ]);
    drawn.push(path(ends, `s-${tone} w-medium`), line([from, middle], [to, middle], `s-${tone} w-fine short`));
  }
  if (on.left + worst * (on.limit - on.left) > on.end) {
    const [x, y] = [on.end + 2, on.top + on.height / 2 - 0.5];
    drawn.push(
      path(
        pathOf([
          [x, y - 4],
          [x + 5, y],
          [x, y + 4],
        ]),
        `s-${tone} w-medium`,
      ),
    );
  }
  return drawn;
};

/**
 * The use scale as a figure.
 * @param use shares of the limit and the verdict
 * @param size `small` for a table cell (112 × 18 px), `large` for a strip (300 × 40 px, with lettering)
 * @param bare true where the page carries the style of figures itself
 * @returns an SVG element
 */
export const useScaleSvg = (use: Used, size: 'small' | 'large' = 'small', bare = false): string => {
  const title = 'Use of limit';
  const alt = inWords(use);
  if (size === 'small') {
    const on: Ruler = { left: 2, limit: 84, end: 104, top: 3, height: 12 };
    return figure({ width: 112, height: 18, title, alt, bare }, [margin(on, use.advised), demand(on, use), ruler(on)]);
  }
  const on: Ruler = { left: 4, limit: 226, end: 278, top: 4, height: 16 };
  return figure({ width: 300, height: 40, title, alt, bare }, [
    margin(on, use.advised),
    demand(on, use),
    ruler(on),
    labels(on, use.advised),
  ]);
};

/** Numbers below a large ruler. */
const labels = ({ left, limit, top, height }: Ruler, advised: number): Markup[] => {
  const label = (share: number, words: string, anchor: 'start' | 'middle' | 'end'): Markup =>
    text([left + share * (limit - left), top + height + 16], words, { anchor, classes: 'soft small' });
  return [
    label(0, '0', 'start'),
    advised > 0.25 && advised < 0.8
      ? label(advised, `advised ${percentText(advised)}`, 'middle')
      : label(0.5, '50 %', 'middle'),
    label(1, 'limit', 'middle'),
  ];
};

/** The part of a ruler's height that what was before takes, above what is now. */
const BEFORE = 0.44;

/**
 * Use before and after a change on one ruler: what was, paler, in the upper lane, what is now in the lower.
 * @param before shares of the limit and the verdict before the change
 * @param after the same now; the margin drawn is that of now
 * @param size `small` for a table cell (112 × 26 px), `large` for a strip (300 × 52 px, with lettering)
 * @param bare true where the page carries the style of figures itself
 * @returns an SVG element
 */
export const movedScaleSvg = (before: Used, after: Used, size: 'small' | 'large' = 'small', bare = false): string => {
  const title = 'Use of limit, before and now';
  const alt = `Before: ${verdictWord[before.verdict]}, ${useText(before)} of limit. Now: ${inWords(after)}`;
  const isSmall = size === 'small';
  const on: Ruler = isSmall
    ? { left: 2, limit: 84, end: 104, top: 3, height: 20 }
    : { left: 4, limit: 226, end: 278, top: 4, height: 28 };
  const upper: Ruler = { ...on, height: on.height * BEFORE };
  const lower: Ruler = { ...on, top: on.top + upper.height, height: on.height - upper.height };
  return figure({ width: isSmall ? 112 : 300, height: isSmall ? 26 : 52, title, alt, bare }, [
    margin(on, after.advised),
    tag`<g class="was" opacity="0.55">${demand(upper, before)}</g>`,
    tag`<g class="now">${demand(lower, after)}</g>`,
    ruler(on),
    isSmall ? null : labels(on, after.advised),
  ]);
};

const characters = {
  unicode: { start: '├', limit: '┃', from: '[', to: ']', doubt: '┈', margin: '░', free: ' ', beyond: '▸' },
  ascii: { start: '|', limit: '|', from: '[', to: ']', doubt: '.', margin: ':', free: ' ', beyond: '>' },
} as const;

/**
 * The use scale as text of a fixed width: start, free and used cells, the limit, then room for what is over it.
 * `├━━━━━━━━━        ░░░░░░┃    ` holds; `├╳╳╳╳╳╳╳╳╳╳╳╳╳╳╳╳╳╳╳╳╳╳╳┃╳╳  ` fails.
 * @param use shares of the limit and the verdict
 * @param width characters, at least 12
 * @param ascii plain ASCII instead of Unicode
 * @returns exactly `width` characters
 * @throws RangeError for a narrower one
 */
export const useScaleText = (use: Used, width: number, ascii = false): string => {
  if (!(width >= 12)) throw new RangeError(`a use scale of ${width} characters is too narrow to read`);
  const set = characters[ascii ? 'ascii' : 'unicode'];
  const over = Math.max(2, Math.round(width * 0.16));
  const inside = width - 2 - over;
  const silent = use.verdict === 'not-stated' || Number.isNaN(use.worst);
  const advised = use.advised > 0 && use.advised < 1 ? Math.round(use.advised * inside) : inside;
  // Cells of the whole row, the limit between them; a demand over the limit shows at least one cell beyond it.
  const cellsTo = (share: number): number => {
    if (!(share > 0)) return 0;
    const cells = Math.round(share * inside);
    if (share > 1) return Math.min(Math.max(cells, inside + 1), inside + over);
    // Rounding to a cell must not move a demand into the margin, or out of it.
    return share > use.advised ? Math.min(Math.max(cells, advised + 1), inside) : Math.min(Math.max(cells, 1), advised);
  };
  const [sure, most] = silent ? [0, 0] : [cellsTo(Math.min(use.best, use.worst)), cellsTo(use.worst)];
  const bar = verdictSign(use.verdict, ascii);
  const cells = Array.from({ length: inside + over }, (_, i) => {
    if (i < sure) return bar;
    if (i < most) return most - sure === 1 ? set.doubt : i === sure ? set.from : i === most - 1 ? set.to : set.doubt;
    return i >= advised && i < inside ? set.margin : set.free;
  });
  const beyond = Number.isFinite(use.worst) ? use.worst * inside > inside + over + 0.5 : use.worst > 0;
  if (beyond && !silent) cells[inside + over - 1] = set.beyond;
  return set.start + cells.slice(0, inside).join('') + set.limit + cells.slice(inside).join('');
};
