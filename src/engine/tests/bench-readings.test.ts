/** Readings, and the range that they leave. */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { house } from '../../app/index.ts';
import { checkBook } from '../../app/testing.ts';
import type { BenchReading } from '../../contract/index.ts';
import { registry } from '../../disciplines/registry.ts';
import { isNoNumber } from '../../kernel/index.ts';
import { benchedAt, benchTargets, bookPath, rangeOf, takeReading, type Ends, type Taken } from '../bench.ts';
import { readReadings, readingsText } from '../bench-file.ts';
import { quantityAt } from '../snapshot.ts';
import { machine, targetOf, targets, text, winding } from './bench-book.ts';

const volts: BenchReading = winding.test.readings['volts']!;

const takenFrom = (readings: Readonly<Record<string, BenchReading>>, texts: Readonly<Record<string, string>>) =>
  Object.fromEntries(
    Object.entries(texts).map(([key, written]) => {
      const taken = takeReading(written, readings[key]!);
      if (!taken.ok) throw new Error(taken.problem.what);
      return [key, taken.value] as const;
    }),
  );

describe('every test that a trade declares', () => {
  const tests = registry.flatMap(({ name, bench }) =>
    (bench ?? []).map((test) => [`${name}: ${test.name}`, test] as const),
  );

  it('has a name of its own', () => {
    const names = tests.map(([, { name }]) => name);
    expect(new Set(names).size).toBe(names.length);
  });

  it.each(tests)('%s narrows a doubt, by a declared formula that takes what is read', (_, test) => {
    const target = targetOf(test.name);
    const info = house.schema.keyInfo(target.path, machine.snapshot.tree);
    expect([info?.range, info?.of]).toEqual(['doubt', test.of]);
    expect(info?.measure, 'the key says how it is measured').toBeDefined();
    const { gives } = test;
    if (gives.by === 'trials') {
      expect(Object.keys(test.readings).toSorted()).toEqual([gives.hits, gives.trials].toSorted());
      return;
    }
    expect(registry.flatMap(({ formulas }) => formulas)).toContain(gives.formula);
    const { takes, gives: result } = gives.formula.declared;
    expect(result.of).toBe(test.of);
    const fed = [...Object.keys(test.readings), ...Object.keys(gives.book ?? {}), ...Object.keys(gives.open ?? {})];
    const wanted = Object.entries(takes).filter(([, take]) => take.otherwise === undefined);
    expect(fed.toSorted()).toEqual(wanted.map(([name]) => name).toSorted());
    for (const [name, reading] of Object.entries(test.readings)) expect(takes[name]!.of).toBe(reading.of);
    for (const wantedPath of Object.values(gives.book ?? {}))
      expect(house.schema.keyInfo(bookPath(target, wantedPath), machine.snapshot.tree)).toBeDefined();
  });

  it.each(tests)('%s has examples that can be read, a procedure and cautions', (_, test) => {
    for (const reading of Object.values(test.readings))
      expect(takeReading(reading.example, reading)).toMatchObject({ ok: true });
    expect(test.procedure.length).toBeGreaterThan(0);
    expect(test.cautions.length).toBeGreaterThan(0);
  });

  it.each(tests)('%s reaches its ends at ends of what is open', (_, test) => {
    const target = targetOf(test.name);
    const { gives } = test;
    if (gives.by === 'trials') return;
    const taken = takenFrom(
      test.readings,
      Object.fromEntries(Object.entries(test.readings).map(([key, { example }]) => [key, example])),
    );
    const range = rangeOf(target, taken, machine.snapshot);
    if (!range.ok) throw new Error(range.problem.what);
    const { low, high } = range.value;
    expect(low).toBeLessThan(high);
    const ends: Record<string, Ends> = { ...taken, ...gives.open };
    for (const [key, path] of Object.entries(gives.book ?? {}))
      ends[key] = quantityAt(bookPath(target, path), machine.snapshot)!;
    const inside = fc.record(
      Object.fromEntries(
        Object.entries(ends).map(([key, one]) => [key, fc.double({ min: one.low, max: one.high, noNaN: true })]),
      ),
    );
    fc.assert(
      fc.property(inside, (numbers) => {
        try {
          const result = gives.formula(numbers as never);
          return low <= result && result <= high;
        } catch (error) {
          return isNoNumber(error);
        }
      }),
      { numRuns: 300 },
    );
  });
});

describe('a reading', () => {
  it('is known within the limits of its instrument', () => {
    const taken = takeReading('1 V', volts);
    expect(taken).toMatchObject({ ok: true, value: { text: '1 V' } });
    // 1 V is what is shown of anything from (1 − 0.002)/1.005 to (1 + 0.002)/0.995.
    if (taken.ok) {
      expect(taken.value.low).toBeCloseTo(0.998 / 1.005, 12);
      expect(taken.value.high).toBeCloseTo(1.002 / 0.995, 12);
    }
  });

  it.each(['0.9..1.1 V', '1 V ±10%', '1 ±0.1 V'])('written as %s carries its own error', (written) => {
    const taken = takeReading(written, volts);
    if (!taken.ok) throw new Error(taken.problem.what);
    expect(taken.value.low).toBeCloseTo(0.9, 12);
    expect(taken.value.high).toBeCloseTo(1.1, 12);
  });

  it.each([
    ['0.94', /has no unit/, /0\.94 V/],
    ['0.94 A', /current/, /V/],
    ['-0.94 V', /less than nothing/, /Swap the leads/],
    ['75 V', /outside of what the instrument shows/, /10 mV to 60 V.*another instrument/],
    ['1 mV', /outside of what the instrument shows/, /10 mV to 60 V/],
    ['much', /does not begin with a number/, /V/],
  ])('%s is told', (written, what, allowed) => {
    const taken = takeReading(written, volts);
    if (taken.ok) throw new Error('taken');
    expect(taken.problem.what).toMatch(what);
    expect(taken.problem.allowed).toMatch(allowed);
  });

  it.each(['19.5', '18..20', '0'])('%s is no count', (written) => {
    expect(takeReading(written, targetOf('dock-trials').test.readings['releases']!).ok).toBe(false);
  });
});

