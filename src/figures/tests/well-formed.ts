/** Elements that HTML closes by itself. */
const empty = new Set(['meta', 'link', 'br', 'hr', 'img', 'input', 'wbr']);

/**
 * The first thing wrong with the nesting or the characters of a piece of markup, or nothing.
 * It knows enough for what is written here: quoted attributes, no CDATA, no comments.
 */
export const firstFault = (markup: string): string | undefined => {
  const open: string[] = [];
  const plain = markup.replace(/<!doctype html>/i, '').replace(/<style>[^<]*<\/style>/g, '');
  const token = /<(\/?)([a-zA-Z][\w-]*)((?:\s+[a-zA-Z_:][\w:.-]*(?:="[^"<]*")?)*)\s*(\/?)>|[^<]+|</g;
  for (const [whole, close, name, attributes = '', alone] of plain.matchAll(token)) {
    if (name === undefined) {
      if (whole === '<') return `a loose "<" inside ${open.at(-1) ?? 'nothing'}`;
      if (/&(?!(?:amp|lt|gt|quot|#39);)/.test(whole)) return `a loose "&" in "${whole.slice(0, 40)}"`;
      continue;
    }
    if (/&(?!(?:amp|lt|gt|quot|#39);)/.test(attributes)) return `a loose "&" in an attribute of ${name}`;
    if (close) {
      const last = open.pop();
      if (last !== name) return `</${name}> closes ${last ?? 'nothing'}`;
    } else if (!alone && !empty.has(name)) open.push(name);
  }
  return open.length > 0 ? `${open.at(-1)} is not closed` : undefined;
};
