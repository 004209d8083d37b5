/** `gantrybook work`: any declared formula alone, with its working; or the list of them. */
import {
  exampleOf,
  inputNamed,
  numbersGiven,
  outsideText,
  rangeWords,
  readInput,
  resultText,
  takesOf,
  unitsGiven,
  type GivenInput,
} from '../app/formulas.ts';
import { formulasOf, houseOn } from '../app/index.ts';
import { sources } from '../app/sources.ts';
import { nearest } from '../kernel/nearest.ts';
import { shown } from '../engine/units.ts';
import {
  isNoNumber,
  OutsideRange,
  pencilText,
  show,
  siUnit,
  type Citation,
  type Dimension,
  type Formula,
  type Step,
} from '../kernel/index.ts';
import { expressionText, symbolText } from '../kernel/expression-text.ts';
import { Refused } from '../pack/refused.ts';
import { FAILS, GOOD, type ExitCode } from './exit.ts';
import type { Terminal } from './terminal.ts';
import { padded, wrap } from './text.ts';

const evidenceWords = {
  published: 'published values',
  'published-secondary': 'published values, at second hand',
  independent: 'independent calculation',
  law: 'law',
  memory: 'from memory, no evidence',
} as const;

const unitWords = (of: Dimension): string => (siUnit(of) === '1' ? 'no unit' : siUnit(of));

const citeWords = (citations: readonly Citation[]): string =>
  citations
    .map(({ id, at }) => {
      const card = sources.get(id);
      const name = card ? `${card.title}${card.edition ? `, ${card.edition}` : ''} [${id}]` : id;
      return at ? `${name}, ${at}` : name;
    })
    .join('; ');

const example = (formula: Formula): string => {
  const values = takesOf(formula)
    .filter(([, take]) => take.otherwise === undefined)
    .map(([name, take]) => `"${name}=${exampleOf(take)}"`);
  return ['gantrybook work', formula.declared.name, ...values].join(' ');
};

const described = (formula: Formula, terminal: Terminal): string[] => {
  const { text, colours, columns } = terminal;
  const { name, gives, source, checked, accuracy, assumes } = formula.declared;
  const takes = takesOf(formula).map(([key, take]) => ({
    symbol: symbolText(take.symbol) + (take.many ? ', …' : ''),
    key,
    unit: unitWords(take.of),
    says: `${take.means}; ${rangeWords(take)}${take.otherwise === undefined ? '' : `; else ${show(take.otherwise, take.of)}`}`,
  }));
  const widest = (of: 'symbol' | 'key' | 'unit'): number =>
    Math.max(...takes.map((take) => text(take[of]).length), 0) + 2;
  const [symbols, keys, units] = [widest('symbol'), widest('key'), widest('unit')];
  const about = (label: string, words: string): string[] =>
    words === '' ? [] : wrap(text(`${label}: ${words}`), { width: columns, first: '  ', next: '    ' });
  return [
    colours.bold(text(`${name}: ${symbolText(gives.symbol)}, ${gives.means} [${unitWords(gives.of)}]`)),
    ...takes.flatMap(({ symbol, key, unit, says }) => {
      const first = `  ${padded(text(symbol), symbols)}${padded(key, keys)}${padded(text(unit), units)}`;
      return wrap(text(says), { width: columns, first, next: ' '.repeat(Math.min(first.length, columns - 30)) });
    }),
    ...about('assumes', assumes.join('; ')),
    ...about('source', citeWords(source)),
    ...about('evidence', checked.map((one) => `${evidenceWords[one.kind]}: ${one.against}`).join('; ')),
    ...about('accuracy', accuracy),
  ];
};

type Given = ReadonlyMap<string, GivenInput>;

/** @throws Refused saying what would do */
const readValues = (values: readonly string[], formula: Formula): Given => {
  const given = new Map<string, GivenInput>();
  for (const value of values) {
    const [, typed = '', text = ''] = /^\s*([^=]+?)\s*=\s*(.*)$/s.exec(value) ?? [];
    if (typed === '') throw new Refused(`"${value}" gives no value. Write it as key=value: ${example(formula)}`);
    const named = inputNamed(typed, formula);
    if ('says' in named) throw new Refused(named.says);
    const [key, take] = named.found;
    if (given.has(key)) throw new Refused(`${key} (${take.symbol}) is given twice.`);
    const read = readInput(text, take);
    if ('says' in read) throw new Refused(`${typed}: ${read.says}`);
    given.set(key, read.given);
  }
  const missing = takesOf(formula).filter(([key, take]) => take.otherwise === undefined && !given.has(key));
  if (missing.length > 0)
    throw new Refused(
      `Not given: ${missing.map(([key, take]) => `${key} (${take.symbol}, ${take.means})`).join('; ')}. For instance: ${example(formula)}`,
    );
  return given;
};

