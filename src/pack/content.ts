/** What a pack holds: the cover, a sheet for each trade, the tables that it makes, and the findings as data. */
import type { House, Machine } from '../app/index.ts';
import type { SourceCard } from '../app/sources.ts';
import { csvText } from './csv.ts';
import { revisionsOf, sourcesOf } from './html/facts.ts';
import { renderIndex, renderSheet, type BookFacts, type Sibling, type Stamp } from './html/index.ts';
import { bookWords, completed, reportOf, reportText } from './report.ts';
import type { Pack, PackFile } from './write.ts';

export interface ContentOptions {
  readonly version: string;
  readonly sources: ReadonlyMap<string, SourceCard>;
  /** `@font-face` rules that go into each page. */
  readonly typeface: string;
  /** Told what is worked on, before each longer piece of work. */
  readonly step?: (what: string) => void;
}

/** Digits of a hash that are printed. */
const SHORT = 12;

const fileOf = (number: number, name: string): string => `${String(number).padStart(2, '0')}-${name}.html`;

/**
 * Every file of a machine's pack. The same book gives the same bytes.
 *
 * @throws TypeError when a trade cites a source that is not there, or two files would have one name
 */
export const packOf = (machine: Machine, house: House, options: ContentOptions): Pack => {
  const { version, sources, typeface, step } = options;
  const words = bookWords(machine);
  const findings = completed(machine, step ? { step } : {});
  const made = house.disciplines.map((discipline) => {
    step?.(`the sheet ${discipline.title}`);
    return { ...machine.sheet(discipline.name), own: findings.filter(({ sheet }) => sheet === discipline.name) };
  });
  const book: BookFacts = {
    title: words.title,
    revision: words.revision,
    ...(words.about ? { about: words.about } : {}),
    file: machine.book.main,
  };
  const stampFor = (factsHash: string): Stamp => ({
    revision: words.revision,
    hash: machine.stamp.content.slice(0, SHORT),
    factsHash,
  });
  const siblings: readonly Sibling[] = [
    { name: 'index', title: 'Cover', href: 'index.html' },
    ...made.map(({ discipline: { name, number, title } }) => ({ name, title, href: fileOf(number, name) })),
  ];
  const common = { book, revisions: revisionsOf(machine), siblings };

  const sheets = made.map(({ discipline, document, own, factsHash }): PackFile => {
    const { name, number, title, asks } = discipline;
    const keys = new Set(own.map(({ key }) => key));
    const input = {
      ...common,
      sheet: { name, number, of: made.length, title, asks },
      stamp: stampFor(factsHash),
      document,
      findings: own,
      questions: machine.questions().filter(({ settles }) => settles.some(({ key }) => keys.has(key))),
      sources: sourcesOf(own, sources),
    };
    return { name: fileOf(number, name), sheet: name, factsHash, text: renderSheet(input, typeface) };
  });

  const tables = made.flatMap(({ discipline, files, factsHash }) =>
    files.map(({ name, rows }): PackFile => {
      const stamp = [
        words.title,
        `revision ${words.revision}`,
        `stamp ${machine.stamp.content.slice(0, SHORT)}`,
        `sheet ${discipline.title}`,
        `facts ${factsHash.slice(0, SHORT)}`,
      ];
      const plain = name.endsWith('.csv') ? name : `${name}.csv`;
      return { name: plain, sheet: discipline.name, factsHash, text: csvText(rows, stamp.join(', ')) };
    }),
  );

  const data: PackFile = { name: 'findings.json', text: reportText(reportOf(machine, house, { version })) };
  const cover = renderIndex(
    {
      ...common,
      stamp: stampFor(machine.stamp.content),
      sheets: made.map(({ discipline: { number, name, title, asks }, own }) => ({
        number,
        title,
        asks,
        href: fileOf(number, name),
        findings: own,
      })),
      questions: machine.questions(),
      files: [
        ...made.flatMap(({ discipline }) =>
          tables
            .filter(({ sheet }) => sheet === discipline.name)
            .map(({ name }) => ({ name, href: name, means: `table of the sheet ${discipline.title}` })),
        ),
        { name: data.name, href: data.name, means: 'every finding and every fact, for programs' },
      ],
    },
    typeface,
  );
  return {
    version,
    book: { title: words.title, file: machine.book.main },
    stamp: machine.stamp,
    files: [{ name: 'index.html', text: cover }, ...sheets, ...tables, data],
  };
};
