/** What becomes of a fact, and of the book's text. */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { house } from '../../app/index.ts';
import { checkBook } from '../../app/testing.ts';
import { Quantity } from '../../contract/index.ts';
import { registry } from '../../disciplines/registry.ts';
import { readQuantity, unitNamed, type Unit } from '../../kernel/index.ts';
import { benchTargets, type Ends } from '../bench.ts';
import { benchEdits, outcomeOf, writtenRange } from '../bench-outcome.ts';
import { machine, targetOf, text, winding } from './bench-book.ts';

describe('a written range', () => {
  const metres = unitNamed('mm', 'length') as Unit;

  it('holds what it is written for and little more', () => {
    const end = fc.double({ min: 1e-4, max: 10, noNaN: true });
    fc.assert(
      fc.property(end, end, fc.constantFrom(metres, undefined), (a, b, unit) => {
        const [low, high] = a < b ? [a, b] : [b, a];
        const back = readQuantity(writtenRange({ low, high }, 'length', unit), 'length');
        if (!back.ok) return false;
        const noise = 1e-11 * high;
        const more = 0.051 * (high - low) + noise;
        return back.lo <= low + noise && back.hi >= high - noise && low - back.lo <= more && back.hi - high <= more;
      }),
      { numRuns: 500 },
    );
  });

  it.each([
    ['0.95..1.1 Ohm', 0.95, 1.1, 'resistance', '0.95..1.1 Ohm'],
    ['1.1 N·m ±15%', 0.9, 1.3, 'torque', '0.9..1.3 N·m'],
    ['270 ozf·in', 1.4, 1.4, 'torque', '198.25'],
    ['6..14 swings', 7, 9, 'count', '7..9 swings'],
    ['70 %', 0.75, 0.9987, 'ratio', '75..100 %'],
  ] as const)('keeps the spelling of %s', (like, low, high, of, starts) => {
    const reading = readQuantity(like, of);
    if (!reading.ok) throw new Error(reading.problem.what);
    expect(writtenRange({ low, high }, of, reading.unit, like).startsWith(starts)).toBe(true);
  });
});

describe('an outcome', () => {
  const info = house.schema.keyInfo(winding.path, machine.snapshot.tree);
  const outcome = (ranges: readonly Ends[], more: { readonly tree?: object; readonly replace?: boolean } = {}) =>
    outcomeOf({
      target: winding,
      ranges,
      tree: (more.tree ?? machine.book.tree) as typeof machine.book.tree,
      info,
      unit: winding.stands!.unit,
      replace: more.replace ?? false,
    });
  const kept = (...ends: readonly Ends[]) => ({
    bench: ends.map(({ low, high }) => {
      const end = (x: number) => new Quantity(x, x, 'resistance', winding.stands!.unit, 'exact', 'stated', `${x} ohm`);
      return { by: 'winding-resistance', of: 'scrap.23', least: end(low), most: end(high) };
    }),
  });

  it('is what readings and book have in common', () => {
    expect(outcome([{ low: 0.9, high: 1.02 }])).toMatchObject({ kind: 'narrowed', text: '0.95..1.02 Ohm' });
    expect(
      outcome([
        { low: 0.98, high: 1.04 },
        { low: 0.96, high: 1.02 },
      ]),
    ).toMatchObject({ text: '0.98..1.02 Ohm' });
  });

  it('is nothing new where the readings are wider than the book', () => {
    expect(outcome([{ low: 0.9, high: 1.2 }])).toMatchObject({ kind: 'same' });
  });

  it('is a contradiction, and no mean, where they have nothing in common', () => {
    expect(outcome([{ low: 1.2, high: 1.3 }])).toMatchObject({
      kind: 'contradiction',
      with: 'the book',
      kept: [{ low: 1.2, high: 1.3 }],
    });
    expect(
      outcome([
        { low: 0.96, high: 0.98 },
        { low: 1, high: 1.02 },
        { low: 0.97, high: 1.03 },
      ]),
    ).toMatchObject({
      kind: 'contradiction',
      with: 'each other',
      kept: [
        { low: 0.96, high: 0.98 },
        { low: 1, high: 1.02 },
      ],
    });
  });

  it('keeps a contradiction apart, however narrow it is', () => {
    const { high } = winding.stands!;
    const narrow = outcome([{ low: high * (1 + 1e-5), high: high * 1.3 }]);
    if (narrow.kind !== 'contradiction') throw new Error(narrow.kind);
    expect(narrow.kept[0]!.low).toBeGreaterThan(high);
  });

  it('takes in what the book kept, once all of it agrees', () => {
    const tree = { ...machine.book.tree, ...kept({ low: 1, high: 1.06 }, { low: 1.01, high: 1.2 }) };
    expect(outcome([{ low: 0.9, high: 1.04 }], { tree })).toMatchObject({
      kind: 'narrowed',
      text: '1.01..1.04 Ohm',
      takenIn: [0, 1],
    });
  });

  it('does not forget what the book kept because a later reading suits the book', () => {
    const tree = { ...machine.book.tree, ...kept({ low: 1.2, high: 1.3 }) };
    expect(outcome([{ low: 1, high: 1.02 }], { tree })).toMatchObject({
      kind: 'contradiction',
      with: 'earlier readings',
    });
    expect(outcome([{ low: 1.2, high: 1.3 }], { tree })).toMatchObject({ kind: 'contradiction', kept: [] });
  });

  it('drops what was stated and kept when it is told to', () => {
    const tree = { ...machine.book.tree, ...kept({ low: 1.4, high: 1.5 }) };
    expect(outcome([{ low: 1.2, high: 1.3 }], { tree, replace: true })).toMatchObject({
      kind: 'narrowed',
      text: '1.2..1.3 Ohm',
      takenIn: [0],
    });
  });

  it('is told where it cannot be', () => {
    const sag = targetOf('rail-sag');
    const limits = house.schema.keyInfo(sag.path, machine.snapshot.tree);
    const result = outcomeOf({
      target: sag,
      ranges: [{ low: -0.03, high: -0.01 }],
      tree: {},
      info: limits,
      unit: undefined,
    });
    expect(result).toMatchObject({ kind: 'impossible' });
    const part = outcomeOf({
      target: sag,
      ranges: [{ low: -0.03, high: 0.01 }],
      tree: {},
      info: limits,
      unit: undefined,
    });
    expect(part).toMatchObject({ kind: 'narrowed', ends: { low: 0, high: 0.01 } });
  });
});