describe('a set of readings', () => {
  it('may say that it needs more of the book', () => {
    const bare = checkBook(text.replace('    rated-current: 2.8 A\n', ''));
    const target = benchTargets(registry, bare.snapshot).find(({ test }) => test.name === 'holding-torque')!;
    const set = takenFrom(target.test.readings, { pull: '44 N', diameter: '50 mm', line: '1 mm', current: '2.8 A' });
    expect(rangeOf(target, set, bare.snapshot)).toMatchObject({
      ok: false,
      problem: { what: expect.stringContaining('parts.scrap.23.rated-current is not stated') },
    });
  });

  it('may say nothing within its errors', () => {
    const target = targetOf('swing-fading');
    const set = takenFrom(target.test.readings, { swings: '9', first: '122 mm', last: '120 mm' });
    expect(rangeOf(target, set, machine.snapshot)).toMatchObject({
      ok: false,
      problem: { what: expect.stringContaining('it has not faded by what a tape can tell') },
    });
  });

  it('cannot hit more often than it was tried', () => {
    const target = targetOf('dock-trials');
    const set = takenFrom(target.test.readings, { releases: '20', docked: '21' });
    expect(rangeOf(target, set, machine.snapshot)).toMatchObject({
      ok: false,
      problem: { what: '21 of 20 is more than all.' },
    });
  });

  it('of trials leaves the exact interval', () => {
    const target = targetOf('dock-trials');
    const range = rangeOf(target, takenFrom(target.test.readings, { releases: '20', docked: '19' }), machine.snapshot);
    if (!range.ok) throw new Error(range.problem.what);
    // One of 20 is 0.1265 % to 24.87 %: independent, tails of the binomial summed by hand.
    const binomial = (k: number, p: number): number => (k === 0 ? (1 - p) ** 20 : 20 * p * (1 - p) ** 19);
    expect(1 - binomial(0, 1 - range.value.high)).toBeCloseTo(0.025, 9);
    expect(binomial(0, 1 - range.value.low) + binomial(1, 1 - range.value.low)).toBeCloseTo(0.025, 9);
  });
});

it('what is on the bench has the names that a builder calls it by', () => {
  const namesOf = (name: string) => benchedAt(name, targets, machine.snapshot).map(({ path }) => path);
  expect(namesOf('M1')).toEqual(namesOf('scrap.23'));
  expect(namesOf('M1')).toContain('parts.scrap.23.phase-resistance');
  expect(namesOf('G1')).toEqual(['supplies.G1.rails.24V.sag']);
  expect(namesOf('24V')).toEqual(namesOf('G1'));
  expect(namesOf('hanging')).toEqual(['hanging.halves-after']);
  expect(namesOf('z')).toContain('axes.z.dock.below-pivot');
  expect(namesOf('nothing')).toEqual([]);
});

describe('a file of readings', () => {
  const of = benchedAt('M1', targets, machine.snapshot);

  it('is read as it is written', () => {
    const sets = [{ volts: '0.94 V', current: '0.96 A', temperature: '21 degC' }];
    const result = readReadings('r.yaml', readingsText(new Map([['winding-resistance', sets]])), of);
    if (!result.ok) throw new Error(JSON.stringify(result.problems));
    const [set] = result.readings.get('winding-resistance')!;
    expect(
      Object.fromEntries(Object.entries(set!).map(([key, { text: written }]: [string, Taken]) => [key, written])),
    ).toEqual(sets[0]);
  });

  it('has everything told at once, with its place', () => {
    const result = readReadings(
      'r.yaml',
      [
        'winding-resistance:',
        '  - { volts: 31 kV, curent: 0.95 A, temperature: 21 degC }',
        '  - 7',
        'winding-resistence: []',
      ].join('\n'),
      of,
    );
    if (result.ok) throw new Error('read');
    expect(result.problems.map(({ place: { line, column }, what, allowed }) => [line, column, what, allowed])).toEqual([
      [2, 21, 'winding-resistance asks for no "curent".', 'Did you mean current?'],
      [2, 14, '"31 kV" is outside of what the instrument shows.', expect.stringContaining('10 mV to 60 V')],
      [2, 5, 'current is missing: current through it.', 'current: 0.96 A'],
      [3, 5, 'This is no set of readings.', 'A map with volts, current and temperature.'],
      [4, 1, 'There is no test "winding-resistence" for what is on the bench.', 'Did you mean winding-resistance?'],
    ]);
  });

  it('holds all trials as one', () => {
    const result = readReadings(
      'r.yaml',
      'dock-trials: [{ releases: 20, docked: 19 }, { releases: 20, docked: 20 }]',
      targets,
    );
    expect(result).toMatchObject({ ok: false, problems: [{ allowed: 'Once: count all trials as one reading.' }] });
  });
});
