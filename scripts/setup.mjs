// Makes a checkout ready: installs what the lock file says, builds, and lets `npx gantrybook` find the build.
import { chmodSync, existsSync, mkdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { npm, root, startedAs } from './tools.mjs';

const OLDEST_NODE = 20;

function packagesOf(lockFile) {
  return existsSync(lockFile) ? JSON.parse(readFileSync(lockFile, 'utf8')).packages : {};
}

// npm writes its hidden lock last, so an install that was broken off does not count as one.
function isInstalled() {
  const wanted = packagesOf(join(root, 'package-lock.json'));
  const present = packagesOf(join(root, 'node_modules', '.package-lock.json'));
  return Object.entries(wanted).every(
    ([place, entry]) =>
      place === '' || (place in present ? present[place].version === entry.version : entry.optional === true),
  );
}

function linkCommand() {
  const folder = join(root, 'node_modules', '.bin');
  const link = join(folder, 'gantrybook');
  mkdirSync(folder, { recursive: true });
  rmSync(link, { force: true });
  if (process.platform === 'win32') {
    writeFileSync(`${link}.cmd`, '@node "%~dp0\\..\\..\\dist\\cli.js" %*\r\n');
    return;
  }
  chmodSync(join(root, 'dist', 'cli.js'), 0o755);
  symlinkSync(join('..', '..', 'dist', 'cli.js'), link);
}

export async function setup() {
  if (Number(process.versions.node.split('.')[0]) < OLDEST_NODE)
    throw new Error(`This is Node ${process.versions.node}; Node ${OLDEST_NODE} or newer is needed.`);
  if (!isInstalled()) {
    console.log('Installing the packages that the lock file names.');
    if ((await npm(['ci', '--no-audit', '--no-fund'])) !== 0) throw new Error('npm ci failed; see above.');
  }
  const { build } = await import('./build.mjs');
  await build();
  linkCommand();
}

if (startedAs(import.meta)) {
  try {
    await setup();
  } catch (error) {
    console.error(error instanceof Error ? error.message : error);
    process.exitCode = 1;
  }
}
