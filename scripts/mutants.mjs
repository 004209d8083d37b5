/**
 * Mutation score of a folder, estimated from a seeded sample, with its exact interval at 95 %.
 *
 *   node scripts/mutants.mjs FOLDER [--sample N] [--seed S] [--minutes M] [--least PERCENT] [--only FILE] [--json OUT]
 *
 * All mutants are compiled into one bundle in memory and switched on one at a time in a process of its own; nothing in
 * the tree is changed. Each runs the tests that reach it, quickest first, until one fails.
 *
 * - Left out, and counted: mutants that are reached only while the sources load. Those are declarations (what a formula
 *   says of itself, its sources, what it takes), tables and wiring; tests/workings.test.ts and tests/registry.test.ts
 *   hold these, and no test can see them switched.
 * - A mutant that no test reaches has survived.
 * - Tests of formulas run among others in one process. Those for which the engine works out a book, and those of a file
 *   that reaches the mutant as it loads, run by whole files in a fresh process where it is on from the start: the engine
 *   remembers results, and a test may see what an earlier one of its file has worked out.
 * - A failure counts only if the same test passes at once afterwards without the mutant.
 * - One that does not end within 20 s and ten times the time of its tests, nor alone within three times that, is listed
 *   by itself, to be looked at: it counts as killed if it never ends, and the score is printed without these as well.
 */
import { fork } from 'node:child_process';
import { mkdirSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { join, relative, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { bundleOf } from './mutants-bundle.mjs';
import { root } from './tools.mjs';

const { values: asked, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    sample: { type: 'string', default: '300' },
    seed: { type: 'string', default: '1' },
    minutes: { type: 'string', default: 'Infinity' },
    least: { type: 'string', default: '0' },
    only: { type: 'string' },
    json: { type: 'string' },
  },
});
if (positionals.length !== 1) throw new Error('one folder, such as src/disciplines/motion/calc');
const folder = relative(root, resolve(positionals[0]));
const wanted = Number(asked.sample);
const seed = Number(asked.seed);
if (!(Number.isInteger(wanted) && wanted > 0)) throw new Error(`--sample ${asked.sample}: a count of mutants`);
const minutes = Number(asked.minutes);
if (!(minutes > 0)) throw new Error(`--minutes ${asked.minutes}: a time`);
const least = Number(asked.least);
if (!(least >= 0 && least <= 100)) throw new Error(`--least ${asked.least}: per cent`);
if (!Number.isInteger(seed)) throw new Error(`--seed ${asked.seed}: a whole number`);

const PATIENCE = 20_000;
const out = join(root, '.stryker-tmp', `mutants-${process.pid}`);
mkdirSync(out, { recursive: true });
process.on('exit', () => rmSync(out, { recursive: true, force: true }));

const filesUnder = (path, ends) =>
  readdirSync(join(root, path), { recursive: true })
    .map((name) => join(path, String(name)))
    .filter((name) => ends.test(name))
    .sort();
/** Tests that see a mutant: those of the folder's house; of every trade what must hold for all; the engine's of its kin. */
const testsOf = (path) => {
  const [, top, trade] = path.split('/');
  const tests = (home) => filesUnder(home, /\/tests\/.*(?<!\.long)\.test\.ts$/);
  if (top !== 'disciplines') return ['src/kernel', 'src/contract', 'src/engine'].flatMap(tests);
  return [
    ...tests(join('src', top, trade)),
    'tests/workings.test.ts',
    'tests/registry.test.ts',
    ...filesUnder('tests/bench', /\.test\.ts$/),
  ];
};

const sources = filesUnder(folder, /\.ts$/).filter((name) => !name.includes('/tests/'));

/** A process that runs tests; `on` is on from its start. */
const start = (on = '') =>
  fork(join(root, 'scripts/mutants-child.mjs'), [out, on], {
    execArgv: ['--max-old-space-size=4096'],
    stdio: ['ignore', 'ignore', 'inherit', 'ipc'],
  });

/** Its answer to one question, or what became of it: 'late' or 'gone'. */
const answer = (child, question, patience) =>
  new Promise((resolve) => {
    const timer = patience === undefined ? undefined : setTimeout(() => end('late'), patience);
    const gone = () => end('gone');
    const end = (result) => {
      clearTimeout(timer);
      child.off('message', end);
      child.off('exit', gone);
      resolve(result);
    };
    child.once('message', end);
    child.once('exit', gone);
    child.send(question);
  });
const stop = (child) => child.kill('SIGKILL');

const tests = testsOf(folder);
const { mutants, exactInterval, seeded } = await bundleOf({ sources, tests, out });
/** Whether the engine works a book out for it. It remembers what it worked out, from one test of a file to the next. */
const isOfBook = (file) => /\/app\//.test(readFileSync(join(root, file), 'utf8'));

const from = performance.now();
const baseline = { sources: [], files: [], tests: [], broken: [] };
for (const files of [tests.filter((file) => !isOfBook(file)), ...tests.filter(isOfBook).map((file) => [file])]) {
  const child = start();
  const part = await answer(child, { baseline: files });
  stop(child);
  if (typeof part === 'string') throw new Error(`${files.join(', ')} without a mutant: ${part}`);
  baseline.sources = part.sources;
  for (const list of ['files', 'tests', 'broken']) baseline[list].push(...part[list]);
}
for (const { file, why } of baseline.broken) console.log(`left out, it does not run here: ${file}: ${why}`);
const failing = baseline.tests.filter(({ failed }) => failed !== undefined);
for (const { name, failed } of failing) console.log(`left out, it fails without a mutant: ${name}: ${failed}`);

