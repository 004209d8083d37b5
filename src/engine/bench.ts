/** From readings at the bench to what is left of a doubtful fact. */
import {
  benchPaths,
  entryKinds,
  isEntries,
  type Quantity,
  type BenchReading,
  type BenchTest,
  type Discipline,
  type LeafProblem,
} from '../contract/index.ts';
import { exactInterval } from '../kernel/binomial.ts';
import { isNoNumber, readQuantity, show, type Take } from '../kernel/index.ts';
import { at, quantityAt, type Snapshot } from './snapshot.ts';

/** Ends in SI between which a number lies. */
export interface Ends {
  readonly low: number;
  readonly high: number;
}

/** A fact that a test narrows. */
export interface BenchTarget {
  readonly test: BenchTest;
  /** What is put on the bench. */
  readonly name: string;
  readonly path: string;
  readonly keys: readonly string[];
  /** What the complete book has, also from catalogue and tables. */
  readonly stands?: Quantity;
  /** Whether the author states it. */
  readonly stated: boolean;
}

/** Everything of a book that can be measured. */
export const benchTargets = (
  disciplines: readonly Pick<Discipline, 'bench'>[],
  snapshot: Snapshot,
): readonly BenchTarget[] =>
  disciplines
    .flatMap(({ bench }) => bench ?? [])
    .flatMap((test) => {
      const variantKey = entryKinds[test.fact.split('.', 1)[0]!]?.variant;
      const has = (entry: unknown): boolean =>
        test.variants === undefined ||
        variantKey === undefined ||
        (isEntries(entry) && test.variants.includes(String(entry[variantKey])));
      return benchPaths(snapshot.tree, test.fact, has)
        .filter(({ keys }) => at(snapshot.tree, keys[0]!) !== undefined)
        .map(({ keys, name }): BenchTarget => {
          const path = keys.join('.');
          const stands = quantityAt(path, snapshot);
          return { test, name, path, keys, ...(stands ? { stands } : {}), stated: snapshot.stated(path) };
        });
    });

/** Names of entries that are the named part, motors for instance. */
const partOf = (name: string, snapshot: Snapshot): string | undefined => {
  for (const kind of Object.keys(entryKinds)) {
    const entry = at(snapshot.tree, `${kind}.${name}`);
    const part = isEntries(entry) ? entry['part'] : undefined;
    if (typeof part === 'string') return part;
  }
  return undefined;
};

/** What can be measured at something: at an entry itself, at what stands within it, or at the part that it is. */
export const benchedAt = (
  name: string,
  targets: readonly BenchTarget[],
  snapshot: Snapshot,
): readonly BenchTarget[] => {
  const part = partOf(name, snapshot);
  return targets.filter(
    (target) => target.keys.slice(0, -1).includes(name) || (part !== undefined && target.name === part),
  );
};

/** A reading as written, and between which ends the true value lies by what the instrument can do. */
export interface Taken extends Ends {
  readonly text: string;
}

type Result<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly problem: LeafProblem };
const bad = (what: string, allowed: string): { readonly ok: false; readonly problem: LeafProblem } => ({
  ok: false,
  problem: { what, allowed },
});

/** Range of an instrument in words. */
export const instrumentRange = ({ least, most, of, whole }: BenchReading): string =>
  whole ? `${least} to ${most}` : `${show(least, of)} to ${show(most, of)}`;

/**
 * Takes a reading. One that is written as a range or with ± carries its own error.
 *
 * @returns the ends of the true value, or what is wrong and what would do
 */
export const takeReading = (text: string, reading: BenchReading): Result<Taken> => {
  const read = readQuantity(text, reading.of);
  if (!read.ok) return { ok: false, problem: read.problem };
  const { lo, hi } = read;
  const { least, most, share, rest, whole, instrument } = reading;
  const such = `such as ${reading.example}`;
  if (lo < 0 && reading.of !== 'temperature')
    return bad(
      `"${text}" is less than nothing.`,
      `${instrument}: ${instrumentRange(reading)}, ${such}. Swap the leads or turn the scale round, or write it without its sign.`,
    );
  if (whole && !(lo === hi && Number.isInteger(lo)))
    return bad(`"${text}" is no count.`, `A whole number from ${instrumentRange(reading)}, ${such}.`);
  if (!(lo >= least && hi <= most))
    return bad(
      `"${text}" is outside of what the instrument shows.`,
      `${instrument}: ${instrumentRange(reading)}, ${such}. Use another range or another instrument, or another load.`,
    );
  if (lo !== hi) return { ok: true, value: { low: lo, high: hi, text } };
  const low = (lo - rest) / (1 + share);
  return { ok: true, value: { low: least >= 0 ? Math.max(0, low) : low, high: (lo + rest) / (1 - share), text } };
};

