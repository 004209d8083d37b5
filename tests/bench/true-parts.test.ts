/**
 * A thousand true parts for every test at the bench, measured with errors up to the limits of the instruments: the range that is
 * written into the book holds the true number. Parts are simulated forward, by other means than the formulas read them back.
 */
import { describe, expect, it } from 'vitest';
import { checkBook } from '../../src/app/testing.ts';
import { house } from '../../src/app/index.ts';
import { Quantity } from '../../src/contract/index.ts';
import { registry } from '../../src/disciplines/registry.ts';
import { benchTargets, rangeOf, takeReading, type BenchTarget, type Ends, type Taken } from '../../src/engine/bench.ts';
import { outcomeOf, writtenRange } from '../../src/engine/bench-outcome.ts';
import { readQuantity, seeded, unitNamed, type Unit } from '../../src/kernel/index.ts';
import { between, meterFor, simulated, type Random } from './parts.ts';

const PARTS = 1000;
const AT_LEAST = 0.95;

// What tests take from the book are ranges around what the simulated parts are.
const machine = checkBook(`book: 1
title: Bench
revision: A
axes:
  x: { drive: belt, motors: [M1] }
  z: { drive: hoist, dock: { kind: cup, catch: 45 mm } }
hanging: { centre-of-mass-below-hook: 60..80 mm }
motors: { M1: { part: scrap, driver: D1 } }
drivers: { D1: { current: 1 A } }
parts: { scrap: { kind: stepper, rated-current: 2.6..2.9 A } }
supplies: { G1: { rails: { 24V: { volts: 24 V } } } }
`);
const targets = benchTargets(registry, machine.snapshot);
const tests = registry.flatMap(({ bench }) => bench ?? []);

const targetOf = (name: string): BenchTarget => targets.find(({ test }) => test.name === name)!;
const infoOf = ({ path }: BenchTarget) => house.schema.keyInfo(path, machine.snapshot.tree);
const siUnit = ({ test }: BenchTarget): Unit => {
  const written = writtenRange({ low: 1, high: 1 }, test.of).replace(/^[\d.]+ ?/, '');
  return unitNamed(written, test.of) as Unit;
};

/** A doubt that holds the true number somewhere, as an author guesses. */
const guessed = (truth: number, target: BenchTarget, random: Random): Quantity => {
  const low = truth * between(random, 0.6, 1);
  const high = truth * between(random, 1, 1.5);
  return new Quantity(low, high, target.test.of, siUnit(target), 'doubt', 'guess', 'a guess');
};

const rangesOf = (target: BenchTarget, times: number, shown: () => Readonly<Record<string, string>>): Ends[] =>
  Array.from({ length: times }, () => {
    const set: Record<string, Taken> = {};
    for (const [name, text] of Object.entries(shown())) {
      const taken = takeReading(text, target.test.readings[name]!);
      if (!taken.ok) throw new Error(`${name} ${text}: ${taken.problem.what}`);
      set[name] = taken.value;
    }
    const range = rangeOf(target, set, machine.snapshot);
    if (!range.ok) throw new Error(`${JSON.stringify(set)}: ${range.problem.what}`);
    return range.value;
  });

it('there is a simulated part for every test, and a thing to put on the bench', () => {
  expect(tests.map(({ name }) => name).toSorted()).toEqual(Object.keys(simulated).toSorted());
  for (const { name } of tests) expect(targetOf(name), name).toBeDefined();
});

describe.each(tests.map((test) => [test.name, test] as const))('%s', (name, test) => {
  const target = targetOf(name);
  const [advised, most] = test.times;

  it('leaves the true number in at least 95 of 100 parts', () => {
    const random = seeded(20_000 + name.length);
    let held = 0;
    let narrower = 0;
    for (let part = 0; part < PARTS; part++) {
      const { truth, shown } = simulated[name]!(random, test, meterFor(test, random));
      const stands = guessed(truth, target, random);
      const times = 1 + Math.floor(random() * Math.min(most, advised + 2));
      const outcome = outcomeOf({
        target: { ...target, stands, stated: true },
        ranges: rangesOf(target, times, shown),
        tree: {},
        info: infoOf(target),
        unit: undefined,
      });
      if (outcome.kind === 'same') held++;
      if (outcome.kind !== 'narrowed') continue;
      const written = readQuantity(outcome.text, test.of);
      expect(written.ok, outcome.text).toBe(true);
      if (written.ok && written.lo <= truth && truth <= written.hi) held++;
      if (outcome.ends.high - outcome.ends.low < stands.high - stands.low) narrower++;
    }
    expect(held / PARTS).toBeGreaterThanOrEqual(AT_LEAST);
    // A range that holds everything because it says nothing would be no measurement.
    expect(narrower / PARTS).toBeGreaterThan(0.5);
  });

  it('tells a reading that is none', () => {
    const random = seeded(31 + name.length);
    for (let part = 0; part < 8; part++) {
      const { shown } = simulated[name]!(random, test, meterFor(test, random));
      for (const [key, text] of Object.entries(shown())) {
        const reading = test.readings[key]!;
        for (const wrong of [`-${text}`, text.replace(/^[\d.]+/, String(1e4 * (reading.most + 1))), `${text} parsec`]) {
          // Below nothing is only what is not nothing, and of temperatures nothing is.
          if (wrong.startsWith('-') && (reading.of === 'temperature' || Number.parseFloat(text) === 0)) continue;
          const taken = takeReading(wrong, reading);
          expect(taken.ok, `${key}: ${wrong}`).toBe(false);
          if (!taken.ok)
            expect([taken.problem.what, taken.problem.allowed].every((words) => words.length > 5)).toBe(true);
        }
      }
    }
  });

  it('tells two parts that are not one', () => {
    if (most === 1) return;
    const random = seeded(77 + name.length);
    const seen: string[] = [];
    for (let pair = 0; pair < 3000 && seen.length < 20; pair++) {
      const [one, other] = [0, 1].map(() => simulated[name]!(random, test, meterFor(test, random)));
      // Far enough apart that no instrument of the bench could take one for the other.
      if (!(Math.max(one!.truth, other!.truth) > 2.5 * Math.min(one!.truth, other!.truth))) continue;
      const ranges = [...rangesOf(target, 1, one!.shown), ...rangesOf(target, 1, other!.shown)];
      seen.push(outcomeOf({ target, ranges, tree: {}, info: infoOf(target), unit: undefined }).kind);
    }
    expect(seen.length).toBeGreaterThan(5);
    expect(new Set(seen)).toEqual(new Set(['contradiction']));
  });

  it('tells a part that is not what the book says', () => {
    const random = seeded(99 + name.length);
    for (let part = 0; part < 20; part++) {
      const { shown } = simulated[name]!(random, test, meterFor(test, random));
      const ranges = rangesOf(target, 1, shown);
      const beyond = ranges[0]!.high * 1.02;
      const stands = new Quantity(beyond, beyond * 1.1, test.of, siUnit(target), 'doubt', 'plate', 'the plate');
      const outcome = outcomeOf({
        target: { ...target, stands, stated: true },
        ranges,
        tree: {},
        info: infoOf(target),
        unit: undefined,
      });
      expect(outcome).toMatchObject({ kind: 'contradiction', with: 'the book' });
      // What the book keeps of it is still apart.
      if (outcome.kind === 'contradiction') expect(outcome.kept[0]!.high).toBeLessThan(beyond);
    }
  });
});
