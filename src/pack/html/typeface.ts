/** The lettering that is shipped with the program, put into each file so that it needs nothing else. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';

const faces = [
  { family: 'gb-sans', file: 'sans-regular.woff2', weight: 400, style: 'normal' },
  { family: 'gb-sans', file: 'sans-semibold.woff2', weight: 600, style: 'normal' },
  { family: 'gb-sans', file: 'sans-italic.woff2', weight: 400, style: 'italic' },
  { family: 'gb-mono', file: 'mono-regular.woff2', weight: 400, style: 'normal' },
  { family: 'gb-math', file: 'math.woff2', weight: 400, style: 'normal' },
] as const;

/**
 * Reads the shipped fonts as `@font-face` rules with their data inside.
 * @param folder the program's `fonts` folder
 * @returns CSS for `renderSheet` and `renderIndex`
 * @throws the file system's error when a font is missing
 */
export const typefaceFrom = (folder: string): string =>
  faces
    .map(({ family, file, weight, style }) => {
      const data = readFileSync(join(folder, file)).toString('base64');
      return `@font-face{font-family:${family};font-weight:${weight};font-style:${style};font-display:block;src:url(data:font/woff2;base64,${data}) format('woff2')}`;
    })
    .join('');
