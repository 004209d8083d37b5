import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Verdict } from '../../kernel/findings.ts';
import { markSvg, markText, verdictSign } from '../mark.ts';
import { percentText } from '../../kernel/percent.ts';
import { movedScaleSvg, useScaleSvg, useScaleText, useText, type Used } from '../use-scale.ts';
import { firstFault } from './well-formed.ts';

const used = (worst: number, verdict: Verdict, best = worst): Used => ({ worst, best, advised: 0.7, verdict });

describe('a share in words', () => {
  it.each([
    [0, '0 %'],
    [0.0312, '3.1 %'],
    [0.942, '94 %'],
    [1, '100 %'],
    [2.418, '242 %'],
    [Infinity, 'over 999 %'],
    [NaN, 'no number'],
  ])('%s is %s', (share, shown) => {
    expect(percentText(share)).toBe(shown);
  });

  it('never rounds across the limit', () => {
    expect([1.003, 1.0004, 1 + 1e-9, 0.9996, 1 - 1e-9].map(percentText)).toEqual([
      '100.3 %',
      '100.04 %',
      'just over 100 %',
      'just under 100 %',
      'just under 100 %',
    ]);
  });

  it('shows a range where a doubt makes one', () => {
    expect(useText({ best: 0.61, worst: 0.94 })).toBe('61–94 %');
    expect(useText({ best: 0.94, worst: 0.94 })).toBe('94 %');
  });
});

describe('the use scale as text', () => {
  it.each([
    [used(0.3, 'holds'), '├━━━━━━━        ░░░░░░░┃    '],
    [used(0.8, 'tight'), '├┿┿┿┿┿┿┿┿┿┿┿┿┿┿┿┿┿┿░░░░┃    '],
    [used(1.003, 'fails'), '├╳╳╳╳╳╳╳╳╳╳╳╳╳╳╳╳╳╳╳╳╳╳┃╳   '],
    [used(4, 'fails'), '├╳╳╳╳╳╳╳╳╳╳╳╳╳╳╳╳╳╳╳╳╳╳┃╳╳╳▸'],
    [used(0.94, 'open', 0.6), '├╌╌╌╌╌╌╌╌╌╌╌╌╌[┈┈┈┈┈┈]░┃    '],
    [used(0.5, 'not-stated'), '├               ░░░░░░░┃    '],
  ])('draws %o', (use, shown) => {
    expect(useScaleText(use, 28)).toBe(shown);
  });

  it('draws the same in ASCII', () => {
    const shown = useScaleText(used(1.2, 'fails', 0.9), 28, true);
    expect(shown).toBe('|XXXXXXXXXXXXXXXXXXXX[.|...]');
    expect(shown).toMatch(/^[ -~]*$/);
  });

  it('has the width it was asked for and tells over from under, and margin from free', () => {
    const share = fc.double({ min: 0, max: 3, noNaN: true });
    fc.assert(
      fc.property(share, fc.integer({ min: 12, max: 80 }), fc.boolean(), (worst, width, ascii) => {
        const shown = [...useScaleText(used(worst, 'fails'), width, ascii)];
        const sign = verdictSign('fails', ascii);
        const limit = shown.lastIndexOf(ascii ? '|' : '┃');
        const margin = shown.slice(1, limit).filter((c) => c === (ascii ? ':' : '░')).length;
        expect(shown).toHaveLength(width);
        expect(shown[limit + 1] !== ' ').toBe(worst > 1);
        const whole = limit - 1 - Math.round(0.7 * (limit - 1));
        expect(margin < whole).toBe(worst > 0.7);
        expect(shown.includes(sign)).toBe(worst > 0);
      }),
    );
  });

  it('refuses a width in which nothing can be read', () => {
    expect(() => useScaleText(used(0.5, 'holds'), 11)).toThrow(RangeError);
  });
});

describe('the use scale as a figure', () => {
  const shares = [0, 0.3, 0.99, 1.3, 7, Infinity, NaN];
  it.each(['small', 'large'] as const)('is well formed and says what it shows: %s', (size) => {
    for (const worst of shares) {
      const svg = useScaleSvg(used(worst, 'fails'), size);
      expect(firstFault(svg)).toBeUndefined();
      expect(svg).toContain(`${percentText(worst)} of limit`);
      expect(svg).not.toMatch(/NaN|Infinity/);
    }
  });

  it('runs the bar past the limit only where the demand does', () => {
    // The limit of a small scale stands at 84 px.
    const ends = (use: Used): number =>
      Math.max(
        ...[...useScaleSvg(use, 'small', true).matchAll(/class="s-fails[^"]*" d="([^"]*)"/g)].flatMap(([, d = '']) =>
          [...d.matchAll(/[ML]([\d.]+),/g)].map(([, x]) => Number(x)),
        ),
      );
    expect(ends(used(1.1, 'fails'))).toBeGreaterThan(84);
    expect(ends(used(0.95, 'fails'))).toBeLessThan(84);
  });

  it('leaves out its style where the page has it', () => {
    expect(useScaleSvg(used(0.5, 'holds'))).toContain('<style>');
    expect(useScaleSvg(used(0.5, 'holds'), 'small', true)).not.toContain('<style>');
  });
});

describe('use before and after a change', () => {
  const shares = [0, 0.3, 0.99, 1.3, 7, Infinity, NaN];
  // Right ends of the two bars, in px.
  const ends = (svg: string): readonly number[] =>
    ['was', 'now'].map((lane) => {
      const drawn = new RegExp(`<g class="${lane}"[^>]*>(.*?)</g>`).exec(svg)?.[1] ?? '';
      return Math.max(...[...drawn.matchAll(/[ML]([\d.]+),/g)].map(([, x]) => Number(x)));
    });

  it.each(['small', 'large'] as const)('is well formed and says both: %s', (size) => {
    for (const before of shares)
      for (const after of shares) {
        const svg = movedScaleSvg(used(before, 'fails'), used(after, 'tight'), size);
        expect(firstFault(svg)).toBeUndefined();
        expect(svg).toContain(`Before: fails, ${percentText(before)} of limit. Now: tight, ${percentText(after)}`);
        expect(svg).not.toMatch(/NaN|Infinity/);
      }
  });

  it('draws both on the same ruler', () => {
    // The ruler of a small scale runs from 2 px to its limit at 84 px.
    const [was, now] = ends(movedScaleSvg(used(0.25, 'holds'), used(0.75, 'tight'), 'small', true));
    expect(was).toBeCloseTo(2 + 0.25 * 82, 1);
    expect(now).toBeCloseTo(2 + 0.75 * 82, 1);
  });

  it('draws no bar for what had no percentage', () => {
    const svg = movedScaleSvg(used(0.5, 'not-stated'), used(0.5, 'holds'), 'small', true);
    expect(svg).toMatch(/<g class="was"[^>]*><\/g>/);
  });
});

describe('marks', () => {
  it('stand beside their word and differ without colour', () => {
    const verdicts: readonly Verdict[] = ['holds', 'tight', 'fails', 'open', 'not-stated'];
    expect(verdicts.map((v) => markText(v))).toEqual(['━ holds', '┿ tight', '╳ fails', '╌ open', '· not stated']);
    expect(new Set(verdicts.map((v) => markText(v, true)[0])).size).toBe(5);
    const shapes = verdicts.map((v) => markSvg(v).replace(/s-(holds|tight|fails|open|soft)/g, 's'));
    expect(new Set(shapes).size).toBe(5);
    for (const svg of verdicts.map(markSvg)) {
      expect(firstFault(svg)).toBeUndefined();
      expect(svg).toContain('aria-hidden="true"');
    }
  });
});
