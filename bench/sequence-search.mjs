// States a second of the search of a cycle on one core, beside spin's compiled verifier on the same model in the same run.
import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { onPath, root, startedAs } from '../scripts/tools.mjs';
import { quickest } from './quickest.mjs';

const ROUNDS = 3;

/** Processor time of the quickest of some runs of the verifier, as it is told by the shell. */
function verified(folder) {
  let best = { seconds: Infinity, states: 0 };
  for (let i = 0; i < ROUNDS; i++) {
    const { stdout, stderr } = spawnSync('bash', ['-c', 'TIMEFORMAT="cpu %U %S"; time ./pan -m2000000 -w24 -n'], {
      cwd: folder,
      encoding: 'utf8',
      env: { ...process.env, PROP: '0' },
    });
    const [, user, system] = /cpu ([\d.]+) ([\d.]+)/.exec(stderr) ?? [];
    const states = Number(/(\d+) states, stored/.exec(stdout)?.[1]);
    if (!(states > 0) || !stdout.includes('errors: 0')) throw new Error(`the verifier did not get through:\n${stdout}`);
    const seconds = Number(user) + Number(system);
    if (seconds < best.seconds) best = { seconds, states };
  }
  return best;
}

/**
 * The search here and in the verifier, where spin and a compiler are.
 * Throws when the two do not come to the same number of states.
 */
export async function sequenceSearch(book = join(root, 'examples/tidepool/book.yaml'), faults = 2) {
  if (!existsSync(book) || !readFileSync(book, 'utf8').includes('\nsequence:'))
    return { skipped: `${book} tells no cycle` };
  const folder = mkdtempSync(join(tmpdir(), 'gantrybook-bench-'));
  try {
    const bundle = join(folder, 'sequence-search.mjs');
    await build({
      absWorkingDir: root,
      entryPoints: ['bench/sequence-search.ts'],
      outfile: bundle,
      bundle: true,
      format: 'esm',
      platform: 'node',
      target: 'node20',
      define: { __GANTRYBOOK_VERSION__: '"bench"' },
      banner: { js: "import { createRequire } from 'node:module'; const require = createRequire(import.meta.url);" },
      logLevel: 'error',
    });
    const { cycleOf, model, proven, searched } = await import(pathToFileURL(bundle).href);
    const spec = cycleOf(book, faults);
    const { states, bytesEach } = searched(spec);
    const result = {
      states,
      bytesEachState: bytesEach,
      statesEachSecond: Math.round(states / quickest(() => searched(spec), ROUNDS)),
      secondsToVerdict: Number(quickest(() => proven(spec), ROUNDS).toPrecision(3)),
    };
    if (!onPath('spin') || !onPath('gcc')) return { ...result, skipped: 'spin or gcc is missing' };
    writeFileSync(join(folder, 'cycle.pml'), model(spec));
    execFileSync('spin', ['-a', 'cycle.pml'], { cwd: folder, stdio: 'pipe' });
    const flags = ['-O2', '-w', '-DNOREDUCE', '-DSAFETY', '-DMEMLIM=6000'];
    execFileSync('gcc', [...flags, '-o', 'pan', 'pan.c'], { cwd: folder, stdio: 'pipe' });
    const theirs = verified(folder);
    if (theirs.states !== states + 1)
      throw new Error(`${states} states here, ${theirs.states} there, one of them before the start`);
    const spinStatesEachSecond = Math.round(theirs.states / theirs.seconds);
    return {
      ...result,
      spinStatesEachSecond,
      ratio: Number((result.statesEachSecond / spinStatesEachSecond).toPrecision(3)),
    };
  } finally {
    rmSync(folder, { recursive: true });
  }
}

if (startedAs(import.meta)) console.log(await sequenceSearch(...process.argv.slice(2, 3)));
