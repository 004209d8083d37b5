/** Markup as text: everything that is put into it is escaped, unless it is markup already. */

export interface Markup {
  readonly markup: string;
}

export type Part = string | number | Markup | null | undefined | false | readonly Part[];

// Control characters but tab and line ends, halves of a character, and the two that no text may hold.
const forbidden = /[^\P{Cc}\t\n\r]|\p{Cs}|[\uFFFE\uFFFF]/gu;
const entities: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/**
 * A text made safe for element content and quoted attributes of XML and HTML.
 * @param text any text; characters that neither allows become U+FFFD
 */
export const escapeText = (text: string): string =>
  text.replace(forbidden, '\uFFFD').replace(/[&<>"']/g, (c) => entities[c] ?? c);

/** Marks a text as markup that must not be escaped again. */
export const raw = (markup: string): Markup => ({ markup });

const put = (part: Part): string => {
  if (part === null || part === undefined || part === false) return '';
  if (typeof part === 'string') return escapeText(part);
  if (typeof part === 'number') return String(part);
  if ('markup' in part) return part.markup;
  return part.map(put).join('');
};

/** A template tag for SVG and HTML: texts are escaped, markup and lists of it are put in as they are. */
export const tag = (strings: TemplateStringsArray, ...parts: readonly Part[]): Markup =>
  raw(strings.reduce((whole, text, i) => whole + put(parts[i - 1]) + text));
