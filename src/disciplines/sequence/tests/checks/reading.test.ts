/** What a book with a wrong chart gets: place, what is wrong and the nearest name. */
import { describe, expect, it } from 'vitest';
import { frameOf } from '../../../../engine/read/frame.ts';
import { base } from '../base.ts';
import { house } from '../house.ts';

const problemsOf = (text: string) => {
  const read = house.read((name) => (name === 'book.yaml' ? text : undefined), 'book.yaml');
  return read.ok ? [] : read.problems;
};
const lineOf = (text: string, part: string): number => text.slice(0, text.indexOf(part)).split('\n').length;

describe('a chart', () => {
  it('that is in order has no problems', () => expect(problemsOf(base)).toEqual([]));

  it.each([
    [
      'an unknown target',
      'done: x, target: ready',
      'done: x, target: redy',
      'redy',
      'There is no state "redy".',
      'Did you mean ready?',
    ],
    [
      'an initial state that is not there',
      'initial: waking',
      'initial: wakin',
      'wakin',
      'The initial state "wakin" is not there.',
      'Did you mean waking?',
    ],
    [
      'an initial state that cannot be reached from its compound',
      'initial: homing-z',
      'initial: aimin',
      'aimin',
      '"aimin" is no state inside running.',
      'Did you mean aiming?',
    ],
    [
      'a condition on an unknown signal',
      'cond: { on: [S9] }',
      'cond: { on: [S99] }',
      'S99',
      'There is no signal "S99" in the book.',
      'Did you mean S9?',
    ],
    [
      'an event of an unknown signal',
      'on: S14, target: service',
      'on: S41, target: service',
      'S41',
      'There is no signal "S41" in the book.',
      undefined,
    ],
    [
      'an action on an axis that does not exist',
      '{ hoist: z }',
      '{ hoist: zz }',
      'zz',
      'There is no axis "zz" in the book.',
      'Did you mean z?',
    ],
    [
      'an unknown counter',
      '{ done: z, target: carrying }',
      '{ done: z, cond: { below: { tries: 1 } }, target: carrying }',
      '1',
      'There is no counter "tries".',
      undefined,
    ],
    [
      'two triggers',
      '{ done: x, target: ready }',
      '{ done: x, after: 2 s, target: ready }',
      '2 s',
      'A transition waits for one thing, not for done and after.',
      undefined,
    ],
    [
      'a transition without any',
      '{ done: x, target: ready }',
      '{ target: ready }',
      '{ target',
      'This transition would be taken at once, always.',
      undefined,
    ],
    [
      'a move without a place',
      '{ move: x, to: min }',
      '{ move: x }',
      'x',
      '"move" does not say to where.',
      'to: min, between, max.',
    ],
    [
      'a lamp that goes to an end',
      '{ lamp: H3, to: on }',
      '{ lamp: H3, to: max }',
      'max',
      '"lamp" cannot go to max.',
      'on, off would do.',
    ],
    [
      'two verbs in one step',
      '{ hoist: z }',
      '{ hoist: z, jog: x }',
      '{ hoist',
      'Two things are done in one step: jog and hoist.',
      undefined,
    ],
    [
      'a motion outside of an entry',
      'onexit: [{ drives: off }]',
      'onexit: [{ jog: x }]',
      'x',
      '"jog" stands outside of onentry.',
      undefined,
    ],
    [
      'a state inside itself',
      'in: running\n      play: ended',
      'in: dropping\n      play: ended',
      'dropping',
      '"dropping" stands inside itself.',
      undefined,
    ],
    [
      'a unit that is missing',
      'after: 10 s, target: lowering',
      'after: 10, target: lowering',
      '10',
      '"10" has no unit.',
      undefined,
    ],
  ])('with %s', (_, right, wrong, marked, what, allowed) => {
    const text = base.replace(right, wrong);
    const problems = problemsOf(text);
    const found = problems.find((one) => one.what === what);
    expect(found, JSON.stringify(problems.map((one) => one.what))).toBeDefined();
    if (allowed !== undefined) expect(found!.allowed).toContain(allowed);
    const line = text.split('\n')[found!.place.line - 1]!;
    expect(line.slice(found!.place.column - 1)).toMatch(new RegExp(`^${marked.replaceAll(/[{}\\]/g, '\\$&')}`));
    expect(found!.place.line).toBeGreaterThanOrEqual(lineOf(text, wrong));
    expect(frameOf(found!, new Map([['book.yaml', text]]))).toContain('^');
  });

  it('with several mistakes gets all of them at once', () => {
    const text = base
      .replace('target: ready }', 'target: redy }')
      .replace('{ after: 500 ms, target: homing-z }', '{ after: 500 ms, target: homing }');
    expect(problemsOf(text).map(({ what }) => what)).toEqual([
      'There is no state "homing".',
      'There is no state "redy".',
    ]);
  });
});
