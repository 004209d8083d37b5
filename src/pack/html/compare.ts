/** The comparison of two books as one self-contained HTML file in the manner of a sheet. */
import type { Machine } from '../../app/index.ts';
import type { Discipline } from '../../contract/index.ts';
import { changeText, type Change } from '../../engine/compare-changes.ts';
import type { Comparison, FactChange } from '../../engine/compare.ts';
import { linesOf, type Group, type Line, type Pair, type Tour } from '../../engine/compare-tour.ts';
import { raw, tag, useScaleSvg, useText, verdictWord, worstFirst, type Markup } from '../../figures/index.ts';
import type { Finding } from '../../kernel/report.ts';
import { bookWords } from '../report.ts';
import { compareStyle } from './compare-style.ts';
import type { BookFacts, Stamp } from './model.ts';
import { page, titleBlock } from './page.ts';
import { cautions, mark } from './strip.ts';
import { count, idOf, usedBy } from './words.ts';

/** The name of the file. */
export const COMPARISON = 'comparison.html';
const KIND = 'sheet comparison';

/** Whether a file is a comparison that this program made, and may be replaced by another. */
export const isComparison = (text: string): boolean =>
  text.includes('<meta name="stamp"') && text.includes(`<div class="${KIND}">`);

export interface ComparisonInput {
  readonly before: Machine;
  readonly after: Machine;
  /** The trades, in the order of the set. */
  readonly disciplines: readonly Pick<Discipline, 'name' | 'title' | 'cautions'>[];
  readonly comparison: Comparison;
  readonly tour: Tour;
}

/** Digits of a hash that are printed. */
const SHORT = 12;

const factsOf = (machine: Machine): { readonly book: BookFacts; readonly stamp: Stamp } => {
  const { title, revision } = bookWords(machine);
  const { content } = machine.stamp;
  return {
    book: { title, revision, file: machine.book.main },
    stamp: { revision, hash: content.slice(0, SHORT), factsHash: content },
  };
};

const state = (finding: Finding | undefined): Markup =>
  finding ? mark(finding.verdict) : tag`<span class="none">not asked</span>`;

const changeMarkup = (change: Change): Markup => {
  const text = changeText(change);
  return tag`<code>${change.name}</code>${text.slice(change.name.length)}`;
};

/** Both uses on the same ruler, one under the other. */
const scales = ({ before, after }: Pair): Markup | null => {
  const row = (when: string, finding: Finding | undefined): Markup => {
    const used = finding && finding.verdict !== 'not-stated' ? usedBy(finding) : undefined;
    const shown = used
      ? tag`${raw(useScaleSvg(used, 'small', true))} <span class="percent"><b>${useText(used)}</b></span>`
      : tag`${state(finding)}`;
    return tag`<p class="on-scale"><span class="when">${when}</span> ${shown}</p>`;
  };
  return [before, after].some((one) => one && usedBy(one))
    ? tag`<div class="used both">${row('before', before)}${row('after', after)}</div>`
    : null;
};

const percent = (finding: Finding | undefined): string => {
  const used = finding && usedBy(finding);
  return finding ? `${verdictWord[finding.verdict]}${used ? ` ${useText(used)}` : ''}` : 'not asked';
};

const alike = (others: readonly Pair[]): Markup | null =>
  others.length === 0
    ? null
    : tag`<details class="alike"><summary>and ${count(others.length, 'finding')} alike</summary><ul>${others.map(
        ({ key, before, after }) =>
          tag`<li><span class="mono">${key}</span> ${percent(before)} → ${percent(after)}<span class="words">. ${(after ?? before)?.sentence ?? ''}</span></li>`,
      )}</ul></details>`;

const factItem = ({ path, before, after }: FactChange): Markup =>
  tag`<li><code>${path}</code> ${before ?? 'not stated'} → ${after ?? 'not stated'}</li>`;

const facts = (behind: readonly FactChange[], own: ReadonlySet<string>): Markup | null =>
  behind.length === 0
    ? null
    : tag`<details class="facts"><summary>${count(behind.length, 'fact')} behind it</summary><ul>${behind
        .toSorted((a, b) => Number(own.has(b.path)) - Number(own.has(a.path)))
        .map(factItem)}</ul></details>`;

const besides = ({ cause }: Pair): Markup | null => {
  if (!cause || cause.by.length === 0) return null;
  const [, ...others] = cause.by;
  const named = others.map((change, i) => tag`${i > 0 ? '; ' : null}${changeMarkup(change)}`);
  if (others.length > 0)
    return tag`<p class="more"><b>Together with</b> ${named}${cause.enough ? null : ', and with still more'}.</p>`;
  return cause.enough ? null : tag`<p class="more">This alone is not enough.</p>`;
};

interface Row {
  readonly ref: string;
  readonly own: ReadonlySet<string>;
}

