/** Small books for trying commands, in folders of their own. */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

export interface Shelf {
  readonly home: string;
  /** Writes a book's files into a new folder and gives its path. */
  readonly book: (files: Readonly<Record<string, string>> | string) => string;
  readonly remove: () => void;
}

export const shelf = (): Shelf => {
  const home = mkdtempSync(join(tmpdir(), 'gantrybook-cli-'));
  let count = 0;
  return {
    home,
    book: (files) => {
      const folder = join(home, `book-${++count}`);
      mkdirSync(folder);
      for (const [name, text] of Object.entries(typeof files === 'string' ? { 'book.yaml': files } : files))
        writeFileSync(join(folder, name), text);
      return folder;
    },
    remove: () => rmSync(home, { recursive: true, force: true }),
  };
};

/** One belt axis of exact facts; the belt grips too few teeth of a small pulley. */
export const bench = (teeth: number, more = ''): string => `# YAML 1.2
book: 1
title: Bench
revision: A
axes:
  x: { drive: belt, belt: 2GT-6, pulley-teeth: ${teeth}, moving-mass: 2.5 kg, speed: 220 mm/s, acceleration: 700 mm/s² }
${more}`;

export const [fine, failing] = [bench(20), bench(8)];
export const accepted = bench(
  8,
  'accepted: [{ finding: MOTION-120/x, because: it pulls little, at: 150 %, until: 2027-05-01 }]\n',
);
export const unreadable = bench(20).replace('220 mm/s,', '220,').replace('700 mm/s²', '5 parsec');
