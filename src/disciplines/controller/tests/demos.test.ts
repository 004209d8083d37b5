import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parse, stringify } from 'yaml';
import { catalogue } from '../../../app/catalogue.ts';
import { checkBook } from '../../../app/testing.ts';
import { createHouse } from '../../../engine/machine.ts';
import { registry } from '../../registry.ts';
import { controller } from '../index.ts';

type Table = Readonly<Record<string, object>>;
interface Part {
  readonly drivers?: Table;
  readonly signals?: Table;
}

const others = registry.filter(({ name }) => name !== controller.name);
const house = createHouse({ disciplines: [...others, controller], catalogue });
const textOf = (path: string): string => readFileSync(new URL(path, import.meta.url), 'utf8');

/** A book of the examples with what this trade adds to it. */
const demo = (name: string, drivers: object) => {
  const book = parse(textOf(`../../../../examples/${name}/book.yaml`)) as Part;
  const added = parse(textOf(`demos/${name}.yaml`)) as Part;
  const whole = {
    ...book,
    ...added,
    drivers: Object.fromEntries(Object.entries(book.drivers ?? {}).map(([key, one]) => [key, { ...one, ...drivers }])),
  };
  return checkBook(stringify(whole), house);
};
const codesThat = (machine: ReturnType<typeof demo>, verdict: string): string[] => [
  ...new Set(
    machine.findings.flatMap((one) => (one.sheet === controller.name && one.verdict === verdict ? [one.code] : [])),
  ),
];

describe('the demonstrations', () => {
  it('as they came to be: every signal has its pin, and nothing fails', () => {
    const machine = demo('tidepool', { 'enabled-by': 'K1', 'input-current': '8..12 mA', 'least-high': '3.5 V' });
    expect(codesThat(machine, 'fails')).toEqual([]);
    expect(codesThat(machine, 'holds').length).toBeGreaterThan(15);
  });

  it('as first drawn: what people get wrong fails', () => {
    const machine = demo('tidepool-first-draft', {
      'at-reset': 'active',
      'input-current': '8..12 mA',
      'enable-when': 'low',
    });
    expect(codesThat(machine, 'fails')).toEqual(
      expect.arrayContaining(['CONTROLLER-010', 'CONTROLLER-030', 'CONTROLLER-070', 'CONTROLLER-120']),
    );
  });
});
