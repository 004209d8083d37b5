/** What every page of the set has: the document around it, the title block, the way to the other sheets. */
import { raw, tag, type Markup, type Part } from '../../figures/index.ts';
import type { BookFacts, Revision, Sibling, Stamp } from './model.ts';
import { pageStyle } from './style.ts';
import { printStyle } from './print-style.ts';

const policy = "default-src 'none'; style-src 'unsafe-inline'; img-src data:; font-src data:";

export interface Page {
  readonly title: string;
  readonly description: string;
  readonly book: BookFacts;
  readonly stamp: Stamp;
  readonly siblings: readonly Sibling[];
  readonly here: string;
  /** The line at the foot of every printed page. */
  readonly running: readonly [left: string, right: string];
  readonly paper: 'portrait' | 'landscape';
  readonly typeface: string;
}

/** The whole file around its content. */
export const page = (facts: Page, content: Part): string => {
  const { book, stamp, siblings, here } = facts;
  const links = siblings.map(({ name, title, href }) =>
    name === here
      ? tag`<li><a href="${href}" aria-current="page">${title}</a></li>`
      : tag`<li><a href="${href}">${title}</a></li>`,
  );
  const style = raw(facts.typeface + pageStyle + printStyle(facts.paper, facts.running));
  const whole = tag`<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="${raw(policy)}">
<meta name="referrer" content="no-referrer">
<meta name="color-scheme" content="light dark">
<meta name="description" content="${facts.description}">
<meta name="stamp" content="${stamp.revision} ${stamp.hash} ${stamp.factsHash}">
<title>${facts.title}</title>
<style>${style}</style>
</head>
<body>
<a class="skip" href="#sheet">Skip to the sheet</a>
<header class="desk">
<p class="set">${book.title}</p>
${links.length > 0 ? tag`<nav aria-label="Sheets of the set"><ol>${links}</ol></nav>` : null}
<fieldset class="look"><legend>Look</legend><label><input type="radio" name="look" id="look-desk" checked> as the desk</label><label><input type="radio" name="look" id="look-paper"> paper</label><label><input type="radio" name="look" id="look-blue"> blueprint</label></fieldset>
</header>
${content}
</body>
</html>
`;
  return whole.markup;
};

export interface TitleBlock {
  readonly sheet: string;
  readonly place: string;
  readonly book: BookFacts;
  readonly stamp: Stamp;
}

const cell = (label: string, value: string, kind = ''): Markup =>
  tag`<div class="cell ${kind}"><dt>${label}</dt><dd>${value}</dd></div>`;

export const titleBlock = ({ sheet, place, book, stamp }: TitleBlock): Markup =>
  tag`<section class="title-block" aria-label="Title block"><dl>${[
    cell('Project', book.title, 'wide strong'),
    cell('Sheet', sheet, 'wide strong'),
    cell('Revision', book.revision, 'strong'),
    cell('Number', place),
    cell('Book', book.file),
    cell('Stamp', stamp.hash, 'mono'),
    cell('Facts', stamp.factsHash.slice(0, 12), 'mono'),
  ]}</dl><p>A holds here is arithmetic, not permission. Local codes and licensed people decide.</p></section>`;

export const revisionTable = (revisions: readonly Revision[]): Markup | null =>
  revisions.length === 0
    ? null
    : tag`<table class="plain"><caption>Revisions</caption><thead><tr><th scope="col">Revision</th><th scope="col">What changed</th></tr></thead><tbody>${revisions.map(
        ({ revision, text }) => tag`<tr><th scope="row">${revision}</th><td>${text}</td></tr>`,
      )}</tbody></table>`;
