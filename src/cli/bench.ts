/** `gantrybook bench`: a form for the bench, readings taken, facts narrowed in the book. */
import { existsSync, readFileSync } from 'node:fs';
import { basename, join, resolve } from 'node:path';
import { editsOf, outcomesOf } from '../app/bench.ts';
import { checkFiles, type Machine } from '../app/index.ts';
import { benchedAt, benchTargets, rangeOf, type BenchTarget } from '../engine/bench.ts';
import { readReadings, readingsText } from '../engine/bench-file.ts';
import { CannotEdit } from '../engine/read/edit.ts';
import { frameOf } from '../engine/read/frame.ts';
import { nearest } from '../kernel/nearest.ts';
import { diskTrouble, Refused } from '../pack/refused.ts';
import { writeWhole } from '../pack/write.ts';
import { benchForm } from './bench-form.ts';
import { benchList, benchReport } from './bench-report.ts';
import { askReadings, type Asked } from './bench-talk.ts';
import { freeName, writeBook } from './book-writing.ts';
import { complainOf, openBook, readerOf, Unreadable, type OpenBook } from './books.ts';
import { FAILS, GOOD, UNREADABLE, type ExitCode } from './exit.ts';
import type { Terminal } from './terminal.ts';
import { few, wrap } from './text.ts';

export interface BenchOptions {
  readonly readings?: string;
  readonly test?: string;
  readonly form?: boolean;
  readonly replace?: boolean;
}

/** @throws Refused naming what there is */
const targetsFor = (part: string, wanted: string | undefined, all: readonly BenchTarget[], machine: Machine) => {
  const found = benchedAt(part, all, machine.snapshot);
  const names = [...new Set(all.map(({ name }) => name))];
  if (found.length === 0) {
    const near = nearest(part, names);
    throw new Refused(
      `Nothing of ${part} can be measured here.${near ? ` Did you mean ${near}?` : ''} On the bench go ${few(names, 12) || 'motors, axes, supplies and hanging loads, once the book has some'}.`,
    );
  }
  if (wanted === undefined) return found;
  const some = found.filter(({ test }) => test.name === wanted);
  if (some.length > 0) return some;
  const tests = found.map(({ test }) => test.name);
  const near = nearest(wanted, tests);
  throw new Refused(
    `${part} has no test ${wanted}.${near ? ` Did you mean ${near}?` : ''} Tests: ${tests.join(', ')}.`,
  );
};

/** One test may stand for several facts of what was named: then the name is not enough for a file of readings. */
const refuseSeveral = (part: string, targets: readonly BenchTarget[]): void => {
  const twice = targets.find((one) => targets.some((other) => other !== one && other.test === one.test));
  if (twice)
    throw new Refused(
      `${part} has ${twice.test.name} more than once: ${few(
        targets.filter(({ test }) => test === twice.test).map(({ name }) => name),
        6,
      )}. Name one of them.`,
    );
};

interface FileRead {
  readonly asked: readonly Asked[];
}

/** Readings from a file, or nothing when something is wrong with it, which is told. */
const readingsIn = (
  path: string,
  targets: readonly BenchTarget[],
  machine: Machine,
  terminal: Terminal,
): FileRead | undefined => {
  let text;
  try {
    text = readFileSync(path, 'utf8');
  } catch (error) {
    const trouble = diskTrouble(error);
    if (trouble === undefined) throw error;
    throw new Refused(
      `${path} cannot be read: ${trouble === 'the folder is not there' ? 'it is not there' : trouble}.`,
    );
  }
  const file = basename(path);
  const result = readReadings(file, text, targets);
  if (!result.ok) {
    for (const problem of result.problems)
      terminal.complain(...terminal.frame(frameOf(problem, new Map([[file, text]]))), '');
    terminal.complain('The book was left as it is; the readings stay in their file.');
    return undefined;
  }
  const asked: Asked[] = [];
  for (const target of targets) {
    const sets = result.readings.get(target.test.name) ?? [];
    const ranges = [];
    for (const [i, set] of sets.entries()) {
      const range = rangeOf(target, set, machine.snapshot);
      if (!range.ok) {
        const { what, allowed } = range.problem;
        throw new Refused(
          `${file}: ${target.test.name}, time ${i + 1}: ${what} ${allowed} The book was left as it is; the readings stay in their file.`,
        );
      }
      ranges.push(range.value);
    }
    asked.push({ target, ranges, typed: [] });
  }
  return { asked };
};

