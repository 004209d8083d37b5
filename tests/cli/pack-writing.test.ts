import {
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeEach, describe, expect, it } from 'vitest';
import {
  disk,
  MANIFEST,
  readManifest,
  readPack,
  Refused,
  writePack,
  writeWhole,
  type Disk,
  type Pack,
} from '../../src/pack/index.ts';

const home = mkdtempSync(join(tmpdir(), 'gantrybook-pack-'));
let folder = '';
let count = 0;
beforeEach(() => {
  folder = join(home, String(count++), 'made');
});
afterAll(() => rmSync(home, { recursive: true, force: true }));

const pack = (revision: string, ...names: readonly string[]): Pack => ({
  version: '1.2.3',
  book: { title: 'Tidepool', file: 'book.yaml' },
  stamp: { revision, content: `${revision}`.repeat(8) },
  files: names.map((name) => ({ name, text: `${name} of ${revision}\n`, sheet: 'trial', factsHash: 'ff' })),
});
const [before, after] = [
  pack('A', 'index.html', 'old.csv', 'both.csv'),
  pack('B', 'index.html', 'new.csv', 'both.csv'),
];

class Gone extends Error {}

/** A disk that does so many things and then never answers again, as when the power goes. */
const lasting = (steps: number): Disk => {
  let left = steps;
  const counted =
    <A extends readonly unknown[], R>(work: (...args: A) => R) =>
    (...args: A): R => {
      if (left-- <= 0) throw new Gone('gone');
      return work(...args);
    };
  return {
    list: counted(disk.list),
    read: counted(disk.read),
    makeFolder: counted(disk.makeFolder),
    write: counted(disk.write),
    keep: counted(disk.keep),
    rename: counted(disk.rename),
    remove: counted(disk.remove),
    settle: counted(disk.settle),
  };
};

/** A disk on which one kind of work fails once, at its nth time, and that goes on afterwards. */
const failingOnce = (kind: 'write' | 'rename' | 'keep' | 'settle', nth: number): Disk => {
  let times = 0;
  return {
    ...disk,
    [kind]: (...args: never[]) => {
      if (++times === nth) throw Object.assign(new Error('full'), { code: 'ENOSPC', syscall: kind });
      return (disk[kind] as (...args: never[]) => void)(...args);
    },
  };
};

const content = (): Record<string, string> =>
  Object.fromEntries(readdirSync(folder).map((name) => [name, readFileSync(join(folder, name), 'utf8')]));

/** As a process that is no longer there would have left it. */
const asIfEnded = (): void => {
  for (const name of existsSync(folder) ? readdirSync(folder) : [])
    if (name.startsWith('.gantrybook-pack-')) {
      cpSync(join(folder, name), join(folder, '.gantrybook-pack-99999999'), { recursive: true });
      rmSync(join(folder, name), { recursive: true });
    }
};

describe('a pack', () => {
  it('is complete after it is written, and the manifest says what is in it', () => {
    expect(readPack(folder)).toEqual({ state: 'none' });
    expect(writePack(folder, before)).toEqual({ state: 'none' });
    const state = readPack(folder);
    expect(state.state).toBe('complete');
    expect(state.state === 'complete' && state.manifest.files.map(({ name, bytes }) => [name, bytes])).toEqual([
      ['index.html', 16],
      ['old.csv', 13],
      ['both.csv', 14],
    ]);
    expect(readdirSync(folder).sort()).toEqual(['both.csv', 'index.html', MANIFEST, 'old.csv']);
  });

  it('has the same bytes when it is made again', () => {
    writePack(folder, before);
    const first = content();
    writePack(folder, before);
    expect(content()).toEqual(first);
  });

  it('takes away what an earlier one made, and nothing else', () => {
    writePack(folder, before);
    writeFileSync(join(folder, 'notes.txt'), 'mine');
    mkdirSync(join(folder, 'photos'));
    writePack(folder, after);
    expect(readdirSync(folder).sort()).toEqual(['both.csv', 'index.html', MANIFEST, 'new.csv', 'notes.txt', 'photos']);
  });

  it('leaves alone what it made once and somebody has changed since', () => {
    writePack(folder, before);
    writeFileSync(join(folder, 'old.csv'), 'my notes');
    writePack(folder, after);
    expect(readFileSync(join(folder, 'old.csv'), 'utf8')).toBe('my notes');
  });

  it('does not go into a folder that holds something else', () => {
    mkdirSync(folder, { recursive: true });
    writeFileSync(join(folder, 'book.yaml'), 'book: 1\n');
    expect(() => writePack(folder, before)).toThrow(
      new Refused('made is not empty and holds no pack. Name a new folder, or an empty one, after --into.'),
    );
    expect(readdirSync(folder)).toEqual(['book.yaml']);
  });

  it('does not replace a file that no pack made', () => {
    writePack(folder, before);
    writeFileSync(join(folder, 'new.csv'), 'mine');
    expect(() => writePack(folder, after)).toThrow(/^new\.csv in made was not made by this program and would be lost/);
    expect(readFileSync(join(folder, 'new.csv'), 'utf8')).toBe('mine');
    expect(readPack(folder).state).toBe('complete');
  });

  it('goes into a folder that holds only what is hidden, such as a repository', () => {
    mkdirSync(join(folder, '.git'), { recursive: true });
    writePack(folder, before);
    expect(readPack(folder).state).toBe('complete');
    expect(existsSync(join(folder, '.git'))).toBe(true);
  });

  it('does not write through a link that stands where a file belongs', () => {
    writePack(folder, before);
    const outside = join(folder, '..', 'outside.txt');
    writeFileSync(outside, 'elsewhere');
    rmSync(join(folder, 'both.csv'));
    symlinkSync(outside, join(folder, 'both.csv'));
    expect(readPack(folder)).toMatchObject({ state: 'incomplete', which: ['both.csv'] });
    writePack(folder, after);
    expect(readFileSync(outside, 'utf8')).toBe('elsewhere');
    expect(readPack(folder).state).toBe('complete');
  });

  it('is known to be changed, and is made anew', () => {
    writePack(folder, before);
    writeFileSync(join(folder, 'both.csv'), 'changed');
    rmSync(join(folder, 'old.csv'));
    expect(writePack(folder, before)).toMatchObject({ state: 'incomplete', which: ['old.csv', 'both.csv'] });
    expect(readPack(folder).state).toBe('complete');
  });
});

