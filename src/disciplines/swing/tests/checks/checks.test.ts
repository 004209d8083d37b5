import { describe, expect, it } from 'vitest';
import { checkBook, find } from '../../../../app/testing.ts';
import { base } from '../base.ts';

const booked = (...changes: readonly (readonly [string, string])[]): string =>
  changes.reduce((book, [from, to]) => {
    expect(book).toContain(from);
    return book.replace(from, to);
  }, base);

const cupped = booked(['kind: rest', 'kind: cup']);
const swinging = booked(
  ['speed: 100 mm/s', 'speed: 220 mm/s'],
  ['acceleration: 250 mm/s²', 'acceleration: 700 mm/s²'],
  ['travel: 560 mm', 'travel: 550 mm'],
  ['below-pivot: 140 mm', 'below-pivot: 430 mm'],
  ['centre-of-mass-below-hook: 70 mm', 'centre-of-mass-below-hook: 70..470 mm'],
  ['halves-after: 10 swings', 'halves-after: 2000 swings'],
  ['dwell: 1 s', 'dwell: 0 s'],
);

describe('a range of line lengths', () => {
  it('is searched inside, where the swing is greatest: 9.3° at 0.64 m decides', () => {
    const finding = find(checkBook(swinging), 'SWING-010/z+x');
    expect(finding.verdict).toBe('fails');
    expect(finding.searched).toBe(true);
    expect((finding.demand!.number * 180) / Math.PI).toBeCloseTo(9.287, 2);
    const length = finding.scenario.find(({ path }) => path === 'hanging.centre-of-mass-below-hook')!;
    expect(length.end).toBe('inside');
    expect(length.number + 0.43).toBeCloseTo(0.64, 1);
  });
});

describe('a cup', () => {
  it('leaves nothing to ask about travelling, and everything about docking', () => {
    const codes = checkBook(cupped)
      .findings.filter(({ sheet }) => sheet === 'swing')
      .map(({ code }) => code);
    expect(codes).toEqual(['SWING-030', 'SWING-035', 'SWING-040', 'SWING-050', 'SWING-060']);
  });

  it('cures a load that swings into the wall, and so does a gentler travel', () => {
    const machine = checkBook(booked(['wall: 200 mm', 'wall: 100 mm']));
    const remedies = machine.remedies('SWING-020/z+x');
    expect(
      remedies.some(({ edits }) => edits.some(({ path, after }) => path === 'axes.z.dock.kind' && after === 'cup')),
    ).toBe(true);
    const gentler = remedies.find(
      ({ edits }) => edits[0]!.path === 'axes.x.acceleration' || edits[0]!.path === 'axes.x.speed',
    );
    expect(gentler?.verdict).toMatch(/holds|tight/);
  });
});

describe('a machine without a dock', () => {
  it('is not asked whether it docks', () => {
    const codes = checkBook(booked(['kind: rest', 'kind: none'])).findings.map(({ code }) => code);
    for (const code of ['SWING-030', 'SWING-035', 'SWING-040', 'SWING-060']) expect(codes).not.toContain(code);
    expect(codes).toContain('SWING-020');
  });
});

describe('a young book', () => {
  it('is told what is missing, and nothing is red', () => {
    const findings = checkBook(base.slice(0, base.indexOf('hanging:'))).findings.filter(
      ({ sheet }) => sheet === 'swing',
    );
    expect(new Set(findings.map(({ verdict }) => verdict))).toEqual(new Set(['not-stated']));
    expect(find({ findings }, 'SWING-030/z').missing).toContain('hanging');
  });
});

describe('an axis that climbs', () => {
  it('does not carry the load to the side', () => {
    const climbing = booked(['    travel: 560 mm', '    incline: 90°\n    travel: 560 mm']);
    expect(checkBook(climbing).findings.map(({ key }) => key)).not.toContain('SWING-010/z+x');
  });
});

describe('words that are refused', () => {
  it.each([
    ['halves-after: 10 swings', 'halves-after: 0 swings'],
    ['calm: 8°', 'calm: 95°'],
    ['misses: 1 %', 'misses: 0 %'],
    ['kind: rest', 'kind: cradle'],
    ['dwell: 1 s', 'dwell: -1 s'],
    ['wall: 200 mm', 'wall: 200'],
  ])('%s as %s', (from, to) => {
    expect(() => checkBook(booked([from, to]))).toThrow(/cannot be read/);
  });
});

describe('what is told to others', () => {
  it('a model of the load, made from plain parameters', async () => {
    const { house } = await import('../../../../app/testing.ts').then(async () => {
      const { houseOn } = await import('../../../../app/index.ts');
      return { house: houseOn() };
    });
    const { hangingModel } = await import('../../facts.ts');
    const listed = checkBook(base)
      .facts()
      .filter(({ name }) => name.startsWith('swing.'));
    expect(listed.length).toBeGreaterThan(0);
    const load = house.model(hangingModel, { gravity: 9.80665, fadingTime: 27.6, belowHook: 0.07, line: 0.14 });
    expect(load.step(0.01, { x: 0.5, y: 0 }, 0).x).toBeLessThan(0);
  });
});
