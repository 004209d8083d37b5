import { describe, expect, it } from 'vitest';
import { checkBook, find } from '../../../../app/testing.ts';
import type { Block } from '../../../../contract/index.ts';
import type { Edit } from '../../../../kernel/index.ts';
import { base, ownHouse } from '../base.ts';

const machine = checkBook(base, ownHouse);
const at = (path: string, text: string | null): Edit => ({ path, text });
const changed = (...edits: readonly Edit[]) =>
  checkBook(machine.editedTexts(edits).get(machine.book.main) ?? base, ownHouse);
const { document, files } = machine.sheet('controller');
const of = <K extends Block['kind']>(kind: K, blocks: readonly Block[] = document.blocks) =>
  blocks.filter((block): block is Extract<Block, { kind: K }> => block.kind === kind);
const rowsOf = (name: string, blocks?: readonly Block[]): readonly (readonly string[])[] =>
  of('table', blocks)
    .find((table) => table.name === name)!
    .rows.map((row) => row.map((cell) => (typeof cell === 'string' ? cell : cell.text)));

describe('the sheet', () => {
  it('has findings, working and cautions', () => {
    expect(of('findings')).toHaveLength(1);
    expect(of('working')).toHaveLength(1);
    expect(of('cautions')[0]!.texts.join(' ')).toMatch(/no emergency stop[\s\S]*unplugged[\s\S]*licensed/);
  });

  it('has a line for each used pin, in the order of the board', () => {
    const rows = rowsOf('pin-chart');
    expect(rows.map(([pin]) => pin)).toEqual('2 9 18 19 22 23 24 25 26 27 29 30 31 32 34 A8'.split(' '));
    expect(rows[4]).toEqual(['22', '22', 'PA0', 'D1-step', 'out', '', '', '', 'landed', 'x: a step', '']);
    expect(rows.at(-1)).toEqual(['A8', '62', 'PK0', 'S9', 'in', 'high', '', 'pull-up inside', 'by hand', 'door', '']);
  });

  it('gives the bench a table of all pins, the free ones too', () => {
    const [file] = files;
    expect(file?.name).toBe('pin-chart');
    expect(file?.rows).toHaveLength(71);
    expect(file?.rows.find(([pin]) => pin === '40')?.[3]).toBe('free');
    expect(new Set(file?.rows.map((row) => row.length))).toEqual(new Set([11]));
  });

  it('says what each timer is for, and of each value of the board what it is worth', () => {
    expect(rowsOf('timers-and-buses')).toContainEqual(['timer 5', 'the servo pulses']);
    expect(rowsOf('board')).toContainEqual(['clock', '16 MHz', 'memory', 'board-memory']);
  });

  it('adds up outputs by ports', () => {
    expect(rowsOf('currents').at(-1)?.slice(2, 4)).toEqual(['0.061 A', '0.2 A']);
  });

  it('draws each signal at its pin, and says the same in words', () => {
    const [figure] = of('figure');
    expect(figure?.svg).toMatch(/^<svg[\s\S]*<\/svg>$/);
    expect(figure?.svg).not.toMatch(/NaN|undefined/);
    expect(figure?.alt).toContain('16 of 70 pins in use');
    expect(figure?.alt).toContain('30 from S1');
    expect(figure?.alt).toContain('22 to D1-step');
  });

  it('has no chart while signals cannot be had together, and names them', () => {
    const clash = changed(at('controller.pins.P1', '44')).sheet('controller');
    const texts = of('paragraph', clash.document.blocks).map(({ text }) => text);
    expect(texts.join(' ')).toContain('cannot be had together: the servo pulses, P1');
    expect(clash.files).toEqual([]);
    expect(of('figure', clash.document.blocks)).toEqual([]);
  });

  it('asks for a board where the book names none, and asks nothing else', () => {
    const young = changed(at('controller', null));
    expect(young.findings.filter(({ sheet }) => sheet === 'controller')).toEqual([]);
    const { document: page, files: none } = young.sheet('controller');
    expect(
      of('paragraph', page.blocks)
        .map(({ text }) => text)
        .join(' '),
    ).toContain('controller: { board: ATmega2560 }');
    expect(none).toEqual([]);
  });

  it('gives no pin to a signal of which nothing tells which way it goes, and says so', () => {
    const vague = changed(at('signals.S3.about', 'what is this'));
    expect(find(vague, 'CONTROLLER-010')).toMatchObject({ verdict: 'not-stated' });
    expect(find(vague, 'CONTROLLER-010').sentence).toContain('signals.S3.kind');
    const page = vague.sheet('controller').document.blocks;
    expect(rowsOf('pin-chart', page)).toEqual(rowsOf('pin-chart'));
    expect(of('paragraph', page).map(({ text }) => text)).toContain(
      'Without a pin, because it is not stated whether they go in or out: S3.',
    );
  });
});

describe('a finding', () => {
  it('names of a clash its signals, their needs and given pins, and frees one of them', () => {
    const found = find(changed(at('controller.pins.P1', '44')), 'CONTROLLER-010');
    expect(found.sentence).toBe(
      'The ATmega2560 cannot serve the servo pulses and P1 (given pin 44, needs pwm) together; without any one of them the others find room.',
    );
  });

  it('says which wire must move, where to, and why', () => {
    const found = find(changed(at('controller.pins.K1', '30')), 'CONTROLLER-015/S1');
    expect(found.sentence).toMatch(
      /^S1 must move from pin 30 to \w+: while every wire stays there is no room for .*K1 \(given pin 30\)/,
    );
  });

  it('says that two signals have one name', () => {
    const found = find(changed(at('signals.D1-step', '{ kind: lamp }')), 'CONTROLLER-010');
    expect(found.verdict).toBe('fails');
    expect(found.sentence).toBe('Two signals are called D1-step.');
  });

  it('says of one signal alone that it cannot be served', () => {
    const found = find(changed(at('controller.pins.P1', '22')), 'CONTROLLER-010');
    expect(found.sentence).toBe('The ATmega2560 cannot serve P1 (given pin 22, needs pwm).');
  });

  it('offers the name that was meant', () => {
    const found = find(changed(at('controller.pins.D1-stp', '24')), 'CONTROLLER-005/D1-stp');
    expect(found.sentence).toContain('There is no signal D1-stp; D1-step is meant, perhaps.');
  });

  it('lists the pins that could', () => {
    const found = find(changed(at('controller.pins.S12', '22')), 'CONTROLLER-040/S12');
    expect(found.sentence).toBe('Pin 22 has no interrupt for S12: 2, 3, 18, 19, 20 and 21 can.');
  });

  it('is cured by what it proposes: the pin left to be chosen', () => {
    const broken = changed(at('controller.pins.P1', '44'));
    const [remedy] = broken.remedies('CONTROLLER-010');
    expect(remedy?.verdict).toBe('holds');
    expect(remedy?.edits).toEqual([{ path: 'controller.pins.P1', before: '44', after: null }]);
  });
});
