// Bundles the command line into dist/, everything that it needs included, so that the package has no dependencies.
import { chmodSync, existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join, relative, resolve } from 'node:path';
import { build as bundle } from 'esbuild';
import { buildDesk, report } from './build-desk.mjs';
import { root, startedAs } from './tools.mjs';

const dist = join(root, 'dist');
const { version } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));

/** The licences of the packages that went into the bundle: they ask to travel with their code. */
function licencesOf(inputs) {
  const packages = new Set();
  for (const input of inputs) {
    const found = /^(.*node_modules\/(?:@[^/]+\/)?[^/]+)\//.exec(input);
    if (found !== null) packages.add(found[1]);
  }
  return [...packages].toSorted().map((folder) => {
    const { name, version: its, license } = JSON.parse(readFileSync(join(root, folder, 'package.json'), 'utf8'));
    const file = readdirSync(join(root, folder)).find((entry) => /^licen[cs]e/i.test(entry));
    if (file === undefined) throw new Error(`${name} ships no licence text, so it cannot be bundled.`);
    return `${name} ${its} (${license})\n\n${readFileSync(join(root, folder, file), 'utf8').trim()}\n`;
  });
}

export async function build() {
  mkdirSync(dist, { recursive: true });
  const { metafile } = await bundle({
    absWorkingDir: root,
    entryPoints: { cli: 'src/cli/main.ts' },
    outdir: 'dist',
    // All in one folder, so that a file's place in the package is the same from each of them.
    chunkNames: '[name]-[hash]',
    bundle: true,
    splitting: true,
    format: 'esm',
    platform: 'node',
    target: 'node20',
    minify: true,
    // Errors and formulas are known by the names of their classes and functions.
    keepNames: true,
    legalComments: 'none',
    define: { __GANTRYBOOK_VERSION__: JSON.stringify(version) },
    // Some of the packages are CommonJS and ask for Node's own modules by require.
    banner: {
      js: "import{createRequire as $makeRequire}from'node:module';const require=$makeRequire(import.meta.url);",
    },
    loader: { '.css': 'text', '.woff2': 'base64', '.ttf': 'base64', '.otf': 'base64' },
    metafile: true,
    logLevel: 'warning',
  });

  const cli = join(dist, 'cli.js');
  const text = readFileSync(cli, 'utf8');
  if (!text.startsWith('#!')) writeFileSync(cli, `#!/usr/bin/env node\n${text}`);
  chmodSync(cli, 0o755);
  const desk = await buildDesk();
  report(desk.sizes);
  const inputs = new Set([...Object.keys(metafile.inputs), ...desk.inputs]);
  writeFileSync(join(dist, 'licences.txt'), licencesOf(inputs).join(`\n${'-'.repeat(72)}\n\n`));

  // The chunks of an earlier build go last, so that a command that is running keeps what it reads.
  const made = new Set([
    ...Object.keys(metafile.outputs).map((file) => relative(dist, resolve(root, file))),
    'licences.txt',
    'desk',
  ]);
  for (const entry of existsSync(dist) ? readdirSync(dist) : [])
    if (!made.has(entry)) rmSync(join(dist, entry), { recursive: true });
}

if (startedAs(import.meta)) await build();
