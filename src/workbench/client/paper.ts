/** How the sheet in front is printed: as in the pack, with its line at the foot of every page. */
import { printStyle } from '../../pack/html/print-style.ts';
import type { LaidBook } from '../desk/engine.ts';

const onPaper = new CSSStyleSheet();
document.adoptedStyleSheets = [...document.adoptedStyleSheets, onPaper];

export const printAs = ({ title, revision, stamp, sheets }: LaidBook, name: string | undefined): void => {
  const sheet = sheets.find((one) => one.name === name);
  const place = sheet ? ` · ${sheet.title} · sheet ${sheet.number} of ${sheets.length}` : '';
  onPaper.replaceSync(printStyle('portrait', [`${title}${place}`, `revision ${revision} · stamp ${stamp}`]));
};
