/** What must hold for every trade in the registry. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { house } from '../src/app/index.ts';
import { checkBook } from '../src/app/testing.ts';
import type { CheckCases } from '../src/contract/index.ts';
import { registry } from '../src/disciplines/registry.ts';

const root = new URL('..', import.meta.url).pathname;
const folderOf = (name: string): string => join(root, 'src/disciplines', name);
const sources = new Set(readdirSync(join(root, 'sources')).map((file) => file.replace(/\.json$/, '')));

/** Codes that were used once and are gone; a code never comes back with another meaning. */
const retired: readonly string[] = [];

it('every trade has a name, a number and codes of its own', () => {
  const unique = (list: readonly unknown[]) => expect(new Set(list).size).toBe(list.length);
  unique(registry.map(({ name }) => name));
  unique(registry.map(({ number }) => number));
  const codes = registry.flatMap(({ checks }) => checks.map(({ code }) => code));
  unique(codes);
  for (const code of codes) expect(retired).not.toContain(code);
  unique(registry.flatMap(({ formulas }) => formulas.map(({ declared }) => declared.name)));
  unique(registry.flatMap(({ facts }) => facts.map(({ token }) => token.name)));
});

/** Kinds of entries that may stand with nothing in them. */
const bare = ['modes', 'loads', 'fuses', 'cables', 'motors', 'drivers', 'supplies'];
/** Everything joined to everything, and nothing known of any of it. */
const joined = (head: string): string =>
  `${head}axes: { x: { drive: belt, motors: [M1] } }\nmotors: { M1: { driver: D1 } }\ndrivers: { D1: { rail: R, fuse: F1, cable: W1 } }\nfuses: { F1: { cable: W1 } }\ncables: { W1: {} }\nsupplies: { G1: { rails: { R: {} } } }\nmodes: { play: { moving: [x] } }\nloads: { L1: { rail: R, fuse: F1 } }\n`;

describe.each(registry.map((trade) => [trade.name, trade] as const))('%s', (name, trade) => {
  const readme = readFileSync(join(folderOf(name), 'README.md'), 'utf8');

  it('names its codes after itself and tells of each in its README', () => {
    for (const { code } of trade.checks) {
      expect(code).toMatch(new RegExp(`^${name.toUpperCase()}-\\d{3}$`));
      expect(readme, `README of ${name}`).toContain(code);
    }
  });

  it('has a holding and a failing case for every check, and an open one where a fact behind it can be doubtful', async () => {
    const { base, cases } = (await import(join(folderOf(name), 'tests/cases.ts'))) as CheckCases;
    const machine = checkBook(base);
    const seen = new Map<string, Set<string>>();
    const doubtful = new Set<string>();
    for (const { finding: key, verdict, edits, because } of cases) {
      const texts = machine.editedTexts(edits);
      const found = checkBook(texts.get(machine.book.main) ?? base).findings.find((one) => one.key === key);
      expect(
        found?.verdict,
        `${key}, ${because}: ${found?.sentence ?? 'no such finding'} ${found?.reason?.text ?? ''}`,
      ).toBe(verdict);
      const code = key.split(/[/@]/)[0]!;
      seen.set(code, (seen.get(code) ?? new Set()).add(verdict));
      for (const path of found!.uses)
        if (house.schema.keyInfo(path, machine.snapshot.tree)?.range === 'doubt') doubtful.add(code);
    }
    for (const { code } of trade.checks) {
      const verdicts = [...(seen.get(code) ?? [])];
      expect(verdicts, `${code} has a case that holds`).toContain('holds');
      expect(verdicts, `${code} has a case that fails`).toContain('fails');
      if (doubtful.has(code)) expect(verdicts, `${code} has a case that is open`).toContain('open');
    }
  });

  it('has a sheet for a book that says next to nothing', () => {
    const head = 'book: 1\ntitle: Young\nrevision: A\n';
    const kinds = [
      'axes: { x: { drive: belt }, z: { drive: hoist } }',
      ...bare.map((kind) => `${kind}: { ${kind}-1: {} }`),
    ];
    for (const text of [head, `${head}${kinds.join('\n')}\nhanging: {}\nenclosure: {}\nsite: {}\n`, joined(head)]) {
      const machine = checkBook(text);
      for (const studies of ['later', 'run'] as const)
        expect(machine.sheet(name, studies).document.blocks.length, name).toBeGreaterThan(0);
    }
  });

  it('cites only sources that are there, and every formula cites one', () => {
    for (const { declared } of trade.formulas) {
      expect(declared.source.length, `${declared.name} cites a source`).toBeGreaterThan(0);
      for (const { id } of declared.source) expect(sources, `${declared.name} cites ${id}`).toContain(id);
      for (const { source } of declared.checked) if (source) expect(sources).toContain(source.id);
    }
  });

  it('says what stands behind every formula, and memory is not counted as evidence', () => {
    for (const { declared } of trade.formulas)
      expect(
        declared.checked.filter(({ kind }) => kind !== 'memory').length,
        `${declared.name} has evidence`,
      ).toBeGreaterThan(0);
  });

  it('has cautions', () => expect(trade.cautions.length).toBeGreaterThan(0));
});

it('every source says what was read and by which copy', () => {
  for (const id of sources) {
    const source = JSON.parse(readFileSync(join(root, 'sources', `${id}.json`), 'utf8')) as Record<string, string>;
    expect(source['id']).toBe(id);
    for (const key of ['title', 'read', 'copy', 'status']) expect(source[key], `${id}: ${key}`).toBeTruthy();
    expect(['published', 'published-secondary', 'memory', 'own-derivation']).toContain(source['status']);
  }
});
