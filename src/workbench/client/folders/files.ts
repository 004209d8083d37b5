/** Books on the disk, opened and saved by the browser where it can, and downloaded where it cannot. */
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import type { BookText } from '../../desk/engine.ts';
import { withEndsOf, type Folder, type FolderChange, type Seen } from '../../desk/folder.ts';
import { looseFolder } from './demos.ts';
import type { Directory } from './drafts.ts';
import { randomId } from './holders.ts';

const LARGEST = 2 * 1024 * 1024;
const MOST = 64;
/** How often the disk is looked at: a browser tells nobody of changes. */
const LOOK = 2000;

const isBookFile = (name: string): boolean => /\.ya?ml$/i.test(name);
const hash = (text: string): string => bytesToHex(sha256(utf8ToBytes(text)));

interface Pickers {
  readonly showDirectoryPicker?: (options: { id: string; mode: 'readwrite' }) => Promise<Directory>;
}

const pickers = globalThis as unknown as Pickers;

/** Whether this browser can open a folder and save into it. */
export const canOpenFolders = (): boolean => pickers.showDirectoryPicker !== undefined;

const mainOf = (names: readonly string[]): string | undefined =>
  names.includes('book.yaml') ? 'book.yaml' : (names.find((name) => name === 'book.yml') ?? names[0]);

const bookOf = (files: Readonly<Record<string, string>>): BookText => {
  const main = mainOf(Object.keys(files));
  if (main === undefined) throw new Error('There is no book here: a book is a text named book.yaml.');
  return { main, files };
};

const readAll = async (directory: Directory): Promise<Record<string, string>> => {
  const files: Record<string, string> = {};
  for await (const handle of directory.values()) {
    if (handle.kind !== 'file' || !isBookFile(handle.name)) continue;
    const file = await (handle as FileSystemFileHandle).getFile();
    if (file.size > LARGEST) throw new Error(`${handle.name} is larger than the 2 MiB that a book's file may have.`);
    files[handle.name] = await file.text();
    if (Object.keys(files).length > MOST)
      throw new Error(`There are more than the ${MOST} files that a book may have.`);
  }
  return files;
};

const hashes = (files: Readonly<Record<string, string>>): Seen =>
  Object.fromEntries(Object.entries(files).map(([name, text]) => [name, hash(text)]));

const directories = new WeakMap<Folder, Directory>();

/** The folder of the disk behind one that was opened here. */
export const directoryOf = (folder: Folder): Directory | undefined => directories.get(folder);

/**
 * @param id what drafts of this book go by: folders of the same name are no same book
 */
export const directoryFolder = (directory: Directory, id: string = `folder ${randomId()}`): Folder => {
  const folder = inDirectory(directory, id);
  directories.set(folder, directory);
  return folder;
};

const inDirectory = (directory: Directory, id: string): Folder => {
  let known: Seen = {};
  /** What is other than it was known, which is known from now on. */
  const news = (files: Readonly<Record<string, string>>): FolderChange | undefined => {
    const now = hashes(files);
    const changed = Object.keys(files).filter((name) => now[name] !== known[name]);
    const gone = Object.keys(known).filter((name) => !(name in now));
    known = now;
    if (changed.length + gone.length === 0) return undefined;
    const told = [...changed.map((name) => [name, files[name] ?? null]), ...gone.map((name) => [name, null])];
    return { files: Object.fromEntries(told) as FolderChange['files'], seen: now };
  };
  return {
    open: async () => {
      const files = await readAll(directory);
      known = hashes(files);
      return { name: directory.name, id, book: bookOf(files), seen: known, canSave: true };
    },
    save: async (files, seen) => {
      const there = await readAll(directory);
      const now = hashes(there);
      const others = Object.keys(files).filter((name) => now[name] !== seen[name]);
      if (others.length > 0) {
        const theirs = Object.fromEntries(others.map((name) => [name, there[name] ?? null]));
        const hashed = others.flatMap((name) => (now[name] === undefined ? [] : [[name, now[name]] as const]));
        return { kind: 'conflict', theirs, seen: Object.fromEntries(hashed) };
      }
      const written: Record<string, string> = {};
      for (const [name, text] of Object.entries(files)) {
        const whole = withEndsOf(there[name] ?? '', text);
        // The browser writes beside, and puts the file in its place when it is whole.
        const out = await (await directory.getFileHandle(name, { create: true })).createWritable();
        await out.write(whole);
        await out.close();
        written[name] = whole;
      }
      const saved = hashes(written);
      known = { ...known, ...saved };
      return { kind: 'saved', seen: saved };
    },
    follow: ({ changed, lost, found }) => {
      let isLost = false;
      const look = async (): Promise<void> => {
        try {
          const change = news(await readAll(directory));
          if (isLost) found();
          isLost = false;
          if (change) changed(change);
        } catch {
          if (!isLost) lost();
          isLost = true;
        }
      };
      const timer = setInterval(() => {
        if (document.visibilityState === 'visible') void look();
      }, LOOK);
      return () => clearInterval(timer);
    },
  };
};

/** The folder again that was opened before, if whoever sits there still lets it be written. */
export const directoryAgain = async (directory: Directory, id: string): Promise<Folder | undefined> => {
  const may = (await directory.requestPermission?.({ mode: 'readwrite' })) ?? 'granted';
  return may === 'granted' ? directoryFolder(directory, id) : undefined;
};

/** Lets choose a folder and opens it; nothing when no folder was chosen. */
export const chooseFolder = async (): Promise<Folder | undefined> => {
  try {
    const directory = await pickers.showDirectoryPicker?.({ id: 'book', mode: 'readwrite' });
    return directory && directoryFolder(directory);
  } catch (error) {
    if (error instanceof DOMException && error.name === 'AbortError') return undefined;
    throw error;
  }
};

/** Files that were chosen or dropped, where the browser cannot write into a folder. */
export const filesFolder = async (chosen: Iterable<File>): Promise<Folder> => {
  const files: Record<string, string> = {};
  for (const file of chosen) {
    if (!isBookFile(file.name)) continue;
    if (file.size > LARGEST) throw new Error(`${file.name} is larger than the 2 MiB that a book's file may have.`);
    files[file.name] = await file.text();
  }
  const book = bookOf(files);
  // Files of the same name are no same book: what they hold when they are opened tells them apart.
  return looseFolder(
    book.main,
    `file ${book.main} ${hash(JSON.stringify(Object.entries(hashes(files)).toSorted()))}`,
    book,
  );
};

/** Hands a text to the browser's downloads. */
export const download = (name: string, text: string): void => {
  const link = document.createElement('a');
  const address = URL.createObjectURL(new Blob([text], { type: 'application/yaml' }));
  link.href = address;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
};

/** Saves a book that lies nowhere yet: into a folder that is chosen, or as downloads. */
export const saveElsewhere = async (book: BookText): Promise<Folder | 'downloaded' | undefined> => {
  if (!canOpenFolders()) {
    for (const [name, text] of Object.entries(book.files)) download(name, text);
    return 'downloaded';
  }
  const folder = await chooseFolder();
  if (!folder) return undefined;
  const saved = await folder.save(book.files, {});
  if (saved.kind === 'conflict')
    throw new Error(`That folder holds ${Object.keys(saved.theirs).join(', ')} already. Choose an empty one.`);
  if (saved.kind === 'refused') throw new Error(saved.says);
  return folder;
};
