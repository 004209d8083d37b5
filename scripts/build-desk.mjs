// Bundles the desk into dist/desk: a page, a worker, their lazy parts, lettering, demo books, and what keeps them offline.
import { createHash } from 'node:crypto';
import { cpSync, existsSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join, relative, resolve } from 'node:path';
import { gzipSync } from 'node:zlib';
import { build as bundle } from 'esbuild';
import { laterSheets } from './later-sheets.mjs';
import { root, startedAs } from './tools.mjs';

const home = join(root, 'dist', 'desk');
const client = 'src/workbench/client';
const { version } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));

/** Largest sizes of what is fetched before the desk can be used, gzipped. */
export const LIMITS = { page: 250_000, worker: 250_000 };

const common = {
  absWorkingDir: root,
  entryNames: '[name]-[hash]',
  chunkNames: 'part-[name]-[hash]',
  bundle: true,
  splitting: true,
  format: 'esm',
  platform: 'browser',
  target: 'es2022',
  jsx: 'automatic',
  jsxImportSource: 'preact',
  minify: true,
  legalComments: 'none',
  plugins: [laterSheets],
  metafile: true,
  logLevel: 'warning',
};
const words = { __GANTRYBOOK_VERSION__: JSON.stringify(version) };

const zipped = (file) => gzipSync(readFileSync(file), { level: 9 }).length;
const hashOf = (bytes) => createHash('sha256').update(bytes).digest('hex').slice(0, 8).toUpperCase();

/** An entry with every part that it imports at once, and the parts that come later; names within the desk's folder. */
function partsOf(metafile, entryPoint, desk) {
  const named = (file) => relative(desk, resolve(root, file)).replaceAll('\\', '/');
  const outputs = Object.entries(metafile.outputs);
  const entry = outputs.find(([, output]) => output.entryPoint === entryPoint)[0];
  const first = new Set();
  const later = new Set();
  const follow = (file, into) => {
    if (first.has(file) || into.has(file)) return;
    into.add(file);
    for (const { path, kind } of metafile.outputs[file]?.imports ?? [])
      follow(path, kind === 'dynamic-import' ? later : into);
  };
  follow(entry, first);
  for (const file of first) later.delete(file);
  return { entry: named(entry), first: [...first].map(named), later: [...later].map(named) };
}

async function script(desk, entryPoint, name, define) {
  const { metafile } = await bundle({ ...common, outdir: desk, entryPoints: { [name]: entryPoint }, define });
  return { ...partsOf(metafile, entryPoint, desk), inputs: Object.keys(metafile.inputs) };
}

/** The sheet's own style answers to the width of its leaf here, not to that of the window. */
const onTheDesk = (css) => css.replaceAll('@media (max-width:', '@container leaf (max-width:');

/** What the sources say of how the page looks and what it may do, so that neither is said twice. */
async function said() {
  const { outputFiles } = await bundle({
    absWorkingDir: root,
    stdin: {
      contents:
        "export { pageStyle } from './src/pack/html/style.ts'; export { pagePolicy } from './src/workbench/server/policy.ts';",
      resolveDir: root,
      loader: 'ts',
    },
    bundle: true,
    write: false,
    format: 'esm',
    platform: 'neutral',
    logLevel: 'warning',
  });
  return import(`data:text/javascript;base64,${Buffer.from(outputFiles[0].contents).toString('base64')}`);
}

async function style(desk, pageStyle) {
  const own = await bundle({
    absWorkingDir: root,
    entryPoints: [`${client}/style/index.css`],
    bundle: true,
    minify: true,
    write: false,
    external: ['*.woff2'],
    logLevel: 'warning',
  });
  const css = `${onTheDesk(pageStyle)}\n${own.outputFiles[0].text}`;
  const name = `style-${hashOf(css)}.css`;
  writeFileSync(join(desk, name), css);
  return name;
}

/** The demo books: every example that reads well, as one file each, and a list of them. */
function demos(desk) {
  const examples = join(root, 'examples');
  const shown = readdirSync(examples).filter((name) => existsSync(join(examples, name, 'book.yaml')));
  mkdirSync(join(desk, 'books'), { recursive: true });
  const list = shown.map((name) => {
    const folder = join(examples, name);
    const texts = readdirSync(folder).filter((file) => /\.ya?ml$/.test(file));
    const files = Object.fromEntries(texts.map((file) => [file, readFileSync(join(folder, file), 'utf8')]));
    const said = (key) => new RegExp(`^${key}: *(.*)$`, 'm').exec(files['book.yaml'])?.[1]?.trim() ?? '';
    writeFileSync(join(desk, 'books', `${name}.json`), JSON.stringify({ main: 'book.yaml', files }));
    return { name, title: said('title'), revision: said('revision').replaceAll('"', ''), about: said('about') };
  });
  writeFileSync(join(desk, 'books', 'index.json'), JSON.stringify(list));
  return ['books/index.json', ...shown.map((name) => `books/${name}.json`)];
}

