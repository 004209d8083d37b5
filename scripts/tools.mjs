// What the scripts share. Node's own modules only: they run before anything is installed.
import { spawn } from 'node:child_process';
import { existsSync, realpathSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = fileURLToPath(new URL('..', import.meta.url));

/** Whether this file was started by name, and not imported. */
export const startedAs = (meta) =>
  process.argv[1] !== undefined && fileURLToPath(meta.url) === realpathSync(process.argv[1]);

/** Runs a program with the terminal's own streams; resolves to its exit code, a signal counting as 1. */
export function run(command, args, { cwd = root, env = {}, stdio = 'inherit', shell = false } = {}) {
  return new Promise((resolve, reject) => {
    const child = spawn(command, args, { cwd, stdio, shell, env: { ...process.env, ...env } });
    child.on('error', reject);
    child.on('close', (code) => resolve(code ?? 1));
  });
}

/** Runs npm: the one that started us where there is one, else the first on the path. */
export function npm(args, options = {}) {
  const own = process.env['npm_execpath'];
  if (own !== undefined && own.endsWith('.js')) return run(process.execPath, [own, ...args], options);
  return run('npm', args, { ...options, shell: process.platform === 'win32' });
}

/** The first of some programs that is on the path, or nothing. */
export function onPath(...programs) {
  for (const folder of (process.env['PATH'] ?? '').split(delimiter))
    for (const program of programs) if (existsSync(join(folder, program))) return join(folder, program);
  return undefined;
}
