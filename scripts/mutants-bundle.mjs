/** One bundle with every mutant of some files in it, each behind a switch, and the tests that may see them. */
import { readFile } from 'node:fs/promises';
import { readdirSync } from 'node:fs';
import { join, relative } from 'node:path';
import { pathToFileURL } from 'node:url';
import { Instrumenter } from '@stryker-mutator/instrumenter';
import { build } from 'esbuild';
import { root } from './tools.mjs';

const quiet = () => {};
const log = {
  trace: quiet,
  debug: quiet,
  info: quiet,
  warn: quiet,
  error: console.error,
  isTraceEnabled: () => false,
  isDebugEnabled: () => false,
  isInfoEnabled: () => false,
};

/** What the tests know as vitest: whatever the process that runs them has laid down. */
const VITEST = 'export const { describe, it, test, expect } = globalThis.__tests__;';

/** Modules that a test finds by their path while it runs. */
const foundByPath = () =>
  readdirSync(join(root, 'src/disciplines'), { recursive: true })
    .map((name) => join('src/disciplines', String(name)))
    .filter((name) => name.endsWith('tests/cases.ts'));

const houseOf = (changed) => ({
  name: 'house',
  setup({ onResolve, onLoad }) {
    onResolve({ filter: /^vitest$/ }, () => ({ path: 'vitest', namespace: 'tests' }));
    onLoad({ filter: /.*/, namespace: 'tests' }, () => ({ contents: VITEST, loader: 'js' }));
    onLoad({ filter: /\.ts$/ }, async ({ path }) => {
      if (path.includes('node_modules')) return undefined;
      const text = changed.get(path) ?? (await readFile(path, 'utf8'));
      const contents = text
        .replaceAll('import.meta.url', JSON.stringify(pathToFileURL(path).href))
        .replaceAll('await import(join(', 'await globalThis.__byPath__(join(');
      return { contents, loader: 'ts' };
    });
  },
});

const common = {
  absWorkingDir: root,
  bundle: true,
  platform: 'node',
  format: 'esm',
  target: 'node20',
  packages: 'external',
  define: { __GANTRYBOOK_VERSION__: '"0"' },
  logLevel: 'error',
};

const lazy = (paths) =>
  `{${paths.map((path) => `${JSON.stringify(path)}: () => require(${JSON.stringify(`./${path}`)})`).join(',\n')}}`;

const CALL = /stryCov_9fa48\(((?:"\d+"(?:, ?)?)+)\)/g;
const ids = (list) => [...list.matchAll(/\d+/g)].map(([id]) => id);

/** The instrumenter's switches, as a comparison of two integers: hot loops are full of them. */
const switched = (name, text) => {
  const fast = text.replaceAll(/stryMutAct_9fa48\("(\d+)"\)/g, '($mutants.active === $1)');
  if (/(?<!function )stry(?:Cov|MutAct)_9fa48\("/.test(fast))
    throw new Error(`${relative(root, name)}: the instrumenter writes its switches in another way now`);
  return `const $mutants = globalThis.__mutants__;\n${fast}`;
};
const counting = (name, text) =>
  switched(
    name,
    text.replaceAll(
      CALL,
      (_, list) =>
        `(${ids(list)
          .map((id) => `$mutants.reached[${id}] = `)
          .join('')}1)`,
    ),
  );
const switching = (name, text) => switched(name, text.replaceAll(CALL, '0'));

/**
 * Writes `counting.mjs`, which counts what is reached, and `switching.mjs`, which does not and is faster.
 *
 * @returns the mutants, and what the kernel has for drawing and judging a sample
 */
export async function bundleOf({ sources, tests, out }) {
  const files = await Promise.all(
    sources.map(async (name) => ({
      name: join(root, name),
      content: await readFile(join(root, name), 'utf8'),
      mutate: true,
    })),
  );
  const { files: changed, mutants } = await new Instrumenter(log).instrument(files, {
    plugins: null,
    excludedMutations: [],
    ignorers: [],
  });
  const entry = [
    `export const sources = ${lazy([...sources, 'src/disciplines/registry.ts'])};`,
    `export const tests = ${lazy(tests)};`,
    `export const byPath = ${lazy(foundByPath())};`,
  ].join('\n');
  const bundle = (name, texts) =>
    build({
      ...common,
      stdin: { contents: entry, resolveDir: root, sourcefile: 'mutants-entry.js' },
      plugins: [houseOf(texts)],
      outfile: join(out, name),
    });
  const texts = changed.map(({ name, content }) => [name, content]);
  await bundle('counting.mjs', new Map(texts.map(([name, text]) => [name, counting(name, text)])));
  await bundle('switching.mjs', new Map(texts.map(([name, text]) => [name, switching(name, text)])));

  await build({
    ...common,
    stdin: {
      contents: `export { exactInterval } from './src/kernel/binomial.ts'; export { seeded } from './src/kernel/index.ts';`,
      resolveDir: root,
    },
    outfile: join(out, 'kernel.mjs'),
  });
  const { exactInterval, seeded } = await import(pathToFileURL(join(out, 'kernel.mjs')).href);
  return {
    exactInterval,
    seeded,
    mutants: mutants.map(({ id, fileName, location, mutatorName, replacement }) => ({
      id,
      file: relative(root, fileName),
      line: location.start.line + 1,
      column: location.start.column + 1,
      kind: mutatorName,
      replacement,
    })),
  };
}
