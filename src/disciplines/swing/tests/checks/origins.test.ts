/** Every number behind a finding says what it is, and where in the book or in which source it stands. */
import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { house } from '../../../../app/index.ts';
import { checkBook } from '../../../../app/testing.ts';
import type { Edit } from '../../../../kernel/index.ts';
import { base } from '../base.ts';

const root = new URL('../../../../../', import.meta.url).pathname;
const sources = new Set(readdirSync(`${root}sources`).map((file) => file.replace(/\.json$/, '')));
const machine = checkBook(base);

const at = (path: string, text: string | null): Edit => ({ path, text });

describe.each([
  ['as it is', []],
  ['with a cup', [at('axes.z.dock.kind', 'cup')]],
  [
    'of which little is said',
    [at('hanging.dwell', null), at('hanging.head', null), at('axes.z.dock.misses', null), at('axes.x.jerk', '1 m/s³')],
  ],
] as const)('law: a book %s', (_, edits) => {
  const changed = edits.length === 0 ? machine : checkBook(machine.editedTexts(edits).get(machine.book.main)!);
  const findings = changed.findings.filter(({ sheet }) => sheet === 'swing');
  const inputs = findings.flatMap(({ working }) => working.flatMap((entry) => entry.inputs));

  it('has constants that say what they are, by sources that are there', () => {
    const constants = inputs.flatMap(({ from }) => (from.kind === 'constant' ? [from] : []));
    expect(constants.length).toBeGreaterThan(3);
    for (const { means, source } of constants) {
      expect(means).toMatch(/\p{L}{2}/u);
      if (source) expect(sources).toContain(source.id);
    }
  });

  it('has facts that stand at a key of the book', () => {
    const paths = inputs.flatMap(({ from }) => (from.kind === 'book' ? [from.path] : []));
    expect(paths.length).toBeGreaterThan(20);
    for (const path of paths) expect(house.schema.keyInfo(path, changed.snapshot.tree), path).toBeDefined();
  });
});
