// Writes the lists of sources and catalogue files in src/app, so that a bundle holds every file of these folders.
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { format } from 'prettier';
import { root, startedAs } from './tools.mjs';

const camel = (name) => name.replaceAll(/[^A-Za-z0-9]+(.)/g, (_, letter) => letter.toUpperCase());

function imports(folder) {
  const names = readdirSync(join(root, folder))
    .filter((file) => file.endsWith('.json'))
    .map((file) => file.replace(/\.json$/, ''))
    .toSorted();
  return names.map((name) => ({
    name: camel(name),
    line: `import ${camel(name)} from '../../${folder}/${name}.json' with { type: 'json' };`,
  }));
}

const HEAD = /^((?:\/\*\*[^\n]*\n|import type [^\n]*\n)*)(?:import \w+ from '\.\.\/\.\.\/[^\n]*\n)*/;

/** The text of a list with its imports and its one array as the folder has them. */
function listed(text, folder, array, spread) {
  const files = imports(folder);
  const lines = files.map(({ line }) => `${line}\n`).join('');
  const items = files.map(({ name }) => `${spread ? '...' : ''}${name}`).join(', ');
  return text
    .replace(HEAD, (_, head) => head + lines)
    .replace(new RegExp(`(const ${array}: [^=]*= \\[)[^\\]]*\\]`), `$1${items}]`);
}

if (startedAs(import.meta))
  for (const [file, folder, array, spread] of [
    ['sources.ts', 'sources', 'cards', false],
    ['catalogue.ts', 'catalogue', 'catalogue', true],
  ]) {
    const path = join(root, 'src', 'app', file);
    const options = JSON.parse(readFileSync(join(root, '.prettierrc.json'), 'utf8'));
    const text = listed(readFileSync(path, 'utf8'), folder, array, spread);
    writeFileSync(path, await format(text, { ...options, parser: 'typescript' }));
  }
