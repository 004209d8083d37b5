/** What the checks come to, reckoned once more from the book's own numbers, line by line. */
import { describe, expect, it } from 'vitest';
import { checkBook, find } from '../../../../app/testing.ts';
import { base } from '../base.ts';

const g = 9.80665;
const degree = Math.PI / 180;

/** The base book as plain numbers. */
const machine = {
  v: 0.1,
  a: 0.25,
  travel: 0.56,
  hoist: { v: 0.16, a: 0.5 },
  up: 0.21,
  hook: 0.14,
  long: 0.91,
  longest: 0.91,
  halves: 10,
  dwell: 1,
  still: 0.02,
  scatter: 0.01,
  reach: 0.025,
  half: 0.085,
};
type Machine = typeof machine;

const reckoned = (of: Machine, docked = false) => {
  const { v, a, hoist, up, hook, long, longest, halves, dwell, still, scatter, reach, half } = of;
  const delta = Math.LN2 / halves;
  const fading = 1 / ((delta / Math.sqrt(4 * Math.PI ** 2 + delta ** 2)) * Math.sqrt(g / longest));
  const w = Math.sqrt(g / up);
  const jog = ((4 * a) / g) * Math.sin(Math.min((w * v) / a, Math.PI) / 2);
  const ramps = Math.sqrt((g + hoist.a) / (g - hoist.a));
  const widest = Math.min(Math.max((hoist.v * fading) / 4, up), long);
  const lowered =
    up *
    Math.sin(jog * Math.exp(-dwell / fading)) *
    (widest / up) ** 0.25 *
    ramps *
    Math.exp(-(widest - up) / (hoist.v * fading));
  const rise = long - up;
  const time = rise / hoist.v + hoist.v / hoist.a;
  const arriving = (x: number): number => x * (up / long) ** 0.25 * ramps * Math.exp(-time / fading);
  const driven = docked ? 0 : lowered;
  const atHook = hook / up;
  return {
    calm: jog * Math.exp(-dwell / fading),
    wall: Math.max(up * Math.sin(jog), lowered) + half,
    offset: arriving(still + driven) * atHook,
    lean: Math.asin(arriving(still + driven) / up),
    pull: hoist.a + (docked ? 0 : Math.max(a, 0)) * ((still + (docked ? 0 : up * Math.sin(jog))) / up),
    misses: Math.exp(-(Math.max(reach - arriving(driven) * atHook, 0) ** 2) / (2 * (arriving(scatter) * atHook) ** 2)),
  };
};

const booked = (...changes: readonly (readonly [string, string])[]): string =>
  changes.reduce((book, [from, to]) => {
    expect(book).toContain(from);
    return book.replace(from, to);
  }, base);
const demanded = (book: string, key: string): number => find(checkBook(book), key).demand!.number;

const compared = (book: string, of: Machine, docked = false): void => {
  const wanted = reckoned(of, docked);
  const { findings } = checkBook(book);
  const at = (key: string): number => find({ findings }, key).demand!.number;
  if (!docked) {
    expect(at('SWING-015/z+x')).toBeCloseTo(wanted.calm, 10);
    expect(at('SWING-020/z+x')).toBeCloseTo(wanted.wall, 10);
  }
  expect(at('SWING-030/z')).toBeCloseTo(wanted.offset, 10);
  expect(at('SWING-040/z')).toBeCloseTo(wanted.lean, 10);
  expect(at('SWING-050/z')).toBeCloseTo(wanted.pull, 10);
  expect(at('SWING-060/z')).toBeCloseTo(wanted.misses, 10);
};

describe('a machine', () => {
  it('whose load hangs free', () => compared(base, machine));

  it('whose load rides in a cup', () => compared(booked(['kind: rest', 'kind: cup']), machine, true));

  it('that waits for nothing', () => compared(booked(['  dwell: 1 s\n', '']), { ...machine, dwell: 0 }));

  it('whose heap is higher than its floor', () =>
    compared(booked(['travel: 700 mm', 'travel: 700 mm\n    lands-after: 400 mm']), { ...machine, long: 0.61 }));

  it('with a deeper dock and a longer claw', () =>
    compared(booked(['below-pivot: 140 mm', 'below-pivot: 180 mm'], ['hook: 70 mm', 'hook: 90 mm']), {
      ...machine,
      up: 0.27,
      hook: 0.18,
      long: 0.97,
      longest: 0.97,
    }));

  it('without a head to speak of', () => compared(booked(['  head: 10 mm\n', '']), { ...machine, reach: 0.03 }));

  it('that swings for longer, hoists faster and harder, and is lifted off worse', () =>
    compared(
      booked(
        ['halves-after: 10', 'halves-after: 20'],
        ['speed: 160 mm/s', 'speed: 200 mm/s'],
        ['acceleration: 500 mm/s²', 'acceleration: 900 mm/s²'],
        ['lift-off-offset: 20 mm', 'lift-off-offset: 25 mm'],
        ['lift-off-scatter: 10 mm', 'lift-off-scatter: 12 mm'],
      ),
      { ...machine, halves: 20, hoist: { v: 0.2, a: 0.9 }, still: 0.025, scatter: 0.012 },
    ));
});

