/** The working, step by step: formula, the same with numbers, the result; inputs with where they come from. */
import { pencilText } from '../../kernel/pencil.ts';
import { math, mathTerms, raw, symbolMath, tag, type Markup } from '../../figures/index.ts';
import { numberParts } from '../../kernel/expression-text.ts';
import { parseExpression } from '../../kernel/expression.ts';
import type { Finding, WorkingEntry, WorkingInput } from '../../kernel/report.ts';
import { mark } from './strip.ts';
import { cite, endWord, evidenceWord, idOf, provenanceWord } from './words.ts';

/** One formula applied, under the number that it has on this sheet. */
export interface NumberedEntry {
  readonly ref: string;
  readonly entry: WorkingEntry;
  /** The number of each entry that this one uses, by its index in the finding's own working. */
  readonly refs: readonly string[];
  /** True where an earlier finding has shown it already. */
  readonly again: boolean;
}

export interface NumberedWorking {
  readonly finding: Finding;
  readonly entries: readonly NumberedEntry[];
}

const sameness = ({ formula, inputs, text, symbol }: WorkingEntry): string =>
  JSON.stringify([
    formula,
    symbol,
    text,
    inputs.map((input) => [input.symbol, input.number, input.text, originKey(input)]),
  ]);

const originKey = ({ from }: WorkingInput): string =>
  from.kind === 'book' ? `${from.path} ${from.end ?? ''}` : from.kind;

/**
 * Numbers the working of several findings through, so that what two findings share is shown once.
 * @param findings in the order in which they are shown
 * @param zone letter before the numbers
 */
export const numberWorking = (findings: readonly Finding[], zone: string): readonly NumberedWorking[] => {
  const known = new Map<string, string>();
  return findings
    .filter((finding) => finding.working.length > 0)
    .map((finding) => {
      const refs: string[] = [];
      const entries = finding.working.map((entry): NumberedEntry => {
        const key = sameness(entry);
        const before = known.get(key);
        const ref = before ?? `${zone}${known.size + 1}`;
        known.set(key, ref);
        refs.push(ref);
        return { ref, entry, refs: [...refs], again: before !== undefined };
      });
      return { finding, entries };
    });
};

const origin = ({ from }: WorkingInput, refs: readonly string[]): Markup => {
  switch (from.kind) {
    case 'book':
      return tag`<code data-path="${from.path}">${from.path}</code> <span class="aside">${provenanceWord[from.provenance]}${from.end ? `, ${endWord[from.end]}` : null}</span>`;
    case 'working': {
      const ref = refs[from.entry];
      return ref === undefined ? tag`worked` : tag`<a href="#${idOf('step', ref)}">${ref}</a>`;
    }
    case 'constant':
      return tag`${from.means}${from.source ? tag` <span class="aside">${cite([from.source])}</span>` : null}`;
  }
};

const inputsTable = (inputs: readonly WorkingInput[], refs: readonly string[], ref: string): Markup | null =>
  inputs.length === 0
    ? null
    : tag`<table class="inputs"><caption class="hidden">Inputs of ${ref}</caption><thead class="hidden"><tr><th scope="col">Symbol</th><th scope="col">Means</th><th scope="col">Value</th><th scope="col">From</th></tr></thead><tbody>${inputs.map(
        (input) =>
          tag`<tr><td class="symbol">${math(symbolMath(input.symbol))}</td><th scope="row">${input.means}</th><td class="number">${input.text}${inSi(input)}</td><td class="from">${origin(input, refs)}</td></tr>`,
      )}</tbody></table>`;

/** What is put into the formula, where that is written otherwise than the author did. */
const inSi = ({ text, number, of }: WorkingInput): Markup | null => {
  const pencil = pencilText(number, of);
  return pencil === text ? null : tag` <span class="aside">= ${pencil}</span>`;
};

/** Values by symbol, as far as a symbol means one value only. */
const valuesOf = (inputs: readonly WorkingInput[]): Map<string, string> => {
  const once = inputs.filter(({ symbol }) => inputs.filter((other) => other.symbol === symbol).length === 1);
  return new Map(once.map(({ symbol, number, of }) => [symbol, pencilText(number, of)]));
};

const plainNumber = (x: number): Markup => {
  const { mantissa, power } = numberParts(String(Number(x.toPrecision(2))));
  return power === undefined
    ? tag`${mantissa ?? ''}`
    : tag`${mantissa === undefined ? null : tag`${mantissa}·`}10<sup>${power}</sup>`;
};

const pieces = (terms: readonly Markup[]): Markup =>
  tag`${terms.map((term, i) => tag`${i > 0 ? raw('<wbr>') : null}${term}`)}`;

