import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { quantity, text } from '../../../contract/index.ts';
import { assembleSchema, type NamedPart } from '../index.ts';
import { schema, trade } from './sample.ts';

const length = quantity('length', { range: 'exact', means: 'a length', example: '3 mm' });
const part = (name: string, of: NamedPart['schema']): NamedPart => ({ name, schema: of });

describe('the keys of several trades', () => {
  it.each([
    [
      'two trades at the top',
      [part('a', { top: { pit: length } }), part('b', { top: { pit: length } })],
      /"pit" belongs to a and to b/,
    ],
    ['a trade and the topology', [part('a', { top: { motors: length } })], /"motors" belongs to the topology and to a/],
    ['an entry', [part('a', { entries: { motors: { part: length } } })], /"part" belongs to the topology and to a/],
    [
      'two trades at a variant',
      [part('a', { entries: { axes: { pit: length } } }), part('b', { entries: { 'axes/belt': { pit: length } } })],
      /axes\/belt: "pit" belongs to a and to b/,
    ],
    ['the word of the variant', [part('a', { entries: { 'axes/belt': { drive: length } } })], /"drive" belongs to/],
    ['a kind that is not there', [part('a', { entries: { wheels: { pit: length } } })], /a adds keys to wheels/],
    [
      'a variant of a kind without',
      [part('a', { entries: { 'motors/big': { pit: length } } })],
      /a adds the variant big to motors/,
    ],
  ])('are refused when they collide: %s', (_, parts, message) => {
    expect(() => assembleSchema(parts)).toThrow(message);
  });

  it('join in one entry when they do not', () => {
    const joined = assembleSchema([
      part('a', { entries: { 'axes/belt': { pit: length } } }),
      part('b', {
        entries: { 'axes/belt': { pot: length }, 'axes/screw': { pit: text({ means: 'a word', example: 'deep' }) } },
      }),
    ]);
    const fields = { book: {}, title: 't', revision: 'A' };
    const axes = { x: { drive: 'belt', pit: '1 mm', pot: '2 mm' }, y: { drive: 'screw', pit: 'deep' } };
    const parsed = joined.zod.safeParse({ ...fields, axes });
    expect(parsed.error?.issues.map(({ path }) => path.join('.'))).toEqual(['book']);
    expect(joined.keyInfo('axes.x.pit', { axes })?.means).toBe('a length');
    expect(joined.keyInfo('axes.y.pit', { axes })?.means).toBe('a word');
  });
});

describe('what a key says about itself', () => {
  it('is found by its path', () => {
    expect(schema.keyInfo('axes.x.speed')?.of).toBe('speed');
    expect(schema.keyInfo('axes.x.drum.diameter')?.means).toBe('diameter of the drum');
    expect(schema.keyInfo('parts.chain-4x0.5.holding-torque')?.range).toBe('doubt');
    expect(schema.keyInfo('axes.x.motors')?.refers).toBe('motors');
    expect(schema.keyInfo('axes.x.motors.0')?.refers).toBe('motors');
    expect(schema.keyInfo('axes.x.drive')?.words).toEqual(['belt', 'hoist', 'screw']);
    expect(schema.keyInfo('cables.W1.route.2')?.example).toBe('chain-y');
  });

  it('is nothing for maps and for keys that are not there', () => {
    for (const path of ['axes', 'axes.x', 'axes.x.drum', 'axes.x.wheels', 'wheels', ''])
      expect(schema.keyInfo(path)).toBeUndefined();
  });
});

describe('the schema for editors', () => {
  const made = schema.jsonSchema();
  const check = new Ajv2020({ strict: false, allErrors: true }).compile(made);
  const good = {
    book: 1,
    title: 'Limpet',
    revision: 'A',
    site: { ambient: '8..32 degC', open: '9 h/day' },
    axes: {
      x: {
        drive: 'belt',
        travel: '560 mm',
        'moving-mass': { is: '2.4..2.6 kg', from: 'measured' },
        motors: ['M1'],
        'pulley-teeth': 20,
      },
      z: { drive: 'hoist', drum: { diameter: '32 mm', smooth: true }, motors: 'M2', switches: { min: 'S1' } },
    },
    motors: { M1: { part: 'scrap-17' }, M2: {} },
    parts: { 'scrap-17': { kind: 'stepper', 'holding-torque': '0.3..0.5 N·m' } },
    modes: { play: { duty: 0.7 } },
  };

  it('takes a good book', () => {
    check(good);
    expect(check.errors).toBeNull();
    expect(made).toMatchObject({ $schema: 'https://json-schema.org/draft/2020-12/schema' });
  });

  it.each([
    ['an unknown key', { ...good, titel: 'x' }],
    ['an unknown key of an entry', { ...good, motors: { M1: { prat: 'scrap-17' } } }],
    ['a key of another variant', { ...good, axes: { x: { drive: 'screw', 'pulley-teeth': 20 } } }],
    ['a bare number', { ...good, axes: { x: { drive: 'belt', travel: 560 } } }],
    ['a number without a unit', { ...good, axes: { x: { drive: 'belt', travel: '1.5..2' } } }],
    ['an unknown origin', { ...good, axes: { x: { drive: 'belt', travel: { is: '5 mm', from: 'gess' } } } }],
    ['an unknown drive', { ...good, axes: { x: { drive: 'rope' } } }],
    ['a missing title', { book: 1, revision: 'A' }],
  ])('refuses %s', (_, book) => {
    expect(check(book)).toBe(false);
  });

  it('says what each key means, with an example', () => {
    const json = JSON.stringify(made);
    expect(json).toContain('"description":"greatest speed (a speed). One value, no range."');
    expect(json).toContain('"examples":["220 mm/s"]');
    expect(assembleSchema([trade]).jsonSchema()).toEqual(made);
  });
});
