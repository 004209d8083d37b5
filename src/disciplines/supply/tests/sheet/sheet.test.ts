import { describe, expect, it } from 'vitest';
import { checkBook } from '../../../../app/testing.ts';
import type { Block } from '../../../../contract/index.ts';
import { weekPoints } from '../../figures/week.ts';
import { base } from '../base.ts';

const { document } = checkBook(base).sheet('supply');
const of = <K extends Block['kind']>(kind: K, blocks: readonly Block[] = document.blocks) =>
  blocks.filter((block): block is Extract<Block, { kind: K }> => block.kind === kind);
const rowsOf = (name: string): readonly (readonly string[])[] =>
  of('table')
    .find((table) => table.name === name)!
    .rows.map((row) => row.map((cell) => (typeof cell === 'string' ? cell : cell.text)));

describe('the sheet', () => {
  it('has findings, working and cautions', () => {
    expect(of('findings')).toHaveLength(1);
    expect(of('working')).toHaveLength(1);
    expect(of('cautions')[0]!.texts.join(' ')).toMatch(
      /licensed[\s\S]*discharged[\s\S]*hot[\s\S]*never protects a driver/,
    );
  });

  it('draws rails by mode, the warmth of every motor and a week, each with words', () => {
    const figures = of('figure');
    expect(figures.map(({ name }) => name)).toEqual(['rails-by-mode', 'warming-m1', 'warming-m2', 'energy-of-a-week']);
    for (const { svg, alt, caption, name } of figures) {
      expect(svg, name).toMatch(/^<svg[\s\S]*<\/svg>$/);
      expect(svg, name).not.toMatch(/NaN|undefined/);
      expect(alt.length, name).toBeGreaterThan(20);
      expect(caption.length, name).toBeGreaterThan(20);
    }
  });

  it('prints every rail in every mode with its use', () => {
    const [first, second] = rowsOf('rails-by-mode');
    expect(first!.slice(0, 3)).toEqual(['G1', '24V', 'on average']);
    expect(second!.slice(0, 3)).toEqual(['', '', 'at most']);
    expect(first!.at(-1)).toMatch(/^\d+ %$/);
  });

  it('prints fuses by the full rule and what stands by', () => {
    expect(rowsOf('branches')[0]!.slice(0, 4)).toEqual(['F1', 'T 2 A', '24V', 'D1, D2']);
    expect(rowsOf('from-the-socket')[0]).toEqual(['standing-by', '70 %', '2.17 W']);
  });

  it('says why there is no figure where the book is young', () => {
    const young = checkBook('book: 1\ntitle: Young\nrevision: A\nmotors: { M1: { } }\n').sheet('supply');
    const texts = of('paragraph', young.document.blocks).map(({ text }) => text);
    expect(texts.join(' ')).toMatch(/No figure of the warmth of M1: not stated yet/);
    expect(texts.join(' ')).toMatch(/No figure of a week: not stated yet/);
  });
});

it('a week of points rises by its open and closed hours', () => {
  const points = weekPoints({ unit: 'kWh', open: 9, openHour: 0.02, closedHour: 0.002, ends: [0, 2] });
  expect(points.at(-1)![0]).toBe(7);
  expect(points.at(-1)![1]).toBeCloseTo(7 * (9 * 0.02 + 15 * 0.002), 12);
  expect(points).toHaveLength(22);
});
