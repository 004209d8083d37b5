/** Folders that come with the program: beside the built file's folder, or at the root of a checkout. */
import { existsSync } from 'node:fs';

/** @throws Error when the program is not whole */
export const programFolder = (name: string): URL => {
  for (const way of ['../', '../../']) {
    const found = new URL(`${way}${name}/`, import.meta.url);
    if (existsSync(found)) return found;
  }
  throw new Error(`the program's own folder ${name} is missing`);
};
