import { describe, expect, it } from 'vitest';
import { checkBook, find } from '../../../../app/testing.ts';
import type { Edit } from '../../../../kernel/index.ts';
import { base } from '../base.ts';

const machine = checkBook(base);
const at = (path: string, text: string | null): Edit => ({ path, text });
const changed = (...edits: readonly Edit[]) =>
  edits.length === 0 ? machine : checkBook(machine.editedTexts(edits).get(machine.book.main) ?? base);

/** The greatest value of a fact over all its ranges. */
const fact = (name: string, ...edits: readonly Edit[]): number => {
  const found = changed(...edits)
    .facts()
    .find((one) => one.name === name);
  if (!found || !('high' in found)) throw new Error(`no number ${name}: ${JSON.stringify(found)}`);
  return found.high;
};

// By hand from the base book, without the program's formulas.
const radius = 0.04 / (2 * Math.PI);
const speed = 0.22 / radius;
const warm = 1 + 0.00393 * 40;
const iron = 0.0005 * speed ** 2;
const torque = ((2.5 * 0.7 + 6) * radius) / 0.95 + (300e-7 * 0.7) / radius;
const moving = 1.44 * (warm + 0.7) + iron + torque * speed + 0.3;
const held = 0.36 * (warm + 0.7) + 0.3;

describe('a drive', () => {
  it('takes power by its copper, iron, work and itself', () => {
    expect(fact('supply.drive-power(M1@aiming)')).toBeCloseTo(moving, 9);
    expect(fact('supply.drive-power(M2@aiming)'), 'held').toBeCloseTo(held, 9);
  });

  it('takes nothing where it is unpowered, in the mode or while nobody plays', () => {
    expect(fact('supply.drive-power(M1@fetching)')).toBe(0);
    expect(fact('supply.drive-power(M1@standing-by)')).toBe(0);
    expect(fact('supply.drive-power(M1@standing-by)', at('drivers.D1.standing-by', 'powered'))).toBeCloseTo(held, 9);
  });

  it('heats twice as much in full steps', () => {
    const full = fact('supply.drive-power(M2@aiming)', at('drivers.D2.microsteps', '1'));
    expect(full - 0.3).toBeCloseTo(2 * (held - 0.3), 9);
  });

  it('heats no more than its rail can make it', () => {
    // 69.4 Ω warm would want 50 V for 0.72 A; both phases at 24 V are 16.6 W, less than 0.72² · 69.4.
    const edits = [at('parts.stepper-23.phase-resistance', '60 ohm'), at('drivers.D2.standstill-current', '60 %')];
    expect(fact('supply.drive-power(M2@aiming)', ...edits)).toBeCloseTo(
      (2 * 24 ** 2) / (60 * warm) + 0.72 ** 2 * 0.7 + 0.3,
      9,
    );
  });
});

describe('a rail', () => {
  it('carries drives, loads and converters of its mode', () => {
    expect(fact('supply.rail-current(24V@aiming)')).toBeCloseTo((moving + held + 0.1) / 24, 9);
    expect(fact('supply.rail-current(5V@standing-by)')).toBe(0.2);
    expect(fact('supply.rail-current(5V@aiming)')).toBe(0.5);
  });

  it('carries a stalled servo behind its converter at its peak', () => {
    const steady = fact('supply.rail-current(24V@fetching)');
    const peak = fact('supply.rail-peak(24V@fetching)');
    expect(peak - steady).toBeCloseTo((5.5 * (1.8 - 0.3)) / 0.9 / 24, 9);
  });

  it('is loaded with no more than drives that stand, where a least load is wanted', () => {
    expect(fact('supply.rail-least(24V@aiming)')).toBeCloseTo((2 * held + 0.1) / 24, 9);
    expect(fact('supply.rail-least(24V@fetching)'), 'X is off, Z stands').toBeCloseTo(
      (held + (5.5 * 0.3) / 0.9 + 0.1) / 24,
      9,
    );
    expect(fact('supply.rail-least(24V@standing-by)')).toBeCloseTo(0.1 / 24, 9);
  });

  it('is fed from the socket with what its supplies lose', () => {
    const given = 0.1 / 0.86 + 0.5 + 1 / 0.8 + 0.3;
    expect(fact('supply.standing-by-power(site)')).toBeCloseTo(given, 9);
  });

  it('adds up a week of open and closed hours', () => {
    const [idle, aiming, fetching] = ['standing-by', 'aiming', 'fetching'].map((mode) =>
      fact(`supply.mains-power(${mode})`),
    );
    const open = 0.7 * idle! + 0.2 * aiming! + 0.1 * fetching!;
    expect(fact('supply.week-energy(site)')).toBeCloseTo(7 * 3600 * (9 * open + 15 * idle!), 3);
  });
});