const timeOf = new Map(baseline.tests.map(({ name, time }) => [name, time]));
const timeOfAll = (names) => names.reduce((sum, name) => sum + timeOf.get(name), 0);
const sound = baseline.tests.filter(({ failed }) => failed === undefined);
/** By mutant: tests that reach it by themselves, and files whose tests may see what was worked out as they loaded or before. */
const [alone, whole] = [new Map(), new Map()];
const add = (map, id, name) => map.set(id, (map.get(id) ?? new Set()).add(name));
for (const { file, hits } of baseline.files) for (const id of hits) add(whole, id, file);
for (const { name, file, hits } of sound) {
  for (const id of hits) {
    add(alone, id, name);
    if (isOfBook(file)) add(whole, id, file);
  }
}
const quickFirst = (names) => names.sort((a, b) => timeOf.get(a) - timeOf.get(b));
const planOf = (id) => {
  const files = whole.get(id) ?? new Set();
  const reaching = alone.get(id) ?? new Set();
  const fileOf = (name) => name.split(' > ')[0];
  const rounds = [...files].map((file) => {
    const own = sound.filter((test) => test.file === file).map(({ name }) => name);
    return [...own.filter((name) => reaching.has(name)), ...own.filter((name) => !reaching.has(name))];
  });
  return {
    among: quickFirst([...reaching].filter((name) => !files.has(fileOf(name)))),
    fresh: rounds.sort((a, b) => timeOfAll(a) - timeOfAll(b)).flat(),
  };
};
const declared = new Set(baseline.sources.filter((id) => !alone.has(id) && !whole.has(id)));
const within = mutants.filter(
  ({ id, file }) => !declared.has(id) && (asked.only === undefined || file.endsWith(asked.only)),
);

const random = seeded(seed);
const pool = [...within];
const sample = Array.from(
  { length: Math.min(wanted, pool.length) },
  () => pool.splice(Math.floor(random() * pool.length), 1)[0],
);
console.log(
  `${folder}: ${mutants.length} mutants, ${declared.size} left out as reached only while the sources load; ` +
    `${sample.length} of ${within.length} drawn with seed ${seed}; ${sound.length} tests, ` +
    `${((performance.now() - from) / 1000).toFixed(0)} s without a mutant`,
);

let kept = start();
const fresh = async (id, names, patience) => {
  const child = start(id);
  const result = await answer(child, { names }, patience);
  stop(child);
  return result;
};
const among = async (id, names, patience) => {
  const result = await answer(kept, { id, names }, patience);
  if (typeof result === 'string' || result.leaked) {
    stop(kept);
    kept = start();
  }
  return result;
};

async function judge({ id }) {
  const plan = planOf(id);
  if (plan.among.length + plan.fresh.length === 0) return { fate: 'unreached' };
  for (const [names, way] of [
    [plan.among, among],
    [plan.fresh, fresh],
  ]) {
    if (names.length === 0) continue;
    const patience = PATIENCE + 10 * timeOfAll(names);
    let result = await way(id, names, patience);
    // Something stayed behind from an earlier mutant: once more, alone.
    if (result.leaked) result = await fresh(id, names, patience);
    // Others may have kept the machine busy: once more, alone and three times as long.
    if (result === 'late') result = await fresh(id, names, 3 * patience);
    if (result === 'late') return { fate: 'late' };
    if (result === 'gone') return { fate: 'killed', by: 'out of memory' };
    if (result.by !== undefined) return { fate: 'killed', by: result.by };
  }
  return { fate: 'survived' };
}

const lines = new Map();
const lineAt = ({ file, line }) => {
  if (!lines.has(file)) lines.set(file, readFileSync(join(root, file), 'utf8').split('\n'));
  return lines.get(file)[line - 1].trim();
};
const begun = performance.now();
const judged = [];
for (const mutant of sample) {
  // Drawn in random order, so that those before are a fair sample as well.
  if (performance.now() - begun > minutes * 60_000) break;
  const { fate, by } = await judge(mutant);
  judged.push({ ...mutant, fate, by });
  if (judged.length % 25 === 0)
    console.log(`${judged.length} judged, ${judged.filter((one) => one.fate === 'killed').length} killed`);
  if (fate !== 'killed')
    console.log(
      `${fate.padEnd(9)} ${relative(folder, mutant.file)}:${mutant.line}:${mutant.column} ${mutant.kind} → ` +
        `${mutant.replacement.replace(/\s+/g, ' ').slice(0, 70)}  |  ${lineAt(mutant).slice(0, 110)}`,
    );
}
stop(kept);

const count = (fate) => judged.filter((one) => one.fate === fate).length;
const percent = (share) => `${(100 * share).toFixed(1)} %`;
const score = (killed) => {
  const { low, high } = exactInterval(killed, judged.length);
  return `${killed} of ${judged.length}, ${percent(killed / judged.length)} (95 %: ${percent(low)} to ${percent(high)})`;
};
for (const file of [...new Set(judged.map((one) => one.file))].sort()) {
  const own = judged.filter((one) => one.file === file);
  const ended = own.filter(({ fate }) => fate === 'killed' || fate === 'late').length;
  console.log(`${relative(folder, file).padEnd(26)} ${String(ended).padStart(4)} of ${own.length}`);
}
console.log(
  `killed ${count('killed')}, never ended ${count('late')}, survived ${count('survived')}, unreached ${count('unreached')}, ` +
    `${((performance.now() - begun) / 1000 / judged.length).toFixed(2)} s a mutant`,
);
console.log(
  `score ${score(count('killed') + count('late'))}; never ended counted as survived: ${score(count('killed'))}`,
);
if (asked.json !== undefined) writeFileSync(asked.json, JSON.stringify(judged, undefined, 1));
const share = (100 * (count('killed') + count('late'))) / judged.length;
if (!(share >= least)) {
  console.error(`the score is below ${least} %`);
  process.exitCode = 1;
}
