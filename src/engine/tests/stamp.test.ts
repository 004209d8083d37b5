import { describe, expect, it } from 'vitest';
import { base, houseOf, open, rows } from './bench.ts';

const facts = (text: string, house = houseOf()) => open(text, house).sheet('shelf').factsHash;
const one = facts(base);

describe('the hash over the facts of a sheet', () => {
  it.each<[string, string]>([
    ['a number', base.replace('800 mm', '801 mm')],
    ['an end of a range', base.replace('10..20 kg', '9..20 kg')],
    ['where a fact comes from', base.replace('hum: 20 Hz', 'hum: { is: 20 Hz, from: guess }')],
    ['another part', base.replace('plank-18', 'plank-22')],
    ['that a key is there at all, whatever it says', base.replace('    backstop: true\n', '')],
    ['a fact that is no longer stated', base.replace('    hum: 20 Hz\n', '')],
    ['an entry more', `${base}  low: { board: plank-18 }\n`],
    ['a word that only a sentence shows', base.replace('backstop: true', 'backstop: true\n    note: by the door')],
    ['what is accepted', `${base}accepted: [{ finding: SHELF-010/top, because: so }]\n`],
    ['why it is accepted', `${base}accepted: [{ finding: SHELF-010/top, because: or so }]\n`],
  ])('changes with %s', (_, text) => {
    expect(facts(text)).not.toBe(one);
  });

  it('tells all of these apart', () => {
    const accept = (why: string) => facts(`${base}accepted: [{ finding: SHELF-010/top, because: ${why} }]\n`);
    expect(accept('so')).not.toBe(accept('or so'));
  });

  it.each<[string, string]>([
    ['the same in another unit', base.replace('800 mm', '0.8 m')],
    ['a comment', base.replace('# weighed', '# by scale')],
    [
      'the title and the revision, which the stamp shows by itself',
      base.replace('Pantry', 'Larder').replace('revision: A', 'revision: B'),
    ],
    ['a part that nobody uses', `${base}parts: { spare: { kind: board, width: 200 mm } }\n`],
    ['what is accepted elsewhere', `${base}accepted: [{ finding: OTHER-010/top, because: so }]\n`],
  ])('does not change with %s', (_, text) => {
    expect(facts(text)).toBe(one);
  });

  it('changes when a study on the sheet comes to something else, though the book says the same', () => {
    const stronger = rows.map((row) => ({ ...row, keys: { ...row.keys, bears: '50 kg' } }));
    expect(facts(base, houseOf({}, stronger))).not.toBe(one);
  });

  it('is the same in a fresh house, and after other books were opened', () => {
    const house = houseOf();
    facts(base.replace('800 mm', '900 mm'), house);
    expect(facts(base, house)).toBe(one);
  });
});

describe('the stamp', () => {
  const stamp = (files: Readonly<Record<string, string>>) => {
    const house = houseOf();
    const read = house.read((name) => files[name], 'book.yaml');
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    return house.open(read.book).stamp;
  };
  const parts = 'parts: { own: { kind: board } }\n';
  const whole = { 'book.yaml': `${base}include: [more.yaml]\n`, 'more.yaml': parts };

  it('holds the revision and a hash over every byte of every file', () => {
    const { revision, content } = stamp(whole);
    expect(revision).toBe('A');
    expect(content).toMatch(/^[0-9a-f]{64}$/);
    expect(stamp(whole).content).toBe(content);
    expect(stamp({ ...whole, 'more.yaml': `${parts}# a comment\n` }).content).not.toBe(content);
    expect(stamp({ ...whole, 'more.yaml': parts.replace('own', 'mine') }).content).not.toBe(content);
  });

  it('tells apart where one file ends and the next begins', () => {
    const a = stamp({ 'book.yaml': `${base}include: [a.yaml, b.yaml]\n`, 'a.yaml': '# x\n# y\n', 'b.yaml': parts });
    const b = stamp({
      'book.yaml': `${base}include: [a.yaml, b.yaml]\n`,
      'a.yaml': '# x\n',
      'b.yaml': `# y\n${parts}`,
    });
    expect(a.content).not.toBe(b.content);
  });
});
