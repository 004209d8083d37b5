/** The mark of a verdict: a sample of its line type. It never stands without the word. */
import type { Verdict } from '../kernel/findings.ts';
import { corners, hatchPath, pathOf, type Box } from './geometry.ts';
import type { Markup } from './markup.ts';
import { figure, line, path } from './svg.ts';
import type { Tone } from './style.ts';

export const verdictWord: Readonly<Record<Verdict, string>> = {
  holds: 'holds',
  tight: 'tight',
  fails: 'fails',
  open: 'open',
  'not-stated': 'not stated',
};

/** Worst first, as lists and strips show them. */
export const worstFirst: readonly Verdict[] = ['fails', 'open', 'tight', 'holds', 'not-stated'];

export const verdictTone: Readonly<Record<Verdict, Tone>> = {
  holds: 'holds',
  tight: 'tight',
  fails: 'fails',
  open: 'open',
  'not-stated': 'soft',
};

const signs: Readonly<Record<Verdict, { readonly unicode: string; readonly ascii: string }>> = {
  holds: { unicode: '━', ascii: '=' },
  tight: { unicode: '┿', ascii: '+' },
  fails: { unicode: '╳', ascii: 'X' },
  open: { unicode: '╌', ascii: '-' },
  'not-stated': { unicode: '·', ascii: '.' },
};

/** The one character that stands for a verdict's line type. */
export const verdictSign = (verdict: Verdict, ascii = false): string => signs[verdict][ascii ? 'ascii' : 'unicode'];

/**
 * Mark and word for a terminal.
 * @param verdict which
 * @param ascii plain ASCII instead of Unicode
 */
export const markText = (verdict: Verdict, ascii = false): string =>
  `${verdictSign(verdict, ascii)} ${verdictWord[verdict]}`;

/** A bar drawn in a verdict's line type, filling the box. */
export const lineType = (verdict: Verdict, box: Box, hatchGap = 4): Markup[] => {
  const tone = verdictTone[verdict];
  const outline = pathOf(corners(box), true);
  const middle = box.y + box.height / 2;
  const end = box.x + box.width;
  switch (verdict) {
    case 'holds':
      return [line([box.x, middle], [end, middle], `s-${tone} w-heavy`)];
    case 'tight': {
      const under: Box = { x: box.x, y: middle, width: box.width, height: box.height / 2 };
      return [
        line([box.x, middle], [end, middle], `s-${tone} w-heavy`),
        path(hatchPath(corners(under), { gap: hatchGap * 0.8, angle: Math.PI / 4 }), `s-${tone} w-fine`),
      ];
    }
    case 'fails':
      return [
        path(hatchPath(corners(box), { gap: hatchGap, angle: Math.PI / 4 }), `s-${tone} w-fine`),
        path(hatchPath(corners(box), { gap: hatchGap, angle: -Math.PI / 4 }), `s-${tone} w-fine`),
        path(outline, `s-${tone} w-heavy`),
      ];
    case 'open':
      return [path(outline, `s-${tone} w-medium short`)];
    case 'not-stated':
      return [line([box.x, middle], [end, middle], `s-${tone} w-medium dotted`)];
  }
};

/**
 * The mark as a small figure. The word must stand beside it, so that the figure itself is silent.
 * @param verdict which
 * @returns an SVG element of 22 × 14 px without its own style; the page carries it
 */
export const markSvg = (verdict: Verdict): string =>
  figure(
    { width: 22, height: 14, title: verdictWord[verdict], alt: verdictWord[verdict], bare: true },
    lineType(verdict, { x: 2, y: 2, width: 18, height: 10 }),
  ).replace(/ role="img"| aria-label="[^"]*"|<title>.*<\/desc>/g, (found) =>
    found === ' role="img"' ? ' aria-hidden="true"' : '',
  );
