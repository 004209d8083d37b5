// Prints how fast it is, each figure beside its target. With --check, a missed target fails.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setup } from './setup.mjs';
import { root } from './tools.mjs';

const COLD_RUNS = 20;
const examples = join(root, 'examples');
const results = [];

const sorted = (times) => times.toSorted((a, b) => a - b);
const median = (times) => sorted(times)[Math.floor(times.length / 2)];
const percentile = (times, share) => sorted(times)[Math.min(times.length - 1, Math.ceil(times.length * share) - 1)];
const ms = (time) => `${time < 10 ? time.toFixed(1) : time.toFixed(0)} ms`;

function result(name, shown, target, held) {
  results.push(held);
  const verdict = held === undefined ? '      ' : held ? 'held  ' : 'MISSED';
  console.log(`${verdict}  ${name.padEnd(48)} ${shown.padEnd(28)} ${target}`);
}

/** Milliseconds that a process takes, without anything that an earlier one left on the disk. */
function timeOf(args) {
  const env = { ...process.env, NODE_DISABLE_COMPILE_CACHE: '1' };
  const from = performance.now();
  const ended = spawnSync(process.execPath, args, { cwd: root, env, stdio: ['ignore', 'ignore', 'pipe'] });
  if (ended.status !== 0 && ended.status !== 1)
    throw new Error(`${args.join(' ')} ended with ${ended.status}: ${ended.stderr}`);
  return performance.now() - from;
}

function cold() {
  const check = [join('dist', 'cli.js'), 'check', join('examples', 'tidepool'), '--quick'];
  const [empty, full] = [[], []];
  // In turns, so that whatever else this machine does falls on both.
  for (let i = 0; i < COLD_RUNS; i++) {
    empty.push(timeOf(['-e', '0']));
    full.push(timeOf(check));
  }
  const ratio = median(full) / median(empty);
  const shown = `${ratio.toFixed(1)} × (${ms(median(full))} / ${ms(median(empty))})`;
  result('check --quick, cold, to an empty Node process', shown, 'at most 6 ×', ratio <= 6);
}

async function warm(scratch) {
  const { build } = await import('esbuild');
  const file = join(scratch, 'warm.mjs');
  await build({
    absWorkingDir: root,
    entryPoints: ['bench/warm.mjs'],
    outfile: file,
    bundle: true,
    format: 'esm',
    platform: 'node',
    target: 'node20',
    minify: true,
    define: { __GANTRYBOOK_VERSION__: '"0"' },
    banner: {
      js: "import{createRequire as $makeRequire}from'node:module';const require=$makeRequire(import.meta.url);",
    },
    logLevel: 'warning',
  });
  const part = (name) => {
    const { status, stdout, stderr } = spawnSync(process.execPath, [file, name, examples], { encoding: 'utf8' });
    if (status !== 0) throw new Error(`${name}: ${stderr}`);
    return JSON.parse(stdout);
  };

  const { reading, verdicts } = part('edits');
  const both = reading.map((time, i) => time + verdicts[i]);
  const p95 = (times) => percentile(times, 0.95);
  result('one edited number, verdicts, 95th percentile', ms(p95(verdicts)), 'at most 16 ms', p95(verdicts) <= 16);
  result('  the same with the text read', ms(p95(both)), '', undefined);
  result('  reading the text alone', ms(p95(reading)), '', undefined);

  const afterwards = part('afterwards');
  for (const [name, means] of [
    ['rankings', 'rankings of what to measure'],
    ['remedies', 'remedies of the worst failure'],
    ['figures', 'every sheet with its figures'],
    ['studied', '  the same with the studies on them'],
  ]) {
    const time = median(afterwards[name]);
    const asked = name !== 'studied';
    result(`one edited number, ${means}`, ms(time), asked ? 'at most 250 ms' : '', asked ? time <= 250 : undefined);
  }

  const axes = Object.entries(part('axes')).map(([count, times]) => ({
    count: Number(count),
    time: Math.min(...times),
  }));
  const [first] = axes;
  for (const { count, time } of axes) {
    const perAxis = time / count / (first.time / first.count);
    const isLast = count === axes.at(-1).count;
    result(
      `${count} axes`,
      `${ms(time)}, ${perAxis.toFixed(2)} × an axis of ${first.count}`,
      isLast ? 'linear: at most 1.25 ×' : '',
      isLast ? perAxis <= 1.25 : undefined,
    );
  }
}

/** Simulated plays, beside the same in C. */
async function plays() {
  const { swingPlays } = await import('../bench/swing-play.mjs');
  const { playsEachSecond, simulatedSeconds, timesSlowerThanC } = await swingPlays();
  const beside = timesSlowerThanC === undefined ? 'no C compiler here' : `C: ${timesSlowerThanC.toFixed(1)} × as many`;
  const shown = `${playsEachSecond} of ${simulatedSeconds.toFixed(1)} s (${beside})`;
  result('simulated plays a second and core', shown, 'at least 5000', playsEachSecond >= 5000);
}

/** The desk in a browser, where there is one. */
async function desk() {
  const { deskSpeed } = await import('../bench/desk.mjs');
  const speed = await deskSpeed();
  if (speed === undefined) return result('the desk', 'no chromium here', '', undefined);
  const { ready, p95, sizes, limits } = speed;
  result('desk, key press to verdicts, 95th percentile', ms(p95), 'at most 50 ms', p95 <= 50);
  result('desk, ready after loading', ms(median(ready)), 'at most 1000 ms', median(ready) <= 1000);
  for (const name of ['page', 'worker'])
    result(
      `desk, ${name}, gzipped`,
      `${(sizes[name] / 1000).toFixed(1)} kB`,
      `at most ${limits[name] / 1000} kB`,
      sizes[name] <= limits[name],
    );
}

const scratch = mkdtempSync(join(tmpdir(), 'gantrybook-bench-'));
try {
  await setup();
  cold();
  await warm(scratch);
  await plays();
  await desk();
} finally {
  rmSync(scratch, { recursive: true, force: true });
}
if (process.argv.includes('--check') && results.includes(false)) process.exitCode = 1;
