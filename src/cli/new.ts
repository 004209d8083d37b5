/** `gantrybook new` and `gantrybook schema`: a book of one's own to begin with, and its schema for an editor. */
import { copyFileSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { houseOn } from '../app/index.ts';
import { nearest } from '../kernel/nearest.ts';
import { diskTrouble, Refused } from '../pack/refused.ts';
import { disk } from '../pack/disk.ts';
import { writeWhole } from '../pack/write.ts';
import { GOOD, type ExitCode } from './exit.ts';
import { programFolder } from './program-folder.ts';
import type { Terminal } from './terminal.ts';

const SCHEMA_FILE = 'book.schema.json';
/** The comment by which editors that know YAML find a schema. */
const SCHEMA_LINE = `# yaml-language-server: $schema=${SCHEMA_FILE}`;

const schemaText = (): string => `${JSON.stringify(houseOn().schema.jsonSchema(), undefined, 2)}\n`;

export const schema = (terminal: Terminal): ExitCode => {
  terminal.print(schemaText().trimEnd());
  return GOOD;
};

/** Folders of the examples that hold a book. */
const examplesIn = (folder: string): readonly string[] =>
  readdirSync(folder, { withFileTypes: true })
    .filter(
      (entry) =>
        entry.isDirectory() &&
        statSync(join(folder, entry.name, 'book.yaml'), { throwIfNoEntry: false })?.isFile() === true,
    )
    .map(({ name }) => name)
    .sort();

const isEmpty = (folder: string): boolean => {
  const stat = statSync(folder, { throwIfNoEntry: false });
  return stat === undefined || (stat.isDirectory() && readdirSync(folder).every((name) => name.startsWith('.')));
};

/** After the line that says which YAML it is, or before everything. */
const withSchema = (text: string): string => {
  if (text.includes('yaml-language-server:')) return text;
  const [, head = '', rest = text] = /^(# YAML 1\.2[^\n]*\n)([\s\S]*)$/.exec(text) ?? [];
  return `${head}${SCHEMA_LINE}\n${rest}`;
};

/**
 * Copies an example into a folder.
 *
 * @throws Refused when the folder holds something, or there is no such example
 */
export const begin = (into: string, from: string, terminal: Terminal): ExitCode => {
  const home = fileURLToPath(programFolder('examples'));
  const examples = examplesIn(home);
  if (!examples.includes(from)) {
    const near = nearest(from, examples);
    throw new Refused(
      `There is no example ${from}.${near ? ` Did you mean ${near}?` : ''} Examples: ${examples.join(', ')}.`,
    );
  }
  if (!isEmpty(into)) throw new Refused(`${into} is there already and is not empty. Name a new folder.`);
  try {
    const source = join(home, from);
    const files = readdirSync(source, { recursive: true, encoding: 'utf8' }).filter((name) =>
      statSync(join(source, name)).isFile(),
    );
    for (const name of files) {
      disk.makeFolder(dirname(join(into, name)));
      if (name === 'book.yaml') writeWhole(join(into, name), withSchema(readFileSync(join(source, name), 'utf8')));
      else copyFileSync(join(source, name), join(into, name));
    }
    writeWhole(join(into, SCHEMA_FILE), schemaText());
  } catch (error) {
    const trouble = diskTrouble(error);
    if (trouble === undefined) throw error;
    throw new Refused(`${into} cannot be written: ${trouble}.`);
  }
  terminal.print(
    terminal.text(`${join(into, 'book.yaml')} is yours; ${SCHEMA_FILE} beside it helps an editor that knows YAML.`),
    terminal.text(`Next: gantrybook check ${/\s/.test(into) ? `"${into}"` : into}`),
  );
  return GOOD;
};