const html = ({ page, styleSheet, policy }) => `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="referrer" content="no-referrer">
<meta name="color-scheme" content="light dark">
<meta name="description" content="The drawing set of a gantry machine, live: its book's text beside its sheets.">
<title>Gantrybook</title>
<link rel="icon" href="icon.svg">
<link rel="stylesheet" href="${styleSheet}">
<link rel="preload" href="fonts/sans-regular.woff2" as="font" type="font/woff2" crossorigin>
<script type="module" src="${page}"></script>
</head>
<body>
<div id="desk"><p class="waiting">The desk is being laid.</p></div>
<noscript><p class="waiting">The desk works the book out in this page, for which it needs scripts. Without them, <code>gantrybook pack</code> makes the same sheets as files.</p></noscript>
</body>
</html>
`;

const walk = (folder) =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((file) => statSync(join(folder, file)).isFile())
    .map((file) => file.replaceAll('\\', '/'));

/**
 * Builds the desk.
 * @param into folder of the built files
 * @returns the sizes, gzipped, of what is fetched at once and of what comes later, and the source files that went in
 */
export async function buildDesk({ into = home } = {}) {
  mkdirSync(join(into, 'fonts'), { recursive: true });
  const worker = await script(into, 'src/workbench/worker/main.ts', 'worker', words);
  const page = await script(into, `${client}/main.tsx`, 'page', { ...words, __WORKER__: JSON.stringify(worker.entry) });
  const { pageStyle, pagePolicy } = await said();
  const styleSheet = await style(into, pageStyle);
  const fonts = readdirSync(join(root, 'fonts')).filter((file) => /\.woff2$|^OFL/.test(file));
  for (const file of fonts) cpSync(join(root, 'fonts', file), join(into, 'fonts', file));
  cpSync(join(root, client, 'icon.svg'), join(into, 'icon.svg'));
  writeFileSync(join(into, 'index.html'), html({ page: page.entry, styleSheet, policy: pagePolicy }));
  const books = demos(into);

  const scripts = [worker, page].flatMap(({ first, later }) => [...first, ...later]);
  const lettering = fonts.map((file) => `fonts/${file}`);
  const made = [...scripts, styleSheet, 'icon.svg', 'index.html', ...books, ...lettering].toSorted();
  const content = hashOf(made.map((file) => `${file} ${hashOf(readFileSync(join(into, file)))}`).join('\n'));
  const { outputFiles } = await bundle({
    absWorkingDir: root,
    entryPoints: [`${client}/offline.ts`],
    bundle: true,
    minify: true,
    write: false,
    format: 'iife',
    target: 'es2022',
    define: {
      __LISTED__: JSON.stringify(made.filter((file) => !file.endsWith('.txt'))),
      __CONTENT__: JSON.stringify(content),
    },
    logLevel: 'warning',
  });
  writeFileSync(join(into, 'offline.js'), outputFiles[0].contents);

  // What an earlier build left goes last, so that an open desk keeps what it reads.
  const current = new Set([...made, 'offline.js']);
  for (const file of walk(into)) if (!current.has(file)) rmSync(join(into, file));

  const size = (files) => files.reduce((bytes, file) => bytes + zipped(join(into, file)), 0);
  const sizes = {
    page: size([...page.first, styleSheet, 'index.html']),
    worker: size(worker.first),
    later: Object.fromEntries([...page.later, ...worker.later].map((file) => [file, size([file])])),
    lettering: lettering
      .filter((file) => file.endsWith('.woff2'))
      .reduce((bytes, file) => bytes + statSync(join(into, file)).size, 0),
  };
  return { sizes, inputs: [...page.inputs, ...worker.inputs] };
}

const kB = (bytes) => `${(bytes / 1000).toFixed(1)} kB`;

/** Says the sizes, each beside its limit. */
export function report({ page, worker, later, lettering }) {
  for (const [name, size, limit] of [
    ['page', page, LIMITS.page],
    ['worker', worker, LIMITS.worker],
  ])
    console.log(`${size <= limit ? 'held  ' : 'MISSED'}  desk, ${name}, gzipped: ${kB(size)} of at most ${kB(limit)}`);
  for (const [name, size] of Object.entries(later)) console.log(`        later, ${name}: ${kB(size)}`);
  console.log(`        lettering: ${kB(lettering)}`);
}

if (startedAs(import.meta)) report((await buildDesk()).sizes);