describe('warmth', () => {
  const air = 38;
  const at38 = 1 + 0.00393 * (air - 20);
  const slope = 0.00393 / at38;
  /** Rise of the winding and of the case, by the closed form: square of the current in the hottest phase and in the mean, iron. */
  const settled = (hot: number, mean: number, heat: number): readonly [number, number] => {
    const [cold, press] = [mean * at38, hot * at38];
    const rise = (press + cold * 3 + heat * 3) / (1 - slope * (press + cold * 3));
    return [rise, (cold * (1 + slope * rise) + heat) * 3];
  };
  const expectSettled = (motor: string, [rise, shell]: readonly [number, number], ...edits: readonly Edit[]): void => {
    // The loop is closed to a millionth of its range, 0.0002 K.
    expect(fact(`supply.winding-temperature(${motor})`, ...edits) - 273.15).toBeCloseTo(air + rise, 3);
    expect(fact(`supply.case-temperature(${motor})`, ...edits) - 273.15).toBeCloseTo(air + shell, 3);
  };
  // Players who queue aim for two thirds of the time and fetch for one.
  const [aims, fetches] = [2 / 3, 1 / 3];

  it('settles with the mean of the modes in the case and the hottest of them in the winding', () => {
    expectSettled('M1', settled(1.44, aims * 1.44, aims * iron));
  });

  it('of a motor that is held may stand in one phase alone', () => {
    const turning = 0.0005 * (0.16 / (0.032 / 2 + 0.0006)) ** 2;
    const edit = at('drivers.D2.standstill-current', '100 %');
    expectSettled('M2', settled(2 * 1.44, 1.44, fetches * turning), edit);
  });

  it('standing by for nights counts as much as a queue, when that is hotter', () => {
    const edits = [at('drivers.D1.standing-by', 'powered'), at('drivers.D1.standstill-current', '100 %')];
    expectSettled('M1', settled(2 * 1.44, 1.44, 0), ...edits);
  });

  it('of a motor that is never on is that of the air', () => {
    const off = [at('modes.aiming.unpowered', '[x]'), at('modes.aiming.moving', '[z]')];
    expectSettled('M1', [0, 0], ...off);
  });

  it('of a machine on which nobody ever plays is that of its nights', () => {
    const idle = [at('modes.aiming.idle', 'true'), at('modes.fetching.idle', 'true')];
    expectSettled('M1', [0, 0], ...idle);
    const on = [at('drivers.D1.standing-by', 'powered'), at('drivers.D1.standstill-current', '100 %')];
    expectSettled('M1', settled(2 * 1.44, 1.44, 0), ...idle, ...on);
  });

  it('starts from the resistance of the winding as it is connected', () => {
    const leads = [at('parts.stepper-23.leads', '8'), at('parts.stepper-23.measured-as', 'half')];
    const [series, parallel] = ['series', 'parallel'].map((way) =>
      fact('supply.winding-temperature(M2)', ...leads, at('motors.M2.winding', way), at('motors.M1.winding', way)),
    );
    expect(series! - 311.15).toBeGreaterThan(3 * (parallel! - 311.15));
  });

  it('of the air is that of the room and what it is reckoned to be warmer', () => {
    expect(fact('supply.inside-air(site)')).toBeCloseTo(311.15, 9);
    const [aiming, fetching] = ['aiming', 'fetching'].map((mode) => fact(`supply.mains-power(${mode})`));
    expect(fact('supply.cabinet-rise(site)')).toBeCloseTo((64 + aims * aiming! + fetches * fetching!) / 20, 9);
  });
});

