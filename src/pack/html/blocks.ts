/** Figures and tables of a sheet. */
import { raw, tag, useScaleSvg, useText, type Markup } from '../../figures/index.ts';
import type { Block, Cell, Column } from '../../contract/document.ts';
import { mark } from './strip.ts';
import { idOf } from './words.ts';

type Of<K extends Block['kind']> = Extract<Block, { kind: K }>;

const content = (cell: Cell, keys: ReadonlySet<string>): Markup => {
  if (typeof cell === 'string') return tag`${cell}`;
  const { text, use, verdict, finding, path } = cell;
  // A fact that stands by itself is its own handle; beside a verdict its path says what is meant.
  const bare = path !== undefined && text !== '' && !verdict && !finding && !use;
  const words = bare ? tag`<span data-path="${path}">${text}</span>` : text ? tag`<span>${text}</span>` : null;
  const linked =
    finding && keys.has(finding)
      ? tag`<a href="#${idOf('finding', finding)}" data-key="${finding}">${words ?? useLabel(cell)}</a>`
      : words;
  return tag`${verdict ? tag`${mark(verdict)} ` : null}${linked}${
    use
      ? tag` <span class="use">${raw(useScaleSvg(use, 'small', true))} ${text ? tag`<span class="percent">${useText(use)}</span>` : linked ? null : useText(use)}</span>`
      : null
  }${path && !bare ? tag` <code class="path" data-path="${path}">${path}</code>` : null}`;
};

const useLabel = (cell: Exclude<Cell, string>): string => (cell.use ? useText(cell.use) : (cell.finding ?? ''));

const cellOf = (cell: Cell, column: Column | undefined, first: boolean, keys: ReadonlySet<string>): Markup => {
  const kind = column?.align === 'number' ? 'number' : '';
  return first
    ? tag`<th scope="row" class="${kind}">${content(cell, keys)}</th>`
    : tag`<td class="${kind}" data-head="${column?.head ?? ''}">${content(cell, keys)}</td>`;
};

/** A table with heads on both sides; a wide one scrolls inside its own frame. */
export const tableBlock = ({ name, caption, columns, rows, note }: Of<'table'>, keys: ReadonlySet<string>): Markup => {
  const id = idOf('table', name);
  // What a row comes to stays in sight while the rest of a wide table is moved under it.
  const last = columns.length - 1;
  const stays = rows.some((cells) => typeof cells[last] === 'object' && (cells[last].use || cells[last].verdict));
  return tag`<div class="table${stays ? ' stays' : ''}" role="region" aria-labelledby="${id}" tabindex="0"><table><caption id="${id}">${caption}</caption><thead><tr>${columns.map(
    ({ head, align }) => tag`<th scope="col" class="${align === 'number' ? 'number' : ''}">${head}</th>`,
  )}</tr></thead><tbody>${rows.map(
    (cells) => tag`<tr>${cells.map((cell, i) => cellOf(cell, columns[i], i === 0, keys))}</tr>`,
  )}</tbody></table>${note ? tag`<p class="note">${note}</p>` : null}</div>`;
};

/** A figure carries its own style when it stands alone; on the page the style stands once. */
export const figureBlock = ({ name, svg, caption }: Of<'figure'>): Markup =>
  tag`<figure id="${idOf('figure', name)}"><div class="drawn">${raw(svg.replace(/<style>[^<]*<\/style>/, ''))}</div><figcaption>${caption}</figcaption></figure>`;
