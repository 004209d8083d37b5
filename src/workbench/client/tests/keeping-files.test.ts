import { describe, expect, it } from 'vitest';
import type { Directory } from '../folders/drafts.ts';
import { directoryAgain, directoryFolder, directoryOf, filesFolder } from '../folders/files.ts';

const opened = async (text: string, name = 'book.yaml') => (await filesFolder([new File([text], name)])).open();

describe('files that were chosen', () => {
  it('of the same name are no same book', async () => {
    const [one, other] = [await opened('title: A'), await opened('title: B')];
    expect(one.name).toBe(other.name);
    expect(one.id).not.toBe(other.id);
    expect((await opened('title: A')).id).toBe(one.id);
  });

  it('without a book among them are refused', async () => {
    await expect(opened('x', 'notes.txt')).rejects.toThrow('There is no book here');
  });

  it('that are far too long are refused', async () => {
    await expect(opened('x'.repeat(2 * 1024 * 1024 + 1))).rejects.toThrow('2 MiB');
  });
});

describe('a folder that was chosen', () => {
  const directory = (permission: PermissionState = 'granted'): Directory => ({
    name: 'machine',
    values: async function* () {
      const file = new File(['title: A'], 'book.yaml');
      yield { kind: 'file', name: 'book.yaml', getFile: () => Promise.resolve(file) } as unknown as FileSystemHandle;
    },
    getFileHandle: () => Promise.reject(new Error('made up')),
    isSameEntry: () => Promise.resolve(false),
    requestPermission: () => Promise.resolve(permission),
  });

  it('has an id of its own, whatever its name is', async () => {
    const [one, other] = [await directoryFolder(directory()).open(), await directoryFolder(directory()).open()];
    expect(one.name).toBe(other.name);
    expect(one.id).not.toBe(other.id);
  });

  it('is opened again under the id that its draft has, where that is allowed', async () => {
    const own = directory();
    const again = await directoryAgain(own, 'folder 1');
    expect((await again?.open())?.id).toBe('folder 1');
    expect(again && directoryOf(again)).toBe(own);
    expect(await directoryAgain(directory('denied'), 'folder 1')).toBeUndefined();
  });
});
