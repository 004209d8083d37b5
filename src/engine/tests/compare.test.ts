import { describe, expect, it } from 'vitest';
import { compareMachines, type Comparison } from '../compare.ts';
import { base, houseOf, open } from './bench.ts';

const compare = (a: string, b: string): Comparison =>
  compareMachines(open(a), open(b, houseOf()), (path) => `means ${path}`);
const moved = (a: string, b: string) =>
  compare(a, b).moved.map(({ key, before, after }) => [key, before?.verdict, after?.verdict]);

describe('two books', () => {
  it('that say the same in other units do not differ', () => {
    const same = compare(base, base.replace('800 mm', '0.8 m').replace('10..20 kg', '10000..20000 g'));
    expect(same).toEqual({ moved: [], same: 5, quiet: [] });
  });

  it('show which verdict moved and which facts stand behind it', () => {
    const { moved: all, quiet } = compare(
      base,
      base.replace('10..20 kg', '10..40 kg').replace('revision: A', 'revision: B'),
    );
    expect(all.map(({ key, before, after }) => [key, before?.verdict, after?.verdict])).toEqual([
      ['SHELF-010/top', 'holds', 'fails'],
      ['SHELF-020/top', 'holds', 'holds'],
    ]);
    expect(all[0]?.behind).toEqual([
      { path: 'shelves.top.load', means: 'means shelves.top.load', before: '10..20 kg', after: '10..40 kg' },
    ]);
    expect(quiet.map(({ path }) => path)).toEqual(['revision']);
  });

  it('show the facts of another part, also those that stand in the catalogue alone', () => {
    const [first] = compare(base, base.replace('plank-18', 'plank-22')).moved;
    expect(first?.behind.map(({ path }) => path)).toEqual(
      expect.arrayContaining(['shelves.top.board', 'parts.plank-18.thickness', 'parts.plank-22.thickness']),
    );
  });

  it('show what one of them lacks', () => {
    const without = base.replace('    hum: 20 Hz\n', '');
    expect(moved(base, without)).toEqual([['SHELF-040/top', 'holds', 'not-stated']]);
    const two = `${base}  low: { board: plank-18 }\n`;
    const keys = compare(base, two).moved.map(({ key, before }) => [key, before] as const);
    expect(new Map(keys)).toEqual(new Map(['010', '020', '030', '040', '050'].map((n) => [`SHELF-${n}/low`, null])));
  });

  it('show a percentage that moves by half a percent of the limit and not less', () => {
    // 0.896813 mm of 1.2 mm is 74.73 %; of 1.19 mm it is 75.36 %, of 1.193 mm 75.17 %.
    expect(moved(base, base.replace('1.2 mm', '1.19 mm'))).toEqual([['SHELF-010/top', 'holds', 'holds']]);
    expect(moved(base, base.replace('1.2 mm', '1.193 mm'))).toEqual([]);
  });

  it('show that it is open for another reason, and that the best case of an open one moved', () => {
    const height = (text: string) => base.replace('1.2..1.5 m', text);
    expect(moved(height('0.9..1.5 m'), height('0.9..2.5 m'))).toEqual([['SHELF-050/top', 'open', 'open']]);
    // Past 2.5 m the sag is not known.
    const unknown = base.replace('800 mm', '2.6 m');
    const doubtful =
      base.replace('board: plank-18', 'board: own') +
      'parts: { own: { kind: board, width: 300 mm, stiffness: 10 GPa, bears: 40 kg, thickness: 10..30 mm } }\n';
    expect(moved(doubtful, unknown)).toContainEqual(['SHELF-010/top', 'open', 'open']);
  });

  it('put first what is worst', () => {
    const bad = base
      .replace('10..20 kg', '10..40 kg')
      .replace('1.2..1.5 m', '0.8..1.5 m')
      .replace('    backstop: true\n', '');
    expect(moved(base, bad).map(([, , after]) => after)).toEqual(['fails', 'fails', 'open', 'holds']);
  });
});
