// What takes too long for every change: long fuzzing, then mutants of what numbers are made of, by a sample.
import { join } from 'node:path';
import { setup } from './setup.mjs';
import { root, run } from './tools.mjs';

const MUTATED = [
  'src/kernel',
  'src/engine',
  'src/disciplines/motion/calc',
  'src/disciplines/swing/calc',
  'src/disciplines/supply/calc',
];
const SAMPLE = ['--sample', '300', '--minutes', '30', '--least', '80'];

const mutants = async () => {
  let worst = 0;
  for (const folder of MUTATED)
    worst = Math.max(
      worst,
      await run(process.execPath, [join(root, 'scripts/mutants.mjs'), join(root, folder), ...SAMPLE]),
    );
  return worst;
};
const parts = {
  fuzz: () =>
    run(process.execPath, [join(root, 'node_modules', 'vitest', 'vitest.mjs'), 'run'], {
      env: { GANTRYBOOK_LONG: '1' },
    }),
  mutation: mutants,
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
