import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { frameOf } from '../index.ts';
import { readFiles } from './sample.ts';

const examples = fileURLToPath(new URL('../../../../examples/broken-on-purpose/', import.meta.url));

const filesOf = (folder: string): Readonly<Record<string, string>> =>
  Object.fromEntries(
    readdirSync(folder, { recursive: true, encoding: 'utf8' })
      .filter((name) => name.endsWith('.yaml'))
      .map((name) => [name.replaceAll('\\', '/'), readFileSync(`${folder}/${name}`, 'utf8')]),
  );

const messageOf = (folder: string): string => {
  const files = filesOf(folder);
  const result = readFiles(files);
  if (result.ok) return 'it was read';
  return `${result.problems.map((problem) => frameOf(problem, new Map(Object.entries(files)))).join('\n\n')}\n`;
};

const names = readdirSync(examples);

describe('a book that is broken on purpose', () => {
  it.each(names)('is refused in so many words: %s', (name) => {
    expect(existsSync(`${examples}${name}/book.yaml`)).toBe(true);
    expect(messageOf(`${examples}${name}`)).toBe(readFileSync(`${examples}${name}/expected.txt`, 'utf8'));
  });

  it('stands in a folder for each way in which a book can be broken', () => {
    expect(names.length).toBeGreaterThan(50);
  });

  it('is refused in lines of at most a hundred columns', () => {
    const lines = names.flatMap((name) => readFileSync(`${examples}${name}/expected.txt`, 'utf8').split('\n'));
    expect(lines.filter((line) => line.length > 100)).toEqual([]);
  });
});
