/** Disks on which something happens. */
import { writeFileSync } from 'node:fs';
import { disk, type Disk } from '../../../pack/disk.ts';

const CHANGES = ['makeFolder', 'write', 'keep', 'rename', 'remove', 'settle'] as const;
type Change = (typeof CHANGES)[number];

/** The real disk, but nobody waits until something is on it: a process that dies takes nothing along that was written. */
const hasty: Disk = {
  ...disk,
  write: (path, text) => writeFileSync(path, text, { flag: 'wx' }),
  settle: () => undefined,
};

/** Calls back before each thing that changes the disk; what that throws happens in its place. */
export const watched = (before: (what: Change, count: number, path: string) => void): Disk => {
  let count = 0;
  const wrapped = Object.fromEntries(
    CHANGES.map((what) => [
      what,
      (path: string, more: string) => {
        before(what, ++count, path);
        (hasty[what] as (path: string, more: string) => void)(path, more);
      },
    ]),
  );
  return { ...hasty, ...(wrapped as Pick<Disk, Change>) };
};

/** What a disk says when it cannot do something. */
export const trouble = (code: string, syscall: string): Error =>
  Object.assign(new Error(`${code}: made up`), { code, syscall });

/** Thrown in place of everything after a process has died. */
export class Died extends Error {
  override readonly name = 'Died';
}

/**
 * A disk on which the process dies at one thing and does nothing ever after.
 *
 * @param at the number of the thing
 * @param half true where a write gets half of its text onto the disk first
 */
export const dyingAt = (at: number, half: boolean): Disk => {
  return watched((what, count, path) => {
    if (count < at) return;
    if (count === at && half && what === 'write') writeFileSync(path, 'half of it');
    throw new Died();
  });
};

/** A disk on which all goes well, and quickly. */
export const quick: Disk = hasty;
