/** Words about the bench, and what readings come to in a machine: the same on a terminal and on a page. */
import type { BenchOpen, BenchReading } from '../contract/index.ts';
import { instrumentRange, type BenchTarget, type Ends } from '../engine/bench.ts';
import { benchEdits, outcomeOf, writtenRange, type Benched } from '../engine/bench-outcome.ts';
import type { House, Machine } from '../engine/machine.ts';
import { show, type Dimension, type Edit, type Provenance, type Unit } from '../kernel/index.ts';

const origins: Readonly<Record<Provenance, string>> = {
  stated: 'as its author states',
  measured: 'measured',
  plate: 'from the plate',
  datasheet: 'from a data sheet',
  table: 'from a table, and not stated in the book',
  guess: 'a guess',
};

/** What the complete book has for a fact, and where that comes from. */
export const standsText = ({ stands, stated }: BenchTarget): string => {
  if (!stands) return 'not stated yet';
  return stands.provenance === 'table' && stated
    ? `${stands.text}, from a table`
    : `${stands.text}, ${origins[stands.provenance]}`;
};

/** A difference of temperatures is written in kelvin. */
const differenceOf = (of: Dimension): Dimension => (of === 'temperature' ? 'temperature-difference' : of);

const errorText = ({ share, rest, of, whole }: BenchReading): string => {
  const parts = [
    ...(share > 0 ? [`±${show(share * 100, 'ratio')} %`] : []),
    ...(rest > 0 ? [`±${whole ? rest : show(rest, differenceOf(of))}`] : []),
  ];
  return parts.length > 0 ? `error ${parts.join(' ')}` : 'no error';
};

/** Which instrument, what it shows, and its error. */
export const instrumentText = (reading: BenchReading): string =>
  `${reading.instrument}, ${instrumentRange(reading)}, ${errorText(reading)}`;

/** How the fact follows from the readings, in sentences. */
export const methodText = ({ test }: BenchTarget): readonly string[] => {
  const { gives } = test;
  if (gives.by !== 'formula')
    return [
      `The share is known within its exact interval, right in ${show(gives.confidence * 100, 'ratio')} of 100 cases.`,
    ];
  const openText = ([name, { low, high, means }]: readonly [string, BenchOpen]): string => {
    const { of } = gives.formula.declared.takes[name]!;
    return `Left open: ${means}: ${show(low, of)} to ${show(high, of)}.`;
  };
  return [
    `Worked by ${gives.formula.declared.name} at the ends of all errors.`,
    ...Object.entries(gives.open ?? {}).map(openText),
  ];
};

/** The unit of the fact as its author wrote it, else the one that the book uses most. */
const unitOf = ({ stands, stated, test }: BenchTarget, { units }: Machine): Unit | undefined =>
  stated && stands ? stands.unit : (units(test.of) ?? stands?.unit);

export interface Measured {
  readonly target: BenchTarget;
  /** What each set of readings leaves. */
  readonly ranges: readonly Ends[];
}

/** What becomes of the facts; tests without readings are left out. */
export const outcomesOf = (
  measured: readonly Measured[],
  machine: Machine,
  house: Pick<House, 'schema'>,
  replace: boolean,
): readonly Benched[] =>
  measured
    .filter(({ ranges }) => ranges.length > 0)
    .map(({ target, ranges }) => ({
      target,
      outcome: outcomeOf({
        target,
        ranges,
        tree: machine.book.tree,
        info: house.schema.keyInfo(target.path, machine.snapshot.tree),
        unit: unitOf(target, machine),
        replace,
      }),
    }));

/** Edits that bring all of it into the book. */
export const editsOf = (all: readonly Benched[], machine: Machine): readonly Edit[] =>
  benchEdits(all, machine.book.tree, (target) => unitOf(target, machine));

/**
 * What became of one fact, in a sentence or two.
 *
 * @param toReplace how readings are taken although the book says otherwise
 */
export const outcomeText = ({ target, outcome }: Benched, toReplace: string): string => {
  const { path, test, name, stands, stated } = target;
  const unit = stated && stands ? stands.unit : undefined;
  const range = (ends: Ends): string => writtenRange(ends, test.of, unit, stands?.text);
  if (outcome.kind === 'narrowed') {
    const before = stated && stands ? stands.text : 'not stated';
    const table = !stated && stands ? ` (a table had ${stands.text})` : '';
    const taken = outcome.takenIn.length > 0 ? ' Earlier readings that the book kept are taken in.' : '';
    return `${path}: ${before} → ${outcome.text}, measured${table}.${taken}`;
  }
  if (outcome.kind === 'same')
    return `${path}: the readings leave ${range(outcome.ends)}, and the book says ${stands!.text} already. Nothing changes; a finer instrument might narrow it.`;
  if (outcome.kind === 'impossible')
    return `${path}: the readings leave ${range(outcome.ends)}, which cannot be for the ${test.title}. Look at leads, signs and units, and measure again; nothing was written.`;
  const kept =
    outcome.kept.length > 0
      ? ' The fact stays as it is; the book keeps the readings under bench.'
      : ' The book has these readings already.';
  if (outcome.with === 'each other')
    return `CONTRADICTION about ${test.name} of ${name}: the readings leave ${outcome.ends.map(range).join('; ')}, which no one value fits within the error of the instrument. Something moved, warmed or slipped: measure again.${kept}`;
  const against =
    outcome.with === 'the book' ? `the book says ${stands!.text}` : 'earlier readings in the book say otherwise';
  return `CONTRADICTION about ${test.name} of ${name}: the readings leave ${range(outcome.ends[0]!)}, and ${against}. One of the two is wrong: measure again, or correct ${path}; ${toReplace} takes these readings and drops the rest.${kept}`;
};
