/** The form that is carried to the bench. */
import type { Machine } from '../app/index.ts';
import type { BenchOpen, BenchReading } from '../contract/index.ts';
import { bookPath, instrumentRange, type BenchTarget } from '../engine/bench.ts';
import { at, quantityAt } from '../engine/snapshot.ts';
import { show, type Dimension, type Provenance } from '../kernel/index.ts';
import type { Terminal } from './terminal.ts';
import { counting, padded, wrap } from './text.ts';

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

const openText = ([name, { low, high, means }]: readonly [string, BenchOpen], { test }: BenchTarget): string => {
  const of = test.gives.by === 'formula' ? test.gives.formula.declared.takes[name]!.of : 'ratio';
  return `${means}: ${show(low, of)} to ${show(high, of)}`;
};

const saidOf = (path: string, { snapshot }: Machine): string => {
  const quantity = quantityAt(path, snapshot);
  const there = at(snapshot.tree, path);
  return quantity ? quantity.text : typeof there === 'string' ? there : 'not stated';
};

/** Lines of the form for one test. */
export const benchForm = (target: BenchTarget, machine: Machine, terminal: Terminal): string[] => {
  const { test, name, path } = target;
  const { text, columns, colours } = terminal;
  const [times, most] = test.times;
  const about = (words: string, first = '  ', next = '    '): string[] =>
    wrap(text(words), { width: columns, first, next });
  const readings = Object.entries(test.readings);
  const wide = Math.max(...readings.map(([key]) => key.length)) + 2;
  const opened = test.gives.by === 'formula' ? Object.entries(test.gives.open ?? {}) : [];
  const shows = test.shows ?? [];
  return [
    colours.bold(text(`${test.name} of ${name}: ${test.title}`)),
    ...about(`${path}: ${standsText(target)}`),
    ...shows.flatMap((wanted) => {
      const at = bookPath(target, wanted);
      return about(`${at}: ${saidOf(at, machine)}`);
    }),
    colours.bold('  Beware'),
    ...test.cautions.flatMap((caution) => about(caution, '  ! ')),
    colours.bold(`  Do this${most === 1 ? ', once' : `, ${counting(times, 'time')} or more`}`),
    ...test.procedure.flatMap((step, i) => about(step, `  ${i + 1}. `, '     ')),
    colours.bold('  Read'),
    ...readings.flatMap(([key, reading]) =>
      about(
        `${reading.means}, such as ${reading.example}; ${reading.instrument}, ${instrumentRange(reading)}, ${errorText(reading)}`,
        `  ${padded(key, wide)}`,
        ' '.repeat(wide + 2),
      ),
    ),
    ...about(
      test.gives.by === 'formula'
        ? `Worked by ${test.gives.formula.declared.name} at the ends of all errors.`
        : `The share is known within its exact interval, right in ${show(test.gives.confidence * 100, 'ratio')} of 100 cases.`,
    ),
    ...opened.flatMap((one) => about(`Left open: ${openText(one, target)}.`)),
    '',
  ];
};