describe('a second axis', () => {
  const second = (acceleration: string): string =>
    booked([
      '  z:\n',
      `  y:\n    drive: screw\n    travel: 400 mm\n    speed: 100 mm/s\n    acceleration: ${acceleration}\n    wall: 200 mm\n  z:\n`,
    ]);

  it('counts where it swings the load farther, and not where it does not', () => {
    const wild = second('400 mm/s²');
    const gentle = second('100 mm/s²');
    const wanted = reckoned({ ...machine, a: 0.4 });
    expect(demanded(wild, 'SWING-030/z')).toBeCloseTo(wanted.offset, 10);
    expect(demanded(gentle, 'SWING-030/z')).toBeCloseTo(reckoned(machine).offset, 10);
    expect(demanded(wild, 'SWING-020/z+y')).toBeCloseTo(wanted.wall, 10);
    expect(demanded(wild, 'SWING-050/z')).toBeCloseTo(wanted.pull, 10);
  });

  it('that climbs does not', () => {
    const climbing = second('400 mm/s²').replace('drive: screw', 'drive: screw\n    incline: 90°');
    expect(demanded(climbing, 'SWING-030/z')).toBeCloseTo(reckoned(machine).offset, 10);
  });
});

describe('rounded ramps', () => {
  const jerked = booked(['acceleration: 250 mm/s²', 'acceleration: 250 mm/s²\n    jerk: 1 m/s³']);

  it('soften the worst drive by half of a sine over the time in which the acceleration comes up', () => {
    // 0.25 s to come up: ω·t_j/2 = 0.854, and 0.4 s of ramp without it.
    const w = Math.sqrt(g / 0.21);
    const [tj, fade] = [0.25, Math.exp(-1 / (1 / (0.0110311 * Math.sqrt(g / 0.91))))];
    const jog = ((4 * 0.25) / g) * Math.sin((w * 0.4) / 2) * (Math.sin((w * tj) / 2) / ((w * tj) / 2));
    expect(demanded(jerked, 'SWING-015/z+x') / (jog * fade)).toBeCloseTo(1, 5);
  });

  it('soften what a travel leaves alike', () => {
    const w = Math.sqrt(g / 0.21);
    const plain = demanded(base, 'SWING-010/z+x');
    const softened = demanded(jerked, 'SWING-010/z+x');
    // Damping adds its ripple of a hundredth.
    expect(softened / plain / (Math.sin(w * 0.125) / (w * 0.125))).toBeCloseTo(1, 2);
  });
});

describe('what may miss', () => {
  it('is one in a hundred where the book does not say', () => {
    expect(find(checkBook(booked([', misses: 1 %', ''])), 'SWING-060/z').limit!.number).toBe(0.01);
    expect(find(checkBook(booked(['misses: 1 %', 'misses: 3 %'])), 'SWING-060/z').limit!.number).toBeCloseTo(0.03, 14);
  });

  it('is caught within half of what the head leaves of the mouth', () => {
    expect(find(checkBook(base), 'SWING-030/z').limit!.number).toBeCloseTo(0.025, 14);
    expect(find(checkBook(base), 'SWING-040/z').limit!.number).toBeCloseTo(15 * degree, 14);
  });
});

describe('what is not said', () => {
  it.each([
    [
      '    dock: { kind: rest, catch: 60 mm, lean: 15°, below-pivot: 140 mm, misses: 1 % }\n',
      '',
      'SWING-030/z',
      'axes.z.dock',
    ],
    ['catch: 60 mm, ', '', 'SWING-030/z', 'axes.z.dock.catch'],
    ['below-pivot: 140 mm, ', '', 'SWING-030/z', 'axes.z.dock.below-pivot'],
    ['kind: rest, ', '', 'SWING-030/z', 'axes.z.dock.kind'],
    ['  halves-after: 10 swings\n', '', 'SWING-015/z+x', 'hanging.halves-after'],
    ['  centre-of-mass-below-hook: 70 mm\n', '', 'SWING-015/z+x', 'hanging.centre-of-mass-below-hook'],
    ['    travel: 700 mm\n', '', 'SWING-030/z', 'axes.z.travel'],
  ])('without %j%s %s is asked for %s', (from, to, key, path) => {
    const finding = find(checkBook(booked([from, to])), key);
    expect(finding.verdict).toBe('not-stated');
    expect(finding.missing).toContain(path);
  });
});