const steps = ({ steps: all, inputs }: WorkingEntry): Markup => {
  const values = valuesOf(inputs);
  const rows = all.map(({ symbol, expression, text, number, of, within }) => {
    const pencil = pencilText(number, of);
    const head = math(symbolMath(symbol));
    const formula = mathTerms(expression);
    const numbers = mathTerms(expression, values);
    const changed = numbers.map((m) => m.markup).join('') !== formula.map((m) => m.markup).join('');
    const bare = parseExpression(expression).kind;
    const shown = changed && bare !== 'symbol' && bare !== 'number';
    values.set(symbol, pencil);
    const result = tag`<div class="step result"><span class="left"></span><span class="eq">=</span><span class="right">${pencil === text ? null : tag`${pencil} = `}<b>${text}</b></span></div>`;
    if (within !== undefined) {
      return tag`<div class="step"><span class="left">${head}</span><span class="eq">:</span><span class="right">solves ${pieces(formula)} <math><mo>=</mo><mn>0</mn></math> <span class="aside">to within ${plainNumber(within)}</span></span></div>${result}`;
    }
    return tag`<div class="step"><span class="left">${head}</span><span class="eq">=</span><span class="right">${pieces(formula)}</span></div>${
      shown
        ? tag`<div class="step"><span class="left"></span><span class="eq">=</span><span class="right">${pieces(numbers)}</span></div>`
        : null
    }${result}`;
  });
  return tag`<div class="steps">${rows}</div>`;
};

const standing = ({ source, checked, accuracy, assumes }: WorkingEntry): Markup =>
  tag`<p class="standing">${source.length > 0 ? tag`<span><b>Source</b> ${cite(source)}.</span> ` : null}${
    checked.length > 0
      ? tag`<span><b>Checked</b> ${checked.map(
          ({ kind, against, source: from }, i) =>
            tag`${i > 0 ? '; ' : null}<span class="evidence e-${kind}">${evidenceWord[kind]}</span>: ${against}${from ? tag` (${cite([from])})` : null}`,
        )}.</span> `
      : tag`<span><b>Checked</b> against nothing.</span> `
  }<span><b>Accuracy</b> ${accuracy}.</span>${assumes.length > 0 ? tag` <span><b>Assumes</b> ${assumes.join('; ')}.</span>` : null}</p>`;

const entryBlock = ({ ref, entry, refs, again }: NumberedEntry): Markup =>
  again
    ? tag`<p class="again"><a class="ref" href="#${idOf('step', ref)}">${ref}</a> ${math(symbolMath(entry.symbol))} <span class="means">${entry.means}</span> <span class="value">${entry.text}</span> <span class="aside">as above</span></p>`
    : tag`<div class="entry" id="${idOf('step', ref)}"><p class="entry-head"><span class="ref">${ref}</span> ${math(symbolMath(entry.symbol))} <span class="means">${entry.means}</span> <span class="value">${entry.text}</span></p>${steps(entry)}${inputsTable(entry.inputs, refs, ref)}${standing(entry)}</div>`;

/** What is in the working of one finding. */
const entriesOf = ({ finding, entries }: NumberedWorking, ref: string | undefined): Markup =>
  tag`<div class="entries"><p class="tags back"><a href="#${idOf('finding', finding.key)}">finding ${ref ?? finding.key}</a></p>${entries.map(entryBlock)}</div>`;

/**
 * The working of one finding. It can be folded on screen and is open unless the reader folds it, so that print shows all. Where
 * it is only drawn once it is unfolded, it says which steps it would show.
 */
const workingOf = (one: NumberedWorking, ref: string | undefined, folded: boolean): Markup => {
  const { finding, entries } = one;
  const own = entries.filter(({ again }) => !again).map((entry) => entry.ref);
  const state = folded ? tag`data-steps="${own.join(' ')}"` : tag`open`;
  return tag`<details class="working" ${state} id="${idOf('working', finding.key)}" data-key="${finding.key}"><summary><h3>${mark(finding.verdict)} ${finding.asks} <span class="tags">${finding.key}</span></h3></summary>${folded ? null : entriesOf(one, ref)}</details>`;
};

/** Letter before the numbers of steps that stand on no sheet. */
const ALONE = 'W';

/** The working of one finding where it stands by itself, without the ids of a sheet that may show it as well. */
export const workingAlone = (finding: Finding): Markup => {
  const [numbered] = numberWorking([finding], ALONE);
  return numbered
    ? tag`<div class="entries" data-key="${finding.key}">${numbered.entries.map(entryBlock)}</div>`
    : tag`<p class="quiet">Nothing has been worked out yet.</p>`;
};

/** One formula applied, where it stands by itself. */
export const entryAlone = (entry: WorkingEntry): Markup =>
  tag`<div class="entries">${entryBlock({ ref: ALONE, entry, refs: [], again: false })}</div>`;

/**
 * The working of each finding.
 * @param refs numbers of the findings, where the sheet lists them
 * @param folded true where each is drawn once it is unfolded
 */
export const workingList = (
  numbered: readonly NumberedWorking[],
  refs: ReadonlyMap<string, string>,
  folded = false,
): Markup =>
  numbered.length === 0
    ? tag`<p class="quiet">Nothing has been worked out yet.</p>`
    : tag`${numbered.map((one) => workingOf(one, refs.get(one.finding.key), folded))}`;

/** What a folded working holds. */
export const unfoldedWorking = (one: NumberedWorking, refs: ReadonlyMap<string, string>): Markup =>
  entriesOf(one, refs.get(one.finding.key));
