// What a user meets: the package as it is installed, and `npm start` as it is typed.
import { spawn } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { npm, root } from './tools.mjs';

const BOOK = 'tidepool';
// In ms: far more than a start takes, so that one that hangs is a failure and not a wait.
const LONGEST_START = 120_000;

function must(condition, message) {
  if (!condition) throw new Error(message);
}

/** Packs, installs without a network into an empty folder, and checks and packs a book from there. */
export async function packedSmoke(scratch) {
  const home = join(scratch, 'elsewhere');
  mkdirSync(home);
  writeFileSync(join(home, 'package.json'), '{ "private": true }\n');
  must((await npm(['pack', '--silent', '--ignore-scripts', '--pack-destination', scratch])) === 0, 'npm pack failed.');
  const tarball = readdirSync(scratch).find((entry) => entry.endsWith('.tgz'));
  must(tarball !== undefined, 'npm pack made no file.');
  const install = ['install', '--offline', '--silent', '--no-audit', '--no-fund', join(scratch, tarball)];
  must((await npm(install, { cwd: home })) === 0, 'The package does not install without a network.');
  const installed = readdirSync(join(home, 'node_modules')).filter((entry) => !entry.startsWith('.'));
  must(installed.join() === 'gantrybook', `The package brings others with it: ${installed.join(', ')}.`);

  const gantrybook = (...args) => npm(['exec', '--offline', '--', 'gantrybook', ...args], { cwd: home });
  const book = join(home, 'node_modules', 'gantrybook', 'examples', BOOK);
  must((await gantrybook('check', book)) === 0, 'The installed command finds fault with the demo book.');
  must((await gantrybook('pack', book, '--into', join(home, 'made'))) === 0, 'The installed command makes no pack.');
  must(
    readdirSync(join(home, 'made')).some((entry) => entry.endsWith('.html')),
    'The pack has no sheet.',
  );
  const dist = join(home, 'node_modules', 'gantrybook', 'dist');
  must(existsSync(join(dist, 'licences.txt')), 'The licences of what is bundled are not in the package.');
  must(existsSync(join(dist, 'desk', 'index.html')), 'The desk is not in the package.');
  const files = readdirSync(dist, { recursive: true, encoding: 'utf8' });
  for (const file of files.filter((one) => statSync(join(dist, one)).isFile()))
    must(!readFileSync(join(dist, file), 'utf8').includes(root), `dist/${file} names the folder that it was made in.`);
}

/** Starts the demo, fetches the page at the address that it prints, and ends it as Ctrl-C does. */
export async function startSmoke() {
  const child = spawn(process.execPath, [join(root, 'scripts', 'start.mjs'), '--no-browser'], {
    cwd: root,
    stdio: ['ignore', 'pipe', 'inherit'],
    // A group of its own, since Ctrl-C reaches every process in one.
    detached: true,
  });
  const ended = new Promise((resolve) => child.on('close', resolve));
  const patience = setTimeout(() => process.kill(-child.pid, 'SIGKILL'), LONGEST_START);
  const address = await new Promise((resolve, reject) => {
    let text = '';
    child.stdout.on('data', (chunk) => {
      text += chunk;
      const found = /https?:\/\/[\w.:[\]/?=&-]+/.exec(text);
      if (found !== null) resolve(found[0]);
    });
    ended.then((code) => {
      clearTimeout(patience);
      reject(new Error(`It ended with ${code} before it printed an address:\n${text}`));
    });
  });
  try {
    const answer = await fetch(address);
    must(answer.ok && (await answer.text()).includes('<html'), `${address} answered ${answer.status}.`);
    console.log(`${address} answered ${answer.status}.`);
  } finally {
    process.kill(-child.pid, 'SIGINT');
  }
  const code = await ended;
  clearTimeout(patience);
  must(code === 0, `It ended with ${code} after Ctrl-C.`);
}
