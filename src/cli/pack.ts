/** `gantrybook pack` and `gantrybook show`: the drawing set as files, and on the screen. */
import { spawn } from 'node:child_process';
import { resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { sources } from '../app/sources.ts';
import { version } from '../app/version.ts';
import { packOf, typefaceFrom, writePack } from '../pack/index.ts';
import { complainOf, openBook, Unreadable, type OpenBook } from './books.ts';
import { exitCodeOf, inSummary, worked } from './check.ts';
import { GOOD, UNREADABLE, type ExitCode } from './exit.ts';
import { programFolder } from './program-folder.ts';
import { progressOn } from './progress.ts';
import { summary } from './summary.ts';
import type { Terminal } from './terminal.ts';
import { counting, few } from './text.ts';

/** Where a pack is served when nobody says. */
export const USUAL_PORT = 4824;

const write = ({ machine, house }: OpenBook, into: string, terminal: Terminal): void => {
  const progress = progressOn(terminal.around.err);
  let pack;
  try {
    const typeface = typefaceFrom(fileURLToPath(programFolder('fonts')));
    pack = packOf(machine, house, { version, sources, typeface, step: progress.step });
  } finally {
    progress.done();
  }
  const before = writePack(into, pack);
  if (before.state === 'incomplete')
    terminal.print(
      terminal.text(
        `The pack that stood there was not whole or had been changed (${few(before.which, 3)}); it is made anew.`,
      ),
    );
  const unchanged = before.state === 'complete' && before.manifest.stamp.content === pack.stamp.content;
  terminal.print(
    terminal.text(
      `${unchanged ? 'Made again' : 'Made'} ${counting(pack.files.length + 1, 'file')} in ${into}: revision ${pack.stamp.revision}, stamp ${pack.stamp.content.slice(0, 12)}.`,
    ),
  );
};

/** The opened book, or nothing after its problems have been told. */
const opened = (typed: string | undefined, terminal: Terminal): OpenBook | undefined => {
  try {
    return openBook(typed, terminal);
  } catch (error) {
    if (!(error instanceof Unreadable)) throw error;
    complainOf(error, terminal);
    return undefined;
  }
};

export const pack = (typed: string | undefined, { into }: { readonly into: string }, terminal: Terminal): ExitCode => {
  const open = opened(typed, terminal);
  if (!open) return UNREADABLE;
  write(open, into, terminal);
  return exitCodeOf(open.machine.findings);
};

export interface ShowOptions {
  readonly into: string;
  readonly port: number;
  readonly browser: boolean;
}

/** Only where somebody would see it. */
const hasDisplay = ({ isLive, around: { env, platform } }: Terminal): boolean =>
  isLive &&
  !env['SSH_CONNECTION'] &&
  !env['CI'] &&
  (platform === 'darwin' || platform === 'win32' || Boolean(env['DISPLAY'] || env['WAYLAND_DISPLAY']));

const openBrowser = (address: string, platform: string): void => {
  const [program = '', ...args] =
    platform === 'darwin'
      ? ['open', address]
      : platform === 'win32'
        ? ['cmd', '/c', 'start', '', address]
        : ['xdg-open', address];
  const child = spawn(program, args, { stdio: 'ignore', detached: true });
  // The address stands on the terminal: whoever has no such program opens it by hand.
  child.on('error', () => undefined);
  child.unref();
};

const untilInterrupted = (): Promise<void> =>
  new Promise((done) => {
    for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => done());
  });

export const show = async (typed: string | undefined, options: ShowOptions, terminal: Terminal): Promise<ExitCode> => {
  const { into, port, browser } = options;
  const open = opened(typed, terminal);
  if (!open) return UNREADABLE;
  const { machine, house, place } = open;
  const findings = worked(machine, inSummary(machine), terminal);
  terminal.print(
    ...summary({ machine, house, findings, questions: machine.questions(), typed: place.typed }, terminal),
    '',
  );
  write(open, into, terminal);

  const { serve } = await import('../workbench/server.ts');
  const ended = untilInterrupted();
  const served = await serve(resolve(into), port);
  if (served.moved) terminal.print(`Port ${port} is taken; this is the next that is free.`);
  terminal.print(`The drawing set: ${served.address}`, 'Ctrl-C ends it.');
  if (browser && hasDisplay(terminal)) openBrowser(served.address, terminal.around.platform);
  await ended;
  await served.close();
  return GOOD;
};
