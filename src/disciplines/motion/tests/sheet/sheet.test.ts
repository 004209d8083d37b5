import { describe, expect, it } from 'vitest';
import { checkBook } from '../../../../app/testing.ts';
import type { Block } from '../../../../contract/index.ts';
import { base } from '../base.ts';

const { document, files } = checkBook(base).sheet('motion');
const of = <K extends Block['kind']>(kind: K, blocks: readonly Block[] = document.blocks) =>
  blocks.filter((block): block is Extract<Block, { kind: K }> => block.kind === kind);
const tableNamed = (name: string) => of('table').find((table) => table.name === name)!;
const texts = (row: readonly (string | { readonly text: string })[]): readonly string[] =>
  row.map((cell) => (typeof cell === 'string' ? cell : cell.text));

describe('the sheet', () => {
  it('has findings, working and cautions', () => {
    expect(of('findings')).toHaveLength(1);
    expect(of('working')).toHaveLength(1);
    expect(of('cautions')[0]!.texts.join(' ')).toMatch(/raised load[\s\S]*hot[\s\S]*live[\s\S]*local codes/);
  });

  it('draws every motor of every axis, the drum and the sinking load, each with words', () => {
    const figures = of('figure');
    expect(figures.map(({ name }) => name)).toEqual(
      expect.arrayContaining([
        'torque-x-m1',
        'torque-y-m2',
        'torque-y-m3',
        'torque-z-m4',
        'torque-lift-m5',
        'drum-z',
        'sinking-z-m4',
        'current-d1',
        'current-d4',
        'substitutes-x-m1',
      ]),
    );
    expect(new Set(figures.map(({ name }) => name)).size).toBe(figures.length);
    for (const { svg, alt, caption, name } of figures) {
      expect(svg, name).toMatch(/^<svg[\s\S]*<\/svg>$/);
      expect(alt.length, name).toBeGreaterThan(20);
      expect(caption.length, name).toBeGreaterThan(20);
    }
  });

  it('prints the switch settings of every driver, on the sheet and in a file of their own', () => {
    const rows = tableNamed('driver-settings').rows.map(texts);
    expect(rows[0]).toEqual(['D1', 'M1', 'chopper', '1/8', '1.2 A peak', '1.2 A', '—', '100 %', 'unpowered', '0.6 A']);
    // At 1.0 A the hoist is tight: 1.2 A is the least that leaves the margin.
    expect(rows[3]!.at(-1)).toBe('1.2 A');
    const [file] = files;
    expect(file?.name).toBe('driver-settings');
    expect(file?.rows.slice(1)).toEqual(rows.map((row) => row.slice(0, -1)));
  });

  it('shows demands with the range of what is doubtful', () => {
    const hoisting = tableNamed('axis-demands')
      .rows.map(texts)
      .find(([axis]) => axis === 'z')!;
    expect(hoisting[4]).toMatch(/^0\.126–0\.183 N·m$/);
  });

  it('says what a tensioned belt sounds like', () => {
    const x = tableNamed('belts')
      .rows.map(texts)
      .find(([axis]) => axis === 'x')!;
    // √(15 N / 8.4 g/m) / (2 · 700 mm)
    expect(x[4]).toBe('30.2 Hz');
  });
});

describe('a book of which little is known', () => {
  const young = `book: 1
title: Bench
revision: A
axes:
  x: { drive: belt, motors: [M1], speed: 200 mm/s }
  z: { drive: hoist, motors: [M2], travel: 500 mm }
motors:
  M1: { part: scrap }
  M2: { part: scrap }
parts:
  scrap: { kind: stepper, frame: 23, body: 56 mm }
`;
  it('still gets a sheet, which says what is missing instead of a figure', () => {
    const { document } = checkBook(young).sheet('motion');
    expect(of('figure', document.blocks)).toEqual([]);
    expect(
      of('paragraph', document.blocks)
        .map(({ text }) => text)
        .join('\n'),
    ).toMatch(/No figure of M1 on x: not stated yet/);
  });
});