/** The book with edits, read and checked again. */
const checkedWith = (texts: ReadonlyMap<string, string>, { place, house }: OpenBook): Machine => {
  const read = readerOf(place);
  const checked = checkFiles((name) => texts.get(name) ?? read(name), place.main, house);
  if (!checked.ok) throw new Unreadable(checked.problems);
  return checked.machine;
};

/** Puts readings into a file beside the book, so that nothing that was read is lost. */
const keep = (part: string, asked: readonly Asked[], { place }: OpenBook, terminal: Terminal): void => {
  if (!asked.some(({ typed }) => typed.length > 0)) return;
  const path = freeName(place.folder, `readings-${part}`, '.yaml');
  writeWhole(path, readingsText(new Map(asked.map(({ target, typed }) => [target.test.name, typed]))));
  const quoted = (word: string): string => (/[^\w./\\:-]/.test(word) ? `"${word}"` : word);
  const book = place.typed === '' ? '' : ` ${quoted(place.typed)}`;
  terminal.complain(
    ...wrap(
      terminal.text(
        `What was read so far is kept in ${path}; complete what is missing there, then: gantrybook bench ${quoted(part)}${book} --readings ${quoted(path)}`,
      ),
      { width: terminal.columns, next: '  ' },
    ),
  );
};

/** Writes what the readings changed, and tells what came of it. */
const finish = (asked: readonly Asked[], open: OpenBook, replace: boolean, terminal: Terminal): ExitCode => {
  const { machine, house, place } = open;
  const all = outcomesOf(asked, machine, house, replace);
  const edits = editsOf(all, machine);
  let texts: ReadonlyMap<string, string> = new Map();
  let after = machine;
  try {
    texts = machine.editedTexts(edits);
    if (texts.size > 0) after = checkedWith(texts, open);
  } catch (error) {
    if (error instanceof CannotEdit) throw new Refused(`${error.message}. Nothing was written.`);
    if (error instanceof Unreadable)
      throw new Refused(
        `With these readings the book could not be read any more, so nothing was written: ${error.problems.map(({ frame }) => frame.split('\n', 1)[0]).join(' ')}`,
      );
    throw error;
  }
  if (texts.size > 0) writeBook(place.folder, machine.book.files, texts);
  terminal.print(...benchReport({ all, before: machine, after, written: [...texts.keys()], house, place }, terminal));
  return all.some(({ outcome }) => outcome.kind === 'contradiction' || outcome.kind === 'impossible') ? FAILS : GOOD;
};

/** A book may be named alone, to see what of it can be measured. */
const isBook = (name: string): boolean =>
  existsSync(join(name, 'book.yaml')) || (/\.ya?ml$/i.test(name) && existsSync(name));

export const bench = async (
  first: string | undefined,
  second: string | undefined,
  { readings, test, form = false, replace = false }: BenchOptions,
  terminal: Terminal,
): Promise<ExitCode> => {
  const [part, typed] =
    first !== undefined && second === undefined && isBook(first) ? [undefined, first] : [first, second];
  if (form && readings !== undefined)
    throw new Refused('--form prints and asks nothing, and --readings brings readings: use one of them.');
  let open: OpenBook;
  try {
    open = openBook(typed, terminal);
  } catch (error) {
    if (!(error instanceof Unreadable)) throw error;
    complainOf(error, terminal);
    return UNREADABLE;
  }
  const { machine, house } = open;
  const all = benchTargets(house.disciplines, machine.snapshot);
  if (part === undefined) {
    if (readings !== undefined || test !== undefined || form)
      throw new Refused('Name what is on the bench: gantrybook bench lists it.');
    terminal.print(...benchList(all, machine, terminal));
    return GOOD;
  }
  const targets = targetsFor(part, test, all, machine);
  if (readings !== undefined) {
    refuseSeveral(part, targets);
    const read = readingsIn(resolve(readings), targets, machine, terminal);
    return read ? finish(read.asked, open, replace, terminal) : UNREADABLE;
  }
  terminal.print(...targets.flatMap((target) => benchForm(target, machine, terminal)));
  // Whoever only wants the form may hold the input open without ever writing to it.
  const lines = form ? undefined : terminal.around.lines?.();
  if (!lines) return GOOD;
  const { asked, brokenOff } = await askReadings(targets, machine.snapshot, lines, terminal);
  // Lets go of an input that somebody else holds open.
  await lines.return?.();
  if (brokenOff) {
    terminal.complain(terminal.text('The input ended before all was read; the book was left as it is.'));
    keep(part, asked, open, terminal);
    return UNREADABLE;
  }
  try {
    return finish(asked, open, replace, terminal);
  } catch (error) {
    if (error instanceof Refused) keep(part, asked, open, terminal);
    throw error;
  }
};
