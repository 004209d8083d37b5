// Every check there is, one after the other; each says how long it took. A skip fails where CI=true.
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { packedSmoke, startSmoke } from './smoke.mjs';
import { setup } from './setup.mjs';
import { npm, onPath, root, run } from './tools.mjs';

const ci = process.env['CI'] === 'true' || process.env['CI'] === '1';
const scratch = mkdtempSync(join(tmpdir(), 'gantrybook-test-'));
const results = [];
const skips = [];

// What some tests need beyond Node, and the Debian package that brings it.
const PROGRAMS = [
  { programs: ['chromium', 'chromium-browser', 'google-chrome'], debian: 'chromium', for: 'pages in a browser' },
];

async function step(name, work) {
  const from = performance.now();
  process.stdout.write(`\n── ${name}\n`);
  let held = false;
  try {
    held = (await work()) !== false;
  } catch (error) {
    console.error(error instanceof Error ? error.message : error);
  }
  results.push({ name, held, seconds: (performance.now() - from) / 1000 });
  return held;
}

const script = (name) => () => npm(['run', '--silent', name]).then((code) => code === 0);

async function programs() {
  const missing = PROGRAMS.filter(
    (one) => process.env['CHROMIUM'] === undefined && onPath(...one.programs) === undefined,
  );
  if (missing.length === 0) return;
  const packages = missing.map((one) => one.debian);
  if (existsSync('/etc/debian_version') && process.getuid?.() === 0) {
    const env = { DEBIAN_FRONTEND: 'noninteractive' };
    const apt = (...args) =>
      run('apt-get', ['-qq', '-o', 'Dpkg::Use-Pty=0', ...args], { env, stdio: ['ignore', 'ignore', 'inherit'] });
    console.log(`Installing ${packages.join(', ')}.`);
    if ((await apt('update')) === 0 && (await apt('install', '-y', '--no-install-recommends', ...packages)) === 0)
      return;
  }
  for (const one of missing)
    skips.push(`${one.for}: no ${one.programs[0]} here; on Debian, apt-get install ${one.debian} brings it`);
}

async function vitest() {
  const report = join(scratch, 'vitest.json');
  const args = ['run', '--reporter=default', '--reporter=json', `--outputFile.json=${report}`];
  const code = await run(process.execPath, [join(root, 'node_modules', 'vitest', 'vitest.mjs'), ...args]);
  if (!existsSync(report)) return false;
  const { numPendingTests, numTodoTests } = JSON.parse(readFileSync(report, 'utf8'));
  if (numPendingTests + numTodoTests > 0) skips.push(`${numPendingTests + numTodoTests} tests, listed above`);
  return code === 0;
}

try {
  if (await step('set-up', setup)) {
    await step('programs that tests need', programs);
    await step('types', script('types'));
    await step('lint', script('lint'));
    await step('format', script('format:check'));
    await step('tests', vitest);
    await step('packed package, installed elsewhere', () => packedSmoke(scratch));
    await step('npm start', () => startSmoke());
  }
} finally {
  rmSync(scratch, { recursive: true, force: true });
}

console.log('\n── summary');
for (const { name, held, seconds } of results)
  console.log(`${held ? 'passed' : 'FAILED'}  ${seconds.toFixed(1).padStart(6)} s  ${name}`);
for (const skip of skips) console.log(`${ci ? 'FAILED ' : 'skipped'}            ${skip}`);
const failed = results.filter((one) => !one.held).length + (ci ? skips.length : 0);
const passed = results.filter((one) => one.held).length;
const total = results.reduce((sum, one) => sum + one.seconds, 0);
console.log(`${passed} passed, ${failed} failed, ${ci ? 0 : skips.length} skipped in ${total.toFixed(0)} s`);
process.exitCode = failed === 0 ? 0 : 1;