const item = (line: Line, { ref, own }: Row): Markup => {
  const [pair, ...others] = line.pairs;
  const { key, before, after, behind } = pair;
  const told = (kind: string, finding: Finding | undefined, none: string): Markup =>
    tag`<p class="${kind}"><span class="state">${state(finding)}</span>${finding?.sentence ?? none}</p>`;
  return tag`<li class="finding" id="${idOf('finding', key)}"><div class="ref">${ref}</div><div class="says">${told(
    'was',
    before,
    'The question did not arise.',
  )}${told('is', after, 'The question no longer arises.')}${besides(pair)}<div class="behind"><span class="mono">${key}</span>${alike(others)}${facts(behind, own)}</div></div>${scales(pair)}</li>`;
};

const listed = (lines: readonly Line[], zone: string, own: ReadonlySet<string>): Markup =>
  tag`<ol class="findings">${lines.map((line, i) => item(line, { ref: `${zone}${i + 1}`, own }))}</ol>`;

const grouped = (groups: readonly Group[], zone: string, own: ReadonlySet<string>): Markup => {
  let number = 0;
  return tag`${groups.map(
    ({ change, lines, size }) =>
      tag`<section class="change"><h3>${
        change ? changeMarkup(change) : 'Several changes together, of which no three are enough'
      }<span class="aside">${count(size, 'finding')}</span></h3>${
        change && change.means !== change.paths[0] ? tag`<p class="aside">${change.means}</p>` : null
      }<ol class="findings">${lines.map((line) => item(line, { ref: `${zone}${(number += 1)}`, own }))}</ol></section>`,
  )}`;
};

/** Verdicts of each trade in both books. */
const strips = ({ before, after, disciplines }: ComparisonInput): Markup => {
  const counted = (machine: Machine, verdict: Finding['verdict'], sheet?: string): number =>
    machine.findings.filter((one) => one.verdict === verdict && (sheet === undefined || one.sheet === sheet)).length;
  const cells = (sheet?: string): readonly Markup[] =>
    worstFirst.map((verdict) => {
      const [was, is] = [counted(before, verdict, sheet), counted(after, verdict, sheet)];
      return tag`<td class="number tally ${was + is === 0 ? 'none' : `v-${verdict}`}" data-head="${verdictWord[verdict]}">${
        was === is ? is : tag`<span class="was">${was} →</span> ${is}`
      }</td>`;
    });
  const heads = worstFirst.map((verdict) => tag`<th scope="col" class="number">${mark(verdict)}</th>`);
  return tag`<div class="table" role="region" aria-labelledby="strips" tabindex="0"><table class="set-list strips"><caption id="strips">Verdicts before → after</caption><thead><tr><th scope="col">Sheet</th>${heads}</tr></thead><tbody>${disciplines.map(
    ({ name, title }) => tag`<tr><th scope="row">${title}</th>${cells(name)}</tr>`,
  )}<tr><th scope="row">All</th>${cells()}</tr></tbody></table></div>`;
};

const changesTable = (changes: readonly Change[]): Markup | null =>
  changes.length === 0
    ? null
    : tag`<table class="plain"><caption>What the author changed</caption><thead><tr><th scope="col">Where</th><th scope="col">Before</th><th scope="col">After</th><th scope="col">What it is</th></tr></thead><tbody>${changes.map(
        ({ name, before, after, means, paths }) =>
          tag`<tr><th scope="row"><code>${name}</code></th><td>${before ?? 'not there'}</td><td>${after ?? 'not there'}</td><td>${means === paths[0] ? '' : means}</td></tr>`,
      )}</tbody></table>`;

const factsTable = (changes: readonly FactChange[], caption: string): Markup | null =>
  changes.length === 0
    ? null
    : tag`<table class="plain"><caption>${caption}</caption><thead><tr><th scope="col">Fact</th><th scope="col">Before</th><th scope="col">After</th></tr></thead><tbody>${changes.map(
        ({ path, before, after }) =>
          tag`<tr><th scope="row"><code>${path}</code></th><td>${before ?? 'not stated'}</td><td>${after ?? 'not stated'}</td></tr>`,
      )}</tbody></table>`;

const zoneMarkup = (letter: string, title: string, content: Markup): Markup => {
  const id = `zone-${letter}`;
  return tag`<section class="zone" aria-labelledby="${id}"><div class="letter" aria-hidden="true"><span>${letter}</span></div><div class="field"><h2 id="${id}" data-zone="${letter}">${title}</h2>${content}</div></section>`;
};

/**
 * Renders the comparison of two books.
 * @param input both machines, what moved between them and why
 * @param typeface `@font-face` rules, or nothing for the fonts of the reader's system
 * @returns a complete HTML file that asks for nothing from anywhere; the same books give the same bytes
 */
