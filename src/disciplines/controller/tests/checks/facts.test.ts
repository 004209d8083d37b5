/** What the other trades are told, as they would ask for it. */
import { describe, expect, it } from 'vitest';
import { catalogue } from '../../../../app/catalogue.ts';
import { checkBook } from '../../../../app/testing.ts';
import type { Context, Discipline, FactToken } from '../../../../contract/index.ts';
import { createHouse } from '../../../../engine/machine.ts';
import { motion } from '../../../motion/index.ts';
import { assignment, believedAfter, BOARD, boardName, pinOf, stepRate, steppingShare, stepTicks } from '../../facts.ts';
import { controller } from '../../index.ts';
import { base } from '../base.ts';

/** A trade that asks for one fact when its sheet is made. */
const told = <T>(token: FactToken<T>, key: string, book = base): T => {
  let answer: { readonly value: T } | undefined;
  const listener: Discipline = {
    ...controller,
    name: 'listener',
    number: 99,
    schema: {},
    fills: () => [],
    facts: [],
    checks: [],
    makes: () => [],
    sheet: (context: Context<never>) => {
      answer = { value: context.get(token, key) };
      return { blocks: [] };
    },
  };
  checkBook(book, createHouse({ disciplines: [motion, controller, listener], catalogue })).sheet('listener');
  return answer!.value;
};

describe('the board tells other trades', () => {
  it('the pin of a signal, and by whom it was placed', () => {
    expect(told(pinOf, 'S9')).toMatchObject({ pin: 'A8', number: 62, port: 'PK0', way: 'in', why: 'given' });
    expect(told(pinOf, 'S1')).toMatchObject({ pin: '30', why: 'landed' });
    expect(told(pinOf, 'reader-tx')).toMatchObject({
      pin: '18',
      why: 'chosen',
      from: { kind: 'buses', name: 'reader' },
    });
  });

  it('all pins at once, or what cannot be had together', () => {
    const found = told(assignment, BOARD);
    expect(found.ok && found.pins).toHaveLength(16);
    expect(told(assignment, BOARD, base.replace('P1: 9', 'P1: 44'))).toEqual({
      ok: false,
      clash: ['the servo pulses', 'P1'],
    });
  });

  it('its name, and the budget of its stepping interrupt', () => {
    expect(told(boardName, BOARD)).toBe('ATmega2560');
    expect(told(stepTicks, BOARD)).toMatchObject({ number: 20e3, of: 'frequency' });
    expect(told(stepRate, 'x').number).toBeCloseTo(8800, 6);
    // 100 + 2 · 50 cycles of the 800 between two interrupts.
    expect(told(steppingShare, BOARD).number).toBeCloseTo(0.25, 12);
  });

  it('after which time a contact is believed: its own, or that of all', () => {
    expect(told(believedAfter, 'S1').number).toBeCloseTo(0.006, 12);
    expect(told(believedAfter, 'S8').number).toBeCloseTo(0.005, 12);
  });
});