describe('a branch', () => {
  // Wire as its kind is stated, in 38 °C, and the fuse.
  const feed = 2 * 1.2 * 0.026 * (1 + 0.00393 * 18) + 0.08;

  it('sags to the upper root of its square, and carries the current of that', () => {
    const power = moving + held;
    const left = (24 + Math.sqrt(576 - 4 * feed * power)) / 2;
    expect(fact('supply.branch-drop(F1)')).toBeCloseTo(24 - left, 6);
    expect(fact('supply.branch-current(F1)')).toBeCloseTo(power / left, 6);
  });

  it('bears less as it is laid, and less again where it is warm', () => {
    const wire = 'supply.wire-capacity(F1)';
    const hot = at('site.ambient', '52..60 degC');
    expect(fact(wire), 'no better than at 30 °C').toBeCloseTo(8.5 * 0.8 * Math.sqrt(40 / 30), 9);
    expect(fact(wire, hot)).toBeCloseTo(8.5 * 0.8 * Math.sqrt(10 / 30), 9);
    const xlpe = at('parts.hook-up.insulation', 'XLPE 90');
    expect(fact(wire, hot, xlpe)).toBeCloseTo(8.5 * 0.8 * Math.sqrt(30 / 50), 9);
    expect(fact(wire, at('cables.W1.parallel', '2')), 'one of two may be open').toBe(fact(wire));
  });

  it('of copper-clad aluminium bears less', () => {
    const clad = at('parts.hook-up.resistance-per-length', '60 ohm/km');
    const share = (1.16 * 1.7241e-8) / (0.06 * 0.75e-6);
    expect(fact('supply.wire-capacity(F1)', clad) / fact('supply.wire-capacity(F1)')).toBeCloseTo(Math.sqrt(share), 9);
  });
});

it('a motor of which only a rated current is printed has a warmth all the same', () => {
  // Motion reckons its winding by its size, warm at 60 °C; turned back to 20 °C it is the same one.
  const printed = at('parts.stepper-23.phase-resistance', null);
  const warmth = fact('supply.winding-temperature(M1)', printed);
  expect(warmth).toBeGreaterThan(fact('supply.inside-air(site)'));
  const ohms = fact('motion.phase-resistance(M1)', printed) / warm;
  const stated = fact('supply.winding-temperature(M1)', at('parts.stepper-23.phase-resistance', `${ohms} ohm`));
  expect(warmth).toBeCloseTo(stated, 3);
});

describe('what has no working point', () => {
  it('fails: a wire that cannot bring the power', () => {
    const finding = find(changed(at('cables.W1.part', 'thin'), at('cables.W1.length', '200 m')), 'SUPPLY-100/F1');
    expect(finding.sentence).toMatch(/cannot bring that power/);
  });

  it('fails: a winding that runs away', () => {
    expect(find(changed(at('drivers.D1.current', '12 A')), 'SUPPLY-060/M1').sentence).toMatch(/runs away/);
  });

  it('fails: a converter that feeds itself', () => {
    const finding = find(changed(at('supplies.G3.from', 'claw')), 'SUPPLY-010/claw@fetching');
    expect(finding).toMatchObject({
      verdict: 'fails',
      sentence: expect.stringMatching(/G3 is fed by G3: a converter cannot feed itself/) as string,
    });
  });
});

