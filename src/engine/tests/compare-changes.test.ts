import { describe, expect, it } from 'vitest';
import { changesBetween, changeText, settingBack } from '../compare-changes.ts';
import { base, houseOf, open } from './bench.ts';

const house = houseOf();
const tree = (text: string) => open(text, house).book.tree;
const changes = (a: string, b: string) => changesBetween(tree(a), tree(b), house.schema);
const texts = (a: string, b: string) => changes(a, b).map(changeText);
const back = (paths: readonly string[], then: string, now: string) =>
  settingBack(paths, tree(then), tree(now), house.schema).map(({ path, text }) => `${path} ${text}`);

const powered = (supplies: string): string => `${base}supplies:\n${supplies}`;
const own = 'parts: { own: { kind: board, width: 300 mm, thickness: 18 mm, stiffness: 10 GPa, bears: 40 kg } }\n';

describe('what an author changed', () => {
  it('is nothing where the same stands in other units, or texts about the book differ', () => {
    expect(texts(base, base.replace('800 mm', '0.8 m').replace('revision: A', 'revision: B'))).toEqual([]);
    expect(texts(base, base.replace('10..20 kg', '{ is: 10..20 kg, from: measured }'))).toEqual([]);
  });

  it('is a number, a word, or a yes or no, with both texts', () => {
    const other = base
      .replace('800 mm', '0.9 m')
      .replace('plank-18', 'plank-22')
      .replace('backstop: true', 'backstop: false');
    expect(texts(base, other)).toEqual([
      'shelves.top.board: plank-18 → plank-22',
      'shelves.top.span: 800 mm → 0.9 m',
      'shelves.top.backstop: true → false',
    ]);
  });

  it('is told from another kind of range or another end alone', () => {
    expect(texts(base, base.replace('1.2..1.5 m', '1.2..1.6 m'))).toEqual([
      'shelves.top.height: 1.2..1.5 m → 1.2..1.6 m',
    ]);
    expect(texts(base, base.replace('1.2..1.5 m', '1.3..1.5 m'))).toEqual([
      'shelves.top.height: 1.2..1.5 m → 1.3..1.5 m',
    ]);
  });

  it('is what only one of them states, whole entries as one', () => {
    const more = `${base.replace('    hum: 20 Hz\n', '')}  low: { board: plank-18, span: 1 m }\n`;
    expect(texts(base, more)).toEqual(['shelves.top.hum: 20 Hz, taken out', 'shelves.low: new']);
    expect(texts(more, base)).toEqual(['shelves.top.hum: 20 Hz, new', 'shelves.low: taken out']);
    expect(texts(base, base + own)).toEqual(['parts: own, new']);
    expect(texts(base + own, base + own.replace('} }', '}, two: { kind: board } }'))).toEqual([
      'parts.two: board, new',
    ]);
  });

  it('is one change where it is the same at several places', () => {
    const shelves = (...names: readonly string[]): string =>
      base + names.map((name) => `  ${name}: { board: plank-18, span: 800 mm }\n`).join('');
    const all = (text: string): string => text.replaceAll('800 mm', '900 mm');
    expect(texts(shelves('low'), all(shelves('low')))).toEqual(['shelves.top+low.span: 800 mm → 900 mm']);
    const numbered = shelves('S1', 'S2', 'S3').replace('    span: 800 mm\n', '');
    expect(texts(numbered, all(numbered))).toEqual(['shelves.S1–S3.span: 800 mm → 900 mm']);
    const gap = shelves('S1', 'S2', 'S4').replace('    span: 800 mm\n', '');
    expect(texts(gap, all(gap))).toEqual(['shelves.S1+S2+S4.span: 800 mm → 900 mm']);
    const [one] = changes(numbered, all(numbered));
    expect(one?.paths).toEqual(['shelves.S1.span', 'shelves.S2.span', 'shelves.S3.span']);
    const unlike = shelves('low').replace('span: 800 mm }', 'span: 700 mm }');
    expect(texts(unlike, all(unlike).replace('700 mm', '900 mm'))).toEqual([
      'shelves.top.span: 800 mm → 900 mm',
      'shelves.low.span: 700 mm → 900 mm',
    ]);
  });

  it('is one change where another part brings more with it', () => {
    const [a, b] = ['W1: { part: thin, length: 2 m }', 'W1: { part: thick, length: 3 m }'].map(
      (cable) => `${base}cables: { ${cable} }\nparts: { thin: { kind: board }, thick: { kind: board } }\n`,
    ) as [string, string];
    const [one, ...others] = changes(a, b);
    expect(others).toEqual([]);
    expect(one).toMatchObject({
      name: 'cables.W1.part',
      means: 'which part it is',
      paths: ['cables.W1'],
      differs: ['cables.W1.part', 'cables.W1.length'],
      before: 'thin',
      after: 'thick',
    });
    expect(texts(a, a.replace('length: 2 m', 'length: 3 m'))).toEqual(['cables.W1.length: 2 m → 3 m']);
  });

  it('is a list as a whole', () => {
    const routed = (route: string): string => `${base}cables: { W1: { route: ${route} } }\n`;
    expect(texts(routed('[here, there]'), routed('[here, yonder, there]'))).toEqual([
      'cables.W1.route: [here, there] → [here, yonder, there]',
    ]);
  });
});

describe('the edits that set something back', () => {
  it('write what stood there, and take out what did not', () => {
    const other = base.replace('800 mm', '900 mm').replace('    hum: 20 Hz\n', '');
    expect(back(['shelves.top.span', 'shelves.top.hum'], base, other)).toEqual([
      'shelves.top.hum "20 Hz"',
      'shelves.top.span "800 mm"',
    ]);
    expect(back(['shelves.top.hum'], other, base)).toEqual(['shelves.top.hum null']);
  });

  it('bring with them what is named and not there any more, before it is named', () => {
    const before = base.replace('plank-18', 'own') + own;
    expect(back(['shelves.top.board'], before, base)).toEqual([
      `parts.own { "kind": "board", "width": "300 mm", "thickness": "18 mm", "stiffness": "10 GPa", "bears": "40 kg" }`,
      'shelves.top.board "own"',
    ]);
    expect(back(['shelves.top.board'], before, base + own)).toEqual(['shelves.top.board "own"']);
    expect(back(['shelves.top.board'], base, before)).toEqual(['shelves.top.board "plank-18"']);
  });

  it('bring a rail with what it feeds', () => {
    const fed = (rail: string): string =>
      `${powered(`  G1: { rails: { ${rail}: { volts: 12 V } } }\n`)}drivers: { D1: { rail: ${rail} } }\n`;
    expect(back(['drivers.D1.rail'], fed('12V'), fed('24V'))).toEqual([
      'supplies.G1.rails.12V { "volts": "12 V" }',
      'drivers.D1.rail "12V"',
    ]);
  });

  it('leave no rail to two supplies', () => {
    const [one, two] = ['G1', 'G2'].map((name) => powered(`  ${name}: { rails: { 5V: { volts: 5 V } } }\n`)) as [
      string,
      string,
    ];
    const whole = 'supplies.G1 { "rails": { "5V": { "volts": "5 V" } } }';
    expect(back(['supplies.G1'], one, two)).toEqual(['supplies.G2 null', whole]);
    expect(back(['supplies.G1.rails.5V'], one, two)[0]).toBe('supplies.G2 null');
    expect(back(['supplies.G1.rails'], one, two)[0]).toBe('supplies.G2 null');
    expect(back(['supplies.G1'], one, one)).toEqual([whole]);
    expect(back(['supplies.G2'], one, two)).toEqual(['supplies.G2 null']);
  });
});
