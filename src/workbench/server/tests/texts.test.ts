import { execFileSync } from 'node:child_process';
import { mkdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { isTextName, objectionTo } from '../names.ts';
import { bookAt, textAt, textsOf } from '../texts.ts';
import { book, scratch } from './scratch.ts';

const shelf = scratch();
afterAll(shelf.remove);

const namesIn = (folder: string): readonly string[] => [...textsOf(bookAt(folder)).keys()];

describe('the texts of a book', () => {
  it('are its own file, what it includes, and what lies beside', () => {
    const folder = shelf.folder({
      'book.yaml': book('include: [deep/er/than/it/looks/motors.yaml]\n'),
      'deep/er/than/it/looks/motors.yaml': 'motors: {}\n',
      'readings.yml': 'a: 1\n',
      'parts/belts.yaml': 'b: 1\n',
      'notes.txt': 'mine',
      '.hidden.yaml': 'mine',
      '.git/config.yaml': 'mine',
      'node_modules/thing/package.yaml': 'mine',
    });
    expect(namesIn(folder)).toEqual([
      'book.yaml',
      'deep/er/than/it/looks/motors.yaml',
      'readings.yml',
      'parts/belts.yaml',
    ]);
  });

  it('are at most 64, and what the book includes is among them', () => {
    const many = Object.fromEntries(Array.from({ length: 100 }, (_, i) => [`a${i}.yaml`, 'x: 1\n']));
    const folder = shelf.folder({ ...many, 'book.yaml': book('include: [zz.yaml]\n'), 'zz.yaml': 'motors: {}\n' });
    expect(namesIn(folder)).toHaveLength(64);
    expect(namesIn(folder).slice(0, 2)).toEqual(['book.yaml', 'zz.yaml']);
    writeFileSync(join(folder, 'book.yaml'), book(`include: [${Object.keys(many).join(', ')}]\n`));
    expect(() => namesIn(folder)).toThrow('takes in more than 64 files');
  });

  it('keep a mark at the beginning and their line ends', () => {
    const text = '\ufeffbook: 1\r\ntitle: Bench\r\n';
    const at = bookAt(shelf.folder({ 'book.yaml': text }));
    expect(textAt(at, 'book.yaml')).toMatchObject({ text, isExact: true });
  });

  it('say when they are not UTF-8', () => {
    const at = bookAt(shelf.folder({ 'book.yaml': Buffer.from([0x61, 0x3a, 0x20, 0xe4, 0x0a]) }));
    expect(textAt(at, 'book.yaml')).toMatchObject({ isExact: false });
  });

  it('may be reached through a link inside the folder, and through none that leads out', () => {
    const outside = shelf.folder({ 'secret.yaml': 'secret: 1\n' });
    const folder = shelf.folder({ 'book.yaml': book(), 'real.yaml': 'a: 1\n' });
    symlinkSync('real.yaml', join(folder, 'link.yaml'));
    symlinkSync(join(outside, 'secret.yaml'), join(folder, 'out.yaml'));
    symlinkSync(outside, join(folder, 'away'));
    symlinkSync('round.yaml', join(folder, 'round.yaml'));
    expect(namesIn(folder)).toEqual(['book.yaml', 'link.yaml', 'real.yaml']);
    const at = bookAt(folder);
    expect(textAt(at, 'link.yaml')?.path).toBe(join(folder, 'real.yaml'));
    for (const name of ['out.yaml', 'away/secret.yaml'])
      expect(() => textAt(at, name)).toThrow(`${name} is a link that leads out of the book's folder`);
    expect(textAt(at, 'round.yaml')).toBeUndefined();
    writeFileSync(join(folder, 'book.yaml'), book('include: [away/secret.yaml]\n'));
    expect(() => namesIn(folder)).toThrow('leads out');
  });

  it('are not read from a folder whose name only begins alike', () => {
    const folder = shelf.folder({ 'book.yaml': book() });
    mkdirSync(`${folder}-other`);
    writeFileSync(join(`${folder}-other`, 'secret.yaml'), 'secret: 1\n');
    symlinkSync(join(`${folder}-other`, 'secret.yaml'), join(folder, 'out.yaml'));
    expect(() => textAt(bookAt(folder), 'out.yaml')).toThrow('leads out');
  });

  it('may have 2 MiB and no byte more', () => {
    const most = '#'.padEnd(2 ** 21, 'x');
    const folder = shelf.folder({ 'book.yaml': book(), 'most.yaml': most, 'more.yaml': `${most}x` });
    expect(namesIn(folder)).toEqual(['book.yaml', 'most.yaml']);
    expect(() => textAt(bookAt(folder), 'more.yaml')).toThrow('more.yaml is longer than 2 MiB');
    writeFileSync(join(folder, 'book.yaml'), book('include: [more.yaml]\n'));
    expect(() => namesIn(folder)).toThrow('more.yaml is longer than 2 MiB');
  });

  it('are files: a folder and a pipe of that name are none, and nobody waits for the pipe', () => {
    const folder = shelf.folder({ 'book.yaml': book(), 'folder.yaml/inside.txt': '' });
    execFileSync('mkfifo', [join(folder, 'pipe.yaml')]);
    expect(namesIn(folder)).toEqual(['book.yaml']);
    expect(textAt(bookAt(folder), 'pipe.yaml')).toBeUndefined();
  });
});

describe('a book', () => {
  it('is found behind a link to its folder', () => {
    const folder = shelf.folder({ 'book.yaml': book() });
    symlinkSync(folder, `${folder}-link`);
    expect(bookAt(`${folder}-link`)).toEqual({ home: folder, main: 'book.yaml' });
  });

  it.each([
    ['crane.yaml', 'There is no crane.yaml'],
    ['book.txt', 'end in .yaml or .yml'],
    ['../book.yaml', 'end in .yaml or .yml'],
    ['sub/book.yaml', 'end in .yaml or .yml'],
  ])('is not opened from %s', (main, says) => {
    expect(() => bookAt(shelf.folder({ 'book.yaml': book() }), main)).toThrow(says);
  });

  it('is not opened where there is no folder', () => {
    expect(() => bookAt(join(shelf.home, 'nowhere'))).toThrow('the folder is not there');
  });
});

describe('names', () => {
  it.each(['book.yaml', 'motors.yml', 'parts/motors.yaml', 'parts/old motors.YAML', 'größe.yaml', '日本.yaml'])(
    'such as %s are a text',
    (name) => expect(isTextName(name)).toBe(true),
  );

  it.each([
    '',
    'book',
    'book.yaml.exe',
    '/book.yaml',
    '../book.yaml',
    'a/../book.yaml',
    './book.yaml',
    'a//book.yaml',
    '.book.yaml',
    '.git/book.yaml',
    'a\\book.yaml',
    'C:book.yaml',
    'book.yaml:stream.yaml',
    'bo\0ok.yaml',
    'bo\nok.yaml',
    '\u202elmay.koob.yaml',
    '\ud800.yaml',
    'folder./book.yaml',
    `${'x'.repeat(300)}.yaml`,
    `${'a/'.repeat(20)}book.yaml`,
    '__proto__',
  ])('such as %j are none', (name) => expect(isTextName(name)).toBe(false));

  it.each(['crane', 'my-machine', 'My machine 2', 'großer-kran', 'v1.2'])('such as %s are a folder', (name) =>
    expect(objectionTo(name)).toBeUndefined(),
  );

  it.each([
    '',
    '.',
    '..',
    '../x',
    'a/b',
    'a\\b',
    '.hidden',
    ' x',
    'x ',
    'x.',
    'a\0b',
    'con',
    'NUL.txt',
    'x'.repeat(65),
  ])('such as %j are no folder, and it is said why', (name) => expect(objectionTo(name)).toMatch(/[.:]/));
});
