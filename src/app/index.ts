/** Where the engine meets the trades and the catalogue: what a command line, a page or a test works with. */
import type { Services } from '../contract/index.ts';
import { createHouse, type House, type Machine } from '../engine/machine.ts';
import { frameOf } from '../engine/read/frame.ts';
import type { BookProblem } from '../engine/read/problem.ts';
import type { Formula } from '../kernel/index.ts';
import { registry } from '../disciplines/registry.ts';
import { catalogue } from './catalogue.ts';

export { version } from './version.ts';
export type { House, Machine, BookProblem };

/** Gives the text of a file of the book's folder, or nothing when there is none of that name. */
export type ReadFile = (name: string) => string | undefined;

/**
 * The house with every trade and the whole catalogue.
 *
 * @param services what it needs from outside; without a day, the end dates of acceptances are only printed
 */
export const houseOn = (services: Services = {}): House => createHouse({ disciplines: registry, catalogue, services });

let standing: House | undefined;
const withoutCalendar = (): House => (standing ??= houseOn());

/** The house as it stands without a calendar. */
export const house: House = /* @__PURE__ */ withoutCalendar();

export type Checked =
  | { readonly ok: true; readonly machine: Machine; readonly warnings: readonly Framed[] }
  | { readonly ok: false; readonly problems: readonly Framed[] };

/** A problem with the lines of text round it, as a person reads it. */
export interface Framed extends BookProblem {
  readonly frame: string;
}

/**
 * Reads a book and works out all of its findings.
 *
 * @param read gives the files of the book's folder
 * @param main name of the file to begin with, such as `book.yaml`
 * @param within the house in which it is checked
 * @returns the machine, or every problem that keeps the book from being read
 */
export const checkFiles = (read: ReadFile, main: string, within: House = withoutCalendar()): Checked => {
  const texts = new Map<string, string>();
  const remembered: ReadFile = (name) => {
    const text = read(name);
    if (text !== undefined) texts.set(name, text);
    return text;
  };
  const result = within.read(remembered, main);
  const framed = (problems: readonly BookProblem[]): Framed[] =>
    problems.map((problem) => ({ ...problem, frame: frameOf(problem, texts) }));
  if (!result.ok) return { ok: false, problems: framed(result.problems) };
  const machine = within.open(result.book);
  return { ok: true, machine, warnings: framed([...result.warnings, ...machine.warnings]) };
};

/** Every declared formula by its name. Refuses, by throwing, two of one name. */
export const formulasOf = (within: Pick<House, 'disciplines'>): ReadonlyMap<string, Formula> => {
  const all = new Map<string, Formula>();
  for (const formula of within.disciplines.flatMap((discipline) => discipline.formulas)) {
    const { name } = formula.declared;
    if (all.has(name) && all.get(name) !== formula) throw new TypeError(`two formulas are named ${name}`);
    all.set(name, formula);
  }
  return all;
};
