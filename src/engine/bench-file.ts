/** Readings in a file: for each test a list of sets, `winding-resistance: [{ volts: 0.94 V, current: 0.96 A, … }]`. */
import { Plain } from '../contract/index.ts';
import { takeReading, type BenchTarget, type ReadingSet, type Taken } from './bench.ts';
import { nearest } from '../kernel/nearest.ts';
import { listed, problemAt, quote, under, type BookProblem, type Span } from './read/problem.ts';
import { unfold, type Spot } from './read/unfold.ts';
import { isMap } from './read/walk.ts';
import { parseFile } from './read/yaml.ts';
import type { BenchTest } from '../contract/index.ts';

/** Sets of readings by name of test. */
export type Readings = ReadonlyMap<string, readonly ReadingSet[]>;

export type ReadingsResult =
  | { readonly ok: true; readonly readings: Readings; readonly warnings: readonly BookProblem[] }
  | { readonly ok: false; readonly problems: readonly BookProblem[] };

const keySpan = (spot: Spot): Span => ({ source: spot.source, ...(spot.key ?? { start: spot.start, end: spot.end }) });

/**
 * Reads a file of readings. Says everything that is wrong at once.
 *
 * @param targets what is on the bench
 */
export const readReadings = (file: string, text: string, targets: readonly BenchTarget[]): ReadingsResult => {
  const parsed = parseFile(file, text);
  if (!parsed.ok) return { ok: false, problems: parsed.problems };
  const { raw, spots, problems: found, settled } = unfold(parsed);
  const problems: BookProblem[] = [...found];
  const tests = new Map(targets.map(({ test }) => [test.name, test]));
  const tell = (path: string, what: string, allowed: string, span = (spot: Spot): Span => spot): void => {
    const spot = spots.get(path);
    if (spot && !settled.has(path)) problems.push(problemAt(span(spot), what, allowed, { path }));
  };

  const setAt = (test: BenchTest, value: unknown, path: string): ReadingSet => {
    const wanted = Object.keys(test.readings);
    const set: Record<string, Taken> = {};
    if (!isMap(value)) {
      tell(path, 'This is no set of readings.', `A map with ${listed(wanted)}.`);
      return set;
    }
    for (const key of Object.keys(value))
      if (!Object.hasOwn(test.readings, key)) {
        const near = nearest(key, wanted);
        tell(
          under(path, key),
          `${test.name} asks for no ${quote(key)}.`,
          near ? `Did you mean ${near}?` : `It asks for ${listed(wanted)}.`,
          keySpan,
        );
      }
    for (const key of wanted) {
      const given = Object.hasOwn(value, key) ? value[key] : undefined;
      const written = given instanceof Plain ? given.source : given;
      const reading = test.readings[key]!;
      if (given === undefined)
        tell(path, `${key} is missing: ${reading.means}.`, `${key}: ${reading.example}`, (spot) =>
          spot.key ? keySpan(spot) : spot,
        );
      else if (typeof written !== 'string')
        tell(under(path, key), 'A list or map stands where a reading belongs.', `Such as ${reading.example}.`);
      else {
        const taken = takeReading(written, reading);
        if (taken.ok) set[key] = taken.value;
        else tell(under(path, key), taken.problem.what, taken.problem.allowed);
      }
    }
    return set;
  };

  const readings = new Map<string, readonly ReadingSet[]>();
  for (const [name, value] of Object.entries(raw)) {
    const test = tests.get(name);
    if (!test) {
      const near = nearest(name, [...tests.keys()]);
      tell(
        name,
        `There is no test ${quote(name)} for what is on the bench.`,
        near ? `Did you mean ${near}?` : `Tests: ${listed([...tests.keys()])}.`,
        keySpan,
      );
      continue;
    }
    const list = Array.isArray(value) ? (value as readonly unknown[]) : [value];
    const [, most] = test.times;
    if (list.length > most)
      tell(
        name,
        `${name} stands here ${list.length} times.`,
        most === 1 ? 'Once: count all trials as one reading.' : `At most ${most} times.`,
        keySpan,
      );
    readings.set(
      name,
      list.map((one, i) => setAt(test, one, Array.isArray(value) ? under(name, i) : name)),
    );
  }
  const errors = problems.filter(({ severity }) => severity === 'error');
  return errors.length > 0 ? { ok: false, problems } : { ok: true, readings, warnings: problems };
};

/** Readings that were taken, as such a file. */
export const readingsText = (readings: ReadonlyMap<string, readonly Readonly<Record<string, string>>[]>): string =>
  `# YAML 1.2\n${[...readings]
    .filter(([, sets]) => sets.length > 0)
    .map(
      ([name, sets]) =>
        `${name}:\n${sets
          .map(
            (set) =>
              `  - { ${Object.entries(set)
                .map(([key, text]) => `${key}: ${JSON.stringify(text)}`)
                .join(', ')} }\n`,
          )
          .join('')}`,
    )
    .join('')}`;
