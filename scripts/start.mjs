// Opens the desk with the demo book on it, on this machine only.
import { join } from 'node:path';
import { setup } from './setup.mjs';
import { root, run } from './tools.mjs';

// Ctrl-C reaches the server too: it ends by itself, and we with it.
process.on('SIGINT', () => undefined);

try {
  await setup();
  const open = [join('dist', 'cli.js'), 'open', join('examples', 'tidepool')];
  process.exitCode = await run(process.execPath, [...open, ...process.argv.slice(2)], { cwd: root });
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
}
