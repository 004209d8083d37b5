import { expect, it } from 'vitest';
import { catalogue } from '../../../../app/catalogue.ts';
import { checkBook, find } from '../../../../app/testing.ts';
import { leastLoad } from '../references/supply.ts';

it('a supply of an office computer that feeds motors only is below the least load of its 5 V', () => {
  const machine = checkBook(`book: 1
title: Motors only
revision: A
supplies: { G1: { part: office-computer-300W, rails: { 12V: { volts: 12 V, limit: 8 A }, 5V: { volts: 5 V, limit: 20 A } } } }
loads: { motors: { rail: 12V, current: 3 A } }
`);
  expect(find(machine, 'SUPPLY-030/5V')).toMatchObject({
    verdict: 'fails',
    demand: { number: 0 },
    limit: { number: leastLoad.amperes },
  });
  expect(find(machine, 'SUPPLY-030/12V').verdict).toBe('holds');
});

const supplies = catalogue.filter(({ kind }) => kind === 'supply');

it('every supply of the catalogue can be named, and bears half of its power', () => {
  const rows = supplies.map(({ name, keys }, k) => {
    const half = Number(String(keys['power']).replace(' W', '')) / 2;
    return {
      supply: `  G${k + 1}: { part: ${name}, rails: { rail-${k + 1}: { volts: 24 V, limit: 20 A } } }`,
      load: `  load-${k + 1}: { rail: rail-${k + 1}, power: ${half} W }`,
    };
  });
  const machine = checkBook(
    [
      'book: 1\ntitle: Shelf\nrevision: A\nsite: { ambient: 10..30 degC }\nsupplies:',
      ...rows.map(({ supply }) => supply),
      'loads:',
      ...rows.map(({ load }) => load),
      '',
    ].join('\n'),
  );
  expect(supplies.length).toBeGreaterThan(5);
  for (const [k] of rows.entries()) {
    expect(find(machine, `SUPPLY-020/G${k + 1}`).use?.worst).toBeCloseTo(0.5, 9);
    expect(find(machine, `SUPPLY-090/G${k + 1}`).verdict).toBe('holds');
  }
});
