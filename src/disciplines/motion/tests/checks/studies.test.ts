import { describe, expect, it } from 'vitest';
import { checkBook, find } from '../../../../app/testing.ts';
import { lowestCurrent } from '../../studies/lowest-current.ts';
import { slice } from '../../studies/slice.ts';
import { substitutes } from '../../studies/substitutes.ts';
import { base } from '../base.ts';

const machine = checkBook(base);

describe('lowest current that still holds', () => {
  const found = machine.study(lowestCurrent, { driver: 'D1' })!;

  it('is a position of the switch, and nothing gets worse at it', () => {
    const steps = ['0.6 A', '0.8 A', '1 A', '1.2 A', '1.6 A', '2 A', '2.8 A', '4 A'];
    expect(steps).toContain(found.lowest!.text.replace('1.0', '1'));
    const edited = machine.editedTexts([{ path: 'drivers.D1.current', text: found.lowest!.text }]);
    const there = checkBook(edited.get('book.yaml') ?? base);
    const held = machine.findings.filter((one) => one.key.endsWith('x+M1') && one.verdict === 'holds');
    expect(held.length).toBeGreaterThan(2);
    for (const { key } of held) expect(find(there, key).verdict, key).toBe('holds');
  });

  it('is the lowest: the position below it is not enough', () => {
    const all = machine.study(lowestCurrent, { driver: 'D1', all: true })!;
    expect(all.lowest).toEqual(found.lowest);
    for (const tried of all.tried) expect(tried.isEnough).toBe(tried.ampere >= all.lowest!.ampere);
    expect(all.tried.map(({ ampere }) => ampere)).toEqual([0.6, 0.8, 1, 1.2]);
  });

  it('says how the switches stand and how much cooler it is', () => {
    expect(found.settings).toEqual({ microsteps: '8', current: found.lowest!.text, standstill: '100 %' });
    expect(found.heat).toBeCloseTo((found.lowest!.ampere / 1.2) ** 2, 12);
  });

  it('tries a trimmer at evenly spaced currents', () => {
    const trimmer = checkBook(base.replace(/ {4}current-steps: .*\n/, ''));
    const all = trimmer.study(lowestCurrent, { driver: 'D1', all: true })!;
    expect(all.tried).toHaveLength(9);
    expect(all.tried[0]!.ampere).toBeCloseTo(0.3, 12);
    expect(all.tried.at(-1)!.ampere).toBeCloseTo(1.2, 12);
  });

  it('has nothing to say of a driver that moves nothing', () => {
    expect(machine.study(lowestCurrent, { driver: 'D9' })!.lowest).toBeUndefined();
  });
});

describe('substitutes', () => {
  const found = machine.study(substitutes, { axis: 'x', motor: 'M1' })!;

  it('tries every motor of the catalogue, those that do first', () => {
    expect(found.left).toBe(0);
    expect(found.parts.length).toBeGreaterThan(15);
    const ranks = found.parts.map(({ verdict }) => ['holds', 'tight', 'open', 'not-stated', 'fails'].indexOf(verdict));
    expect([...ranks].sort((a, b) => a - b)).toEqual(ranks);
  });

  it('turns down a motor that is far too small, and says why', () => {
    const tiny = found.parts.find(({ part }) => part === 'frame-11-32');
    expect(tiny?.verdict).not.toBe('holds');
    expect(tiny?.because).toContain('M1');
  });

  it('calls overkill what uses less than 15 % of its torque', () => {
    for (const { isOverkill, use } of found.parts) expect(isOverkill).toBe(use !== undefined && use < 0.15);
  });

  it('says what the book itself would say with that part', () => {
    const [first] = found.parts;
    const there = checkBook(machine.editedTexts(first!.edits).get('book.yaml') ?? base);
    expect(find(there, 'MOTION-010/x+M1').use!.worst).toBeCloseTo(first!.use!, 9);
  });
});

describe('a slice through all motors', () => {
  it('has every point with a verdict, and says what stays as it stands', () => {
    const found = machine.study(slice, { axis: 'x', motor: 'M1', points: 5 })!;
    expect(found.isWhole).toBe(true);
    expect(found.points).toHaveLength(25);
    expect(found.rest).toEqual([
      ['rated-current', '2.8 A'],
      ['phase-resistance', '1 ohm'],
      ['rotor-inertia', '300 g·cm²'],
    ]);
    const centre = found.points[12]!;
    expect(centre.across).toBeCloseTo(3e-3, 12);
    expect(centre.up).toBeCloseTo(1.1, 12);
    expect(centre.use).toBeCloseTo(find(machine, 'MOTION-010/x+M1').use!.worst, 2);
  });

  it('shows that a motor can be too strong: its EMF is then above the rail', () => {
    const { points } = machine.study(slice, { axis: 'x', motor: 'M1', points: 4 })!;
    // 3.3 N·m at 2.8 A is 0.833 V·s/rad: 28.8 V at 330 rpm, on a rail of 24 V.
    const [strong, weaker] = [points[12]!, points[4]!];
    expect(strong.across).toBe(weaker.across);
    expect(strong.up).toBeCloseTo(3.3, 9);
    expect(strong.use).toBeGreaterThan(1);
    expect(weaker.use).toBeLessThan(1);
  });
});
