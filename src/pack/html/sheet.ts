/** One sheet of the set as one self-contained HTML file. */
import { tag, type Markup } from '../../figures/index.ts';
import type { Block } from '../../contract/document.ts';
import type { Finding } from '../../kernel/report.ts';
import { figureBlock, tableBlock } from './blocks.ts';
import { findingsList, numberFindings } from './findings.ts';
import type { SheetInput, SourceFacts } from './model.ts';
import { page, revisionTable, titleBlock } from './page.ts';
import { cautions, questionsInFront, verdictStrip, worstOf } from './strip.ts';
import { byWeight, idOf, statusWord } from './words.ts';
import { numberWorking, workingList, type NumberedWorking } from './working.ts';

/** A stretch of the sheet under one letter, which its findings and steps are numbered by. */
interface Zone {
  readonly letter: string;
  readonly title: string;
  readonly blocks: readonly Block[];
}

/** A, B … Z, AA, AB … */
const letterOf = (index: number): string =>
  (index >= 26 ? letterOf(Math.floor(index / 26) - 1) : '') + String.fromCodePoint(65 + (index % 26));

const titleFor = (block: Block): string =>
  block.kind === 'findings'
    ? 'Findings'
    : block.kind === 'working'
      ? 'Working'
      : block.kind === 'figure'
        ? 'Figures'
        : 'Notes';

/** A heading opens a zone; so do findings and working where no heading stands right before them. */
const zonesOf = (blocks: readonly Block[]): readonly Zone[] => {
  const zones: { title: string; blocks: Block[] }[] = [];
  const open = (title: string): Block[] => {
    const inner: Block[] = [];
    zones.push({ title, blocks: inner });
    return inner;
  };
  let current: Block[] | undefined;
  for (const block of blocks) {
    if (block.kind === 'cautions') continue;
    if (block.kind === 'heading') current = open(block.text);
    else if (!current || ((block.kind === 'findings' || block.kind === 'working') && current.length > 0)) {
      current = open(titleFor(block));
      current.push(block);
    } else current.push(block);
  }
  return zones.filter((zone) => zone.blocks.length > 0).map((zone, i) => ({ ...zone, letter: letterOf(i + 1) }));
};

const zoneMarkup = (letter: string, title: string, content: Markup): Markup => {
  const id = `zone-${letter}`;
  return tag`<section class="zone" aria-labelledby="${id}"><div class="letter" aria-hidden="true"><span>${letter}</span></div><div class="field"><h2 id="${id}" data-zone="${letter}">${title}</h2>${content}</div></section>`;
};

const workedFindings = (
  block: Extract<Block, { kind: 'working' }>,
  findings: readonly Finding[],
): readonly Finding[] =>
  block.keys ? block.keys.flatMap((key) => findings.filter((finding) => finding.key === key)) : byWeight(findings);

const sourcesTable = (sources: Readonly<Record<string, SourceFacts>>): Markup | null => {
  const ids = Object.keys(sources).toSorted();
  if (ids.length === 0) return null;
  return tag`<table class="plain sources"><caption>Sources</caption><thead><tr><th scope="col">Id</th><th scope="col">Title</th><th scope="col">Read</th><th scope="col">Where</th></tr></thead><tbody>${ids.map(
    (id) => {
      const source = sources[id];
      return source
        ? tag`<tr id="${idOf('source', id)}"><th scope="row">${id}</th><td>${source.title}${source.edition ? `, ${source.edition}` : null}</td><td class="status s-${source.status}">${statusWord[source.status]}</td><td>${source.where}</td></tr>`
        : null;
    },
  )}</tbody></table><p class="note">published: read in the source itself; secondary: read in a work that quotes it; memory: not read, and no evidence.</p>`;
};

/** Ids of every source that the findings cite. */
const cited = (findings: readonly Finding[]): ReadonlySet<string> =>
  new Set(
    findings.flatMap(({ working }) =>
      working.flatMap((entry) => [
        ...entry.source.map(({ id }) => id),
        ...entry.checked.flatMap(({ source }) => (source ? [source.id] : [])),
        ...entry.inputs.flatMap(({ from }) => (from.kind === 'constant' && from.source ? [from.source.id] : [])),
      ]),
    ),
  );