export const comparisonSheet = (input: ComparisonInput, typeface = ''): string => {
  const { before, after, disciplines, comparison, tour } = input;
  const [old, now] = [factsOf(before), factsOf(after)];
  const own = new Set(tour.changes.flatMap(({ differs }) => differs));
  const of = (...kinds: readonly Pair['kind'][]): readonly Pair[] =>
    tour.pairs.filter(({ kind }) => kinds.includes(kind));
  const size = (groups: readonly Group[]): number => groups.reduce((sum, group) => sum + group.size, 0);
  const { same, quiet, moved } = comparison;
  const behind = [...new Map(moved.flatMap((one) => one.behind).map((fact) => [fact.path, fact])).values()];
  const derived = behind.filter(({ path }) => !own.has(path)).toSorted((a, b) => (a.path < b.path ? -1 : 1));

  // Whoever swaps a part because of this page works on the machine.
  const touched = new Set(tour.pairs.map(({ sheet }) => sheet));
  const warned = [...new Set(disciplines.filter(({ name }) => touched.has(name)).flatMap((one) => one.cautions))];

  const contents: readonly (readonly [title: string, content: (letter: string) => Markup | null])[] = [
    [`Cured (${size(tour.cured)})`, (zone) => (tour.cured.length > 0 ? grouped(tour.cured, zone, own) : null)],
    [
      `Broken or worse (${size(tour.worse)})`,
      (zone) => (tour.worse.length > 0 ? grouped(tour.worse, zone, own) : null),
    ],
    [`Better (${size(tour.better)})`, (zone) => (tour.better.length > 0 ? grouped(tour.better, zone, own) : null)],
    ...(
      [
        ['The verdict stays, the percentage moves', tour.moved, of('moved').length],
        ['Now stated', linesOf(of('now-stated')), of('now-stated').length],
        ['No longer stated', linesOf(of('no-longer-stated')), of('no-longer-stated').length],
        ['Asked of the second book only', linesOf(of('only-after')), of('only-after').length],
        ['Asked of the first book only', linesOf(of('only-before')), of('only-before').length],
      ] as const
    ).map(
      ([title, lines, all]) =>
        [`${title} (${all})`, (zone: string) => (lines.length > 0 ? listed(lines, zone, own) : null)] as const,
    ),
    [
      'Changes and facts',
      () =>
        tour.changes.length + derived.length + quiet.length === 0
          ? null
          : tag`<div class="records">${[
              changesTable(tour.changes),
              factsTable(derived, 'Facts of parts and tables that differ with it'),
              factsTable(quiet, 'Different, and no finding moves by it'),
            ]}</div>`,
    ],
    ['Cautions', () => (warned.length > 0 ? tag`<div class="asides">${cautions(warned)}</div>` : null)],
  ];
  const zones: Markup[] = [];
  for (const [title, content] of contents) {
    const letter = String.fromCodePoint(66 + zones.length);
    const inner = content(letter);
    if (inner) zones.push(zoneMarkup(letter, title, inner));
  }
  const lead =
    moved.length === 0
      ? tag`<p class="lead">Nothing moves: ${count(same, 'finding')} as before.</p>`
      : tag`<p class="lead">Each finding stands under the change that moves it. That was found by trial: with this change alone undone in the book where the finding stands better, it stands as badly as in the other. Where that takes two or three changes, all are named. Uses before and after stand on the same ruler; its heavy end is the limit.</p>`;
  const front = tag`<section class="zone front" aria-labelledby="title"><div class="letter" aria-hidden="true"><span>A</span></div><div class="field"><div class="masthead"><h1 id="title">Comparison</h1><p class="asks">From ${old.book.title}, revision ${old.book.revision}, to ${now.book.title}, revision ${now.book.revision}: what moves, and by which change.</p></div>${strips(input)}${lead}</div></section>`;
  const block = (place: string, { book, stamp }: typeof old): Markup =>
    titleBlock({ sheet: 'Comparison', place, book, stamp });
  return page(
    {
      title: `${now.book.title}: comparison, revision ${old.book.revision} to ${now.book.revision}`,
      description: `What ${now.book.title}, revision ${now.book.revision}, changes from ${old.book.title}, revision ${old.book.revision}`,
      book: now.book,
      stamp: now.stamp,
      siblings: [],
      here: '',
      running: [
        `${now.book.title} · comparison`,
        `revision ${old.book.revision} to ${now.book.revision} · stamps ${old.stamp.hash}, ${now.stamp.hash}`,
      ],
      paper: 'portrait',
      typeface: typeface + compareStyle,
    },
    tag`<div class="${KIND}"><main id="sheet">${front}${zones}</main><div class="title-blocks">${block('book 1 of 2, before', old)}${block('book 2 of 2, after', now)}</div></div>`,
  );
};
