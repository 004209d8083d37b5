/** One desk at a time writes into a folder: whoever has made the lock. Held for the moment of a save only. */
import { randomBytes } from 'node:crypto';
import { linkSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { hostname } from 'node:os';
import { join } from 'node:path';
import { isGone } from './texts.ts';

export const LOCK = '.gantrybook-lock';
/** A save takes far less, in ms; what is older was left behind. */
const OLDEST = 30_000;
/** A lock without a word in it is one that is just being made, or was broken off at that. */
const OLDEST_EMPTY = 2000;

const isTaken = (error: unknown): boolean => error instanceof Error && 'code' in error && error.code === 'EEXIST';

/** Whether there is a process of this number on this machine. */
export const isRunning = (pid: number): boolean => {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return error instanceof Error && 'code' in error && error.code === 'EPERM';
  }
};

interface Held {
  readonly says: string;
  readonly isLeft: boolean;
}

const heldAt = (path: string): Held | undefined => {
  try {
    const age = Date.now() - statSync(path).mtimeMs;
    const says = readFileSync(path, 'utf8').slice(0, 400);
    const [, pid = '', host = ''] = /^(\d{1,10}) \w+ (.*)$/.exec(says) ?? [];
    if (pid === '') return { says, isLeft: age > OLDEST_EMPTY };
    // This process never asks while it holds one: one of its own number was left by an earlier process.
    const isDead = host === hostname() && (Number(pid) === process.pid || !isRunning(Number(pid)));
    return { says, isLeft: isDead || age > OLDEST };
  } catch (error) {
    if (isGone(error)) return undefined;
    throw error;
  }
};

/** Takes away a lock that was left behind, and puts it back if meanwhile it became another's. */
const breakOpen = (path: string, left: Held): void => {
  const aside = `${path}-${randomBytes(8).toString('hex')}`;
  try {
    renameSync(path, aside);
    if (readFileSync(aside, 'utf8').slice(0, 400) !== left.says) linkSync(aside, path);
  } catch (error) {
    if (!isGone(error) && !isTaken(error)) throw error;
  } finally {
    rmSync(aside, { force: true });
  }
};

/**
 * Takes the lock of a folder.
 *
 * @returns what gives it back, or nothing while another has it
 */
export const lockOf = (folder: string): (() => void) | undefined => {
  const path = join(folder, LOCK);
  const says = `${process.pid} ${randomBytes(8).toString('hex')} ${hostname()}`;
  const held = heldAt(path);
  if (held && !held.isLeft) return undefined;
  if (held) breakOpen(path, held);
  try {
    writeFileSync(path, says, { flag: 'wx' });
  } catch (error) {
    if (isTaken(error)) return undefined;
    // On a full disk an empty one may stand there now.
    rmSync(path, { force: true });
    throw error;
  }
  return () => {
    if (heldAt(path)?.says === says) rmSync(path, { force: true });
  };
};
