/** The index of formulas, and one of them with inputs of the reader's own. */
import {
  exampleOf,
  inputNamed,
  outsideText,
  rangeWords,
  readInput,
  takesOf,
  workedEntry,
  type GivenInput,
} from '../../app/formulas.ts';
import { formulasOf, type House } from '../../app/index.ts';
import { typeable } from '../../app/greek.ts';
import { sources } from '../../app/sources.ts';
import { tag } from '../../figures/index.ts';
import { isNoNumber, OutsideRange, show, type Formula } from '../../kernel/index.ts';
import { symbolText } from '../../kernel/expression-text.ts';
import { citedIn, sourceFacts } from '../../pack/html/facts.ts';
import { sourcesTable } from '../../pack/html/parts.ts';
import { entryAlone } from '../../pack/html/working.ts';
import type { FormulaCard, FormulaInputs, FormulaPage } from '../desk/engine.ts';

interface Indexed {
  readonly card: FormulaCard;
  readonly formula: Formula;
  /** What a search looks through: what counts most stands first. */
  readonly words: readonly string[];
}

const plain = (text: string): string => typeable(text).toLowerCase();

const indexed = (formula: Formula, sheet: string): Indexed => {
  const { name, gives, source, assumes } = formula.declared;
  const takes = takesOf(formula);
  const cited = source.flatMap(({ id, at }) => [id, sources.get(id)?.title ?? '', at ?? '']);
  return {
    formula,
    card: { name, title: gives.means, sheet, symbol: symbolText(gives.symbol) },
    words: [
      name,
      gives.means,
      [gives.symbol, ...takes.map(([, { symbol }]) => symbol)].map(symbolText).join(' '),
      takes.map(([key, { means }]) => `${key} ${means}`).join(' '),
      cited.join(' '),
      assumes.join(' '),
    ].map(plain),
  };
};

/** Less is better: where the word stands, and whether a word begins with it. */
const distanceOf = (word: string, { words }: Indexed): number | undefined => {
  const where = words.findIndex((text) => text.includes(word));
  if (where < 0) return undefined;
  const begins = words[where]!.split(/[^\p{L}\p{N}]+/u).some((one) => one.startsWith(word));
  return where * 2 + (begins ? 0 : 1);
};

export interface Formulas {
  readonly search: (text: string) => readonly FormulaCard[];
  readonly page: (name: string, inputs: FormulaInputs) => FormulaPage | undefined;
}

export const formulasIn = (house: Pick<House, 'disciplines'>): Formulas => {
  const known = formulasOf(house);
  const sheetOf = new Map(
    house.disciplines.flatMap(({ name, formulas }) =>
      formulas.map((formula) => [formula.declared.name, name] as const),
    ),
  );
  let index: readonly Indexed[] | undefined;
  const all = (): readonly Indexed[] =>
    (index ??= [...known]
      .map(([name, formula]) => indexed(formula, sheetOf.get(name)!))
      .toSorted((a, b) => (a.card.name < b.card.name ? -1 : 1)));

  return {
    search: (text) => {
      const words = plain(text).split(/\s+/).filter(Boolean);
      return all()
        .flatMap((one) => {
          const distances = words.map((word) => distanceOf(word, one));
          return distances.includes(undefined)
            ? []
            : [{ card: one.card, distance: distances.reduce<number>((sum, d) => sum + d!, 0) }];
        })
        .toSorted((a, b) => a.distance - b.distance)
        .map(({ card }) => card);
    },
    page: (name, inputs) => {
      const formula = known.get(name);
      return formula && pageOf(formula, inputs);
    },
  };
};

const pageOf = (formula: Formula, inputs: FormulaInputs): FormulaPage => {
  const given = new Map<string, GivenInput>();
  const problems = new Map<string, string>();
  let stray: string | undefined;
  for (const [typed, text] of Object.entries(inputs)) {
    if (text.trim() === '') continue;
    const named = inputNamed(typed, formula);
    if ('says' in named) {
      stray = named.says;
      continue;
    }
    const [key, take] = named.found;
    const read = readInput(text, take);
    if ('says' in read) problems.set(key, read.says);
    else given.set(key, read.given);
  }
  const takes = takesOf(formula);
  const isWhole = takes.every(([key, { otherwise }]) => otherwise !== undefined || given.has(key));
  let markup: string | undefined;
  let problem = stray;
  if (isWhole && problems.size === 0) {
    try {
      const entry = workedEntry(formula, given);
      markup = tag`${entryAlone(entry)}${sourcesTable(sourceFacts(citedIn([entry]), sources))}`.markup;
    } catch (error) {
      if (!isNoNumber(error)) throw error;
      const says = error instanceof OutsideRange ? outsideText(error, formula) : `${error.message}.`;
      const blamed =
        error instanceof OutsideRange && error.formula === formula.declared.name
          ? takes.find(([, { symbol }]) => symbol === error.symbol)
          : undefined;
      if (blamed) problems.set(blamed[0], says);
      else problem = says;
    }
  }
  return {
    name: formula.declared.name,
    title: formula.declared.gives.means,
    takes: takes.map(([key, take]) => {
      const wrong = problems.get(key);
      return {
        name: key,
        symbol: symbolText(take.symbol),
        means: take.means,
        example: exampleOf(take),
        range: rangeWords(take),
        ...(take.otherwise === undefined ? {} : { otherwise: show(take.otherwise, take.of) }),
        ...(wrong === undefined ? {} : { problem: wrong }),
      };
    }),
    ...(problem === undefined ? {} : { problem }),
    ...(markup === undefined ? {} : { markup }),
  };
};
