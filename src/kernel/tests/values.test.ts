import { describe, expect, it } from 'vitest';
import {
  atLeast,
  atMost,
  constant,
  decided,
  formula,
  given,
  greatest,
  mustBe,
  OutsideRange,
  settledWith,
  slopes,
  usage,
  usageSlopes,
} from '../index.ts';

const says = () => '';
const quotient = formula({
  name: 'test-quotient',
  gives: { symbol: 'q', of: 'ratio', means: 'quotient' },
  takes: {
    above: { symbol: 'a', of: 'length', from: 0, means: 'dividend', slope: 'up', typical: [1, 2] },
    below: {
      symbol: 'b',
      of: 'length',
      above: 0,
      means: 'divisor',
      because: 'nothing divides by nought',
      slope: 'down',
      typical: [1, 2],
    },
  },
  steps: ({ above, below }, step) => step('q', 'a/b', above / below, 'ratio'),
  assumes: [],
  source: [],
  checked: [],
  accuracy: 'exact',
});

describe('a declared formula', () => {
  it('gives the same number plainly, on values and with its steps shown', () => {
    const value = quotient.work({ above: given(3, 'length', 'a'), below: given(4, 'length', 'b') });
    expect(value.number).toBe(0.75);
    expect(quotient({ above: 3, below: 4 })).toBe(0.75);
    expect(quotient.show({ above: 3, below: 4 }).steps).toEqual([
      { symbol: 'q', text: 'a/b', number: 0.75, of: 'ratio' },
    ]);
  });

  it('refuses what lies outside its range, and what is no number', () => {
    expect(() => quotient({ above: 1, below: 0 })).toThrow(OutsideRange);
    expect(() => quotient({ above: NaN, below: 1 })).toThrow(OutsideRange);
    expect(() => quotient({ above: 1, below: Infinity })).toThrow('nothing divides by nought');
    expect(() => quotient({ above: 1e308, below: 1e-10 })).toThrow('the result is no number');
  });

  it('refuses a value of another dimension, and a missing one', () => {
    expect(() => quotient.work({ above: given(3, 'mass', 'm'), below: 1 })).toThrow('wants length, was given mass');
    expect(() => quotient.work({ below: 1 } as never)).toThrow('above is missing');
  });
});

describe('slopes', () => {
  const x = given(2, 'length', 'x');
  const y = given(3, 'length', 'y');

  it('follow every way of influence and say "either" when two disagree', () => {
    expect(slopes(quotient.work({ above: x, below: y }))).toEqual(
      new Map([
        ['x', 'up'],
        ['y', 'down'],
      ]),
    );
    expect(slopes(quotient.work({ above: x, below: x }))).toEqual(new Map([['x', 'either']]));
  });

  it('of a greatest value hold for all that it was chosen from', () => {
    const most = greatest(x, y);
    expect(most.number).toBe(3);
    expect(slopes(most)).toEqual(
      new Map([
        ['x', 'up'],
        ['y', 'up'],
      ]),
    );
  });

  it('of a usage rise with the demand and fall with the limit, the other way round for an at-least', () => {
    expect(usageSlopes(atMost(x, y, { says }))).toEqual(
      new Map([
        ['x', 'up'],
        ['y', 'down'],
      ]),
    );
    expect(usageSlopes(atLeast(x, y, { says }))).toEqual(
      new Map([
        ['x', 'down'],
        ['y', 'up'],
      ]),
    );
    expect(usageSlopes(mustBe(true, { says, because: [x] }))).toEqual(new Map([['x', 'either']]));
  });
});

describe('a slope that is known only in part', () => {
  const mean = formula({
    name: 'test-mean',
    gives: { symbol: 'm', of: 'length', means: 'mean by share' },
    takes: {
      share: {
        symbol: 's',
        of: 'ratio',
        from: 0,
        to: 1,
        because: 'a share',
        slope: 'one-way',
        means: 'share',
        typical: [0, 1],
      },
      a: { symbol: 'a', of: 'length', slope: 'up', means: 'one', typical: [1, 2] },
      b: { symbol: 'b', of: 'length', slope: 'up', means: 'other', typical: [1, 2] },
    },
    steps: ({ share, a, b }, step) => step('m', 's*a + (1 - s)*b', share * a + (1 - share) * b, 'length'),
    assumes: [],
    source: [],
    checked: [],
    accuracy: 'exact',
  });
  const [share, a, b] = [given(0.5, 'ratio', 'share'), given(1, 'length', 'a'), given(2, 'length', 'b')];
  const m = mean.work({ share, a, b });

  it('stays one-way through what rises or falls, and is not known where two of them meet', () => {
    expect(slopes(m).get('share')).toBe('one-way');
    expect(slopes(quotient.work({ above: 1, below: m })).get('share')).toBe('one-way');
    expect(slopes(quotient.work({ above: m, below: m })).get('share')).toBe('either');
    expect(slopes(mean.work({ share, a: m, b })).get('share')).toBe('either');
  });

  it('is flat where a value only decided, and gives way to what moves the number', () => {
    const limit = given(9, 'length', 'limit');
    const taken = decided(a, limit);
    expect(taken.number).toBe(1);
    expect([...slopes(taken)]).toEqual([
      ['limit', 'flat'],
      ['a', 'up'],
    ]);
    expect(slopes(quotient.work({ above: taken, below: limit })).get('limit')).toBe('down');
    expect(slopes(quotient.work({ above: limit, below: taken })).get('limit')).toBe('up');
    expect(slopes(settledWith(a, m)).get('a')).toBe('up');
    expect(slopes(settledWith(a, m)).get('b')).toBe('up');
    // What moves either way may cross the threshold within its range.
    const unsure = quotient.work({ above: m, below: m });
    expect(slopes(decided(a, unsure)).get('share')).toBe('either');
  });
});

describe('usage', () => {
  const length = (n: number) => constant(n, 'length', 'trial');
  const most = (a: number, b: number) => usage(atMost(length(a), length(b), { says }));

  it('is demand over limit, limit over actual for an at-least, rise over allowed rise above a base', () => {
    expect(most(3, 4)).toBe(0.75);
    expect(usage(atLeast(length(4), length(3), { says }))).toBe(0.75);
    expect(usage(atMost(length(350), length(380), { says, base: length(300) }))).toBe(0.625);
  });

  it('never holds on what is no number, nor on a limit of nothing', () => {
    expect(most(NaN, 1)).toBeNaN();
    expect(most(1, NaN)).toBeNaN();
    expect(most(1, 0)).toBe(Infinity);
    expect(most(1, -1)).toBe(Infinity);
    expect(usage(atLeast(length(0), length(1), { says }))).toBe(Infinity);
  });

  it('takes what is above the base from where it was worked out, and knows then how the base moves it', () => {
    const [room, rise, most] = [given(300, 'temperature', 'room'), given(50, 'temperature-difference', 'rise'), 380];
    const hot = constant(350, 'temperature', 'hot');
    const outcome = atMost(hot, constant(most, 'temperature', 'most'), { says, base: room, above: rise });
    expect(usage(outcome)).toBe(0.625);
    expect(usageSlopes(outcome)).toEqual(
      new Map([
        ['rise', 'up'],
        ['room', 'up'],
      ]),
    );
    const wrong = constant(51, 'temperature-difference', 'rise');
    expect(() => atMost(hot, hot, { says, base: room, above: wrong })).toThrow('has 50, not 51');
  });

  it('refuses to hold a length against a mass', () => {
    expect(() => atMost(length(1), constant(1, 'mass', 'm'), { says })).toThrow(
      'a length cannot be held against a mass',
    );
  });
});
