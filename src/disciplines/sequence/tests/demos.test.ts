import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parse, stringify } from 'yaml';
import { catalogue } from '../../../app/catalogue.ts';
import { checkBook } from '../../../app/testing.ts';
import { createHouse } from '../../../engine/machine.ts';
import { registry } from '../../registry.ts';
import { sequence } from '../index.ts';

interface Part {
  readonly signals?: Readonly<Record<string, object>>;
  readonly sequence?: object;
}

const others = registry.filter(({ name }) => name !== sequence.name);
const house = createHouse({ disciplines: [...others, sequence], catalogue });
const textOf = (path: string): string => readFileSync(new URL(path, import.meta.url), 'utf8');

/** A book of the examples with its cycle; one fault at a time, which is searched in a moment. */
const demo = (name: string) => {
  const book = parse(textOf(`../../../../examples/${name}/book.yaml`)) as Part;
  const added = parse(textOf(`demos/${name}.yaml`)) as Part;
  const cycle = { ...added.sequence, faults: { 'at-most': 1 } };
  const whole = { ...book, signals: { ...book.signals, ...added.signals }, sequence: cycle };
  return checkBook(stringify(whole), house).findings.filter(({ sheet }) => sheet === sequence.name);
};

describe('the demonstrations', () => {
  it('as they came to be: the cycle cannot hang, whatever one fault does', () => {
    const findings = demo('tidepool');
    expect(findings.filter(({ verdict }) => verdict === 'fails').map(({ key }) => key)).toEqual([]);
    expect(findings.filter(({ verdict }) => verdict === 'holds').length).toBeGreaterThan(8);
  });

  it('as first drawn: it hangs, runs into an end, and lets the load go', () => {
    const codes = demo('tidepool-first-draft').flatMap(({ code, verdict }) => (verdict === 'fails' ? [code] : []));
    expect(codes).toEqual(expect.arrayContaining(['SEQUENCE-010', 'SEQUENCE-030', 'SEQUENCE-050', 'SEQUENCE-070']));
  });
});
