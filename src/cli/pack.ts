/** `gantrybook pack` and `gantrybook show`: the drawing set as files, and on the screen. */
import { resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { sources } from '../app/sources.ts';
import { version } from '../app/version.ts';
import { packOf, typefaceFrom, writePack } from '../pack/index.ts';
import { hasDisplay, openBrowser, untilInterrupted } from './browser.ts';
import { complainOf, openBook, Unreadable, type OpenBook } from './books.ts';
import { exitCodeOf, inSummary, worked } from './check.ts';
import { GOOD, UNREADABLE, type ExitCode } from './exit.ts';
import { programFolder } from './program-folder.ts';
import { progressOn } from './progress.ts';
import { summary } from './summary.ts';
import type { Terminal } from './terminal.ts';
import { counting, few } from './text.ts';

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

  const { serve } = await import('../workbench/server/index.ts');
  const ended = untilInterrupted();
  const served = await serve(resolve(into), port);
  if (served.moved) terminal.print(`Port ${port} is taken; this is the next that is free.`);
  terminal.print(`The drawing set: ${served.address}`, 'Ctrl-C ends it.');
  if (browser && hasDisplay(terminal)) openBrowser(served.address, terminal.around.platform);
  await ended;
  await served.close();
  return GOOD;
};
