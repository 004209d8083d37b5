/** The stretches of a sheet, one after the other: what a file of the set holds, and what a page shows one by one. */
import { tag, type Markup } from '../../figures/index.ts';
import type { Block } from '../../contract/document.ts';
import type { Finding } from '../../kernel/report.ts';
import { figureBlock, tableBlock } from './blocks.ts';
import { citedIn } from './facts.ts';
import { findingsList, numberFindings } from './findings.ts';
import type { SheetInput, SourceFacts } from './model.ts';
import { revisionTable, titleBlock } from './page.ts';
import { cautions, questionsInFront, verdictStrip, worstOf } from './strip.ts';
import { byWeight, idOf, statusWord } from './words.ts';
import { numberWorking, unfoldedWorking, workingList, type NumberedWorking } from './working.ts';

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

export const sourcesTable = (sources: Readonly<Record<string, SourceFacts>>): Markup | null => {
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

/** What stands in front and follows from the findings alone. */
export interface FrontParts {
  readonly title: Markup;
  readonly strip: Markup;
  readonly worst: Markup | null;
}

export const frontParts = (
  { title, asks }: Pick<SheetInput['sheet'], 'title' | 'asks'>,
  findings: readonly Finding[],
  linked: boolean,
): FrontParts => ({
  title: tag`<div class="masthead"><h1 id="title">${title}</h1><p class="asks">${asks}</p></div>`,
  strip: verdictStrip(findings, linked),
  worst: worstOf(findings),
});

export interface SheetParts extends FrontParts {
  readonly cautions: Markup | null;
  readonly questions: Markup | null;
  /** The zones after the front, each with the letter that it stands under; the last holds sources and revisions. */
  readonly zones: readonly { readonly letter: string; readonly markup: Markup }[];
  readonly titleBlock: Markup;
  /** What the folded working of a finding holds, as it is numbered on this sheet. */
  readonly unfolded: (key: string) => Markup | undefined;
}

/** The sheet's place in its set. */
export const placeIn = ({ number, of }: Pick<SheetInput['sheet'], 'number' | 'of'>): string =>
  `sheet ${number} of ${of}`;

/**
 * Draws every stretch of a sheet.
 * @param input the sheet's facts; the same input gives the same bytes
 * @param folded true where the working of a finding is drawn once somebody unfolds it
 * @throws RangeError when a finding cites a source that is not listed, so that no reader looks for it in vain
 */
export const sheetParts = (input: SheetInput, folded = false): SheetParts => {
  const { sheet, book, stamp, document, findings, questions, sources } = input;
  for (const id of citedIn(findings.flatMap(({ working }) => working))) {
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
        return workingList(numbered.get(block) ?? [], listed, folded);
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
  const last = letterOf(zones.length + 1);
  const records = tag`<div class="records">${sourcesTable(sources)}${revisionTable(input.revisions ?? [])}</div>`;
  return {
    ...frontParts(sheet, findings, list !== undefined),
    cautions: cautions(warned),
    questions: questionsInFront(questions, keys),
    zones: [
      ...zones.map((zone) => ({
        letter: zone.letter,
        markup: zoneMarkup(zone.letter, zone.title, zoneContent(zone)),
      })),
      { letter: last, markup: zoneMarkup(last, 'Sources and revisions', records) },
    ],
    titleBlock: titleBlock({ sheet: sheet.title, place: placeIn(sheet), book, stamp }),
    unfolded: (key) => {
      const one = [...numbered.values()].flat().find(({ finding }) => finding.key === key);
      return one && unfoldedWorking(one, listed);
    },
  };
};
