/** Sheets as stretches of safe markup, drawn by the renderers of the pack. */
import type { House, Machine } from '../../app/index.ts';
import { sources } from '../../app/sources.ts';
import { tag, type Markup } from '../../figures/index.ts';
import { revisionsOf, sourcesOf } from '../../pack/html/facts.ts';
import type { SheetInput } from '../../pack/html/model.ts';
import { frontParts, sheetParts, type SheetParts } from '../../pack/html/parts.ts';
import { questionsInFront } from '../../pack/html/strip.ts';
import { workingAlone } from '../../pack/html/working.ts';
import { bookWords } from '../../pack/report.ts';
import type { Question } from '../../kernel/index.ts';
import type { SheetPart, SheetView } from '../desk/engine.ts';
import { SHORT } from './laid.ts';

const findingsOn = (machine: Machine, name: string) => machine.findings.filter(({ sheet }) => sheet === name);

const listOf = (parts: readonly (readonly [id: string, markup: Markup | null])[]): readonly SheetPart[] =>
  parts.flatMap(([id, drawn]) => (drawn ? [{ id, markup: drawn.markup }] : []));

/** What follows from the findings alone. Nothing for a sheet that is not there. */
export const frontOf = (machine: Machine, house: Pick<House, 'disciplines'>, name: string) => {
  const discipline = house.disciplines.find((one) => one.name === name);
  if (!discipline) return undefined;
  const { title, strip, worst } = frontParts(discipline, findingsOn(machine, name), true);
  return listOf([
    ['title', title],
    ['strip', strip],
    ['worst', worst],
  ]);
};

const partsOf = (
  machine: Machine,
  house: Pick<House, 'disciplines'>,
  name: string,
  folded: boolean,
  early: boolean,
): (SheetParts & { readonly awaits: number }) | undefined => {
  const discipline = house.disciplines.find((one) => one.name === name);
  if (!discipline) return undefined;
  const { document, factsHash, awaits } = machine.sheet(name, early ? 'later' : 'run');
  const { title: bookTitle, revision, about } = bookWords(machine);
  const findings = findingsOn(machine, name);
  const { number, title, asks } = discipline;
  const input: SheetInput = {
    book: { title: bookTitle, revision, ...(about ? { about } : {}), file: machine.book.main },
    stamp: { revision, hash: machine.stamp.content.slice(0, SHORT), factsHash },
    revisions: revisionsOf(machine),
    siblings: [],
    sheet: { name, number, of: house.disciplines.length, title, asks },
    document,
    findings,
    questions: [],
    sources: sourcesOf(findings, sources),
  };
  return { ...sheetParts(input, folded), awaits };
};

/** The sheets of one laid book. What was drawn folded stays, for whoever unfolds it. */
export const sheetsOf = (machine: Machine, house: Pick<House, 'disciplines'>) => {
  const drawn = new Map<string, SheetParts>();
  return {
    view: (name: string, folded = false, early = false): SheetView | undefined => {
      const parts = partsOf(machine, house, name, folded, early);
      if (!parts) return undefined;
      if (folded) drawn.set(name, parts);
      return {
        name,
        awaits: parts.awaits,
        parts: listOf([
          ['title', parts.title],
          ['strip', parts.strip],
          ['worst', parts.worst],
          ['cautions', parts.cautions],
          ...parts.zones.map(({ letter, markup }) => [`zone-${letter}`, markup] as const),
          ['title-block', parts.titleBlock],
        ]),
      };
    },
    unfold: (name: string, key: string): string | undefined => drawn.get(name)?.unfolded(key)?.markup,
  };
};

/** The questions in front of the whole set, or of one sheet. */
export const questionsMarkup = (machine: Machine, questions: readonly Question[], name?: string): string => {
  const keys = new Set((name === undefined ? machine.findings : findingsOn(machine, name)).map(({ key }) => key));
  const concerns = ({ settles, narrows }: Question): boolean =>
    [...settles, ...narrows].some(({ key }) => keys.has(key));
  return (questionsInFront(questions.filter(concerns), keys) ?? tag``).markup;
};

export const workingMarkup = (machine: Machine, key: string): string | undefined => {
  const finding = machine.findings.find((one) => one.key === key);
  return finding && workingAlone(finding).markup;
};
