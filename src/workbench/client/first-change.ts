/** Where a book's text changed, so that it can be shown. */

export interface Change {
  readonly file: string;
  readonly from: number;
  readonly to: number;
}

type Files = Readonly<Record<string, string>>;

/** The lines of a text from the first character that is new to the last. */
const stretch = (before: string, after: string): { readonly from: number; readonly to: number } => {
  const least = Math.min(before.length, after.length);
  let from = 0;
  while (from < least && before[from] === after[from]) from += 1;
  let same = 0;
  while (same < least - from && before.at(-1 - same) === after.at(-1 - same)) same += 1;
  const last = Math.max(from, after.length - same);
  const end = after.indexOf('\n', last);
  return { from: after.lastIndexOf('\n', from - 1) + 1, to: end < 0 ? after.length : end };
};

/**
 * What is new in a book's files.
 * @param here the file that is looked for first
 * @returns nothing where all is as before, or where a file only went away
 */
export const firstChange = (before: Files, after: Files, here: string): Change | undefined => {
  if (before === after) return undefined;
  const names = [here, ...Object.keys(after).filter((name) => name !== here)];
  for (const file of names) {
    const [was, is] = [before[file], after[file]];
    if (is !== undefined && was !== is) return { file, ...stretch(was ?? '', is) };
  }
  return undefined;
};
