import { describe, expect, it } from 'vitest';
import { createHouse } from '../machine.ts';
import type { Discipline } from '../../contract/index.ts';
import type { Lever } from '../../kernel/index.ts';
import { base, find, houseOf, open, rows, shelfTrade } from './bench.ts';

/** 1.794 mm of 1.2 mm by pencil: 149.5 %. */
const sagging = base.replace('10..20 kg', '40 kg');
const key = 'SHELF-010/top';

/** A house in which the first check has these levers. */
const levered = (...levers: readonly Lever[]) => {
  const [first, ...rest] = shelfTrade.checks;
  const run: typeof first = {
    ...first!,
    run: (context, subject) => ({ ...first!.run(context, subject)!, levers }),
  };
  return createHouse({
    disciplines: [{ ...shelfTrade, checks: [run, ...rest] } as unknown as Discipline],
    catalogue: rows,
  });
};
const span = (more: object = {}): Lever => ({
  turn: 'shelves.top.span',
  toward: 'lower',
  means: 'closer sides',
  ...more,
});
const load = (more: object = {}): Lever => ({
  turn: 'shelves.top.load',
  toward: 'lower',
  means: 'fewer boxes',
  ...more,
});

describe('a remedy', () => {
  it('turns a fact as little as makes the finding hold, in few figures, and says from what to what', () => {
    const remedies = open(sagging).remedies(key);
    const turned = remedies.find(({ edits }) => edits[0]!.path === 'shelves.top.span')!;
    // By pencil: sag goes with the third power, so that 800 mm·(0.8·1.2/1.794)^(1/3) = 649.6 mm leaves what is advised.
    const [edit] = turned.edits;
    const after = Number.parseFloat(edit!.after!);
    expect(edit).toEqual({ path: 'shelves.top.span', before: '800 mm', after: `${after} mm` });
    expect(after).toBeLessThan(649.6);
    expect(after).toBeGreaterThan(649.6 * 0.99);
    expect(Number.isInteger(after)).toBe(true);
    expect(turned.says).toBe(`put the sides closer: 800 mm → ${after} mm`);
    expect(turned.verdict).toBe('holds');
    expect(turned.percent).toBeCloseTo(0.8 * (after / 649.6) ** 3, 3);
  });

  it('is true: the book with its edits written into the text gets the verdict that it promises', () => {
    const machine = open(sagging);
    for (const { edits, verdict, percent } of machine.remedies(key)) {
      const text = machine.editedTexts(edits.map(({ path, after }) => ({ path, text: after }))).get('book.yaml')!;
      const finding = find(open(text), key);
      expect([finding.verdict, finding.use?.worst]).toEqual([verdict, percent]);
    }
  });

  it('turns upward too, and stays within the bounds of the lever when it rounds', () => {
    const allow = (most?: number): Lever => ({
      turn: 'shelves.top.allowed-sag',
      toward: 'higher',
      means: 'more',
      ...(most ? { most } : {}),
    });
    // 1.794/0.8 = 2.242 mm by pencil.
    expect(open(sagging, levered(allow())).remedies(key)[0]?.edits[0]?.after).toBe('2.3 mm');
    expect(open(sagging, levered(allow(0.00225))).remedies(key)[0]?.edits[0]?.after).toBe('2.25 mm');
    // Not far enough to leave what is advised, so that it is tight: 1.8 mm would do for that.
    expect(open(sagging, levered(allow(0.002))).remedies(key)[0]).toMatchObject({
      verdict: 'tight',
      edits: [{ after: '1.8 mm' }],
    });
    expect(open(sagging, levered(allow(0.0015))).remedies(key)).toEqual([]);
  });

  it('is none when the bound lies on the wrong side, the fact is not there, or the setting cannot be written', () => {
    expect(open(sagging, levered(span({ least: 0.9 }))).remedies(key)).toEqual([]);
    expect(open(sagging, levered(span({ least: 0 }))).remedies(key)).toEqual([]);
    expect(open(sagging, levered({ turn: 'shelves.top.depth', toward: 'lower', means: '' })).remedies(key)).toEqual([]);
    // The key allows no span above 3 m: an edit beyond it is no answer, and no fault of the program.
    const longer: Lever = { turn: 'shelves.top.span', toward: 'higher', means: 'longer', most: 5 };
    expect(open(sagging, levered(longer)).remedies(key)).toEqual([]);
    expect(
      open(sagging, levered({ set: [{ path: 'shelves.top.span', text: '5 m' }], means: '' })).remedies(key),
    ).toEqual([]);
    expect(
      open(sagging, levered({ set: [{ path: 'shelves.top.span', text: 'wide' }], means: '' })).remedies(key),
    ).toEqual([]);
  });

  it('looks on the way when the farthest setting does not work', () => {
    // Very light boxes are not asked about here: the question is about the load, which works on the way and at the end.
    expect(open(sagging, levered(load())).remedies(key)[0]?.edits[0]?.after).toBe('21 kg');
  });

  it('sets several facts at once and says what else it cures and breaks', () => {
    const edits = [
      { path: 'shelves.top.span', text: '600 mm' },
      { path: 'shelves.top.height', text: '0.9 m' },
      { path: 'shelves.top.backstop', text: 'true' },
    ];
    const text = sagging.replace('    backstop: true\n', '');
    const [remedy] = open(text, levered({ set: edits, means: 'move it down' })).remedies(key);
    expect(remedy?.alsoCures).toEqual(['SHELF-030/top']);
    expect(remedy?.breaks).toEqual([{ key: 'SHELF-050/top', before: 'holds', after: 'fails' }]);
    expect(remedy?.edits.map(({ before }) => before)).toEqual(['800 mm', '1.2..1.5 m', null]);
  });

  it('counts as broken what can no longer be told, and never as cured', () => {
    const bare: Lever = {
      set: [
        { path: 'shelves.top.span', text: '600 mm' },
        { path: 'shelves.top.height', text: null },
        { path: 'shelves.top.hum', text: null },
      ],
      means: 'forget it',
    };
    const text = sagging.replace('hum: 20 Hz', 'hum: 5 Hz');
    expect(find(open(text), 'SHELF-040/top').verdict).toBe('fails');
    const [remedy] = open(text, levered(bare)).remedies(key);
    expect(remedy?.breaks).toEqual([{ key: 'SHELF-050/top', before: 'holds', after: 'not-stated' }]);
    expect(remedy?.alsoCures).toEqual([]);
  });

  it('substitutes parts that make it hold, and leaves out those that do not', () => {
    const another: Lever = { substitute: 'shelves.top.board', kind: 'board', means: 'another board' };
    const remedies = open(sagging, levered(another)).remedies(key);
    // 1.794 mm·(18/22)³ = 0.983 mm is 82 %: tight. With 40 mm it is 14 %.
    expect(remedies.map(({ says, verdict }) => [says, verdict])).toEqual([
      ['another board: plank-40', 'holds'],
      ['another board: plank-22', 'tight'],
    ]);
  });

  it('does not make things worse than they are, nor offer what changes nothing', () => {
    const tight = base.replace('10..20 kg', '10..24 kg');
    expect(find(open(tight), key).verdict).toBe('tight');
    const worse: Lever = { set: [{ path: 'shelves.top.span', text: '0.7..0.9 m' }], means: 'somewhere' };
    const same: Lever = { set: [{ path: 'shelves.top.span', text: '0.8 m' }], means: 'the same' };
    expect(open(tight, levered(worse, same)).remedies(key)).toEqual([]);
  });

  it('is not offered when the text of the book has no room for it', () => {
    const set: Lever = { set: [{ path: 'parts.plank-18.thickness', text: '30 mm' }], means: 'a thicker one' };
    const remedies = open(sagging, levered(set)).remedies(key);
    // A catalogue part is not in the book: with nothing but a thickness the book could not be read.
    for (const { edits } of remedies) {
      const texts = open(sagging).editedTexts(edits.map(({ path, after }) => ({ path, text: after })));
      expect(houseOf().read((name) => texts.get(name), 'book.yaml').ok).toBe(true);
    }
  });

  it('comes least harmful first, and is worked out once', () => {
    const machine = open(sagging);
    const remedies = machine.remedies(key);
    expect(machine.remedies(key)).toBe(remedies);
    const harm = remedies.map(({ breaks, verdict }) => breaks.length * 2 + (verdict === 'holds' ? 0 : 1));
    expect(harm).toEqual([...harm].sort((a, b) => a - b));
    expect(machine.remedies('SHELF-999')).toEqual([]);
  });
});