/**
 * Renders a sheet: verdict strip, cautions, questions, then the document in its own order, sources, title block.
 * @param input the sheet's facts; the same input gives the same bytes
 * @param typeface `@font-face` rules, or nothing for the fonts of the reader's system
 * @returns a complete HTML file that asks for nothing from anywhere
 * @throws RangeError when a finding cites a source that is not listed, so that no reader looks for it in vain
 */
export const renderSheet = (input: SheetInput, typeface = ''): string => {
  const { sheet, book, stamp, document, findings, questions, sources } = input;
  for (const id of cited(findings)) {
    if (!sources[id]) throw new RangeError(`sheet ${sheet.name}: the source "${id}" is cited and not listed`);
  }
  const keys = new Set(findings.map(({ key }) => key));
  const zones = zonesOf(document.blocks);
  const numbered = new Map<Block, readonly NumberedWorking[]>();
  const refs = new Map<string, string>();
  for (const { letter, blocks } of zones) {
    for (const block of blocks) {
      if (block.kind !== 'working') continue;
      const working = numberWorking(workedFindings(block, findings), letter);
      numbered.set(block, working);
      for (const { finding, entries } of working) refs.set(finding.key, entries.at(-1)?.ref ?? letter);
    }
  }

  const list = zones.find(({ blocks }) => blocks.some(({ kind }) => kind === 'findings'));
  const listed = list ? numberFindings(findings, list.letter) : new Map<string, string>();

  const blockMarkup = (block: Block): Markup | null => {
    switch (block.kind) {
      case 'paragraph':
        return tag`<p class="prose">${block.text}</p>`;
      case 'figure':
        return figureBlock(block);
      case 'table':
        return tableBlock(block, keys);
      case 'findings':
        return findingsList(findings, listed, (key) => refs.get(key));
      case 'working':
        return workingList(numbered.get(block) ?? [], listed);
      case 'heading':
      case 'cautions':
        return null;
    }
  };
  /** Figures that follow each other stand side by side where there is room. */
  const zoneContent = ({ blocks }: Zone): Markup => {
    const parts: Markup[] = [];
    let row: Markup[] = [];
    const close = (): void => {
      if (row.length > 0) parts.push(tag`<div class="figures">${row}</div>`);
      row = [];
    };
    for (const block of blocks) {
      const drawn = blockMarkup(block);
      if (!drawn) continue;
      if (block.kind === 'figure') {
        row.push(drawn);
        continue;
      }
      close();
      parts.push(drawn);
    }
    close();
    return tag`${parts}`;
  };

  const warned = document.blocks.flatMap((block) => (block.kind === 'cautions' ? block.texts : []));
  const place = `sheet ${sheet.number} of ${sheet.of}`;
  const front = tag`<section class="zone front" aria-labelledby="title"><div class="letter" aria-hidden="true"><span>A</span></div><div class="field"><div class="masthead"><h1 id="title">${sheet.title}</h1><p class="asks">${sheet.asks}</p></div>${[
    verdictStrip(
      findings,
      document.blocks.some(({ kind }) => kind === 'findings'),
    ),
    worstOf(findings),
    cautions(warned),
    questionsInFront(questions, keys),
  ]}</div></section>`;
  const last = zoneMarkup(
    letterOf(zones.length + 1),
    'Sources and revisions',
    tag`<div class="records">${sourcesTable(sources)}${revisionTable(input.revisions ?? [])}</div>`,
  );
  return page(
    {
      title: `${book.title}: ${sheet.title}, revision ${book.revision}`,
      description: sheet.asks,
      book,
      stamp,
      siblings: input.siblings,
      here: sheet.name,
      running: [`${book.title} · ${sheet.title} · ${place}`, `revision ${book.revision} · stamp ${stamp.hash}`],
      paper: input.paper ?? 'portrait',
      typeface,
    },
    tag`<div class="sheet"><main id="sheet">${front}${zones.map((zone) => zoneMarkup(zone.letter, zone.title, zoneContent(zone)))}${last}</main>${titleBlock({ sheet: sheet.title, place, book, stamp })}</div>`,
  );
};
