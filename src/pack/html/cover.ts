/** The cover of the set: every sheet with how it stands. */
import { raw, tag, useScaleSvg, verdictWord, type Markup } from '../../figures/index.ts';
import type { IndexInput } from './model.ts';
import { page, revisionTable, titleBlock } from './page.ts';
import { mark, questionsInFront, tally, verdictStrip } from './strip.ts';
import { byWeight, ofLimit, usedBy } from './words.ts';

const sheetRow = ({ number, title, asks, href, findings }: IndexInput['sheets'][number]): Markup => {
  const worst = byWeight(findings).find(({ accepted }) => accepted?.counts !== true);
  const used = worst && worst.verdict !== 'not-stated' ? usedBy(worst) : undefined;
  return tag`<tr><td class="number">${number}</td><th scope="row"><a href="${href}">${title}</a></th><td class="asks">${asks}</td>${tally(
    findings,
  ).map(
    ({ verdict, all }) =>
      tag`<td class="number tally ${all === 0 ? 'none' : `v-${verdict}`}" data-head="${verdictWord[verdict]}">${all}</td>`,
  )}<td class="worst-of">${worst ? tag`${mark(worst.verdict)} ${worst.sentence}` : null}${
    used
      ? tag`<span class="use">${raw(useScaleSvg(used, 'small', true))} <span class="percent">${ofLimit(used)}</span></span>`
      : null
  }</td></tr>`;
};

/**
 * Renders the cover of a set.
 * @param input the set's facts
 * @param typeface `@font-face` rules, or nothing for the fonts of the reader's system
 * @returns a complete HTML file that asks for nothing from anywhere
 */
export const renderIndex = (input: IndexInput, typeface = ''): string => {
  const { book, stamp, sheets, questions, files = [] } = input;
  const all = sheets.flatMap(({ findings }) => findings);
  const place = `${sheets.length === 1 ? '1 sheet' : `${sheets.length} sheets`}`;
  const heads = tally([]).map(({ verdict }) => tag`<th scope="col" class="number">${mark(verdict)}</th>`);
  const list = tag`<div class="table" role="region" aria-labelledby="sheets" tabindex="0"><table class="set-list"><caption id="sheets">Sheets</caption><thead><tr><th scope="col" class="number">No.</th><th scope="col">Sheet</th><th scope="col">Answers</th>${heads}<th scope="col">Worst</th></tr></thead><tbody>${sheets.map(sheetRow)}</tbody></table></div>`;
  const made =
    files.length === 0
      ? null
      : tag`<table class="plain"><caption>Files of the pack</caption><thead><tr><th scope="col">File</th><th scope="col">What it is</th></tr></thead><tbody>${files.map(
          ({ name, href, means }) => tag`<tr><th scope="row"><a href="${href}">${name}</a></th><td>${means}</td></tr>`,
        )}</tbody></table>`;
  return page(
    {
      title: `${book.title}: drawing set, revision ${book.revision}`,
      description: book.about ?? `Drawing set of ${book.title}`,
      book,
      stamp,
      siblings: input.siblings,
      here: 'index',
      running: [`${book.title} · cover · ${place}`, `revision ${book.revision} · stamp ${stamp.hash}`],
      paper: input.paper ?? 'portrait',
      typeface,
    },
    tag`<div class="sheet cover"><main id="sheet"><section class="zone front" aria-labelledby="title"><div class="letter" aria-hidden="true"><span>A</span></div><div class="field"><div class="masthead"><h1 id="title">${book.title}</h1>${
      book.about ? tag`<p class="asks">${book.about}</p>` : null
    }</div>${verdictStrip(all, false)}${questionsInFront(questions, new Set())}</div></section><section class="zone" aria-labelledby="zone-B"><div class="letter" aria-hidden="true"><span>B</span></div><div class="field"><h2 id="zone-B" data-zone="B">The set</h2>${list}</div></section>${
      made || (input.revisions ?? []).length > 0
        ? tag`<section class="zone" aria-labelledby="zone-C"><div class="letter" aria-hidden="true"><span>C</span></div><div class="field"><h2 id="zone-C" data-zone="C">Records</h2><div class="records">${made}${revisionTable(input.revisions ?? [])}</div></div></section>`
        : null
    }</main>${titleBlock({ sheet: 'Cover', place, book, stamp })}</div>`,
  );
};
