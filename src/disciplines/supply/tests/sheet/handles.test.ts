import { describe, expect, it } from 'vitest';
import { checkBook } from '../../../../app/testing.ts';
import { heldOn, misleading } from '../../../motion/tests/sheet/handles.ts';
import { base } from '../base.ts';

const bare = (text: string): string => text.replace(/^[FT] /, '');
const held = (book: string) => heldOn(checkBook(book), 'supply');
const paths = (book: string): readonly string[] => held(book).map(({ path }) => path);

const ranges = base
  .replace('volts: 24 V', 'volts: 24 V ±2%')
  .replace('duty: 70 %', 'duty: 60..75 %')
  .replace('winding-temperature: 60 degC', 'winding-temperature: 10..80 degC');

describe('what can be taken hold of', () => {
  it.each([
    ['exact facts', base],
    ['ranges', ranges],
  ])('is a fact of the book and shows what it says: %s', (_name, book) => {
    const all = held(book);
    expect(all.length).toBeGreaterThan(15);
    expect(misleading(all, bare)).toEqual([]);
  });

  it('are the main facts of rails, motors, fuses and modes', () => {
    expect(paths(ranges)).toEqual(
      expect.arrayContaining([
        'supplies.G1.part',
        'supplies.G1.rails.24V.volts',
        'supplies.G1.rails.24V.limit',
        'supplies.G3.rails.claw.limit',
        'motors.M1.winding-temperature',
        'motors.M1.driver',
        'fuses.F1.rating',
        'modes.standing-by.duty',
      ]),
    );
  });

  it('finds a rail whose name holds a dot', () => {
    const dotted = base.replace('rails: { claw:', 'rails: { 5.5V:').replace('rail: claw', 'rail: 5.5V');
    const all = held(dotted);
    expect(all.map(({ path }) => path)).toContain('supplies.G3.rails.5.5V.limit');
    expect(misleading(all, bare)).toEqual([]);
  });

  it('is nothing that is worked out or not stated', () => {
    const silent = base.replace('{ volts: 24 V, limit: 4.2 A }', '{ volts: 24 V }').replace('duty: 70 %', 'idle: true');
    const found = paths(silent);
    expect(found).toContain('supplies.G1.rails.24V.volts');
    expect(found).not.toContain('supplies.G1.rails.24V.limit');
    expect(found).toContain('modes.aiming.duty');
    expect(found).not.toContain('modes.standing-by.duty');
  });
});
