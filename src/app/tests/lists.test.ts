import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readEntry } from '../../engine/read/leaves.ts';
import { catalogue } from '../catalogue.ts';
import { formulasOf, house } from '../index.ts';
import { sources } from '../sources.ts';

const folder = (name: string): URL => new URL(`../../../${name}/`, import.meta.url);
const jsonIn = (name: string): { readonly file: string; readonly json: unknown }[] =>
  readdirSync(folder(name))
    .filter((file) => file.endsWith('.json'))
    .map((file) => ({ file, json: JSON.parse(readFileSync(new URL(file, folder(name)), 'utf8')) as unknown }));

// After a file is added or taken away: node scripts/lists.mjs
describe('the lists hold every file of their folders', () => {
  it('sources, each under its own id', () => {
    const files = jsonIn('sources');
    expect(files.length).toBeGreaterThan(0);
    expect([...sources.keys()].sort()).toEqual(files.map(({ file }) => file.replace(/\.json$/, '')).sort());
    for (const { json } of files) expect([...sources.values()]).toContainEqual(json);
  });

  it('catalogue rows, each name once, each with a source that exists', () => {
    const rows = jsonIn('catalogue').flatMap(({ json }) => json as readonly { readonly name: string }[]);
    expect(catalogue.map(({ name }) => name).sort()).toEqual(rows.map(({ name }) => name).sort());
    expect(new Set(catalogue.map(({ name }) => name)).size).toBe(catalogue.length);
    expect(catalogue.filter(({ source }) => !sources.has(source.id))).toEqual([]);
  });

  it('catalogue rows that can be read as parts of a book', () => {
    for (const { name, kind, keys } of catalogue)
      expect(
        () => readEntry(house.schema.zod, 'parts', { kind, ...keys }, { provenance: 'table' }),
        `row ${name} of the catalogue`,
      ).not.toThrow();
  });
});

describe('formulas', () => {
  it('are found by name', () => {
    const all = formulasOf(house);
    expect(all.size).toBeGreaterThan(0);
    for (const [name, formula] of all) expect(formula.declared.name).toBe(name);
  });

  it('cannot share a name', () => {
    const [formula] = formulasOf(house).values();
    if (!formula) throw new Error('there is no formula');
    const twin = Object.assign(() => 0, formula, { declared: { ...formula.declared } });
    const trade = { formulas: [formula, twin] } as never;
    expect(() => formulasOf({ disciplines: [trade] })).toThrow(`two formulas are named ${formula.declared.name}`);
  });
});
