/** The form that is carried to the bench. */
import { instrumentText, methodText, standsText } from '../app/bench.ts';
import type { Machine } from '../app/index.ts';
import { bookPath, type BenchTarget } from '../engine/bench.ts';
import { at, quantityAt } from '../engine/snapshot.ts';
import type { Terminal } from './terminal.ts';
import { counting, padded, wrap } from './text.ts';

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
        `${reading.means}, such as ${reading.example}; ${instrumentText(reading)}`,
        `  ${padded(key, wide)}`,
        ' '.repeat(wide + 2),
      ),
    ),
    ...methodText(target).flatMap((one) => about(one)),
    '',
  ];
};
