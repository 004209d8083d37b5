// What takes too long for every change: long fuzzing, then mutation of what everything stands on.
import { join } from 'node:path';
import { setup } from './setup.mjs';
import { root, run } from './tools.mjs';

const tool = (file, args, env = {}) => run(process.execPath, [join(root, 'node_modules', ...file), ...args], { env });

const parts = {
  fuzz: () => tool(['vitest', 'vitest.mjs'], ['run'], { GANTRYBOOK_LONG: '1' }),
  mutation: () => tool(['@stryker-mutator', 'core', 'bin', 'stryker.js'], ['run']),
};
const asked = process.argv.slice(2);

try {
  await setup();
  let failed = 0;
  for (const [name, work] of Object.entries(parts)) {
    if (asked.length > 0 && !asked.includes(name)) continue;
    const from = performance.now();
    const code = await work();
    if (code !== 0) failed += 1;
    console.log(
      `${code === 0 ? 'passed' : 'FAILED'}  ${((performance.now() - from) / 60_000).toFixed(1)} min  ${name}`,
    );
  }
  process.exitCode = failed === 0 ? 0 : 1;
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
}
