/** Shows an address to the person at this machine, and waits until they have had enough. */
import { spawn } from 'node:child_process';
import type { Terminal } from './terminal.ts';

/** Only where somebody would see it. */
export const hasDisplay = ({ isLive, around: { env, platform } }: Terminal): boolean =>
  isLive &&
  !env['SSH_CONNECTION'] &&
  !env['CI'] &&
  (platform === 'darwin' || platform === 'win32' || Boolean(env['DISPLAY'] || env['WAYLAND_DISPLAY']));

/** The program that opens an address on a system, with its arguments; none is a shell. */
export const openerOf = (address: string, platform: string): readonly [program: string, ...args: string[]] => {
  if (platform === 'darwin') return ['open', address];
  if (platform === 'win32') return ['rundll32.exe', 'url.dll,FileProtocolHandler', address];
  return ['xdg-open', address];
};

export const openBrowser = (address: string, platform: string): void => {
  const [program, ...args] = openerOf(address, platform);
  const child = spawn(program, args, { stdio: 'ignore', detached: true, shell: false });
  // The address stands on the terminal: whoever has no such program opens it by hand.
  child.on('error', () => undefined);
  child.unref();
};

export const untilInterrupted = (): Promise<void> =>
  new Promise((done) => {
    for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => done());
  });
