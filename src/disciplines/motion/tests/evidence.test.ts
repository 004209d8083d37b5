/** What is called evidence is evidence: kinds agree with what the sources are worth, and the document names every file. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { motion } from '../index.ts';
import * as derivedAxis from './references/derived-axis.ts';
import * as derivedMotor from './references/derived-motor.ts';
import * as mechanics from './references/mechanics.ts';
import * as stepper from './references/stepper.ts';

const root = new URL('../../../../', import.meta.url).pathname;
const statusOf = (id: string): string =>
  (JSON.parse(readFileSync(join(root, 'sources', `${id}.json`), 'utf8')) as { readonly status: string }).status;

/** What a source must be worth for a kind of evidence. */
const wants: Readonly<Record<string, string>> = {
  published: 'published',
  'published-secondary': 'published-secondary',
  independent: 'own-derivation',
};

interface Keyed {
  readonly kind: string;
  readonly source: string;
}
const keyedIn = (something: unknown): readonly Keyed[] => {
  if (typeof something !== 'object' || something === null) return [];
  const inside = Object.values(something).flatMap(keyedIn);
  return 'kind' in something && 'source' in something ? [something as Keyed, ...inside] : inside;
};

describe('keyed values', () => {
  const keyed = [derivedAxis, derivedMotor, mechanics, stepper].flatMap((module) => keyedIn({ ...module }));

  it('are many', () => expect(keyed.length).toBeGreaterThan(80));

  it('have the kind that their source is worth', () => {
    for (const { kind, source } of keyed) expect(`${source}: ${statusOf(source)}`).toBe(`${source}: ${wants[kind]}`);
  });
});

it('formulas call nothing published that only a secondary page says', () => {
  for (const { declared } of motion.formulas)
    for (const { kind, source } of declared.checked)
      if (source)
        expect(`${declared.name}, ${source.id}: ${statusOf(source.id)}`).toMatch(new RegExp(`: ${wants[kind]}$`));
});

it('docs/evidence.md has a row for every file of formulas', () => {
  const document = readFileSync(join(root, 'docs/evidence.md'), 'utf8');
  const folder = join(root, 'src/disciplines/motion/calc');
  const files = readdirSync(folder).filter((file) => readFileSync(join(folder, file), 'utf8').includes('= formula({'));
  expect(files.length).toBeGreaterThan(15);
  for (const file of files) expect(document).toContain(`\`${file}\``);
});