const stepLines = (step: Step, put: ReadonlyMap<string, string>, number: string, terminal: Terminal): string[] => {
  const { text, columns, colours } = terminal;
  const symbol = symbolText(step.symbol);
  const indent = ' '.repeat(2 + Math.min(text(symbol).length, 12));
  const line = (words: string, first: string): string[] =>
    wrap(text(words), { width: columns, first, next: `${indent}   ` });
  if (step.within !== undefined)
    return [
      ...line(`${symbol} solves ${expressionText(step.text)} = 0`, '  '),
      ...line(`= ${number}`, `${indent} `).map(colours.bold),
    ];
  const [bare, filled] = [
    expressionText(step.text),
    expressionText(step.text, put).replaceAll(/\(\(([^()]*)\)\)/g, '($1)'),
  ];
  return [
    ...line(`${symbol} = ${bare}`, '  '),
    ...(filled === bare || filled === number ? [] : line(`= ${filled}`, `${indent} `)),
    ...line(`= ${number}`, `${indent} `).map(colours.bold),
  ];
};

const worked = (formula: Formula, given: Given, terminal: Terminal): string[] => {
  const { text, columns, colours } = terminal;
  const { name, gives, assumes, source, checked, accuracy } = formula.declared;
  const units = unitsGiven(formula, given);
  const numbers = numbersGiven(formula, given);
  const put = new Map<string, string>();
  const inputs = takesOf(formula).map(([key, take]) => {
    const value = given.get(key);
    const list = [numbers[key]!].flat();
    const texts = list.map((number) => shown(() => value?.unit, number, take.of));
    const pencils = list.map((number) => pencilText(number, take.of));
    put.set(take.symbol, take.many ? `(${pencils.join('; ')})` : pencils[0]!);
    return {
      symbol: symbolText(take.symbol),
      value: texts.map((one, i) => (one === pencils[i] ? one : `${one} = ${pencils[i]!}`)).join('; '),
      says: value ? take.means : `${take.means}, not given`,
    };
  });
  const { number, steps } = formula.show(numbers as never);
  const lines = steps.flatMap((step) => {
    const value = shown((of) => units.get(of), step.number, step.of);
    const pencil = pencilText(step.number, step.of);
    const made = stepLines(step, put, value === pencil ? value : `${pencil} = ${value}`, terminal);
    put.set(step.symbol, pencil);
    return made;
  });
  const wide = (of: 'symbol' | 'value'): number => Math.max(...inputs.map((input) => text(input[of]).length)) + 2;
  const [symbols, values] = [wide('symbol'), wide('value')];
  const result = resultText(formula, number, units);
  const about = (label: string, words: string): string[] =>
    words === '' ? [] : wrap(text(`${label}: ${words}`), { width: columns, first: '  ', next: '    ' });
  return [
    colours.bold(text(`${name}: ${gives.means}`)),
    ...inputs.flatMap((input) =>
      wrap(text(input.says), {
        width: columns,
        first: `  ${padded(text(input.symbol), symbols)}${padded(text(input.value), values)}`,
      }),
    ),
    '',
    ...lines,
    '',
    colours.bold(text(`${symbolText(gives.symbol)} = ${result}`)),
    '',
    ...about('assumes', assumes.join('; ')),
    ...about('source', citeWords(source)),
    ...about('evidence', checked.map((one) => `${evidenceWords[one.kind]}: ${one.against}`).join('; ')),
    ...about('accuracy', accuracy),
  ];
};

export const work = (name: string | undefined, values: readonly string[], terminal: Terminal): ExitCode => {
  const formulas = formulasOf(houseOn());
  if (name === undefined) {
    const all = [...formulas.values()].toSorted((a, b) => (a.declared.name < b.declared.name ? -1 : 1));
    terminal.print(...all.flatMap((formula) => [...described(formula, terminal), '']));
    terminal.print(terminal.text('One of them, with numbers: gantrybook work NAME key=value…'));
    return GOOD;
  }
  const formula = formulas.get(name);
  if (!formula) {
    const near = nearest(name, [...formulas.keys()]);
    throw new Refused(
      `There is no formula ${name}.${near ? ` Did you mean ${near}?` : ''} gantrybook work lists them.`,
    );
  }
  if (values.length === 0) {
    terminal.print(
      ...described(formula, terminal),
      '',
      ...wrap(terminal.text(`for instance: ${example(formula)}`), { width: terminal.columns }),
    );
    return GOOD;
  }
  const given = readValues(values, formula);
  try {
    terminal.print(...worked(formula, given, terminal));
    return GOOD;
  } catch (error) {
    if (!isNoNumber(error)) throw error;
    terminal.complain(
      ...wrap(terminal.text(error instanceof OutsideRange ? outsideText(error, formula) : `${error.message}.`), {
        width: terminal.columns,
      }),
    );
    return FAILS;
  }
};
