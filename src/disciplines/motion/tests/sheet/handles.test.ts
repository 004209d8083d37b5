import { describe, expect, it } from 'vitest';
import { checkBook } from '../../../../app/testing.ts';
import { base } from '../base.ts';
import { heldOn, misleading } from './handles.ts';

const bare = (text: string): string => text.replace(/^1\//, '').replace(/ (peak|RMS)$/, '');
const held = (book: string) => heldOn(checkBook(book), 'motion');
const paths = (book: string): readonly string[] => held(book).map(({ path }) => path);

const ranges = base
  .replace('holding-torque: 1.1 N·m', 'holding-torque: 1..1.2 N·m')
  .replace('detent-torque: 50 mN·m', 'detent-torque: 40..60 mN·m')
  .replace('pretension: 15 N', 'pretension: 14..16 N');

describe('what can be taken hold of', () => {
  it.each([
    ['exact facts', base],
    ['ranges', ranges],
  ])('is a fact of the book and shows what it says: %s', (_name, book) => {
    const all = held(book);
    expect(all.length).toBeGreaterThan(60);
    expect(misleading(all, bare)).toEqual([]);
  });

  it('is found out when it shows something else', () => {
    const reads = ['1.1 N·m'];
    const path = 'parts.stepper-23.holding-torque';
    expect(misleading([{ path, text: '1.2 N·m', reads }], bare)).toHaveLength(1);
    expect(misleading([{ path: 'parts.stepper-23.nothing', text: '—', reads: [] }], bare)).toHaveLength(1);
  });

  it('are the main facts of axes, motors and drivers', () => {
    expect(paths(ranges)).toEqual(
      expect.arrayContaining([
        'axes.x.drive',
        'axes.x.travel',
        'axes.x.speed',
        'axes.x.acceleration',
        'axes.x.belt',
        'axes.x.pretension',
        'motors.M1.part',
        'parts.stepper-23.holding-torque',
        'parts.stepper-23.rated-current',
        'parts.stepper-23.phase-inductance',
        'parts.stepper-23.detent-torque',
        'parts.stepper-23.rotor-inertia',
        'drivers.D1.part',
        'drivers.D1.microsteps',
        'drivers.D1.current',
        'drivers.D1.standstill-current',
        'drivers.D1.standing-by',
      ]),
    );
  });

  it('is also what a table adds where the book is silent', () => {
    const machine = checkBook(
      'book: 1\ntitle: Bench\nrevision: A\nmotors:\n  M1: { part: scrap }\nparts:\n  scrap: { kind: stepper, frame: 23, body: 56 mm }\n',
    );
    const inertia = heldOn(machine, 'motion').filter(({ path }) => path === 'parts.scrap.rotor-inertia');
    expect(inertia).toHaveLength(1);
    expect(misleading(inertia)).toEqual([]);
    expect(machine.snapshot.stated('parts.scrap.rotor-inertia')).toBe(false);
  });
});

describe('what is worked out cannot be taken hold of', () => {
  const withTravel = (travel: string): string => base.replace('travel: 560 mm', `travel: ${travel}`);

  it('the speed of an axis that its travel is too short to reach', () => {
    expect(paths(withTravel('100 mm'))).toContain('axes.x.speed');
    // √(0.7 m/s² · 50 mm) = 187 mm/s, below the 220 mm/s that are asked for.
    const short = paths(withTravel('50 mm'));
    expect(short).not.toContain('axes.x.speed');
    expect(short).toContain('axes.x.acceleration');
  });

  it('the acceleration that rounded ramps reach', () => {
    const rounded = paths(base.replace('acceleration: 700 mm/s²', 'acceleration: 700 mm/s²\n    jerk: 10 m/s³'));
    expect(rounded).not.toContain('axes.x.acceleration');
    expect(rounded).toContain('axes.y.acceleration');
  });

  it('the resistance of a winding, which is reckoned warm, and ratings that were taken in another connection', () => {
    const half = base
      .replace('leads: 4', 'leads: 8\n    measured-as: half')
      .replaceAll('{ part: stepper-23,', '{ part: stepper-23, winding: half,')
      .replace('winding: half, driver: D1', 'winding: series, driver: D1');
    const all = paths(half);
    const timesHeld = (key: string) => all.filter((path) => path === `parts.stepper-23.${key}`).length;
    expect(timesHeld('phase-resistance')).toBe(0);
    expect(timesHeld('rated-current')).toBe(4);
    expect(timesHeld('phase-inductance')).toBe(4);
    expect(timesHeld('holding-torque')).toBe(5);
  });

  it('a tension that follows from a note', () => {
    const tuned = paths(base.replace('pretension: 15 N', 'note: { span: 700 mm, tone: 30 Hz }'));
    expect(tuned).not.toContain('axes.x.pretension');
    expect(tuned).toContain('axes.y.pretension');
  });

  it('a setting that is not stated, or only as a range', () => {
    const vague = base
      .replace('microsteps: 8, current: 1.2 A', 'current: 1..1.2 A')
      .replace('standstill-current: 100 %, standing-by: unpowered', 'marked: peak')
      .replace('marked: peak, marked: peak', 'marked: peak');
    const first = paths(vague).filter((path) => path.startsWith('drivers.D1.'));
    expect(first).toEqual(['drivers.D1.part']);
  });
});
