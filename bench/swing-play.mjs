// Simulated plays a second on one core, beside a plain C program of the same method in the same run.
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { onPath, root, startedAs } from '../scripts/tools.mjs';
import { quickest } from './quickest.mjs';

const PLAYS = 4000;
const ROUNDS = 5;

/**
 * Plays here and in C, where there is a compiler.
 * Throws when the two do not come to the same plays.
 */
export async function swingPlays() {
  const folder = mkdtempSync(join(tmpdir(), 'gantrybook-bench-'));
  try {
    const bundle = join(folder, 'swing-play.mjs');
    await build({
      absWorkingDir: root,
      entryPoints: ['bench/swing-play.ts'],
      outfile: bundle,
      bundle: true,
      format: 'esm',
      platform: 'node',
      target: 'node20',
      logLevel: 'error',
    });
    const { played } = await import(pathToFileURL(bundle).href);
    const ours = played(PLAYS);
    const result = {
      playsEachSecond: Math.round(PLAYS / quickest(() => played(PLAYS), ROUNDS)),
      simulatedSeconds: ours.simulated,
      shortestSeconds: ours.shortest,
    };
    const compiler = onPath('cc', 'gcc', 'clang');
    if (compiler === undefined) return result;
    const program = join(folder, 'swing-play');
    execFileSync(compiler, ['-O2', '-o', program, join(root, 'bench/swing-play.c'), '-lm']);
    const rounds = Array.from({ length: ROUNDS }, () =>
      JSON.parse(execFileSync(program, [String(PLAYS)], { encoding: 'utf8' })),
    );
    const theirs = rounds[0];
    for (const key of ['misses', 'touches'])
      if (ours[key] !== theirs[key]) throw new Error(`${key}: ${ours[key]} here, ${theirs[key]} in C`);
    for (const key of ['simulated', 'offset'])
      if (!(Math.abs(ours[key] / theirs[key] - 1) < 1e-6))
        throw new Error(`${key}: ${ours[key]} here, ${theirs[key]} in C`);
    const inC = Math.round(PLAYS / Math.min(...rounds.map(({ seconds }) => seconds)));
    return { ...result, playsEachSecondInC: inC, timesSlowerThanC: inC / result.playsEachSecond };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

if (startedAs(import.meta)) {
  const { playsEachSecond, simulatedSeconds, shortestSeconds, playsEachSecondInC, timesSlowerThanC } =
    await swingPlays();
  console.log(
    `${playsEachSecond} plays a second and core, of ${simulatedSeconds.toFixed(1)} s each (the shortest ${shortestSeconds.toFixed(1)} s)`,
  );
  if (playsEachSecondInC !== undefined)
    console.log(
      `${playsEachSecondInC} in C by the same method, on the same plays with the same results: ${timesSlowerThanC.toFixed(1)} times as many`,
    );
  else console.log('No C compiler on this machine, so nothing to compare with.');
}
