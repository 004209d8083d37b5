/** Runs tests of a bundle of mutants, one mutant at a time; see mutants.mjs. */
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import * as fc from 'fast-check';

const [, , out, on] = process.argv;
// The same draws for every mutant: chance neither kills nor saves one.
fc.configureGlobal({ seed: 1 });

const fromVitest = createRequire(createRequire(import.meta.url).resolve('vitest/package.json'));
const load = (name) => import(pathToFileURL(fromVitest.resolve(name)).href);
const [chai, expecting] = await Promise.all([load('chai'), load('@vitest/expect')]);
chai.use(expecting.JestExtend);
chai.use(expecting.JestChaiExpect);
chai.use(expecting.JestAsymmetricMatchers);
const expect = (value, message) => {
  expecting.setState({ assertionCalls: 0, isExpectingAssertions: false, expectedAssertionsNumber: null }, expect);
  return chai.expect(value, message);
};
Object.defineProperty(globalThis, expecting.GLOBAL_EXPECT, { value: expect, writable: true, configurable: true });
Object.assign(expect, chai.expect, expecting.customMatchers);
Object.assign(expect, globalThis[expecting.ASYMMETRIC_MATCHERS_OBJECT]);

const tests = new Map();
let [file, path] = ['', []];
const add = (name, run) => {
  const base = [file, ...path, name].join(' > ');
  let full = base;
  for (let n = 2; tests.has(full); n++) full = `${base} (${n})`;
  tests.set(full, { file, run });
};
const within = (name, run) => {
  path.push(name);
  run();
  path.pop();
};
const given = (row) => (Array.isArray(row) ? row : [row]);
const describe = (name, run) => within(String(name), run);
describe.each = (rows) => (name, run) => rows.forEach((row, i) => within(`${name} #${i}`, () => run(...given(row))));
const it = (name, run) => add(name, run);
it.each = (rows) => (name, run) => rows.forEach((row, i) => add(`${name} #${i}`, () => run(...given(row))));
globalThis.__tests__ = { describe, it, test: it, expect };

/** The mutant that is on, none being −1, and which were reached since that was last asked. */
const switches = { active: on ? Number(on) : -1, reached: new Uint8Array(100_000) };
globalThis.__mutants__ = switches;
const reached = () => {
  const ids = [...switches.reached.keys()].filter((id) => switches.reached[id] === 1).map(String);
  switches.reached.fill(0);
  return ids;
};
const said = (error) =>
  String(error?.message ?? error)
    .split('\n')[0]
    .slice(0, 160);

let bundle;
async function open(name) {
  bundle = await import(pathToFileURL(join(out, name)).href);
  globalThis.__byPath__ = async (found) =>
    bundle.byPath[Object.keys(bundle.byPath).find((one) => found.endsWith(one))]();
  for (const source of Object.values(bundle.sources)) source();
}
function read(name) {
  file = name;
  path = [];
  bundle.tests[name]();
}
const failureOf = async (name) => {
  try {
    await tests.get(name).run();
  } catch (error) {
    return said(error);
  }
  return undefined;
};

async function baseline(files) {
  await open('counting.mjs');
  const answer = { sources: reached(), files: [], tests: [], broken: [] };
  for (const name of files) {
    try {
      read(name);
      answer.files.push({ file: name, hits: reached() });
    } catch (error) {
      reached();
      answer.broken.push({ file: name, why: said(error) });
      for (const [key, test] of tests) if (test.file === name) tests.delete(key);
    }
  }
  for (const [name, test] of tests) {
    const from = performance.now();
    const failed = await failureOf(name);
    const time = performance.now() - from;
    answer.tests.push({ name, file: test.file, time, hits: reached(), failed });
  }
  return answer;
}

/** The first of some tests that fails, the mutant being on from the start of the process. */
async function fromTheStart(names) {
  try {
    await open('switching.mjs');
  } catch (error) {
    return { by: `loading: ${said(error)}` };
  }
  for (const name of names) {
    const [home] = name.split(' > ');
    if (![...tests.values()].some((test) => test.file === home)) {
      try {
        read(home);
      } catch (error) {
        return { by: `${home}: ${said(error)}` };
      }
    }
    // A test that a mutant takes away does not fail.
    if (!tests.has(name)) continue;
    const failed = await failureOf(name);
    if (failed !== undefined) return { by: `${name}: ${failed}` };
  }
  return {};
}

async function amongOthers(id, names) {
  if (bundle === undefined) await open('switching.mjs');
  for (const name of names) {
    const [home] = name.split(' > ');
    if (![...tests.values()].some((test) => test.file === home)) read(home);
    switches.active = Number(id);
    const failed = await failureOf(name);
    switches.active = -1;
    if (failed !== undefined) return { by: `${name}: ${failed}`, leaked: (await failureOf(name)) !== undefined };
  }
  return {};
}

process.on('message', async ({ baseline: files, id, names }) => {
  if (files) process.send(await baseline(files));
  else process.send(id === undefined ? await fromTheStart(names) : await amongOthers(id, names));
});
// Nobody is left to answer.
process.on('disconnect', () => process.exit());
