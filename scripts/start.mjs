// Checks the demo book, makes its pack and serves it on this machine only.
import { join } from 'node:path';
import { setup } from './setup.mjs';
import { root, run } from './tools.mjs';

// Ctrl-C reaches the server too: it ends by itself, and we with it.
process.on('SIGINT', () => undefined);

try {
  await setup();
  const show = [join('dist', 'cli.js'), 'show', join('examples', 'tidepool'), '--into', join('out', 'tidepool')];
  process.exitCode = await run(process.execPath, [...show, ...process.argv.slice(2)], { cwd: root });
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
}
