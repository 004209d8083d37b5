/** Follows what becomes of a book on the disk, and tells each desk what it does not know yet. */
import { statSync } from 'node:fs';
import { basename, extname } from 'node:path';
import { watch, type FSWatcher } from 'chokidar';
import { diskTrouble, Refused } from '../../pack/refused.ts';
import type { FolderChange, Seen } from '../desk/folder.ts';
import { foldersOf, textsOf, type BookAt, type Text } from './texts.ts';

/** An editor writes a file in several steps; it has done when nothing came for this long, in ms. */
const QUIET = 60;
/** Somebody who never stops writing is heard this often all the same, in ms. */
const LONGEST = 500;
/** How often the files are glanced at, in ms. */
const GLANCE = 1000;

export interface Follower {
  /** What a desk has yet to hear, one after the other; nothing more when the following has ended. */
  readonly next: () => Promise<FolderChange | undefined>;
  /** The desk has saved these itself. */
  readonly saved: (seen: Seen) => void;
  readonly stop: () => void;
}

export interface Following {
  /** @param seen what the desk has read; without it, what stands there now */
  readonly follow: (seen?: Seen) => Follower;
  /** Looks at once: something was saved here. */
  readonly look: () => void;
  readonly close: () => Promise<void>;
}

type Texts = ReadonlyMap<string, Text>;

const changeBetween = (known: ReadonlyMap<string, string>, now: Texts): FolderChange | undefined => {
  const files: Record<string, string | null> = {};
  const seen: Record<string, string> = {};
  for (const [name, { text, hash }] of now) {
    if (known.get(name) === hash) continue;
    files[name] = text;
    seen[name] = hash;
  }
  for (const name of known.keys()) if (!now.has(name)) files[name] = null;
  return Object.keys(files).length > 0 ? { files, seen } : undefined;
};

const hashesOf = (texts: Texts): Map<string, string> => new Map([...texts].map(([name, { hash }]) => [name, hash]));

/** What stands there; nothing where that cannot be told at this moment, such as while a file is too long. */
const standing = (at: BookAt): Texts | undefined => {
  try {
    return textsOf(at);
  } catch (error) {
    if (error instanceof Refused || diskTrouble(error) !== undefined) return undefined;
    throw error;
  }
};

const identityOf = (path: string): string => {
  const stat = statSync(path, { throwIfNoEntry: false });
  return stat ? `${stat.dev}:${stat.ino}` : '';
};
const stateOf = (path: string): string => {
  const stat = statSync(path, { throwIfNoEntry: false });
  return stat ? `${stat.ino}:${stat.size}:${stat.mtimeMs}` : '';
};

/**
 * Calls back when something stirs in some folders. The system tells at once, but not of everything: not on every network drive,
 * not when it gives no more watches, not of a folder that was replaced. So the files are glanced at as well.
 */
const watchFor = (stirred: () => void) => {
  let watcher: FSWatcher | undefined;
  let isDeaf = false;
  let watched = new Map<string, string>();
  let glanced: readonly string[] = [];
  let last = '';

  const states = (): string => glanced.map(stateOf).join(' ');
  const isNoise = (path: string, stats?: { isFile: () => boolean }): boolean =>
    !watched.has(path) &&
    (basename(path).startsWith('.') || (stats?.isFile() === true && !/^\.ya?ml$/i.test(extname(path))));
  const begin = (): void => {
    void watcher?.close();
    watcher = watch([...watched.keys()], { depth: 0, ignoreInitial: true, ignored: isNoise })
      .on('all', stirred)
      // What changed before the first look was over is found by another.
      .on('ready', stirred)
      .on('error', () => {
        isDeaf = true;
        void watcher?.close();
      });
  };
  const glance = setInterval(() => {
    if (states() !== last) stirred();
  }, GLANCE);

  return {
    /** Watches these folders, and glances at these files, from now on. */
    over: (folders: readonly string[], files: readonly string[]): void => {
      glanced = [...folders, ...files];
      last = states();
      const wanted = new Map(
        folders.map((folder) => [folder, identityOf(folder)] as const).filter(([, id]) => id !== ''),
      );
      const isSame = wanted.size === watched.size && [...wanted].every(([folder, id]) => watched.get(folder) === id);
      if (isSame || isDeaf) return;
      watched = wanted;
      begin();
    },
    close: async (): Promise<void> => {
      clearInterval(glance);
      await watcher?.close();
    },
  };
};

/** Starts to follow a book when the first desk asks. */
export const following = (at: BookAt): Following => {
  let now: Texts = new Map();
  let isClosed = false;
  let quiet: NodeJS.Timeout | undefined;
  let stirredAt = 0;
  let watcher: ReturnType<typeof watchFor> | undefined;
  const waiting = new Set<() => void>();

  const look = (): void => {
    clearTimeout(quiet);
    quiet = undefined;
    if (isClosed) return;
    now = standing(at) ?? now;
    watcher?.over(
      foldersOf(at, now),
      [...now.values()].map(({ path }) => path),
    );
    for (const wake of waiting) wake();
  };
  const stirred = (): void => {
    if (isClosed) return;
    if (quiet === undefined) stirredAt = Date.now();
    clearTimeout(quiet);
    quiet = setTimeout(look, Math.max(0, Math.min(QUIET, stirredAt + LONGEST - Date.now())));
  };

  const followerFrom = (known: Map<string, string>): Follower => {
    let isStopped = false;
    let wake = (): void => undefined;
    const next = async (): Promise<FolderChange | undefined> => {
      while (!isStopped && !isClosed) {
        const change = changeBetween(known, now);
        if (change) {
          for (const name of Object.keys(change.files)) known.delete(name);
          for (const [name, hash] of Object.entries(change.seen)) known.set(name, hash);
          return change;
        }
        await new Promise<void>((resolve) => {
          wake = resolve;
          waiting.add(wake);
        });
        waiting.delete(wake);
      }
      return undefined;
    };
    return {
      next,
      saved: (seen) => {
        for (const [name, hash] of Object.entries(seen)) known.set(name, hash);
      },
      stop: () => {
        isStopped = true;
        wake();
      },
    };
  };

  return {
    follow: (seen) => {
      watcher ??= watchFor(stirred);
      // A desk may have read later than the last look was.
      look();
      return followerFrom(seen ? new Map(Object.entries(seen)) : hashesOf(now));
    },
    look,
    close: async () => {
      isClosed = true;
      clearTimeout(quiet);
      for (const wake of waiting) wake();
      await watcher?.close();
    },
  };
};
