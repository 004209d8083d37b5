/** Rows as comma-separated values: RFC 4180 with line feeds, and the stamp in a first line that begins with `#`. */

/** Spreadsheets run what begins like a formula; a book may come from a stranger. A sign before a digit is a number's own. */
const looksLikeFormula = (cell: string): boolean => /^[=@\t\r]|^[+-](?![\d.])/.test(cell);

const field = (cell: string): string => {
  const safe = looksLikeFormula(cell) ? `'${cell}` : cell;
  return /[",\n\r#]|^\s|\s$/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
};

/**
 * The text of a table.
 *
 * @param rows the head first
 * @param stamp one line that says what the table was made from
 */
export const csvText = (rows: readonly (readonly string[])[], stamp: string): string =>
  `${[`# ${stamp.replaceAll(/\s+/g, ' ')}`, ...rows.map((row) => row.map(field).join(','))].join('\n')}\n`;
