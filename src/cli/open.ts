/** `gantrybook open`: the desk, with a book on it or with none yet. */
import { existsSync, realpathSync } from 'node:fs';
import { resolve, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { findBook } from './books.ts';
import { hasDisplay, openBrowser, untilInterrupted } from './browser.ts';
import { GOOD, type ExitCode } from './exit.ts';
import { programFolder } from './program-folder.ts';
import type { Terminal } from './terminal.ts';

export interface OpenOptions {
  readonly port: number;
  readonly browser: boolean;
}

/** What a test puts in place of the installed program and of the person. */
export interface Stage {
  readonly assets?: string;
  /** Folder that the person is in. */
  readonly here?: string;
  readonly until?: Promise<void>;
}

/** The demos are for everybody: what somebody changes becomes a book of their own. */
const isDemo = (folder: string): boolean => {
  const demos = realpathSync(fileURLToPath(programFolder('examples')));
  return realpathSync(folder).startsWith(demos.endsWith(sep) ? demos : demos + sep);
};

const quoted = (name: string): string => (/\s/.test(name) ? `"${name}"` : name);

/**
 * Opens the desk and serves it until Ctrl-C.
 *
 * @throws Refused when there is no such book
 */
export const open = async (
  typed: string | undefined,
  { port, browser }: OpenOptions,
  terminal: Terminal,
  { assets, here = '.', until }: Stage = {},
): Promise<ExitCode> => {
  const { serveDesk } = await import('../workbench/server/index.ts');
  const isEmpty = typed === undefined && !existsSync(resolve(here, 'book.yaml'));
  const place = isEmpty ? undefined : findBook(here === '.' ? typed : resolve(here, typed ?? ''));
  const canSave = !place || !isDemo(place.folder);
  const ended = until ?? untilInterrupted();
  const served = await serveDesk({
    ...(place ? { folder: place.folder, main: place.main } : {}),
    canSave,
    newBooksIn: resolve(here),
    assets: assets ?? fileURLToPath(programFolder('dist/desk')),
    port,
    made: (name) =>
      terminal.print(terminal.text(`${name} is made, and is yours. Next time: gantrybook open ${quoted(name)}`)),
  });
  if (served.moved) terminal.print(`Port ${port} is taken; this is the next that is free.`);
  const what = place ? terminal.text(typed ?? 'the book in this folder') : 'no book yet';
  terminal.print(`The desk, with ${what} on it: ${served.address}`);
  if (!canSave)
    terminal.print('It is a demo and stays as it is; what you change is saved as a book of your own, in this folder.');
  terminal.print('Ctrl-C ends it.');
  if (browser && hasDisplay(terminal)) openBrowser(served.address, terminal.around.platform);
  await ended;
  await served.close();
  return GOOD;
};
