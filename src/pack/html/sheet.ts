/** One sheet of the set as one self-contained HTML file. */
import { tag } from '../../figures/index.ts';
import type { SheetInput } from './model.ts';
import { page } from './page.ts';
import { placeIn, sheetParts } from './parts.ts';

/**
 * Renders a sheet: verdict strip, cautions, questions, then the document in its own order, sources, title block.
 * @param input the sheet's facts; the same input gives the same bytes
 * @param typeface `@font-face` rules, or nothing for the fonts of the reader's system
 * @returns a complete HTML file that asks for nothing from anywhere
 * @throws RangeError when a finding cites a source that is not listed, so that no reader looks for it in vain
 */
export const renderSheet = (input: SheetInput, typeface = ''): string => {
  const { sheet, book, stamp } = input;
  const { title, strip, worst, cautions, questions, zones, titleBlock } = sheetParts(input);
  const front = tag`<section class="zone front" aria-labelledby="title"><div class="letter" aria-hidden="true"><span>A</span></div><div class="field">${[
    title,
    strip,
    worst,
    cautions,
    questions,
  ]}</div></section>`;
  return page(
    {
      title: `${book.title}: ${sheet.title}, revision ${book.revision}`,
      description: sheet.asks,
      book,
      stamp,
      siblings: input.siblings,
      here: sheet.name,
      running: [
        `${book.title} · ${sheet.title} · ${placeIn(sheet)}`,
        `revision ${book.revision} · stamp ${stamp.hash}`,
      ],
      paper: input.paper ?? 'portrait',
      typeface,
    },
    tag`<div class="sheet"><main id="sheet">${front}${zones.map(({ markup }) => markup)}</main>${titleBlock}</div>`,
  );
};
