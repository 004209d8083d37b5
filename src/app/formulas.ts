/** A formula alone: what it takes, read as a person writes it, and its working. */
import { nearest } from '../kernel/nearest.ts';
import { shown } from '../engine/units.ts';
import {
  type OutsideRange,
  readQuantity,
  show,
  toUnit,
  type Dimension,
  type Formula,
  type Take,
  type Unit,
  type WorkingEntry,
} from '../kernel/index.ts';
import { symbolText } from '../kernel/expression-text.ts';
import { typeable } from './greek.ts';

export const takesOf = ({ declared }: Formula): readonly (readonly [string, Take])[] => Object.entries(declared.takes);

const bound = (x: number, of: Dimension): string => (x === 0 && of !== 'temperature' ? '0' : show(x, of));

/** The range of an input, with its unit. */
export const rangeWords = ({ above, from, below, to, of }: Take): string => {
  const low =
    above !== undefined ? `more than ${bound(above, of)}` : from !== undefined ? `from ${bound(from, of)}` : '';
  const high = below !== undefined ? `less than ${bound(below, of)}` : to !== undefined ? `to ${bound(to, of)}` : '';
  return [low, high].filter(Boolean).join(low.startsWith('from') && high.startsWith('to') ? ' ' : ', ') || 'any value';
};

/** An ordinary value as it can be typed anywhere. */
export const exampleOf = (take: Take): string => {
  const [low, high] = take.typical.map((x) => show(x, take.of, undefined, { ascii: true }));
  return take.many ? `[${low}, ${high}]` : low!;
};

/** The input that a person means by its name or symbol, or what to say of one that is not there. */
export const inputNamed = (
  typed: string,
  formula: Formula,
): { readonly found: readonly [string, Take] } | { readonly says: string } => {
  const takes = takesOf(formula);
  const found =
    takes.find(([key, take]) => typed === take.symbol || typed === key) ??
    takes.find(
      ([key, take]) =>
        typed === typeable(take.symbol) ||
        typed === symbolText(take.symbol) ||
        typed.toLowerCase() === key.toLowerCase(),
    );
  if (found) return { found };
  const near = nearest(
    typed,
    takes.flatMap(([key, take]) => [key, take.symbol, typeable(take.symbol)]),
  );
  const all = takes.map(([key, take]) => `${key} (${take.symbol})`).join(', ');
  return {
    says: `${formula.declared.name} takes no ${typed}.${near ? ` Did you mean ${near}?` : ''} It takes ${all}.`,
  };
};

/** What was given for one input; several numbers where it takes a list. */
export interface GivenInput {
  readonly texts: readonly string[];
  readonly numbers: readonly number[];
  readonly unit: Unit;
}

/** Reads one input, or says what is wrong with it and what would do. */
export const readInput = (text: string, take: Take): { readonly given: GivenInput } | { readonly says: string } => {
  const parts = take.many ? text.replace(/^\s*\[(.*)\]\s*$/s, '$1').split(/\s*[,;]\s*/) : [text];
  const numbers: number[] = [];
  let unit: Unit | undefined;
  for (const part of parts) {
    const reading = readQuantity(part, take.of);
    if (!reading.ok) return { says: `${reading.problem.what} ${reading.problem.allowed}` };
    if (reading.lo !== reading.hi)
      return { says: `"${part}" is a range. A formula takes one value; run it once for each end.` };
    unit ??= reading.unit;
    numbers.push(reading.lo);
  }
  return { given: { texts: parts.map((part) => part.trim()), numbers, unit: unit! } };
};

/** Why a formula gives no number for these inputs, in the words of its inputs. */
export const outsideText = (error: OutsideRange, formula: Formula): string => {
  const take = takesOf(formula)
    .map(([, one]) => one)
    .find(({ symbol }) => symbol === error.symbol);
  if (!take || error.formula !== formula.declared.name) return `${error.message}.`;
  const because = error.because ? `, because ${error.because}` : '';
  return `${symbolText(take.symbol)}, ${take.means}, is ${show(error.value, take.of)}. ${error.formula} may be used for: ${rangeWords(take)}${because}.`;
};

/** The unit that was used first for each dimension. */
export const unitsGiven = (formula: Formula, given: ReadonlyMap<string, GivenInput>): ReadonlyMap<Dimension, Unit> => {
  const units = new Map<Dimension, Unit>();
  for (const [key, take] of takesOf(formula)) {
    const unit = given.get(key)?.unit;
    if (unit && !units.has(take.of)) units.set(take.of, unit);
  }
  return units;
};

/** Numbers by input, as the formula takes them; what is not given has the formula's own value. */
export const numbersGiven = (
  formula: Formula,
  given: ReadonlyMap<string, GivenInput>,
): Readonly<Record<string, number | readonly number[]>> =>
  Object.fromEntries(
    takesOf(formula).map(([key, take]) => {
      const list = given.get(key)?.numbers ?? [take.otherwise!];
      return [key, take.many ? list : list[0]!];
    }),
  );

/** The result with six figures, in a unit that was used for its dimension where that suits its size. */
export const resultText = (formula: Formula, number: number, units: ReadonlyMap<Dimension, Unit>): string => {
  const { of } = formula.declared.gives;
  const own = units.get(of);
  const fits = own !== undefined && Math.abs(toUnit(number, own)) >= 0.01 && Math.abs(toUnit(number, own)) < 1e5;
  return show(number, of, fits ? own : undefined, { figures: 6 });
};

/**
 * The formula worked with what was given, as an entry of a working.
 *
 * @param given for every input that has no value of its own
 * @throws the kernel's reasons why there is no number
 */
export const workedEntry = (formula: Formula, given: ReadonlyMap<string, GivenInput>): WorkingEntry => {
  const { name, gives, assumes, source, checked, accuracy } = formula.declared;
  const units = unitsGiven(formula, given);
  const numbers = numbersGiven(formula, given);
  const { number, steps } = formula.show(numbers as never);
  const inputs = takesOf(formula).flatMap(([key, take]) => {
    const value = given.get(key);
    const list = [numbers[key]!].flat();
    return list.map((one, i) => ({
      symbol: take.many ? `${take.symbol}_${i + 1}` : take.symbol,
      means: take.means,
      number: one,
      of: take.of,
      text: shown(() => value?.unit, one, take.of),
      from: { kind: 'constant' as const, means: value ? 'given here' : 'not given, so the usual one' },
    }));
  });
  return {
    formula: name,
    symbol: gives.symbol,
    means: gives.means,
    number,
    of: gives.of,
    text: resultText(formula, number, units),
    inputs,
    steps: steps.map((step) => ({
      symbol: step.symbol,
      expression: step.text,
      number: step.number,
      of: step.of,
      text: shown((of) => units.get(of), step.number, step.of),
      ...(step.within === undefined ? {} : { within: step.within }),
    })),
    assumes,
    source,
    checked,
    accuracy,
  };
};