describe('a pack that is broken off', () => {
  const steps = (): number => {
    let used = 0;
    for (let most = 1; ; most++) {
      const trial = join(home, `steps-${most}`);
      writePack(trial, before);
      try {
        writePack(trial, after, lasting(most));
        used = most;
      } catch {
        continue;
      }
      return used;
    }
  };

  it('after any step is the old one, the new one, or is known not to be whole; and the next one repairs it', () => {
    const all = steps();
    expect(all).toBeGreaterThan(20);
    const seen = new Set<string>();
    for (let most = 0; most < all; most++) {
      folder = join(home, `broken-${most}`);
      writePack(folder, before);
      expect(() => writePack(folder, after, lasting(most))).toThrow(Gone);
      asIfEnded();
      const state = readPack(folder);
      seen.add(state.state === 'complete' ? state.manifest.stamp.revision : state.state);
      if (state.state === 'complete')
        for (const { name, text } of (state.manifest.stamp.revision === 'A' ? before : after).files)
          expect(readFileSync(join(folder, name), 'utf8')).toBe(text);
      writePack(folder, after);
      expect(readPack(folder)).toMatchObject({ state: 'complete', manifest: { stamp: { revision: 'B' } } });
      expect(readdirSync(folder).sort()).toEqual(['both.csv', 'index.html', MANIFEST, 'new.csv']);
    }
    expect([...seen].sort()).toEqual(['A', 'B', 'incomplete']);
  });

  it('and was the first in its folder can be written again', () => {
    for (let most = 0; most < 14; most++) {
      folder = join(home, `first-${most}`);
      expect(() => writePack(folder, before, lasting(most))).toThrow(Gone);
      asIfEnded();
      expect(readPack(folder).state).not.toBe('complete');
      writePack(folder, before);
      expect(readPack(folder).state).toBe('complete');
    }
  });

  it.each([
    ['write', 1],
    ['write', 3],
    ['settle', 1],
    ['keep', 2],
    ['rename', 1],
    ['rename', 2],
    ['rename', 4],
  ] as const)('by a full disk (%s %i) leaves the earlier one as it was', (kind, nth) => {
    writePack(folder, before);
    const was = content();
    expect(() => writePack(folder, after, failingOnce(kind, nth))).toThrow(
      /cannot be written into .*: the disk is full\.$/,
    );
    expect(content()).toEqual(was);
  });

  it('is not disturbed while another process still writes it', () => {
    mkdirSync(join(folder, '.gantrybook-pack-1'), { recursive: true });
    expect(() => writePack(folder, before)).toThrow(/^Another pack is being written into made, by process 1/);
  });
});

describe('a manifest from a stranger', () => {
  const text = (name: string): string =>
    JSON.stringify({
      gantrybook: { pack: 1, version: '1' },
      book: { title: 'x', file: 'y' },
      stamp: { revision: 'A', content: '00' },
      files: [{ name, bytes: 1, sha256: '00' }],
    });

  it('is read when its names are plain', () => {
    expect(readManifest(text('a-1_b.csv'))?.files[0]?.name).toBe('a-1_b.csv');
  });

  it.each(['../book.yaml', '/etc/passwd', 'a/b', 'a\\b', '..', '.hidden', '', 'manifest.json', 'a\u0000b', 'C:x'])(
    'is none when it names %j',
    (name) => {
      expect(readManifest(text(name))).toBeUndefined();
    },
  );

  it('removes nothing outside the folder', () => {
    mkdirSync(folder, { recursive: true });
    const outside = join(folder, '..', 'book.yaml');
    writeFileSync(outside, 'book: 1\n');
    writeFileSync(join(folder, MANIFEST), text('../book.yaml'));
    expect(() => writePack(folder, before)).toThrow(Refused);
    expect(existsSync(outside)).toBe(true);
  });

  it.each(['', '[]', 'null', '{}', '{"gantrybook":{"pack":2}}', '{"files":[]}'])('is none when it is %j', (json) => {
    expect(readManifest(json)).toBeUndefined();
  });
});

describe('one file', () => {
  it('is there whole or not at all', () => {
    const path = join(home, 'one.json');
    writeWhole(path, 'first');
    expect(() => writeWhole(path, 'second', failingOnce('rename', 1))).toThrow(
      `${path} cannot be written: the disk is full.`,
    );
    expect(readFileSync(path, 'utf8')).toBe('first');
    expect(readdirSync(home).filter((name) => name.startsWith('.one'))).toEqual([]);
  });
});