/** One set of readings, by name. */
export type ReadingSet = Readonly<Record<string, Taken>>;

/** Path of something that a test takes from the book. */
export const bookPath = (target: Pick<BenchTarget, 'keys'>, wanted: string): string =>
  wanted.startsWith('.') ? [...target.keys.slice(0, -1), wanted.slice(1)].join('.') : wanted;

/** What rounding in the arithmetic may take off an end. */
const outward = ({ low, high }: Ends): Ends => ({
  low: low - 1e-12 * Math.abs(low),
  high: high + 1e-12 * Math.abs(high),
});

/** An input no farther than a formula may be used: nothing that is read lies beyond what can be. */
const allowedPart = (ends: Ends, { from, to }: Take): Ends => ({
  low: Math.max(ends.low, from ?? -Infinity),
  high: Math.min(ends.high, to ?? Infinity),
});

const inputsOf = (target: BenchTarget, set: ReadingSet, snapshot: Snapshot): Result<Record<string, Ends>> => {
  const { gives } = target.test;
  const inputs: Record<string, Ends> = { ...set };
  if (gives.by !== 'formula') return { ok: true, value: inputs };
  for (const [input, { low, high }] of Object.entries(gives.open ?? {})) inputs[input] = { low, high };
  for (const [input, wanted] of Object.entries(gives.book ?? {})) {
    const path = bookPath(target, wanted);
    const leaf = quantityAt(path, snapshot);
    if (!leaf) return bad(`${path} is not stated, and these readings say nothing without it.`, `State ${path} first.`);
    inputs[input] = { low: leaf.low, high: leaf.high };
  }
  return { ok: true, value: inputs };
};

/** Every choice of ends that may give the least (or, `up` turned round, the greatest) result. */
const corners = (
  takes: readonly (readonly [string, Take])[],
  inputs: Readonly<Record<string, Ends>>,
  toward: 'low' | 'high',
): readonly Record<string, number>[] => {
  const other = toward === 'low' ? 'high' : 'low';
  let choices: readonly Record<string, number>[] = [{}];
  for (const [name, take] of takes) {
    const ends = inputs[name];
    if (!ends) continue;
    const part = allowedPart(ends, take);
    const wanted =
      take.slope === 'up'
        ? [part[toward]]
        : take.slope === 'down'
          ? [part[other]]
          : [...new Set([part.low, part.high])];
    choices = choices.flatMap((choice) => wanted.map((number) => ({ ...choice, [name]: number })));
  }
  return choices;
};

/**
 * What one set of readings leaves of the fact: the ends over everything that readings, book and method leave open.
 *
 * @returns ends rounded outward, or why the readings give none
 */
export const rangeOf = (target: BenchTarget, set: ReadingSet, snapshot: Snapshot): Result<Ends> => {
  const { gives } = target.test;
  if (gives.by === 'trials') {
    const [hits, trials] = [set[gives.hits]!, set[gives.trials]!];
    if (!(hits.high <= trials.low))
      return bad(
        `${hits.text} of ${trials.text} is more than all.`,
        `${gives.hits} is a part of ${gives.trials}: ${gives.trials} or fewer.`,
      );
    return { ok: true, value: exactInterval(hits.low, trials.low, gives.confidence) };
  }
  const inputs = inputsOf(target, set, snapshot);
  if (!inputs.ok) return inputs;
  const takes = Object.entries(gives.formula.declared.takes);
  try {
    const all = (toward: 'low' | 'high'): number[] =>
      corners(takes, inputs.value, toward).map((corner) => gives.formula(corner as never));
    return { ok: true, value: outward({ low: Math.min(...all('low')), high: Math.max(...all('high')) }) };
  } catch (error) {
    if (!isNoNumber(error)) throw error;
    return bad(
      `These readings, with their errors, say nothing of the ${target.test.title}: ${error.message}.`,
      'Measure again with a larger reading or a finer instrument; the form says how.',
    );
  }
};

/** What several ranges have in common; `low` above `high` where that is nothing. */
export const common = (ranges: readonly Ends[]): Ends => ({
  low: Math.max(...ranges.map(({ low }) => low)),
  high: Math.min(...ranges.map(({ high }) => high)),
});
export const isNothing = ({ low, high }: Ends): boolean => !(low <= high);
