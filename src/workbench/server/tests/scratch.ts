/** Folders of books that exist only for a test. */
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  realpathSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';

export interface Scratch {
  readonly home: string;
  /** A new folder with these files. */
  readonly folder: (files: Readonly<Record<string, string | Uint8Array>>) => string;
  readonly remove: () => void;
}

/** In memory where the system has such a place, for tests that write much. */
const MEMORY = '/dev/shm';

export const scratch = ({ inMemory = false } = {}): Scratch => {
  const room = inMemory && existsSync(MEMORY) ? MEMORY : tmpdir();
  const home = realpathSync(mkdtempSync(join(room, 'gantrybook-desk-')));
  let count = 0;
  return {
    home,
    folder: (files) => {
      const folder = join(home, `folder-${++count}`);
      mkdirSync(folder);
      for (const [name, text] of Object.entries(files)) {
        mkdirSync(dirname(join(folder, name)), { recursive: true });
        writeFileSync(join(folder, name), text);
      }
      return folder;
    },
    remove: () => rmSync(home, { recursive: true, force: true }),
  };
};

/** Everything that lies in a folder, hidden or not. */
export const filesIn = (folder: string): Readonly<Record<string, string>> =>
  Object.fromEntries(
    readdirSync(folder, { recursive: true, withFileTypes: true, encoding: 'utf8' })
      .filter((entry) => entry.isFile())
      .map((entry) => join(entry.parentPath, entry.name))
      .toSorted()
      .map((path) => [path.slice(folder.length + 1), readFileSync(path, 'utf8')]),
  );

export const book = (more = ''): string => `# YAML 1.2\nbook: 1\ntitle: Bench\nrevision: A\n${more}`;

/** A page and a script of a desk. */
export const page: Readonly<Record<string, string>> = {
  'index.html': '<!doctype html><html lang="en"><title>desk</title></html>',
  'page-1a.js': 'export {};\n',
  'fonts/text.woff2': 'wOF2',
};