describe('the book afterwards', () => {
  const bench = (name: string, ranges: readonly Ends[], book = machine) => {
    const target = benchTargets(registry, book.snapshot).find(({ test }) => test.name === name)!;
    const info = house.schema.keyInfo(target.path, book.snapshot.tree);
    const unit = target.stands?.unit;
    return { target, outcome: outcomeOf({ target, ranges, tree: book.book.tree, info, unit }) };
  };
  const after = (book: typeof machine, ...names: readonly (readonly [string, readonly Ends[]])[]) => {
    const all = names.map(([name, ranges]) => bench(name, ranges, book));
    return book.editedTexts(benchEdits(all, book.book.tree, ({ stands }) => stands?.unit)).get('book.yaml')!;
  };

  it('differs in the facts alone', () => {
    const changed = after(
      machine,
      ['winding-resistance', [{ low: 0.9, high: 1.02 }]],
      ['running-force', [{ low: 6, high: 7 }]],
      ['rail-sag', [{ low: 0.02, high: 0.03 }]],
    );
    expect(changed).toBe(
      text
        .replace('0.95..1.1 Ohm', '{ is: 0.95..1.02 Ohm, from: measured }')
        .replace('{ is: 5..8 N, from: guess }', '{ is: 6..7 N, from: measured }')
        .replace('{ volts: 24 V }', '{ volts: 24 V, sag: { is: 20..30 mΩ, from: measured } }'),
    );
  });

  it('keeps line ends and what stands behind a contradiction', () => {
    const dos = checkBook(text.replaceAll('\n', '\r\n'));
    const changed = after(dos, ['winding-resistance', [{ low: 1.2, high: 1.3 }]]);
    expect(changed.replace(/\r\nbench: .*/, '')).toBe(text.replaceAll('\n', '\r\n'));
    expect(changed).toContain('bench: [{ by: winding-resistance, of: scrap.23, least: 1.2 Ohm, most: 1.3 Ohm }]');
  });

  it('has a finding that fails until readings and fact agree, and then nothing is left of it', () => {
    const told = checkBook(after(machine, ['winding-resistance', [{ low: 1.2, high: 1.3 }]]));
    const finding = told.findings.find(({ key }) => key === 'MOTION-911/scrap.23+winding-resistance');
    expect([finding?.verdict, finding?.use?.worst.toFixed(2)]).toEqual(['fails', (1.2 / 0.95).toFixed(2)]);
    expect(told.remedies(finding!.key)[0]).toMatchObject({ verdict: 'holds', breaks: [] });
    const corrected = checkBook(told.book.files.get('book.yaml')!.replace('0.95..1.1 Ohm', '0.9..1.4 Ohm'));
    expect(corrected.findings.find(({ key }) => key === finding!.key)?.verdict).toBe('open');
    const settled = after(corrected, ['winding-resistance', [{ low: 1.15, high: 1.25 }]]);
    expect(settled).toBe(text.replace('0.95..1.1 Ohm', '{ is: 1.2..1.25 Ohm, from: measured }'));
  });

  it('has a finding where readings contradict each other, whatever the fact is', () => {
    const told = checkBook(
      after(machine, [
        'swing-fading',
        [
          { low: 6, high: 8 },
          { low: 9, high: 11 },
        ],
      ]),
    );
    const finding = told.findings.find(({ key }) => key === 'SWING-910/hanging+swing-fading');
    expect(finding?.verdict).toBe('fails');
    expect(finding?.sentence).toContain('Readings contradict each other');
  });

  it.each([
    ['by: winding-resistence', /Did you mean by: winding-resistance\?/],
    ['of: scrap-24', /There is no part "scrap-24"/],
    ['least: 1.2 V', /voltage|resistance/],
  ])('is refused when what it keeps of readings is written as %s', (wrong, what) => {
    const key = wrong.split(':')[0]!;
    const record = 'by: winding-resistance, of: scrap.23, least: 1.2 ohm, most: 1.3 ohm';
    const bad = record.replace(new RegExp(`${key}: [^,]*`), wrong);
    expect(() => checkBook(`${text}bench: [{ ${bad} }]\n`)).toThrow(what);
  });
});
