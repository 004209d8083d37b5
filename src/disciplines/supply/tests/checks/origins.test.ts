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
  [
    'with hot insulation, conductors in parallel and no stated wire',
    [
      at('parts.hook-up.insulation', 'XLPE 90'),
      at('cables.W1.parallel', '2'),
      at('parts.hook-up.resistance-per-length', null),
    ],
  ],
  [
    'in full steps, powered while nobody plays, with eight leads',
    [
      at('drivers.D1.microsteps', '1'),
      at('drivers.D1.standing-by', 'powered'),
      at('drivers.D1.standstill-current', '100 %'),
      at('parts.stepper-23.leads', '8'),
      at('parts.stepper-23.measured-as', 'half'),
      at('motors.M1.winding', 'series'),
      at('motors.M2.winding', 'parallel'),
    ],
  ],
  [
    'with a servo that is never on, and a rail that nothing hangs on',
    [at('loads.servo.modes', '[]'), at('supplies.G2.rails.spare', '{ volts: 3 V, limit: 1 A }')],
  ],
] as const)('law: a book %s', (_, edits) => {
  const changed = edits.length === 0 ? machine : checkBook(machine.editedTexts(edits).get(machine.book.main)!);
  const findings = changed.findings.filter(({ sheet }) => sheet === 'supply');
  const inputs = findings.flatMap(({ working }) => working.flatMap((entry) => entry.inputs));

  it('has constants that say what they are, by sources that are there', () => {
    const constants = inputs.flatMap(({ from }) => (from.kind === 'constant' ? [from] : []));
    expect(constants.length).toBeGreaterThan(10);
    for (const { means, source } of constants) {
      expect(means).toMatch(/\p{L}{2}/u);
      if (source) expect(sources).toContain(source.id);
    }
  });

  it('has facts that stand at a key of the book', () => {
    const paths = inputs.flatMap(({ from }) => (from.kind === 'book' ? [from.path] : []));
    expect(paths.length).toBeGreaterThan(30);
    for (const path of paths) expect(house.schema.keyInfo(path, changed.snapshot.tree), path).toBeDefined();
  });
});