describe('a young book', () => {
  const young = `book: 1
title: Young
revision: A
axes: { x: { drive: belt, motors: M1, belt: 2GT-6, pulley-teeth: 20, travel: 500 mm, moving-mass: 2.5 kg, speed: 220 mm/s, acceleration: 700 mm/s² } }
motors: { M1: { part: drawer-23, driver: D1 } }
drivers: { D1: { rail: 12V, current: 2 A, marked: peak, microsteps: 8 } }
parts: { drawer-23: { kind: stepper, frame: 23, body: 56 mm, leads: 4 } }
supplies: { G1: { rails: { 12V: { volts: 12 V, limit: 5 A } } } }
`;

  it('without modes is reckoned with everything on', () => {
    const finding = find(checkBook(young), 'SUPPLY-010/12V');
    expect(finding.verdict).toBe('holds');
    expect(finding.sentence).toMatch(/with everything on/);
  });

  it('is told what is not stated, and is not red for it', () => {
    const own = checkBook(young).findings.filter(({ sheet }) => sheet === 'supply');
    expect(find({ findings: own }, 'SUPPLY-060/M1')).toMatchObject({
      verdict: 'not-stated',
      missing: ['site.ambient'],
    });
    expect(own.filter(({ verdict }) => verdict === 'fails')).toEqual([]);
  });

  it('is told where each missing fact belongs', () => {
    const missing = (book: string, key: string) => find(checkBook(book), key).missing;
    expect(missing(young, 'SUPPLY-020/G1')).toEqual(['supplies.G1.power']);
    expect(missing(young, 'SUPPLY-050/12V')).toEqual(['drivers.D1.most-volts']);
    expect(missing(young, 'SUPPLY-110/12V'), 'no fuse is known at all').toEqual(['fuses']);
    const named = young.replace('G1: {', 'G1: { part: box,').replace('parts: {', 'parts: { box: { kind: supply },');
    expect(missing(named, 'SUPPLY-020/G1'), 'at the part that it is').toEqual(['parts.box.power']);
    const modes = 'modes: { playing: { duty: 20 %, moving: x } }\n';
    expect(missing(`${young}${modes}energy: { standing-by: 5 W }\n`, 'SUPPLY-180')).toEqual(['modes.standing-by']);
    expect(missing(`${young}enclosure: { surface: 3 m², windows: 1 m² }\n`, 'SUPPLY-095')).toEqual(['enclosure.sun']);
  });

  it('asks for the axes that move once it has modes', () => {
    const finding = find(checkBook(`${young}modes: { playing: { duty: 20 % } }\n`), 'SUPPLY-010/12V@playing');
    expect(finding).toMatchObject({ verdict: 'not-stated', missing: ['modes.playing.moving'] });
  });
});

describe('ways out', () => {
  it('switch off what stands by, and say what it costs', () => {
    const idle = changed(at('drivers.D1.standing-by', 'powered'), at('drivers.D2.standing-by', 'powered'));
    const [remedy] = idle.remedies('SUPPLY-180');
    expect(remedy?.edits.map(({ path, after }) => [path, after])).toEqual([
      ['drivers.D1.standing-by', 'unpowered'],
      ['drivers.D2.standing-by', 'unpowered'],
    ]);
  });

  it('fit a fuse that is made', () => {
    const ratings = changed(at('fuses.F1.rating', '0.2 A'))
      .remedies('SUPPLY-120/F1')
      .flatMap(({ edits }) => edits.filter(({ path }) => path === 'fuses.F1.rating').map(({ after }) => after));
    expect(ratings).toContain('0.5 A');
  });

  it('never fit a larger fuse than the wire is laid for, nor one where no wire is stated', () => {
    const larger = (...edits: readonly Edit[]): readonly string[] =>
      (find(changed(at('fuses.F1.rating', '0.2 A'), ...edits), 'SUPPLY-120/F1').levers ?? []).flatMap((lever) =>
        'set' in lever ? lever.set.map(({ text }) => text ?? '') : [],
      );
    // By hand: a wire for 1 A, at 0.8 for its company, takes fuses up to 0.8 A · 1.45/2.1 = 0.55 A.
    expect(larger()).toEqual(['0.5 A', '0.63 A', '0.8 A']);
    expect(larger(at('cables.W1.continuous-current', '1 A'))).toEqual(['0.5 A']);
    expect(larger(at('fuses.F1.cable', null))).toEqual([]);
  });

  it('measure what is not known', () => {
    const [question] = changed(at('parts.stepper-23.case-to-air', '2..12 K/W')).questions();
    expect(question).toMatchObject({
      path: 'parts.stepper-23.case-to-air',
      measure: { instrument: expect.stringMatching(/thermometer/) as string },
    });
  });

  it('never accept a hot case away', () => {
    const accepted = `${base}accepted: [{ finding: SUPPLY-070/M1, because: nobody goes there }]\n`;
    const hot = checkBook(
      accepted.replace(
        'rail: 24V, fuse: F1, microsteps: 8, current: 1.2 A',
        'rail: 24V, fuse: F1, microsteps: 8, current: 3 A',
      ),
    );
    expect(find(hot, 'SUPPLY-070/M1')).toMatchObject({ verdict: 'fails', accepted: { counts: false } });
  });
});

it('no slope that a formula declares is contradicted', () => {
  expect(machine.slopeFaults).toEqual([]);
});
